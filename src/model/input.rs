//! Each input is written down once: name in the file, label, quantity, range, default, help and source.
//!
//! The macro `inputs!` turns that one line into the field of the struct, its default, its reader and its
//! [`NumberInput`]; the form, the tooltip, the validation and the report all read from there.

use crate::units::Quantity;

/// A numeric input of a part `T` of the study.
pub struct NumberInput<T> {
    /// Name in the file, with its unit.
    pub key: &'static str,
    /// Name on screen.
    pub label: &'static str,
    /// What the number means; decides the unit on screen.
    pub quantity: Quantity,
    /// Smallest allowed value.
    pub min: f64,
    /// Largest allowed value.
    pub max: f64,
    /// Value of a new study and of a field the file leaves out.
    pub default: f64,
    /// One line: what it does.
    pub help: &'static str,
    /// Where its default or its use comes from; empty where it is the user's own measurement.
    pub source: &'static str,
    /// Reads the value.
    pub get: fn(&T) -> f64,
    /// Writes the value.
    pub set: fn(&mut T, f64),
    /// How far it may be off without anybody knowing; none where it is measured or chosen.
    pub doubt: Option<Doubt>,
}

/// How far an input may be off without anybody knowing.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Doubt {
    /// How far, each way.
    pub off: Off,
    /// Why so far, with the source.
    pub reason: &'static str,
}

/// A distance to each side of a value.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Off {
    /// This share of the value.
    Share(f64),
    /// This much, in the input's own unit as a difference.
    By(f64),
    /// The class beside it.
    Class,
}

impl<T> NumberInput<T> {
    /// Whether the value can be computed with: a number, within the range.
    #[must_use]
    pub fn accepts(&self, value: f64) -> bool {
        value.is_finite() && self.min <= value && value <= self.max
    }

    /// Moves the value as far as it may be off, up or down, within its range; nothing where it is in no doubt.
    pub fn misjudge(&self, part: &mut T, upwards: bool) {
        let (Some(doubt), value) = (&self.doubt, (self.get)(part)) else { return };
        let moved = doubt.off.moved(value, upwards);
        (self.set)(part, moved.clamp(self.min, self.max));
    }
}

impl Off {
    /// The value that is so far above or below; classes are counted.
    #[must_use]
    pub fn moved(self, value: f64, upwards: bool) -> f64 {
        let sign = if upwards { 1.0 } else { -1.0 };
        match self {
            Self::Share(share) => value * (1.0 + sign * share),
            Self::By(step) => value + sign * step,
            Self::Class => value + sign,
        }
    }
}

/// An input that is not a number: a choice, a switch, a name.
pub struct ChoiceInput {
    /// Name in the file.
    pub key: &'static str,
    /// Name on screen.
    pub label: &'static str,
    /// One line: what it does.
    pub help: &'static str,
    /// How far it may be off without anybody knowing; none where it is chosen.
    pub doubt: Option<Doubt>,
}

/// Defines a part of the study; see the module documentation.
///
/// A line may end in `doubt` with how far the input may be off and why: what [`crate::season::sensitivity`] moves.
///
/// For each number `x` the type gets an associated constant `Type::x` and an entry in `Type::NUMBERS`;
/// for each other input a constant `Type::x` of type [`ChoiceInput`].
macro_rules! inputs {
    (@doubt) => { None };
    (@doubt $doubt:expr) => { Some($doubt) };
    (
        $(#[$meta:meta])*
        pub struct $name:ident {
            choices { $( $choice:ident : $choice_type:ty = $choice_default:expr, $choice_label:literal, $choice_help:literal
                $(, doubt $choice_doubt:expr)?; )* }
            numbers { $( $number:ident : $number_type:ty, $quantity:ident, $min:literal ..= $max:literal, $default:literal,
                $label:literal, $help:literal, $source:literal $(, doubt $doubt:expr)?; )* }
        }
    ) => {
        $(#[$meta])*
        #[derive(Debug, Clone, PartialEq, serde::Serialize, serde::Deserialize)]
        #[serde(default, deny_unknown_fields)]
        pub struct $name {
            $( #[doc = $choice_help] pub $choice: $choice_type, )*
            $( #[doc = $help] pub $number: $number_type, )*
        }

        impl Default for $name {
            #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, clippy::unnecessary_cast)]
            fn default() -> Self {
                Self { $( $choice: $choice_default, )* $( $number: $default as $number_type, )* }
            }
        }

        #[allow(
            non_upper_case_globals, dead_code, clippy::unnecessary_cast, clippy::useless_conversion,
            clippy::cast_possible_truncation, clippy::cast_sign_loss, clippy::cast_lossless
        )]
        impl $name {
            $(
                #[doc = $choice_help]
                pub const $choice: $crate::model::input::ChoiceInput = $crate::model::input::ChoiceInput {
                    key: stringify!($choice), label: $choice_label, help: $choice_help,
                    doubt: $crate::model::input::inputs!(@doubt $($choice_doubt)?),
                };
            )*
            $(
                #[doc = $help]
                pub const $number: $crate::model::input::NumberInput<$name> = $crate::model::input::NumberInput {
                    key: stringify!($number),
                    label: $label,
                    quantity: $crate::units::Quantity::$quantity,
                    min: $min as f64,
                    max: $max as f64,
                    default: $default as f64,
                    help: $help,
                    source: $source,
                    get: |part| part.$number as f64,
                    set: |part, value| part.$number = value as $number_type,
                    doubt: $crate::model::input::inputs!(@doubt $($doubt)?),
                };
            )*
            /// Every numeric input of this part, in reading order.
            pub const NUMBERS: &'static [$crate::model::input::NumberInput<$name>] = &[$( Self::$number, )*];
        }
    };
}
pub(crate) use inputs;
