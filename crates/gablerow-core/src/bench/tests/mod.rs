//! Set-ups of the glaze store's base, one by one, and what its shop's habits make of them.

mod laws;
mod order;

use super::*;
use crate::arbitrary::*;
use crate::job::{BandState, PanelId};
use crate::measure::Unit;
use std::format;
use std::string::{String, ToString};

fn mm(length: Length) -> String {
    length.show(Unit::Millimetre).to_string()
}

fn planned(job: &Job) -> Plan {
    plan(job, &[job.cabinets[0].key], &Times::default())
}

/// `37.0 front, partition 1 left, foot left, packer 18.2: 11-16`.
fn said(it: &SetUp) -> String {
    let panel = match it.face.panel {
        PanelId::Side(hand) => format!("{} side", hand.word()),
        PanelId::Partition(_) => "partition".to_string(),
    };
    let packer = match it.rest.packer {
        Length::ZERO => String::new(),
        packer => format!(", packer {}", mm(packer)),
    };
    let holes = match &it.holes {
        Holes::Runs(runs) => runs
            .iter()
            .map(|(first, last)| format!("{first}-{last}"))
            .collect::<Vec<_>>()
            .join(" "),
        Holes::ByTape(heights) => format!("{heights:?}"),
    };
    format!(
        "{} {}, {panel} {}, {} on {}{packer}, foot {}: {holes}",
        mm(it.setting.total()),
        it.edge.word(),
        it.face.toward.word(),
        it.rest.end.word(),
        mm(it.rest.stop),
        it.foot_to.word()
    )
}

fn of_all(plan: &Plan) -> Vec<String> {
    let mut all: Vec<String> = plan.set_ups.iter().map(said).collect();
    all.sort();
    all
}

/// The store's sheet, worked out by hand from its sizes: 4 hinge, 24 pin and 18 runner holes.
#[test]
fn glaze_store_has_the_set_ups_of_its_sheet() {
    let mut job = glaze_store();
    job.shop.rail = None;
    let plan = planned(&job);
    assert_eq!(
        of_all(&plan),
        [
            "261.0 front, partition right, foot on 16.0, packer 18.2, foot right: 2-2 10-10 17-17",
            "261.0 front, right side left, foot on 16.0, foot left: 2-2 10-10 17-17",
            "37.0 back, partition left, foot on 16.0, packer 18.2, foot right: 11-16",
            "37.0 front, left side right, foot on 16.0, foot right: 3-4 11-16 19-20",
            "37.0 front, partition left, foot on 16.0, packer 18.2, foot left: 11-16",
            "37.0 front, partition right, foot on 16.0, packer 18.2, foot right: 2-2 10-10 17-17",
            "37.0 front, right side left, foot on 16.0, foot left: 2-2 10-10 17-17",
            "453.0 front, partition right, foot on 16.0, packer 18.2, foot right: 2-2 10-10 17-17",
            "453.0 front, right side left, foot on 16.0, foot left: 2-2 10-10 17-17",
            "57.0 back, left side right, foot on 16.0, foot left: 11-16",
        ]
    );
    let count = |it: &SetUp| it.holes.count();
    assert_eq!(plan.set_ups.iter().map(count).sum::<usize>(), 46);
}

/// 453 from the front is beyond the arms: 540 - 453 = 87 on the partition, 560 - 453 = 107 on the side.
#[test]
fn what_the_arms_do_not_reach_is_worked_from_the_other_edge() {
    let plan = planned(&glaze_store());
    let from_back = |it: &&SetUp| it.edge == Edge::Back;
    let settings: Vec<String> = plan
        .set_ups
        .iter()
        .filter(from_back)
        .map(|it| mm(it.setting.total()))
        .collect();
    let mut settings = settings;
    settings.sort();
    assert_eq!(settings, ["107.0", "37.0", "57.0", "87.0"]);
}

/// 544 is 17 pitches; 480 is 15; 466 is 560 - 57 - 37; 416 is 453 - 37.
#[test]
fn distances_to_measure_are_those_of_the_sheet() {
    let mut job = glaze_store();
    job.shop.rail = None;
    let plan = planned(&job);
    let checks: Vec<String> = plan
        .set_ups
        .iter()
        .flat_map(|it| &it.checks)
        .map(|it| format!("{} {}", it.words, mm(it.want)))
        .collect();
    for want in [
        "hole 3 to hole 20 544.0",
        "hole 2 to hole 17 480.0",
        "first row to last row 466.0",
        "first row to last row 416.0",
    ] {
        assert!(checks.iter().any(|it| it == want), "{checks:?}");
    }
}

/// Band 1.0 goes on after boring, 0.5 is milled off before: 37 - 1 + 0.5.
#[test]
fn a_band_that_is_not_on_yet_comes_off_the_setting() {
    let mut job = glaze_store();
    job.shop.band.on = BandState::AfterBoring;
    job.shop.band.thickness = Length::from_mm(1);
    job.shop.band.pre_mill = Length::from_um(500);
    let plan = planned(&job);
    let front = plan.set_ups.iter().find(|it| it.edge == Edge::Front);
    assert_eq!(front.map(|it| mm(it.setting.total())), Some("36.5".into()));
}
