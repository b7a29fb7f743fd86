//! What the inks look like.

use crate::scene::{Ink, Tint};

/// How many inks there are.
const INKS: usize = 8 + 2 * Tint::ALL.len();

/// A colour for every ink, as CSS writes colours.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Theme([String; INKS]);

impl Theme {
    /// Dark lines on a pale sheet: for print, and for files that must stand alone.
    pub fn light() -> Self {
        Self::from_rule(|ink| match ink {
            Ink::Sheet => "#fbfaf7",
            Ink::Ink => "#1c2430",
            Ink::InkSoft => "#5a6472",
            Ink::Touch | Ink::Rub => "#9a0f4b",
            Ink::Overlap => "#c3161c",
            Ink::Lit => "#ffc928",
            Ink::Paper => "#ffffff",
            Ink::Fill(Tint::Held) => "#cfdcec",
            Ink::Fill(Tint::Inner) => "#f5dcae",
            Ink::Fill(Tint::InnerNear) => "#f3ecb4",
            Ink::Fill(Tint::Next) => "#b8c8e4",
            Ink::Fill(Tint::Roller) => "#d3e4d4",
            Ink::Edge(Tint::Held) => "#24466e",
            Ink::Edge(Tint::Inner) => "#7a4c00",
            Ink::Edge(Tint::InnerNear) => "#5f5a00",
            Ink::Edge(Tint::Next) => "#2c3f8c",
            Ink::Edge(Tint::Roller) => "#2d5c39",
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
