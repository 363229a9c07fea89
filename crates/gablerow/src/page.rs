//! Pages to read, line by line: the keys and the rules, and where the numbers come from. View draws them, update turns them.

use gablerow_core::cautions::GENERAL;
use gablerow_core::check::{Level, RULES};
use gablerow_core::strength::{board_rests_on, sag_rests_on, tip_rests_on};
use gablerow_core::sum::Sum;
use gablerow_papers::wrap;

use crate::action::Action;
use crate::app::{App, Pane, Screen};
use crate::keymap::{self, Context};
use crate::scene::{FrontScene, Scene};

/// The column in which the sentences of the keys begin.
pub const SENTENCES: u16 = 14;
/// Lines of the screen that a page does not have: its title and the last line.
const LINES_TAKEN: u16 = 2;

/// A line of a page.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum PageLine {
    /// What the lines below are about.
    Heading(String),
    /// A key, and what it does; without a key the sentence goes on.
    Key(String, String),
    /// Text.
    Text(String),
}

/// The lines of the page that lies on the screen; none when there is no page.
#[must_use]
pub fn lines(app: &App) -> Vec<PageLine> {
    match app.pane {
        Some(Pane::Help(_)) => keys(app),
        Some(Pane::Why(_)) => why(app),
        _ => Vec::new(),
    }
}

/// How many lines of a page the screen shows.
#[must_use]
pub fn shown(app: &App) -> usize {
    usize::from(app.size.1.saturating_sub(LINES_TAKEN))
}

/// The line that a page can be turned to at most: with its last line at the foot of the screen.
#[must_use]
pub fn last_start(app: &App) -> usize {
    lines(app).len().saturating_sub(shown(app))
}

/// Every key, those of the place one came from first, digits as one; then every rule, which come right after the keys of the
/// checks for whoever came from there.
fn keys(app: &App) -> Vec<PageLine> {
    let charset = app.theme.charset();
    let room = usize::from(app.size.0.saturating_sub(SENTENCES));
    let here = app.context_below();
    let others = Context::ALL.into_iter().filter(|&context| context != here);
    let mut lines = Vec::new();
    for context in std::iter::once(here).chain(others) {
        lines.push(PageLine::Heading(context.title().to_owned()));
        for binding in keymap::bindings(context) {
            let key = match binding.action {
                Action::Digit(1) => "1 to 9, 0".to_owned(),
                Action::Digit(_) => continue,
                _ => binding.key.name(charset).into_owned(),
            };
            let keys = std::iter::once(key).chain(std::iter::repeat(String::new()));
            let sentences = wrap(binding.action.help(), room).into_iter();
            lines.extend(
                keys.zip(sentences)
                    .map(|(key, text)| PageLine::Key(key, text)),
            );
        }
        if context == here && here == Context::Checks {
            lines.extend(rules(app));
        }
    }
    if here != Context::Checks {
        lines.extend(rules(app));
    }
    lines
}

/// Every rule of the checks under its level, in the order they are tested.
fn rules(app: &App) -> Vec<PageLine> {
    let room = usize::from(app.size.0.saturating_sub(6));
    let mut lines = Vec::new();
    for level in Level::ALL {
        lines.push(PageLine::Heading(format!("What is a {}", level.word())));
        for info in RULES.iter().filter(|info| info.level == level) {
            lines.push(PageLine::Text(info.name.to_owned()));
            let help = wrap(info.help, room).into_iter();
            lines.extend(help.map(|line| PageLine::Text(format!("  {line}"))));
        }
    }
    lines
}

fn why(app: &App) -> Vec<PageLine> {
    let Some(scene) = Scene::at(&app.desk.job, &app.spot) else {
        return Vec::new();
    };
    let room = usize::from(app.size.0.saturating_sub(4));
    let mut lines = barred(app, &scene, room);
    let sums = match app.screen {
        Screen::Front => front_sums(app),
        _ => sums(app, &scene),
    };
    for (what, sum) in sums {
        lines.push(PageLine::Heading(what));
        let text = wrap(&sum.show(app.desk.job.unit).to_string(), room).into_iter();
        lines.extend(text.map(|line| PageLine::Text(format!("  {line}"))));
    }
    if app.screen != Screen::Front {
        lines.extend(strength(app, &scene, room));
    }
    lines
}

/// Why a pin would be wrong on the hole under the cursor of a face, whole; nothing where it would not, or something is bored.
fn barred(app: &App, scene: &Scene, room: usize) -> Vec<PageLine> {
    let is_free = app.screen != Screen::Front && scene.dot(&app.spot).is_none();
    let why = || scene.why_barred(&app.desk.job, &app.spot);
    let Some(finding) = is_free.then(why).flatten() else {
        return Vec::new();
    };
    let (hole, level, rule) = (app.spot.hole, finding.level.word(), finding.rule_name());
    let text = format!("{}. {}", finding.message, finding.rule.info().help);
    let heading = PageLine::Heading(format!("a pin on hole {hole}: {level}, {rule}"));
    let text = wrap(&text, room).into_iter();
    let text = text.map(|line| PageLine::Text(format!("  {line}")));
    std::iter::once(heading).chain(text).collect()
}

/// What the strength of the loose shelf on the hole under the cursor rests on, with the caution; nothing for what is no shelf.
fn strength(app: &App, scene: &Scene, room: usize) -> Vec<PageLine> {
    let dot = scene.dot(&app.spot);
    let owners = dot.map_or(&[][..], |dot| &dot.hole.users);
    let mut shelves = owners
        .iter()
        .filter_map(|(_, key)| scene.cabinet.loose_shelf(*key));
    let Some(shelf) = shelves.next() else {
        return Vec::new();
    };
    let board = app.desk.job.cards.board(&shelf.board);
    let rests = [sag_rests_on(), tip_rests_on()];
    let rests = rests.into_iter().chain(board.map(board_rests_on));
    let text = rests.chain([GENERAL.to_owned()]);
    let text = text.flat_map(|line| wrap(&line, room));
    let text = text.map(|line| PageLine::Text(format!("  {line}")));
    let heading = PageLine::Heading("strength: what its figures rest on".to_owned());
    std::iter::once(heading).chain(text).collect()
}

/// Every number of the front screen that was added up from others: of what is under the cursor, and of its bay.
fn front_sums(app: &App) -> Vec<(String, Sum)> {
    let mut sums = Vec::new();
    let Some((scene, spot)) =
        FrontScene::at(app).and_then(|scene| scene.spot(app.front.at).map(|spot| (scene, spot)))
    else {
        return sums;
    };
    let name = scene.thing_name(spot.at);
    let mut say = |what: &str, of: &str, sum: Sum| sums.push((format!("{what} of {of}"), sum));
    if let Some(front) = scene.front(spot.at.key()) {
        say("width", &name, front.width);
        say("height", &name, front.height);
        if front.kind.is_seen() {
            say("lap on the left", &name, front.lap_left);
            say("lap on the right", &name, front.lap_right);
        }
    }
    if let Some((_, bay)) = scene.bay(spot.bay) {
        let name = scene.opening_name(spot.bay);
        say("floor", &name, bay.floor);
        say("ceiling", &name, bay.ceiling);
        say("inner depth", &name, bay.inner_depth);
    }
    sums
}

/// Every number of the face screen that was added up from others, those of the cursor first.
fn sums(app: &App, scene: &Scene) -> Vec<(String, Sum)> {
    let mut sums = Vec::new();
    let hole = app.spot.hole;
    let Some(upright) = scene.layout.upright(scene.drawing.face.panel) else {
        return sums;
    };
    let first = scene.layout.grid.first;
    let height = Sum::of("offset of hole 1", first)
        .plus("whole pitches of 32", scene.layout.height(hole) - first);
    let mut say = |what: String, sum: Sum| sums.push((what, sum));
    say(
        format!("hole {hole} above the foot of the panel"),
        height.minus(&upright.foot),
    );
    say(
        format!("hole {hole} below the head of the panel"),
        upright.head.minus(&height),
    );
    let is_here = |x| Some(x) == scene.row(app.spot.row).map(|row| row.x);
    let mut rows: Vec<_> = scene.drawing.rows.iter().collect();
    rows.sort_by_key(|row| !is_here(row.x));
    for row in rows {
        let name = format!(
            "{} row at {}",
            row.name.word(),
            row.x.show(app.desk.job.unit)
        );
        say(
            format!("{name}, from the front edge"),
            row.from_carcass.minus(&upright.front),
        );
        say(
            format!("{name}, from the back edge"),
            upright.back.minus(&row.from_carcass),
        );
    }
    if let Some((bay, _)) = scene.bay_at(hole) {
        say("floor of the bay".to_owned(), bay.floor);
        say("ceiling of the bay".to_owned(), bay.ceiling);
        say("inner depth".to_owned(), bay.inner_depth);
    }
    say(
        "length of the panel".to_owned(),
        upright.head.minus(&upright.foot),
    );
    sums
}
