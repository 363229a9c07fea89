//! The loop: what arrives, what becomes of it, what is shown.

use std::path::Path;

use gablerow_core::job::LeftAt;

use crate::app::{App, Asked, Notice};
use crate::paper_work::PaperWork;
use crate::papers_at::PaperWish;
use crate::session::{Opened, Outcome, Session};
use crate::shop_file::ShopFile;
use crate::shop_folder::{Environment, ShopFolder};
use crate::terminal::{self, Incoming, Waker};
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
        session,
        found,
        said,
    } = Session::open(path, &shop_file)?;
    terminal::session(theme.charset(), |screen, incoming| {
        let size = screen.size();
        let mut app = App::new(desk, theme, (size.width, size.height));
        app.asked = (found > 0).then_some(Asked::Found(found));
        app.notice = said.or(broken).map(Notice::refused);
        app.shop_file = shop_file;
        let mut world = World {
            session,
            folder,
            waker: screen.waker(),
            papers: None,
        };
        loop {
            if let Err(gone) = screen.paint(view(&app)) {
                return terminal::lost(incoming, gone);
            }
            let first = incoming.recv()?;
            for arrived in std::iter::once(first).chain(incoming.try_iter()) {
                let messages = match arrived {
                    Incoming::Press(press) => vec![Message::Press(press)],
                    Incoming::Paste(text) => vec![Message::Paste(text)],
                    Incoming::Resize(size) => {
                        screen.repaint();
                        vec![Message::Resize(size.width, size.height)]
                    }
                    Incoming::Woken => world.news(&app),
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
                for message in messages {
                    if handle(&mut app, &mut world, message) {
                        return Ok(0);
                    }
                }
            }
        }
    })
}

/// What the program reaches of the world, beside the screen.
struct World {
    session: Session,
    folder: ShopFolder,
    waker: Waker,
    /// Papers that are being written.
    papers: Option<PaperWork>,
}

impl World {
    /// What is new of the papers.
    fn news(&mut self, app: &App) -> Vec<Message> {
        let Some((mut news, is_last)) = self.papers.as_ref().map(PaperWork::news) else {
            return Vec::new();
        };
        if is_last {
            self.papers = None;
            let is_end =
                |it: &Message| matches!(it, Message::PapersOver(_) | Message::PapersFailed(_));
            if app.papers.writing.is_some() && !news.iter().any(is_end) {
                let why = "the printing broke off; the papers before are whole";
                news.push(Message::PapersFailed(why.to_owned()));
            }
        }
        news
    }

    fn write_papers(&mut self, app: &App, wish: PaperWish) -> Option<Message> {
        let waker = self.waker.clone();
        match PaperWork::start(app.desk.job.clone(), wish, move || waker.wake()) {
            Ok(work) => {
                self.papers = Some(work);
                None
            }
            Err(error) => Some(Message::PapersFailed(format!("no papers written: {error}"))),
        }
    }
}

/// Answers a message and does what it asks of the world; gives whether to leave.
fn handle(app: &mut App, world: &mut World, message: Message) -> bool {
    let mut leave = false;
    for effect in update(app, message) {
        let answer = match effect {
            Effect::Keep(kept) => {
                let kept = world.session.keep(&kept);
                kept.err()
                    .map(|error| Message::Failed(format!("{error:#}")))
            }
            Effect::Save {
                path,
                overwrite,
                then_quit,
            } => Some(match world.session.save(&app.desk, &path, overwrite) {
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
            }),
            Effect::ReadShop => Some(match world.folder.read() {
                Ok(file) => Message::ShopRead(Box::new(file)),
                Err(error) => Message::Failed(format!("{error:#}")),
            }),
            Effect::KeepInShop(kept) => Some(match world.folder.keep(*kept) {
                Ok((file, path)) => Message::ShopKept(Box::new(file), path),
                Err(error) => Message::Failed(format!("{error:#}")),
            }),
            Effect::WritePapers(wish) => world.write_papers(app, *wish),
            Effect::StopPapers => {
                world.papers.iter().for_each(PaperWork::stop);
                None
            }
            Effect::Quit => {
                leave = true;
                None
            }
        };
        if let Some(answer) = answer {
            update(app, answer);
        }
    }
    if leave {
        keep_place(app, &mut world.session);
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
