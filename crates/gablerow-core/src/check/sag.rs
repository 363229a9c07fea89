//! Shelves that sag.

use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

use super::{Context, Finding, Rule};
use crate::measure::Length;
use crate::parts::ShelfPart;
use crate::strength::{length, length_down};

/// Loose shelves that sag more than the house has it, after years where the creep of their board is known.
///
/// A board whose stiffness is not known is passed over: any stand-in would be wrong by up to eight times, as
/// particleboard and oak are apart, and a warning, or none, would then say nothing. Where only the creep is not known, a
/// shelf that sags too much at once is told all the same, since it never sags less later.
pub(super) fn shelf_sags(cx: &Context, found: &mut Vec<Finding>) {
    found.extend(
        cx.loose_shelves()
            .iter()
            .filter_map(|shelf| sags(cx, shelf)),
    );
}

fn sags(cx: &Context, shelf: &ShelfPart) -> Option<Finding> {
    let strength = shelf.strength?;
    let now = strength.now?;
    let most = strength.limit.at(shelf.piece.length.total());
    if strength.later.unwrap_or(now) <= most {
        return None;
    }
    let show = |mm: f64| length(mm).show(cx.unit);
    let later = match strength.later {
        Some(later) => format!("{} after years", show(later)),
        None => "more after years".into(),
    };
    let typed = if strength.load_is_typed {
        ""
    } else {
        " (house guess)"
    };
    let share = match strength.limit.ratio {
        Some(_) => format!(" ({})", strength.limit.words),
        None => String::new(),
    };
    let longest = length_down(strength.longest?.0, Length::from_mm(1));
    let message = format!(
        "{}: sags {}, {later}, by {:.1} kg{typed} + own {:.1}; limit {}{share}; {}; {} long would do",
        cx.fitting(shelf.key),
        show(now),
        strength.load_kg,
        strength.mass_kg,
        show(most),
        material(cx, shelf)?,
        longest.show(cx.unit),
    );
    let place = cx.at_hole(shelf.bay, shelf.hole);
    Some(Finding::new(Rule::ShelfSags, place, message).about(shelf.key))
}

/// How stiff its board is and how it creeps, each with where that comes from; said once where both come from one place.
fn material(cx: &Context, shelf: &ShelfPart) -> Option<String> {
    let board = cx.job.cards.board(&shelf.piece.board)?;
    let stiffness = board.stiffness?;
    let (e, from) = (stiffness.value, stiffness.origin.words());
    Some(match board.creep {
        None => format!("E {e} ({from}), creep not known"),
        Some(creep) => {
            // A percentage: 200 is twice.
            let times = f64::from(creep.value) / 100.0;
            if creep.origin == stiffness.origin {
                format!("E {e}, creep {times} ({from})")
            } else {
                format!("E {e} ({from}), creep {times} ({})", creep.origin.words())
            }
        }
    })
}

#[cfg(test)]
mod tests;
