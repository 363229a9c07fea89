//! Lengths: counted, typed, printed, and the ranges they may have.
//!
//! ```text
//! text typed -> input -> Length -> print -> text shown
//!                          |
//!                        range: is it a length this quantity can have?
//! ```

mod input;
mod length;
mod print;
pub mod range;
mod remark;

pub use input::{DIGITS_MAX, InputError, InputErrorKind, parse_length, parse_onto};
pub use length::Length;
pub use print::{Printed, Unit};
pub use remark::remark;
