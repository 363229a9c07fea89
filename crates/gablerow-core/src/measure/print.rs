//! Lengths as text: exact, or marked `~` where they were shortened.

use alloc::string::String;
use core::fmt::{self, Write};

use super::Length;

/// The system lengths are shown in, and the one a bare number is read in.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Unit {
    /// Millimetres.
    #[default]
    Millimetre,
    /// Inches of 25.4 mm.
    Inch,
}

impl Unit {
    /// The other one of the two.
    #[must_use]
    pub const fn other(self) -> Self {
        match self {
            Self::Millimetre => Self::Inch,
            Self::Inch => Self::Millimetre,
        }
    }

    /// The word for several of them: `millimetres` or `inches`.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Millimetre => "millimetres",
            Self::Inch => "inches",
        }
    }

    /// The sign people write: `mm` or `in`.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Millimetre => "mm",
            Self::Inch => "in",
        }
    }

    /// How lengths of it are read: what stands in brackets behind inches, and what `~` is.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Millimetre => "~ is rounded to 0.1.",
            Self::Inch => {
                "In brackets behind a fraction: so many mm more or less than it; ~ is rounded to 0.1 mm."
            }
        }
    }
}

/// A length on its way to text. It is padded like a string: `{:>8}` works.
#[derive(Clone, Copy, Debug)]
pub struct Printed {
    length: Length,
    form: Form,
}

#[derive(Clone, Copy, Debug)]
enum Form {
    ExactMm,
    ExactInch,
    Mm1,
    Inches32,
    Nearest32,
    Both(Unit),
    Bit(Unit),
}

impl Length {
    /// Exact millimetres, as short as they can be: `704`, `704.5`, `0.000125`.
    #[must_use]
    pub const fn exact_mm(self) -> Printed {
        self.printed(Form::ExactMm)
    }

    /// Millimetres to 0.1, halves away from zero: `704.0` when that is exact, `~795.3` when not.
    #[must_use]
    pub const fn mm_1(self) -> Printed {
        self.printed(Form::Mm1)
    }

    /// Inches to the nearest 32nd, then what is left over in mm, with its sign, when there is any.
    ///
    /// What is left over is shortened to 0.1 and marked; less than that marks the inches instead.
    ///
    /// # Example
    ///
    /// ```
    /// use gablerow_core::measure::Length;
    ///
    /// // 31 1/2 in is 800.1 mm; 27 23/32 in is 704.05625 mm
    /// assert_eq!(Length::from_mm(800).inches_32().to_string(), "31 1/2\" (-0.1)");
    /// assert_eq!(Length::from_mm(704).inches_32().to_string(), "27 23/32\" (~-0.1)");
    /// assert_eq!(Length::from_um(25_410).inches_32().to_string(), "~1\"");
    /// ```
    #[must_use]
    pub const fn inches_32(self) -> Printed {
        self.printed(Form::Inches32)
    }

    /// The exact text that [`parse_length`](super::parse_length) reads back to this very length in
    /// the same unit, as it stands in a field for editing.
    ///
    /// Inches are written as a fraction down to 64ths, else as a decimal; a length that neither can
    /// hold is given in mm with its unit: 704 mm is no finite decimal of inches.
    ///
    /// # Example
    ///
    /// ```
    /// use gablerow_core::measure::{Length, Unit};
    ///
    /// assert_eq!(Length::from_um(704_500).exact(Unit::Millimetre).to_string(), "704.5");
    /// assert_eq!(Length::from_inch_64ths(1_774).exact(Unit::Inch).to_string(), "27 23/32\"");
    /// assert_eq!(Length::from_um(7_620).exact(Unit::Inch).to_string(), "0.3\"");
    /// assert_eq!(Length::from_mm(704).exact(Unit::Inch).to_string(), "704mm");
    /// ```
    #[must_use]
    pub const fn exact(self, unit: Unit) -> Printed {
        self.printed(match unit {
            Unit::Millimetre => Form::ExactMm,
            Unit::Inch => Form::ExactInch,
        })
    }

    /// As people read it in this unit: [`mm_1`](Self::mm_1) or [`inches_32`](Self::inches_32).
    #[must_use]
    pub const fn show(self, unit: Unit) -> Printed {
        self.printed(match unit {
            Unit::Millimetre => Form::Mm1,
            Unit::Inch => Form::Inches32,
        })
    }

    /// As people read it where there is little room: [`mm_1`](Self::mm_1), or inches to the nearest 32nd alone, marked `~`
    /// when that is not exact.
    ///
    /// # Example
    ///
    /// ```
    /// use gablerow_core::measure::{Length, Unit};
    ///
    /// assert_eq!(Length::from_mm(704).short(Unit::Inch).to_string(), "~27 23/32\"");
    /// assert_eq!(Length::from_inch_64ths(40).short(Unit::Inch).to_string(), "5/8\"");
    /// ```
    #[must_use]
    pub const fn short(self, unit: Unit) -> Printed {
        self.printed(match unit {
            Unit::Millimetre => Form::Mm1,
            Unit::Inch => Form::Nearest32,
        })
    }

    /// Both systems, this unit first: `800.0 mm = 31 1/2" (-0.1)`.
    #[must_use]
    pub const fn both(self, unit: Unit) -> Printed {
        self.printed(Form::Both(unit))
    }

    /// The diameter of a bit, as the bit is called: in mm where it is a whole number of tenths, in inches where it is one of 64ths.
    /// A bit has its name whatever else is measured in, since one that is near it bores a wrong hole.
    ///
    /// # Example
    ///
    /// ```
    /// use gablerow_core::measure::{Length, Unit};
    ///
    /// assert_eq!(Length::from_mm(5).bit(Unit::Millimetre).to_string(), "5.0");
    /// assert_eq!(Length::from_mm(5).bit(Unit::Inch).to_string(), "5.0 mm");
    /// assert_eq!(Length::from_inch_64ths(16).bit(Unit::Millimetre).to_string(), "1/4\"");
    /// ```
    #[must_use]
    pub const fn bit(self, unit: Unit) -> Printed {
        self.printed(Form::Bit(unit))
    }

    const fn printed(self, form: Form) -> Printed {
        Printed { length: self, form }
    }
}

impl fmt::Display for Printed {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if f.width().is_none() {
            return self.write_to(f);
        }
        let mut text = String::new();
        self.write_to(&mut text)?;
        f.pad(&text)
    }
}

impl fmt::Debug for Length {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} mm", self.exact_mm())
    }
}

impl Printed {
    fn write_to(self, out: &mut dyn Write) -> fmt::Result {
        match self.form {
            Form::ExactMm => write_exact_mm(out, self.length),
            Form::ExactInch => write_exact_inch(out, self.length),
            Form::Mm1 => write_mm_1(out, self.length),
            Form::Inches32 => write_inches_32(out, self.length),
            Form::Nearest32 => write_nearest_32(out, self.length),
            Form::Bit(unit) => write_bit(out, self.length, unit),
            Form::Both(Unit::Millimetre) => {
                write_mm_1(out, self.length)?;
                out.write_str(" mm = ")?;
                write_inches_32(out, self.length)
            }
            Form::Both(Unit::Inch) => {
                write_inches_32(out, self.length)?;
                out.write_str(" = ")?;
                write_mm_1(out, self.length)?;
                out.write_str(" mm")
            }
        }
    }
}

/// Counts in one millimetre, in a tenth of one, in an inch, in a 32nd and in a 64th of one.
const MM: u32 = Length::COUNTS_PER_MM.unsigned_abs();
const TENTH: u32 = MM / 10;
const INCH: u32 = Length::COUNTS_PER_INCH.unsigned_abs();
const INCH_32ND: u32 = INCH / 32;
const INCH_64TH: u32 = INCH / 64;
/// 1600 parts of an inch hold 127 counts each, and 1/1600 is the finite decimal 0.000625.
const INCH_1600TH: u32 = INCH / 1_600;

fn write_sign(out: &mut dyn Write, length: Length) -> fmt::Result {
    out.write_str(if length < Length::ZERO { "-" } else { "" })
}

/// `whole` and so many millionths, without trailing zeros.
fn write_decimal(out: &mut dyn Write, whole: u32, mut millionths: u32) -> fmt::Result {
    write!(out, "{whole}")?;
    if millionths == 0 {
        return Ok(());
    }
    let mut digits = 6;
    while millionths.is_multiple_of(10) {
        millionths /= 10;
        digits -= 1;
    }
    write!(out, ".{millionths:0digits$}")
}

fn write_exact_mm(out: &mut dyn Write, length: Length) -> fmt::Result {
    let counts = length.counts().unsigned_abs();
    write_sign(out, length)?;
    write_decimal(out, counts / MM, counts % MM * (1_000_000 / MM))
}

fn write_exact_inch(out: &mut dyn Write, length: Length) -> fmt::Result {
    let counts = length.counts().unsigned_abs();
    if counts.is_multiple_of(INCH_64TH) {
        write_sign(out, length)?;
        write_fraction(out, counts / INCH_64TH, 64)?;
        out.write_str("\"")
    } else if counts.is_multiple_of(INCH_1600TH) {
        write_sign(out, length)?;
        write_decimal(out, counts / INCH, counts % INCH / INCH_1600TH * 625)?;
        out.write_str("\"")
    } else {
        write_exact_mm(out, length)?;
        out.write_str("mm")
    }
}

/// So many parts, `per_whole` to the whole (a power of two), as a mixed number in lowest terms.
fn write_fraction(out: &mut dyn Write, parts: u32, per_whole: u32) -> fmt::Result {
    let (whole, rest) = (parts / per_whole, parts % per_whole);
    if rest == 0 {
        return write!(out, "{whole}");
    }
    if whole > 0 {
        write!(out, "{whole} ")?;
    }
    let common = 1 << rest.trailing_zeros();
    write!(out, "{}/{}", rest / common, per_whole / common)
}

fn write_mm_1(out: &mut dyn Write, length: Length) -> fmt::Result {
    let (tenths, exact) = tenths(length);
    let mark = if exact { "" } else { "~" };
    let sign = if length < Length::ZERO && tenths > 0 {
        "-"
    } else {
        ""
    };
    write!(out, "{mark}{sign}{}.{}", tenths / 10, tenths % 10)
}

fn write_bit(out: &mut dyn Write, length: Length, unit: Unit) -> fmt::Result {
    let counts = length.counts().unsigned_abs();
    if !counts.is_multiple_of(TENTH) && counts.is_multiple_of(INCH_64TH) {
        return write_exact_inch(out, length);
    }
    write_mm_1(out, length)?;
    out.write_str(match unit {
        Unit::Millimetre => "",
        Unit::Inch => " mm",
    })
}

/// The size of a length in whole tenths of a mm, halves upward, and whether that is exact.
const fn tenths(length: Length) -> (u32, bool) {
    let counts = length.counts().unsigned_abs();
    ((counts + TENTH / 2) / TENTH, counts.is_multiple_of(TENTH))
}

/// The size of a length in whole 32nds of an inch, halves upward, and what is left over, with its sign.
fn nearest_32(length: Length) -> (u32, Length) {
    let counts = length.counts().unsigned_abs();
    let parts = (counts + INCH_32ND / 2) / INCH_32ND;
    let left_over = i64::from(counts) - i64::from(parts) * i64::from(INCH_32ND);
    let sign = if length < Length::ZERO { -1 } else { 1 };
    (parts, Length::from_wide(sign * left_over))
}

fn write_nearest_32(out: &mut dyn Write, length: Length) -> fmt::Result {
    let (parts, left_over) = nearest_32(length);
    if left_over != Length::ZERO {
        out.write_str("~")?;
    }
    if parts > 0 {
        write_sign(out, length)?;
    }
    write_fraction(out, parts, 32)?;
    out.write_str("\"")
}

fn write_inches_32(out: &mut dyn Write, length: Length) -> fmt::Result {
    let (parts, left_over) = nearest_32(length);
    let (tenths, exact) = tenths(left_over);
    let mark = if exact { "" } else { "~" };
    if tenths == 0 {
        out.write_str(mark)?;
    }
    if parts > 0 {
        write_sign(out, length)?;
    }
    write_fraction(out, parts, 32)?;
    out.write_str("\"")?;
    if tenths > 0 {
        let sign = if left_over < Length::ZERO { "-" } else { "+" };
        write!(out, " ({mark}{sign}{}.{})", tenths / 10, tenths % 10)?;
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(printed: Printed, expected: &str) {
        assert_eq!(printed.to_string(), expected);
    }

    #[test]
    fn exact_millimetres_are_as_short_as_they_can_be() {
        check(Length::from_mm(704).exact_mm(), "704");
        check(Length::from_um(704_500).exact_mm(), "704.5");
        check(Length::from_counts(1).exact_mm(), "0.000125");
        check(Length::from_um(-18_050).exact_mm(), "-18.05");
        check(Length::MIN.exact_mm(), "-268435.456");
        check(Length::MAX.exact_mm(), "268435.455875");
        assert_eq!(format!("{:?}", Length::from_um(18_600)), "18.6 mm");
    }

    // Derived: 31 5/16 in = 795.3375 mm.
    #[test]
    fn millimetres_to_a_tenth_are_marked_only_when_shortened() {
        check(Length::from_mm(704).mm_1(), "704.0");
        check(Length::from_inch_64ths(31 * 64 + 20).mm_1(), "~795.3");
        check(Length::from_um(50).mm_1(), "~0.1");
        check(Length::from_um(-50).mm_1(), "~-0.1");
        check(Length::from_um(-49).mm_1(), "~0.0");
        check(Length::from_um(999_950).mm_1(), "~1000.0");
        check(Length::MIN.mm_1(), "~-268435.5");
    }

    #[test]
    fn inches_say_what_is_left_over() {
        check(Length::from_mm(800).inches_32(), "31 1/2\" (-0.1)");
        check(Length::from_mm(704).inches_32(), "27 23/32\" (~-0.1)");
        check(
            Length::from_inch_64ths(27 * 64 + 46).inches_32(),
            "27 23/32\"",
        );
        check(Length::from_inch_64ths(46).inches_32(), "23/32\"");
        check(Length::from_inch_64ths(64).inches_32(), "1\"");
        check(Length::from_inch_64ths(-96).inches_32(), "-1 1/2\"");
        check(Length::from_inch_64ths(1).inches_32(), "1/32\" (~-0.4)");
        check(Length::ZERO.inches_32(), "0\"");
        check(Length::from_um(-100).inches_32(), "0\" (-0.1)");
        check(Length::from_um(-1).inches_32(), "~0\"");
        check(Length::from_um(-25_410).inches_32(), "~-1\"");
    }

    #[test]
    fn both_systems_stand_side_by_side() {
        let length = Length::from_mm(800);
        check(length.both(Unit::Millimetre), "800.0 mm = 31 1/2\" (-0.1)");
        check(length.both(Unit::Inch), "31 1/2\" (-0.1) = 800.0 mm");
        check(length.show(Unit::Millimetre), "800.0");
        check(length.show(Unit::Inch), "31 1/2\" (-0.1)");
    }

    #[test]
    fn printed_lengths_take_padding() {
        let length = Length::from_um(18_600);
        assert_eq!(
            format!("[{:>7}][{:<7}]", length.mm_1(), length.exact_mm()),
            "[   18.6][18.6   ]"
        );
    }
}
