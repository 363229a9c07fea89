//! The only place a key is written: what each does, and where.
//!
//! Dispatch, hint line, help screen and the README's table all read [`BINDINGS`].

use crate::action::Action;
use crate::key::Key;

/// Where a key is pressed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Context {
    /// A face, or both walls of a bay.
    Face,
    /// The cabinet from the front.
    Front,
    /// The list of sizes beside a face.
    Sizes,
    /// The cabinets of the job.
    Job,
    /// The findings.
    Checks,
    /// The cards and the house defaults.
    Cards,
    /// What the shop keeps and the job lacks.
    FromShop,
    /// What is proposed.
    Proposals,
    /// Boring, one set-up after the other.
    Bench,
    /// The papers.
    Papers,
    /// A page to read: help, why.
    Page,
    /// A line to type.
    Line,
    /// The question on leaving with unsaved changes.
    Leaving,
    /// The question on opening, when unsaved changes were found.
    Found,
    /// The question when something else lies where the job is to be saved.
    Occupied,
    /// The question when files with other contents have the names of papers.
    PapersThere,
}

impl Context {
    /// All of them, in the order the help shows them.
    pub const ALL: [Self; 16] = [
        Self::Face,
        Self::Front,
        Self::Sizes,
        Self::Job,
        Self::Checks,
        Self::Cards,
        Self::FromShop,
        Self::Proposals,
        Self::Bench,
        Self::Papers,
        Self::Page,
        Self::Line,
        Self::Leaving,
        Self::Found,
        Self::Occupied,
        Self::PapersThere,
    ];

    /// What it is called.
    #[must_use]
    pub fn title(self) -> &'static str {
        match self {
            Self::Face => "On a face",
            Self::Front => "From the front",
            Self::Sizes => "In the sizes",
            Self::Job => "In the job",
            Self::Checks => "In the checks",
            Self::Cards => "On the cards",
            Self::FromShop => "Taking from the shop",
            Self::Proposals => "Proposals",
            Self::Bench => "At the bench",
            Self::Papers => "On the papers",
            Self::Page => "On a page",
            Self::Line => "Typing",
            Self::Leaving => "Leaving unsaved",
            Self::Found => "Changes found",
            Self::Occupied => "File taken",
            Self::PapersThere => "Papers there already",
        }
    }
}

/// One key in one place.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Binding {
    /// Where.
    pub context: Context,
    /// The key.
    pub key: Key,
    /// What it does.
    pub action: Action,
    /// Place in the hint line, first ones first; 0 is not there.
    pub hint: u8,
}

const fn bind(context: Context, key: Key, action: Action, hint: u8) -> Binding {
    Binding {
        context,
        key,
        action,
        hint,
    }
}

const fn letter(context: Context, letter: char, action: Action, hint: u8) -> Binding {
    bind(context, Key::Char(letter), action, hint)
}

use Context::{
    Bench, Cards, Checks, Face, Found, FromShop, Front, Job, Leaving, Line, Occupied, Page, Papers,
    PapersThere, Proposals, Sizes,
};

/// Every key of the program.
pub const BINDINGS: &[Binding] = &[
    letter(Face, 'h', Action::Hinge, 1),
    letter(Face, 's', Action::Pins, 2),
    letter(Face, 'r', Action::Runner, 3),
    letter(Face, 'e', Action::Sizes, 4),
    letter(Face, 'm', Action::Mate, 5),
    letter(Face, 'u', Action::Undo, 6),
    letter(Face, 'S', Action::Save, 7),
    letter(Face, 'q', Action::Quit, 8),
    letter(Face, '?', Action::Help, 9),
    letter(Face, 'n', Action::NextFace, 11),
    letter(Face, 'k', Action::Checks, 12),
    letter(Face, 'w', Action::Why, 13),
    letter(Face, 'j', Action::Job, 14),
    letter(Face, 'v', Action::Front, 10),
    bind(Face, Key::SPACE, Action::Mark, 15),
    letter(Face, 'c', Action::Centred, 16),
    bind(Face, Key::Up, Action::Up, 0),
    bind(Face, Key::Down, Action::Down, 0),
    bind(Face, Key::Left, Action::Left, 0),
    bind(Face, Key::Right, Action::Right, 0),
    letter(Face, 'f', Action::Foot, 0),
    letter(Face, 't', Action::Head, 0),
    bind(Face, Key::Home, Action::Head, 0),
    bind(Face, Key::End, Action::Foot, 0),
    letter(Face, '0', Action::Digit(0), 0),
    letter(Face, '1', Action::Digit(1), 0),
    letter(Face, '2', Action::Digit(2), 0),
    letter(Face, '3', Action::Digit(3), 0),
    letter(Face, '4', Action::Digit(4), 0),
    letter(Face, '5', Action::Digit(5), 0),
    letter(Face, '6', Action::Digit(6), 0),
    letter(Face, '7', Action::Digit(7), 0),
    letter(Face, '8', Action::Digit(8), 0),
    letter(Face, '9', Action::Digit(9), 0),
    bind(Face, Key::Enter, Action::GoTo, 0),
    letter(Face, 'p', Action::PreviousFace, 0),
    letter(Face, 'l', Action::Shelf, 18),
    letter(Face, 'a', Action::Again, 17),
    letter(Face, 'd', Action::Datum, 19),
    letter(Face, 'U', Action::Redo, 20),
    letter(Face, 'x', Action::TakeAway, 21),
    letter(Face, 'b', Action::FreeRow, 22),
    letter(Face, 'g', Action::FreeHole, 23),
    letter(Face, 'o', Action::Turn, 24),
    letter(Face, 'i', Action::Unit, 0),
    letter(Face, 'y', Action::Offers, 27),
    letter(Face, 'z', Action::Mend, 29),
    letter(Face, 'C', Action::Cards, 28),
    letter(Face, 'B', Action::Bench, 30),
    letter(Face, 'P', Action::Papers, 31),
    bind(Face, Key::Esc, Action::Leave, 0),
    letter(Front, '|', Action::SideBySide, 1),
    letter(Front, '-', Action::Stacked, 2),
    letter(Front, 'd', Action::Door, 3),
    letter(Front, 'r', Action::Drawers, 4),
    letter(Front, 'e', Action::Sizes, 6),
    letter(Front, 'u', Action::Undo, 7),
    letter(Front, 'S', Action::Save, 8),
    letter(Front, 'q', Action::Quit, 9),
    letter(Front, '?', Action::Help, 10),
    bind(Front, Key::Esc, Action::Leave, 24),
    letter(Front, 'z', Action::Mend, 25),
    letter(Front, 'B', Action::Bench, 26),
    letter(Front, 'P', Action::Papers, 27),
    bind(Front, Key::Enter, Action::LeftWall, 11),
    letter(Front, 'm', Action::RightWall, 12),
    bind(Front, Key::SPACE, Action::Behind, 13),
    letter(Front, 'x', Action::TakeAway, 14),
    letter(Front, 'R', Action::DrawersBehind, 15),
    letter(Front, 'f', Action::FalseFront, 16),
    letter(Front, '#', Action::Modules, 17),
    letter(Front, 'b', Action::Boxes, 18),
    letter(Front, 'n', Action::NextCabinet, 19),
    letter(Front, 'k', Action::Checks, 20),
    letter(Front, 'w', Action::Why, 21),
    letter(Front, 'j', Action::Job, 22),
    letter(Front, 'C', Action::Cards, 23),
    letter(Front, 'h', Action::Hardware, 5),
    bind(Front, Key::Up, Action::Above, 0),
    bind(Front, Key::Down, Action::Below, 0),
    bind(Front, Key::Left, Action::LeftOf, 0),
    bind(Front, Key::Right, Action::RightOf, 0),
    letter(Front, '0', Action::Digit(0), 0),
    letter(Front, '1', Action::Digit(1), 0),
    letter(Front, '2', Action::Digit(2), 0),
    letter(Front, '3', Action::Digit(3), 0),
    letter(Front, '4', Action::Digit(4), 0),
    letter(Front, '5', Action::Digit(5), 0),
    letter(Front, '6', Action::Digit(6), 0),
    letter(Front, '7', Action::Digit(7), 0),
    letter(Front, '8', Action::Digit(8), 0),
    letter(Front, '9', Action::Digit(9), 0),
    letter(Front, 'p', Action::PreviousCabinet, 0),
    letter(Front, 'U', Action::Redo, 0),
    letter(Front, 'i', Action::Unit, 0),
    letter(Front, 'v', Action::Leave, 0),
    bind(Sizes, Key::Up, Action::Up, 1),
    bind(Sizes, Key::Down, Action::Down, 2),
    bind(Sizes, Key::Enter, Action::Enter, 4),
    bind(Sizes, Key::Esc, Action::Leave, 5),
    letter(Sizes, 'n', Action::NextGroup, 3),
    letter(Sizes, 'u', Action::Undo, 6),
    letter(Sizes, 'U', Action::Redo, 0),
    letter(Sizes, 'i', Action::Unit, 7),
    letter(Sizes, 'w', Action::Why, 8),
    letter(Sizes, 'S', Action::Save, 9),
    letter(Sizes, '?', Action::Help, 10),
    letter(Sizes, 'C', Action::Cards, 11),
    bind(Job, Key::Up, Action::Up, 0),
    bind(Job, Key::Down, Action::Down, 0),
    bind(Job, Key::Enter, Action::Open, 1),
    letter(Job, 'a', Action::Add, 2),
    letter(Job, 'c', Action::Copy, 3),
    letter(Job, 'r', Action::Rename, 4),
    letter(Job, 'x', Action::Remove, 5),
    letter(Job, 'u', Action::Undo, 6),
    letter(Job, 'U', Action::Redo, 0),
    letter(Job, 'S', Action::Save, 7),
    letter(Job, 'q', Action::Quit, 8),
    letter(Job, 'v', Action::Front, 11),
    letter(Job, '+', Action::BuildOne, 12),
    letter(Job, 'm', Action::BuildMirrored, 13),
    letter(Job, '-', Action::BuildLess, 14),
    letter(Job, 'n', Action::NameCopies, 15),
    letter(Job, 'l', Action::CutLengths, 16),
    bind(Job, Key::Esc, Action::Leave, 9),
    letter(Job, '?', Action::Help, 10),
    letter(Job, 'C', Action::Cards, 30),
    letter(Job, 'B', Action::Bench, 17),
    letter(Job, 'P', Action::Papers, 18),
    bind(Checks, Key::Up, Action::Up, 1),
    bind(Checks, Key::Down, Action::Down, 2),
    bind(Checks, Key::Enter, Action::GoThere, 3),
    letter(Checks, 'a', Action::Accept, 4),
    letter(Checks, 'z', Action::Mend, 5),
    letter(Checks, 'u', Action::Undo, 6),
    letter(Checks, 'U', Action::Redo, 0),
    bind(Checks, Key::Esc, Action::Leave, 7),
    letter(Checks, '?', Action::Help, 8),
    letter(Checks, 'n', Action::NextCabinet, 9),
    letter(Checks, 'p', Action::PreviousCabinet, 0),
    bind(Cards, Key::Up, Action::Up, 0),
    bind(Cards, Key::Down, Action::Down, 0),
    bind(Cards, Key::Right, Action::Values, 11),
    bind(Cards, Key::Left, Action::List, 12),
    bind(Cards, Key::Enter, Action::Enter, 1),
    letter(Cards, 'o', Action::Origin, 2),
    letter(Cards, 'c', Action::CopyCard, 3),
    letter(Cards, 'k', Action::KeepInShop, 6),
    letter(Cards, 't', Action::FromShop, 7),
    letter(Cards, 'd', Action::Default, 8),
    letter(Cards, 'x', Action::RemoveCard, 10),
    letter(Cards, 'u', Action::Undo, 9),
    letter(Cards, 'U', Action::Redo, 0),
    letter(Cards, 'i', Action::Unit, 0),
    letter(Cards, 'S', Action::Save, 0),
    bind(Cards, Key::Esc, Action::Leave, 4),
    letter(Cards, '?', Action::Help, 5),
    bind(FromShop, Key::Up, Action::Up, 1),
    bind(FromShop, Key::Down, Action::Down, 2),
    bind(FromShop, Key::Enter, Action::Enter, 3),
    letter(FromShop, 'u', Action::Undo, 4),
    letter(FromShop, 'U', Action::Redo, 0),
    bind(FromShop, Key::Esc, Action::Leave, 5),
    letter(FromShop, '?', Action::Help, 6),
    bind(Proposals, Key::Enter, Action::Enter, 1),
    letter(Proposals, 'a', Action::TakeAll, 2),
    bind(Proposals, Key::Up, Action::Up, 3),
    bind(Proposals, Key::Down, Action::Down, 4),
    bind(Proposals, Key::Esc, Action::Leave, 5),
    letter(Proposals, 'u', Action::Undo, 6),
    letter(Proposals, 'U', Action::Redo, 0),
    letter(Proposals, 'i', Action::Unit, 0),
    letter(Proposals, '?', Action::Help, 7),
    bind(Bench, Key::SPACE, Action::Done, 1),
    letter(Bench, 'b', Action::NotDone, 2),
    letter(Bench, 'x', Action::Trouble, 3),
    letter(Bench, 'm', Action::Measured, 4),
    letter(Bench, 'n', Action::CutAnew, 5),
    letter(Bench, '?', Action::Help, 6),
    bind(Bench, Key::Esc, Action::LeaveBench, 7),
    bind(Papers, Key::Enter, Action::Write, 1),
    bind(Papers, Key::SPACE, Action::Choose, 2),
    letter(Papers, 'a', Action::ChooseAll, 3),
    letter(Papers, 'f', Action::Format, 4),
    letter(Papers, 'c', Action::WhichCabinet, 5),
    letter(Papers, 's', Action::SheetSize, 9),
    letter(Papers, 't', Action::Folder, 10),
    letter(Papers, 'v', Action::Whole, 11),
    bind(Papers, Key::Left, Action::SheetBefore, 0),
    bind(Papers, Key::Right, Action::SheetAfter, 8),
    bind(Papers, Key::Up, Action::Up, 0),
    bind(Papers, Key::Down, Action::Down, 0),
    letter(Papers, '?', Action::Help, 6),
    bind(Papers, Key::Esc, Action::Leave, 7),
    bind(Page, Key::Up, Action::Up, 1),
    bind(Page, Key::Down, Action::Down, 2),
    bind(Page, Key::Esc, Action::Leave, 3),
    bind(Page, Key::Enter, Action::Leave, 0),
    letter(Page, 'q', Action::Leave, 0),
    bind(Line, Key::Enter, Action::Enter, 1),
    bind(Line, Key::Esc, Action::Leave, 2),
    bind(Leaving, Key::Enter, Action::SaveAndQuit, 1),
    letter(Leaving, 'q', Action::QuitUnsaved, 2),
    bind(Leaving, Key::Esc, Action::Leave, 3),
    bind(Found, Key::Enter, Action::TakeUp, 1),
    bind(Found, Key::Esc, Action::AsSaved, 2),
    letter(Occupied, 's', Action::SaveElsewhere, 1),
    letter(Occupied, 'o', Action::Overwrite, 2),
    bind(Occupied, Key::Esc, Action::Leave, 3),
    letter(PapersThere, 'o', Action::WriteOver, 1),
    bind(PapersThere, Key::Esc, Action::Leave, 2),
];

/// What a key does in a place.
#[must_use]
pub fn action(context: Context, key: Key) -> Option<Action> {
    BINDINGS
        .iter()
        .find(|binding| binding.context == context && binding.key == key)
        .map(|binding| binding.action)
}

/// The key that does something in a place.
#[must_use]
pub fn binding_of(context: Context, action: Action) -> Option<&'static Binding> {
    bindings(context).find(|binding| binding.action == action)
}

/// The keys of a place that stand in its hint line, in their order.
#[must_use]
pub fn hints(context: Context) -> Vec<&'static Binding> {
    let mut hints: Vec<_> = bindings(context)
        .filter(|binding| binding.hint > 0)
        .collect();
    hints.sort_by_key(|binding| binding.hint);
    hints
}

/// The keys of a place, in the order of the table.
pub fn bindings(context: Context) -> impl Iterator<Item = &'static Binding> {
    BINDINGS
        .iter()
        .filter(move |binding| binding.context == context)
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::HashSet;

    #[test]
    fn no_key_does_two_things_in_one_place() {
        let mut seen = HashSet::new();
        for binding in BINDINGS {
            assert!(seen.insert((binding.context, binding.key)), "{binding:?}");
        }
    }

    #[test]
    fn no_two_keys_have_one_place_in_a_hint_line() {
        let mut seen = HashSet::new();
        for binding in BINDINGS.iter().filter(|binding| binding.hint > 0) {
            assert!(seen.insert((binding.context, binding.hint)), "{binding:?}");
        }
    }

    #[test]
    fn every_place_can_be_left_and_names_its_keys_shortly() {
        for context in Context::ALL {
            assert!(
                bindings(context).any(|binding| binding.key == Key::Esc),
                "{context:?}"
            );
            for binding in bindings(context) {
                assert!(!binding.action.label().is_empty(), "{binding:?}");
                assert!(binding.action.label().len() <= 12, "{binding:?}");
                assert!(binding.action.help().ends_with('.'), "{binding:?}");
            }
        }
    }

    #[test]
    fn the_first_hints_of_a_face_are_edit_save_and_quit_among_others() {
        let first: Vec<Action> = hints(Face)
            .iter()
            .take(9)
            .map(|binding| binding.action)
            .collect();
        for needed in [Action::Sizes, Action::Save, Action::Quit, Action::Help] {
            assert!(first.contains(&needed), "{needed:?}");
        }
    }
}
