//! The lines of the list of sizes: what update steps through and view shows.

use gablerow_core::edit::{
    Choice, FreeLine, Measure, PartLine, Scope, Value, ValueName, free_lines, own_values,
    part_lines,
};
use gablerow_core::job::Key;

use crate::app::{App, Screen};
use crate::scene::{Scene, Thing, front_spot};

/// A line of the list.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SizeLine {
    /// A length or a choice of a part of the cabinet: an opening, a partition, a fixed shelf, a front.
    Part(Key, PartLine),
    /// What a free row or a free hole is for, a length or a choice of it.
    Free(Key, FreeLine),
    /// A value of a loose shelf.
    Shelf(Key, ValueName),
    /// A value of a front: what its drawer holds.
    Front(Key, ValueName),
    /// A length.
    Measure(Measure),
    /// A choice.
    Choice(Choice),
}

/// Whose a line is; lines stand together by it, under a heading.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Whose {
    /// A part's.
    Part(Key),
    /// Of what owns a hole: a free row, a free hole, a loose shelf.
    Owner(Key),
    /// The cabinet's.
    Cabinet,
    /// The whole job's.
    Job,
}

impl SizeLine {
    /// What it is called.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::Part(_, PartLine::Measure(measure)) => measure.words(),
            Self::Part(_, PartLine::Choice(choice)) => choice.words(),
            Self::Free(_, FreeLine::Purpose) => "for",
            Self::Free(_, FreeLine::Measure(measure)) => measure.words(),
            Self::Free(_, FreeLine::Choice(choice)) => choice.words(),
            Self::Shelf(_, value) | Self::Front(_, value) => value.words(),
            Self::Measure(measure) => measure.words(),
            Self::Choice(choice) => choice.words(),
        }
    }

    /// Whose it is.
    #[must_use]
    pub fn whose(self) -> Whose {
        let scope = match self {
            Self::Part(part, _) | Self::Front(part, _) => return Whose::Part(part),
            Self::Free(owner, _) | Self::Shelf(owner, _) => return Whose::Owner(owner),
            Self::Measure(measure) => measure.scope(),
            Self::Choice(choice) => choice.scope(),
        };
        match scope {
            Scope::Cabinet => Whose::Cabinet,
            Scope::Job => Whose::Job,
        }
    }
}

/// The lines of the list: what the cabinet has of its own, subject by subject, then what the whole job goes by.
const LINES: [SizeLine; Measure::ALL.len() + Choice::ALL.len()] = [
    SizeLine::Measure(Measure::Height),
    SizeLine::Measure(Measure::Width),
    SizeLine::Measure(Measure::Depth),
    SizeLine::Measure(Measure::OffsetFoot),
    SizeLine::Measure(Measure::OffsetHead),
    SizeLine::Choice(Choice::Back),
    SizeLine::Measure(Measure::BackTaken),
    SizeLine::Choice(Choice::Top),
    SizeLine::Measure(Measure::Stretcher),
    SizeLine::Measure(Measure::HousingTop),
    SizeLine::Choice(Choice::Bottom),
    SizeLine::Measure(Measure::HousingBottom),
    SizeLine::Choice(Choice::Stand),
    SizeLine::Measure(Measure::Stand),
    SizeLine::Measure(Measure::Below),
    SizeLine::Choice(Choice::Notch),
    SizeLine::Measure(Measure::NotchHeight),
    SizeLine::Measure(Measure::NotchDepth),
    SizeLine::Choice(Choice::Rail),
    SizeLine::Measure(Measure::Rail),
    SizeLine::Choice(Choice::SeenLeft),
    SizeLine::Choice(Choice::SeenRight),
    SizeLine::Choice(Choice::SidesBoard),
    SizeLine::Choice(Choice::BottomBoard),
    SizeLine::Choice(Choice::TopBoard),
    SizeLine::Measure(Measure::Board),
    SizeLine::Measure(Measure::SetbackFront),
    SizeLine::Measure(Measure::SetbackBack),
    SizeLine::Measure(Measure::BoreDepth),
    SizeLine::Choice(Choice::BackRule),
    SizeLine::Choice(Choice::Reference),
];

/// The lines of the list, in their order, before all others those of what one stands on: from the front of a part, on a face
/// of the free rows, free holes and loose shelves.
#[must_use]
pub fn lines(app: &App) -> Vec<SizeLine> {
    let mut lines = match app.screen {
        Screen::Face | Screen::Book => owned_here(app),
        Screen::Front | Screen::Job(_) => own_lines(app),
    };
    lines.extend(LINES);
    lines
}

/// The lines of the free rows, free holes and loose shelves that own the hole one stands on.
fn owned_here(app: &App) -> Vec<SizeLine> {
    let Some(scene) = Scene::at(&app.desk.job, &app.spot) else {
        return Vec::new();
    };
    let users = scene.dot(&app.spot).map_or(&[][..], |dot| &dot.hole.users);
    let of = |&(_, owner): &(_, Key)| {
        let lines = free_lines(scene.cabinet, owner).iter();
        let values = own_values(scene.cabinet, owner).into_iter();
        lines
            .map(move |&line| SizeLine::Free(owner, line))
            .chain(values.map(move |value| SizeLine::Shelf(owner, value.name)))
    };
    users.iter().flat_map(of).collect()
}

/// The value of a loose shelf or a front of the cabinet in sight that a line is, and whose it is; `None` when that is gone, and
/// for every other line.
#[must_use]
pub fn own_value(app: &App, line: SizeLine) -> Option<(Key, Value)> {
    let (SizeLine::Shelf(thing, name) | SizeLine::Front(thing, name)) = line else {
        return None;
    };
    let values = own_values(app.desk.job.cabinet(app.spot.cabinet)?, thing);
    let found = values.into_iter().find(|value| value.name == name);
    found.map(|value| (thing, value))
}

/// The lines of the part one stands on; of a front, those of the opening it closes too.
fn own_lines(app: &App) -> Vec<SizeLine> {
    let found = app.desk.job.cabinet(app.spot.cabinet).zip(front_spot(app));
    let Some((cabinet, spot)) = found else {
        return Vec::new();
    };
    let of = |part: Key| {
        let lines = part_lines(cabinet, part).into_iter();
        let values = own_values(cabinet, part).into_iter();
        lines
            .map(move |line| SizeLine::Part(part, line))
            .chain(values.map(move |value| SizeLine::Front(part, value.name)))
    };
    let behind = matches!(spot.at, Thing::Front(_)).then_some(spot.opening);
    of(spot.at.key())
        .chain(behind.into_iter().flat_map(of))
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_length_and_choice_is_a_line_the_cabinets_own_first() {
        let lines = LINES;
        let all = Measure::ALL.into_iter().map(SizeLine::Measure);
        for line in all.chain(Choice::ALL.into_iter().map(SizeLine::Choice)) {
            assert!(lines.contains(&line), "{line:?}");
        }
        assert!(lines.is_sorted_by_key(|line| line.whose() == Whose::Job));
        assert_eq!(lines[0], SizeLine::Measure(Measure::Height));
    }
}
