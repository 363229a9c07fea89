//! Pictures: W3C SVG.

use super::{Written, replaced, text};
use crate::case::{Case, Mark, Source, around};

static UNITS: Source = Source {
    author: "W3C",
    title: "SVG, units and the view box; CSS, absolute lengths",
    year: "SVG 1.1",
    clause: "96 px an inch, so 1 mm is 3.7795275590551185 px; a view box in mm makes a user unit 1 mm; test coords-units-03",
    mark: Mark::Pages,
};

/// How many px a mm has.
const PX: f64 = 3.779_527_559_055_118_5;

const FAMILY: &str = "SVG";

pub(super) fn cases(written: &Written) -> Vec<Case> {
    let drawing = written.paper("drawing", "svg", "A4");
    let stick = written.paper("stick", "svg", "A4");
    let mut all = vec![];
    for (name, file) in [("drawing", &drawing), ("story stick", &stick)] {
        let picture = Picture::of(text(file));
        let case = |what: &str, printed, found| {
            Case::new(FAMILY, format!("{name}: {what}"), &UNITS, printed, found)
                .within(around(1e-4 * printed, "written to 0.00001 mm"))
        };
        all.push(case("px in a user unit, across", PX, picture.px[0]));
        all.push(case("px in a user unit, down", PX, picture.px[1]));
        all.push(case(
            "px in the rule of 100 mm",
            100.0 * PX,
            picture.rule() * picture.px[0],
        ));
    }
    let picture = Picture::of(text(&drawing));
    let radius = picture.holes[0][2];
    all.push(Case::new(
        FAMILY,
        "radius of a hole of 5, in user units",
        &UNITS,
        2.5,
        radius,
    ));
    all.push(Case::clause(
        FAMILY,
        "y runs down: the foot is lower than the head",
        &UNITS,
        1.0,
        &drawing,
        is_foot_lower,
        |file| {
            let swapped = replaced(file, ">HEAD", ">AWAY");
            replaced(&replaced(&swapped, ">FOOT", ">HEAD"), ">AWAY", ">FOOT")
        },
    ));
    all
}

/// What is read of a picture.
struct Picture {
    /// How many px a user unit is, across and down.
    px: [f64; 2],
    /// The corners of every path, in user units.
    paths: Vec<Vec<[f64; 2]>>,
    /// Circles that are not the dots of letters: x, y, radius.
    holes: Vec<[f64; 3]>,
}

impl Picture {
    fn of(text: &str) -> Self {
        let tree = roxmltree::Document::parse(text).unwrap();
        let root = tree.root_element();
        let view: Vec<f64> = numbers(root.attribute("viewBox").unwrap());
        let px = [("width", view[2]), ("height", view[3])].map(|(side, units)| {
            // As CSS has it: 96 px an inch of 25.4 mm.
            let mm = root.attribute(side).unwrap().strip_suffix("mm").unwrap();
            mm.parse::<f64>().unwrap() * 96.0 / 25.4 / units
        });
        let of = |name: &'static str| {
            tree.descendants()
                .filter(move |node| node.has_tag_name(name))
        };
        let paths = of("path").map(|node| {
            let corners = numbers(node.attribute("d").unwrap());
            corners.chunks(2).map(|at| [at[0], at[1]]).collect()
        });
        let holes = of("circle")
            .map(|node| ["cx", "cy", "r"].map(|side| numbers(node.attribute(side).unwrap())[0]));
        Self {
            px,
            paths: paths.collect(),
            holes: holes.collect(),
        }
    }

    /// How long the rule is that shows the scale.
    fn rule(&self) -> f64 {
        super::rule(&self.paths)
    }
}

/// The numbers in a text, whatever stands between them.
fn numbers(text: &str) -> Vec<f64> {
    let parts = text.split(|sign: char| !(sign.is_ascii_digit() || sign == '.' || sign == '-'));
    parts
        .filter(|part| !part.is_empty())
        .map(|part| part.parse().unwrap())
        .collect()
}

fn is_foot_lower(file: &[u8]) -> f64 {
    let tree = roxmltree::Document::parse(text(file)).unwrap();
    let down = |words: &str| {
        let mut texts = tree.descendants().filter(|node| node.has_tag_name("text"));
        let found = texts.find(|node| node.text().is_some_and(|text| text.starts_with(words)));
        numbers(found.unwrap().attribute("y").unwrap())[0]
    };
    f64::from(u8::from(down("FOOT") > down("HEAD")))
}
