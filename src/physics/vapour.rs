//! Vapour in the air of zones: what comes in, what leaves with air, what turns to water on cold surfaces.
//!
//! `V dc/dt = S − g c + e max(0, c_e − c) − Σ k_j max(0, c − c_j)`, and exchange with the zone beside. Surfaces empty the
//! air of a small house in three to seven minutes, so that steps are implicit: backward Euler, stable at any length,
//! whose end is near the mean of what decays so fast. Each step finds which surfaces run wet at its end, with which it
//! is linear; so its books close to rounding.

/// Something that gives or takes vapour by the difference to the density at its own temperature.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Face {
    /// Area times coefficient of mass transfer, m³/s.
    pub conductance_m3_per_s: f64,
    /// Density of saturated vapour at its temperature, kg/m³.
    pub saturated_kg_per_m3: f64,
}

/// The air of one zone.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct DampAir<'a> {
    /// m³, above zero.
    pub volume_m3: f64,
    /// What comes in whatever the air holds: sources, and the vapour of the air that flows in, kg/s.
    pub gain_kg_per_s: f64,
    /// Air that flows out, m³/s.
    pub outflow_m3_per_s: f64,
    /// Wet bed: gives vapour while the air holds less than saturation at its temperature.
    pub bed: Face,
    /// Surfaces that take vapour while the air holds more than saturation at theirs; nothing evaporates from them.
    pub surfaces: &'a [Face],
    /// Most that the air can hold, kg/m³; what is beyond turns to mist.
    pub most_kg_per_m3: f64,
}

/// What became of a zone's vapour over a time.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct DampCourse {
    /// Density at its end, kg/m³.
    pub end_kg_per_m3: f64,
    /// Mean density, kg/m³.
    pub mean_kg_per_m3: f64,
    /// Given by the bed, kg.
    pub evaporated_kg: f64,
    /// Taken by all surfaces, kg.
    pub condensed_kg: f64,
    /// Turned to mist, kg.
    pub mist_kg: f64,
}

/// Rounds in which a step looks for the surfaces that are wet at its end; it needs one or two as a rule. A step that is
/// taken as it is after them still closes its books.
const ROUNDS: usize = 12;

/// What takes and gives between two neighbouring densities at which that changes.
#[derive(Clone, Copy)]
struct Active {
    /// Conductance of the bed while it gives, m³/s, and that times its saturation, kg/s.
    bed_m3_per_s: f64,
    bed_kg_per_s: f64,
    /// The same of the wet surfaces.
    wet_m3_per_s: f64,
    wet_kg_per_s: f64,
    /// Those densities, kg/m³.
    low: f64,
    high: f64,
    /// Whether the air is saturated and stays so.
    full: bool,
}

/// A zone on its way through the steps.
struct Zone<'a> {
    air: &'a DampAir<'a>,
    now: f64,
    active: Active,
    course: DampCourse,
    passed_s: f64,
}

impl<'a> Zone<'a> {
    fn new(air: &'a DampAir<'a>, start: f64) -> Self {
        let now = start.min(air.most_kg_per_m3);
        let course = DampCourse { mist_kg: air.volume_m3 * (start - now), ..DampCourse::default() };
        Self { air, now, active: air.active(now), course, passed_s: 0.0 }
    }

    /// `(a, b)` of `a c = b` for the density at the end of a step, with `beside` m³/s going to the zone beside.
    fn balance(&self, dt_s: f64, beside: f64) -> (f64, f64) {
        let (air, active) = (self.air, &self.active);
        let store = air.volume_m3 / dt_s;
        let a = store + air.outflow_m3_per_s + beside + active.bed_m3_per_s + active.wet_m3_per_s;
        (a, store * self.now + air.gain_kg_per_s + active.bed_kg_per_s + active.wet_kg_per_s)
    }

    /// What is active at the density that a step has ended with, where it assumed something else. `surplus_kg_per_s` is
    /// what full air cannot keep.
    fn otherwise(&self, density: f64, surplus_kg_per_s: f64) -> Option<Active> {
        let active = &self.active;
        let agrees =
            if active.full { surplus_kg_per_s >= 0.0 } else { active.low <= density && density <= active.high };
        let most = self.air.most_kg_per_m3;
        (!agrees).then(|| Active { full: density > most, ..self.air.active(density.min(most)) })
    }

    /// Ends a step at a density.
    fn end(&mut self, density: f64, surplus_kg_per_s: f64, dt_s: f64) {
        let used = &self.active;
        self.course.evaporated_kg += (used.bed_kg_per_s - used.bed_m3_per_s * density) * dt_s;
        self.course.condensed_kg += (used.wet_m3_per_s * density - used.wet_kg_per_s) * dt_s;
        self.course.mist_kg += surplus_kg_per_s * dt_s;
        self.course.mean_kg_per_m3 += density * dt_s;
        self.now = density;
        self.passed_s += dt_s;
    }

    fn finish(mut self) -> DampCourse {
        self.course.mean_kg_per_m3 /= self.passed_s;
        self.course.end_kg_per_m3 = self.now;
        self.course
    }
}

impl DampAir<'_> {
    fn active(&self, density: f64) -> Active {
        let mut active = Active {
            bed_m3_per_s: 0.0,
            bed_kg_per_s: 0.0,
            wet_m3_per_s: 0.0,
            wet_kg_per_s: 0.0,
            low: 0.0,
            high: self.most_kg_per_m3,
            full: false,
        };
        let Face { conductance_m3_per_s, saturated_kg_per_m3 } = self.bed;
        if density < saturated_kg_per_m3 {
            active.bed_m3_per_s = conductance_m3_per_s;
            active.bed_kg_per_s = conductance_m3_per_s * saturated_kg_per_m3;
            active.high = active.high.min(saturated_kg_per_m3);
        } else {
            active.low = saturated_kg_per_m3;
        }
        for &Face { conductance_m3_per_s, saturated_kg_per_m3 } in self.surfaces {
            if density > saturated_kg_per_m3 {
                active.wet_m3_per_s += conductance_m3_per_s;
                active.wet_kg_per_s += conductance_m3_per_s * saturated_kg_per_m3;
                active.low = active.low.max(saturated_kg_per_m3);
            } else {
                active.high = active.high.min(saturated_kg_per_m3);
            }
        }
        active
    }

    /// Goes on from a density through these steps, s; at least one.
    #[must_use]
    pub fn advance(&self, start_kg_per_m3: f64, steps_s: &[f64]) -> DampCourse {
        let mut zone = Zone::new(self, start_kg_per_m3);
        for &dt_s in steps_s {
            for round in 1..=ROUNDS {
                let (a, b) = zone.balance(dt_s, 0.0);
                let full = self.most_kg_per_m3;
                let (density, surplus) = if zone.active.full { (full, b - a * full) } else { (b / a, 0.0) };
                match zone.otherwise(density, surplus) {
                    Some(active) if round < ROUNDS => zone.active = active,
                    _ => {
                        zone.end(density, surplus, dt_s);
                        break;
                    }
                }
            }
        }
        zone.finish()
    }

    /// As [`DampAir::advance`], together with a zone beside that changes air with this one: courses of this and of it.
    #[must_use]
    pub fn advance_beside(
        &self,
        beside: &DampAir,
        exchange_m3_per_s: f64,
        start_kg_per_m3: [f64; 2],
        steps_s: &[f64],
    ) -> [DampCourse; 2] {
        let q = exchange_m3_per_s;
        let (mut one, mut two) = (Zone::new(self, start_kg_per_m3[0]), Zone::new(beside, start_kg_per_m3[1]));
        for &dt_s in steps_s {
            for round in 1..=ROUNDS {
                let ((a1, b1), (a2, b2)) = (one.balance(dt_s, q), two.balance(dt_s, q));
                let full = (one.active.full, two.active.full);
                let c1 = match full {
                    (true, _) => self.most_kg_per_m3,
                    (false, true) => (b1 + q * beside.most_kg_per_m3) / a1,
                    (false, false) => (b1 * a2 + q * b2) / (a1 * a2 - q * q),
                };
                let c2 = if full.1 { beside.most_kg_per_m3 } else { (b2 + q * c1) / a2 };
                let surplus1 = if full.0 { b1 + q * c2 - a1 * c1 } else { 0.0 };
                let surplus2 = if full.1 { b2 + q * c1 - a2 * c2 } else { 0.0 };
                match (one.otherwise(c1, surplus1), two.otherwise(c2, surplus2)) {
                    (None, None) => {}
                    _ if round == ROUNDS => {}
                    (first, second) => {
                        one.active = first.unwrap_or(one.active);
                        two.active = second.unwrap_or(two.active);
                        continue;
                    }
                }
                one.end(c1, surplus1, dt_s);
                two.end(c2, surplus2, dt_s);
                break;
            }
        }
        [one.finish(), two.finish()]
    }
}
