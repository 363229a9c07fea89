//! Consequences in, bytes out.
