//! The program `gablerow`.

fn main() {}
