//! The stick read back from SVG by a reader that is not ours.

use gablerow_core::job::{Depth, Edge, End, FreeHole, Job, Key, Label};
use proptest::prelude::*;

use super::*;
use crate::fixture::{any_job, assert_legible, drawers, faces, mm, with_drawn};
use crate::svg;

/// The lines of a page that are level and so long, thin ones, as left end and height, y down.
fn level_lines(page: &Page, long: f64) -> Vec<(f64, f64)> {
    let text = svg(page);
    let tree = roxmltree::Document::parse(&text).unwrap();
    let line = |node: roxmltree::Node| {
        let way = node.attribute("d")?.strip_prefix('M')?;
        let (from, to) = way.split_once('L')?;
        let place = |text: &str| {
            let (x, y) = text.split_once(' ')?;
            Some((x.parse::<f64>().ok()?, y.parse::<f64>().ok()?))
        };
        let (from, to) = (place(from)?, place(to)?);
        let is_thin = node.attribute("stroke-width") == Some("0.18");
        let is_so_long = from.1 == to.1 && (to.0 - from.0 - long).abs() < 1e-6;
        (is_thin && is_so_long).then_some(from)
    };
    tree.descendants().filter_map(line).collect()
}

fn texts(page: &Page) -> Vec<String> {
    let text = svg(page);
    let tree = roxmltree::Document::parse(&text).unwrap();
    let nodes = tree.descendants().filter(|node| node.has_tag_name("text"));
    nodes.map(|node| node.text().unwrap().to_string()).collect()
}

/// Thousandths of a millimetre.
#[expect(
    clippy::cast_possible_truncation,
    reason = "no cabinet is a million kilometres high"
)]
fn thousandths(value: f64) -> i64 {
    (value * 1000.0).round() as i64
}

/// Every height that is bored, column by column, from the layout: faces from the left, then doors.
fn bored(drawn: DrawnCabinet) -> Vec<Vec<i64>> {
    let mut columns: Vec<Vec<i64>> = Vec::new();
    for id in faces(drawn.layout) {
        let holes = drawn.layout.face(id).unwrap().holes(drawn.layout);
        columns.push(holes.iter().map(|hole| thousandths(hole.z.mm())).collect());
    }
    let parts = Parts::of(drawn.cabinet, drawn.layout, drawn.job);
    for (front, place) in parts.fronts.iter().zip(&drawn.layout.fronts) {
        let cups = front.hanging.iter().flat_map(|hanging| &hanging.cups.cups);
        let z = cups.map(|cup| thousandths((place.foot + cup.from_foot.total()).mm()));
        columns.push(z.collect());
    }
    for column in &mut columns {
        column.sort_unstable();
        column.dedup();
    }
    columns.retain(|column| !column.is_empty());
    columns
}

/// The columns of lines at heights, from the left; heights count from the carcass underside at a place of the page.
fn columns_of(lines: impl Iterator<Item = (f64, f64)>, zero: f64) -> Vec<Vec<i64>> {
    let mut columns: Vec<(i64, Vec<i64>)> = Vec::new();
    for (x, y) in lines {
        let x = thousandths(x);
        let z = thousandths(zero - y);
        match columns.iter_mut().find(|(left, _)| *left == x) {
            Some((_, column)) => column.push(z),
            None => columns.push((x, [z].into())),
        }
    }
    columns.sort();
    let sorted = |mut column: Vec<i64>| {
        column.sort_unstable();
        column.dedup();
        column
    };
    columns
        .into_iter()
        .map(|(_, column)| sorted(column))
        .collect()
}

/// Where the carcass underside is on the first sheet of a strip, y down from its head.
fn zero_of(page: &Page, drawn: DrawnCabinet, columns: &[Column]) -> f64 {
    let (from, _) = span(columns);
    let title = drawn.title(columns, "", page.width - 2.0 * MARGIN);
    page.height - (MARGIN + RULE + title.height) + from
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    #[test]
    fn the_long_page_has_every_height_that_is_bored(job in any_job()) {
        with_drawn(&job, |drawn| {
            let page = drawn.stick();
            let zero = zero_of(&page, drawn, &drawn.columns());
            let lines = level_lines(&page, 15.0).into_iter();
            assert_eq!(columns_of(lines, zero), bored(drawn));
            assert_legible(&page);
        });
    }

    #[test]
    fn sheets_laid_on_each_other_by_their_crosses_have_every_height(
        job in any_job(), paper in prop::sample::select(Paper::ALL.to_vec())
    ) {
        with_drawn(&job, |drawn| {
            let mut found = Vec::new();
            let mut strip: Vec<(f64, f64)> = Vec::new();
            let mut seam: Option<f64> = None;
            let columns = drawn.columns();
            let across = across(paper.size().0 - 2.0 * MARGIN);
            let mut strips = columns.chunks(across);
            for page in drawn.stick_sheets(paper) {
                assert_eq!((page.width, page.height), paper.size());
                assert_legible(&page);
                // The lowest crosses are those of the sheet before, when there is one.
                let mut crosses: Vec<f64> = level_lines(&page, 6.0).iter().map(|line| line.1).collect();
                crosses.sort_by(f64::total_cmp);
                crosses.dedup();
                let zero = match seam {
                    Some(height) => crosses.pop().unwrap() + height,
                    None => zero_of(&page, drawn, strips.next().unwrap()),
                };
                strip.extend(level_lines(&page, 15.0).into_iter().map(|(x, y)| (x, zero - y)));
                seam = crosses.pop().map(|cross| zero - cross);
                if seam.is_none() {
                    let lines = strip.drain(..).map(|(x, z)| (x, -z));
                    found.extend(columns_of(lines, 0.0));
                }
            }
            assert_eq!(seam, None);
            assert_eq!(found, bored(drawn));
        });
    }
}

// D2 stands 2 + 12 modules up; its plates on holes 14-15 and 20-21 have their middles at 448 and 640.
#[test]
fn doors_have_their_cups_from_their_own_foot() {
    with_drawn(&drawers(), |drawn| {
        let columns = drawn.columns();
        let names: Vec<&str> = columns.iter().map(|column| &*column.name).collect();
        assert_eq!(
            names,
            ["left side, inside", "right side, inside", "D2, hung left"]
        );
        let door = &columns[2];
        assert_eq!(
            door.marks.iter().map(|mark| mark.z).collect::<Vec<_>>(),
            [448, 640].map(mm)
        );
        let texts = texts(&drawn.stick());
        let height = (mm(448) - door.foot).mm_1().to_string();
        assert!(
            texts.contains(&height) && texts.contains(&"cup".into()),
            "{texts:?}"
        );
    });
}

#[test]
fn a_stick_says_what_it_is_and_how_it_is_put_together() {
    let mut job = drawers();
    job.cabinets[0].name = Label::new("G2 <left>").unwrap();
    with_drawn(&job, |drawn| {
        let sheets = drawn.stick_sheets(Paper::A4);
        assert_eq!(sheets.len(), 4);
        for (at, sheet) in sheets.iter().enumerate() {
            let said = texts(sheet).join(" ");
            for words in [
                "G2 <left>, story stick",
                "glaze store. rev 7 OTTER. True size.",
                &format!("Sheet {} of 4.", at + 1),
                "Overruled: the back row",
                "100 mm.",
            ] {
                assert!(said.contains(words), "no {words}: {said}");
            }
        }
        assert_eq!(drawn.stick_sheets(Paper::A4), sheets);
    });
}

#[test]
fn a_door_with_a_long_name_has_it_above_its_column() {
    let mut job = drawers();
    let name = "W".repeat(Label::MAX_CHARS);
    job.cabinets[0].opening.fronts[1].name = Label::new(&name).unwrap();
    with_drawn(&job, |drawn| {
        assert_legible(&drawn.stick());
        let sheets = drawn.stick_sheets(Paper::A4);
        sheets.iter().for_each(assert_legible);
        let said = texts(&sheets[sheets.len() - 1]).concat();
        assert_eq!(said.matches('W').count(), name.len());
    });
}

// The cabinet is 704 high: a hole 900 above its foot is a stop, and is drawn where it was asked for.
#[test]
fn a_hole_beyond_the_panel_is_on_the_stick() {
    let mut job = drawers();
    let inside = FaceId::inside(Hand::Left);
    job.cabinets[0].free_holes.push(FreeHole {
        key: Key(60),
        face: inside,
        purpose: Label::new("cable").unwrap(),
        edge: Edge::Front,
        setback: mm(100),
        end: End::Foot,
        height: mm(900),
        diameter: mm(8),
        depth: Depth::Through,
    });
    with_drawn(&job, |drawn| {
        let page = drawn.stick();
        assert_legible(&page);
        assert!(texts(&page).contains(&"900.0".into()));
    });
}

#[test]
fn many_sentences_leave_room_for_the_stick() {
    let sentence =
        "Overruled: the back row is 30.0 from the edge, and the shelf rests on it all the same.";
    let remarks = vec![sentence.to_string(); 40];
    with_drawn(&drawers(), |drawn| {
        let drawn = DrawnCabinet {
            remarks: &remarks,
            ..drawn
        };
        let sheets = drawn.stick_sheets(Paper::Letter);
        assert!(sheets.len() < 8, "{} sheets", sheets.len());
        sheets.iter().for_each(assert_legible);
        let said = texts(&sheets[0]).join(" ");
        let printed = said.matches("Overruled:").count();
        assert!(
            said.contains(&format!("And {} more that are overruled", 40 - printed)),
            "{said}"
        );
    });
}

#[test]
fn a_cabinet_that_is_not_bored_has_an_empty_stick() {
    let job = Job::plain(Label::new("glaze store").unwrap());
    with_drawn(&job, |drawn| {
        assert!(texts(&drawn.stick()).contains(&"Nothing of this cabinet is bored.".into()));
        assert_eq!(drawn.stick_sheets(Paper::Letter), []);
    });
}
