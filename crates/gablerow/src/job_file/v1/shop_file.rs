//! The twin of the shop's own file.

use serde::{Deserialize, Serialize};

use super::cards::Cards;
use super::job::Shop;
use super::twin::{Twin, plain};
use crate::job_file::wrong::Wrong;
use crate::shop_file;

/// What a shop file is called in its first field.
pub(in crate::job_file) const FORMAT: &str = "gablerow shop";
/// The version of this module.
pub(in crate::job_file) const VERSION: u32 = 1;

/// A shop file of Gablerow, version 1: house defaults and cards, each as in a job file.
#[derive(Debug, Deserialize, Serialize)]
#[serde(deny_unknown_fields)]
pub(in crate::job_file) struct ShopFile {
    /// Always the same.
    format: String,
    /// Always 1.
    version: u32,
    /// House defaults; left out until some were kept.
    #[serde(default, skip_serializing_if = "plain")]
    shop: Option<Shop>,
    /// Cards.
    cards: Cards,
}

impl Twin for ShopFile {
    type Core = shop_file::ShopFile;

    fn of(core: &Self::Core) -> Self {
        Self {
            format: FORMAT.to_string(),
            version: VERSION,
            shop: Twin::of(&core.shop),
            cards: Twin::of(&core.cards),
        }
    }

    fn into_core(self) -> Result<Self::Core, Wrong> {
        Ok(shop_file::ShopFile {
            shop: self
                .shop
                .into_core()
                .map_err(|wrong| wrong.within("shop"))?,
            cards: self
                .cards
                .into_core()
                .map_err(|wrong| wrong.within("cards"))?,
        })
    }
}
