//! One plain cabinet to lay out and make parts of, by the same ways the program goes.

use gablerow_core::job::{Bay, Division, Front, FrontHeight, FrontKind, Job, Key, Label};
use gablerow_core::layout::Layout;
use gablerow_core::measure::Length;
use gablerow_core::parts::Parts;

pub(crate) fn mm(mm: i32) -> Length {
    Length::from_mm(mm)
}

pub(crate) fn um(um: i32) -> Length {
    Length::from_um(um)
}

/// A length that a page prints in mm, of at most three decimals.
pub(crate) fn printed(mm: f64) -> Length {
    let um = (mm * 1_000.0).round();
    assert!(
        (mm * 1_000.0 - um).abs() < 1e-6,
        "{mm} is finer than a page prints"
    );
    // A few metres in whole micrometres.
    #[allow(clippy::cast_possible_truncation)]
    Length::from_um(um as i32)
}

/// A job of one plain cabinet of the starter cards, changed.
pub(crate) fn job(change: impl FnOnce(&mut Job)) -> Job {
    let mut job = Job::plain(Label::new("glaze store").unwrap());
    change(&mut job);
    job
}

/// The one bay of such a job.
pub(crate) fn bay(job: &mut Job) -> &mut Bay {
    match &mut job.cabinets[0].opening.division {
        Division::Bay(bay) => bay,
        _ => panic!("the cabinet is divided"),
    }
}

/// Fronts over its opening, from the foot up: drawers of so many modules.
pub(crate) fn fronts(modules: &[u16]) -> Vec<Front> {
    let front = |(at, &modules): (usize, &u16)| {
        let key = Key(u32::try_from(at).unwrap() + 20);
        let name = Label::new(&format!("D{at}")).unwrap();
        let mut front = Front::plain(key, name, FrontKind::Drawer);
        front.height = FrontHeight::Modules(modules);
        front
    };
    modules.iter().enumerate().map(front).collect()
}

pub(crate) fn layout(job: &Job) -> Layout {
    Layout::of(&job.cabinets[0], job)
}

pub(crate) fn parts(job: &Job) -> Parts {
    Parts::of(&job.cabinets[0], &layout(job), job)
}
