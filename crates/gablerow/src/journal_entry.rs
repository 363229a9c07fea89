//! A change as one line of the journal, and back.
//!
//! Steps hold whole values, so that an old journal can be read without knowing how an edit worked then.

use gablerow_core::history::{Change, Step};
use gablerow_core::label::Label;
use gablerow_core::measure::Unit;
use serde::{Deserialize, Serialize};
use serde_json::value::RawValue;

use crate::job_file;
use crate::update::Kept;

type Raw = Box<RawValue>;

/// What a line of the journal is.
#[derive(Serialize, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
enum Entry {
    Made(Made),
    Undone,
    Redone,
    Left(Raw),
    Bored { holes: Vec<Raw>, took: Option<Raw> },
    Trouble(Raw),
    Measured(Raw),
    Began { shop: Raw, cards: Raw },
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Made {
    label: String,
    change: Changed,
}

#[derive(Serialize, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
enum Changed {
    Cabinet {
        at: usize,
        before: Option<Raw>,
        after: Option<Raw>,
    },
    Shop {
        before: Raw,
        after: Raw,
    },
    Cards {
        before: Raw,
        after: Raw,
    },
    Title {
        before: String,
        after: String,
    },
    Unit {
        before: String,
        after: String,
    },
}

/// A line that cannot be read, and why.
#[derive(Debug)]
pub struct EntryError(String);

impl std::fmt::Display for EntryError {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "a line of the journal cannot be read: {}", self.0)
    }
}

impl std::error::Error for EntryError {}

fn wrong(error: impl std::fmt::Display) -> EntryError {
    EntryError(error.to_string())
}

/// The line of a change, without a line feed.
///
/// # Errors
/// When JSON cannot hold it, which no change of ours comes to.
pub fn write(kept: &Kept) -> Result<String, EntryError> {
    let entry = match kept {
        Kept::Made(step) => Entry::Made(Made {
            label: step.label.clone(),
            change: changed(&step.change)?,
        }),
        Kept::Undone => Entry::Undone,
        Kept::Redone => Entry::Redone,
        Kept::Left(place) => Entry::Left(raw(job_file::left_at_text(place))?),
        Kept::Bored(holes, took) => {
            let holes = holes.iter().map(job_file::bored_text).map(raw);
            let took = took.as_ref().map(job_file::took_text).map(raw);
            Entry::Bored {
                holes: holes.collect::<Result<_, _>>()?,
                took: took.transpose()?,
            }
        }
        Kept::Trouble(trouble) => Entry::Trouble(raw(job_file::trouble_text(trouble))?),
        Kept::Measured(measured) => Entry::Measured(raw(job_file::measured_text(measured))?),
        Kept::Began(house) => Entry::Began {
            shop: raw(job_file::shop_text(&house.0))?,
            cards: raw(job_file::cards_text(&house.1))?,
        },
    };
    serde_json::to_string(&entry).map_err(wrong)
}

/// The change of a line.
///
/// # Errors
/// When the line is not one that [`write()`] gives.
pub fn read(line: &str) -> Result<Kept, EntryError> {
    Ok(match serde_json::from_str(line).map_err(wrong)? {
        Entry::Made(Made { label, change }) => Kept::Made(Box::new(Step {
            label,
            change: change_of(change)?,
        })),
        Entry::Undone => Kept::Undone,
        Entry::Redone => Kept::Redone,
        Entry::Left(place) => Kept::Left(job_file::read_left_at(place.get()).map_err(wrong)?),
        Entry::Bored { holes, took } => {
            let holes = holes.iter().map(|hole| job_file::read_bored(hole.get()));
            let took = took.map(|took| job_file::read_took(took.get()));
            Kept::Bored(
                holes.collect::<Result<_, _>>().map_err(wrong)?,
                took.transpose().map_err(wrong)?,
            )
        }
        Entry::Trouble(trouble) => {
            Kept::Trouble(job_file::read_trouble(trouble.get()).map_err(wrong)?)
        }
        Entry::Measured(measured) => {
            Kept::Measured(job_file::read_measured(measured.get()).map_err(wrong)?)
        }
        Entry::Began { shop, cards } => Kept::Began(Box::new((
            job_file::read_shop(shop.get()).map_err(wrong)?,
            job_file::read_cards(cards.get()).map_err(wrong)?,
        ))),
    })
}

fn raw(json: String) -> Result<Raw, EntryError> {
    RawValue::from_string(json).map_err(wrong)
}

fn changed(change: &Change) -> Result<Changed, EntryError> {
    let cabinet = |side: &Option<Box<_>>| {
        side.as_deref()
            .map(job_file::cabinet_text)
            .map(raw)
            .transpose()
    };
    Ok(match change {
        Change::Cabinet { at, before, after } => Changed::Cabinet {
            at: *at,
            before: cabinet(before)?,
            after: cabinet(after)?,
        },
        Change::Shop { before, after } => Changed::Shop {
            before: raw(job_file::shop_text(before))?,
            after: raw(job_file::shop_text(after))?,
        },
        Change::Cards { before, after } => Changed::Cards {
            before: raw(job_file::cards_text(before))?,
            after: raw(job_file::cards_text(after))?,
        },
        Change::Title { before, after } => Changed::Title {
            before: before.to_string(),
            after: after.to_string(),
        },
        Change::Unit { before, after } => Changed::Unit {
            before: before.word().to_owned(),
            after: after.word().to_owned(),
        },
    })
}

fn change_of(changed: Changed) -> Result<Change, EntryError> {
    let cabinet = |side: Option<Raw>| {
        side.map(|json| job_file::read_cabinet(json.get()).map(Box::new))
            .transpose()
            .map_err(wrong)
    };
    let shop = |json: Raw| job_file::read_shop(json.get()).map(Box::new).map_err(wrong);
    let cards = |json: Raw| {
        job_file::read_cards(json.get())
            .map(Box::new)
            .map_err(wrong)
    };
    let title = |text: String| Label::new(&text).map_err(wrong);
    Ok(match changed {
        Changed::Cabinet { at, before, after } => Change::Cabinet {
            at,
            before: cabinet(before)?,
            after: cabinet(after)?,
        },
        Changed::Shop { before, after } => Change::Shop {
            before: shop(before)?,
            after: shop(after)?,
        },
        Changed::Cards { before, after } => Change::Cards {
            before: cards(before)?,
            after: cards(after)?,
        },
        Changed::Title { before, after } => Change::Title {
            before: title(before)?,
            after: title(after)?,
        },
        Changed::Unit { before, after } => Change::Unit {
            before: unit(&before)?,
            after: unit(&after)?,
        },
    })
}

fn unit(word: &str) -> Result<Unit, EntryError> {
    let known = [Unit::Millimetre, Unit::Inch]
        .into_iter()
        .find(|unit| unit.word() == word);
    known.ok_or_else(|| EntryError(format!("{word} is no unit")))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::demo;
    use gablerow_core::bench::{Times, bored_by, plan};
    use gablerow_core::edit::{Edit, Measure};
    use gablerow_core::grid::HoleNumber;
    use gablerow_core::job::{
        Bored, FaceId, Hand, Job, Key, LeftAt, Measured, Span, Took, Trouble,
    };
    use gablerow_core::measure::Length;

    /// What the first set-up of the demo bores.
    fn bored() -> Vec<Bored> {
        let job = demo::job().unwrap();
        let plan = plan(&job, &[job.cabinets[0].key], &Times::default());
        bored_by(&plan.set_ups[0], &job)
    }

    #[test]
    fn every_kind_of_change_comes_back_from_its_line() {
        let job = Job::plain(Label::new("glaze store").unwrap());
        let cabinet = Key(1);
        let edits = [
            Edit::Add {
                after: None,
                name: Label::new("G9").unwrap(),
            },
            Edit::Measure {
                cabinet,
                measure: Measure::Height,
                value: Length::from_mm(736),
            },
            Edit::Measure {
                cabinet,
                measure: Measure::Board,
                value: Length::from_um(18_250),
            },
            Edit::Measure {
                cabinet,
                measure: Measure::SetbackBack,
                value: Length::from_mm(28),
            },
            Edit::Title(Label::new("kiln room").unwrap()),
            Edit::Unit(Unit::Inch),
        ];
        let made = edits
            .iter()
            .map(|edit| Kept::Made(Box::new(edit.apply(&job).unwrap())));
        let left = Kept::Left(LeftAt {
            cabinet,
            face: FaceId::inside(Hand::Right),
        });
        let began = Kept::Began(Box::new((job.shop.clone(), job.cards.clone())));
        let took = Took {
            planned: 65,
            seconds: 80,
        };
        let trouble = Trouble {
            cabinet,
            copy: Key(2),
            face: FaceId::inside(Hand::Left),
            words: Label::new("the bit wandered").unwrap(),
        };
        let measured = Measured {
            cabinet,
            copy: Key(2),
            face: FaceId::inside(Hand::Left),
            span: Span::Holes {
                row: Length::from_mm(37),
                first: HoleNumber::FIRST,
                last: HoleNumber::FIRST.up(5).unwrap(),
            },
            want: Length::from_mm(160),
            is: Length::from_um(191_750),
            taken_back: false,
        };
        let bench = [
            Kept::Measured(measured),
            Kept::Bored(bored(), Some(took)),
            Kept::Bored(Vec::new(), None),
            Kept::Trouble(trouble),
        ];
        let others = [Kept::Undone, Kept::Redone, left, began];
        for kept in made.chain(others).chain(bench) {
            let line = write(&kept).unwrap();
            assert!(!line.contains('\n'));
            assert_eq!(read(&line).unwrap(), kept);
        }
    }

    #[test]
    fn a_line_of_something_else_is_an_error() {
        for line in ["", "{}", "\"gone\"", "{\"made\":{\"label\":\"x\"}}"] {
            assert!(read(line).is_err(), "{line}");
        }
    }
}
