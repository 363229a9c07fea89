//! What a thing on screen is, and how that looks at each depth of colour.
//!
//! The colours are those of the shop: a bench of dark ink, a board of light wood lying on it, holes
//! in steel, rust and leaf, brass for what speaks.

use ratatui::style::{Color, Modifier, Style};

use super::colour::{Depth, indexed};

/// What a thing on screen is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Role {
    /// Text, and the ground everything lies on.
    Plain,
    /// Text that steps back.
    Dim,
    /// Text that steps forward.
    Strong,
    /// The name of a screen or a part of it.
    Title,
    /// The key in a hint.
    HintKey,
    /// What the key does, in a hint.
    HintLabel,
    /// The panel face: wood, and text written on it.
    Board,
    /// The line around the panel face.
    BoardEdge,
    /// A hole of the grid that nothing asks for.
    EmptyHole,
    /// A hole for a shelf pin.
    PinHole,
    /// A hole for a hinge plate.
    PlateHole,
    /// A hole for a drawer runner.
    RunnerHole,
    /// A hole that belongs to the panel face itself.
    FreeHole,
    /// One hole that serves two fittings.
    SharedHole,
    /// A stretch of the face that must stay free of holes.
    KeepOut,
    /// The face that a fixed panel covers, hatched.
    FixedPanel,
    /// The inside of a bay that no front closes, and text in it.
    Space,
    /// Where the next key acts: laid over whatever stands there.
    Cursor,
    /// Around a thing on which the next key acts, whatever stands there.
    Ring,
    /// The holes that the next key acts on together.
    MarkedRun,
    /// A finding that holds the boring back.
    Stop,
    /// A finding to look at.
    Warn,
    /// A finding to know.
    Note,
    /// What is done and right.
    Good,
    /// A value being typed.
    Field,
    /// A value being typed that cannot be read yet.
    FieldBad,
    /// The numbers between two panels, or beside one.
    Gutter,
    /// The mark in the gutter at a hole that one panel lacks.
    GutterMark,
    /// A sheet of paper, and what is printed on it.
    Sheet,
    /// What steps back on it: text, too small to be read, and grey lines.
    SheetFaint,
}

/// The bench: the ground of every screen.
const INK: u32 = 0x1b1f23;
/// A shade lighter than the bench: the cap of a key.
const INK_RAISED: u32 = 0x2c3238;
/// A shade darker than the bench: the inside of a cabinet.
const INK_DEEP: u32 = 0x0d1013;
/// Text on the bench.
const PAPER: u32 = 0xe8e1d3;
/// Text that steps forward, and the ground of a field.
const PAPER_BRIGHT: u32 = 0xfdf6e6;
/// Text that steps back: pencil.
const PENCIL: u32 = 0xa3a095;
/// Numbers and labels.
const STEEL: u32 = 0x9fb4c1;
/// Names and keys.
const BRASS: u32 = 0xe5b95c;
/// The board.
const WOOD: u32 = 0xe2c59b;
/// The board where something covers it.
const WOOD_SHADED: u32 = 0xcba876;
/// Writing on the board, and the dark inside a hole.
const BORED: u32 = 0x21170e;
/// Yellow chalk: what is marked on the board.
const CHALK: u32 = 0xf6d86b;
/// Oxblood: what must not be bored.
const BLOOD: u32 = 0x931f15;

/// One row of the table: a role and its style without colour, with sixteen, and in full.
struct Row {
    role: Role,
    plain: Style,
    sixteen: Style,
    full: Style,
}

const BARE: Style = Style::new();
const BOLD: Style = BARE.add_modifier(Modifier::BOLD);
const DIM: Style = BARE.add_modifier(Modifier::DIM);
const LINED: Style = BARE.add_modifier(Modifier::UNDERLINED);
const BOLD_LINED: Style = BOLD.add_modifier(Modifier::UNDERLINED);
const REVERSED: Style = BOLD.add_modifier(Modifier::REVERSED);

const fn row(role: Role, plain: Style, sixteen: Style, full: Style) -> Row {
    Row {
        role,
        plain,
        sixteen,
        full,
    }
}

/// A colour on a ground, each as 0xRRGGBB.
const fn on(ground: u32, colour: u32) -> Style {
    BARE.fg(Color::from_u32(colour)).bg(Color::from_u32(ground))
}

const fn bold(style: Style) -> Style {
    style.add_modifier(Modifier::BOLD)
}

const fn lined(style: Style) -> Style {
    style.add_modifier(Modifier::UNDERLINED)
}

/// One row for each role.
#[rustfmt::skip] // A table is read down its columns.
const ROWS: [Row; Role::COUNT] = [
    row(Role::Plain,      BARE,       BARE,                      on(INK, PAPER)),
    row(Role::Dim,        DIM,        DIM,                       on(INK, PENCIL)),
    row(Role::Strong,     BOLD,       BOLD,                      bold(on(INK, PAPER_BRIGHT))),
    row(Role::Title,      BOLD,       BOLD,                      bold(on(INK, BRASS))),
    row(Role::HintKey,    BOLD,       BOLD,                      bold(on(INK_RAISED, BRASS))),
    row(Role::HintLabel,  BARE,       BARE,                      on(INK, STEEL)),
    row(Role::Board,      BARE,       BARE,                      on(WOOD, BORED)),
    row(Role::BoardEdge,  BARE,       BARE,                      on(WOOD, 0x77522a)),
    row(Role::EmptyHole,  DIM,        DIM,                       on(WOOD, 0x8a663c)),
    row(Role::PinHole,    BOLD,       BOLD,                      bold(on(WOOD, BORED))),
    row(Role::PlateHole,  BOLD,       BOLD.fg(Color::Cyan),      bold(on(WOOD, 0x12456b))),
    row(Role::RunnerHole, BOLD,       BOLD.fg(Color::Yellow),    bold(on(WOOD, 0x7a2c08))),
    row(Role::FreeHole,   BOLD,       BOLD.fg(Color::Green),     bold(on(WOOD, 0x1d5432))),
    row(Role::SharedHole, BOLD,       BOLD.fg(Color::Magenta),   bold(on(WOOD, 0x6c1a63))),
    row(Role::KeepOut,    BARE,       BARE.fg(Color::Red),       on(WOOD, BLOOD)),
    row(Role::FixedPanel, DIM,        DIM,                       on(WOOD_SHADED, 0x4b3318)),
    row(Role::Space,      BARE,       BARE,                      on(INK_DEEP, STEEL)),
    row(Role::Cursor,     REVERSED,   REVERSED,                  REVERSED),
    row(Role::Ring,       REVERSED,   REVERSED,                  on(CHALK, BORED)),
    row(Role::MarkedRun,  BOLD_LINED, BOLD_LINED,                bold(on(CHALK, BORED))),
    row(Role::Stop,       REVERSED,   BOLD.fg(Color::White).bg(Color::Red), bold(on(BLOOD, PAPER_BRIGHT))),
    row(Role::Warn,       BOLD,       BARE.fg(Color::Black).bg(Color::Yellow), bold(on(BRASS, BORED))),
    row(Role::Note,       BARE,       BARE.fg(Color::Cyan),      on(INK, 0x8fc3e0)),
    row(Role::Good,       BARE,       BARE.fg(Color::Green),     on(INK, 0x93c987)),
    row(Role::Field,      LINED,      LINED,                     on(PAPER_BRIGHT, BORED)),
    row(Role::FieldBad,   BOLD_LINED, BOLD_LINED.fg(Color::Red), lined(on(0xf6d9cd, BLOOD))),
    row(Role::Gutter,     BARE,       BARE,                      on(INK, STEEL)),
    row(Role::GutterMark, BOLD,       BOLD.fg(Color::Yellow),    bold(on(INK, 0xf09a5a))),
    row(Role::Sheet,      BARE,       BARE,                      on(PAPER_BRIGHT, BORED)),
    row(Role::SheetFaint, DIM,        DIM,                       on(PAPER_BRIGHT, 0x756650)),
];

impl Role {
    /// How many roles there are.
    pub(super) const COUNT: usize = Self::SheetFaint as usize + 1;
}

/// The style of every role at a depth of colour, with the role as the index.
pub(super) fn styles(depth: Depth) -> [Style; Role::COUNT] {
    let mut styles = [BARE; Role::COUNT];
    for row in &ROWS {
        styles[row.role as usize] = match depth {
            Depth::Plain => row.plain,
            Depth::Sixteen => row.sixteen,
            Depth::Indexed => indexed(row.full),
            Depth::True => row.full,
        };
    }
    styles
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::theme::rgb_of_index;

    const DEPTHS: [Depth; 4] = [Depth::Plain, Depth::Sixteen, Depth::Indexed, Depth::True];

    /// Contrast between two colours, 1 to 21. Source: WCAG 2.2, "contrast ratio" and "relative luminance".
    fn contrast(one: Color, other: Color) -> f64 {
        let luminance = |colour| {
            let (red, green, blue) = match colour {
                Color::Rgb(red, green, blue) => (red, green, blue),
                Color::Indexed(index) => rgb_of_index(index).unwrap(),
                _ => panic!("{colour} has no fixed red, green and blue"),
            };
            let linear = |part: u8| {
                let part = f64::from(part) / 255.0;
                if part <= 0.04045 {
                    part / 12.92
                } else {
                    ((part + 0.055) / 1.055).powf(2.4)
                }
            };
            0.2126 * linear(red) + 0.7152 * linear(green) + 0.0722 * linear(blue)
        };
        let (one, other) = (luminance(one), luminance(other));
        (one.max(other) + 0.05) / (one.min(other) + 0.05)
    }

    /// The style of one role at a depth.
    fn style(role: Role, depth: Depth) -> Style {
        styles(depth)[role as usize]
    }

    #[test]
    fn every_role_has_one_row() {
        let mut indices: Vec<usize> = ROWS.iter().map(|row| row.role as usize).collect();
        indices.sort_unstable();
        assert_eq!(indices, (0..Role::COUNT).collect::<Vec<_>>());
    }

    #[test]
    fn each_depth_uses_only_what_it_has() {
        for row in &ROWS {
            for depth in DEPTHS {
                let style = style(row.role, depth);
                for colour in [style.fg, style.bg].into_iter().flatten() {
                    let fits = match depth {
                        Depth::Plain => false,
                        Depth::Sixteen => {
                            !matches!(colour, Color::Rgb(..) | Color::Indexed(_) | Color::Reset)
                        }
                        Depth::Indexed => matches!(colour, Color::Indexed(16..)),
                        Depth::True => matches!(colour, Color::Rgb(..)),
                    };
                    assert!(fits, "{:?} at {depth:?}: {colour}", row.role);
                }
            }
        }
    }

    #[test]
    fn a_full_style_names_its_ground_unless_it_is_laid_over_others() {
        for row in &ROWS {
            let whole = row.full.fg.is_some() && row.full.bg.is_some();
            assert_eq!(whole, row.role != Role::Cursor, "{:?}", row.role);
        }
    }

    #[test]
    fn text_stands_out_from_its_ground() {
        for depth in [Depth::Indexed, Depth::True] {
            for row in &ROWS {
                let style = style(row.role, depth);
                let (Some(colour), Some(ground)) = (style.fg, style.bg) else {
                    continue;
                };
                // Text needs 4.5; the grid and the edge are drawing, not text, and need 3. Source: WCAG 2.2, 1.4.3 and 1.4.11.
                let least = if matches!(row.role, Role::EmptyHole | Role::BoardEdge) {
                    3.0
                } else {
                    4.5
                };
                let found = contrast(colour, ground);
                assert!(
                    found >= least,
                    "{:?} at {depth:?}: {found:.2}, at least {least}",
                    row.role
                );
            }
        }
    }

    #[test]
    fn the_board_stands_out_from_the_bench() {
        for depth in [Depth::Indexed, Depth::True] {
            let ground = |role: Role| style(role, depth).bg.unwrap();
            assert!(contrast(ground(Role::Board), ground(Role::Plain)) >= 7.0);
        }
    }

    #[test]
    fn what_must_be_told_apart_differs_at_every_depth() {
        let pairs = [
            (Role::Cursor, Role::Plain),
            (Role::Cursor, Role::Board),
            (Role::MarkedRun, Role::Board),
            (Role::MarkedRun, Role::Cursor),
            (Role::MarkedRun, Role::PinHole),
            (Role::EmptyHole, Role::PinHole),
            (Role::FixedPanel, Role::Board),
            (Role::Stop, Role::Plain),
            (Role::Stop, Role::Warn),
            (Role::Warn, Role::Note),
            (Role::Field, Role::Plain),
            (Role::Field, Role::FieldBad),
            (Role::HintKey, Role::HintLabel),
            (Role::GutterMark, Role::Gutter),
            (Role::Title, Role::Plain),
        ];
        for (one, other) in pairs {
            for depth in DEPTHS {
                assert_ne!(
                    style(one, depth),
                    style(other, depth),
                    "{one:?} and {other:?} at {depth:?}"
                );
            }
        }
    }

    #[test]
    fn holes_of_each_kind_have_a_colour_of_their_own() {
        let kinds = [
            Role::PinHole,
            Role::PlateHole,
            Role::RunnerHole,
            Role::FreeHole,
            Role::SharedHole,
            Role::EmptyHole,
        ];
        for depth in [Depth::Sixteen, Depth::Indexed, Depth::True] {
            for (index, one) in kinds.iter().enumerate() {
                for other in &kinds[index + 1..] {
                    assert_ne!(
                        style(*one, depth),
                        style(*other, depth),
                        "{one:?} and {other:?} at {depth:?}"
                    );
                }
            }
        }
    }
}
