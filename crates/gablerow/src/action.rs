//! Everything a key can do, with the words for it.

mod words;

use words::WORDS;

/// What a key does.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Action {
    /// A hole up, or a line up in a list.
    Up,
    /// A hole down, or a line down in a list.
    Down,
    /// To the row on the left.
    Left,
    /// To the row on the right.
    Right,
    /// To the lowest hole.
    Foot,
    /// To the highest hole.
    Head,
    /// To the typed hole.
    GoTo,
    /// To the next face of the job.
    NextFace,
    /// To the face before.
    PreviousFace,
    /// One more digit of a count or a hole number.
    Digit(u8),
    /// Begins a run here, or drops it.
    Mark,
    /// Pin holes of a shelf zone.
    Pins,
    /// A shelf zone about the middle hole.
    Centred,
    /// A hinge plate.
    Hinge,
    /// A pair of drawer runners.
    Runner,
    /// A loose shelf.
    Shelf,
    /// The last fitting once more.
    Again,
    /// Where the fitting under the cursor is counted from.
    Datum,
    /// Both walls of the bay, or one.
    Mate,
    /// The cabinet from the front.
    Front,
    /// To what is above on the front.
    Above,
    /// To what is below on the front.
    Below,
    /// To what is on the left on the front.
    LeftOf,
    /// To what is on the right on the front.
    RightOf,
    /// The left wall of the bay under the cursor.
    LeftWall,
    /// Its right wall.
    RightWall,
    /// What is behind a front, or around an opening.
    Behind,
    /// The boxes of drawers, drawn or not.
    Boxes,
    /// The front of the next cabinet.
    NextCabinet,
    /// The front of the cabinet before.
    PreviousCabinet,
    /// The sizes.
    Sizes,
    /// The cabinets of the job.
    Job,
    /// The findings.
    Checks,
    /// The cards and the house defaults.
    Cards,
    /// To the list of cards.
    List,
    /// To the values of the card.
    Values,
    /// Where a value comes from.
    Origin,
    /// The card that new things are made of.
    Default,
    /// A card like this one.
    CopyCard,
    /// A card less.
    RemoveCard,
    /// Keeps a card for all jobs.
    KeepInShop,
    /// Cards that were kept for all jobs.
    FromShop,
    /// Where the numbers come from.
    Why,
    /// Takes the last change back.
    Undo,
    /// Makes the change again.
    Redo,
    /// The other unit.
    Unit,
    /// Saves the job.
    Save,
    /// Leaves the program.
    Quit,
    /// The keys.
    Help,
    /// Takes the line of a list, or what is typed.
    Enter,
    /// Back to where one was; changes nothing.
    Leave,
    /// Back from the bench, when it is pressed twice.
    LeaveBench,
    /// A new cabinet.
    Add,
    /// A cabinet like this one.
    Copy,
    /// Another name for a cabinet.
    Rename,
    /// A cabinet less.
    Remove,
    /// Accepts a finding, with a reason; overrules a stop, with a sentence.
    Accept,
    /// What would mend a finding.
    Mend,
    /// Saves, and leaves.
    SaveAndQuit,
    /// Leaves; the changes are found again on opening.
    QuitUnsaved,
    /// Goes back to what the file holds.
    AsSaved,
    /// Opens the cabinet of the line.
    Open,
    /// Goes to the place of the finding.
    GoThere,
    /// Takes up the changes that were found.
    TakeUp,
    /// Saves under another name.
    SaveElsewhere,
    /// Saves over what somebody else wrote.
    Overwrite,
    /// Bays side by side.
    SideBySide,
    /// Openings above each other.
    Stacked,
    /// A row of holes that the face owns itself.
    FreeRow,
    /// One hole that the face owns itself.
    FreeHole,
    /// To the other face of the panel.
    Turn,
    /// One more of a cabinet is built.
    BuildOne,
    /// One more is built, as the mirror image.
    BuildMirrored,
    /// One less is built.
    BuildLess,
    /// Other names for what is built.
    NameCopies,
    /// What was measured of the panels of what is built.
    CutLengths,
    /// A partition, fixed shelf or front less; on a face what owns the hole.
    TakeAway,
    /// The next way of hanging a door.
    Door,
    /// So many drawers.
    Drawers,
    /// So many drawers behind the door.
    DrawersBehind,
    /// A front that does not open.
    FalseFront,
    /// A front of so many modules.
    Modules,
    /// To the first line of the next group.
    NextGroup,
    /// What would carry the fronts.
    Hardware,
    /// What the bay here could have.
    Offers,
    /// Takes all that is proposed.
    TakeAll,
    /// To the bench: boring, one set-up after the other.
    Bench,
    /// The set-up is bored.
    Done,
    /// The set-up before was not.
    NotDone,
    /// Something went wrong with it.
    Trouble,
    /// What was measured of it.
    Measured,
    /// A panel was cut anew, and is bored again.
    CutAnew,
    /// The papers.
    Papers,
    /// A kind of paper more, or less.
    Choose,
    /// Every kind of paper, or none.
    ChooseAll,
    /// The next format of a kind of paper.
    Format,
    /// The next size of sheets.
    SheetSize,
    /// The next cabinet that papers are of, or all of them.
    WhichCabinet,
    /// The folder that papers are written to.
    Folder,
    /// What is shown of a paper, on all of the screen or beside the list.
    Whole,
    /// The next sheet.
    SheetAfter,
    /// The sheet before.
    SheetBefore,
    /// Writes the papers.
    Write,
    /// Writes papers over files with other contents.
    WriteOver,
}

impl Action {
    /// A word or two, for the hint line.
    #[must_use]
    pub fn label(self) -> &'static str {
        self.words().0
    }

    /// A sentence, for the help.
    #[must_use]
    pub fn help(self) -> &'static str {
        self.words().1
    }

    /// Whether a second press within a moment is a worn key rather than a wish.
    #[must_use]
    pub fn is_toggle(self) -> bool {
        matches!(
            self,
            Self::Mark
                | Self::Pins
                | Self::Centred
                | Self::Hinge
                | Self::Runner
                | Self::Shelf
                | Self::Again
                | Self::Datum
                | Self::Turn
                | Self::BuildOne
                | Self::BuildMirrored
                | Self::BuildLess
                | Self::SideBySide
                | Self::Stacked
                | Self::TakeAway
                | Self::Door
                | Self::Drawers
                | Self::DrawersBehind
                | Self::FalseFront
                | Self::Modules
                | Self::Origin
                | Self::Done
                | Self::NotDone
                | Self::Choose
                | Self::ChooseAll
                | Self::Whole
                | Self::Write
        )
    }

    fn words(self) -> (&'static str, &'static str) {
        let named = match self {
            Self::Digit(_) => Self::Digit(0),
            other => other,
        };
        let row = WORDS.iter().find(|(action, _, _)| *action == named);
        row.map_or(("", ""), |&(_, label, help)| (label, help))
    }
}
