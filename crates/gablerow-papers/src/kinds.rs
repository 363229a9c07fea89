//! Which papers there are: the one table of what can be printed, for the command line and for screens.
//!
//! ```text
//! kind ----- what a job, a cabinet or a face is printed as, in which formats, whether a stop holds it back
//! plan ----- a kind in a format -> files: what each is of, and its name
//! print ---- a planned file -> text or pages, and bytes
//! names ---- what of a name goes into the name of a file
//! ```

mod names;
mod plan;
mod print;

use crate::PartList;
pub(crate) use plan::copies;
pub use plan::{Planned, Printer};
pub use print::{PaperFile, Printed};

/// What a file is made for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Scope {
    /// One for the job, or for the one cabinet that is chosen.
    Job,
    /// One for each cabinet; for mirrored copies another where they are drawn.
    Cabinet,
    /// One for each face of it that a bay sees, and each outside with holes.
    Face,
}

impl Scope {
    /// What one file is for.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Job => "job",
            Self::Cabinet => "cabinet",
            Self::Face => "face",
        }
    }
}

/// How a paper is written.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Format {
    /// Text of 80 columns, UTF-8.
    Text,
    /// The same with signs of ASCII.
    Ascii,
    /// Comma-separated values.
    Csv,
    /// A picture, true to size.
    Svg,
    /// Sheets of paper.
    Pdf,
    /// A drawing for machines.
    Dxf,
}

impl Format {
    /// All of them.
    pub const ALL: [Self; 6] = [
        Self::Text,
        Self::Ascii,
        Self::Csv,
        Self::Svg,
        Self::Pdf,
        Self::Dxf,
    ];

    /// What it is called.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Text => "text",
            Self::Ascii => "ascii",
            Self::Csv => "csv",
            Self::Svg => "svg",
            Self::Pdf => "pdf",
            Self::Dxf => "dxf",
        }
    }

    /// What a file of it ends with, without the dot. No two formats share one, so that none is written over another.
    #[must_use]
    pub fn ending(self) -> &'static str {
        match self {
            Self::Text => "txt",
            Self::Ascii => "asc",
            Self::Csv => "csv",
            Self::Svg => "svg",
            Self::Pdf => "pdf",
            Self::Dxf => "dxf",
        }
    }
}

/// A paper that can be printed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Kind {
    /// What is done at the bench.
    Bench,
    /// Every hole of a cabinet.
    Holes,
    /// The same on a machine's axes.
    Machine,
    /// The faces of a cabinet, to be read at the bench.
    Faces,
    /// A face, to be read by programs.
    Drawing,
    /// The story stick.
    Stick,
    /// Every part.
    Parts,
    /// What is sawn.
    Cut,
    /// Doors and drawer fronts.
    Fronts,
    /// Drawer boxes.
    Boxes,
    /// Loose shelves.
    Shelves,
    /// Hardware.
    Bag,
    /// A label for each piece.
    Labels,
}

/// A line of the table.
struct Line {
    word: &'static str,
    says: &'static str,
    scope: Scope,
    formats: &'static [Format],
    /// Whether it tells somebody where to bore, so that an open stop of its cabinet holds it back.
    is_for_boring: bool,
}

impl Kind {
    /// All of them, those for boring first.
    pub const ALL: [Self; 13] = [
        Self::Bench,
        Self::Holes,
        Self::Machine,
        Self::Faces,
        Self::Drawing,
        Self::Stick,
        Self::Parts,
        Self::Cut,
        Self::Fronts,
        Self::Boxes,
        Self::Shelves,
        Self::Bag,
        Self::Labels,
    ];

    /// What it is called.
    #[must_use]
    pub fn word(self) -> &'static str {
        self.line().word
    }

    /// What it is.
    #[must_use]
    pub fn says(self) -> &'static str {
        self.line().says
    }

    /// What one file of it is for.
    #[must_use]
    pub fn scope(self) -> Scope {
        self.line().scope
    }

    /// How it can be written; the first one is written when nothing is said.
    #[must_use]
    pub fn formats(self) -> &'static [Format] {
        self.line().formats
    }

    /// Whether an open stop of its cabinet holds it back.
    #[must_use]
    pub fn is_for_boring(self) -> bool {
        self.line().is_for_boring
    }

    /// The list of parts that it is, if it is one.
    fn list(self) -> Option<PartList> {
        match self {
            Self::Cut => Some(PartList::Cut),
            Self::Fronts => Some(PartList::Fronts),
            Self::Boxes => Some(PartList::Boxes),
            Self::Shelves => Some(PartList::Shelves),
            Self::Bag => Some(PartList::Bag),
            _ => None,
        }
    }

    fn line(self) -> Line {
        use Format::{Ascii, Csv, Dxf, Pdf, Svg, Text};
        let for_boring = |word, says, scope, formats| Line {
            word,
            says,
            scope,
            formats,
            is_for_boring: true,
        };
        let for_parts = |word, says, formats| Line {
            word,
            says,
            scope: Scope::Job,
            formats,
            is_for_boring: false,
        };
        match self {
            Self::Bench => for_boring(
                "bench",
                "what is left to bore, set-up by set-up",
                Scope::Job,
                &[Pdf, Text, Ascii],
            ),
            Self::Holes => for_boring(
                "holes",
                "every hole of every copy",
                Scope::Cabinet,
                &[Text, Ascii, Csv],
            ),
            Self::Machine => for_boring(
                "machine",
                "every hole on the axes of the machine; its card is chosen as the rail",
                Scope::Cabinet,
                &[Csv],
            ),
            Self::Faces => for_boring(
                "faces",
                "every face with its holes, a sheet each",
                Scope::Cabinet,
                &[Pdf, Text, Ascii],
            ),
            Self::Drawing => for_boring(
                "drawing",
                "a face for machines and drawing programs, 1:1",
                Scope::Face,
                &[Dxf, Svg],
            ),
            Self::Stick => for_boring(
                "stick",
                "every height of a cabinet, true size, to lay against a panel",
                Scope::Cabinet,
                &[Pdf, Svg],
            ),
            Self::Parts => for_parts(
                "parts",
                "all that is cut and bought, cabinet by cabinet",
                &[Text, Csv],
            ),
            Self::Cut => for_parts("cut", "all that is sawn, with bands and grain", &[Pdf]),
            Self::Fronts => for_parts("fronts", "doors with their cups, drawer fronts", &[Pdf]),
            Self::Boxes => for_parts("boxes", "drawer boxes", &[Pdf]),
            Self::Shelves => for_parts("shelves", "loose shelves and their holes", &[Pdf]),
            Self::Bag => for_parts("bag", "hardware, with some to spare", &[Pdf]),
            Self::Labels => for_parts("labels", "a label for each piece", &[Pdf, Text, Csv]),
        }
    }
}

#[cfg(test)]
mod tests {
    use alloc::collections::BTreeSet;

    use super::*;

    #[test]
    fn words_of_kinds_and_endings_of_formats_are_told_apart() {
        let words: BTreeSet<_> = Kind::ALL.iter().map(|kind| kind.word()).collect();
        assert_eq!(words.len(), Kind::ALL.len());
        let endings: BTreeSet<_> = Format::ALL.iter().map(|format| format.ending()).collect();
        assert_eq!(endings.len(), Format::ALL.len());
    }

    #[test]
    fn every_kind_has_a_format_and_every_format_a_kind() {
        assert!(Kind::ALL.iter().all(|kind| !kind.formats().is_empty()));
        for format in Format::ALL {
            let has = |kind: &Kind| kind.formats().contains(&format);
            assert!(Kind::ALL.iter().any(has), "{format:?}");
        }
    }
}
