//! Labels on sheets of paper, to be cut apart.

use alloc::format;
use alloc::vec::Vec;

use gablerow_core::job::Job;

use crate::LabelRecord;
use crate::page::{Page, Paper, TextEnd};
use crate::pen::{self, HAIR, Pen, SMALL, Words};
use crate::sheets::Sheets;

/// How many labels stand side by side.
const ACROSS: usize = 3;
/// How high a label is at least, in mm.
const HIGH: f64 = 32.0;
/// From its edge to its letters.
const PAD: f64 = 2.5;
/// The size of letters of what it is, which is read from afar.
const NAME: f64 = 4.6;
/// The size of letters of the rest.
const REST: f64 = 3.4;

/// These labels of a job, on as many sheets as they take; none for no labels.
#[must_use]
pub(crate) fn label_pages(labels: &[LabelRecord], job: &Job, paper: Paper) -> Vec<Page> {
    if labels.is_empty() {
        return Vec::new();
    }
    let mut sheets = Sheets::new(paper, &format!("{}: labels", job.title));
    sheets.remark(
        "Cut apart along the lines. A label is stuck on the face it names, near the foot, and read with the foot down.",
    );
    sheets.space(PAD);
    let wide = sheets.width() / f64::from(u16::try_from(ACROSS).unwrap_or(1));
    for row in labels.chunks(ACROSS) {
        let row: Vec<Vec<Words>> = row.iter().map(|label| lines(label, job, wide)).collect();
        let high = row
            .iter()
            .map(|lines| pen::height(lines) + 2.0 * PAD)
            .fold(HIGH, f64::max);
        let (pen, (mut left, head)) = sheets.picture(high);
        for lines in row {
            pen.block((left, head - high), (left + wide, head), Some(HAIR), None);
            draw(pen, (left + PAD, head - PAD), &lines);
            left += wide;
        }
    }
    sheets.pages()
}

/// What stands on a label, from the top.
fn lines(label: &LabelRecord, job: &Job, wide: f64) -> Vec<Words> {
    let size = format!("{} {}", label.size_words(job.unit), job.unit.word());
    let mut texts = Vec::from([
        (NAME, true, label.title()),
        (REST, false, size),
        (REST, false, format!("band: {}", label.band_words())),
    ]);
    texts.extend(label.place_words().map(|place| (REST, true, place)));
    texts.push((SMALL, false, format!("{}, {}", job.title, label.stamp)));
    pen::wrapped(&texts, wide - 2.0 * PAD)
}

fn draw(pen: &mut Pen, (left, mut y): (f64, f64), lines: &[Words]) {
    for (size, is_bold, words) in lines {
        y -= pen::leading(*size);
        // A little up: what hangs below the foot of letters stays inside.
        let at = (left, y + size * 0.25);
        pen.write(at, TextEnd::Start, *size, *is_bold, words);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fixture::{any_job, assert_printed, handed_door, texts};
    use gablerow_core::job::Label;
    use proptest::prelude::*;

    #[test]
    fn every_label_is_there_once_and_a_handed_door_says_its_foot_end() {
        let job = handed_door();
        let labels = LabelRecord::of_job(&job);
        let pages = label_pages(&labels, &job, Paper::A4);
        let said: Vec<&str> = pages.iter().flat_map(|page| texts(page)).collect();
        let count = |words: &str| said.iter().filter(|it| **it == words).count();
        let foot = format!("glaze store, {}", labels[0].stamp);
        assert_eq!(count(&foot), labels.len());
        assert_eq!(count("BACK, FOOT END"), 1);
        assert_eq!(label_pages(&[], &job, Paper::A4), []);
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(64))]

        #[test]
        fn labels_are_legible_whatever_things_are_called(
            mut job in any_job(),
            name in "[A-Za-z漢Ж]{1,40}",
            paper in prop::sample::select(Paper::ALL.to_vec()),
        ) {
            let name = Label::new(&name).unwrap();
            job.title = name.clone();
            job.cabinets[0].name = name;
            for page in label_pages(&LabelRecord::of_job(&job), &job, paper) {
                assert_printed(&page);
            }
        }
    }
}
