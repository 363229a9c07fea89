//! The 32 mm grid: which heights have a hole, whether a panel is balanced, where a row starts.
//!
//! One grid serves a cabinet. It is a height: where hole 1 stands above the carcass underside.
//!
//! ```text
//!   head  ----   z = height             offset at the head   (left above the last hole)
//!          o     z = first + 2 * 32     hole 3
//!          o     z = first + 32         hole 2
//!          o     z = first              hole 1
//!   foot  ----   z = 0                  offset at the foot
//! ```

mod balance;
mod heights;
mod hole;
mod pins;
mod reveal;

pub use balance::{
    BALANCED_WITHIN, Balance, BalancedHeights, BalancingOffset, Ends, Mismatch, balancing_offsets,
};
pub use heights::{Grid, RowStart};
pub use hole::{HoleNumber, Run};
pub use pins::FourPins;
pub use reveal::{StartOffsets, railed_start_offsets, registered_height, start_offsets};
