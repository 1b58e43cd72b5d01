//! The known name that a mistyped one most likely meant.

/// Similarity (Jaro–Winkler, 0 to 1) from which a name is worth proposing; a choice of this program.
const WORTH_PROPOSING: f64 = 0.7;

/// The known name most like `found`; none if nothing is near.
#[must_use]
pub fn nearest_name<'a>(found: &str, known: impl IntoIterator<Item = &'a str>) -> Option<&'a str> {
    let found = found.to_lowercase();
    known
        .into_iter()
        .map(|name| (strsim::jaro_winkler(&found, &name.to_lowercase()), name))
        .filter(|(likeness, _)| *likeness >= WORTH_PROPOSING)
        .max_by(|a, b| a.0.total_cmp(&b.0))
        .map(|(_, name)| name)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn slips_of_the_finger_find_their_name() {
        let known = ["length_m", "width_m", "eaves_height_m"];
        assert_eq!(nearest_name("lenght_m", known), Some("length_m"));
        assert_eq!(nearest_name("Eaves_heigth_m", known), Some("eaves_height_m"));
        assert_eq!(nearest_name("colour", known), None);
        assert_eq!(nearest_name("", known), None);
    }
}
