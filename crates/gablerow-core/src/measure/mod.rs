//! Lengths: counted, typed, printed, and the ranges they may have.

mod length;

pub use length::Length;
