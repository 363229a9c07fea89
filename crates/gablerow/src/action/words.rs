//! What each action is called, and what it does in a sentence.

use super::Action;

/// Each action with its label and its help; digits are one.
pub(super) const WORDS: &[(Action, &str, &str)] = &[
    (Action::Up, "up", "One hole or one line up."),
    (Action::Down, "down", "One hole or one line down."),
    (
        Action::Left,
        "row",
        "To the row on the left; from the last one to the mate when both are shown.",
    ),
    (
        Action::Right,
        "row",
        "To the row on the right; from the last one to the mate when both are shown.",
    ),
    (Action::Foot, "foot", "To the lowest hole."),
    (Action::Head, "head", "To the highest hole."),
    (Action::GoTo, "go", "To the hole whose number was typed."),
    (Action::NextFace, "next", "To the next face of the job."),
    (Action::PreviousFace, "previous", "To the face before."),
    (
        Action::Digit(0),
        "number",
        "A hole to go to (then Enter), or how many holes the next fitting runs over.",
    ),
    (
        Action::Mark,
        "mark",
        "Begins a run here; move, and the next fitting covers it. Again drops it.",
    ),
    (
        Action::Pins,
        "shelf zone",
        "Pin holes for shelves on this hole or run, on both walls; again takes them away.",
    ),
    (
        Action::Centred,
        "centred",
        "A shelf zone of the typed number of holes about the middle hole.",
    ),
    (
        Action::Hinge,
        "hinge",
        "A hinge plate on this hole and the next above; again takes it away.",
    ),
    (
        Action::Runner,
        "runner",
        "A pair of drawer runners on this hole; again takes it away.",
    ),
    (
        Action::Shelf,
        "loose shelf",
        "A loose shelf on this hole, or none; its load is among the sizes.",
    ),
    (Action::Again, "again", "The last fitting once more, here."),
    (
        Action::Datum,
        "count from",
        "Counts the fitting here from the foot, the head or the middle, in turn.",
    ),
    (
        Action::Mate,
        "mate",
        "Both walls of the bay, open like a book; again shows one face.",
    ),
    (
        Action::Front,
        "front",
        "The cabinet from the front: bays, doors, drawers, shelves.",
    ),
    (Action::Above, "above", "To the bay, front or board above."),
    (Action::Below, "below", "To the bay, front or board below."),
    (
        Action::LeftOf,
        "left",
        "To the bay, front or board on the left.",
    ),
    (
        Action::RightOf,
        "right",
        "To the bay, front or board on the right.",
    ),
    (
        Action::LeftWall,
        "face",
        "To the left wall of the bay here, at what carries the front; of a partition its left face.",
    ),
    (
        Action::RightWall,
        "right face",
        "To the right wall of the bay here; of a partition its right face.",
    ),
    (
        Action::Behind,
        "behind",
        "From a front to the bay behind it, from a bay to the opening around it.",
    ),
    (
        Action::Boxes,
        "boxes",
        "Shows the room that runners leave for their boxes; again hides it.",
    ),
    (
        Action::NextCabinet,
        "next",
        "The next cabinet, from the front or its checks.",
    ),
    (
        Action::PreviousCabinet,
        "previous",
        "The cabinet before, from the front or its checks.",
    ),
    (
        Action::Sizes,
        "edit",
        "The sizes of what stands here, of the cabinet, of the job.",
    ),
    (Action::Job, "job", "The cabinets of the job."),
    (
        Action::Checks,
        "checks",
        "What the checks have to say, and the way to each place.",
    ),
    (
        Action::Cards,
        "cards",
        "The cards of boards and hardware, and the house defaults.",
    ),
    (Action::List, "list", "To the list of cards."),
    (Action::Values, "values", "To the values of this card."),
    (
        Action::Origin,
        "origin",
        "Where this value comes from: data sheet, house guess or invented, in turn.",
    ),
    (
        Action::Default,
        "default",
        "Makes this card the house default of its kind; of boards that of carcasses.",
    ),
    (
        Action::CopyCard,
        "copy",
        "A card like this one, under another title.",
    ),
    (
        Action::RemoveCard,
        "remove",
        "Removes this card, when nothing rests on it.",
    ),
    (
        Action::KeepInShop,
        "keep",
        "Keeps this card, or the house defaults, in the shop for every job.",
    ),
    (
        Action::FromShop,
        "from shop",
        "Takes cards or house defaults that the shop keeps and this job lacks.",
    ),
    (
        Action::Why,
        "why",
        "Where the numbers on this screen come from.",
    ),
    (
        Action::Undo,
        "undo",
        "Takes the last change back, without end, also after reopening.",
    ),
    (
        Action::Redo,
        "redo",
        "Makes the change again that was taken back.",
    ),
    (
        Action::Unit,
        "mm/in",
        "Shows and reads lengths in the other unit.",
    ),
    (Action::Save, "save", "Saves the job."),
    (
        Action::Quit,
        "quit",
        "Leaves the program; unsaved changes are never lost.",
    ),
    (Action::Help, "help", "The keys of this screen."),
    (Action::Enter, "take", "Takes this line, or what is typed."),
    (Action::Leave, "back", "Back, and nothing is changed."),
    (
        Action::LeaveBench,
        "back",
        "Twice: back to where you came from; all that is done is kept.",
    ),
    (Action::Add, "add", "A new plain cabinet after this one."),
    (
        Action::Copy,
        "copy",
        "A cabinet like this one, right after it.",
    ),
    (Action::Rename, "rename", "Another name for this cabinet."),
    (
        Action::Remove,
        "remove",
        "Removes this cabinet; its name has to be typed.",
    ),
    (
        Action::SaveAndQuit,
        "save, quit",
        "Saves the job and leaves.",
    ),
    (
        Action::QuitUnsaved,
        "quit",
        "Leaves without saving; the changes are found again on opening.",
    ),
    (
        Action::AsSaved,
        "as saved",
        "Goes back to what the file holds, step by step; redo makes the changes again.",
    ),
    (Action::Open, "open", "Opens this cabinet on its left side."),
    (
        Action::GoThere,
        "go there",
        "Goes to the place of this finding.",
    ),
    (
        Action::TakeUp,
        "take up",
        "Goes on with the changes that were found; undo takes them back.",
    ),
    (
        Action::SaveElsewhere,
        "other name",
        "Saves under another name.",
    ),
    (
        Action::Overwrite,
        "overwrite",
        "Saves over what somebody else wrote; that stays in the backup.",
    ),
    (
        Action::Accept,
        "accept",
        "Accepts this finding, for a typed reason; overrules a stop, with a sentence. Again takes that back.",
    ),
    (
        Action::Mend,
        "mend",
        "What would mend this finding, or the one of what is here: each way drawn before it is taken.",
    ),
    (
        Action::SideBySide,
        "divide",
        "A partition here; with a number typed before, so many bays side by side.",
    ),
    (
        Action::Stacked,
        "shelf across",
        "A fixed shelf here; with a number typed before, so many openings above each other.",
    ),
    (
        Action::TakeAway,
        "take away",
        "Takes away what is here: a partition, fixed shelf or front; on a face what owns the hole.",
    ),
    (
        Action::Door,
        "door",
        "A door here; again hung right, a pair, none.",
    ),
    (
        Action::Drawers,
        "drawers",
        "The typed number of drawers here; the same again takes them away. What one holds is among its sizes.",
    ),
    (
        Action::DrawersBehind,
        "behind",
        "The typed number of drawers behind the door here; the same again takes them away.",
    ),
    (
        Action::FalseFront,
        "false",
        "A false front at the head; again takes it away.",
    ),
    (
        Action::Modules,
        "modules",
        "This front takes the typed number of modules of 32.",
    ),
    (
        Action::Hardware,
        "hardware",
        "Plates and runners that would carry the fronts, each shown before it is taken.",
    ),
    (
        Action::TakeAll,
        "take all",
        "Takes all that is proposed; one undo takes it back.",
    ),
    (
        Action::NextGroup,
        "next group",
        "To the next group of sizes: of the part, the cabinet, the whole job.",
    ),
    (
        Action::Offers,
        "offers",
        "What this bay could have: clean shelf holes, a row that merges, heights and offsets that balance.",
    ),
    (
        Action::FreeRow,
        "free row",
        "A row of holes on this face alone, over this hole or run, so far from its front or back edge.",
    ),
    (
        Action::FreeHole,
        "free hole",
        "One hole on this face alone, at any setback and height; sizes change it afterwards.",
    ),
    (
        Action::Turn,
        "turn",
        "The other face of this panel, also an outside, which takes free rows and free holes.",
    ),
    (
        Action::BuildOne,
        "one more",
        "One more of this cabinet is built: another copy of it.",
    ),
    (
        Action::BuildMirrored,
        "mirrored",
        "One more of this cabinet is built, left and right exchanged.",
    ),
    (
        Action::BuildLess,
        "one less",
        "The last copy of this cabinet is not built, unless something of it is bored.",
    ),
    (
        Action::NameCopies,
        "name copies",
        "Another name for a copy of this cabinet.",
    ),
    (
        Action::Bench,
        "bench",
        "To the bench: what is left to bore, one set-up after the other.",
    ),
    (
        Action::Done,
        "done",
        "Bored: it is on record, and the next set-up comes.",
    ),
    (
        Action::NotDone,
        "one back",
        "The set-up before was not bored after all, be it of an earlier day; it comes again.",
    ),
    (
        Action::Trouble,
        "trouble",
        "Asks what is wrong with this panel, and keeps it with the job.",
    ),
    (
        Action::Measured,
        "measured",
        "Asks what the distances of this face measure, ; between two; one that misses by whole holes is said at once.",
    ),
    (
        Action::CutAnew,
        "cut anew",
        "A panel was cut anew: asks which, and all of it is to be bored again, whatever is on record of the old one.",
    ),
    (
        Action::Papers,
        "papers",
        "The papers: which are written, what they look like, and where to.",
    ),
    (
        Action::Choose,
        "choose",
        "This paper is written, or it is not.",
    ),
    (
        Action::ChooseAll,
        "all",
        "Every paper is written; again none is, and Enter writes the one of the line.",
    ),
    (
        Action::Format,
        "format",
        "Its next format; each has those that make sense for it.",
    ),
    (
        Action::SheetSize,
        "sheets",
        "The next size of sheets: A4, A3, Letter.",
    ),
    (
        Action::WhichCabinet,
        "cabinet",
        "Papers of one cabinet alone, first of the one you come from; after the last one of all.",
    ),
    (
        Action::Folder,
        "to",
        "Another folder; it is made when it is not there yet.",
    ),
    (
        Action::Whole,
        "larger",
        "What is shown on all of the screen, or beside the list.",
    ),
    (
        Action::SheetAfter,
        "turn",
        "The next sheet, or the next file.",
    ),
    (
        Action::SheetBefore,
        "turn",
        "The sheet before, or the file before.",
    ),
    (
        Action::Write,
        "write",
        "Writes what is chosen; nothing is written over unasked. Esc stops it between two files.",
    ),
    (
        Action::WriteOver,
        "write over",
        "Writes over the files that have these names; what was in them is gone.",
    ),
    (
        Action::CutLengths,
        "as cut",
        "What was measured of its panels; 703.6 t18.3 d1.2 p0.2 is length, thickness, how much longer the diagonal from the front of the foot is (d-1.2 shorter), play between stops.",
    ),
];
