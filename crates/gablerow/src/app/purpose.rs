//! What a line is typed for.

use gablerow_core::bench::Check;
use gablerow_core::cards::CardName;
use gablerow_core::check::{Level, Rule};
use gablerow_core::edit::{FreeMeasure, Measure, PartMeasure, ValueName};
use gablerow_core::job::{FaceId, Job, Key as Name, Names, PanelId};
use gablerow_core::layout::{Layout, Upright};
use gablerow_papers::panel_name;

use crate::card_line::CardLine;

/// What a line is typed for.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Purpose {
    /// The file to save to, and whether to leave then.
    SaveAs {
        /// Leave once it is saved.
        then_quit: bool,
    },
    /// The name of a new cabinet, after the given one.
    Add(Name),
    /// The name of a copy.
    Copy(Name),
    /// Another name.
    Rename(Name),
    /// The name of what is to be removed.
    Remove(Name),
    /// A length.
    Measure(Measure),
    /// A length of a part of the cabinet.
    PartMeasure(Name, PartMeasure),
    /// A value of a loose shelf, or of a drawer by its front.
    OwnValue(Name, ValueName),
    /// A value of a card, or of the house defaults.
    Value {
        /// The card; `None` are the house defaults.
        card: Option<CardName>,
        /// Which value.
        value: ValueName,
    },
    /// The title of a copy of a card.
    CopyCard(CardName),
    /// The setback of a free row over a run of holes, both ends included.
    FreeRow(i16, i16),
    /// The setback and the height of a free hole.
    FreeHole,
    /// A length of a free row or a free hole.
    FreeMeasure(Name, FreeMeasure),
    /// What a free row or a free hole is for.
    FreePurpose(Name),
    /// The names of the copies of a cabinet.
    CopyNames(Name),
    /// What was measured of the panels of the copies of a cabinet.
    CutLengths(Name),
    /// What went wrong at the bench with a face of a copy of a cabinet.
    Trouble(Name, Name, FaceId),
    /// The panel that was cut anew.
    CutAnew,
    /// What distances on a bored face measure.
    Measured {
        /// The cabinet.
        cabinet: Name,
        /// Which of its copies.
        copy: Name,
        /// The face, as the copy has it.
        face: FaceId,
        /// The distances, in the order they are typed in.
        checks: Vec<Check>,
    },
    /// The folder that papers are written to.
    Folder,
    /// Why a finding is accepted; the sentence that overrules it, when it is a stop.
    Reason {
        /// The rule.
        rule: Rule,
        /// What the finding said.
        message: String,
    },
}

impl Purpose {
    /// Whether it is typed in its place on the screen rather than in the last line.
    #[must_use]
    pub fn is_in_place(&self) -> bool {
        matches!(
            self,
            Self::Measure(_)
                | Self::PartMeasure(..)
                | Self::FreeMeasure(..)
                | Self::FreePurpose(_)
                | Self::OwnValue(..)
                | Self::Value { .. }
        )
    }

    /// What is asked for, in words.
    #[must_use]
    pub fn question(&self, job: &Job) -> String {
        let name = |key: &Name| {
            job.cabinet(*key)
                .map(|cabinet| cabinet.name.to_string())
                .unwrap_or_default()
        };
        match self {
            Self::SaveAs { .. } => "save as".to_owned(),
            Self::Add(_) => "name of the new cabinet".to_owned(),
            Self::Copy(cabinet) => format!("name of the copy of {}", name(cabinet)),
            Self::Rename(cabinet) => format!("new name of {}", name(cabinet)),
            Self::Remove(cabinet) => format!("remove {0}? type {0}", name(cabinet)),
            Self::Measure(measure) => measure.words().to_owned(),
            Self::PartMeasure(_, measure) => measure.words().to_owned(),
            Self::OwnValue(_, value) => value.words().to_owned(),
            Self::Value { card, value } => {
                let of = card.as_ref().map(|card| card.id.to_string());
                let of = of.unwrap_or_else(|| CardLine::HOUSE.to_owned());
                format!("{of}: {value}")
            }
            Self::CopyCard(card) => format!("title of the copy of {}", card.id),
            Self::FreeRow(first, last) if first == last => {
                format!("free row on {first}: setback")
            }
            Self::FreeRow(first, last) => format!("free row on {first}-{last}: setback"),
            Self::FreeHole => "free hole: setback at height".to_owned(),
            Self::FreeMeasure(_, measure) => measure.words().to_owned(),
            Self::FreePurpose(_) => "what it is for".to_owned(),
            Self::CopyNames(cabinet) => format!("copies of {}", name(cabinet)),
            Self::CutLengths(cabinet) => {
                format!("{} as cut, for {}", name(cabinet), panels(job, *cabinet))
            }
            &Self::Trouble(cabinet, copy, face) => {
                format!("{}: what is wrong", face_words(job, cabinet, copy, face))
            }
            Self::Measured {
                cabinet,
                copy,
                face,
                checks,
            } => {
                let want = |it: &Check| {
                    let want = it.want.show(job.unit);
                    format!("{} = {want}", it.span.show(job.unit))
                };
                let wants: Vec<String> = checks.iter().map(want).collect();
                format!(
                    "{}, for {}",
                    face_words(job, *cabinet, *copy, *face),
                    wants.join("; ")
                )
            }
            Self::CutAnew => "panel that was cut anew".to_owned(),
            Self::Folder => "papers to".to_owned(),
            Self::Reason { rule, .. } => {
                let info = rule.info();
                let verb = match info.level {
                    Level::Stop => "overrule",
                    Level::Warn | Level::Note => "accept",
                };
                format!("{verb} {} because", info.name)
            }
        }
    }
}

/// A face of a copy in the words of the bench: `G2 copy 3 left side inside`; no copy where there is one alone.
fn face_words(job: &Job, cabinet: Name, copy: Name, face: FaceId) -> String {
    let panel = panel_name(job, cabinet, copy, face.panel).unwrap_or_default();
    format!("{panel} {}", face.word())
}

/// The panels of a cabinet in the order they are typed in: `left; partition 1; right`.
fn panels(job: &Job, cabinet: Name) -> String {
    let Some(cabinet) = job.cabinet(cabinet) else {
        return String::new();
    };
    let names = Names::of(&cabinet.opening);
    let short = |it: &Upright| match it.id {
        PanelId::Side(hand) => hand.word().to_owned(),
        PanelId::Partition(_) => names.panel(it.id).to_string(),
    };
    let panels: Vec<String> = Layout::of(cabinet, job)
        .uprights
        .iter()
        .map(short)
        .collect();
    panels.join("; ")
}
