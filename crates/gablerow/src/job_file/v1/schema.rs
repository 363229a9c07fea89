//! The published JSON Schema, made from the twins.
//!
//! `GABLEROW_WRITE=1 cargo test -p gablerow schema` writes the file anew after a change.

use std::borrow::Cow;

use gablerow_core::cards::CardId;
use gablerow_core::job;
use gablerow_core::measure::Length;
use gablerow_core::measure::range::{self, Range};
use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
use serde_json::{Value, json};

use super::front::FrontWish;
use super::measure::{Measure, MeasureForm};
use super::text::{Text, TextForm};
use crate::job_file::{read, sample, write};

/// How the schema names a type, and the form of its text.
trait Form {
    const NAME: &str;
    /// A regular expression; empty when it is a length and no text.
    const PATTERN: &str;
}

macro_rules! forms {
    ($($core:ty = $name:literal, $pattern:expr;)+) => {
        $(impl Form for $core {
            const NAME: &str = $name;
            const PATTERN: &str = $pattern;
        })+
    };
}

forms! {
    job::Label = "Name", r"\S";
    CardId = "CardId", "^[a-z0-9-]{1,40}$";
    String = "Sentence", "";
    job::HolePlace = "Hole", "^(foot|head|middle) (0|-?[1-9][0-9]{0,2})$";
    job::PanelId = "Panel", "^(left side|right side|partition [0-9]+)$";
    job::FaceId = "Face", "^((left|right) side (inside|outside)|partition [0-9]+ (left|right))$";
    FrontWish = "FrontKind", r"^((door (left|right)|pair)( ([0-9]+ modules|[0-9]+(\.[0-9]+)? mm|share [0-9]+))?|(drawer|false|inner) ([0-9]+ modules|[0-9]+(\.[0-9]+)? mm|share [0-9]+))$";
    Length = "Length", "";
    job::Depth = "Depth", "^(shop|through)$";
    Option<Length> = "BoreDepth", "^through$";
    job::PartWidth = "PartWidth", "^equal$";
    job::ShelfHeight = "ShelfHeight", job::HolePlace::PATTERN;
}

impl<T: Form + TextForm> JsonSchema for Text<T> {
    fn schema_name() -> Cow<'static, str> {
        T::NAME.into()
    }

    fn json_schema(_: &mut SchemaGenerator) -> Schema {
        json_schema!({ "type": "string", "description": T::MEANT, "pattern": T::PATTERN })
    }
}

impl<T: Form + MeasureForm> JsonSchema for Measure<T> {
    fn schema_name() -> Cow<'static, str> {
        T::NAME.into()
    }

    fn json_schema(_: &mut SchemaGenerator) -> Schema {
        match T::PATTERN {
            "" => json_schema!({ "type": "number", "description": T::MEANT }),
            pattern => json_schema!({
                "description": T::MEANT,
                "anyOf": [{ "type": "number" }, { "type": "string", "pattern": pattern }],
            }),
        }
    }
}

/// An opening is one of the three.
pub(super) fn one_division() -> Value {
    json!([{ "required": ["bay"] }, { "required": ["side_by_side"] }, { "required": ["stacked"] }])
}

/// The fields whose range core knows: record, field, range.
const RANGES: &[(&str, &str, &Range)] = &[
    ("Size", "width", &range::CARCASS_WIDTH),
    ("Size", "height", &range::CARCASS_HEIGHT),
    ("Size", "depth", &range::CARCASS_DEPTH),
    ("EndOffsets", "foot", &range::END_OFFSET),
    ("EndOffsets", "head", &range::END_OFFSET),
    ("Sides", "below", &range::PLINTH),
    ("Notch", "height", &range::NOTCH),
    ("Notch", "depth", &range::NOTCH),
    ("Joint", "housing", &range::HOUSING),
    ("JointBore", "x", &range::CARCASS_POINT),
    ("JointBore", "diameter", &range::HOLE_DIAMETER),
    ("JointBore", "depth", &range::BORE_DEPTH),
    ("Shop", "setback_front", &range::SETBACK),
    ("Shop", "setback_back", &range::SETBACK),
    ("Shop", "diameter", &range::HOLE_DIAMETER),
    ("Shop", "depth", &range::BORE_DEPTH),
    ("Limits", "to_end", &range::LIMIT),
    ("Limits", "to_edge", &range::LIMIT),
    ("Limits", "to_back", &range::LIMIT),
    ("Limits", "near", &range::LIMIT),
    ("Limits", "skin_flat", &range::LIMIT),
    ("Limits", "skin_pointed", &range::LIMIT),
    ("Limits", "web", &range::LIMIT),
    ("Limits", "spare", &range::LIMIT),
    ("Limits", "close", &range::LIMIT),
    ("BackRail", "height", &range::STRETCHER_WIDTH),
    ("FrontRules", "gap", &range::GAP),
    ("FrontRules", "reveal_foot", &range::REVEAL),
    ("FrontRules", "reveal_head", &range::REVEAL),
    ("FrontRules", "reveal_side", &range::REVEAL),
    ("FrontRules", "gap_inset", &range::GAP),
    ("Band", "thickness", &range::BAND),
    ("Band", "pre_mill", &range::BAND),
    ("BoxRules", "groove", &range::GROOVE_DEPTH),
    ("BoxRules", "step", &range::BOX_STEP),
    ("BoxRules", "below", &range::BOX_CLEARANCE),
    ("BoxRules", "between", &range::BOX_CLEARANCE),
    ("BoxRules", "above", &range::BOX_CLEARANCE),
    ("BoxRules", "rise", &range::BOX_CLEARANCE),
    ("BoxRules", "rise_least", &range::BOX_CLEARANCE),
    ("BoxRules", "rise_most", &range::BOX_CLEARANCE),
    ("Tabs", "step", &range::TAB_STEP),
    ("BenchRules", "test_depth", &range::BORE_DEPTH),
    ("BenchRules", "base_off", &range::BASE_OFF),
    ("Board", "nominal", &range::BOARD_THICKNESS),
    ("RunnerLength", "name", &range::CARD_VALUE),
    ("Bay", "recess", &range::RECESS),
    ("Inset", "front", &range::BOARD_THICKNESS),
    ("Inset", "set_in", &range::SET_IN),
    ("Part", "width", &range::OPENING_SIZE),
    ("Partition", "recess", &range::RECESS),
    ("FixedShelf", "at", &range::PANEL_POSITION),
    ("FixedShelf", "recess", &range::RECESS),
    ("Zone", "depth", &range::BORE_DEPTH),
    ("Shelf", "setback_front", &range::SHELF_SETBACK),
    ("Shelf", "shorter", &range::SHELF_SHORTER),
    ("Shelf", "clear", &range::CLEAR_OPENING),
    ("Spacers", "left", &range::SPACER),
    ("Spacers", "right", &range::SPACER),
    ("Front", "thickness", &range::BOARD_THICKNESS),
    ("FreeRow", "setback", &range::CARCASS_POINT),
    ("FreeRow", "diameter", &range::HOLE_DIAMETER),
    ("FreeRow", "depth", &range::BORE_DEPTH),
    ("FreeHole", "setback", &range::CARCASS_POINT),
    ("FreeHole", "height", &range::PANEL_POSITION),
    ("FreeHole", "diameter", &range::HOLE_DIAMETER),
    ("FreeHole", "depth", &range::BORE_DEPTH),
    ("AsCut", "length", &range::AS_CUT_LENGTH),
    ("AsCut", "thickness", &range::BOARD_THICKNESS),
    ("AsCut", "play", &range::PLAY),
    ("AsCut", "diagonals", &range::DIAGONALS),
    ("Bored", "from_front", &range::PANEL_POSITION),
    ("Bored", "from_foot", &range::PANEL_POSITION),
    ("Bored", "depth", &range::BORE_DEPTH),
    ("Bored", "diameter", &range::HOLE_DIAMETER),
];

fn schema() -> Value {
    let mut schema = schemars::schema_for!(super::job::JobFile).to_value();
    for (record, field, range) in RANGES {
        let place = format!("/$defs/{record}/properties/{field}");
        let field = schema
            .pointer_mut(&place)
            .unwrap_or_else(|| panic!("{place}"));
        let bound =
            |length: Length| serde_json::from_str::<Value>(&length.exact_mm().to_string()).unwrap();
        field["minimum"] = bound(range.min);
        field["maximum"] = bound(range.max);
    }
    schema
}

#[test]
fn the_published_schema_is_made_from_the_twins() {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/../../assets/job.schema.json");
    let text = serde_json::to_string_pretty(&schema()).unwrap() + "\n";
    if std::env::var_os("GABLEROW_WRITE").is_some() {
        std::fs::write(path, &text).unwrap();
    }
    let published = std::fs::read_to_string(path).unwrap_or_default();
    assert!(
        published == text,
        "{path} is not what the twins say; GABLEROW_WRITE=1 writes it anew"
    );
}

/// Calls `visit` with every name of a field and every word that the schema allows.
fn each_word(schema: &Value, visit: &mut impl FnMut(&str)) {
    match schema {
        Value::Object(members) => {
            if let Some(Value::String(word)) = members.get("const") {
                visit(word);
            }
            if let Some(Value::Object(fields)) = members.get("properties") {
                fields.keys().for_each(|field| visit(field));
            }
            members.values().for_each(|inner| each_word(inner, visit));
        }
        Value::Array(items) => items.iter().for_each(|inner| each_word(inner, visit)),
        _ => {}
    }
}

#[test]
fn the_sample_jobs_use_every_field_and_every_word() {
    let text: String = sample::all().iter().map(write).collect();
    let mut count = 0;
    each_word(&schema(), &mut |word| {
        count += 1;
        // Two pin rows go without saying.
        let written = word == "two" || text.contains(&format!("\"{word}\""));
        assert!(written, "{word}");
    });
    assert!(count > 150, "{count}");
}

/// Calls `visit` with the place of every length of a value that the schema gives a range, and that range's row.
fn each_range(
    whole: &Value,
    schema: &Value,
    value: &Value,
    place: &str,
    visit: &mut impl FnMut(&str, &Range),
) {
    let mut record = "";
    let mut schema = schema;
    while let Some(name) = schema["$ref"].as_str() {
        record = name.trim_start_matches("#/$defs/");
        schema = &whole["$defs"][record];
    }
    let choices = ["anyOf", "oneOf"].map(|choice| schema[choice].as_array());
    for choice in choices.into_iter().flatten().flatten() {
        each_range(whole, choice, value, place, visit);
    }
    if let Value::Array(items) = value {
        for (at, item) in items.iter().enumerate() {
            each_range(
                whole,
                &schema["items"],
                item,
                &format!("{place}/{at}"),
                visit,
            );
        }
    }
    let fields = schema["properties"].as_object().into_iter().flatten();
    for (field, field_schema) in fields {
        let Some(inner) = value.get(field) else {
            continue;
        };
        let place = format!("{place}/{field}");
        let row = RANGES.iter().find(|row| (row.0, row.1) == (record, field));
        match row {
            Some((.., range)) if inner.is_number() => visit(&place, range),
            _ => each_range(whole, field_schema, inner, &place, visit),
        }
    }
}

#[test]
fn ranges_of_the_schema_are_those_of_the_reader() {
    let schema = schema();
    let hair = Length::from_counts(1);
    let mut seen = std::collections::BTreeSet::new();
    let text = write(&sample::glaze_store());
    let job: Value = serde_json::from_str(&text).unwrap();
    each_range(&schema, &schema, &job, "", &mut |place, range| {
        let said = |length: Length| {
            let mut job = job.clone();
            let text = length.exact_mm().to_string();
            *job.pointer_mut(place).unwrap() = serde_json::from_str(&text).unwrap();
            read(job.to_string().as_bytes()).map_err(|error| error.message)
        };
        for length in [range.min - hair, range.max + hair] {
            let message = said(length).expect_err(place);
            assert!(message.starts_with(range.name), "{place}: {message}");
        }
        for length in [range.min, range.max] {
            let refused = said(length).is_err_and(|message| message.starts_with(range.name));
            assert!(!refused, "{place}");
        }
        let fields = place.split('/').filter(|word| word.parse::<u32>().is_err());
        seen.insert(fields.collect::<Vec<_>>().join("/"));
    });
    assert!(seen.len() >= RANGES.len(), "{seen:#?}");
}
