//! A frame as a picture: SVG, for looking at a screen without a terminal.

use std::fmt::{self, Write};

use ratatui::buffer::{Buffer, Cell};
use ratatui::style::{Color, Modifier};
use unicode_width::UnicodeWidthStr;

use crate::theme::rgb_of_index;

/// Width and height of a cell, in pixels: whole, so that no seams show between cells.
const CELL: (u32, u32) = (9, 18);
/// Size of the letters, in pixels. A monospaced letter is 0.6 as wide as its size: 9 pixels here.
const LETTERS: u32 = 15;
/// From the top of a cell down to the line the letters stand on, in pixels.
const BASELINE: u32 = 14;

/// The sixteen named colours, in the order of their numbers, as this picture shows them.
const NAMED: [u32; 16] = [
    0x1d1f21, 0xcc6666, 0x8abe4f, 0xe0b040, 0x5f9fd7, 0xb294bb, 0x59b8b0, 0xc5c8c6, 0x7c7f83,
    0xff7b7b, 0xb5e07a, 0xffd75f, 0x81c2ff, 0xd7afe0, 0x8be0d8, 0xffffff,
];
/// What a terminal of this picture writes with, where a cell does not say.
const COLOUR: u32 = 0xd8dadb;
/// What it writes on.
const GROUND: u32 = 0x16181a;

/// A frame as the text of an SVG picture, 9 x 18 pixels a cell, the top left cell at the origin.
///
/// Shows colours, bold, italic, dim, underlined and reversed. Blocks and braille are drawn as
/// shapes, because fonts leave seams between them or lack them.
#[must_use]
pub fn buffer_to_svg(buffer: &Buffer) -> String {
    let mut svg = String::new();
    // Writing into a String cannot fail.
    let _ = write_svg(&mut svg, buffer);
    svg
}

fn write_svg(svg: &mut String, buffer: &Buffer) -> fmt::Result {
    let (width, height) = (
        u32::from(buffer.area.width) * CELL.0,
        u32::from(buffer.area.height) * CELL.1,
    );
    writeln!(
        svg,
        "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{width}\" height=\"{height}\" \
         viewBox=\"0 0 {width} {height}\" font-family=\"DejaVu Sans Mono, monospace\" font-size=\"{LETTERS}\">\n\
         <rect width=\"{width}\" height=\"{height}\" fill=\"{}\"/>",
        Hex(GROUND)
    )?;
    let columns = usize::from(buffer.area.width).max(1);
    for (row, cells) in (0..).zip(buffer.content.chunks(columns)) {
        let y = row * CELL.1;
        write_grounds(svg, cells, y)?;
        write_symbols(svg, cells, y)?;
    }
    writeln!(svg, "</svg>")
}

/// The grounds of one row: one rectangle for each run of equal ground.
fn write_grounds(svg: &mut String, cells: &[Cell], y: u32) -> fmt::Result {
    let mut x = 0;
    for run in cells.chunk_by(|left, right| colours(left).1 == colours(right).1) {
        let width = run.iter().map(|_| CELL.0).sum();
        let ground = run.first().map_or(GROUND, |cell| colours(cell).1);
        if ground != GROUND {
            Rectangle {
                x,
                y,
                width,
                height: CELL.1,
            }
            .write(svg, ground)?;
        }
        x += width;
    }
    Ok(())
}

/// What stands in one row.
fn write_symbols(svg: &mut String, cells: &[Cell], y: u32) -> fmt::Result {
    let mut covered = 0;
    for (x, cell) in (0..).step_by(CELL.0 as usize).zip(cells) {
        if covered > 0 {
            covered -= 1;
            continue;
        }
        covered = cell.symbol().width().saturating_sub(1);
        let colour = colours(cell).0;
        if cell.modifier.contains(Modifier::UNDERLINED) {
            Rectangle {
                x,
                y: y + BASELINE + 2,
                width: CELL.0,
                height: 1,
            }
            .write(svg, colour)?;
        }
        let hidden = cell.symbol() == " " || cell.modifier.contains(Modifier::HIDDEN);
        if !hidden && !write_shape(svg, cell.symbol(), x, y, colour)? {
            write_letter(svg, cell, x, y, colour)?;
        }
    }
    Ok(())
}

/// A symbol as the font draws it.
fn write_letter(svg: &mut String, cell: &Cell, x: u32, y: u32, colour: u32) -> fmt::Result {
    write!(
        svg,
        "<text x=\"{x}\" y=\"{}\" fill=\"{}\"",
        y + BASELINE,
        Hex(colour)
    )?;
    for (modifier, attribute) in [
        (Modifier::BOLD, " font-weight=\"bold\""),
        (Modifier::ITALIC, " font-style=\"italic\""),
        (Modifier::DIM, " opacity=\"0.6\""),
    ] {
        if cell.modifier.contains(modifier) {
            svg.push_str(attribute);
        }
    }
    let text = cell
        .symbol()
        .replace('&', "&amp;")
        .replace('<', "&lt;")
        .replace('>', "&gt;");
    writeln!(svg, ">{text}</text>")
}

/// A block or braille character as shapes; `false` where the symbol is neither.
fn write_shape(
    svg: &mut String,
    symbol: &str,
    x: u32,
    y: u32,
    colour: u32,
) -> Result<bool, fmt::Error> {
    let mut symbol = symbol.chars();
    let (Some(c), None) = (symbol.next(), symbol.next()) else {
        return Ok(false);
    };
    // Left, top, width and height, in eighths of the cell.
    let block = match c {
        '█' => (0, 0, 8, 8),
        '▀' => (0, 0, 8, 4),
        '▌' => (0, 0, 4, 8),
        '▐' => (4, 0, 4, 8),
        '▁'..='▇' => {
            let eighths = u32::from(c) - u32::from('▁') + 1;
            (0, 8 - eighths, 8, eighths)
        }
        '\u{2801}'..='\u{28ff}' => {
            write_braille(svg, u32::from(c) - 0x2800, x, y, colour)?;
            return Ok(true);
        }
        _ => return Ok(false),
    };
    // From edge to edge, so that rounding leaves no gap between blocks of neighbouring heights.
    let across = |eighths: u32| eighths * CELL.0 / 8;
    let down = |eighths: u32| eighths * CELL.1 / 8;
    Rectangle {
        x: x + across(block.0),
        y: y + down(block.1),
        width: across(block.0 + block.2) - across(block.0),
        height: down(block.1 + block.3) - down(block.1),
    }
    .write(svg, colour)?;
    Ok(true)
}

/// The dots of a braille character; bit `n` of `dots` is the dot numbered `n + 1`.
fn write_braille(svg: &mut String, dots: u32, x: u32, y: u32, colour: u32) -> fmt::Result {
    // Column and row of each dot in its number's order: six of the old cell, then the two below.
    const PLACES: [(u32, u32); 8] = [
        (0, 0),
        (0, 1),
        (0, 2),
        (1, 0),
        (1, 1),
        (1, 2),
        (0, 3),
        (1, 3),
    ];
    for (bit, (column, row)) in PLACES.into_iter().enumerate() {
        if dots >> bit & 1 == 1 {
            let (x, y) = (x + column * 4 + 1, y + row * 4 + 2);
            Rectangle {
                x,
                y,
                width: 2,
                height: 2,
            }
            .write(svg, colour)?;
        }
    }
    Ok(())
}

/// The colours a cell shows, of its symbol and its ground, as 0xRRGGBB.
fn colours(cell: &Cell) -> (u32, u32) {
    let (colour, ground) = (
        rgb(cell.fg).unwrap_or(COLOUR),
        rgb(cell.bg).unwrap_or(GROUND),
    );
    if cell.modifier.contains(Modifier::REVERSED) {
        (ground, colour)
    } else {
        (colour, ground)
    }
}

/// A colour as 0xRRGGBB; `None` for the terminal's own.
fn rgb(colour: Color) -> Option<u32> {
    let packed = |red, green, blue| u32::from_be_bytes([0, red, green, blue]);
    let named = |number: usize| NAMED.get(number).copied();
    match colour {
        Color::Reset => None,
        Color::Black => named(0),
        Color::Red => named(1),
        Color::Green => named(2),
        Color::Yellow => named(3),
        Color::Blue => named(4),
        Color::Magenta => named(5),
        Color::Cyan => named(6),
        Color::Gray => named(7),
        Color::DarkGray => named(8),
        Color::LightRed => named(9),
        Color::LightGreen => named(10),
        Color::LightYellow => named(11),
        Color::LightBlue => named(12),
        Color::LightMagenta => named(13),
        Color::LightCyan => named(14),
        Color::White => named(15),
        Color::Rgb(red, green, blue) => Some(packed(red, green, blue)),
        Color::Indexed(index) => match rgb_of_index(index) {
            Some((red, green, blue)) => Some(packed(red, green, blue)),
            None => named(usize::from(index)),
        },
    }
}

/// A colour as SVG writes it: `#RRGGBB`.
struct Hex(u32);

impl fmt::Display for Hex {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "#{:06x}", self.0)
    }
}

/// A rectangle, in pixels from the top left of the picture.
struct Rectangle {
    x: u32,
    y: u32,
    width: u32,
    height: u32,
}

impl Rectangle {
    fn write(&self, svg: &mut String, colour: u32) -> fmt::Result {
        let Self {
            x,
            y,
            width,
            height,
        } = self;
        writeln!(
            svg,
            "<rect x=\"{x}\" y=\"{y}\" width=\"{width}\" height=\"{height}\" fill=\"{}\"/>",
            Hex(colour)
        )
    }
}

#[cfg(test)]
mod tests {
    use ratatui::style::Style;

    use super::*;

    /// The elements of a picture of one line, without the frame around them.
    fn elements(line: &str, style: Style) -> Vec<String> {
        let mut buffer = Buffer::with_lines([line]);
        buffer.set_style(buffer.area, style);
        let svg = buffer_to_svg(&buffer);
        let lines: Vec<String> = svg.lines().map(str::to_owned).collect();
        assert_eq!(lines.last().map(String::as_str), Some("</svg>"));
        lines[2..lines.len() - 1].to_vec()
    }

    #[test]
    fn a_picture_is_as_large_as_its_cells() {
        let svg = buffer_to_svg(&Buffer::with_lines(["side", "left"]));
        assert!(
            svg.contains("width=\"36\" height=\"36\" viewBox=\"0 0 36 36\""),
            "{svg}"
        );
        assert!(buffer_to_svg(&Buffer::default()).contains("width=\"0\" height=\"0\""));
    }

    #[test]
    fn letters_stand_in_their_cells_and_spaces_take_none() {
        let found = elements("a <", Style::new());
        assert_eq!(
            found,
            [
                "<text x=\"0\" y=\"14\" fill=\"#d8dadb\">a</text>",
                "<text x=\"18\" y=\"14\" fill=\"#d8dadb\">&lt;</text>",
            ]
        );
    }

    #[test]
    fn a_wide_letter_covers_the_cell_beside_it() {
        assert_eq!(elements("漢", Style::new()).len(), 1);
    }

    #[test]
    fn equal_grounds_are_one_rectangle() {
        let found = elements("ab", Style::new().bg(Color::Rgb(1, 2, 3)));
        assert_eq!(
            found[0],
            "<rect x=\"0\" y=\"0\" width=\"18\" height=\"18\" fill=\"#010203\"/>"
        );
        assert_eq!(found.len(), 3);
    }

    #[test]
    fn modifiers_are_shown() {
        let letter = |modifier| elements("a", Style::new().add_modifier(modifier)).join("");
        assert!(letter(Modifier::BOLD).contains("font-weight=\"bold\""));
        assert!(letter(Modifier::ITALIC).contains("font-style=\"italic\""));
        assert!(letter(Modifier::DIM).contains("opacity"));
        assert!(
            letter(Modifier::UNDERLINED)
                .contains("<rect x=\"0\" y=\"16\" width=\"9\" height=\"1\"")
        );
        let reversed = letter(Modifier::REVERSED);
        assert!(
            reversed.contains("fill=\"#d8dadb\"/>") && reversed.contains("fill=\"#16181a\">a"),
            "{reversed}"
        );
        assert_eq!(letter(Modifier::HIDDEN), "");
    }

    #[test]
    fn blocks_fill_their_part_of_the_cell_without_gaps() {
        let block = |symbol: &str| elements(symbol, Style::new()).join("");
        assert_eq!(
            block("█"),
            "<rect x=\"0\" y=\"0\" width=\"9\" height=\"18\" fill=\"#d8dadb\"/>"
        );
        assert_eq!(
            block("▀"),
            "<rect x=\"0\" y=\"0\" width=\"9\" height=\"9\" fill=\"#d8dadb\"/>"
        );
        assert_eq!(
            block("▄"),
            "<rect x=\"0\" y=\"9\" width=\"9\" height=\"9\" fill=\"#d8dadb\"/>"
        );
        assert_eq!(
            block("▌"),
            "<rect x=\"0\" y=\"0\" width=\"4\" height=\"18\" fill=\"#d8dadb\"/>"
        );
        assert_eq!(
            block("▐"),
            "<rect x=\"4\" y=\"0\" width=\"5\" height=\"18\" fill=\"#d8dadb\"/>"
        );
        // Dots 1, 2 and 8.
        assert_eq!(elements("⢃", Style::new()).len(), 3);
    }

    #[test]
    fn every_colour_has_its_number() {
        assert_eq!(rgb(Color::Indexed(1)), rgb(Color::Red));
        assert_eq!(rgb(Color::Indexed(15)), rgb(Color::White));
        assert_eq!(rgb(Color::Indexed(110)), Some(0x87afd7));
        assert_eq!(rgb(Color::Reset), None);
    }
}
