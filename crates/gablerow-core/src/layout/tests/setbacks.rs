//! Where rows stand, front to back.

use super::{between, face, rows};
use crate::arbitrary::*;
use crate::job::{
    Back, BackRule, CardId, Hand, HolePlace, Inset, Job, PinRows, Runner, ShelfHeight,
};
use crate::layout::RowName;
use crate::measure::{Length, Unit};

/// Setback of the back row of cabinet X by one rule.
fn back_row(rule: BackRule) -> Length {
    let layout = lay_out(&cabinet_x(|job| job.shop.back_rule = rule));
    layout.bays[0].back_row.total()
}

// Source: (i) and (ii) "System 32" article, de.wikipedia.org; (iii) davelers.com/32mm/Panels/150.html. The rules only.
#[test]
fn back_row_stands_by_one_of_three_rules() {
    // 530 - 37;  530 - 16 - 37;  37 + 14 * 32, as 37 + 15 * 32 = 517 leaves 13 and no 16 + 5 behind it
    assert_eq!(back_row(BackRule::FromBackEdge), mm(493));
    assert_eq!(back_row(BackRule::FromBackPanel), mm(477));
    assert_eq!(back_row(BackRule::OnPitch), mm(485));
}

// Derived: 74 + 32 * m.
#[test]
fn rows_line_up_both_ways_at_certain_depths() {
    for pitches in [8, 14, 15, 16] {
        let job = cabinet_with(|cabinet| {
            cabinet.size.depth = mm(74) + Length::PITCH * pitches;
            cabinet.carcass.back = Back::Planted;
        });
        let bay = lay_out(&job).bays[0];
        assert_eq!(
            bay.back_row.total() - bay.front_row.total(),
            Length::PITCH * pitches
        );
    }
}

/// Setback of the back row of a 560 side from its own back edge.
fn from_back_edge(back: Back) -> Length {
    let job = cabinet_with(|cabinet| cabinet.carcass.back = back);
    mm(560) - lay_out(&job).bays[0].back_row.total()
}

// rule-57. Common practice.
#[test]
fn back_row_stands_57_from_the_edge_when_the_groove_is_20_from_it() {
    let groove = Back::Groove {
        to_front_wall: mm(20),
        cut: mm(8),
    };
    assert_eq!(from_back_edge(groove), mm(57));
}

#[test]
fn back_row_stands_in_front_of_the_back_whatever_its_kind() {
    assert_eq!(from_back_edge(Back::Rabbet { run: mm(10) }), mm(47));
    assert_eq!(from_back_edge(Back::Planted), mm(37));
    assert_eq!(from_back_edge(Back::Open), mm(37));
}

#[test]
fn explanation_of_the_back_row_names_its_terms() {
    let layout = lay_out(&bay_with(|_| ()));
    assert_eq!(
        layout.bays[0].back_row.show(Unit::Millimetre).to_string(),
        "503.0 = 560.0 (depth) - 20.0 (back edge to the groove's front wall) - 37.0 (back setback)"
    );
}

#[test]
fn back_row_of_a_partition_stands_37_from_its_own_back_edge() {
    let job = cabinet_x(|job| bay_of(job, 11).zones = vec![zone(3, 5..=9)]);
    let layout = lay_out(&job);
    let partition = partition_face(9, Hand::Left);
    // 514 deep: 514 - 477 = 37
    assert_eq!(rows(&layout, partition), ["front 37: 5-9", "back 477: 5-9"]);
    let depth = layout.upright(partition.panel).unwrap().depth();
    assert_eq!(depth - mm(477), mm(37));
}

#[test]
fn whole_pitches_that_do_not_fit_leave_the_front_row_alone() {
    let mut job = bay_with(|bay| {
        bay.recess = mm(520);
        bay.zones = vec![zone(3, 5..=9)];
    });
    job.shop.back_rule = BackRule::OnPitch;
    assert_eq!(rows(&lay_out(&job), LEFT_INSIDE), ["front 557: 5-9"]);
}

/// Cabinet X with a runner of this length and these steps on hole 4 of its left bay.
fn with_runner(length: i32, steps: &[u8], change: impl FnOnce(&mut Job, &mut Runner)) -> Job {
    cabinet_x(|job| {
        let card = runner_card(job);
        card.lengths[0].name = mm(length);
        card.lengths[0].steps = steps.to_vec();
        let mut made = runner(3, 4, length);
        change(job, &mut made);
        bay_of(job, 11).runners = vec![made];
    })
}

#[track_caller]
fn setbacks(job: &Job) -> Vec<i32> {
    let layout = lay_out(job);
    let rows = &face(&layout, LEFT_INSIDE).rows;
    let whole = |x: Length| x.counts() / Length::COUNTS_PER_MM;
    rows.iter().map(|row| whole(row.x.total())).collect()
}

// trap-inset. Source: michaelkeutel.de "Einlegeboeden - System 32"; a hinge maker's planning sheet (two pages).
#[test]
fn inset_front_moves_front_row_and_runner_rows_alike() {
    // 37 + 22 + 1 = 60;  60 + 4 * 32 = 188;  60 + 11 * 32 = 412
    let job = with_runner(400, &[0, 4, 11], |job, _| {
        let inset = Inset {
            front: Some(mm(22)),
            set_in: mm(1),
        };
        bay_of(job, 11).inset = Some(inset);
    });
    assert_eq!(setbacks(&job), [60, 188, 412]);
    assert_eq!(lay_out(&job).bays[0].front_row.total(), mm(60));
    assert_eq!(lay_out(&job).bays[1].front_row.total(), mm(37));
}

/// Cabinet X, partition recessed by 20, pins in its left bay behind an inset door of 22, set in by 1.
fn inset_beside_recessed(recess_of_bay: Length) -> Job {
    cabinet_x(|job| {
        partition_of(job).recess = mm(20);
        let bay = bay_of(job, 11);
        bay.inset = Some(Inset {
            front: Some(mm(22)),
            set_in: mm(1),
        });
        bay.recess = recess_of_bay;
        bay.zones = vec![zone(3, 5..=9)];
        let mut door = door(30, Hand::Left);
        door.thickness = None;
        put_fronts(job, 11, vec![door]);
    })
}

// Geometry: 37 + 22 + 1 = 60 from the carcass front, so 40 from the edge of a partition that is recessed by 20; the gap beside
// the door is 2, whatever the recess.
#[test]
fn rows_behind_an_inset_front_are_nearer_to_the_edge_of_a_recessed_partition() {
    let layout = lay_out(&inset_beside_recessed(Length::ZERO));
    let partition = partition_face(9, Hand::Left);
    assert_eq!(rows(&layout, LEFT_INSIDE)[0], "front 60: 5-9");
    assert_eq!(rows(&layout, partition)[0], "front 40: 5-9");
    let of = |wall| face(&layout, wall).rows[0].x.total();
    assert_eq!(of(partition), of(LEFT_INSIDE), "mates are coplanar");
    let [door] = &layout.fronts[..] else {
        panic!("{:?}", layout.fronts);
    };
    assert_eq!((door.set_in, door.thickness), (Some(mm(1)), mm(22)));
    assert_eq!(
        (door.lap_left.total(), door.lap_right.total()),
        (mm(-2), mm(-2))
    );
    let across = layout.upright(partition.panel).unwrap().across;
    assert_eq!(across - door.right(), mm(2));
}

// Geometry: the bay's front is 20 back, so the door's face is 21 back, and rows stand 37 behind its back: 20 + 1 + 22 + 37.
#[test]
fn inset_front_goes_back_with_its_bay_as_rows_do() {
    let layout = lay_out(&inset_beside_recessed(mm(20)));
    assert_eq!(rows(&layout, LEFT_INSIDE)[0], "front 80: 5-9");
    let door = layout.fronts[0];
    assert_eq!(door.set_in, Some(mm(21)));
    assert_eq!(
        layout.bays[0].front_row.total() - door.set_in.unwrap() - door.thickness,
        mm(37)
    );
}

// rule-37, rule-12in. Common practice.
#[test]
fn rows_of_a_12_inch_runner_fall_on_the_grid() {
    let job = with_runner(300, &[0, 4, 7], |_, _| ());
    assert_eq!(setbacks(&job), [37, 165, 261]);
}

// run-holes. Source: conduct.edu.vn/drawer-guide (one page).
#[test]
fn published_runner_rows_are_whole_pitches_behind_the_first() {
    let job = with_runner(650, &[0, 4, 7, 11, 15, 19], |_, _| ());
    assert_eq!(setbacks(&job), [37, 165, 261, 389, 517, 645]);
}

#[test]
fn runner_is_set_back_by_whole_pitches() {
    let job = with_runner(300, &[0, 4, 7], |_, runner| runner.set_back = 2);
    assert_eq!(setbacks(&job), [101, 229, 325]);
}

#[test]
fn runner_with_a_front_end_of_its_own_has_rows_of_its_own() {
    let job = with_runner(300, &[0, 4], |job, _| {
        runner_card(job).stand_back.value = mm(3);
        bay_of(job, 11).zones = vec![zone(5, 5..=9)];
    });
    let expected = [
        "front 37: 5-9",
        "runner 38: 4",
        "runner 166: 4",
        "back 477: 5-9",
    ];
    assert_eq!(rows(&lay_out(&job), LEFT_INSIDE), expected);
}

#[test]
fn first_screw_of_a_usual_runner_is_in_the_front_row() {
    let job = with_runner(300, &[0, 4], |job, _| {
        bay_of(job, 11).zones = vec![zone(5, 5..=9)];
    });
    let layout = lay_out(&job);
    assert_eq!(
        rows(&layout, LEFT_INSIDE),
        ["front 37: 4-9", "runner 165: 4", "back 477: 5-9"]
    );
    assert_eq!(
        face(&layout, LEFT_INSIDE).rows[0].x.terms()[0].words,
        "front setback"
    );
}

#[test]
fn plate_in_line_takes_a_second_row_one_pitch_behind() {
    let job = bay_with(|bay| {
        let mut in_line = plate(3, Hand::Left, 4);
        in_line.card = CardId::known("hinge-in-line");
        bay.plates = vec![in_line];
    });
    let layout = lay_out(&job);
    assert_eq!(rows(&layout, LEFT_INSIDE), ["front 37: 4", "in line 69: 4"]);
    assert_eq!(between(face(&layout, LEFT_INSIDE), 0, 1), Length::PITCH);
    assert_eq!(rows(&layout, RIGHT_INSIDE), Vec::<String>::new());
}

#[test]
fn two_rows_on_one_line_are_named_by_the_first_of_them() {
    // In-line row of the lower bay at 37 + 32 = 69, front row of the upper bay at 37 + 32 behind its recess.
    let mut in_line = plate(3, Hand::Left, 4);
    in_line.card = CardId::known("hinge-in-line");
    let lower = bay(11, |bay| bay.plates = vec![in_line]);
    let upper = bay(12, |bay| {
        bay.recess = mm(32);
        bay.zones = vec![zone(5, 15..=16)];
    });
    let shelf = fixed_shelf(8, ShelfHeight::Hole(HolePlace::foot(11)));
    let job = cabinet_with(|cabinet| cabinet.opening = stacked(1, lower, shelf, upper));
    let layout = lay_out(&job);
    let expected = ["front 37: 4", "front 69: 4 15-16", "back 503: 15-16"];
    assert_eq!(rows(&layout, LEFT_INSIDE), expected);
    let words = face(&layout, LEFT_INSIDE).rows[1].x.terms()[1].words;
    assert_eq!(words, "recess of the bay");
}

#[test]
fn third_row_of_pins_stands_midway() {
    let job = bay_with(|bay| {
        bay.pin_rows = PinRows::Three;
        bay.zones = vec![zone(3, 11..=16)];
    });
    let layout = lay_out(&job);
    // (37 + 503) / 2 = 270
    let expected = ["front 37: 11-16", "middle 270: 11-16", "back 503: 11-16"];
    for wall in [LEFT_INSIDE, RIGHT_INSIDE] {
        assert_eq!(rows(&layout, wall), expected);
        assert_eq!(face(&layout, wall).rows[1].name, RowName::Middle);
    }
}
