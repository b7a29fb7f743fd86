//! Words and numbers for a drawing: words come from outside, numbers are written here.

use crate::decimal;

/// The unit in which lengths are written.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Length {
    /// Millimetres.
    #[default]
    Mm,
    /// Inches.
    Inch,
}

impl Length {
    /// How many mm one unit is; an inch is 25.4 mm by definition.
    pub fn mm(self) -> f64 {
        const INCH_MM: f64 = 25.4;
        match self {
            Self::Mm => 1.0,
            Self::Inch => INCH_MM,
        }
    }

    /// How many decimals more than a mm this unit is written with.
    pub fn more_decimals(self) -> u32 {
        match self {
            Self::Mm => 0,
            Self::Inch => 2,
        }
    }

    /// The word id of the unit.
    pub fn word(self) -> &'static str {
        match self {
            Self::Mm => "unit.mm",
            Self::Inch => "unit.inch",
        }
    }
}

/// The words of one language, and how it writes numbers.
#[derive(Debug, Clone, PartialEq)]
pub struct Lexicon {
    /// Id and text, in the order of ids.
    words: Vec<(String, String)>,
    /// Between whole and decimals.
    pub separator: char,
    /// The unit of lengths.
    pub length: Length,
}

impl Lexicon {
    /// A lexicon from pairs of id and text; `language.decimal` is what stands before decimals, a point
    /// where it is not said.
    pub fn new(words: impl IntoIterator<Item = (String, String)>) -> Self {
        let mut whole = Self { words: Vec::new(), separator: '.', length: Length::Mm };
        for (id, text) in words {
            // Sorting at the end, or a tree, would bring a whole algorithm into the page.
            match whole.place(&id) {
                Ok(at) => whole.words[at].1 = text,
                Err(at) => whole.words.insert(at, (id, text)),
            }
        }
        let separator = whole.get("language.decimal").and_then(|text| text.chars().next());
        whole.separator = separator.unwrap_or('.');
        whole
    }

    /// The text of an id; the id itself where there is none, so that a missing word is seen.
    pub fn word<'a>(&'a self, id: &'a str) -> &'a str {
        self.get(id).unwrap_or(id)
    }

    /// The text of an id, if there is one.
    pub fn get(&self, id: &str) -> Option<&str> {
        self.place(id).ok().map(|at| self.words[at].1.as_str())
    }

    /// Where an id is, or where it would be.
    fn place(&self, id: &str) -> Result<usize, usize> {
        self.words.binary_search_by(|(known, _)| known.as_str().cmp(id))
    }

    /// Writes a length with its unit: hundredths of a mm, whole micrometres below that.
    pub fn write_length(&self, out: &mut String, mm: f64) {
        /// A length below this, mm, is written in micrometres.
        const FINE_MM: f64 = 0.01;
        const MICRO: f64 = 1000.0;
        const DECIMALS: u32 = 2;
        let size = libm::fabs(mm);
        if self.length == Length::Mm && size > 0.0 && size < FINE_MM {
            decimal::write(out, MICRO * mm, 0, self.separator);
            return self.write_unit(out, "unit.micrometre");
        }
        let decimals = DECIMALS + self.length.more_decimals();
        decimal::write(out, mm / self.length.mm(), decimals, self.separator);
        self.write_unit(out, self.length.word());
    }

    /// Writes a length without its unit, as on a dimension line: hundredths of a mm, thousandths
    /// below that.
    pub fn write_figure(&self, out: &mut String, mm: f64) {
        const FINE_MM: f64 = 0.01;
        let size = libm::fabs(mm);
        let decimals = if size > 0.0 && size < FINE_MM { 3 } else { 2 };
        decimal::write(
            out,
            mm / self.length.mm(),
            decimals + self.length.more_decimals(),
            self.separator,
        );
    }

    /// Writes an angle in degrees: hundredths below 1, tenths above.
    pub fn write_angle(&self, out: &mut String, rad: f64) {
        let degrees = rad.to_degrees();
        let decimals = if libm::fabs(degrees) < 1.0 { 2 } else { 1 };
        decimal::write(out, degrees, decimals, self.separator);
        out.push_str(self.word("unit.degree"));
    }

    fn write_unit(&self, out: &mut String, id: &str) {
        out.push(' ');
        out.push_str(self.word(id));
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn small_lengths_turn_to_micrometres_and_inches_get_two_more_decimals() {
        let mut lexicon = Lexicon::new([("unit.mm".to_owned(), "mm".to_owned())]);
        let mut out = String::new();
        lexicon.write_length(&mut out, 0.08);
        out.push('|');
        lexicon.write_length(&mut out, 0.004);
        lexicon.length = Length::Inch;
        out.push('|');
        lexicon.write_length(&mut out, 0.254);
        assert_eq!(out, "0.08 mm|4 unit.micrometre|0.0100 unit.inch");
    }
}
