//! Any house defaults; cards are placeholders for cards of the job.

use proptest::option::weighted;
use proptest::prelude::*;

use super::jobs::usual;
use super::openings::card;
use super::within;
use crate::job::{
    BackRule, Band, BandState, BenchRules, Bit, BoxRules, FrontRules, Gauge, Limits, Reference,
    Shop, Times, WorkOrder,
};
use crate::measure::range;

pub(super) fn shop() -> impl Strategy<Value = Shop> {
    let lengths = (
        usual(&range::SETBACK, 37),
        usual(&range::SETBACK, 37),
        within(&range::HOLE_DIAMETER),
        within(&range::BORE_DEPTH),
    );
    let choices = (
        prop::sample::select(BackRule::ALL.to_vec()),
        prop::sample::select(vec![Bit::Flat, Bit::Pointed]),
        prop::sample::select(vec![Reference::Foot, Reference::OneStop]),
    );
    let ids = [
        card(),
        card(),
        card(),
        card(),
        card(),
        card(),
        card(),
        card(),
    ];
    let fronts = (front_rules(), band(), box_rules(), bench_rules());
    (lengths, choices, ids, limits(), fronts, any::<[bool; 2]>()).prop_map(
        |(
            (setback_front, setback_back, diameter, depth),
            (back_rule, bit, reference),
            ids,
            limits,
            (fronts, band, boxes, bench),
            [own_fronts, own_boxes],
        )| {
            let [
                board,
                hinge,
                runner,
                pin,
                front_board,
                box_board,
                connector,
                rail,
            ] = ids;
            Shop {
                setback_front,
                setback_back,
                back_rule,
                diameter,
                depth,
                bit,
                reference,
                board,
                hinge,
                runner,
                pin,
                limits,
                front_board: own_fronts.then_some(front_board),
                box_board: own_boxes.then_some(box_board),
                connector: own_fronts.then_some(connector),
                rail: own_boxes.then_some(rail),
                fronts,
                band,
                boxes,
                bench,
            }
        },
    )
}

fn bench_rules() -> impl Strategy<Value = BenchRules> {
    let order = prop::sample::select(WorkOrder::ALL.to_vec());
    let gauge = prop::sample::select(Gauge::ALL.to_vec());
    let measured = (
        weighted(0.3, within(&range::BORE_DEPTH)),
        weighted(0.3, within(&range::BASE_OFF)),
    );
    let any = (prop::array::uniform7(0..=900_u32), order, gauge, measured).prop_map(
        |(
            [bit, depth, stop, setting, load, placement, hole],
            order,
            gauge,
            (test_depth, base_off),
        )| BenchRules {
            times: Times {
                bit,
                depth,
                stop,
                setting,
                load,
                placement,
                hole,
            },
            order,
            gauge,
            test_depth,
            base_off,
        },
    );
    prop_oneof![Just(BenchRules::default()), any]
}

fn front_rules() -> impl Strategy<Value = FrontRules> {
    let reveal = || usual(&range::REVEAL, 2);
    let any = (
        within(&range::GAP),
        reveal(),
        reveal(),
        reveal(),
        within(&range::GAP),
    )
        .prop_map(
            |(gap, reveal_foot, reveal_head, reveal_side, gap_inset)| FrontRules {
                gap,
                reveal_foot,
                reveal_head,
                reveal_side,
                gap_inset,
            },
        );
    prop_oneof![Just(FrontRules::default()), any]
}

fn band() -> impl Strategy<Value = Band> {
    let on = prop::sample::select(vec![BandState::BeforeBoring, BandState::AfterBoring]);
    (within(&range::BAND), within(&range::BAND), on).prop_map(|(thickness, pre_mill, on)| Band {
        thickness,
        pre_mill,
        on,
    })
}

fn box_rules() -> impl Strategy<Value = BoxRules> {
    let clearances = prop::array::uniform6(within(&range::BOX_CLEARANCE));
    let any = (
        within(&range::GROOVE_DEPTH),
        within(&range::BOX_STEP),
        clearances,
    )
        .prop_map(|(groove, step, clearances)| {
            let [below, between, above, rise, rise_least, rise_most] = clearances;
            BoxRules {
                groove,
                step,
                below,
                between,
                above,
                rise,
                rise_least,
                rise_most,
            }
        });
    prop_oneof![Just(BoxRules::default()), any]
}

fn limits() -> impl Strategy<Value = Limits> {
    let any = prop::array::uniform9(within(&range::LIMIT)).prop_map(|values| {
        let [
            to_end,
            to_edge,
            to_back,
            near,
            skin_flat,
            skin_pointed,
            web,
            spare,
            close,
        ] = values;
        Limits {
            to_end,
            to_edge,
            to_back,
            near,
            skin_flat,
            skin_pointed,
            web,
            spare,
            close,
        }
    });
    prop_oneof![2 => Just(Limits::default()), 1 => any]
}
