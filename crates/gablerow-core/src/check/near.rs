//! Two holes that nearly are one: a figure of eight in the board.

use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

use super::context::holes;
use super::{Context, Finding, Rule, Strand, strands};
use crate::job::BackRule;
use crate::layout::RowName;

/// Centres of different rows, or of single bores, that are less than the least spacing apart and not the same.
pub(super) fn near_miss_rows(cx: &Context, found: &mut Vec<Finding>) {
    let near = cx.limits().near;
    for (_, face) in cx.faces() {
        let all: Vec<Strand> = strands(face, cx.layout).collect();
        for (at, one) in all.iter().enumerate() {
            for other in &all[at + 1..] {
                let one_row = one.row.is_some() && other.row.is_some() && one.x == other.x;
                if one_row || one.same_place(*other).is_some() {
                    continue;
                }
                let Some((one, other)) = one.nearer(*other, near) else {
                    continue;
                };
                let place = cx.here().on(face.id).at(&one);
                let finding = Finding::new(Rule::NearMissRows, place, sentence(cx, one, other));
                found.push(finding.about_both((Some(one.spec.owner), Some(other.spec.owner))));
            }
        }
    }
}

fn sentence(cx: &Context, one: Strand, other: Strand) -> String {
    let (apart, near) = (
        one.distance(other).show(cx.unit),
        cx.limits().near.show(cx.unit),
    );
    match (one.row, other.row) {
        (Some(name), Some(other_name)) => format!(
            "{} row at {} and {} row at {} are {apart} apart at {}, at least {near}; {}",
            name.word(),
            one.x.show(cx.unit),
            other_name.word(),
            other.x.show(cx.unit),
            holes(cx, &one),
            cure(cx, one, other)
        ),
        _ => format!(
            "{} are {apart} apart at {}, at least {near}; move one of them",
            cx.owners(one.spec, other.spec),
            holes(cx, &one)
        ),
    }
}

/// A back row that follows its setback can be brought onto the other row.
fn cure(cx: &Context, one: Strand, other: Strand) -> String {
    let follows = cx.shop().back_rule != BackRule::OnPitch;
    let (back, onto) = match (one.row, other.row) {
        (Some(RowName::Back), Some(name)) if follows && name != RowName::Back => (one, other),
        (Some(name), Some(RowName::Back)) if follows && name != RowName::Back => (other, one),
        _ => return "drop the holes from one row".into(),
    };
    let setback = cx.shop().setback_back + (back.x - onto.x);
    format!(
        "a back setback of {} makes them one row",
        setback.show(cx.unit)
    )
}

#[cfg(test)]
mod tests;
