//! An edit tried on a copy of its cabinet: whether the finding is gone, whether a stop is new, how much became another.

use alloc::collections::BTreeSet;
use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

use crate::bench::recounted;
use crate::check::{self, Checked, Finding, Level, Rule};
use crate::edit::{Edit, New, shop_values};
use crate::history::{Change, Step};
use crate::job::{Cabinet, FaceId, Job, Key, PanelId};
use crate::layout::Layout;
use crate::measure::Length;
use crate::propose::Proposal;

/// How far a change reaches; what it weighs beside the holes that become others.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Reach {
    /// A fitting, as it was but elsewhere or otherwise.
    Fitting,
    /// Fittings set anew, as for a wish.
    Hardware,
    /// The cabinet.
    Cabinet,
    /// Every cabinet of the job.
    Job,
    /// A fitting or a front less: always the last resort.
    Away,
}

impl Reach {
    fn weight(self) -> usize {
        match self {
            Self::Fitting => 0,
            Self::Hardware => 10,
            Self::Cabinet => 200,
            Self::Job => 400,
            Self::Away => 10_000,
        }
    }
}

/// What a new warn and a new note weigh, in holes.
const WARN: usize = 10;
const NOTE: usize = 3;

/// A finding, and what was tried against it.
pub(super) struct Trial<'a> {
    /// The whole job.
    pub(super) job: &'a Job,
    /// What is to be mended.
    pub(super) finding: &'a Finding,
    /// The cabinet it is about.
    pub(super) cabinet: &'a Cabinet,
    /// What that comes to.
    pub(super) layout: Layout,
    /// The cabinet alone, with the one that some checks compare others with.
    here: Job,
    before: Vec<Finding>,
    /// What is said of the whole job before, once that is asked for.
    all: Option<Checked>,
    good: Vec<Good>,
}

/// An edit that helps.
struct Good {
    /// What is to be known of it beside its holes and findings; may be empty.
    also: String,
    edit: Edit,
    step: Step,
    holes: usize,
    new: Vec<Finding>,
    weight: usize,
}

impl<'a> Trial<'a> {
    /// Nothing tried yet; `None` when the job has no such cabinet.
    pub(super) fn of(job: &'a Job, finding: &'a Finding) -> Option<Self> {
        let cabinet = job.cabinet(finding.place.cabinet)?;
        let layout = Layout::of(cabinet, job);
        let before = check::of_cabinet(job, cabinet, &layout);
        let first = job.first_with_front_row().map(|first| first.key);
        let here_too = |it: &&Cabinet| it.key == cabinet.key || first == Some(it.key);
        let here = Job {
            title: job.title.clone(),
            unit: job.unit,
            shop: job.shop.clone(),
            cards: job.cards.clone(),
            cabinets: job.cabinets.iter().filter(here_too).cloned().collect(),
            bored: job.bored.clone(),
            took: Vec::new(),
            troubles: Vec::new(),
            measured: job.measured.clone(),
            revisions: Vec::new(),
            left_at: None,
        };
        Some(Self {
            job,
            finding,
            cabinet,
            layout,
            here,
            before,
            all: None,
            good: Vec::new(),
        })
    }

    /// The things the finding is about.
    pub(super) fn about(&self) -> impl Iterator<Item = Key> + use<> {
        self.finding.about.into_iter().flatten()
    }

    /// What is open of its rule about one thing, itself included.
    pub(super) fn said_of(&self, thing: Key) -> impl Iterator<Item = &Finding> {
        let of = move |it: &&Finding| it.about.contains(&Some(thing)) && it.accepted.is_none();
        let same_rule = self.before.iter().filter(|it| it.rule == self.finding.rule);
        same_rule.filter(of)
    }

    /// Whether its rule is one of these.
    pub(super) fn is_of(&self, rules: &[Rule]) -> bool {
        rules.contains(&self.finding.rule)
    }

    /// Offers a house default otherwise, by its words.
    pub(super) fn offer_habit(&mut self, words: &str, new: New) -> bool {
        let values = shop_values(&self.job.shop);
        let value = values.iter().find(|value| value.name.words() == words);
        value.is_some_and(|value| {
            let value = value.name;
            self.offer(Reach::Job, Edit::ShopValue { value, new })
        })
    }

    /// Keeps an edit when it helps; whether it does.
    pub(super) fn offer(&mut self, reach: Reach, edit: Edit) -> bool {
        self.offer_saying(reach, edit, String::new())
    }

    /// The same, with a sentence about what neither holes nor findings show.
    pub(super) fn offer_saying(&mut self, reach: Reach, edit: Edit, also: String) -> bool {
        let Some(good) = self.judge(reach, edit) else {
            return false;
        };
        let good = Good { also, ..good };
        if !self
            .good
            .iter()
            .any(|other| other.step.change == good.step.change)
        {
            self.good.push(good);
        }
        true
    }

    fn judge(&mut self, reach: Reach, edit: Edit) -> Option<Good> {
        let step = edit.apply(&self.here).ok()?;
        step.apply(&mut self.here);
        let record = self.here.bored.len();
        if self.is_of(&[Rule::MiscountedHole]) {
            let found = recounted(self.job, &self.here, self.cabinet.key);
            self.here.bored.extend(found);
        }
        let tried = self.tried();
        self.here.bored.truncate(record);
        step.revert(&mut self.here);
        let (after, layout) = tried?;
        if !matches!(step.change, Change::Cabinet { .. }) && self.harms_others(&step) {
            return None;
        }
        let is_new = |it: &&Finding| {
            it.level != Level::Stop && !self.before.iter().any(|old| old.is_about_the_same(it))
        };
        let new: Vec<Finding> = after.iter().filter(is_new).cloned().collect();
        let warns = new.iter().filter(|it| it.level == Level::Warn).count();
        let holes = self.changed_holes(&layout);
        let weight = reach.weight() + holes + warns * WARN + (new.len() - warns) * NOTE;
        Some(Good {
            also: String::new(),
            edit,
            step,
            holes,
            new,
            weight,
        })
    }

    /// What the cabinet comes to as it now is; `None` when the finding is still there, or a stop is new.
    fn tried(&self) -> Option<(Vec<Finding>, Layout)> {
        let cabinet = self.here.cabinet(self.cabinet.key)?;
        let layout = Layout::of(cabinet, &self.here);
        // Most of what is tried leaves it, so it is looked for alone first.
        let same = check::of_rule(self.finding.rule, &self.here, cabinet, &layout);
        if same.iter().any(|it| it.is_about_the_same(self.finding)) {
            return None;
        }
        let after = check::of_cabinet(&self.here, cabinet, &layout);
        (!has_new_stop(&self.before, &after)).then_some((after, layout))
    }

    /// Whether a change of what every cabinet goes by opens a stop in another cabinet.
    fn harms_others(&mut self, step: &Step) -> bool {
        let before = self.all.get_or_insert_with(|| Checked::of(self.job));
        let (mut job, mut after) = (self.job.clone(), before.clone());
        step.apply(&mut job);
        after.follow(&job, &step.change);
        let cabinets = self.job.cabinets.iter();
        cabinets
            .zip(before.cabinets().zip(after.cabinets()))
            .filter(|(cabinet, _)| cabinet.key != self.cabinet.key)
            .any(|(_, (before, after))| has_new_stop(before, after))
    }

    /// How many holes are there no longer, or are new.
    fn changed_holes(&self, after: &Layout) -> usize {
        let (before, after) = (holes_of(&self.layout), holes_of(after));
        before.symmetric_difference(&after).count()
    }

    /// What helps, the least change first.
    pub(super) fn proposals(mut self, most: usize) -> Vec<Proposal> {
        self.good.sort_by_key(|good| good.weight);
        let said = |good: Good| Proposal {
            fronts: Vec::new(),
            title: good.step.label.clone(),
            why: why(&good),
            edit: Some(good.edit),
            already: false,
        };
        self.good.into_iter().take(most).map(said).collect()
    }
}

fn why(good: &Good) -> Vec<String> {
    let holes = match good.holes {
        0 => "every hole stays as it is".into(),
        1 => "1 hole becomes another".into(),
        many => format!("{many} holes go, or are new"),
    };
    let new = good
        .new
        .iter()
        .map(|it| format!("then {}: {}", it.level.word(), it.message));
    let also = Some(good.also.clone()).filter(|also| !also.is_empty());
    [holes].into_iter().chain(also).chain(new).collect()
}

/// A hole by its place, its diameter and its depth.
type Bore = (FaceId, Length, Length, Length, Option<Length>);

fn holes_of(layout: &Layout) -> BTreeSet<Bore> {
    let faces = layout.uprights.iter().flat_map(|upright| &upright.faces);
    let of = |face: &crate::layout::Face| {
        let id = face.id;
        let holes = face.holes(layout).into_iter();
        holes.map(move |it| (id, it.x, it.z, it.diameter, it.depth))
    };
    faces.flat_map(of).collect()
}

/// What a stop is told by: the same of the same things on the same panel.
type Stop = (Rule, [Option<Key>; 2], Option<PanelId>);

/// Whether a stop is open that was not, or one is open at more places.
fn has_new_stop(before: &[Finding], after: &[Finding]) -> bool {
    let stops = |findings: &[Finding]| {
        let open = findings.iter().filter(|it| it.is_open_stop());
        let mut stops: Vec<Stop> = open
            .map(|it| (it.rule, it.about, it.place.face.map(|face| face.panel)))
            .collect();
        stops.sort();
        stops
    };
    let before = stops(before);
    let mut left = before.iter();
    // Both are sorted: each stop afterwards has to find its own one before.
    !stops(after).iter().all(|stop| left.any(|old| old == stop))
}
