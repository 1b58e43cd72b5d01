//! A scenario as six lumps, and what each hour of weather does to them.

use crate::shell::Shell;
use crate::skin::{self, Cover, Outside};
use crate::sky::{Ground, Light, sky_c};
use std::f64::consts::FRAC_PI_3;
use warmfold::model::{BehindPartyWall, Catalogue, Scenario, TentBase, TentOpening, Zone};
use warmfold::weather::WeatherYear;

/// Heat capacity of air, J/m³K.
pub const AIR: f64 = 1206.0;
/// Exposed to the wind of the mast, by shelter class.
const SITE_WIND: [f64; 5] = [0.85, 0.70, 0.55, 0.40, 0.30];

/// One zone: capacities in J/K, conductances in W/K.
#[derive(Default)]
pub struct ZoneLumps {
    pub air: f64,
    pub floor: f64,
    pub water_kg: f64,
    pub floor_to_air: f64,
    pub water_to_air: f64,
    pub edge: f64,
    pub core: f64,
    floor_m2: f64,
    absorbing_m2: f64,
    planted: f64,
}

pub struct Lumps {
    pub house: ZoneLumps,
    pub tent: Option<ZoneLumps>,
    pub party: f64,
    pub gross_m3: f64,
    pub tent_m3: f64,
    /// Base of a hung tent to house air.
    pub tent_base: f64,
    shell: Shell,
    covers: Vec<Cover>,
    tent_wall_m2: f64,
    tent_resistance: f64,
    tent_passes: f64,
    tent_top_share: f64,
    caught: f64,
    vapour: f64,
}

/// Everything of an hour that does not depend on the temperatures indoors.
pub struct Hour {
    pub outdoor_c: f64,
    pub mast_wind: f64,
    pub site_wind: f64,
    pub skin: f64,
    /// Σ conductance × temperature felt, W.
    pub skin_source: f64,
    pub ground_c: f64,
    pub behind_c: f64,
    pub tent_wall: f64,
    pub daylight: bool,
    /// Air, floor, water of the house and of the tent, W.
    pub sun: [[f64; 3]; 2],
}

impl Lumps {
    pub fn of(scenario: &Scenario, rows: &Catalogue) -> Self {
        let shell = Shell::of(&scenario.house);
        let covers: Vec<Cover> = shell.facets.iter().map(|f| Cover::of(scenario, f.part, rows)).collect();
        let tent = &scenario.tent;
        let (base_m2, on_floor) = (tent.length_m * tent.width_m, tent.base == TentBase::Floor);
        let tent_wall_m2 = base_m2 + 2.0 * tent.height_m * (tent.length_m + tent.width_m);
        let tent_m3 = if tent.present { base_m2 * tent.height_m } else { 0.0 };
        let (tent_resistance, tent_passes, tent_sheets) = skin::tent_wall(&tent.sheets, rows);
        let core = 1.4 * shell.core_m2;
        let footprint_m2 = if tent.present && on_floor { base_m2 } else { 0.0 };
        let tent_core = core * footprint_m2 / shell.floor_m2;

        let mut house = ZoneLumps::new(scenario, Zone::House, shell.floor_m2 - footprint_m2, true, base_m2);
        let sheets: f64 = shell.facets.iter().zip(&covers).map(|(f, c)| f.area_m2 * c.heat_j_per_m2k).sum();
        house.air += AIR * (shell.volume_m3 - tent_m3) + sheets / 2.0;
        house.edge = scenario.house.edge_f_w_per_mk * shell.perimeter_m;
        house.core = core - tent_core;
        let inner = tent.present.then(|| {
            let mut zone = ZoneLumps::new(scenario, Zone::Tent, base_m2, on_floor, base_m2);
            zone.air += AIR * tent_m3 + tent_wall_m2 * tent_sheets / 2.0;
            zone.core = tent_core;
            zone
        });
        let base_u = match tent.base {
            TentBase::Floor => 0.0,
            TentBase::Bench => 3.0,
            TentBase::InsulatedBench => 0.5,
        };
        Self {
            caught: caught_share(scenario, &shell, &covers),
            party: shell.party_wall_m2 * scenario.house.party_wall_u_w_per_m2k,
            gross_m3: shell.volume_m3,
            tent_base: base_u * base_m2,
            tent_top_share: (base_m2 / shell.floor_m2).min(1.0),
            vapour: scenario.crop.transpiration_share,
            house,
            tent: inner,
            tent_m3,
            shell,
            covers,
            tent_wall_m2,
            tent_resistance,
            tent_passes,
        }
    }

    pub fn hour(&self, scenario: &Scenario, rows: &Catalogue, year: &WeatherYear, ground: &Ground, at: usize) -> Hour {
        let record = &year.records[at];
        let mid_hour = f64::from(record.hour) - 0.5;
        let light = Light::of(record, &year.place, year.sun_offset_h);
        let site_wind = SITE_WIND[scenario.house.shelter_class as usize - 1] * record.wind_m_per_s;
        let outside = Outside::of(record.dry_bulb_c, sky_c(record), site_wind);
        let (night_r, night_light) = skin::night_cover(&scenario.night_cover, rows, light.global, mid_hour);
        let (tent_r, tent_light) = skin::night_cover(&scenario.tent.night_cover, rows, light.global, mid_hour);
        let (mut conductance, mut source) = (0.0, 0.0);
        for (facet, cover) in self.shell.facets.iter().zip(&self.covers) {
            let covered = scenario.night_cover.parts.contains(&facet.part);
            let (u, felt_c) = outside.facet(cover, if covered { night_r } else { 0.0 }, facet.tilt);
            conductance += u * facet.area_m2;
            source += u * facet.area_m2 * felt_c;
        }
        let kept = self.kept_light(scenario, &light, night_light);
        let to_tent =
            if self.tent.is_some() { kept * self.tent_top_share * self.tent_passes * tent_light } else { 0.0 };
        let exchange = AIR * self.tent_m3 * scenario.tent.air_changes_per_h / 3600.0;
        Hour {
            outdoor_c: record.dry_bulb_c,
            mast_wind: record.wind_m_per_s,
            site_wind,
            skin: conductance,
            skin_source: source,
            ground_c: ground.deep_c(at),
            behind_c: match scenario.house.behind_party_wall {
                BehindPartyWall::Outdoors => record.dry_bulb_c,
                BehindPartyWall::HeldAt(t_c) => t_c,
            },
            tent_wall: self.tent_wall_m2 / (self.tent_resistance + tent_r) + exchange,
            daylight: scenario.tent.opening == TentOpening::ByDay && light.global > 5.0,
            sun: [
                self.house.shares(kept - to_tent, self.vapour),
                self.tent.as_ref().map_or([0.0; 3], |zone| zone.shares(to_tent, self.vapour)),
            ],
        }
    }

    /// Light that stays in house and tent, W.
    fn kept_light(&self, scenario: &Scenario, light: &Light, night_light: f64) -> f64 {
        let (mut beam_in, mut diffuse_in, mut beam_on, mut diffuse_on) = (0.0, 0.0, 0.0, 0.0);
        for (facet, cover) in self.shell.facets.iter().zip(&self.covers) {
            let Some(passes) = cover.passes else { continue };
            let covered = scenario.night_cover.parts.contains(&facet.part);
            let (beam, diffuse, cosine) = light.on_plane(facet.tilt, facet.azimuth);
            let angle = if cosine > 0.0 { (1.0 - 0.1 * (1.0 / cosine - 1.0)).max(0.0) } else { 0.0 };
            let clear = 0.90 * facet.area_m2 * passes * if covered { night_light } else { 1.0 };
            beam_in += clear * angle * beam;
            diffuse_in += clear * 0.90 * diffuse;
            beam_on += facet.area_m2 * beam;
            diffuse_on += facet.area_m2 * diffuse;
        }
        let floor = |inside: f64, on: f64, horizontal: f64| {
            if on > 0.0 { inside.min(self.shell.floor_m2 * inside / on * horizontal) } else { 0.0 }
        };
        let on_floor =
            floor(beam_in, beam_on, light.beam * light.sun[2].max(0.0)) + floor(diffuse_in, diffuse_on, light.diffuse);
        0.85 * (self.caught * (beam_in + diffuse_in) + (1.0 - self.caught) * on_floor)
    }
}

impl ZoneLumps {
    /// Stores of a zone; of the air only what its floor carries. `soil` is false for a tent hung round a bench.
    fn new(scenario: &Scenario, zone: Zone, floor_m2: f64, soil: bool, hung_base_m2: f64) -> Self {
        let stands_in = |named: Zone| (if scenario.tent.present { named } else { Zone::House }) == zone;
        let bench = &scenario.bench;
        let mut bench_m2 = 0.0;
        if bench.present && stands_in(bench.zone) {
            // A hung tent's base is its bench.
            bench_m2 = if soil { f64::from(bench.count) * bench.length_m * bench.width_m } else { hung_base_m2 };
        }
        let soil_m2 = if soil { floor_m2 } else { 0.0 };
        let mut lumps = Self {
            air: 20_000.0 * floor_m2,
            floor: 0.12 * 2.0e6 * soil_m2 + 3.0e6 * bench.medium_depth_m * bench_m2,
            floor_to_air: 8.0 * if soil { floor_m2 + bench_m2 } else { hung_base_m2 },
            floor_m2,
            planted: if zone == Zone::House { scenario.house.planted_share } else { scenario.tent.planted_share },
            ..Self::default()
        };
        if scenario.water.present {
            for vessels in scenario.water.vessels.iter().filter(|v| stands_in(v.zone)) {
                let count = f64::from(vessels.count);
                lumps.water_kg += count * vessels.litres_each;
                lumps.water_to_air += 7.0 * count * vessels.exposed_area_m2_each;
                lumps.absorbing_m2 += count * vessels.sunlit_area_m2_each * vessels.absorptance;
            }
        }
        lumps
    }

    /// Sun to air, floor and water, W; vapour takes its part first.
    fn shares(&self, sun: f64, vapour: f64) -> [f64; 3] {
        let dry = sun * (1.0 - self.planted * vapour);
        let water = dry * (self.absorbing_m2 / self.floor_m2).min(0.5);
        [0.4 * (dry - water), 0.6 * (dry - water), water]
    }
}

/// Share of the passing light that meets something.
fn caught_share(scenario: &Scenario, shell: &Shell, covers: &[Cover]) -> f64 {
    let (mut opaque_m2, mut wall_m2) = (shell.party_wall_m2, shell.party_wall_m2);
    for (facet, cover) in shell.facets.iter().zip(covers).filter(|(f, _)| f.tilt > FRAC_PI_3) {
        wall_m2 += facet.area_m2;
        opaque_m2 += if cover.passes.is_none() { facet.area_m2 } else { 0.0 };
    }
    let fullness = scenario.house.fullness;
    fullness + (1.0 - fullness) * opaque_m2 / wall_m2
}
