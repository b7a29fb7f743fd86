//! A scenario: one chain and what is asked about it.

mod value;

pub use value::Value;
