//! What files mean that were written before these fields were known. Nothing in here ever changes.

use gablerow_core::cards::{Origin, Sourced};
use gablerow_core::job;
use gablerow_core::measure::Length;

use super::bench_rules::{BenchRules, Gauge, Times, WorkOrder};
use super::cards;
use super::job::{Band, BoxRules, FrontRules};
use super::measure::Mm;
use super::twin::Twin;

fn mm(value: i32) -> Mm {
    Mm::of(&Length::from_mm(value))
}

fn guess(length: Length) -> cards::Sourced<Mm> {
    Twin::of(&Sourced {
        value: length,
        origin: Origin::HouseGuess,
    })
}

fn guess_mm(value: i32) -> cards::Sourced<Mm> {
    guess(Length::from_mm(value))
}

pub(super) fn fronts() -> FrontRules {
    let half_gap = Length::from_um(1_500);
    Twin::of(&job::FrontRules {
        gap: Length::from_mm(3),
        reveal_foot: half_gap,
        reveal_head: half_gap,
        reveal_side: half_gap,
        gap_inset: Length::from_mm(2),
    })
}

pub(super) fn band() -> Band {
    Twin::of(&job::Band {
        thickness: Length::from_mm(1),
        pre_mill: Length::ZERO,
        on: job::BandState::BeforeBoring,
    })
}

pub(super) fn boxes() -> BoxRules {
    BoxRules {
        groove: mm(8),
        step: mm(8),
        below: mm(15),
        between: mm(25),
        above: mm(10),
        rise: mm(35),
        rise_least: mm(18),
        rise_most: mm(54),
    }
}

pub(super) fn bench() -> BenchRules {
    BenchRules {
        times: Times {
            bit: 180,
            depth: 45,
            stop: 60,
            setting: 30,
            load: 40,
            placement: 25,
            hole: 4,
        },
        order: WorkOrder::Least,
        gauge: Gauge::Stop,
        test_depth: None,
        base_off: None,
    }
}

pub(super) fn arms() -> cards::Arms {
    cards::Arms {
        full: guess_mm(15),
        half: guess_mm(6),
        inset: guess_mm(-3),
    }
}

pub(super) fn tabs() -> cards::Tabs {
    cards::Tabs {
        least: guess_mm(3),
        most: guess_mm(7),
        step: Mm::of(&Length::from_um(500)),
    }
}

pub(super) fn plates() -> Vec<Mm> {
    vec![mm(0), mm(2), mm(4)]
}

pub(super) fn cup() -> cards::Sourced<Mm> {
    guess_mm(35)
}

pub(super) fn cup_depth() -> cards::Sourced<Mm> {
    guess_mm(13)
}

pub(super) fn intrusion() -> cards::Sourced<Mm> {
    guess_mm(15)
}

pub(super) fn adjust() -> cards::Sourced<Mm> {
    guess_mm(2)
}

pub(super) fn chart() -> cards::CountChart {
    cards::CountChart::HeightAndMass
}

/// None was known, so that no door of an old file is said to stand too near.
pub(super) fn reveals() -> Vec<cards::LeastReveal> {
    Vec::new()
}

pub(super) fn deduct() -> cards::Sourced<Mm> {
    guess_mm(42)
}

pub(super) fn shorter() -> cards::Sourced<Mm> {
    guess_mm(10)
}

pub(super) fn shelf_shorter() -> Mm {
    mm(2)
}

pub(super) fn recess() -> cards::Sourced<Mm> {
    guess_mm(13)
}

pub(super) fn bed() -> cards::Bed {
    cards::Bed {
        length: guess_mm(2_800),
        width: guess_mm(1_250),
        zero: cards::Corner::NearLeft,
        along: cards::Along::XRight,
        across: cards::Across::Away,
    }
}

pub(super) fn load() -> cards::Sourced<u32> {
    Twin::of(&Sourced {
        value: 30,
        origin: Origin::HouseGuess,
    })
}
