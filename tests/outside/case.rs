//! A case: a printed number with its source, and the number the program computes for it.

/// How a printed number came to be known.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Mark {
    /// Read where it was first printed, or on a scan of that.
    Origin,
    /// At least two unrelated pages print it.
    Pages,
    /// One page prints it.
    Page,
    /// Common practice: nobody prints it as a rule, so nothing about the world is claimed.
    Practice,
    /// Known from memory alone: it proves nothing.
    Memory,
}

/// Where a number is printed.
#[derive(Debug, PartialEq, Eq)]
pub(crate) struct Source {
    /// Who issued it; for pages of firms their kind, without the name.
    pub author: &'static str,
    /// What it is called.
    pub title: &'static str,
    /// The year of the edition, or that none is named.
    pub year: &'static str,
    /// The clause, table or page; with it by way of whom, where it was not read itself.
    pub clause: &'static str,
    /// How it came to be known.
    pub mark: Mark,
}

/// What kind of thing a case holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Kind {
    /// A number a formula gives. A formula that is wrong by 10 % is seen.
    Formula,
    /// A row of a table the program copies: a slip of the pen is seen.
    Table,
    /// Up to where a row of a table holds.
    Threshold,
    /// What a format asks of every file: no formula, but a file that breaks it is seen.
    Clause,
}

/// How far a computed number may be from the printed one, both ends included.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Within {
    /// Below the printed one.
    pub below: f64,
    /// Above it.
    pub above: f64,
    /// Why so much.
    pub why: &'static str,
}

/// Exact: only the last binary digits of a float may differ.
pub(crate) const EXACT: Within = around(1e-9, "printed whole, and computed in whole counts");

/// As far either way.
pub(crate) const fn around(within: f64, why: &'static str) -> Within {
    Within {
        below: within,
        above: within,
        why,
    }
}

/// The one of several printed numbers that is nearest to a computed one, where the source says only which there are.
pub(crate) fn nearest(prints: &[f64], computed: f64) -> f64 {
    let off = |printed: &&f64| (**printed - computed).abs();
    let nearest = prints.iter().min_by(|a, b| off(a).total_cmp(&off(b)));
    *nearest.unwrap()
}

/// A printed number against a computed one.
pub(crate) struct Case {
    /// What it is about; cases of one family rest on one formula or table.
    pub family: &'static str,
    /// Which number it is.
    pub name: String,
    /// Where it is printed.
    pub source: &'static Source,
    /// The number that is printed.
    pub printed: f64,
    /// The number the program computes, with what it rests on wrong by a factor: 1 is right.
    pub computed: Box<dyn Fn(f64) -> f64>,
    /// How far they may be apart.
    pub within: Within,
    /// What it holds.
    pub kind: Kind,
}

impl Case {
    /// A number that a formula gives; a wrong formula gives a wrong result.
    pub(crate) fn new(
        family: &'static str,
        name: impl Into<String>,
        source: &'static Source,
        printed: f64,
        found: f64,
    ) -> Self {
        Self {
            family,
            name: name.into(),
            source,
            printed,
            computed: Box::new(move |wrong| found * wrong),
            within: EXACT,
            kind: Kind::Formula,
        }
    }

    /// The same, but a wrong formula is wrong before the end: the factor goes in where this puts it.
    pub(crate) fn wrong_at(mut self, computed: impl Fn(f64) -> f64 + 'static) -> Self {
        self.computed = Box::new(computed);
        self
    }

    /// The same with so much between the two numbers.
    pub(crate) fn within(mut self, within: Within) -> Self {
        self.within = within;
        self
    }

    /// The same as a row of a table.
    pub(crate) fn table(mut self) -> Self {
        self.kind = Kind::Table;
        self
    }

    /// The same as the end of a row of a table.
    pub(crate) fn threshold(mut self) -> Self {
        self.kind = Kind::Threshold;
        self
    }

    /// What a clause of a format asks of a file: a number read off the bytes the program wrote. With anything wrong, off bytes
    /// that were spoilt as the clause forbids.
    pub(crate) fn clause(
        family: &'static str,
        name: impl Into<String>,
        source: &'static Source,
        printed: f64,
        file: &[u8],
        read: fn(&[u8]) -> f64,
        spoil: fn(&[u8]) -> Vec<u8>,
    ) -> Self {
        let [sound, spoilt] = [read(file), read(&spoil(file))];
        let read = move |wrong| if wrong == 1.0 { sound } else { spoilt };
        let case = Self::new(family, name, source, printed, sound).wrong_at(read);
        Self {
            kind: Kind::Clause,
            ..case
        }
    }

    /// Whether the numbers agree when what the program rests on is wrong by this factor.
    pub(crate) fn agrees(&self, wrong: f64) -> bool {
        let off = (self.computed)(wrong) - self.printed;
        -self.within.below <= off && off <= self.within.above
    }

    /// Whether a formula that is wrong by this share, either way, is seen.
    pub(crate) fn sees(&self, share: f64) -> bool {
        !self.agrees(1.0 + share) && !self.agrees(1.0 - share)
    }

    /// Both numbers and the source, for who has to find out why they differ.
    pub(crate) fn report(&self) -> String {
        let Source {
            author,
            title,
            year,
            clause,
            ..
        } = self.source;
        format!(
            "{} / {}: printed {}, computed {} (-{} +{}: {}); {author}, {title}, {year}, {clause}",
            self.family,
            self.name,
            self.printed,
            (self.computed)(1.0),
            self.within.below,
            self.within.above,
            self.within.why
        )
    }
}

/// A number the program has otherwise than it is printed. It is stated, not tuned away.
pub(crate) struct Disagreement {
    /// What it is about.
    pub what: &'static str,
    /// Where the other number is printed.
    pub source: &'static Source,
    /// The number that is printed.
    pub printed: f64,
    /// The number the program has.
    pub computed: f64,
    /// That number as it was when the reason was written: who changes it reads the reason again.
    pub stated: f64,
    /// Why the program keeps its own.
    pub reason: &'static str,
}
