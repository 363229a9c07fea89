//! What holds for every job, and for every text.

use gablerow_core::job::{Depth, HolePlace, Job, Key, Label};
use proptest::prelude::*;

use super::sample::{all, first_glaze_store, glaze_store};
use super::{
    arbitrary, bored_text, cabinet_text, cards_text, heading_text, read, read_bored, read_cabinet,
    read_cards, read_heading, read_shop, shop_text, write,
};

proptest! {
    #[test]
    fn written_and_read_is_identity(job in arbitrary::job()) {
        prop_assert_eq!(job.validate(), Ok(()));
        let text = write(&job);
        prop_assert_eq!(read(text.as_bytes()), Ok(job), "{}", text);
    }

    #[test]
    fn writing_twice_is_byte_equal(job in arbitrary::job()) {
        let text = write(&job);
        let again = read(text.as_bytes()).map(|job| write(&job));
        prop_assert_eq!(again, Ok(text));
    }

    #[test]
    fn every_byte_changed_is_an_error_or_a_job_that_round_trips(at in 0..11_000_usize, byte: u8) {
        let mut bytes = write(&glaze_store()).into_bytes();
        let at = at % bytes.len();
        bytes[at] = byte;
        if let Ok(job) = read(&bytes) {
            prop_assert_eq!(read(write(&job).as_bytes()), Ok(job));
        }
    }

    #[test]
    fn any_bytes_are_an_error(bytes: Vec<u8>) {
        prop_assert!(read(&bytes).is_err());
    }
}

#[test]
fn jobs_with_everything_in_them_are_read_as_written() {
    for job in all() {
        assert_eq!(job.validate(), Ok(()));
        assert_eq!(read(write(&job).as_bytes()), Ok(job));
    }
}

#[test]
fn every_byte_cut_is_an_error_or_equal() {
    let job = glaze_store();
    let text = write(&job);
    for end in 0..text.len() {
        match read(&text.as_bytes()[..end]) {
            Ok(cut) => assert_eq!(cut, job),
            Err(error) => assert!(error.line > 0 && error.column > 0 && !error.message.is_empty()),
        }
    }
}

#[test]
fn every_bit_turned_is_an_error_or_a_job() {
    let job = Job::plain(Label::new("Glaze store").unwrap());
    let text = write(&job).into_bytes();
    for at in 0..text.len() {
        for bit in 0..8 {
            let mut bytes = text.clone();
            bytes[at] ^= 1 << bit;
            if let Err(error) = read(&bytes) {
                assert!(!error.report("glaze.json").contains('\u{1b}'));
            }
        }
    }
}

#[test]
fn a_change_of_one_hole_is_a_change_of_one_line() {
    let before = glaze_store();
    let mut after = before.clone();
    let bay = after.cabinets[1].opening.bay_mut(Key(12)).unwrap();
    bay.zones[0].last = HolePlace::foot(10);
    assert_eq!(changed_lines(&before, &after), 1);
    let bay = after.cabinets[1].opening.bay_mut(Key(12)).unwrap();
    bay.zones[0].last = HolePlace::foot(9);
    bay.plates[0].hole = HolePlace::head(4);
    assert_eq!(changed_lines(&before, &after), 1);
    after.cabinets[1].free_holes[0].depth =
        Depth::Blind(gablerow_core::measure::Length::from_mm(9));
    assert_eq!(changed_lines(&before, &after), 2);
}

fn changed_lines(before: &Job, after: &Job) -> usize {
    let (before, after) = (write(before), write(after));
    assert_eq!(before.lines().count(), after.lines().count());
    let pairs = before.lines().zip(after.lines());
    pairs.filter(|(before, after)| before != after).count()
}

/// The file as version 1 wrote it. Every later version reads it as the same job.
const GOLDEN: &str = include_str!("v1/glaze-store.json");

/// The file as it was written before fronts were laid out: some fields are not there.
const FIRST: &str = include_str!("v1/glaze-store-first.json");

#[test]
fn a_file_of_version_1_opens_for_ever() {
    assert_eq!(read(GOLDEN.as_bytes()), Ok(glaze_store()));
    assert_eq!(read(FIRST.as_bytes()), Ok(first_glaze_store()));
}

#[test]
fn the_file_is_written_as_it_was() {
    let text = write(&glaze_store());
    let path = concat!(
        env!("CARGO_MANIFEST_DIR"),
        "/src/job_file/v1/glaze-store.json"
    );
    if std::env::var_os("GABLEROW_WRITE").is_some() {
        std::fs::write(path, &text).unwrap();
    }
    assert_eq!(text, std::fs::read_to_string(path).unwrap());
    assert!(text.ends_with("}\n") && !text.contains('\r'));
}

#[test]
fn what_the_journal_keeps_is_one_line_and_read_as_itself() {
    let job = glaze_store();
    for cabinet in &job.cabinets {
        let text = cabinet_text(cabinet);
        assert!(!text.contains('\n'));
        assert_eq!(read_cabinet(&text).as_ref(), Ok(cabinet));
    }
    for bored in &job.bored {
        assert_eq!(read_bored(&bored_text(bored)).as_ref(), Ok(bored));
    }
    assert_eq!(read_shop(&shop_text(&job.shop)), Ok(job.shop));
    assert_eq!(read_cards(&cards_text(&job.cards)), Ok(job.cards));
    let heading = (job.title, job.unit);
    assert_eq!(
        heading_text(&heading),
        "{\"title\":\"Glaze store, room 2\",\"unit\":\"in\"}"
    );
    assert_eq!(read_heading(&heading_text(&heading)), Ok(heading));
}
