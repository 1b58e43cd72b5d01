//! A map of two inputs as a field: values read between its points, and lines of equal value through it.

use std::collections::BTreeMap;

/// Values over a grid, which need not be even.
#[derive(Debug, Clone, PartialEq)]
pub struct Field {
    x: Vec<f64>,
    y: Vec<f64>,
    /// Row by row of x; none where nothing is known.
    values: Vec<Option<f64>>,
}

/// A point of a line.
pub type Point = [f64; 2];
/// A side of a cell: the point of the grid where it begins, and whether it goes upwards.
type Side = (usize, usize, bool);

impl Field {
    /// The value at each x, and for each at every y; both ascending. None if their numbers do not fit.
    #[must_use]
    pub fn new(x: Vec<f64>, y: Vec<f64>, values: Vec<Option<f64>>) -> Option<Self> {
        let rising = |of: &[f64]| of.windows(2).all(|pair| pair[0] < pair[1]);
        (values.len() == x.len() * y.len() && rising(&x) && rising(&y)).then_some(Self { x, y, values })
    }

    fn at(&self, i: usize, j: usize) -> Option<f64> {
        self.values.get(i * self.y.len() + j).copied().flatten()
    }

    /// Least and largest known value.
    #[must_use]
    pub fn range(&self) -> Option<(f64, f64)> {
        let known = || self.values.iter().flatten().copied();
        Some((known().reduce(f64::min)?, known().reduce(f64::max)?))
    }

    /// The value between the points, straight along each axis; none outside or beside what is not known.
    #[must_use]
    pub fn read(&self, x: f64, y: f64) -> Option<f64> {
        let (i, u) = within(&self.x, x)?;
        let (j, v) = within(&self.y, y)?;
        let along = |j: usize| Some(self.at(i, j)? * (1.0 - u) + self.at(i + 1, j)? * u);
        Some(along(j)? * (1.0 - v) + along(j + 1)? * v)
    }

    /// Lines on which the value is `level`; a closed one ends where it began.
    #[must_use]
    pub fn lines(&self, level: f64) -> Vec<Vec<Point>> {
        let mut ties: BTreeMap<Side, Vec<Side>> = BTreeMap::new();
        for i in 0..self.x.len().saturating_sub(1) {
            for j in 0..self.y.len().saturating_sub(1) {
                for [a, b] in self.crossed(i, j, level) {
                    ties.entry(a).or_default().push(b);
                    ties.entry(b).or_default().push(a);
                }
            }
        }
        let mut lines = Vec::new();
        // Lines that end at the edge first, so that none is begun in its middle; then rings.
        for open in [true, false] {
            while let Some(start) =
                ties.iter().find(|(_, to)| !to.is_empty() && (!open || to.len() == 1)).map(|(s, _)| *s)
            {
                lines.push(self.follow(start, level, &mut ties));
            }
        }
        lines
    }

    /// Walks from side to side, taking away the way behind.
    fn follow(&self, start: Side, level: f64, ties: &mut BTreeMap<Side, Vec<Side>>) -> Vec<Point> {
        let (mut here, mut line) = (start, vec![self.crossing(start, level)]);
        while let Some(next) = ties.get_mut(&here).and_then(Vec::pop) {
            if let Some(back) = ties.get_mut(&next)
                && let Some(at) = back.iter().position(|side| *side == here)
            {
                back.remove(at);
            }
            line.push(self.crossing(next, level));
            here = next;
        }
        line
    }

    /// The pairs of sides of a cell that a line joins.
    fn crossed(&self, i: usize, j: usize, level: f64) -> Vec<[Side; 2]> {
        let corners = [(i, j), (i + 1, j), (i + 1, j + 1), (i, j + 1)].map(|(i, j)| self.at(i, j));
        let [Some(a), Some(b), Some(c), Some(d)] = corners else { return Vec::new() };
        let sides = [(i, j, false), (i + 1, j, true), (i, j + 1, false), (i, j, true)];
        let above = [a, b, c, d].map(|value| value >= level);
        let crossed: Vec<Side> = (0..4).filter(|k| above[*k] != above[(k + 1) % 4]).map(|k| sides[k]).collect();
        match crossed[..] {
            [first, second] => vec![[first, second]],
            // A saddle: its middle says which corners belong together.
            [bottom, right, top, left] if ((a + b + c + d) / 4.0 >= level) == above[0] => {
                vec![[bottom, right], [top, left]]
            }
            [bottom, right, top, left] => vec![[bottom, left], [top, right]],
            _ => Vec::new(),
        }
    }

    fn crossing(&self, (i, j, upwards): Side, level: f64) -> Point {
        let to = if upwards { (i, j + 1) } else { (i + 1, j) };
        let (from, end) = (self.at(i, j).unwrap_or(level), self.at(to.0, to.1).unwrap_or(level));
        let share = if from == end { 0.5 } else { ((level - from) / (end - from)).clamp(0.0, 1.0) };
        let between = |a: f64, b: f64| a + share * (b - a);
        [between(self.x[i], self.x[to.0]), between(self.y[j], self.y[to.1])]
    }
}

/// The interval of a value and its share of it.
fn within(axis: &[f64], value: f64) -> Option<(usize, f64)> {
    let upper = axis.iter().position(|at| value <= *at)?.max(1);
    let (low, high) = (*axis.get(upper - 1)?, *axis.get(upper)?);
    (low <= value).then(|| (upper - 1, (value - low) / (high - low)))
}

/// Round levels strictly within a range, at most so many: 1, 2 or 5 times a power of ten apart.
#[must_use]
pub fn levels((low, high): (f64, f64), most: usize) -> Vec<f64> {
    let span = high - low;
    // What a season's figures differ by in their last digits is no slope.
    if !(span.is_finite() && span > 1e-9 * high.abs().max(1e-9)) {
        return Vec::new();
    }
    let power = 10_f64.powf((span / most as f64).log10().floor());
    let step = [1.0, 2.0, 5.0, 10.0].into_iter().map(|m| m * power).find(|s| span / s <= most as f64).unwrap_or(span);
    let first = (low / step).floor() as i64 + 1;
    (first..).map(|k| k as f64 * step).take_while(|level| *level < high).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A cone: lines of equal height are rings round its tip, of a radius that the height gives.
    #[test]
    fn lines_of_a_cone_are_rings_of_their_radius() {
        let axis: Vec<f64> = (-10..=10).map(|k| f64::from(k) / 10.0).collect();
        let cone = |x: &f64| axis.iter().map(|y| Some(1.0 - (x * x + y * y).sqrt())).collect::<Vec<_>>();
        let values = axis.iter().flat_map(cone).collect();
        let field = Field::new(axis.clone(), axis.clone(), values).expect("fits");
        for level in [0.25, 0.5, 0.75] {
            let lines = field.lines(level);
            assert_eq!(lines.len(), 1, "one ring at {level}");
            assert_eq!(lines[0].first(), lines[0].last(), "closed");
            // A cone is bent between its points by less than h²/8r of its slope, with h a tenth.
            let radius = 1.0 - level;
            for [x, y] in &lines[0] {
                assert!(((x * x + y * y).sqrt() - radius).abs() < 0.01 / (8.0 * radius) + 1e-9, "{x} {y} at {level}");
            }
        }
        assert!(field.lines(0.0).len() > 1 || field.lines(0.0)[0].len() > 40, "it reaches the edges");
        assert!(field.lines(2.0).is_empty());
    }

    /// A plane is read exactly between its points, and its lines are straight, on an uneven grid too.
    #[test]
    fn a_plane_is_read_exactly() {
        let (x, y) = (vec![0.0, 1.0, 4.0], vec![0.0, 2.0]);
        let values = x.iter().flat_map(|x| y.iter().map(move |y| Some(3.0 * x - y))).collect();
        let field = Field::new(x, y, values).expect("fits");
        assert!((field.read(2.5, 0.5).expect("within") - 7.0).abs() < 1e-12);
        assert_eq!((field.read(4.1, 0.5), field.read(0.5, -0.1)), (None, None));
        let lines = field.lines(2.5);
        let x_at = |y: f64| lines[0].iter().find(|point| point[1] == y).expect("it reaches the edge")[0];
        assert!((x_at(0.0) - 2.5 / 3.0).abs() < 1e-12 && (x_at(2.0) - 1.5).abs() < 1e-12, "{lines:?}");
        assert_eq!(field.range(), Some((-2.0, 12.0)));
    }

    #[test]
    fn what_is_not_known_has_no_lines_beside_it() {
        let field = Field::new(
            vec![0.0, 1.0, 2.0],
            vec![0.0, 1.0],
            vec![None, Some(1.0), Some(0.0), Some(1.0), Some(0.0), Some(1.0)],
        );
        let field = field.expect("fits");
        let mut lines = field.lines(0.5);
        lines[0].sort_by(|a, b| a[0].total_cmp(&b[0]));
        assert_eq!(lines, vec![vec![[1.0, 0.5], [2.0, 0.5]]]);
        assert_eq!(field.read(0.5, 0.5), None);
        assert_eq!(Field::new(vec![0.0, 0.0], vec![0.0, 1.0], vec![None; 4]), None);
    }

    #[test]
    fn levels_are_round_and_few() {
        assert_eq!(levels((212.0, 398.0), 7), [250.0, 300.0, 350.0]);
        assert_eq!(levels((-3.2, 5.1), 7), [-2.0, 0.0, 2.0, 4.0]);
        assert_eq!(levels((4.0, 4.0), 7), Vec::<f64>::new());
        assert_eq!(levels((f64::NAN, 4.0), 7), Vec::<f64>::new());
    }
}
