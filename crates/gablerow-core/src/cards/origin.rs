//! Where a value comes from.

/// Where a card's value comes from; these three words only.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Origin {
    /// Read from the data sheet.
    DataSheet,
    /// A value the shop goes by until the data sheet is at hand.
    HouseGuess,
    /// Made up, to have something to work with.
    Invented,
}

impl Origin {
    /// All three.
    pub const ALL: [Self; 3] = [Self::DataSheet, Self::HouseGuess, Self::Invented];

    /// The words a person reads.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::DataSheet => "data sheet",
            Self::HouseGuess => "house guess",
            Self::Invented => "invented",
        }
    }

    /// Whether a finding that leans on the value says "check the data sheet".
    #[must_use]
    pub fn is_unproved(self) -> bool {
        self != Self::DataSheet
    }
}

/// A value and where it comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Sourced<T> {
    /// The value.
    pub value: T,
    /// Where it comes from.
    pub origin: Origin,
}

impl<T> Sourced<T> {
    /// A value the shop goes by.
    pub const fn guess(value: T) -> Self {
        Self {
            value,
            origin: Origin::HouseGuess,
        }
    }
}
