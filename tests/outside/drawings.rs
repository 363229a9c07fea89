//! Drawings, read by libraries of Python where they are there.

use std::fs;
use std::path::{Path, PathBuf};

use gablerow::job_file;
use gablerow_core::drawing::FaceDrawing;
use gablerow_core::job::{FaceId, Hand, Job};
use gablerow_core::layout::Layout;
use gablerow_papers::page::Paper;
use gablerow_papers::{DrawnCabinet, DrawnFace, FaceSize, dxf, pdf};

use crate::python;

const JUDGE: &str = "the readers of drawings of Python";

const SCRIPT: &str = include_str!("drawings.py");

/// How far a reader may be off, in mm.
const CLOSE: f64 = 0.001;

/// Three bays with doors, drawers and all hardware.
fn three_bays() -> Job {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../tests/jobs/three_bays.json");
    job_file::read(&fs::read(path).unwrap()).unwrap()
}

/// A face on its way to the readers: its drawing, and its two files.
struct Files {
    drawing: FaceDrawing,
    dxf: PathBuf,
    pdf: PathBuf,
}

/// Every face of the first cabinet, written into a folder.
fn write(job: &Job, folder: &Path) -> Vec<Files> {
    let cabinet = &job.cabinets[0];
    let layout = Layout::of(cabinet, job);
    let of = DrawnCabinet {
        job,
        cabinet,
        layout: &layout,
        copies: "",
        stamp: "rev 7 OTTER",
        remarks: &[],
    };
    let uprights = layout.uprights.iter();
    let ids = uprights.flat_map(|upright| {
        [Hand::Left, Hand::Right].map(|toward| FaceId {
            panel: upright.id,
            toward,
        })
    });
    let mut files = Vec::new();
    for (at, id) in ids.enumerate() {
        let drawing = FaceDrawing::of(&layout, id, &[]).unwrap();
        let face = DrawnFace {
            of,
            drawing: &drawing,
            bed: None,
        };
        let name = |ending: &str| folder.join(format!("{at}.{ending}"));
        let page = face.page(FaceSize::Paper(Paper::A4));
        let (dxf_path, pdf_path) = (name("dxf"), name("pdf"));
        fs::write(&dxf_path, dxf(&face)).unwrap();
        fs::write(&pdf_path, pdf(&[page], "a face")).unwrap();
        files.push(Files {
            drawing,
            dxf: dxf_path,
            pdf: pdf_path,
        });
    }
    files
}

/// What the script reads in each file, line by line, field by field; `None` where there is no Python with the libraries.
fn read(paths: &[&PathBuf]) -> Option<Vec<Vec<Vec<String>>>> {
    let said = python::run(JUDGE, SCRIPT, paths)?;
    assert_eq!(said.complaints, "");
    let mut files = Vec::new();
    for line in said.text.lines() {
        let fields: Vec<String> = line.split('\t').map(Into::into).collect();
        match fields[0].as_str() {
            "file" => files.push(Vec::new()),
            _ => files.last_mut().unwrap().push(fields),
        }
    }
    Some(files)
}

fn numbers(fields: &[String]) -> Vec<f64> {
    fields.iter().map(|field| field.parse().unwrap()).collect()
}

fn assert_close(found: &[f64], expected: &[f64]) {
    let is_close = |(a, b): (&f64, &f64)| (a - b).abs() <= CLOSE;
    assert_eq!(found.len(), expected.len());
    assert!(
        found.iter().zip(expected).all(is_close),
        "{found:?}, {expected:?}"
    );
}

/// How far right something is as the face is seen with its foot down.
fn across(drawing: &FaceDrawing, from_front: f64) -> f64 {
    match drawing.face.toward {
        Hand::Right => from_front,
        Hand::Left => drawing.depth.mm() - from_front,
    }
}

fn hold_dxf(drawing: &FaceDrawing, lines: &[Vec<String>]) {
    let of = |kind: &'static str| lines.iter().filter(move |line| line[0] == kind);
    let audit = of("audit").next().unwrap();
    assert_eq!(audit[1..], ["AC1009", "0", "0"]);
    assert_eq!(of("circle").count(), drawing.dots.len());
    for (circle, dot) in of("circle").zip(&drawing.dots) {
        let place = [across(drawing, dot.x.mm()), dot.y.mm()];
        let radius = dot.hole.diameter.mm() / 2.0;
        assert_close(&numbers(&circle[2..]), &[place[0], place[1], radius]);
        let only_use = dot.hole.only_use().map_or("shared", |use_| use_.word());
        assert!(
            circle[1].starts_with(&only_use.to_uppercase()),
            "{circle:?}"
        );
    }
    let outline: Vec<&Vec<String>> = of("outline").collect();
    assert_eq!(outline.len(), 1);
    assert_eq!(outline[0][1], "True");
    let corners = drawing.outline.iter();
    let corners: Vec<f64> = corners
        .flat_map(|(x, y)| [across(drawing, x.mm()), y.mm()])
        .collect();
    assert_close(&numbers(&outline[0][2..]), &corners);
    assert_eq!(of("text").next().unwrap()[1], "UNIT: MILLIMETRES");
}

fn hold_pdf(drawing: &FaceDrawing, lines: &[Vec<String>]) {
    let of = |kind: &'static str| lines.iter().filter(move |line| line[0] == kind);
    let pages: Vec<&Vec<String>> = of("page").collect();
    assert_eq!(pages.len(), 1);
    // A4 in points of 1/72 in. Source: ISO 216, ISO 32000-1:2008, 8.3.2.
    assert_close(&numbers(&pages[0][1..]), &[595.275_590_6, 841.889_763_8]);
    let words = &of("words").next().unwrap()[1];
    let name = drawing.name.to_string();
    for said in [&*name, "FRONT toward you", "HEAD", "FOOT", "100 mm."] {
        assert!(words.contains(said), "no {said}: {words}");
    }
}

#[test]
fn libraries_of_python_read_the_drawings_where_they_are_there() {
    let folder = tempfile::tempdir().unwrap();
    let files = write(&three_bays(), folder.path());
    let paths: Vec<&PathBuf> = files
        .iter()
        .flat_map(|file| [&file.dxf, &file.pdf])
        .collect();
    let Some(found) = read(&paths) else {
        return;
    };
    assert_eq!(found.len(), paths.len());
    for (files, found) in files.iter().zip(found.chunks(2)) {
        hold_dxf(&files.drawing, &found[0]);
        hold_pdf(&files.drawing, &found[1]);
    }
    python::agrees(JUDGE);
}
