//! Documents read back by a reader that is not ours.

use alloc::string::String;
use alloc::vec;

use lopdf::Document;
use proptest::prelude::*;

use super::*;
use crate::FaceSize;
use crate::fixture::{any_job, each_drawn};
use crate::page::{Line, Paper, TextEnd};
use crate::pdf::read_back::{CLOSE, circle, numbers, operations, shapes};

fn page(paper: Paper, marks: Vec<Mark>) -> Page {
    let (width, height) = paper.size();
    Page {
        width,
        height,
        marks,
    }
}

fn ink() -> Ink {
    Ink {
        line: Some(Line {
            width: 0.25,
            shade: 0.0,
            dash: None,
        }),
        fill: None,
    }
}

fn ring(x: f64, y: f64, diameter: f64) -> Mark {
    Mark::Ring {
        centre: Point { x, y },
        radius: diameter / 2.0,
        ink: ink(),
    }
}

fn text(words: &str) -> Text {
    Text {
        at: Point { x: 20.0, y: 30.0 },
        end: TextEnd::Start,
        size: 3.0,
        is_bold: false,
        is_upright: false,
        words: words.into(),
    }
}

#[test]
fn a_hundred_millimetres_are_283_4646_points() {
    let rule = Mark::Path {
        corners: [10.0, 110.0].map(|x| Point { x, y: 50.0 }).into(),
        is_closed: false,
        ink: ink(),
    };
    let shapes = shapes(&pdf(&[page(Paper::A4, vec![rule])], "a rule"));
    let [from, to] = shapes[0][..] else { panic!() };
    assert!((to[0] - from[0] - 283.4646).abs() < 0.0001);
}

#[test]
fn sheets_are_as_large_as_their_paper_and_not_fitted_to_another() {
    let sizes = [(595.2756, 841.8898), (841.8898, 1190.5512), (612.0, 792.0)];
    let pages = Paper::ALL.map(|paper| page(paper, vec![]));
    let document = Document::load_mem(&pdf(&pages, "sheets")).unwrap();
    for (id, (width, height)) in document.get_pages().into_values().zip(sizes) {
        let sheet = document.get_dictionary(id).unwrap();
        let sheet = sheet.get(b"MediaBox").unwrap().as_array().unwrap();
        let sheet: Vec<f32> = sheet.iter().map(|side| side.as_float().unwrap()).collect();
        assert_eq!(sheet[..2], [0.0, 0.0]);
        assert!(
            (sheet[2] - width).abs() < 0.0001 && (sheet[3] - height).abs() < 0.0001,
            "{sheet:?}"
        );
    }
    let wishes = document
        .catalog()
        .unwrap()
        .get(b"ViewerPreferences")
        .unwrap();
    let scaling = wishes.as_dict().unwrap().get(b"PrintScaling").unwrap();
    assert_eq!(scaling.as_name().unwrap(), b"None");
}

#[test]
fn names_can_be_searched_and_what_has_no_glyph_is_shown_by_number() {
    let mut bold = text("Größe ½\" Ж ⌀5");
    bold.is_bold = true;
    let marks = [text("Glaze store, 漢 G2"), bold].map(Mark::Text);
    let bytes = pdf(&[page(Paper::A4, marks.into())], "Glaze store");
    let document = Document::load_mem(&bytes).unwrap();
    let read = document.extract_text(&[1]).unwrap();
    assert!(read.contains("Glaze store, [U+6F22] G2"), "{read}");
    assert!(read.contains("Größe ½\" Ж ⌀5"), "{read}");
}

#[test]
fn the_font_inside_has_what_is_used_and_little_else() {
    let length = |words: &str| pdf(&[page(Paper::A4, vec![Mark::Text(text(words))])], "size").len();
    let all: String = (' '..='\u{17f}').collect();
    assert!(length("Glaze store") < 10_000);
    assert!(length(&all) > 2 * length("Glaze store"));
}

#[test]
fn texts_end_where_they_are_put() {
    let mut marks = Vec::new();
    for end in [TextEnd::Start, TextEnd::Middle, TextEnd::End] {
        for is_upright in [false, true] {
            marks.push(Mark::Text(Text {
                end,
                is_upright,
                ..text("704.0")
            }));
        }
    }
    // Four digits of 1303 and a full stop of 651, of 2048 units.
    let wide = (4.0 * 1303.0 + 651.0) / 2048.0 * 3.0;
    let of = operations(&pdf(&[page(Paper::A4, marks)], "ends"));
    let matrices = of.iter().filter(|operation| operation.operator == "Tm");
    let matrices: Vec<Vec<f64>> = matrices.map(numbers).collect();
    for (at, back) in [0.0, 0.0, 0.5, 0.5, 1.0, 1.0].iter().enumerate() {
        let (x, y) = (matrices[at][4], matrices[at][5]);
        let (expected, turned) = match at % 2 {
            0 => ((20.0 - back * wide, 30.0), [1.0, 0.0, 0.0, 1.0]),
            _ => ((20.0, 30.0 - back * wide), [0.0, 1.0, -1.0, 0.0]),
        };
        assert!(
            (x - expected.0).abs() < CLOSE && (y - expected.1).abs() < CLOSE,
            "{at}"
        );
        assert_eq!(matrices[at][..4], turned);
    }
}

#[test]
fn the_same_pages_are_the_same_bytes() {
    let marks = || vec![ring(30.0, 40.0, 5.0), Mark::Text(text("G2 left side"))];
    let pages = || [page(Paper::A4, marks()), page(Paper::Letter, marks())];
    assert_eq!(pdf(&pages(), "G2"), pdf(&pages(), "G2"));
}

proptest! {
    #[test]
    fn every_circle_has_its_place_and_width(
        circles in prop::collection::vec((0.0..420.0, 0.0..420.0, 0.5..60.0), 1..20)
    ) {
        let marks = circles.iter().map(|(x, y, diameter)| ring(*x, *y, *diameter));
        let bytes = pdf(&[page(Paper::A3, marks.collect())], "circles");
        let read = shapes(&bytes);
        prop_assert_eq!(read.len(), circles.len());
        for (shape, (x, y, diameter)) in read.iter().zip(&circles) {
            let found = circle(shape);
            for (found, put) in [(found.0, x), (found.1, y), (found.2, diameter)] {
                prop_assert!((found - put).abs() < CLOSE, "{} is {}", put, found);
            }
        }
    }
}

/// Every ring of a page, and every circle of its document.
fn assert_rings_are_read_back(page: &Page) {
    let shapes = shapes(&pdf(core::slice::from_ref(page), "face"));
    let mut circles = shapes
        .iter()
        .filter(|shape| shape.len() == 13)
        .map(|shape| circle(shape));
    for mark in &page.marks {
        if let Mark::Ring { centre, radius, .. } = mark {
            let (x, y, diameter) = circles.next().unwrap();
            let off = [x - centre.x, y - centre.y, diameter - 2.0 * radius];
            assert!(
                off.iter().all(|off| off.abs() < CLOSE),
                "{mark:?} is off by {off:?}"
            );
        }
    }
    assert_eq!(circles.next(), None);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(32))]

    #[test]
    fn every_hole_of_a_face_is_read_back_at_any_scale(
        job in any_job(),
        paper in prop::sample::select(Paper::ALL.to_vec()),
    ) {
        each_drawn(&job, None, |face| {
            for size in [FaceSize::True, FaceSize::Paper(paper)] {
                assert_rings_are_read_back(&face.page(size));
            }
        });
    }
}
