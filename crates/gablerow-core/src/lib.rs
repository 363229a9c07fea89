//! Facts and wishes of frameless cabinets in, consequences out.
#![cfg_attr(not(test), no_std)]

extern crate alloc;

pub mod grid;
pub mod measure;
