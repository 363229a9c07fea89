//! The only place where state changes: a message in, what the world has to do out.
//!
//! ```text
//! Press -- keymap --> Action -- face | front | sizes | job_list | checks | line --> Edit --> Job'
//!                                                     \--> Effect: keep, save, quit
//! ```
//!
//! Nothing here draws, and nothing here touches the disk.

mod as_cut;
mod bench;
mod cards;
mod checks;
mod face;
mod free;
mod from_shop;
mod front;
mod job_list;
mod line;
mod papers;
mod proposals;
mod sizes;

use std::path::PathBuf;

use gablerow_core::cards::Cards;
use gablerow_core::edit::Edit;
use gablerow_core::history::{Change, Step};
use gablerow_core::job::{Bored, LeftAt, Measured, Shop, Took, Trouble};
use gablerow_core::stamp::revised;

use crate::action::Action;
use crate::app::{App, Asked, Line, Notice, Pane, Purpose, Screen};
use crate::field::Field;
use crate::key::{Key, Press};
use crate::keymap::{self, Context};
use crate::page;
use crate::papers_at::{PaperTally, PaperWish};
use crate::scene::Spot;
use crate::shop_file::ShopFile;

/// What comes in.
#[derive(Clone, Debug)]
pub enum Message {
    /// A key was pressed.
    Press(Press),
    /// Text was pasted.
    Paste(String),
    /// The terminal has so many columns and lines.
    Resize(u16, u16),
    /// The job was saved there.
    Saved(PathBuf),
    /// Something else is there; nothing was written.
    Occupied {
        /// Where.
        path: PathBuf,
        /// What is there, in words.
        what: String,
        /// Leave once it is saved.
        then_quit: bool,
    },
    /// The shop keeps this now, there.
    ShopKept(Box<ShopFile>, PathBuf),
    /// The shop keeps this, to be taken from.
    ShopRead(Box<ShopFile>),
    /// Saving failed; nothing is lost.
    Failed(String),
    /// A paper was dealt with.
    PaperPut {
        /// How many were dealt with by now.
        done: usize,
        /// Of how many.
        of: usize,
        /// What it is called; nothing when there was nothing to put on it.
        name: String,
    },
    /// All papers were dealt with, or it was stopped.
    PapersOver(PaperTally),
    /// The rest of the papers cannot be written, and why.
    PapersFailed(String),
}

/// What the world has to do.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Effect {
    /// Keep a change in the journal.
    Keep(Kept),
    /// Save the job as it is now.
    Save {
        /// Where.
        path: PathBuf,
        /// Also over what somebody else wrote.
        overwrite: bool,
        /// Leave once it is saved.
        then_quit: bool,
    },
    /// Read what the shop keeps.
    ReadShop,
    /// Put this into the shop's file.
    KeepInShop(Box<ShopFile>),
    /// Write papers of the job as it is now, beside the screen.
    WritePapers(Box<PaperWish>),
    /// Stop writing them.
    StopPapers,
    /// Leave.
    Quit,
}

/// A change, as the journal keeps it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Kept {
    /// A step was made.
    Made(Box<Step>),
    /// The last step was taken back.
    Undone,
    /// The step last taken back was made again.
    Redone,
    /// A set-up was bored, or taken back: its holes, and what it took.
    Bored(Vec<Bored>, Option<Took>),
    /// Something went wrong at the bench.
    Trouble(Trouble),
    /// A distance was measured on a bored face.
    Measured(Measured),
    /// The person left the job on this face; no change.
    Left(LeftAt),
    /// A job that has no file yet began with these house defaults and cards of the shop; no change.
    Began(Box<(Shop, Cards)>),
}

/// Answers one message.
pub fn update(app: &mut App, message: Message) -> Vec<Effect> {
    match message {
        Message::Press(press) => pressed(app, press),
        Message::Paste(text) => {
            if let Some(Asked::Line(line)) = &mut app.asked {
                line.field.paste(&text);
            }
            Vec::new()
        }
        Message::Resize(columns, lines) => {
            app.size = (columns, lines);
            Vec::new()
        }
        Message::Saved(path) => {
            app.notice = Some(Notice::done(format!("saved {}", path.display())));
            (app.desk.path, app.desk.has_file) = (path, true);
            app.desk.recorded = app.desk.job.records();
            app.desk.history.mark_saved();
            Vec::new()
        }
        Message::Occupied {
            path,
            what,
            then_quit,
        } => {
            app.asked = Some(Asked::Occupied {
                path,
                what,
                then_quit,
            });
            Vec::new()
        }
        Message::ShopKept(file, path) => {
            let text = format!("kept for every job, in {}", path.display());
            app.notice = Some(Notice::done(text));
            app.shop_file = *file;
            Vec::new()
        }
        Message::ShopRead(file) => {
            app.shop_file = *file;
            from_shop::open(app);
            Vec::new()
        }
        Message::Failed(text) => {
            app.notice = Some(Notice::refused(text));
            Vec::new()
        }
        Message::PaperPut { done, of, name } => {
            papers::put(app, done, of, name);
            Vec::new()
        }
        Message::PapersOver(tally) => {
            papers::over(app, tally);
            Vec::new()
        }
        Message::PapersFailed(why) => {
            papers::failed(app, why);
            Vec::new()
        }
    }
}

fn pressed(app: &mut App, press: Press) -> Vec<Effect> {
    // Everything is in the journal already, so leaving loses nothing.
    if press.key == Key::Interrupt {
        return vec![Effect::Quit];
    }
    let bounced = app
        .entry
        .press
        .replace(press)
        .is_some_and(|earlier| press.is_bounce_of(earlier));
    let context = app.context();
    let Some(action) = keymap::action(context, press.key) else {
        return typed(app, context, press.key);
    };
    if bounced && action.is_toggle() {
        return Vec::new();
    }
    app.notice = None;
    act(app, context, action, press)
}

/// A key that no table names: a character of a line, the first one of a length, or a dead one.
fn typed(app: &mut App, context: Context, key: Key) -> Vec<Effect> {
    match (context, key) {
        (Context::Line, key) => line::typed(app, key),
        (Context::Sizes, Key::Char('0'..='9' | '+' | '-' | '.' | ',')) => {
            sizes::begin(app);
            line::typed(app, key);
        }
        (Context::Cards, Key::Char('0'..='9' | '+' | '-' | '.' | ',')) => {
            cards::begin(app);
            line::typed(app, key);
        }
        (Context::Bench, _) => bench::stay(app),
        _ => {}
    }
    Vec::new()
}

fn act(app: &mut App, context: Context, action: Action, press: Press) -> Vec<Effect> {
    match (context, action) {
        (_, Action::Undo) => take_back(app),
        (_, Action::Redo) => make_again(app),
        (_, Action::Save) => save(app, false),
        (_, Action::Quit) => leave(app),
        (_, Action::Unit) => edit(app, &Edit::Unit(app.desk.job.unit.other())),
        (_, Action::Help) => open_page(app, Pane::Help(0)),
        (_, Action::Why) => open_page(app, Pane::Why(0)),
        (_, Action::Cards) => cards::open(app),
        (_, Action::Bench) => bench::open(app, press.at),
        (_, Action::Papers) => papers::open(app),
        (Context::Papers, action) => papers::act(app, action),
        (Context::Bench, action) => bench::act(app, action, press.at),
        (Context::Face, action) => face::act(app, action),
        (Context::Front, action) => front::act(app, action),
        (Context::Sizes, action) => sizes::act(app, action),
        (Context::Job, action) => job_list::act(app, action),
        (Context::Checks, action) => checks::act(app, action),
        (Context::Cards, action) => cards::act(app, action),
        (Context::FromShop, action) => from_shop::act(app, action),
        (Context::Proposals, action) => proposals::act(app, action),
        (Context::Page, action) => {
            turn_page(app, action);
            Vec::new()
        }
        (Context::Line, action) => line::act(app, action),
        (Context::Leaving | Context::Found | Context::Occupied | Context::PapersThere, action) => {
            answer(app, action)
        }
    }
}

/// Makes an edit, keeps it, and says what was done or why not.
fn edit(app: &mut App, edit: &Edit) -> Vec<Effect> {
    match edit.apply(&app.desk.job) {
        Ok(step) => {
            app.notice = Some(Notice::done(step.label.clone()));
            app.desk.history.make(step.clone(), &mut app.desk.job);
            settle(app);
            vec![Effect::Keep(Kept::Made(Box::new(step)))]
        }
        Err(refusal) => {
            app.notice = Some(Notice::refused(refusal.0));
            Vec::new()
        }
    }
}

fn take_back(app: &mut App) -> Vec<Effect> {
    let Some(step) = app.desk.history.undo(&mut app.desk.job) else {
        app.notice = Some(Notice::refused("nothing to take back"));
        return Vec::new();
    };
    let done = format!("taken back: {}", what(step, app.spot));
    app.notice = Some(Notice::done(done));
    settle(app);
    vec![Effect::Keep(Kept::Undone)]
}

fn make_again(app: &mut App) -> Vec<Effect> {
    let Some(step) = app.desk.history.redo(&mut app.desk.job) else {
        app.notice = Some(Notice::refused("nothing to make again"));
        return Vec::new();
    };
    let done = format!("made again: {}", what(step, app.spot));
    app.notice = Some(Notice::done(done));
    settle(app);
    vec![Effect::Keep(Kept::Redone)]
}

/// What a step did, and in which cabinet when that is not the one in sight.
fn what(step: &Step, spot: Spot) -> String {
    let cabinet = match &step.change {
        Change::Cabinet { before, after, .. } => after.as_ref().or(before.as_ref()),
        _ => None,
    };
    match cabinet.filter(|cabinet| cabinet.key != spot.cabinet) {
        Some(elsewhere) => format!("{}, in {}", step.label, elsewhere.name),
        None => step.label.clone(),
    }
}

/// After a change the place the person stands on may be gone.
fn settle(app: &mut App) {
    app.spot = app.spot.settled(&app.desk.job);
    checks::settle(app);
    proposals::settle(app);
    cards::settle(app);
    from_shop::settle(app);
    if let Screen::Job(cabinet) = app.screen
        && app.desk.job.cabinet(cabinet).is_none()
    {
        app.screen = Screen::Job(app.spot.cabinet);
    }
}

fn save(app: &mut App, then_quit: bool) -> Vec<Effect> {
    if app.desk.has_file {
        return save_to(app, app.desk.path.clone(), false, then_quit);
    }
    ask_where(app, then_quit);
    Vec::new()
}

fn ask_where(app: &mut App, then_quit: bool) {
    let offered = app.desk.path.display().to_string();
    ask(app, Purpose::SaveAs { then_quit }, &offered);
}

fn save_to(app: &mut App, path: PathBuf, overwrite: bool, then_quit: bool) -> Vec<Effect> {
    app.desk.job.left_at = Some(LeftAt {
        cabinet: app.spot.cabinet,
        face: app.spot.face,
    });
    app.desk.job.revisions = revised(&app.desk.job);
    vec![Effect::Save {
        path,
        overwrite,
        then_quit,
    }]
}

fn leave(app: &mut App) -> Vec<Effect> {
    if app.desk.is_saved() {
        return vec![Effect::Quit];
    }
    app.asked = Some(Asked::Leaving);
    Vec::new()
}

fn answer(app: &mut App, action: Action) -> Vec<Effect> {
    let asked = app.asked.take();
    match (action, asked) {
        (Action::SaveAndQuit, _) => save(app, true),
        (Action::QuitUnsaved, _) => vec![Effect::Quit],
        (Action::AsSaved, _) => back_to_saved(app),
        (Action::SaveElsewhere, Some(Asked::Occupied { then_quit, .. })) => {
            ask_where(app, then_quit);
            Vec::new()
        }
        (
            Action::Overwrite,
            Some(Asked::Occupied {
                path, then_quit, ..
            }),
        ) => save_to(app, path, true, then_quit),
        (Action::WriteOver, Some(Asked::PapersThere(_))) => papers::write(app, true),
        _ => Vec::new(),
    }
}

/// Declines what was found: step by step back to what the file holds, so that every step can be made again.
fn back_to_saved(app: &mut App) -> Vec<Effect> {
    let mut effects = Vec::new();
    while let Some(steps) = app.desk.history.since_saved().filter(|&steps| steps != 0) {
        let step = if steps > 0 {
            take_back(app)
        } else {
            make_again(app)
        };
        if step.is_empty() {
            break;
        }
        effects.extend(step);
    }
    app.notice = Some(Notice::done(
        "as it was saved; redo makes the changes again, one by one",
    ));
    effects
}

fn ask(app: &mut App, purpose: Purpose, offered: &str) {
    app.asked = Some(Asked::Line(Line {
        purpose,
        field: Field::with(offered),
        complaint: None,
    }));
}

fn open_page(app: &mut App, page: Pane) -> Vec<Effect> {
    app.below = app.pane.replace(page);
    Vec::new()
}

/// A line up or down, as far as the page goes; anything else closes it.
fn turn_page(app: &mut App, action: Action) {
    let last = page::last_start(app);
    let turned = |at: usize| match action {
        Action::Up => Some(at.min(last).saturating_sub(1)),
        Action::Down => Some((at + 1).min(last)),
        _ => None,
    };
    app.pane = match app.pane {
        Some(Pane::Help(at)) => turned(at).map(Pane::Help),
        Some(Pane::Why(at)) => turned(at).map(Pane::Why),
        other => other,
    }
    .or(app
        .below
        .take_if(|_| !matches!(action, Action::Up | Action::Down)));
}

/// Goes to a face of a cabinet, at the row and hole one was on as near as may be.
fn go_to(app: &mut App, spot: Spot) {
    app.spot = spot.settled(&app.desk.job);
    app.entry.mark = None;
}

#[cfg(test)]
mod cards_tests;
#[cfg(test)]
mod places;
#[cfg(test)]
mod tests;
