//! Facts and wishes of frameless cabinets on the 32 mm grid in, consequences out. Pure: no files, no clock, no terminal.
//!
//! ```text
//! measure  grid  sum  source      lengths; hole numbers and balance; lengths that know their terms; what is printed where
//!    cautions                     what is said where work can hurt somebody
//!    cards                        what data sheets say
//!    strength     solve           sag and mass of boards;  where hinges and drawers go best
//!    job                          facts and wishes, all that is stored
//!    layout                       uprights, rows, holes, keep-outs
//!    parts        stamp           what is cut and bought;  what state a cabinet is in, as a number and a word
//!    check        edit  history   findings;  every change, and the way back
//!    propose      figures         what would carry the fronts, and why;  every figure, and where it comes from
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
pub mod cautions;
pub mod check;
pub mod counted;
pub mod drawing;
pub mod edit;
pub mod elevation;
pub mod figures;
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
pub mod source;
pub mod stamp;
pub mod strength;
pub mod sum;
