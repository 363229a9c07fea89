//! The loop: what arrives, what becomes of it, what is shown.

use std::path::Path;

use gablerow_core::job::LeftAt;

use crate::app::{App, Asked, Notice};
use crate::session::{Opened, Outcome, Session};
use crate::shop_file::ShopFile;
use crate::shop_folder::{Environment, ShopFolder};
use crate::terminal::{self, Incoming};
use crate::theme::Theme;
use crate::update::{Effect, Kept, Message, update};
use crate::view::view;

/// Runs the program on a job file, or on the demo, in an environment; gives the exit code.
///
/// # Errors
/// The job cannot be opened, or the terminal cannot be used.
pub fn run(path: Option<&Path>, environment: Environment<'_>) -> anyhow::Result<u8> {
    let theme = Theme::of(|name| environment(name)?.into_string().ok());
    let folder = ShopFolder::of(environment);
    // A broken file of the shop holds nobody up: the starter cards are there.
    let (shop_file, broken) = match folder.read() {
        Ok(file) => (file, None),
        Err(error) => (ShopFile::default(), Some(format!("{error:#}"))),
    };
    let Opened {
        desk,
        mut session,
        found,
        said,
    } = Session::open(path, &shop_file)?;
    terminal::session(theme.charset(), |screen, incoming| {
        let size = screen.size();
        let mut app = App::new(desk, theme, (size.width, size.height));
        app.asked = (found > 0).then_some(Asked::Found(found));
        app.notice = said.or(broken).map(Notice::refused);
        app.shop_file = shop_file;
        loop {
            if let Err(gone) = screen.paint(view(&app)) {
                return terminal::lost(incoming, gone);
            }
            let first = incoming.recv()?;
            for arrived in std::iter::once(first).chain(incoming.try_iter()) {
                let message = match arrived {
                    Incoming::Press(press) => Message::Press(press),
                    Incoming::Paste(text) => Message::Paste(text),
                    Incoming::Resize(size) => {
                        screen.repaint();
                        Message::Resize(size.width, size.height)
                    }
                    Incoming::Continue => {
                        screen.repaint();
                        continue;
                    }
                    // Every change is in the journal already.
                    Incoming::End(ending) => return Ok(ending.exit_code()),
                    Incoming::InputClosed(why) => {
                        return terminal::lost(
                            incoming,
                            anyhow::anyhow!("no key can be read any more: {why}"),
                        );
                    }
                };
                if handle(&mut app, &mut session, &folder, message) {
                    return Ok(0);
                }
            }
        }
    })
}

/// Answers a message and does what it asks of the world; gives whether to leave.
fn handle(app: &mut App, session: &mut Session, folder: &ShopFolder, message: Message) -> bool {
    let mut leave = false;
    for effect in update(app, message) {
        match effect {
            Effect::Keep(kept) => {
                if let Err(error) = session.keep(&kept) {
                    update(app, Message::Failed(format!("{error:#}")));
                }
            }
            Effect::Save {
                path,
                overwrite,
                then_quit,
            } => {
                let answer = match session.save(&app.desk, &path, overwrite) {
                    Ok(Outcome::Saved(path)) => {
                        leave |= then_quit;
                        Message::Saved(path)
                    }
                    Ok(Outcome::Occupied { path, what }) => Message::Occupied {
                        path,
                        what,
                        then_quit,
                    },
                    Err(error) => Message::Failed(format!("{error:#}")),
                };
                update(app, answer);
            }
            Effect::ReadShop => {
                let answer = match folder.read() {
                    Ok(file) => Message::ShopRead(Box::new(file)),
                    Err(error) => Message::Failed(format!("{error:#}")),
                };
                update(app, answer);
            }
            Effect::KeepInShop(kept) => {
                let answer = match folder.keep(*kept) {
                    Ok((file, path)) => Message::ShopKept(Box::new(file), path),
                    Err(error) => Message::Failed(format!("{error:#}")),
                };
                update(app, answer);
            }
            Effect::Quit => leave = true,
        }
    }
    if leave {
        keep_place(app, session);
    }
    leave
}

/// A job opens on the face it was left on; the journal knows it, so that leaving changes no file.
fn keep_place(app: &App, session: &mut Session) {
    let place = LeftAt {
        cabinet: app.spot.cabinet,
        face: app.spot.face,
    };
    if app.desk.has_file && app.desk.job.left_at != Some(place) {
        // Where one stood is worth a line, but no delay on leaving.
        let _ = session.keep(&Kept::Left(place));
    }
}
