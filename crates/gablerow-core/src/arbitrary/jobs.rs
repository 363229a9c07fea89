//! Any job within the ranges that [`Job::validate`] accepts.

use proptest::option::weighted;
use proptest::prelude::*;

use super::cards::cards;
use super::openings::{card, depth, joint, opening};
use super::shop::shop;
use super::{hand, place, within};
use crate::cards::{CardId, Cards};
use crate::grid::HoleNumber;
use crate::job::{
    Acceptance, AsCut, Back, BackRail, Bay, Bored, Bottom, Cabinet, Carcass, Copy, Division, Edge,
    End, EndOffsets, FaceId, Fit, FreeHole, FreeRow, Job, Key, Label, LeftAt, Notch, Opening,
    PanelId, Shop, Sides, Size, Stand, Top, TopKind,
};
use crate::measure::range::{self, Range};
use crate::measure::{Length, Unit};

/// Any job of one cabinet or a few, with cards of its own.
pub(crate) fn job() -> impl Strategy<Value = Job> {
    let unit = prop::sample::select(vec![Unit::Millimetre, Unit::Inch]);
    // Boxed, so that the strategies of a whole job do not fill the stack of a test.
    (
        unit,
        cards().boxed(),
        shop().boxed(),
        prop::collection::vec(cabinet().boxed(), 1..4),
        prop::collection::vec(bored(), 0..3),
        weighted(0.5, face()),
        0..1_000_u32,
    )
        .prop_map(|(unit, cards, shop, cabinets, bored, face, seed)| {
            let mut job = Job {
                title: Label::known("glaze store"),
                unit,
                shop,
                cards,
                cabinets,
                bored,
                took: Vec::new(),
                troubles: Vec::new(),
                measured: Vec::new(),
                revisions: Vec::new(),
                left_at: face.map(|face| LeftAt {
                    cabinet: Key(1),
                    face,
                }),
            };
            settle(&mut job, seed);
            job
        })
}

/// Gives everything a key of its own and turns placeholders for cards into cards of the job.
fn settle(job: &mut Job, seed: u32) {
    let Job {
        cards,
        shop,
        cabinets,
        ..
    } = job;
    settle_shop(shop, cards);
    for (at, cabinet) in cabinets.iter_mut().enumerate() {
        let mut keys = Keys { seed, given: 0 };
        cabinet.key = Key(u32::try_from(at).unwrap() + 1 + seed % 7);
        cabinet.name = Label::known(&format!("C{at}"));
        Settle {
            cards,
            keys: &mut keys,
            partitions: Vec::new(),
        }
        .cabinet(cabinet);
    }
}

/// Keys that are all unlike, in no order a reader could lean on.
struct Keys {
    seed: u32,
    given: u32,
}

impl Keys {
    /// An odd factor takes no two numbers below a power of two to the same rest.
    fn give(&mut self, key: &mut Key) {
        *key = Key(self.given * (2 * self.seed + 1) % 0x1_0000);
        self.given += 1;
    }
}

fn settle_shop(shop: &mut Shop, cards: &Cards) {
    pick(&mut shop.board, &cards.boards, |card| &card.id);
    pick(&mut shop.hinge, &cards.hinges, |card| &card.id);
    pick(&mut shop.runner, &cards.runners, |card| &card.id);
    pick(&mut shop.pin, &cards.pins, |card| &card.id);
    for id in [&mut shop.front_board, &mut shop.box_board]
        .into_iter()
        .flatten()
    {
        pick(id, &cards.boards, |card| &card.id);
    }
    if let Some(id) = &mut shop.connector {
        pick(id, &cards.connectors, |card| &card.id);
    }
    if let Some(id) = &mut shop.rail {
        pick(id, &cards.rails, |card| &card.id);
    }
}

fn pick<'a, T>(id: &mut CardId, cards: &'a [T], id_of: impl Fn(&T) -> &CardId) -> &'a T {
    let at: usize = id.as_str().parse().unwrap();
    let card = &cards[at % cards.len()];
    *id = id_of(card).clone();
    card
}

struct Settle<'a> {
    cards: &'a Cards,
    keys: &'a mut Keys,
    partitions: Vec<Key>,
}

impl Settle<'_> {
    fn board(&self, id: &mut CardId) {
        pick(id, &self.cards.boards, |card| &card.id);
    }

    fn cabinet(&mut self, cabinet: &mut Cabinet) {
        self.board(&mut cabinet.carcass.sides.board);
        self.board(&mut cabinet.carcass.bottom.board);
        self.board(&mut cabinet.carcass.top.board);
        if let Some(rail) = &mut cabinet.carcass.rail {
            self.board(&mut rail.board);
        }
        self.opening(&mut cabinet.opening);
        for row in &mut cabinet.free_rows {
            self.keys.give(&mut row.key);
            self.face(&mut row.face);
        }
        for hole in &mut cabinet.free_holes {
            self.keys.give(&mut hole.key);
            self.face(&mut hole.face);
        }
        cabinet
            .copies
            .iter_mut()
            .for_each(|copy| self.keys.give(&mut copy.key));
    }

    /// A partition that the cabinet has, when it has one.
    fn face(&self, face: &mut FaceId) {
        if let (PanelId::Partition(key), false) = (&mut face.panel, self.partitions.is_empty()) {
            let at = usize::try_from(key.0).unwrap();
            *key = self.partitions[at % self.partitions.len()];
        }
    }

    fn opening(&mut self, opening: &mut Opening) {
        self.keys.give(&mut opening.key);
        opening
            .fronts
            .iter_mut()
            .for_each(|front| self.keys.give(&mut front.key));
        match &mut opening.division {
            Division::Bay(bay) => self.bay(bay),
            Division::SideBySide(parts) => {
                self.opening(&mut parts.first.opening);
                for (partition, part) in &mut parts.rest {
                    self.keys.give(&mut partition.key);
                    self.partitions.push(partition.key);
                    self.board(&mut partition.board);
                    self.opening(&mut part.opening);
                }
            }
            Division::Stacked(parts) => {
                self.opening(&mut parts.first);
                for (shelf, above) in &mut parts.rest {
                    self.keys.give(&mut shelf.key);
                    self.board(&mut shelf.board);
                    self.opening(above);
                }
            }
        }
    }

    fn bay(&mut self, bay: &mut Bay) {
        bay.zones
            .iter_mut()
            .for_each(|zone| self.keys.give(&mut zone.key));
        for shelf in &mut bay.shelves {
            self.keys.give(&mut shelf.key);
            self.board(&mut shelf.board);
        }
        for plate in &mut bay.plates {
            self.keys.give(&mut plate.key);
            pick(&mut plate.card, &self.cards.hinges, |card| &card.id);
        }
        for runner in &mut bay.runners {
            self.keys.give(&mut runner.key);
            let card = pick(&mut runner.card, &self.cards.runners, |card| &card.id);
            let at = usize::try_from(runner.length.counts()).unwrap();
            runner.length = card.lengths[at % card.lengths.len()].name;
        }
    }
}

/// Values near the usual ones as often as the whole range.
pub(super) fn usual(range: &Range, usual: i32) -> impl Strategy<Value = Length> + use<> {
    prop_oneof![Just(Length::from_mm(usual)), within(range)]
}

fn size() -> impl Strategy<Value = Size> {
    (
        usual(&range::CARCASS_WIDTH, 1000),
        usual(&range::CARCASS_HEIGHT, 704),
        usual(&range::CARCASS_DEPTH, 560),
    )
        .prop_map(|(width, height, depth)| Size {
            width,
            height,
            depth,
        })
}

fn cabinet() -> impl Strategy<Value = Cabinet> {
    let offsets = (usual(&range::END_OFFSET, 16), usual(&range::END_OFFSET, 16))
        .prop_map(|(foot, head)| EndOffsets { foot, head });
    (
        size(),
        offsets,
        carcass(),
        opening(),
        prop::collection::vec(free_row(), 0..3),
        prop::collection::vec(free_hole(), 0..3),
        prop::collection::vec(copy(), 1..3),
        prop::collection::vec(acceptance(), 0..2),
    )
        .prop_map(
            |(size, offsets, carcass, opening, free_rows, free_holes, copies, accepted)| Cabinet {
                key: Key(0),
                name: Label::known("C"),
                size,
                offsets,
                carcass,
                opening,
                free_rows,
                free_holes,
                copies,
                accepted,
            },
        )
}

fn carcass() -> impl Strategy<Value = Carcass> {
    let notch = (within(&range::NOTCH), within(&range::NOTCH))
        .prop_map(|(height, depth)| Notch { height, depth });
    let sides = (
        card(),
        usual(&range::PLINTH, 0),
        weighted(0.3, notch),
        any::<[bool; 2]>(),
    )
        .prop_map(
            |(board, below, notch, [exposed_left, exposed_right])| Sides {
                board,
                below,
                notch,
                exposed_left,
                exposed_right,
            },
        );
    let fit = prop::sample::select(vec![Fit::Between, Fit::Across]);
    let bottom =
        (card(), fit.clone(), joint()).prop_map(|(board, fit, joint)| Bottom { board, fit, joint });
    let kind = prop_oneof![
        fit.prop_map(TopKind::Panel),
        within(&range::STRETCHER_WIDTH).prop_map(TopKind::FlatStretchers),
        within(&range::STRETCHER_WIDTH).prop_map(TopKind::EdgeStretchers),
    ];
    let top = (card(), kind, joint()).prop_map(|(board, kind, joint)| Top { board, kind, joint });
    let rail = (card(), within(&range::STRETCHER_WIDTH))
        .prop_map(|(board, height)| BackRail { board, height });
    let stand = prop_oneof![
        within(&range::PLINTH).prop_map(Stand::Feet),
        within(&range::PLINTH).prop_map(Stand::Plinth),
    ];
    let under = (weighted(0.2, rail), weighted(0.5, stand));
    (sides.boxed(), bottom.boxed(), top.boxed(), back(), under).prop_map(
        |(sides, bottom, top, back, (rail, stand))| Carcass {
            sides,
            bottom,
            top,
            back,
            rail,
            stand,
        },
    )
}

fn back() -> impl Strategy<Value = Back> {
    prop_oneof![
        (
            usual(&range::GROOVE_TO_BACK_EDGE, 20),
            within(&range::GROOVE_DEPTH)
        )
            .prop_map(|(to_front_wall, cut)| Back::Groove { to_front_wall, cut }),
        within(&range::GROOVE_TO_BACK_EDGE).prop_map(|run| Back::Rabbet { run }),
        Just(Back::Planted),
        Just(Back::Open),
    ]
}

/// Any face; a partition is a placeholder for one that the cabinet has.
fn face() -> impl Strategy<Value = FaceId> {
    let panel = prop_oneof![
        hand().prop_map(PanelId::Side),
        (0..8_u32).prop_map(|key| PanelId::Partition(Key(key))),
    ];
    (panel, hand()).prop_map(|(panel, toward)| FaceId { panel, toward })
}

fn edge() -> impl Strategy<Value = Edge> {
    prop::sample::select(vec![Edge::Front, Edge::Back])
}

fn free_row() -> impl Strategy<Value = FreeRow> {
    let setback = usual(&range::CARCASS_POINT, 37);
    (
        face(),
        edge(),
        setback,
        place(),
        place(),
        within(&range::HOLE_DIAMETER),
        depth(),
    )
        .prop_map(
            |(face, edge, setback, first, last, diameter, depth)| FreeRow {
                key: Key(0),
                face,
                purpose: Label::known("end panel screws"),
                edge,
                setback,
                first,
                last,
                diameter,
                depth,
            },
        )
}

fn free_hole() -> impl Strategy<Value = FreeHole> {
    let end = prop::sample::select(vec![End::Foot, End::Head]);
    (
        face(),
        edge(),
        usual(&range::CARCASS_POINT, 37),
        end,
        usual(&range::PANEL_POSITION, 336),
        within(&range::HOLE_DIAMETER),
        depth(),
    )
        .prop_map(
            |(face, edge, setback, end, height, diameter, depth)| FreeHole {
                key: Key(0),
                face,
                purpose: Label::known("lock"),
                edge,
                setback,
                end,
                height,
                diameter,
                depth,
            },
        )
}

fn copy() -> impl Strategy<Value = Copy> {
    let as_cut = (
        face(),
        weighted(0.7, within(&range::AS_CUT_LENGTH)),
        weighted(0.7, within(&range::BOARD_THICKNESS)),
        weighted(0.3, within(&range::PLAY)),
        weighted(0.3, within(&range::DIAGONALS)),
    )
        .prop_map(|(face, length, thickness, play, diagonals)| AsCut {
            panel: face.panel,
            length,
            thickness,
            play,
            diagonals,
        });
    (any::<bool>(), prop::collection::vec(as_cut, 0..2)).prop_map(|(mirrored, as_cut)| Copy {
        key: Key(0),
        name: Label::known("1"),
        mirrored,
        as_cut,
    })
}

fn acceptance() -> impl Strategy<Value = Acceptance> {
    (0..3_u8).prop_map(|at| Acceptance {
        rule: "near-miss".into(),
        message: format!("holes {at} apart"),
        reason: Label::known("seen at the bench"),
    })
}

fn bored() -> impl Strategy<Value = Bored> {
    (
        face(),
        within(&range::PANEL_POSITION),
        weighted(0.7, 1..=400_i32),
        within(&range::PANEL_POSITION),
        weighted(0.7, within(&range::BORE_DEPTH)),
        within(&range::HOLE_DIAMETER),
    )
        .prop_map(
            |(face, from_front, hole, from_foot, depth, diameter)| Bored {
                cabinet: Key(1),
                copy: Key(2),
                face,
                from_front,
                hole: hole.map(|number| HoleNumber::new(number).unwrap()),
                from_foot,
                depth,
                diameter,
                taken_back: false,
            },
        )
}
