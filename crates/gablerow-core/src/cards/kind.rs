//! Cards of any kind: their names, and how one is found, put and taken away.

use alloc::vec::Vec;
use core::fmt;

use super::{Board, CardId, Cards, Connector, Hinge, Pin, Rail, Runner};
use crate::label::Label;

/// The kinds of cards.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum CardKind {
    /// Boards.
    Board,
    /// Hinges.
    Hinge,
    /// Drawer runners.
    Runner,
    /// Shelf pins.
    Pin,
    /// Connectors.
    Connector,
    /// Rails, jigs and machine beds.
    Rail,
}

impl CardKind {
    /// All of them, in the order a person meets them.
    pub const ALL: [Self; 6] = [
        Self::Board,
        Self::Hinge,
        Self::Runner,
        Self::Pin,
        Self::Connector,
        Self::Rail,
    ];

    /// The word for one of them.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Board => "board",
            Self::Hinge => "hinge",
            Self::Runner => "runner",
            Self::Pin => "pin",
            Self::Connector => "connector",
            Self::Rail => "rail",
        }
    }

    /// The word for several of them.
    #[must_use]
    pub fn plural(self) -> &'static str {
        match self {
            Self::Board => "boards",
            Self::Hinge => "hinges",
            Self::Runner => "runners",
            Self::Pin => "pins",
            Self::Connector => "connectors",
            Self::Rail => "rails",
        }
    }
}

/// The name of a card among the cards of all kinds.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct CardName {
    /// Its kind.
    pub kind: CardKind,
    /// Its name within the kind.
    pub id: CardId,
}

impl fmt::Display for CardName {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} {}", self.kind.word(), self.id)
    }
}

/// Declares a card of any kind, and what all of them can do.
macro_rules! any_card {
    ($($kind:ident: $list:ident;)+) => {
        /// A card of any kind, whole.
        #[derive(Clone, Debug, PartialEq, Eq)]
        pub enum Card {
            $(
                #[doc = concat!("One of the ", stringify!($list), ".")]
                $kind($kind),
            )+
        }

        impl Card {
            /// Its name.
            #[must_use]
            pub fn name(&self) -> CardName {
                match self {
                    $(Self::$kind(card) => CardName { kind: CardKind::$kind, id: card.id.clone() },)+
                }
            }

            /// What people call it.
            #[must_use]
            pub fn title(&self) -> &Label {
                match self {
                    $(Self::$kind(card) => &card.title,)+
                }
            }

            /// The same card under another name.
            #[must_use]
            pub fn renamed(self, id: CardId, title: Label) -> Self {
                match self {
                    $(Self::$kind(card) => Self::$kind($kind { id, title, ..card }),)+
                }
            }
        }

        impl Cards {
            /// The names of the cards of a kind, in the order they were added.
            #[must_use]
            pub fn names(&self, kind: CardKind) -> Vec<CardName> {
                let named = |id: &CardId| CardName { kind, id: id.clone() };
                match kind {
                    $(CardKind::$kind => self.$list.iter().map(|card| named(&card.id)).collect(),)+
                }
            }

            /// The card of this name.
            #[must_use]
            pub fn card(&self, name: &CardName) -> Option<Card> {
                match name.kind {
                    $(CardKind::$kind => {
                        let found = self.$list.iter().find(|card| card.id == name.id);
                        found.cloned().map(Card::$kind)
                    })+
                }
            }

            /// Puts a card where the one of its name stands, or at the end.
            pub fn put(&mut self, card: Card) {
                match card {
                    $(Card::$kind(card) => {
                        match self.$list.iter_mut().find(|there| there.id == card.id) {
                            Some(there) => *there = card,
                            None => self.$list.push(card),
                        }
                    })+
                }
            }

            /// Takes a card away.
            pub fn remove(&mut self, name: &CardName) {
                match name.kind {
                    $(CardKind::$kind => self.$list.retain(|card| card.id != name.id),)+
                }
            }
        }
    };
}

any_card! {
    Board: boards;
    Hinge: hinges;
    Runner: runners;
    Pin: pins;
    Connector: connectors;
    Rail: rails;
}

impl Cards {
    /// The names of all cards, kind by kind.
    #[must_use]
    pub fn all_names(&self) -> Vec<CardName> {
        let of = |kind| self.names(kind);
        CardKind::ALL.into_iter().flat_map(of).collect()
    }

    /// Whether there is a card of this name.
    #[must_use]
    pub fn has(&self, name: &CardName) -> bool {
        self.names(name.kind).contains(name)
    }
}
