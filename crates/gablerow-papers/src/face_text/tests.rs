use super::*;
use crate::fixture::{SIGNS, job, mm};
use gablerow_core::check;
use gablerow_core::job::{Division, FaceId, Hand, HolePlace, Job, Key, Plate};

fn text(job: &Job, side: Hand) -> String {
    let cabinet = &job.cabinets[0];
    let layout = Layout::of(cabinet, job);
    let findings = check::of_cabinet(job, cabinet, &layout);
    let drawing = FaceDrawing::of(&layout, FaceId::inside(side), &findings).unwrap();
    let sheet = FaceSheet {
        cabinet,
        layout: &layout,
        drawing: &drawing,
        unit: job.unit,
    };
    sheet.text(&SIGNS)
}

fn line(text: &str, hole: i16) -> &str {
    let number = format!("{hole:>3}  ");
    text.lines()
        .find(|line| line.get(1..6) == Some(&number))
        .unwrap()
}

#[test]
fn a_side_704_high_is_22_lines_between_its_ends() {
    let text = text(&job(), Hand::Left);
    let lines: Vec<&str> = text.lines().collect();
    assert_eq!(lines.len(), 1 + 2 + 22 + 1, "{text}");
    assert_eq!(lines[0], "A1, left side, inside");
}

// Hole 9 is 16 + 8 * 32 = 272 up; the front row is in column 37 / 16 = 2, the groove's front at 540 in column 33.
#[test]
fn a_line_is_number_height_edges_and_holes() {
    let text = text(&job(), Hand::Left);
    let board = line(&text, 9).get(..49).unwrap();
    assert_eq!(
        board, "   9  272.0 #  o                            o | |",
        "{text}"
    );
    assert!(line(&text, 12).starts_with("  12  368.0 #  .  "), "{text}");
}

#[test]
fn a_right_wall_has_its_front_on_the_right() {
    let text = text(&job(), Hand::Right);
    assert!(
        line(&text, 9).starts_with("   9  272.0 | | o                            o  #"),
        "{text}"
    );
}

#[test]
fn sizes_balance_and_both_setbacks_stand_beside_it() {
    let text = text(&job(), Hand::Left);
    for words in [
        "  704.0 x 560.0 x 18.",
        "22 holes, the first 16.0 up",
        "balanced",
        "  front 37.0, back 523.0\n",
        "  front 503.0, back 57.0\n",
        "o9-10 (2)",
        "o pin",
    ] {
        assert!(text.contains(words), "{words}\n{text}");
    }
}

#[test]
fn what_is_out_of_balance_says_by_how_much() {
    let mut job = job();
    job.cabinets[0].size.height = mm(707);
    assert!(text(&job, Hand::Left).contains("3.0 out of balance"));
}

#[test]
fn an_open_stop_marks_its_lines() {
    let mut job = job();
    let card = job.shop.hinge.clone();
    if let Division::Bay(bay) = &mut job.cabinets[0].opening.division {
        bay.plates.push(Plate {
            key: Key(20),
            wall: Hand::Left,
            hole: HolePlace::foot(9),
            card,
            serves: None,
        });
    }
    let (left, right) = (text(&job, Hand::Left), text(&job, Hand::Right));
    assert!(line(&left, 9).starts_with("!  9  272.0 #::&"), "{left}");
    assert!(line(&right, 9).starts_with("   9  "), "{right}");
}

#[test]
fn no_line_is_wider_than_the_sheet() {
    for (depth, unit) in [
        (100, Unit::Millimetre),
        (560, Unit::Inch),
        (1_000, Unit::Millimetre),
        (1_500, Unit::Inch),
    ] {
        let mut job = job();
        job.unit = unit;
        job.cabinets[0].size.depth = mm(depth);
        let text = text(&job, Hand::Left);
        assert!(
            text.lines()
                .all(|line| line.width() <= WIDTH && line == line.trim_end()),
            "{depth} {text}"
        );
        assert_eq!(text.contains("drawn smaller"), depth > 1_100);
    }
}
