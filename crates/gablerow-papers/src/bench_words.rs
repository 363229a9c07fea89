//! What is said around the set-ups of a plan, for the sheet of text and the one of paper alike.

use alloc::collections::{BTreeMap, BTreeSet};
use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

use gablerow_core::bench::{Check, Panel, Plan, Rock, SetUp, pace, progress_of_job};
use gablerow_core::cautions::{AT_THE_BENCH, GENERAL};
use gablerow_core::counted::counted;
use gablerow_core::job::{AsCut, BandState, Cabinet, Job, Key, Trouble};
use gablerow_core::measure::{Length, Unit};
use gablerow_core::stamp::Stamp;

use crate::bench_records::{CopyNames, SetUpRecord};

/// How each line of a set is read.
pub(crate) const LAY: &str = "the face named up, the edge named toward you, the foot to the hand named. Push the end named against its \
    stop every time; blow the stop before each first hole. Holes are counted from the foot of the cabinet, 32 mm apart; STOP is from the \
    stop to the first hole of the rail, and numbers on the rail count from the stop.";

/// What is seen without measuring of panels that rested on a packer.
const LEVEL: &str = "[ ] Each panel that had a PACKER, stood on it beside a side: holes of one number are level on a straightedge.";

/// A packer thinner than any board.
const SHIM: Length = Length::from_mm(3);

/// What is written into the blank for diagonals.
const DIAGONALS: &str = "A blank for diagonals takes how much longer the one from the front of the foot is, with a minus where it is shorter.";

/// What is taken of panels whose diagonals are apart.
const LEAN: &str = "Where diagonals are apart both ends are taken to lean alike; where one is true it is twice that.";

/// The usual cautions, for whoever bores and, where that is not said already, in general.
pub(crate) fn cautions(is_general_said: bool) -> Vec<String> {
    let general = (!is_general_said).then_some(GENERAL);
    AT_THE_BENCH
        .into_iter()
        .chain(general)
        .map(String::from)
        .collect()
}

/// A plan of a job, with the names of what is bored.
pub(crate) struct BenchWords<'a> {
    plan: &'a Plan,
    job: &'a Job,
    /// Its set-ups, in order.
    pub(crate) records: Vec<SetUpRecord<'a>>,
    copies: BTreeMap<(Key, Key), CopyNames<'a>>,
}

impl<'a> BenchWords<'a> {
    pub(crate) fn of(plan: &'a Plan, job: &'a Job) -> Self {
        Self {
            plan,
            job,
            records: SetUpRecord::of_plan(plan, job),
            copies: CopyNames::of_job(job),
        }
    }

    fn show(&self, length: Length) -> String {
        length.show(self.job.unit).to_string()
    }

    /// `46 holes, 10 set-ups, about 20 min; sizes in mm`
    pub(crate) fn amount(&self) -> String {
        let holes: usize = self.plan.set_ups.iter().map(|it| it.holes.count()).sum();
        let seconds = u64::from(self.plan.seconds) * u64::from(pace(&self.job.took)) / 100;
        let minutes = seconds.div_ceil(60);
        let unit = match self.job.unit {
            Unit::Millimetre => Unit::Millimetre.word(),
            Unit::Inch => Unit::Inch.words(),
        };
        format!(
            "{}, {}, about {minutes} min; sizes in {unit}",
            counted(holes, "hole"),
            counted(self.plan.set_ups.len(), "set-up"),
        )
    }

    /// The state of each cabinet: `G2 rev 7 OTTER, G3 rev 1 PETAL`.
    pub(crate) fn stamps(&self) -> String {
        let stamp = |it: &Cabinet| {
            let stamp = Stamp::now(self.job, it);
            format!("{} {stamp}", it.name)
        };
        let stamps: Vec<String> = self.job.cabinets.iter().map(stamp).collect();
        stamps.join(", ")
    }

    /// How much is on record as bored, where the plan is of what is left; what went wrong.
    pub(crate) fn record(&self) -> Vec<String> {
        let panels = progress_of_job(self.job).into_iter();
        let (done, all) = panels.fold((0, 0), |(done, all), it| {
            (done + it.done, all + it.done + it.left)
        });
        let planned: usize = self.plan.set_ups.iter().map(|it| it.holes.count()).sum();
        let mut lines = Vec::new();
        if done > 0 {
            let what = if planned + done == all {
                "what is left"
            } else {
                "all of them"
            };
            lines.push(format!(
                "{done} of {} are bored; this sheet is of {what}",
                counted(all, "hole")
            ));
        }
        let trouble = |it: &Trouble| {
            let names = self.copies.get(&(it.cabinet, it.copy))?;
            Some(format!("{}: {}", names.panel(it.face.panel), it.words))
        };
        lines.extend(self.job.troubles.iter().filter_map(trouble));
        lines
    }

    /// `1.0 thick, ALREADY ON`
    pub(crate) fn band(&self) -> String {
        let band = &self.job.shop.band;
        let state = match band.on {
            BandState::BeforeBoring => "ALREADY ON".to_string(),
            BandState::AfterBoring => format!(
                "NOT ON YET, pre-mill {}: settings from the front are for that",
                self.show(band.pre_mill)
            ),
        };
        format!("{} thick, {state}", self.show(band.thickness))
    }

    /// What is measured before the first hole: lengths and diagonals of every panel, what packers are cut, what no arm reaches.
    pub(crate) fn first(&self) -> Vec<String> {
        let line = |panel: &Panel| {
            let names = self.copies.get(&(panel.cabinet, panel.copy))?;
            Some(self.length_line(&names.panel(panel.panel), panel))
        };
        let mut lines: Vec<String> = self.plan.panels.iter().filter_map(line).collect();
        if !lines.is_empty() {
            lines.insert(0, DIAGONALS.into());
        }
        let packers: BTreeSet<Length> = self.plan.set_ups.iter().map(|it| it.rest.packer).collect();
        for packer in packers.into_iter().filter(|it| *it != Length::ZERO) {
            let what = if packer < SHIM {
                "a shim"
            } else {
                "an off-cut"
            };
            lines.push(format!(
                "[ ] PACKER {}: {what} as thick as that, between the stop and the panel",
                self.show(packer)
            ));
        }
        for far in self.records.iter().filter(|it| !it.set_up.is_reached) {
            lines.push(format!(
                "[ ] {} {}: no arm reaches the row from the edge toward you; set the rail by tape at both ends",
                far.order,
                far.panel()
            ));
        }
        lines
    }

    /// What is to be measured of a panel, and what was.
    fn length_line(&self, name: &str, panel: &Panel) -> String {
        let want = self.show(panel.length);
        let cut = panel.cut.unwrap_or(AsCut::of(panel.panel));
        let length = match (cut.length, cut.play) {
            (Some(length), _) => {
                let by = self.show((length - panel.length).abs());
                let how = match length - panel.length {
                    Length::ZERO => "as planned".to_string(),
                    longer if longer > Length::ZERO => format!("{by} longer than {want}"),
                    _ => format!("{by} shorter than {want}"),
                };
                format!("length {}, {how}", self.show(length))
            }
            (None, Some(play)) => format!("play {} at {want}", self.show(play)),
            (None, None) => format!("length ____ want {want}"),
        };
        let diagonals = match cut.diagonals {
            Some(apart) if apart < Length::ZERO => format!("-{}", self.show(-apart)),
            Some(apart) => self.show(apart),
            None => "____".to_string(),
        };
        let thick = cut
            .thickness
            .map(|thick| format!(", {} thick", self.show(thick)));
        let is_done = cut.diagonals.is_some() && (cut.length.is_some() || cut.play.is_some());
        let done = if is_done { "[x]" } else { "[ ]" };
        format!(
            "{done} {name}: {length}, diagonals differ by {diagonals}{}",
            thick.unwrap_or_default()
        )
    }

    /// How far shelves will be from level, because panels were cut longer, shorter or out of square.
    pub(crate) fn rocks(&self) -> Vec<String> {
        let line = |rock: &Rock| {
            let bay = self.copies.get(&(rock.cabinet, rock.copy))?.bay(rock.bay)?;
            let slope = |by: Length, [up, down]: [&str; 2]| match by {
                Length::ZERO => None,
                by if by > Length::ZERO => Some(format!("{} up to the {up}", self.show(by))),
                by => Some(format!("{} up to the {down}", self.show(-by))),
            };
            let slopes = [
                slope(rock.to_the_right(), ["right", "left"]),
                slope(rock.to_the_back(), ["back", "front"]),
            ];
            let slopes: Vec<String> = slopes.into_iter().flatten().collect();
            let slopes = if slopes.is_empty() {
                "level".into()
            } else {
                slopes.join(", ")
            };
            let rocks = self.show(rock.rock());
            Some(format!("{bay}: shelves rock {rocks}, {slopes}"))
        };
        let mut lines: Vec<String> = self.plan.rocks.iter().filter_map(line).collect();
        if self.plan.rocks.iter().any(|it| it.is_by_lean) {
            lines.push(LEAN.to_string());
        }
        lines
    }

    /// `hole 3 to hole 20 in row 37.0: 544.0 ____`, or what it was measured to be.
    fn check(&self, set_up: &SetUp, check: &Check) -> String {
        let (cabinet, copy, face) = (set_up.cabinet, set_up.copy, set_up.face);
        let is = self.job.measured(cabinet, copy, face, check.span);
        let is = is.map_or("____".to_string(), |is| format!("is {}", self.show(is)));
        format!(
            "{}: {} {is}",
            check.span.show(self.job.unit),
            self.show(check.want)
        )
    }

    /// Distances to measure once a face is done.
    pub(crate) fn checks(&self) -> Vec<String> {
        let mut lines = Vec::new();
        for record in self
            .records
            .iter()
            .filter(|it| !it.set_up.checks.is_empty())
        {
            let checks: Vec<String> = record
                .set_up
                .checks
                .iter()
                .map(|check| self.check(record.set_up, check))
                .collect();
            lines.push(format!("[ ] {}: {}", record.panel(), checks.join(", ")));
        }
        let has_packer = |it: &SetUpRecord| it.set_up.rest.packer != Length::ZERO;
        if self.records.iter().any(has_packer) {
            lines.push(LEVEL.to_string());
        }
        lines
    }
}
