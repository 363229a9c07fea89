//! The mass and the closed storage of a unit.

use crate::cards::CardId;
use crate::job::{Division, Front, FrontKind, Hand, HolePlace, Job, Key, Label, Runner, Spacers};
use crate::layout::Layout;
use crate::measure::Length;
use crate::strength::ScopeUnit;

/// The plain cabinet, 600 x 704 x 560 of 18 board and so 564 x 668 x 540 clear, with one front over its opening.
fn closed(kind: FrontKind) -> Job {
    let mut job = Job::plain(Label::new("glaze store").unwrap());
    let name = Label::new("F1").unwrap();
    job.cabinets[0].opening.fronts = [Front::plain(Key(20), name, kind)].into();
    job
}

fn unit(job: &Job) -> ScopeUnit {
    let cabinet = &job.cabinets[0];
    super::parts(job).scope_unit(cabinet, &Layout::of(cabinet, job), job)
}

#[track_caller]
fn close(found: f64, expected: f64) {
    assert!((found - expected).abs() < 0.001, "{found}, {expected}");
}

// 5.64 * 6.68 * 5.40 dm = 203.446 dm3; two sides of 4.6126 kg, a bottom of 3.5634, two stretchers of 0.6599, a door of 5.9638.
#[test]
fn what_is_behind_a_door_counts_half() {
    let found = unit(&closed(FrontKind::Door(Hand::Left)));
    assert_eq!(found.height, Length::from_mm(704));
    close(found.drawers_dm3, 0.0);
    close(found.behind_doors_dm3, 203.446);
    close(found.storage_dm3(), 101.723);
    close(found.mass_kg, 20.0723);
    assert_eq!(unit(&closed(FrontKind::Pair)).drawers_dm3, 0.0);
    close(unit(&closed(FrontKind::False)).storage_dm3(), 0.0);
}

// Both leaves of a pair and the gap of 3 between them: 561 of 564 wide.
#[test]
fn a_pair_covers_all_but_its_gap() {
    let found = unit(&closed(FrontKind::Pair));
    close(found.behind_doors_dm3, 203.446 * 561.0 / 564.0);
}

/// The same with runners of 500 on a hole.
fn on_runners(kind: FrontKind) -> Job {
    let mut job = closed(kind);
    let Division::Bay(bay) = &mut job.cabinets[0].opening.division else {
        panic!("it is one bay")
    };
    bay.runners = [Runner {
        key: Key(3),
        hole: HolePlace::foot(4),
        card: CardId::new("runner-under").unwrap(),
        length: Length::from_mm(500),
        set_back: 0,
        spacers: Spacers::default(),
        serves: None,
    }]
    .into();
    job
}

// Inside: 564 - 42 = 522 wide, 490 - 2 * 15 = 460 long, 13 of its height under its bottom.
#[test]
fn a_drawer_counts_full_by_its_box_and_without_one_by_its_room() {
    close(unit(&closed(FrontKind::Drawer)).drawers_dm3, 203.446);
    let job = on_runners(FrontKind::Drawer);
    let high = super::parts(&job).boxes[0].height - Length::from_mm(13);
    let found = unit(&job);
    close(found.drawers_dm3, 5.22 * 4.60 * high.mm() / 100.0);
    close(found.behind_doors_dm3, 0.0);
}

#[test]
fn a_drawer_behind_a_door_is_counted_once() {
    let mut job = on_runners(FrontKind::Door(Hand::Left));
    let name = Label::new("D1").unwrap();
    let inner = Front::plain(Key(21), name, FrontKind::Inner);
    job.cabinets[0].opening.fronts.push(inner);
    let found = unit(&job);
    assert!(found.drawers_dm3 > 10.0, "{found:?}");
    close(found.drawers_dm3 + found.behind_doors_dm3, 203.446);
}
