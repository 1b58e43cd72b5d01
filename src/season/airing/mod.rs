//! Air: what vents have to do on the sunniest mild hour, what they do month by month, and what other air would change.

mod advice;
mod changes;
mod months;
mod sunny_hour;

pub use advice::AirAdvice;
pub use changes::{AirChanges, Difference, RUNS, air_changes, flued, with_higher_openers};
pub use months::{AirMonth, air_months};
pub use sunny_hour::sunniest_mild_hour;
