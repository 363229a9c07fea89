//! Every way a thing can be made that is stepped through rather than typed: one table.

use alloc::format;

use super::{Refusal, Scope, cabinet, change, change_shop};
use crate::history::Step;
use crate::job::{Back, BackRule, Cabinet, Fit, Job, Key, Reference, TopKind};
use crate::measure::Length;

/// A choice between a few ways.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Choice {
    /// How the back meets the carcass.
    Back,
    /// What closes the carcass at its head.
    Top,
    /// Where back rows stand, in the whole job.
    BackRule,
    /// Which ends rest on a stop, in the whole job.
    Reference,
}

impl Choice {
    /// All of them, in the order a person meets them.
    pub const ALL: [Self; 4] = [Self::Back, Self::Top, Self::BackRule, Self::Reference];

    /// What is chosen.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::Back => "back",
            Self::Top => "top",
            Self::BackRule => "back rule",
            Self::Reference => "stops",
        }
    }

    /// Whose it is.
    #[must_use]
    pub fn scope(self) -> Scope {
        match self {
            Self::Back | Self::Top => Scope::Cabinet,
            Self::BackRule | Self::Reference => Scope::Job,
        }
    }

    /// The way it is made now.
    #[must_use]
    pub fn value(self, job: &Job, cabinet: &Cabinet) -> &'static str {
        match self {
            Self::Back => match cabinet.carcass.back {
                Back::Groove { .. } => "in a groove",
                Back::Rabbet { .. } => "in a rabbet",
                Back::Planted => "planted on",
                Back::Open => "none",
            },
            Self::Top => match cabinet.carcass.top.kind {
                TopKind::Panel(Fit::Between) => "between the sides",
                TopKind::Panel(Fit::Across) => "over the sides",
                TopKind::FlatStretchers(_) => "stretchers, flat",
                TopKind::EdgeStretchers(_) => "stretchers, on edge",
            },
            Self::BackRule => job.shop.back_rule.words(),
            Self::Reference => job.shop.reference.words(),
        }
    }

    /// The step to the next way.
    pub(super) fn step_on(self, job: &Job, key: Key) -> Result<Step, Refusal> {
        cabinet(job, key)?;
        match self {
            Self::Back => change(job, key, |cabinet| {
                cabinet.carcass.back = next_back(cabinet.carcass.back);
                Ok(format!("back {}", self.value(job, cabinet)))
            }),
            Self::Top => change(job, key, |cabinet| {
                cabinet.carcass.top.kind = next_top(cabinet.carcass.top.kind);
                Ok(format!("top {}", self.value(job, cabinet)))
            }),
            Self::BackRule => change_shop(job, |shop| {
                shop.back_rule = match shop.back_rule {
                    BackRule::FromBackEdge => BackRule::FromBackPanel,
                    BackRule::FromBackPanel => BackRule::OnPitch,
                    BackRule::OnPitch => BackRule::FromBackEdge,
                };
                format!("back row {}", shop.back_rule.words())
            }),
            Self::Reference => change_shop(job, |shop| {
                shop.reference = match shop.reference {
                    Reference::Foot => Reference::OneStop,
                    Reference::OneStop => Reference::Foot,
                };
                format!("stops: {}", shop.reference.words())
            }),
        }
    }
}

/// A groove and a rabbet keep the distance from the back edge; coming back to the groove it is the usual one again.
fn next_back(back: Back) -> Back {
    let usual = Back::Groove {
        to_front_wall: Length::from_mm(20),
        cut: Length::from_mm(8),
    };
    match back {
        Back::Groove { to_front_wall, .. } => Back::Rabbet { run: to_front_wall },
        Back::Rabbet { .. } => Back::Planted,
        Back::Planted => Back::Open,
        Back::Open => usual,
    }
}

fn next_top(top: TopKind) -> TopKind {
    match top {
        TopKind::FlatStretchers(width) => TopKind::EdgeStretchers(width),
        TopKind::EdgeStretchers(_) => TopKind::Panel(Fit::Between),
        TopKind::Panel(Fit::Between) => TopKind::Panel(Fit::Across),
        TopKind::Panel(Fit::Across) => TopKind::FlatStretchers(Length::from_mm(100)),
    }
}
