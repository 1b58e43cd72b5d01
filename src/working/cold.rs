//! The coldest hour round the crop, and the hours below its limit.

use super::account::{Account, Factor, Number, Row, decimals, shared_decimals};
use super::ink::Ink;
use super::{Case, Panel, Topic};
use crate::format;
use crate::model::Zone;
use crate::season::plan::actual_zone;
use crate::units::Quantity;

/// Flows of one hour: name, W, whether it warms the house.
type Flow = (&'static str, f64, bool);

/// What the air round the crop did.
pub(super) struct Cold<'a> {
    case: &'a Case<'a>,
    ink: Ink<'a>,
    /// Air round the crop, hour by hour, °C.
    crop_c: &'a [f64],
    /// The hour of its lowest mean.
    coldest: usize,
}

impl<'a> Cold<'a> {
    /// Of a season; none of one without hours.
    pub fn of(case: &'a Case<'a>, ink: Ink<'a>) -> Option<Self> {
        let hours = &case.run.hours;
        let in_tent = actual_zone(case.scenario.crop.zone, case.scenario) == Zone::Tent;
        let crop_c: &[f64] = if in_tent { &hours.tent_air_c } else { &hours.house_air_c };
        let coldest = crop_c.iter().enumerate().min_by(|a, b| a.1.total_cmp(b.1))?.0;
        Some(Self { case, ink, crop_c, coldest })
    }

    /// The panel of the lowest air.
    pub fn lowest(&self) -> Panel {
        Panel {
            topic: Topic::Lowest,
            formula: "The lowest of the season's hourly means of the air round the crop. In that hour heaters, sun and stores \
                gave what the house lost.",
            accounts: vec![self.temperatures(), self.balance(), self.loss()],
            source: "Books of that hour. The program solves all temperatures together, hour after hour; these lines show \
                that its result keeps the books.",
        }
    }

    /// The panel of the hours below the limit.
    pub fn below_limit(&self) -> Panel {
        Panel {
            topic: Topic::BelowLimit,
            formula: "Hours whose mean of the air round the crop lies below the crop limit; degree-hours add up by how far.",
            accounts: vec![self.months(), self.depth()],
            source: "Hourly means of the season; the limit as given under Crop.",
        }
    }

    fn at(&self, column: &[f64]) -> f64 {
        column.get(self.coldest).copied().unwrap_or(0.0)
    }

    fn temperatures(&self) -> Account {
        let (ink, hours) = (self.ink, &self.case.run.hours);
        let lowest_c = self.at(self.crop_c);
        let mut rows = vec![
            Row::given("Outdoor air", ink.temperature(self.at(&hours.outdoor_c))),
            Row::given("House air", ink.temperature(self.at(&hours.house_air_c))),
        ];
        if !hours.tent_air_c.is_empty() {
            rows.push(Row::given("Tent air", ink.temperature(self.at(&hours.tent_air_c))));
        }
        let limit_c = self.case.scenario.crop.limit_c;
        let over = Quantity::TemperatureDifference.unit(ink.units).shown(lowest_c - limit_c);
        let symbol = Quantity::TemperatureDifference.unit(ink.units).symbol;
        rows.push(Row::product(
            "Crop above its limit",
            vec![ink.warmer(lowest_c, limit_c)],
            Number::new(over, 2, symbol),
        ));
        let stamp = hours.stamp(self.coldest, self.case.climate).map_or_else(String::new, format::stamp);
        Account::list(format!("The hour that ends {stamp}, lowest of {}", format::hours(self.crop_c.len())), rows)
    }

    fn flows(&self) -> [Flow; 9] {
        let h = &self.case.run.hours;
        [
            ("Out through the skin", self.at(&h.skin_loss_w), false),
            ("Out with air that leaks", self.at(&h.leakage_loss_w), false),
            ("Out through vents and fan", self.at(&h.vent_loss_w), false),
            ("Into the ground", self.at(&h.ground_loss_w), false),
            ("Through the party wall", self.at(&h.party_wall_loss_w), false),
            ("Sun that left as vapour", self.at(&h.vapour_w), false),
            ("Into air, floor, benches and water", self.at(&h.store_change_w), false),
            ("Sun that stayed in the house", self.at(&h.sun_w), true),
            ("Standby heater", self.at(&h.standby_w), true),
        ]
    }

    fn balance(&self) -> Account {
        let flows = self.flows();
        let heater_w = self.at(&self.case.run.hours.heater_w);
        let decimals = shared_decimals(flows.iter().map(|(_, w, _)| *w));
        let rows = flows.into_iter().filter(|(_, w, _)| *w != 0.0).map(|(name, w, warms)| {
            let row = Row::given(name, self.ink.watts(w, decimals));
            if warms { row.taken_away() } else { row }
        });
        let total = self.ink.watts(heater_w, decimals);
        Account::sum("Heat of that hour", rows.collect(), "Given by the heater", total)
    }

    /// The house's loss per degree in that hour's wind and sky; not told where the house is hardly warmer than outdoors.
    fn loss(&self) -> Account {
        let (ink, h) = (self.ink, &self.case.run.hours);
        let (house_c, outdoor_c) = (self.at(&h.house_air_c), self.at(&h.outdoor_c));
        let lost_w = self.at(&h.skin_loss_w) + self.at(&h.leakage_loss_w);
        if house_c - outdoor_c < LEAST_DIFFERENCE_K || lost_w <= 0.0 {
            return Account::default();
        }
        let degrees = Quantity::TemperatureDifference.unit(ink.units);
        let difference = degrees.shown(house_c - outdoor_c);
        let per_degree = lost_w / difference;
        let factors = vec![
            Factor::Times(ink.watts(lost_w, shared_decimals([lost_w]))),
            Factor::Over(Number::new(difference, 2, degrees.symbol)),
        ];
        let per = Number::new(per_degree, decimals(per_degree).min(2), format!("W/{}", degrees.symbol));
        let handbook = self.case.run.shell.ua_skin_w_per_k + self.case.run.shell.ua_leakage_w_per_k;
        let handbook = handbook / degrees.shown(1.0);
        let handbook = Number::new(handbook, decimals(handbook).min(2), format!("W/{}", degrees.symbol));
        Account::list(
            "Skin and leaks for each degree",
            vec![
                Row::product("In that hour's wind and sky", factors, per),
                Row::given("By the handbook, in its wind", handbook),
            ],
        )
    }

    fn months(&self) -> Account {
        let (climate, record) = (self.case.climate, &self.case.run.hours.record);
        let limit_c = self.case.scenario.crop.limit_c;
        let mut months: Vec<(u32, usize)> = Vec::new();
        for (t_c, record) in self.crop_c.iter().zip(record) {
            let Some(month) = climate.hours.get(*record).map(|hour| hour.month) else { continue };
            if months.last().is_none_or(|(last, _)| *last != month) {
                months.push((month, 0));
            }
            if let Some((_, count)) = months.last_mut().filter(|_| *t_c < limit_c) {
                *count += 1;
            }
        }
        let hours = |count: usize| Number::exact(count as f64, 0, "h");
        let rows = months.into_iter().map(|(month, count)| Row::given(format::month(month), hours(count)));
        let heading = format!("Hours below {}", self.ink.temperature(limit_c).text());
        Account::sum(heading, rows.collect(), "Below crop limit", hours(self.case.run.summary.hours_below_crop_limit))
    }

    fn depth(&self) -> Account {
        let (ink, s) = (self.ink, &self.case.run.summary);
        if s.hours_below_crop_limit == 0 {
            return Account::default();
        }
        let hours = s.hours_below_crop_limit as f64;
        let symbol = Quantity::TemperatureDifference.unit(ink.units);
        let mean = symbol.shown(s.degree_hours_below_crop_limit_kh / hours);
        let total = Quantity::TemperatureDifference.unit(ink.units).shown(s.degree_hours_below_crop_limit_kh);
        let factors = vec![
            Factor::Times(Number::new(total, decimals(total), format!("{}·h", symbol.symbol))),
            Factor::Over(Number::exact(hours, 0, "h")),
        ];
        Account::list("How far", vec![Row::product("Mean shortfall", factors, Number::new(mean, 2, symbol.symbol))])
    }
}

/// Below this the loss per degree means nothing, K.
const LEAST_DIFFERENCE_K: f64 = 1.0;
