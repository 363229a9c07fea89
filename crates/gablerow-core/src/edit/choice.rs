//! Every way a thing can be made that is stepped through rather than typed: one table.

use alloc::format;

use super::part::next_board;
use super::{Refusal, Scope, cabinet, change, change_shop};
use crate::history::Step;
use crate::job::{
    Back, BackRail, BackRule, Cabinet, Carcass, Fit, Job, Key, Notch, Reference, Stand, TopKind,
};
use crate::measure::Length;

/// A choice between a few ways.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Choice {
    /// How the back meets the carcass.
    Back,
    /// What closes the carcass at its head.
    Top,
    /// Whether the bottom stands between the sides or under them.
    Bottom,
    /// The board of the sides.
    SidesBoard,
    /// The board of the bottom.
    BottomBoard,
    /// The board of the top or the stretchers.
    TopBoard,
    /// A rail before the back panel.
    Rail,
    /// What the carcass stands on.
    Stand,
    /// A cut-out for the toes.
    Notch,
    /// Whether the outside of the left side will be seen.
    SeenLeft,
    /// Whether the outside of the right side will be seen.
    SeenRight,
    /// Where back rows stand, in the whole job.
    BackRule,
    /// Which ends rest on a stop, in the whole job.
    Reference,
}

impl Choice {
    /// All of them, in the order a person meets them.
    pub const ALL: [Self; 13] = [
        Self::Back,
        Self::Top,
        Self::Bottom,
        Self::SidesBoard,
        Self::BottomBoard,
        Self::TopBoard,
        Self::Rail,
        Self::Stand,
        Self::Notch,
        Self::SeenLeft,
        Self::SeenRight,
        Self::BackRule,
        Self::Reference,
    ];

    /// What is chosen.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::Back => "back",
            Self::Top => "top",
            Self::Bottom => "bottom",
            Self::SidesBoard => "sides of",
            Self::BottomBoard => "bottom of",
            Self::TopBoard => "top of",
            Self::Rail => "back rail",
            Self::Stand => "stands on",
            Self::Notch => "toe notch",
            Self::SeenLeft => "left side",
            Self::SeenRight => "right side",
            Self::BackRule => "back rule",
            Self::Reference => "stops",
        }
    }

    /// Whose it is.
    #[must_use]
    pub fn scope(self) -> Scope {
        match self {
            Self::BackRule | Self::Reference => Scope::Job,
            _ => Scope::Cabinet,
        }
    }

    /// The way it is made now.
    #[must_use]
    pub fn value<'a>(self, job: &Job, cabinet: &'a Cabinet) -> &'a str {
        let carcass = &cabinet.carcass;
        let seen = |seen| if seen { "seen outside" } else { "not seen" };
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
            Self::Bottom => match carcass.bottom.fit {
                Fit::Between => "between the sides",
                Fit::Across => "under the sides",
            },
            Self::SidesBoard => carcass.sides.board.as_str(),
            Self::BottomBoard => carcass.bottom.board.as_str(),
            Self::TopBoard => carcass.top.board.as_str(),
            Self::Rail => match carcass.rail {
                Some(_) => "under the top",
                None => "none",
            },
            Self::Stand => match carcass.stand {
                None => "nothing",
                Some(Stand::Feet(_)) => "feet",
                Some(Stand::Plinth(_)) => "a loose plinth",
            },
            Self::Notch => match carcass.sides.notch {
                Some(_) => "cut out",
                None => "none",
            },
            Self::SeenLeft => seen(carcass.sides.exposed_left),
            Self::SeenRight => seen(carcass.sides.exposed_right),
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
            Self::Bottom
            | Self::SidesBoard
            | Self::BottomBoard
            | Self::TopBoard
            | Self::Rail
            | Self::Stand
            | Self::Notch
            | Self::SeenLeft
            | Self::SeenRight => change(job, key, |cabinet| {
                self.next_of_carcass(&mut cabinet.carcass, job)?;
                Ok(format!("{} {}", self.words(), self.value(job, cabinet)))
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

/// Height of feet and of a plinth when nobody has said otherwise.
const STAND: Length = Length::from_mm(100);
/// Height of a rail before the back panel when nobody has said otherwise.
const RAIL: Length = Length::from_mm(90);
/// A toe notch when nobody has said otherwise: up from the foot, back from the front.
const NOTCH: Notch = Notch {
    height: Length::from_mm(100),
    depth: Length::from_mm(50),
};

impl Choice {
    fn next_of_carcass(self, carcass: &mut Carcass, job: &Job) -> Result<(), Refusal> {
        let board = match self {
            Self::SidesBoard => Some(&mut carcass.sides.board),
            Self::BottomBoard => Some(&mut carcass.bottom.board),
            Self::TopBoard => Some(&mut carcass.top.board),
            _ => None,
        };
        if let Some(board) = board {
            return next_board(board, &job.cards)
                .ok_or_else(|| Refusal("the job has no other board card".into()));
        }
        let Carcass {
            sides,
            bottom,
            top,
            rail,
            stand,
            ..
        } = carcass;
        match self {
            Self::Bottom => {
                bottom.fit = match bottom.fit {
                    Fit::Between => Fit::Across,
                    Fit::Across => Fit::Between,
                }
            }
            Self::Rail => {
                *rail = match rail {
                    Some(_) => None,
                    None => Some(BackRail {
                        board: top.board.clone(),
                        height: RAIL,
                    }),
                }
            }
            Self::Stand => {
                *stand = match stand {
                    None => Some(Stand::Feet(STAND)),
                    Some(Stand::Feet(height)) => Some(Stand::Plinth(*height)),
                    Some(Stand::Plinth(_)) => None,
                }
            }
            Self::Notch => {
                sides.notch = match sides.notch {
                    Some(_) => None,
                    None => Some(NOTCH),
                }
            }
            Self::SeenLeft => sides.exposed_left = !sides.exposed_left,
            _ => sides.exposed_right = !sides.exposed_right,
        }
        Ok(())
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
