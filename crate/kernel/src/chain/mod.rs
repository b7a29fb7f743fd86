//! The chain: its sizes, what makes a set of sizes a chain, and which chains do not go together.
//!
//! Letters are those of ISO 606 where it has one; lengths are in mm. Three states are possible.
//! A shape that cannot exist is refused by [`Chain::new`] with one [`Error`] for each fault. A good
//! shape whose parts overlap by up to 0.05 p is a chain that does not go together: it can be drawn,
//! and [`Chain::interference`] names each overlap, but nothing is solved on it. The rest are chains.

mod dimension;
pub mod outline;
mod sizes;
mod worn;

pub use dimension::Dimension;
pub use sizes::{Construction, Sizes};
pub use worn::WornBore;

use crate::error::{Error, Rule};

/// A set of sizes that can be drawn: the shape of every part exists.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Chain(Sizes);

impl core::ops::Deref for Chain {
    type Target = Sizes;

    fn deref(&self) -> &Sizes {
        &self.0
    }
}

/// Two parts that overlap.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Interference {
    /// Which two.
    pub between: Pair,
    /// By how much, mm, a positive number.
    pub too_little_mm: f64,
}

/// A pair of parts with a gap between them, named by the gap.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Pair {
    /// Pin in bore.
    PinBore,
    /// Inner link between the outer plates.
    SideGap,
    /// Roller on barrel.
    RollerBarrel,
    /// Roller between the inner plates.
    RollerPlates,
}

impl Pair {
    /// Every pair.
    pub const ALL: &'static [Self] =
        &[Self::PinBore, Self::SideGap, Self::RollerBarrel, Self::RollerPlates];

    /// The key in a report.
    pub fn key(self) -> &'static str {
        match self {
            Self::PinBore => "pin_bore",
            Self::SideGap => "side_gap",
            Self::RollerBarrel => "roller_barrel",
            Self::RollerPlates => "roller_plates",
        }
    }

    /// The gap, mm: on the diameter or in total; negative where the parts overlap.
    pub fn gap_mm(self, sizes: &Sizes) -> f64 {
        match self {
            Self::PinBore => sizes.pin_clearance_mm(),
            Self::SideGap => sizes.side_gap_mm(),
            Self::RollerBarrel => sizes.roller_clearance_mm(),
            Self::RollerPlates => sizes.roller_side_clearance_mm(),
        }
    }

    /// The dimension that a person moves to change this gap and no other.
    pub fn moves(self) -> Dimension {
        match self {
            Self::PinBore => Dimension::Bore,
            Self::SideGap => Dimension::OuterSpacing,
            Self::RollerBarrel => Dimension::RollerBore,
            Self::RollerPlates => Dimension::RollerLength,
        }
    }
}

/// The largest overlap of a chain that can still be drawn, as a share of the pitch.
const DRAWN_OVERLAP: f64 = 0.05;
/// No size of a chain exceeds this, mm.
const LARGEST_MM: f64 = 1000.0;
/// How much of what a joint can lose is shown as worn away at most.
const LAST_METAL: f64 = 0.98;
/// Gaps above this, mm, are an overlap of nothing but rounding.
const ROUNDING_MM: f64 = -1e-12;

impl Chain {
    /// A chain from its sizes.
    ///
    /// # Errors
    /// One error for each rule that the sizes break; a size that is no positive number is reported
    /// alone, without the rules that it would drag along.
    pub fn new(sizes: Sizes) -> Result<Self, Vec<Error>> {
        let mut faults = faults_of_each(&sizes);
        if faults.is_empty() {
            faults = faults_of_shape(&sizes);
        }
        if faults.is_empty() { Ok(Self(sizes)) } else { Err(faults) }
    }

    /// The sizes.
    pub fn sizes(&self) -> &Sizes {
        &self.0
    }

    /// The same chain with joints that have worn so deep, pin and bore alike, mm; no deeper than leaves
    /// a little metal.
    pub fn worn(&self, depth_mm: f64) -> Self {
        let deepest_mm = LAST_METAL * WornBore::deepest_mm(&self.0);
        Self(Sizes { worn: WornBore::shared(depth_mm.min(deepest_mm)), ..self.0 })
    }

    /// Every overlap between the parts; empty for a chain that goes together.
    pub fn interference(&self) -> Vec<Interference> {
        let overlap = |pair: &Pair| (*pair, pair.gap_mm(&self.0));
        Pair::ALL
            .iter()
            .map(overlap)
            .filter(|(_, gap_mm)| *gap_mm < ROUNDING_MM)
            .map(|(between, gap_mm)| Interference { between, too_little_mm: -gap_mm })
            .collect()
    }

    /// Whether the parts go together, so that a pose can be solved.
    pub fn goes_together(&self) -> bool {
        self.interference().is_empty()
    }
}

/// Rules on single sizes.
fn faults_of_each(sizes: &Sizes) -> Vec<Error> {
    let may_be_zero = |dimension| {
        matches!(dimension, Dimension::PinBore | Dimension::MouthRadius | Dimension::EdgeChamfer)
    };
    let fault = |dimension: Dimension| {
        let mm = dimension.of(sizes);
        let rule = match mm {
            _ if !mm.is_finite() => Rule::Finite,
            _ if mm < 0.0 && may_be_zero(dimension) => Rule::NotNegative,
            _ if mm <= 0.0 && !may_be_zero(dimension) => Rule::Positive,
            _ if mm > LARGEST_MM => Rule::AtMost { limit: LARGEST_MM },
            _ => return None,
        };
        Some(Error::number(dimension.key(), mm, rule))
    };
    Dimension::ALL.iter().filter_map(|&dimension| fault(dimension)).collect()
}

/// Rules between sizes, each with the dimension that it is about.
const RULES: usize = 21;

/// What is left to each rule between sizes, mm: less than nothing where it is broken. `below` and
/// `above` also break when nothing is left.
fn rules_of_shape(s: &Sizes) -> [(Dimension, f64, Rule); RULES] {
    use Dimension as D;
    let below = |d: D, of, limit| (d, limit - d.of(s), Rule::BelowSize { limit, of });
    let at_most = |d: D, of, limit| (d, limit - d.of(s), Rule::AtMostSize { limit, of });
    let above = |d: D, of, limit| (d, d.of(s) - limit, Rule::AboveSize { limit, of });
    let at_least = |d: D, of, limit| (d, d.of(s) - limit, Rule::AtLeastSize { limit, of });
    let (p, b2) = (s.pitch_mm, s.inner_link_width_mm());
    let overlap = DRAWN_OVERLAP * p;
    let wall_mm = 0.5 * (s.barrel_mm - s.bore_mm);
    let longest_bearing = match s.construction {
        Construction::Bushed => at_most(D::BearingLength, "inner_link_width", b2),
        Construction::Collared => at_most(D::BearingLength, "half_inner_link_width", 0.5 * b2),
    };
    let thinnest_plate = s.inner_plate_mm.min(s.outer_plate_mm);
    [
        below(D::RollerDiameter, "pitch", p),
        below(D::RollerBore, "roller_diameter", s.roller_diameter_mm),
        below(D::PinBore, "pin_diameter", s.pin_diameter_mm),
        above(D::Barrel, "bore", s.bore_mm),
        longest_bearing,
        below(D::MouthRadius, "half_bearing_length", 0.5 * s.bearing_length_mm),
        at_most(D::MouthRadius, "barrel_wall", wall_mm),
        below(D::EdgeChamfer, "half_thinnest_plate", 0.5 * thinnest_plate),
        below(D::InnerOverhang, "half_pitch", 0.5 * p),
        below(D::OuterOverhang, "half_pitch", 0.5 * p),
        above(D::InnerOverhang, "half_barrel", 0.5 * s.barrel_mm + s.edge_chamfer_mm),
        above(D::OuterOverhang, "half_pin_diameter", 0.5 * s.pin_diameter_mm + s.edge_chamfer_mm),
        above(D::InnerPlateHeight, "barrel", s.barrel_mm),
        above(D::OuterPlateHeight, "pin_diameter", s.pin_diameter_mm),
        at_most(D::InnerWaist, "inner_plate_height", s.inner_plate_height_mm),
        at_most(D::OuterWaist, "outer_plate_height", s.outer_plate_height_mm),
        at_least(D::PinLength, "outer_link_width", s.outer_spacing_mm + 2.0 * s.outer_plate_mm),
        at_least(D::Bore, "pin_less_overlap", s.pin_diameter_mm - overlap),
        at_least(D::OuterSpacing, "inner_link_less_overlap", b2 - overlap),
        at_least(D::RollerBore, "barrel_less_overlap", s.barrel_mm - overlap),
        at_most(D::RollerLength, "inner_width_plus_overlap", s.inner_width_mm + overlap),
    ]
}

/// The rules between sizes that are broken.
fn faults_of_shape(s: &Sizes) -> Vec<Error> {
    let broken = |left: f64, rule: &Rule| match rule {
        Rule::BelowSize { .. } | Rule::AboveSize { .. } => left <= 0.0,
        _ => left < 0.0,
    };
    let fault = |(dimension, left, rule): (Dimension, f64, Rule)| {
        broken(left, &rule).then(|| Error::number(dimension.key(), dimension.of(s), rule))
    };
    rules_of_shape(s).into_iter().filter_map(fault).collect()
}

/// What is left, mm, to the rules that a chain and its parts must keep to go together: more than
/// nothing everywhere means that it does. Every entry falls or rises with a size no more than in
/// proportion and along straight lines, or bends downwards.
const LEFTS: usize = RULES + Dimension::ALL.len() + 4;

fn lefts(s: &Sizes) -> [f64; LEFTS] {
    let rules = rules_of_shape(s).into_iter().map(|(_, left, _)| left);
    let each = Dimension::ALL.iter().map(|dimension| match dimension {
        Dimension::PinBore | Dimension::MouthRadius | Dimension::EdgeChamfer => f64::MAX,
        dimension => dimension.of(s).min(LARGEST_MM - dimension.of(s)),
    });
    let gaps = Pair::ALL.iter().map(|pair| pair.gap_mm(s));
    let mut lefts = [0.0; LEFTS];
    for (left, value) in lefts.iter_mut().zip(rules.chain(each).chain(gaps)) {
        *left = value;
    }
    lefts
}

/// Whether every chain goes together whose sizes lie within these bounds about others: so far as
/// this can be told from the bounds alone. `moved` puts the sizes that follow others in place.
///
/// A rule's room is the least that it has about the middle less what each size alone can take of it;
/// as rooms are straight in every size, or bend downwards together with one other, no set within the
/// bounds has less.
pub fn all_go_together(
    about: &Sizes,
    bounds: &[(Dimension, f64, f64)],
    moved: impl Fn(&mut Sizes),
) -> bool {
    const ROUNDING_MM: f64 = 1e-9;
    let at = |dimension: Dimension, mm: f64| {
        let mut sizes = *about;
        dimension.put(&mut sizes, mm);
        moved(&mut sizes);
        lefts(&sizes)
    };
    let middle = lefts(about);
    let mut least = middle;
    for &(dimension, low_mm, high_mm) in bounds {
        let may_be_negative = matches!(
            dimension,
            Dimension::PinBore | Dimension::MouthRadius | Dimension::EdgeChamfer
        );
        if may_be_negative && low_mm < 0.0 {
            return false;
        }
        let ends = [at(dimension, low_mm), at(dimension, high_mm)];
        for (i, room) in least.iter_mut().enumerate() {
            *room -= (middle[i] - ends[0][i].min(ends[1][i])).max(0.0);
        }
    }
    least.iter().all(|room| *room > ROUNDING_MM)
}

#[cfg(test)]
pub(crate) mod sample;
#[cfg(test)]
mod tests;
