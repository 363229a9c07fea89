//! Any edit a key could ask for, of whatever job is at hand.

use proptest::prelude::*;
use proptest::sample::Index;

use super::{datum, hand, within};
use crate::cards::CardId;
use crate::edit::{
    BayRun, Choice, Content, CopyEdit, Edit, FaceRun, FreeEdit, FreeLine, FreePlace, Measure, New,
    PartChoice, PartMeasure, Quantity, Value, Way, card_values, free_lines, own_values,
    shop_values,
};
use crate::job::{
    Acceptance, Cabinet, Datum, Division, Edge, End, FaceId, Hand, Job, Key, Label, PanelId, Seat,
    Shop,
};
use crate::measure::range;
use crate::measure::{Length, Unit};

/// What an edit will be once the job is known that it is made of.
#[derive(Clone, Debug)]
pub(crate) struct Wish {
    kind: u8,
    cabinet: Index,
    pub(super) thing: Index,
    pub(super) first: i16,
    pub(super) more: i16,
    pub(super) datum: Datum,
    pub(super) hand: Hand,
    pub(super) value: Length,
    name: &'static str,
}

pub(crate) fn wish() -> impl Strategy<Value = Wish> {
    let value = prop_oneof![
        4 => within(&range::BOARD_THICKNESS),
        4 => within(&range::SETBACK),
        4 => within(&range::CARCASS_HEIGHT),
        1 => within(&range::PANEL_POSITION),
    ];
    let name = prop::sample::select(vec!["A1", "B2", "C0", "C1"]);
    (
        (0..43_u8, any::<Index>(), any::<Index>()),
        (prop_oneof![9 => 1..24_i16, 1 => -3..140_i16], 0..6_i16),
        datum(),
        hand(),
        value,
        name,
    )
        .prop_map(
            |((kind, cabinet, thing), (first, more), datum, hand, value, name)| Wish {
                kind,
                cabinet,
                thing,
                first,
                more,
                datum,
                hand,
                value,
                name,
            },
        )
}

impl Wish {
    /// The edit; now and then of a cabinet, a bay or a fitting that is not there.
    pub(crate) fn of(&self, job: &Job) -> Edit {
        let cabinets: Vec<Key> = job.cabinets.iter().map(|cabinet| cabinet.key).collect();
        let cabinet = any_of(self.cabinet, &cabinets);
        let known = job.cabinet(cabinet);
        let run = BayRun {
            cabinet,
            bay: any_of(self.thing, &known.map(bays).unwrap_or_default()),
            first: self.first,
            last: self.first + self.more,
            datum: self.datum,
        };
        let name = Label::known(self.name);
        match self.kind {
            0 => Edit::Add {
                after: (self.more > 2).then_some(cabinet),
                name,
            },
            1 => Edit::Duplicate { cabinet, name },
            2 => Edit::Rename { cabinet, name },
            3 => Edit::Remove { cabinet },
            4 | 5 => Edit::Measure {
                cabinet,
                measure: *self.thing.get(&Measure::ALL),
                value: self.value,
            },
            6 => Edit::Choose {
                cabinet,
                choice: *self.thing.get(&Choice::ALL),
            },
            7 => Edit::Pins(run),
            8 => self.of_adjust(job, cabinet, known),
            9 => Edit::Plates {
                wall: self.hand,
                run,
            },
            10 => Edit::Runners(run),
            11 => Edit::Shelves(run),
            12 => Edit::Recount {
                cabinet,
                fitting: any_of(self.thing, &known.map(things).unwrap_or_default()),
                datum: self.datum,
            },
            _ => self.of_more(job, cabinet, name),
        }
    }

    /// An edit of what is accepted, of parts, cards, faces and copies, or of the job's heading.
    fn of_more(&self, job: &Job, cabinet: Key, name: Label) -> Edit {
        let known = job.cabinet(cabinet);
        let message = format!("holes {} apart", self.more);
        match self.kind {
            13 => Edit::Accept {
                cabinet,
                acceptance: Acceptance {
                    rule: "near-miss".into(),
                    message,
                    reason: name,
                },
            },
            14 => Edit::Withdraw { cabinet, message },
            33 => self.of_furnish(job, cabinet, known),
            34 => Edit::Offsets {
                cabinet,
                foot: self.value,
                head: Length::from_mm(16),
            },
            35 => Edit::NoFitting {
                cabinet,
                fitting: any_of(self.thing, &known.map(things).unwrap_or_default()),
                hole: self.first,
            },
            36..=39 => Edit::Free {
                cabinet,
                change: self.of_free(known),
            },
            42 => self.of_own(cabinet, known),
            40 | 41 => Edit::Copies {
                cabinet,
                change: self.of_copies(known),
            },
            16..=25 => self.of_part(
                cabinet,
                any_of(self.thing, &known.map(things).unwrap_or_default()),
            ),
            26..=32 => self.of_cards(job, cabinet),
            _ if self.more > 2 => Edit::Title(name),
            _ => Edit::Unit(if self.more == 0 {
                Unit::Inch
            } else {
                Unit::Millimetre
            }),
        }
    }
}

impl Wish {
    /// An edit of an opening, a partition, a fixed shelf, a front or a fitting; mostly of a kind that this part has.
    fn of_part(&self, cabinet: Key, part: Key) -> Edit {
        let count = u16::try_from(self.more + 1).unwrap_or(1);
        let at = usize::from(self.first.unsigned_abs());
        match self.kind {
            16 => Edit::PartMeasure {
                cabinet,
                part,
                measure: MEASURES[at % MEASURES.len()],
                value: self.value,
            },
            17 => Edit::PartChoose {
                cabinet,
                part,
                choice: CHOICES[at % CHOICES.len()],
            },
            18 => Edit::Divide {
                cabinet,
                opening: part,
                way: match self.hand {
                    Hand::Left => Way::SideBySide,
                    Hand::Right => Way::Stacked,
                },
                parts: count,
            },
            19 => Edit::Unite {
                cabinet,
                divider: part,
            },
            20 => Edit::Door {
                cabinet,
                opening: part,
            },
            21 => Edit::Drawers {
                cabinet,
                opening: part,
                count,
            },
            22 => Edit::InnerDrawers {
                cabinet,
                opening: part,
                count,
            },
            23 => Edit::FalseFront {
                cabinet,
                opening: part,
            },
            24 => Edit::NoFront {
                cabinet,
                front: part,
            },
            _ => Edit::Modules {
                cabinet,
                front: part,
                count,
            },
        }
    }

    /// An edit of a card, of a house default, or of which card is used.
    fn of_cards(&self, job: &Job, cabinet: Key) -> Edit {
        let card = self.cabinet.get(&job.cards.all_names()).clone();
        let whole = job.cards.card(&card).unwrap();
        let title = Label::known(self.name);
        let of_card = self.thing.get(&card_values(&whole)).clone();
        let of_shop = self.thing.get(&shop_values(&job.shop)).clone();
        let seat = *self.thing.get(&Seat::ALL);
        match self.kind {
            26 => Edit::Card {
                card,
                value: of_card.name,
                new: self.new_for(&of_card),
            },
            27 => Edit::CardOrigin {
                card,
                value: of_card.name,
            },
            28 => Edit::CardAdd { like: card, title },
            29 if self.more > 2 => {
                Edit::CardTake(Box::new(whole.renamed(CardId::of_title(self.name), title)))
            }
            29 => Edit::CardRemove(card),
            30 => Edit::UseCard {
                cabinet,
                seat,
                card: (seat.kind() == card.kind).then_some(card.id),
            },
            31 if self.more > 2 => Edit::ShopTake(Box::new(Shop::starter())),
            31 => Edit::ShopCard(card),
            _ => Edit::ShopValue {
                value: of_shop.name,
                new: self.new_for(&of_shop),
            },
        }
    }

    /// Something typed for a value, now and then of another sort, or a step to the next.
    fn new_for(&self, value: &Value) -> New {
        if self.more > 3 {
            return New::Next;
        }
        New::To(match value.quantity {
            Quantity::Title => Content::Title(Label::known(self.name)),
            Quantity::Number(..) => Content::Number(Some(u32::from(self.first.unsigned_abs()))),
            Quantity::MaybeNumber(..) => {
                Content::Number((self.more > 0).then_some(u32::from(self.first.unsigned_abs())))
            }
            Quantity::MaybeLength(..) => {
                Content::MaybeLength((self.more > 0).then_some(self.value))
            }
            Quantity::MaybeLoad(_) => {
                let grams = u32::try_from(self.value.counts()).unwrap_or(7_500);
                Content::MaybeLoad((self.more > 0).then_some(grams))
            }
            Quantity::Lengths(..) => Content::Lengths(vec![self.value, Length::from_mm(20)]),
            Quantity::Pitches => Content::Pitches(vec![9, 0, 9]),
            Quantity::Length(_) | Quantity::Choice | Quantity::Card(..) => {
                Content::Length(self.value)
            }
        })
    }
}

impl Wish {
    /// Another value of a loose shelf or a front, now and then of one that is not there or has none such.
    fn of_own(&self, cabinet: Key, known: Option<&Cabinet>) -> Edit {
        let mut keys = Vec::new();
        if let Some(known) = known {
            keys.extend(known.loose_shelves().iter().map(|shelf| shelf.key));
            let opening = &known.opening;
            opening.each(&mut |opening| keys.extend(opening.fronts.iter().map(|front| front.key)));
        }
        let thing = any_of(self.thing, &keys);
        let values = |key: Key| known.map(|known| own_values(known, key));
        let found = keys.iter().filter_map(|key| values(*key));
        let mut others = found.filter(|values| !values.is_empty());
        let own = values(thing).filter(|values| !values.is_empty());
        let of = own.or_else(|| others.next()).unwrap_or_default();
        match of.get(usize::from(self.first.unsigned_abs()) % of.len().max(1)) {
            Some(value) => Edit::OwnValue {
                cabinet,
                thing,
                value: value.name,
                new: self.new_for(value),
            },
            None => Edit::Unit(Unit::Millimetre),
        }
    }

    /// A change of what faces own themselves, outsides and partitions that are not there among them.
    fn of_free(&self, cabinet: Option<&Cabinet>) -> FreeEdit {
        let keys = cabinet.map(free_things).unwrap_or_default();
        let (thing, count) = (any_of(self.thing, &keys), self.more.unsigned_abs());
        let panel = match count {
            0 => PanelId::Partition(thing),
            1 | 2 => PanelId::Side(Hand::Left),
            _ => PanelId::Side(Hand::Right),
        };
        let place = FreePlace {
            face: FaceId {
                panel,
                toward: self.hand,
            },
            edge: [Edge::Front, Edge::Back][usize::from(count % 2)],
            setback: self.value,
        };
        let end = [End::Foot, End::Head][usize::from(count % 2)];
        let run = FaceRun {
            first: self.first,
            last: self.first + self.more,
            datum: self.datum,
        };
        let lines = cabinet.map_or(&[][..], |cabinet| free_lines(cabinet, thing));
        match (self.kind, lines.get(usize::from(count))) {
            (36, _) => FreeEdit::Row(place, run),
            (37, _) => FreeEdit::Hole(place, end, self.value),
            (38, _) => FreeEdit::TakeAway(thing),
            (_, Some(&FreeLine::Measure(measure))) => FreeEdit::Measure(thing, measure, self.value),
            (_, Some(&FreeLine::Choice(choice))) => FreeEdit::Choose(thing, choice),
            (_, Some(FreeLine::Purpose) | None) => {
                FreeEdit::Purpose(thing, Label::known(self.name))
            }
        }
    }

    fn of_copies(&self, cabinet: Option<&Cabinet>) -> CopyEdit {
        let copies = cabinet.map_or(&[][..], |cabinet| &cabinet.copies);
        let keys: Vec<Key> = copies.iter().map(|copy| copy.key).collect();
        let (copy, name) = (any_of(self.thing, &keys), Label::known(self.name));
        match self.more {
            0..=2 => CopyEdit::Add {
                mirrored: self.hand == Hand::Left,
                name,
            },
            3 => CopyEdit::Rename(copy, name),
            _ => CopyEdit::Remove(copy),
        }
    }
}

const MEASURES: [PartMeasure; 10] = [
    PartMeasure::Width,
    PartMeasure::Recess,
    PartMeasure::SetIn,
    PartMeasure::InsetFront,
    PartMeasure::HousingFoot,
    PartMeasure::HousingHead,
    PartMeasure::Housing,
    PartMeasure::Underside,
    PartMeasure::FrontHeight,
    PartMeasure::FrontThickness,
];

const CHOICES: [PartChoice; 9] = [
    PartChoice::WidthShare,
    PartChoice::Inset,
    PartChoice::PinRows,
    PartChoice::PastFoot,
    PartChoice::PastHead,
    PartChoice::Board,
    PartChoice::ShelfAt,
    PartChoice::FrontKind,
    PartChoice::FrontHeightWay,
];

/// One of the keys, or one that none of them is.
pub(super) fn any_of(index: Index, keys: &[Key]) -> Key {
    let at = index.index(keys.len() * 8 + 1);
    keys.get(at / 8).copied().unwrap_or(Key(777_777))
}

fn bays(cabinet: &Cabinet) -> Vec<Key> {
    let mut keys = Vec::new();
    cabinet.opening.each(&mut |opening| {
        if let Division::Bay(_) = opening.division {
            keys.push(opening.key);
        }
    });
    keys
}

pub(super) fn things(cabinet: &Cabinet) -> Vec<Key> {
    let mut keys = Vec::new();
    cabinet.each_key(&mut |key| keys.push(key));
    keys
}

pub(super) fn free_things(cabinet: &Cabinet) -> Vec<Key> {
    let rows = cabinet.free_rows.iter().map(|row| row.key);
    rows.chain(cabinet.free_holes.iter().map(|hole| hole.key))
        .collect()
}
