//! A chain of one's own from eight measurements with a caliper; every other size is chosen by the
//! rules of [`Dimension::default_mm`].
//!
//! A caliper reads every length with a doubt u. What follows from two readings is in doubt by the
//! root of the sum of squares: a sum or a difference by u sqrt 2, half a difference by u sqrt 2 / 2,
//! a pitch over n links by u sqrt 2 / n. A side gap is the difference of two widths that are ten or a
//! hundred times as large, so a doubt that is nothing for a width can be all of a gap.

use crate::chain::{Construction, Dimension, Sizes};
use crate::error::{Error, Rule};
use crate::scenario::StatedChain;
use serde::Serialize;

/// One measurement.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Reading {
    /// Outside over two rollers that are some pitches apart.
    OverRollers,
    /// Over one roller.
    Roller,
    /// Between the inner plates.
    BetweenInner,
    /// Outside over the inner plates of one link.
    OverInner,
    /// Between the outer plates of one link.
    BetweenOuter,
    /// Outside over the outer plates, beside the rivets.
    OverOuter,
    /// Over the end of a pin.
    Pin,
    /// Over an inner plate at its eye.
    PlateHeight,
}

impl Reading {
    /// Every reading, in the order in which they are taken.
    pub const ALL: [Self; 8] = [
        Self::OverRollers,
        Self::Roller,
        Self::BetweenInner,
        Self::OverInner,
        Self::BetweenOuter,
        Self::OverOuter,
        Self::Pin,
        Self::PlateHeight,
    ];

    /// Its key, which ends in its unit.
    pub fn key(self) -> &'static str {
        match self {
            Self::OverRollers => "over_rollers_mm",
            Self::Roller => "roller_mm",
            Self::BetweenInner => "between_inner_mm",
            Self::OverInner => "over_inner_mm",
            Self::BetweenOuter => "between_outer_mm",
            Self::OverOuter => "over_outer_mm",
            Self::Pin => "pin_mm",
            Self::PlateHeight => "plate_height_mm",
        }
    }

    /// The reading of a key.
    pub fn of_key(key: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|reading| reading.key() == key)
    }

    /// The size that it settles, the others known.
    fn settles(self) -> Dimension {
        match self {
            Self::OverRollers => Dimension::Pitch,
            Self::Roller => Dimension::RollerDiameter,
            Self::BetweenInner => Dimension::InnerWidth,
            Self::OverInner => Dimension::InnerPlate,
            Self::BetweenOuter => Dimension::OuterSpacing,
            Self::OverOuter => Dimension::OuterPlate,
            Self::Pin => Dimension::PinDiameter,
            Self::PlateHeight => Dimension::InnerPlateHeight,
        }
    }

    /// What a chain of these sizes reads, mm, over so many pitches.
    fn of(self, s: &Sizes, pitches: f64) -> f64 {
        match self {
            Self::OverRollers => pitches * s.pitch_mm + s.roller_diameter_mm,
            Self::OverInner => s.inner_link_width_mm(),
            Self::OverOuter => s.outer_spacing_mm + 2.0 * s.outer_plate_mm,
            _ => self.settles().of(s),
        }
    }
}

/// Eight readings of one chain.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Measured {
    /// How its inner links are made, as seen.
    pub construction: Construction,
    /// The readings in the order of [`Reading::ALL`], mm.
    pub readings_mm: [f64; 8],
    /// How many pitches lie between the two rollers.
    pub pitches: f64,
    /// What a reading may be off, mm.
    pub doubt_mm: f64,
}

/// A number and its doubt.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Doubtful {
    /// Its key.
    pub key: &'static str,
    /// Its value, mm.
    pub value_mm: f64,
    /// What it may be off, mm.
    pub doubt_mm: f64,
}

/// The chain that readings make.
#[derive(Debug, Clone, PartialEq)]
pub struct Made {
    /// Its sizes: those that were measured stated, the others by their rules.
    pub chain: StatedChain,
    /// What follows from two readings, with its doubt: the pitch, both plates, the side gap.
    pub doubts: [Doubtful; 4],
    /// `clear` where the side gap is larger than its doubt, `lost` where it is not, `apart` where it
    /// is negative by more than that.
    pub gap: &'static str,
}

impl Measured {
    /// What a caliper would read on a chain of these sizes, to the doubt's own step.
    pub fn like(sizes: &Sizes, pitches: f64, doubt_mm: f64) -> Self {
        let readings_mm = Reading::ALL.map(|reading| reading.of(sizes, pitches));
        Self { construction: sizes.construction, readings_mm, pitches, doubt_mm }
    }

    /// One of the readings, mm.
    fn read(&self, reading: Reading) -> f64 {
        self.readings_mm[reading as usize]
    }

    /// The chain of these readings.
    ///
    /// # Errors
    /// Every reading that cannot be, by its key.
    pub fn chain(&self) -> Result<Made, Vec<Error>> {
        self.refuse()?;
        let stated = Reading::ALL.map(|reading| (reading.settles(), self.size_mm(reading)));
        let chain = StatedChain::new(self.construction, &stated).map_err(|faults| {
            faults
                .into_iter()
                .map(|fault| Error { field: self.reading_of(&fault.field), ..fault })
                .collect::<Vec<_>>()
        })?;
        let doubts = self.doubts(&chain);
        let gap = match doubts[3] {
            Doubtful { value_mm, doubt_mm, .. } if value_mm > doubt_mm => "clear",
            Doubtful { value_mm, doubt_mm, .. } if value_mm >= -doubt_mm => "lost",
            _ => "apart",
        };
        Ok(Made { chain, doubts, gap })
    }

    /// The size that a reading settles, mm.
    fn size_mm(&self, reading: Reading) -> f64 {
        let less = |other| self.read(reading) - self.read(other);
        match reading {
            Reading::OverRollers => less(Reading::Roller) / self.pitches,
            Reading::OverInner => 0.5 * less(Reading::BetweenInner),
            Reading::OverOuter => 0.5 * less(Reading::BetweenOuter),
            _ => self.read(reading),
        }
    }

    /// What no chain can read.
    fn refuse(&self) -> Result<(), Vec<Error>> {
        /// More pitches than this are not measured with a caliper.
        const MOST_PITCHES: f64 = 100.0;
        /// A caliper that is off by more than this is none, mm.
        const MOST_DOUBT_MM: f64 = 1.0;
        let mut faults = Vec::new();
        let mut check = |key: &str, value: f64, most: f64| {
            let rule = match value {
                number if !number.is_finite() => Rule::Finite,
                number if number <= 0.0 => Rule::Positive,
                number if number > most => Rule::AtMost { limit: most },
                _ => return,
            };
            faults.push(Error::number(key, value, rule));
        };
        for reading in Reading::ALL {
            check(reading.key(), self.read(reading), f64::MAX);
        }
        check("pitches", self.pitches, MOST_PITCHES);
        check("doubt_mm", self.doubt_mm, MOST_DOUBT_MM);
        if faults.is_empty() {
            let pairs = [
                (Reading::OverRollers, Reading::Roller, "caliper.roller_mm"),
                (Reading::OverInner, Reading::BetweenInner, "caliper.between_inner_mm"),
                (Reading::OverOuter, Reading::BetweenOuter, "caliper.between_outer_mm"),
            ];
            for (outer, inner, of) in pairs {
                let (value, limit) = (self.read(outer), self.read(inner));
                if value <= limit {
                    faults.push(Error::number(outer.key(), value, Rule::AboveSize { limit, of }));
                }
            }
        }
        let (value, limit) = (self.read(Reading::Pin), self.read(Reading::Roller));
        if faults.is_empty() && value >= limit {
            let rule = Rule::BelowSize { limit, of: "caliper.roller_mm" };
            faults.push(Error::number(Reading::Pin.key(), value, rule));
        }
        if faults.is_empty() { Ok(()) } else { Err(faults) }
    }

    /// The key of the reading that settles a size; the key itself where none does.
    fn reading_of(&self, key: &str) -> String {
        let found = Reading::ALL.into_iter().find(|reading| reading.settles().key() == key);
        found.map_or_else(|| key.to_owned(), |reading| reading.key().to_owned())
    }

    /// What follows from two readings, its doubt by the root of the sum of squares.
    fn doubts(&self, chain: &StatedChain) -> [Doubtful; 4] {
        let two_mm = self.doubt_mm * core::f64::consts::SQRT_2;
        let s = chain.chain();
        [
            Doubtful { key: "pitch_mm", value_mm: s.pitch_mm, doubt_mm: two_mm / self.pitches },
            Doubtful { key: "inner_plate_mm", value_mm: s.inner_plate_mm, doubt_mm: 0.5 * two_mm },
            Doubtful { key: "outer_plate_mm", value_mm: s.outer_plate_mm, doubt_mm: 0.5 * two_mm },
            Doubtful { key: "side_gap_mm", value_mm: s.side_gap_mm() + 0.0, doubt_mm: two_mm },
        ]
    }
}

#[cfg(test)]
mod tests;
