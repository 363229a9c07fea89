//! The typeface of the papers: which letters it has, how wide they are, and what is printed for those it lacks.
//!
//! Just as much of a TrueType file is read as that takes. Source: ISO/IEC 14496-22, tables head, hhea, hmtx, cmap format 4.

use alloc::format;
use alloc::string::String;

/// The letters of one weight, as they are in its file. What a file does not hold reads as 0.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Typeface {
    file: &'static [u8],
    /// Where its tables are: from letters to glyphs, widths, heights of lines, and what holds for all.
    letters: usize,
    widths: usize,
    heights: usize,
    head: usize,
    /// How many glyphs have a width of their own; those after are as wide as the last.
    width_count: u16,
    /// All its numbers count in parts of the size; this many are the size.
    units: u16,
}

impl Typeface {
    /// The regular weight, or the bold one.
    pub(crate) fn of(is_bold: bool) -> Self {
        Self::read(match is_bold {
            true => include_bytes!("../typeface/DejaVuSans-Bold.ttf"),
            false => include_bytes!("../typeface/DejaVuSans.ttf"),
        })
    }

    fn read(file: &'static [u8]) -> Self {
        let table = |tag: &[u8; 4]| {
            let records = (0..u16_at(file, 4)).map(|at| 12 + 16 * usize::from(at));
            let mut ours = records.filter(|&at| file.get(at..at + 4) == Some(tag));
            ours.next().map_or(0, |at| offset_at(file, at + 8))
        };
        let (map, heights, head) = (table(b"cmap"), table(b"hhea"), table(b"head"));
        let encodings = (0..u16_at(file, map + 2)).map(|at| map + 4 + 8 * usize::from(at));
        // Platform 3, encoding 1: Unicode up to U+FFFF.
        let mut unicode =
            encodings.filter(|&at| (u16_at(file, at), u16_at(file, at + 2)) == (3, 1));
        Self {
            file,
            letters: unicode.next().map_or(0, |at| map + offset_at(file, at + 4)),
            widths: table(b"hmtx"),
            heights,
            head,
            width_count: u16_at(file, heights + 34),
            units: u16_at(file, head + 18),
        }
    }

    /// The bytes of its file.
    pub(crate) fn file(&self) -> &'static [u8] {
        self.file
    }

    /// The glyph of a letter; `None` when it lacks it.
    pub(crate) fn glyph(&self, letter: char) -> Option<u16> {
        let letter = u16::try_from(u32::from(letter)).ok()?;
        let u16_at = |at| u16_at(self.file, at);
        // The table: four lists of one number for each run of letters, the first followed by a word of nothing.
        let size = usize::from(u16_at(self.letters + 6));
        let lasts = self.letters + 14;
        let (firsts, deltas, offsets) =
            (lasts + size + 2, lasts + 2 * size + 2, lasts + 3 * size + 2);
        let run = (0..size)
            .step_by(2)
            .find(|run| u16_at(lasts + run) >= letter)?;
        let into = letter.checked_sub(u16_at(firsts + run))?;
        let (delta, offset) = (u16_at(deltas + run), usize::from(u16_at(offsets + run)));
        let glyph = match offset {
            0 => letter.wrapping_add(delta),
            // Counted from the place where the offset itself is.
            _ => match u16_at(offsets + run + offset + 2 * usize::from(into)) {
                0 => 0,
                glyph => glyph.wrapping_add(delta),
            },
        };
        (glyph != 0).then_some(glyph)
    }

    /// How wide a glyph is, in parts of its size.
    pub(crate) fn advance(&self, glyph: u16) -> f64 {
        let at = glyph.min(self.width_count.saturating_sub(1));
        let width = u16_at(self.file, self.widths + 4 * usize::from(at));
        f64::from(width) / f64::from(self.units.max(1))
    }

    /// What no glyph sticks out of: left, low, right and high, in parts of the size from where a letter begins.
    pub(crate) fn bounds(&self) -> [f64; 4] {
        [36, 38, 40, 42].map(|at| self.part(self.head + at))
    }

    /// How far lines of text reach up and down from their foot line, in parts of the size; down is negative.
    pub(crate) fn rise_and_fall(&self) -> [f64; 2] {
        [4, 6].map(|at| self.part(self.heights + at))
    }

    /// A number with a sign, in parts of the size.
    fn part(&self, at: usize) -> f64 {
        let number = u16_at(self.file, at).cast_signed();
        f64::from(number) / f64::from(self.units.max(1))
    }

    /// How wide a text of this size is as printed, in the unit of the size.
    pub(crate) fn width(&self, text: &str, size: f64) -> f64 {
        let units = |letter| match self.glyph(letter) {
            Some(glyph) => self.advance(glyph),
            None => self.width(&stand_in(letter), 1.0),
        };
        text.chars().map(units).sum::<f64>() * size
    }

    /// A text as printed: a letter that is lacking becomes its number in Unicode, `[U+6F22]`, so that none is ever dropped.
    pub(crate) fn printed(&self, text: &str) -> String {
        let mut printed = String::with_capacity(text.len());
        for letter in text.chars() {
            match self.glyph(letter) {
                Some(_) => printed.push(letter),
                None => printed.push_str(&stand_in(letter)),
            }
        }
        printed
    }
}

/// What is printed for a letter that is lacking; all of it is letters that every typeface has.
fn stand_in(letter: char) -> String {
    format!("[U+{:04X}]", u32::from(letter))
}

fn u16_at(file: &[u8], at: usize) -> u16 {
    let bytes = file.get(at..at + 2).and_then(|bytes| bytes.try_into().ok());
    u16::from_be_bytes(bytes.unwrap_or_default())
}

fn offset_at(file: &[u8], at: usize) -> usize {
    let bytes = file.get(at..at + 4).and_then(|bytes| bytes.try_into().ok());
    usize::try_from(u32::from_be_bytes(bytes.unwrap_or_default())).unwrap_or(0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use skrifa::instance::{LocationRef, Size};
    use skrifa::{FontRef, MetadataProvider};

    // An independent reader of the same files.
    #[test]
    fn every_letter_and_width_is_read_as_another_reader_reads_it() {
        for is_bold in [false, true] {
            let ours = Typeface::of(is_bold);
            let theirs = FontRef::new(ours.file()).unwrap();
            let (map, metrics) = (
                theirs.charmap(),
                theirs.glyph_metrics(Size::new(1.0), LocationRef::default()),
            );
            let mut count = 0;
            for letter in (0..=0x1_ffff).filter_map(char::from_u32) {
                let glyph = map.map(letter).map(skrifa::GlyphId::to_u32);
                assert_eq!(ours.glyph(letter).map(u32::from), glyph, "{letter:?}");
                if let Some(glyph) = ours.glyph(letter) {
                    let width = metrics.advance_width(glyph.into()).unwrap();
                    assert!(
                        (ours.advance(glyph) - f64::from(width)).abs() < 1e-6,
                        "{letter:?}"
                    );
                    count += 1;
                }
            }
            assert_eq!(count, 778);
        }
    }

    #[test]
    fn both_weights_have_the_same_letters_each_with_a_glyph_of_its_own() {
        let (regular, bold) = (Typeface::of(false), Typeface::of(true));
        let mut glyphs = alloc::collections::BTreeSet::new();
        for letter in (0..=0xffff).filter_map(char::from_u32) {
            assert_eq!(
                regular.glyph(letter).is_some(),
                bold.glyph(letter).is_some(),
                "{letter:?}"
            );
            if let Some(glyph) = regular.glyph(letter) {
                assert!(glyphs.insert(glyph), "{letter:?}");
            }
        }
    }

    #[test]
    fn files_are_small_and_the_licence_lies_beside_them() {
        let size = [false, true].map(|is_bold| Typeface::of(is_bold).file().len());
        assert!(size.iter().sum::<usize>() <= 150_000, "{size:?}");
        assert!(
            include_str!("../typeface/LICENSE")
                .contains("Permission is hereby granted, free of charge")
        );
    }

    // Of 2048 units a 0 has 1303, so has every digit: columns of numbers stand in line.
    #[test]
    fn digits_are_equally_wide() {
        let face = Typeface::of(false);
        for digit in '0'..='9' {
            let mut text = String::new();
            text.push(digit);
            assert!((face.width(&text, 2048.0) - 1303.0).abs() < 1e-9, "{digit}");
        }
        assert!((face.width("704.0", 2048.0) - 4.0 * 1303.0 - 651.0).abs() < 1e-9);
    }

    #[test]
    fn letters_that_are_lacking_are_shown_by_number() {
        let face = Typeface::of(false);
        let kept = "Größe ½\" Ж ⌀5 → ½ Łódź Ελλάδα tủ";
        assert_eq!(face.printed(kept), kept);
        assert_eq!(face.printed("漢 🦊\u{7}"), "[U+6F22] [U+1F98A][U+0007]");
        assert!(face.width("漢", 3.0) > face.width("[U+]", 3.0));
    }
}
