//! Proof of `at_bench`.

use super::super::fixture::*;
use super::*;

/// What a rule says of the plain cabinet with pins and a hinge plate, in a shop that works otherwise.
fn in_shop(rule: Rule, change: impl Fn(&mut Case)) -> Vec<String> {
    said(rule, |case| {
        case.pins(1, 8, 10);
        case.plate(1, LEFT, 3);
        change(case);
    })
}

#[test]
fn an_edge_that_is_not_banded_yet_is_said_with_its_setting() {
    assert_eq!(in_shop(Rule::BandAfterBoring, |_| ()), [""; 0]);
    let said = in_shop(Rule::BandAfterBoring, |case| {
        case.shop().band.on = BandState::AfterBoring;
        case.shop().band.pre_mill = um(500);
    });
    assert_eq!(
        said,
        [
            "the front edges are NOT banded yet: the row at 37.0 is set to 36.5, the band 1.0 less and the pre-mill 0.5 more"
        ]
    );
}

#[test]
fn a_pointed_bit_is_wrong_for_blind_holes_only() {
    assert_eq!(in_shop(Rule::BitWrongForHole, |_| ()), [""; 0]);
    assert_eq!(
        in_shop(Rule::BitWrongForHole, |case| case.shop().bit = Bit::Pointed).len(),
        1
    );
    let none = said(Rule::BitWrongForHole, |case| case.shop().bit = Bit::Pointed);
    assert_eq!(none, [""; 0], "there are no holes");
}

#[test]
fn a_test_hole_may_be_off_by_three_tenths() {
    let tested = |um: i32| {
        in_shop(Rule::DepthZeroUnproved, |case| {
            case.shop().bench.test_depth = Some(Length::from_um(um));
        })
    };
    assert_eq!(tested(12_300), [""; 0]);
    assert_eq!(tested(11_700), [""; 0]);
    assert_eq!(tested(11_699).len(), 1);
    assert_eq!(
        tested(12_400),
        [
            "the test hole is 12.4 deep for 12.0; over 0.3 off its zero was on the wrong surface: set it right and test again"
        ]
    );
}

/// Both ways round each hole is off by 0.3, so they differ by 0.6.
#[test]
fn a_base_off_its_middle_counts_twice() {
    let off = |um: i32| {
        in_shop(Rule::BaseOffCentre, |case| {
            case.shop().bench.base_off = Some(Length::from_um(um));
        })
    };
    assert_eq!(off(100), [""; 0]);
    assert_eq!(
        off(300),
        [
            "the bit is 0.3 off the middle of its base, so rows with the foot to the left and to the right differ by 0.6"
        ]
    );
}

#[test]
fn settings_by_eye_are_noted_where_rows_are_in_pairs() {
    assert_eq!(
        in_shop(Rule::GaugeByEye, |case| case.shop().bench.gauge =
            Gauge::Eye)
        .len(),
        1
    );
    let pins = said(Rule::GaugeByEye, |case| {
        case.pins(1, 8, 10);
        case.shop().bench.gauge = Gauge::Eye;
    });
    assert_eq!(pins, [""; 0]);
}

/// Two sides with two settings each. Setting by setting the second panel comes up twice: 30 more loads at 400 s each.
#[test]
fn an_order_that_takes_longer_than_another_is_noted() {
    let with = |order| {
        in_shop(Rule::ChangeoversScattered, |case| {
            case.shop().bench.times.load = 400;
            case.shop().bench.order = order;
        })
    };
    assert_eq!(with(WorkOrder::Least), [""; 0]);
    assert_eq!(with(WorkOrder::PanelFirst), [""; 0]);
    assert_eq!(with(WorkOrder::SettingFirst).len(), 1);
}
