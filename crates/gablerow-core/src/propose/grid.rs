//! Heights that balance, offsets that do, offsets that suit the fronts, and a back row that falls on a runner row.

use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

use super::Proposal;
use crate::edit::{Edit, Measure};
use crate::grid::{balancing_offsets, start_offsets};
use crate::job::{BackRule, Cabinet, FrontHeight, Job, Key};
use crate::layout::Layout;
use crate::measure::Length;

fn proposal(title: String, why: Vec<String>, edit: Edit) -> Proposal {
    Proposal {
        fronts: Vec::new(),
        title,
        why,
        edit: Some(edit),
        already: false,
    }
}

/// What would balance the sides: the heights next to this one, then the offsets that balance this height.
pub(super) fn balance(job: &Job, cabinet: &Cabinet) -> Vec<Proposal> {
    let show = |length: Length| length.show(job.unit).to_string();
    let ends = cabinet.offsets.ends(cabinet.size.height);
    if ends.mismatch().is_balanced() {
        return Vec::new();
    }
    let out = format!(
        "holes counted from the head fall {} beside those from the foot",
        show(ends.mismatch().size())
    );
    let heights = ends.balanced_heights();
    let mut made: Vec<Proposal> = heights
        .below
        .into_iter()
        .chain([heights.above])
        .map(|height| {
            let by = height - cabinet.size.height;
            let way = if by < Length::ZERO { "lower" } else { "higher" };
            proposal(
                format!(
                    "height {}, {} {way}: balanced",
                    show(height),
                    show(by.abs())
                ),
                [
                    out.clone(),
                    format!(
                        "{} and {} taken from it, whole pitches are left",
                        show(cabinet.offsets.foot),
                        show(cabinet.offsets.head)
                    ),
                ]
                .into(),
                Edit::Measure {
                    cabinet: cabinet.key,
                    measure: Measure::Height,
                    value: height,
                },
            )
        })
        .collect();
    let offsets = balancing_offsets(cabinet.size.height, job.shop.limits.to_end);
    for offset in offsets.into_iter().filter(|offset| offset.usable) {
        let offset = offset.offset;
        made.push(proposal(
            format!("offsets {0} and {0}: this height is balanced", show(offset)),
            [
                out.clone(),
                format!(
                    "{} less twice {} is whole pitches",
                    show(cabinet.size.height),
                    show(offset)
                ),
            ]
            .into(),
            Edit::Offsets {
                cabinet: cabinet.key,
                foot: offset,
                head: offset,
            },
        ));
    }
    made
}

/// Offsets that put the gaps between fronts of whole modules on holes, or midway between them; none when they are so.
pub(super) fn registered(job: &Job, cabinet: &Cabinet) -> Vec<Proposal> {
    let mut has_modules = false;
    cabinet.opening.each(&mut |opening| {
        let modules = |front: &crate::job::Front| matches!(front.height, FrontHeight::Modules(_));
        has_modules |= opening.fronts.iter().any(modules);
    });
    if !has_modules {
        return Vec::new();
    }
    let rules = &job.shop.fronts;
    let at = |reveal| start_offsets(reveal, rules.gap, job.shop.limits.to_end);
    let (foot, head) = (at(rules.reveal_foot), at(rules.reveal_head));
    let ways = [
        ("on holes", foot.registered, head.registered),
        ("midway between holes", foot.shifted, head.shifted),
    ];
    let is_now =
        |offset: Length, wanted: Length| (offset - wanted).wrap_to(Length::PITCH) == Length::ZERO;
    let fits = |&(_, foot, head): &(&str, Length, Length)| {
        is_now(cabinet.offsets.foot, foot) && is_now(cabinet.offsets.head, head)
    };
    if ways.iter().any(fits) {
        return Vec::new();
    }
    let show = |length: Length| length.show(job.unit).to_string();
    ways.into_iter()
        .map(|(where_, foot, head)| {
            proposal(
                format!(
                    "offsets {} and {}: gaps of fronts fall {where_}",
                    show(foot),
                    show(head)
                ),
                [format!(
                    "reveals {} and {} less half a gap of {}",
                    show(rules.reveal_foot),
                    show(rules.reveal_head),
                    show(rules.gap)
                )]
                .into(),
                Edit::Offsets {
                    cabinet: cabinet.key,
                    foot,
                    head,
                },
            )
        })
        .collect()
}

/// A back setback that lands the back row on a runner row it almost touches.
pub(super) fn back_row(
    job: &Job,
    cabinet: &Cabinet,
    layout: &Layout,
    bay: Key,
) -> Option<Proposal> {
    if job.shop.back_rule == BackRule::OnPitch {
        return None;
    }
    let made = layout.bays.iter().find(|made| made.key == bay)?;
    let back = made.back_row.total();
    let faces = [made.left, made.right].into_iter();
    let rows = faces
        .filter_map(|face| layout.face(face))
        .flat_map(|face| &face.rows);
    let off = rows
        .map(|row| row.x.total() - back)
        .filter(|off| *off != Length::ZERO && off.abs() < job.shop.limits.near)
        .min_by_key(|off| off.abs())?;
    // A row further back is nearer to where the back setback starts.
    let setback = job.shop.setback_back - off;
    let show = |length: Length| length.show(job.unit).to_string();
    Some(proposal(
        format!("back setback {}: one row with the runner's", show(setback)),
        [
            format!(
                "the back row at {} and a row at {} are {} apart, at least {}",
                show(back),
                show(back + off),
                show(off.abs()),
                show(job.shop.limits.near)
            ),
            "this is the whole job's: every cabinet follows".to_string(),
        ]
        .into(),
        Edit::Measure {
            cabinet: cabinet.key,
            measure: Measure::SetbackBack,
            value: setback,
        },
    ))
}
