//! Telling one version of a file from another.

use std::fmt;

/// What the bytes of a file come to: two versions of a file have different fingerprints, but for
/// one chance in 2^64.
///
/// It is there to notice a file that was changed, not a file that was forged: it is no
/// cryptographic hash.
///
/// Source: FNV-1a with 64 bits, Fowler, Noll and Vo, IETF draft-eastlake-fnv.
///
/// # Example
///
/// ```
/// use gablerow::store::Fingerprint;
///
/// assert_eq!(Fingerprint::of(b"a").to_string(), "af63dc4c8601ec8c");
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Fingerprint(u64);

impl Fingerprint {
    const BASIS: u64 = 0xcbf2_9ce4_8422_2325;
    const PRIME: u64 = 0x0000_0100_0000_01b3;

    /// The fingerprint of these bytes.
    #[must_use]
    pub fn of(bytes: &[u8]) -> Self {
        Self(Self::BASIS).then(bytes)
    }

    /// The fingerprint of all that came before with these bytes behind it: `of(a).then(b)` is `of(a
    /// + b)`.
    ///
    /// A changed byte always changes the outcome, since each step can be undone.
    #[must_use]
    pub(super) fn then(self, bytes: &[u8]) -> Self {
        Self(bytes.iter().fold(self.0, |sum, byte| {
            (sum ^ u64::from(*byte)).wrapping_mul(Self::PRIME)
        }))
    }

    /// Reads what [`Display`](fmt::Display) writes, sixteen small hexadecimal digits and nothing
    /// else.
    pub(super) fn parse(text: &str) -> Option<Self> {
        let fingerprint = Self(u64::from_str_radix(text, 16).ok()?);
        (fingerprint.to_string() == text).then_some(fingerprint)
    }
}

impl fmt::Display for Fingerprint {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:016x}", self.0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn published_values() {
        for (text, sum) in [
            ("", "cbf29ce484222325"),
            ("a", "af63dc4c8601ec8c"),
            ("foobar", "85944171f73967e8"),
        ] {
            assert_eq!(Fingerprint::of(text.as_bytes()).to_string(), sum);
        }
    }

    #[test]
    fn only_sixteen_small_digits_are_read() {
        for text in [
            "",
            "af63dc4c8601ec8",
            "0af63dc4c8601ec8c",
            "AF63DC4C8601EC8C",
            "+f63dc4c8601ec8c",
            "none",
        ] {
            assert_eq!(Fingerprint::parse(text), None, "{text}");
        }
    }

    proptest! {
        #[test]
        fn parse_after_display_is_identity(sum: u64) {
            let fingerprint = Fingerprint(sum);
            prop_assert_eq!(Fingerprint::parse(&fingerprint.to_string()), Some(fingerprint));
        }

        #[test]
        fn then_continues_of(a: Vec<u8>, b: Vec<u8>) {
            prop_assert_eq!(Fingerprint::of(&a).then(&b), Fingerprint::of(&[a, b].concat()));
        }

        #[test]
        fn one_changed_byte_is_always_noticed(
            mut bytes in prop::collection::vec(any::<u8>(), 1..200),
            at: prop::sample::Index,
            flip in 1..=255_u8,
        ) {
            let before = Fingerprint::of(&bytes);
            let at = at.index(bytes.len());
            bytes[at] ^= flip;
            prop_assert_ne!(Fingerprint::of(&bytes), before);
        }
    }
}
