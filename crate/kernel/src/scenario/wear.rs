//! Wear: measured, or worked out.

use super::fields::Fields;
use super::range::Range;
use super::value::Value;
use crate::chain::{Sizes, WornBore};
use crate::error::{Given, Rule};

/// How far the joints have worn: measured, or worked out.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Wear {
    /// Wear of one joint, mm.
    Measured {
        /// Pin and bore together, on the loaded side.
        joint_wear_mm: f64,
    },
    /// By Archard's law.
    Worked {
        /// Hardness, MPa.
        hardness_mpa: f64,
        /// Archard's dimensionless coefficient.
        wear_coefficient: f64,
        /// How often each joint has gone over a wheel.
        engagements: f64,
    },
}

/// The two ways to give wear.
const WEARS: &[&str] = &["joint_wear_mm", "hardness_mpa with wear_coefficient and engagements"];

impl Wear {
    /// Reads a scenario's `wear`; `sizes` is absent when the chain has faults.
    pub(super) fn read(fields: &mut Fields, sizes: Option<&Sizes>) -> Self {
        let read = Self::read_members(fields);
        if let (Self::Measured { joint_wear_mm }, Some(sizes)) = (read, sizes) {
            refuse_worn_through(fields, joint_wear_mm, sizes);
        }
        read
    }

    fn read_members(fields: &mut Fields) -> Self {
        let wear = fields.number_if_given("joint_wear_mm", Range::from_zero(100.0));
        let hardness = fields.number_if_given("hardness_mpa", Range::above_zero(1e6));
        let coefficient = fields.number_if_given("wear_coefficient", Range::above_zero(1.0));
        let engagements = fields.number_if_given("engagements", Range::from_zero(1e15));
        match (wear, hardness, coefficient, engagements) {
            (Some(joint_wear_mm), None, None, None) => Self::Measured { joint_wear_mm },
            (None, Some(hardness_mpa), Some(wear_coefficient), Some(engagements)) => {
                Self::Worked { hardness_mpa, wear_coefficient, engagements }
            }
            _ => {
                fields.fault_of_all(Rule::ExactlyOne { choices: WEARS });
                Self::Measured { joint_wear_mm: 0.0 }
            }
        }
    }

    pub(super) fn write(&self) -> Value {
        let mut whole = Value::Null;
        match *self {
            Self::Measured { joint_wear_mm } => whole.put_number("joint_wear_mm", joint_wear_mm),
            Self::Worked { hardness_mpa, wear_coefficient, engagements } => {
                whole.put_number("hardness_mpa", hardness_mpa);
                whole.put_number("wear_coefficient", wear_coefficient);
                whole.put_number("engagements", engagements);
            }
        }
        whole
    }
}

/// Refuses a wear that leaves no metal of the bush, the collar or the pin.
fn refuse_worn_through(fields: &Fields, joint_wear_mm: f64, sizes: &Sizes) {
    let limit = WornBore::deepest_mm(sizes);
    if joint_wear_mm >= limit && !fields.any_fault() {
        let rule = Rule::BelowSize { limit, of: "two_walls" };
        fields.fault("joint_wear_mm", Given::Number(joint_wear_mm), rule);
    }
}
