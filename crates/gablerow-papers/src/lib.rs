//! Consequences of a job in, text and tables out. Pure: no files, no clock, no terminal.
//!
//! ```text
//! layout, drawing -- board ----> face_text        one face on lines and columns
//!           drawn -----> dxf                      the same face for machines, in mm of the panel
//!             +--------> face_page                the same face on a sheet, at a stated scale
//!             +--------> stick                    every height of a cabinet, true to size
//! elevation ------- front                        a cabinet from the front on lines and columns
//! findings -------- text wrap -> findings_text    by level and cabinet
//! layout ---------- holes -----> hole_table       one record for each bore: text, columns for others
//!                        +--------> bore_table    the same on a machine's axes: columns for others
//! parts ----------- part_records -> part_table    one record for each part: columns for others
//!                        +--------> part_text     what is cut and bought, cabinet by cabinet
//!                        +--------> list_pages    the same on sheets of paper, a list for each place they are taken to
//!                        +--------> labels        one record for each piece: text, columns for others; label_pages
//! figures --------- source_list                  every figure under what it rests on; columns for others
//! plan ------------ bench_records -> bench_text   what is done at the bench, set-up by set-up
//!                        +--------> bench_page    the same on sheets of paper, with a small_face for each that is bored
//! sheets ---------- list, label, bench pages      what is read from top to bottom: tables, sentences, pictures
//! page ------------ svg                          any page as a picture, true to size
//!  +-- typeface --- pdf                          any pages as a document, with the letters they use
//! columns --------- table, csv                    the same table in every form
//! all of these ---- kinds                         which papers there are, in which formats, as which files
//! ```
#![cfg_attr(not(test), no_std)]

extern crate alloc;

mod bench_page;
mod bench_records;
mod bench_rows;
mod bench_sheet;
mod bench_text;
mod bench_words;
pub mod board;
mod bore_table;
mod csv;
mod drawn;
mod dxf;
mod face_page;
mod face_text;
mod findings_text;
pub mod front;
mod front_signs;
mod hole_map;
mod hole_sign;
mod hole_table;
mod holes;
pub mod kinds;
mod label_pages;
mod labels;
mod list_pages;
pub mod page;
mod part_lists;
mod part_needs;
mod part_records;
mod part_strength;
mod part_table;
mod part_text;
mod part_words;
mod pdf;
mod pdf_letters;
mod pen;
mod sheets;
mod signs;
mod small_face;
mod source_list;
mod stick;
mod svg;
mod table;
mod text;
mod title_block;
mod typeface;

pub(crate) use bench_page::bench_pages;
pub(crate) use bench_sheet::held_back;
pub(crate) use bore_table::BoreRecord;
pub(crate) use label_pages::label_pages;
pub(crate) use labels::{LabelRecord, label_text};
pub(crate) use list_pages::list_pages;
pub(crate) use part_lists::PartList;

pub use bench_records::{SetUpRecord, panel_name};
pub use bench_rows::{rail_notes, rail_runs};
pub use bench_sheet::{BenchSheet, open_stops};
pub use bench_text::bench_text;
pub use drawn::{DrawnCabinet, DrawnFace};
pub use dxf::dxf;
pub use face_page::FaceSize;
pub use face_text::FaceSheet;
pub use findings_text::{findings_text, overruled_text};
pub use front_signs::FrontSigns;
pub use hole_table::hole_text;
pub use holes::HoleRecord;
pub use part_records::{CabinetParts, Part, PartRecord};
pub use part_text::part_text;
pub use pdf::pdf;
pub use signs::Signs;
pub use source_list::source_text;
pub use svg::svg;
pub use table::{Column, Tabled, Value, csv_table};
pub use text::{WIDTH, run_words, wrap};

#[cfg(test)]
mod fixture;
