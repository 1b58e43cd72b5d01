//! The program's own catalogue rows, read from `assets/catalogue/`.

use super::catalogue::Catalogue;
use ron::extensions::Extensions;
use serde::de::DeserializeOwned;
use std::sync::LazyLock;

static BUNDLED: LazyLock<Catalogue> = LazyLock::new(|| Catalogue {
    sheets: rows(include_str!("../../assets/catalogue/sheets.ron")),
    screens: rows(include_str!("../../assets/catalogue/screens.ron")),
    fuels: rows(include_str!("../../assets/catalogue/fuels.ron")),
    heaters: rows(include_str!("../../assets/catalogue/heaters.ron")),
    cylinders: rows(include_str!("../../assets/catalogue/cylinders.ron")),
    crops: rows(include_str!("../../assets/catalogue/crops.ron")),
    trays: rows(include_str!("../../assets/catalogue/trays.ron")),
});

/// The catalogues that come with the program.
#[must_use]
pub fn bundled() -> &'static Catalogue {
    &BUNDLED
}

/// Reads one embedded file.
///
/// # Panics
/// Only if a file under `assets/catalogue/` was broken before the program was built; `tests/catalogue.rs` reads them all.
fn rows<T: DeserializeOwned>(text: &str) -> Vec<T> {
    ron::Options::default()
        .with_default_extension(Extensions::IMPLICIT_SOME)
        .from_str(text)
        .expect("embedded catalogue rows are checked by tests/catalogue.rs")
}
