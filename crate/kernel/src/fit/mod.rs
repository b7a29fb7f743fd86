//! Will every one fit? Many chains of one drawing: what their tolerances add up to, how many of them
//! meet what is demanded, what sorting the parts would do, and what tightening them would cost.
//!
//! Clearance is the size of a gap; tolerance is the permitted variation of a size, t for half of
//! what lies between its limits. A demand is a number of a chain ([`Asked`]) with a least and a most,
//! always worked out by the kernel from the [`Sizes`](crate::chain::Sizes) of one chain.
//!
//! - [`Stack`]: worst case, root sum square and their kin, from slopes by the kernel;
//! - [`Chance`]: sets drawn by chance, from streams that belong to a block of sets, so that any number
//!   of workers draws the same ones;
//! - [`matching`]: parts measured, sorted and paired;
//! - [`cost`]: what tolerances cost, and the cheapest ones that meet a demand.

mod asked;
mod chance;
pub mod cost;
mod law;
mod many;
pub mod matching;
mod normal;
mod rank;
mod stack;
mod stream;

pub use asked::{Asked, Made, Wanted};
pub use chance::{
    Bin, Chance, DemandChance, DemandTally, Moments, Percentile, Study, Tally, Worst, bars,
};
pub use law::{Law, Spread};
pub use many::{BLOCK, Many};
pub use normal::Ziggurat;
pub use rank::ranked;
pub use stack::{
    INFLATION, Part, Stack, StackPart, inflated, root_sum_square, shifted, uniform_inflated,
    worst_case,
};
pub use stream::Stream;

#[cfg(test)]
mod tests;
