//! What can be set on the bench, as plain data for the page.

use lightgap::chain::{Dimension, Pair};
use lightgap::quantity::Quantity;
use lightgap::scene::Thing;
use lightgap::table::{PUBLISHED, Published};
use serde::Serialize;

/// Every dimension, every gap, every published size and every thing to lay beside a gap.
#[derive(Serialize)]
pub struct Catalogue {
    dimensions: Vec<DimensionRow>,
    gaps: Vec<GapRow>,
    table: Vec<SizeRow>,
    things: Vec<ThingRow>,
}

#[derive(Serialize)]
struct DimensionRow {
    key: &'static str,
    letter: &'static str,
    unit: &'static str,
    /// The id of the words that say what it is when nobody states it.
    default_rule: &'static str,
}

#[derive(Serialize)]
struct GapRow {
    key: &'static str,
    moves: &'static str,
}

/// Something to lay beside a gap.
#[derive(Serialize)]
struct ThingRow {
    key: &'static str,
    thing_mm: f64,
}

#[derive(Serialize)]
struct SizeRow {
    number: &'static str,
    pitch_mm: f64,
}

impl Catalogue {
    /// All of it.
    pub fn whole() -> Self {
        Self {
            dimensions: Dimension::ALL.iter().map(DimensionRow::of).collect(),
            gaps: Pair::ALL.iter().map(GapRow::of).collect(),
            table: PUBLISHED.iter().map(SizeRow::of).collect(),
            things: Thing::ALL.iter().map(ThingRow::of).collect(),
        }
    }
}

impl DimensionRow {
    fn of(dimension: &Dimension) -> Self {
        let default_rule = if dimension.is_required() { "required" } else { dimension.key() };
        Self { key: dimension.key(), letter: dimension.letter(), unit: "mm", default_rule }
    }
}

impl GapRow {
    fn of(pair: &Pair) -> Self {
        Self { key: Quantity::of_pair(*pair).key(), moves: pair.moves().key() }
    }
}

impl ThingRow {
    fn of(thing: &Thing) -> Self {
        Self { key: thing.key(), thing_mm: thing.size_mm() }
    }
}

impl SizeRow {
    fn of(size: &Published) -> Self {
        Self { number: size.number, pitch_mm: size.pitch_mm() }
    }
}
