//! The fronts of a stack: a height is split into front heights.

use alloc::vec;
use alloc::vec::Vec;

use crate::measure::Length;
use crate::sum::Sum;

/// The most fronts of one stack.
pub const FRONTS_MOST: usize = 64;

/// What ratios are rounded to: 0.5 mm.
const RATIO_STEP: Length = Length::from_um(500);

/// The height that fronts share.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Field {
    /// Where the reveal at the foot starts, z.
    pub foot: Length,
    /// Where the reveal at the head ends, z.
    pub head: Length,
    /// From the foot up to the lowest front.
    pub reveal_foot: Length,
    /// From the highest front up to the head.
    pub reveal_head: Length,
    /// Between two fronts.
    pub gap: Length,
}

/// A way to split a field, the lowest front first.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Split<'a> {
    /// So many pitches for each front: it is that high less one gap. What is left goes to the lowest.
    Modules(&'a [u16]),
    /// So many fronts, whole pitches shared evenly, the lowest ones getting one more; what is left goes to the lowest.
    Automatic(u16),
    /// So many fronts of one height, to the count.
    Equal(u16),
    /// Heights in these ratios, rounded to 0.5 mm; the rest goes to the lowest.
    Ratio(&'a [u32]),
    /// Heights as given; those left open share the rest evenly.
    Fixed(&'a [Option<Length>]),
}

/// One front.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Front {
    /// Its lower edge, z.
    pub foot: Sum,
    /// Its height.
    pub height: Sum,
}

/// All fronts of a stack, upward.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Fronts {
    /// The fronts.
    pub fronts: Vec<Front>,
    /// What the lowest front took beyond its share; anything but 0 under modules is a second drilling pattern.
    pub rest: Length,
}

impl Fronts {
    /// The lower edges, z, upward.
    #[must_use]
    pub fn feet(&self) -> Vec<Length> {
        self.fronts.iter().map(|front| front.foot.total()).collect()
    }
}

/// Why a field cannot be split like that.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoFronts {
    /// No fronts, or more than [`FRONTS_MOST`].
    Count(usize),
    /// Nothing is left for a front's height.
    Flat {
        /// Which, the lowest being 0.
        front: usize,
    },
    /// The fronts together do not fill the field.
    Misfit {
        /// How much too high they are; below zero, too low.
        by: Length,
    },
}

/// Splits a field into fronts.
///
/// # Errors
/// - [`NoFronts::Count`] without fronts, or with too many;
/// - [`NoFronts::Flat`] when a front would have no height;
/// - [`NoFronts::Misfit`] when heights or modules are given and do not fill the field.
///
/// # Example
///
/// ```
/// use gablerow_core::measure::Length;
/// use gablerow_core::solve::drawers::{Field, Split, split};
///
/// // 800 - 1.5 - 1.5 + 3 = 800 = 25 * 32: 9, 8 and 8 pitches, less 3 each
/// let [foot, head, gap] = [0, 800, 3].map(Length::from_mm);
/// let reveal = Length::from_um(1_500);
/// let field = Field { foot, head, reveal_foot: reveal, reveal_head: reveal, gap };
/// let fronts = split(&field, Split::Automatic(3)).unwrap();
/// let heights: Vec<Length> = fronts.fronts.iter().map(|front| front.height.total()).collect();
/// assert_eq!(heights, [285, 253, 253].map(Length::from_mm));
/// assert_eq!(fronts.rest, Length::ZERO);
/// ```
pub fn split(field: &Field, split: Split<'_>) -> Result<Fronts, NoFronts> {
    let count = match split {
        Split::Modules(modules) => modules.len(),
        Split::Automatic(count) | Split::Equal(count) => count.into(),
        Split::Ratio(ratio) => ratio.len(),
        Split::Fixed(heights) => heights.len(),
    };
    let gaps = match i32::try_from(count) {
        Ok(gaps @ 1..) if count <= FRONTS_MOST => gaps - 1,
        _ => return Err(NoFronts::Count(count)),
    };
    let whole = field.head - field.foot - field.reveal_foot - field.reveal_head - field.gap * gaps;
    let (heights, rest) = match split {
        Split::Modules(modules) => by_module(field, whole, modules)?,
        Split::Automatic(_) => {
            let pitches = (whole + field.gap * (gaps + 1)).div_floor(Length::PITCH);
            by_module(field, whole, &shared(pitches, count))?
        }
        Split::Equal(_) => by_height(whole, &vec![None; count])?,
        Split::Ratio(ratio) => by_ratio(whole, ratio),
        Split::Fixed(heights) => by_height(whole, heights)?,
    };
    let flat = |height: &Sum| height.total() <= Length::ZERO;
    match heights.iter().position(flat) {
        Some(front) => Err(NoFronts::Flat { front }),
        None => Ok(Fronts {
            fronts: stacked(field, &heights),
            rest,
        }),
    }
}

/// Whole pitches for each front, the lowest ones getting one more.
fn shared(pitches: i32, count: usize) -> Vec<u16> {
    let pitches = usize::try_from(pitches).unwrap_or(0);
    let each = |front: usize| pitches / count + usize::from(front < pitches % count);
    (0..count)
        .map(|front| u16::try_from(each(front)).unwrap_or(u16::MAX))
        .collect()
}

fn by_module(
    field: &Field,
    whole: Length,
    modules: &[u16],
) -> Result<(Vec<Sum>, Length), NoFronts> {
    // No stack is as high as the most pitches a length can have, so a height that leaves the numbers only misfits.
    let pitches: i32 = modules.iter().map(|&module| i32::from(module)).sum();
    let gaps = i32::try_from(modules.len()).unwrap_or(i32::MAX);
    let high = Length::PITCH
        .checked_mul(pitches)
        .unwrap_or(Length::MAX.half());
    let rest = whole + field.gap * gaps - high;
    if rest < Length::ZERO {
        return Err(NoFronts::Misfit { by: -rest });
    }
    let height = |(front, &module): (usize, &u16)| {
        let height = Sum::of("whole pitches", Length::PITCH * i32::from(module));
        let height = height.less("gap", field.gap);
        if front == 0 && module > 0 {
            height.plus("beyond whole pitches", rest)
        } else {
            height
        }
    };
    Ok((modules.iter().enumerate().map(height).collect(), rest))
}

fn by_ratio(whole: Length, ratio: &[u32]) -> (Vec<Sum>, Length) {
    let all: i128 = ratio.iter().map(|&part| i128::from(part)).sum();
    let all = all.max(1);
    let step = i128::from(RATIO_STEP.counts());
    let rounded = |&part: &u32| {
        let exact = i128::from(whole.counts()) * i128::from(part);
        let steps = (2 * exact + all * step).div_euclid(2 * all * step);
        Length::from_counts(i32::try_from(steps * step).unwrap_or(i32::MAX))
    };
    let mut heights: Vec<Sum> = ratio
        .iter()
        .map(|part| Sum::of("share of the height", rounded(part)))
        .collect();
    let rest = whole - heights.iter().map(Sum::total).sum::<Length>();
    if let Some(lowest) = heights.first_mut().filter(|_| ratio[0] > 0) {
        *lowest = lowest.plus("rest of the rounding", rest);
    }
    (heights, rest)
}

fn by_height(whole: Length, heights: &[Option<Length>]) -> Result<(Vec<Sum>, Length), NoFronts> {
    let given: Length = heights.iter().flatten().sum();
    let open = heights.iter().filter(|height| height.is_none()).count();
    let left = whole - given;
    if open == 0 && left != Length::ZERO {
        return Err(NoFronts::Misfit { by: -left });
    }
    // As many as there are fronts, so that they fit.
    let mut shares = left.split(u16::try_from(open).unwrap_or(u16::MAX));
    let height = |height: &Option<Length>| match height {
        Some(height) => Sum::of("height given", *height),
        None => Sum::of("even share", shares.next().unwrap_or_default()),
    };
    Ok((heights.iter().map(height).collect(), Length::ZERO))
}

/// The fronts one above the other.
fn stacked(field: &Field, heights: &[Sum]) -> Vec<Front> {
    let (mut fronts, mut gaps) = (Length::ZERO, Length::ZERO);
    let front = |height: &Sum| {
        let foot = Sum::default()
            .plus("foot of the field", field.foot)
            .plus("reveal at the foot", field.reveal_foot)
            .plus("fronts below", fronts)
            .plus("gaps below", gaps);
        fronts += height.total();
        gaps += field.gap;
        Front {
            foot,
            height: *height,
        }
    };
    heights.iter().map(front).collect()
}
