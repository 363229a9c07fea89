//! What there is to say about what a person stands on, beside the cabinet from the front.

use gablerow_core::edit::{Content, own_values};
use gablerow_core::elevation::What;
use gablerow_core::job::{FaceId, FrontKind, Hand, Key, PanelId};
use gablerow_core::layout::FrontLayout;
use gablerow_core::measure::{Length, Unit};

use super::canvas::Canvas;
use super::info;
use crate::app::App;
use crate::scene::{self, FrontScene, FrontSpot, Thing};
use crate::theme::Role;

/// Draws the words, top to bottom, as far as they fit.
pub(super) fn draw(canvas: &mut Canvas, app: &App, scene: &FrontScene) {
    let job = &app.desk.job;
    let at = job.position(scene.scene.cabinet.key);
    info::header(canvas, app, &scene.scene, (at, job.cabinets.len()));
    let Some(spot) = scene.spot(app.front.at) else {
        return;
    };
    let words = Words {
        scene,
        unit: job.unit,
    };
    let (title, kind, lines) = words.of(spot);
    let after = canvas.text(0, 1, &title.to_uppercase(), Role::Strong);
    canvas.text(after + 1, 1, &kind, Role::Plain);
    let mut y = 2;
    for (line, role) in lines {
        y = canvas.paragraph(y, 0, &line, role);
    }
    info::checks(canvas, &scene.scene, y + 1, None);
}

/// A line and how it looks.
type Said = (String, Role);

struct Words<'a> {
    scene: &'a FrontScene<'a>,
    unit: Unit,
}

impl Words<'_> {
    fn short(&self, length: Length) -> String {
        length.short(self.unit).to_string()
    }

    /// Its name, what it is, and what there is to say.
    fn of(&self, spot: FrontSpot) -> (String, String, Vec<Said>) {
        let lines = self.lines(spot);
        match spot.at {
            Thing::Front(key) => {
                let kind = self.scene.front(key).map_or("", |front| front.kind.words());
                (self.scene.name(key), kind.to_owned(), lines)
            }
            Thing::Opening(key) => (self.scene.opening_name(key), self.closed(key), lines),
            Thing::Partition(_) => ("partition".to_owned(), String::new(), lines),
            Thing::FixedShelf(_) => ("fixed shelf".to_owned(), String::new(), lines),
        }
    }

    fn lines(&self, spot: FrontSpot) -> Vec<Said> {
        match spot.at {
            Thing::Front(key) => {
                let front = self.scene.front(key);
                front.map_or(Vec::new(), |front| self.front(front, spot))
            }
            Thing::Opening(key) => self.space(key),
            Thing::Partition(key) => self.partition(key),
            Thing::FixedShelf(key) => self.shelf(key),
        }
    }

    /// What closes an opening.
    fn closed(&self, key: Key) -> String {
        let names = self.scene.closed_by(key);
        match names.is_empty() {
            true => "open".to_owned(),
            false => format!("behind {}", names.join(", ")),
        }
    }

    fn size(&self, sizes: &[Length]) -> String {
        let sizes: Vec<String> = sizes.iter().map(|&size| self.short(size)).collect();
        sizes.join(" x ")
    }

    fn front(&self, front: &FrontLayout, spot: FrontSpot) -> Vec<Said> {
        let mut lines = Vec::new();
        let mut say = |text: String| lines.push((text, Role::Plain));
        let (width, height) = (front.width.total(), front.height.total());
        say(self.size(&[width, height, front.thickness]));
        say(format!(
            "foot {} head {}",
            self.short(front.foot),
            self.short(front.head())
        ));
        let [left, right] = [front.lap_left, front.lap_right].map(|lap| lap.total());
        match front.set_in {
            _ if !front.kind.is_seen() => {}
            Some(set_in) => {
                say(format!(
                    "inside, gaps {} and {}",
                    self.short(-left),
                    self.short(-right)
                ));
                say(format!("set in {}", self.short(set_in)));
            }
            None => say(format!(
                "laps {} left {} right",
                self.short(left),
                self.short(right)
            )),
        }
        for value in own_values(self.scene.scene.cabinet, front.key) {
            if value.now != Content::MaybeLoad(None) {
                say(format!("{} {}", value.name, value.shown(self.unit)));
            }
        }
        if let Some((across, z)) = self.scene.elevation.around(front.opening) {
            let clear = self.size(&[across.to - across.from, z.to - z.from]);
            say(format!(
                "over {}, {clear}",
                self.scene.opening_name(spot.opening)
            ));
        }
        lines.extend(self.carried(front));
        lines
    }

    /// What carries a front, or that nothing does yet.
    fn carried(&self, front: &FrontLayout) -> Vec<Said> {
        let scene = &self.scene.scene;
        let carriers = self.scene.carriers(front.key);
        let needs = match front.kind {
            kind if kind.is_hung() => "no hinge carries it yet",
            kind if kind.is_drawer() => "no runner carries it yet",
            _ => return Vec::new(),
        };
        if carriers.is_empty() {
            return vec![(needs.to_owned(), Role::Dim)];
        }
        let said = carriers.iter().map(|&(_, key)| {
            let words = scene::owner(scene.cabinet, &scene.layout, key, self.unit);
            let is_pair = front.kind == FrontKind::Pair;
            let text = match self.wall_of(key).filter(|_| is_pair) {
                Some(hand) => format!("{} {words}", hand.word()),
                None => words,
            };
            (text, Role::Note)
        });
        said.collect()
    }

    /// The wall a hinge plate is on.
    fn wall_of(&self, plate: Key) -> Option<Hand> {
        let mut shapes = self.scene.elevation.shapes.iter();
        shapes.find_map(|shape| match shape.what {
            What::Plate(key, hand) if key == plate => Some(hand),
            _ => None,
        })
    }

    fn space(&self, key: Key) -> Vec<Said> {
        let mut lines = Vec::new();
        let mut say = |text: String| lines.push((text, Role::Plain));
        let Some((across, z)) = self.scene.elevation.around(key) else {
            return lines;
        };
        let bay = self.scene.bay(key).map(|(_, bay)| bay);
        let mut clear = vec![across.to - across.from, z.to - z.from];
        clear.extend(bay.map(|bay| bay.inner_depth.total()));
        say(format!("clear {}", self.size(&clear)));
        say(format!(
            "floor {} ceiling {}",
            self.short(z.from),
            self.short(z.to)
        ));
        if let Some(facts) = self.scene.scene.cabinet.opening.bay(key) {
            let zones = facts.zones.iter().map(|zone| zone.key);
            let shelves = facts.shelves.iter().map(|shelf| shelf.key);
            let plates = facts.plates.iter().map(|plate| plate.key);
            let runners = facts.runners.iter().map(|runner| runner.key);
            let scene = &self.scene.scene;
            let fittings = zones.chain(shelves).chain(plates).chain(runners);
            lines.extend(fittings.map(|fitting| {
                (
                    scene::owner(scene.cabinet, &scene.layout, fitting, self.unit),
                    Role::Note,
                )
            }));
        }
        lines
    }

    fn partition(&self, key: Key) -> Vec<Said> {
        let layout = &self.scene.scene.layout;
        let panel = PanelId::Partition(key);
        let Some(upright) = layout.upright(panel) else {
            return Vec::new();
        };
        let mut lines = vec![
            self.size(&[upright.length(), upright.depth(), upright.thickness]),
            format!(
                "foot {} head {}",
                self.short(upright.foot.total()),
                self.short(upright.head.total())
            ),
        ];
        let recess = upright.front.total();
        if recess > Length::ZERO {
            lines.push(format!("{} behind the carcass front", self.short(recess)));
        }
        for toward in [Hand::Left, Hand::Right] {
            let bays = layout.bays_at(FaceId { panel, toward });
            let names = bays.map(|(bay, _)| self.scene.opening_name(bay.key));
            let names: Vec<String> = names.collect();
            lines.push(format!("{} {}", toward.word(), names.join(", ")));
        }
        lines.into_iter().map(|text| (text, Role::Plain)).collect()
    }

    fn shelf(&self, key: Key) -> Vec<Said> {
        let panels = &self.scene.scene.layout.panels;
        let Some(panel) = panels.iter().find(|panel| panel.owner == Some(key)) else {
            return Vec::new();
        };
        let (x, z) = (panel.x, panel.z);
        let size = self.size(&[panel.length.total(), x.to - x.from, z.to - z.from]);
        let under = format!("underside {} top {}", self.short(z.from), self.short(z.to));
        [size, under].map(|text| (text, Role::Plain)).into()
    }
}
