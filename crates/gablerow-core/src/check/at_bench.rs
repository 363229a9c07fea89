//! What the shop's way of working asks attention for: bands that are not on yet, bits, test holes, settings by eye, order.

use alloc::format;
use alloc::vec::Vec;

use super::{Context, Finding, Rule};
use crate::bench::outlook;
use crate::job::{BandState, Bit, Edge, Gauge, Hand, WorkOrder};
use crate::layout::Use;
use crate::measure::Length;

/// What a test hole may be off, either way, and a base off its middle: the budgets of boring depth and of an index pin. House
/// defaults, both.
pub(crate) const DEPTH_OFF_MOST: Length = Length::from_um(300);
pub(crate) const BASE_OFF_MOST: Length = Length::from_um(100);

/// What a setting by a pencil line is off, either way: a house default.
pub(crate) const BY_EYE: Length = Length::from_um(500);

/// Settings from an edge whose band is not on yet.
pub(super) fn band_after_boring(cx: &Context, found: &mut Vec<Finding>) {
    let band = &cx.shop().band;
    if band.on == BandState::BeforeBoring {
        return;
    }
    let set_ups = outlook(cx.job, cx.cabinet, cx.layout).set_ups;
    let from_front = set_ups.iter().filter(|it| it.edge == Edge::Front);
    let Some(it) = from_front.min_by_key(|it| it.row) else {
        return;
    };
    let message = format!(
        "the front edges are NOT banded yet: the row at {} is set to {}, the band {} less and the pre-mill {} more",
        it.row.show(cx.unit),
        it.setting.total().show(cx.unit),
        band.thickness.show(cx.unit),
        band.pre_mill.show(cx.unit)
    );
    found.push(Finding::new(Rule::BandAfterBoring, cx.here(), message));
}

/// A pointed bit in blind holes.
pub(super) fn bit_wrong_for_hole(cx: &Context, found: &mut Vec<Finding>) {
    if cx.shop().bit == Bit::Flat {
        return;
    }
    let strands = cx
        .strands()
        .filter(|(_, _, strand)| strand.spec.depth.is_some());
    if strands.count() > 0 {
        let message = "blind holes are bored with a pointed bit, which dimples the far face; a flat one does not";
        found.push(Finding::new(
            Rule::BitWrongForHole,
            cx.here(),
            message.into(),
        ));
    }
}

/// A test hole that came out otherwise than wanted.
pub(super) fn depth_zero_unproved(cx: &Context, found: &mut Vec<Finding>) {
    let (want, is) = (cx.shop().depth, cx.shop().bench.test_depth);
    let Some(is) = is.filter(|is| (*is - want).abs() > DEPTH_OFF_MOST) else {
        return;
    };
    if cx
        .strands()
        .any(|(_, _, strand)| strand.spec.depth == Some(want))
    {
        let message = format!(
            "the test hole is {} deep for {}; over {} off its zero was on the wrong surface: set it right and test again",
            is.show(cx.unit),
            want.show(cx.unit),
            DEPTH_OFF_MOST.show(cx.unit)
        );
        found.push(Finding::new(Rule::DepthZeroUnproved, cx.here(), message));
    }
}

/// A bit off the middle of its base, and rows bored both ways round.
pub(super) fn base_off_centre(cx: &Context, found: &mut Vec<Finding>) {
    let Some(off) = cx.shop().bench.base_off.filter(|off| *off > BASE_OFF_MOST) else {
        return;
    };
    let set_ups = outlook(cx.job, cx.cabinet, cx.layout).set_ups;
    let to = |hand| set_ups.iter().any(|it| it.foot_to == hand);
    if to(Hand::Left) && to(Hand::Right) {
        let message = format!(
            "the bit is {} off the middle of its base, so rows with the foot to the left and to the right differ by {}",
            off.show(cx.unit),
            (off * 2).show(cx.unit)
        );
        found.push(Finding::new(Rule::BaseOffCentre, cx.here(), message));
    }
}

/// Rows of hardware that is in pairs, set by eye.
pub(super) fn gauge_by_eye(cx: &Context, found: &mut Vec<Finding>) {
    if cx.shop().bench.gauge == Gauge::Stop {
        return;
    }
    let paired = |use_| matches!(use_, Use::Plate | Use::Runner);
    if cx.strands().any(|(_, _, strand)| paired(strand.spec.use_)) {
        let message = format!(
            "settings are held by eye, {} either way: rows of a pair may be {} apart, and a front stands askew by as much",
            BY_EYE.show(cx.unit),
            (BY_EYE * 2).show(cx.unit)
        );
        found.push(Finding::new(Rule::GaugeByEye, cx.here(), message));
    }
}

/// An order of work that is asked for and takes longer than another.
pub(super) fn changeovers_scattered(cx: &Context, found: &mut Vec<Finding>) {
    let order = cx.shop().bench.order;
    if order == WorkOrder::Least {
        return;
    }
    let all = outlook(cx.job, cx.cabinet, cx.layout).orders(cx.job);
    let takes = match order {
        WorkOrder::Least => all.least,
        WorkOrder::PanelFirst => all.panel_first,
        WorkOrder::SettingFirst => all.setting_first,
    };
    if takes > all.least {
        let message = format!(
            "{} one copy takes {takes} s, in the order that takes least {} s",
            order.words(),
            all.least
        );
        found.push(Finding::new(Rule::ChangeoversScattered, cx.here(), message));
    }
}

#[cfg(test)]
mod tests;
