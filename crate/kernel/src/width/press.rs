//! A pin pressed into the eye of an outer plate: two thick rings, by Lame.
//!
//! With d the pin's diameter, Do the eye's outside (the plate's height), Di the pin's own hole, and
//! delta how much larger the pin was than the hole, all on the diameter, the pressure between them is
//!
//! p = delta / ( d [ ((Do^2 + d^2)/(Do^2 - d^2) + nu_o)/E_o + ((d^2 + Di^2)/(d^2 - Di^2) - nu_i)/E_i ] ).
//!
//! For a solid pin of the eye's own material this is E delta (1 - d^2/Do^2) / (2 d). An eye is no
//! full ring, for the plate goes on at one side, and the rim of a formed collar is none either: this
//! is an estimate. Past the yield of the eye the metal gives and the pressure stays lower. Source:
//! textbook thick cylinders.

/// What a material does under load.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Elastic {
    /// Young's modulus E, MPa.
    pub modulus_mpa: f64,
    /// Poisson's ratio nu.
    pub poisson_ratio: f64,
}

/// A pin in an eye.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Press {
    /// Diameter d of the pin, mm.
    pub pin_mm: f64,
    /// Hole Di along the pin, mm; zero when solid.
    pub hole_mm: f64,
    /// Outside Do of the eye, mm.
    pub eye_mm: f64,
    /// How much larger the pin is than the eye's hole, delta, mm.
    pub interference_mm: f64,
    /// Of the pin.
    pub pin: Elastic,
    /// Of the plate.
    pub plate: Elastic,
}

impl Press {
    /// (Do^2 + d^2)/(Do^2 - d^2): what hoop stress a pressure inside makes at the eye's hole.
    fn eye_ratio(&self) -> f64 {
        let (outer, inner) = (self.eye_mm * self.eye_mm, self.pin_mm * self.pin_mm);
        (outer + inner) / (outer - inner)
    }

    /// (d^2 + Di^2)/(d^2 - Di^2): 1 for a solid pin.
    fn pin_ratio(&self) -> f64 {
        let (outer, inner) = (self.pin_mm * self.pin_mm, self.hole_mm * self.hole_mm);
        (outer + inner) / (outer - inner)
    }

    /// Pressure between pin and eye, MPa.
    pub fn pressure_mpa(&self) -> f64 {
        let eye = (self.eye_ratio() + self.plate.poisson_ratio) / self.plate.modulus_mpa;
        let pin = (self.pin_ratio() - self.pin.poisson_ratio) / self.pin.modulus_mpa;
        self.interference_mm / (self.pin_mm * (eye + pin))
    }

    /// Pull round the hole, in the eye's metal at its hole, MPa: p (Do^2 + d^2)/(Do^2 - d^2).
    pub fn hoop_mpa(&self) -> f64 {
        self.pressure_mpa() * self.eye_ratio()
    }

    /// How much the outside of the eye grows, mm on the diameter: 2 p d^2 Do / (E (Do^2 - d^2)).
    pub fn growth_mm(&self) -> f64 {
        let (outer, inner) = (self.eye_mm * self.eye_mm, self.pin_mm * self.pin_mm);
        let share = 2.0 * inner * self.eye_mm / (outer - inner);
        self.pressure_mpa() * share / self.plate.modulus_mpa
    }

    /// How much the pin is squeezed in the eye, mm on its diameter:
    /// p d ((d^2 + Di^2)/(d^2 - Di^2) - nu) / E.
    pub fn squeeze_mm(&self) -> f64 {
        let ratio = self.pin_ratio() - self.pin.poisson_ratio;
        self.pressure_mpa() * self.pin_mm * ratio / self.pin.modulus_mpa
    }

    /// How much the eye's hole opens, mm on its diameter: p d ((Do^2 + d^2)/(Do^2 - d^2) + nu) / E.
    pub fn opening_mm(&self) -> f64 {
        let ratio = self.eye_ratio() + self.plate.poisson_ratio;
        self.pressure_mpa() * self.pin_mm * ratio / self.plate.modulus_mpa
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const STEEL: Elastic = Elastic { modulus_mpa: 206_000.0, poisson_ratio: 0.3 };

    fn press() -> Press {
        Press {
            pin_mm: 3.6,
            hole_mm: 0.0,
            eye_mm: 8.2,
            interference_mm: 0.02,
            pin: STEEL,
            plate: STEEL,
        }
    }

    #[test]
    fn a_solid_pin_in_its_own_material_keeps_the_short_form() {
        let p = press();
        let short = 206_000.0 * 0.02 * (1.0 - (3.6_f64 * 3.6) / (8.2 * 8.2)) / (2.0 * 3.6);
        assert!((p.pressure_mpa() / short - 1.0).abs() < 1e-14);
    }

    #[test]
    fn what_the_pin_gives_way_and_what_the_hole_opens_make_up_the_interference() {
        for hole_mm in [0.0, 1.0, 2.4] {
            for modulus_mpa in [206_000.0, 114_000.0, 3_000.0] {
                let plate = Elastic { modulus_mpa, poisson_ratio: 0.35 };
                let p = Press { hole_mm, plate, ..press() };
                let both_mm = p.squeeze_mm() + p.opening_mm();
                assert!((both_mm - 0.02).abs() < 1e-15, "{both_mm}");
            }
        }
    }

    #[test]
    fn a_hollow_pin_presses_less_hard_the_larger_its_hole() {
        let mut before = f64::MAX;
        for i in 0..18 {
            let p = Press { hole_mm: 0.2 * f64::from(i), ..press() };
            assert!(p.pressure_mpa() < before && p.growth_mm() > 0.0);
            assert!(p.hoop_mpa() > p.pressure_mpa());
            before = p.pressure_mpa();
        }
    }
}
