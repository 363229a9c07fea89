//! Libraries that others have written, as second readers: exact fractions, a schema validator, CSV and JSON.

mod exact;
mod files;
mod schema;
