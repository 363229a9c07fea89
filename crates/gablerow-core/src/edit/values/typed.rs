//! What a person types for a value, and what stands in the field before.

use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;
use core::fmt;

use super::{Carrier, Content, Quantity, Value};
use crate::edit::Refusal;
use crate::label::Label;
use crate::measure::{Length, Unit, parse_length, parse_onto};
use crate::strength::SHELF_LOAD_KG;

/// What stands between two items of a list; a comma is a decimal mark.
const BETWEEN: char = ';';

impl Value {
    /// Whether it is typed; else it is stepped through.
    #[must_use]
    pub fn is_typed(&self) -> bool {
        !matches!(self.quantity, Quantity::Choice | Quantity::Card(..))
    }

    /// The text that stands in the field before anything is typed, read back as the value itself.
    #[must_use]
    pub fn offered(&self, unit: Unit) -> String {
        self.text(|length| length.exact(unit).to_string())
    }

    /// The value as a person reads it, with its unit.
    #[must_use]
    pub fn shown(&self, unit: Unit) -> String {
        match (&self.now, self.quantity) {
            (
                Content::Number(Some(number)),
                Quantity::Number(_, of) | Quantity::MaybeNumber(_, of),
            ) => {
                format!("{number} {of}")
            }
            (Content::Number(None), _) => "not looked up".to_string(),
            (Content::Card(None), Quantity::Card(_, none))
            | (Content::MaybeLength(None), Quantity::MaybeLength(_, none)) => none.to_string(),
            (Content::MaybeLength(Some(length)), _) => length.show(unit).to_string(),
            (Content::MaybeLoad(Some(grams)), _) => format!("{} kg", kg(*grams)),
            (Content::MaybeLoad(None), Quantity::MaybeLoad(Carrier::Drawer)) => {
                "not known".to_string()
            }
            (Content::MaybeLoad(None), _) => format!("{SHELF_LOAD_KG} kg (house)"),
            (Content::Length(length), _) => length.show(unit).to_string(),
            // A list has room for short forms only, and mm that are whole.
            (Content::Lengths(_), _) => self.text(|length| length.exact(unit).to_string()),
            _ => self.offered(unit),
        }
    }

    fn text(&self, length: impl Fn(Length) -> String) -> String {
        match &self.now {
            Content::Title(title) => title.to_string(),
            Content::Length(value) => length(*value),
            Content::MaybeLength(value) => value.map(length).unwrap_or_default(),
            Content::MaybeLoad(grams) => grams.map(kg).unwrap_or_default(),
            Content::Number(number) => number.map(|n| n.to_string()).unwrap_or_default(),
            Content::Lengths(list) => joined(list.iter().map(|value| length(*value))),
            Content::Pitches(list) => joined(list.iter()),
            Content::Choice(words) => (*words).to_string(),
            Content::Card(id) => id.as_ref().map(ToString::to_string).unwrap_or_default(),
        }
    }

    /// What a typed text means here; lengths may be typed in either unit, a bare number is in `unit`.
    ///
    /// # Errors
    /// The text is none of what this value is; the range is for the edit to check.
    pub fn parse(&self, text: &str, unit: Unit) -> Result<Content, Refusal> {
        let said = |wrong: &dyn fmt::Display| Refusal(wrong.to_string());
        match (self.quantity, &self.now) {
            (Quantity::Title, _) => Label::new(text)
                .map(Content::Title)
                .map_err(|wrong| said(&wrong)),
            (Quantity::Length(_), Content::Length(now)) => parse_onto(text, *now, unit)
                .map(Content::Length)
                .map_err(|wrong| said(&wrong)),
            (Quantity::MaybeLength(..), _) if text.is_empty() => Ok(Content::MaybeLength(None)),
            (Quantity::MaybeLength(..), Content::MaybeLength(now)) => {
                let read = match now {
                    Some(now) => parse_onto(text, *now, unit),
                    None => parse_length(text, unit),
                };
                let content = read.map(|length| Content::MaybeLength(Some(length)));
                content.map_err(|wrong| said(&wrong))
            }
            (Quantity::MaybeLoad(_), _) if text.is_empty() => Ok(Content::MaybeLoad(None)),
            (Quantity::MaybeLoad(_), _) => grams(text)
                .map(|grams| Content::MaybeLoad(Some(grams)))
                .ok_or_else(|| {
                    Refusal("a load is kg with one decimal at most, such as 25 or 7.5".into())
                }),
            (Quantity::MaybeNumber(..), _) if text.is_empty() => Ok(Content::Number(None)),
            (Quantity::Number(range, of) | Quantity::MaybeNumber(range, of), _) => {
                let number = text.strip_suffix(of).unwrap_or(text).trim().parse();
                let wrong = |_| Refusal(format!("{} is a whole number of {of}", range.name));
                number
                    .map(|number| Content::Number(Some(number)))
                    .map_err(wrong)
            }
            (Quantity::Lengths(..), _) => items(text)
                .map(|item| parse_length(item, unit).map_err(|wrong| said(&wrong)))
                .collect::<Result<_, _>>()
                .map(Content::Lengths),
            (Quantity::Pitches, _) => items(text)
                .map(|item| item.parse().map_err(|_| not_pitches()))
                .collect::<Result<_, _>>()
                .map(Content::Pitches),
            _ => Err(Refusal("this is stepped through and not typed".into())),
        }
    }
}

/// Grams as kg, exactly: `25`, `7.5`.
pub(super) fn kg(grams: u32) -> String {
    let (whole, rest) = (grams / 1_000, grams % 1_000);
    let decimals = format!("{rest:03}");
    match decimals.trim_end_matches('0') {
        "" => whole.to_string(),
        decimals => format!("{whole}.{decimals}"),
    }
}

/// The grams of a load that was typed in kg, with or without its unit and one decimal; `None` for anything else.
fn grams(text: &str) -> Option<u32> {
    let text = text.strip_suffix("kg").unwrap_or(text).trim();
    let (whole, decimal) = text.split_once(['.', ',']).unwrap_or((text, "0"));
    let digits = |text: &str| !text.is_empty() && text.bytes().all(|byte| byte.is_ascii_digit());
    if !digits(whole) || !digits(decimal) || decimal.len() > 1 {
        return None;
    }
    let [whole, decimal]: [u32; 2] = [whole.parse().ok()?, decimal.parse().ok()?];
    whole.checked_mul(1_000)?.checked_add(decimal * 100)
}

fn not_pitches() -> Refusal {
    Refusal("whole pitches from the first screw, such as 0; 4; 11".into())
}

/// The items of a list; what ends it may stand there or not.
fn items(text: &str) -> impl Iterator<Item = &str> {
    text.split(BETWEEN)
        .map(str::trim)
        .filter(|item| !item.is_empty())
}

fn joined(items: impl Iterator<Item = impl ToString>) -> String {
    let items: Vec<String> = items.map(|item| item.to_string()).collect();
    items.join("; ")
}
