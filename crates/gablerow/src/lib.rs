//! The program.

pub mod theme;
