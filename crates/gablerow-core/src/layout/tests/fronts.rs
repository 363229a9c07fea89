//! Sizes of fronts, and how far they lap over what is around them.

use crate::arbitrary::*;
use crate::job::{
    Front, FrontHeight, FrontKind, Hand, Inset, Job, Key, Label, RevealScheme, ShelfHeight,
};
use crate::layout::{FrontLayout, OpenPoint};
use crate::measure::Length;

fn front(key: u32, kind: FrontKind, height: FrontHeight) -> Front {
    Front {
        height,
        ..Front::plain(Key(key), Label::known("F"), kind)
    }
}

fn drawers<const N: usize>(modules: [u16; N]) -> Vec<Front> {
    let drawer = |(at, modules): (usize, &u16)| {
        let key = 20 + u32::try_from(at).unwrap();
        front(key, FrontKind::Drawer, FrontHeight::Modules(*modules))
    };
    modules.iter().enumerate().map(drawer).collect()
}

fn laid_out(change: impl FnOnce(&mut Job)) -> Vec<FrontLayout> {
    let job = cabinet_x(change);
    assert_eq!(job.validate(), Ok(()));
    lay_out(&job).fronts
}

fn size(front: &FrontLayout) -> (Length, Length) {
    (front.width.total(), front.height.total())
}

// Geometry: 442.1 + 17.1 over the side + 7.8 over half the partition = 467.0 = (940 - 6) / 2.
#[test]
fn door_beside_a_partition_that_two_doors_share() {
    let fronts = laid_out(|job| {
        put_fronts(job, 11, vec![door(20, Hand::Left)]);
        put_fronts(job, 12, vec![door(21, Hand::Right)]);
    });
    let [left, right] = &fronts[..] else {
        panic!("{fronts:?}");
    };
    assert_eq!(size(left), (mm(467), mm(797)));
    assert_eq!(size(right), (mm(467), mm(797)));
    assert_eq!(left.lap_hung().unwrap().total(), um(17_100));
    assert_eq!(left.lap_right.total(), um(7_800));
    assert_eq!(right.left - left.right(), mm(3));
    assert_eq!((left.foot, left.head()), (um(1_500), um(798_500)));
}

#[test]
fn door_beside_an_open_bay_covers_the_whole_partition_but_the_reveal() {
    let fronts = laid_out(|job| put_fronts(job, 11, vec![door(20, Hand::Left)]));
    assert_eq!(fronts[0].lap_right.total(), um(17_100));
}

/// A door over bay 11 and one over another bay, in the cabinet where bay 12 is parted so.
fn beside_parted(bay_12: crate::job::Opening, with_door: u32) -> [FrontLayout; 2] {
    let fronts = laid_out(|job| {
        job.cabinets[0].opening = side_by_side(1, empty(11), [(partition(9), bay_12)]);
        put_fronts(job, 11, vec![door(20, Hand::Left)]);
        put_fronts(job, with_door, vec![door(21, Hand::Right)]);
    });
    fronts.try_into().unwrap()
}

// Of a row beside it only the bay at the partition counts: half the board less half the gap is 7.8, all of it less the reveal
// is 17.1. The outermost wall is lapped over all but the reveal, whatever is inside.
#[test]
fn door_beside_a_row_minds_only_the_bay_next_to_it() {
    let row = || side_by_side(12, empty(31), [(partition(32), empty(33))]);
    let [door, next] = beside_parted(row(), 31);
    assert_eq!(door.lap_right.total(), um(7_800));
    assert_eq!(next.lap_left.total(), um(7_800));
    assert_eq!(next.lap_right.total(), um(17_100), "open beside it");
    let [door, last] = beside_parted(row(), 33);
    assert_eq!(door.lap_right.total(), um(17_100), "an open bay is between");
    assert_eq!(last.lap_left.total(), um(17_100));
    assert_eq!(last.lap_right.total(), um(17_100), "the outermost wall");
}

#[test]
fn door_under_sections_minds_only_the_one_right_above_it() {
    let lap_head = |with_door: u32| {
        let fronts = laid_out(|job| {
            let shelf = |key, z| fixed_shelf(key, ShelfHeight::Underside(mm(z)));
            let upper = stacked(12, empty(31), shelf(32, 550), empty(33));
            job.cabinets[0].opening = stacked(1, empty(11), shelf(13, 250), upper);
            put_fronts(job, 11, vec![door(20, Hand::Left)]);
            put_fronts(job, with_door, vec![door(21, Hand::Right)]);
        });
        fronts[0].head() - mm(250)
    };
    assert_eq!(lap_head(31), um(7_800));
    assert_eq!(lap_head(33), um(17_100), "an open section is between");
}

#[test]
fn door_over_two_bays_is_the_cabinet_less_its_reveals() {
    let fronts = laid_out(|job| put_fronts(job, 1, vec![door(20, Hand::Left)]));
    assert_eq!(size(&fronts[0]), (mm(937), mm(797)));
    assert_eq!(fronts[0].wall_hung(), Some(LEFT_INSIDE));
}

// Geometry: (940 - 2 * 1.5 - 3) / 2 = 467.
#[test]
fn pair_of_doors_shares_the_width_less_a_gap() {
    let fronts = laid_out(|job| {
        put_fronts(
            job,
            1,
            vec![Front::plain(Key(20), Label::known("D"), FrontKind::Pair)],
        );
    });
    let [left, right] = &fronts[..] else {
        panic!("{fronts:?}");
    };
    assert_eq!(
        (left.width.total(), right.width.total()),
        (mm(467), mm(467))
    );
    assert_eq!(right.left - left.right(), mm(3));
    assert_eq!(
        (left.hung, right.hung),
        (Some(Hand::Left), Some(Hand::Right))
    );
}

// Geometry: opening 402.8 x 762.8, gap 2: 398.8 x 758.8.
#[test]
fn inset_door_leaves_a_gap_all_around() {
    let fronts = laid_out(|job| {
        job.cabinets[0].size.width = um(2 * 402_800 + 3 * 18_600);
        bay_of(job, 11).inset = Some(Inset::default());
        put_fronts(job, 11, vec![door(20, Hand::Left)]);
    });
    assert_eq!(size(&fronts[0]), (um(398_800), um(758_800)));
    assert_eq!(fronts[0].lap_hung().unwrap().total(), mm(-2));
    assert_eq!(fronts[0].set_in, Some(Length::ZERO));
    assert_eq!(fronts[0].thickness, mm(19), "as typed for the door itself");
}

// Geometry: 25 modules as 9, 8, 8: 285 + 253 + 253 and two gaps and reveals of 3 are 800; lower edges 1.5, 289.5, 545.5.
#[test]
fn three_drawers_by_modules() {
    let fronts = laid_out(|job| put_fronts(job, 12, drawers([9, 8, 8])));
    let heights: Vec<Length> = fronts.iter().map(|front| front.height.total()).collect();
    assert_eq!(heights, [mm(285), mm(253), mm(253)]);
    let feet: Vec<Length> = fronts.iter().map(|front| front.foot).collect();
    assert_eq!(feet, [um(1_500), um(289_500), um(545_500)]);
}

// Geometry: fronts of 8 modules are 8 * 32 - 2 = 254, so that with a gap of 2 they stand a whole number of pitches apart.
#[test]
fn inset_drawers_of_whole_modules_stand_whole_pitches_apart() {
    let fronts = laid_out(|job| {
        bay_of(job, 12).inset = Some(Inset::default());
        put_fronts(job, 12, drawers([7, 8, 8]));
    });
    let heights: Vec<Length> = fronts.iter().map(|front| front.height.total()).collect();
    assert_eq!(heights[1..], [mm(254), mm(254)]);
    assert_eq!(fronts[2].foot - fronts[1].foot, mm(8 * 32));
}

// stack-front: F = 32m - gap. Source: davelers.com/32mm/4988.html; dalrun.com/32mm/Drawers (two pages).
#[test]
fn a_front_of_whole_pitches_is_one_gap_less() {
    for (module, height) in [
        (4, 125),
        (5, 157),
        (6, 189),
        (7, 221),
        (8, 253),
        (9, 285),
        (10, 317),
    ] {
        let fronts = laid_out(|job| put_fronts(job, 12, drawers([25 - module, module])));
        assert_eq!(fronts[1].height.total(), mm(height));
    }
}

// stack-height. Derived: 157 + 3 + 221 + 3 + 381 + 3 = 768 with no reveal at the foot and one of 3 at the head.
#[test]
fn modules_fill_a_height_flush_at_the_foot() {
    let fronts = laid_out(|job| {
        job.cabinets[0].size.height = mm(768);
        job.shop.fronts = job.shop.fronts.with_scheme(RevealScheme::FlushFoot);
        put_fronts(job, 1, drawers([12, 7, 5]));
    });
    let heights: Vec<Length> = fronts.iter().map(|front| front.height.total()).collect();
    assert_eq!(heights, [381, 221, 157].map(mm));
}

// stack-2195. Source: a shelving maker's page: 96 + 11 + 4 fronts of 221 and 4 gaps of 3 + 1181 + 11.
#[test]
fn a_published_stack_of_four_drawers_and_a_door_is_met() {
    let fronts = laid_out(|job| {
        job.cabinets[0].size.height = mm(2_195 - 96);
        (job.shop.fronts.reveal_foot, job.shop.fronts.reveal_head) = (mm(11), mm(11));
        put_fronts(job, 1, drawers([7, 7, 7, 7, 37]));
    });
    let heights: Vec<Length> = fronts.iter().map(|front| front.height.total()).collect();
    assert_eq!(heights, [221, 221, 221, 221, 1_181].map(mm));
}

// Geometry: 797 less two gaps is 791; a third, down to half a millimetre, is 263.5, and 264 is left for the lowest.
#[test]
fn equal_fronts_give_the_rest_to_the_lowest() {
    let share = |key| front(key, FrontKind::Drawer, FrontHeight::Ratio(1));
    let fronts = laid_out(|job| put_fronts(job, 12, vec![share(20), share(21), share(22)]));
    let heights: Vec<Length> = fronts.iter().map(|front| front.height.total()).collect();
    assert_eq!(heights, [mm(264), um(263_500), um(263_500)]);
    assert_eq!(fronts[2].head(), um(798_500));
}

#[test]
fn what_modules_leave_over_goes_to_the_bottom_front() {
    let mut job = cabinet_x(|job| {
        job.cabinets[0].size.height = mm(811);
        put_fronts(job, 12, drawers([9, 8, 8]));
    });
    let layout = lay_out(&job);
    assert_eq!(layout.fronts[0].height.total(), mm(285 + 11));
    assert_eq!(layout.open_points, []);

    job.cabinets[0].size.height = mm(768);
    assert_eq!(
        lay_out(&job).open_points,
        [OpenPoint::Heights {
            opening: Key(12),
            left_over: mm(-32)
        }]
    );
}

#[test]
fn drawers_over_a_door() {
    let fronts = laid_out(|job| {
        let mut wishes = vec![door(19, Hand::Left)];
        wishes.extend(drawers([4]));
        put_fronts(job, 11, wishes);
    });
    // 797 - 125 - 3
    assert_eq!(fronts[0].height.total(), mm(669));
    assert_eq!(fronts[1].foot - fronts[0].head(), mm(3));
}

#[test]
fn drawer_behind_a_door_has_room_above_the_bottom_and_no_front() {
    let fronts = laid_out(|job| {
        let behind = front(21, FrontKind::Inner, FrontHeight::Modules(6));
        put_fronts(job, 11, vec![door(20, Hand::Left), behind]);
    });
    assert_eq!(fronts[0].height.total(), mm(797));
    assert_eq!(fronts[1].foot, um(18_600));
    assert_eq!(size(&fronts[1]), (um(442_100), mm(192)));
}

#[test]
fn fronts_share_a_fixed_shelf() {
    let job = cabinet_with(|cabinet| {
        let mut below = empty(11);
        below.fronts = vec![door(20, Hand::Left)];
        let mut above = empty(12);
        above.fronts = vec![door(21, Hand::Left)];
        let shelf = fixed_shelf(13, ShelfHeight::Underside(mm(343)));
        cabinet.opening = stacked(1, below, shelf, above);
    });
    let fronts = lay_out(&job).fronts;
    // The shelf's middle is at 352; half a gap either way.
    assert_eq!(fronts[0].head(), um(350_500));
    assert_eq!(fronts[1].foot, um(353_500));
    assert_eq!(fronts[1].head(), um(702_500));
}

#[test]
fn flush_foot_has_no_reveal_at_the_foot_and_a_gap_at_the_head() {
    let fronts = laid_out(|job| {
        job.shop.fronts = job.shop.fronts.with_scheme(RevealScheme::FlushFoot);
        assert_eq!(job.shop.fronts.scheme(), RevealScheme::FlushFoot);
        put_fronts(job, 1, vec![door(20, Hand::Left)]);
    });
    assert_eq!((fronts[0].foot, fronts[0].head()), (mm(0), mm(797)));
}

#[test]
fn front_of_the_shop_is_as_thick_as_measured() {
    let fronts = laid_out(|job| {
        put_fronts(
            job,
            1,
            vec![Front::plain(
                Key(20),
                Label::known("D"),
                FrontKind::Door(Hand::Left),
            )],
        );
        let id = job.shop.front_board().clone();
        let board = job.cards.boards.iter_mut().find(|board| board.id == id);
        board.unwrap().thickness.value = um(19_300);
    });
    assert_eq!(fronts[0].thickness, um(19_300));
}
