//! temp
use crate::measure::Length;
/// temp
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct HoleNumber(u16);
impl HoleNumber {
    /// temp
    pub fn new(n: u16) -> Option<Self> {
        (n > 0 && n <= 400).then_some(Self(n))
    }
    /// temp
    pub fn get(self) -> u16 {
        self.0
    }
}
/// temp
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Grid {
    /// temp
    pub first: Length,
}
