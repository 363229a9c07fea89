//! Cabinets for tests: plain, but for what a test is about.

use std::string::String;
use std::vec::Vec;

use super::{Finding, Rule, of_job};
use crate::cards::{Hinge, Pin, Runner as RunnerCard};
use crate::job::{
    BackRail, Bay, Cabinet, CardId, Depth, Division, Edge, End, FaceId, FixedShelf, FreeHole,
    FreeRow, Front, FrontHeight, FrontKind, Hand, HolePlace, Job, Joint, Key, Label, Opening,
    PanelId, Part, PartWidth, Partition, Plate, Runner, Shelf, ShelfHeight, Shop, SideBySide,
    Spacers, Stacked, Zone,
};
use crate::measure::Length;

pub(super) const LEFT: Hand = Hand::Left;
pub(super) const RIGHT: Hand = Hand::Right;

pub(super) fn mm(value: i32) -> Length {
    Length::from_mm(value)
}

/// In thousandths of a millimetre.
pub(super) fn um(value: i32) -> Length {
    Length::from_um(value)
}

pub(super) fn card(id: &str) -> CardId {
    CardId::new(id).unwrap()
}

/// A job of one plain cabinet (600 x 704 x 560, 22 holes a row, back in a groove 20 from the edge), to be changed.
#[derive(Debug)]
pub(super) struct Case {
    pub(super) job: Job,
}

impl Case {
    pub(super) fn new() -> Self {
        Self {
            job: Job::plain(Label::new("Glaze store").unwrap()),
        }
    }

    pub(super) fn shop(&mut self) -> &mut Shop {
        &mut self.job.shop
    }

    pub(super) fn cabinet(&mut self) -> &mut Cabinet {
        &mut self.job.cabinets[0]
    }

    /// The bay with this key; the plain cabinet's one bay is 1.
    pub(super) fn bay(&mut self, key: u32) -> &mut Bay {
        self.cabinet().opening.bay_mut(Key(key)).unwrap()
    }

    fn key(&mut self) -> Key {
        self.cabinet().free_key()
    }

    pub(super) fn pins(&mut self, bay: u32, first: i16, last: i16) -> &mut Zone {
        let (first, last) = (HolePlace::foot(first), HolePlace::foot(last));
        let zone = Zone {
            key: self.key(),
            first,
            last,
            depth: Depth::Shop,
        };
        let zones = &mut self.bay(bay).zones;
        zones.push(zone);
        zones.last_mut().unwrap()
    }

    pub(super) fn shelf(&mut self, bay: u32, hole: i16) -> &mut Shelf {
        let shelf = Shelf {
            key: self.key(),
            hole: HolePlace::foot(hole),
            board: card("board-18"),
            setback_front: mm(12),
            shorter: mm(2),
            load_grams: None,
            clear: None,
        };
        let shelves = &mut self.bay(bay).shelves;
        shelves.push(shelf);
        shelves.last_mut().unwrap()
    }

    pub(super) fn plate(&mut self, bay: u32, wall: Hand, hole: i16) -> &mut Plate {
        let (hole, card) = (HolePlace::foot(hole), card("hinge-plain"));
        let plate = Plate {
            key: self.key(),
            wall,
            hole,
            card,
            serves: None,
        };
        let plates = &mut self.bay(bay).plates;
        plates.push(plate);
        plates.last_mut().unwrap()
    }

    pub(super) fn runner(&mut self, bay: u32, hole: i16, length: i32) -> &mut Runner {
        let runner = Runner {
            key: self.key(),
            hole: HolePlace::foot(hole),
            card: card("runner-under"),
            length: mm(length),
            set_back: 0,
            spacers: Spacers::default(),
            serves: None,
        };
        let runners = &mut self.bay(bay).runners;
        runners.push(runner);
        runners.last_mut().unwrap()
    }

    /// A door over an opening, hung on a hand, with plates on these holes of one of its bays: `door 1`, then `door 2`.
    pub(super) fn door(&mut self, opening: u32, hung: Hand, bay: u32, holes: &[i16]) -> &mut Front {
        for &hole in holes {
            self.plate(bay, hung, hole);
        }
        let mut doors = 0;
        let all = &self.cabinet().opening;
        all.each(&mut |part| doors += part.fronts.len());
        let name = Label::new(&std::format!("door {}", doors + 1)).unwrap();
        let front = Front::plain(self.key(), name, FrontKind::Door(hung));
        let key = front.key;
        self.cabinet().opening.each_mut(&mut |part| {
            if part.key == Key(opening) {
                part.fronts.push(front.clone());
            }
        });
        self.front(key)
    }

    fn front(&mut self, key: Key) -> &mut Front {
        fn find(opening: &mut Opening, key: Key) -> Option<&mut Front> {
            let at = opening.fronts.iter().position(|front| front.key == key);
            if let Some(at) = at {
                return opening.fronts.get_mut(at);
            }
            match &mut opening.division {
                Division::Bay(_) => None,
                Division::SideBySide(parts) => parts
                    .parts_mut()
                    .find_map(|part| find(&mut part.opening, key)),
                Division::Stacked(parts) => parts.openings_mut().find_map(|part| find(part, key)),
            }
        }
        find(&mut self.cabinet().opening, key).unwrap()
    }

    /// A front over the opening with this key, above those that it has.
    pub(super) fn front_over(&mut self, opening: u32, kind: FrontKind, height: FrontHeight) -> Key {
        let made = front(self.key().0, kind, height);
        let key = made.key;
        self.cabinet().opening.each_mut(&mut |found| {
            if found.key == Key(opening) {
                found.fronts.push(made.clone());
            }
        });
        key
    }

    /// A drawer that takes its share of the plain bay, on runners at a hole.
    pub(super) fn drawer(&mut self, hole: i16, length: i32) -> &mut Runner {
        let key = self.front_over(1, FrontKind::Drawer, SHARE);
        let runner = self.runner(1, hole, length);
        runner.serves = Some(key);
        runner
    }

    /// What a drawer shall hold, in grams.
    pub(super) fn load(&mut self, drawer: Key, grams: u32) {
        self.cabinet().opening.each_mut(&mut |opening| {
            let mut fronts = opening.fronts.iter_mut();
            if let Some(front) = fronts.find(|front| front.key == drawer) {
                front.load_grams = Some(grams);
            }
        });
    }

    /// A rail of 18 board before the back, so far down from the stretchers.
    pub(super) fn back_rail(&mut self, height: Length) {
        let board = card("board-18");
        self.cabinet().carcass.rail = Some(BackRail { board, height });
    }

    /// A hole so far from the front edge and the foot of a panel.
    pub(super) fn hole(&mut self, face: FaceId, setback: Length, height: Length) -> &mut FreeHole {
        let hole = FreeHole {
            key: self.key(),
            face,
            purpose: Label::new("lock").unwrap(),
            edge: Edge::Front,
            setback,
            end: End::Foot,
            height,
            diameter: mm(5),
            depth: Depth::Shop,
        };
        let holes = &mut self.cabinet().free_holes;
        holes.push(hole);
        holes.last_mut().unwrap()
    }

    /// A row so far from the front edge of a panel.
    pub(super) fn row(
        &mut self,
        face: FaceId,
        setback: Length,
        first: i16,
        last: i16,
    ) -> &mut FreeRow {
        let row = FreeRow {
            key: self.key(),
            face,
            purpose: Label::new("cable").unwrap(),
            edge: Edge::Front,
            setback,
            first: HolePlace::foot(first),
            last: HolePlace::foot(last),
            diameter: mm(5),
            depth: Depth::Shop,
        };
        let rows = &mut self.cabinet().free_rows;
        rows.push(row);
        rows.last_mut().unwrap()
    }
}

impl Case {
    /// Parts the plain cabinet's bay in two, 1 and 12, by partition 11 of 18 board. Its clear bays are 273 wide.
    pub(super) fn part_in_two(&mut self) -> &mut Partition {
        let part = |key: u32| Part {
            width: PartWidth::Equal,
            opening: Opening::empty_bay(Key(key)),
        };
        let partition = Partition {
            key: Key(11),
            board: card("board-18"),
            recess: Length::ZERO,
            foot: Joint::default(),
            head: Joint::default(),
        };
        let parts = SideBySide {
            first: part(1),
            rest: [(partition, part(12))].into(),
        };
        let opening = &mut self.cabinet().opening;
        (opening.key, opening.division) = (Key(10), Division::SideBySide(parts.into()));
        match &mut opening.division {
            Division::SideBySide(parts) => &mut parts.rest[0].0,
            _ => unreachable!(),
        }
    }

    /// Puts fixed shelf 11 of 18 board between bay 1 and a bay 12 above it.
    pub(super) fn fixed_shelf(&mut self, underside: Length) -> &mut FixedShelf {
        let shelf = FixedShelf {
            key: Key(11),
            board: card("board-18"),
            at: ShelfHeight::Underside(underside),
            recess: Length::ZERO,
            joint: Joint::default(),
        };
        let parts = Stacked {
            first: Opening::empty_bay(Key(1)),
            rest: [(shelf, Opening::empty_bay(Key(12)))].into(),
        };
        let opening = &mut self.cabinet().opening;
        (opening.key, opening.division) = (Key(10), Division::Stacked(parts.into()));
        match &mut opening.division {
            Division::Stacked(parts) => &mut parts.rest[0].0,
            _ => unreachable!(),
        }
    }

    pub(super) fn board(&mut self) -> &mut Length {
        &mut self.job.cards.boards[0].thickness.value
    }

    pub(super) fn hinge_card(&mut self) -> &mut Hinge {
        &mut self.job.cards.hinges[0]
    }

    pub(super) fn runner_card(&mut self) -> &mut RunnerCard {
        &mut self.job.cards.runners[0]
    }

    pub(super) fn pin_card(&mut self) -> &mut Pin {
        &mut self.job.cards.pins[0]
    }
}

/// A share of what is left.
pub(super) const SHARE: FrontHeight = FrontHeight::Ratio(1);

/// A front named F.
pub(super) fn front(key: u32, kind: FrontKind, height: FrontHeight) -> Front {
    Front {
        height,
        ..Front::plain(Key(key), Label::new("F").unwrap(), kind)
    }
}

/// The inside of the left side.
pub(super) fn left_side() -> FaceId {
    FaceId::inside(LEFT)
}

/// The inside of the right side.
pub(super) fn right_side() -> FaceId {
    FaceId::inside(RIGHT)
}

/// The face of partition 11 toward a hand.
pub(super) fn partition(toward: Hand) -> FaceId {
    FaceId {
        panel: PanelId::Partition(Key(11)),
        toward,
    }
}

/// The findings of a rule in a plain cabinet so changed.
pub(super) fn found(rule: Rule, change: impl FnOnce(&mut Case)) -> Vec<Finding> {
    let mut case = Case::new();
    change(&mut case);
    assert_eq!(case.job.validate(), Ok(()));
    let found: Vec<Finding> = of_job(&case.job)
        .into_iter()
        .filter(|finding| finding.rule == rule)
        .collect();
    found
        .iter()
        .for_each(|finding| fixes_mend(&case.job, finding));
    found
}

/// Whatever a test finds, each fix that is offered for it removes it and opens no stop.
fn fixes_mend(job: &Job, finding: &Finding) {
    let stops = |job: &Job| of_job(job).iter().filter(|it| it.is_open_stop()).count();
    for fix in crate::mend::fixes(job, finding) {
        let mut after = job.clone();
        let edit = fix.edit.expect("a fix that can be had");
        edit.apply(job)
            .expect("a fix that is not refused")
            .apply(&mut after);
        let is_left = of_job(&after)
            .iter()
            .any(|it| it.is_about_the_same(finding));
        assert!(!is_left, "{}: {}", fix.title, finding.message);
        assert!(
            stops(&after) <= stops(job),
            "{} opens a stop: {}",
            fix.title,
            finding.message
        );
    }
}

/// What a rule says of a plain cabinet so changed, each sentence once.
pub(super) fn said(rule: Rule, change: impl FnOnce(&mut Case)) -> Vec<String> {
    let mut said: Vec<String> = Vec::new();
    for finding in found(rule, change) {
        if !said.contains(&finding.message) {
            said.push(finding.message);
        }
    }
    said
}
