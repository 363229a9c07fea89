//! Version 1 of the job file: a twin for each type of the job, field by field.
//!
//! Core knows nothing of files. A change there does not compile until it is answered here: with a field that may be left
//! out, or with a version 2 beside this one.

mod bench_rules;
pub(super) mod cabinet;
mod carcass;
pub(super) mod cards;
mod copy;
mod first;
mod fitting;
mod free;
mod front;
pub(super) mod job;
mod measure;
mod opening;
mod record;
pub(super) mod shop_file;
mod text;
pub(super) mod twin;

#[cfg(test)]
mod schema;
