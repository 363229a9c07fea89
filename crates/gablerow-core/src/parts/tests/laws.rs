//! Laws that hold for the parts of every cabinet.

use proptest::prelude::*;

use crate::arbitrary;
use crate::job::{Band, Hand};
use crate::layout::Layout;
use crate::measure::Length;
use crate::parts::{BagKind, PanelName, Parts, Piece};

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
