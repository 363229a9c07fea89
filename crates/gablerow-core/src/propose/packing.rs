//! Packing beside drawers behind a door, so that a box passes the open door and what stands out beside it.
//!
//! ```text
//!   wall |<- spacer ->|<- gap ->| box       past the door     spacer       >= intrusion + 3
//!   wall |<- hinge, proud ->|               beside the hinge  spacer + gap >= proud + 3
//! ```

use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

use crate::cards::{Hinge, Runner as Card, RunnerKind};
use crate::job::{Cabinet, Hand, Job, Spacers};
use crate::layout::{BayLayout, Layout};
use crate::measure::{Length, Unit, range};
use crate::parts::CLEAR_OF_DOOR;

/// What must be packed on one wall, and what makes it so.
#[derive(Clone, Copy, Default)]
struct Need {
    spacer: Length,
    /// How far the open door stands in.
    intrusion: Length,
    /// How far the hinge stands out.
    proud: Length,
    /// What is beside the box anyway; negative for a box wider than its runners leave.
    gap: Length,
}

/// What must be packed on either wall: left, right.
#[derive(Clone, Copy, Default)]
pub(super) struct Packing([Need; 2]);

impl Packing {
    /// On the walls that doors hang on, by the hinges they hang on, or by the shop's where they have none yet.
    pub(super) fn behind_doors(
        job: &Job,
        cabinet: &Cabinet,
        layout: &Layout,
        bay: &BayLayout,
        card: &Card,
    ) -> Self {
        let gap = gap(job, card);
        Self([Hand::Left, Hand::Right].map(|hand| {
            let hinges = hinges(job, cabinet, layout, (bay, hand));
            let needs = hinges.into_iter().map(|hinge| Need::of(hinge, gap));
            needs.max_by_key(|need| need.spacer).unwrap_or_default()
        }))
    }

    pub(super) fn spacers(self) -> Spacers {
        let [left, right] = self.0.map(|need| need.spacer);
        Spacers { left, right }
    }

    fn walls(self) -> impl Iterator<Item = (&'static str, Need)> {
        let walls = ["left", "right"].into_iter().zip(self.0);
        walls.filter(|(_, need)| need.spacer > Length::ZERO)
    }

    /// Why there are spacers, line by line.
    pub(super) fn why(self, unit: Unit) -> Vec<String> {
        let walls = self.walls();
        walls.map(|(wall, need)| need.why(wall, unit)).collect()
    }

    /// What is wrong with a spacer that no job can hold, and what would work; `None` when all can be had.
    pub(super) fn impossible(self, unit: Unit) -> Option<(String, Vec<String>)> {
        let spacers = self.0.map(|need| need.spacer);
        let mut faults = spacers
            .into_iter()
            .filter_map(|it| range::SPACER.check(it).err());
        let problem = faults.next()?.show(unit);
        let mut why = self.why(unit);
        let most = (range::SPACER.max - CLEAR_OF_DOOR).show(unit);
        why.push(format!(
            "a hinge whose door stands {most} in at most would work, or a wall of its own for the drawers"
        ));
        Some((problem, why))
    }
}

impl Need {
    fn of(hinge: &Hinge, gap: Length) -> Self {
        let (intrusion, proud) = (hinge.intrusion.value, hinge.proud.value);
        let spacer = intrusion.max(proud - gap) + CLEAR_OF_DOOR;
        Self {
            spacer: spacer.max(Length::ZERO),
            intrusion,
            proud,
            gap,
        }
    }

    fn why(self, wall: &str, unit: Unit) -> String {
        let show = |length: Length| length.show(unit).to_string();
        let because = if self.intrusion >= self.proud - self.gap {
            format!(
                "the open door stands {} in, and {} clear",
                show(self.intrusion),
                show(CLEAR_OF_DOOR)
            )
        } else {
            format!(
                "the hinge stands {} out, and {} clear, less {} that is beside the box",
                show(self.proud),
                show(CLEAR_OF_DOOR),
                show(self.gap)
            )
        };
        format!("spacer {} on the {wall}: {because}", show(self.spacer))
    }
}

/// What is between the side of a box and the wall, or the spacer on it.
fn gap(job: &Job, card: &Card) -> Length {
    let side = job.cards.board(job.shop.box_board());
    let side = side.map_or(Length::ZERO, |board| board.thickness.value);
    let half = card.deduct.value.half();
    match card.kind {
        RunnerKind::Undermount => half - side,
        RunnerKind::SideMount => half,
    }
}

/// The hinges of the doors that hang on a wall of a bay, within its height.
fn hinges<'a>(
    job: &'a Job,
    cabinet: &'a Cabinet,
    layout: &Layout,
    (bay, hand): (&BayLayout, Hand),
) -> Vec<&'a Hinge> {
    let mut hinges = Vec::new();
    let doors = layout.fronts.iter().filter(|door| {
        door.wall_hung() == Some(bay.wall(hand))
            && door.foot < bay.ceiling.total()
            && bay.floor.total() < door.head()
    });
    for door in doors {
        let carriers = layout.carriers(cabinet, door);
        let cards = carriers.iter().filter_map(|carrier| {
            let mut plates = cabinet.opening.bay(carrier.bay)?.plates.iter();
            let plate = plates.find(|plate| plate.key == carrier.key)?;
            job.cards.hinge(&plate.card)
        });
        let before = hinges.len();
        hinges.extend(cards);
        if hinges.len() == before {
            hinges.extend(job.cards.hinge(&job.shop.hinge));
        }
    }
    hinges
}
