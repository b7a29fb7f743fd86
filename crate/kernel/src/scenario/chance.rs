//! Limits, demands, matching and cost: what a scenario says about many chains of one drawing.

use super::fields::Fields;
use super::grade::{GRADES, LARGEST_GRADED_MM, deviations_mm};
use super::range::Range;
use super::value::Value;
use crate::chain::{Dimension, Sizes};
use crate::error::{Given, Rule};
use crate::quantity::Quantity;

/// How a size is spread between its limits.
const LAWS: &[&str] = &["normal", "truncated", "uniform", "triangular"];
/// Deviations and differences, mm.
const DEVIATION: Range = Range::between(-100.0, 100.0).length();
/// What can be demanded beside the quantities of the catalogue.
const MORE_DEMANDS: &[&str] = &["free_offset_mm", "pitch_under_load_mm"];

/// The limits of one dimension.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Limit {
    /// Which.
    pub dimension: Dimension,
    /// How far it may deviate.
    pub band: Band,
    /// The word of its law: `normal`, `truncated`, `uniform` or `triangular`.
    pub law: &'static str,
    /// How many standard deviations lie between the middle and a limit.
    pub sigmas: f64,
    /// Where its mean lies: 0 in the middle, -1 at the lower limit, 1 at the upper one.
    pub mean_shift: f64,
}

/// How far a size may deviate from its nominal.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Band {
    /// So far below and above, mm.
    Stated {
        /// Below; negative when even the smallest is above.
        minus_mm: f64,
        /// Above; negative when even the largest is below.
        plus_mm: f64,
    },
    /// As a tolerance grade has it at this size.
    Grade(&'static str),
}

impl Band {
    /// How far below and above a nominal size, mm.
    pub fn deviations_mm(&self, nominal_mm: f64) -> (f64, f64) {
        match self {
            Self::Stated { minus_mm, plus_mm } => (*minus_mm, *plus_mm),
            Self::Grade(grade) => deviations_mm(grade, nominal_mm).unwrap_or((0.0, 0.0)),
        }
    }

    fn read(fields: &mut Fields) -> Self {
        let minus = fields.number_if_given("minus", DEVIATION);
        let plus = fields.number_if_given("plus", DEVIATION);
        let grade = fields.word("grade", GRADES);
        let graded = fields.is_given("grade");
        if graded == (minus.is_some() || plus.is_some()) {
            fields.fault_of_all(Rule::ExactlyOne { choices: &["minus and plus", "grade"] });
        }
        let (minus_mm, plus_mm) = (minus.unwrap_or(0.0), plus.unwrap_or(0.0));
        if plus_mm < -minus_mm {
            let limit = -minus_mm;
            fields.fault("plus", Given::Number(plus_mm), Rule::AtLeastSize { limit, of: "minus" });
        }
        grade.map_or(Self::Stated { minus_mm, plus_mm }, Self::Grade)
    }
}

impl Limit {
    /// The smallest and the largest that this dimension may be, mm.
    pub fn ends_mm(&self, sizes: &Sizes) -> (f64, f64) {
        let nominal_mm = self.dimension.of(sizes);
        let (minus_mm, plus_mm) = self.band.deviations_mm(nominal_mm);
        (nominal_mm - minus_mm, nominal_mm + plus_mm)
    }

    /// Reads one of a scenario's `limits`; `sizes` is absent when the chain has faults.
    pub(super) fn read(fields: &mut Fields, sizes: Option<&Sizes>) -> Self {
        let dimension = dimension(fields, "dimension");
        let band = Band::read(fields);
        let size_mm = sizes.map_or(0.0, |sizes| dimension.of(sizes));
        if matches!(band, Band::Grade(_)) && size_mm > LARGEST_GRADED_MM {
            let rule = Rule::AtMost { limit: LARGEST_GRADED_MM };
            fields.fault("grade", Given::Number(size_mm), rule);
        }
        Self {
            dimension,
            band,
            law: fields.word("law", LAWS).unwrap_or("normal"),
            sigmas: fields.number("sigmas", Range::above_zero(12.0), Some(3.0)),
            mean_shift: fields.number("mean_shift", Range::between(-1.0, 1.0), Some(0.0)),
        }
    }

    pub(super) fn write(&self) -> Value {
        let mut whole = Value::Null;
        whole.put_text("dimension", self.dimension.key());
        match self.band {
            Band::Stated { minus_mm, plus_mm } => {
                whole.put_number("minus", minus_mm);
                whole.put_number("plus", plus_mm);
            }
            Band::Grade(grade) => whole.put_text("grade", grade),
        }
        whole.put_text("law", self.law);
        whole.put_number("sigmas", self.sigmas);
        whole.put_number("mean_shift", self.mean_shift);
        whole
    }
}

/// What a quantity must lie between.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Demand {
    /// The key of the quantity.
    pub quantity: &'static str,
    /// The smallest allowed, in the quantity's unit.
    pub at_least: Option<f64>,
    /// The largest allowed, in the quantity's unit.
    pub at_most: Option<f64>,
}

impl Demand {
    /// Whether it is about a strand between two wheels.
    pub(super) fn needs_drive(&self) -> bool {
        self.quantity == "free_offset_mm"
    }

    pub(super) fn read(fields: &mut Fields) -> Self {
        let quantity = demanded(fields);
        let bound = Range::between(-1e6, 1e6).of_key(quantity);
        let at_least = fields.number_if_given("at_least", bound);
        let at_most = fields.number_if_given("at_most", bound);
        match (at_least, at_most) {
            (None, None) => {
                fields.fault_of_all(Rule::AtLeastOne { choices: &["at_least", "at_most"] });
            }
            (Some(limit), Some(most)) if most < limit => {
                let rule = Rule::AtLeastSize { limit, of: "at_least" };
                fields.fault("at_most", Given::Number(most), rule);
            }
            _ => {}
        }
        Self { quantity, at_least, at_most }
    }

    pub(super) fn write(&self) -> Value {
        let mut whole = Value::Null;
        whole.put_text("quantity", self.quantity);
        whole.put_if_given("at_least", self.at_least);
        whole.put_if_given("at_most", self.at_most);
        whole
    }
}

/// Parts sorted into classes and paired.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Matching {
    /// The dimension of one part.
    pub dimension_a: Dimension,
    /// The dimension of the other.
    pub dimension_b: Dimension,
    /// Into how many classes.
    pub classes: u32,
}

impl Matching {
    pub(super) fn read(fields: &mut Fields) -> Self {
        let dimension_a = dimension(fields, "dimension_a");
        let dimension_b = dimension(fields, "dimension_b");
        if dimension_a == dimension_b && !fields.has_fault("dimension_a") {
            fields.fault("dimension_b", Given::Text(dimension_b.key().to_owned()), Rule::Repeated);
        }
        let classes = fields.number("classes", Range::whole(2.0, 1000.0), Some(4.0)) as u32;
        Self { dimension_a, dimension_b, classes }
    }

    pub(super) fn write(&self) -> Value {
        let mut whole = Value::Null;
        whole.put_text("dimension_a", self.dimension_a.key());
        whole.put_text("dimension_b", self.dimension_b.key());
        whole.put_number("classes", self.classes.into());
        whole
    }
}

/// What a tolerance t of one dimension costs: A + B / t^k.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Cost {
    /// Which.
    pub dimension: Dimension,
    /// A.
    pub fixed: f64,
    /// B, with t in mm.
    pub factor: f64,
    /// k.
    pub exponent: f64,
}

impl Cost {
    pub(super) fn read(fields: &mut Fields) -> Self {
        Self {
            dimension: dimension(fields, "dimension"),
            fixed: fields.number("fixed", Range::from_zero(1e9), Some(0.0)),
            factor: fields.number("factor", Range::above_zero(1e9), None),
            exponent: fields.number("exponent", Range::above_zero(10.0), Some(2.0)),
        }
    }

    pub(super) fn write(&self) -> Value {
        let mut whole = Value::Null;
        whole.put_text("dimension", self.dimension.key());
        whole.put_number("fixed", self.fixed);
        whole.put_number("factor", self.factor);
        whole.put_number("exponent", self.exponent);
        whole
    }
}

/// The dimension that a member names.
fn dimension(fields: &mut Fields, key: &'static str) -> Dimension {
    let Some(text) = fields.required_name(key) else { return Dimension::Pitch };
    Dimension::of_key(text).unwrap_or_else(|| {
        fields.fault(key, Given::Text(text.to_owned()), Rule::KnownDimension);
        Dimension::Pitch
    })
}

/// The key of the quantity that is demanded.
fn demanded(fields: &mut Fields) -> &'static str {
    let Some(text) = fields.required_name("quantity") else { return "" };
    let catalogue = Quantity::ALL.iter().map(|quantity| quantity.key());
    catalogue.chain(MORE_DEMANDS.iter().copied()).find(|key| *key == text).unwrap_or_else(|| {
        fields.fault("quantity", Given::Text(text.to_owned()), Rule::KnownQuantity);
        ""
    })
}
