//! The usual cautions, each with what it rests on. Where one matters, it is printed as it stands here.

/// What the whole program is, and what it is not.
pub const GENERAL: &str = "A layout from this program helps in the shop. It is neither engineering nor advice on codes: local codes prevail, \
    and so does licensed practice.";

/// What matters to whoever bores. Sources: of dust IARC vol. 100C, group 1; the rest is common practice.
pub const AT_THE_BENCH: [&str; 3] = [
    "First hole in scrap: measure it, then the first hole of each set-up, before going on.",
    "Panel clamped, bit tight, depth stop locked, cable clear, eyes and ears covered, power off for a change of bit.",
    "Wood dust causes cancer: extraction on, mask on.",
];

/// What is said of a unit with drawers that is as high as [`crate::strength::TIP_OVER_HEIGHT`]. Sources: 16 CFR 1261;
/// EN 14749:2016 for homes and kitchens; EN 15939:2019, which rates a wall hanger and leaves out what it is fixed to.
pub const TIP_OVER: &str = "A unit with drawers that stands free can fall on children: fix it to the wall. Hangers and \
    straps are rated by their makers, the wall behind them is not: who fixes must judge it. In the US 16 CFR 1261 makes a \
    stability rule mandatory for clothing storage that stands free, is 27 in (686 mm) high, weighs 30 lb (13.6 kg) and has \
    3.2 ft3 (90.6 dm3) of closed storage, or more of each; what is built in is out of its scope. In Europe see EN 14749:2016.";
