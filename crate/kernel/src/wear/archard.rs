//! How fast a joint wears: Archard's law.
//!
//! Volume worn off = K F s / H, F the force, s the way it slides, H the hardness of the softer of
//! the two, K a coefficient for the pair, both surfaces together. Convention: without the factor 3
//! that stands below the line in some books; there K is three times as large. Spread over the area
//! A = d2 L_b that bears, seen along the load, the depth is K q s / H with q = F / A.
//!
//! Source: Archard, Contact and rubbing of flat surfaces, J. Appl. Phys. 24, 1953 (from memory).

/// How two surfaces wear each other.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Grind {
    /// Hardness H of the softer one, MPa.
    pub hardness_mpa: f64,
    /// Coefficient K of both together. Of the order of 1e-7 where clean and lubricated, a hundred
    /// times that with grit (from memory).
    pub wear_coefficient: f64,
}

/// How a joint slides each time it goes over a wheel.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Sliding {
    /// Pull when it folds, N: of the strand that runs on.
    pub on_n: f64,
    /// Pull when it straightens, N: of the strand that runs off.
    pub off_n: f64,
    /// Area that bears, mm2.
    pub area_mm2: f64,
    /// Radius of the pin, mm.
    pub pin_radius_mm: f64,
    /// How far it folds, rad.
    pub articulation_rad: f64,
}

impl Grind {
    /// Depth of pin and bore together, mm, after sliding so far under a pressure: K q s / H.
    pub fn depth_mm(&self, pressure_mpa: f64, way_mm: f64) -> f64 {
        self.wear_coefficient * pressure_mpa * way_mm / self.hardness_mpa
    }

    /// Depth of one pass over a wheel, mm: one fold under each of the two pulls, s = r alpha.
    pub fn pass_mm(&self, sliding: &Sliding) -> f64 {
        let pressure_mpa = (sliding.on_n + sliding.off_n) / sliding.area_mm2;
        self.depth_mm(pressure_mpa, sliding.pin_radius_mm * sliding.articulation_rad)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const ROUNDING: f64 = 1e-15;

    #[test]
    fn depth_is_the_volume_over_the_area() {
        let grind = Grind { hardness_mpa: 6000.0, wear_coefficient: 1e-7 };
        let sliding = Sliding {
            on_n: 300.0,
            off_n: 20.0,
            area_mm2: 3.6 * 4.0,
            pin_radius_mm: 1.8,
            articulation_rad: 0.4,
        };
        let volume_mm3 = 1e-7 * (300.0 + 20.0) * (1.8 * 0.4) / 6000.0;
        assert!((grind.pass_mm(&sliding) - volume_mm3 / (3.6 * 4.0)).abs() < ROUNDING);
    }

    #[test]
    fn twice_the_pull_the_way_or_the_coefficient_wears_twice_as_deep() {
        let grind = |wear_coefficient| Grind { hardness_mpa: 6000.0, wear_coefficient };
        let once = grind(1e-7).depth_mm(20.0, 1.0);
        for twice in [
            grind(2e-7).depth_mm(20.0, 1.0),
            grind(1e-7).depth_mm(40.0, 1.0),
            grind(1e-7).depth_mm(20.0, 2.0),
        ] {
            assert!((twice - 2.0 * once).abs() < ROUNDING);
        }
    }
}
