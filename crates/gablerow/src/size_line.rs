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

/// The lines of the list: what the cabinet has of its own, subject by subject, then what the whole job goes by.
const LINES: [SizeLine; Measure::ALL.len() + Choice::ALL.len()] = [
    SizeLine::Measure(Measure::Height),
    SizeLine::Measure(Measure::Width),
    SizeLine::Measure(Measure::Depth),
    SizeLine::Measure(Measure::OffsetFoot),
    SizeLine::Measure(Measure::OffsetHead),
    SizeLine::Choice(Choice::Back),
    SizeLine::Measure(Measure::BackTaken),
    SizeLine::Choice(Choice::Top),
    SizeLine::Measure(Measure::Stretcher),
    SizeLine::Measure(Measure::HousingTop),
    SizeLine::Choice(Choice::Bottom),
    SizeLine::Measure(Measure::HousingBottom),
    SizeLine::Choice(Choice::Stand),
    SizeLine::Measure(Measure::Stand),
    SizeLine::Measure(Measure::Below),
    SizeLine::Choice(Choice::Notch),
    SizeLine::Measure(Measure::NotchHeight),
    SizeLine::Measure(Measure::NotchDepth),
    SizeLine::Choice(Choice::Rail),
    SizeLine::Measure(Measure::Rail),
    SizeLine::Choice(Choice::SeenLeft),
    SizeLine::Choice(Choice::SeenRight),
    SizeLine::Choice(Choice::SidesBoard),
    SizeLine::Choice(Choice::BottomBoard),
    SizeLine::Choice(Choice::TopBoard),
    SizeLine::Measure(Measure::Board),
    SizeLine::Measure(Measure::SetbackFront),
    SizeLine::Measure(Measure::SetbackBack),
    SizeLine::Measure(Measure::BoreDepth),
    SizeLine::Choice(Choice::BackRule),
    SizeLine::Choice(Choice::Reference),
];

/// The lines of the list, in their order.
pub fn lines() -> impl Iterator<Item = SizeLine> {
    LINES.into_iter()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_length_and_choice_is_a_line_the_cabinets_own_first() {
        let lines: Vec<SizeLine> = lines().collect();
        let all = Measure::ALL.into_iter().map(SizeLine::Measure);
        for line in all.chain(Choice::ALL.into_iter().map(SizeLine::Choice)) {
            assert!(lines.contains(&line), "{line:?}");
        }
        assert!(lines.is_sorted_by_key(|line| line.scope() == Scope::Job));
        assert_eq!(lines[0], SizeLine::Measure(Measure::Height));
    }
}
