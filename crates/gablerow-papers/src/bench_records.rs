//! The set-ups of a plan with the names of what is bored.

use alloc::collections::BTreeMap;
use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

use gablerow_core::bench::{Holes, Plan, SetUp};
use gablerow_core::job::{FaceName, Job, Names};
use gablerow_core::layout::Layout;
use gablerow_core::measure::Length;
use gablerow_core::stamp::Stamp;

use crate::Value;
use crate::table::columns;

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
        let mut records = Vec::with_capacity(plan.set_ups.len());
        let mut stamps = BTreeMap::new();
        for (at, set_up) in plan.set_ups.iter().enumerate() {
            let cabinet = job.cabinet(set_up.cabinet);
            let copy = cabinet.and_then(|it| it.copies.iter().find(|copy| copy.key == set_up.copy));
            let (Some(cabinet), Some(copy)) = (cabinet, copy) else {
                continue;
            };
            let stamp = || Stamp::of(job, cabinet, &Layout::of(cabinet, job));
            records.push(Self {
                order: at + 1,
                cabinet: cabinet.name.as_str(),
                copy: copy.name.as_str(),
                is_one_of_many: cabinet.copies.len() > 1,
                name: Names::of(&cabinet.built_as(copy).opening).face(set_up.face),
                stamp: *stamps.entry(cabinet.key).or_insert_with(stamp),
                set_up,
            });
        }
        records
    }

    /// `G2 left side inside`; with the copy where there are several: `G2 copy 3 left side inside`.
    #[must_use]
    pub fn panel(&self) -> String {
        self.of_cabinet(&format!("{} {}", self.name.panel, self.name.word))
    }

    /// The same without the face.
    #[must_use]
    pub fn panel_alone(&self) -> String {
        self.of_cabinet(&self.name.panel.to_string())
    }

    fn of_cabinet(&self, name: &str) -> String {
        match self.is_one_of_many {
            true => format!("{} copy {} {name}", self.cabinet, self.copy),
            false => format!("{} {name}", self.cabinet),
        }
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
    index "the same holes as the rail counts them, from the stop"
        = |it| Value::Numbers(index(it.set_up));
    tape_mm "off the grid: from the reference end"
        = |it| Value::Lengths(match &it.set_up.holes {
            Holes::ByTape(lengths) => lengths.clone(),
            Holes::Runs(_) => Vec::new(),
        });
    count "how many holes"
        = |it| Value::Number(i64::try_from(it.set_up.holes.count()).unwrap_or(i64::MAX));
    checks "what to measure afterwards, centre to centre or to an end, in mm"
        = |it| Value::Phrases(
            it.set_up.checks.iter().map(|check| format!("{} {}", check.words, check.want.exact_mm())).collect()
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

fn index(set_up: &SetUp) -> Vec<i64> {
    match &set_up.holes {
        Holes::Runs(runs) => runs
            .iter()
            .flat_map(|&(first, last)| first..=last)
            .map(|hole| i64::from(set_up.rest.index(hole)))
            .collect(),
        Holes::ByTape(_) => Vec::new(),
    }
}
