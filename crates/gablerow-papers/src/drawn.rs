//! A cabinet and a face with all that is written on their drawings.

use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

use gablerow_core::cards::Bed;
use gablerow_core::drawing::FaceDrawing;
use gablerow_core::job::{Cabinet, Edge, Job};
use gablerow_core::layout::Layout;
use gablerow_core::measure::{Length, Unit};

use crate::pen::{self, BODY, Words};

/// How much of a sheet the sentences that overrule a stop may take, in mm.
const REMARKS_MOST: f64 = 45.0;

/// A cabinet, and what stands on each of its drawings.
#[derive(Clone, Copy, Debug)]
pub struct DrawnCabinet<'a> {
    /// Its job.
    pub job: &'a Job,
    /// The cabinet: its mirror image for copies that are mirrored.
    pub cabinet: &'a Cabinet,
    /// What that comes to.
    pub layout: &'a Layout,
    /// Which of its copies are drawn: `copies 1 and 3`; nothing when all of them are.
    pub copies: &'a str,
    /// The cabinet's revision and word; nothing before there is one.
    pub stamp: &'a str,
    /// What else has to stand on it: the sentences that overrule a stop.
    pub remarks: &'a [String],
}

/// One of its faces, drawn.
#[derive(Clone, Copy, Debug)]
pub struct DrawnFace<'a> {
    /// Its cabinet.
    pub of: DrawnCabinet<'a>,
    /// The face.
    pub drawing: &'a FaceDrawing,
    /// The machine it is bored on, when its zero corner and axes shall be drawn.
    pub bed: Option<&'a Bed>,
}

impl DrawnCabinet<'_> {
    /// What it is called: `G2`, or `G2, copies 1 and 3`.
    pub(crate) fn name(&self) -> String {
        let gap = if self.copies.is_empty() { "" } else { ", " };
        format!("{}{gap}{}", self.cabinet.name, self.copies)
    }

    /// Its job, and its revision and word: `glaze store. rev 7 OTTER. `
    pub(crate) fn heading(&self) -> String {
        let gap = if self.stamp.is_empty() { "" } else { ". " };
        format!("{}. {}{gap}", self.job.title, self.stamp)
    }

    /// What else has to stand on a drawing, in a room so wide: as many sentences as leave room for the drawing, and how many more
    /// there are.
    pub(crate) fn remarks(&self, width: f64) -> Vec<Words> {
        let mut texts: Vec<Words> = Vec::new();
        let mut height = 0.0;
        for (at, remark) in self.remarks.iter().enumerate() {
            let remark = (BODY, true, remark.clone());
            height += pen::height(&pen::wrapped([&remark], width));
            if height > REMARKS_MOST {
                let more = self.remarks.len() - at;
                let words = format!("And {more} more that are overruled: see the bench sheet.");
                texts.push((BODY, true, words));
                break;
            }
            texts.push(remark);
        }
        texts
    }
}

impl DrawnFace<'_> {
    /// Which face it is: `G2, left side, inside`.
    pub(crate) fn title(&self) -> String {
        format!("{}, {}", self.of.name(), self.drawing.name)
    }

    /// Length, depth and thickness of the panel: `704.0 x 560.0 x 18.0 mm`.
    pub(crate) fn size(&self, unit: Unit) -> String {
        let upright = self.of.layout.upright(self.drawing.face.panel);
        let board = upright.map_or(Length::ZERO, |upright| upright.thickness);
        let show = |length: Length| length.show(unit).to_string();
        let (length, depth) = (show(self.drawing.length), show(self.drawing.depth));
        format!("{length} x {depth} x {} {}", show(board), unit.word())
    }

    /// The board it is cut from, by its card's title.
    pub(crate) fn board(&self) -> String {
        let card = self.of.cabinet.board_of(self.drawing.face.panel);
        let title = card.and_then(|id| self.of.job.cards.board(id));
        title.map_or("no card".into(), |card| card.title.to_string())
    }

    /// How the panel lies: this face up, either edge toward you, and the hand the foot is on then.
    pub(crate) fn lie(&self) -> String {
        let foot = |edge| self.drawing.face.foot_to(edge).word().to_uppercase();
        format!(
            "This face up. FRONT toward you: foot to your {}. BACK toward you: foot to your {}.",
            foot(Edge::Front),
            foot(Edge::Back)
        )
    }
}
