//! Drawers.
