//! The bench sheet: what is done at the bench, from top to bottom, at most 80 columns wide.

use alloc::format;
use alloc::string::String;

use gablerow_core::check::Finding;
use gablerow_core::job::Job;

use crate::HoleRecord;
use crate::bench_rows::push_set_ups;
use crate::bench_sheet::BenchSheet;
use crate::bench_words::{BenchWords, LAY, cautions};
use crate::findings_text::findings_text;
use crate::hole_map::hole_map;
use crate::part_text::parts_and_caution;
use crate::text::{WIDTH, push_indented, push_line};

/// A plan to bore by as text.
///
/// ```text
/// SET    37.0 from the edge toward you
///         this face up         edge   foot   holes            no.
///  1 [ ]  G2 left side inside  FRONT  RIGHT  3-4 11-16 19-20  10
/// ```
#[must_use]
pub fn bench_text(of: &BenchSheet) -> String {
    let (job, findings) = (of.job, of.findings);
    let words = BenchWords::of(of.plan, job);
    let mut sheet = Sheet {
        out: String::new(),
        job,
    };
    sheet.heading(&words);
    if let Some(held) = of.held_words() {
        push_indented(&mut sheet.out, "HELD   ", "       ", &held);
    }
    sheet.block("RECORD ", &words.record());
    sheet.findings(findings);
    sheet.block("FIRST  ", &words.first());
    sheet.block("LEVEL  ", &words.rocks());
    push_set_ups(&mut sheet.out, &words.records, job);
    sheet.block("CHECK  ", &words.checks());
    let map = hole_map(&HoleRecord::of_job(job), job.unit);
    if !map.is_empty() {
        let key: String = "how far they are from the foot of their panel".into();
        sheet.block("HOLES  ", &[[key].as_slice(), &map].concat());
    }
    sheet.rule();
    let (parts, is_general_said) = parts_and_caution(job);
    sheet.out.push_str(&parts);
    sheet.block("MIND   ", &cautions(is_general_said));
    sheet.out
}

pub(crate) fn push_rule(out: &mut String) {
    push_line(out, "", &"-".repeat(WIDTH));
}

/// The sheet in the making.
struct Sheet<'a> {
    out: String,
    job: &'a Job,
}

impl Sheet<'_> {
    fn rule(&mut self) {
        push_rule(&mut self.out);
    }

    /// What it is, in what state cabinets and edges are.
    fn heading(&mut self, words: &BenchWords) {
        let title = format!("{}: {}", self.job.title, words.amount());
        push_indented(&mut self.out, "BENCH  ", "       ", &title);
        push_indented(&mut self.out, "STATE  ", "       ", &words.stamps());
        push_indented(&mut self.out, "BAND   ", "       ", &words.band());
        push_indented(&mut self.out, "LAY    ", "       ", LAY);
    }

    /// What whoever bores has to know of, and why it is bored all the same.
    fn findings(&mut self, findings: &[Finding]) {
        if !findings.is_empty() {
            self.rule();
            self.out.push_str(&findings_text(self.job, findings));
        }
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
    use super::*;
    use crate::fixture::{drawers, two_bays};
    use gablerow_core::bench::plan;
    use gablerow_core::cautions::GENERAL;
    use gablerow_core::job::{Depth, Key};
    use std::vec::Vec;

    #[test]
    fn the_general_caution_is_said_once_with_figures_of_strength_and_without() {
        let bare = {
            let mut job = two_bays(Depth::Shop);
            job.cabinets[0].opening.fronts.clear();
            job
        };
        for job in [drawers(), bare] {
            let keys: Vec<Key> = job.cabinets.iter().map(|it| it.key).collect();
            let sheet = bench_text(&BenchSheet {
                plan: &plan(&job, &keys, &job.shop.bench.times),
                job: &job,
                findings: &[],
                held_back: &["G3, 2 stops are open".into()],
            });
            assert!(sheet.contains("\nHELD   not on this sheet: G3, 2 stops are open\n"));
            let words: Vec<&str> = sheet.split_whitespace().collect();
            assert_eq!(words.join(" ").matches(GENERAL).count(), 1, "{sheet}");
        }
    }
}
