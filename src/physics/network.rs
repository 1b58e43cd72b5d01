//! A small thermal network: nodes with heat capacity, conductances between them, boundaries and heat inputs.
//!
//! The topology is fixed; conductances, boundaries and inputs change from step to step. The plant house is one
//! instance of it, a published room another. The last node is the one whose ties change most often: see `factor.rs`.

use super::factor::Factors;

/// Most nodes that a network can have.
pub const MAX_NODES: usize = 8;

/// One value per node.
pub type NodeValues = [f64; MAX_NODES];

/// Water that can freeze, in a node of its own.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FreezingStore {
    /// Water, kg.
    pub mass_kg: f64,
    /// Specific heat of the liquid, J/(kg·K).
    pub liquid_j_per_kgk: f64,
    /// Specific heat of ice, J/(kg·K).
    pub ice_j_per_kgk: f64,
    /// Heat of fusion, J/kg.
    pub fusion_j_per_kg: f64,
}

/// A node of the network.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Node {
    /// A capacity in J/K; zero makes it algebraic.
    Capacity(f64),
    /// A well-mixed store of water that freezes at 0 °C.
    Water(FreezingStore),
}

/// A conductance between two nodes; its value is set per step.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Link(usize);

/// The network.
#[derive(Debug, Clone)]
pub struct Network {
    pub(super) nodes: Vec<Node>,
    /// The nodes that are water.
    pub(super) waters: Vec<(usize, FreezingStore)>,
    /// Per link: its two nodes.
    links: Vec<(usize, usize)>,
    link_w_per_k: Vec<f64>,
    boundary_w_per_k: NodeValues,
    /// Counts the changes of links and of all boundaries but the last node's.
    ties: u64,
    /// Heat into each node from boundaries at 0 °C reference and inputs: Σ g·T + W.
    pub(super) source_w: NodeValues,
}

impl Network {
    /// A network of these nodes with these links; `None` if there are more than [`MAX_NODES`] nodes or a link names a
    /// node that does not exist or the same node twice.
    #[must_use]
    pub fn new(nodes: &[Node], links: &[(usize, usize)]) -> Option<Self> {
        let valid = |&(a, b): &(usize, usize)| a < nodes.len() && b < nodes.len() && a != b;
        if nodes.len() > MAX_NODES || !links.iter().all(valid) {
            return None;
        }
        let water = |(i, node): (usize, &Node)| match node {
            Node::Water(water) => Some((i, *water)),
            Node::Capacity(_) => None,
        };
        Some(Self {
            nodes: nodes.to_vec(),
            waters: nodes.iter().enumerate().filter_map(water).collect(),
            links: links.to_vec(),
            link_w_per_k: vec![0.0; links.len()],
            boundary_w_per_k: [0.0; MAX_NODES],
            ties: 0,
            source_w: [0.0; MAX_NODES],
        })
    }

    /// Number of nodes.
    #[must_use]
    pub fn len(&self) -> usize {
        self.nodes.len().min(MAX_NODES)
    }

    /// Whether there are no nodes.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.nodes.is_empty()
    }

    /// The link at this place of the list given to [`Network::new`]; `None` beyond it.
    #[must_use]
    pub fn link(&self, index: usize) -> Option<Link> {
        (index < self.links.len()).then_some(Link(index))
    }

    /// Sets a conductance, W/K.
    pub fn set_link(&mut self, link: Link, w_per_k: f64) {
        if self.link_w_per_k[link.0] != w_per_k {
            self.link_w_per_k[link.0] = w_per_k;
            self.ties += 1;
        }
    }

    /// Clears all boundaries and inputs.
    pub fn clear_sources(&mut self) {
        self.ties += 1;
        self.boundary_w_per_k = [0.0; MAX_NODES];
        self.source_w = [0.0; MAX_NODES];
    }

    /// Adds a conductance to a boundary of this temperature, W/K and °C.
    pub fn add_boundary(&mut self, node: usize, w_per_k: f64, boundary_c: f64) {
        self.ties += 1;
        self.boundary_w_per_k[node] += w_per_k;
        self.source_w[node] += w_per_k * boundary_c;
    }

    /// Adds a heat input, W.
    pub fn add_input(&mut self, node: usize, w: f64) {
        self.source_w[node] += w;
    }

    /// Sets a node's boundaries and inputs at once: Σ g in W/K and Σ g·T + inputs in W.
    pub fn set_node(&mut self, node: usize, boundary_w_per_k: f64, source_w: f64) {
        if self.boundary_w_per_k[node] != boundary_w_per_k && node + 1 != self.len() {
            self.ties += 1;
        }
        self.boundary_w_per_k[node] = boundary_w_per_k;
        self.source_w[node] = source_w;
    }

    /// Heat that flows into a node from links, boundaries and inputs at these temperatures, W.
    #[must_use]
    pub fn net_flow_w(&self, node: usize, temperatures: &NodeValues) -> f64 {
        let mut flow = self.source_w[node] - self.boundary_w_per_k[node] * temperatures[node];
        for (&(a, b), &g) in self.links.iter().zip(&self.link_w_per_k) {
            if a == node {
                flow += g * (temperatures[b] - temperatures[a]);
            } else if b == node {
                flow += g * (temperatures[a] - temperatures[b]);
            }
        }
        flow
    }

    /// Counts the changes of links and of all boundaries but the last node's.
    pub(super) fn ties(&self) -> u64 {
        self.ties
    }

    /// Conductance of a node to all its boundaries, W/K.
    pub(super) fn boundary_w_per_k(&self, node: usize) -> f64 {
        self.boundary_w_per_k[node]
    }

    /// Conductance matrix of the links between the first `N` nodes, on and below its diagonal.
    pub(super) fn link_matrix<const N: usize>(&self) -> [[f64; N]; N] {
        let mut matrix = [[0.0; N]; N];
        for (&(a, b), &g) in self.links.iter().zip(&self.link_w_per_k) {
            if a < N && b < N {
                matrix[a][a] += g;
                matrix[b][b] += g;
                matrix[a.max(b)][a.min(b)] -= g;
            }
        }
        matrix
    }

    /// Steady temperatures with some nodes held: `held` gives the temperature of the nodes that are.
    ///
    /// A node without any tie comes out at 0 °C.
    #[must_use]
    pub fn steady(&self, held: &[(usize, f64)]) -> NodeValues {
        self.steady_with(&mut Factors::default(), held)
    }

    /// [`Network::steady`] with factors of this network to go on from.
    pub(super) fn steady_with(&self, factors: &mut Factors, held: &[(usize, f64)]) -> NodeValues {
        match self.len() {
            0..=2 => self.sized_steady::<2>(factors, held),
            3 => self.sized_steady::<3>(factors, held),
            4 => self.sized_steady::<4>(factors, held),
            5 => self.sized_steady::<5>(factors, held),
            6 => self.sized_steady::<6>(factors, held),
            _ => self.sized_steady::<MAX_NODES>(factors, held),
        }
    }

    /// [`Network::steady`] of at most `N` nodes.
    fn sized_steady<const N: usize>(&self, factors: &mut Factors, held: &[(usize, f64)]) -> NodeValues {
        let mut extra = [0.0; MAX_NODES];
        let mut values = self.source_w;
        for &(node, t_c) in held {
            extra[node] = HOLD_W_PER_K;
            values[node] += HOLD_W_PER_K * t_c;
        }
        let mut lanes = [[0.0]; N];
        for (lane, value) in lanes.iter_mut().zip(&values) {
            lane[0] = *value;
        }
        factors.of::<N>(self, &extra).solve(&mut lanes);
        for (value, lane) in values.iter_mut().zip(&lanes) {
            *value = lane[0];
        }
        for &(node, t_c) in held {
            values[node] = t_c;
        }
        values
    }
}

/// Conductance that stands for "held at": 1e12 times a strong coupling, so the held node moves less than 1e-9 K.
pub(super) const HOLD_W_PER_K: f64 = 1e15;

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_full_mesh_solves_like_gaussian_elimination() {
        // Four nodes all linked: the answer of a dense solve, checked by putting it back into the equations.
        let nodes = [Node::Capacity(0.0); 4];
        let links = [(0, 1), (0, 2), (0, 3), (1, 2), (1, 3), (2, 3)];
        let mut network = Network::new(&nodes, &links).expect("valid network");
        for i in 0..links.len() {
            let link = network.link(i).expect("link");
            network.set_link(link, 1.0 + i as f64);
        }
        network.add_boundary(0, 5.0, -10.0);
        network.add_boundary(3, 2.0, 4.0);
        network.add_input(2, 70.0);
        let t = network.steady(&[]);
        for node in 0..4 {
            assert!(network.net_flow_w(node, &t).abs() < 1e-9, "node {node}");
        }
    }

    #[test]
    fn wrong_links_are_refused() {
        assert!(Network::new(&[Node::Capacity(1.0)], &[(0, 0)]).is_none());
        assert!(Network::new(&[Node::Capacity(1.0)], &[(0, 1)]).is_none());
        assert!(Network::new(&[Node::Capacity(1.0); 9], &[]).is_none());
    }
}
