//! Who goes with whom.

use super::super::law::Spread;
use super::super::many::BLOCK;
use super::super::rank::ranked;
use super::classes::Classes;

/// In place of a partner: nobody.
const ALONE: u32 = u32::MAX;

/// Who goes with whom.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Pairing {
    /// For each of the first parts the index of its partner, or [`ALONE`].
    partners: Vec<u32>,
    /// How many of the first parts are in each class.
    pub firsts: Vec<u32>,
    /// How many of the second parts are in the class that each is paired with.
    pub seconds: Vec<u32>,
}

/// Parts of one class in the order in which they came.
#[derive(Debug, Clone, Default)]
struct Row {
    parts: Vec<u32>,
    /// How many at the front have a partner.
    served: usize,
    /// How many came before those that are still here.
    gone: usize,
}

impl Row {
    /// Those who wait for a partner.
    fn waiting(&self) -> &[u32] {
        &self.parts[self.served..]
    }

    /// The first who wait have a partner; those who were served go once they are the most.
    fn serve(&mut self, count: usize) {
        self.served += count;
        if 2 * self.served >= self.parts.len() {
            self.parts.drain(..self.served);
            self.gone += self.served;
            self.served = 0;
        }
    }

    /// How many came.
    fn came(&self) -> u32 {
        (self.gone + self.parts.len()) as u32
    }
}

/// The rows of all classes.
struct Rows(Vec<Row>);

impl Rows {
    fn new(classes: &Classes) -> Self {
        Self(vec![Row::default(); classes.count()])
    }

    /// Parts come, the first of them with this index: each to the end of its class's row.
    fn take(&mut self, first: usize, sizes_mm: &[f64], classes: &Classes) {
        let mut raised = [0.0; BLOCK];
        raised.iter_mut().zip(sizes_mm).for_each(|(raised, mm)| *raised = classes.raised(*mm));
        for (part, raised) in (first as u32..).zip(&raised[..sizes_mm.len()]) {
            self.0[Classes::index(*raised)].parts.push(part);
        }
    }
}

impl Pairing {
    /// The partner of one of the first parts; none where it is left over.
    pub fn partner(&self, first: usize) -> Option<usize> {
        let partner = self.partners[first];
        (partner != ALONE).then_some(partner as usize)
    }

    /// The partners of all first parts, in their order.
    pub fn partners(&self) -> impl Iterator<Item = Option<usize>> {
        (0..self.partners.len()).map(|first| self.partner(first))
    }

    /// How many of the first parts found a partner.
    pub fn pairs(&self) -> usize {
        self.partners.iter().filter(|partner| **partner != ALONE).count()
    }

    /// The share of all parts that is left over.
    pub fn leftover_fraction(&self) -> f64 {
        let count = self.partners.len() as f64;
        if count > 0.0 { 1.0 - self.pairs() as f64 / count } else { 0.0 }
    }

    /// Pairs as many first as second parts in classes, those of a class in the order in which they
    /// came; some come at a time, so that those who wait are few. `alike` pairs large with large.
    pub fn by_class<'a>(
        [first_mm, second_mm]: [&'a [f64]; 2],
        [first, second]: [&Spread; 2],
        classes: u32,
        alike: bool,
    ) -> Self {
        let (own, other) = (Classes::of(first, classes, true), Classes::of(second, classes, alike));
        let (mut firsts, mut seconds) = (Rows::new(&own), Rows::new(&other));
        let mut partners = vec![ALONE; first_mm.len()];
        for from in (0..first_mm.len().max(second_mm.len())).step_by(BLOCK) {
            let some = |all: &'a [f64]| &all[from.min(all.len())..all.len().min(from + BLOCK)];
            firsts.take(from, some(first_mm), &own);
            seconds.take(from, some(second_mm), &other);
            for (firsts, seconds) in firsts.0.iter_mut().zip(&mut seconds.0) {
                let pairs = firsts.waiting().iter().zip(seconds.waiting());
                let count = pairs.len();
                pairs.for_each(|(first, second)| partners[*first as usize] = *second);
                firsts.serve(count);
                seconds.serve(count);
            }
        }
        let came = |rows: Rows| rows.0.iter().map(Row::came).collect();
        Self { partners, firsts: came(firsts), seconds: came(seconds) }
    }

    /// Pairs by rank: nobody is left over, and no other pairing leaves the sum or difference less
    /// spread.
    pub fn by_rank([first_mm, second_mm]: [&[f64]; 2], alike: bool) -> Self {
        let (firsts, mut seconds) = (ranked(first_mm), ranked(second_mm));
        if !alike {
            seconds.reverse();
        }
        let mut partners = vec![ALONE; first_mm.len()];
        for (first, second) in firsts.iter().zip(seconds) {
            partners[*first as usize] = second;
        }
        Self { partners, firsts: Vec::new(), seconds: Vec::new() }
    }

    /// The same with the partners of two first parts exchanged.
    #[cfg(test)]
    pub fn exchanged(mut self, one: usize, other: usize) -> Self {
        self.partners.swap(one, other);
        self
    }
}
