//! Lengths.
