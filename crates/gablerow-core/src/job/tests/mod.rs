//! Places, mirror images, and what no job can hold.

mod limits;
mod mirror;
mod names;
mod opening;
mod place;
mod ranges;
