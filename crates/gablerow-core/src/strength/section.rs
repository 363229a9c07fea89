//! The cross-section of a shelf, as stiffness against bending.

use crate::measure::Length;

/// A rectangle of one material in the cross-section of a shelf.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Strip {
    /// From front to back.
    pub width: Length,
    /// From its underside to its upper face.
    pub height: Length,
    /// From the shelf's upper face down to the strip's upper face; 0 is flush on top.
    pub down: Length,
    /// Modulus of elasticity in N/mm2.
    pub elasticity: f64,
}

/// The stiffness E*I of a cross-section, in N*mm2.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct Section(f64);

impl Section {
    /// A plain board of a depth and a thickness: E*d*t^3/12.
    #[must_use]
    pub fn board(depth: Length, thickness: Length, elasticity: f64) -> Self {
        Self::of(&[Strip {
            width: depth,
            height: thickness,
            down: Length::ZERO,
            elasticity,
        }])
    }

    /// Strips glued into one, by the parallel-axis rule about their common neutral axis. Strips of no size give nothing.
    ///
    /// Source: Wood Handbook FPL-GTR-190, chapter 9, for E*I; the rule itself is mechanics.
    ///
    /// # Example
    ///
    /// ```
    /// use gablerow_core::measure::Length;
    /// use gablerow_core::strength::{Section, Strip};
    ///
    /// // Two boards glued flat are as stiff as one of twice the thickness: 2^3 = 8 times one, not twice.
    /// let [d, t] = [420, 19].map(Length::from_mm);
    /// let strip = |down| Strip { width: d, height: t, down, elasticity: 1_600.0 };
    /// let glued = Section::of(&[strip(Length::ZERO), strip(t)]).stiffness();
    /// assert!((glued / Section::board(d, t, 1_600.0).stiffness() - 8.0).abs() < 1e-9);
    /// ```
    #[must_use]
    pub fn of(strips: &[Strip]) -> Self {
        let area = |strip: &Strip| strip.elasticity * strip.width.mm() * strip.height.mm();
        let middle = |strip: &Strip| strip.down.mm() + strip.height.mm() / 2.0;
        let whole: f64 = strips.iter().map(area).sum();
        if whole <= 0.0 {
            return Self(0.0);
        }
        let axis = strips.iter().map(|s| area(s) * middle(s)).sum::<f64>() / whole;
        let about_axis = |strip: &Strip| {
            let (height, off) = (strip.height.mm(), middle(strip) - axis);
            area(strip) * (height * height / 12.0 + off * off)
        };
        Self(strips.iter().map(about_axis).sum())
    }

    /// E*I in N*mm2.
    #[must_use]
    pub fn stiffness(self) -> f64 {
        self.0
    }
}
