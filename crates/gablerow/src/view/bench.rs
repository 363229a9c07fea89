//! One set-up, to be read from two metres: setting and edge, the hand of the foot, the holes; beside them how the panel lies.
//!
//! ```text
//! title     which panel, which face, of which state
//! change    what is other than for the set-up before
//! letters   37.0 FRONT                 picture: panel, rail, stop, packer
//!           FOOT RIGHT
//!           3-4 11-16
//! words     packer, moves of the rail, what to measure
//! bars      panel, cabinet, job
//! ```

use gablerow_core::bench::{Held, Holes, Position, Progress, SetUp, pace, progress};
use gablerow_core::job::{End, Hand, Key, Names, Trouble};
use gablerow_core::measure::Length;
use gablerow_papers::{SetUpRecord, run_words};

use super::canvas::Canvas;
use super::letters;
use super::on_bench;
use crate::app::{App, Walk};
use crate::at_bench::AtBench;
use crate::theme::Role;

/// The columns that the picture takes, at the right.
const PICTURE: u16 = 32;
/// The line of the first holes.
const HOLES_Y: u16 = 11;
/// The lines from the bars down.
const BELOW: u16 = 6;

/// Draws what is to be bored now.
pub(super) fn draw(canvas: &mut Canvas, app: &App, walk: &Walk) {
    let bench = AtBench::of(&app.desk.job, walk);
    let records = SetUpRecord::of_plan(&bench.plan, &app.desk.job);
    let y = canvas.height().saturating_sub(BELOW);
    match records.get(bench.done) {
        Some(record) => {
            title(canvas, record, &bench);
            changes(canvas, app, &bench);
            large(canvas, app, record.set_up);
            let room = canvas.width().saturating_sub(PICTURE + 1);
            on_bench::draw(&mut canvas.part(room, 3, PICTURE, 7), record.set_up);
            bars(canvas, app, y, Some(record.set_up), &bench);
        }
        None => {
            canvas.text(1, 0, "AT THE BENCH", Role::Title);
            letters::draw(canvas, 1, 3, "ALL BORED", Role::Good);
            bars(canvas, app, y, None, &bench);
        }
    }
    said(canvas, app, walk, &bench, y + 1);
}

/// Which panel, and how many set-ups this is of.
fn title(canvas: &mut Canvas, record: &SetUpRecord, bench: &AtBench) {
    let of = format!("set-up {} of {}", bench.done + 1, bench.plan.set_ups.len());
    canvas.text_right(0, &format!("{}   {of} ", record.stamp), Role::Dim);
    let after = canvas.text(1, 0, &record.panel(), Role::Title);
    canvas.text(after + 1, 0, "up", Role::Plain);
}

/// What of bit, depth, stop, packer and setting is other than before stands out; at first all of it.
fn changes(canvas: &mut Canvas, app: &App, bench: &AtBench) {
    let Some(now) = bench.set_up() else { return };
    let unit = app.desk.job.unit;
    let show = |length: Length| length.show(unit).to_string();
    let depth = |it: &SetUp| {
        it.tool
            .depth
            .map_or("THROUGH".to_owned(), |it| format!("{} deep", show(it)))
    };
    let words = |it: &SetUp| {
        let bit = it.tool.bit.word().to_uppercase();
        let packer = match it.rest.packer {
            Length::ZERO => "no packer".to_owned(),
            packer => format!("PACKER {}", show(packer)),
        };
        [
            format!("{bit} bit {}", show(it.tool.diameter)),
            depth(it),
            format!("stop at {}", show(it.rest.stop)),
            packer,
        ]
    };
    let before = bench.before().map(words);
    let mut x = 1;
    for (at, text) in words(now).into_iter().enumerate() {
        let is_new = before.as_ref().is_none_or(|before| before[at] != text);
        let role = if is_new { Role::Warn } else { Role::Dim };
        x = canvas.text(x, 1, &text, role) + 2;
    }
    let moved = bench
        .before()
        .map(|it| now.setting.total() - it.setting.total());
    if let Some(by) = moved.filter(|by| *by != Length::ZERO) {
        let way = if by > Length::ZERO {
            "further"
        } else {
            "nearer"
        };
        canvas.text(
            x,
            1,
            &format!("setting {} {way}", show(by.abs())),
            Role::Warn,
        );
    }
}

/// Setting and edge, the hand of the foot, the holes, and below them in words what goes with them.
fn large(canvas: &mut Canvas, app: &App, set_up: &SetUp) {
    let unit = app.desk.job.unit;
    let show = |length: Length| length.show(unit).to_string();
    let setting = show(set_up.setting.total());
    let setting = format!("{setting} {}", set_up.edge.word());
    letters::draw(canvas, 1, 3, &setting, Role::Strong);
    let foot = format!("FOOT {}", set_up.foot_to.word());
    letters::draw(canvas, 1, 7, &foot, Role::Strong);
    let runs: Vec<String> = match &set_up.holes {
        Holes::Runs(runs) => runs.iter().copied().map(run_words).collect(),
        Holes::ByTape(lengths) => lengths.iter().map(|it| show(*it)).collect(),
    };
    let lines = letters::wrapped(&runs, canvas.width().saturating_sub(1));
    let room = canvas.height().saturating_sub(HOLES_Y + BELOW + 2) / (letters::LINES + 1);
    let (drawn, rest) = lines.split_at(usize::from(room.max(1)).min(lines.len()));
    let mut y = HOLES_Y;
    for line in drawn {
        letters::draw(canvas, 1, y, line, Role::Strong);
        y += letters::LINES + 1;
    }
    let y = y - 1;
    let mut words = Vec::new();
    if !rest.is_empty() {
        words.push(format!("and holes {}", rest.join(" ")));
    }
    words.extend(notes(set_up, &show));
    canvas.paragraph(y, 1, &words.join("; "), Role::Plain);
}

/// What goes with the large letters: how many, by what, from where, and what to measure then.
fn notes(set_up: &SetUp, show: &impl Fn(Length) -> String) -> Vec<String> {
    let (rest, count) = (&set_up.rest, set_up.holes.count());
    let end = rest.end.word();
    let mut notes = Vec::new();
    match &set_up.holes {
        Holes::Runs(runs) => {
            let holes = if count == 1 { "hole" } else { "holes" };
            notes.push(format!("{count} {holes}, the {end} on the stop"));
            let index = |hole: i16| rest.index(hole);
            if runs.first().is_some_and(|run| index(run.0) != run.0) {
                let on_rail = runs.iter().map(|it| {
                    let (one, other) = (index(it.0), index(it.1));
                    run_words((one.min(other), one.max(other)))
                });
                let on_rail: Vec<String> = on_rail.collect();
                notes.push(format!("on the rail {}", on_rail.join(" ")));
            }
        }
        Holes::ByTape(_) => notes.push(format!("{count} by tape, from the {end}")),
    }
    notes.extend(set_up.positions.iter().skip(1).map(|at| moved(at, show)));
    let check = |it: &gablerow_core::bench::Check| format!("then {} = {}", it.words, show(it.want));
    notes.extend(set_up.checks.iter().map(check));
    notes
}

/// Where the rail is moved to, for holes it does not reach from the stop.
fn moved(at: &Position, show: &impl Fn(Length) -> String) -> String {
    let runs: Vec<String> = at.runs.iter().copied().map(run_words).collect();
    let runs = runs.join(" ");
    match at.held {
        Held::Stop => format!("rail at the stop for {runs}"),
        Held::Pins([near, far]) => format!("rail on, pins in holes {near} and {far}, for {runs}"),
        Held::Tape(from_end) => format!(
            "rail on, its first hole {} from the end, for {runs}",
            show(from_end)
        ),
    }
}

/// How far panel, cabinet and job have come, and what is left of the time.
fn bars(canvas: &mut Canvas, app: &App, y: u16, set_up: Option<&SetUp>, bench: &AtBench) {
    let job = &app.desk.job;
    let mut of_panel = (0, 0);
    let (mut of_cabinet, mut of_job) = ((0, 0), (0, 0));
    for cabinet in &job.cabinets {
        for copy in &cabinet.copies {
            for panel in progress(job, cabinet, copy) {
                add(&mut of_job, &panel);
                if set_up.is_some_and(|it| it.cabinet == cabinet.key) {
                    add(&mut of_cabinet, &panel);
                }
                let here = (cabinet.key, copy.key, panel.panel);
                if set_up.is_some_and(|it| (it.cabinet, it.copy, it.face.panel) == here) {
                    add(&mut of_panel, &panel);
                }
            }
        }
    }
    let mut x = 1;
    let name = set_up
        .and_then(|it| job.cabinet(it.cabinet))
        .map_or("", |it| it.name.as_str());
    if set_up.is_some() {
        x = bar(canvas, x, y, "panel", of_panel) + 2;
        x = bar(canvas, x, y, name, of_cabinet) + 2;
    }
    bar(canvas, x, y, "job", of_job);
    let seconds = u64::from(bench.left(job)) * u64::from(pace(&job.took)) / 100;
    if seconds > 0 {
        let text = format!("about {} min left ", seconds.div_ceil(60));
        canvas.text_right(y, &text, Role::Dim);
    }
}

fn add(all: &mut (usize, usize), panel: &Progress) {
    all.0 += panel.done;
    all.1 += panel.done + panel.left;
}

/// `panel ███░░░ 10/19`; gives the column after it.
fn bar(canvas: &mut Canvas, x: u16, y: u16, name: &str, (done, all): (usize, usize)) -> u16 {
    const WIDE: usize = 8;
    let full = (done * WIDE).checked_div(all).unwrap_or(WIDE);
    let short: String = name.chars().take(6).collect();
    let x = canvas.text(x, y, &short, Role::Plain) + 1;
    let (on, off) = (canvas.glyphs().bar_done, canvas.glyphs().bar_left);
    for (column, at) in (x..).zip(0..WIDE) {
        let (glyph, role) = if at < full {
            (on, Role::Good)
        } else {
            (off, Role::Dim)
        };
        canvas.set(column, y, glyph, role);
    }
    let after = x + u16::try_from(WIDE).unwrap_or(0);
    canvas.text(after + 1, y, &format!("{done}/{all}"), Role::Plain)
}

/// What has to be known beside: how to leave, what is stale, what is held back, what went wrong here.
fn said(canvas: &mut Canvas, app: &App, walk: &Walk, bench: &AtBench, y: u16) {
    let job = &app.desk.job;
    let name = |key: &Key| job.cabinet(*key).map_or("", |it| it.name.as_str());
    let mut lines: Vec<(String, Role)> = Vec::new();
    if walk.leaving {
        lines.push((
            "once more to leave; all that is done is kept".into(),
            Role::Warn,
        ));
    }
    for cabinet in &job.cabinets {
        for copy in &cabinet.copies {
            let mut panels = progress(job, cabinet, copy);
            panels.retain(|panel| !panel.stale.is_empty());
            if panels.is_empty() {
                continue;
            }
            let names = Names::of(&cabinet.built_as(copy).opening);
            let name = |it: &Progress| format!("{} of {}", it.stale.len(), names.panel(it.panel));
            let panels: Vec<String> = panels.iter().map(name).collect();
            let (name, copy) = (&cabinet.name, &copy.name);
            let text = format!(
                "{name} copy {copy}: bored and not wanted: {}",
                panels.join(", ")
            );
            lines.push((text, Role::Warn));
        }
    }
    if !bench.held.is_empty() {
        let held: Vec<&str> = bench.held.iter().map(name).collect();
        lines.push((
            format!("held back by stops: {}", held.join(", ")),
            Role::Warn,
        ));
    }
    if let Some(set_up) = bench.set_up() {
        let here = |it: &&Trouble| {
            (it.cabinet, it.copy, it.face.panel) == (set_up.cabinet, set_up.copy, set_up.face.panel)
        };
        let troubles = job.troubles.iter().rev().filter(here);
        lines.extend(troubles.map(|it| (format!("trouble: {}", it.words), Role::Note)));
    }
    for (y, (text, role)) in (y..canvas.height().saturating_sub(1)).zip(lines) {
        canvas.text(1, y, &text, role);
    }
}

/// The hand on which the end is that rests on the stop.
pub(super) fn stop_to(set_up: &SetUp) -> Hand {
    match set_up.rest.end {
        End::Foot => set_up.foot_to,
        End::Head => set_up.foot_to.other(),
    }
}
