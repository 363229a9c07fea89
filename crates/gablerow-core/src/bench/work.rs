//! Lines of work: of each face the holes at one distance from its edges that one bit bores to one depth.

use alloc::collections::BTreeMap;
use alloc::vec::Vec;

use super::along::{self, parted};
use super::rest::Rest;
use super::{Done, Holes, SetUp, Tool};
use crate::cards::Rail;
use crate::job::{
    BandState, Bit, Cabinet, Copy, Edge, End, FaceId, Hand, Job, Key, LENGTH_OFF, PanelId,
    Reference,
};
use crate::layout::{Hole, Layout, Upright, Use};
use crate::measure::Length;
use crate::sum::Sum;

/// Holes of one face that are bored together; the edge is not chosen yet.
#[derive(Clone)]
pub(super) struct Line {
    cabinet: Key,
    copy: Key,
    face: FaceId,
    tool: Tool,
    /// Hole numbers from the foot up, or heights above the foot where there is no number.
    holes: Holes,
    /// The lowest and the highest hole of each hinge plate in its row, whatever bores them.
    pub(super) plates: Vec<(i16, i16)>,
    /// From the front edge as finished.
    row: Length,
    /// From the front edge as it is when boring comes to the row, and from the back edge.
    settings: [Sum; 2],
    /// From the front edge as finished to the back edge.
    width: Length,
    /// The panel on the stop, by its foot and by its head.
    rests: [Rest; 2],
    /// By its head, whatever it was cut longer made up for.
    rest_made_up: Rest,
    /// From foot to head, as measured where it was.
    length: Length,
    /// What the stop at the head makes up for: how much longer it was cut, where that is more than a length may be off.
    made_up: Length,
    /// What is left of that; what rests on the head comes out so much too high.
    left: Length,
    /// The end it has to rest on, where the shop's habit does not decide that.
    end: Option<End>,
    /// Whether the shop has two stops, and works from the foot.
    from_foot: bool,
    /// The edge to work from.
    pub(super) edge: Edge,
}

/// Every line of a cabinet as a copy of it is built, but for what is done.
pub(super) fn lines(
    built: &Cabinet,
    copy: &Copy,
    layout: &Layout,
    job: &Job,
    done: &Done,
) -> Vec<Line> {
    let mut lines = Vec::new();
    for upright in &layout.uprights {
        let longer = copy.longer(upright.id, upright.length());
        let longer = longer.unwrap_or(Length::ZERO);
        let made_up = if longer.abs() > LENGTH_OFF {
            longer
        } else {
            Length::ZERO
        };
        let on_head = |longer| Rest::on_head(upright, layout, built.size.height, longer);
        let rests = [Rest::on_foot(upright, layout), on_head(made_up)];
        for (face, holes) in upright.bored(layout) {
            let plates = plates(&holes);
            let mut groups: BTreeMap<(Tool, Length, bool), Vec<Hole>> = BTreeMap::new();
            let left = holes.into_iter();
            for hole in left.filter(|hole| !done.has(face, hole, upright)) {
                let key = (tool(&hole, job), hole.x, hole.number.is_none());
                groups.entry(key).or_default().push(hole);
            }
            lines.extend(groups.into_iter().map(|((tool, x, _), holes)| Line {
                cabinet: built.key,
                copy: copy.key,
                face,
                tool,
                plates: plates.get(&x).cloned().unwrap_or_default(),
                holes: together(&holes, upright),
                row: x - upright.front.total(),
                settings: settings(x, upright, job),
                width: upright.back.total() - upright.front.total(),
                rests,
                rest_made_up: on_head(longer),
                length: upright.length() + longer,
                made_up,
                left: longer - made_up,
                end: None,
                from_foot: job.shop.reference == Reference::Foot,
                edge: Edge::Front,
            }));
        }
    }
    if let Some(covers) = job.rail().map(Rail::covers) {
        along::from_both_ends(&mut lines, covers);
    }
    lines
}

/// Flat or pointed as the shop bores blind holes; pointed right through. Common practice.
pub(super) fn tool(hole: &Hole, job: &Job) -> Tool {
    Tool {
        bit: match hole.depth {
            Some(_) => job.shop.bit,
            None => Bit::Pointed,
        },
        diameter: hole.diameter,
        depth: hole.depth,
    }
}

/// How far a row is from either edge when it is bored: the band may still be missing in front.
pub(super) fn settings(x: Length, upright: &Upright, job: &Job) -> [Sum; 2] {
    let (band, front) = (&job.shop.band, x - upright.front.total());
    let from_front = match band.on {
        BandState::AfterBoring => Sum::of("from the front edge as finished", front)
            .less("band, not on yet", band.thickness)
            .plus("pre-mill, still there", band.pre_mill),
        BandState::BeforeBoring => Sum::of("from the front edge", front),
    };
    let from_back = Sum::of("from the back edge", upright.back.total() - x);
    [from_front, from_back]
}

/// Whether the arms of a rail come so far over a panel so wide, with enough of it under the rail.
pub(super) fn reaches(rail: &Rail, setting: Length, width: Length) -> bool {
    rail.reach().contains(&setting) && width - setting >= rail.support_needed()
}

fn together(holes: &[Hole], upright: &Upright) -> Holes {
    let numbers: Vec<i16> = holes.iter().filter_map(|hole| hole.number).collect();
    if numbers.is_empty() {
        let mut heights: Vec<Length> = holes.iter().map(|it| it.z - upright.foot.total()).collect();
        heights.sort();
        return Holes::ByTape(heights);
    }
    Holes::Runs(runs(&numbers))
}

/// Hole numbers as runs, from the foot up.
pub(super) fn runs(numbers: &[i16]) -> Vec<(i16, i16)> {
    let mut numbers = numbers.to_vec();
    numbers.sort_unstable();
    let mut runs: Vec<(i16, i16)> = Vec::new();
    for number in numbers {
        match runs.last_mut() {
            Some((_, last)) if *last + 1 == number => *last = number,
            _ => runs.push((number, number)),
        }
    }
    runs
}

/// Of each row of a face the lowest and the highest hole of each hinge plate.
fn plates(holes: &[Hole]) -> BTreeMap<Length, Vec<(i16, i16)>> {
    let mut plates: BTreeMap<(Length, Key), (i16, i16)> = BTreeMap::new();
    for hole in holes {
        let Some(number) = hole.number else { continue };
        for (_, owner) in hole.users.iter().filter(|user| user.0 == Use::Plate) {
            let plate = plates.entry((hole.x, *owner)).or_insert((number, number));
            *plate = (plate.0.min(number), plate.1.max(number));
        }
    }
    let mut rows: BTreeMap<Length, Vec<(i16, i16)>> = BTreeMap::new();
    for ((x, _), plate) in plates {
        rows.entry(x).or_default().push(plate);
    }
    rows
}

impl Line {
    /// How far the row is from an edge when it is bored.
    pub(super) fn setting(&self, edge: Edge) -> Length {
        self.settings[usize::from(edge == Edge::Back)].total()
    }

    /// Whether the arms of a rail come so far from an edge, with enough panel under it.
    pub(super) fn is_reached(&self, edge: Edge, rail: &Rail) -> bool {
        reaches(rail, self.setting(edge), self.width)
    }

    /// The edge it has to be worked from: the one that has the end on the left that it has to rest on, where that is the only
    /// stop. `None` where either will do.
    pub(super) fn edge_asked(&self) -> Option<Edge> {
        let end = self.end.filter(|_| !self.from_foot)?;
        let on_foot = self.edge_with_foot_left();
        Some(match end {
            End::Foot => on_foot,
            End::Head => on_foot.other(),
        })
    }

    pub(super) fn panel(&self) -> PanelId {
        self.face.panel
    }

    /// Whether its panel was cut so much longer or shorter that it had better rest on its foot.
    pub(super) fn is_off(&self) -> bool {
        self.made_up != Length::ZERO
    }

    /// The edge that has its foot on the left.
    pub(super) fn edge_with_foot_left(&self) -> Edge {
        match self.face.foot_to(Edge::Front) {
            Hand::Left => Edge::Front,
            Hand::Right => Edge::Back,
        }
    }

    /// The edge that its row is nearer to.
    pub(super) fn nearer(&self) -> Edge {
        if self.row * 2 <= self.width {
            Edge::Front
        } else {
            Edge::Back
        }
    }

    /// The ends that it may come to rest on.
    pub(super) fn ends(&self) -> &'static [End] {
        if self.from_foot {
            &[End::Foot]
        } else {
            &[End::Foot, End::Head]
        }
    }

    pub(super) fn rest(&self, end: End) -> &Rest {
        match end {
            End::Foot => &self.rests[0],
            End::Head => &self.rests[1],
        }
    }

    /// Its holes that have numbers.
    pub(super) fn runs(&self) -> &[(i16, i16)] {
        match &self.holes {
            Holes::Runs(runs) => runs,
            Holes::ByTape(_) => &[],
        }
    }

    /// Its holes up to one from the foot, those above it from the head.
    pub(super) fn parted_at(self, last: i16) -> Vec<Self> {
        let Holes::Runs(runs) = &self.holes else {
            return [self].into();
        };
        let [below, above] = parted(runs, last).map(Holes::Runs);
        let head = Self {
            end: Some(End::Head),
            holes: above,
            // The pitch across the junction shall be right, so here all of the error is made up for.
            rests: [self.rests[0], self.rest_made_up],
            left: Length::ZERO,
            ..self.clone()
        };
        let foot = Self {
            end: Some(End::Foot),
            holes: below,
            ..self
        };
        let parts = [foot, head].into_iter();
        parts.filter(|part| part.holes.count() > 0).collect()
    }

    pub(super) fn set_up(self, rail: Option<&Rail>) -> SetUp {
        let foot_to = self.face.foot_to(self.edge);
        let end = match (self.end, foot_to) {
            (Some(end), _) => end,
            // With one stop, which is on the left, whatever is to the left rests on it.
            (None, Hand::Right) if !self.from_foot => End::Head,
            _ => End::Foot,
        };
        let rest = *self.rest(end);
        let positions = along::positions(self.runs(), &rest, rail.map(Rail::covers));
        // What is off the grid is bored one by one, without a rail.
        let by_rail = rail.filter(|_| !self.runs().is_empty());
        let is_reached = by_rail.is_none_or(|rail| self.is_reached(self.edge, rail));
        let (off, holes) = match (end, self.holes) {
            (End::Head, Holes::ByTape(heights)) => {
                // The tape reads the length as it is, so these are where they belong.
                let mut from_head: Vec<Length> =
                    heights.into_iter().map(|it| self.length - it).collect();
                from_head.sort();
                (Length::ZERO, Holes::ByTape(from_head))
            }
            (End::Head, runs) => (self.left, runs),
            (End::Foot, holes) => (Length::ZERO, holes),
        };
        let [from_front, from_back] = self.settings;
        SetUp {
            cabinet: self.cabinet,
            copy: self.copy,
            face: self.face,
            tool: self.tool,
            edge: self.edge,
            setting: match self.edge {
                Edge::Front => from_front,
                Edge::Back => from_back,
            },
            is_reached,
            row: self.row,
            rest,
            off,
            is_parted: self.end.is_some(),
            foot_to,
            holes,
            positions,
            checks: Vec::new(),
        }
    }
}
