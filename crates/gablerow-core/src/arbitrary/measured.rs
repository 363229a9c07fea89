//! Faces that were measured at the bench, rightly or with holes counted wrong.

use proptest::prelude::*;

use super::{hand, job};
use crate::bench::{Check, plan};
use crate::job::{FaceId, Job, Key, Measured, Span};
use crate::measure::Length;
use crate::measure::range::PANEL_POSITION;

/// Records every distance the plan has measured, on each face off by so much; faces of which that is `None` are not measured, nor
/// is what no job can hold.
pub(crate) fn measure_faces(job: &mut Job, off: impl Fn(FaceId) -> Option<Length>) {
    let cabinets: Vec<Key> = job.cabinets.iter().map(|it| it.key).collect();
    let plan = plan(job, &cabinets, &job.shop.bench.times);
    let is_held = |length| PANEL_POSITION.check(length).is_ok();
    for set_up in &plan.set_ups {
        let Some(off) = off(set_up.face) else {
            continue;
        };
        let along = |check: &Check| matches!(check.span, Span::Holes { .. });
        let is_along = set_up.checks.iter().any(along);
        let measured = set_up.checks.iter().map(|check| Measured {
            cabinet: set_up.cabinet,
            copy: set_up.copy,
            face: set_up.face,
            span: check.span,
            want: check.want,
            // What is wrong within a row begins where it should.
            is: match check.span {
                Span::ToEnd { .. } if is_along => check.want,
                _ => check.want + off,
            },
            taken_back: false,
        });
        let lengths = |it: &Measured| it.span.rows().chain([it.want, it.is]);
        let held = measured.filter(|it| lengths(it).all(is_held));
        job.measured.extend(held);
    }
}

/// Any job of which all was measured that lies toward one hand, so many holes off, and a little besides.
pub(crate) fn measured_job() -> impl Strategy<Value = Job> {
    (job(), -2..=2_i32, -25..=25_i32, hand()).prop_map(|(mut job, holes, tenths, hand)| {
        let off = Length::PITCH * holes + Length::from_um(100) * tenths;
        measure_faces(&mut job, |face| (face.toward == hand).then_some(off));
        job
    })
}
