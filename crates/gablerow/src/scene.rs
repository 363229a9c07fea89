//! What the job comes to at one place: computed when it is wanted, never kept.

mod front;
mod front_names;
mod owner;

pub use front::{FrontScene, FrontSpot, Thing, Toward, front_spot};
pub use owner::owner;

use gablerow_core::check::{self, Finding};
use gablerow_core::drawing::{Dot, FaceDrawing, RowLine};
use gablerow_core::job::{Cabinet, FaceId, Hand, Job, Key};
use gablerow_core::layout::{BayLayout, Layout};
use gablerow_core::measure::Length;
use gablerow_core::mend::{self, Barred};

/// Where a person is: on a hole of a row of a face of a cabinet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Spot {
    /// The cabinet.
    pub cabinet: Key,
    /// Its face.
    pub face: FaceId,
    /// The row, from the carcass front.
    pub row: Length,
    /// The hole number.
    pub hole: i16,
}

/// One cabinet laid out and checked, and one of its faces drawn.
pub struct Scene<'a> {
    /// The cabinet.
    pub cabinet: &'a Cabinet,
    /// What it comes to.
    pub layout: Layout,
    /// What the checks say of it.
    pub findings: Vec<Finding>,
    /// The face of the spot.
    pub drawing: FaceDrawing,
    /// The holes of the bays along the face on which a pin would be wrong; none until they are asked for.
    barred: Vec<Barred>,
    /// The hole number of the spot.
    hole: i16,
}

impl<'a> Scene<'a> {
    /// The scene at a spot; `None` when the job has no such place.
    #[must_use]
    pub fn at(job: &'a Job, spot: &Spot) -> Option<Self> {
        let cabinet = job.cabinet(spot.cabinet)?;
        let layout = Layout::of(cabinet, job);
        let findings = check::of_cabinet(job, cabinet, &layout);
        let drawing = FaceDrawing::of(&layout, spot.face, &findings)?;
        Some(Self {
            cabinet,
            layout,
            findings,
            drawing,
            barred: Vec::new(),
            hole: spot.hole,
        })
    }

    /// The same with the holes that are barred to pins, as they are drawn: of every bay along the face, on both of its walls.
    #[must_use]
    pub fn with_barred(mut self, job: &Job) -> Self {
        let bays = self.layout.bays_at(self.drawing.face);
        let of =
            |(bay, _): (&BayLayout, Hand)| mend::barred(job, self.cabinet, &self.layout, bay.key);
        self.barred = bays.flat_map(of).collect();
        self.drawing.barred = self.barred_on(self.drawing.face);
        self
    }

    /// The barred holes of one face: from its front edge to the row, and the hole number.
    fn barred_on(&self, face: FaceId) -> Vec<(Length, i16)> {
        let upright = self.layout.upright(face.panel);
        let front = upright.map_or(Length::ZERO, |upright| upright.front.total());
        let here = self.barred.iter().filter(|it| it.face == face);
        here.map(|it| (it.row - front, it.hole)).collect()
    }

    /// Why a pin on the hole of the spot would be wrong, as the checks would say it; `None` when it would not, or the hole is
    /// in no open row.
    #[must_use]
    pub fn why_barred(&self, job: &Job, spot: &Spot) -> Option<Finding> {
        let row = self.row(spot.row)?.from_carcass.total();
        let (bay, _) = self.bay_at(spot.hole)?;
        mend::why_barred(job, self.cabinet, bay.key, (spot.face, row, spot.hole))
    }

    /// The mate of the face, drawn.
    #[must_use]
    pub fn mate(&self) -> Option<FaceDrawing> {
        let face = self.mate_face()?;
        let drawing = FaceDrawing::of(&self.layout, face, &self.findings)?;
        Some(FaceDrawing {
            barred: self.barred_on(face),
            ..drawing
        })
    }

    /// The mate of the face where the person stands.
    #[must_use]
    pub fn mate_face(&self) -> Option<FaceId> {
        self.layout
            .mate(self.drawing.face, self.layout.height(self.hole))
    }

    /// The bay that sees the face at the height of a hole, and on which hand it has the face.
    #[must_use]
    pub fn bay_at(&self, hole: i16) -> Option<(&BayLayout, Hand)> {
        self.layout
            .bay_at(self.drawing.face, self.layout.height(hole))
    }

    /// The row of the spot, or the nearest one there is.
    #[must_use]
    pub fn row(&self, x: Length) -> Option<&RowLine> {
        self.drawing
            .rows
            .iter()
            .min_by_key(|row| (row.from_carcass.total() - x).abs())
    }
}

impl Scene<'_> {
    /// The hole a person stands on, if there is one.
    #[must_use]
    pub fn dot(&self, spot: &Spot) -> Option<&Dot> {
        self.drawing.dot_at(self.row(spot.row)?.x, spot.hole)
    }

    /// From the front edge of the panel to the line a person stands on; on a face without any, as far back as one came from.
    #[must_use]
    pub fn from_front(&self, spot: &Spot) -> Length {
        let upright = self.layout.upright(self.drawing.face.panel);
        let front = upright.map_or(Length::ZERO, |upright| upright.front.total());
        self.row(spot.row).map_or(spot.row - front, |row| row.x)
    }
}

/// Every face that a bay sees, cabinet by cabinet, in the order a person steps through them.
#[must_use]
pub fn faces(job: &Job) -> Vec<(Key, FaceId)> {
    let of = |cabinet: &Cabinet| {
        let layout = Layout::of(cabinet, job);
        layout
            .inner_faces()
            .map(|face| (cabinet.key, face))
            .collect::<Vec<_>>()
    };
    job.cabinets.iter().flat_map(of).collect()
}

impl Spot {
    /// The place a cabinet opens at: the front row of its first face, at the third hole, where the lowest hinge may sit.
    #[must_use]
    pub fn first_of(job: &Job, cabinet: Key) -> Self {
        let spot = Self {
            cabinet,
            face: FaceId::inside(Hand::Left),
            row: job.shop.setback_front,
            hole: 3,
        };
        spot.settled(job)
    }

    /// The nearest place the job has: cabinets, faces, rows and holes come and go under the person who stands on them.
    #[must_use]
    pub fn settled(self, job: &Job) -> Self {
        let cabinet = job.cabinet(self.cabinet).or(job.cabinets.first());
        let Some(cabinet) = cabinet else { return self };
        let mut spot = Self {
            cabinet: cabinet.key,
            ..self
        };
        let layout = Layout::of(cabinet, job);
        if layout.face(spot.face).is_none() {
            spot.face = FaceId::inside(Hand::Left);
        }
        if let Some(upright) = layout.upright(spot.face.panel) {
            spot.hole = spot.hole.min(upright.holes.1).max(upright.holes.0);
        }
        if let Some(scene) = Scene::at(job, &spot) {
            spot.row = scene
                .row(spot.row)
                .map_or(spot.row, |row| row.from_carcass.total());
        }
        spot
    }
}
