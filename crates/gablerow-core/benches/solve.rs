//! Placing hinges and drawers.
fn main() {}
