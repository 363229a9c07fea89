//! What the shop keeps and the job lacks or has otherwise.

use super::canvas::Canvas;
use crate::app::App;
use crate::theme::Role;

/// Draws the list; the line one is on is marked, and always in sight.
pub(super) fn draw(canvas: &mut Canvas, app: &App, at: usize) {
    let after = canvas.text(1, 0, "kept in the shop", Role::Title);
    canvas.text(after + 2, 0, "and not so in this job", Role::Dim);
    let offers = app.shop_file.offers(&app.desk.job);
    let lines = usize::from(canvas.height().saturating_sub(3));
    let from = (at + 1).saturating_sub(lines);
    let shown = offers.iter().enumerate().skip(from).take(lines);
    for (y, (index, offer)) in (2..).zip(shown) {
        canvas.text(1, y, &offer.words(), Role::Plain);
        if index == at {
            canvas.mark_line(y);
        }
    }
}
