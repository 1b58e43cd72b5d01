//! Published worked examples of heat loss through the functions that the program uses.

use warmfold::geometry::Shell;
use warmfold::model::{Catalogue, Fuel, FuelUnit, Heater, House, Shape, Study};
use warmfold::physics::air::exchange_w_per_k;
use warmfold::physics::ground::edge_w_per_k;
use warmfold::physics::network::{FreezingStore, Network, Node};
use warmfold::physics::step::{State, advance};
use warmfold::physics::stores::{HEAT_OF_FUSION, ICE_SPECIFIC_HEAT, WATER_SPECIFIC_HEAT, WATER_TO_AIR};
use warmfold::season::baseline::Baseline;
use warmfold::season::money::{Purchase, heat_per_energy};
use warmfold::units::{JOULES_PER_BTU, METRES_PER_FOOT, kwh_from_joules};

/// W/K per Btu/(h·°F).
const W_PER_K_PER_BTU: f64 = JOULES_PER_BTU / 3600.0 * 1.8;
/// W per Btu/h.
const W_PER_BTU_PER_H: f64 = JOULES_PER_BTU / 3600.0;

/// Heat through these conductances at a difference, W, by the program's network.
fn steady_w(conductances_w_per_k: &[f64], inside_c: f64, outdoor_c: f64) -> f64 {
    let mut house = Network::new(&[Node::Capacity(0.0)], &[]).expect("one node");
    for w_per_k in conductances_w_per_k {
        house.add_boundary(0, *w_per_k, outdoor_c);
    }
    -house.net_flow_w(0, &house.steady(&[(0, inside_c)]))
}

#[test]
fn e1_air_leakage_of_a_hoop_house() {
    // Bartok, Save money by reducing air infiltration: 30 × 100 ft, 1 change/h, 60 °F. Its 36,000 Btu/h rest on a
    // rounded 0.02 Btu/(ft³·°F); with 0.018, which the program has, 30,000 ft³ lose 32,400 Btu/h. 0.1 %: 1206 J/(m³·K)
    // is 0.018 rounded.
    let volume_m3 = 30_000.0 * METRES_PER_FOOT.powi(3);
    let found_w = steady_w(&[exchange_w_per_k(volume_m3, 1.0)], 60.0 / 1.8, 0.0);
    assert!((found_w / (32_400.0 * W_PER_BTU_PER_H) - 1.0).abs() < 1e-3, "{found_w} W");
}

#[test]
fn e15_slab_edge() {
    // Washington Administrative Code 51-11C-61061 values on a 12 × 24 ft floor, 50 °F: 770 W bare, 570 W with board.
    // Half a watt, with F to the four figures of the table in SI: 0.05 %.
    let perimeter_m = 72.0 * METRES_PER_FOOT;
    for (edge_f, expected_w) in [(1.263, 770.0), (0.935, 570.0)] {
        let found_w = steady_w(&[edge_w_per_k(edge_f, perimeter_m)], 50.0 / 1.8, 0.0);
        assert!((found_w - expected_w).abs() < 0.5 + expected_w * 5e-4, "{found_w} W");
    }
}

#[test]
fn slab_edge_as_an_equivalent_u() {
    // US DOE engineering reference, F-factor method: U = P F/A; 12 × 24 ft, F 0.73: 1.036 W/(m²·K) to the last digit.
    let floor_m2 = 12.0 * 24.0 * METRES_PER_FOOT * METRES_PER_FOOT;
    let u = edge_w_per_k(1.2634, 72.0 * METRES_PER_FOOT) / floor_m2;
    assert!((u - 1.036).abs() < 6e-4, "{u}");
}

#[test]
fn e16_small_garden_glasshouse() {
    // garden.ie: 2 kW keep 3.6 × 2.4 m frost-free at −8 °C. With U 6.0 and 2 changes/h the reference has 1.67 kW for 8 K
    // and 2.08 kW for 10 K: half a unit of the last digit, and 0.3 % for its area, volume and 0.335 Wh/(m³·K).
    let shell = Shell::of(&House {
        shape: Shape::Gable,
        length_m: 3.6,
        width_m: 2.4,
        eaves_height_m: 1.8,
        ridge_height_m: 2.4,
        ..House::default()
    });
    let ties = [shell.surface_m2() * 6.0, exchange_w_per_k(shell.volume_m3, 2.0)];
    for (lift_k, expected_w) in [(8.0, 1670.0), (10.0, 2080.0)] {
        let found_w = steady_w(&ties, lift_k - 8.0, -8.0);
        assert!((found_w - expected_w).abs() < 5.0 + 0.003 * expected_w, "{found_w} W");
    }
}

#[test]
fn e6_heater_of_a_22_by_96_foot_house() {
    // Maker's how-to article: ends 352 ft² at 0.53, roof 3,456 ft² at 0.70: 1,374.6 W/K, 53.5 kW at 70 °F. Last digits.
    let ties = [352.0 * 0.53 * W_PER_K_PER_BTU, 3456.0 * 0.70 * W_PER_K_PER_BTU];
    assert!((ties.iter().sum::<f64>() - 1374.6).abs() < 0.06);
    assert!((steady_w(&ties, 70.0 / 1.8, 0.0) / 1000.0 - 53.5).abs() < 0.06);
}

#[test]
fn e8_wall_with_windows() {
    // Energy education page: 1,908 Btu/h at 70/20 °F, exact to the Btu.
    let ties = [420.0 * 0.055 * W_PER_K_PER_BTU, 60.0 * 0.251 * W_PER_K_PER_BTU];
    let found = steady_w(&ties, 50.0 / 1.8, 0.0) / W_PER_BTU_PER_H;
    assert!((found - 1908.0).abs() < 0.6, "{found} Btu/h");
}

#[test]
fn e12_ten_gallons_freezing() {
    // 8.35 lb/gal × 454 g × 10 at 80 cal/g: 12.69 MJ; 0.5 % because 80 cal/g is rounded.
    let found_mj = 37.909 * HEAT_OF_FUSION / 1e6;
    assert!((found_mj / 12.69 - 1.0).abs() < 5e-3, "{found_mj} MJ");
}

#[test]
fn e11_half_a_kilogram_from_10_degrees_to_ice() {
    // Tutoring page: 188 kJ in all, of which 167 kJ freeze it; whole kilojoules.
    let water = FreezingStore {
        mass_kg: 0.5,
        liquid_j_per_kgk: WATER_SPECIFIC_HEAT,
        ice_j_per_kgk: ICE_SPECIFIC_HEAT,
        fusion_j_per_kg: HEAT_OF_FUSION,
    };
    let glass = Network::new(&[Node::Water(water)], &[]).expect("one node");
    let mut state = State::uniform(&glass, 10.0);
    let warm_kj = state.enthalpy_j(&glass, 0) / 1000.0;
    (state.temperature_c[0], state.ice_share[0]) = (0.0, 1.0);
    let ice_kj = state.enthalpy_j(&glass, 0) / 1000.0;
    assert!((warm_kj - ice_kj - 188.0).abs() < 0.5 && (-ice_kj - 167.0).abs() < 0.5, "{warm_kj} {ice_kj}");
}

#[test]
fn e7_oil_by_degree_days() {
    // How-to page with the heating value of the US Energy Information Administration: 675 Btu/(h·°F), 5,000 °F·days, oil of
    // 138,690 Btu/gal burnt at 78 %: 81,000,000 Btu or 23,739 kWh, 748.8 gal ± 0.1. The program's baseline, hour by hour.
    let baseline = Baseline { setpoint_c: 18.0, ua_w_per_k: 675.0 * W_PER_K_PER_BTU };
    let colder_k = 10.0;
    let hours = 5000.0 / 1.8 / colder_k * 24.0;
    let heat_kwh = baseline.heat_w(18.0 - colder_k) * hours / 1000.0;
    assert!((heat_kwh - 23_739.0).abs() < 0.5, "{heat_kwh} kWh");
    let unit = FuelUnit { unit: "US gal".to_owned(), kwh_gross_per_unit: kwh_from_joules(138_690.0 * JOULES_PER_BTU) };
    let oil = Fuel {
        key: "oil".to_owned(),
        name: "Heating oil".to_owned(),
        units: vec![unit],
        net_per_gross: 1.0,
        co2_kg_per_kwh: None,
        source: String::new(),
    };
    let heater = Heater { fuel: "oil".to_owned(), efficiency: 0.78, ..Heater::default() };
    let catalogue = Catalogue { fuels: vec![oil], ..Catalogue::default() };
    let purchase = Purchase::of(&heater, &Study::default(), &catalogue).expect("a known fuel");
    let gallons = heat_kwh / heat_per_energy(&heater, 0.0) / purchase.kwh_per_unit;
    assert!((gallons - 748.8).abs() < 0.1, "{gallons} gal");
}

#[test]
fn barrel_of_water_cools() {
    // Heat-loss reference, section 7: 208 L, 1.786 m², h 7: τ 19.34 h to its last digit. Its temperature and heat after
    // 10 h do not follow from that τ; by hand: 2 + 10 exp(−10/19.34) = 7.963 °C, and 4.037 K × 0.24186 kWh/K = 0.9764 kWh.
    let capacity = 208.0 * WATER_SPECIFIC_HEAT;
    let w_per_k = 1.786 * WATER_TO_AIR;
    assert!((capacity / w_per_k / 3600.0 - 19.34).abs() < 0.01);
    let mut barrel = Network::new(&[Node::Capacity(capacity)], &[]).expect("one node");
    barrel.add_boundary(0, w_per_k, 2.0);
    let start = State::uniform(&barrel, 12.0);
    let end = (0..10).fold(start, |state, _| advance(&barrel, &state, 3600.0, &[]).end);
    assert!((end.temperature_c[0] - 7.963).abs() < 0.002, "{}", end.temperature_c[0]);
    let given_kwh = kwh_from_joules(start.enthalpy_j(&barrel, 0) - end.enthalpy_j(&barrel, 0));
    assert!((given_kwh - 0.9764).abs() < 0.0005, "{given_kwh}");
}

#[test]
fn two_zones_in_steady_state() {
    // Heat-loss reference, section 11: outer 60 m² at 6.8 and 60 m³ at 1/h, tent 12 m² at 4.175 and 5 m³ at 0.5/h, 7 °C
    // in −5 °C: house −3.72 °C, 546.3 W; whole house 5,137 W. It has 0.335 Wh/(m³·K) = 1206 J/(m³·K): last digits.
    let outer = 60.0 * 6.8 + exchange_w_per_k(60.0, 1.0);
    let tent = 12.0 * 4.175 + exchange_w_per_k(5.0, 0.5);
    let mut house = Network::new(&[Node::Capacity(0.0); 2], &[(0, 1)]).expect("two nodes");
    let wall = house.link(0).expect("link");
    house.set_link(wall, tent);
    house.add_boundary(0, outer, -5.0);
    let t = house.steady(&[(1, 7.0)]);
    assert!((t[0] + 3.72).abs() < 0.006, "{}", t[0]);
    assert!((-house.net_flow_w(1, &t) - 546.3).abs() < 0.1, "{}", house.net_flow_w(1, &t));
    assert!((steady_w(&[outer], 7.0, -5.0) - 5137.0).abs() < 0.6);
}
