//! A page as SVG: one file a page, sized in mm, so that it is printed true to size. Source: W3C SVG 1.1, 7.

use alloc::format;
use alloc::string::String;

use crate::page::{Ink, Mark, Page, Point, Text, TextEnd};
use crate::typeface::Typeface;

/// What texts are set in; the first of these that is there.
const TYPEFACES: &str = "'DejaVu Sans', 'Liberation Sans', Arial, Helvetica, sans-serif";

/// A page as the text of an SVG file: width and height in mm, one user unit is 1 mm.
///
/// Numbers have five decimals: 0.00001 mm. Where a page counts upward from its foot, SVG counts downward from its head.
#[must_use]
pub fn svg(page: &Page) -> String {
    let (width, height) = (number(page.width), number(page.height));
    let mut out = String::from("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n");
    out.push_str(&format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\" width=\"{width}mm\" height=\"{height}mm\" \
         viewBox=\"0 0 {width} {height}\" font-family=\"{TYPEFACES}\" xml:space=\"preserve\">\n"
    ));
    out.push_str(&format!(
        "<rect width=\"{width}\" height=\"{height}\" fill=\"#ffffff\"/>\n"
    ));
    for mark in &page.marks {
        out.push_str(&element(mark, page.height));
        out.push('\n');
    }
    out.push_str("</svg>\n");
    out
}

fn element(mark: &Mark, height: f64) -> String {
    let place = |point: &Point| (number(point.x), number(height - point.y));
    match mark {
        Mark::Path {
            corners,
            is_closed,
            ink,
        } => {
            let mut way = String::new();
            for corner in corners {
                let (x, y) = place(corner);
                let step = if way.is_empty() { 'M' } else { 'L' };
                way.push_str(&format!("{step}{x} {y}"));
            }
            if *is_closed {
                way.push('Z');
            }
            format!("<path d=\"{way}\"{}/>", drawn(ink))
        }
        Mark::Ring {
            centre,
            radius,
            ink,
        } => {
            let (x, y) = place(centre);
            let radius = number(*radius);
            format!(
                "<circle cx=\"{x}\" cy=\"{y}\" r=\"{radius}\"{}/>",
                drawn(ink)
            )
        }
        Mark::Text(text) => written(text, place(&text.at)),
    }
}

/// The attributes of a line and of what is inside it.
fn drawn(ink: &Ink) -> String {
    let fill = ink.fill.map_or("none".into(), grey);
    let mut out = format!(" fill=\"{fill}\"");
    if let Some(line) = ink.line {
        let (shade, width) = (grey(line.shade), number(line.width));
        out.push_str(&format!(" stroke=\"{shade}\" stroke-width=\"{width}\""));
        if let Some(dash) = line.dash {
            out.push_str(&format!(" stroke-dasharray=\"{}\"", number(dash)));
        }
    }
    out
}

fn written(text: &Text, (x, y): (String, String)) -> String {
    let anchor = match text.end {
        TextEnd::Start => "start",
        TextEnd::Middle => "middle",
        TextEnd::End => "end",
    };
    let weight = if text.is_bold {
        " font-weight=\"bold\""
    } else {
        ""
    };
    let turn = match text.is_upright {
        true => format!(" transform=\"rotate(-90 {x} {y})\""),
        false => String::new(),
    };
    // Another typeface is stretched to the width that the page was laid out with.
    let typeface = Typeface::of(text.is_bold);
    let long = match typeface.printed(&text.words) == text.words {
        true => {
            let width = number(typeface.width(&text.words, text.size));
            format!(" textLength=\"{width}\" lengthAdjust=\"spacingAndGlyphs\"")
        }
        false => String::new(),
    };
    let (size, words) = (number(text.size), escaped(&text.words));
    format!(
        "<text x=\"{x}\" y=\"{y}\" font-size=\"{size}\" text-anchor=\"{anchor}\"{weight}{long}{turn}>{words}</text>"
    )
}

/// A number with at most five decimals.
fn number(value: f64) -> String {
    let text = format!("{value:.5}");
    let text = text.trim_end_matches('0').trim_end_matches('.');
    match text {
        "-0" => "0".into(),
        _ => text.into(),
    }
}

/// A shade of grey; 0 is black, 1 is white.
fn grey(shade: f64) -> String {
    let percent = format!("{:.0}", shade.clamp(0.0, 1.0) * 100.0);
    format!("rgb({percent}%,{percent}%,{percent}%)")
}

/// Text in which nothing can be taken for markup; what XML cannot hold is shown as `U+FFFD`.
fn escaped(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for letter in text.chars() {
        match letter {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            '\u{0}'..='\u{8}'
            | '\u{b}'
            | '\u{c}'
            | '\u{e}'..='\u{1f}'
            | '\u{fffe}'
            | '\u{ffff}' => {
                out.push(char::REPLACEMENT_CHARACTER);
            }
            _ => out.push(letter),
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::page::{Line, Paper};
    use alloc::vec;

    fn page(marks: Vec<Mark>) -> Page {
        Page {
            width: 150.0,
            height: 280.0,
            marks,
        }
    }

    fn text(words: &str, end: TextEnd) -> Mark {
        Mark::Text(Text {
            at: Point { x: 20.0, y: 30.0 },
            end,
            size: 3.0,
            is_bold: true,
            is_upright: true,
            words: words.into(),
        })
    }

    #[test]
    fn a_user_unit_is_a_millimetre() {
        for paper in Paper::ALL {
            let (width, height) = paper.size();
            let page = Page {
                width,
                height,
                marks: vec![],
            };
            let text = svg(&page);
            let tree = roxmltree::Document::parse(&text).unwrap();
            let root = tree.root_element();
            assert_eq!(root.attribute("width"), Some(&*format!("{width}mm")));
            assert_eq!(root.attribute("height"), Some(&*format!("{height}mm")));
            assert_eq!(
                root.attribute("viewBox"),
                Some(&*format!("0 0 {width} {height}"))
            );
        }
    }

    // Five wide is 2.5 from the middle; 280 - 35.2 = 244.8 down.
    #[test]
    fn circles_have_their_true_radius_and_y_runs_down() {
        let line = Line {
            width: 0.25,
            shade: 0.5,
            dash: Some(1.5),
        };
        let ring = Mark::Ring {
            centre: Point { x: 37.0, y: 35.2 },
            radius: 2.5,
            ink: Ink {
                line: Some(line),
                fill: None,
            },
        };
        let expected = "<circle cx=\"37\" cy=\"244.8\" r=\"2.5\" fill=\"none\" stroke=\"rgb(50%,50%,50%)\" \
            stroke-width=\"0.25\" stroke-dasharray=\"1.5\"/>";
        assert!(svg(&page(vec![ring])).contains(expected));
    }

    #[test]
    fn a_path_goes_from_corner_to_corner_and_home_when_closed() {
        let path = |is_closed| Mark::Path {
            corners: [(0.0, 0.0), (10.0, 0.0), (10.0, 0.5)]
                .map(|(x, y)| Point { x, y })
                .into(),
            is_closed,
            ink: Ink {
                line: None,
                fill: Some(0.0),
            },
        };
        let text = svg(&page(vec![path(false), path(true)]));
        assert!(text.contains("<path d=\"M0 280L10 280L10 279.5\" fill=\"rgb(0%,0%,0%)\"/>"));
        assert!(text.contains("<path d=\"M0 280L10 280L10 279.5Z\" "));
    }

    #[test]
    fn names_cannot_be_markup() {
        let name = "<G2> & \"left\"\u{1}  'wide'";
        let ends = [TextEnd::Start, TextEnd::Middle, TextEnd::End];
        let page = page(ends.map(|end| text(name, end)).into());
        let svg = svg(&page);
        let tree = roxmltree::Document::parse(&svg).unwrap();
        let texts = tree.descendants().filter(|node| node.has_tag_name("text"));
        let read: Vec<_> = texts
            .map(|node| (node.text().unwrap(), node.attribute("text-anchor").unwrap()))
            .collect();
        let name = "<G2> & \"left\"\u{fffd}  'wide'";
        assert_eq!(read, [(name, "start"), (name, "middle"), (name, "end")]);
        assert!(svg.contains("transform=\"rotate(-90 20 250)\""));
    }
}
