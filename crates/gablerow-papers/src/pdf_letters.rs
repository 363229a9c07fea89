//! The letters a document uses, of one weight, as a font inside it: each can be searched for and copied.

use alloc::vec::Vec;

use miniz_oxide::deflate::compress_to_vec_zlib;
use pdf_writer::types::{CidFontType, FontFlags, SystemInfo, UnicodeCmap};
use pdf_writer::{Filter, Finish, Name, Pdf, Rect, Ref, Str};
use subsetter::GlyphRemapper;

use crate::pdf::{PRESSED, small};
use crate::typeface::Typeface;

/// How many objects a font takes.
pub(crate) const REFS: i32 = 5;

/// In what PDF counts the measures of a font: thousandths of its size.
const PER_SIZE: f64 = 1000.0;

/// The height of capitals, in thousandths of the size: 1493 of 2048 units in both weights.
const CAPITALS: f32 = 729.0;

const SYSTEM: SystemInfo = SystemInfo {
    registry: Str(b"Adobe"),
    ordering: Str(b"Identity"),
    supplement: 0,
};

/// The letters used so far. A letter is known in the document by its place in the order of first use, from 1.
pub(crate) struct Letters {
    face: Typeface,
    is_bold: bool,
    places: GlyphRemapper,
    used: Vec<char>,
}

impl Letters {
    /// None yet.
    pub(crate) fn new(is_bold: bool) -> Self {
        Self {
            face: Typeface::of(is_bold),
            is_bold,
            places: GlyphRemapper::new(),
            used: Vec::new(),
        }
    }

    /// A text as the document holds it: two bytes a letter.
    pub(crate) fn encode(&mut self, text: &str) -> Vec<u8> {
        let mut bytes = Vec::new();
        for letter in self.face.printed(text).chars() {
            let Some(glyph) = self.face.glyph(letter) else {
                continue;
            };
            let place = self.places.remap(glyph);
            if usize::from(place) > self.used.len() {
                self.used.push(letter);
            }
            bytes.extend(place.to_be_bytes());
        }
        bytes
    }

    /// Writes the font into objects `at` to `at + REFS - 1`; the first is the font itself.
    pub(crate) fn write(&self, pdf: &mut Pdf, at: i32) {
        let [font, glyphs, measures, file, unicode] =
            [0, 1, 2, 3, 4].map(|next| Ref::new(at + next));
        // A font that is cut down has six capitals before its name.
        let name = Name(match self.is_bold {
            true => b"GABLER+DejaVuSans-Bold",
            false => b"GABLER+DejaVuSans",
        });
        pdf.type0_font(font)
            .base_font(name)
            .encoding_predefined(Name(b"Identity-H"))
            .descendant_font(glyphs)
            .to_unicode(unicode);
        let mut cid = pdf.cid_font(glyphs);
        cid.subtype(CidFontType::Type2)
            .base_font(name)
            .system_info(SYSTEM)
            .font_descriptor(measures)
            .default_width(0.0)
            .cid_to_gid_map_predefined(Name(b"Identity"));
        let glyph = |letter: &char| self.face.glyph(*letter);
        let widths = self.used.iter().filter_map(glyph);
        let widths = widths.map(|glyph| small(self.face.advance(glyph) * PER_SIZE));
        cid.widths().consecutive(1, widths);
        cid.finish();
        let [left, low, right, high] = self.face.bounds().map(|bound| small(bound * PER_SIZE));
        let [rise, fall] = self.face.rise_and_fall().map(|of| small(of * PER_SIZE));
        pdf.font_descriptor(measures)
            .name(name)
            .flags(FontFlags::NON_SYMBOLIC)
            .bbox(Rect::new(left, low, right, high))
            .italic_angle(0.0)
            .ascent(rise)
            .descent(fall)
            .cap_height(CAPITALS)
            .stem_v(if self.is_bold { 140.0 } else { 80.0 })
            .font_file2(file);
        self.write_file(pdf, file);
        let mut letters = UnicodeCmap::new(Name(b"Letters"), SYSTEM);
        for (place, letter) in (1_u16..).zip(&self.used) {
            letters.pair(place, *letter);
        }
        pdf.stream(unicode, letters.finish().as_slice());
    }

    /// Writes the file of the typeface, cut down to what is used; whole, should that fail.
    fn write_file(&self, pdf: &mut Pdf, at: Ref) {
        let whole = self.face.file();
        let cut = subsetter::subset(whole, 0, &self.places);
        let cut = cut.as_deref().unwrap_or(whole);
        let pressed = compress_to_vec_zlib(cut, PRESSED);
        let mut stream = pdf.stream(at, &pressed);
        stream.filter(Filter::FlateDecode);
        stream.pair(
            Name(b"Length1"),
            i32::try_from(cut.len()).unwrap_or(i32::MAX),
        );
    }
}
