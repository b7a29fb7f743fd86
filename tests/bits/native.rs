//! Prints the numbers of every scenario's report, natively worked out, as bits: one JSON object
//! `{ id: { path: "16 hexadecimal figures" } }`. Paths are those of the report's members joined by
//! points, list items by their index from 0; texts are left out.

use lightgap::report::Report;
use lightgap_tests::{numbers, scenarios};
use serde_json::{Map, Value};

fn main() {
    let mut all = Map::new();
    for (id, scenario) in scenarios() {
        let bits = |(path, number): (String, f64)| (path, Value::from(hexadecimal(number)));
        let each: Map<_, _> = numbers(&Report::of(&scenario)).into_iter().map(bits).collect();
        all.insert(id, Value::Object(each));
    }
    println!("{}", Value::Object(all));
}

/// The bits of a number, most significant first.
fn hexadecimal(number: f64) -> String {
    format!("{:016x}", number.to_bits())
}
