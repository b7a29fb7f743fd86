//! Selective assembly: parts are measured, sorted into classes, and classes are paired so that a
//! thick part meets a wide one. Or all are sorted by size and paired rank by rank.
//!
//! Two dimensions that a number takes with opposite signs pair large with large, others large with
//! small. With m classes the pair's share of the number's spread shrinks to about 1/m, if both
//! dimensions are spread alike; where they are not, parts are left over.

use super::asked::{Made, Wanted};
use super::chance::{DemandTally, Moments};
use super::law::Spread;
use super::many::{BLOCK, Many};
use super::rank::ranked;
use crate::chain::Dimension;

/// Who goes with whom.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Pairing {
    /// For each of the first parts the index of its partner; none when it is left over.
    pub partner: Vec<Option<u32>>,
    /// How many of the first parts are in each class.
    pub firsts: Vec<u32>,
    /// How many of the second parts are in the class that each is paired with.
    pub seconds: Vec<u32>,
}

/// Limits of a dimension cut into classes of equal width; parts outside the limits belong to the
/// class at that end.
#[derive(Debug, Clone, Copy)]
struct Classes {
    low_mm: f64,
    per_mm: f64,
    last: u32,
}

impl Classes {
    fn of(spread: &Spread, classes: u32) -> Self {
        let width_mm = spread.high_mm - spread.low_mm;
        let per_mm = if width_mm > 0.0 { f64::from(classes) / width_mm } else { 0.0 };
        Self { low_mm: spread.low_mm, per_mm, last: classes.max(1) - 1 }
    }

    /// The class of a size, from 0; a cast takes what lies below the limits as zero.
    #[inline]
    fn class(&self, mm: f64) -> u32 {
        (((mm - self.low_mm) * self.per_mm) as u32).min(self.last)
    }

    /// The class that a size is paired with, counted from the other end where large goes with small.
    #[inline]
    fn paired(&self, mm: f64, alike: bool) -> u32 {
        if alike { self.class(mm) } else { self.last - self.class(mm) }
    }
}

impl Pairing {
    /// How many of the first parts found a partner.
    pub fn pairs(&self) -> usize {
        self.partner.iter().flatten().count()
    }

    /// The share of all parts that is left over.
    pub fn leftover_fraction(&self) -> f64 {
        let count = self.partner.len() as f64;
        if count > 0.0 { 1.0 - self.pairs() as f64 / count } else { 0.0 }
    }

    /// Pairs as many first as second parts in classes, those of a class in the order in which they
    /// came. `alike` pairs large with large.
    pub fn by_class(
        [first_mm, second_mm]: [&[f64]; 2],
        [first, second]: [&Spread; 2],
        classes: u32,
        alike: bool,
    ) -> Self {
        let own = Classes::of(first, classes);
        let other = Classes::of(second, classes);
        let class_of = |mm: f64| other.paired(mm, alike);
        let last = own.last as usize;
        let counted = |parts_mm: &[f64], class: &dyn Fn(f64) -> u32| {
            let mut counts = vec![0_u32; last + 1];
            parts_mm.iter().for_each(|mm| counts[class(*mm) as usize] += 1);
            counts
        };
        let firsts = counted(first_mm, &|mm| own.class(mm));
        let seconds = counted(second_mm, &class_of);
        let mut end = Vec::with_capacity(seconds.len());
        let mut next = Vec::with_capacity(seconds.len());
        let mut sum = 0;
        for count in &seconds {
            next.push(sum);
            sum += count;
            end.push(sum);
        }
        let mut order = vec![0_u32; second_mm.len()];
        let mut place = next.clone();
        for (i, mm) in second_mm.iter().enumerate() {
            let place = &mut place[class_of(*mm) as usize];
            order[*place as usize] = i as u32;
            *place += 1;
        }
        let partner_of = |mm: &f64| {
            let class = own.class(*mm) as usize;
            let found = next[class];
            (found < end[class]).then(|| {
                next[class] += 1;
                order[found as usize]
            })
        };
        let partner = first_mm.iter().map(partner_of).collect();
        Self { partner, firsts, seconds }
    }

    /// Pairs by rank: nobody is left over, and no other pairing leaves the sum or difference less
    /// spread.
    pub fn by_rank([first_mm, second_mm]: [&[f64]; 2], alike: bool) -> Self {
        let (firsts, mut seconds) = (ranked(first_mm), ranked(second_mm));
        if !alike {
            seconds.reverse();
        }
        let mut partner = vec![None; first_mm.len()];
        for (first, second) in firsts.iter().zip(seconds) {
            partner[*first as usize] = Some(second);
        }
        Self { partner, firsts: Vec::new(), seconds: Vec::new() }
    }
}

/// Parts of two dimensions, and what sorting them does to one demand.
#[derive(Debug, Clone)]
pub struct Shop<'a> {
    /// The chains.
    pub many: &'a Many,
    /// What is demanded of each.
    pub wanted: Wanted,
    /// Which of the spreads are paired.
    pub paired: [usize; 2],
    /// How many parts of each.
    pub parts: u32,
}

/// What became of the parts.
#[derive(Debug, Clone, PartialEq)]
pub struct Assembled {
    /// How many chains were put together.
    pub chains: u32,
    /// How many of them go together and meet the demand.
    pub passes: u32,
    /// The share of all parts that is left over.
    pub leftover_fraction: f64,
    /// How the demanded number is spread about `centre`, in its unit.
    pub moments: Moments,
    /// The whole tally, for a histogram.
    pub tally: DemandTally,
}

impl Assembled {
    /// The share of chains that meet the demand; zero of none.
    pub fn yield_fraction(&self) -> f64 {
        if self.chains > 0 { f64::from(self.passes) / f64::from(self.chains) } else { 0.0 }
    }
}

impl<'a> Shop<'a> {
    /// A shop for two dimensions of a drawing; none where one of them has no limits.
    pub fn new(
        many: &'a Many,
        wanted: Wanted,
        dimensions: [Dimension; 2],
        parts: u32,
    ) -> Option<Self> {
        let find = |named| many.spreads.iter().position(|spread| spread.dimension == named);
        let paired = [find(dimensions[0])?, find(dimensions[1])?];
        Some(Self { many, wanted, paired, parts })
    }

    /// The two spreads.
    pub fn spreads(&self) -> [&'a Spread; 2] {
        self.paired.map(|i| &self.many.spreads[i])
    }

    /// Whether large goes with large: the number takes the two with opposite signs.
    pub fn is_alike(&self) -> bool {
        let middle = self.many.middle();
        let [a, b] = self
            .spreads()
            .map(|spread| self.many.slope(self.wanted.asked, &middle, spread.dimension));
        a * b <= 0.0
    }

    /// The parts of both dimensions, mm: those of the sets 0, 1, 2, ...
    pub fn parts_mm(&self) -> [Vec<f64>; 2] {
        self.spreads().map(|spread| {
            let mut all = vec![0.0; self.parts as usize];
            for (block, column) in all.chunks_mut(BLOCK).enumerate() {
                self.many.column(spread, block as u64, column);
            }
            all
        })
    }

    /// The class of a first part of this size, mm, and the class that a second part is paired with.
    pub fn classes(&self, classes: u32) -> [impl Fn(f64) -> u32 + use<>; 2] {
        let [first, second] = self.spreads().map(|spread| Classes::of(spread, classes));
        [(first, true), (second, self.is_alike())]
            .map(|(own, alike)| move |mm| own.paired(mm, alike))
    }

    /// Sorted into classes.
    pub fn sorted(&self, parts_mm: &[Vec<f64>; 2], classes: u32) -> Pairing {
        let [first, second] = parts_mm;
        Pairing::by_class([first, second], self.spreads(), classes, self.is_alike())
    }

    /// Sorted by rank.
    pub fn ranked(&self, [first, second]: &[Vec<f64>; 2]) -> Pairing {
        Pairing::by_rank([first, second], self.is_alike())
    }

    /// Puts chains together: each set with the second part that its own first part was paired with;
    /// as they come when there is no pairing.
    pub fn assemble(&self, second_mm: &[f64], pairing: Option<&Pairing>) -> Assembled {
        let stack = self.many.stack(self.wanted.asked);
        let mut tally = DemandTally::empty(stack.as_ref());
        let mut sets = vec![self.many.nominal; BLOCK];
        let mut chains = 0;
        let second = self.spreads()[1].dimension;
        for first in (0..self.parts as usize).step_by(BLOCK) {
            let count = BLOCK.min(self.parts as usize - first);
            let sets = &mut sets[..count];
            self.many.lay(&self.many.draw((first / BLOCK) as u64, count), 0, sets);
            tally.begin();
            for (i, sizes) in sets.iter_mut().enumerate() {
                if let Some(pairing) = pairing {
                    let Some(partner) = pairing.partner[first + i] else { continue };
                    second.put(sizes, second_mm[partner as usize]);
                    if self.many.follows() {
                        sizes.make_flush();
                    }
                }
                let made = Made::of(sizes);
                let asked = self.wanted.asked;
                let value = made.has(asked).then(|| asked.of(sizes));
                tally.add((first + i) as u64, value, made == Made::Whole, &self.wanted);
                chains += 1;
            }
        }
        Assembled {
            chains,
            passes: tally.passes as u32,
            leftover_fraction: pairing.map_or(0.0, Pairing::leftover_fraction),
            moments: tally.moments(),
            tally,
        }
    }
}

#[cfg(test)]
mod tests;
