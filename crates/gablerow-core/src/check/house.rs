//! What one shop has to hold together: one setback of front rows, boards that are measured, cards in one unit.

use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

use super::{Context, Finding, Rule};
use crate::cards::{Board, Runner};
use crate::job::{Bay, Division, FaceId, Hand, Key, Opening, PanelId, ShelfHeight};
use crate::layout;
use crate::measure::Length;

/// How near to whole inches a length is read as inches: 0.5, a house default. A 12 inch runner is sold as 305 too.
pub(crate) const NEARLY: Length = Length::from_um(500);

/// What a tenth is.
const TENTH: Length = Length::from_um(100);

/// A cabinet whose front row stands elsewhere than that of the first cabinet of the job that has holes in one: said once,
/// of the bay with the lowest key that departs.
pub(super) fn inset_overlay_mixed(cx: &Context, found: &mut Vec<Finding>) {
    let own = cx.cabinet.front_rows();
    if own.is_empty() {
        return;
    }
    let Some(first) = cx.job.first_with_front_row() else {
        return;
    };
    let of_first = first.front_rows();
    let Some((pattern, bay)) = of_first.first() else {
        return;
    };
    let wanted = layout::front_row(bay, cx.job).total();
    let row = |bay: &Bay| layout::front_row(bay, cx.job).total();
    let Some((key, bay)) = own.iter().find(|(_, bay)| row(bay) != wanted) else {
        return;
    };
    let other = if first.key == cx.cabinet.key {
        cx.opening(*pattern)
    } else {
        format!("{}, the first cabinet with holes", first.name)
    };
    let message = format!(
        "the front row of {} is at {}, but at {} in {other}; it takes a setting of its own",
        cx.opening(*key),
        row(bay).show(cx.unit),
        wanted.show(cx.unit)
    );
    let finding = Finding::new(Rule::InsetOverlayMixed, cx.here(), message);
    found.push(finding.about(*key));
}

/// What a partition stands on.
#[derive(Clone, Copy)]
struct Floor<'a> {
    board: Option<&'a Board>,
    /// The fixed shelf it is; `None` for the bottom.
    shelf: Option<Key>,
    /// Whether its middle is at a hole, so that half of what it is thicker lifts the partition.
    on_hole: bool,
}

/// Partitions with holes that stand on a board nobody has measured.
pub(super) fn partition_nominal_thickness(cx: &Context, found: &mut Vec<Finding>) {
    let floor = Floor {
        board: cx.job.cards.board(&cx.cabinet.carcass.bottom.board),
        shelf: None,
        on_hole: false,
    };
    partitions(cx, &cx.cabinet.opening, floor, found);
}

fn partitions(cx: &Context, opening: &Opening, floor: Floor, found: &mut Vec<Finding>) {
    match &opening.division {
        Division::Bay(_) => {}
        Division::SideBySide(parts) => {
            for (partition, _) in &parts.rest {
                if !partition.foot.runs_past {
                    found.extend(unmeasured(cx, partition.key, floor));
                }
            }
            for part in parts.parts() {
                partitions(cx, &part.opening, floor, found);
            }
        }
        Division::Stacked(parts) => {
            partitions(cx, &parts.first, floor, found);
            for (shelf, above) in &parts.rest {
                let floor = Floor {
                    board: cx.job.cards.board(&shelf.board),
                    shelf: Some(shelf.key),
                    on_hole: matches!(shelf.at, ShelfHeight::Hole(_)),
                };
                partitions(cx, above, floor, found);
            }
        }
    }
}

fn unmeasured(cx: &Context, partition: Key, floor: Floor) -> Option<Finding> {
    let board = floor.board.filter(|board| !board.is_measured())?;
    let panel = PanelId::Partition(partition);
    let mut faces = cx.layout.upright(panel)?.faces.iter();
    if !faces.any(|face| !face.rows.is_empty() || !face.bores.is_empty()) {
        return None;
    }
    let stands_on = match floor.shelf {
        Some(key) => cx.fitting(key),
        None => "the bottom".into(),
    };
    // With its middle at a hole, a board 0.2 thicker lifts what stands on it by 0.1; an off-cut under the foot would lift
    // it by all of the 0.2.
    let (more, cure) = if floor.on_hole {
        (TENTH * 2, "measure that board")
    } else {
        let packer = "measure that board, or lay an off-cut of it as packer between stop and foot";
        (TENTH, packer)
    };
    let message = format!(
        "{} stands on {stands_on}, {} by name and not measured: each {} more puts its holes {} high; {cure}",
        cx.layout.names.panel(panel),
        board.nominal.show(cx.unit),
        more.show(cx.unit),
        TENTH.show(cx.unit)
    );
    let face = FaceId {
        panel,
        toward: Hand::Left,
    };
    let finding = Finding::new(Rule::PartitionNominalThickness, cx.here().on(face), message);
    Some(finding.about(partition))
}

/// Runner cards of the cabinet with lengths in whole inches beside others in whole tens of millimetres.
pub(super) fn units_mixed(cx: &Context, found: &mut Vec<Finding>) {
    let runners = cx.bays().flat_map(|(_, bay)| &bay.runners);
    let mut used: Vec<_> = runners.map(|runner| (&runner.card, runner.key)).collect();
    used.sort();
    used.dedup_by_key(|(card, _)| *card);
    for (id, runner) in used {
        let mixed = cx.job.cards.runner(id).and_then(|card| mixed(cx, card));
        if let Some(message) = mixed {
            let finding = Finding::new(Rule::UnitsMixed, cx.here(), message);
            found.push(finding.about(runner));
        }
    }
}

fn mixed(cx: &Context, card: &Runner) -> Option<String> {
    let names = || card.lengths.iter().map(|length| length.name);
    let is_tens = |length: &Length| length.counts() % Length::from_mm(10).counts() == 0;
    let (long, inches) = names()
        .filter(|length| !is_tens(length))
        .find_map(|length| Some((length, inches(length)?)))?;
    let tens = names()
        .filter(is_tens)
        .min_by_key(|length| (*length - long).abs())?;
    Some(format!(
        "runner card {} has {} beside {}, which reads as {inches} inches beside mm; keep one unit on it",
        card.id,
        long.show(cx.unit),
        tens.show(cx.unit)
    ))
}

/// The whole inches that a length nearly is.
fn inches(length: Length) -> Option<i32> {
    let inch = Length::from_inch_64ths(64);
    let whole = (length + inch.half()).div_floor(inch);
    (whole > 0 && (length - inch * whole).abs() <= NEARLY).then_some(whole)
}

#[cfg(test)]
mod tests;
