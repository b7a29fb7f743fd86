//! Sections of a scenario that are plain numbers: each one is a list of members with its range and
//! default.

use super::fields::{self, Fields, Member};
use super::range::Range;
use super::value::Value;

/// Makes a section of numbers: its type, its reader and its writer. A default of `None` means that
/// the number must be given.
macro_rules! section {
    (
        $( #[$doc:meta] )*
        $name:ident { $( #[$member_doc:meta] $key:ident : $kind:ty, $range:expr, $default:expr ; )+ }
    ) => {
        $( #[$doc] )*
        #[derive(Debug, Clone, Copy, PartialEq)]
        pub struct $name { $( #[$member_doc] pub $key: $kind, )+ }

        impl $name {
            const MEMBERS: &[Member] = &[
                $( Member { key: stringify!($key), range: $range, default: $default }, )+
            ];

            pub(super) fn read(fields: &mut Fields) -> Self {
                let mut numbers = [0.0; Self::MEMBERS.len()];
                fields.numbers(Self::MEMBERS, &mut numbers);
                let [ $( $key ),+ ] = numbers;
                Self { $( $key: $key as $kind, )+ }
            }

            pub(super) fn write(&self) -> Value {
                fields::written(Self::MEMBERS, &[ $( self.$key as f64 ),+ ])
            }
        }
    };
}

/// The tension of a chain when nobody states it, N: chosen.
pub const DEFAULT_TENSION_N: f64 = 300.0;
/// The largest force, N, moment, N mm, or pressure, Pa, that is read.
const LARGEST_LOAD: f64 = 1e7;
/// The largest count or seed: whole numbers are exact up to here.
const LARGEST_WHOLE: f64 = 9_007_199_254_740_991.0;
/// The smallest size that is sampled or probed with may be zero; the largest, mm.
const LARGEST_PROBE_MM: f64 = 10.0;

section! {
    /// What pulls at the chain.
    Load {
        /// Along the chain, N.
        tension_n: f64, Range::from_zero(LARGEST_LOAD), Some(DEFAULT_TENSION_N);
        /// Across it, N.
        side_n: f64, Range::between(-LARGEST_LOAD, LARGEST_LOAD), Some(0.0);
        /// About the axis across both, N mm.
        moment_n_mm: f64, Range::between(-LARGEST_LOAD, LARGEST_LOAD), Some(0.0);
    }
}

section! {
    /// How chance is sampled.
    Sampling {
        /// The same seed gives the same sets.
        seed: u64, Range::whole(0.0, LARGEST_WHOLE), Some(1.0);
        /// How many chains are drawn.
        sets: u32, Range::whole(1.0, 1e7), Some(100_000.0);
    }
}

section! {
    /// What is to get in.
    Reach {
        /// Diameter of a bristle, mm.
        bristle_mm: f64, Range::above_zero(LARGEST_PROBE_MM), Some(0.08);
        /// Diameter of a particle, mm.
        particle_mm: f64, Range::above_zero(LARGEST_PROBE_MM), Some(0.01);
        /// Viscosity of a liquid, Pa s.
        viscosity_pa_s: f64, Range::above_zero(1e4), Some(0.1);
        /// Surface tension of a liquid, N/m.
        surface_tension_n_per_m: f64, Range::from_zero(10.0), Some(0.03);
        /// Wetting angle, degrees.
        wetting_angle_deg: f64, Range::between(0.0, 180.0), Some(20.0);
        /// Pressure that drives a liquid in, Pa.
        pressure_pa: f64, Range::from_zero(LARGEST_LOAD), Some(0.0);
    }
}

section! {
    /// A rough surface.
    Surface {
        /// Mean peak to valley height, um.
        rz_um: f64, Range::above_zero(1000.0), Some(0.6);
        /// How far along the surface heights are alike, um.
        correlation_um: f64, Range::above_zero(1e5), Some(20.0);
        /// Diameter of a particle, um.
        particle_um: f64, Range::above_zero(1e4), Some(0.6);
        /// The same seed gives the same surface.
        seed: u64, Range::whole(0.0, LARGEST_WHOLE), Some(1.0);
    }
}

impl Surface {
    /// The seed of the face that it is brought against: another surface of the same kind.
    pub fn other_seed(&self) -> u64 {
        self.seed.wrapping_add(1)
    }
}

section! {
    /// A two-sprocket drive: its wheels and where they stand.
    Wheels {
        /// Teeth of the driver.
        driver_teeth: u32, Range::whole(5.0, 1000.0), None;
        /// Teeth of the driven wheel.
        driven_teeth: u32, Range::whole(5.0, 1000.0), None;
        /// Between the shafts, mm.
        centre_distance_mm: f64, Range::above_zero(1e5), None;
        /// The driven wheel aside from the driver, mm.
        offset_mm: f64, Range::between(-1e4, 1e4), Some(0.0);
    }
}

section! {
    /// Coefficients of dry friction. For lubricated steel 0.08 to 0.16 is a handbook order, from
    /// memory.
    Friction {
        /// Pin in bore.
        pin_friction: f64, Range::between(0.0, 2.0), Some(0.1);
        /// Inner plate on outer plate.
        face_friction: f64, Range::between(0.0, 2.0), Some(0.12);
        /// Roller on barrel.
        roller_friction: f64, Range::between(0.0, 2.0), Some(0.1);
    }
}
