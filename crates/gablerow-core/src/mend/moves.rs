//! The nearest holes on which a fitting would be clean.

use super::trial::{Reach, Trial};
use crate::check::Rule;
use crate::edit::{Adjust, Edit};
use crate::job::Key;

/// Offers the nearest clean holes below and above, of every fitting the finding is about. What was bored wrong is wrong wherever
/// its fitting goes; only where its holes are is it right.
pub(super) fn offer(trial: &mut Trial) {
    if trial.is_of(&[Rule::MiscountedHole]) {
        return;
    }
    for thing in trial.about() {
        nearest(trial, thing, -1);
        nearest(trial, thing, 1);
    }
}

/// Offers the nearest clean hole below (-1) or above (1) for a fitting.
pub(super) fn nearest(trial: &mut Trial, thing: Key, way: i16) {
    let cabinet = trial.cabinet.key;
    let farthest = trial.layout.last;
    let up = |holes: i16| Edit::Adjust {
        cabinet,
        thing,
        adjust: Adjust::Up(way * holes),
    };
    // Whoever cannot be moved by one hole cannot be moved at all: only what is on holes takes this edit.
    if up(1).apply(trial.job).is_ok() {
        _ = (1..=farthest).any(|holes| trial.offer(Reach::Fitting, up(holes)));
    }
}
