//! The set-ups of a plan with the names of what is bored.

use alloc::collections::BTreeMap;
use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

use gablerow_core::bench::{Held, Holes, Plan, Position, SetUp};
use gablerow_core::job::{Cabinet, Copy, FaceName, Job, Key, Names, PanelId};
use gablerow_core::measure::{Length, Unit};
use gablerow_core::stamp::Stamp;

use crate::Value;
use crate::table::columns;

/// A copy of a cabinet, and what its things are called.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct CopyNames<'a> {
    cabinet: &'a str,
    copy: &'a str,
    is_one_of_many: bool,
    names: Names,
    stamp: Stamp,
}

impl<'a> CopyNames<'a> {
    /// Those of every copy of a job, by the keys of cabinet and copy.
    pub(crate) fn of_job(job: &'a Job) -> BTreeMap<(Key, Key), Self> {
        let of = |cabinet: &'a Cabinet| {
            let stamp = Stamp::now(job, cabinet);
            let names = move |copy| Self::of(cabinet, copy, stamp);
            let copies = cabinet.copies.iter();
            copies.map(move |copy| ((cabinet.key, copy.key), names(copy)))
        };
        job.cabinets.iter().flat_map(of).collect()
    }

    fn of(cabinet: &'a Cabinet, copy: &'a Copy, stamp: Stamp) -> Self {
        Self {
            cabinet: cabinet.name.as_str(),
            copy: copy.name.as_str(),
            is_one_of_many: cabinet.copies.len() > 1,
            names: Names::of(&cabinet.built_as(copy).opening),
            stamp,
        }
    }

    /// `G2 left side`; with the copy where there are several: `G2 copy 3 left side`.
    pub(crate) fn panel(&self, panel: PanelId) -> String {
        of_cabinet(
            self.cabinet,
            self.is_one_of_many.then_some(self.copy),
            &self.names.panel(panel).to_string(),
        )
    }

    /// `G2 copy 1, bay 2`.
    pub(crate) fn bay(&self, bay: Key) -> Option<String> {
        let bay = self.names.opening(bay)?;
        Some(format!("{} copy {}, {bay}", self.cabinet, self.copy))
    }
}

/// `G2 left side`; with the copy where there are several: `G2 copy 3 left side`. Nothing when there is no such copy.
#[must_use]
pub fn panel_name(job: &Job, cabinet: Key, copy: Key, panel: PanelId) -> Option<String> {
    let cabinet = job.cabinet(cabinet)?;
    let copy = cabinet.copies.iter().find(|it| it.key == copy)?;
    Some(CopyNames::of(cabinet, copy, Stamp::now(job, cabinet)).panel(panel))
}

/// Something of a cabinet, with the copy where that has to be said.
pub(crate) fn of_cabinet(cabinet: &str, copy: Option<&str>, name: &str) -> String {
    match copy {
        Some(copy) => format!("{cabinet} copy {copy} {name}"),
        None => format!("{cabinet} {name}"),
    }
}

/// One set-up, and what its things are called.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SetUpRecord<'a> {
    /// Its place in the order, from 1.
    pub order: usize,
    /// What the cabinet is called.
    pub cabinet: &'a str,
    /// What the copy is called.
    pub copy: &'a str,
    /// Whether the cabinet has several copies.
    pub is_one_of_many: bool,
    /// What the face is called on the copy.
    pub name: FaceName,
    /// The state of the cabinet.
    pub stamp: Stamp,
    /// The set-up.
    pub set_up: &'a SetUp,
}

impl<'a> SetUpRecord<'a> {
    /// Every set-up of a plan of this job, in order.
    #[must_use]
    pub fn of_plan(plan: &'a Plan, job: &'a Job) -> Vec<Self> {
        let copies = CopyNames::of_job(job);
        let numbered = (1..).zip(&plan.set_ups);
        let record = |(order, set_up): (usize, &'a SetUp)| {
            let names = copies.get(&(set_up.cabinet, set_up.copy))?;
            Some(Self {
                order,
                cabinet: names.cabinet,
                copy: names.copy,
                is_one_of_many: names.is_one_of_many,
                name: names.names.face(set_up.face),
                stamp: names.stamp,
                set_up,
            })
        };
        numbered.filter_map(record).collect()
    }

    /// `G2 left side inside`; with the copy where there are several: `G2 copy 3 left side inside`.
    #[must_use]
    pub fn panel(&self) -> String {
        let name = format!("{} {}", self.name.panel, self.name.word);
        of_cabinet(
            self.cabinet,
            self.is_one_of_many.then_some(self.copy),
            &name,
        )
    }
}

columns! {
    SetUpRecord<'_>;
    order "its place in the order of work"
        = |it| Value::Number(i64::try_from(it.order).unwrap_or(i64::MAX));
    bit "what turns in the router"
        = |it| Value::Word(it.set_up.tool.bit.word().into());
    diameter_mm "how wide it bores"
        = |it| Value::Length(it.set_up.tool.diameter);
    through "right through the board"
        = |it| Value::Flag(it.set_up.tool.depth.is_none());
    depth_mm "how deep; nothing for through"
        = |it| it.set_up.tool.depth.map_or(Value::Nothing, Value::Length);
    setting_mm "from the edge toward you to the row"
        = |it| Value::Length(it.set_up.setting.total());
    from_edge "the edge that the setting counts from"
        = |it| Value::Word(it.set_up.edge.word().into());
    reference_end "the end of the panel that rests on the stop"
        = |it| Value::Word(it.set_up.rest.end.word().into());
    packer "whether a packer lies between stop and panel"
        = |it| Value::Flag(it.set_up.rest.packer != Length::ZERO);
    packer_mm "how thick the packer is; nothing when there is none"
        = |it| match it.set_up.rest.packer {
            Length::ZERO => Value::Nothing,
            packer => Value::Length(packer),
        };
    stop_mm "from the stop to the first index hole"
        = |it| Value::Length(it.set_up.rest.stop);
    cabinet "what the cabinet is called"
        = |it| Value::Name(it.cabinet);
    revision "how many states of the cabinet were saved, this one among them"
        = |it| Value::Number(it.stamp.number.into());
    word "the word of that state"
        = |it| Value::Word(it.stamp.word.into());
    copy "what the copy is called"
        = |it| Value::Name(it.copy);
    panel "the upright, as the copy has it"
        = |it| Value::Word(it.name.panel.to_string().into());
    face "the face that is up"
        = |it| Value::Word(it.name.word.into());
    edge_toward_you "the long edge nearest to whoever bores"
        = |it| Value::Word(it.set_up.edge.word().into());
    foot_to_your "the hand the foot of the panel is on"
        = |it| Value::Word(it.set_up.foot_to.word().into());
    holes "hole numbers of the cabinet; nothing where there are none"
        = |it| Value::Numbers(numbers(&it.set_up.holes));
    index "the same holes as the rail counts them, from its end at the stop"
        = |it| Value::Numbers(index(it.set_up));
    moves "where a rail shorter than the panel is moved to, and what holds it there, before the holes beyond"
        = |it| Value::Phrases(it.set_up.positions.iter().filter_map(|at| move_words(it.set_up, at)).collect());
    tape_mm "off the grid: from the reference end"
        = |it| Value::Lengths(match &it.set_up.holes {
            Holes::ByTape(lengths) => lengths.clone(),
            Holes::Runs(_) => Vec::new(),
        });
    count "how many holes"
        = |it| Value::Number(i64::try_from(it.set_up.holes.count()).unwrap_or(i64::MAX));
    checks "what to measure afterwards, centre to centre or to an end, in mm"
        = |it| Value::Phrases(
            it.set_up.checks.iter().map(|check| format!("{} {}", check.span.show(Unit::Millimetre), check.want.exact_mm())).collect()
        );
}

fn numbers(holes: &Holes) -> Vec<i64> {
    match holes {
        Holes::Runs(runs) => runs
            .iter()
            .flat_map(|&(first, last)| first..=last)
            .map(i64::from)
            .collect(),
        Holes::ByTape(_) => Vec::new(),
    }
}

/// In the order of the holes.
fn index(set_up: &SetUp) -> Vec<i64> {
    let index = |at: &Position| {
        let rail = |hole| (hole, at.index(&set_up.rest, hole));
        let holes = at.runs.iter().flat_map(|&(first, last)| first..=last);
        holes.map(rail).collect::<Vec<_>>()
    };
    let mut on_rail: Vec<(i16, i16)> = set_up.positions.iter().flat_map(index).collect();
    on_rail.sort_unstable();
    on_rail
        .into_iter()
        .map(|(_, index)| i64::from(index))
        .collect()
}

/// `pins: rail 1 in hole 29, rail 2 in hole 30`; `tape: rail 1 at 1808 from the foot`. Nothing where it lies at first.
fn move_words(set_up: &SetUp, at: &Position) -> Option<String> {
    match at.held {
        Held::Stop => None,
        Held::Pins(pins) => {
            let pin = |hole| format!("rail {} in hole {hole}", at.index(&set_up.rest, hole));
            let [near, far] = pins.map(pin);
            Some(format!("pins: {near}, {far}"))
        }
        Held::Tape(from_end) => {
            let end = set_up.rest.end.word();
            Some(format!(
                "tape: rail 1 at {} from the {end}",
                from_end.exact_mm()
            ))
        }
    }
}
