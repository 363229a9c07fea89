//! Faces on sheets: read back from SVG by a reader that is not ours, and held against the layout.

use std::collections::BTreeSet;

use gablerow_core::cards::Bed;
use gablerow_core::drawing::FaceDrawing;
use gablerow_core::job::{FaceId, Hand, HolePlace, Job, Label};
use proptest::prelude::*;

use super::*;
use crate::DrawnCabinet;
use crate::fixture::{any_bed, any_job, assert_legible, drawers, each_drawn, job, mm};
use crate::pdf::read_back;
use crate::{pdf, svg};

const SIZES: [FaceSize; 4] = [
    FaceSize::Paper(Paper::A4),
    FaceSize::Paper(Paper::A3),
    FaceSize::Paper(Paper::Letter),
    FaceSize::True,
];

/// Every face of a job's first cabinet on a sheet, after its drawing.
fn pages(job: &Job, size: FaceSize, bed: &Bed) -> Vec<(FaceDrawing, Page)> {
    each_drawn(job, Some(bed), |face| {
        let of = DrawnCabinet {
            copies: "copies 1 and 3",
            ..face.of
        };
        DrawnFace { of, ..face }.page(size)
    })
}

fn left_inside(job: &Job, size: FaceSize) -> Page {
    let mut pages = pages(job, size, &Bed::default()).into_iter();
    let id = FaceId::inside(Hand::Left);
    pages.find(|(drawing, _)| drawing.face == id).unwrap().1
}

/// What a file says: its circles as x, y and radius, the box around the outline as left, foot, width, height, its texts. In mm
/// of paper, y down.
struct Read {
    circles: Vec<[f64; 3]>,
    outline: [f64; 4],
    texts: Vec<String>,
}

fn read(page: &Page) -> Read {
    let text = svg(page);
    let tree = roxmltree::Document::parse(&text).unwrap();
    let nodes = |tag| {
        tree.descendants()
            .filter(move |node| node.has_tag_name(tag))
    };
    let number = |node: roxmltree::Node, name| node.attribute(name).unwrap().parse().unwrap();
    let is_outline = |node: &roxmltree::Node| {
        node.attribute("stroke-width") == Some("0.4") && node.attribute("d").unwrap().ends_with('Z')
    };
    let outline = nodes("path").find(is_outline).unwrap();
    let corners = outline.attribute("d").unwrap().split(['M', 'L', 'Z']);
    let corners = corners.filter_map(|corner| corner.split_once(' '));
    let (x, y): (Vec<f64>, Vec<f64>) = corners
        .map(|(x, y)| (x.parse::<f64>().unwrap(), y.parse::<f64>().unwrap()))
        .unzip();
    let least = |values: &[f64]| values.iter().copied().fold(f64::MAX, f64::min);
    let most = |values: &[f64]| values.iter().copied().fold(f64::MIN, f64::max);
    let (wide, high) = (most(&x) - least(&x), most(&y) - least(&y));
    Read {
        circles: nodes("circle")
            .map(|node| ["cx", "cy", "r"].map(|name| number(node, name)))
            .collect(),
        outline: [least(&x), most(&y), wide, high],
        texts: nodes("text")
            .map(|node| node.text().unwrap().into())
            .collect(),
    }
}

/// How much smaller than it is a panel is drawn, as the page states it.
fn stated(read: &Read) -> f64 {
    let mut words = read.texts.iter().flat_map(|text| text.split_whitespace());
    let scale = words.find_map(|word| word.strip_prefix("1:")).unwrap();
    scale.trim_end_matches('.').parse().unwrap()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    #[test]
    fn every_face_reads_back_with_exactly_its_holes(
        job in any_job(), size in prop::sample::select(SIZES.to_vec()), bed in any_bed()
    ) {
        for (drawing, page) in pages(&job, size, &bed) {
            let read = read(&page);
            let scale = stated(&read);
            let [left, foot, wide, high] = read.outline;
            prop_assert!((wide * scale - drawing.depth.mm()).abs() < 0.001);
            prop_assert!((high * scale - drawing.length.mm()).abs() < 0.001);
            let mut uses = BTreeSet::new();
            for (dot, circle) in drawing.dots.iter().zip(&read.circles) {
                let across = match drawing.face.toward {
                    Hand::Right => dot.x.mm(),
                    Hand::Left => drawing.depth.mm() - dot.x.mm(),
                };
                let expected = [across, dot.y.mm(), dot.hole.diameter.mm() / 2.0];
                let [x, y, radius] = *circle;
                let found = [x - left, foot - y, radius].map(|paper| paper * scale);
                let is_near = |(a, b): (&f64, &f64)| (a - b).abs() < 0.001;
                prop_assert!(expected.iter().zip(&found).all(is_near), "{expected:?} {found:?}");
                uses.insert((dot.hole.only_use(), dot.hole.diameter, dot.hole.depth));
            }
            // Each use and bore is once more among the signs.
            prop_assert_eq!(read.circles.len(), drawing.dots.len() + uses.len());
        }
    }

    #[test]
    fn nothing_overlaps_and_nothing_is_too_small(
        job in any_job(), size in prop::sample::select(SIZES.to_vec()), bed in any_bed()
    ) {
        for (_, page) in pages(&job, size, &bed) {
            assert_legible(&page);
        }
    }
}

proptest! {
    // Documents are pressed, which takes a while where nothing is optimized.
    #![proptest_config(ProptestConfig::with_cases(8))]

    #[test]
    fn a_document_of_every_face_has_its_holes_where_the_page_has_them(
        job in any_job(), size in prop::sample::select(SIZES.to_vec())
    ) {
        for (drawing, page) in pages(&job, size, &Bed::default()) {
            let in_svg = read(&page);
            let shapes = read_back::shapes(&pdf(core::slice::from_ref(&page), "a face"));
            let round = shapes.iter().filter(|shape| shape.len() == 13);
            let circles: Vec<_> = round.map(|shape| read_back::circle(shape)).collect();
            prop_assert_eq!(circles.len(), in_svg.circles.len());
            let scale = stated(&in_svg);
            for ((x, y, diameter), [left, down, radius]) in circles.iter().zip(&in_svg.circles).take(drawing.dots.len()) {
                let off = [x - left, page.height - y - down, diameter / 2.0 - radius];
                prop_assert!(off.iter().all(|off| (off * scale).abs() < read_back::CLOSE), "{off:?}");
            }
        }
    }
}

// 560 / 5 = 112 fits between the numbers on A4, 704 / 5 = 141 above what is written; at 1:2.5 neither does. 1300 / 5 = 260.
#[test]
fn the_largest_scale_that_fits_is_taken() {
    let of = |height, size| {
        let mut job = drawers();
        job.cabinets[0].size.height = mm(height);
        stated(&read(&left_inside(&job, size)))
    };
    assert_eq!(of(704, FaceSize::Paper(Paper::A4)), 5.0);
    assert_eq!(of(1_300, FaceSize::Paper(Paper::A4)), 10.0);
    assert_eq!(of(1_300, FaceSize::Paper(Paper::A3)), 5.0);
    assert_eq!(of(704, FaceSize::True), 1.0);
    // What is written stands beside a tall panel, and more of it fits.
    assert_eq!(of(2_000, FaceSize::Paper(Paper::A4)), 10.0);
}

// 2500 / 20 = 125 mm have room for 35 numbers 3.51 apart; of 73 holes the ends of runs are kept.
#[test]
fn of_more_heights_than_there_is_room_for_the_ends_of_runs_are_kept() {
    let mut job = job();
    job.cabinets[0].size.height = mm(2_500);
    job.cabinets[0].opening.each_bay_mut(&mut |bay| {
        (bay.zones[0].first, bay.zones[0].last) = (HolePlace::foot(4), HolePlace::foot(76));
    });
    let page = left_inside(&job, FaceSize::Paper(Paper::A4));
    assert_legible(&page);
    let texts = read(&page).texts;
    let numbers: Vec<i16> = texts.iter().filter_map(|text| text.parse().ok()).collect();
    assert_eq!(numbers, [4, 76]);
}

#[test]
fn a_sheet_at_one_to_one_is_as_large_as_it_must_be() {
    let page = left_inside(&drawers(), FaceSize::True);
    let read = read(&page);
    let [left, foot, wide, high] = read.outline;
    assert_eq!((wide, high), (560.0, 704.0));
    assert!(left > MARGIN && left + wide < page.width - MARGIN);
    assert!(foot < page.height - MARGIN && page.height < 704.0 + 160.0);
}

#[test]
fn a_page_says_what_it_is_and_how_it_lies() {
    let mut job = drawers();
    job.cabinets[0].name = Label::new("G2 <left> \"é\"").unwrap();
    let texts = read(&left_inside(&job, FaceSize::Paper(Paper::A4))).texts;
    // Sentences may stand on several lines.
    let said = texts.join(" ");
    for words in [
        "G2 <left> \"é\", copies 1 and 3, left side, inside",
        "glaze store. rev 7 OTTER. 704.0 x 560.0 x 18.0 mm, 18 board. Scale 1:5.",
        "This face up. FRONT toward you: foot to your RIGHT. BACK toward you: foot to your LEFT.",
        "On the machine: FOOT and BACK edge at the zero corner, near left. x from the foot; y from the back edge.",
        "Overruled: the back row is 30.0 from the edge.",
        "front 37.0",
        "front 523.0",
        "plate ⌀5.0 x 12.0 (3)",
        "HEAD, 704.0 from the foot",
        "FOOT",
        "100 mm. If a tape reads anything else, print again at 100 %.",
    ] {
        assert!(said.contains(words), "no {words}: {said}");
    }
    assert_eq!(texts.iter().filter(|text| *text == "FRONT").count(), 2);
}

#[test]
fn names_longer_than_a_line_are_broken() {
    let mut job = drawers();
    let name = "W".repeat(Label::MAX_CHARS);
    job.cabinets[0].name = Label::new(&name).unwrap();
    for height in [704, 2_000] {
        job.cabinets[0].size.height = mm(height);
        let page = left_inside(&job, FaceSize::Paper(Paper::A4));
        assert_legible(&page);
        assert!(read(&page).texts.concat().contains(&name));
    }
}

#[test]
fn every_sheet_has_a_rule_of_100_mm() {
    for size in SIZES {
        let page = left_inside(&drawers(), size);
        let shapes = read_back::shapes(&pdf(core::slice::from_ref(&page), "a face"));
        let is_rule = |shape: &&Vec<[f64; 2]>| {
            let [[left, foot], [right, head]] = shape[..] else {
                return false;
            };
            foot == head && (right - left - 283.4646).abs() < 0.0001
        };
        assert_eq!(shapes.iter().filter(is_rule).count(), 1);
    }
}

#[test]
fn a_face_without_holes_says_so() {
    for (drawing, page) in pages(&drawers(), FaceSize::Paper(Paper::A4), &Bed::default()) {
        let said = read(&page).texts.join(" ");
        let is_bored = !said.contains("Nothing is bored from this face.");
        assert_eq!(is_bored, !drawing.face.is_outside());
    }
}

#[test]
fn the_same_face_is_the_same_page() {
    for size in SIZES {
        let of = || pages(&drawers(), size, &Bed::default());
        assert_eq!(of(), of());
    }
}
