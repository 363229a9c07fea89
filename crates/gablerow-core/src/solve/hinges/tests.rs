//! Hinges against common practice, geometry and other searches.
