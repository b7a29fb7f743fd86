//! The sizes of one chain, and what follows from them by addition alone.

use super::WornBore;
use super::dimension::Dimension;

/// How the inner link is made.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Construction {
    /// Inner plates pressed on a full-length bush: one rigid body.
    #[default]
    Bushed,
    /// No bush: each inner plate has its own formed collar, so the two plates are two bodies.
    Collared,
}

impl Construction {
    /// Every construction.
    pub const ALL: &'static [Self] = &[Self::Bushed, Self::Collared];

    /// The word of a scenario file.
    pub fn key(self) -> &'static str {
        match self {
            Self::Bushed => "bushed",
            Self::Collared => "collared",
        }
    }

    /// The construction of a word, if there is one.
    pub fn of_key(key: &str) -> Option<Self> {
        Self::ALL.iter().copied().find(|construction| construction.key() == key)
    }
}

/// The sizes of one chain, mm, unchecked. Fields are named as in a scenario's `chain`; what each
/// one is stands in [`Dimension`].
#[derive(Debug, Clone, Copy, PartialEq, Default)]
#[allow(missing_docs, reason = "each field is described once, in Dimension")]
pub struct Sizes {
    pub construction: Construction,
    pub pitch_mm: f64,
    pub roller_diameter_mm: f64,
    pub roller_bore_mm: f64,
    pub roller_length_mm: f64,
    pub inner_width_mm: f64,
    pub pin_diameter_mm: f64,
    pub pin_bore_mm: f64,
    pub pin_length_mm: f64,
    pub bore_mm: f64,
    pub barrel_mm: f64,
    pub bearing_length_mm: f64,
    pub mouth_radius_mm: f64,
    pub inner_plate_mm: f64,
    pub outer_plate_mm: f64,
    pub inner_plate_height_mm: f64,
    pub outer_plate_height_mm: f64,
    pub inner_waist_mm: f64,
    pub outer_waist_mm: f64,
    pub edge_chamfer_mm: f64,
    pub inner_overhang_mm: f64,
    pub outer_overhang_mm: f64,
    pub outer_spacing_mm: f64,
    /// How the joints have worn; no size of the chain as new.
    pub worn: WornBore,
}

impl Sizes {
    /// Sizes from those that are stated; the rest take their defaults, in the order that lets each
    /// default use the sizes before it. Required sizes that are not stated stay zero, which
    /// [`super::Chain::new`] refuses.
    pub fn from_stated(construction: Construction, stated: &[(Dimension, f64)]) -> Self {
        let mut sizes = Self { construction, ..Self::default() };
        for &dimension in Dimension::DEFAULT_ORDER {
            let given = stated.iter().rev().find(|(named, _)| *named == dimension);
            let value_mm = given.map_or_else(|| dimension.default_mm(&sizes), |(_, mm)| *mm);
            dimension.put(&mut sizes, value_mm);
        }
        sizes
    }

    /// Width over the inner plates, b2 = b1 + 2 ti, mm.
    pub fn inner_link_width_mm(&self) -> f64 {
        self.inner_width_mm + 2.0 * self.inner_plate_mm
    }

    /// Side gap a = b3 - b2, mm: the total; half of it each side when centred.
    pub fn side_gap_mm(&self) -> f64 {
        self.outer_spacing_mm - self.inner_link_width_mm()
    }

    /// Pin clearance c = d3 - d2, mm, on the diameter.
    pub fn pin_clearance_mm(&self) -> f64 {
        self.bore_mm - self.pin_diameter_mm
    }

    /// Clearance of the roller on its barrel, mm, on the diameter.
    pub fn roller_clearance_mm(&self) -> f64 {
        self.roller_bore_mm - self.barrel_mm
    }

    /// Clearance of the roller between the inner plates, mm: the total.
    pub fn roller_side_clearance_mm(&self) -> f64 {
        self.inner_width_mm - self.roller_length_mm
    }

    /// Length of one cylinder that bears on the pin, less its rounded ends, l_e = l - 2 r, mm.
    pub fn effective_length_mm(&self) -> f64 {
        self.bearing_length_mm - 2.0 * self.mouth_radius_mm
    }

    /// Bearing width B, mm: between the two outermost effective ends of the bore.
    pub fn bearing_width_mm(&self) -> f64 {
        match self.construction {
            Construction::Bushed => self.effective_length_mm(),
            Construction::Collared => self.inner_link_width_mm() - 2.0 * self.mouth_radius_mm,
        }
    }

    /// Area that bears on a pin, seen along the load, mm2: d2 times l_e of a bush, or times 2 l_e of
    /// two collars, which is the metal that is there.
    pub fn bearing_area_mm2(&self) -> f64 {
        let cylinders = match self.construction {
            Construction::Bushed => 1.0,
            Construction::Collared => 2.0,
        };
        self.pin_diameter_mm * cylinders * self.effective_length_mm()
    }

    /// Width over the pins' heads, mm.
    pub fn width_over_pins_mm(&self) -> f64 {
        self.pin_length_mm
    }

    /// Whether the bush is exactly as long as the inner link is wide, as it is where nobody states its
    /// length.
    pub fn is_flush(&self) -> bool {
        let (long_mm, wide_mm) = (self.bearing_length_mm, self.inner_link_width_mm());
        self.construction == Construction::Bushed && long_mm.total_cmp(&wide_mm).is_eq()
    }

    /// Makes the bush as long as the inner link is wide.
    pub fn make_flush(&mut self) {
        self.bearing_length_mm = self.inner_link_width_mm();
    }

    /// Mean distance of the pins, mm, while the chain is pulled straight and nothing stretches. An
    /// outer link keeps its pins p apart; across an inner link each pin has moved c/2 outward in its
    /// bore, so they stand p + c apart: p + c/2.
    pub fn pitch_under_load_mm(&self) -> f64 {
        self.pitch_mm + 0.5 * self.pin_clearance_mm()
    }

    /// Where the flat face of an inner plate ends, mm past the pin's centre.
    pub fn inner_reach_mm(&self) -> f64 {
        self.inner_overhang_mm - self.edge_chamfer_mm
    }

    /// Where the flat face of an outer plate ends, mm past the pin's centre.
    pub fn outer_reach_mm(&self) -> f64 {
        self.outer_overhang_mm - self.edge_chamfer_mm
    }
}
