//! What is searched: faces with rows of bores and rectangles of hardware, made from a fixed seed.

use gablerow_core::check::meet::{Holes, Space};
use gablerow_core::layout::Span;
use gablerow_core::measure::Length;

/// A generator of numbers that are the same on every machine.
pub(crate) struct Dice(u64);

impl Dice {
    pub(crate) fn new(seed: u64) -> Self {
        Self(seed.wrapping_mul(0x9e37_79b9_7f4a_7c15) | 1)
    }

    /// A number from `from` to `to`, both included.
    pub(crate) fn roll(&mut self, from: i32, to: i32) -> i32 {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        let span = u64::from(to.abs_diff(from)) + 1;
        from + i32::try_from((self.0 >> 11) % span).unwrap_or_default()
    }

    fn mm(&mut self, from: i32, to: i32) -> Length {
        Length::from_mm(self.roll(from, to))
    }

    /// To a tenth of a millimetre.
    fn tenths(&mut self, from: i32, to: i32) -> Length {
        Length::from_um(self.roll(from * 10, to * 10) * 100)
    }
}

/// Rows and boxes of one panel, not expanded.
#[derive(Clone, Debug, Default)]
pub(crate) struct Panel {
    pub(crate) holes: Vec<Holes>,
    pub(crate) spaces: Vec<Space>,
}

/// Depth, width and height of a panel.
const DEPTH: i32 = 580;
const HEIGHT: i32 = 2_420;
const THICKNESS: Length = Length::from_mm(18);

/// A panel of so many features: nine in ten are bores in vertical rows of up to 75, the others rectangles of hardware with
/// an interval of depth. A row in eight goes through, one in eight comes from the other face, one in twenty is 35 mm wide.
pub(crate) fn panel(features: i32, dice: &mut Dice) -> Panel {
    let mut panel = Panel::default();
    let mut bores = features * 9 / 10;
    for _ in bores..features {
        panel.spaces.push(rectangle(dice));
    }
    while bores > 0 {
        let count = dice.roll(1, 75).min(bores);
        bores -= count;
        panel.holes.push(row(count, dice));
    }
    panel
}

fn row(count: i32, dice: &mut Dice) -> Holes {
    let diameter = match dice.roll(1, 20) {
        1 => 35,
        2..=5 => 8,
        _ => 5,
    };
    let u = match dice.roll(1, 8) {
        1 => Span::new(Length::ZERO, THICKNESS),
        2 => Span::new(THICKNESS - Length::from_mm(13), THICKNESS),
        _ => Span::new(Length::ZERO, Length::from_mm(13)),
    };
    Holes {
        x: dice.tenths(10, DEPTH - 10),
        low: dice.tenths(8, HEIGHT - 8 - 32 * (count - 1)),
        count,
        diameter: Length::from_mm(diameter),
        u,
    }
}

fn rectangle(dice: &mut Dice) -> Space {
    let (x, z) = (dice.tenths(0, DEPTH - 60), dice.tenths(0, HEIGHT - 130));
    let from = dice.mm(0, 8);
    Space {
        x: Span::new(x, x + dice.tenths(12, 60)),
        z: Span::new(z, z + dice.tenths(20, 130)),
        u: Span::new(from, from + dice.mm(2, 10)),
    }
}

/// The panels of a job: 150 to 250 features each.
pub(crate) fn job(panels: usize) -> Vec<Panel> {
    let mut dice = Dice::new(32);
    let features = (0..panels).map(|_| dice.roll(150, 250)).collect::<Vec<_>>();
    let made = features.into_iter();
    made.map(|features| panel(features, &mut dice)).collect()
}

/// A name, and a maker of a panel of so many features.
type Shape = (&'static str, fn(i32) -> Panel);

/// Shapes that no cabinet has.
pub(crate) const HOSTILE: [Shape; 6] = [
    ("boxes stacked in z", |count| {
        boxes(count, |at| (at % 7, at * 2))
    }),
    ("boxes side by side in x", |count| {
        boxes(count, |at| (at * 2, at % 7))
    }),
    ("boxes dense", dense),
    ("rows at one setback", |count| rows(count, 8)),
    ("rows cut to three", |count| rows(count, 3)),
    ("rows at one setback and boxes", |count| {
        let spaces = dense(count / 2).spaces;
        Panel {
            spaces,
            ..rows(count / 2, 16)
        }
    }),
];

/// Boxes a little over 2 mm long both ways, that begin so many millimetres back and up.
fn boxes(count: i32, begin: fn(i32) -> (i32, i32)) -> Panel {
    let mut dice = Dice::new(1);
    let spaces = (0..count).map(|at| {
        let (x, z) = begin(at);
        let (x, z) = (Length::from_mm(x), Length::from_mm(z));
        let long = dice.tenths(2, 3);
        Space {
            x: Span::new(x, x + long),
            z: Span::new(z, z + long),
            u: Span::new(Length::ZERO, THICKNESS),
        }
    });
    Panel {
        holes: Vec::new(),
        spaces: spaces.collect(),
    }
}

/// Rectangles of hardware all over one panel, however many.
fn dense(count: i32) -> Panel {
    let mut dice = Dice::new(2);
    Panel {
        holes: Vec::new(),
        spaces: (0..count).map(|_| rectangle(&mut dice)).collect(),
    }
}

/// Rows of so many holes at one setback, one above the other and some over each other.
fn rows(features: i32, count: i32) -> Panel {
    let mut dice = Dice::new(3);
    let high = 8 * features / 1_000 * 1_000 + HEIGHT;
    let row = |_| Holes {
        x: Length::from_mm(37),
        low: dice.tenths(0, high),
        count,
        diameter: Length::from_mm(5),
        u: Span::new(Length::ZERO, THICKNESS),
    };
    Panel {
        holes: (0..features / count).map(row).collect(),
        spaces: Vec::new(),
    }
}
