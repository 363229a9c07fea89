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

use gablerow_core::bench::{Check, Holes, Progress, SetUp, pace, progress_of_job};
use gablerow_core::check::{self, Rule};
use gablerow_core::counted::counted;
use gablerow_core::job::{Job, Key, Names, PanelId, Trouble};
use gablerow_core::layout::Layout;
use gablerow_core::measure::Length;
use gablerow_papers::{SetUpRecord, rail_notes, rail_runs, run_words, wrap};

use super::canvas::Canvas;
use super::letters;
use super::on_bench;
use crate::app::{App, Walk};
use crate::at_bench::AtBench;
use crate::theme::Role;

/// The columns that the picture takes, at the right.
const PICTURE: u16 = 28;
/// The line of the setting, that of the hand the foot is on, and that of the first holes.
const SETTING_Y: u16 = 3;
const FOOT_Y: u16 = 7;
const HOLES_Y: u16 = 11;
/// What stands before the rail's own numbers, where they are not the cabinet's.
const RAIL: &str = "RAIL";
/// The lines from the bars down.
const BELOW: u16 = 6;

/// Draws what is to be bored now.
pub(super) fn draw(canvas: &mut Canvas, app: &App) {
    let Some(walk) = &app.walk else { return };
    let bench = AtBench::of(&app.desk.job, walk);
    let records = SetUpRecord::of_plan(&bench.plan, &app.desk.job);
    let panels = progress_of_job(&app.desk.job);
    if let Some(record) = records.get(bench.done) {
        title(canvas, record, &bench);
        changes(canvas, app, &bench);
        let picture_y = large(canvas, app, record.set_up);
        let room = room_for_letters(canvas);
        on_bench::draw(&mut canvas.part(room, picture_y, PICTURE, 7), record.set_up);
    } else {
        canvas.text(1, 0, "AT THE BENCH", Role::Title);
        let (words, role) = match bench.held.is_empty() {
            true => ("ALL BORED", Role::Good),
            false => ("REST IS HELD", Role::Warn),
        };
        letters::draw(canvas, 1, SETTING_Y, words, role);
    }
    let y = canvas.height().saturating_sub(BELOW);
    bars(canvas, app, y, &bench, &panels);
    below_bars(canvas, y + 1, said(app, walk, &bench, &panels));
}

/// What has to be known beside, as far as there are lines for it, and how many there are not.
fn below_bars(canvas: &mut Canvas, y: u16, said: Vec<(String, Role)>) {
    let (width, room) = (canvas.width().saturating_sub(1), BELOW.saturating_sub(2));
    let broken = |(text, role): (String, Role)| {
        let lines = wrap(&text, usize::from(width)).into_iter();
        lines.map(move |line| (line, role))
    };
    let mut lines: Vec<(String, Role)> = said.into_iter().flat_map(broken).collect();
    if lines.len() > usize::from(room) {
        let shown = usize::from(room.saturating_sub(1));
        let more = lines.len() - shown;
        lines.truncate(shown);
        lines.push((format!("and {more} lines more"), Role::Dim));
    }
    for (y, (line, role)) in (y..).zip(lines) {
        canvas.text(1, y, &line, role);
    }
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
    canvas.text_right(1, &format!("{} ", unit.word()), Role::Dim);
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
            format!("{bit} bit {}", it.tool.diameter.bit(app.desk.job.unit)),
            depth(it),
            format!(
                "{} on stop {}",
                it.rest.end.word().to_uppercase(),
                show(it.rest.stop)
            ),
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

/// The columns beside the picture.
fn room_for_letters(canvas: &Canvas) -> u16 {
    canvas.width().saturating_sub(PICTURE + 1)
}

/// Setting and edge, the hand of the foot, the holes, and below them in words what goes with them. Gives the line the picture
/// beside them starts at.
fn large(canvas: &mut Canvas, app: &App, set_up: &SetUp) -> u16 {
    let unit = app.desk.job.unit;
    let show = |length: Length| length.show(unit).to_string();
    let (setting, edge) = (set_up.setting.total(), set_up.edge.word());
    let whole = format!("{} {edge}", show(setting));
    // Inches are too long to stand beside the picture, or in letters at all: the picture begins below them then, and what is left
    // over of the fraction is said in words.
    let large = match letters::width(&whole) <= canvas.width() {
        true => whole.clone(),
        false => format!("{} {edge}", setting.short(unit)),
    };
    letters::draw(canvas, 1, SETTING_Y, &large, Role::Strong);
    let (picture_y, room) = match letters::width(&large) <= room_for_letters(canvas) {
        true => (SETTING_Y, canvas.width().saturating_sub(1)),
        false => (FOOT_Y, room_for_letters(canvas)),
    };
    let foot = format!("FOOT {}", set_up.foot_to.word());
    letters::draw(canvas, 1, FOOT_Y, &foot, Role::Strong);
    let holes: Vec<String> = match &set_up.holes {
        Holes::Runs(runs) => runs.iter().copied().map(run_words).collect(),
        Holes::ByTape(lengths) => lengths.iter().map(|it| show(*it)).collect(),
    };
    // Whoever bores counts along the rail, so its own numbers are the large ones.
    let on_rail = rail_runs(set_up);
    let large_holes = match &on_rail {
        Some(on_rail) => [&[RAIL.to_owned()], &on_rail[..]].concat(),
        None => holes.clone(),
    };
    let lines = letters::wrapped(&large_holes, room);
    let room = canvas.height().saturating_sub(HOLES_Y + BELOW + 2) / (letters::LINES + 1);
    let (drawn, rest) = lines.split_at(usize::from(room.max(1)).min(lines.len()));
    let mut y = HOLES_Y;
    for line in drawn {
        letters::draw(canvas, 1, y, line, Role::Strong);
        y += letters::LINES + 1;
    }
    let y = y - 1;
    let mut words = Vec::new();
    if large != whole {
        words.push(format!("set to {whole}"));
    }
    if !rest.is_empty() {
        let word = if on_rail.is_some() { "on" } else { "holes" };
        words.push(format!("and {word} {}", rest.join(" ")));
    }
    match on_rail {
        Some(_) => words.push(format!("the cabinet's holes {}", holes.join(" "))),
        None => words.extend(rail_notes(set_up, unit)),
    }
    words.push(how_many(set_up));
    let (width, floor) = (canvas.width(), canvas.height().saturating_sub(BELOW));
    let lines = |checks: &[String]| {
        let all = [&words[..], checks].concat().join("; ");
        wrap(&all, usize::from(width.saturating_sub(1)))
    };
    let mut all = lines(&checks(set_up, &app.desk.job));
    if all.len() > usize::from(floor.saturating_sub(y)) {
        let distances = counted(set_up.checks.len(), "distance");
        all = lines(&[format!("then {distances} to measure, which m asks for")]);
    }
    for (y, line) in (y..floor).zip(&all) {
        canvas.text(1, y, line, Role::Plain);
    }
    picture_y
}

/// How many holes, and from where.
fn how_many(set_up: &SetUp) -> String {
    let end = set_up.rest.end.word();
    let holes = counted(set_up.holes.count(), "hole");
    match &set_up.holes {
        Holes::Runs(_) => format!("{holes}, the {end} on the stop"),
        Holes::ByTape(_) => format!("{holes} by tape, from the {end}"),
    }
}

/// What to measure then, and what it was measured to be.
fn checks(set_up: &SetUp, job: &Job) -> Vec<String> {
    let unit = job.unit;
    let check = |it: &Check| {
        let is = job.measured(set_up.cabinet, set_up.copy, set_up.face, it.span);
        let is = is.map_or(String::new(), |is| format!(", is {}", is.show(unit)));
        format!("then {} = {}{is}", it.span.show(unit), it.want.show(unit))
    };
    set_up.checks.iter().map(check).collect()
}

/// How far panel, cabinet and job have come, and what is left of the time.
fn bars(canvas: &mut Canvas, app: &App, y: u16, bench: &AtBench, panels: &[Progress]) {
    let job = &app.desk.job;
    let mut x = 1;
    if let Some(now) = bench.set_up() {
        let of_cabinet = |it: &&Progress| it.cabinet == now.cabinet;
        let of_panel = |it: &&Progress| is_of(now, it.cabinet, it.copy, it.panel);
        x = bar(canvas, x, y, "panel", sum(panels.iter().filter(of_panel))) + 2;
        let name = job.cabinet(now.cabinet).map_or("", |it| it.name.as_str());
        x = bar(canvas, x, y, name, sum(panels.iter().filter(of_cabinet))) + 2;
    }
    bar(canvas, x, y, "job", sum(panels.iter()));
    let seconds = u64::from(bench.left(job)) * u64::from(pace(&job.took)) / 100;
    if seconds > 0 {
        let text = format!("about {} min left ", seconds.div_ceil(60));
        canvas.text_right(y, &text, Role::Dim);
    }
}

/// Whether a set-up is on this panel.
fn is_of(set_up: &SetUp, cabinet: Key, copy: Key, panel: PanelId) -> bool {
    (set_up.cabinet, set_up.copy, set_up.face.panel) == (cabinet, copy, panel)
}

/// How many holes are done, and of how many.
pub(super) fn sum<'a>(panels: impl Iterator<Item = &'a Progress>) -> (usize, usize) {
    panels.fold((0, 0), |(done, all), it| {
        (done + it.done, all + it.done + it.left)
    })
}

/// `panel ███░░░ 10/19`; gives the column after it.
fn bar(canvas: &mut Canvas, x: u16, y: u16, name: &str, (done, all): (usize, usize)) -> u16 {
    const WIDE: u16 = 8;
    let short: String = name.chars().take(6).collect();
    let x = canvas.text(x, y, &short, Role::Plain) + 1;
    let after = gauge(canvas, (x, y), WIDE, (done, all));
    canvas.text(after + 1, y, &format!("{done}/{all}"), Role::Plain)
}

/// `███░░░`, so many columns wide, from a column and line on; gives the column after it. Where there is nothing to do it is full.
pub(super) fn gauge(
    canvas: &mut Canvas,
    (x, y): (u16, u16),
    wide: u16,
    (done, all): (usize, usize),
) -> u16 {
    let full = (done * usize::from(wide)).checked_div(all);
    let full = full.map_or(wide, |full| u16::try_from(full).unwrap_or(wide));
    let (on, off) = (canvas.glyphs().bar_done, canvas.glyphs().bar_left);
    for at in 0..wide {
        let (glyph, role) = if at < full {
            (on, Role::Good)
        } else {
            (off, Role::Dim)
        };
        canvas.set(x + at, y, glyph, role);
    }
    x + wide
}

/// What has to be known beside: how to leave, what is stale, what is held back, what went wrong here.
fn said(app: &App, walk: &Walk, bench: &AtBench, panels: &[Progress]) -> Vec<(String, Role)> {
    let job = &app.desk.job;
    let mut lines = Vec::new();
    if walk.leaving {
        let text = "once more to leave; all that is done is kept";
        lines.push((text.into(), Role::Warn));
    }
    let missed = missed(job, bench).into_iter();
    lines.extend(missed.map(|text| (text, Role::Warn)));
    let of = |it: &Progress| (it.cabinet, it.copy);
    for of_copy in panels.chunk_by(|a, b| of(a) == of(b)) {
        lines.extend(stale(job, of_copy).map(|text| (text, Role::Warn)));
    }
    if !bench.held.is_empty() {
        let name = |key: &Key| job.cabinet(*key).map_or("", |it| it.name.as_str());
        let held: Vec<&str> = bench.held.iter().map(name).collect();
        let text = format!("held back by stops: {}", held.join(", "));
        lines.push((text, Role::Warn));
    }
    if let Some(now) = bench.set_up() {
        let here = |it: &&Trouble| is_of(now, it.cabinet, it.copy, it.face.panel);
        let troubles = job.troubles.iter().rev().filter(here);
        lines.extend(troubles.map(|it| (format!("trouble: {}", it.words), Role::Note)));
    }
    lines
}

/// What was measured of the cabinet in work and is off, by whole holes or otherwise.
fn missed(job: &Job, bench: &AtBench) -> Vec<String> {
    let set_up = bench.set_up().or(bench.before());
    let Some(cabinet) = set_up.and_then(|it| job.cabinet(it.cabinet)) else {
        return Vec::new();
    };
    let layout = Layout::of(cabinet, job);
    let found = |rule| check::of_rule(rule, job, cabinet, &layout);
    let found = [Rule::MiscountedHole, Rule::MeasuredOff]
        .into_iter()
        .flat_map(found);
    let open = found.filter(|it| it.accepted.is_none());
    open.map(|it| it.message).collect()
}

/// What of a copy was bored and is wanted no longer, panel by panel; nothing when nothing is.
fn stale(job: &Job, panels: &[Progress]) -> Option<String> {
    let first = panels.first()?;
    let cabinet = job.cabinet(first.cabinet)?;
    let copy = cabinet.copies.iter().find(|copy| copy.key == first.copy)?;
    let names = Names::of(&cabinet.built_as(copy).opening);
    let stale = panels.iter().filter(|it| !it.stale.is_empty());
    let stale: Vec<String> = stale
        .map(|it| format!("{} of {}", it.stale.len(), names.panel(it.panel)))
        .collect();
    let (name, copy, stale_words) = (&cabinet.name, &copy.name, stale.join(", "));
    (!stale.is_empty()).then(|| format!("{name} copy {copy}: bored and not wanted: {stale_words}"))
}
