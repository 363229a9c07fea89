use super::super::fixture::*;
use super::*;
use crate::job::{Back, FaceId};

/// Depth 449, groove 16 from the back edge: back row 449 - 16 - 37 = 396. Runner of 400: third screw at 37 + 11 * 32 = 389.
fn shallow(case: &mut Case) {
    case.cabinet().size.depth = mm(449);
    case.cabinet().carcass.back = Back::Groove {
        to_front_wall: mm(16),
        cut: mm(8),
    };
    case.pins(1, 4, 8);
    case.runner(1, 6, 400);
}

#[test]
fn back_row_7_behind_a_runner_row() {
    assert_eq!(
        said(Rule::NearMissRows, shallow),
        [
            "runner row at 389.0 and back row at 396.0 are 7.0 apart at hole 6, at least 10.0; \
          a back setback of 44.0 makes them one row"
        ]
    );
    let mended = |case: &mut Case| {
        shallow(case);
        case.shop().setback_back = mm(44);
    };
    assert!(said(Rule::NearMissRows, mended).is_empty());
}

#[test]
fn rows_are_near_up_to_the_least_spacing() {
    let rows = |apart| {
        found(Rule::NearMissRows, |case| {
            case.row(FaceId::inside(LEFT), mm(100), 3, 5);
            case.row(FaceId::inside(LEFT), mm(100) + apart, 5, 9);
        })
    };
    assert_eq!(rows(um(9_999))[0].place.holes, Some((5, 5)));
    assert!(rows(mm(10)).is_empty());
}
