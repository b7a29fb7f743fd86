//! How a long strand begins: as a shorter one, its middle repeated.
//!
//! A taut strand bends near its ends; in between the links repeat, an inner and an outer one by turns, and
//! each pair advances as far across as the last. A strand of half as many joints, its middle askew alike,
//! stands and is pushed almost as the long one is, and it is found in the same way, down to one that is
//! led from the free strand. So what a strand costs grows with its links and no faster.

use super::lead::ON_THE_WAY_MM;
use super::{LONG, Outcome, Setup, Strand};

/// Rounds after which a strand that began so is led from the free one after all.
const PATIENCE: u32 = 60;
/// A short strand is first led to this share of its part of the offset; bent ends cost it some.
const FIRST: f64 = 0.5;
/// How often it is led on from there at most.
const MOST_LEADS: u32 = 5;

impl Strand {
    /// Takes a long strand to an offset past the free one, mm. Returns after how many rounds; none where
    /// the strand is short, or does not come to rest in this way: then it stands where it stood.
    pub(super) fn lengthen(&mut self, wanted_mm: f64, within_mm: f64) -> Option<u32> {
        self.begin(self.setup.joints, wanted_mm, within_mm)
    }

    /// The same to where its middle is as that of a strand of so many joints at an offset, mm.
    fn begin(&mut self, joints: usize, wanted_mm: f64, within_mm: f64) -> Option<u32> {
        if self.setup.joints < LONG {
            return None;
        }
        let mut shorter = self.shorter.take().unwrap_or_else(|| Box::new(self.half()));
        let stands = shorter.stand_alike(joints, wanted_mm);
        let offset_mm = shorter.alike_mm(self.setup.joints, joints, wanted_mm);
        let rounds = if stands { self.begin_as(&shorter, offset_mm, within_mm) } else { None };
        self.shorter = Some(shorter);
        rounds
    }

    /// Takes this strand to where its middle is as that of one of so many joints at an offset, mm: it is led
    /// where bent ends leave a shorter one no middle. Whether it stands there.
    fn stand_alike(&mut self, joints: usize, wanted_mm: f64) -> bool {
        self.begin(joints, wanted_mm, ON_THE_WAY_MM).is_some() || self.lead_alike(joints, wanted_mm)
    }

    /// Comes to rest at an offset, mm, from the pose and the pushes of a shorter strand.
    fn begin_as(&mut self, shorter: &Self, offset_mm: f64, within_mm: f64) -> Option<u32> {
        let (from_mm, solved, stride_mm) = (self.offset_mm, self.solved, self.stride_mm);
        self.good.clone_from(&self.links);
        self.repeat(shorter);
        (self.offset_mm, self.solved) = (offset_mm, true);
        (self.stride_mm, self.gone_mm) = (2.0 * shorter.stride_mm, 0.0);
        let (outcome, rounds) = self.settle(within_mm, PATIENCE);
        if outcome == Outcome::Solved {
            return Some(rounds);
        }
        self.links.clone_from(&self.good);
        (self.offset_mm, self.solved, self.stride_mm) = (from_mm, solved, stride_mm);
        None
    }

    /// The strand of half as many joints that ends in the same kind of link.
    fn half(&self) -> Self {
        let half = self.setup.joints / 2;
        let joints = half + (half + self.setup.joints) % 2;
        Self::new(&self.sizes, Setup { joints, ..self.setup })
    }

    /// Leads this strand to where its middle is as that of one of so many joints at an offset, mm.
    fn lead_alike(&mut self, joints: usize, wanted_mm: f64) -> bool {
        let mut offset_mm = FIRST * wanted_mm * self.setup.joints as f64 / joints as f64;
        for _ in 0..MOST_LEADS {
            if self.go_to(offset_mm, ON_THE_WAY_MM).0 != Outcome::Solved {
                return false;
            }
            offset_mm = self.alike_mm(self.setup.joints, joints, wanted_mm);
            if offset_mm <= self.offset_mm {
                break;
            }
        }
        true
    }

    /// The offset of a strand of `own` joints whose middle is as that of one of `joints` joints at an offset,
    /// mm, where the bent ends of each cost as much of it as those of this strand do.
    fn alike_mm(&self, own: usize, joints: usize, wanted_mm: f64) -> f64 {
        if own == joints {
            return wanted_mm; // exactly
        }
        let [_, across_mm] = self.period();
        let ends_mm = 0.5 * self.setup.joints as f64 * across_mm - self.offset_mm;
        own as f64 / joints as f64 * (wanted_mm + ends_mm) - ends_mm
    }

    /// How far links slide and advance across from one in the middle to the next of its kind, mm.
    fn period(&self) -> [f64; 2] {
        let middle = self.setup.joints / 2;
        let [one, next] = [middle, middle + 2].map(|i| &self.links[i]);
        [next.slide_mm[0] - one.slide_mm[0], next.across_mm - one.across_mm]
    }

    /// Lays the links as those of a shorter strand, and foresees its pushes; its middle is repeated.
    fn repeat(&mut self, shorter: &Self) {
        let middle = shorter.setup.joints / 2;
        let more = (self.setup.joints - shorter.setup.joints) / 2;
        let periods = |i: usize| (i.saturating_sub(middle) / 2).min(more);
        let period = shorter.period();
        for (i, link) in self.links.iter_mut().enumerate() {
            let times = periods(i);
            let on = period.map(|period_mm| times as f64 * period_mm);
            link.stand_as(&shorter.links[i - 2 * times], on);
        }
        let (pushes, touching) = (shorter.solver.push(), shorter.solver.active());
        let [odd, even] = [0, 1].map(|side| self.facings[side].len());
        let rows = self.rows.iter().map(|&(joint, facing)| {
            let joint = joint - 2 * periods(joint);
            let row = joint / 2 * (odd + even) + joint % 2 * odd + facing;
            (pushes[row], touching[row])
        });
        self.solver.foresee(self.problem.unknowns(), rows);
    }
}
