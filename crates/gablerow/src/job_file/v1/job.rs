//! The twin of the whole job, of its heading and of the shop's defaults.

use gablerow_core::job;
use gablerow_core::job::{CardId, FaceId, Label};
use gablerow_core::measure;
use serde::{Deserialize, Serialize};

use super::bench_rules::BenchRules;
use super::cabinet::Cabinet;
use super::cards::Cards;
use super::first;
use super::measure::Mm;
use super::record::Revision;
pub(in crate::job_file) use super::record::{Bored, Measured, Took, Trouble};
use super::text::Text;
use super::twin::{Key, Twin, plain, record, words};
use crate::job_file::wrong::Wrong;

/// What a job file is called in its first field.
pub(in crate::job_file) const FORMAT: &str = "gablerow job";
/// The version of this module.
pub(in crate::job_file) const VERSION: u32 = 1;

/// A job file of Gablerow, version 1. Every length is a decimal number of mm, of at most six decimals.
#[derive(Debug, Deserialize, Serialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
#[cfg_attr(test, schemars(title = "Gablerow job"))]
pub(in crate::job_file) struct JobFile {
    /// Always the same.
    #[cfg_attr(test, schemars(extend("const" = FORMAT)))]
    format: String,
    /// Always 1.
    #[cfg_attr(test, schemars(extend("const" = VERSION)))]
    version: u32,
    /// What the job is called.
    title: Text<Label>,
    /// The unit that bare numbers are typed and shown in; the file is in mm all the same.
    unit: Unit,
    /// The face the job was left on.
    #[serde(default, skip_serializing_if = "plain")]
    left_at: Option<LeftAt>,
    /// What every cabinet goes by.
    shop: Shop,
    /// Hardware and boards.
    cards: Cards,
    /// The cabinets, in the order a person steps through them.
    cabinets: Vec<Cabinet>,
    /// What has been bored; only ever added to.
    #[serde(default, skip_serializing_if = "plain")]
    bored: Vec<Bored>,
    /// What set-ups took; only ever added to.
    #[serde(default, skip_serializing_if = "plain")]
    took: Vec<Took>,
    /// What went wrong at the bench; only ever added to.
    #[serde(default, skip_serializing_if = "plain")]
    troubles: Vec<Trouble>,
    /// What was measured on bored faces; only ever added to.
    #[serde(default, skip_serializing_if = "plain")]
    measured: Vec<Measured>,
    /// The revisions of the cabinets; none for a cabinet that was never saved with one.
    #[serde(default, skip_serializing_if = "plain")]
    revisions: Vec<Revision>,
}

impl Twin for JobFile {
    type Core = job::Job;

    fn of(core: &job::Job) -> Self {
        let job::Job {
            title,
            unit,
            shop,
            cards,
            cabinets,
            bored,
            took,
            troubles,
            measured,
            revisions,
            left_at,
        } = core;
        Self {
            format: FORMAT.to_string(),
            version: VERSION,
            title: Twin::of(title),
            unit: Twin::of(unit),
            left_at: Twin::of(left_at),
            shop: Twin::of(shop),
            cards: Twin::of(cards),
            cabinets: Twin::of(cabinets),
            bored: Twin::of(bored),
            took: Twin::of(took),
            troubles: Twin::of(troubles),
            measured: Twin::of(measured),
            revisions: Twin::of(revisions),
        }
    }

    fn into_core(self) -> Result<job::Job, Wrong> {
        let Self {
            // Both were looked at before this version was chosen.
            format: _,
            version: _,
            title,
            unit,
            left_at,
            shop,
            cards,
            cabinets,
            bored,
            took,
            troubles,
            measured,
            revisions,
        } = self;
        let within = |name: &'static str| move |wrong: Wrong| wrong.within(name);
        Ok(job::Job {
            title: title.into_core().map_err(within("title"))?,
            unit: unit.into_core().map_err(within("unit"))?,
            shop: shop.into_core().map_err(within("shop"))?,
            cards: cards.into_core().map_err(within("cards"))?,
            cabinets: cabinets.into_core().map_err(within("cabinets"))?,
            bored: bored.into_core().map_err(within("bored"))?,
            took: took.into_core().map_err(within("took"))?,
            troubles: troubles.into_core().map_err(within("troubles"))?,
            measured: measured.into_core().map_err(within("measured"))?,
            revisions: revisions.into_core().map_err(within("revisions"))?,
            left_at: left_at.into_core().map_err(within("left_at"))?,
        })
    }
}

/// Title and unit on their own, as the journal keeps them.
#[derive(Debug, Deserialize, Serialize)]
#[serde(deny_unknown_fields)]
pub(in crate::job_file) struct Heading {
    title: Text<Label>,
    unit: Unit,
}

impl Twin for Heading {
    type Core = (Label, measure::Unit);

    fn of((title, unit): &Self::Core) -> Self {
        Self {
            title: Twin::of(title),
            unit: Twin::of(unit),
        }
    }

    fn into_core(self) -> Result<Self::Core, Wrong> {
        Ok((self.title.into_core()?, self.unit.into_core()?))
    }
}

words! {
    /// The unit that lengths are shown in.
    Unit = measure::Unit {
        /// Millimetres.
        Millimetre = "mm",
        /// Inches of 25.4 mm.
        Inch = "in",
    }
}

record! {
    /// The face a job was left on.
    LeftAt = job::LeftAt {
        /// The key of the cabinet.
        cabinet: Key,
        /// Its face.
        face: Text<FaceId>,
    }
}

record! {
    /// House defaults of a job.
    Shop = job::Shop {
        /// Front edge to the front row, in mm.
        setback_front: Mm,
        /// To the back row, from the edge or face that the rule names, in mm.
        setback_back: Mm,
        /// Where back rows stand.
        back_rule: BackRule,
        /// Diameter of system holes, in mm.
        diameter: Mm,
        /// Depth of blind holes, in mm.
        depth: Mm,
        /// The bit that blind holes are bored with.
        bit: Bit,
        /// Which ends of the panels rest on a stop.
        reference: Reference,
        /// The board new cabinets are made of.
        board: Text<CardId>,
        /// The hinge that new plates belong to.
        hinge: Text<CardId>,
        /// The runner that new drawers run on.
        runner: Text<CardId>,
        /// The pin that shelves rest on.
        pin: Text<CardId>,
        /// Distances the checks go by.
        limits: Limits,
        /// The board of fronts; left out for the board of new cabinets.
        #[serde(default, skip_serializing_if = "plain")]
        front_board: Option<Text<CardId>>,
        /// The board of drawer boxes; left out for the board of new cabinets.
        #[serde(default, skip_serializing_if = "plain")]
        box_board: Option<Text<CardId>>,
        /// The connector that panels are held together by; left out until one is chosen.
        #[serde(default, skip_serializing_if = "plain")]
        connector: Option<Text<CardId>>,
        /// The rail that holes are bored with; left out until one is chosen.
        #[serde(default, skip_serializing_if = "plain")]
        rail: Option<Text<CardId>>,
        /// Gaps and reveals of fronts.
        #[serde(default = "first::fronts")]
        fronts: FrontRules,
        /// The band of edges that are seen.
        #[serde(default = "first::band")]
        band: Band,
        /// How drawer boxes are made and spaced.
        #[serde(default = "first::boxes")]
        boxes: BoxRules,
        /// How the shop works at the bench.
        #[serde(default = "first::bench")]
        bench: BenchRules,
    }
}

record! {
    /// Gaps and reveals. One scheme for the whole job.
    #[derive(Copy)]
    FrontRules = job::FrontRules {
        /// Between two fronts, in mm.
        gap: Mm,
        /// From the carcass underside up to the lowest front, in mm; 0 is flush.
        reveal_foot: Mm,
        /// From the highest front up to the carcass top, in mm.
        reveal_head: Mm,
        /// From the outer face of a side in to a front over its edge, in mm.
        reveal_side: Mm,
        /// All around a front that stands inside the opening, in mm.
        gap_inset: Mm,
    }
}

record! {
    /// The band of edges that are seen.
    #[derive(Copy)]
    Band = job::Band {
        /// Its thickness, in mm.
        thickness: Mm,
        /// What the bander takes off an edge before it glues, in mm.
        pre_mill: Mm,
        /// Whether it is on when a panel is bored.
        on: BandState,
    }
}

words! {
    /// Whether the band is on when a panel is bored.
    BandState = job::BandState {
        /// Banded first, then bored.
        BeforeBoring = "before boring",
        /// Bored first, then banded.
        AfterBoring = "after boring",
    }
}

record! {
    /// How drawer boxes are made and spaced.
    #[derive(Copy)]
    BoxRules = job::BoxRules {
        /// How deep the bottom stands in its grooves, in mm.
        groove: Mm,
        /// Box heights are whole multiples of it, in mm.
        step: Mm,
        /// Clear height under the lowest box, in mm.
        below: Mm,
        /// Clear height between two boxes, in mm.
        between: Mm,
        /// Clear height over the highest box, in mm.
        above: Mm,
        /// From a front's lower edge up to its box's underside, as wished, in mm.
        rise: Mm,
        /// The least that may be, in mm.
        rise_least: Mm,
        /// The most that may be, in mm.
        rise_most: Mm,
    }
}

words! {
    /// Where the back row stands.
    BackRule = job::BackRule {
        /// The back setback from the back edge of the side.
        FromBackEdge = "from the back edge",
        /// The back setback from the front face of the back panel.
        FromBackPanel = "from the back panel",
        /// Whole pitches behind the front row.
        OnPitch = "on pitch",
    }
}

words! {
    /// The point of a bit.
    Bit = job::Bit {
        /// Flat, for blind holes.
        Flat = "flat",
        /// Pointed, for through holes.
        Pointed = "pointed",
    }
}

words! {
    /// Which ends of a panel rest on a stop while its rows are bored.
    Reference = job::Reference {
        /// Two stops: every row from the foot.
        Foot = "foot",
        /// One stop: rows from either end.
        OneStop = "one stop",
    }
}

record! {
    /// Distances the checks go by, in mm.
    #[derive(Copy)]
    Limits = job::Limits {
        /// Least distance from a hole's centre to the panel's end.
        to_end: Mm,
        /// Least distance from a hole's centre to a long edge or a notch.
        to_edge: Mm,
        /// Least distance from a hole's centre to the groove or rabbet of the back.
        to_back: Mm,
        /// Least distance between the centres of two holes that are not one.
        near: Mm,
        /// Least board left under a blind hole of a flat bit.
        skin_flat: Mm,
        /// Least board left under a blind hole of a pointed bit.
        skin_pointed: Mm,
        /// Least board left between blind holes bored from both faces.
        web: Mm,
        /// What a hole must be deeper than its fastener, and what two opposed fasteners must leave between them.
        spare: Mm,
        /// Distance between two keep-outs under which the screen notes it.
        close: Mm,
    }
}
