//! Bytes changed at random: a year or a typed error, never a panic.

use proptest::prelude::*;
use proptest::test_runner::RngSeed;

use super::*;

/// Files of failing cases are not kept beside the tests.
fn cases(cases: u32) -> ProptestConfig {
    ProptestConfig { cases, rng_seed: RngSeed::Fixed(1), failure_persistence: None, ..ProptestConfig::default() }
}

proptest! {
    #![proptest_config(cases(48))]

    /// Whatever happens to the bytes of a good file, reading ends with a year or a typed error.
    #[test]
    fn mutated_files_never_panic(
        changes in prop::collection::vec((0.0..1.0_f64, any::<u8>()), 1..6),
        cut in prop::option::of(0.0..1.0_f64),
        tmy3 in any::<bool>(),
    ) {
        let mut bytes = if tmy3 { WeatherText::tmy3(&DULUTH).bytes() } else { good().bytes() };
        let length = bytes.len();
        for (at, byte) in changes {
            bytes[(at * length as f64) as usize] = byte;
        }
        if let Some(cut) = cut {
            bytes.truncate((cut * length as f64) as usize);
        }
        match read_weather(&bytes, "x") {
            Ok(year) => prop_assert!(Climate::from_year(&year).hours.iter().all(|h| h.sky_c.is_finite())),
            Err(error) => prop_assert!(!error.to_string().is_empty()),
        }
    }
}

proptest! {
    #![proptest_config(cases(512))]

    /// Damage where it hurts most, the head and the first rows; and bytes that were never a file.
    #[test]
    fn damaged_heads_never_panic(
        changes in prop::collection::vec((0..900_usize, any::<u8>()), 1..9),
        junk in prop::collection::vec(any::<u8>(), 0..200),
        packed in any::<bool>(),
    ) {
        let mut bytes = good().with_line_end("\n").chars().take(1500).collect::<String>().into_bytes();
        for (at, byte) in changes {
            bytes[at] = byte;
        }
        prop_assert!(read_weather(&bytes, "x").is_err());
        let bytes = if packed { [b"\x1f\x8b\x08".as_slice(), &junk].concat() } else { junk };
        prop_assert!(read_weather(&bytes, "x").is_err());
    }
}
