//! Shelf zones that are meant to sit in the middle.

use alloc::format;
use alloc::vec::Vec;

use super::{Context, Finding, Rule};
use crate::job::{Datum, HolePlace, Zone};
use crate::layout::BayLayout;
use crate::measure::Length;

/// Zones counted from the middle at both ends that do not sit in the middle.
pub(super) fn zone_off_centre(cx: &Context, found: &mut Vec<Finding>) {
    for (made, bay) in cx.bays() {
        let off = bay
            .zones
            .iter()
            .filter_map(|zone| off_centre(cx, made, zone));
        found.extend(off);
    }
}

fn off_centre(cx: &Context, made: &BayLayout, zone: &Zone) -> Option<Finding> {
    let last = cx.layout.last;
    let on_grid = |place: HolePlace| {
        let number = place.number(last);
        let meant = place.datum == Datum::Middle && (1..=last).contains(&number);
        meant.then_some(number)
    };
    let (a, b) = (on_grid(zone.first)?, on_grid(zone.last)?);
    let (first, end) = (a.min(b), a.max(b));
    let count = end - first + 1;
    // Holes of the grid below the zone, less those above it; each moves it half a pitch.
    let twice_off = (first - 1) - (last - end);
    if twice_off == 0 {
        return None;
    }
    let off = Length::PITCH.half() * i32::from(twice_off);
    let way = if twice_off > 0 { "high" } else { "low" };
    let cure = if twice_off % 2 == 0 {
        let (holes, back) = (
            twice_off.abs() / 2,
            if twice_off > 0 { "down" } else { "up" },
        );
        format!("move it {holes} {back}")
    } else if count == 1 {
        "take 2 holes".into()
    } else {
        format!("take {} or {} holes", count - 1, count + 1)
    };
    let message = format!(
        "{}: {count} of {last} holes sit {} too {way} for the middle; {cure}",
        cx.fitting(zone.key),
        off.abs().show(cx.unit)
    );
    let place = cx.here().on(made.left).holes((first, end));
    Some(Finding::new(Rule::ZoneOffCentre, place, message).about(zone.key))
}

#[cfg(test)]
mod tests;
