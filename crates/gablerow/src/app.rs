//! The state of the program: a few small structs, and nothing in them that can be computed.

mod purpose;

pub use purpose::Purpose;

use std::path::PathBuf;
use std::time::Instant;

use gablerow_core::check::{Finding, Place, Rule};
use gablerow_core::history::History;
use gablerow_core::job::{Job, Key as Name};

use crate::card_line::CardsAt;
use crate::field::Field;
use crate::key::Press;
use crate::keymap::Context;
use crate::papers_at::PapersAt;
use crate::scene::Spot;
use crate::shop_file::ShopFile;
use crate::theme::Theme;

/// All state.
#[derive(Clone, Debug)]
pub struct App {
    /// The job on the desk.
    pub desk: Desk,
    /// Where the person is.
    pub spot: Spot,
    /// What fills the screen.
    pub screen: Screen,
    /// Where somebody is who bores; it fills the screen instead, and leaves it as it was.
    pub walk: Option<Walk>,
    /// Where the person is on the front of the cabinet.
    pub front: FrontView,
    /// What lies beside or on it.
    pub pane: Option<Pane>,
    /// What a page lies on, and gives way to again.
    pub below: Option<Pane>,
    /// What is asked.
    pub asked: Option<Asked>,
    /// What has been typed toward the next fitting.
    pub entry: Entry,
    /// Which papers are wanted.
    pub papers: PapersAt,
    /// What the shop keeps for all of its jobs.
    pub shop_file: ShopFile,
    /// What is said.
    pub notice: Option<Notice>,
    /// Columns and lines of the terminal.
    pub size: (u16, u16),
    /// How things look.
    pub theme: Theme,
}

/// The job, and the way back.
#[derive(Clone, Debug)]
pub struct Desk {
    /// The job.
    pub job: Job,
    /// Its changes.
    pub history: History,
    /// Where it is saved, or would be.
    pub path: PathBuf,
    /// Whether it has ever been saved there.
    pub has_file: bool,
    /// How many entries of the records of the bench are saved.
    pub recorded: usize,
}

impl Desk {
    /// Whether the file has all of the job.
    #[must_use]
    pub fn is_saved(&self) -> bool {
        self.history.is_saved() && self.job.records() == self.recorded
    }
}

/// What fills the screen.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Screen {
    /// One face, and what there is to say about it.
    Face,
    /// Both walls of a bay.
    Book,
    /// The cabinet from the front.
    Front,
    /// The cabinets; the one the line stands on.
    Job(Name),
}

/// Where somebody is who bores.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Walk {
    /// How many entries the record of what was bored had on beginning.
    pub since: usize,
    /// When the set-up was begun that is on screen.
    pub begun: Instant,
    /// The key to leave was pressed once.
    pub leaving: bool,
}

/// What a person looks at on the front of a cabinet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct FrontView {
    /// The opening, front, partition or fixed shelf under the cursor; where the cabinet has none of this key, its first.
    pub at: Name,
    /// Whether the boxes of drawers are drawn too.
    pub boxes: bool,
    /// The screen one came from.
    pub back: Screen,
}

/// What lies beside the face or on it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Pane {
    /// The sizes; the line one is on.
    Sizes(usize),
    /// The findings of the cabinet; the line one is on.
    Checks(usize),
    /// The cards and the house defaults.
    Cards(CardsAt),
    /// What the shop keeps and the job lacks.
    FromShop {
        /// The line one is on.
        line: usize,
        /// Where one was on the cards.
        cards: CardsAt,
    },
    /// What is proposed.
    Proposals {
        /// The proposal one is on.
        line: usize,
        /// What for.
        wish: Asking,
    },
    /// The papers.
    Papers,
    /// Where the numbers come from; the line at the top.
    Why(usize),
    /// The keys; the line at the top.
    Help(usize),
}

/// What proposals were asked for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Asking {
    /// What would carry the fronts of the cabinet; with a front, also anew for one that is carried already.
    Hardware(Option<Name>),
    /// What the bay one stands in and its cabinet could have: shelf holes, heights, offsets.
    Bay,
    /// What would mend a finding.
    Mend {
        /// Which.
        finding: Told,
        /// The line of the checks one came from; `None` from a face or the front.
        from: Option<usize>,
    },
}

impl Asking {
    /// Whether all that is proposed can be had at once, rather than one or the other.
    #[must_use]
    pub fn goes_together(self) -> bool {
        matches!(self, Self::Hardware(_))
    }
}

/// By what a finding is known again in the next frame: findings are computed each time.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Told {
    /// Its rule.
    pub rule: Rule,
    /// Where it is.
    pub place: Place,
    /// What it is about.
    pub about: [Option<Name>; 2],
}

impl Told {
    /// How this finding is known again.
    #[must_use]
    pub fn of(finding: &Finding) -> Self {
        Self {
            rule: finding.rule,
            place: finding.place,
            about: finding.about,
        }
    }
}

/// What is asked, and what has been answered so far.
#[derive(Clone, Debug)]
pub enum Asked {
    /// For a line of text.
    Line(Line),
    /// Unsaved changes, on leaving.
    Leaving,
    /// Changes found beside the file, on opening: how many.
    Found(usize),
    /// Something else lies where the job is to be saved.
    Occupied {
        /// Where.
        path: PathBuf,
        /// What lies there, in words.
        what: String,
        /// Leave once it is saved.
        then_quit: bool,
    },
    /// Files with other contents have the names of papers.
    PapersThere(Vec<String>),
}

/// A line to type.
#[derive(Clone, Debug)]
pub struct Line {
    /// What for.
    pub purpose: Purpose,
    /// What is typed.
    pub field: Field,
    /// Why it was refused; what was typed stays.
    pub complaint: Option<String>,
}

/// What has been typed toward the next fitting.
#[derive(Clone, Copy, Debug, Default)]
pub struct Entry {
    /// A number.
    pub count: Option<u16>,
    /// Where a run begins.
    pub mark: Option<i16>,
    /// The last fitting.
    pub last: Option<Fitting>,
    /// The last press of all.
    pub press: Option<Press>,
}

/// The kinds of fittings a key sets.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fitting {
    /// Pin holes.
    Pins,
    /// So many pin holes about the middle of a bay.
    Centred(u16),
    /// A hinge plate.
    Plate,
    /// A pair of runners.
    Runner,
    /// A loose shelf.
    Shelf,
}

/// Something said in the hint line until the next key.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Notice {
    /// Whether it is a refusal.
    pub is_refusal: bool,
    /// The sentence.
    pub text: String,
}

impl Notice {
    /// What was done.
    pub fn done(text: impl Into<String>) -> Self {
        Self {
            is_refusal: false,
            text: text.into(),
        }
    }

    /// What was not done, and why.
    pub fn refused(text: impl Into<String>) -> Self {
        Self {
            is_refusal: true,
            text: text.into(),
        }
    }
}

/// From this many columns on a face screen shows the mate too.
pub const WIDE_FROM: u16 = 116;

impl App {
    /// The program with a job on its desk.
    #[must_use]
    pub fn new(desk: Desk, theme: Theme, size: (u16, u16)) -> Self {
        let first = desk
            .job
            .cabinets
            .first()
            .map_or(Name(0), |cabinet| cabinet.key);
        let mut spot = Spot::first_of(&desk.job, first);
        if let Some(left) = desk.job.left_at {
            spot = Spot {
                cabinet: left.cabinet,
                face: left.face,
                ..spot
            }
            .settled(&desk.job);
        }
        Self {
            desk,
            spot,
            screen: Screen::Face,
            walk: None,
            front: FrontView {
                at: Name(0),
                boxes: false,
                back: Screen::Face,
            },
            pane: None,
            below: None,
            asked: None,
            entry: Entry::default(),
            papers: PapersAt::default(),
            shop_file: ShopFile::default(),
            notice: None,
            size,
            theme,
        }
    }

    /// Whether both walls of the bay are on screen.
    #[must_use]
    pub fn shows_mate(&self) -> bool {
        self.screen == Screen::Book || (self.screen == Screen::Face && self.size.0 >= WIDE_FROM)
    }

    /// Where a key pressed now is pressed.
    #[must_use]
    pub fn context(&self) -> Context {
        match &self.asked {
            Some(Asked::Line(_)) => Context::Line,
            Some(Asked::Leaving) => Context::Leaving,
            Some(Asked::Found(_)) => Context::Found,
            Some(Asked::Occupied { .. }) => Context::Occupied,
            Some(Asked::PapersThere(_)) => Context::PapersThere,
            None => self.context_of(self.pane),
        }
    }

    /// Where keys are pressed again once the page is closed.
    #[must_use]
    pub fn context_below(&self) -> Context {
        self.context_of(self.below)
    }

    fn context_of(&self, pane: Option<Pane>) -> Context {
        match (pane, self.screen) {
            (Some(Pane::Sizes(_)), _) => Context::Sizes,
            (Some(Pane::Checks(_)), _) => Context::Checks,
            (Some(Pane::Cards(_)), _) => Context::Cards,
            (Some(Pane::FromShop { .. }), _) => Context::FromShop,
            (Some(Pane::Proposals { .. }), _) => Context::Proposals,
            (Some(Pane::Papers), _) => Context::Papers,
            (Some(Pane::Why(_) | Pane::Help(_)), _) => Context::Page,
            (None, _) if self.walk.is_some() => Context::Bench,
            (None, Screen::Job(_)) => Context::Job,
            (None, Screen::Front) => Context::Front,
            (None, Screen::Face | Screen::Book) => Context::Face,
        }
    }
}
