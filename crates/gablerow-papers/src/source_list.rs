//! Every figure the program goes by, under what it rests on: to read, and as a table.

use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

use gablerow_core::cautions::GENERAL;
use gablerow_core::figures::{Figure, figures};
use gablerow_core::source::{SOURCES, Source, Standing};

use crate::table::{Value, columns};
use crate::text::push_indented;

columns! {
    Figure;
    used "where the program uses it" = |figure| Value::Word(figure.used.into());
    figure "what it is" = |figure| Value::Word(figure.what.clone());
    value "the figure with its unit, or the formula" = |figure| Value::Word(figure.value.clone());
    standing "published, stand-in, common practice or house guess" = |figure| Value::Word(figure.standing.label().into());
    source "what it rests on, in short" = |figure| of_source(figure, |source| source.name);
    author "who issued that" = |figure| of_source(figure, |source| source.author);
    title "its title" = |figure| of_source(figure, |source| source.title);
    year "its year" = |figure| of_source(figure, |source| source.year);
    clause "its clause, table or page, and by way of whom" = |figure| of_source(figure, |source| source.clause);
    seen "how it was read" = |figure| of_source(figure, |source| source.seen.words());
}

fn of_source(figure: &Figure, words: impl Fn(&Source) -> &'static str) -> Value<'static> {
    let source = figure.standing.source();
    source.map_or(Value::Nothing, |source| Value::Word(words(source).into()))
}

/// The list to read: source by source, then what is borrowed, common practice, house guesses, and the caution.
///
/// ```text
/// PUBLISHED
///   EN 312: CEN, Particleboards - Specifications, ...; on several pages
///     elasticity: particleboard P2, over 3 to 4: 1800 N/mm2
/// ```
#[must_use]
pub fn source_text() -> String {
    let all = figures();
    let mut out = String::from("PUBLISHED\n");
    for &source in SOURCES {
        push_indented(&mut out, "  ", "    ", &named(source));
        push_figures(&mut out, &all, |standing| {
            standing == Standing::Published(source)
        });
    }
    for (title, standing) in unproved() {
        out.push('\n');
        push_indented(&mut out, "", "  ", &title);
        push_figures(&mut out, &all, standing);
    }
    out.push('\n');
    push_indented(&mut out, "", "", GENERAL);
    out
}

/// A source in full, on one line.
fn named(source: &Source) -> String {
    let Source {
        name,
        author,
        title,
        year,
        clause,
        seen,
    } = source;
    let seen = seen.words();
    format!("{name}: {author}, {title}, {year}; {clause}; {seen}")
}

/// Whether a figure belongs under a heading.
type Belongs = fn(Standing) -> bool;

/// The headings of what is not printed for the thing itself.
fn unproved() -> [(String, Belongs); 3] {
    [
        (
            "STAND-INS, borrowed from another material".into(),
            |standing| matches!(standing, Standing::StandIn(_)),
        ),
        (
            "COMMON PRACTICE, rules of thumb without a source".into(),
            |standing| standing == Standing::Practice,
        ),
        (
            "HOUSE GUESSES, without a source; a data sheet or the shop's own practice is better"
                .into(),
            |standing| standing == Standing::HouseGuess,
        ),
    ]
}

fn push_figures(out: &mut String, all: &[Figure], belongs: impl Fn(Standing) -> bool) {
    let belonging: Vec<_> = all
        .iter()
        .filter(|figure| belongs(figure.standing))
        .collect();
    for figure in belonging {
        let borrowed = match figure.standing {
            Standing::StandIn(source) => format!(", of {}", source.name),
            _ => String::new(),
        };
        let text = format!(
            "{}: {}: {}{borrowed}",
            figure.used, figure.what, figure.value
        );
        push_indented(out, "    ", "      ", &text);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::WIDTH;
    use unicode_width::UnicodeWidthStr;

    #[test]
    fn every_figure_stands_under_one_heading() {
        let text = source_text();
        let lines = text.lines().filter(|line| {
            line.starts_with("    ")
                && figures()
                    .iter()
                    .any(|figure| line.trim_start().starts_with(&format!("{}: ", figure.used)))
        });
        assert_eq!(lines.count(), figures().len());
    }

    #[test]
    fn sources_stand_in_full_above_their_figures_and_the_caution_at_the_end() {
        let text = source_text();
        let words = text.split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(words.contains("type P2, least values, and table 1, tolerances; on board makers' sheets and a page about inspection; on several pages boards as cut: thickness off the card, most: 0.3 mm elasticity: particleboard P2, over 3 to 4: 1800 N/mm2"), "{words}");
        assert!(
            words.contains("creep: furniture board as P5: 3.25 times, of EN 1995-1-1"),
            "{words}"
        );
        assert!(words.ends_with(GENERAL), "{words}");
        assert!(
            text.lines()
                .all(|line| line.width() <= WIDTH && line.trim_end() == line)
        );
    }
}
