//! Runners for the drawers of one bay: those with fronts, or those behind a door.

use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

use super::packing::Packing;
use super::walls::{Fastener, Wall};
use super::{Bays, Proposal, name_of};
use crate::cards::{Runner as Card, RunnerLength};
use crate::grid::Run;
use crate::job::{Cabinet, FrontKind, Hand, HolePlace, Job, Key, Runner};
use crate::layout::{BayLayout, FrontLayout, Item, Layout, Span, Use};
use crate::measure::Length;
use crate::solve::Interval;
use crate::solve::drawers::{Blocked, Clearances, Distances, NoPlan, Stack, StackPlan, place};

/// The least height of a box that is worth making; a house default.
pub(crate) const BOX_LEAST: Length = Length::from_mm(40);

const WALLS: [Hand; 2] = [Hand::Left, Hand::Right];

/// Drawers looking for their runners.
struct Drawers<'a> {
    job: &'a Job,
    cabinet: &'a Cabinet,
    layout: &'a Layout,
    bay: &'a BayLayout,
    fronts: Vec<&'a FrontLayout>,
    kind: FrontKind,
    card: &'a Card,
    length: &'a RunnerLength,
    /// What the runner has to fit into.
    depth: Length,
    packing: Packing,
    /// Whole pitches they are set back.
    set_back: u8,
    gone: Vec<Key>,
}

/// Runners for all drawers of a kind over one bay; `None` when there is no such bay, or no runner card. Where drawers behind
/// a door find no holes between its hinges, set back by one pitch, so that their runners begin behind them.
pub(super) fn propose(job: &Job, cabinet: Key, opening: Key, kind: FrontKind) -> Option<Proposal> {
    let found = job.cabinet(cabinet)?;
    let layout = Layout::of(found, job);
    let at = |set_back| Drawers::of(job, found, &layout, (opening, kind), set_back);
    let usual = at(0)?.proposal();
    if kind == FrontKind::Inner && usual.edit.is_none() && !usual.already {
        let back = at(1)?.proposal();
        if back.edit.is_some() || back.already {
            return Some(back);
        }
    }
    Some(usual)
}

/// The depth a runner has to fit into: less a rail at the back where the drawers reach up to it.
fn depth_at(job: &Job, layout: &Layout, bay: &BayLayout, fronts: &[&FrontLayout]) -> Length {
    let depth = bay.depth_behind_fronts(&job.shop);
    let head = fronts.iter().map(|front| front.head()).max();
    let head = head.map_or(Length::ZERO, |head| head.min(bay.ceiling.total()));
    let rails = layout.panels.iter();
    let rail = rails
        .filter(|panel| panel.item == Item::BackRail && panel.z.from < head)
        .map(|panel| panel.x.to - panel.x.from)
        .max();
    depth - rail.unwrap_or(Length::ZERO)
}

impl<'a> Drawers<'a> {
    fn of(
        job: &'a Job,
        cabinet: &'a Cabinet,
        layout: &'a Layout,
        (opening, kind): (Key, FrontKind),
        set_back: u8,
    ) -> Option<Self> {
        let bay = layout.bays.iter().find(|bay| bay.key == opening)?;
        let card = job.cards.runner(&job.shop.runner)?;
        let own = |front: &&FrontLayout| front.opening == opening && front.kind == kind;
        let fronts: Vec<&FrontLayout> = layout.fronts.iter().filter(own).collect();
        let carriers = fronts
            .iter()
            .flat_map(|front| layout.carriers(cabinet, front));
        let gone = carriers.map(|carrier| carrier.key).collect();
        let depth = depth_at(job, layout, bay, &fronts) - Length::PITCH * i32::from(set_back);
        Some(Self {
            job,
            cabinet,
            layout,
            bay,
            kind,
            card,
            length: card.longest_within(depth)?,
            depth,
            packing: match kind {
                FrontKind::Inner => Packing::behind_doors(job, cabinet, layout, bay, card),
                _ => Packing::default(),
            },
            set_back,
            gone,
            fronts,
        })
    }
}

impl Drawers<'_> {
    fn show(&self, length: Length) -> String {
        length.show(self.job.unit).to_string()
    }

    fn names(&self) -> String {
        let names: Vec<String> = self
            .fronts
            .iter()
            .map(|front| name_of(self.cabinet, front.key))
            .collect();
        names.join(", ")
    }

    fn needs(&self) -> String {
        format!(
            "runner {} needs {} of {}",
            self.show(self.length.name),
            self.show(self.length.need.value),
            self.show(self.depth)
        )
    }

    fn proposal(&self) -> Proposal {
        let names = self.names();
        let fronts: Vec<Key> = self.fronts.iter().map(|front| front.key).collect();
        if let Some((problem, why)) = self.packing.impossible(self.job.unit) {
            return Proposal {
                fronts,
                title: format!("{names}: cannot be taken, {problem}"),
                why,
                ..Proposal::default()
            };
        }
        if self.length.need.value > self.depth {
            return Proposal {
                fronts,
                title: format!("{names}: no runner is short enough"),
                why: [self.needs(), "a deeper cabinet would work".to_string()].into(),
                ..Proposal::default()
            };
        }
        let Some(holes) = self.holes() else {
            return Proposal {
                fronts,
                title: format!("{names}: the walls have no hole in common"),
                ..Proposal::default()
            };
        };
        let barred = self.barred();
        let feet: Vec<Length> = self.fronts.iter().map(|front| front.foot).collect();
        match place(&self.stack(holes, &barred, &feet)) {
            Ok(plan) => self.taken_up(fronts, &names, &plan),
            Err(none) => Proposal {
                fronts,
                title: format!(
                    "{}: no hole serves it",
                    self.fronts
                        .get(none.drawer)
                        .map_or(names, |front| name_of(self.cabinet, front.key))
                ),
                why: self.reasons(&none),
                ..Proposal::default()
            },
        }
    }

    fn stack<'a>(&self, holes: Run, barred: &'a [Run], feet: &'a [Length]) -> Stack<'a> {
        let rules = &self.job.shop.boxes;
        let clear = Clearances {
            below: rules.below,
            between: rules.between,
            above: rules.above,
        };
        // A drawer behind a door has no front to stand above: it goes as low in its room as it may, past the hinges.
        let highest = self.fronts.iter().map(|room| room.height.total()).max();
        let distances = match self.kind {
            FrontKind::Inner => Distances {
                wanted: rules.below,
                least: Length::ZERO,
                most: highest.unwrap_or_default(),
            },
            _ => Distances {
                wanted: rules.rise,
                least: rules.rise_least,
                most: rules.rise_most.max(rules.rise_least),
            },
        };
        // The heads of rooms, and of the highest front under others, end the stack when they come before what is fixed.
        let head = self
            .fronts
            .last()
            .and_then(|front| self.layout.box_end(front));
        let ceiling = self.bay.ceiling.total();
        Stack {
            grid: self.layout.grid,
            holes,
            barred,
            feet,
            line: self.card.line.value,
            clear,
            floor: self.bay.floor.total(),
            ceiling: head.map_or(ceiling, |head| head.min(ceiling)),
            fixed: &[],
            distances,
            step: rules.step,
            box_least: BOX_LEAST,
        }
    }

    /// The holes that both walls have.
    fn holes(&self) -> Option<Run> {
        let [left, right] = WALLS.map(|wall| self.wall(wall).holes());
        let (left, right) = (left?, right?);
        let (first, last) = (
            left.first().max(right.first()),
            left.last().min(right.last()),
        );
        Run::new(first, last)
    }

    fn wall(&self, wall: Hand) -> Wall<'_> {
        Wall {
            job: self.job,
            layout: self.layout,
            face: self.bay.wall(wall),
            gone: &self.gone,
        }
    }

    /// Holes that no runner may take: its screws would meet others, or its space would meet what is before the wall.
    fn barred(&self) -> Vec<Run> {
        let fastener = Fastener {
            use_: Use::Runner,
            pen: self.card.pen.value,
        };
        let front = self.bay.front_row.total() - self.job.shop.setback_front + self.back();
        let first = front + self.card.first_hole.value + self.card.stand_back.value;
        let (below, above) = (self.card.below.value, self.card.above.value);
        let mut barred = Vec::new();
        for hand in WALLS {
            let wall = self.wall(hand);
            for &step in &self.length.steps {
                let x = first + Length::PITCH * i32::from(step);
                barred.extend(wall.taken(x, fastener));
            }
            let end = front + self.card.stand_back.value + self.length.name;
            // A spacer lets a box pass a hinge, but the runner's own zone keeps clear of it all the same.
            let out = Length::ZERO;
            let reach = self.packing.spacers().on(hand) + self.card.width.value;
            let spaces = wall.spaces(Span::new(front, end), Span::new(out, reach), |item| {
                !item.is_fixed_panel()
            });
            let runs = spaces.iter();
            barred.extend(runs.filter_map(|it: &Interval| it.bars(self.layout.grid, below, above)));
        }
        barred
    }

    fn taken_up(&self, fronts: Vec<Key>, names: &str, plan: &StackPlan) -> Proposal {
        let mut key = self.job.free_key(self.cabinet.key);
        let mut bays = Bays::default();
        let holes: Vec<String> = plan
            .drawers
            .iter()
            .map(|drawer| drawer.hole.get().to_string())
            .collect();
        for (front, drawer) in self.fronts.iter().zip(&plan.drawers) {
            let number = i16::try_from(drawer.hole.get()).unwrap_or(i16::MAX);
            let wanted = Runner {
                key,
                hole: HolePlace::foot(number),
                card: self.card.id.clone(),
                length: self.length.name,
                set_back: self.set_back,
                spacers: self.packing.spacers(),
                serves: Some(front.key),
            };
            bays.of(self.bay.key).runners.push(self.kept(wanted));
            key = key.next();
        }
        let set_back = match self.set_back {
            0 => String::new(),
            _ => format!(" set back {}", self.show(self.back())),
        };
        let what = format!(
            "runners {}{set_back} on {}",
            self.show(self.length.name),
            holes.join(", ")
        );
        let taken = (self.cabinet.key, self.gone.clone(), bays);
        Proposal::of((names, &what), fronts, self.why(plan), taken)
    }

    /// The runner that is there already, when it is like the one wanted; that one otherwise. It serves this front from now on,
    /// so that no other front takes it away.
    fn kept(&self, wanted: Runner) -> Runner {
        let bay = self.cabinet.opening.bay(self.bay.key);
        let mut there = bay.into_iter().flat_map(|bay| &bay.runners);
        let last = self.layout.last;
        let alike = |old: &&Runner| {
            self.gone.contains(&old.key)
                && old.hole.number(last) == wanted.hole.number(last)
                && old.serves.is_none_or(|front| Some(front) == wanted.serves)
                && (&old.card, old.length, old.set_back, old.spacers)
                    == (&wanted.card, wanted.length, wanted.set_back, wanted.spacers)
        };
        match there.find(alike) {
            Some(old) => Runner {
                serves: wanted.serves,
                ..old.clone()
            },
            None => wanted,
        }
    }

    /// How far the runners are set back from the usual place.
    fn back(&self) -> Length {
        Length::PITCH * i32::from(self.set_back)
    }

    fn why(&self, plan: &StackPlan) -> Vec<String> {
        let mut why = Vec::new();
        for (front, drawer) in self.fronts.iter().zip(&plan.drawers) {
            why.push(format!(
                "{}: box from {}, {} above its {}; up to {}, made {}",
                name_of(self.cabinet, front.key),
                self.show(drawer.underside.total()),
                self.show(drawer.distance.total()),
                match self.kind {
                    FrontKind::Inner => "room's foot",
                    _ => "front's foot",
                },
                self.show(drawer.room.total()),
                self.show(drawer.height),
            ));
        }
        let patterns: Vec<String> = plan.patterns.iter().map(|&d| self.show(d)).collect();
        why.push(match patterns.len() {
            1 => format!("one drilling for all fronts: {}", patterns.join("")),
            more => format!("{more} drillings for the fronts: {}", patterns.join(", ")),
        });
        let lost = plan.lost_below.total();
        if lost > Length::ZERO {
            why.push(format!("{} lost below the lowest box", self.show(lost)));
        }
        why.push(self.needs());
        if self.set_back > 0 {
            why.push(format!(
                "set back {}, still on the grid: the runners begin behind the hinges",
                self.show(self.back())
            ));
        }
        why.extend(self.packing.why(self.job.unit));
        let rows = self.length.steps.len();
        let needed = rows * plan.drawers.len() * 2;
        let whole = rows * usize::try_from(self.layout.last).unwrap_or(0) * 2;
        why.push(format!(
            "{needed} holes, {} fewer than whole rows",
            whole.saturating_sub(needed)
        ));
        why
    }

    /// What stands in the way, and the nearest that works.
    fn reasons(&self, none: &NoPlan) -> Vec<String> {
        let mut why: Vec<String> = none
            .holes
            .iter()
            .map(|hole| {
                let reason = match hole.why {
                    Blocked::OffRow => "the walls have no such hole".to_string(),
                    Blocked::Barred => "something else is there".to_string(),
                    Blocked::Low { by } => format!("the box would stand {} too low", self.show(by)),
                    Blocked::Fixed(at) => format!(
                        "something fixed is at {}-{}",
                        self.show(at.from),
                        self.show(at.to)
                    ),
                    Blocked::NoRoom => format!("no box of {} finds room", self.show(BOX_LEAST)),
                };
                format!("hole {}: {reason}", hole.hole.get())
            })
            .collect();
        if why.is_empty() {
            why.push("no hole is at a height that suits this front".to_string());
        }
        why.push(match &none.nearest {
            Some(plan) => {
                let holes: Vec<String> = plan
                    .drawers
                    .iter()
                    .map(|drawer| drawer.hole.get().to_string())
                    .collect();
                let away: Vec<String> = plan.patterns.iter().map(|&d| self.show(d)).collect();
                format!(
                    "nearest that works: holes {}, boxes {} above their fronts' feet",
                    holes.join(", "),
                    away.join(", ")
                )
            }
            None => "fewer drawers, or a taller opening, would work".to_string(),
        });
        why
    }
}
