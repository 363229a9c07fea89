//! What state a cabinet is in: a number that rises with every saved change of consequence, and a word made from the content.
//!
//! Whoever holds a sheet compares both with the screen. Two states may share a word, one in 256; their numbers differ.

mod words;

use alloc::string::String;
use alloc::vec::Vec;
use core::fmt;

use words::WORDS;

use crate::job::{Cabinet, Copy, FaceId, Hand, Job, LENGTH_OFF, Label, PanelId, Revision};
use crate::layout::{Layout, Upright};
use crate::measure::Length;

/// The state of a cabinet.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Stamp {
    /// Its revision: that of the last save, or the next one when the content is another since; the first is 1.
    pub number: u32,
    /// The word of its content.
    pub word: &'static str,
}

/// Shown as `rev 7 OTTER`.
impl fmt::Display for Stamp {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "rev {} {}", self.number, self.capitals())
    }
}

impl Stamp {
    /// The word as it is shown: `OTTER`.
    #[must_use]
    pub fn capitals(&self) -> String {
        self.word.to_ascii_uppercase()
    }

    /// The state of a cabinet as it is now.
    #[must_use]
    pub fn now(job: &Job, cabinet: &Cabinet) -> Self {
        Self::of(job, cabinet, &Layout::of(cabinet, job))
    }

    /// The same of a cabinet that comes to this layout.
    #[must_use]
    pub fn of(job: &Job, cabinet: &Cabinet, layout: &Layout) -> Self {
        let word = word(job, cabinet, layout);
        let saved = job.revisions.iter().find(|it| it.cabinet == cabinet.key);
        let number = match saved {
            Some(saved) if saved.word.as_str() == word => saved.number,
            Some(saved) => saved.number.saturating_add(1),
            None => 1,
        };
        Self { number, word }
    }
}

/// The revisions with every cabinet's state as it is now; for a job that is about to be saved.
#[must_use]
pub fn revised(job: &Job) -> Vec<Revision> {
    let mut revisions = job.revisions.clone();
    for cabinet in &job.cabinets {
        let stamp = Stamp::now(job, cabinet);
        let now = Revision {
            cabinet: cabinet.key,
            number: stamp.number,
            word: Label::known(stamp.word),
        };
        match revisions.iter_mut().find(|it| it.cabinet == cabinet.key) {
            Some(saved) => *saved = now,
            None => revisions.push(now),
        }
    }
    revisions
}

/// The word of what is cut, bored, hung and built of a cabinet. What it is called, and who accepted what, is not in it.
fn word(job: &Job, cabinet: &Cabinet, layout: &Layout) -> &'static str {
    let mut content = Content::default();
    for upright in &layout.uprights {
        content.upright(upright, layout);
    }
    for panel in &layout.panels {
        content.lengths([panel.x.from, panel.x.to, panel.z.from, panel.z.to]);
    }
    for front in &layout.fronts {
        content.lengths([front.width.total(), front.height.total(), front.thickness]);
        content.hand(front.hung);
    }
    let covered = job
        .rail()
        .map(|rail| Length::PITCH * i32::from(rail.covers()));
    for copy in &cabinet.copies {
        content.copy(copy, layout, covered);
    }
    WORDS[usize::from(content.byte())]
}

/// Content as one number (FNV-1a of 64 bits): the same on every machine and in every version.
struct Content(u64);

impl Default for Content {
    fn default() -> Self {
        Self(0xcbf2_9ce4_8422_2325)
    }
}

impl Content {
    fn add(&mut self, bytes: impl IntoIterator<Item = u8>) {
        for byte in bytes {
            self.0 = (self.0 ^ u64::from(byte)).wrapping_mul(0x0100_0000_01b3);
        }
    }

    fn lengths(&mut self, lengths: impl IntoIterator<Item = Length>) {
        for length in lengths {
            self.add(length.counts().to_le_bytes());
        }
    }

    fn length_or_none(&mut self, length: Option<Length>) {
        self.add([u8::from(length.is_some())]);
        self.lengths(length);
    }

    fn hand(&mut self, hand: Option<Hand>) {
        self.add([match hand {
            None => 0,
            Some(Hand::Left) => 1,
            Some(Hand::Right) => 2,
        }]);
    }

    fn panel(&mut self, panel: PanelId) {
        match panel {
            PanelId::Side(hand) => self.hand(Some(hand)),
            PanelId::Partition(key) => self.add(key.0.to_le_bytes()),
        }
    }

    fn face(&mut self, face: FaceId) {
        self.panel(face.panel);
        self.hand(Some(face.toward));
    }

    fn upright(&mut self, upright: &Upright, layout: &Layout) {
        self.panel(upright.id);
        self.lengths([upright.length(), upright.depth(), upright.thickness]);
        for (face, holes) in upright.bored(layout) {
            self.face(face);
            for hole in holes {
                self.lengths([hole.x, hole.z, hole.diameter]);
                self.length_or_none(hole.depth);
            }
        }
    }

    /// Whatever else was measured of it, a copy is bored otherwise for lengths alone: for those that are off so much that something
    /// is done about it, and where the rail is short and part of a panel comes from its head, for any.
    fn copy(&mut self, copy: &Copy, layout: &Layout, covered: Option<Length>) {
        self.add([u8::from(copy.mirrored)]);
        for cut in &copy.as_cut {
            let Some(planned) = layout.upright(cut.panel).map(Upright::length) else {
                continue;
            };
            let longer = cut.longer(planned).unwrap_or(Length::ZERO);
            let is_parted = covered.is_some_and(|covered| planned > covered);
            let least = if is_parted { Length::ZERO } else { LENGTH_OFF };
            if longer.abs() > least {
                self.panel(cut.panel);
                self.lengths([longer]);
            }
        }
    }

    /// All bits folded into eight.
    fn byte(&self) -> u8 {
        self.0
            .to_le_bytes()
            .into_iter()
            .fold(0, |all, byte| all ^ byte)
    }
}

#[cfg(test)]
mod tests;
