//! What pieces take of each board, and of its band: an estimate before anybody has laid out a sheet.

use alloc::collections::BTreeMap;
use alloc::vec::Vec;

use super::{Parts, Piece};
use crate::cards::CardId;
use crate::measure::Length;
use crate::sum::Sum;

/// What every banded edge takes beyond its length, for both ends to be cut flush: a house default.
pub const BAND_OVER: Length = Length::from_mm(60);

/// How many hundredths more band is taken along: a house default.
pub const BAND_MORE: u64 = 10;

/// How many hundredths more board is taken, for kerfs, trimmed edges and what is left over: a house default.
pub const BOARD_MORE: u64 = 20;

/// What the pieces of one board take.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct BoardNeed {
    /// The board; `None` for backs and bottoms of boxes, whose board no card names.
    pub board: Option<CardId>,
    /// How many pieces are cut.
    pub pieces: u32,
    /// How much of it they are as cut, in mm2, rounded down.
    pub area: u64,
    /// How much of it to take: a fifth more, rounded up.
    pub area_take: u64,
    /// How long their banded edges are together, in mm, rounded down.
    pub band: u64,
    /// How much band to take, in mm: 60 more for each edge, then a tenth more, rounded up.
    pub band_take: u64,
}

/// What has been counted of one board, in eighths of a micrometre and their squares.
#[derive(Default)]
struct Count {
    pieces: u32,
    area: u128,
    edges: u64,
    band: u64,
}

impl Count {
    fn add(&mut self, pieces: u32, [length, width]: [Length; 2]) {
        self.pieces += pieces;
        self.area += u128::from(counts(length)) * u128::from(counts(width)) * u128::from(pieces);
    }

    fn need(self, board: Option<CardId>) -> BoardNeed {
        let mm = counts(Length::from_mm(1));
        let area = self.area / u128::from(mm * mm);
        let area = u64::try_from(area).unwrap_or(u64::MAX);
        let over = self.edges * counts(BAND_OVER);
        BoardNeed {
            board,
            pieces: self.pieces,
            area,
            area_take: more(area, BOARD_MORE),
            band: self.band / mm,
            band_take: more((self.band + over).div_ceil(mm), BAND_MORE),
        }
    }
}

/// What cabinets take of each board, by its card, and last of what no card names. Counted for all that is built of them.
///
/// A piece is counted as it is cut, a banded edge as it is finished.
pub fn board_needs<'a>(cabinets: impl IntoIterator<Item = &'a Parts>) -> Vec<BoardNeed> {
    let mut boards: BTreeMap<&CardId, Count> = BTreeMap::new();
    let mut unnamed = Count::default();
    for parts in cabinets {
        let built = parts.built.total();
        let boxes = parts
            .boxes
            .iter()
            .flat_map(|made| [(2, &made.side), (2, &made.end)]);
        let pieces = (parts.panels.iter().map(|panel| &panel.piece))
            .chain(parts.fronts.iter().map(|front| &front.piece))
            .chain(parts.shelves.iter().map(|shelf| &shelf.piece))
            .map(|piece| (1, piece))
            .chain(boxes);
        for (each, piece) in pieces {
            let (count, number) = (boards.entry(&piece.board).or_default(), each * built);
            count.add(
                number,
                [piece.cut_length, piece.cut_width].map(|it| it.total()),
            );
            let (edges, band) = banded(piece);
            count.edges += u64::from(number) * edges;
            count.band += u64::from(number) * band;
        }
        if let Some(back) = &parts.back {
            unnamed.add(built, [back.height.total(), back.width.total()]);
        }
        for made in &parts.boxes {
            unnamed.add(built, made.bottom.map(|it| it.total()));
        }
    }
    let mut needs: Vec<BoardNeed> = boards
        .into_iter()
        .map(|(board, count)| count.need(Some(board.clone())))
        .collect();
    if unnamed.pieces > 0 {
        needs.push(unnamed.need(None));
    }
    needs
}

/// How many banded edges a piece has, and how long they are together.
fn banded(piece: &Piece) -> (u64, u64) {
    let [over_length, over_width] = piece.banded.across();
    // An edge that takes from the length runs along the width.
    let runs = [(over_width, piece.length), (over_length, piece.width)];
    let run = |(edges, along): (i32, Sum)| (u64::from(edges.unsigned_abs()), counts(along.total()));
    let each = runs.map(run);
    let edges = each.iter().map(|(edges, _)| edges).sum();
    (edges, each.iter().map(|(edges, along)| edges * along).sum())
}

/// A size that is cut; one below zero is none.
fn counts(length: Length) -> u64 {
    u64::try_from(length.counts()).unwrap_or(0)
}

/// So many hundredths more, rounded up.
fn more(of: u64, hundredths: u64) -> u64 {
    of + of.saturating_mul(hundredths).div_ceil(100)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::{Copy, Job, Key, Label};
    use crate::layout::Layout;

    fn parts(job: &Job) -> Parts {
        let cabinet = &job.cabinets[0];
        Parts::of(cabinet, &Layout::of(cabinet, job), job)
    }

    // A plain cabinet 600 x 704 x 560 of 18, back 20 before the rear, band 1 on front edges without pre-mill: two sides
    // 704 x 559, bottom 564 x 539, front stretcher 564 x 99, back stretcher 564 x 100.
    // 787,072 + 303,996 + 55,836 + 56,400 = 1,203,304; with a fifth more 1,443,964.8.
    // Banded are 704 + 704 + 564 + 564 = 2,536, with four times 60 2,776, with a tenth more 3,053.6.
    #[test]
    fn boards_and_bands_are_counted_as_cut_and_as_finished() {
        let job = Job::plain(Label::new("glaze store").unwrap());
        let parts = parts(&job);
        let needs = board_needs([&parts]);
        let [carcass, unnamed] = &needs[..] else {
            panic!("{needs:?}")
        };
        assert_eq!(carcass.board.as_ref(), Some(&job.shop.board));
        assert_eq!(
            (carcass.pieces, carcass.area, carcass.area_take),
            (5, 1_203_304, 1_443_965)
        );
        assert_eq!((carcass.band, carcass.band_take), (2_536, 3_054));
        let back = parts.back.unwrap();
        let area = back.width.total().mm() * back.height.total().mm();
        assert_eq!(unnamed.board, None);
        assert!((area - f64::from(u32::try_from(unnamed.area).unwrap())).abs() < 1.0);
    }

    #[test]
    fn twice_the_copies_take_twice_as_much() {
        let mut job = Job::plain(Label::new("glaze store").unwrap());
        let once = parts(&job);
        job.cabinets[0].copies.push(Copy {
            key: Key(90),
            name: Label::new("2").unwrap(),
            mirrored: true,
            as_cut: Vec::new(),
        });
        let twice = parts(&job);
        assert_eq!(board_needs([&twice]), board_needs([&once, &once]));
    }
}
