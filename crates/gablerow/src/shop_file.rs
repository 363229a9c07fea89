//! What the shop keeps for all of its jobs: house defaults and cards, copied into a job and out of it, never shared.

use gablerow_core::cards::{Card, CardKind, CardName, Cards};
use gablerow_core::edit::{Content, Edit, shop_values};
use gablerow_core::job::{Job, Shop};

use crate::card_line::CardLine;

/// The shop's own house defaults and cards.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct ShopFile {
    /// House defaults; `None` until some were kept.
    pub shop: Option<Shop>,
    /// Cards.
    pub cards: Cards,
}

/// What a job can take from the shop.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Offer {
    /// The house defaults, which are others than the job's.
    House(Box<Shop>),
    /// A card that the job lacks.
    Missing(Box<Card>),
    /// A card that the job has with other values.
    Other(Box<Card>),
}

impl Offer {
    /// What it is called, and how it stands to the job.
    #[must_use]
    pub fn words(&self) -> String {
        match self {
            Self::House(_) => format!("{}, others than this job's", CardLine::HOUSE),
            Self::Missing(card) => format!("{}: {}", card.name(), card.title()),
            Self::Other(card) => format!("{}: {}, with other values", card.name(), card.title()),
        }
    }

    /// The edit that takes it.
    #[must_use]
    pub fn edit(self) -> Edit {
        match self {
            Self::House(shop) => Edit::ShopTake(shop),
            Self::Missing(card) | Self::Other(card) => Edit::CardTake(card),
        }
    }
}

impl ShopFile {
    /// A file of one card of a job.
    #[must_use]
    pub fn of_card(card: Card) -> Self {
        let mut file = Self::default();
        file.cards.put(card);
        file
    }

    /// A file of the house defaults of a job, with the cards they name.
    #[must_use]
    pub fn of_house(job: &Job) -> Self {
        let mut file = Self {
            shop: Some(job.shop.clone()),
            ..Self::default()
        };
        for name in named(&job.shop) {
            job.cards
                .card(&name)
                .into_iter()
                .for_each(|card| file.cards.put(card));
        }
        file
    }

    /// This file with what another one holds put in place of its own.
    #[must_use]
    pub fn with(mut self, other: Self) -> Self {
        self.shop = other.shop.or(self.shop);
        for name in other.cards.all_names() {
            other
                .cards
                .card(&name)
                .into_iter()
                .for_each(|card| self.cards.put(card));
        }
        self
    }

    /// What a new job begins with: the starter cards and defaults, with the shop's in their place; `None` when the shop
    /// keeps nothing.
    #[must_use]
    pub fn house(&self) -> Option<(Shop, Cards)> {
        if *self == Self::default() {
            return None;
        }
        let starter = Self {
            shop: Some(Shop::starter()),
            cards: Cards::starter(),
        };
        let Self { shop, cards } = starter.with(self.clone());
        Some((shop.unwrap_or_else(Shop::starter), cards))
    }

    /// What a job lacks or has otherwise, the house defaults first.
    #[must_use]
    pub fn offers(&self, job: &Job) -> Vec<Offer> {
        let house = self.shop.iter().filter(|shop| **shop != job.shop);
        let house = house.map(|shop| Offer::House(Box::new(shop.clone())));
        let cards = self.cards.all_names().into_iter().filter_map(|name| {
            let kept = Box::new(self.cards.card(&name)?);
            match job.cards.card(&name) {
                None => Some(Offer::Missing(kept)),
                Some(own) if own != *kept => Some(Offer::Other(kept)),
                Some(_) => None,
            }
        });
        house.chain(cards).collect()
    }
}

/// The cards that house defaults name.
fn named(shop: &Shop) -> Vec<CardName> {
    let of = |kind: CardKind, now: Content| match now {
        Content::Card(Some(id)) => Some(CardName { kind, id }),
        _ => None,
    };
    let values = shop_values(shop).into_iter();
    let cards = values.filter_map(|value| match value.quantity {
        gablerow_core::edit::Quantity::Card(kind, _) => of(kind, value.now),
        _ => None,
    });
    cards.collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use gablerow_core::label::Label;
    use gablerow_core::measure::Length;

    fn job() -> Job {
        Job::plain(Label::new("kiln room").unwrap())
    }

    fn card(job: &Job, kind: CardKind) -> Card {
        job.cards.card(&job.cards.names(kind)[0]).unwrap()
    }

    #[test]
    fn a_job_is_offered_what_it_lacks_or_has_otherwise_and_takes_it() {
        let mut other = job();
        other.cards.boards[0].thickness.value = Length::from_um(18_200);
        other.cards.pins.clear();
        let kept = ShopFile::of_card(card(&job(), CardKind::Board))
            .with(ShopFile::of_card(card(&job(), CardKind::Pin)))
            .with(ShopFile::of_card(card(&job(), CardKind::Hinge)));
        let offers = kept.offers(&other);
        assert!(
            matches!(&offers[..], [Offer::Other(_), Offer::Missing(_)]),
            "{offers:?}"
        );
        for offer in offers {
            offer.edit().apply(&other).unwrap().apply(&mut other);
        }
        assert_eq!(other, job());
        assert_eq!(kept.offers(&other), []);
    }

    #[test]
    fn house_defaults_go_with_the_cards_they_name() {
        let mut start = job();
        start.shop.depth = Length::from_mm(13);
        let kept = ShopFile::of_house(&start);
        assert!(kept.cards.validate().is_ok());
        assert!(start.shop.validate(&kept.cards).is_ok());
        assert!(matches!(&kept.offers(&job())[..], [Offer::House(_)]));
        let (shop, cards) = kept.house().unwrap();
        assert_eq!((shop, cards), (start.shop, start.cards));
    }

    #[test]
    fn a_new_job_begins_with_the_shops_cards_among_the_starter_cards() {
        assert_eq!(ShopFile::default().house(), None);
        let title = Label::new("wide hinge").unwrap();
        let id = gablerow_core::cards::CardId::of_title("wide hinge");
        let own = card(&job(), CardKind::Hinge).renamed(id, title);
        let (shop, cards) = ShopFile::of_card(own.clone()).house().unwrap();
        assert_eq!(shop, Shop::starter());
        assert_eq!(cards.card(&own.name()), Some(own));
        assert_eq!(cards.hinges.len(), Cards::starter().hinges.len() + 1);
    }
}
