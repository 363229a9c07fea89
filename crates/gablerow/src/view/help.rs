//! The keys, from the table they are dispatched from.

use gablerow_papers::wrap;

use super::canvas::Canvas;
use crate::action::Action;
use crate::keymap::{self, Context};
use crate::theme::{Charset, Role};

/// The column in which the sentences begin.
const SENTENCES: u16 = 14;

/// Draws the page from a line on.
pub(super) fn draw(canvas: &mut Canvas, from: usize) {
    canvas.text(1, 0, "keys", Role::Title);
    let charset = canvas.charset();
    let lines = lines(
        charset,
        usize::from(canvas.width().saturating_sub(SENTENCES)),
    );
    let height = usize::from(canvas.height().saturating_sub(2));
    let from = from.min(lines.len().saturating_sub(height));
    for (y, (key, text)) in (1..).zip(lines.iter().skip(from).take(height)) {
        canvas.text(1, y, key, Role::HintKey);
        canvas.text(SENTENCES, y, text, Role::Plain);
    }
}

/// Every key of every place, digits as one; a sentence that is wider than the room goes on below.
fn lines(charset: Charset, room: usize) -> Vec<(String, String)> {
    let mut lines = Vec::new();
    for context in Context::ALL {
        lines.push((context.title().to_owned(), String::new()));
        for binding in keymap::bindings(context) {
            let key = match binding.action {
                Action::Digit(1) => "1 to 9, 0".to_owned(),
                Action::Digit(_) => continue,
                _ => binding.key.name(charset).into_owned(),
            };
            let keys = std::iter::once(key).chain(std::iter::repeat(String::new()));
            lines.extend(keys.zip(wrap(binding.action.help(), room)));
        }
    }
    lines
}
