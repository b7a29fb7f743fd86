//! Gaps as passages for a liquid.

use core::f64::consts::PI;

/// The factor of flow between two plane walls, 1/12 (plane Poiseuille flow).
const SLOT: f64 = 12.0;
/// How much more an eccentric annulus passes: 1 + 1.5 e^2.
const ECCENTRIC: f64 = 1.5;

/// A gap that a liquid flows through: between two near walls, whatever bends them.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Passage {
    /// Along the flow, mm.
    pub length_mm: f64,
    /// Across it, along the walls, mm.
    pub width_mm: f64,
    /// From wall to wall, the mean, mm.
    pub height_mm: f64,
    /// How uneven the height is round the joint: 0 even, 1 where the walls touch on one side.
    pub eccentricity: f64,
}

/// A slot between flat walls.
pub fn slot(length_mm: f64, width_mm: f64, height_mm: f64) -> Passage {
    Passage { length_mm, width_mm, height_mm: height_mm.max(0.0), eccentricity: 0.0 }
}

/// The gap between a pin and its hole: mean radius r, radial gap h, eccentricity e. The slot formula on
/// the width 2 pi r gives q = pi r h^3 dp (1 + 1.5 e^2) / (6 mu L). Source: textbook gap problem.
pub fn annulus(length_mm: f64, radius_mm: f64, radial_gap_mm: f64, eccentricity: f64) -> Passage {
    let eccentricity = eccentricity.abs().min(1.0);
    Passage { eccentricity, ..slot(length_mm, 2.0 * PI * radius_mm, radial_gap_mm) }
}

/// Flow between two flat rings from an outer radius R to an inner one r. With the width
/// 2 pi (R - r) / ln(R / r) the slot formula is exact: q = pi h^3 dp / (6 mu ln(R / r)). A tilt of one
/// ring makes its height uneven like an annulus' (source: derived).
pub fn radial_slot(outer_mm: f64, inner_mm: f64, height_mm: f64, tilt_rad: f64) -> Passage {
    let length_mm = outer_mm - inner_mm;
    let width_mm = 2.0 * PI * length_mm / libm::log(outer_mm / inner_mm);
    let lift_mm = 0.5 * (outer_mm + inner_mm) * tilt_rad.abs();
    let eccentricity = if height_mm > 0.0 { (lift_mm / height_mm).min(1.0) } else { 0.0 };
    Passage { eccentricity, ..slot(length_mm, width_mm, height_mm) }
}

impl Passage {
    /// Whether anything flows.
    pub fn is_open(&self) -> bool {
        self.height_mm > 0.0 && self.length_mm > 0.0
    }

    /// Flow for a pressure, mm^3/s a Pa: w h^3 (1 + 1.5 e^2) / (12 mu L), mu in Pa s; the wall
    /// friction of a slow flow of even viscosity, its ends left out.
    pub fn conductance(&self, viscosity_pa_s: f64) -> f64 {
        if !self.is_open() {
            return 0.0;
        }
        let cube = self.height_mm * self.height_mm * self.height_mm;
        let uneven = 1.0 + ECCENTRIC * self.eccentricity * self.eccentricity;
        self.width_mm * cube * uneven / (SLOT * viscosity_pa_s * self.length_mm)
    }

    /// The cross-section that fills, mm^2.
    pub fn area_mm2(&self) -> f64 {
        self.width_mm * self.height_mm
    }
}
