//! What to beware of when a small house is heated, in the words of window and report.

/// The cautions.
pub const CAUTIONS: [&str; 6] = [
    "Burning fuel in a closed house takes its oxygen and can make carbon monoxide: vent it as its maker says, fit an alarm, never sleep there.",
    "Ethylene from an unvented flame harms crops at traces that nobody can smell.",
    "Gas cylinders stand outdoors, upright, away from drains and sparks.",
    "Electricity beside water belongs behind a residual-current device and to a licensed electrician; extension leads are no wiring.",
    "A drum full of water weighs as much as three people: the floor or staging must bear it.",
    "Snow can bring down film in one night: a held house melts it, an unheated one does not.",
];

/// Who decides in the end.
pub const LAST_WORD: &str = "The program gives estimates. Local codes and licensed trades have the last word.";
