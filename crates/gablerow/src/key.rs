//! The one terminal key of the program: what was pressed, with everything folded away that no screen tells apart.

use std::borrow::Cow;
use std::fmt;
use std::time::{Duration, Instant};

use crossterm::event::{KeyCode, KeyEvent, KeyEventKind, KeyModifiers};

use crate::theme::Charset;

/// A key, as the keymap names it and a text field types it.
///
/// Shift is part of the character (`H` is not `h`), and means nothing with any other key.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Key {
    /// A character that can be seen, or the space.
    Char(char),
    /// The arrow up.
    Up,
    /// The arrow down.
    Down,
    /// The arrow left.
    Left,
    /// The arrow right.
    Right,
    /// Enter, on the main block or the number pad.
    Enter,
    /// Escape.
    Esc,
    /// Deletes what stands before the cursor.
    Backspace,
    /// Deletes what stands under the cursor.
    Delete,
    /// To the first.
    Home,
    /// To the last.
    End,
    /// One screen up.
    PageUp,
    /// One screen down.
    PageDown,
    /// To the next field.
    Tab,
    /// To the field before: Shift and Tab.
    BackTab,
    /// Ctrl-C, which a terminal in raw mode hands over as a key.
    Interrupt,
}

/// Keys other than characters, each with its name in hints: as drawn, and in plain ASCII.
const NAMES: [(Key, &str, &str); 16] = [
    (Key::SPACE, "Space", "Space"),
    (Key::Up, "↑", "up"),
    (Key::Down, "↓", "down"),
    (Key::Left, "←", "left"),
    (Key::Right, "→", "right"),
    (Key::Enter, "Enter", "Enter"),
    (Key::Esc, "Esc", "Esc"),
    (Key::Backspace, "Backspace", "Backspace"),
    (Key::Delete, "Del", "Del"),
    (Key::Home, "Home", "Home"),
    (Key::End, "End", "End"),
    (Key::PageUp, "PgUp", "PgUp"),
    (Key::PageDown, "PgDn", "PgDn"),
    (Key::Tab, "Tab", "Tab"),
    (Key::BackTab, "Shift-Tab", "Shift-Tab"),
    (Key::Interrupt, "Ctrl-C", "Ctrl-C"),
];

impl Key {
    /// The space bar: a character like any other in a text field, but with a name of its own in hints.
    pub const SPACE: Self = Self::Char(' ');

    /// The key of a terminal event, or `None` where no key of ours was pressed: a release, a chord with Ctrl or Alt
    /// other than Ctrl-C, a function key, a control character.
    ///
    /// Ctrl-H counts as Backspace, because some terminals send that byte for it.
    #[must_use]
    pub fn from_event(event: KeyEvent) -> Option<Self> {
        if event.kind == KeyEventKind::Release {
            return None;
        }
        let held = event.modifiers - KeyModifiers::SHIFT;
        if held == KeyModifiers::CONTROL {
            return match event.code {
                KeyCode::Char('c' | 'C') => Some(Self::Interrupt),
                KeyCode::Char('h' | 'H') => Some(Self::Backspace),
                _ => None,
            };
        }
        if !held.is_empty() {
            return None;
        }
        Some(match event.code {
            KeyCode::Char(c) if c.is_control() => return None,
            KeyCode::Char(c) if event.modifiers.contains(KeyModifiers::SHIFT) => {
                Self::Char(shifted(c))
            }
            KeyCode::Char(c) => Self::Char(c),
            KeyCode::Up => Self::Up,
            KeyCode::Down => Self::Down,
            KeyCode::Left => Self::Left,
            KeyCode::Right => Self::Right,
            KeyCode::Enter => Self::Enter,
            KeyCode::Esc => Self::Esc,
            KeyCode::Backspace => Self::Backspace,
            KeyCode::Delete => Self::Delete,
            KeyCode::Home => Self::Home,
            KeyCode::End => Self::End,
            KeyCode::PageUp => Self::PageUp,
            KeyCode::PageDown => Self::PageDown,
            KeyCode::Tab => Self::Tab,
            KeyCode::BackTab => Self::BackTab,
            _ => return None,
        })
    }

    /// The short name shown in hints, in the characters the terminal can show: `↑` or `up`, `Enter`, `Space`, `h`.
    #[must_use]
    pub fn name(self, charset: Charset) -> Cow<'static, str> {
        let row = NAMES.iter().find(|(key, _, _)| *key == self);
        match (self, row, charset) {
            (_, Some((_, drawn, _)), Charset::Unicode) => Cow::Borrowed(drawn),
            (_, Some((_, _, plain)), Charset::Ascii) => Cow::Borrowed(plain),
            (Self::Char(c), None, _) => Cow::Owned(c.to_string()),
            // Every key that is no character stands in NAMES, which a test holds.
            (_, None, _) => Cow::Borrowed("?"),
        }
    }
}

impl fmt::Display for Key {
    /// The name in hints as a Unicode terminal shows it.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(&self.name(Charset::Unicode))
    }
}

/// The capital of a letter that arrived small with Shift held, as some keyboard protocols send it.
/// A letter whose capital is two characters (`ß`) stays as it is.
fn shifted(c: char) -> char {
    let mut capital = c.to_uppercase();
    match (capital.next(), capital.next()) {
        (Some(one), None) => one,
        _ => c,
    }
}

/// A key press and when it was read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Press {
    /// What was pressed.
    pub key: Key,
    /// When it was read from the terminal.
    pub at: Instant,
}

impl Press {
    /// Two presses of one key within this time are one press of a dusty or worn key, for what switches on and off.
    ///
    /// Above the few milliseconds for which a switch chatters, and below the time in which a finger presses twice
    /// on purpose, about 100 ms: common practice.
    pub const BOUNCE: Duration = Duration::from_millis(80);

    /// Whether this press is a bounce of an earlier one: the same key, not later than [`Press::BOUNCE`] after it.
    ///
    /// For keys that toggle. A key that walks must not ask: held down it repeats faster than this.
    #[must_use]
    pub fn is_bounce_of(self, earlier: Self) -> bool {
        self.key == earlier.key && self.at.saturating_duration_since(earlier.at) <= Self::BOUNCE
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn key(code: KeyCode, held: KeyModifiers) -> Option<Key> {
        Key::from_event(KeyEvent::new(code, held))
    }

    #[test]
    fn shift_is_folded_into_the_character_and_dropped_elsewhere() {
        assert_eq!(
            key(KeyCode::Char('l'), KeyModifiers::SHIFT),
            Some(Key::Char('L'))
        );
        assert_eq!(
            key(KeyCode::Char('L'), KeyModifiers::SHIFT),
            Some(Key::Char('L'))
        );
        assert_eq!(
            key(KeyCode::Char('ß'), KeyModifiers::SHIFT),
            Some(Key::Char('ß'))
        );
        assert_eq!(
            key(KeyCode::Char('?'), KeyModifiers::SHIFT),
            Some(Key::Char('?'))
        );
        assert_eq!(key(KeyCode::Up, KeyModifiers::SHIFT), Some(Key::Up));
        assert_eq!(
            key(KeyCode::BackTab, KeyModifiers::SHIFT),
            Some(Key::BackTab)
        );
    }

    #[test]
    fn releases_are_dropped_and_repeats_are_kept() {
        let with = |kind| {
            Key::from_event(KeyEvent::new_with_kind(
                KeyCode::Up,
                KeyModifiers::NONE,
                kind,
            ))
        };
        assert_eq!(with(KeyEventKind::Press), Some(Key::Up));
        assert_eq!(with(KeyEventKind::Repeat), Some(Key::Up));
        assert_eq!(with(KeyEventKind::Release), None);
    }

    #[test]
    fn only_two_chords_mean_something() {
        assert_eq!(
            key(KeyCode::Char('c'), KeyModifiers::CONTROL),
            Some(Key::Interrupt)
        );
        assert_eq!(
            key(KeyCode::Char('h'), KeyModifiers::CONTROL),
            Some(Key::Backspace)
        );
        assert_eq!(key(KeyCode::Char('z'), KeyModifiers::CONTROL), None);
        assert_eq!(key(KeyCode::Up, KeyModifiers::CONTROL), None);
        assert_eq!(key(KeyCode::Char('c'), KeyModifiers::ALT), None);
        assert_eq!(
            key(
                KeyCode::Char('c'),
                KeyModifiers::CONTROL | KeyModifiers::ALT
            ),
            None
        );
        assert_eq!(key(KeyCode::F(1), KeyModifiers::NONE), None);
        assert_eq!(key(KeyCode::Char('\u{7f}'), KeyModifiers::NONE), None);
    }

    #[test]
    fn every_key_that_can_arrive_has_a_name_of_its_own() {
        use KeyCode as Code;
        let codes = [
            Code::Char(' '),
            Code::Up,
            Code::Down,
            Code::Left,
            Code::Right,
            Code::Enter,
            Code::Esc,
            Code::Backspace,
            Code::Delete,
            Code::Home,
            Code::End,
            Code::PageUp,
            Code::PageDown,
            Code::Tab,
            Code::BackTab,
        ];
        let mut keys: Vec<Key> = codes
            .iter()
            .filter_map(|code| key(*code, KeyModifiers::NONE))
            .collect();
        keys.push(Key::Interrupt);
        assert_eq!(keys.len(), NAMES.len());
        for charset in [Charset::Unicode, Charset::Ascii] {
            let mut names: Vec<_> = keys.iter().map(|key| key.name(charset)).collect();
            assert!(
                charset == Charset::Unicode || names.iter().all(|name| name.is_ascii()),
                "{names:?}"
            );
            assert!(!names.iter().any(|name| name == "?"), "{names:?}");
            names.sort();
            names.dedup();
            assert_eq!(names.len(), keys.len(), "{names:?}");
        }
    }

    #[test]
    fn names_are_short_and_show_the_character_itself() {
        assert_eq!(Key::Char('h').to_string(), "h");
        assert_eq!(Key::Char('H').to_string(), "H");
        assert_eq!(Key::SPACE.to_string(), "Space");
        assert_eq!(format!("{:>3}|{:<3}|", Key::Up, Key::Down), "  ↑|↓  |");
        assert_eq!(Key::Up.name(Charset::Ascii), "up");
    }

    #[test]
    fn a_bounce_is_the_same_key_within_eighty_milliseconds() {
        let first = Press {
            key: Key::SPACE,
            at: Instant::now(),
        };
        let later = |ms, key| Press {
            key,
            at: first.at + Duration::from_millis(ms),
        };
        assert!(later(80, Key::SPACE).is_bounce_of(first));
        assert!(!later(81, Key::SPACE).is_bounce_of(first));
        assert!(!later(10, Key::Enter).is_bounce_of(first));
    }
}
