//! Runners for the drawers of one bay: those with fronts, or those behind a door.

use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;

use super::walls::{Fastener, Wall};
use super::{Bays, Proposal, name_of};
use crate::cards::{Runner as Card, RunnerLength};
use crate::edit::{Edit, Furnish};
use crate::grid::Run;
use crate::job::{Cabinet, FrontKind, Hand, HolePlace, Job, Key, Runner, Spacers};
use crate::layout::{BayLayout, FrontLayout, Item, Layout, Span, Use};
use crate::measure::Length;
use crate::solve::Interval;
use crate::solve::drawers::{Blocked, Clearances, Distances, NoPlan, Stack, StackPlan, place};

/// The least height of a box that is worth making; a house default.
const BOX_LEAST: Length = Length::from_mm(40);
/// What a box clears the open door by, and the hinge beside it; a house default.
const CLEAR_OF_DOOR: Length = Length::from_mm(3);

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
    spacers: Spacers,
    gone: Vec<Key>,
}

/// Runners for all drawers of a kind over one bay; `None` when there is no such bay, or no runner card.
pub(super) fn propose(job: &Job, cabinet: Key, opening: Key, kind: FrontKind) -> Option<Proposal> {
    let found = job.cabinet(cabinet)?;
    let layout = Layout::of(found, job);
    let bay = layout.bays.iter().find(|bay| bay.key == opening)?;
    let card = job.cards.runner(&job.shop.runner)?;
    let own = |front: &&FrontLayout| front.opening == opening && front.kind == kind;
    let fronts: Vec<&FrontLayout> = layout.fronts.iter().filter(own).collect();
    let keys: Vec<Key> = fronts.iter().map(|front| front.key).collect();
    let carriers = fronts
        .iter()
        .flat_map(|front| layout.carriers(found, front));
    let gone = carriers.map(|carrier| carrier.key).collect();
    let depth = depth_at(job, &layout, bay, &fronts);
    let length = card.longest_within(depth)?;
    let drawers = Drawers {
        job,
        cabinet: found,
        layout: &layout,
        bay,
        kind,
        card,
        length,
        depth,
        spacers: match kind {
            FrontKind::Inner => behind_doors(job, &layout, bay),
            _ => Spacers::default(),
        },
        gone,
        fronts,
    };
    Some(drawers.proposal(keys))
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

/// Packing on the walls that doors hang on, so that a box passes the open door and its hinges.
fn behind_doors(job: &Job, layout: &Layout, bay: &BayLayout) -> Spacers {
    let intrusion = job
        .cards
        .hinge(&job.shop.hinge)
        .map_or(Length::ZERO, |card| card.intrusion.value);
    let hung = |wall: Hand| {
        let mut doors = layout.fronts.iter();
        doors.any(|door| {
            door.wall_hung() == Some(bay.wall(wall))
                && door.foot < bay.ceiling.total()
                && bay.floor.total() < door.head()
        })
    };
    let packed = |wall| match hung(wall) {
        true => intrusion + CLEAR_OF_DOOR,
        false => Length::ZERO,
    };
    Spacers {
        left: packed(Hand::Left),
        right: packed(Hand::Right),
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

    fn proposal(&self, fronts: Vec<Key>) -> Proposal {
        let names = self.names();
        if self.length.need.value > self.depth {
            return Proposal {
                fronts,
                title: format!("{names}: no runner is short enough"),
                why: [self.needs(), "a deeper cabinet would work".to_string()].into(),
                edit: None,
            };
        }
        let Some(holes) = self.holes() else {
            return Proposal {
                fronts,
                title: format!("{names}: the walls have no hole in common"),
                why: Vec::new(),
                edit: None,
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
                edit: None,
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
        let front = self.bay.front_row.total() - self.job.shop.setback_front;
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
            let reach = self.spacers.on(hand) + self.card.width.value;
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
            bays.of(self.bay.key).runners.push(Runner {
                key,
                hole: HolePlace::foot(number),
                card: self.card.id.clone(),
                length: self.length.name,
                set_back: 0,
                spacers: self.spacers,
                serves: Some(front.key),
            });
            key = key.next();
        }
        let title = format!(
            "{names}: runners {} on {}",
            self.show(self.length.name),
            holes.join(", ")
        );
        Proposal {
            fronts,
            title: title.clone(),
            why: self.why(plan),
            edit: Some(Edit::Furnish(Furnish {
                cabinet: self.cabinet.key,
                gone: self.gone.clone(),
                bays: bays.0,
                label: title,
            })),
        }
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
        for (wall, packed) in [("left", self.spacers.left), ("right", self.spacers.right)] {
            if packed > Length::ZERO {
                why.push(format!(
                    "spacer {} on the {wall}: the open door stands {} in, and {} clear",
                    self.show(packed),
                    self.show(packed - CLEAR_OF_DOOR),
                    self.show(CLEAR_OF_DOOR)
                ));
            }
        }
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
