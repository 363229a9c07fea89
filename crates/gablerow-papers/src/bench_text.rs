//! The bench sheet: what is done at the bench, from top to bottom, at most 80 columns wide.

use alloc::collections::{BTreeMap, BTreeSet};
use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

use gablerow_core::bench::{Panel, Plan, Rock};
use gablerow_core::check::Finding;
use gablerow_core::job::{AsCut, BandState, Cabinet, Job, Key};
use gablerow_core::layout::Layout;
use gablerow_core::measure::Length;
use gablerow_core::stamp::Stamp;

use crate::HoleRecord;
use crate::bench_records::{CopyNames, SetUpRecord};
use crate::bench_rows::push_set_ups;
use crate::findings_text::findings_text;
use crate::hole_map::hole_map;
use crate::part_text::part_text;
use crate::text::{WIDTH, push_indented, push_line};

/// The names of every copy.
type Copies<'a> = BTreeMap<(Key, Key), CopyNames<'a>>;

/// A plan of this job to bore by, with what was found about it: its warns, and its overruled stops.
///
/// ```text
/// SET 1  37.0 from the edge toward you
///         this face up         edge   foot   holes            no.
///  1 [ ]  G2 left side inside  FRONT  RIGHT  3-4 11-16 19-20  10
/// ```
#[must_use]
pub fn bench_text(plan: &Plan, job: &Job, findings: &[Finding]) -> String {
    let records = SetUpRecord::of_plan(plan, job);
    let copies = CopyNames::of_job(job);
    let mut sheet = Sheet {
        out: String::new(),
        job,
    };
    sheet.heading(plan);
    sheet.findings(findings);
    sheet.first(plan, &records, &copies);
    sheet.rocks(&plan.rocks, &copies);
    push_set_ups(&mut sheet.out, &records, job);
    sheet.checks(&records);
    sheet.block("HOLES  ", &hole_map(&HoleRecord::of_job(job), job.unit));
    sheet.rule();
    sheet.out.push_str(&part_text(job));
    sheet.cautions();
    sheet.out
}

/// How each line of a set is read.
const LAY: &str = "the face named up, the edge named toward you, the foot to the hand named. Push the end named against its \
    stop every time; blow the stop before each first hole.";

/// Usual cautions. Sources: of dust IARC vol. 100C (group 1); of loads the makers' sheets decide; the rest is common practice.
const CAUTIONS: [&str; 4] = [
    "First hole in scrap: measure it, then the first hole of each set-up, before going on.",
    "Panel clamped, bit tight, depth stop locked, cable clear, eyes and ears covered, power off for a change of bit.",
    "Wood dust causes cancer: extraction on, mask on.",
    "This sheet helps in the shop. It is neither engineering nor advice on codes: local codes and licensed practice prevail.",
];

pub(crate) fn push_rule(out: &mut String) {
    push_line(out, "", &"-".repeat(WIDTH));
}

/// `1 hole`, `2 holes`
fn counted(count: usize, what: &str) -> String {
    let s = if count == 1 { "" } else { "s" };
    format!("{count} {what}{s}")
}

/// The sheet in the making.
struct Sheet<'a> {
    out: String,
    job: &'a Job,
}

impl Sheet<'_> {
    fn show(&self, length: Length) -> String {
        length.show(self.job.unit).to_string()
    }

    fn rule(&mut self) {
        push_rule(&mut self.out);
    }

    /// What it is, in what state cabinets and edges are.
    fn heading(&mut self, plan: &Plan) {
        let holes: usize = plan.set_ups.iter().map(|it| it.holes.count()).sum();
        let minutes = plan.seconds.div_ceil(60);
        let title = format!(
            "{}: {}, {}, about {minutes} min ({})",
            self.job.title,
            counted(holes, "hole"),
            counted(plan.set_ups.len(), "set-up"),
            self.job.unit.word()
        );
        push_indented(&mut self.out, "BENCH  ", "       ", &title);
        let stamp = |it: &Cabinet| {
            let stamp = Stamp::of(self.job, it, &Layout::of(it, self.job));
            format!("{} {stamp}", it.name)
        };
        let stamps: Vec<String> = self.job.cabinets.iter().map(stamp).collect();
        push_indented(&mut self.out, "STATE  ", "       ", &stamps.join(", "));
        let band = &self.job.shop.band;
        let state = match band.on {
            BandState::BeforeBoring => "ALREADY ON".to_string(),
            BandState::AfterBoring => format!(
                "NOT ON YET, pre-mill {}: settings from the front are for that",
                self.show(band.pre_mill)
            ),
        };
        let band = format!("{} thick, {state}", self.show(band.thickness));
        push_indented(&mut self.out, "BAND   ", "       ", &band);
        push_indented(&mut self.out, "LAY    ", "       ", LAY);
    }

    /// What whoever bores has to know of, and why it is bored all the same.
    fn findings(&mut self, findings: &[Finding]) {
        if !findings.is_empty() {
            self.rule();
            self.out.push_str(&findings_text(self.job, findings));
        }
    }

    /// What is measured before the first hole: lengths and diagonals of every panel, what packers are cut, what no arm reaches.
    fn first(&mut self, plan: &Plan, records: &[SetUpRecord<'_>], copies: &Copies<'_>) {
        let line = |panel: &Panel| {
            let names = copies.get(&(panel.cabinet, panel.copy))?;
            Some(self.length_line(&names.panel(panel.panel), panel))
        };
        let mut lines: Vec<String> = plan.panels.iter().filter_map(line).collect();
        let packers: BTreeSet<Length> = plan.set_ups.iter().map(|it| it.rest.packer).collect();
        for packer in packers.into_iter().filter(|it| *it != Length::ZERO) {
            lines.push(format!(
                "[ ] PACKER {}: an off-cut as thick as that, between the stop and the panel",
                self.show(packer)
            ));
        }
        for far in records.iter().filter(|it| !it.set_up.is_reached) {
            lines.push(format!(
                "[ ] {} {}: no arm reaches the row from either edge; set the rail by tape at both ends",
                far.order,
                far.panel()
            ));
        }
        self.block("FIRST  ", &lines);
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
            Some(apart) => self.show(apart.abs()),
            None => "____".to_string(),
        };
        let thick = cut
            .thickness
            .map(|thick| format!(", {} thick", self.show(thick)));
        let done = if cut.is_empty() { "[ ]" } else { "[x]" };
        format!(
            "{done} {name}: {length}, diagonals differ by {diagonals}{}",
            thick.unwrap_or_default()
        )
    }

    /// How far shelves will be from level, because panels were cut longer or shorter.
    fn rocks(&mut self, rocks: &[Rock], copies: &Copies<'_>) {
        let line = |rock: &Rock| {
            let bay = copies.get(&(rock.cabinet, rock.copy))?.bay(rock.bay)?;
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
        let lines: Vec<String> = rocks.iter().filter_map(line).collect();
        self.block("LEVEL  ", &lines);
    }

    /// Distances to measure once a face is done.
    fn checks(&mut self, records: &[SetUpRecord<'_>]) {
        let mut lines = Vec::new();
        for record in records.iter().filter(|it| !it.set_up.checks.is_empty()) {
            let checks: Vec<String> = record
                .set_up
                .checks
                .iter()
                .map(|check| format!("{} {} ____", check.words, self.show(check.want)))
                .collect();
            lines.push(format!("[ ] {}: {}", record.panel(), checks.join(", ")));
        }
        self.block("CHECK  ", &lines);
    }

    fn cautions(&mut self) {
        self.block("MIND   ", &CAUTIONS.map(String::from));
    }

    /// A block of lines below a rule, a word before the first; nothing when there are none.
    fn block(&mut self, word: &str, lines: &[String]) {
        if !lines.is_empty() {
            self.rule();
        }
        for (at, line) in lines.iter().enumerate() {
            let start = if at == 0 { word } else { "       " };
            push_indented(&mut self.out, start, "           ", line);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::counted;

    #[test]
    fn one_is_no_plural() {
        let said = [0, 1, 2].map(|count| counted(count, "set-up"));
        assert_eq!(said, ["0 set-ups", "1 set-up", "2 set-ups"]);
    }
}
