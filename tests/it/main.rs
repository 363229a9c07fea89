//! The whole program, driven from outside.
