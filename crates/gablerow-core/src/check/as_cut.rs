//! Panels as the saw made them, copy by copy: lengths, thicknesses, diagonals, and how shelves lie for it.

use alloc::collections::BTreeSet;
use alloc::format;
use alloc::vec::Vec;

use super::{Context, Finding, Rule};
use crate::bench::{lean, outlook, shift};
use crate::job::{Copy, Hand, Names, PanelId};
use crate::layout::{Layout, Upright};
use crate::measure::Length;

/// The most a panel may be off before it is cut again, either way: 1.0, a house default. Less is made up for at the bench.
pub(crate) const OFF_MOST: Length = Length::from_mm(1);

/// The most the two sides of a copy may differ: 0.5, a house default. More leaves the head sloping.
pub(crate) const DIFFER_MOST: Length = Length::from_um(500);

/// The most a shelf may rock: 0.5, a house default.
pub(crate) const ROCK_MOST: Length = Length::from_um(500);

/// How much a shelf may rock before nobody bores it so. A house default.
pub(crate) const ROCK_STOP: Length = Length::from_mm(1);

/// The most a board may be off its card, either way: what sanded particleboard brings. Source: EN 312, Table 1.
pub const THICKNESS_OFF_MOST: Length = Length::from_um(300);

/// The most one row may come to be above another for an end that is out of square: 0.5, a house default.
pub(crate) const SHIFT_MOST: Length = Length::from_um(500);

/// Every copy that was measured, with the layout it is built to: a mirrored one has its left and its right exchanged.
fn measured<'a>(cx: &'a Context) -> impl Iterator<Item = (&'a Copy, Layout)> {
    let measured = cx.cabinet.copies.iter().filter(|it| !it.as_cut.is_empty());
    measured.map(|copy| (copy, Layout::of(&cx.cabinet.built_as(copy), cx.job)))
}

/// Panels that were cut so long or so short that no boring makes up for it.
pub(super) fn as_cut_length(cx: &Context, found: &mut Vec<Finding>) {
    for (copy, layout) in measured(cx) {
        for cut in &copy.as_cut {
            let planned = layout.upright(cut.panel).map(Upright::length);
            let off = planned.and_then(|planned| Some((planned, cut.longer(planned)?)));
            let Some((planned, off)) = off.filter(|(_, off)| off.abs() > OFF_MOST) else {
                continue;
            };
            let way = if off > Length::ZERO { "long" } else { "short" };
            let message = format!(
                "{} was cut {} too {way}, {} for {}; over {} it is cut again",
                cx.panel_of(copy, cut.panel),
                off.abs().show(cx.unit),
                (planned + off).show(cx.unit),
                planned.show(cx.unit),
                OFF_MOST.show(cx.unit)
            );
            found.push(Finding::new(Rule::AsCutLength, cx.here(), message).about(copy.key));
        }
    }
}

/// Two sides of one copy that are not alike, whatever either should be.
pub(super) fn pair_lengths_differ(cx: &Context, found: &mut Vec<Finding>) {
    for (copy, layout) in measured(cx) {
        let length = |hand| {
            let planned = layout.upright(PanelId::Side(hand))?.length();
            Some(planned + copy.longer(PanelId::Side(hand), planned)?)
        };
        let (Some(left), Some(right)) = (length(Hand::Left), length(Hand::Right)) else {
            continue;
        };
        let apart = (left - right).abs();
        if apart <= DIFFER_MOST {
            continue;
        }
        let message = format!(
            "the sides of copy {} are {} apart, left {} and right {}; over {} the head slopes: trim the longer, or pair it otherwise",
            copy.name,
            apart.show(cx.unit),
            left.show(cx.unit),
            right.show(cx.unit),
            DIFFER_MOST.show(cx.unit)
        );
        found.push(Finding::new(Rule::PairLengthsDiffer, cx.here(), message).about(copy.key));
    }
}

/// Bays of measured copies whose shelves will rock.
pub(super) fn shelf_rocks(cx: &Context, found: &mut Vec<Finding>) {
    if cx.cabinet.copies.iter().all(|copy| copy.as_cut.is_empty()) {
        return;
    }
    let rocks = outlook(cx.job, cx.cabinet, cx.layout).rocks.into_iter();
    for rock in rocks.filter(|it| it.rock() > ROCK_MOST) {
        let Some(copy) = cx.cabinet.copies.iter().find(|it| it.key == rock.copy) else {
            continue;
        };
        let Some(bay) = Names::of(&cx.cabinet.built_as(copy).opening).opening(rock.bay) else {
            continue;
        };
        let rule = match rock.rock() > ROCK_STOP {
            true => Rule::ShelfRocksMuch,
            false => Rule::ShelfRocks,
        };
        let cause = match (rock.is_by_length, rock.is_by_lean) {
            (true, true) => "its panels were cut longer or shorter, and out of square",
            (true, false) => "its panels were cut longer or shorter and rest on either end",
            (false, _) => "ends of its panels are out of square",
        };
        let next = match (rule, rock.is_by_length) {
            (Rule::ShelfRocks, _) => "",
            (_, true) => "; bore all of it from the foot, or cut panels again",
            (_, false) => "; cut panels again",
        };
        let message = format!(
            "shelves of {bay} of copy {} will rock {}, for {cause}{next}",
            copy.name,
            rock.rock().show(cx.unit)
        );
        found.push(Finding::new(rule, cx.here(), message).about(rock.bay));
    }
}

/// Panels whose diagonals say that an end is out of square, so that a back row stands above its front row or below it.
pub(super) fn foot_end_not_square(cx: &Context, found: &mut Vec<Finding>) {
    for (copy, layout) in measured(cx) {
        for cut in &copy.as_cut {
            let (Some(apart), Some(upright)) = (cut.diagonals, layout.upright(cut.panel)) else {
                continue;
            };
            let faces = upright.faces.iter().flat_map(|face| &face.rows);
            let rows: BTreeSet<Length> = faces.map(|row| row.x.total()).collect();
            let (Some(front), Some(back)) = (rows.first(), rows.last()) else {
                continue;
            };
            let depth = upright.back.total() - upright.front.total();
            let lean = lean(apart.abs(), upright.length(), depth);
            let shift = shift(lean, *back - *front, depth);
            if shift <= SHIFT_MOST {
                continue;
            }
            let message = format!(
                "the diagonals of {} are {} apart: an end is {} out of square, and rows {} apart in height if both ends lean alike, \
                 twice that if one is true",
                cx.panel_of(copy, cut.panel),
                apart.abs().show(cx.unit),
                lean.show(cx.unit),
                shift.show(cx.unit)
            );
            found.push(Finding::new(Rule::FootEndNotSquare, cx.here(), message).about(copy.key));
        }
    }
}

/// Boards that are not as thick as their card says.
pub(super) fn as_cut_thickness(cx: &Context, found: &mut Vec<Finding>) {
    for (copy, layout) in measured(cx) {
        for cut in &copy.as_cut {
            let planned = layout.upright(cut.panel).map(|upright| upright.thickness);
            let (Some(thick), Some(planned)) = (cut.thickness, planned) else {
                continue;
            };
            if (thick - planned).abs() <= THICKNESS_OFF_MOST {
                continue;
            }
            let message = format!(
                "{} is {} thick, {} by its card; over {} off the bays beside it are as much off: measure the batch",
                cx.panel_of(copy, cut.panel),
                thick.show(cx.unit),
                planned.show(cx.unit),
                THICKNESS_OFF_MOST.show(cx.unit)
            );
            found.push(Finding::new(Rule::AsCutThickness, cx.here(), message).about(copy.key));
        }
    }
}

#[cfg(test)]
mod tests;
