//! Questions beyond the season: other air, a power cut, a colder spell, other winters.

use super::{choose, cost, demo, enter, settle};
use egui::accesskit::Role;
use egui_kittest::Harness;
use egui_kittest::kittest::{NodeT, Queryable};
use std::time::{Duration, Instant};
use warmfold::gui::State;

#[test]
fn air_and_damp_follows_the_allowed_rise_and_names_what_would_help() {
    let mut h = demo();
    choose(&mut h, 0);
    h.get_by_role_and_label(Role::Tab, "Air & damp").click();
    settle(&mut h);
    let needed = |h: &Harness<'static, State>| {
        h.state().chosen_season().unwrap().0.run.summary.air_advice.unwrap().flow_needed_m3_per_h
    };
    let said = |h: &Harness<'static, State>, start: &str| h.query_all_by_label_contains(start).next().is_some();
    let of_eight = needed(&h);
    assert!(said(&h, &format!("Fan or vents move {} m³/h", warmfold::format::number(of_eight, 0))));
    assert!(said(&h, "Hours by month. Season: House above 35 °C 0 hours"));
    // A rise half as large asks for more than twice the air: the skin carries less, too.
    enter(&mut h, "Allowed rise", "4");
    assert!(needed(&h) > 2.0 * of_eight, "{} and {of_eight}", needed(&h));
    assert_eq!(h.state().document.history.undo_name(), Some("vents allowed rise"));
    // What other air would change has come: an hour of airing costs money and dries the skin.
    let airing = h.state().air.last().unwrap().1.morning_airing;
    let money = warmfold::format::money_difference(airing.cost.unwrap(), "$");
    assert!(airing.cost.unwrap() > 0.0 && airing.hours_skin_wet < 0, "{airing:?}");
    assert!(said(&h, &format!("Winter {money}")) && said(&h, &format!("Skin wet −{} h", -airing.hours_skin_wet)));
    // An unvented flame is offered a flue.
    assert!(!said(&h, "Water from flames 1") && h.state().air.last().unwrap().1.flue.is_none());
    h.state_mut().document.draft.study.scenarios[0].heater = warmfold::model::Heater {
        fuel: "kerosene".to_owned(),
        ..h.state().document.draft.study.scenarios[0].heater.clone()
    };
    choose(&mut h, 0);
    let flue = h.state().air.last().unwrap().1.flue.expect("a flame without a flue");
    assert!(flue.hours_skin_wet < 0 && flue.hours_crop_humidity_90 <= 0);
    // The hint of the trade's range comes and goes with the openers' start.
    assert!(!said(&h, "wax openers are made for"));
    h.state_mut().document.draft.study.scenarios[0].vents.opens_at_c = 12.0;
    choose(&mut h, 0);
    assert!(said(&h, "Openers begin at 12.0 °C; wax openers are made for 15 °C to 24 °C"));
    // A click on the days moves the time cursor into them.
    h.get_by_role_and_label(Role::RadioButton, "Sunniest mild day").click();
    settle(&mut h);
    let plot = h.query_all_by_label_contains("three days hour by hour").next().unwrap().rect();
    h.hover_at(plot.center());
    h.drag_at(plot.center());
    h.step();
    h.drop_at(plot.center());
    settle(&mut h);
    let (season, _) = h.state().chosen_season().unwrap();
    let sunny = season.run.summary.air_advice.unwrap().hour;
    assert!(h.state().hour.unwrap().abs_diff(sunny) <= 36, "{:?} {sunny}", h.state().hour);
}

#[test]
fn a_power_cut_is_chosen_by_date_and_length() {
    let mut h = demo();
    let tent = h.state().document.draft.study.scenarios.iter().position(|s| s.tent.present).unwrap();
    choose(&mut h, tent);
    h.get_by_role_and_label(Role::Tab, "Coldest nights").click();
    settle(&mut h);
    let figures = cost(&h);
    h.get_by_role_and_label(Role::RadioButton, "Power cut").click();
    settle(&mut h);
    assert!(h.query_by_label_contains("Without mains the crop").is_some());
    // As described, without water, without the tent: a column each.
    assert!(h.query_by_label_contains("Columns: As described, Without water, Without inner tent").is_some());
    let caught_up = |h: &Harness<'static, State>| h.get_by_label_contains("caught up in").accesskit_node().value();
    let before = caught_up(&h);
    enter(&mut h, "Hours without mains", "48");
    assert_eq!(h.state().document.draft.study.hard_night.cut_hours, 48);
    assert!(h.query_by_label_contains("lowest air ").is_some());
    assert_ne!(caught_up(&h), before);
    enter(&mut h, "Power cut from", "24 Dec 17:00");
    let at = warmfold::model::CutStarts::At { month: 12, day: 24, hour: 17 };
    assert_eq!(h.state().document.draft.study.hard_night.cut_starts, at);
    assert_eq!(h.state().document.history.undo_name(), Some("power cut start"));
    // Nonsense is not taken.
    enter(&mut h, "Power cut from", "soon");
    assert_eq!(h.state().document.draft.study.hard_night.cut_starts, at);
    h.get_by_label("Back to the coldest twelve hours").click();
    settle(&mut h);
    assert_eq!(h.state().document.draft.study.hard_night.cut_starts, warmfold::model::CutStarts::Coldest);
    h.get_by_role_and_label(Role::RadioButton, "Trays").click();
    settle(&mut h);
    assert!(h.state().coldest.trays);
    // What is asked about hard nights moves no season.
    assert_eq!(cost(&h), figures);
}

#[test]
fn a_colder_spell_is_answered_beside_the_loads() {
    let mut h = demo();
    choose(&mut h, 0);
    h.get_by_role_and_label(Role::Tab, "Coldest nights").click();
    settle(&mut h);
    assert!(h.query_by_label_contains("and would down to").is_some());
    assert!(h.query_by_label_contains("Margin at 99.6 % +").is_some());
    assert!(h.query_by_label_contains("Next size").is_some());
    assert!(h.query_by_label_contains("Floors hold").is_some());
    enter(&mut h, "Colder by", "20");
    assert!((h.state().document.draft.study.hard_night.colder_by_k - 20.0).abs() < 1e-9);
    assert!(h.query_by_label_contains("falls short, lowest").is_some());
    assert_eq!(h.state().document.history.undo_name(), Some("colder by"));
    // In °F the same cold is another number.
    h.get_by_label("°F · ft").click();
    settle(&mut h);
    assert!(h.query_by_label_contains("36.0 °F colder").is_some());
}

#[test]
fn many_winters_come_in_and_can_be_stopped() {
    let mut h = demo();
    h.state_mut().document.draft.study.many_winters.count = 1000;
    choose(&mut h, 0);
    h.get_by_role_and_label(Role::Tab, "Many winters").click();
    h.run_steps(3);
    h.get_by_role_and_label(Role::Button, "Stop").click();
    h.run_steps(3);
    assert!(!h.state().outlook.working());
    h.get_by_label("Stopped");
    enter(&mut h, "Winters", "20");
    let start = Instant::now();
    while h.state().outlook.working() || h.query_by_label_contains("20 winters").is_none() {
        assert!(start.elapsed() < Duration::from_secs(120), "the winters did not come");
        std::thread::sleep(Duration::from_millis(5));
        h.step();
    }
    assert_eq!(h.state().document.draft.study.many_winters.count, 20);
    h.get_by_label_contains("One winter in ten costs more than");
    assert_eq!(h.get_all_by_label_contains("Half below").count(), 4, "one of each scenario");
}

#[test]
fn a_long_refusal_leaves_the_plot_its_room() {
    let mut h = demo();
    h.set_size(egui::vec2(1024.0, 768.0));
    choose(&mut h, 0);
    h.state_mut().document.draft.study.many_winters.count = 20;
    h.get_by_role_and_label(Role::Tab, "Many winters").click();
    settle(&mut h);
    let plot = |h: &Harness<'static, State>| h.get_by_label_contains("Running cost of many winters").rect();
    let before = plot(&h);
    enter(&mut h, "Winters", &"a number as long as it gets ".repeat(30));
    assert!(h.query_by_label_contains("is not a number").is_some());
    assert!(plot(&h).height() > 0.7 * before.height(), "{before} {}", plot(&h));
}
