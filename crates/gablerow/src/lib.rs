//! The program: terminal, keys, job files, command line. The only crate that touches the world.
//!
//! ```text
//! press -- keymap --> Action -- update --> App' + effects
//!                                 |           |
//!                             view(&App)   store performs, answers with a message
//! ```

pub mod action;
pub mod app;
pub mod at_bench;
pub mod card_line;
pub mod command_line;
pub mod demo;
pub mod echo;
pub mod field;
pub mod job_file;
pub mod journal_entry;
pub mod key;
pub mod keymap;
pub mod page;
pub mod paper_preview;
pub mod paper_run;
pub mod paper_work;
pub mod papers_at;
pub mod program;
pub mod proposals;
pub mod released;
pub mod scene;
pub mod session;
pub mod shop_file;
pub mod shop_folder;
pub mod size_line;
pub mod store;
pub mod terminal;
pub mod theme;
pub mod update;
pub mod view;
