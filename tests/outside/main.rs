//! What the program computes, held against what others have printed and against libraries that others have written.
//!
//! ```text
//! case            a printed number, its source, the computed number, how far they may be apart and why
//! standards       standards, acts and codes, most of them as makers' sheets and pages quote them
//! handbooks       handbooks that were read on their own pages
//! trade_pages     pages of the trade: the grid, rows, first holes, boards
//! trade_heights   pages of the trade: balanced heights, partitions
//! trade_fronts    pages of the trade: fronts
//! trade_drawers   pages of the trade: runners, boxes
//! trade_hinges    pages of the trade: hinges and doors
//! formats         what the formats of the papers ask of a file, read off the bytes the program writes
//! practice        rules of thumb without a source, and what is known from memory alone: they prove nothing
//! libraries       exact fractions, a schema validator
//! beams           sag, solved in other ways
//! drawings        DXF and PDF, read by libraries of Python
//! python          how a judge written in Python is run
//! ```

// Marked as tests, so that helpers may unwrap as tests may.
#[cfg(test)]
mod beams;
#[cfg(test)]
mod case;
#[cfg(test)]
mod drawings;
#[cfg(test)]
mod fixture;
#[cfg(test)]
mod formats;
#[cfg(test)]
mod handbooks;
#[cfg(test)]
mod harness;
#[cfg(test)]
mod libraries;
#[cfg(test)]
mod practice;
#[cfg(test)]
mod python;
#[cfg(test)]
mod standards;
#[cfg(test)]
mod trade_drawers;
#[cfg(test)]
mod trade_fronts;
#[cfg(test)]
mod trade_heights;
#[cfg(test)]
mod trade_hinges;
#[cfg(test)]
mod trade_pages;
