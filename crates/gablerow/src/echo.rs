//! What a length comes to while it is typed: in both units, with a word where another one was likely meant.

use gablerow_core::edit::{Content, card_values, own_values, shop_values};
use gablerow_core::measure::{Length, parse_onto, remark};

use crate::app::{App, Asked, Purpose};

/// What is typed, read as a length; `None` when nothing is typed, or no length.
#[must_use]
pub fn typed_length(app: &App) -> Option<Length> {
    let Some(Asked::Line(line)) = &app.asked else {
        return None;
    };
    let job = &app.desk.job;
    let current = match &line.purpose {
        Purpose::Measure(measure) => measure.read(job, job.cabinet(app.spot.cabinet)?)?,
        Purpose::Value { .. } | Purpose::OwnValue(..) => match content(app, &line.purpose)? {
            Content::Length(length) => length,
            Content::MaybeLength(length) => length.unwrap_or_default(),
            _ => return None,
        },
        _ => return None,
    };
    // What was offered is the value itself, also where a sign stands before it.
    if line.field.text() == current.exact(job.unit).to_string() {
        return Some(current);
    }
    parse_onto(line.field.text().trim(), current, job.unit).ok()
}

/// What a value holds that is typed.
fn content(app: &App, purpose: &Purpose) -> Option<Content> {
    let job = &app.desk.job;
    let (values, value) = match purpose {
        Purpose::Value { card, value } => match card {
            Some(card) => (card_values(&job.cards.card(card)?), value),
            None => (shop_values(&job.shop), value),
        },
        Purpose::OwnValue(thing, value) => {
            (own_values(job.cabinet(app.spot.cabinet)?, *thing), value)
        }
        _ => return None,
    };
    let found = values.into_iter().find(|other| other.name == *value);
    found.map(|value| value.now)
}

/// A length in both units, the job's first, and what there is to ask about it while it is typed.
#[must_use]
pub fn both(app: &App, standing: Option<Length>) -> (String, Option<&'static str>) {
    let typed = typed_length(app);
    let shown = typed.or(standing.filter(|_| app.asked.is_none()));
    let text = shown.map(|length| length.both(app.desk.job.unit).to_string());
    (text.unwrap_or_default(), typed.and_then(remark))
}
