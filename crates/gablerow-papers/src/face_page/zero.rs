//! The zero corner of a machine's bed and its axes, at the corner of the panel that lies there.

use alloc::format;
use alloc::string::String;

use gablerow_core::cards::Bed;
use gablerow_core::job::Edge;
use gablerow_core::measure::Length;

use super::Frame;
use crate::DrawnFace;
use crate::bore_table::edge_at_zero;
use crate::page::TextEnd;
use crate::pen::{Pen, SMALL, THIN};

/// How far an arrow stands off the panel, and how long it is at most, in mm of paper.
const OFF: f64 = 2.0;
const LONG: f64 = 9.0;
/// From an upright arrow to the middle of its letter.
const LETTER: f64 = 1.8;
/// Half as wide as the point of an arrow is, and as the square at the corner.
const POINT: f64 = 0.9;

impl DrawnFace<'_> {
    /// The sentence that says where zero is and what the axes start from.
    pub(super) fn zero_words(&self) -> Option<String> {
        let bed = self.bed?;
        let edge = edge_at_zero(self.drawing.face, bed);
        let (along_grows, across_grows) = bed.grows();
        let [along, across] = axes(bed);
        let below = |grows: bool| if grows { "" } else { ", counted below zero" };
        Some(format!(
            "On the machine: FOOT and {} edge at the zero corner, {}. {along} from the foot{}; {across} from the {} edge{}.",
            edge.word().to_uppercase(),
            bed.zero.words(),
            below(along_grows),
            edge.word(),
            below(across_grows),
        ))
    }

    pub(super) fn draw_zero(&self, pen: &mut Pen, frame: &Frame) {
        let Some(bed) = self.bed else { return };
        let x = match edge_at_zero(self.drawing.face, bed) {
            Edge::Front => frame.across(self, Length::ZERO),
            Edge::Back => frame.across(self, self.drawing.depth),
        };
        let outward = if x > frame.left { 1.0 } else { -1.0 };
        let (along_grows, across_grows) = bed.grows();
        let [along, across] = axes(bed);
        let corner = (x, frame.foot);
        pen.block(
            (corner.0 - POINT, corner.1 - POINT),
            (corner.0 + POINT, corner.1 + POINT),
            None,
            Some(0.0),
        );
        let foot = (x + OFF * outward, frame.foot);
        let head = (foot.0, foot.1 + LONG.min(frame.head - frame.foot));
        draw_arrow(pen, foot, head, along_grows);
        // Outside of the arrow, where it is clear of the words of both ends however short the panel is.
        let middle = (foot.0 + LETTER * outward, (foot.1 + head.1) / 2.0);
        pen.beside(middle, TextEnd::Middle, SMALL, along);
        let long = LONG.min(frame.right - frame.left);
        let edge = (x, frame.foot - OFF);
        let inward = (x - long * outward, edge.1);
        draw_arrow(pen, edge, inward, across_grows);
        // Below the arrow, where it is clear of the words of both edges however narrow the panel is.
        let middle = ((edge.0 + inward.0) / 2.0, edge.1 - SMALL);
        pen.text(middle, TextEnd::Middle, SMALL, across);
    }
}

/// What the axes are called: the one from foot to head, the one from edge to edge.
fn axes(bed: &Bed) -> [&'static str; 2] {
    match bed.is_x_along() {
        true => ["x", "y"],
        false => ["y", "x"],
    }
}

/// A level or an upright arrow, with its point at the far end when it grows that way.
fn draw_arrow(pen: &mut Pen, near: (f64, f64), far: (f64, f64), grows: bool) {
    let (tail, tip) = if grows { (near, far) } else { (far, near) };
    let step = |from: f64, to: f64| match () {
        () if to > from => 1.0,
        () if to < from => -1.0,
        () => 0.0,
    };
    let (across, up) = (step(tail.0, tip.0) * POINT, step(tail.1, tip.1) * POINT);
    pen.way(&[tail, tip], THIN);
    let corners = [
        tip,
        (tip.0 - 2.0 * across - up, tip.1 - 2.0 * up - across),
        (tip.0 - 2.0 * across + up, tip.1 - 2.0 * up + across),
    ];
    pen.shape(&corners, None, Some(0.0));
}
