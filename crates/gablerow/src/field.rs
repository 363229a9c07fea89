//! A text field of one line: text, and where the next character goes.

use unicode_segmentation::{GraphemeCursor, UnicodeSegmentation};
use unicode_width::UnicodeWidthStr;

use crate::key::Key;
use crate::terminal::is_shown;

/// A line of text being typed.
///
/// The cursor stands between two graphemes (what a reader takes for one character), before the
/// first or behind the last. A value that was there before is selected at first: typing replaces
/// it, moving keeps it.
///
/// # Example
///
/// ```
/// use gablerow::field::Field;
///
/// let mut field = Field::with("704");
/// field.insert('7');
/// assert_eq!(field.text(), "7");
///
/// let mut field = Field::with("704");
/// field.left();
/// field.insert('0');
/// assert_eq!(field.text(), "7004");
/// ```
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Field {
    text: String,
    /// In bytes from the start of the text; always on the boundary of a grapheme.
    at: usize,
    selected: bool,
}

impl Field {
    /// An empty field.
    #[must_use]
    pub fn new() -> Self {
        Self::default()
    }

    /// A field with a value in it, selected, the cursor behind it. Characters that cannot be shown
    /// are dropped.
    #[must_use]
    pub fn with(value: &str) -> Self {
        let text: String = value.chars().filter(|c| is_shown(*c)).collect();
        Self {
            at: text.len(),
            selected: !text.is_empty(),
            text,
        }
    }

    /// What stands in the field.
    #[must_use]
    pub fn text(&self) -> &str {
        &self.text
    }

    /// Whether the next character replaces the whole value.
    #[must_use]
    pub fn is_selected(&self) -> bool {
        self.selected
    }

    /// Does what a key means in a field; `false` where it means nothing here.
    pub fn press(&mut self, key: Key) -> bool {
        match key {
            Key::Char(c) => self.insert(c),
            Key::Backspace => self.backspace(),
            Key::Delete => self.delete(),
            Key::Left => self.left(),
            Key::Right => self.right(),
            Key::Home => self.home(),
            Key::End => self.end(),
            _ => return false,
        }
        true
    }

    /// Types a character before the cursor, or in place of the selected value.
    pub fn insert(&mut self, c: char) {
        self.paste(c.encode_utf8(&mut [0; 4]));
    }

    /// Puts text before the cursor, or in place of the selected value. Control characters, line
    /// ends and others that cannot be shown are dropped; text without any other changes nothing.
    pub fn paste(&mut self, text: &str) {
        let shown: String = text.chars().filter(|c| is_shown(*c)).collect();
        if shown.is_empty() {
            return;
        }
        if self.selected {
            self.clear();
        }
        self.text.insert_str(self.at, &shown);
        self.stand_at(self.at + shown.len());
    }

    /// Deletes the grapheme before the cursor, or the selected value.
    pub fn backspace(&mut self) {
        let start = self.boundary_before();
        self.remove(start, self.at);
    }

    /// Deletes the grapheme behind the cursor, or the selected value.
    pub fn delete(&mut self) {
        let end = self.boundary_behind();
        self.remove(self.at, end);
    }

    /// Moves the cursor one grapheme to the left, and keeps a selected value.
    pub fn left(&mut self) {
        self.stand_at(self.boundary_before());
    }

    /// Moves the cursor one grapheme to the right, and keeps a selected value.
    pub fn right(&mut self) {
        self.stand_at(self.boundary_behind());
    }

    /// Moves the cursor before the first grapheme, and keeps a selected value.
    pub fn home(&mut self) {
        self.stand_at(0);
    }

    /// Moves the cursor behind the last grapheme, and keeps a selected value.
    pub fn end(&mut self) {
        self.stand_at(self.text.len());
    }

    /// The part of the text that a window of `width` columns shows, and the cursor's column in it,
    /// counted from 0.
    ///
    /// The cursor is always in the window, with a third of it kept for what follows. The part is
    /// cut at graphemes, so that it may be a column narrower than the window. A window of no
    /// columns shows nothing.
    ///
    /// # Example
    ///
    /// ```
    /// use gablerow::field::Field;
    ///
    /// let mut field = Field::with("left side");
    /// assert_eq!(field.visible(20), ("left side".to_owned(), 9));
    /// // The cursor behind the text needs a column too: four are left for text.
    /// assert_eq!(field.visible(5), ("side".to_owned(), 4));
    /// field.home();
    /// assert_eq!(field.visible(5), ("left ".to_owned(), 0));
    /// ```
    #[must_use]
    pub fn visible(&self, width: usize) -> (String, usize) {
        if width == 0 {
            return (String::new(), 0);
        }
        let (before, behind) = self.text.split_at(self.at);
        let under_cursor = behind
            .graphemes(true)
            .next()
            .map_or(1, UnicodeWidthStr::width)
            .max(1);
        let kept = (behind.width() + 1).min(width / 3).max(under_cursor);
        let room_before = width.saturating_sub(kept);
        let before = last_columns(before, room_before);
        let column = before.width();
        let behind = first_columns(behind, width - column);
        (format!("{before}{behind}"), column)
    }

    fn clear(&mut self) {
        self.text.clear();
        self.stand_at(0);
    }

    fn remove(&mut self, start: usize, end: usize) {
        if self.selected {
            self.clear();
        } else {
            self.text.replace_range(start..end, "");
            self.stand_at(start);
        }
    }

    /// Puts the cursor at a place in bytes, or at the next boundary behind it: what was typed or
    /// deleted may have joined the graphemes beside it to one.
    fn stand_at(&mut self, at: usize) {
        self.selected = false;
        self.at = at;
        let mut cursor = GraphemeCursor::new(at, self.text.len(), true);
        if !matches!(cursor.is_boundary(&self.text, 0), Ok(true)) {
            self.at = self.boundary_behind();
        }
    }

    /// The boundary before the cursor, or 0.
    fn boundary_before(&self) -> usize {
        let mut cursor = GraphemeCursor::new(self.at, self.text.len(), true);
        cursor
            .prev_boundary(&self.text, 0)
            .ok()
            .flatten()
            .unwrap_or(0)
    }

    /// The boundary behind the cursor, or the end.
    fn boundary_behind(&self) -> usize {
        let mut cursor = GraphemeCursor::new(self.at, self.text.len(), true);
        cursor
            .next_boundary(&self.text, 0)
            .ok()
            .flatten()
            .unwrap_or(self.text.len())
    }
}

/// As many whole graphemes from the start as fit into some columns.
fn first_columns(text: &str, columns: usize) -> &str {
    let fits = |end: &usize| text[..*end].width() <= columns;
    let ends = text
        .grapheme_indices(true)
        .map(|(start, grapheme)| start + grapheme.len());
    let end = ends.take_while(fits).last().unwrap_or(0);
    &text[..end]
}

/// As many whole graphemes up to the end as fit into some columns.
fn last_columns(text: &str, columns: usize) -> &str {
    let fits = |start: &usize| text[*start..].width() <= columns;
    let starts = text.grapheme_indices(true).rev().map(|(start, _)| start);
    let start = starts.take_while(fits).last().unwrap_or(text.len());
    &text[start..]
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    /// The same field, as plainly as it can be written: a list of graphemes and a place in it.
    #[derive(Debug, Default)]
    struct Naive {
        graphemes: Vec<String>,
        at: usize,
        selected: bool,
    }

    impl Naive {
        fn with(value: &str) -> Self {
            let mut naive = Self::default();
            naive.put(value, "");
            naive.selected = !naive.graphemes.is_empty();
            naive
        }

        /// Cuts the text before and behind the cursor into graphemes anew.
        fn put(&mut self, before: &str, behind: &str) {
            let text = format!("{before}{behind}");
            self.graphemes = text.graphemes(true).map(str::to_owned).collect();
            self.at = (0..self.graphemes.len())
                .find(|count| self.graphemes[..*count].concat().len() >= before.len())
                .unwrap_or(self.graphemes.len());
            self.selected = false;
        }

        fn press(&mut self, step: &Step) {
            let before = self.graphemes[..self.at].concat();
            let behind = self.graphemes[self.at..].concat();
            match step {
                Step::Paste(text) if self.selected && !text.is_empty() => self.put(text, ""),
                Step::Paste(text) if !text.is_empty() => {
                    self.put(&format!("{before}{text}"), &behind);
                }
                Step::Paste(_) => {}
                Step::Key(Key::Backspace | Key::Delete) if self.selected => self.put("", ""),
                Step::Key(Key::Backspace) => {
                    let kept = self.graphemes[..self.at.saturating_sub(1)].concat();
                    self.put(&kept, &behind);
                }
                Step::Key(Key::Delete) => {
                    let kept = self.graphemes[(self.at + 1).min(self.graphemes.len())..].concat();
                    self.put(&before, &kept);
                }
                Step::Key(key) => {
                    self.selected = false;
                    self.at = match key {
                        Key::Left => self.at.saturating_sub(1),
                        Key::Right => (self.at + 1).min(self.graphemes.len()),
                        Key::Home => 0,
                        _ => self.graphemes.len(),
                    };
                }
            }
        }
    }

    #[derive(Clone, Debug)]
    enum Step {
        Key(Key),
        Paste(String),
    }

    /// Text whose parts like to join: marks, flags, syllables, wide letters.
    fn text() -> impl Strategy<Value = String> {
        let part = prop::sample::select(vec![
            "a", "7", " ", "/", "ä", "\u{301}", "🇦", "🇹", "漢", "ᄀ", "ᅡ", "½", "नि",
        ]);
        prop::collection::vec(part, 0..6).prop_map(|parts| parts.concat())
    }

    fn step() -> impl Strategy<Value = Step> {
        let keys = vec![
            Key::Left,
            Key::Right,
            Key::Home,
            Key::End,
            Key::Backspace,
            Key::Delete,
        ];
        prop_oneof![
            3 => prop::sample::select(keys).prop_map(Step::Key),
            1 => text().prop_map(Step::Paste),
        ]
    }

    proptest! {
        #[test]
        fn a_field_is_a_list_of_graphemes(value in text(), steps in prop::collection::vec(step(), 0..30)) {
            let mut field = Field::with(&value);
            let mut naive = Naive::with(&value);
            for step in &steps {
                match step {
                    Step::Key(key) => prop_assert!(field.press(*key)),
                    Step::Paste(text) => field.paste(text),
                }
                naive.press(step);
                prop_assert_eq!(field.text(), naive.graphemes.concat());
                prop_assert_eq!(field.at, naive.graphemes[..naive.at].concat().len());
                prop_assert_eq!(field.is_selected(), naive.selected);
            }
        }

        #[test]
        fn the_cursor_is_always_in_the_window(value in text(), lefts in 0_usize..8, width in 1_usize..12) {
            let mut field = Field::with(&value);
            for _ in 0..lefts {
                field.left();
            }
            let (shown, column) = field.visible(width);
            prop_assert!(column < width);
            prop_assert!(shown.width() <= width);
            prop_assert!(field.text().contains(&shown));
            if field.text().width() < width {
                prop_assert_eq!(shown, field.text());
            }
        }
    }

    #[test]
    fn a_selected_value_is_replaced_by_typing_pasting_and_deleting() {
        let after = |change: fn(&mut Field)| {
            let mut field = Field::with("18");
            assert!(field.is_selected());
            change(&mut field);
            assert!(!field.is_selected());
            field.text().to_owned()
        };
        assert_eq!(after(|field| field.insert('+')), "+");
        assert_eq!(after(|field| field.paste("19.1")), "19.1");
        assert_eq!(after(Field::backspace), "");
        assert_eq!(after(Field::delete), "");
    }

    #[test]
    fn a_selected_value_is_kept_by_moving() {
        for (key, text) in [
            (Key::Left, "1x8"),
            (Key::Right, "18x"),
            (Key::Home, "x18"),
            (Key::End, "18x"),
        ] {
            let mut field = Field::with("18");
            assert!(field.press(key));
            field.insert('x');
            assert_eq!(field.text(), text, "{key}");
        }
    }

    #[test]
    fn what_cannot_be_shown_is_dropped() {
        let mut field = Field::with("a\u{202e}b");
        assert_eq!(field.text(), "ab");
        field.paste("\r\n\t\u{1b}");
        assert!(field.is_selected(), "nothing was typed");
        field.end();
        field.paste("c\nd\u{200b}");
        assert_eq!(field.text(), "abcd");
    }

    #[test]
    fn keys_of_the_screen_are_left_to_it() {
        let mut field = Field::with("18");
        for key in [
            Key::Enter,
            Key::Esc,
            Key::Up,
            Key::Down,
            Key::Tab,
            Key::BackTab,
            Key::Interrupt,
            Key::PageUp,
        ] {
            assert!(!field.press(key), "{key}");
        }
        assert!(field.is_selected());
        assert!(field.press(Key::SPACE));
        assert_eq!(field.text(), " ");
    }

    #[test]
    fn a_mark_belongs_to_its_letter() {
        let mut field = Field::new();
        field.paste("a\u{301}b");
        field.left();
        field.backspace();
        assert_eq!(field.text(), "b");
    }

    #[test]
    fn the_window_keeps_what_follows_in_view() {
        let mut field = Field::with("0123456789");
        for _ in 0..4 {
            field.left();
        }
        // Six columns of nine before the cursor, three from it on.
        assert_eq!(field.visible(9), ("012345678".to_owned(), 6));
        assert_eq!(field.visible(6), ("234567".to_owned(), 4));
        assert_eq!(field.visible(1), ("6".to_owned(), 0));
        assert_eq!(field.visible(0), (String::new(), 0));
    }

    #[test]
    fn a_wide_letter_that_does_not_fit_is_not_cut() {
        let field = Field::with("漢字");
        assert_eq!(field.visible(4), ("字".to_owned(), 2));
        assert_eq!(field.visible(2), (String::new(), 0));
    }
}
