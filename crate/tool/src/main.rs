//! The commands of lightgap: page, solve, verify.

fn main() {}
