//! Papers as pictures: rendered by poppler where it is there, to be looked at, and held against what was drawn.
//!
//! The pictures lie in `pictures`, in the folder for tests of the target folder.

use std::fs;
use std::io::Write as _;
use std::path::{Path, PathBuf};
use std::process::Command;

use gablerow::job_file;
use gablerow::released::Released;
use gablerow_core::job::Job;
use gablerow_papers::kinds::{Format, Kind};
use gablerow_papers::page::{Ink, Mark, Page, Paper, Point};

/// Dots an inch: few enough for a line of 0.25 pt to be a third of a dot wide.
const DOTS: f64 = 100.0;
const MM_OF_INCH: f64 = 25.4;

/// A dot this light or lighter is bare paper to the eye: a grey line of 0.1 mm that falls between two rows of dots comes to 237.
const PAPER: u8 = 245;

/// A rendered sheet: 0 is black, 255 is white, from the upper left corner, line by line.
struct Picture {
    width: usize,
    height: usize,
    dots: Vec<u8>,
}

impl Picture {
    /// Source: the netpbm documentation, "PGM", the raw form: `P5`, width, height, the value of white, one blank, the bytes.
    fn read(bytes: &[u8]) -> Self {
        let mut head = bytes.splitn(4, u8::is_ascii_whitespace);
        let mut word = || std::str::from_utf8(head.next().unwrap()).unwrap();
        assert_eq!(word(), "P5");
        let (width, height) = (word().parse().unwrap(), word().parse().unwrap());
        let dots = head.next().unwrap().strip_prefix(b"255\n").unwrap();
        assert_eq!(dots.len(), width * height);
        Self {
            width,
            height,
            dots: dots.to_vec(),
        }
    }

    /// The darkest dot at a place of the page or beside it.
    fn darkest(&self, page: &Page, at: Point) -> u8 {
        let column = at.x / MM_OF_INCH * DOTS;
        let row = (page.height - at.y) / MM_OF_INCH * DOTS;
        let around = |dots: f64, most: usize| {
            #[expect(
                clippy::cast_possible_truncation,
                clippy::cast_sign_loss,
                reason = "within the page"
            )]
            let at = dots.max(0.0) as usize;
            at.saturating_sub(1)..(at + 2).min(most)
        };
        let rows = around(row, self.height);
        let dots = rows.flat_map(|y| around(column, self.width).map(move |x| (x, y)));
        dots.map(|(x, y)| self.dots[y * self.width + x])
            .min()
            .unwrap()
    }
}

/// Renders a document; `None` where poppler is not there. The pictures of its sheets stay where they can be looked at.
fn rendered(document: &Path) -> Option<Vec<Picture>> {
    let stem = document.with_extension("");
    for look in [["-png", "-cropbox"], ["-gray", "-cropbox"]] {
        let command = Command::new("pdftoppm")
            .args(["-r", &DOTS.to_string()])
            .args(look)
            .args([document, &stem])
            .output();
        let output = command.ok()?;
        let said = String::from_utf8_lossy(&output.stderr);
        assert!(output.status.success() && said.is_empty(), "{said}");
    }
    let name = stem.file_name().unwrap().to_str().unwrap().to_owned();
    let entries = fs::read_dir(document.parent().unwrap()).unwrap();
    let is_sheet = |path: &PathBuf| {
        let other = path.file_name().unwrap().to_str().unwrap();
        other.starts_with(&format!("{name}-")) && other.ends_with(".pgm")
    };
    let paths = entries.map(|entry| entry.unwrap().path());
    let mut sheets: Vec<PathBuf> = paths.filter(is_sheet).collect();
    sheets.sort();
    let picture = |path: PathBuf| {
        let picture = Picture::read(&fs::read(&path).unwrap());
        fs::remove_file(path).unwrap();
        picture
    };
    Some(sheets.into_iter().map(picture).collect())
}

/// Where a mark must leave ink: the middle of each of its lines, and the rim of a ring.
fn inked(mark: &Mark) -> Vec<Point> {
    let is_seen = |ink: &Ink| {
        ink.line
            .is_some_and(|line| line.shade < 0.6 && line.dash.is_none())
    };
    match mark {
        Mark::Path {
            corners,
            is_closed,
            ink,
        } if is_seen(ink) => {
            let mut around = corners.clone();
            around.extend(is_closed.then_some(corners[0]));
            let middle = |ends: &[Point]| Point {
                x: f64::midpoint(ends[0].x, ends[1].x),
                y: f64::midpoint(ends[0].y, ends[1].y),
            };
            around.windows(2).map(middle).collect()
        }
        Mark::Ring {
            centre,
            radius,
            ink,
        } if is_seen(ink) => vec![Point {
            x: centre.x + radius,
            y: centre.y,
        }],
        _ => Vec::new(),
    }
}

fn job(name: &str) -> Job {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../tests/jobs");
    job_file::read(&fs::read(path.join(name)).unwrap()).unwrap()
}

#[test]
fn what_is_drawn_leaves_ink_and_no_hair_line_vanishes() {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join("pictures");
    // Pictures of what is no longer drawn would be looked at too.
    let _ = fs::remove_dir_all(&folder);
    fs::create_dir_all(&folder).unwrap();
    let (mut sheets, mut places) = (0, 0);
    // A tall panel and a narrow one; three bays.
    for name in ["odd_shapes.json", "three_bays.json"] {
        let job = job(name);
        let released = Released::of(&job);
        assert!(released.held_back().is_empty(), "{name}");
        let printer = released.printer(Paper::A4);
        for kind in [Kind::Bench, Kind::Faces, Kind::Stick] {
            for planned in printer.plan(kind, Format::Pdf) {
                let printed = printer.print(&planned).unwrap();
                let document = folder.join(&planned.name);
                fs::write(&document, printed.bytes()).unwrap();
                let Some(pictures) = rendered(&document) else {
                    let words = "the renderer of pictures did not run: pdftoppm of poppler is not installed\n";
                    // Past the capture of the harness: nobody shall take this for a pass.
                    std::io::stderr().write_all(words.as_bytes()).unwrap();
                    return;
                };
                assert_eq!(pictures.len(), printed.pages().len(), "{}", planned.name);
                for (page, picture) in printed.pages().iter().zip(&pictures) {
                    for at in page.marks.iter().flat_map(inked) {
                        let darkest = picture.darkest(page, at);
                        assert!(darkest < PAPER, "{}, {at:?}: {darkest}", planned.name);
                        places += 1;
                    }
                    sheets += 1;
                }
            }
        }
    }
    assert!(
        sheets > 20 && places > 500,
        "{sheets} sheets, {places} places"
    );
}
