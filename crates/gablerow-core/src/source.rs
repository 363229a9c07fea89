//! Where figures come from: one table of what is printed, and how far a figure may be trusted.

/// How a source was read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Seen {
    /// Where it was first printed, or on a scan of that.
    Itself,
    /// On at least two unrelated pages that agree.
    Pages,
    /// On one page.
    Page,
}

impl Seen {
    /// The words a person reads.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::Itself => "read itself",
            Self::Pages => "on several pages",
            Self::Page => "on one page",
        }
    }
}

/// Something that is printed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Source {
    /// What it is called in short; no two are called alike.
    pub name: &'static str,
    /// Who issued it; firms are named by their kind.
    pub author: &'static str,
    /// Its title.
    pub title: &'static str,
    /// The year of its edition, or that none is known.
    pub year: &'static str,
    /// The clause, table or page; with it by way of whom, where it was not read itself.
    pub clause: &'static str,
    /// How it was read.
    pub seen: Seen,
}

/// Where a figure comes from, and how far it may be trusted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Standing {
    /// Printed.
    Published(&'static Source),
    /// Borrowed from another material, because none is printed for this one.
    StandIn(&'static Source),
    /// A rule of thumb of the trade; no source.
    Practice,
    /// What the shop goes by; no source.
    HouseGuess,
}

impl Standing {
    /// The words a person reads: the source in short, or the label of what has none.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::Published(source) => source.name,
            _ => self.label(),
        }
    }

    /// Which of the four it is.
    #[must_use]
    pub fn label(self) -> &'static str {
        match self {
            Self::Published(_) => "published",
            Self::StandIn(_) => "stand-in",
            Self::Practice => "common practice",
            Self::HouseGuess => "house guess",
        }
    }

    /// What is printed, where anything is.
    #[must_use]
    pub fn source(self) -> Option<&'static Source> {
        match self {
            Self::Published(source) | Self::StandIn(source) => Some(source),
            Self::Practice | Self::HouseGuess => None,
        }
    }

    /// Whether a finding that leans on the figure says so.
    #[must_use]
    pub fn is_unproved(self) -> bool {
        !matches!(self, Self::Published(_))
    }
}

macro_rules! sources {
    ($($id:ident $name:literal, $author:literal, $title:literal, $year:literal, $clause:literal, $seen:ident;)+) => {
        $(
            #[doc = $title]
            pub const $id: &Source = &Source {
                name: $name,
                author: $author,
                title: $title,
                year: $year,
                clause: $clause,
                seen: Seen::$seen,
            };
        )+

        /// Everything printed that the program's figures rest on.
        pub const SOURCES: &[&Source] = &[$($id),+];
    };
}

sources! {
    YARD "the international yard", "US National Bureau of Standards",
        "Refinement of values for the yard and the pound", "1959",
        "Federal Register notice, in force from 1 July; by way of a metric association's mail archive and NIST SP 811", Page;
    SYSTEM_32 "System 32", "an encyclopedia and a shop that builds by the grid",
        "System 32; 32mm", "undated",
        "de.wikipedia.org; davelers.com/32mm/4988.html; a convention that no body has issued", Pages;
    BACK_ON_PITCH "rows on whole pitches", "a shop that builds by the grid",
        "32mm, Panels", "undated", "davelers.com/32mm/Panels/150.html", Page;
    FIRST_HOLES "start-hole table", "a woodworker's site",
        "32mm, Basics: start-hole table", "undated", "bellinghambaywoodcraft.com/32mm/Basics", Page;
    FRONT_HEIGHTS "front heights", "two shops that build by the grid",
        "32mm, door and drawer heights", "undated", "davelers.com/32mm/4988.html; dalrun.com/32mm/Drawers", Pages;
    LOWEST_DRAWER "lowest drawer", "a shop that builds by the grid",
        "32mm, Drawers", "undated", "davelers.com/32mm/Drawers", Page;
    INSET "inset doors", "a woodworker's site and a hinge maker",
        "Einlegeboeden - System 32; planning sheet", "undated", "michaelkeutel.de; a sheet", Pages;
    HINGE_SHEETS "hinge sheets", "two hinge makers",
        "planning sheets: overlay by arm, tab and plate", "undated", "letters differ, the relation does not", Pages;
    HINGE_CUP "cup sheet", "a hinge maker",
        "quick reference: cup and tab", "undated", "cup centres for tabs of 3 to 8", Page;
    HINGE_CHART "inch chart", "a hinge maker",
        "chart of hinge counts by height and weight", "undated", "bars paired to labels by inference", Page;
    HINGE_ADVICE "mass advice", "a hinge maker",
        "advice on hinge counts by mass and width", "undated", "for doors of 19 particleboard at 750 kg/m3", Page;
    RUNNER_GUIDE "drawer guide", "a guide to drawers",
        "drawer guide: holes of runners", "undated", "conduct.edu.vn/drawer-guide", Page;
    BOX_PAGES "box makers' pages", "makers of drawer boxes",
        "how to measure for a drawer box", "undated", "side-mount 12.7 a side; undermount 42 to the inside", Pages;
    DRAWER_RULE "drawer maker's rule", "a drawer maker",
        "general rule for stacks of drawers", "undated", "15 below, 25 between, 10 above", Page;
    BOARD_SHEET "board sheet", "a board maker",
        "sheet of raw particleboard", "undated", "kg/m3: 16 thick 660, 18 to 19 thick 650", Page;
    EN_312 "EN 312", "CEN",
        "Particleboards - Specifications", "edition not named by those who quote it",
        "table of type P2, least values, and table 1, tolerances; on board makers' sheets and a page about inspection", Pages;
    EN_622_5 "EN 622-5", "CEN",
        "Fibreboards - Specifications - Requirements for dry process boards (MDF)", "edition not named by the one who quotes it",
        "general purpose, dry, least values; on a board maker's sheet", Page;
    WOOD_2010 "Wood Handbook FPL-GTR-190", "Forest Products Laboratory",
        "Wood handbook: wood as an engineering material", "2010",
        "eq. 9-2 to 9-4, table 9-1; table 12-1", Itself;
    WOOD_2021 "Wood Handbook FPL-GTR-282", "Forest Products Laboratory",
        "Wood handbook: wood as an engineering material", "2021",
        "table 5-3a, at 12 % moisture; by two copies in public code repositories", Pages;
    EUROCODE_5 "EN 1995-1-1", "CEN",
        "Eurocode 5, Design of timber structures", "by way of NTC 2018, table 4.4.V",
        "2.2.3 and table 3.2, service class 1", Page;
    KCMA "ANSI/KCMA A161.1", "Kitchen Cabinet Manufacturers Association",
        "American national standard for kitchen cabinets", "contents of 2012",
        "5.1; a text copy on timberpart.com", Page;
    AWS "Architectural Woodwork Standards", "Architectural Woodwork Institute and others",
        "Architectural Woodwork Standards, ed. 1", "2009",
        "section 10, 1.2.21, p. 253", Itself;
    DIN_68930 "DIN 68930", "DIN",
        "Kitchen furniture, load class L50", "edition not named by the one who quotes it",
        "quoted by myhomebook.de, Kuechenschraenke Gewicht", Page;
    CFR_1261 "16 CFR 1261", "US Consumer Product Safety Commission",
        "Safety standard for clothing storage units; makes ASTM F2057-23 mandatory", "2023",
        "scope; cpsc.gov", Itself;
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_source_is_named_in_full_and_once() {
        for (at, source) in SOURCES.iter().enumerate() {
            let words = [
                source.name,
                source.author,
                source.title,
                source.year,
                source.clause,
            ];
            assert!(
                words.iter().all(|words| !words.trim().is_empty()),
                "{source:?}"
            );
            assert!(
                SOURCES[..at].iter().all(|other| other.name != source.name),
                "{}",
                source.name
            );
        }
    }

    #[test]
    fn only_what_is_printed_for_the_thing_itself_is_proved() {
        for (standing, words) in [
            (Standing::Published(KCMA), "ANSI/KCMA A161.1"),
            (Standing::StandIn(EUROCODE_5), "stand-in"),
            (Standing::Practice, "common practice"),
            (Standing::HouseGuess, "house guess"),
        ] {
            assert_eq!(standing.words(), words);
            assert_eq!(standing.is_unproved(), words == standing.label());
        }
    }
}
