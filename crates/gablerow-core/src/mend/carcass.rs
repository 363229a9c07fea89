//! The box itself: heights and offsets that balance, which end rests on the stop, boards, backs, what is seen.

use alloc::vec::Vec;

use super::trial::{Reach, Trial};
use crate::check::Rule;
use crate::edit::{Choice, Edit, Measure};
use crate::grid::balancing_offsets;
use crate::job::{Hand, PanelId, Reference, Seat};
use crate::measure::Length;

/// Rules that are about the ends of the sides.
const BALANCE: &[Rule] = &[
    Rule::Unbalanced,
    Rule::UnbalancedTurned,
    Rule::HeightMultipleOnly,
];

/// Rules that another board may mend.
const BOARD: &[Rule] = &[
    Rule::DepthBreaksThrough,
    Rule::OpposedHolesMeet,
    Rule::OpposedFastenersMeet,
    Rule::OpposedPlates,
    Rule::ExposedEnd,
    Rule::NoCard,
];

pub(super) fn offer(trial: &mut Trial) {
    if trial.is_of(BALANCE) {
        balance(trial);
    }
    if trial.is_of(BOARD) {
        other_cards(trial, &Seat::ALL);
    }
    let cabinet = trial.cabinet.key;
    let choose = |choice| Edit::Choose { cabinet, choice };
    match trial.finding.rule {
        Rule::BoredOnShowFace | Rule::ExposedEnd => {
            let seen = match trial.finding.place.face.map(|face| face.panel) {
                Some(PanelId::Side(Hand::Left)) => Choice::SeenLeft,
                _ => Choice::SeenRight,
            };
            trial.offer(Reach::Cabinet, choose(seen));
        }
        Rule::SidesEndOnBottom => {
            trial.offer(Reach::Cabinet, choose(Choice::Bottom));
            trial.offer(Reach::Cabinet, measure(trial, Measure::Below, Length::ZERO));
        }
        Rule::ToeNotchEatsRow => {
            trial.offer(Reach::Cabinet, choose(Choice::Notch));
        }
        Rule::BackRowInGroove | Rule::HoleNearEdge | Rule::HoleOffPanel => {
            trial.offer(Reach::Cabinet, choose(Choice::Back));
            trial.offer(Reach::Job, choose(Choice::BackRule));
        }
        Rule::NearMissRows => {
            trial.offer(Reach::Job, choose(Choice::BackRule));
        }
        _ => {}
    }
}

fn measure(trial: &Trial, measure: Measure, value: Length) -> Edit {
    Edit::Measure {
        cabinet: trial.cabinet.key,
        measure,
        value,
    }
}

/// The balanced heights either side, the offsets that balance this one, and, where rows rest on both ends, every row from the
/// foot. With every row on the foot already, the other choice would quiet the note and turn panels that do not turn.
fn balance(trial: &mut Trial) {
    let cabinet = trial.cabinet;
    let ends = cabinet.offsets.ends(cabinet.size.height);
    let heights = ends.balanced_heights();
    let mut heights: Vec<Length> = heights.below.into_iter().chain([heights.above]).collect();
    heights.sort_by_key(|height| (*height - ends.height).abs());
    for height in heights {
        trial.offer(Reach::Cabinet, measure(trial, Measure::Height, height));
    }
    let offsets = balancing_offsets(ends.height, trial.job.shop.limits.to_end);
    for offset in offsets.into_iter().filter(|offset| offset.usable) {
        let edit = Edit::Offsets {
            cabinet: cabinet.key,
            foot: offset.offset,
            head: offset.offset,
        };
        trial.offer(Reach::Cabinet, edit);
    }
    if trial.job.shop.reference == Reference::OneStop {
        let edit = Edit::Choose {
            cabinet: cabinet.key,
            choice: Choice::Reference,
        };
        trial.offer(Reach::Job, edit);
    }
}

/// Every other card for the parts of the cabinet that stand on these seats.
pub(super) fn other_cards(trial: &mut Trial, seats: &[Seat]) {
    let mut edits = Vec::new();
    for seat in seats {
        let now = seat.cards(trial.cabinet);
        let known = trial.job.cards.names(seat.kind()).into_iter();
        let known = known.map(|name| name.id);
        let others = known.filter(|id| !now.is_empty() && now != [id.clone()]);
        edits.extend(others.map(|id| Edit::UseCard {
            cabinet: trial.cabinet.key,
            seat: *seat,
            card: Some(id),
        }));
    }
    for edit in edits {
        trial.offer(Reach::Cabinet, edit);
    }
}
