//! Rules of thumb that the program starts from, and what is known from memory alone. Neither has a source, and neither
//! proves anything about the world: a case says only that the program starts from what it says it starts from.

use gablerow_core::cards::Cards;
use gablerow_core::job::{Back, BackRule, Bit, Shop};
use gablerow_core::measure::Length;

use crate::case::{Case, Mark, Source};
use crate::fixture::{job, layout, mm};

static PRACTICE: Source = Source {
    author: "cabinetmakers",
    title: "common practice",
    year: "no year",
    clause: "no source",
    mark: Mark::Practice,
};

static MEMORY: Source = Source {
    author: "nobody",
    title: "from memory",
    year: "no year",
    clause: "not seen in print, so it proves nothing",
    mark: Mark::Memory,
};

pub(crate) fn cases() -> Vec<Case> {
    let shop = Shop::starter();
    let cards = Cards::starter();
    let runner = &cards.runners[0];
    let practice = |name: &str, rule: f64, found: Length| {
        Case::new("rules of thumb", name, &PRACTICE, rule, found.mm())
    };
    let memory = |name: &str, claim: f64, found: Length| {
        Case::new("from memory", name, &MEMORY, claim, found.mm())
    };
    vec![
        practice("front row", 37.0, shop.setback_front),
        practice(
            "first hole and stand-back of a runner",
            37.0,
            runner.first_hole.value + runner.stand_back.value,
        ),
        practice(
            "back row from the edge, groove 20 from it",
            57.0,
            from_back_edge(),
        ),
        practice("skin under a flat bit", 3.0, shop.limits.skin(Bit::Flat)),
        practice(
            "skin under a pointed bit",
            4.0,
            shop.limits.skin(Bit::Pointed),
        ),
        practice("gap between fronts", 3.0, shop.fronts.gap),
        practice("diameter of a system hole", 5.0, shop.diameter),
        memory("a runner's own first hole", 35.0, runner.first_hole.value),
    ]
}

/// The back row in front of the back panel, from the back edge of a 560 side.
fn from_back_edge() -> Length {
    let laid = layout(&job(|job| {
        job.shop.back_rule = BackRule::FromBackPanel;
        job.cabinets[0].size.depth = mm(560);
        job.cabinets[0].carcass.back = Back::Groove {
            to_front_wall: mm(20),
            cut: mm(8),
        };
    }));
    mm(560) - laid.bays[0].back_row.total()
}
