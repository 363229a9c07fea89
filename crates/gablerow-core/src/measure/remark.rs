//! A word on a length that is likely another one than was meant.

use super::Length;

/// 1 1/4 in: what people who work in inches call the pitch.
const PITCH_IN_INCHES: Length = Length::from_inch_64ths(80);
/// How near to it a length is taken for it, either way.
const NEAR: Length = Length::from_um(300);

/// What there is to ask about a typed length, if anything: whether 1 1/4 in was meant to be the pitch.
///
/// # Example
///
/// ```
/// use gablerow_core::measure::{Length, remark};
///
/// assert!(remark(Length::from_inch_64ths(80)).is_some());
/// assert!(remark(Length::PITCH).is_none());
/// ```
#[must_use]
pub fn remark(length: Length) -> Option<&'static str> {
    let is_near = (length - PITCH_IN_INCHES).abs() <= NEAR && length != Length::PITCH;
    is_near.then_some("1 1/4 in is 31.75: 0.25 short of the pitch of 32 each hole")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_words_say_what_the_numbers_are() {
        assert_eq!(PITCH_IN_INCHES, Length::from_um(31_750));
        assert_eq!(Length::PITCH - PITCH_IN_INCHES, Length::from_um(250));
    }

    #[test]
    fn near_is_asked_about_and_the_pitch_itself_is_not() {
        let hair = Length::from_counts(1);
        for asked in [31_450, 31_750, 31_999, 32_050] {
            assert!(remark(Length::from_um(asked)).is_some(), "{asked}");
        }
        assert_eq!(remark(Length::from_um(31_450) - hair), None);
        assert_eq!(remark(Length::from_um(32_050) + hair), None);
        assert_eq!(remark(Length::PITCH), None);
        assert_eq!(remark(Length::ZERO - PITCH_IN_INCHES), None);
    }
}
