//! The program.

pub mod key;
pub mod theme;
