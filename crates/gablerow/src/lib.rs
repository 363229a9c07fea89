//! The program.

pub mod field;
pub mod key;
pub mod terminal;
pub mod theme;
