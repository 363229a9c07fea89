//! The README's marked blocks are made from the program: its screens from the committed ones, its keys from the table.

use gablerow::action::Action;
use gablerow::keymap::{self, Context};
use gablerow::theme::Charset;
use gablerow_core::cautions::{AT_THE_BENCH, GENERAL, TIP_OVER};
use gablerow_papers::{PartRecord, Tabled, source_text, wrap};

use crate::key_script::golden;

fn screen(name: &str) -> String {
    let path = format!(
        "{}/../../tests/screens/{name}.txt",
        env!("CARGO_MANIFEST_DIR")
    );
    format!("```text\n{}```\n", std::fs::read_to_string(path).unwrap())
}

/// Every key of every place; digits are one line.
fn keys() -> String {
    let mut table = String::from("| where | key | what it does |\n| --- | --- | --- |\n");
    for context in Context::ALL {
        for binding in keymap::bindings(context) {
            let key = match binding.action {
                Action::Digit(1) => "1` to `9`, `0".to_owned(),
                Action::Digit(_) => continue,
                _ => binding.key.name(Charset::Unicode).into_owned(),
            };
            table += &format!(
                "| {} | `{key}` | {} |\n",
                context.title(),
                binding.action.help()
            );
        }
    }
    table
}

/// Every key of a record of `parts`.
fn parts() -> String {
    let mut table = String::from("| key | what it says |\n| --- | --- |\n");
    for column in PartRecord::COLUMNS {
        table += &format!("| `{}` | {} |\n", column.name, column.help);
    }
    table
}

/// Every figure the program goes by, as `sources` prints it.
fn sources() -> String {
    format!("```text\n{}```\n", source_text())
}

/// Every caution as it is printed, a point each.
fn cautions() -> String {
    let all = [GENERAL, TIP_OVER].into_iter().chain(AT_THE_BENCH);
    all.map(|caution| format!("- {}\n", wrap(caution, 116).join("\n  ")))
        .collect()
}

/// The text with everything between a mark and the next end replaced.
fn filled(text: &str, mark: &str, block: &str) -> String {
    let mark = format!("<!-- {mark} -->\n");
    let start = text
        .find(&mark)
        .unwrap_or_else(|| panic!("README.md has no {mark}"))
        + mark.len();
    let end = start
        + text[start..]
            .find("<!-- end -->")
            .expect("the mark has an end");
    format!("{}{block}{}", &text[..start], &text[end..])
}

#[test]
fn marked_blocks_of_the_readme_are_what_the_program_shows() {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/../../README.md");
    let mut text = std::fs::read_to_string(path).unwrap();
    for size in ["80x24", "120x40", "200x60"] {
        let name = format!("first_job_{size}");
        text = filled(&text, &format!("screen {size}"), &screen(&name));
    }
    text = filled(&text, "three bays", &screen("three_bays_80x24"));
    text = filled(&text, "keys", &keys());
    text = filled(&text, "parts", &parts());
    text = filled(&text, "sources", &sources());
    text = filled(&text, "cautions", &cautions());
    assert!(
        golden("README.md", &text) == text,
        "README.md is old: run the tests with GABLEROW_WRITE=1"
    );
}
