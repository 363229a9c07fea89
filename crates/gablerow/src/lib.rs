//! The program.

pub mod store;
