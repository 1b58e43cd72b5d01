//! What to beware of when a small house is heated, in the words of window and report.

/// The cautions.
///
/// # References
/// UMass Extension, Michigan State University Extension and a study of unvented gas heaters (flames); trade property
/// sheets (gas); RoSPA Northern Ireland, NEC 2017, advice of CPSC and ESFI, quoted (electricity); Grubinger, University of
/// Vermont, and Bartok, University of Connecticut (snow); the rest: common practice.
pub const CAUTIONS: [&str; 9] = [
    "Fuel burnt in a shut house leaves carbon monoxide, nitrogen dioxide, ethylene and water: vent burners outdoors, give \
     fresh air, hang a carbon monoxide alarm, do not sleep there. When the alarm sounds, people leave first.",
    "Ethylene from an unvented flame injures plants from 0.01 ppm, and no household alarm detects it.",
    "Gas cylinders stand upright, outdoors, never in a pit: propane is 1.5 times heavier than air. Leak-test joints with \
     soapy water.",
    "Use no heater that is not listed for the space. Kerosene only of grade 1-K; no refuelling while hot.",
    "Electric heaters plug straight into a fixed outlet, without leads, strips or coiled reels, behind a residual-current \
     device, at no more than 80 % of their circuit, dry, above splash height and well clear of what burns. No open \
     connections near drums, drip lines or mist; isolate before touching.",
    "A drum full of water weighs as much as three people: floor or staging must bear it, it must not tip, and small children \
     are kept away. Leave about 10 % headspace for ice and do not seal it.",
    "Snow is heavy on film, and uneven load is worse; codes assume heat under snow. Do not enter a bending house; cutting \
     film is a last resort.",
    "On ladders, with blades and rigid sheet: gloves and eye protection, no standing on frames, no work on wet film or in wind.",
    "Results are estimates: keep a thermometer and a low-temperature alarm, and have a backup.",
];

/// Who decides in the end.
pub const LAST_WORD: &str = "The program gives estimates, not engineering advice. Follow local codes: they and licensed trades, \
                             who do the work on gas and mains, have the last word.";
