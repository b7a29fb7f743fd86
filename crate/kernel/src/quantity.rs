//! The catalogue of every quantity that follows from the sizes: its key, its unit and how it is
//! worked out.
//!
//! A line added here can be demanded of a chain, shown beside a slider and written in a report.

use crate::chain::{Dimension, Pair, Sizes};
use crate::contact::Play;

/// Millimetres in an inch, exactly.
pub const MM_PER_INCH: f64 = 25.4;

macro_rules! catalogue {
    ($( $name:ident $key:ident $doc:literal $of:expr ; )+) => {
        /// One quantity that follows from the sizes of a chain.
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
        pub enum Quantity { $( #[doc = $doc] $name, )+ }

        impl Quantity {
            /// Every quantity, in the order of a report.
            pub const ALL: &'static [Self] = &[ $( Self::$name, )+ ];

            /// The key in a report and in a scenario's `demands`; it ends in the unit.
            pub fn key(self) -> &'static str {
                match self { $( Self::$name => stringify!($key), )+ }
            }

            /// The quantity of these sizes, in its unit.
            pub fn of(self, sizes: &Sizes) -> f64 {
                let of: fn(&Sizes) -> f64 = match self { $( Self::$name => $of, )+ };
                of(sizes)
            }

            /// The quantity of each of many chains, in its unit.
            pub fn of_each(self, chains: &[Sizes], values: &mut [f64]) {
                match self { $( Self::$name => each(chains, values, $of), )+ }
            }
        }
    };
}

/// A number of each of many chains.
#[inline]
pub(crate) fn each(chains: &[Sizes], values: &mut [f64], of: impl Fn(&Sizes) -> f64) {
    values.iter_mut().zip(chains).for_each(|(value, sizes)| *value = of(sizes));
}

catalogue! {
    InnerLinkWidth inner_link_width_mm "Width over the inner plates, b2 = b1 + 2 ti."
        Sizes::inner_link_width_mm;
    SideGap side_gap_mm "Side gap a = b3 - b2, in total."
        Sizes::side_gap_mm;
    PinClearance pin_clearance_mm "Pin clearance c = d3 - d2, on the diameter."
        Sizes::pin_clearance_mm;
    RollerClearance roller_clearance_mm "Roller bore less barrel, on the diameter."
        Sizes::roller_clearance_mm;
    RollerSideClearance roller_side_clearance_mm "Inner width less roller length, in total."
        Sizes::roller_side_clearance_mm;
    BearingWidth bearing_width_mm "Between the two outermost effective ends of the bore, B."
        Sizes::bearing_width_mm;
    WidthOverPins width_over_pins_mm "Over the heads of a pin."
        Sizes::width_over_pins_mm;
    YawLimit yaw_limit_rad "The inner link against one held outer link."
        |sizes| Play::of(sizes).yaw.angle_rad;
    OffsetLimit offset_limit_mm "The inner link aside without turning, each way."
        |sizes| Play::of(sizes).offset_mm;
    TurnLimit turn_limit_rad "The next outer link against the held one, across one inner link."
        |sizes| Play::of(sizes).turn.angle_rad;
    ShearLimit shear_limit_rad "The inner link between two outer links held parallel."
        |sizes| Play::of(sizes).shear.angle_rad;
    TwistLimit twist_limit_rad "The inner link about the chain's own axis."
        |sizes| Play::of(sizes).twist.angle_rad;
    SideBow side_bow_mm_per_m "Bow of a free strand laid on its side, without lateral play."
        |sizes| Play::of(sizes).side_bow_mm_per_m;
}

/// What a larger size of a dimension does to how far a chain can give, everything else as it was:
/// 1 when it can only give more, -1 when it can only give less, 0 when it makes no difference.
pub fn loosening(dimension: Dimension) -> f64 {
    use Dimension as D;
    match dimension {
        D::Bore | D::MouthRadius | D::EdgeChamfer | D::OuterSpacing | D::RollerBore => 1.0,
        D::Pitch | D::InnerWidth | D::PinDiameter | D::Barrel | D::RollerLength => -1.0,
        D::BearingLength | D::InnerPlate | D::InnerPlateHeight | D::OuterPlateHeight => -1.0,
        D::InnerOverhang | D::OuterOverhang => -1.0,
        D::RollerDiameter | D::PinBore | D::PinLength | D::OuterPlate => 0.0,
        D::InnerWaist | D::OuterWaist => 0.0,
    }
}

/// The unit of a quantity or dimension.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Unit {
    /// Millimetres.
    Mm,
    /// Radians.
    Rad,
    /// Millimetres in a metre of chain.
    MmPerM,
}

impl Unit {
    /// The unit that a key ends in.
    pub fn of_key(key: &str) -> Self {
        match key {
            _ if key.ends_with("_mm_per_m") => Self::MmPerM,
            _ if key.ends_with("_rad") => Self::Rad,
            _ => Self::Mm,
        }
    }

    /// The id of the unit's word.
    pub fn key(self) -> &'static str {
        match self {
            Self::Mm => "mm",
            Self::Rad => "rad",
            Self::MmPerM => "mm_per_m",
        }
    }
}

impl Quantity {
    /// Those of a report's `geometry`: sums and differences of sizes.
    pub const GEOMETRY: &'static [Self] = Self::ALL.split_at(Self::YawLimit as usize).0;
    /// Those of a report's `play`: how far a chain that goes together can give.
    pub const PLAY: &'static [Self] = Self::ALL.split_at(Self::YawLimit as usize).1;

    /// The quantity of a key, if there is one.
    pub fn of_key(key: &str) -> Option<Self> {
        Self::ALL.iter().copied().find(|quantity| quantity.key() == key)
    }

    /// The gap between a pair of parts.
    pub fn of_pair(pair: Pair) -> Self {
        match pair {
            Pair::PinBore => Self::PinClearance,
            Pair::SideGap => Self::SideGap,
            Pair::RollerBarrel => Self::RollerClearance,
            Pair::RollerPlates => Self::RollerSideClearance,
        }
    }

    /// Its unit.
    pub fn unit(self) -> Unit {
        Unit::of_key(self.key())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::chain::{Chain, Construction};

    #[test]
    fn geometry_ends_where_play_begins() {
        assert_eq!(Quantity::GEOMETRY.last(), Some(&Quantity::WidthOverPins));
        assert_eq!(Quantity::PLAY.first(), Some(&Quantity::YawLimit));
    }

    #[test]
    fn the_gap_of_a_pair_is_its_quantity() {
        let sizes = chain(Construction::Bushed);
        for &pair in Pair::ALL {
            let quantity = Quantity::of_pair(pair);
            assert_eq!(quantity.of(&sizes).to_bits(), pair.gap_mm(&sizes).to_bits());
        }
    }

    /// A chain of an inch, its mouths and edges broken.
    fn chain(construction: Construction) -> Sizes {
        let stated = [
            (Dimension::Pitch, 25.4),
            (Dimension::RollerDiameter, 15.875),
            (Dimension::InnerWidth, 15.875),
            (Dimension::PinDiameter, 7.9),
            (Dimension::MouthRadius, 0.3),
            (Dimension::EdgeChamfer, 0.3),
        ];
        Sizes::from_stated(construction, &stated)
    }

    #[test]
    fn a_larger_size_moves_every_limit_the_way_that_is_said() {
        const STEPS_MM: [f64; 4] = [-0.2, -0.01, 0.01, 0.2];
        const ROUNDING: f64 = 1e-12;
        let mut compared = 0;
        for &construction in Construction::ALL {
            let middle = chain(construction);
            for &dimension in Dimension::ALL {
                for step_mm in STEPS_MM {
                    let mut moved = middle;
                    dimension.put(&mut moved, dimension.of(&middle) + step_mm);
                    let goes_together = Chain::new(moved).is_ok_and(|chain| chain.goes_together());
                    for &limit in Quantity::PLAY.iter().filter(|_| goes_together) {
                        let more = (limit.of(&moved) - limit.of(&middle)) * step_mm.signum();
                        compared += 1;
                        let (key, limit) = (dimension.key(), limit.key());
                        match loosening(dimension) {
                            0.0 => assert!(more.abs() <= ROUNDING, "{key} {limit} {more}"),
                            way => assert!(way * more >= -ROUNDING, "{key} {limit} {more}"),
                        }
                    }
                }
            }
        }
        assert!(compared > 600, "{compared} comparisons");
    }

    #[test]
    fn a_quantity_is_found_by_its_key_and_has_a_number() {
        let sizes = chain(Construction::Bushed);
        for &quantity in Quantity::ALL {
            assert_eq!(Quantity::of_key(quantity.key()), Some(quantity));
            assert!(quantity.key().ends_with(quantity.unit().key()));
            assert!(quantity.of(&sizes) > 0.0, "{}", quantity.key());
        }
    }
}
