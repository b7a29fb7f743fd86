//! What the inks look like.

use crate::scene::{Ink, Tint};

/// How many inks there are.
const INKS: usize = 8 + 2 * Tint::ALL.len();

/// A colour for every ink, as CSS writes colours.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Theme([String; INKS]);

impl Theme {
    /// Dark lines on a pale sheet, as in the page's light colours: for print, and for files that must
    /// stand alone.
    pub fn light() -> Self {
        Self::from_rule(|ink| match ink {
            Ink::Sheet => "#fbf9f2",
            Ink::Ink => "#1b2430",
            Ink::InkSoft => "#525a66",
            Ink::Touch => "#b0103f",
            Ink::Rub => "#8a2a06",
            Ink::Overlap => "#d3224d",
            Ink::Lit => "#ffd84a",
            Ink::Paper => "#ffffff",
            Ink::Fill(Tint::Held) => "#cddcec",
            Ink::Fill(Tint::Inner) => "#f4dba8",
            Ink::Fill(Tint::InnerNear) => "#f0cbb0",
            Ink::Fill(Tint::Next) => "#b3c6e3",
            Ink::Fill(Tint::Roller) => "#cfe3d0",
            Ink::Edge(Tint::Held) => "#1f4673",
            Ink::Edge(Tint::Inner) => "#764a00",
            Ink::Edge(Tint::InnerNear) => "#84400f",
            Ink::Edge(Tint::Next) => "#1c3f78",
            Ink::Edge(Tint::Roller) => "#23592f",
        })
    }

    /// A theme from a rule that names the colour of each ink.
    pub fn from_rule<C: Into<String>>(rule: impl Fn(Ink) -> C) -> Self {
        let mut colours = [const { String::new() }; INKS];
        for ink in Ink::all() {
            colours[place(ink)] = rule(ink).into();
        }
        Self(colours)
    }

    /// The colour of an ink.
    pub fn colour(&self, ink: Ink) -> &str {
        &self.0[place(ink)]
    }
}

/// The place of an ink in a theme.
fn place(ink: Ink) -> usize {
    let plain = INKS - 2 * Tint::ALL.len();
    match ink {
        Ink::Sheet => 0,
        Ink::Ink => 1,
        Ink::InkSoft => 2,
        Ink::Touch => 3,
        Ink::Rub => 4,
        Ink::Overlap => 5,
        Ink::Lit => 6,
        Ink::Paper => 7,
        Ink::Fill(tint) => plain + 2 * tint as usize,
        Ink::Edge(tint) => plain + 2 * tint as usize + 1,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_ink_has_a_place_of_its_own() {
        let theme = Theme::from_rule(Ink::key);
        for ink in Ink::all() {
            assert_eq!(theme.colour(ink), ink.key());
        }
        assert_eq!(Ink::all().count(), INKS);
    }

    /// WCAG 2.2, 1.4.3 and 1.4.11: 4.5:1 for text, 3:1 for lines; relative luminance as defined
    /// there (from memory).
    #[test]
    fn lines_and_letters_stand_out_from_what_lies_under_them() {
        let theme = Theme::light();
        let contrast = |a, b| {
            let (a, b) = (luminance(theme.colour(a)), luminance(theme.colour(b)));
            (a.max(b) + 0.05) / (a.min(b) + 0.05)
        };
        for ink in [Ink::Ink, Ink::InkSoft, Ink::Touch] {
            assert!(contrast(ink, Ink::Sheet) >= 4.5, "{}", ink.key());
        }
        for &tint in Tint::ALL {
            assert!(contrast(Ink::Edge(tint), Ink::Sheet) >= 4.5, "{}", tint.key());
            assert!(contrast(Ink::Edge(tint), Ink::Fill(tint)) >= 3.0, "{}", tint.key());
            assert!(contrast(Ink::Touch, Ink::Fill(tint)) >= 3.0, "{}", tint.key());
        }
    }

    fn luminance(colour: &str) -> f64 {
        let channel = |place: usize| {
            let byte = u8::from_str_radix(&colour[place..place + 2], 16).unwrap();
            let share = f64::from(byte) / 255.0;
            if share <= 0.04045 { share / 12.92 } else { libm::pow((share + 0.055) / 1.055, 2.4) }
        };
        0.2126 * channel(1) + 0.7152 * channel(3) + 0.0722 * channel(5)
    }
}
