//! Twin of a front.

use gablerow_core::job;
use gablerow_core::job::{FrontHeight, FrontKind, Label};
use serde::{Deserialize, Serialize};

use super::measure::Mm;
use super::text::Text;
use super::twin::{Key, Twin, plain};
use crate::job_file::wrong::Wrong;

/// What a front is, and how its height is found; one text in the file.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(in crate::job_file) struct FrontWish {
    pub(super) kind: FrontKind,
    pub(super) height: FrontHeight,
}

/// A wish for what closes an opening.
#[derive(Clone, Debug, PartialEq, Deserialize, Serialize)]
#[cfg_attr(test, derive(schemars::JsonSchema))]
#[serde(deny_unknown_fields)]
pub(in crate::job_file) struct Front {
    /// Its name in the cabinet.
    key: Key,
    /// What it is called at the bench.
    name: Text<Label>,
    /// What it is, with its hand and its height; a door whose height is left out takes what the others leave.
    kind: Text<FrontWish>,
    /// Its thickness, in mm; left out for that of the shop's front board.
    #[serde(default, skip_serializing_if = "plain")]
    thickness: Option<Mm>,
    /// What a drawer shall hold, in grams; a wish.
    #[serde(default, skip_serializing_if = "plain")]
    load_grams: Option<u32>,
}

impl Twin for Front {
    type Core = job::Front;

    fn of(core: &job::Front) -> Self {
        let job::Front {
            key,
            name,
            kind,
            height,
            thickness,
            load_grams,
        } = core;
        Self {
            key: Key::of(key),
            name: Twin::of(name),
            kind: Twin::of(&FrontWish {
                kind: *kind,
                height: *height,
            }),
            thickness: Twin::of(thickness),
            load_grams: *load_grams,
        }
    }

    fn into_core(self) -> Result<job::Front, Wrong> {
        let Self {
            key,
            name,
            kind,
            thickness,
            load_grams,
        } = self;
        let FrontWish { kind, height } = kind.into_core().map_err(|wrong| wrong.within("kind"))?;
        Ok(job::Front {
            key: key.into_core()?,
            name: name.into_core().map_err(|wrong| wrong.within("name"))?,
            kind,
            height,
            thickness: thickness
                .into_core()
                .map_err(|wrong| wrong.within("thickness"))?,
            load_grams,
        })
    }
}
