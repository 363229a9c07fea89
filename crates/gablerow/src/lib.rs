//! The program.

pub mod key;
pub mod terminal;
pub mod theme;
