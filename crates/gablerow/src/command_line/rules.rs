//! Every rule of the checks, as text and as JSON.

use gablerow_core::check::{Level, RULES};
use gablerow_papers::{WIDTH, wrap};
use serde::Serialize;

use super::output::json_lines;

/// One rule as JSON.
#[derive(Serialize)]
struct RuleRecord {
    rule: &'static str,
    level: &'static str,
    help: &'static str,
}

/// The rules, the heaviest level first, in the order they are tested.
pub(super) fn text() -> String {
    let mut out = String::new();
    for level in Level::ALL {
        out.push_str(&format!("{}\n", level.word().to_uppercase()));
        for info in RULES.iter().filter(|info| info.level == level) {
            out.push_str(&format!("  {}\n", info.name));
            for line in wrap(info.help, WIDTH - 4) {
                out.push_str(&format!("    {line}\n"));
            }
        }
    }
    out
}

pub(super) fn json() -> anyhow::Result<String> {
    let record = |level: Level| {
        let of_level = RULES.iter().filter(move |info| info.level == level);
        of_level.map(|info| RuleRecord {
            rule: info.name,
            level: info.level.word(),
            help: info.help,
        })
    };
    json_lines(&Level::ALL.into_iter().flat_map(record).collect::<Vec<_>>())
}
