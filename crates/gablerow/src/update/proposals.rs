//! Proposals: one at a time, or all that go together.

use gablerow_core::check::{Finding, Rule};
use gablerow_core::edit::Edit;
use gablerow_core::job::Key;
use gablerow_core::propose::{self, Proposal};

use super::{Effect, bench, checks, edit};
use crate::action::Action;
use crate::app::{App, Asking, Notice, Pane, Told};
use crate::proposals::proposals;
use crate::scene::{FrontSpot, Scene, Spot, Thing, front_spot};

/// Opens what would carry the fronts of the cabinet; for a front one stands on that is carried already, anew for that.
pub(super) fn open_hardware(app: &mut App) {
    let front = front_spot(app).and_then(|spot| match spot.at {
        Thing::Front(key) => Some(key),
        _ => None,
    });
    for also in [None, front] {
        if open(app, Asking::Hardware(also)) {
            return;
        }
    }
    app.notice = Some(Notice::refused(
        "nothing waits for hardware here; stand on a front to ask anew",
    ));
}

/// Opens what the bay one stands in and its cabinet could have.
pub(super) fn open_bay(app: &mut App) {
    if !open(app, Asking::Bay) {
        app.notice = Some(Notice::refused(
            "nothing to propose: balanced, and the bay has its shelf holes",
        ));
    }
}

/// Opens what would mend the finding on the hole one stands on, the heaviest one that is open.
pub(super) fn open_mend_here(app: &mut App) {
    let scene = Scene::at(&app.desk.job, &app.spot);
    let here = scene.and_then(|scene| finding_at(&scene, &app.spot).cloned());
    match here {
        Some(finding) => mend(app, &finding, None),
        None => refuse(
            app,
            "no finding on this hole; the checks list those of the cabinet",
        ),
    }
}

/// Opens what would mend the heaviest open finding about the thing one stands on, seen from the front: of an opening also about
/// its fronts and the bay in it.
pub(super) fn open_mend_front(app: &mut App) {
    let scene = Scene::at(&app.desk.job, &app.spot);
    let here = front_spot(app).and_then(|spot| {
        let scene = scene?;
        let about = things_at(&scene, &spot);
        let mut open = scene.findings.iter().filter(|it| it.accepted.is_none());
        let is_about_it =
            |finding: &&Finding| finding.about.iter().flatten().any(|it| about.contains(it));
        open.find(is_about_it).cloned()
    });
    match here {
        Some(finding) => mend(app, &finding, None),
        None => refuse(
            app,
            "no finding about this; the checks list those of the cabinet",
        ),
    }
}

/// What one stands on; of an opening its fronts too, and the bay in it.
fn things_at(scene: &Scene, spot: &FrontSpot) -> Vec<Key> {
    let mut things = vec![spot.at.key()];
    if let Thing::Opening(here) = spot.at {
        things.push(spot.bay);
        scene.cabinet.opening.each(&mut |opening| {
            if opening.key == here {
                things.extend(opening.fronts.iter().map(|front| front.key));
            }
        });
    }
    things
}

/// The first open finding that names the hole one stands on, or else one about what owns that hole.
fn finding_at<'a>(scene: &'a Scene, spot: &Spot) -> Option<&'a Finding> {
    let names_it = |finding: &&Finding| {
        let place = finding.place;
        let holes = place
            .holes
            .is_some_and(|(first, last)| (first..=last).contains(&spot.hole));
        let is_back_to_back = finding.rule.is_back_to_back();
        let is_face = |face| face == spot.face || (is_back_to_back && face == spot.face.behind());
        place.face.is_some_and(is_face) && holes
    };
    let owners: Vec<_> = scene.dot(spot).map_or_else(Vec::new, |dot| {
        dot.hole
            .users
            .iter()
            .map(|&(_, owner)| Some(owner))
            .collect()
    });
    let is_about_it = |finding: &&Finding| finding.about.iter().any(|it| owners.contains(it));
    let open = || scene.findings.iter().filter(|it| it.accepted.is_none());
    open().find(names_it).or_else(|| open().find(is_about_it))
}

/// Opens what would mend a finding. From the checks one goes where it is drawn: onto its face, or to the front when it is about
/// no face and one came from there.
pub(super) fn mend(app: &mut App, finding: &Finding, from: Option<usize>) {
    let (before, screen) = (app.spot, app.screen);
    if from.is_some() {
        checks::go_to_place(app, finding);
    }
    let finding = Told::of(finding);
    if !open(app, Asking::Mend { finding, from }) {
        (app.spot, app.screen) = (before, screen);
        app.pane = from.map(Pane::Checks);
        refuse(
            app,
            "no single change mends this; the finding says what would do",
        );
    }
}

/// Whether there is anything to show.
fn open(app: &mut App, wish: Asking) -> bool {
    app.pane = Some(Pane::Proposals { line: 0, wish });
    let found = !proposals(app).is_empty();
    if !found {
        app.pane = None;
    }
    found
}

pub(super) fn act(app: &mut App, action: Action) -> Vec<Effect> {
    let Some(Pane::Proposals { line, wish }) = app.pane else {
        return Vec::new();
    };
    let open = proposals(app);
    let last = open.len().saturating_sub(1);
    let at = |line| Some(Pane::Proposals { line, wish });
    match action {
        Action::Up => app.pane = at(line.saturating_sub(1)),
        Action::Down => app.pane = at((line + 1).min(last)),
        Action::Leave => app.pane = behind(wish),
        Action::Enter => match open.into_iter().nth(line) {
            Some(Proposal {
                edit: Some(taken), ..
            }) => {
                let effects = take(app, wish, &taken);
                answered(app);
                return effects;
            }
            Some(Proposal {
                already: true,
                title,
                ..
            }) => refuse(app, &title),
            _ => refuse(app, "this cannot be had; its reasons say what would work"),
        },
        Action::TakeAll if !wish.goes_together() => {
            refuse(app, "these are one or the other; take them one by one");
        }
        Action::TakeAll => match propose::all_in_one(&open) {
            Some(all) => {
                let effects = edit(app, &all);
                answered(app);
                return effects;
            }
            None => refuse(
                app,
                "none of these can be had; their reasons say what would work",
            ),
        },
        _ => {}
    }
    Vec::new()
}

/// Makes the edit of one proposal. Fittings that go to where their holes were bored are there on record too.
fn take(app: &mut App, wish: Asking, taken: &Edit) -> Vec<Effect> {
    let of_count = match wish {
        Asking::Mend { finding, .. } if finding.rule == Rule::MiscountedHole => {
            Some((app.desk.job.clone(), finding.place.cabinet))
        }
        _ => None,
    };
    let mut effects = edit(app, taken);
    if let Some((before, cabinet)) = of_count {
        effects.extend(bench::recount(app, &before, cabinet));
    }
    effects
}

fn refuse(app: &mut App, text: &str) {
    app.notice = Some(Notice::refused(text));
}

/// What lay there before: the checks, when one came from them.
fn behind(wish: Asking) -> Option<Pane> {
    match wish {
        Asking::Mend { from, .. } => from.map(Pane::Checks),
        Asking::Hardware(_) | Asking::Bay => None,
    }
}

/// What was asked anew has been answered; the rest stays open.
fn answered(app: &mut App) {
    if let Some(Pane::Proposals {
        wish: Asking::Hardware(also),
        ..
    }) = &mut app.pane
    {
        *also = None;
    }
    settle(app);
}

/// After a change there may be fewer proposals, or none.
pub(super) fn settle(app: &mut App) {
    let Some(Pane::Proposals { line, wish }) = app.pane else {
        return;
    };
    let count = proposals(app).len();
    app.pane = match count {
        0 => behind(wish),
        _ => Some(Pane::Proposals {
            line: line.min(count - 1),
            wish,
        }),
    };
    checks::settle(app);
}

#[cfg(test)]
mod tests;
