//! Every hole of a job, copy by copy, as it is bored.

use alloc::vec::Vec;

use gablerow_core::job::{Cabinet, FaceId, FaceName, Job, Label};
use gablerow_core::layout::{Hole, Layout};
use gablerow_core::measure::Length;

/// One hole of one copy of a cabinet, with its distances to the edges of its own panel.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct HoleRecord<'a> {
    /// What the cabinet is called.
    pub cabinet: &'a Label,
    /// What the copy is called.
    pub copy: &'a Label,
    /// Whether the cabinet has several copies.
    pub is_one_of_many: bool,
    /// The face it is bored from, as the copy has it: a mirrored one has left and right exchanged.
    pub face: FaceId,
    /// What that face is called on the copy: partitions are counted from its left.
    pub name: FaceName,
    /// The hole itself, in cabinet coordinates.
    pub hole: Hole,
    /// From the panel's front edge to the centre.
    pub from_front: Length,
    /// From the panel's back edge to the centre.
    pub from_back: Length,
    /// From the panel's foot to the centre.
    pub from_foot: Length,
    /// From the panel's head to the centre.
    pub from_head: Length,
}

impl<'a> HoleRecord<'a> {
    /// Every hole of every copy of a job: cabinets and copies as they are listed, uprights from left to right, left face
    /// before right face, rows from the front, holes from the foot up.
    #[must_use]
    pub fn of_job(job: &'a Job) -> Vec<Self> {
        job.cabinets
            .iter()
            .flat_map(|cabinet| Self::of_cabinet(cabinet, job))
            .collect()
    }

    /// Every hole of every copy of one cabinet of a job, in the same order.
    #[must_use]
    pub fn of_cabinet(cabinet: &'a Cabinet, job: &Job) -> Vec<Self> {
        let plain = Layout::of(cabinet, job);
        let is_mirrored = cabinet.copies.iter().any(|copy| copy.mirrored);
        let mirror = is_mirrored.then(|| Layout::of(&cabinet.mirrored(), job));
        let mut records = Vec::new();
        for copy in &cabinet.copies {
            let layout = mirror.as_ref().filter(|_| copy.mirrored).unwrap_or(&plain);
            for upright in &layout.uprights {
                let holes = upright.bored(layout).into_iter();
                let holes =
                    holes.flat_map(|(face, holes)| holes.into_iter().map(move |it| (face, it)));
                records.extend(holes.map(|(face, hole)| Self {
                    cabinet: &cabinet.name,
                    copy: &copy.name,
                    is_one_of_many: cabinet.copies.len() > 1,
                    face,
                    name: layout.names.face(face),
                    from_front: hole.x - upright.front.total(),
                    from_back: upright.back.total() - hole.x,
                    from_foot: hole.z - upright.foot.total(),
                    from_head: upright.head.total() - hole.z,
                    hole,
                }));
            }
        }
        records
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fixture::{build_another, job, mm, two_bays};
    use gablerow_core::job::{Depth, Hand, Key, PanelId};
    use gablerow_core::layout::Use;

    #[test]
    fn distances_are_to_the_edges_of_the_panel_itself() {
        let job = two_bays(Depth::Shop);
        let records = HoleRecord::of_job(&job);
        let panel = PanelId::Partition(Key(9));
        let record = records
            .iter()
            .find(|record| record.face.panel == panel)
            .unwrap();
        // The partition stands on an 18 bottom: hole 9 is 16 + 8 * 32 = 272 above the carcass underside, 254 above the foot.
        assert_eq!((record.hole.number, record.from_foot), (Some(9), mm(254)));
        // It is 704 - 18 - 18 = 668 long: 668 - 254 = 414.
        assert_eq!(record.from_head, mm(414));
        assert_eq!(record.from_front, mm(37));
    }

    #[test]
    fn through_hole_asked_for_from_both_faces_is_listed_once() {
        let on_partition = |depth| {
            let job = two_bays(depth);
            let records = HoleRecord::of_job(&job);
            let on = records
                .iter()
                .filter(|record| record.face.panel == PanelId::Partition(Key(9)));
            on.map(|record| (record.face.toward, record.hole.users.len()))
                .collect::<Vec<_>>()
        };
        // Two rows of two holes for each of the two bays.
        assert_eq!(on_partition(Depth::Shop).len(), 8);
        assert_eq!(on_partition(Depth::Through), [(Hand::Left, 2); 4]);
    }

    #[test]
    fn through_hole_from_outside_gives_way_to_the_one_from_within() {
        let mut job = job();
        job.cabinets[0].free_rows.push(crate::fixture::through_row(
            FaceId::inside(Hand::Left).behind(),
        ));
        let records = HoleRecord::of_job(&job);
        let through = records.iter().filter(|record| record.hole.depth.is_none());
        assert!(
            through
                .clone()
                .all(|record| record.face == FaceId::inside(Hand::Left).behind())
        );
        // The row takes pin holes of the same places from within along.
        assert!(
            through.clone().any(|record| record
                .hole
                .users
                .iter()
                .any(|&(use_, _)| use_ == Use::Pin))
        );
    }

    #[test]
    fn mirrored_copy_has_left_and_right_exchanged_and_every_height_kept() {
        let mut job = two_bays(Depth::Shop);
        build_another(&mut job, true);
        let records = HoleRecord::of_job(&job);
        let of = |copy: &'static str| {
            records
                .iter()
                .filter(move |record| record.copy.as_str() == copy)
        };
        assert_eq!(of("1").count(), of("2").count());
        for record in of("1") {
            let face = record.face.mirrored();
            let same = |other: &&HoleRecord| {
                other.face == face
                    && (other.from_front, other.from_foot) == (record.from_front, record.from_foot)
            };
            assert_eq!(of("2").filter(same).count(), 1, "{record:?}");
        }
    }
}
