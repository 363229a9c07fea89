//! Proof of `face_text`.

use super::*;
use crate::fixture::{SIGNS, job, mm, two_bays};
use gablerow_core::check;
use gablerow_core::job::{
    Depth, Division, FaceId, Hand, HolePlace, Job, Key, Notch, PanelId, Plate,
};
use proptest::prelude::*;
use unicode_width::UnicodeWidthStr;

fn text(job: &Job, side: Hand) -> String {
    text_of(job, FaceId::inside(side))
}

fn text_of(job: &Job, face: FaceId) -> String {
    let cabinet = &job.cabinets[0];
    let layout = Layout::of(cabinet, job);
    let findings = check::of_cabinet(job, cabinet, &layout);
    let drawing = FaceDrawing::of(&layout, face, &findings).unwrap();
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

#[test]
fn a_toe_notch_moves_the_front_edge_back() {
    let mut job = job();
    job.cabinets[0].carcass.sides.notch = Some(Notch {
        height: mm(100),
        depth: mm(50),
    });
    // 50 deep is three columns whose middles, 8, 24 and 40, lie before it; 100 high is holes 1 to 3, at 16, 48 and 80.
    let text = text(&job, Hand::Left);
    assert!(line(&text, 4).starts_with("   4  112.0 #  .  "), "{text}");
    assert!(line(&text, 3).starts_with("   3   80.0    #  "), "{text}");
    assert!(
        text.lines()
            .last()
            .unwrap()
            .starts_with("               +---"),
        "{text}"
    );
    let text = self::text(&job, Hand::Right);
    let seen = line(&text, 3);
    assert!(seen.ends_with("  #") && seen.width() == 49 - 3, "{text}");
}

#[test]
fn a_hole_below_the_foot_of_a_partition_has_no_number() {
    let job = two_bays(Depth::Shop);
    let panel = PanelId::Partition(Key(9));
    let text = text_of(
        &job,
        FaceId {
            panel,
            toward: Hand::Left,
        },
    );
    assert!(
        text.lines().any(|line| line.starts_with("   2   30.0 ")),
        "{text}"
    );
    assert!(
        !text.lines().any(|line| line.starts_with("   1 ")),
        "{text}"
    );
}

proptest! {
    #[test]
    fn every_face_of_any_size_is_on_the_sheet(
        (height, depth, below) in (100..4_000, 50..2_000, 0..300),
        (recess, offset, notch) in (0..2_000, 0..200, proptest::option::of((1..300, 1..300))),
        is_inch in any::<bool>(),
    ) {
        let mut job = two_bays(Depth::Shop);
        job.unit = if is_inch { Unit::Inch } else { Unit::Millimetre };
        let cabinet = &mut job.cabinets[0];
        (cabinet.size.height, cabinet.size.depth, cabinet.offsets.foot) = (mm(height), mm(depth), mm(offset));
        cabinet.carcass.sides.below = mm(below);
        cabinet.carcass.sides.notch = notch.map(|(height, depth)| Notch { height: mm(height), depth: mm(depth) });
        if let Division::SideBySide(parts) = &mut cabinet.opening.division {
            parts.rest[0].0.recess = mm(recess);
        }
        let panels = [PanelId::Side(Hand::Left), PanelId::Partition(Key(9)), PanelId::Side(Hand::Right)];
        for (panel, toward) in panels.into_iter().flat_map(|panel| [(panel, Hand::Left), (panel, Hand::Right)]) {
            let text = text_of(&job, FaceId { panel, toward });
            prop_assert!(text.lines().all(|line| line.width() <= WIDTH), "{}", text);
        }
    }
}
