//! The chain of a scenario: what its file states, and the chain that follows.

use super::fields::Fields;
use super::range::Range;
use super::value::Value;
use crate::chain::{Chain, Construction, Dimension, Sizes};
use crate::error::{Error, Rule};

/// The words of the two constructions, in the order of [`Construction::ALL`].
const CONSTRUCTIONS: &[&str] = &["bushed", "collared"];

/// A chain with the sizes that were stated for it; the others took their defaults.
#[derive(Debug, Clone, PartialEq)]
pub struct StatedChain {
    stated: Vec<(Dimension, f64)>,
    chain: Chain,
}

impl StatedChain {
    /// A chain from the sizes stated for it, mm.
    ///
    /// # Errors
    /// One error for each rule that the sizes break. Where a stated size is no size at all, the
    /// defaults that it drags along are not told.
    pub fn new(
        construction: Construction,
        stated: &[(Dimension, f64)],
    ) -> Result<Self, Vec<Error>> {
        let sizes = Sizes::from_stated(construction, stated);
        let stated: Vec<_> = Dimension::ALL
            .iter()
            .filter(|dimension| stated.iter().any(|(named, _)| named == *dimension))
            .map(|&dimension| (dimension, dimension.of(&sizes)))
            .collect();
        match Chain::new(sizes) {
            Ok(chain) => Ok(Self { stated, chain }),
            Err(faults) => Err(first_causes(faults, &stated)),
        }
    }

    /// A chain whose every size is stated.
    pub fn of(chain: Chain) -> Self {
        let stated = Dimension::ALL.iter().map(|&dimension| (dimension, dimension.of(&chain)));
        Self { stated: stated.collect(), chain }
    }

    /// The chain.
    pub fn chain(&self) -> &Chain {
        &self.chain
    }

    /// The sizes that were stated, mm, in the order of the catalogue.
    pub fn stated(&self) -> &[(Dimension, f64)] {
        &self.stated
    }

    /// Whether a size was stated; if not, it took its default.
    pub fn is_stated(&self, dimension: Dimension) -> bool {
        self.stated.iter().any(|(named, _)| *named == dimension)
    }

    /// The sizes that took their defaults, in the order of the catalogue.
    pub fn defaulted(&self) -> impl Iterator<Item = Dimension> {
        Dimension::ALL.iter().copied().filter(|dimension| !self.is_stated(*dimension))
    }

    /// Reads a scenario's `chain`; none when it has any fault.
    pub(super) fn read(fields: &mut Fields) -> Option<Self> {
        let word = fields.word("construction", CONSTRUCTIONS);
        let construction = word.and_then(Construction::of_key);
        let mut stated = Vec::new();
        let mut complete = true;
        for &dimension in Dimension::ALL {
            let key = dimension.key();
            match fields.number_if_given(key, Range::any()) {
                Some(mm) if !fields.has_fault(key) => stated.push((dimension, mm)),
                Some(_) => complete = false,
                None if dimension.is_required() => {
                    fields.missing(key);
                    complete = false;
                }
                None => {}
            }
        }
        let built = Self::new(construction.unwrap_or_default(), &stated);
        let faults = built.as_ref().err().into_iter().flatten();
        for fault in faults.filter(|fault| complete || is_cause(fault, &stated)) {
            fields.fault(&fault.field, fault.value.clone(), fault.rule.clone());
        }
        built.ok().filter(|_| complete)
    }

    /// The `chain` of a scenario file: what was stated and no more.
    pub(super) fn write(&self) -> Value {
        let construction = Value::text(self.chain.construction.key());
        let stated = self.stated.iter();
        let sizes = stated.map(|(dimension, mm)| (dimension.key().to_owned(), Value::from(*mm)));
        let first = ("construction".to_owned(), construction);
        Value::Object([first].into_iter().chain(sizes).collect())
    }
}

/// Whether a stated size is by itself no size at all.
fn is_cause(fault: &Error, stated: &[(Dimension, f64)]) -> bool {
    let alone = matches!(
        fault.rule,
        Rule::Finite | Rule::Positive | Rule::NotNegative | Rule::AtMost { .. }
    );
    alone && stated.iter().any(|(dimension, _)| dimension.key() == fault.field)
}

/// Where a stated size is no size at all, only such faults; else all of them.
fn first_causes(mut faults: Vec<Error>, stated: &[(Dimension, f64)]) -> Vec<Error> {
    if faults.iter().any(|fault| is_cause(fault, stated)) {
        faults.retain(|fault| is_cause(fault, stated));
    }
    faults
}
