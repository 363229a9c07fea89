//! Lines of work: of each face the holes at one distance from its edges that one bit bores to one depth.

use alloc::collections::BTreeMap;
use alloc::vec::Vec;

use super::rest::{LENGTH_OFF, Rest};
use super::{Holes, SetUp, Tool};
use crate::job::{BandState, Bit, Cabinet, Copy, Edge, FaceId, Hand, Job, Key, Reference};
use crate::layout::{Hole, Layout, Upright};
use crate::measure::Length;
use crate::sum::Sum;

/// Holes of one face that are bored together; the edge is not chosen yet.
pub(super) struct Line {
    cabinet: Key,
    copy: Key,
    face: FaceId,
    tool: Tool,
    /// Hole numbers from the foot up, or heights above the foot where there is no number.
    holes: Holes,
    /// From the front edge as finished, and from the back edge.
    from: [Length; 2],
    /// The panel on the stop, by its foot and by its head.
    rests: [Rest; 2],
    /// From foot to head, as measured where it was.
    length: Length,
    /// How much longer that is than planned.
    longer: Length,
    /// The edge to work from.
    pub(super) edge: Edge,
}

/// Every line of a cabinet as a copy of it is built.
pub(super) fn lines(built: &Cabinet, copy: &Copy, layout: &Layout, job: &Job) -> Vec<Line> {
    let (cabinet, height) = (built.key, built.size.height);
    let mut lines = Vec::new();
    for upright in &layout.uprights {
        let length = copy.length_of(upright.id).unwrap_or(upright.length());
        let longer = length - upright.length();
        let made_up = if longer.abs() > LENGTH_OFF {
            longer
        } else {
            Length::ZERO
        };
        let rests = [
            Rest::on_foot(upright, layout),
            Rest::on_head(upright, layout, height, made_up),
        ];
        for (face, holes) in upright.bored(layout) {
            let mut groups: BTreeMap<(Tool, Length, bool), Vec<Hole>> = BTreeMap::new();
            for hole in holes {
                let key = (tool(&hole, job), hole.x, hole.number.is_none());
                groups.entry(key).or_default().push(hole);
            }
            lines.extend(groups.into_iter().map(|((tool, x, _), holes)| Line {
                cabinet,
                copy: copy.key,
                face,
                tool,
                holes: together(&holes, upright),
                from: [x - upright.front.total(), upright.back.total() - x],
                rests,
                length,
                longer,
                edge: Edge::Front,
            }));
        }
    }
    lines
}

/// Flat or pointed as the shop bores blind holes; pointed right through. Common practice.
fn tool(hole: &Hole, job: &Job) -> Tool {
    Tool {
        bit: match hole.depth {
            Some(_) => job.shop.bit,
            None => Bit::Pointed,
        },
        diameter: hole.diameter,
        depth: hole.depth,
    }
}

fn together(holes: &[Hole], upright: &Upright) -> Holes {
    let mut numbers: Vec<i16> = holes.iter().filter_map(|hole| hole.number).collect();
    if numbers.is_empty() {
        let mut heights: Vec<Length> = holes.iter().map(|it| it.z - upright.foot.total()).collect();
        heights.sort();
        return Holes::ByTape(heights);
    }
    numbers.sort_unstable();
    let mut runs: Vec<(i16, i16)> = Vec::new();
    for number in numbers {
        match runs.last_mut() {
            Some((_, last)) if *last + 1 == number => *last = number,
            _ => runs.push((number, number)),
        }
    }
    Holes::Runs(runs)
}

impl Line {
    /// How far the row is from an edge when it is bored: the band may still be missing.
    pub(super) fn setting(&self, edge: Edge, job: &Job) -> Sum {
        let band = &job.shop.band;
        match edge {
            Edge::Front if band.on == BandState::AfterBoring => {
                Sum::of("from the front edge as finished", self.from[0])
                    .less("band, not on yet", band.thickness)
                    .plus("pre-mill, still there", band.pre_mill)
            }
            Edge::Front => Sum::of("from the front edge", self.from[0]),
            Edge::Back => Sum::of("from the back edge", self.from[1]),
        }
    }

    /// Whether its panel was cut so much longer or shorter that it had better rest on its foot.
    pub(super) fn is_off(&self) -> bool {
        self.longer.abs() > LENGTH_OFF
    }

    /// The edge that has its foot on the left.
    pub(super) fn edge_with_foot_left(&self) -> Edge {
        match self.face.foot_to(Edge::Front) {
            Hand::Left => Edge::Front,
            Hand::Right => Edge::Back,
        }
    }

    /// Whether its row is in the front half of its panel.
    pub(super) fn is_in_front(&self) -> bool {
        self.from[0] <= self.from[1]
    }

    pub(super) fn set_up(self, job: &Job) -> SetUp {
        let foot_to = self.face.foot_to(self.edge);
        // With one stop, which is on the left, whatever is to the left rests on it.
        let on_head = job.shop.reference == Reference::OneStop && foot_to == Hand::Right;
        let rest = self.rests[usize::from(on_head)];
        let on_grid = matches!(self.holes, Holes::Runs(_));
        let off = if on_head && on_grid && !self.is_off() {
            self.longer
        } else {
            Length::ZERO
        };
        let holes = match self.holes {
            Holes::ByTape(heights) if on_head => {
                // The tape reads the length as it is, so these are where they belong.
                let mut from_head: Vec<Length> =
                    heights.into_iter().map(|it| self.length - it).collect();
                from_head.sort();
                Holes::ByTape(from_head)
            }
            holes => holes,
        };
        let setting = Self {
            holes: Holes::Runs(Vec::new()),
            ..self
        }
        .setting(self.edge, job);
        SetUp {
            cabinet: self.cabinet,
            copy: self.copy,
            face: self.face,
            tool: self.tool,
            edge: self.edge,
            setting,
            row: self.from[0],
            rest,
            off,
            foot_to,
            holes,
            checks: Vec::new(),
        }
    }
}
