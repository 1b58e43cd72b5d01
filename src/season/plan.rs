//! A scenario measured and looked up: all that stays the same over the season.

use super::error::RunError;
use super::layout::Layout;
use crate::geometry::{Shell, TentBox};
use crate::model::{Catalogue, Drawn, NightCover, Part, PartCovering, Scenario, Sheet, TentBase, Zone};
use crate::physics::skin::{OPAQUE_EMISSIVITY, sky_emissivity, stack_resistance};
use crate::physics::solar::{ZoneShares, catch_share};
use crate::physics::stores::{air_capacity_j_per_k, floor_capacity_j_per_k};
use crate::physics::tent_wall::{BENCH_BASE_U, INSULATED_BENCH_BASE_U, tent_u_w_per_m2k};
use crate::physics::{air, ground, stores};

/// Facets of the skin with the same stack of sheets and the same night cover.
#[derive(Debug, Clone, PartialEq)]
pub struct SkinGroup {
    /// m².
    pub area_m2: f64,
    /// Σ area × sky view × outer emissivity, m².
    pub sky_area_m2: f64,
    /// Handbook resistance, m²·K/W.
    pub resistance: f64,
    /// Handbook resistance of the outermost sheet alone, m²·K/W.
    pub outermost_resistance: f64,
    /// What the night cover adds while drawn, m²·K/W.
    pub night_resistance: f64,
}

/// A facet that passes light.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LightFacet {
    /// m².
    pub area_m2: f64,
    /// Outward unit vector: east, north, up.
    pub normal: [f64; 3],
    /// Solar transmittance of its stack at normal incidence.
    pub transmittance: f64,
    /// The same while the night cover is drawn.
    pub night_transmittance: f64,
}

/// One of the two zones.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct ZonePlan {
    /// Gross volume less what stands in it, m³.
    pub volume_m3: f64,
    /// Zone floor, m².
    pub floor_m2: f64,
    /// Capacity of the air, J/K.
    pub air_j_per_k: f64,
    /// Capacity of floor and benches, J/K.
    pub floor_j_per_k: f64,
    /// Floor and benches to air, W/K.
    pub floor_to_air_w_per_k: f64,
    /// Water, kg.
    pub water_kg: f64,
    /// Water to air, W/K.
    pub water_to_air_w_per_k: f64,
    /// How it divides its sun.
    pub sun: ZoneShares,
}

/// The tent's ties to the house.
#[derive(Debug, Clone, PartialEq)]
pub struct TentPlan {
    /// The zone itself.
    pub zone: ZonePlan,
    /// Its box.
    pub measures: TentBox,
    /// Resistance of wall and top, m²·K/W.
    pub resistance: f64,
    /// What its night cover adds while drawn, m²·K/W.
    pub night_resistance: f64,
    /// Base to house air, W/K; zero on the floor.
    pub base_w_per_k: f64,
    /// Steady air exchange, W/K.
    pub exchange_w_per_k: f64,
    /// Share of the house's kept sun that strikes and passes its top.
    pub sun_share: f64,
    /// The same while its night cover is drawn.
    pub night_sun_share: f64,
    /// Core of its floor to deep ground, W/K.
    pub core_w_per_k: f64,
}

/// The scenario, measured.
#[derive(Debug, Clone, PartialEq)]
pub struct Plan {
    /// Geometry of the house.
    pub shell: Shell,
    /// Skin by groups.
    pub skin: Vec<SkinGroup>,
    /// Facets that pass light.
    pub light: Vec<LightFacet>,
    /// Share of passing light that meets something.
    pub catch: f64,
    /// The house outside the tent.
    pub house: ZonePlan,
    /// The tent, if there is one.
    pub tent: Option<TentPlan>,
    /// Edge of the floor to outdoor air, W/K.
    pub edge_w_per_k: f64,
    /// Core of the house's floor to deep ground, W/K.
    pub core_w_per_k: f64,
    /// Party wall, W/K.
    pub party_w_per_k: f64,
    /// When the house's night cover is drawn; none without one.
    pub night_cover: Option<Drawn>,
    /// When the tent's night cover is drawn; none without one.
    pub tent_night_cover: Option<Drawn>,
    /// Places of the nodes.
    pub layout: Layout,
}

impl Plan {
    /// Measures a scenario.
    ///
    /// # Errors
    /// An unknown sheet or screen, or a stack without sheets.
    pub fn new(scenario: &Scenario, catalogue: &Catalogue) -> Result<Self, RunError> {
        let shell = Shell::of(&scenario.house);
        let closing = Closing::new(scenario, catalogue)?;
        let (mut skin, mut light) = (Vec::new(), Vec::new());
        let (mut sheets_j_per_k, mut opaque_wall, mut all_wall) = (0.0, shell.party_wall_m2, shell.party_wall_m2);
        for facet in &shell.facets {
            let cover = closing.of(facet.part);
            push_skin(&mut skin, cover, facet.area_m2, facet.sky_view());
            sheets_j_per_k += cover.sheets_j_per_m2k * facet.area_m2;
            if facet.is_wall() {
                all_wall += facet.area_m2;
                opaque_wall += if cover.transmittance.is_none() { facet.area_m2 } else { 0.0 };
            }
            if let Some(transmittance) = cover.transmittance {
                let night_transmittance = transmittance * cover.night_transmittance;
                let normal = facet.normal();
                light.push(LightFacet { area_m2: facet.area_m2, normal, transmittance, night_transmittance });
            }
        }
        let measures = TentBox::of(&scenario.tent);
        let tent = measures.map(|m| tent_plan(scenario, catalogue, m, &shell)).transpose()?;
        let house = house_zone(scenario, &shell, measures.as_ref(), sheets_j_per_k);
        let core = ground::core_w_per_k(shell.core_floor_m2);
        Ok(Self {
            edge_w_per_k: ground::edge_w_per_k(scenario.house.edge_f_w_per_mk, shell.exposed_perimeter_m),
            core_w_per_k: core - tent.as_ref().map_or(0.0, |t| t.core_w_per_k),
            party_w_per_k: shell.party_wall_m2 * scenario.house.party_wall_u_w_per_m2k,
            catch: catch_share(scenario.house.fullness, opaque_wall, all_wall),
            night_cover: scenario.night_cover.present.then_some(scenario.night_cover.drawn),
            tent_night_cover: scenario.tent.night_cover.present.then_some(scenario.tent.night_cover.drawn),
            layout: Layout::new(&house, tent.as_ref().map(|t| &t.zone)),
            shell,
            skin,
            light,
            house,
            tent,
        })
    }
}

/// The zone that a thing stands in: the tent stands for the house while none is put up.
#[must_use]
pub fn actual_zone(zone: Zone, scenario: &Scenario) -> Zone {
    if scenario.tent.present { zone } else { Zone::House }
}

/// What closes one part.
#[derive(Clone, Copy)]
struct PartCover {
    resistance: f64,
    outermost_resistance: f64,
    night_resistance: f64,
    emissivity: f64,
    /// None for an opaque part.
    transmittance: Option<f64>,
    night_transmittance: f64,
    sheets_j_per_m2k: f64,
}

struct Closing {
    rest: PartCover,
    exceptions: Vec<(Part, PartCover)>,
    night: Option<(Vec<Part>, f64, f64)>,
}

impl Closing {
    fn new(scenario: &Scenario, catalogue: &Catalogue) -> Result<Self, RunError> {
        let covering = &scenario.covering;
        let exceptions = covering.exceptions.iter().map(|e| {
            let cover = match &e.covering {
                PartCovering::Sheets(keys) => sheets_cover(&look_up(keys, catalogue, "skin")?),
                PartCovering::Opaque(u) => opaque_cover(*u),
            };
            Ok((e.part, cover))
        });
        Ok(Self {
            rest: sheets_cover(&look_up(&covering.sheets, catalogue, "skin")?),
            exceptions: exceptions.collect::<Result<_, RunError>>()?,
            night: night_values(&scenario.night_cover, catalogue)?
                .map(|(added, passed)| (scenario.night_cover.parts.clone(), added, passed)),
        })
    }

    fn of(&self, part: Part) -> PartCover {
        let mut cover = self.exceptions.iter().find(|(p, _)| *p == part).map_or(self.rest, |(_, cover)| *cover);
        if let Some((parts, added, passed)) = &self.night
            && parts.contains(&part)
        {
            cover.night_resistance = *added;
            cover.night_transmittance = *passed;
        }
        cover
    }
}

fn look_up<'a>(keys: &[String], catalogue: &'a Catalogue, what: &'static str) -> Result<Vec<&'a Sheet>, RunError> {
    if keys.is_empty() {
        return Err(RunError::NoSheet(what));
    }
    keys.iter().map(|key| catalogue.sheet(key).ok_or_else(|| RunError::UnknownSheet(key.clone()))).collect()
}

/// Added resistance and transmittance of a night cover that is present.
fn night_values(cover: &NightCover, catalogue: &Catalogue) -> Result<Option<(f64, f64)>, RunError> {
    if !cover.present {
        return Ok(None);
    }
    let screen = catalogue.screen(&cover.screen).ok_or_else(|| RunError::UnknownScreen(cover.screen.clone()))?;
    Ok(Some((screen.added_resistance_m2k_per_w, screen.solar_transmittance)))
}

fn sheets_cover(sheets: &[&Sheet]) -> PartCover {
    PartCover {
        resistance: stack_resistance(sheets.iter().copied()),
        outermost_resistance: stack_resistance(sheets.iter().copied().take(1)),
        night_resistance: 0.0,
        emissivity: sheets.first().map_or(OPAQUE_EMISSIVITY, |outer| sky_emissivity(outer)),
        transmittance: Some(stack_transmittance(sheets)),
        night_transmittance: 1.0,
        sheets_j_per_m2k: stack_heat_capacity(sheets),
    }
}

fn opaque_cover(u_w_per_m2k: f64) -> PartCover {
    PartCover {
        resistance: 1.0 / u_w_per_m2k,
        outermost_resistance: 1.0 / u_w_per_m2k,
        night_resistance: 0.0,
        emissivity: OPAQUE_EMISSIVITY,
        transmittance: None,
        night_transmittance: 1.0,
        sheets_j_per_m2k: 0.0,
    }
}

fn stack_transmittance(sheets: &[&Sheet]) -> f64 {
    sheets.iter().map(|s| s.solar_transmittance).product()
}

fn stack_heat_capacity(sheets: &[&Sheet]) -> f64 {
    sheets.iter().map(|s| s.heat_capacity_kj_per_m2k * 1000.0).sum()
}

fn push_skin(groups: &mut Vec<SkinGroup>, cover: PartCover, area_m2: f64, sky_view: f64) {
    let sky_area_m2 = area_m2 * sky_view * cover.emissivity;
    let alike = |g: &&mut SkinGroup| {
        g.resistance == cover.resistance
            && g.outermost_resistance == cover.outermost_resistance
            && g.night_resistance == cover.night_resistance
    };
    if let Some(group) = groups.iter_mut().find(alike) {
        group.area_m2 += area_m2;
        group.sky_area_m2 += sky_area_m2;
    } else {
        groups.push(SkinGroup {
            area_m2,
            sky_area_m2,
            resistance: cover.resistance,
            outermost_resistance: cover.outermost_resistance,
            night_resistance: cover.night_resistance,
        });
    }
}

/// Water of one zone: kg, exposed m², absorbing m².
fn water_in(scenario: &Scenario, zone: Zone) -> (f64, f64, f64) {
    let mut sum = (0.0, 0.0, 0.0);
    if scenario.water.present {
        for v in scenario.water.vessels.iter().filter(|v| actual_zone(v.zone, scenario) == zone) {
            let count = f64::from(v.count);
            sum.0 += count * v.litres_each;
            sum.1 += count * v.exposed_area_m2_each;
            sum.2 += count * v.sunlit_area_m2_each * v.absorptance;
        }
    }
    sum
}

/// Bench area in a zone, m². Under a hung tent the base is the tent's bench.
fn bench_in(scenario: &Scenario, zone: Zone) -> f64 {
    let bench = &scenario.bench;
    if bench.present && actual_zone(bench.zone, scenario) == zone {
        f64::from(bench.count) * bench.length_m * bench.width_m
    } else {
        0.0
    }
}

fn house_zone(scenario: &Scenario, shell: &Shell, tent: Option<&TentBox>, sheets_j_per_k: f64) -> ZonePlan {
    let footprint = tent.map_or(0.0, |t| if t.stands_on_floor { t.base_m2 } else { 0.0 });
    let floor_m2 = (shell.floor_m2 - footprint).max(0.0);
    let bench_m2 = bench_in(scenario, Zone::House);
    let volume_m3 = shell.volume_m3 - tent.map_or(0.0, |t| t.volume_m3);
    let (water_kg, exposed_m2, absorbing_m2) = water_in(scenario, Zone::House);
    ZonePlan {
        volume_m3,
        floor_m2,
        air_j_per_k: air_capacity_j_per_k(volume_m3, floor_m2, sheets_j_per_k),
        floor_j_per_k: floor_capacity_j_per_k(floor_m2, bench_m2, scenario.bench.medium_depth_m),
        floor_to_air_w_per_k: stores::FLOOR_TO_AIR * (floor_m2 + bench_m2),
        water_kg,
        water_to_air_w_per_k: stores::WATER_TO_AIR * exposed_m2,
        sun: ZoneShares::new(scenario.house.planted_share, scenario.crop.transpiration_share, absorbing_m2, floor_m2),
    }
}

fn tent_plan(
    scenario: &Scenario,
    catalogue: &Catalogue,
    measures: TentBox,
    shell: &Shell,
) -> Result<TentPlan, RunError> {
    let sheets = look_up(&scenario.tent.sheets, catalogue, "tent")?;
    let (night_resistance, night_transmittance) =
        night_values(&scenario.tent.night_cover, catalogue)?.unwrap_or((0.0, 1.0));
    let top_share = (measures.base_m2 / shell.floor_m2).min(1.0);
    let sun_share = top_share * stack_transmittance(&sheets);
    let sheets_j_per_k = stack_heat_capacity(&sheets) * measures.wall_and_top_m2;
    let base_u = match scenario.tent.base {
        TentBase::Floor => 0.0,
        TentBase::Bench => BENCH_BASE_U,
        TentBase::InsulatedBench => INSULATED_BENCH_BASE_U,
    };
    let core_share = if measures.stands_on_floor { top_share } else { 0.0 };
    Ok(TentPlan {
        zone: tent_zone(scenario, &measures, sheets_j_per_k),
        measures,
        resistance: 1.0 / tent_u_w_per_m2k(sheets.iter().copied()),
        night_resistance,
        base_w_per_k: base_u * measures.base_m2,
        exchange_w_per_k: air::exchange_w_per_k(measures.volume_m3, scenario.tent.air_changes_per_h),
        sun_share,
        night_sun_share: sun_share * night_transmittance,
        core_w_per_k: ground::core_w_per_k(shell.core_floor_m2) * core_share,
    })
}

fn tent_zone(scenario: &Scenario, measures: &TentBox, sheets_j_per_k: f64) -> ZonePlan {
    let bench_m2 = bench_in(scenario, Zone::Tent);
    let (water_kg, exposed_m2, absorbing_m2) = water_in(scenario, Zone::Tent);
    let (soil_m2, medium_m2, to_air_m2) = if measures.stands_on_floor {
        (measures.base_m2, bench_m2, measures.base_m2 + bench_m2)
    } else {
        (0.0, if bench_m2 > 0.0 { measures.base_m2 } else { 0.0 }, measures.base_m2)
    };
    ZonePlan {
        volume_m3: measures.volume_m3,
        floor_m2: measures.base_m2,
        air_j_per_k: air_capacity_j_per_k(measures.volume_m3, measures.base_m2, sheets_j_per_k),
        floor_j_per_k: floor_capacity_j_per_k(soil_m2, medium_m2, scenario.bench.medium_depth_m),
        floor_to_air_w_per_k: stores::FLOOR_TO_AIR * to_air_m2,
        water_kg,
        water_to_air_w_per_k: stores::WATER_TO_AIR * exposed_m2,
        sun: ZoneShares::new(
            scenario.tent.planted_share,
            scenario.crop.transpiration_share,
            absorbing_m2,
            measures.base_m2,
        ),
    }
}
