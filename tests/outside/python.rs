//! Judges written in Python. They run where there is Python with their libraries; where they do not run, it is said.

use std::ffi::OsStr;
use std::process::Command;

use crate::harness::say;

/// What a script leaves with when a library is not there; it prints which.
const MISSING: i32 = 3;

/// What a script said.
pub(crate) struct Said {
    /// What it printed.
    pub text: String,
    /// What its libraries complained of.
    pub complaints: String,
}

/// Runs a script with these words, in the Python of `GABLEROW_PYTHON`, else `python3`. `None` where there is none, or not
/// with the libraries; a script that breaks for any other reason fails the test.
pub(crate) fn run(judge: &str, script: &str, words: &[impl AsRef<OsStr>]) -> Option<Said> {
    let python = std::env::var("GABLEROW_PYTHON").unwrap_or_else(|_| "python3".into());
    let missing = |why: &str| {
        say(&format!(
            "{judge} did not run: {why} ({python}; GABLEROW_PYTHON names another)\n"
        ));
        None
    };
    let Ok(said) = Command::new(&python)
        .arg("-c")
        .arg(script)
        .args(words)
        .output()
    else {
        return missing("no Python");
    };
    let text = String::from_utf8(said.stdout).unwrap();
    if said.status.code() == Some(MISSING) {
        return missing(text.trim());
    }
    let complaints = String::from_utf8_lossy(&said.stderr).into_owned();
    assert!(said.status.success(), "{judge}: {complaints}");
    Some(Said { text, complaints })
}

/// Says that a judge ran, once it was found to agree.
pub(crate) fn agrees(judge: &str) {
    say(&format!("{judge} ran and agrees\n"));
}
