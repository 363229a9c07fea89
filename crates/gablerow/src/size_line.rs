//! The lines of the list of sizes: what update steps through and view shows.

use gablerow_core::edit::{Choice, Measure, Scope};

/// A line of the list.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SizeLine {
    /// A length.
    Measure(Measure),
    /// A choice.
    Choice(Choice),
}

impl SizeLine {
    /// What it is called.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::Measure(measure) => measure.words(),
            Self::Choice(choice) => choice.words(),
        }
    }

    /// Whose it is.
    #[must_use]
    pub fn scope(self) -> Scope {
        match self {
            Self::Measure(measure) => measure.scope(),
            Self::Choice(choice) => choice.scope(),
        }
    }
}

/// The lines of the list, in their order: what the cabinet has of its own, then what the whole job goes by.
pub fn lines() -> impl Iterator<Item = SizeLine> {
    let all = || {
        let measures = Measure::ALL.into_iter().map(SizeLine::Measure);
        measures.chain(Choice::ALL.into_iter().map(SizeLine::Choice))
    };
    let of = move |scope| all().filter(move |line| line.scope() == scope);
    of(Scope::Cabinet).chain(of(Scope::Job))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_length_and_choice_is_a_line_the_cabinets_own_first() {
        let lines: Vec<SizeLine> = lines().collect();
        assert_eq!(lines.len(), Measure::ALL.len() + Choice::ALL.len());
        assert!(lines.is_sorted_by_key(|line| line.scope() == Scope::Job));
        assert_eq!(lines[0], SizeLine::Measure(Measure::Height));
    }
}
