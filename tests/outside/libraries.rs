//! Libraries that others have written, as second opinions: exact fractions, a schema validator.
//!
//! Others stand beside what they judge: readers of CSV (RFC 4180, Y. Shafranovich, 2005) and JSON (RFC 8259, T. Bray, 2017, its
//! clauses not read again) in `tests/it/command_line.rs`; a general integer program against the searches for hinges and drawers
//! in core, `solve/*/tests/other_searches.rs`; an R-tree against the search for what meets in core, `check/oracle.rs`; a terminal
//! emulator in `tests/it/pty.rs`.

mod exact;
mod schema;
