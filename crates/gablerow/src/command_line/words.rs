//! The words that may stand in a field, taken from where they are made.

use gablerow_core::check::Level;
use gablerow_core::job::{FaceId, Hand, Key, PanelId, PanelName};
use gablerow_core::layout::{RowName, Use};
use gablerow_core::parts::{Arm, Banded, Grain};
use gablerow_papers::{Column, HoleRecord, PartRecord, SetUpRecord, Tabled};

/// A field, and the words that may stand in it.
type FieldWords = (&'static str, Vec<String>);

/// The words of `holes`, after what each column says.
pub(super) fn of_holes() -> String {
    format!(
        "{}\n{}",
        columns(HoleRecord::COLUMNS),
        listed(&[panels(), faces(), rows(), uses()])
    )
}

/// The words of `parts`, after what each column says.
pub(super) fn of_parts() -> String {
    format!(
        "{}\n{}",
        columns(PartRecord::COLUMNS),
        listed(&[kinds(), grains(), banded(), arms()])
    )
}

/// What each key of a set-up says.
pub(super) fn of_set_ups() -> String {
    format!(
        "{}\n{}",
        columns(SetUpRecord::COLUMNS),
        listed(&[panels(), faces()])
    )
}

/// What each column of a table says.
fn columns(columns: &[Column]) -> String {
    let wide = columns.iter().map(|column| column.name.len()).max();
    let wide = wide.unwrap_or_default();
    let line = |column: &Column| format!("  {:<wide$} {}\n", column.name, column.help);
    let lines: String = columns.iter().map(line).collect();
    format!("Columns:\n{lines}")
}

/// The words of `check`.
pub(super) fn of_findings() -> String {
    listed(&[panels(), faces(), levels()])
}

fn listed(fields: &[FieldWords]) -> String {
    let line = |(field, words): &FieldWords| format!("  {field:<14} {}\n", words.join(", "));
    let lines: String = fields.iter().map(line).collect();
    format!("Words:\n{lines}")
}

const HANDS: [Hand; 2] = [Hand::Left, Hand::Right];

fn panels() -> FieldWords {
    // A partition is named by its number; any one will do to take the word from.
    let partition = PanelName::Partition(0).to_string().replace('0', "N");
    let sides = HANDS.map(|hand| PanelName::Side(hand).to_string());
    ("panel", sides.into_iter().chain([partition]).collect())
}

fn faces() -> FieldWords {
    let inside = FaceId::inside(Hand::Left);
    let of_partition = HANDS.map(|toward| FaceId {
        panel: PanelId::Partition(Key(0)),
        toward,
    });
    let faces = [inside, inside.behind()].into_iter().chain(of_partition);
    ("face", faces.map(|face| face.word().to_owned()).collect())
}

fn rows() -> FieldWords {
    ("row", RowName::ALL.map(|row| row.word().to_owned()).into())
}

fn uses() -> FieldWords {
    ("uses", Use::ALL.map(|use_| use_.word().to_owned()).into())
}

fn levels() -> FieldWords {
    (
        "level",
        Level::ALL.map(|level| level.word().to_owned()).into(),
    )
}

fn kinds() -> FieldWords {
    ("kind", PartRecord::KINDS.map(str::to_owned).into())
}

fn grains() -> FieldWords {
    (
        "grain",
        Grain::ALL.map(|grain| grain.word().to_owned()).into(),
    )
}

fn banded() -> FieldWords {
    let mut words: Vec<String> = Vec::new();
    for edge in Banded::ALL.iter().flat_map(|banded| banded.edges()) {
        if !words.iter().any(|word| word == edge) {
            words.push((*edge).to_owned());
        }
    }
    ("banded", words)
}

fn arms() -> FieldWords {
    ("arm", Arm::ALL.map(|arm| arm.word().to_owned()).into())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_documentation_of_this_module_names_every_word() {
        let documentation = include_str!("mod.rs");
        let fields = [
            panels(),
            faces(),
            rows(),
            uses(),
            levels(),
            kinds(),
            grains(),
            banded(),
            arms(),
        ];
        for (field, words) in fields {
            let line = format!("//! | `{field}` | ");
            let line = documentation
                .lines()
                .find(|text| text.starts_with(&line))
                .unwrap();
            for word in words {
                assert!(line.contains(&format!("`{word}`")), "{field}: {word}");
            }
        }
    }

    #[test]
    fn words_are_told_apart() {
        let (_, mut words) = faces();
        words.dedup();
        assert_eq!(words, ["inside", "outside", "left face", "right face"]);
        assert_eq!(panels().1, ["left side", "right side", "partition N"]);
    }
}
