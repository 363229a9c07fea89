//! The cabinets of the job, and how each of them stands.

use gablerow_core::check::{self, Level};
use gablerow_core::job::{Cabinet, Copy, Job, Key};
use gablerow_core::layout::Layout;
use gablerow_core::stamp::Stamp;

use super::canvas::Canvas;
use super::words;
use crate::app::App;
use crate::theme::Role;

/// Draws the list.
pub(super) fn draw(canvas: &mut Canvas, app: &App, here: Key) {
    let job = &app.desk.job;
    let after = canvas.text(1, 0, job.title.as_str(), Role::Title);
    let count = job.cabinets.len();
    let cabinets = if count == 1 { "cabinet" } else { "cabinets" };
    canvas.text(
        after + 2,
        0,
        &format!("{count} {cabinets}   {}", app.desk.path.display()),
        Role::Dim,
    );
    let heading = format!(
        " {:<12} {:<26} {:<10} {:>5} {:>4} {:>4} {:>4} {:>6}",
        "cabinet", "width x height x depth", "rev", "holes", "stop", "warn", "note", "built"
    );
    canvas.text(0, 2, &heading, Role::Dim);
    let lines = usize::from(canvas.height().saturating_sub(6));
    let at = job.position(here).unwrap_or(0);
    let from = at.saturating_sub(lines.saturating_sub(1));
    for (y, cabinet) in (3..).zip(job.cabinets.iter().skip(from).take(lines)) {
        line(canvas, job, cabinet, y);
        if cabinet.key == here {
            canvas.mark_line(y);
        }
    }
    if let Some(cabinet) = job.cabinet(here) {
        let y = canvas.height().saturating_sub(2);
        canvas.text(1, y, &copies(cabinet), Role::Plain);
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

/// One cabinet: its sizes, its state, how much there is to bore, and what the checks say.
fn line(canvas: &mut Canvas, job: &Job, cabinet: &Cabinet, y: u16) {
    let layout = Layout::of(cabinet, job);
    let findings = check::of_cabinet(job, cabinet, &layout);
    let size = cabinet.size;
    let [width, height, depth] =
        [size.width, size.height, size.depth].map(|length| length.show(job.unit));
    let sizes = format!("{width} x {height} x {depth}");
    let stamp = Stamp::of(job, cabinet, &layout);
    let state = format!("{} {}", stamp.number, stamp.capitals());
    let bored = layout.uprights.iter().flat_map(|upright| &upright.faces);
    let holes: usize = bored.map(|face| face.holes(&layout).len()).sum();
    let name: String = cabinet.name.as_str().chars().take(12).collect();
    let text = format!(" {name:<12} {sizes:<26} {state:<10} {holes:>5}");
    canvas.text(0, y, &text, Role::Plain);
    for (x, level) in [57, 62, 67].into_iter().zip(Level::ALL) {
        let count = words::open_findings(&findings, level).count();
        let role = if count == 0 {
            Role::Dim
        } else {
            words::level_role(level)
        };
        canvas.text(x, y, &format!("{count:>3} "), role);
    }
    let built = format!("{:>6}", format!("x{}", cabinet.copies.len()));
    canvas.text(72, y, &built, Role::Plain);
}
