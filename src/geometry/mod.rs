//! What the described shapes measure: outer facets with their tilt and direction, volume, floor, perimeter, profile.

pub mod arch;
pub mod section;
pub mod shell;
pub mod tent_box;
pub mod trays;

pub use shell::{Facet, Shell, profile_height_m};
pub use tent_box::TentBox;
