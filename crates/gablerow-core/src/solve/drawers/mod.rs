//! Drawers of a stack: how high their fronts are, which hole each box takes, how high the boxes can be.
//!
//! ```text
//! fronts    height of the field, a way to split it -> fronts, each with its foot
//! stack     fronts, free holes, clearances -> hole, underside, box height of each drawer
//! chain     the search behind it
//! ```

mod chain;
mod fronts;
mod patterns;
mod stack;

pub use fronts::{FRONTS_MOST, Field, Front, Fronts, NoFronts, Split, split};
pub use stack::{
    Blocked, BlockedHole, Clearances, Distances, DrawerPlace, NoPlan, Stack, StackPlan, place,
};

#[cfg(test)]
mod tests;
