//! Materials of plates: generic, in handbook order, from memory. None of them is a data sheet.

use super::press::Elastic;

/// A material of handbook order.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Material {
    /// The key of its word.
    pub key: &'static str,
    /// Young's modulus, MPa.
    pub modulus_mpa: f64,
    /// Poisson's ratio.
    pub poisson_ratio: f64,
    /// Where it yields, MPa.
    pub yield_mpa: f64,
    /// Density, g/cm3.
    pub density_g_per_cm3: f64,
}

impl Material {
    /// What it does under load.
    pub fn elastic(&self) -> Elastic {
        Elastic { modulus_mpa: self.modulus_mpa, poisson_ratio: self.poisson_ratio }
    }
}

/// A row of the table.
const fn row(key: &'static str, gpa: f64, poisson: f64, mpa: f64, density: f64) -> Material {
    const MPA_PER_GPA: f64 = 1000.0;
    let modulus_mpa = MPA_PER_GPA * gpa;
    Material {
        key,
        modulus_mpa,
        poisson_ratio: poisson,
        yield_mpa: mpa,
        density_g_per_cm3: density,
    }
}

/// The steel of plates and pins.
pub const STEEL: Material = row("steel", 206.0, 0.3, 900.0, 7.85);

/// Every row: modulus GPa, Poisson's ratio, yield MPa, density; handbook order, from memory.
pub const MATERIALS: &[Material] = &[
    STEEL,
    row("mild", 206.0, 0.3, 250.0, 7.85),
    row("stainless", 193.0, 0.3, 500.0, 7.9),
    row("titanium", 114.0, 0.33, 830.0, 4.43),
    row("aluminium", 71.0, 0.33, 480.0, 2.8),
    row("plastic", 3.0, 0.38, 65.0, 1.41),
];
