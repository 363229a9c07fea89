//! The whole program, driven from outside.

// Marked as tests, so that helpers may unwrap as tests may.
#[cfg(test)]
mod bench_day;
#[cfg(test)]
mod bench_sheet;
#[cfg(test)]
mod command_line;
#[cfg(test)]
mod crash;
#[cfg(test)]
mod first_job;
#[cfg(test)]
mod frames;
#[cfg(test)]
mod glaze_store;
#[cfg(test)]
mod house;
#[cfg(test)]
mod jobs;
#[cfg(test)]
mod key_script;
#[cfg(test)]
mod mended_demo;
#[cfg(test)]
mod papers_screen;
#[cfg(test)]
mod pictures;
#[cfg(test)]
mod pty;
#[cfg(test)]
mod readme;
#[cfg(test)]
mod rules;
#[cfg(test)]
mod screens;
#[cfg(test)]
mod terminal;
#[cfg(test)]
mod three_bays;
