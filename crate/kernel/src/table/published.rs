//! The sizes of roller chains that are published.
//!
//! Source: ASME/ANSI B29.1M, nominal sizes and rules, as reprinted in public dimension tables.
//! Its sizes without a roller (25 and 35) print the bush's diameter in the roller's column (from
//! memory); here that diameter is the roller's, with a bush inside it that is chosen.

use crate::chain::{Construction, Dimension, Sizes};
use crate::quantity::MM_PER_INCH;
use crate::scenario::{FORMAT, Value};

/// The largest pin exceeds its nominal diameter by this.
const PIN_EXCESS_INCH: f64 = 0.0005;
/// The smallest hole of a bush exceeds the pin's nominal diameter by this.
const HOLE_EXCESS_INCH: f64 = 0.0015;
/// The widest inner link is its inner width and so many plates.
const WIDEST_IN_PLATES: f64 = 2.12;
/// The smallest total gap between an inner link and its outer plates.
const LEAST_SIDE_GAP_INCH: f64 = 0.002;
/// The highest inner plate, in pitches.
const INNER_HEIGHT_IN_PITCHES: f64 = 0.95;
/// The highest outer plate, in pitches.
const OUTER_HEIGHT_IN_PITCHES: f64 = 0.82;
/// The size whose plates the height rules leave out: a lighter chain of half an inch.
const LOWER_PLATES: &str = "41";
/// The plate heights of that size, in pitches: chosen.
const LOWER_INNER_IN_PITCHES: f64 = 0.77;
const LOWER_OUTER_IN_PITCHES: f64 = 0.66;

/// A published size: nominal, in inches as printed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Published {
    /// The number that the size is called by.
    pub number: &'static str,
    /// Pitch P.
    pub pitch_inch: f64,
    /// Roller diameter.
    pub roller_inch: f64,
    /// Width W between the inner plates.
    pub width_inch: f64,
    /// Pin diameter.
    pub pin_inch: f64,
    /// Plate thickness.
    pub plate_inch: f64,
}

macro_rules! rows {
    ($( $number:literal $pitch:literal $roller:literal $width:literal $pin:literal $plate:literal ; )+) => {
        &[ $( Published {
            number: $number, pitch_inch: $pitch, roller_inch: $roller,
            width_inch: $width, pin_inch: $pin, plate_inch: $plate,
        }, )+ ]
    };
}

/// Every published size: number, pitch, roller, width, pin, plate.
pub const PUBLISHED: &[Published] = rows! {
    "25"  0.250 0.130 0.125 0.0905 0.030;
    "35"  0.375 0.200 0.188 0.141  0.050;
    "41"  0.500 0.306 0.250 0.141  0.050;
    "40"  0.500 0.312 0.312 0.156  0.060;
    "50"  0.625 0.400 0.375 0.200  0.080;
    "60"  0.750 0.469 0.500 0.234  0.094;
    "80"  1.000 0.625 0.625 0.312  0.125;
    "100" 1.250 0.750 0.750 0.375  0.156;
    "120" 1.500 0.875 1.000 0.437  0.187;
};

/// Where the sizes come from.
const STANDARD: &str = "ASME/ANSI B29.1M";

/// A chain filled from a published size.
#[derive(Debug, Clone, PartialEq)]
pub struct Filled {
    /// The number of the size.
    pub number: &'static str,
    /// How its inner link is made.
    pub construction: Construction,
    /// The sizes to state, mm; the rest take their defaults.
    pub stated: Vec<(Dimension, f64)>,
    /// What neither the standard nor its rules fix.
    pub chosen: Vec<Dimension>,
}

impl Filled {
    /// All the sizes.
    pub fn sizes(&self) -> Sizes {
        Sizes::from_stated(self.construction, &self.stated)
    }

    /// A scenario file of its own: titled by the size's number, with the standard as its source, and
    /// with nothing but the chain.
    pub fn file(&self) -> Value {
        let sizes = self.stated.iter();
        let sizes = sizes.map(|(dimension, mm)| (dimension.key().to_owned(), Value::from(*mm)));
        let construction = ("construction".to_owned(), Value::text(self.construction.key()));
        Value::object([
            ("format", Value::from(f64::from(FORMAT))),
            ("title", Value::text(self.number)),
            ("source", Value::text(STANDARD)),
            ("chain", Value::Object([construction].into_iter().chain(sizes).collect())),
        ])
    }
}

impl Published {
    /// The size of a number.
    pub fn of_number(number: &str) -> Option<&'static Self> {
        PUBLISHED.iter().find(|size| size.number == number)
    }

    /// The size that a chain has: the same pitch, roller, width, pin and plates to a nanometre.
    pub fn recognise(sizes: &Sizes) -> Option<&'static Self> {
        const SAME_MM: f64 = 1e-6;
        let same = |(dimension, mm): (Dimension, f64)| (dimension.of(sizes) - mm).abs() <= SAME_MM;
        PUBLISHED.iter().find(|size| size.nominal().into_iter().all(same))
    }

    /// The pitch, mm.
    pub fn pitch_mm(&self) -> f64 {
        self.pitch_inch * MM_PER_INCH
    }

    /// The nominal sizes that are printed, mm.
    pub fn nominal(&self) -> [(Dimension, f64); 6] {
        [
            (Dimension::Pitch, self.pitch_mm()),
            (Dimension::RollerDiameter, self.roller_inch * MM_PER_INCH),
            (Dimension::InnerWidth, self.width_inch * MM_PER_INCH),
            (Dimension::PinDiameter, self.pin_inch * MM_PER_INCH),
            (Dimension::InnerPlate, self.plate_inch * MM_PER_INCH),
            (Dimension::OuterPlate, self.plate_inch * MM_PER_INCH),
        ]
    }

    /// The largest pin: nominal + 0.0005 in, mm.
    pub fn largest_pin_mm(&self) -> f64 {
        (self.pin_inch + PIN_EXCESS_INCH) * MM_PER_INCH
    }

    /// The smallest hole of the bush: the pin's nominal diameter + 0.0015 in, mm.
    pub fn smallest_hole_mm(&self) -> f64 {
        (self.pin_inch + HOLE_EXCESS_INCH) * MM_PER_INCH
    }

    /// The widest inner link: W + 2.12 t, mm.
    pub fn widest_inner_link_mm(&self) -> f64 {
        (self.width_inch + WIDEST_IN_PLATES * self.plate_inch) * MM_PER_INCH
    }

    /// The narrowest space between the outer plates: 0.002 in over the widest inner link, mm.
    pub fn narrowest_outer_spacing_mm(&self) -> f64 {
        self.widest_inner_link_mm() + LEAST_SIDE_GAP_INCH * MM_PER_INCH
    }

    /// The highest inner plate: 0.95 P, mm; none where the rule leaves the size out.
    pub fn highest_inner_plate_mm(&self) -> Option<f64> {
        self.height_mm(INNER_HEIGHT_IN_PITCHES)
    }

    /// The highest outer plate: 0.82 P, mm; none where the rule leaves the size out.
    pub fn highest_outer_plate_mm(&self) -> Option<f64> {
        self.height_mm(OUTER_HEIGHT_IN_PITCHES)
    }

    fn height_mm(&self, in_pitches: f64) -> Option<f64> {
        (self.number != LOWER_PLATES).then_some(in_pitches * self.pitch_inch * MM_PER_INCH)
    }

    /// The sizes that the standard or one of its rules fixes, mm: nominal as printed, and what the
    /// rules bound at its bound (the smallest hole, the highest plates, the narrowest outer spacing).
    pub fn fixed(&self) -> Vec<(Dimension, f64)> {
        let bounded = [
            (Dimension::Bore, Some(self.smallest_hole_mm())),
            (Dimension::OuterSpacing, Some(self.narrowest_outer_spacing_mm())),
            (Dimension::InnerPlateHeight, self.highest_inner_plate_mm()),
            (Dimension::OuterPlateHeight, self.highest_outer_plate_mm()),
        ];
        let bounded = bounded.into_iter().filter_map(|(dimension, mm)| Some((dimension, mm?)));
        self.nominal().into_iter().chain(bounded).collect()
    }

    /// What [`Published::fixed`] leaves open, in the order of the catalogue.
    pub fn chosen(&self) -> Vec<Dimension> {
        let fixed = self.fixed();
        let is_open = |dimension: &Dimension| fixed.iter().all(|(named, _)| named != dimension);
        Dimension::ALL.iter().copied().filter(is_open).collect()
    }

    /// A chain of this size. The standard is about chains with a bush; a collared chain of a
    /// published size has its printed sizes and no more.
    pub fn fill(&self, construction: Construction) -> Filled {
        let mut stated = self.fixed();
        if self.number == LOWER_PLATES {
            let pitch_mm = self.pitch_inch * MM_PER_INCH;
            stated.push((Dimension::InnerPlateHeight, LOWER_INNER_IN_PITCHES * pitch_mm));
            stated.push((Dimension::OuterPlateHeight, LOWER_OUTER_IN_PITCHES * pitch_mm));
        }
        Filled { number: self.number, construction, stated, chosen: self.chosen() }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::chain::Chain;
    use crate::scenario::Scenario;

    #[test]
    fn every_published_size_fills_a_chain_that_goes_together_and_is_recognised() {
        for size in PUBLISHED {
            for &construction in Construction::ALL {
                let filled = size.fill(construction);
                let chain = Chain::new(filled.sizes()).expect(size.number);
                assert!(chain.goes_together(), "{}: {:?}", size.number, chain.interference());
                assert_eq!(Published::recognise(&chain), Some(size));
                let scenario = Scenario::read(&filled.file()).expect(size.number);
                assert_eq!(scenario.chain.chain(), &chain);
            }
        }
    }

    #[test]
    fn a_dimension_is_either_fixed_or_chosen() {
        for size in PUBLISHED {
            assert_eq!(size.fixed().len() + size.chosen().len(), Dimension::ALL.len());
        }
        let lighter = Published::of_number("41").expect("it is in the table");
        assert!(lighter.chosen().contains(&Dimension::InnerPlateHeight));
        assert_eq!(Published::of_number("42"), None);
    }

    #[test]
    fn a_changed_size_is_no_longer_recognised() {
        let mut sizes = PUBLISHED[0].fill(Construction::Bushed).sizes();
        sizes.pin_diameter_mm += 0.001;
        assert_eq!(Published::recognise(&sizes), None);
    }
}
