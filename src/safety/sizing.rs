//! How large a heater is.

/// Least output above the design load, share of it (10 to 20 % and a backup: common practice).
pub const LEAST_MARGIN: f64 = 0.10;
