//! Drawers against common practice, geometry and other searches.
