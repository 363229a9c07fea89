//! Lengths: counted, typed, printed, and the ranges they may have.

mod length;
mod print;
pub mod range;

pub use length::Length;
pub use print::{Printed, Unit};
