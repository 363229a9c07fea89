//! Job files of what an opening can be: read, laid out, checked, written again.

use std::path::{Path, PathBuf};
use std::process::Command;

use gablerow::job_file;
use gablerow_core::job::{FaceId, Hand, Job, Key, PanelId};
use gablerow_core::layout::{Hole, Layout};
use gablerow_core::measure::Length;

use crate::key_script::golden;

fn path(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("../../tests/jobs")
        .join(name)
}

/// The job of a file that is written as it was read, and that the program checks without complaint about the file.
fn opened(name: &str) -> Job {
    let text = std::fs::read(path(name)).unwrap();
    let job = job_file::read(&text).unwrap_or_else(|error| panic!("{}", error.report(name)));
    let written = job_file::write(&job);
    assert_eq!(
        written,
        golden(&format!("tests/jobs/{name}"), &written),
        "{name} is not as the program writes it"
    );
    assert_eq!(job_file::read(written.as_bytes()).unwrap(), job);
    let checked = Command::new(env!("CARGO_BIN_EXE_gablerow"))
        .arg("check")
        .arg(path(name))
        .output()
        .unwrap();
    assert!(
        matches!(checked.status.code(), Some(0 | 1)),
        "{}",
        String::from_utf8_lossy(&checked.stderr)
    );
    job
}

fn laid_out(job: &Job) -> Layout {
    Layout::of(&job.cabinets[0], job)
}

fn holes(layout: &Layout, face: FaceId) -> Vec<Hole> {
    layout.face(face).unwrap().holes(layout)
}

const PARTITION: PanelId = PanelId::Partition(Key(21));

#[test]
fn a_partition_on_a_fixed_shelf_stands_on_it() {
    let job = opened("t_junction.json");
    let layout = laid_out(&job);
    let partition = layout.upright(PARTITION).unwrap();
    // The shelf's middle is at hole 14: 16 + 13 * 32 = 432, and half of 18.2 above that is 441.1.
    assert_eq!(partition.foot.total(), Length::from_um(441_100));
    assert_eq!(partition.head.total(), Length::from_um(1_248_000 - 18_200));
    let on = |toward| {
        holes(
            &layout,
            FaceId {
                panel: PARTITION,
                toward,
            },
        )
    };
    assert_eq!(on(Hand::Left).len(), 14);
    assert_eq!(on(Hand::Left), {
        let mut right = on(Hand::Right);
        // The same places; the zones of the two bays are their own.
        right.iter_mut().for_each(|hole| hole.users[0].1 = Key(11));
        right
    });
    assert_eq!(layout.bays.len(), 3);
}

#[test]
fn a_door_over_two_bays_covers_both_but_the_reveals() {
    let job = opened("door_over_two_bays.json");
    let layout = laid_out(&job);
    assert_eq!(layout.open_points, []);
    let [door] = &layout.fronts[..] else {
        panic!("{:?}", layout.fronts);
    };
    // 900 and 704, less 1.5 at either edge.
    assert_eq!(door.width.total(), Length::from_mm(897));
    assert_eq!(door.height.total(), Length::from_mm(701));
    assert_eq!(door.wall_hung(), Some(FaceId::inside(Hand::Left)));
}

#[test]
fn fronts_of_every_kind_have_the_sizes_of_their_openings() {
    let job = opened("glaze_fronts.json");
    let sizes = |at: usize| {
        let layout = Layout::of(&job.cabinets[at], &job);
        assert_eq!(layout.open_points, []);
        let size = |front: &gablerow_core::layout::FrontLayout| {
            (front.width.total(), front.height.total())
        };
        layout.fronts.iter().map(size).collect::<Vec<_>>()
    };
    let (mm, um) = (Length::from_mm, Length::from_um);
    // Half of 1000, less a reveal of 1.5 and half a gap of 3; 704 less both reveals; modules of 32 less a gap.
    let drawers = [253, 221, 221].map(|height| (mm(497), mm(height)));
    assert_eq!(sizes(0), [&[(mm(497), mm(701))][..], &drawers].concat());
    // Inside 600 less two sides of 18.2, and 704 less bottom and top, 2 less at either end.
    assert_eq!(sizes(2), [(um(559_600), um(663_600))]);
    // 701 less 10 modules, 8 modules and two gaps: 701 - 317 - 253 - 6.
    assert_eq!(
        sizes(3),
        [317, 253, 125].map(|height| (mm(447), mm(height)))
    );
}

#[test]
fn a_half_depth_partition_has_its_rows_where_its_bays_have_them() {
    let job = opened("half_depth_partition.json");
    let layout = laid_out(&job);
    let partition = layout.upright(PARTITION).unwrap();
    // 560 deep, 20 behind the back panel's front, 250 from the front.
    assert_eq!(partition.depth(), Length::from_mm(290));
    let front = holes(
        &layout,
        FaceId {
            panel: PARTITION,
            toward: Hand::Left,
        },
    )[0]
    .x;
    assert_eq!(front, Length::from_mm(287));
    assert_eq!(front, holes(&layout, FaceId::inside(Hand::Left))[0].x);
    // Housed 5 at the foot: the bottom of 18.2 less 5.
    assert_eq!(partition.foot.total(), Length::from_um(13_200));
}

#[test]
fn a_mirrored_copy_has_its_hinges_on_the_other_side() {
    let job = opened("mirrored_copy.json");
    let mut program = Command::new(env!("CARGO_BIN_EXE_gablerow"));
    let output = program
        .args(["holes", "--json"])
        .arg(path("mirrored_copy.json"))
        .output()
        .unwrap();
    let listed: Vec<serde_json::Value> = serde_json::from_slice(&output.stdout).unwrap();
    let plates = |copy: &str, panel: &str| {
        let is_plate = |hole: &&serde_json::Value| {
            hole["copy"] == copy
                && hole["panel"] == panel
                && hole["uses"] == serde_json::json!(["plate"])
        };
        listed.iter().filter(is_plate).count()
    };
    assert_eq!(job.cabinets[0].copies.len(), 2);
    assert_eq!(
        (
            plates("left of the kiln", "left side"),
            plates("left of the kiln", "right side")
        ),
        (4, 0)
    );
    assert_eq!(
        (
            plates("right of the kiln", "left side"),
            plates("right of the kiln", "right side")
        ),
        (0, 4)
    );
}

#[test]
fn a_tall_panel_and_a_narrow_one_have_no_stop() {
    let job = opened("odd_shapes.json");
    let sizes = job.cabinets.iter().map(|cabinet| cabinet.size);
    let sizes: Vec<(Length, Length)> = sizes.map(|size| (size.height, size.depth)).collect();
    let mm = |mm: i32| Length::from_um(mm * 1000);
    assert_eq!(sizes, [(mm(2144), mm(560)), (mm(704), mm(150))]);
}
