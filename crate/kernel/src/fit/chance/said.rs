//! What the sets that were drawn say: yields, means, percentiles, each with its standard error.

use super::super::stack::Stack;
use super::tally::{BINS, DemandTally, Tally, Worst};
use super::{Study, Wanted};

/// What chance makes of one demand; values in its unit.
#[derive(Debug, Clone, PartialEq)]
pub struct Chance {
    /// How many sets were drawn.
    pub sets: u64,
    /// How many do not go together.
    pub apart: u64,
    /// How many are no chain at all.
    pub unmade: u64,
    /// The share that meets every demand at once, and its standard error.
    pub yield_fraction: (f64, f64),
    /// One for each demand.
    pub each: Vec<DemandChance>,
}

/// What chance makes of one demand; values in its unit.
#[derive(Debug, Clone, PartialEq)]
pub struct DemandChance {
    /// The demand.
    pub wanted: Wanted,
    /// The share of sets that go together and meet it, and its standard error.
    pub yield_fraction: (f64, f64),
    /// Mean and its standard error.
    pub mean: (f64, f64),
    /// Standard deviation and its standard error.
    pub sd: (f64, f64),
    /// Some percentiles, in rising order.
    pub percentiles: Vec<Percentile>,
    /// A histogram of what lies within a few standard deviations.
    pub histogram: Vec<Bin>,
    /// The sets that fail by most, the worst first.
    pub worst: Vec<Worst>,
}

/// A value that a share of the sets does not exceed.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Percentile {
    /// The share.
    pub share: f64,
    /// The value.
    pub value: f64,
    /// Its standard error.
    pub se: f64,
}

/// A bar of a histogram.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bin {
    /// Its lower end.
    pub low: f64,
    /// Its upper end.
    pub high: f64,
    /// How many sets.
    pub count: f64,
}

/// The shares whose percentiles are told.
const SHARES: [f64; 7] = [0.001, 0.01, 0.1, 0.5, 0.9, 0.99, 0.999];
/// Fine bins in a bar of the histogram: 23 bars to 2001 bins would be too few, 87 are enough.
const BINS_A_BAR: usize = 23;

/// A share of a count with its standard error sqrt(p (1 - p) / n). With none or all of them the
/// error would be zero, which is more than a sample can tell; so p is taken as (k + 1) / (n + 2) in it
/// (Laplace's rule of succession).
fn share(part: u64, whole: u64) -> (f64, f64) {
    let (part, whole) = (part as f64, whole as f64);
    let likely = (part + 1.0) / (whole + 2.0);
    let se = (likely * (1.0 - likely) / whole.max(1.0)).sqrt();
    (if whole > 0.0 { part / whole } else { 0.0 }, se)
}

impl Chance {
    pub(super) fn of(study: &Study, tally: &Tally) -> Self {
        let demands = study.wanted.iter().zip(&study.stacks).zip(&tally.each);
        Self {
            sets: tally.sets,
            apart: tally.apart,
            unmade: tally.unmade,
            yield_fraction: share(tally.passes, tally.sets),
            each: demands
                .map(|((wanted, stack), each)| {
                    DemandChance::of(*wanted, stack.as_ref(), each, tally.sets)
                })
                .collect(),
        }
    }
}

impl DemandChance {
    fn of(wanted: Wanted, stack: Option<&Stack>, tally: &DemandTally, sets: u64) -> Self {
        let moments = tally.moments();
        let varies = stack.is_some_and(|stack| stack.rss_sd > 0.0);
        Self {
            wanted,
            yield_fraction: share(tally.passes, sets),
            mean: (tally.centre + moments.mean(), moments.mean_se()),
            sd: (moments.sd(), moments.sd_se()),
            percentiles: if varies { percentiles(tally, moments.count) } else { Vec::new() },
            histogram: if varies { bars(tally) } else { Vec::new() },
            worst: tally.worst.clone(),
        }
    }
}

/// The percentiles, each where a straight line through its bin has it. Its standard error is
/// sqrt(q (1 - q) / n) / density, the density that of its bin.
fn percentiles(tally: &DemandTally, count: f64) -> Vec<Percentile> {
    let mut found = Vec::new();
    let (mut bin, mut below) = (0, 0.0);
    for share in SHARES {
        let wanted = share * count;
        while bin + 1 < BINS && below + f64::from(tally.bins[bin]) < wanted {
            below += f64::from(tally.bins[bin]);
            bin += 1;
        }
        let here = f64::from(tally.bins[bin]);
        if here > 0.0 {
            let value = tally.edge(bin) + tally.bin * (wanted - below) / here;
            let density = here / (count * tally.bin);
            found.push(Percentile {
                share,
                value,
                se: (share * (1.0 - share) / count).sqrt() / density,
            });
        }
    }
    found
}

/// The bars of a tally, from the first to the last that holds a set.
pub fn bars(tally: &DemandTally) -> Vec<Bin> {
    let bar = |(i, bins): (usize, &[u32])| Bin {
        low: tally.edge(i * BINS_A_BAR),
        high: tally.edge((i + 1) * BINS_A_BAR),
        count: bins.iter().map(|count| f64::from(*count)).sum(),
    };
    let all: Vec<_> = tally.bins.chunks_exact(BINS_A_BAR).enumerate().map(bar).collect();
    let first = all.iter().position(|bar| bar.count > 0.0).unwrap_or(0);
    let last = all.iter().rposition(|bar| bar.count > 0.0).unwrap_or(0);
    all.get(first..=last).unwrap_or_default().to_vec()
}
