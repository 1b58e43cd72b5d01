//! From changes of daily means to changes of hours without a jump at midnight.

use crate::units::HOURS_PER_DAY;

/// Rounds that find the nodes; the error falls to a ninth in each.
const ROUNDS: usize = 16;

/// Change of each hour, K: straight lines between noons, whose daily means are the changes asked for. The year wraps.
#[must_use]
pub fn shifts_k(change_k: &[f64]) -> Vec<f64> {
    let nodes = noons(change_k);
    let days = nodes.len();
    let of_day = |day: usize| {
        let (before, noon, after) = (nodes[(day + days - 1) % days], nodes[day], nodes[(day + 1) % days]);
        (0..HOURS_PER_DAY).map(move |hour| {
            let from_noon = (hour as f64 + 0.5) / HOURS_PER_DAY as f64 - 0.5;
            let other = if from_noon < 0.0 { before } else { after };
            noon + (other - noon) * from_noon.abs()
        })
    };
    (0..days).flat_map(of_day).collect()
}

/// Values at noon. The lines give a day three quarters of its own noon and an eighth of each neighbour's.
fn noons(change_k: &[f64]) -> Vec<f64> {
    let days = change_k.len();
    let mut nodes = change_k.to_vec();
    for _ in 0..ROUNDS {
        for day in 0..days {
            let beside = nodes[(day + days - 1) % days] + nodes[(day + 1) % days];
            nodes[day] = (change_k[day] - beside / 8.0) / 0.75;
        }
    }
    nodes
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn daily_means_are_those_asked_for_and_midnight_has_no_jump() {
        let change_k: Vec<f64> = (0..365).map(|day| f64::from(day * 7919 % 23 - 11)).collect();
        let hours = shifts_k(&change_k);
        for (day, asked) in hours.chunks(HOURS_PER_DAY).zip(&change_k) {
            let mean = day.iter().sum::<f64>() / HOURS_PER_DAY as f64;
            assert!((mean - asked).abs() < 1e-9, "{mean} for {asked}");
        }
        // An hour takes a 24th of what lies between two noons, over New Year too; a jump at midnight would be more.
        let noons = noons(&change_k);
        let after = noons.iter().cycle().skip(1);
        let steepest = noons.iter().zip(after).map(|(noon, next)| (next - noon).abs()).fold(0.0, f64::max);
        let largest = hours.windows(2).map(|pair| (pair[1] - pair[0]).abs()).fold(0.0, f64::max);
        assert!(largest <= 1.0001 * steepest / 24.0, "{largest} K in an hour, {steepest} K in a day");
    }
}
