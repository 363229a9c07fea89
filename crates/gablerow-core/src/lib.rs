//! Facts and wishes of frameless cabinets on the 32 mm grid in, consequences out. Pure: no files, no clock, no terminal.
//!
//! ```text
//! measure  grid  sum              lengths; hole numbers and balance; lengths that know their terms
//!    cards                        what data sheets say
//!    strength     solve           sag and mass of boards;  where hinges and drawers go best
//!    job                          facts and wishes, all that is stored
//!    layout                       uprights, rows, holes, keep-outs
//!    parts                        what is cut and bought
//!    check        edit  history   findings;  every change, and the way back
//!    propose                      what would carry the fronts, and why
//!    mend                         what would mend a finding, tried
//!    drawing  elevation           a face, and a cabinet from the front, as strokes for every screen and paper
//! ```
//!
//! Each line uses only those above it.
#![cfg_attr(not(test), no_std)]

extern crate alloc;

#[cfg(test)]
mod arbitrary;
pub mod bench;
pub mod cards;
pub mod check;
pub mod drawing;
pub mod edit;
pub mod elevation;
pub mod grid;
pub mod history;
pub mod job;
pub mod label;
pub mod layout;
pub mod measure;
pub mod mend;
pub mod parts;
pub mod propose;
pub mod solve;
pub mod strength;
pub mod sum;
