//! Laws that hold for the parts of every cabinet.

use proptest::prelude::*;

use crate::arbitrary;
use crate::job::{Band, Hand};
use crate::layout::Layout;
use crate::measure::Length;
use crate::parts::{Arm, BagKind, Leaf, PanelName, Parts, Piece};

/// Every piece of board that a band may be on.
fn pieces(parts: &Parts) -> impl Iterator<Item = &Piece> {
    let panels = parts.panels.iter().map(|panel| &panel.piece);
    let fronts = parts.fronts.iter().map(|front| &front.piece);
    let boxes = parts.boxes.iter().flat_map(|made| [&made.side, &made.end]);
    let shelves = parts.shelves.iter().map(|shelf| &shelf.piece);
    panels.chain(fronts).chain(boxes).chain(shelves)
}

fn taken(edges: i32, band: &Band) -> Length {
    (band.thickness - band.pre_mill) * edges
}

proptest! {
    #[test]
    fn cut_is_finished_less_bands_and_with_pre_mill(job in arbitrary::job()) {
        for cabinet in &job.cabinets {
            let parts = Parts::of(cabinet, &Layout::of(cabinet, &job), &job);
            for piece in pieces(&parts) {
                let [over_length, over_width] = piece.banded.across();
                let band = &job.shop.band;
                prop_assert_eq!(piece.length.total() - piece.cut_length.total(), taken(over_length, band));
                prop_assert_eq!(piece.width.total() - piece.cut_width.total(), taken(over_width, band));
                // Edges of a piece are two along and two across; none is banded twice.
                prop_assert_eq!(piece.banded.edges().len(), usize::try_from(over_length + over_width).unwrap());
            }
        }
    }

    #[test]
    fn what_stands_side_by_side_adds_up(job in arbitrary::job()) {
        for cabinet in &job.cabinets {
            let layout = Layout::of(cabinet, &job);
            let parts = Parts::of(cabinet, &layout, &job);
            for made in &parts.boxes {
                let bay = layout.bays.iter().find(|bay| bay.key == made.bay).unwrap();
                let runner = cabinet.opening.bay(made.bay).unwrap().runners.iter();
                let runner = runner.clone().find(|runner| runner.key == made.runner).unwrap();
                let spacers = runner.spacers.left + runner.spacers.right;
                let gaps = bay.width - spacers - made.outside.total();
                // An odd count does not halve.
                prop_assert!((gaps - made.side_gap * 2).abs() <= Length::from_counts(1));
                let side = made.side.thickness.unwrap();
                prop_assert_eq!(made.outside.total(), made.inside.total() + side * 2);
                prop_assert!(made.height <= made.room.total());
                prop_assert!(made.room.total() - made.height < job.shop.boxes.step.max(Length::from_counts(1)));
            }
            for front in &parts.fronts {
                for cup in front.hanging.iter().flat_map(|hanging| &hanging.cups.cups) {
                    prop_assert_eq!(cup.from_foot.total() + cup.from_head.total(), front.piece.length.total());
                }
            }
            for shelf in &parts.shelves {
                let bay = layout.bays.iter().find(|bay| bay.key == shelf.bay).unwrap();
                let shorter = cabinet.loose_shelf(shelf.key).unwrap().shorter;
                prop_assert_eq!(shelf.piece.length.total() + shorter, bay.width);
            }
        }
    }

    #[test]
    fn a_mirrored_cabinet_is_made_of_the_same_parts(job in arbitrary::job()) {
        for cabinet in &job.cabinets {
            let mirror = cabinet.mirrored();
            let plain = Parts::of(cabinet, &Layout::of(cabinet, &job), &job);
            let mirrored = Parts::of(&mirror, &Layout::of(&mirror, &job), &job);
            let sizes = |parts: &Parts| {
                let mut sizes: Vec<_> = pieces(parts)
                    .map(|piece| (piece.length.total(), piece.width.total(), piece.thickness))
                    .collect();
                sizes.sort_unstable();
                sizes
            };
            prop_assert_eq!(sizes(&plain), sizes(&mirrored));
            prop_assert_eq!(&plain.bag, &mirrored.bag);
            prop_assert_eq!(plain.back.map(|back| back.width.total()), mirrored.back.map(|back| back.width.total()));
            let hands = |parts: &Parts| {
                let left = parts.fronts.iter().filter(|front| front.hung == Some(Hand::Left)).count();
                let right = parts.fronts.iter().filter(|front| front.hung == Some(Hand::Right)).count();
                (left, right)
            };
            let (left, right) = hands(&mirrored);
            prop_assert_eq!(hands(&plain), (right, left));
        }
    }

    #[test]
    fn each_drawer_has_a_box_or_is_missing_something(job in arbitrary::job()) {
        for cabinet in &job.cabinets {
            let layout = Layout::of(cabinet, &job);
            let parts = Parts::of(cabinet, &layout, &job);
            for front in layout.fronts.iter().filter(|front| front.kind.is_drawer()) {
                let boxed = parts.boxes.iter().any(|made| made.front == front.key);
                let missed = parts.missing.iter().any(|missing| missing.front() == Some(front.key));
                prop_assert!(boxed || missed, "{:?}", front);
            }
            for front in parts.fronts.iter().filter(|front| front.kind.is_hung()) {
                let missed = parts.missing.iter().any(|missing| missing.front() == Some(front.key));
                prop_assert!(front.hanging.is_some() || missed, "{:?}", front);
            }
            let uprights = parts.panels.iter().filter(|panel| matches!(panel.name, PanelName::Upright(_)));
            prop_assert_eq!(uprights.count(), layout.uprights.len());
        }
    }

    // Why no check says that cups miss their plates.
    #[test]
    fn every_cup_is_at_the_middle_of_its_plate(job in arbitrary::job()) {
        for cabinet in &job.cabinets {
            let layout = Layout::of(cabinet, &job);
            let parts = Parts::of(cabinet, &layout, &job);
            let hung = layout.fronts.iter().filter(|front| front.kind.is_hung());
            let made = parts.fronts.iter().filter(|part| part.kind.is_hung());
            for (front, part) in hung.zip(made) {
                prop_assert_eq!((front.key, front.hung), (part.key, part.hung));
                let Some(hanging) = &part.hanging else { continue };
                let plates = Leaf::of(&job, cabinet, &layout, front).plates();
                prop_assert_eq!(plates.len(), hanging.cups.cups.len());
                for (plate, cup) in plates.iter().zip(&hanging.cups.cups) {
                    let mut spaces = layout.face(front.wall_hung().unwrap()).unwrap().keep_outs.iter();
                    let space = spaces.find(|space| space.owner == Some(plate.key)).unwrap();
                    let middle = front.foot + cup.from_foot.total();
                    prop_assert_eq!(middle * 2, space.z.from + space.z.to);
                }
            }
        }
    }

    // Why `half-overlay-arm` has only the half arm to measure.
    #[test]
    fn a_door_that_shares_its_edge_takes_the_half_arm(job in arbitrary::job()) {
        for cabinet in &job.cabinets {
            let layout = Layout::of(cabinet, &job);
            for front in layout.fronts.iter().filter(|front| front.set_in.is_none()) {
                let Some(wall) = front.wall_hung() else { continue };
                let shares = layout.fronts.iter().any(|other| {
                    let facing = [other.wall_left, other.wall_right].contains(&wall.behind());
                    facing && other.kind.is_seen() && other.set_in.is_none()
                });
                if shares && !wall.behind().is_outside() {
                    for card in &job.cards.hinges {
                        let arm = Leaf::of(&job, cabinet, &layout, front).arm(card).0;
                        prop_assert_eq!(arm, Arm::Half, "{:?}", front);
                    }
                }
            }
        }
    }

    // Doors on both faces of one partition leave the gap between them, or what an odd count makes of it.
    #[test]
    fn fronts_on_either_side_of_a_partition_leave_the_gap(job in arbitrary::job()) {
        for cabinet in &job.cabinets {
            let layout = Layout::of(cabinet, &job);
            let lapping = || layout.fronts.iter().filter(|it| it.kind.is_seen() && it.set_in.is_none());
            for left in lapping() {
                for right in lapping().filter(|right| right.wall_left == left.wall_right.behind()) {
                    let thickness = layout.upright(right.wall_left.panel).unwrap().thickness;
                    let laps = left.lap_right.total() + right.lap_left.total();
                    prop_assert!((thickness - laps - job.shop.fronts.gap).abs() <= Length::from_counts(2));
                }
            }
        }
    }

    #[test]
    fn a_tenth_more_is_taken_of_what_gets_lost(count in 0..100_000_u32) {
        for kind in BagKind::ALL {
            let more = kind.take(count) - count;
            if kind.gets_lost() {
                prop_assert!(10 * more >= count && 10 * more < count + 10);
            } else {
                prop_assert_eq!(more, 0);
            }
        }
    }
}
