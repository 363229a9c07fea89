//! The program `gablerow`.

use std::process::ExitCode;

fn main() -> ExitCode {
    gablerow::command_line::run(std::env::args_os(), &|name| std::env::var_os(name))
}
