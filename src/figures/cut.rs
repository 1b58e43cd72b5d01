//! The hours of a power cut as a table.

use super::{Figures, plain};
use crate::season::power_cut::{AskedCut, CutCourse};
use crate::units::{Quantity, UnitSystem};

/// Hour by hour since the failure: outdoors, then air and trays of each course until its heater has caught up.
#[must_use]
pub fn power_cut(name: &str, cut: &AskedCut, units: UnitSystem) -> Figures {
    let unit = Quantity::Temperature.unit(units);
    let title = |what: &str, course: &CutCourse| {
        let without = course.without.map_or(String::new(), |measure| format!(" without {}", measure.name()));
        format!("{name}{without}: {what}, {}", unit.symbol)
    };
    let mut columns: Vec<(String, &[f64])> = vec![(format!("outdoors, {}", unit.symbol), &cut.outdoor_c)];
    for course in &cut.courses {
        columns.push((title("crop air", course), &course.course.air_c));
        if !course.course.trays_c.is_empty() {
            columns.push((title("trays", course), &course.course.trays_c));
        }
    }
    let mut head = vec!["hours after the failure".to_owned(), "mains".to_owned()];
    head.extend(columns.iter().map(|(title, _)| title.clone()));
    let row = |k: usize| {
        let mut cells = vec![(k + 1).to_string(), u8::from(k >= cut.hours).to_string()];
        let value = |column: &[f64]| column.get(k).map_or(String::new(), |t_c| plain(unit.shown(*t_c), 2));
        cells.extend(columns.iter().map(|(_, column)| value(column)));
        cells
    };
    Figures { head, rows: (0..cut.outdoor_c.len()).map(row).collect() }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::season::power_cut::Course;
    use crate::season::{Hold, HourStamp, PowerCutTimes};

    #[test]
    fn a_course_that_ends_leaves_its_cells_empty() {
        let hold = Hold::Beyond;
        let times = PowerCutTimes {
            air_to_crop_limit_h: hold,
            air_to_freezing_h: hold,
            trays_to_crop_limit_h: hold,
            trays_to_freezing_h: hold,
        };
        let course = |air_c: Vec<f64>| Course {
            times,
            water_to_freezing_h: Hold::NotApplicable,
            recovery_h: hold,
            trace: Vec::new(),
            air_c,
            trays_c: Vec::new(),
        };
        let courses =
            vec![CutCourse { without: None, course: course(vec![5.0, 10.0]), unbroken: course(vec![5.0, 0.0]) }];
        let cut = AskedCut {
            starts_at: HourStamp { month: 1, day: 9, hour: 1 },
            start: 0,
            hours: 1,
            outdoor_c: vec![-10.0, -5.0, 0.0],
            courses,
        };
        let figures = power_cut("Tent", &cut, UnitSystem::Imperial);
        assert_eq!(figures.head[2..], ["outdoors, °F", "Tent: crop air, °F"]);
        assert_eq!(figures.rows, [["1", "0", "14.00", "41.00"], ["2", "1", "23.00", "50.00"], ["3", "1", "32.00", ""]]);
    }
}
