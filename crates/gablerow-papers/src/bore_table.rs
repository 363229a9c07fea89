//! The hole table of a boring machine: every hole from the zero corner of the machine's bed, on its axes.
//!
//! ```text
//!   far   +--------------------------+     The panel lies face up in the zero corner, here the near left one, its foot
//!         | foot                head |     against the stop there: whatever the length of a panel is, its heights count
//!         |   o o o                  |     from its foot, so that two that face each other meet.
//!   near  0--> x --------------------+     Which edge is then at the fence is geometry, and a column says it.
//! ```

use alloc::string::ToString;
use alloc::vec::Vec;

use gablerow_core::cards::Bed;
use gablerow_core::job::{Cabinet, Edge, FaceId, Hand, Job};
use gablerow_core::measure::Length;

use crate::hole_table::uses;
use crate::table::columns;
use crate::{HoleRecord, Value};

/// One hole of one copy of a cabinet, where a machine bores it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct BoreRecord<'a> {
    /// The hole.
    pub hole: HoleRecord<'a>,
    /// The edge of the panel that lies at the zero corner; its foot does too.
    pub edge: Edge,
    /// On the x axis of the machine.
    pub x: Length,
    /// On its y axis.
    pub y: Length,
}

impl<'a> BoreRecord<'a> {
    /// Every hole of every copy of a cabinet, in the order of [`HoleRecord::of_cabinet`].
    #[must_use]
    pub(crate) fn of_cabinet(cabinet: &'a Cabinet, job: &Job, bed: &Bed) -> Vec<Self> {
        let holes = HoleRecord::of_cabinet(cabinet, job).into_iter();
        holes.map(|hole| Self::of(hole, bed)).collect()
    }

    fn of(hole: HoleRecord<'a>, bed: &Bed) -> Self {
        let edge = edge_at_zero(hole.face, bed);
        let across = match edge {
            Edge::Front => hole.from_front,
            Edge::Back => hole.from_back,
        };
        let (x, y) = bed.place(hole.from_foot, across);
        Self { hole, edge, x, y }
    }
}

/// The edge of a panel that lies at the zero corner of a bed, with its foot there and this face up.
pub(crate) fn edge_at_zero(face: FaceId, bed: &Bed) -> Edge {
    let hand = match bed.zero.is_left() {
        true => Hand::Left,
        false => Hand::Right,
    };
    // The front edge is toward you, and near, when the foot is on that hand then.
    match (face.foot_to(Edge::Front) == hand) == bed.zero.is_near() {
        true => Edge::Front,
        false => Edge::Back,
    }
}

columns! {
    BoreRecord<'_>;
    cabinet "what the cabinet is called"
        = |record| Value::Name(record.hole.cabinet.as_str());
    copy "what the copy is called"
        = |record| Value::Name(record.hole.copy.as_str());
    panel "the upright, as the copy has it"
        = |record| Value::Word(record.hole.name.panel.to_string().into());
    face "the face that lies up"
        = |record| Value::Word(record.hole.name.word.into());
    length_mm "from the panel's foot to its head"
        = |record| Value::Length(record.hole.from_foot + record.hole.from_head);
    width_mm "from its front edge to its back edge"
        = |record| Value::Length(record.hole.from_front + record.hole.from_back);
    edge_at_zero "the edge that lies at the zero corner, as the foot does"
        = |record| Value::Word(record.edge.word().into());
    x_mm "on the machine's x axis, to the centre"
        = |record| Value::Length(record.x);
    y_mm "on the machine's y axis, to the centre"
        = |record| Value::Length(record.y);
    diameter_mm "how wide"
        = |record| Value::Length(record.hole.hole.diameter);
    depth_mm "how deep; nothing for through"
        = |record| record.hole.hole.depth.map_or(Value::Nothing, Value::Length);
    through "whether it goes through"
        = |record| Value::Flag(record.hole.hole.depth.is_none());
    uses "what it is for"
        = |record| Value::Words(uses(&record.hole.hole));
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::csv_table;
    use crate::fixture::{any_bed, any_job, job, mm};
    use gablerow_core::cards::{Across, Along, Corner};
    use gablerow_core::job::Label;
    use proptest::prelude::*;

    /// Where a hole is on a bed, as it is turned there by hand: to the right and away from the near left corner of the panel.
    ///
    /// Seen with its foot down, a face that looks to the right has its front edge on the left. A quarter turn to the right lays
    /// its foot to the left; the edge that was on the left is then far. A quarter turn to the left is the other way.
    fn laid(hole: &HoleRecord, foot_is_left: bool) -> (Length, Length) {
        let from_left = match hole.face.toward {
            Hand::Right => hole.from_front,
            Hand::Left => hole.from_back,
        };
        let from_right = hole.from_front + hole.from_back - from_left;
        match foot_is_left {
            true => (hole.from_foot, from_right),
            false => (hole.from_head, from_left),
        }
    }

    proptest! {
        #[test]
        fn every_hole_is_where_the_panel_has_it_when_it_lies_in_the_corner(job in any_job(), bed in any_bed()) {
            let csv = csv_table(&BoreRecord::of_cabinet(&job.cabinets[0], &job, &bed));
            let mut reader = ::csv::Reader::from_reader(csv.as_bytes());
            let names: Vec<String> = reader.headers().unwrap().iter().map(Into::into).collect();
            let rows: Vec<::csv::StringRecord> = reader.records().map(Result::unwrap).collect();
            let holes = HoleRecord::of_cabinet(&job.cabinets[0], &job);
            prop_assert_eq!(rows.len(), holes.len());
            for (row, hole) in rows.iter().zip(&holes) {
                let number = |name: &str| -> f64 {
                    let at = names.iter().position(|it| it == name).unwrap();
                    row[at].parse().unwrap()
                };
                let foot_is_left = matches!(bed.zero, Corner::NearLeft | Corner::FarLeft);
                let (right, away) = laid(hole, foot_is_left);
                let (length, width) = (hole.from_foot + hole.from_head, hole.from_front + hole.from_back);
                // From the zero corner to the right and away.
                let right = if foot_is_left { right } else { right - length };
                let is_near = matches!(bed.zero, Corner::NearLeft | Corner::NearRight);
                let away = if is_near { away } else { away - width };
                let along = if matches!(bed.along, Along::XRight | Along::YRight) { right } else { -right };
                let across = if bed.across == Across::Away { away } else { -away };
                let is_x = matches!(bed.along, Along::XRight | Along::XLeft);
                let (x, y) = if is_x { (along, across) } else { (across, along) };
                prop_assert_eq!((number("x_mm"), number("y_mm")), (x.mm(), y.mm()));
                prop_assert_eq!((number("length_mm"), number("width_mm")), (length.mm(), width.mm()));
                prop_assert_eq!(number("diameter_mm"), hole.hole.diameter.mm());
            }
        }
    }

    // Hole 9 of a left side is 272 from its foot; with the foot to the left its back edge is near, 523 from the front row.
    #[test]
    fn a_row_says_panel_place_and_bore() {
        let mut job = job();
        job.cabinets[0].name = Label::new("=G2").unwrap();
        let csv = csv_table(&BoreRecord::of_cabinet(
            &job.cabinets[0],
            &job,
            &Bed::default(),
        ));
        let lines: Vec<&str> = csv.split("\r\n").collect();
        assert_eq!(
            lines[..2],
            [
                "cabinet,copy,panel,face,length_mm,width_mm,edge_at_zero,x_mm,y_mm,diameter_mm,depth_mm,through,uses",
                "'=G2,1,left side,inside,704,560,back,272,523,5,12,false,pin",
            ]
        );
    }

    #[test]
    fn sides_that_face_each_other_have_the_same_heights_and_the_other_edge_at_zero() {
        let job = job();
        let records = BoreRecord::of_cabinet(&job.cabinets[0], &job, &Bed::default());
        let of = |side| {
            let on = records
                .iter()
                .filter(move |it| it.hole.face == FaceId::inside(side));
            on.map(|it| (it.edge, it.x)).collect::<Vec<_>>()
        };
        let heights = [272, 304, 272, 304].map(mm);
        assert_eq!(of(Hand::Left), heights.map(|x| (Edge::Back, x)));
        assert_eq!(of(Hand::Right), heights.map(|x| (Edge::Front, x)));
    }
}
