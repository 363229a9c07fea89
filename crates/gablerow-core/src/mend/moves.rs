//! The nearest holes on which a fitting would be clean.

use super::trial::{Reach, Trial};
use crate::edit::{Adjust, Edit};

/// Offers the nearest clean holes below and above, of every fitting the finding is about.
pub(super) fn offer(trial: &mut Trial) {
    let cabinet = trial.cabinet.key;
    let farthest = trial.layout.last;
    for thing in trial.about() {
        for way in [-1, 1] {
            let up = |holes: i16| Edit::Adjust {
                cabinet,
                thing,
                adjust: Adjust::Up(way * holes),
            };
            // Whoever cannot be moved by one hole cannot be moved at all: only what is on holes takes this edit.
            if up(1).apply(trial.job).is_err() {
                break;
            }
            _ = (1..=farthest).any(|holes| trial.offer(Reach::Fitting, up(holes)));
        }
    }
}
