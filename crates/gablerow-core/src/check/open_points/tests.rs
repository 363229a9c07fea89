//! Proof of `open_points`.

use super::super::fixture::*;
use super::super::of_job;
use super::*;
use crate::job::{
    Division, Fastener, Front, FrontHeight, FrontKind, JointBore, Key, Label, PartWidth,
};

/// One drawer front so much higher than its cabinet less two reveals of 1.5.
fn fixed_front(more: Length) -> Vec<String> {
    said(Rule::HeightsDoNotAddUp, |case| {
        let height = case.cabinet().size.height - mm(3) + more;
        case.cabinet().opening.fronts.push(Front {
            height: FrontHeight::Fixed(height),
            ..Front::plain(Key(30), Label::new("D1").unwrap(), FrontKind::Drawer)
        });
    })
}

#[test]
fn fronts_fill_their_opening() {
    assert_eq!(fixed_front(mm(0)), Vec::<String>::new());
    let over = "the fronts of bay 1 leave 1.0 over; give one a share, or make it higher by that";
    assert_eq!(fixed_front(mm(-1)), [over]);
    let high = "the fronts of bay 1 are 1.0 too high; give one a share, or make it lower by that";
    assert_eq!(fixed_front(mm(1)), [high]);
}

#[test]
fn bores_in_the_bottom_under_a_partition() {
    let said = said(Rule::NotYet, |case| {
        case.part_in_two().foot.bores.push(JointBore {
            x: mm(60),
            diameter: mm(8),
            depth: Some(mm(12)),
            fastener: Fastener::Dowel,
        });
    });
    assert_eq!(
        said,
        ["the bores of partition 1 in a horizontal panel are kept, but not laid out yet"]
    );
}

/// Two parts so wide, both fixed: 564 less an 18 partition is 546.
fn fixed_parts(width: Length) -> Vec<String> {
    said(Rule::WidthsDoNotAddUp, |case| {
        case.part_in_two();
        if let Division::SideBySide(parts) = &mut case.cabinet().opening.division {
            parts.first.width = PartWidth::Fixed(width);
            parts.rest[0].1.width = PartWidth::Fixed(mm(273));
        }
    })
}

#[test]
fn parts_fill_their_opening_exactly() {
    assert_eq!(fixed_parts(mm(273)), [""; 0]);
    assert_eq!(fixed_parts(um(273_001)).len(), 1);
    assert_eq!(
        fixed_parts(mm(270)),
        ["the parts side by side of bays 1-2 leave 3.0 over; make one equal, or wider by that"]
    );
    assert_eq!(
        fixed_parts(mm(274)),
        [
            "the parts side by side of bays 1-2 are 1.0 too wide; make one equal, or narrower by that"
        ]
    );
}

#[test]
fn opening_between_its_own_shelves_has_no_height() {
    let at = |underside| {
        said(Rule::NoSpace, |case| {
            case.fixed_shelf(underside);
        })
    };
    assert_eq!(at(um(18_001)), [""; 0]);
    assert_eq!(
        at(mm(18)),
        [
            "bay 1 would be 564.0 wide and 0.0 high inside; make the cabinet larger, what is beside it smaller, or take it out"
        ]
    );
}

#[test]
fn card_that_is_not_there() {
    let mut case = Case::new();
    case.cabinet().carcass.top.board = card("board-99");
    let found = of_job(&case.job);
    let said = found.iter().find(|finding| finding.rule == Rule::NoCard);
    assert_eq!(
        said.map(|finding| finding.message.as_str()),
        Some("there is no card board-99; add it, or choose another")
    );
}

#[test]
fn sides_do_not_run_below_a_bottom_under_them() {
    let found = |fit, below| {
        found(Rule::SidesEndOnBottom, move |case| {
            case.cabinet().carcass.bottom.fit = fit;
            case.cabinet().carcass.sides.below = mm(below);
        })
        .len()
    };
    assert_eq!(found(Fit::Across, 90), 1);
    assert_eq!((found(Fit::Across, 0), found(Fit::Between, 90)), (0, 0));
}
