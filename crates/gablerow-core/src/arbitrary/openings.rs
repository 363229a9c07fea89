//! Any openings, up to three within each other. Keys and cards are placeholders here: a cabinet gives each thing a key
//! of its own, and each card's number stands for one of the job's cards.

use proptest::option::weighted;
use proptest::prelude::*;

use super::{hand, place, within};
use crate::cards::CardId;
use crate::job::{
    Bay, DRAWER_LOAD_MOST, Depth, Division, Fastener, FixedShelf, Front, FrontHeight, FrontKind,
    Inset, Joint, JointBore, Key, Label, Opening, Part, PartWidth, Partition, PinRows, Plate,
    Runner, SHELF_LOAD_MOST, Shelf, ShelfHeight, SideBySide, Spacers, Stacked, Zone,
};
use crate::measure::Length;
use crate::measure::range;

const DEEP: u32 = 3;
const NAMELESS: Key = Key(0);

/// A placeholder for one of the job's cards of a kind.
pub(super) fn card() -> impl Strategy<Value = CardId> {
    (0..2_u8).prop_map(|at| CardId::known(&at.to_string()))
}

pub(super) fn opening() -> impl Strategy<Value = Opening> {
    let leaf = bay().prop_map(Division::Bay);
    let division = leaf.prop_recursive(DEEP, 10, 3, |inner| {
        let opening = (inner, fronts())
            .prop_map(|(division, fronts)| with_fronts(division, fronts))
            .boxed();
        prop_oneof![side_by_side(opening.clone()), stacked(opening)]
    });
    (division, fronts()).prop_map(|(division, fronts)| with_fronts(division, fronts))
}

fn with_fronts(division: Division, fronts: Vec<Front>) -> Opening {
    Opening {
        key: NAMELESS,
        division,
        fronts,
    }
}

fn side_by_side(opening: BoxedStrategy<Opening>) -> impl Strategy<Value = Division> {
    let width = prop_oneof![
        3 => Just(PartWidth::Equal),
        1 => within(&range::OPENING_SIZE).prop_map(PartWidth::Fixed),
    ];
    let part = (width, opening).prop_map(|(width, opening)| Part { width, opening });
    let rest = prop::collection::vec((partition(), part.clone()), 1..3);
    (part, rest).prop_map(|(first, rest)| Division::SideBySide(SideBySide { first, rest }.into()))
}

fn stacked(opening: BoxedStrategy<Opening>) -> impl Strategy<Value = Division> {
    let rest = prop::collection::vec((fixed_shelf(), opening.clone()), 1..3);
    (opening, rest).prop_map(|(first, rest)| Division::Stacked(Stacked { first, rest }.into()))
}

fn partition() -> impl Strategy<Value = Partition> {
    (card(), recess(), joint(), joint()).prop_map(|(board, recess, foot, head)| Partition {
        key: NAMELESS,
        board,
        recess,
        foot,
        head,
    })
}

fn fixed_shelf() -> impl Strategy<Value = FixedShelf> {
    let at = prop_oneof![
        place().prop_map(ShelfHeight::Hole),
        within(&range::PANEL_POSITION).prop_map(ShelfHeight::Underside),
    ];
    (card(), at, recess(), joint()).prop_map(|(board, at, recess, joint)| FixedShelf {
        key: NAMELESS,
        board,
        at,
        recess,
        joint,
    })
}

fn recess() -> impl Strategy<Value = Length> + Clone {
    prop_oneof![3 => Just(Length::ZERO), 1 => within(&range::RECESS)]
}

pub(super) fn joint() -> impl Strategy<Value = Joint> {
    let housing = prop_oneof![3 => Just(Length::ZERO), 1 => within(&range::HOUSING)];
    (
        housing,
        any::<bool>(),
        prop::collection::vec(joint_bore(), 0..3),
    )
        .prop_map(|(housing, runs_past, bores)| Joint {
            housing,
            runs_past,
            bores,
        })
}

fn joint_bore() -> impl Strategy<Value = JointBore> {
    (
        within(&range::CARCASS_POINT),
        within(&range::HOLE_DIAMETER),
        weighted(0.7, within(&range::BORE_DEPTH)),
        prop::sample::select(vec![Fastener::Dowel, Fastener::Connector]),
    )
        .prop_map(|(x, diameter, depth, fastener)| JointBore {
            x,
            diameter,
            depth,
            fastener,
        })
}

fn bay() -> impl Strategy<Value = Bay> {
    let front = weighted(0.5, within(&range::BOARD_THICKNESS));
    let inset = (front, within(&range::SET_IN)).prop_map(|(front, set_in)| Inset { front, set_in });
    (
        recess(),
        weighted(0.2, inset),
        prop::sample::select(vec![PinRows::Two, PinRows::Three]),
        prop::collection::vec(zone(), 0..3),
        prop::collection::vec(shelf(), 0..3),
        prop::collection::vec(plate(), 0..3),
        prop::collection::vec(runner(), 0..3),
    )
        .prop_map(
            |(recess, inset, pin_rows, zones, shelves, plates, runners)| Bay {
                recess,
                inset,
                pin_rows,
                zones,
                shelves,
                plates,
                runners,
            },
        )
}

pub(super) fn depth() -> impl Strategy<Value = Depth> {
    prop_oneof![
        3 => Just(Depth::Shop),
        1 => within(&range::BORE_DEPTH).prop_map(Depth::Blind),
        1 => Just(Depth::Through),
    ]
}

fn zone() -> impl Strategy<Value = Zone> {
    (place(), place(), depth()).prop_map(|(first, last, depth)| Zone {
        key: NAMELESS,
        first,
        last,
        depth,
    })
}

fn shelf() -> impl Strategy<Value = Shelf> {
    (
        place(),
        card(),
        within(&range::SHELF_SETBACK),
        within(&range::SHELF_SHORTER),
        weighted(0.5, 0..=SHELF_LOAD_MOST),
        weighted(0.5, within(&range::CLEAR_OPENING)),
    )
        .prop_map(
            |(hole, board, setback_front, shorter, load_grams, clear)| Shelf {
                key: NAMELESS,
                hole,
                board,
                setback_front,
                shorter,
                load_grams,
                clear,
            },
        )
}

fn serves() -> impl Strategy<Value = Option<Key>> {
    weighted(0.3, (0..40_u32).prop_map(Key))
}

fn plate() -> impl Strategy<Value = Plate> {
    (hand(), place(), card(), serves()).prop_map(|(wall, hole, card, serves)| Plate {
        key: NAMELESS,
        wall,
        hole,
        card,
        serves,
    })
}

/// A runner; its length is a placeholder for one of its card's lengths.
fn runner() -> impl Strategy<Value = Runner> {
    let spacer = || prop_oneof![3 => Just(Length::ZERO), 1 => within(&range::SPACER)];
    let length = (0..8_i32).prop_map(Length::from_counts);
    (
        place(),
        card(),
        length,
        0..=20_u8,
        (spacer(), spacer()),
        serves(),
    )
        .prop_map(
            |(hole, card, length, set_back, (left, right), serves)| Runner {
                key: NAMELESS,
                hole,
                card,
                length,
                set_back,
                spacers: Spacers { left, right },
                serves,
            },
        )
}

fn fronts() -> impl Strategy<Value = Vec<Front>> {
    let share = || range::SHARE.min..=range::SHARE.max;
    let height = prop_oneof![
        share().prop_map(FrontHeight::Modules),
        share().prop_map(FrontHeight::Ratio),
        within(&range::OPENING_SIZE).prop_map(FrontHeight::Fixed),
    ];
    let kind = prop_oneof![
        hand().prop_map(FrontKind::Door),
        Just(FrontKind::Pair),
        Just(FrontKind::Drawer),
        Just(FrontKind::False),
        Just(FrontKind::Inner),
    ];
    let thickness = weighted(0.3, within(&range::BOARD_THICKNESS));
    let load = weighted(0.3, 0..=DRAWER_LOAD_MOST);
    let front = (kind, height, thickness, load);
    let front = front.prop_map(|(kind, height, thickness, load_grams)| Front {
        key: NAMELESS,
        name: Label::known("D1"),
        kind,
        height,
        thickness,
        load_grams,
    });
    prop_oneof![2 => Just(Vec::new()), 1 => prop::collection::vec(front, 1..3)]
}
