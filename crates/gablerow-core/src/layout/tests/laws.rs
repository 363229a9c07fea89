//! Laws that hold for every cabinet.

use proptest::prelude::*;

use super::mirror::{in_one_order, mirror_of};
use crate::arbitrary::{self, within};
use crate::grid::{Ends, Grid};
use crate::job::{
    Cabinet, Datum, Division, Fit, Hand, HolePlace, Job, Key, Opening, Shelf, TopKind,
};
use crate::layout::{Hole, Layout, OpenPoint, Use};
use crate::measure::Length;
use crate::measure::range;

/// Where the holes of one owner are on a wall: setback, height, number.
fn holes_of(holes: &[Hole], use_: Use, owner: Key) -> Vec<(Length, Length, Option<i16>)> {
    holes
        .iter()
        .filter(|hole| hole.users.contains(&(use_, owner)))
        .map(|hole| (hole.x, hole.z, hole.number))
        .collect()
}

/// What of a bay stands on both walls at once.
fn pairs(cabinet: &Cabinet, bay: Key) -> Vec<(Use, Key)> {
    let bay = cabinet.opening.bay(bay).unwrap();
    let pins = bay.zones.iter().map(|zone| zone.key);
    let pins = pins.chain(bay.shelves.iter().map(|shelf| shelf.key));
    let runners = bay.runners.iter().map(|runner| (Use::Runner, runner.key));
    pins.map(|key| (Use::Pin, key)).chain(runners).collect()
}

/// Clear width of an opening: its parts and the partitions between them.
fn width(opening: &Opening, layout: &Layout, job: &Job) -> Length {
    match &opening.division {
        Division::Bay(_) => {
            let bay = layout.bays.iter().find(|bay| bay.key == opening.key);
            bay.unwrap().width
        }
        Division::SideBySide(parts) => {
            let left_over = layout.open_points.iter().find_map(|point| match point {
                OpenPoint::Widths {
                    opening: key,
                    left_over,
                } if *key == opening.key => Some(*left_over),
                _ => None,
            });
            let first = width(&parts.first.opening, layout, job);
            let rest = parts.rest.iter().map(|(partition, part)| {
                let board = job.cards.board(&partition.board).unwrap();
                board.thickness.value + width(&part.opening, layout, job)
            });
            first + rest.sum::<Length>() + left_over.unwrap_or_default()
        }
        Division::Stacked(parts) => {
            let first = width(&parts.first, layout, job);
            for (_, above) in &parts.rest {
                assert_eq!(width(above, layout, job), first);
            }
            first
        }
    }
}

proptest! {
    #[test]
    fn no_panic_for_any_job_within_the_ranges(job in arbitrary::job()) {
        prop_assert_eq!(job.validate(), Ok(()));
        for cabinet in &job.cabinets {
            let layout = Layout::of(cabinet, &job);
            for face in layout.uprights.iter().flat_map(|upright| &upright.faces) {
                let holes = face.holes(&layout);
                prop_assert!(face.rows.iter().is_sorted_by(|a, b| a.x.total() < b.x.total()));
                for (at, hole) in holes.iter().enumerate() {
                    let twice = holes[..at].iter().any(|other| (other.x, other.z) == (hole.x, hole.z));
                    prop_assert!(!twice, "two entries for one place: {hole:?}");
                }
            }
        }
    }

    #[test]
    fn mate_holes_are_coplanar(job in arbitrary::job()) {
        for cabinet in &job.cabinets {
            let layout = Layout::of(cabinet, &job);
            for bay in &layout.bays {
                let [left, right] = [Hand::Left, Hand::Right]
                    .map(|hand| layout.face(bay.wall(hand)).unwrap().holes(&layout));
                for (use_, owner) in pairs(cabinet, bay.key) {
                    prop_assert_eq!(holes_of(&left, use_, owner), holes_of(&right, use_, owner));
                }
            }
        }
    }

    #[test]
    fn every_hole_number_is_one_height_in_the_whole_cabinet(job in arbitrary::job()) {
        for cabinet in &job.cabinets {
            let layout = Layout::of(cabinet, &job);
            for face in layout.uprights.iter().flat_map(|upright| &upright.faces) {
                for hole in face.holes(&layout) {
                    let at = |number: &i16| {
                        cabinet.offsets.foot + Length::PITCH * (i32::from(*number) - 1) == hole.z
                    };
                    prop_assert_eq!(hole.number, (1..=layout.last).find(at));
                }
            }
        }
    }

    #[test]
    fn layout_of_a_mirrored_cabinet_is_the_mirror_of_its_layout(job in arbitrary::job()) {
        for cabinet in &job.cabinets {
            let mirrored = Layout::of(&cabinet.mirrored(), &job);
            prop_assert_eq!(in_one_order(mirrored), mirror_of(Layout::of(cabinet, &job), cabinet.size.width));
        }
    }

    #[test]
    fn no_space_ends_before_it_begins(job in arbitrary::job()) {
        for cabinet in &job.cabinets {
            let layout = Layout::of(cabinet, &job);
            let faces = layout.uprights.iter().flat_map(|upright| &upright.faces);
            for keep_out in faces.flat_map(|face| &face.keep_outs) {
                for span in [keep_out.x, keep_out.z, keep_out.u] {
                    prop_assert!(span.from <= span.to, "{:?}", keep_out);
                }
            }
        }
    }

    #[test]
    fn bays_and_boards_add_up_to_the_width(job in arbitrary::job()) {
        for cabinet in &job.cabinets {
            let layout = Layout::of(cabinet, &job);
            let side = job.cards.board(&cabinet.carcass.sides.board).unwrap().thickness.value;
            prop_assert_eq!(side + width(&cabinet.opening, &layout, &job) + side, cabinet.size.width);
        }
    }

    #[test]
    fn explanations_add_up_to_what_they_explain(job in arbitrary::job()) {
        for cabinet in &job.cabinets {
            let layout = Layout::of(cabinet, &job);
            let uprights = layout.uprights.iter();
            let sums = uprights.flat_map(|upright| [upright.front, upright.back, upright.foot, upright.head]);
            let rows = layout.uprights.iter().flat_map(|upright| &upright.faces).flat_map(|face| &face.rows);
            let bays = layout.bays.iter().flat_map(|bay| [bay.floor, bay.ceiling, bay.inner_depth]);
            let fronts = layout.fronts.iter().flat_map(|front| [front.width, front.height, front.lap_left, front.lap_right]);
            let panels = layout.panels.iter().map(|panel| panel.length);
            for sum in sums.chain(rows.map(|row| row.x)).chain(bays).chain(fronts).chain(panels) {
                prop_assert_eq!(sum.terms().iter().map(|term| term.value).sum::<Length>(), sum.total());
                prop_assert!(sum.terms().iter().all(|term| term.words != "and the rest"), "{:?}", sum);
            }
        }
    }

    #[test]
    fn what_is_counted_from_the_head_keeps_its_distance_to_it(
        job in arbitrary::job(),
        place in arbitrary::place(),
        pitches in -40..40_i32,
    ) {
        let mut cabinet = job.cabinets[0].clone();
        let distance = |cabinet: &Cabinet| {
            let layout = Layout::of(cabinet, &job);
            let place = HolePlace { datum: Datum::Head, ..place };
            (layout.last > 0).then(|| cabinet.size.height - layout.height(place.number(layout.last)))
        };
        let before = distance(&cabinet);
        cabinet.size.height += Length::PITCH * pitches;
        if let (Some(before), Some(after)) = (before, distance(&cabinet)) {
            prop_assert_eq!(before, after);
        }
    }

    #[test]
    fn balanced_side_with_equal_joints_has_a_balanced_partition(
        holes in 12..100_i32,
        offset in within(&range::END_OFFSET),
        board in within(&range::BOARD_THICKNESS),
        housing in within(&range::HOUSING),
        whole_top in any::<bool>(),
    ) {
        let job = arbitrary::cabinet_x(|job| {
            arbitrary::board_18(job).thickness.value = board;
            let partition = arbitrary::partition_of(job);
            (partition.foot.housing, partition.head.housing) = (housing, housing);
            let cabinet = &mut job.cabinets[0];
            cabinet.size.height = offset + Length::PITCH * (holes - 1) + offset;
            (cabinet.offsets.foot, cabinet.offsets.head) = (offset, offset);
            if whole_top {
                cabinet.carcass.top.kind = TopKind::Panel(Fit::Between);
            }
        });
        let layout = arbitrary::lay_out(&job);
        let partition = layout.upright(arbitrary::partition_face(9, Hand::Left).panel).unwrap();
        let end_min = job.shop.limits.to_end;
        let below_head = job.cabinets[0].size.height - partition.head.total();
        let from_head = Grid { first: offset }.start_above(below_head, end_min).unwrap();
        let ends = Ends {
            height: partition.length(),
            foot: layout.grid.start_above(partition.foot.total(), end_min).unwrap().offset,
            head: from_head.offset,
        };
        prop_assert_eq!(ends.mismatch().wrapped(), Length::ZERO);
        prop_assert_eq!(ends.foot, ends.head);
    }

    #[test]
    fn shelf_asks_for_nothing_that_its_zone_has_not(first in 1..11_i16, more in 0..11_i16, at in 0..11_i16) {
        let zone = arbitrary::zone(3, first..=first + more);
        let with_zone = arbitrary::bay_with(|bay| bay.zones = vec![zone]);
        let mut with_shelf = with_zone.clone();
        let shelf: Shelf = arbitrary::shelf(4, first + at % (more + 1));
        with_shelf.cabinets[0].opening.bay_mut(Key(1)).unwrap().shelves.push(shelf);
        let places = |job: &Job| {
            let layout = arbitrary::lay_out(job);
            let holes = layout.face(arbitrary::LEFT_INSIDE).unwrap().holes(&layout);
            holes.iter().map(|hole| (hole.x, hole.z)).collect::<Vec<_>>()
        };
        prop_assert_eq!(places(&with_zone), places(&with_shelf));
    }
}
