//! Drawers of a stack: which hole each box takes, and how high the boxes can be.
//!
//! ```text
//! stack     fronts, free holes, clearances -> hole, underside, box height of each drawer
//! chain     the search behind it
//! ```

mod chain;
mod patterns;
mod stack;

pub use stack::{
    Blocked, BlockedHole, Clearances, Distances, DrawerPlace, NoPlan, Stack, StackPlan, place,
};

#[cfg(test)]
mod tests;
