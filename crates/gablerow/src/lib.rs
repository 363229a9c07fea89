//! The program.

pub mod job_file;
