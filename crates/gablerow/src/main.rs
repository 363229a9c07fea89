//! The program `gablerow`.

use std::path::PathBuf;
use std::process::ExitCode;

fn main() -> anyhow::Result<ExitCode> {
    let path = std::env::args_os().nth(1).map(PathBuf::from);
    gablerow::program::run(path.as_deref()).map(ExitCode::from)
}
