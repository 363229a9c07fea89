//! What faces own themselves: free rows and free holes, set, changed and taken away.

use alloc::format;
use alloc::string::{String, ToString};

use super::{Refusal, cabinet, change, has_holes};
use crate::history::Step;
use crate::job::{
    Cabinet, Datum, Depth, Edge, End, FaceId, FreeHole, FreeRow, HolePlace, Job, Key,
};
use crate::label::Label;
use crate::layout::{Layout, Upright};
use crate::measure::Length;
use crate::measure::range::{self, Range};

/// A distance from a long edge of the panel of a face.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct FreePlace {
    /// The face; an outside does as well.
    pub face: FaceId,
    /// The edge the setback starts from.
    pub edge: Edge,
    /// From that edge of the panel, as finished.
    pub setback: Length,
}

/// Neighbouring grid holes of a face, both ends included.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct FaceRun {
    /// The lowest hole number.
    pub first: i16,
    /// The highest hole number.
    pub last: i16,
    /// Where both are counted from.
    pub datum: Datum,
}

/// A change of what faces own themselves.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum FreeEdit {
    /// A row of grid holes, as wide and deep as the shop bores.
    Row(FreePlace, FaceRun),
    /// One hole, at a height from either end of its panel, as wide and deep as the shop bores.
    Hole(FreePlace, End, Length),
    /// Another value of a length of a free row or a free hole.
    Measure(Key, FreeMeasure, Length),
    /// The next of the ways it can be made.
    Choose(Key, FreeChoice),
    /// What it is for.
    Purpose(Key, Label),
    /// A free row or a free hole less.
    TakeAway(Key),
}

/// A length of a free row or a free hole.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum FreeMeasure {
    /// From the edge it is measured from.
    Setback,
    /// From the end a free hole is measured from.
    Height,
    /// Diameter.
    Diameter,
    /// How deep it is bored.
    Depth,
}

/// A way a free row or a free hole can be made that is stepped through.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum FreeChoice {
    /// The edge its setback starts from; it stays where it is.
    Edge,
    /// The end its height starts from; it stays where it is.
    End,
    /// As deep as the shop bores, so deep, or through.
    Depth,
}

/// A line of what can be changed of a free row or a free hole.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum FreeLine {
    /// What it is for.
    Purpose,
    /// A length.
    Measure(FreeMeasure),
    /// A choice.
    Choice(FreeChoice),
}

/// The lines of a free row or a free hole, in the order a person meets them; none for a key that names neither.
#[must_use]
pub fn free_lines(cabinet: &Cabinet, key: Key) -> &'static [FreeLine] {
    const ROW: &[FreeLine] = &[
        FreeLine::Purpose,
        FreeLine::Measure(FreeMeasure::Setback),
        FreeLine::Choice(FreeChoice::Edge),
        FreeLine::Measure(FreeMeasure::Diameter),
        FreeLine::Measure(FreeMeasure::Depth),
        FreeLine::Choice(FreeChoice::Depth),
    ];
    const HOLE: &[FreeLine] = &[
        FreeLine::Purpose,
        FreeLine::Measure(FreeMeasure::Setback),
        FreeLine::Choice(FreeChoice::Edge),
        FreeLine::Measure(FreeMeasure::Height),
        FreeLine::Choice(FreeChoice::End),
        FreeLine::Measure(FreeMeasure::Diameter),
        FreeLine::Measure(FreeMeasure::Depth),
        FreeLine::Choice(FreeChoice::Depth),
    ];
    match cabinet.free_thing(key) {
        None => &[],
        Some(thing) if thing.height.is_some() => HOLE,
        Some(_) => ROW,
    }
}

impl FreeMeasure {
    /// What it is called.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::Setback => "setback",
            Self::Height => "height",
            Self::Diameter => "diameter",
            Self::Depth => "bore depth",
        }
    }

    fn range(self) -> &'static Range {
        match self {
            Self::Setback => &range::CARCASS_POINT,
            Self::Height => &range::PANEL_POSITION,
            Self::Diameter => &range::HOLE_DIAMETER,
            Self::Depth => &range::BORE_DEPTH,
        }
    }

    /// Its value; `None` where there is no such thing, or where it is bored through.
    #[must_use]
    pub fn read(self, job: &Job, cabinet: &Cabinet, key: Key) -> Option<Length> {
        let thing = cabinet.free_thing(key)?;
        match self {
            Self::Setback => Some(thing.setback),
            Self::Height => thing.height.map(|(_, height)| height),
            Self::Diameter => Some(thing.diameter),
            Self::Depth => match thing.depth {
                Depth::Shop => Some(job.shop.depth),
                Depth::Blind(depth) => Some(depth),
                Depth::Through => None,
            },
        }
    }
}

impl FreeChoice {
    /// What is chosen.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::Edge => "from",
            Self::End => "from end",
            Self::Depth => "bored",
        }
    }

    /// The way it is made now; `None` where there is no such thing.
    #[must_use]
    pub fn value(self, cabinet: &Cabinet, key: Key) -> Option<&'static str> {
        let thing = cabinet.free_thing(key)?;
        Some(match self {
            Self::Edge => match thing.edge {
                Edge::Front => "the front edge",
                Edge::Back => "the back edge",
            },
            Self::End => match thing.height?.0 {
                End::Foot => "the foot",
                End::Head => "the head",
            },
            Self::Depth => match thing.depth {
                Depth::Shop => "as the shop bores",
                Depth::Blind(_) => "as deep as typed",
                Depth::Through => "through",
            },
        })
    }
}

pub(super) fn apply(job: &Job, key: Key, edit: &FreeEdit) -> Result<Step, Refusal> {
    match edit {
        FreeEdit::Row(place, run) => row(job, key, *place, *run),
        FreeEdit::Hole(place, end, height) => hole(job, key, *place, (*end, *height)),
        FreeEdit::Measure(thing, measure, value) => set(job, key, *thing, (*measure, *value)),
        FreeEdit::Choose(thing, choice) => choose(job, key, *thing, *choice),
        FreeEdit::Purpose(thing, purpose) => change(job, key, |edited| {
            *free_mut(edited, *thing)?.purpose = purpose.clone();
            Ok(format!("for {purpose}"))
        }),
        FreeEdit::TakeAway(thing) => change(job, key, |edited| {
            let gone = edited.free_thing(*thing).ok_or_else(|| no_free(*thing))?;
            let label = format!("no {}", gone.purpose);
            edited.free_rows.retain(|row| row.key != *thing);
            edited.free_holes.retain(|hole| hole.key != *thing);
            Ok(label)
        }),
    }
}

fn no_free(key: Key) -> Refusal {
    Refusal(format!("there is no free row or free hole {key}"))
}

/// The panel of a face as it is laid out, and the highest hole of its cabinet.
fn upright(job: &Job, key: Key, face: FaceId) -> Result<(Upright, i16), Refusal> {
    let (_, known) = cabinet(job, key)?;
    let mut layout = Layout::of(known, job);
    let at = layout.uprights.iter().position(|it| it.id == face.panel);
    let at = at.ok_or_else(|| Refusal("this cabinet has no such panel".into()))?;
    Ok((layout.uprights.swap_remove(at), layout.last))
}

/// A distance that is in its range, and within a panel that is `most` deep or long.
fn within(job: &Job, measure: FreeMeasure, value: Length, most: Length) -> Result<(), Refusal> {
    let show = |length: Length| length.exact(job.unit);
    if value < Length::ZERO || value > most {
        let (words, value, most) = (measure.words(), show(value), show(most));
        let long = match measure {
            FreeMeasure::Height => "long",
            _ => "deep",
        };
        return Err(Refusal(format!(
            "{words} {value}, but this panel is {most} {long}"
        )));
    }
    in_range(job, measure, value)
}

fn in_range(job: &Job, measure: FreeMeasure, value: Length) -> Result<(), Refusal> {
    let checked = measure.range().check(value);
    checked
        .map(drop)
        .map_err(|wrong| Refusal(wrong.show(job.unit)))
}

/// `37 from the front`.
fn setback_words(job: &Job, place: FreePlace) -> String {
    let setback = place.setback.exact(job.unit);
    format!("{setback} from the {}", place.edge.word())
}

fn row(job: &Job, key: Key, place: FreePlace, run: FaceRun) -> Result<Step, Refusal> {
    let (panel, last) = upright(job, key, place.face)?;
    within(job, FreeMeasure::Setback, place.setback, panel.depth())?;
    let (lowest, highest) = panel.holes;
    let holes = match run.first == run.last {
        true => format!("hole {}", run.first),
        false => format!("holes {}-{}", run.first, run.last),
    };
    if run.first > run.last || run.first < lowest || run.last > highest {
        let there_is = match highest < lowest || (lowest, highest) == (1, last) {
            true => has_holes(last),
            false => format!("this panel has holes {lowest}-{highest}"),
        };
        return Err(Refusal(format!("{holes}, but {there_is}")));
    }
    let made = FreeRow {
        key: job.free_key(key),
        face: place.face,
        purpose: Label::known("free row"),
        edge: place.edge,
        setback: place.setback,
        first: HolePlace::of(run.first, run.datum, last),
        last: HolePlace::of(run.last, run.datum, last),
        diameter: job.shop.diameter,
        depth: Depth::Shop,
    };
    change(job, key, |edited| {
        let is_there = |row: &FreeRow| {
            let holes = (row.first.number(last), row.last.number(last));
            (row.face, row.edge, row.setback) == (place.face, place.edge, place.setback)
                && holes == (run.first, run.last)
        };
        if edited.free_rows.iter().any(is_there) {
            return Err(Refusal(format!(
                "there is a free row {} on {holes} already",
                setback_words(job, place)
            )));
        }
        edited.free_rows.push(made);
        let words = setback_words(job, place);
        Ok(format!("free row {words} on {holes}"))
    })
}

fn hole(
    job: &Job,
    key: Key,
    place: FreePlace,
    (end, height): (End, Length),
) -> Result<Step, Refusal> {
    let (panel, _) = upright(job, key, place.face)?;
    within(job, FreeMeasure::Setback, place.setback, panel.depth())?;
    within(job, FreeMeasure::Height, height, panel.length())?;
    let made = FreeHole {
        key: job.free_key(key),
        face: place.face,
        purpose: Label::known("free hole"),
        edge: place.edge,
        setback: place.setback,
        end,
        height,
        diameter: job.shop.diameter,
        depth: Depth::Shop,
    };
    change(job, key, |edited| {
        let at = |hole: &FreeHole| {
            let (face, edge, setback) = (hole.face, hole.edge, hole.setback);
            (face, edge, setback, hole.end, hole.height)
        };
        let words = format!(
            "free hole {}, {} from the {}",
            setback_words(job, place),
            height.exact(job.unit),
            end.word()
        );
        if edited.free_holes.iter().any(|hole| at(hole) == at(&made)) {
            return Err(Refusal(format!("there is a {words} already")));
        }
        edited.free_holes.push(made);
        Ok(words)
    })
}

/// What can be changed of a free row or a free hole.
struct FreeMut<'a> {
    face: FaceId,
    purpose: &'a mut Label,
    edge: &'a mut Edge,
    setback: &'a mut Length,
    height: Option<(&'a mut End, &'a mut Length)>,
    diameter: &'a mut Length,
    depth: &'a mut Depth,
}

fn free_mut(cabinet: &mut Cabinet, key: Key) -> Result<FreeMut<'_>, Refusal> {
    let row = cabinet.free_rows.iter_mut().find(|row| row.key == key);
    if let Some(row) = row {
        return Ok(FreeMut {
            face: row.face,
            purpose: &mut row.purpose,
            edge: &mut row.edge,
            setback: &mut row.setback,
            height: None,
            diameter: &mut row.diameter,
            depth: &mut row.depth,
        });
    }
    let hole = cabinet.free_holes.iter_mut().find(|hole| hole.key == key);
    let hole = hole.ok_or_else(|| no_free(key))?;
    Ok(FreeMut {
        face: hole.face,
        purpose: &mut hole.purpose,
        edge: &mut hole.edge,
        setback: &mut hole.setback,
        height: Some((&mut hole.end, &mut hole.height)),
        diameter: &mut hole.diameter,
        depth: &mut hole.depth,
    })
}

const NO_HEIGHT: &str = "a free row lies at holes and has no height of its own";

fn set(
    job: &Job,
    key: Key,
    thing: Key,
    (measure, value): (FreeMeasure, Length),
) -> Result<Step, Refusal> {
    change(job, key, |edited| {
        let free = free_mut(edited, thing)?;
        match measure {
            FreeMeasure::Setback => {
                let (panel, _) = upright(job, key, free.face)?;
                within(job, measure, value, panel.depth())?;
                *free.setback = value;
            }
            FreeMeasure::Height => {
                let (_, height) = free.height.ok_or_else(|| Refusal(NO_HEIGHT.to_string()))?;
                let (panel, _) = upright(job, key, free.face)?;
                within(job, measure, value, panel.length())?;
                *height = value;
            }
            FreeMeasure::Diameter => {
                in_range(job, measure, value)?;
                *free.diameter = value;
            }
            FreeMeasure::Depth => {
                in_range(job, measure, value)?;
                *free.depth = Depth::Blind(value);
            }
        }
        Ok(format!("{} {}", measure.words(), value.exact(job.unit)))
    })
}

fn choose(job: &Job, key: Key, thing: Key, choice: FreeChoice) -> Result<Step, Refusal> {
    change(job, key, |edited| {
        let free = free_mut(edited, thing)?;
        match choice {
            FreeChoice::Edge => {
                let (panel, _) = upright(job, key, free.face)?;
                *free.setback = panel.depth() - *free.setback;
                *free.edge = free.edge.other();
            }
            FreeChoice::End => {
                let (end, height) = free.height.ok_or_else(|| Refusal(NO_HEIGHT.to_string()))?;
                let (panel, _) = upright(job, key, free.face)?;
                *height = panel.length() - *height;
                *end = end.other();
            }
            FreeChoice::Depth => {
                *free.depth = match *free.depth {
                    Depth::Shop => Depth::Blind(job.shop.depth),
                    Depth::Blind(_) => Depth::Through,
                    Depth::Through => Depth::Shop,
                }
            }
        }
        let value = choice.value(edited, thing).unwrap_or_default();
        let done = match choice {
            FreeChoice::Edge | FreeChoice::End => "measured from",
            FreeChoice::Depth => "bored",
        };
        Ok(format!("{done} {value}"))
    })
}
