//! The worked example that opens with the program.

use super::fault::StudyFileError;
use super::text::read_study;
use crate::model::Study;

/// File name of the worked example.
pub const DEMO_NAME: &str = "allotment-tunnel.ron";

/// The worked example as text, as it stands in `scenarios/`.
#[must_use]
pub fn demo_text() -> &'static str {
    include_str!("../../scenarios/allotment-tunnel.ron")
}

/// The worked example.
///
/// # Errors
/// Only if the embedded file were broken; a test reads it.
pub fn demo() -> Result<Study, StudyFileError> {
    read_study(demo_text())
}
