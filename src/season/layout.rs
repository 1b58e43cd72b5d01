//! Which node of the network is which part of the plant house.

use super::plan::ZonePlan;
use crate::physics::network::{FreezingStore, Link, Network, Node};
use crate::physics::stores;

/// Nodes of one zone.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct ZoneNodes {
    /// Air.
    pub air: usize,
    /// Floor and benches.
    pub floor: usize,
    /// Water, if there is any.
    pub water: Option<usize>,
}

/// Nodes of the scenario.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Layout {
    /// The house.
    pub house: ZoneNodes,
    /// The tent, if there is one.
    pub tent: Option<ZoneNodes>,
}

/// Links of the network whose conductance changes.
#[derive(Debug, Clone, Copy)]
pub struct TentLinks {
    /// Tent air to house air.
    pub wall: Link,
    /// Tent floor and benches to house air.
    pub base: Link,
}

impl Layout {
    /// Numbers the nodes of a house and its tent.
    #[must_use]
    pub fn new(house: &ZonePlan, tent: Option<&ZonePlan>) -> Self {
        let mut next = 0;
        let mut take = || {
            next += 1;
            next - 1
        };
        // The house air goes last: leakage and vents change its ties at every step.
        let mut zone = |plan: &ZonePlan| {
            let (floor, water) = (take(), (plan.water_kg > 0.0).then(&mut take));
            ZoneNodes { floor, water, air: take() }
        };
        let tent = tent.map(&mut zone);
        Self { house: zone(house), tent }
    }

    /// The network of these zones, with all constant conductances set.
    ///
    /// `None` never happens for a layout made by [`Layout::new`], whose nodes are at most six.
    #[must_use]
    pub fn network(&self, house: &ZonePlan, tent: Option<&ZonePlan>) -> Option<(Network, Option<TentLinks>)> {
        let (mut nodes, mut links) = (Vec::new(), Vec::new());
        if let (Some(at), Some(plan)) = (&self.tent, tent) {
            add_zone(&mut nodes, &mut links, at, plan);
        }
        add_zone(&mut nodes, &mut links, &self.house, house);
        if let Some(at) = &self.tent {
            links.push((at.air, self.house.air, 0.0));
            links.push((at.floor, self.house.air, 0.0));
        }
        let pairs: Vec<_> = links.iter().map(|&(a, b, _)| (a, b)).collect();
        let mut network = Network::new(&nodes, &pairs)?;
        for (i, &(_, _, w_per_k)) in links.iter().enumerate() {
            network.set_link(network.link(i)?, w_per_k);
        }
        let tent_links = match self.tent {
            Some(_) => Some(TentLinks { wall: network.link(links.len() - 2)?, base: network.link(links.len() - 1)? }),
            None => None,
        };
        Some((network, tent_links))
    }
}

/// Adds a zone's nodes in the order in which [`Layout::new`] numbers them.
fn add_zone(nodes: &mut Vec<Node>, links: &mut Vec<(usize, usize, f64)>, at: &ZoneNodes, plan: &ZonePlan) {
    nodes.push(Node::Capacity(plan.floor_j_per_k));
    links.push((at.floor, at.air, plan.floor_to_air_w_per_k));
    if let Some(water) = at.water {
        nodes.push(Node::Water(FreezingStore {
            mass_kg: plan.water_kg,
            liquid_j_per_kgk: stores::WATER_SPECIFIC_HEAT,
            ice_j_per_kgk: stores::ICE_SPECIFIC_HEAT,
            fusion_j_per_kg: stores::HEAT_OF_FUSION,
        }));
        links.push((water, at.air, plan.water_to_air_w_per_k));
    }
    nodes.push(Node::Capacity(plan.air_j_per_k));
}
