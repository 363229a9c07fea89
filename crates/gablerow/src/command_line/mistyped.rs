//! Commands that are none: `gablerow chek job.json`.

use std::ffi::OsString;
use std::path::Path;

use anyhow::{Error, anyhow};
use clap::CommandFactory;

use super::arguments::Arguments;

/// The most letters that are wrong, missing, too many or exchanged in a command that was nearly typed.
const WRONG_MOST: usize = 2;

/// What is wrong with a job path that looks like a command and leads to no file; `None` when nothing is.
pub(super) fn job(path: &Path) -> Option<Error> {
    let word = path.to_str().filter(|word| is_bare(word))?;
    if path.exists() {
        return None;
    }
    let commands = commands();
    Some(match nearest(word, &commands) {
        Some(command) => {
            anyhow!("{word}: no such file and no such command; did you mean `{command}`?")
        }
        None => anyhow!(
            "{word}: no such file and no such command; commands are {}, and the name of a new job ends in .json",
            commands.join(", ")
        ),
    })
}

/// What is wrong with words that make no sense, when it is plain what was meant: a command nearly typed, or typed after the job.
pub(super) fn words(words: &[OsString]) -> Option<Error> {
    let words: Vec<&str> = words
        .iter()
        .map(|word| word.to_str())
        .collect::<Option<_>>()?;
    let (&first, rest) = words.split_first()?;
    let commands = commands();
    let is_command = |word: &str| commands.iter().any(|command| command == word);
    if is_command(first) || first.starts_with('-') {
        return None;
    }
    if nearest(first, &commands).is_some() {
        return job(Path::new(first));
    }
    match rest.iter().find(|word| is_command(word)) {
        Some(command) => Some(anyhow!(
            "the command comes first: gablerow {command} {first}"
        )),
        None if rest.iter().all(|word| !word.starts_with('-')) && !rest.is_empty() => {
            Some(anyhow!(
                "{}: one job is opened at a time; {first} is the first of {}",
                rest.join(" "),
                words.len()
            ))
        }
        None => None,
    }
}

/// Letters and hyphens only, as commands are.
fn is_bare(word: &str) -> bool {
    !word.starts_with('-') && word.chars().all(|c| c.is_ascii_alphabetic() || c == '-')
}

fn commands() -> Vec<String> {
    let of = |command: &clap::Command| command.get_name().to_owned();
    Arguments::command().get_subcommands().map(of).collect()
}

fn nearest<'a>(word: &str, commands: &'a [String]) -> Option<&'a String> {
    let wrong = |command: &str| strsim::damerau_levenshtein(&word.to_ascii_lowercase(), command);
    let nearest = commands.iter().min_by_key(|command| wrong(command))?;
    let most = WRONG_MOST.min(word.len().saturating_sub(1));
    (wrong(nearest) <= most).then_some(nearest)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn nearly_typed_commands_are_found() {
        let commands = commands();
        for (word, command) in [
            ("chek", "check"),
            ("CHECK", "check"),
            ("hole", "holes"),
            ("shcema", "schema"),
            ("faces", "face"),
        ] {
            assert_eq!(
                nearest(word, &commands).map(String::as_str),
                Some(command),
                "{word}"
            );
        }
        for word in ["kitchen", "a", "print"] {
            assert_eq!(nearest(word, &commands), None, "{word}");
        }
    }

    #[test]
    fn a_command_after_the_job_is_put_in_its_place() {
        let wrong = |typed: &str| words(&typed.split(' ').map(OsString::from).collect::<Vec<_>>());
        let said = |typed| wrong(typed).unwrap().to_string();
        assert_eq!(
            said("store.json check"),
            "the command comes first: gablerow check store.json"
        );
        assert_eq!(
            said("a.json b.json"),
            "b.json: one job is opened at a time; a.json is the first of 2"
        );
        assert!(wrong("check a.json b.json").is_none() && wrong("--sideways check").is_none());
    }

    #[test]
    fn a_path_is_not_taken_for_a_command() {
        for path in ["chek.json", "./chek", "jobs/chek", "-chek"] {
            assert!(job(Path::new(path)).is_none(), "{path}");
        }
        assert!(job(Path::new("kitchen")).is_some());
    }
}
