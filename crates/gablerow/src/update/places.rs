//! Proof of where a person may stand, and where what they set goes: beside openings above each other and on partitions.

use gablerow_core::job::{FaceId, Hand, Key as Name, PanelId};
use gablerow_core::layout::Layout;
use gablerow_core::measure::Length;

use super::tests::{app, press_all};
use super::*;
use crate::job_file;
use crate::scene::Scene;

/// A bay below, and two with a partition between them above a fixed shelf at hole 14.
fn t_junction() -> App {
    let text = include_bytes!("../../../../tests/jobs/t_junction.json");
    app(job_file::read(text).unwrap())
}

fn on(app: &mut App, panel: PanelId, toward: Hand, hole: i16) {
    let face = FaceId { panel, toward };
    app.spot = Spot {
        face,
        hole,
        ..app.spot
    }
    .settled(&app.desk.job);
}

const PARTITION: PanelId = PanelId::Partition(Name(21));
const LEFT: PanelId = PanelId::Side(Hand::Left);

fn typed(text: &str) -> Vec<Key> {
    text.chars().map(Key::Char).collect()
}

/// The holes of each zone of a bay.
fn zones(app: &App, bay: u32) -> Vec<(i16, i16)> {
    let cabinet = &app.desk.job.cabinets[0];
    let last = Layout::last_hole(cabinet, &app.desk.job.shop);
    let bay = cabinet.opening.bay(Name(bay)).unwrap();
    bay.zones.iter().map(|zone| zone.numbers(last)).collect()
}

#[test]
fn the_person_stays_on_the_holes_of_the_panel() {
    let mut app = t_junction();
    on(&mut app, PARTITION, Hand::Left, 20);
    press_all(&mut app, &typed("f"));
    let layout = Layout::of(&app.desk.job.cabinets[0], &app.desk.job);
    let partition = layout.upright(PARTITION).unwrap();
    // It stands on the shelf at 441.1; hole 15 is at 464.0, and hole 14 at 432.0 is below its foot.
    assert_eq!(partition.foot.total(), Length::from_um(441_100));
    assert_eq!((partition.holes, app.spot.hole), ((15, 38), 15));
    assert_eq!(partition.first_hole(layout.grid), Length::from_um(22_900));
    press_all(&mut app, &typed("t"));
    assert_eq!(app.spot.hole, 38);
}

#[test]
fn a_centred_zone_stays_in_its_bay() {
    let mut app = t_junction();
    on(&mut app, LEFT, Hand::Right, 6);
    press_all(&mut app, &typed("5c"));
    // The bay below has holes 2 to 13 between 18.2 and 422.9; its own zone 5-8 is taken up.
    assert_eq!(
        (zones(&app, 2), zones(&app, 4)),
        (vec![(5, 9)], vec![(20, 26)])
    );
}

#[test]
fn a_hole_outside_every_bay_goes_to_the_nearest() {
    let mut app = t_junction();
    on(&mut app, LEFT, Hand::Right, 39);
    press_all(&mut app, &typed("s"));
    assert_eq!(
        (zones(&app, 2), zones(&app, 4)),
        (vec![(5, 8)], vec![(20, 26), (39, 39)])
    );
}

#[test]
fn the_mate_is_that_of_the_bay_one_stands_in() {
    let mut app = t_junction();
    let mate = |app: &App| {
        Scene::at(&app.desk.job, &app.spot)
            .unwrap()
            .mate_face()
            .unwrap()
    };
    on(&mut app, LEFT, Hand::Right, 5);
    assert_eq!(mate(&app), FaceId::inside(Hand::Right));
    on(&mut app, LEFT, Hand::Right, 20);
    assert_eq!(
        mate(&app),
        FaceId {
            panel: PARTITION,
            toward: Hand::Left
        }
    );
}

#[test]
fn a_trouble_back_to_back_is_drawn_on_both_faces() {
    let mut app = t_junction();
    for toward in [Hand::Left, Hand::Right] {
        on(&mut app, PARTITION, toward, 20);
        let scene = Scene::at(&app.desk.job, &app.spot).unwrap();
        assert!(scene.drawing.dots.iter().all(|dot| dot.trouble.is_some()));
    }
}

#[test]
fn again_sets_what_was_set_last_and_not_what_was_refused() {
    let mut app = t_junction();
    on(&mut app, LEFT, Hand::Right, 6);
    press_all(&mut app, &typed("h"));
    press_all(&mut app, &typed("5c"));
    on(&mut app, LEFT, Hand::Right, 30);
    press_all(&mut app, &typed("a"));
    assert_eq!(
        zones(&app, 4).len(),
        1,
        "the centred zone of this bay, which takes up its own"
    );
    let plates = app.desk.job.cabinets[0]
        .opening
        .bay(Name(2))
        .unwrap()
        .plates
        .len();
    assert_eq!(plates, 1);
}
