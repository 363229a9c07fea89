//! The bench sheet: what is done at the bench, from top to bottom, at most 80 columns wide.

use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

use gablerow_core::bench::{Holes, Plan, Rock, SetUp, Tool};
use gablerow_core::check::Finding;
use gablerow_core::job::{BandState, Cabinet, End, Job, Names};
use gablerow_core::layout::{Layout, Use};
use gablerow_core::measure::Length;
use gablerow_core::stamp::Stamp;

use crate::HoleRecord;
use crate::bench_records::SetUpRecord;
use crate::findings_text::findings_text;
use crate::part_text::part_text;
use crate::text::{WIDTH, push_columns, push_indented, push_line};

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
    let mut sheet = Sheet {
        out: String::new(),
        job,
    };
    sheet.heading(plan);
    sheet.findings(findings);
    sheet.first(&records);
    sheet.rocks(&plan.rocks);
    sheet.set_ups(&records);
    sheet.checks(&records);
    sheet.map(&HoleRecord::of_job(job));
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
        push_line(&mut self.out, "", &"-".repeat(WIDTH));
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

    /// What is measured before the first hole: lengths and diagonals of every panel, and what packers are cut.
    fn first(&mut self, records: &[SetUpRecord<'_>]) {
        let mut lines = Vec::new();
        let mut panels: Vec<(String, &SetUpRecord<'_>)> = Vec::new();
        for record in records {
            let panel = record.panel_alone();
            if !panels.iter().any(|(name, _)| *name == panel) {
                panels.push((panel, record));
            }
        }
        for (panel, record) in panels {
            if let Some((planned, cut)) = lengths_of(record.set_up, self.job) {
                lines.push(self.length_line(&panel, planned, cut));
            }
        }
        let mut packers: Vec<Length> = records.iter().map(|it| it.set_up.rest.packer).collect();
        packers.sort();
        packers.dedup();
        for packer in packers.into_iter().filter(|it| *it != Length::ZERO) {
            lines.push(format!(
                "[ ] PACKER {}: an off-cut as thick as that, between the stop and the panel",
                self.show(packer)
            ));
        }
        self.block("FIRST  ", &lines);
    }

    /// The length of a panel: to be measured, or as it was measured.
    fn length_line(&self, panel: &str, planned: Length, cut: Option<Length>) -> String {
        let want = self.show(planned);
        let Some(cut) = cut else {
            return format!("[ ] {panel}: length ____ want {want}, diagonals differ by ____");
        };
        let by = self.show((cut - planned).abs());
        let how = match cut - planned {
            Length::ZERO => "as planned".to_string(),
            longer if longer > Length::ZERO => format!("{by} longer than {want}"),
            _ => format!("{by} shorter than {want}"),
        };
        format!(
            "[x] {panel}: length {}, {how}, diagonals differ by ____",
            self.show(cut)
        )
    }

    /// How far shelves will be from level, because panels were cut longer or shorter.
    fn rocks(&mut self, rocks: &[Rock]) {
        let line = |rock: &Rock| {
            let cabinet = self.job.cabinet(rock.cabinet)?;
            let copy = cabinet.copies.iter().find(|it| it.key == rock.copy)?;
            let bay = Names::of(&cabinet.built_as(copy).opening).opening(rock.bay)?;
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
            Some(format!(
                "{} copy {}, {bay}: shelves rock {rocks}, {slopes}",
                cabinet.name, copy.name
            ))
        };
        let lines: Vec<String> = rocks.iter().filter_map(line).collect();
        self.block("LEVEL  ", &lines);
    }

    /// Bit and depth, stop, setting: said where they change.
    fn set_ups(&mut self, records: &[SetUpRecord<'_>]) {
        self.rule();
        let tool = |it: &SetUpRecord<'_>| it.set_up.tool;
        let stop = |it: &SetUpRecord<'_>| (it.set_up.rest.end, it.set_up.rest.stop);
        let setting = |it: &SetUpRecord<'_>| it.set_up.setting.total();
        let mut before: Option<Length> = None;
        let mut sets = 0;
        for of_tool in records.chunk_by(|a, b| tool(a) == tool(b)) {
            if let Some(first) = of_tool.first() {
                let bit = self.tool_words(&tool(first));
                push_indented(&mut self.out, "BIT    ", "       ", &bit);
            }
            for of_stop in of_tool.chunk_by(|a, b| stop(a) == stop(b)) {
                if let Some(first) = of_stop.first() {
                    let words = self.stop_words(stop(first));
                    push_indented(&mut self.out, "STOP   ", "       ", &words);
                }
                for of_setting in of_stop.chunk_by(|a, b| setting(a) == setting(b)) {
                    sets += 1;
                    let Some(first) = of_setting.first() else {
                        continue;
                    };
                    let words = self.setting_words(setting(first), before);
                    push_indented(&mut self.out, &format!("SET {sets:<3}"), "       ", &words);
                    before = Some(setting(first));
                    self.rows(of_setting);
                }
            }
        }
        let total: usize = records.iter().map(|it| it.set_up.holes.count()).sum();
        push_line(
            &mut self.out,
            "",
            &format!("{:>WIDTH$}", format!("total {total}")),
        );
    }

    fn tool_words(&self, tool: &Tool) -> String {
        let bit = tool.bit.word().to_uppercase();
        let diameter = self.show(tool.diameter);
        match tool.depth {
            Some(depth) => {
                let depth = self.show(depth);
                format!("[ ] {bit} {diameter}, DEPTH {depth}, test hole ____")
            }
            None => format!("[ ] {bit} {diameter}, THROUGH, scrap under the panel"),
        }
    }

    fn stop_words(&self, (end, stop): (End, Length)) -> String {
        let end = end.word().to_uppercase();
        format!("[ ] {}; push the {end} against it", self.show(stop))
    }

    /// The setting, and by how much that is another than before.
    fn setting_words(&self, setting: Length, before: Option<Length>) -> String {
        let words = format!("{} from the edge toward you", self.show(setting));
        match before.map(|before| setting - before) {
            Some(by) if by > Length::ZERO => format!("{words}, {} further", self.show(by)),
            Some(by) if by < Length::ZERO => format!("{words}, {} nearer", self.show(-by)),
            _ => words,
        }
    }

    fn rows(&mut self, records: &[SetUpRecord<'_>]) {
        let cells = |it: &SetUpRecord<'_>| {
            let rest = it.set_up.rest;
            let packer = match rest.packer {
                Length::ZERO => String::new(),
                packer => self.show(packer),
            };
            [
                format!("{:>3} [ ]", it.order),
                it.panel(),
                it.set_up.edge.word().to_uppercase(),
                it.set_up.foot_to.word().to_uppercase(),
                packer,
                self.hole_words(it.set_up),
                rail_words(it.set_up),
                it.set_up.holes.count().to_string(),
            ]
        };
        let rows: Vec<[String; 8]> = records.iter().map(cells).collect();
        let is_plain = |at: usize| rows.iter().all(|row| row[at].is_empty());
        // A column that says nothing is left out.
        let head = [
            "",
            "this face up",
            "edge",
            "foot",
            "PACKER",
            "holes",
            "on the rail",
            "no.",
        ];
        match (is_plain(4), is_plain(6)) {
            (true, true) => self.columns(&head, &rows, [0, 1, 2, 3, 5, 7]),
            (true, false) => self.columns(&head, &rows, [0, 1, 2, 3, 5, 6, 7]),
            (false, true) => self.columns(&head, &rows, [0, 1, 2, 3, 4, 5, 7]),
            (false, false) => self.columns(&head, &rows, [0, 1, 2, 3, 4, 5, 6, 7]),
        }
    }

    fn columns<const N: usize>(
        &mut self,
        head: &[&str; 8],
        rows: &[[String; 8]],
        which: [usize; N],
    ) {
        let head = which.map(|at| head[at]);
        let rows: Vec<[String; N]> = rows
            .iter()
            .map(|row| which.map(|at| row[at].clone()))
            .collect();
        push_columns(&mut self.out, " ", &head, &rows);
    }

    /// Hole numbers of the cabinet; off the grid, from the end on the stop.
    fn hole_words(&self, set_up: &SetUp) -> String {
        match &set_up.holes {
            Holes::Runs(runs) => runs_words(runs.iter().copied()),
            Holes::ByTape(lengths) => {
                let lengths: Vec<String> = lengths.iter().map(|it| self.show(*it)).collect();
                format!(
                    "TAPE from the {}: {}",
                    set_up.rest.end.word(),
                    lengths.join(" ")
                )
            }
        }
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

    /// Who owns which holes, and where they are from the foot of their panel: a line for each face.
    fn map(&mut self, holes: &[HoleRecord<'_>]) {
        let face = |it: &HoleRecord<'_>| (it.cabinet.clone(), it.copy.clone(), it.face);
        let mut lines = Vec::new();
        for on_face in holes.chunk_by(|a, b| face(a) == face(b)) {
            let Some(first) = on_face.first() else {
                continue;
            };
            let mut places: Vec<(i16, Length, Vec<Use>)> = Vec::new();
            for it in on_face {
                let Some(number) = it.hole.number else {
                    continue;
                };
                let uses = it.hole.users.iter().map(|(use_, _)| *use_);
                match places.iter_mut().find(|place| place.0 == number) {
                    Some(place) => place.2.extend(uses),
                    None => places.push((number, it.from_foot, uses.collect())),
                }
            }
            places.sort_by_key(|place| place.0);
            for (.., uses) in &mut places {
                uses.sort();
                uses.dedup();
            }
            let runs = places.chunk_by(|a, b| a.0 + 1 == b.0 && a.2 == b.2);
            let runs: Vec<String> = runs.map(|run| self.run_words(run)).collect();
            if !runs.is_empty() {
                let copy = if job_has_copies(first, self.job) {
                    format!(" copy {}", first.copy)
                } else {
                    String::new()
                };
                let name = &first.name;
                lines.push(format!(
                    "{}{copy} {} {}: {}",
                    first.cabinet,
                    name.panel,
                    name.word,
                    runs.join(", ")
                ));
            }
        }
        self.block("HOLES  ", &lines);
    }

    /// `3-4 plate 80.0-112.0`.
    fn run_words(&self, run: &[(i16, Length, Vec<Use>)]) -> String {
        let [(first, from, uses), .., (last, to, _)] = run else {
            return match run {
                [(number, from, uses)] => {
                    format!("{number} {} {}", use_words(uses), self.show(*from))
                }
                _ => String::new(),
            };
        };
        let (from, to) = (self.show(*from), self.show(*to));
        format!("{first}-{last} {} {from}-{to}", use_words(uses))
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

/// The numbers on the rail, from the stop on, where they are not the cabinet's own.
fn rail_words(set_up: &SetUp) -> String {
    let Holes::Runs(runs) = &set_up.holes else {
        return String::new();
    };
    let index = |&(first, last): &(i16, i16)| (set_up.rest.index(first), set_up.rest.index(last));
    let on_rail: Vec<(i16, i16)> = runs.iter().map(index).collect();
    if on_rail == *runs {
        return String::new();
    }
    match set_up.rest.end {
        End::Foot => runs_words(on_rail.into_iter()),
        End::Head => runs_words(on_rail.into_iter().rev().map(|(first, last)| (last, first))),
    }
}

/// `3-4 11 19-20`.
fn runs_words(runs: impl Iterator<Item = (i16, i16)>) -> String {
    let words: Vec<String> = runs
        .map(|(first, last)| match first == last {
            true => first.to_string(),
            false => format!("{first}-{last}"),
        })
        .collect();
    words.join(" ")
}

/// What a hole is for, each use once: `pin`, `plate and runner`.
fn use_words(uses: &[Use]) -> String {
    let words: Vec<&str> = uses.iter().map(|it| it.word()).collect();
    words.join(" and ")
}

fn job_has_copies(hole: &HoleRecord<'_>, job: &Job) -> bool {
    let named = job.cabinets.iter().find(|it| it.name == *hole.cabinet);
    named.is_some_and(|it| it.copies.len() > 1)
}

/// From foot to head of the panel that is bored: as planned, and as cut where it was measured.
fn lengths_of(set_up: &SetUp, job: &Job) -> Option<(Length, Option<Length>)> {
    let cabinet = job.cabinet(set_up.cabinet)?;
    let copy = cabinet.copies.iter().find(|it| it.key == set_up.copy)?;
    let layout = Layout::of(&cabinet.built_as(copy), job);
    let planned = layout.upright(set_up.face.panel)?.length();
    Some((planned, copy.length_of(set_up.face.panel)))
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
