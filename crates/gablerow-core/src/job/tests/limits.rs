//! What no job can hold, and where the fault is said to be.

use crate::arbitrary::*;
use crate::job::{
    Acceptance, Back, Cabinet, CardId, Copy, Depth, Division, Front, FrontHeight, Hand, HolePlace,
    Job, Key, Label, LeftAt, PartWidth, ShelfHeight, TopKind,
};
use crate::layout::OpenPoint;

/// A job with a bit of everything, which is held.
fn full() -> Job {
    let job = job_with(|job| {
        let mut left = bay(11, |bay| {
            bay.zones = vec![zone(21, 11..=16)];
            bay.shelves = vec![shelf(22, 11)];
            bay.plates = vec![plate(23, Hand::Left, 3)];
            bay.runners = vec![runner(24, 18, 500)];
        });
        left.fronts = vec![door(25, Hand::Left)];
        let shelf = fixed_shelf(26, ShelfHeight::Underside(mm(300)));
        let right = stacked(12, empty(13), shelf, empty(14));
        job.cabinets[0].opening = side_by_side(1, left, [(partition(9), right)]);
    });
    assert_eq!(job.validate(), Ok(()));
    job
}

/// What is said of the full job when one thing in it is different.
#[track_caller]
fn check(change: impl FnOnce(&mut Job), expected: &str) {
    let mut job = full();
    change(&mut job);
    assert_eq!(job.validate().unwrap_err().to_string(), expected);
}

#[track_caller]
fn check_cabinet(change: impl FnOnce(&mut Cabinet), expected: &str) {
    check(|job| change(&mut job.cabinets[0]), expected);
}

fn no_card() -> CardId {
    CardId::known("none")
}

#[test]
fn sizes_are_within_their_ranges() {
    check_cabinet(
        |cabinet| cabinet.size.height = mm(4001),
        "cabinets[0].size.height: carcass height: 4001, but it is 100 to 4000 mm",
    );
    check_cabinet(
        |cabinet| cabinet.offsets.head = mm(4),
        "cabinets[0].offsets.head: end offset: 4, but it is 5 to 200 mm",
    );
    check_cabinet(
        |cabinet| cabinet.carcass.back = Back::Rabbet { run: mm(201) },
        "cabinets[0].carcass.back.run: groove to back edge: 201, but it is 0 to 200 mm",
    );
    check_cabinet(
        |cabinet| cabinet.carcass.top.kind = TopKind::EdgeStretchers(mm(29)),
        "cabinets[0].carcass.top.kind.width: stretcher width: 29, but it is 30 to 600 mm",
    );
    check(
        |job| job.shop.limits.near = mm(101),
        "shop.limits.near: limit: 101, but it is 0 to 100 mm",
    );
    check(
        |job| job.cards.boards[1].thickness.value = mm(2),
        "cards.boards[1].thickness: board thickness: 2, but it is 3 to 60 mm",
    );
}

#[test]
fn fittings_are_within_their_ranges() {
    check(
        |job| bay_of(job, 11).zones[0].last = HolePlace::head(401),
        "cabinets[0].opening.side_by_side.first.opening.bay.zones[0].last: \
         head 401, but a place is counted up to 400 holes either way",
    );
    check(
        |job| bay_of(job, 11).zones[0].depth = Depth::Blind(mm(61)),
        "cabinets[0].opening.side_by_side.first.opening.bay.zones[0].depth: \
         bore depth: 61, but it is 1 to 60 mm",
    );
    check(
        |job| bay_of(job, 11).runners[0].set_back = 21,
        "cabinets[0].opening.side_by_side.first.opening.bay.runners[0].set_back: \
         set back: 21, but it is 0 to 20",
    );
    check(
        |job| partition_of(job).recess = mm(1501),
        "cabinets[0].opening.side_by_side.rest[0].partition.recess: \
         recess: 1501, but it is 0 to 1500 mm",
    );
    check_cabinet(
        |cabinet| {
            let Division::SideBySide(parts) = &mut cabinet.opening.division else {
                panic!("no parts");
            };
            let height = FrontHeight::Modules(0);
            parts.first.opening.fronts[0].height = height;
        },
        "cabinets[0].opening.side_by_side.first.opening.fronts[0].kind: \
         modules or share: 0, but it is 1 to 125",
    );
}

#[test]
fn cards_that_are_named_are_there() {
    check(
        |job| job.shop.pin = no_card(),
        "shop.pin: none, but the job has no pin card of that id",
    );
    check_cabinet(
        |cabinet| cabinet.carcass.top.board = no_card(),
        "cabinets[0].carcass.top.board: none, but the job has no board card of that id",
    );
    check(
        |job| bay_of(job, 11).plates[0].card = no_card(),
        "cabinets[0].opening.side_by_side.first.opening.bay.plates[0].card: \
         none, but the job has no hinge card of that id",
    );
    check(
        |job| bay_of(job, 11).runners[0].length = mm(501),
        "cabinets[0].opening.side_by_side.first.opening.bay.runners[0].length: \
         501, but the card runner-under has no such length",
    );
    check(
        |job| job.cards.runners[0].lengths.clear(),
        "cards.runners[0].lengths: none, but a runner card needs at least one length",
    );
}

#[test]
fn names_are_unlike() {
    check(
        |job| job.cards.boards[1].id = job.cards.boards[0].id.clone(),
        "cards.boards[1].id: board-18, but an earlier card has that id already",
    );
    let another = |job: &mut Job, key: u32, name: &str| {
        let cabinet = Cabinet::plain(Key(key), Label::known(name), &job.shop);
        job.cabinets.push(cabinet);
    };
    check(
        |job| another(job, 1, "G2"),
        "cabinets[1].key: 1, but an earlier cabinet has that already",
    );
    check(
        |job| another(job, 2, "A1"),
        "cabinets[1].name: A1, but an earlier cabinet has that already",
    );
    check(
        |job| bay_of(job, 11).shelves[0].key = Key(9),
        "cabinets[0].opening.side_by_side.rest[0].partition.key: \
         9, but another thing of the cabinet has that already",
    );
    check(
        |job| bay_of(job, 11).runners[0].key = Key(23),
        "cabinets[0].opening.side_by_side.first.opening.bay.runners[0].key: \
         23, but another thing of the cabinet has that already",
    );
    check_cabinet(
        |cabinet| cabinet.copies[0].key = Key(26),
        "cabinets[0].copies[0].key: 26, but another thing of the cabinet has that already",
    );
}

#[test]
fn cabinet_is_built_at_least_once() {
    check_cabinet(
        |cabinet| cabinet.copies.clear(),
        "cabinets[0].copies: none, but a cabinet is built at least once",
    );
    let copies = |count: u32| {
        let copy = |key| Copy {
            key: Key(1000 + key),
            name: Label::known("1"),
            mirrored: false,
            as_cut: Vec::new(),
        };
        (0..count).map(copy).collect()
    };
    check_cabinet(
        |cabinet| cabinet.copies = copies(1001),
        "cabinets[0].copies: copies: 1001, but it is 1 to 1000",
    );
}

#[test]
fn openings_lie_in_each_other_twelve_deep_at_most() {
    let deep = |levels: u32| {
        let mut opening = empty(1);
        for level in 1..levels {
            let key = 10 * level;
            let shelf = fixed_shelf(key + 1, ShelfHeight::Underside(mm(300)));
            opening = stacked(key, opening, shelf, empty(key + 2));
        }
        cabinet_with(|cabinet| {
            cabinet.copies[0].key = Key(999);
            cabinet.opening = opening;
        })
    };
    assert_eq!(deep(12).validate(), Ok(()));
    let fault = deep(13).validate().unwrap_err();
    assert_eq!(
        fault.problem,
        "openings lie in each other more than 12 deep"
    );
}

/// A cabinet of so many parts, each of them this wide.
fn fixed_parts(count: usize, width: i32) -> Job {
    cabinet_with(|cabinet| {
        cabinet.opening = side_by_side(1, empty(11), [(partition(9), empty(12))]);
        let Division::SideBySide(parts) = &mut cabinet.opening.division else {
            panic!("no parts");
        };
        parts.first.width = PartWidth::Fixed(mm(width));
        parts.rest[0].1.width = PartWidth::Fixed(mm(width));
        parts.rest = vec![parts.rest[0].clone(); count - 1];
        let mut key = 100;
        for (partition, part) in &mut parts.rest {
            (partition.key, part.opening.key) = (Key(key), Key(key + 1));
            key += 2;
        }
    })
}

#[test]
fn typed_widths_of_a_row_are_no_longer_than_a_row() {
    let widest = fixed_parts(40, 450);
    assert_eq!(widest.validate(), Ok(()));
    let layout = lay_out(&widest);
    // 600 - 41 * 18 - 40 * 450
    let left_over = mm(-18_138);
    let opening = Key(1);
    assert_eq!(
        layout.open_points.last(),
        Some(&OpenPoint::Widths { opening, left_over })
    );
    let said = |count, width| {
        fixed_parts(count, width)
            .validate()
            .unwrap_err()
            .to_string()
    };
    assert_eq!(
        said(40, 451),
        "cabinets[0].opening.side_by_side: typed widths of a row: 18040, but it is 0 to 18000 mm"
    );
    assert_eq!(
        said(41, 10),
        "cabinets[0].opening.side_by_side: parts side by side: 41, but it is 1 to 40"
    );
}

// The widest and the highest that may be typed: their sums still are lengths.
#[test]
fn rows_in_rows_and_fronts_on_fronts_still_are_lengths() {
    let mut opening = empty(1);
    for level in 1..12 {
        let key = 100 * level;
        let rest = core::array::from_fn::<_, 39, _>(|at| {
            let at = u32::try_from(at).unwrap();
            (partition(key + 2 * at + 1), empty(key + 2 * at + 2))
        });
        opening = side_by_side(key, opening, rest);
        let Division::SideBySide(row) = &mut opening.division else {
            panic!("no row");
        };
        let last = row.rest.len() - 1;
        core::mem::swap(&mut row.first.opening, &mut row.rest[last].1.opening);
        for part in row.parts_mut() {
            part.width = PartWidth::Fixed(mm(450));
        }
    }
    opening.fronts = (0..40).map(|at| door(3000 + at, Hand::Left)).collect();
    for front in &mut opening.fronts {
        front.height = FrontHeight::Fixed(mm(6000));
    }
    let mut job = cabinet_with(|cabinet| {
        cabinet.copies[0].key = Key(9999);
        cabinet.opening = opening;
    });
    assert_eq!(job.validate(), Ok(()));
    let layout = lay_out(&job);
    assert_eq!(layout.fronts.len(), 40);
    let front = job.cabinets[0].opening.fronts[0].clone();
    let key = Key(4000);
    job.cabinets[0].opening.fronts.push(Front { key, ..front });
    assert_eq!(
        job.validate().unwrap_err().to_string(),
        "cabinets[0].opening.fronts: fronts of an opening: 41, but it is 0 to 40"
    );
}

#[test]
fn runner_lengths_and_screws_are_in_order() {
    check(
        |job| job.cards.runners[0].lengths.swap(0, 1),
        "cards.runners[0].lengths[1].name: 250 after 300, but the shortest comes first",
    );
    check(
        |job| job.cards.runners[0].lengths[2].name = mm(300),
        "cards.runners[0].lengths[2].name: 300 after 300, but the shortest comes first",
    );
    let steps = |steps: &[u8], expected: &str| {
        check(
            |job| job.cards.runners[0].lengths[1].steps = steps.to_vec(),
            &format!("cards.runners[0].lengths[1].steps{expected}"),
        );
    };
    let order = "but steps begin with 0, and each is more than the last";
    steps(&[], &format!(": [], {order}"));
    steps(&[1, 4], &format!(": [1, 4], {order}"));
    steps(&[0, 4, 4], &format!(": [0, 4, 4], {order}"));
    // 62 * 32 = 1984; a card value goes to 2000.
    let far = "63, but a runner has its last screw 62 pitches back at most";
    steps(&[0, 63], &format!("[1]: {far}"));
}

#[test]
fn least_reveals_are_in_order_of_thickness() {
    check(
        |job| job.cards.hinges[0].reveals.swap(0, 1),
        "cards.hinges[0].reveals[1].thickness: 19 after 22, but the thinnest comes first",
    );
    check(
        |job| job.cards.hinges[0].reveals[1].thickness = mm(19),
        "cards.hinges[0].reveals[1].thickness: 19 after 19, but the thinnest comes first",
    );
    check(
        |job| {
            let reveals = &mut job.cards.hinges[0].reveals;
            *reveals = vec![reveals[0]; 21];
        },
        "cards.hinges[0].reveals: least reveals: 21, but it is 0 to 20",
    );
}

#[test]
fn loads_and_masses_are_of_this_world() {
    check(
        |job| bay_of(job, 11).shelves[0].load_grams = Some(1_000_001),
        "cabinets[0].opening.side_by_side.first.opening.bay.shelves[0].load_grams: \
         1000001, but a shelf carries at most 1000000 g",
    );
    check(
        |job| job.cards.boards[0].density.value = 0,
        "cards.boards[0].density: density: 0, but it is 1 to 10000",
    );
}

#[test]
fn lists_are_no_longer_than_a_person_could_want() {
    check(
        |job| bay_of(job, 11).zones = vec![zone(21, 1..=2); 1001],
        "cabinets[0].opening.side_by_side.first.opening.bay.zones: \
         1001 of them, but there are at most 1000",
    );
    let mut job = full();
    job.bored = vec![bored_hole(LEFT_INSIDE); 1001];
    assert_eq!(job.validate(), Ok(()), "the record is only added to");
}

#[test]
fn accepted_sentences_are_safe_to_show() {
    let accepted = |rule: &str, message: &str| Acceptance {
        rule: rule.into(),
        message: message.into(),
        reason: Label::known("seen"),
    };
    check_cabinet(
        |cabinet| cabinet.accepted = vec![accepted("no-space", "a\u{1b}[2J")],
        "cabinets[0].accepted[0].message: \
         the character U+001B is not shown in names; leave it out",
    );
    check_cabinet(
        |cabinet| cabinet.accepted = vec![accepted("", "a")],
        "cabinets[0].accepted[0].rule: 0 characters, but it has 1 to 60",
    );
    check_cabinet(
        |cabinet| cabinet.accepted = vec![accepted("a", &"b".repeat(601))],
        "cabinets[0].accepted[0].message: 601 characters, but it has 1 to 600",
    );
}

#[test]
fn keys_leave_room_for_the_next() {
    const TOO_HIGH: Key = Key(4_000_000_001);
    let at_most = "4000000001, but a key is at most 4000000000";
    check(
        |job| job.cabinets[0].key = TOO_HIGH,
        &format!("cabinets[0].key: {at_most}"),
    );
    check(
        |job| bay_of(job, 11).plates[0].key = TOO_HIGH,
        &format!("cabinets[0].opening.side_by_side.first.opening.bay.plates[0].key: {at_most}"),
    );
    check(
        |job| bay_of(job, 11).runners[0].serves = Some(TOO_HIGH),
        &format!("cabinets[0].opening.side_by_side.first.opening.bay.runners[0].serves: {at_most}"),
    );
    check(
        |job| {
            job.bored = vec![bored_hole(LEFT_INSIDE)];
            job.bored[0].copy = TOO_HIGH;
        },
        &format!("bored[0].copy: {at_most}"),
    );
}

#[test]
fn what_is_gone_may_still_be_named() {
    let mut job = full();
    job.bored = vec![bored_hole(LEFT_INSIDE)];
    (job.bored[0].cabinet, job.bored[0].copy) = (Key(77), Key(78));
    bay_of(&mut job, 11).plates[0].serves = Some(Key(79));
    job.left_at = Some(LeftAt {
        cabinet: Key(80),
        face: LEFT_INSIDE,
    });
    assert_eq!(job.validate(), Ok(()));
}
