use super::super::fixture::*;
use super::*;

#[test]
fn plate_in_a_zone_is_named_with_its_holes() {
    let said = said(Rule::PlateOnPinHole, |case| {
        case.pins(1, 1, 8);
        case.plate(1, LEFT, 3);
    });
    assert_eq!(
        said,
        [
            "pins 1-8 and hinge plate on 3-4 want the same holes 3-4; move the plate, or shorten the zone"
        ]
    );
}
