//! A house under a daily wave of outdoor air, and under a thermostat with a dead band.

use std::f64::consts::TAU;

use serde::Deserialize;
use warmfold::physics::network::{Network, Node};
use warmfold::physics::step::{Step, Stepper, Thermostat, advance};

use super::figure::{Expected, Figure, hold, published};
use super::network::{network, state};

/// Near the mean step of the program's hour, s.
const STEP_S: f64 = 1200.0;
const STEPS_PER_DAY: u32 = 72;
/// Days until the slower house has forgotten its start: 14 of its time constants.
const SETTLING_DAYS: u32 = 60;
/// Enough for any cycle here, min.
const LONGEST_PHASE_STEPS: usize = 100;

#[derive(Deserialize)]
struct Cases {
    source: String,
    ua_w_per_k: f64,
    mean_c: f64,
    swing_k: f64,
    share_tolerance: f64,
    share_because: String,
    lag_tolerance_h: f64,
    lag_because: String,
    tolerance_k: f64,
    tolerance_because: String,
    waves: Vec<Wave>,
    thermostat: DeadBand,
}

#[derive(Deserialize)]
struct Wave {
    capacity_j_per_k: f64,
    ratio: f64,
    lag_h: f64,
    coldest_c: f64,
    warmest_c: f64,
}

#[derive(Deserialize)]
struct DeadBand {
    source: String,
    capacity_j_per_k: f64,
    outdoor_c: f64,
    heater_w: f64,
    on_at_c: f64,
    off_at_c: f64,
    on_min: f64,
    off_min: f64,
    duty: f64,
    mean_w: f64,
    mean_c: f64,
}

impl Cases {
    fn house(&self, capacity_j_per_k: f64, outdoor_c: f64) -> Network {
        let mut house = network(&[Node::Capacity(capacity_j_per_k)], &[]);
        house.add_boundary(0, self.ua_w_per_k, outdoor_c);
        house
    }

    /// Temperatures at the ends of the steps of the last day.
    fn settled_day_c(&self, capacity_j_per_k: f64) -> Vec<f64> {
        let mut now = state(&self.house(capacity_j_per_k, self.mean_c), &[self.mean_c]);
        let steps = SETTLING_DAYS * STEPS_PER_DAY;
        let ends = (0..steps).map(|k| {
            let phase = TAU * (f64::from(k % STEPS_PER_DAY) + 0.5) / f64::from(STEPS_PER_DAY);
            let house = self.house(capacity_j_per_k, self.mean_c + self.swing_k * phase.cos());
            now = advance(&house, &now, STEP_S, &[]).end;
            now.temperature_c[0]
        });
        ends.skip((steps - STEPS_PER_DAY) as usize).collect()
    }

    fn of_wave(&self, wave: &Wave) -> Vec<Figure> {
        let day_c = self.settled_day_c(wave.capacity_j_per_k);
        let (mut cos_part, mut sin_part) = (0.0, 0.0);
        for (k, t_c) in (1..).zip(&day_c) {
            let (sin, cos) = (TAU * f64::from(k) / f64::from(STEPS_PER_DAY)).sin_cos();
            cos_part += (t_c - self.mean_c) * cos * 2.0 / f64::from(STEPS_PER_DAY);
            sin_part += (t_c - self.mean_c) * sin * 2.0 / f64::from(STEPS_PER_DAY);
        }
        let figure = |what: &str, unit: &str, decimals, expected, because: &str, got| Figure {
            what: format!("outdoor wave of a day, house of {} MJ/K: {what}", wave.capacity_j_per_k / 1e6),
            source: self.source.clone(),
            unit: unit.into(),
            decimals,
            expected,
            tolerance_because: because.into(),
            got,
        };
        let share = Expected::Value(wave.ratio, wave.ratio * self.share_tolerance);
        let ratio = cos_part.hypot(sin_part) / self.swing_k;
        let lag = Expected::Value(wave.lag_h, self.lag_tolerance_h);
        let lag_h = sin_part.atan2(cos_part) / TAU * 24.0;
        let kelvin = |c| Expected::Value(c, self.tolerance_k);
        let coldest_c = day_c.iter().copied().fold(f64::INFINITY, f64::min);
        let warmest_c = day_c.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        vec![
            figure("swing inside as share of the swing outside", "", 6, share, &self.share_because, ratio),
            figure("delay", "h", 3, lag, &self.lag_because, lag_h),
            figure("coldest", "°C", 3, kelvin(wave.coldest_c), &self.tolerance_because, coldest_c),
            figure("warmest", "°C", 3, kelvin(wave.warmest_c), &self.tolerance_because, warmest_c),
        ]
    }

    /// Seconds and mean temperature of a phase of the dead band. The heater's limits are those of the phase; the step is
    /// cut where the far end of the band is reached, and the power held from there on tells where that was.
    fn phase(&self, from_c: f64, thermostat: Thermostat) -> (f64, f64) {
        let band = &self.thermostat;
        let house = self.house(band.capacity_j_per_k, band.outdoor_c);
        let to_c = thermostat.setpoint_c;
        let holding_w = self.ua_w_per_k * (to_c - band.outdoor_c);
        let phase_w = if to_c > from_c { thermostat.max_w } else { thermostat.min_w };
        let (mut now, mut seconds, mut kelvin_s) = (state(&house, &[from_c]), 0.0, 0.0);
        let mut stepper = Stepper::new(house);
        for _ in 0..LONGEST_PHASE_STEPS {
            let Step { end, mean_c, heater_w } = stepper.advance_switching(&now, STEP_S, &[thermostat]);
            let held_share = (heater_w[0] - phase_w) / (holding_w - phase_w);
            seconds += STEP_S * (1.0 - held_share);
            kelvin_s += STEP_S * (mean_c[0] - held_share * to_c);
            now = end;
            if held_share > 0.0 {
                break;
            }
        }
        (seconds, kelvin_s / seconds)
    }

    fn of_thermostat(&self) -> Vec<Figure> {
        let band = &self.thermostat;
        let heater = |setpoint_c| Thermostat { node: 0, setpoint_c, min_w: 0.0, max_w: band.heater_w };
        let (on_s, on_c) = self.phase(band.on_at_c, heater(band.off_at_c));
        let (off_s, off_c) = self.phase(band.off_at_c, heater(band.on_at_c));
        let cycle_s = on_s + off_s;
        let duty = on_s / cycle_s;
        let figure = |what: &str, unit: &str, decimals, value: f64, got| Figure {
            what: format!("thermostat on at {} °C, off at {} °C: {what}", band.on_at_c, band.off_at_c),
            source: band.source.clone(),
            unit: unit.into(),
            decimals,
            expected: Expected::Value(value, value * self.share_tolerance),
            tolerance_because: "a thousandth of the figure".into(),
            got,
        };
        vec![
            figure("on for", "min", 3, band.on_min, on_s / 60.0),
            figure("off for", "min", 3, band.off_min, off_s / 60.0),
            figure("share of time on", "", 5, band.duty, duty),
            figure("mean power", "W", 2, band.mean_w, duty * band.heater_w),
            Figure {
                expected: Expected::Value(band.mean_c, self.tolerance_k),
                tolerance_because: self.tolerance_because.clone(),
                ..figure("mean temperature", "°C", 4, band.mean_c, (on_s * on_c + off_s * off_c) / cycle_s)
            },
        ]
    }
}

pub fn figures() -> Vec<Figure> {
    let file: Cases = published("cycles");
    file.waves.iter().flat_map(|wave| file.of_wave(wave)).chain(file.of_thermostat()).collect()
}

#[test]
fn cycles_agree() {
    hold(&figures());
}
