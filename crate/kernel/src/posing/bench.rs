//! One chain and everything that settles it.

use super::ask::Ask;
use crate::chain::Sizes;
use crate::contact::{Along, Body, Play, Settled, Settler, Wish};

/// A chain and everything that settles it.
pub(super) struct Bench {
    pub sizes: Sizes,
    pub play: Play,
    pub plan: Settler,
    pub end: Settler,
    /// How the plan section was settled last.
    pub settled: Option<Settled>,
}

impl Bench {
    pub fn new(sizes: &Sizes) -> Self {
        Self {
            sizes: *sizes,
            play: Play::of(sizes),
            plan: Settler::plan(sizes),
            end: Settler::end_section(sizes),
            settled: None,
        }
    }

    /// Settles the plan section at what is asked. `factor` is how many times this chain's gaps are too
    /// big, `drawn_factor` how many times the drawn one's are; `which` says whose rest is taken.
    pub fn settle_plan(
        &mut self,
        ask: &Ask,
        taut: bool,
        (factor, drawn_factor): (f64, f64),
        which: usize,
    ) {
        let straight = *self.plan.straight();
        let mut wishes = ask.plan_wishes(&self.sizes, &self.play, factor, drawn_factor);
        if taut {
            wishes.push(pull_taut(&self.sizes, factor));
        }
        let rest = ask.rest(which).unwrap_or(&straight);
        self.settled = Some(self.plan.settle(&wishes, rest));
    }
}

/// The wish that pulls the next outer link away from the held one, further than any clearance lets
/// it go but so weakly that it decides nothing else. `factor` is how many times too big the gaps are:
/// a pull straightens a chain by its force times the yaws squared, so that only the same force does
/// the same to yaws so many times too big.
fn pull_taut(sizes: &Sizes, factor: f64) -> Wish {
    const PULL_WEIGHT: f64 = 1e-2;
    const BEYOND: f64 = 3.0;
    Wish::Coordinate {
        body: Body::NextOuter,
        along: Along::X,
        value: sizes.pitch_mm + BEYOND * sizes.worn.along_mm(sizes),
        weight: PULL_WEIGHT / factor,
    }
}
