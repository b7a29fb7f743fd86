//! The catalogue of every size that can be set: its key, the letter of ISO 606 where it has one,
//! and the size it takes when nobody states it.
//!
//! A line added here is a slider, a table column, a limit and a lesson target at once.

use super::sizes::{Construction, Sizes};

macro_rules! catalogue {
    ($( $name:ident $key:ident $letter:literal $doc:literal ; )+) => {
        /// One size of the chain, in mm.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
        pub enum Dimension { $( #[doc = $doc] $name, )+ }

        impl Dimension {
            /// Every dimension, in the order of the catalogue.
            pub const ALL: &'static [Self] = &[ $( Self::$name, )+ ];

            /// The key in a scenario's `chain`; it ends in the unit.
            pub fn key(self) -> &'static str {
                match self { $( Self::$name => stringify!($key), )+ }
            }

            /// The letter of the drawing; empty where it has none.
            pub fn letter(self) -> &'static str {
                match self { $( Self::$name => $letter, )+ }
            }

            /// The size that `sizes` holds for this dimension, mm.
            pub fn of(self, sizes: &Sizes) -> f64 {
                match self { $( Self::$name => sizes.$key, )+ }
            }

            /// Puts a size in its place, mm.
            pub fn put(self, sizes: &mut Sizes, value_mm: f64) {
                match self { $( Self::$name => sizes.$key = value_mm, )+ }
            }

            /// Puts one size into each of many chains, mm.
            pub fn put_each(self, chains: &mut [Sizes], values_mm: &[f64]) {
                let each = chains.iter_mut().zip(values_mm);
                match self { $( Self::$name => each.for_each(|(s, mm)| s.$key = *mm), )+ }
            }
        }
    };
}

catalogue! {
    Pitch            pitch_mm              "p"  "Pin centre to pin centre.";
    RollerDiameter   roller_diameter_mm    "d1" "Outside diameter of the roller.";
    RollerBore       roller_bore_mm        ""   "Hole of the roller.";
    RollerLength     roller_length_mm      ""   "Length of the roller along its axis.";
    InnerWidth       inner_width_mm        "b1" "Between the inner plates.";
    PinDiameter      pin_diameter_mm       "d2" "Diameter of the pin.";
    PinBore          pin_bore_mm           ""   "Hole along the pin; zero when solid.";
    PinLength        pin_length_mm         ""   "Length of the pin over its heads.";
    Bore             bore_mm               "d3" "Hole of the bush or collar.";
    Barrel           barrel_mm             ""   "Outside diameter of the bush or collar.";
    BearingLength    bearing_length_mm     "l"  "Length of the bush, or of one collar from the outer face inward.";
    MouthRadius      mouth_radius_mm       "r"  "Rounding of the ends of the bore.";
    InnerPlate       inner_plate_mm        "ti" "Thickness of an inner plate.";
    OuterPlate       outer_plate_mm        "to" "Thickness of an outer plate.";
    InnerPlateHeight inner_plate_height_mm "h2" "Height of an inner plate at the eye.";
    OuterPlateHeight outer_plate_height_mm "h3" "Height of an outer plate at the eye.";
    InnerWaist       inner_waist_mm        ""   "Height of an inner plate at its waist.";
    OuterWaist       outer_waist_mm        ""   "Height of an outer plate at its waist.";
    EdgeChamfer      edge_chamfer_mm       ""   "Chamfer of the plates' edges.";
    InnerOverhang    inner_overhang_mm     "gi" "How far an inner plate reaches past the pin's centre.";
    OuterOverhang    outer_overhang_mm     "go" "How far an outer plate reaches past the pin's centre.";
    OuterSpacing     outer_spacing_mm      "b3" "Between the outer plates.";
}

impl Dimension {
    /// The dimension of a key, if there is one.
    pub fn of_key(key: &str) -> Option<Self> {
        Self::ALL.iter().copied().find(|dimension| dimension.key() == key)
    }

    /// Whether a scenario must state it.
    pub fn is_required(self) -> bool {
        matches!(self, Self::Pitch | Self::RollerDiameter | Self::InnerWidth | Self::PinDiameter)
    }

    /// The size that is taken when nobody states one, mm, from the sizes before it in
    /// [`Dimension::DEFAULT_ORDER`]; required dimensions return what `sizes` holds.
    ///
    /// The rules are chosen for a plausible chain, not taken from a standard, except the pin's
    /// clearance of 0.0010 in and the plate heights 0.95 p and 0.82 p, which are the bounds of
    /// ASME/ANSI B29.1M.
    pub fn default_mm(self, sizes: &Sizes) -> f64 {
        const PIN_CLEARANCE_MM: f64 = 0.0254;
        let s = sizes;
        match self {
            Self::Pitch | Self::RollerDiameter | Self::InnerWidth | Self::PinDiameter => self.of(s),
            Self::PinBore | Self::MouthRadius | Self::EdgeChamfer => 0.0,
            Self::InnerPlate => 0.12 * s.pitch_mm,
            Self::OuterPlate => s.inner_plate_mm,
            Self::Bore => s.pin_diameter_mm + PIN_CLEARANCE_MM,
            Self::Barrel => s.bore_mm + 0.45 * (s.roller_diameter_mm - s.bore_mm),
            Self::RollerBore => s.barrel_mm + 0.006 * s.pitch_mm,
            Self::RollerLength => s.inner_width_mm - 0.012 * s.pitch_mm,
            Self::BearingLength => match s.construction {
                Construction::Bushed => s.inner_link_width_mm(),
                Construction::Collared => 0.3 * s.inner_link_width_mm(),
            },
            Self::InnerPlateHeight => 0.95 * s.pitch_mm,
            Self::OuterPlateHeight => 0.82 * s.pitch_mm,
            Self::InnerWaist => 0.72 * s.inner_plate_height_mm,
            Self::OuterWaist => 0.72 * s.outer_plate_height_mm,
            Self::InnerOverhang => 0.5 * s.inner_plate_height_mm,
            Self::OuterOverhang => 0.5 * s.outer_plate_height_mm,
            Self::OuterSpacing => s.inner_link_width_mm() + 0.016 * s.pitch_mm,
            Self::PinLength => s.outer_spacing_mm + 2.5 * s.outer_plate_mm,
        }
    }

    /// The order in which defaults can be taken: each needs only those before it.
    pub const DEFAULT_ORDER: &'static [Self] = &[
        Self::Pitch,
        Self::RollerDiameter,
        Self::InnerWidth,
        Self::PinDiameter,
        Self::PinBore,
        Self::MouthRadius,
        Self::EdgeChamfer,
        Self::InnerPlate,
        Self::OuterPlate,
        Self::Bore,
        Self::Barrel,
        Self::RollerBore,
        Self::RollerLength,
        Self::BearingLength,
        Self::InnerPlateHeight,
        Self::OuterPlateHeight,
        Self::InnerWaist,
        Self::OuterWaist,
        Self::InnerOverhang,
        Self::OuterOverhang,
        Self::OuterSpacing,
        Self::PinLength,
    ];
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_dimension_has_its_own_key_and_is_found_by_it() {
        for &dimension in Dimension::ALL {
            assert_eq!(Dimension::of_key(dimension.key()), Some(dimension));
            assert!(dimension.key().ends_with("_mm"));
        }
        assert_eq!(Dimension::of_key("pitch"), None);
    }

    #[test]
    fn what_is_put_is_what_is_read() {
        let mut sizes = Sizes::default();
        for (i, &dimension) in Dimension::ALL.iter().enumerate() {
            dimension.put(&mut sizes, i as f64);
        }
        for (i, &dimension) in Dimension::ALL.iter().enumerate() {
            assert_eq!(dimension.of(&sizes).to_bits(), (i as f64).to_bits());
        }
    }

    #[test]
    fn the_default_order_holds_every_dimension_once() {
        let mut order = Dimension::DEFAULT_ORDER.to_vec();
        order.sort_unstable();
        assert_eq!(order, Dimension::ALL);
    }
}
