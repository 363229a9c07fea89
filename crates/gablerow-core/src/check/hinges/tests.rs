//! Proof of `hinges`.

use super::super::fixture::*;
use super::*;
use crate::cards::{CountChart, Origin};
use crate::job::{Inset, Key};

/// The usual plates of a door on the plain cabinet: middles at 96 and 608, 512 apart.
const TWO: &[i16] = &[3, 19];

// Geometry: 18 less 1.5 is 16.5; arm 20 and tab 3 on plate 0 give 23, which is 6.5 over.
#[test]
fn overlay_that_no_tab_and_plate_reach() {
    let said = |origin| {
        said(Rule::OverlayUnreachable, |case| {
            case.door(1, LEFT, 1, TWO);
            let card = case.hinge_card();
            card.arms.full.value = mm(20);
            card.plates = vec![mm(0)];
            let card = case.hinge_card();
            for value in [
                &mut card.arms.full,
                &mut card.tabs.least,
                &mut card.tabs.most,
                &mut card.adjust,
            ] {
                value.origin = origin;
            }
        })
    };
    let sentence = "door 1 wants an overlay of 16.5; full arm, tab 3.0 and plate 0.0 come nearest: 6.5 off, \
                    and it adjusts 2.0; take another hinge or reveal";
    assert_eq!(said(Origin::DataSheet), [sentence]);
    let guessed = std::format!("check the data sheet: {sentence}");
    assert_eq!(said(Origin::Invented), [guessed]);
}

// Geometry: arm and tab of 18.5 on plate 0 are 2.0 over the 16.5 that are wanted, which the hinge adjusts.
#[test]
fn overlay_may_be_off_by_what_the_hinge_adjusts() {
    let found = |arm| {
        found(Rule::OverlayUnreachable, |case| {
            case.door(1, LEFT, 1, TWO);
            case.hinge_card().arms.full.value = arm;
            case.hinge_card().plates = vec![mm(0)];
        })
    };
    assert_eq!(found(um(15_500)), []);
    let [finding] = found(um(15_501)).try_into().unwrap();
    assert_eq!(finding.place.face, Some(left_side()));
    assert_eq!(finding.place.holes, Some((3, 4)));
    assert_eq!(finding.about, [Some(Key(3)), Some(Key(5))], "plate, door");
}

// Geometry: an inset door with a gap of 2 wants -2; arm 6 and tab 3 on plate 4 give 5.
#[test]
fn overlay_of_a_door_that_stands_inside() {
    let said = said(Rule::OverlayUnreachable, |case| {
        case.door(1, LEFT, 1, TWO);
        case.bay(1).inset = Some(Inset::default());
        case.hinge_card().arms.inset.value = mm(6);
    });
    assert_eq!(
        said,
        [
            "check the data sheet: door 1 wants an overlay of -2.0; inset arm, tab 3.0 and plate 4.0 come nearest: 7.0 off, \
             and it adjusts 2.0; take another hinge or gap"
        ]
    );
}

// Geometry: half of 18 less half a gap of 1.5 is 7.5; arm 9.5 and tab 3 on plate 3 give 9.5, which is 2.0 over.
#[test]
fn an_arm_that_laps_over_the_other_half_of_a_partition() {
    let shared = |rule, half| {
        found(rule, |case| {
            case.part_in_two();
            case.door(1, RIGHT, 1, &[3, 19]);
            case.door(12, LEFT, 12, &[6, 16]);
            case.hinge_card().arms.half.value = half;
            case.hinge_card().plates = vec![mm(3)];
        })
    };
    let over = |half| shared(Rule::HalfOverlayArm, half);
    assert_eq!(over(um(9_500)), []);
    let [left, right] = over(um(9_501)).try_into().unwrap();
    assert_eq!(left.place.face, Some(partition(LEFT)));
    assert_eq!(right.place.face, Some(partition(RIGHT)));
    let [finding, _] = over(mm(15)).try_into().unwrap();
    assert_eq!(
        finding.message,
        "check the data sheet: door 1 shares partition 1 and may lap 7.5 over it, but half arm, tab 3.0 and plate 3.0 \
         lap 15.0: 7.5 over, and it adjusts 2.0; take another arm"
    );
    // Too little of it covers nothing of the other half: arm -1.5 and tab 7 on plate 3 give 2.5.
    let short = |half| shared(Rule::OverlayUnreachable, half).len();
    assert_eq!(
        (over(mm(-2)), short(mm(-2)), short(um(1_499))),
        ([].into(), 2, 2)
    );
    assert_eq!(short(um(1_500)), 0);
}

#[test]
fn a_door_of_22_needs_more_beside_it_than_one_of_19() {
    let said = |thickness| {
        said(Rule::RevealTooSmall, |case| {
            case.door(1, LEFT, 1, TWO).thickness = Some(mm(thickness));
            case.shop().fronts.reveal_side = mm(1);
        })
    };
    assert_eq!(said(19), Vec::<String>::new());
    assert_eq!(
        said(22),
        [
            "door 1 is 22.0 thick and needs 1.5 beside its hinge edge to swing past, but the reveal is 1.0; \
             more of it, or a thinner door"
        ]
    );
}

#[test]
fn the_reveal_itself_is_enough() {
    let found = |reveal| {
        found(Rule::RevealTooSmall, |case| {
            case.door(1, LEFT, 1, TWO);
            case.shop().fronts.reveal_side = reveal;
        })
        .len()
    };
    assert_eq!((found(mm(1)), found(um(999))), (0, 1));
}

#[test]
fn nothing_is_said_of_a_hinge_whose_reveals_nobody_has_looked_up() {
    let found = found(Rule::RevealTooSmall, |case| {
        case.door(1, LEFT, 1, TWO);
        case.shop().fronts.reveal_side = mm(0);
        case.hinge_card().reveals.clear();
    });
    assert_eq!(found, []);
}

// Geometry: doors of 22 need 1.5; two that swing at one partition have half the gap each, one alone has all of it.
#[test]
fn doors_that_swing_at_one_partition_share_the_gap() {
    let said = |other, gap| {
        said(Rule::RevealTooSmall, |case| {
            case.part_in_two();
            case.shop().fronts.gap = gap;
            case.door(1, RIGHT, 1, &[3, 19]).thickness = Some(mm(22));
            case.door(12, other, 12, &[6, 16]);
        })
    };
    let sentence = |room| {
        std::format!(
            "door 1 is 22.0 thick and needs 1.5 beside its hinge edge to swing past, but {room}; more of it, or a thinner door"
        )
    };
    assert_eq!(said(LEFT, mm(3)), Vec::<String>::new());
    assert_eq!(said(LEFT, um(2_980)), [sentence("half the gap is ~1.5")]);
    assert_eq!(said(RIGHT, um(1_500)), Vec::<String>::new());
    assert_eq!(said(RIGHT, um(1_400)), [sentence("the gap is 1.4")]);
}

#[test]
fn a_door_that_stands_inside_swings_in_its_gap() {
    let said = |gap| {
        said(Rule::RevealTooSmall, |case| {
            case.door(1, LEFT, 1, TWO);
            case.bay(1).inset = Some(Inset::default());
            case.shop().fronts.gap_inset = gap;
        })
    };
    assert_eq!(said(mm(1)), Vec::<String>::new());
    assert_eq!(
        said(um(500)),
        [
            "door 1 is 19.0 thick and needs 1.0 beside its hinge edge to swing past, but the gap is 0.5; \
             more of it, or a thinner door"
        ]
    );
}

/// A door of this width and height on the left, on so many hinges, of a board of 650 kg/m3.
fn sized(width: Length, height: Length, holes: &'static [i16]) -> impl Fn(&mut Case) {
    move |case| {
        case.cabinet().size.width = width + mm(3);
        case.cabinet().size.height = height + mm(3);
        case.job.cards.boards[2].density.value = 650;
        case.door(1, LEFT, 1, holes);
    }
}

// Source of the counts: the default chart is common practice. 640 x 1000 x 19 at 650 kg/m3 are 7.90 kg.
#[test]
fn hinges_by_each_chart() {
    let by = |chart| {
        said(Rule::HingesTooFew, |case| {
            sized(mm(640), mm(1_000), &[3, 28])(case);
            case.hinge_card().chart = chart;
        })
    };
    assert_eq!(
        by(CountChart::HeightAndMass),
        [
            "door 1 hangs on 2 hinges, and the chart by height and mass asks for 4: 3 for 1000.0 high, 3 for 7.9 kg, \
             1 more for 640.0 wide"
        ]
    );
    // 1003 is under 40 inches, and 7.90 kg are 17.4 lb.
    assert_eq!(
        by(CountChart::Inches),
        [
            "door 1 hangs on 2 hinges, and the chart by height in inches and pounds asks for 3: \
             2 for a cabinet 1003.0 high, 3 for 7.9 kg"
        ]
    );
    assert_eq!(
        by(CountChart::MassAndWidth),
        ["door 1 hangs on 2 hinges, and the chart by mass and width asks for 3: 3 for 7.9 kg"]
    );
}

#[test]
fn a_door_of_900_hangs_on_two_hinges_and_a_higher_one_on_three() {
    let found = |height, holes| found(Rule::HingesTooFew, sized(mm(400), height, holes)).len();
    assert_eq!(found(mm(900), &[3, 25]), 0);
    assert_eq!(found(um(900_001), &[3, 25]), 1);
    assert_eq!(found(um(900_001), &[3, 14, 25]), 0);
    assert_eq!(found(um(900_001), &[3]), 0, "one hinge carries no door");
}

#[test]
fn beyond_the_chart_it_is_at_least_its_last_row() {
    let said = said(Rule::HingesTooFew, sized(mm(300), mm(2_401), &[3, 70]));
    assert_eq!(
        said,
        [
            "door 1 hangs on 2 hinges, and the chart by height and mass asks for 5 at least: 5 for 2401.0 high, 3 for 8.9 kg"
        ]
    );
}

// Geometry: plates on 3 and 18 are 480 apart, 0.8 of 600.
#[test]
fn first_and_last_hinge_are_apart_for_the_width_of_the_door() {
    let said = |width| said(Rule::HingesTooClose, sized(width, mm(701), &[3, 18]));
    assert_eq!(said(mm(600)), Vec::<String>::new());
    assert_eq!(said(um(600_001)).len(), 1);
    assert_eq!(
        said(mm(620)),
        [
            "door 1 is 620.0 wide, and its first and last hinge are 480.0 apart, 496.0 at least; move them outward"
        ]
    );
}

// Geometry: the bay with the lowest key says how the door over both stands: 19 and 1 behind the front.
#[test]
fn plates_of_an_inset_door_in_a_bay_that_is_not() {
    let said = said(Rule::InsetOnOverlayRow, |case| {
        case.part_in_two();
        case.bay(1).inset = Some(Inset {
            front: None,
            set_in: mm(1),
        });
        case.door(10, RIGHT, 12, TWO);
    });
    assert_eq!(
        said,
        [
            "the plates of door 1 are 20.0 too far forward, and it would stand 20.0 proud: in bay 2 the front row is at 37.0, \
             and belongs at 57.0"
        ]
    );
}

#[test]
fn plates_of_an_overlay_door_in_a_bay_that_is_inset() {
    let said = said(Rule::InsetOnOverlayRow, |case| {
        case.part_in_two();
        case.bay(12).inset = Some(Inset::default());
        case.door(10, RIGHT, 12, TWO);
    });
    assert_eq!(
        said,
        [
            "the plates of door 1 are 19.0 too far back: in bay 2 the front row is at 56.0, and belongs at 37.0"
        ]
    );
}

#[test]
fn a_front_row_may_be_off_by_half_a_millimetre() {
    let found = |thickness| {
        found(Rule::InsetOnOverlayRow, |case| {
            case.bay(1).inset = Some(Inset {
                front: Some(mm(19)),
                set_in: mm(1),
            });
            case.bay(1).recess = mm(5);
            case.door(1, LEFT, 1, TWO).thickness = Some(thickness);
        })
        .len()
    };
    assert_eq!((found(mm(19)), found(um(19_500))), (0, 0));
    assert_eq!((found(um(19_501)), found(um(18_499))), (1, 1));
}
