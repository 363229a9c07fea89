//! The cabinets of the job, and how each of them stands.

use gablerow_core::bench::{Progress, progress_of_cabinet};
use gablerow_core::check::{self, Level};
use gablerow_core::counted::counted;
use gablerow_core::job::{Cabinet, Copy, Job, Key};
use gablerow_core::layout::Layout;
use gablerow_core::stamp::Stamp;

use super::canvas::Canvas;
use super::{bench, words};
use crate::app::App;
use crate::theme::Role;

/// Draws the list.
pub(super) fn draw(canvas: &mut Canvas, app: &App, here: Key) {
    let job = &app.desk.job;
    let after = canvas.text(1, 0, job.title.as_str(), Role::Title);
    let cabinets = counted(job.cabinets.len(), "cabinet");
    canvas.text(
        after + 2,
        0,
        &format!("{cabinets}   {}", app.desk.path.display()),
        Role::Dim,
    );
    let at = Columns::of(canvas.width());
    let words: [(u16, &str); 9] = [
        (NAME, "cabinet"),
        (SIZES, "width x height x depth"),
        (at.state, "rev"),
        (at.holes, "holes"),
        (at.bored, "bored"),
        (at.levels[0], "stop"),
        (at.levels[1], "warn"),
        (at.levels[2], "note"),
        (at.built, "built"),
    ];
    for (x, words) in words {
        canvas.text(x, 2, words, Role::Dim);
    }
    let lines = usize::from(canvas.height().saturating_sub(6));
    let place = job.position(here).unwrap_or(0);
    let from = place.saturating_sub(lines.saturating_sub(1));
    for (y, cabinet) in (3..).zip(job.cabinets.iter().skip(from).take(lines)) {
        line(canvas, job, cabinet, (&at, y));
        if cabinet.key == here {
            canvas.mark_line(y);
        }
    }
    if let Some(cabinet) = job.cabinet(here) {
        let y = canvas.height().saturating_sub(2);
        let after = canvas.text(1, y, &copies(cabinet), Role::Plain);
        bored(canvas, job, cabinet, (after, y));
    }
}

/// What is built of a cabinet: `G1 x3: 1, 2, 3 mirrored`.
fn copies(cabinet: &Cabinet) -> String {
    let name = |copy: &Copy| {
        let how = if copy.mirrored { " mirrored" } else { "" };
        format!("{}{how}", copy.name)
    };
    let names: Vec<String> = cabinet.copies.iter().map(name).collect();
    let count = cabinet.copies.len();
    format!("{} x{count}: {}", cabinet.name, names.join(", "))
}

/// How much of a cabinet is bored, and what of that is wanted no longer; nothing before it is begun.
fn bored(canvas: &mut Canvas, job: &Job, cabinet: &Cabinet, (x, y): (u16, u16)) {
    let panels = progress_of_cabinet(job, cabinet);
    let (done, all) = bench::sum(panels.iter());
    let stale = stale(&panels);
    let mut x = x;
    if done > 0 {
        x = canvas.text(x, y, &format!("; {done} of {all} holes bored"), Role::Plain);
    }
    if stale > 0 {
        let text = format!("; {stale} bored and not wanted");
        canvas.text(x, y, &text, Role::Warn);
    }
}

fn stale(panels: &[Progress]) -> usize {
    panels.iter().map(|it| it.stale.len()).sum()
}

/// The first columns of what stands in a line.
const NAME: u16 = 1;
const SIZES: u16 = 14;
/// The columns of sizes, in a narrow window and at most: inches take more.
const SIZES_WIDE: u16 = 23;
const SIZES_MOST: u16 = 33;
/// The columns of the bar; behind it stands a mark where something bored is wanted no longer.
const BAR: u16 = 6;

/// The first columns of what stands behind the sizes.
struct Columns {
    sizes_wide: u16,
    state: u16,
    holes: u16,
    bored: u16,
    levels: [u16; 3],
    built: u16,
}

impl Columns {
    fn of(width: u16) -> Self {
        let sizes_wide = (SIZES_WIDE + width.saturating_sub(80)).min(SIZES_MOST);
        let state = SIZES + sizes_wide + 1;
        Self {
            sizes_wide,
            state,
            holes: state + 9,
            bored: state + 15,
            levels: [22, 27, 32].map(|x| state + x),
            built: state + 37,
        }
    }
}

/// One cabinet: its sizes, its state, how much there is to bore and is bored, and what the checks say.
fn line(canvas: &mut Canvas, job: &Job, cabinet: &Cabinet, (at, y): (&Columns, u16)) {
    let layout = Layout::of(cabinet, job);
    let findings = check::of_cabinet(job, cabinet, &layout);
    let size = cabinet.size;
    let [width, height, depth] =
        [size.width, size.height, size.depth].map(|length| length.show(job.unit));
    let sizes = format!("{width} x {height} x {depth}");
    let stamp = Stamp::of(job, cabinet, &layout);
    let state = format!("{} {}", stamp.number, stamp.capitals());
    let faces = layout.uprights.iter().flat_map(|upright| &upright.faces);
    let holes: usize = faces.map(|face| face.holes(&layout).len()).sum();
    let cells = [
        (NAME, 12, cabinet.name.to_string()),
        (SIZES, at.sizes_wide, sizes),
        (at.state, 10, state),
        (at.holes + 1, 4, format!("{holes:>4}")),
    ];
    for (x, wide, text) in cells {
        canvas.part(x, y, wide, 1).text(0, 0, &text, Role::Plain);
    }
    let panels = progress_of_cabinet(job, cabinet);
    let count = bench::sum(panels.iter());
    if count.0 > 0 {
        bench::gauge(canvas, (at.bored, y), BAR, count);
    }
    if stale(&panels) > 0 {
        canvas.text(at.bored + BAR, y, "!", Role::Warn);
    }
    for (x, level) in at.levels.into_iter().zip(Level::ALL) {
        let count = words::open_findings(&findings, level).count();
        let role = if count == 0 {
            Role::Dim
        } else {
            words::level_role(level)
        };
        canvas.text(x, y, &format!("{count:>4}"), role);
    }
    let built = format!("x{}", cabinet.copies.len());
    canvas.text(at.built, y, &format!("{built:>5}"), Role::Plain);
}
