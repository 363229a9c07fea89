//! Pages to read, line by line: the keys, and where the numbers come from. View draws them, update turns them.

use gablerow_core::sum::Sum;
use gablerow_papers::wrap;

use crate::action::Action;
use crate::app::{App, Pane};
use crate::keymap::{self, Context};
use crate::scene::Scene;

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

/// Every key, those of the place one came from first; digits as one.
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
    }
    lines
}

fn why(app: &App) -> Vec<PageLine> {
    let Some(scene) = Scene::at(&app.desk.job, &app.spot) else {
        return Vec::new();
    };
    let room = usize::from(app.size.0.saturating_sub(4));
    let mut lines = Vec::new();
    for (what, sum) in sums(app, &scene) {
        lines.push(PageLine::Heading(what));
        let text = wrap(&sum.show(app.desk.job.unit).to_string(), room).into_iter();
        lines.extend(text.map(|line| PageLine::Text(format!("  {line}"))));
    }
    lines
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
