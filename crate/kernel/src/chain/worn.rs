//! A joint that has worn on its loaded side.
//!
//! A pull presses the pin against one side of its bore, always the same one, so metal leaves both
//! there and nowhere else. The bore becomes its old circle together with the pin's circle pushed into
//! it; the pin keeps what of its old circle lies in the same circle, so that the two fit. Along the
//! load the clearance is c + w, w the depths of both together; across it c, as when new (the pin
//! loses (its depth)^2 / (4 d2) there, which is left out). The bore wears away from its link's middle
//! and the pin towards its own: wear makes a chain longer and never shorter.

use super::Sizes;

/// How deep pin and bore have worn, mm.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct WornBore {
    /// Depth on the pin.
    pub pin_mm: f64,
    /// Depth in the bore.
    pub bore_mm: f64,
}

impl WornBore {
    /// A joint as new.
    pub const NONE: Self = Self { pin_mm: 0.0, bore_mm: 0.0 };

    /// A joint whose pin and bore have worn alike, mm together.
    pub fn shared(joint_wear_mm: f64) -> Self {
        let half_mm = 0.5 * joint_wear_mm;
        Self { pin_mm: half_mm, bore_mm: joint_wear_mm - half_mm }
    }

    /// The same, so many times as deep, for a drawing whose gaps are so many times too big.
    pub fn times(&self, factor: f64) -> Self {
        Self { pin_mm: factor * self.pin_mm, bore_mm: factor * self.bore_mm }
    }

    /// Wear w of the joint, mm: both depths together.
    pub fn depth_mm(&self) -> f64 {
        self.pin_mm + self.bore_mm
    }

    /// Clearance along the load, c + w, mm.
    pub fn along_mm(&self, sizes: &Sizes) -> f64 {
        sizes.pin_clearance_mm() + self.depth_mm()
    }

    /// Clearance across the load, c, mm: wear leaves it as it was.
    pub fn across_mm(&self, sizes: &Sizes) -> f64 {
        sizes.pin_clearance_mm()
    }

    /// What the plan section shows of a worn joint: it cuts along the load, so the bore is wider and
    /// the pin thinner by their depths. Centres are not moved; see [`WornBore::shift_mm`].
    pub fn plan_sizes(&self, sizes: &Sizes) -> Sizes {
        Sizes {
            pin_diameter_mm: sizes.pin_diameter_mm - self.pin_mm,
            bore_mm: sizes.bore_mm + self.bore_mm,
            worn: Self::NONE,
            ..*sizes
        }
    }

    /// The sizes of a bore's wall on the loaded side: thinner by its depth, its mouths as round as what
    /// is left of it allows.
    pub fn loaded_wall(sizes: &Sizes) -> Sizes {
        let bore_mm = sizes.bore_mm + 2.0 * sizes.worn.bore_mm;
        let wall_mm = 0.5 * (sizes.barrel_mm - bore_mm).max(0.0);
        Sizes { bore_mm, mouth_radius_mm: sizes.mouth_radius_mm.min(wall_mm), ..*sizes }
    }

    /// How far the middle of the worn clearance lies from the middle of the new one, mm, along the
    /// load: w / 2.
    pub fn shift_mm(&self) -> f64 {
        0.5 * self.depth_mm()
    }

    /// The deepest wear that leaves metal, mm in all, pin and bore alike: twice the wall of the bush
    /// or collar, or the pin's whole diameter where that is less.
    pub fn deepest_mm(sizes: &Sizes) -> f64 {
        (sizes.barrel_mm - sizes.bore_mm).min(sizes.pin_diameter_mm)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn clearance_grows_along_the_load_and_not_across_it() {
        let sizes = Sizes { pin_diameter_mm: 3.6, bore_mm: 3.625, ..Sizes::default() };
        let worn = WornBore::shared(0.1);
        assert!((worn.along_mm(&sizes) - 0.125).abs() < 1e-12);
        assert!((worn.across_mm(&sizes) - 0.025).abs() < 1e-12);
        let plan = worn.plan_sizes(&sizes);
        assert!((plan.pin_clearance_mm() - worn.along_mm(&sizes)).abs() < 1e-12);
        assert_eq!(WornBore::NONE.plan_sizes(&sizes), sizes);
    }
}
