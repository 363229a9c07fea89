//! Drawings for machines, read back by a reader that is not ours.

use std::collections::BTreeSet;

use ::dxf::Drawing;
use ::dxf::entities::EntityType;
use gablerow_core::drawing::{Dot, FaceDrawing};
use gablerow_core::job::{FaceId, Hand, Job, Label, Notch};
use proptest::prelude::*;

use super::*;
use crate::DrawnCabinet;
use crate::fixture::{any_job, drawers, each_drawn, job, mm};

/// Every face of a job's first cabinet as DXF, after its drawing.
fn files(job: &Job) -> Vec<(FaceDrawing, String)> {
    each_drawn(job, None, |face| {
        let of = DrawnCabinet {
            remarks: &[],
            ..face.of
        };
        dxf(&DrawnFace { of, ..face })
    })
}

fn file(job: &Job, id: FaceId) -> String {
    let mut files = files(job).into_iter();
    files.find(|(drawing, _)| drawing.face == id).unwrap().1
}

fn read(text: &str) -> Drawing {
    Drawing::load(&mut text.as_bytes()).unwrap()
}

/// A place and a radius in thousandths of a millimetre, with a layer.
type Circle = (i64, i64, i64, String);

#[expect(
    clippy::cast_possible_truncation,
    reason = "no panel is a million kilometres long"
)]
fn thousandths_of(value: f64) -> i64 {
    (value * 1000.0).round() as i64
}

fn circles(drawing: &Drawing) -> Vec<Circle> {
    let circle = |entity: &::dxf::entities::Entity| match &entity.specific {
        EntityType::Circle(circle) => Some((
            thousandths_of(circle.center.x),
            thousandths_of(circle.center.y),
            thousandths_of(circle.radius),
            entity.common.layer.clone(),
        )),
        _ => None,
    };
    let mut circles: Vec<Circle> = drawing.entities().filter_map(circle).collect();
    circles.sort();
    circles
}

/// What a hole should be, from the layout: with the foot down, a face that looks to the right has its front on the left.
fn expected(drawing: &FaceDrawing, dot: &Dot) -> Circle {
    let x = match drawing.face.toward {
        Hand::Right => dot.x.mm(),
        Hand::Left => drawing.depth.mm() - dot.x.mm(),
    };
    let radius = dot.hole.diameter.mm() / 2.0;
    let places = [x, dot.y.mm(), radius].map(thousandths_of);
    (places[0], places[1], places[2], hole_layer(&dot.hole))
}

fn is_name_of_r12(name: &str) -> bool {
    let is_letter = |c: char| c.is_ascii_uppercase() || c.is_ascii_digit() || "_-$".contains(c);
    (1..=31).contains(&name.len()) && name.chars().all(is_letter)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    #[test]
    fn every_face_reads_back_with_exactly_its_holes(job in any_job()) {
        for (drawing, text) in files(&job) {
            let file = read(&text);
            let mut holes: Vec<Circle> = drawing.dots.iter().map(|dot| expected(&drawing, dot)).collect();
            holes.sort();
            prop_assert_eq!(circles(&file), holes);
            let layers: BTreeSet<&str> = file.layers().map(|layer| &*layer.name).collect();
            prop_assert!(file.entities().all(|entity| layers.contains(&*entity.common.layer)));
            prop_assert!(layers.iter().all(|name| is_name_of_r12(name)), "{:?}", layers);
        }
    }

    #[test]
    fn names_are_ascii_and_no_signs(name in "[a-z%^\\\\é⌀😀]{1,12}") {
        let text = in_ascii(&name);
        prop_assert!(text.is_ascii() && !text.contains(['\r', '\n']));
        prop_assert_eq!(text.matches('%').count(), 3 * name.matches('%').count());
    }
}

// Hole 3 of a left side is 16 + 2 * 32 = 80 up; on a right side the front row is 560 - 37 = 523 from the left.
#[test]
fn right_walls_are_drawn_as_they_are_seen() {
    let job = job();
    let at = |side| {
        let places = circles(&read(&file(&job, FaceId::inside(side))));
        places
            .iter()
            .map(|circle| circle.0)
            .collect::<BTreeSet<_>>()
    };
    assert_eq!(at(Hand::Left), [37_000, 503_000].into());
    assert_eq!(at(Hand::Right), [57_000, 523_000].into());
}

#[test]
fn the_outline_has_its_notch_at_the_front() {
    let mut job = job();
    job.cabinets[0].carcass.sides.notch = Some(Notch {
        height: mm(100),
        depth: mm(50),
    });
    let corners = |side| {
        let file = read(&file(&job, FaceId::inside(side)));
        let mut polylines = file.entities().filter_map(|entity| match &entity.specific {
            EntityType::Polyline(polyline) => Some(polyline.clone()),
            _ => None,
        });
        let outline = polylines.next().unwrap();
        assert!(outline.is_closed() && polylines.next().is_none());
        let vertices = outline.vertices();
        vertices
            .map(|vertex| (vertex.location.x, vertex.location.y))
            .collect::<Vec<_>>()
    };
    let left = [
        (50., 0.),
        (560., 0.),
        (560., 704.),
        (0., 704.),
        (0., 100.),
        (50., 100.),
    ];
    assert_eq!(corners(Hand::Left), left);
    assert_eq!(corners(Hand::Right), left.map(|(x, y)| (560. - x, y)));
}

#[test]
fn layers_say_use_diameter_and_depth() {
    let job = drawers();
    let layers: BTreeSet<String> = circles(&read(&file(&job, FaceId::inside(Hand::Left))))
        .into_iter()
        .map(|circle| circle.3)
        .collect();
    let layers: Vec<&str> = layers.iter().map(String::as_str).collect();
    // The lower plate and the shelf share hole 15.
    let named = ["PIN", "PLATE", "RUNNER", "SHARED"].map(|use_| format!("{use_}_D5_DEEP12_MM"));
    assert_eq!(layers, named);
}

#[test]
fn the_unit_stands_in_a_comment_and_in_a_text() {
    let mut job = job();
    job.title = Label::new("Größe ⌀ 100%%c").unwrap();
    let text = file(&job, FaceId::inside(Hand::Left));
    assert!(text.is_ascii());
    assert!(text.contains("Gr\\U+00F6\\U+00DFe \\U+2300"));
    assert!(text.starts_with("999\r\nUNIT: MILLIMETRES\r\n"));
    assert!(text.ends_with("  0\r\nEOF\r\n"));
    let file = read(&text);
    let texts: Vec<String> = file
        .entities()
        .filter_map(|entity| match &entity.specific {
            EntityType::Text(text) => Some(text.value.clone()),
            _ => None,
        })
        .collect();
    assert_eq!(texts[0], "UNIT: MILLIMETRES");
    assert_eq!(texts[1], "Größe ⌀ 100%%%%%%c: A1, left side, inside");
    assert!(
        texts
            .iter()
            .any(|text| text.contains("FRONT toward you: foot to your RIGHT"))
    );
    assert!(texts.contains(&"rev 7 OTTER".into()));
}

#[test]
fn the_same_face_has_the_same_bytes() {
    assert_eq!(files(&drawers()), files(&drawers()));
}
