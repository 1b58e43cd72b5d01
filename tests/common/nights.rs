//! Nights of a season: what a house and its tent do between two days.

use warmfold::season::ScenarioRun;
use warmfold::weather::Climate;

/// Hours that a night must have to count.
const SHORTEST_NIGHT_H: usize = 6;

/// One night: the consecutive hours without sun.
pub struct Night {
    /// Lowest outdoor air, °C.
    pub outdoor_min_c: f64,
    /// Lowest house air, °C.
    pub house_min_c: f64,
    /// Lowest tent air, °C; none without a tent.
    pub tent_min_c: Option<f64>,
    /// m/s at the mast.
    pub mean_wind_m_per_s: f64,
    /// Mean of outdoor air less sky, K: large under a clear sky.
    pub mean_sky_gap_k: f64,
}

/// The nights of a run, the first and last whole ones included.
pub fn nights(climate: &Climate, run: &ScenarioRun) -> Vec<Night> {
    let hours = &run.hours;
    let is_dark = |k: &usize| climate.hours[hours.record[*k]].global_w_per_m2 <= 0.0;
    let every: Vec<usize> = (0..hours.record.len()).collect();
    every
        .chunk_by(|a, b| is_dark(a) == is_dark(b))
        .filter(|dark| dark.len() >= SHORTEST_NIGHT_H && dark.first().is_some_and(is_dark))
        .map(|dark| {
            let weather = || dark.iter().map(|&k| &climate.hours[hours.record[k]]);
            let lowest = |column: &[f64]| dark.iter().filter_map(|&k| column.get(k)).copied().reduce(f64::min);
            Night {
                outdoor_min_c: lowest(&hours.outdoor_c).expect("dark hours"),
                house_min_c: lowest(&hours.house_air_c).expect("dark hours"),
                tent_min_c: lowest(&hours.tent_air_c),
                mean_wind_m_per_s: mean(weather().map(|hour| hour.wind_m_per_s)),
                mean_sky_gap_k: mean(weather().map(|hour| hour.outdoor_c - hour.sky_c)),
            }
        })
        .collect()
}

/// Arithmetic mean.
pub fn mean(values: impl Iterator<Item = f64> + Clone) -> f64 {
    values.clone().sum::<f64>() / values.count() as f64
}
