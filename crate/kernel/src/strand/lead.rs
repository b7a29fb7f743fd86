//! How a strand is led to an offset: in strides that grow while they go well.

use super::{Outcome, Strand};

/// Rounds after which a solve gives up.
const MOST_ROUNDS: u32 = 200;
/// At offsets on the way to the one that is asked for, a step below this is enough to go on from, mm.
pub(super) const ON_THE_WAY_MM: f64 = 1e-4;
/// The least stride is so many side gaps.
const LEAST_STRIDE: f64 = 0.5;
/// And at least so many pitches.
const SHORTEST: f64 = 1e-3;
/// A stride that took no more rounds than this went well: the next one is twice as long.
const WELL: u32 = 5;
/// A longer stride that has not settled after so many rounds is taken back.
const PATIENCE: u32 = 12;
/// A stride up to so many times as long as the last one is foreseen from it.
const FORESEEN: f64 = 2.0;

impl Strand {
    /// The stride from which longer ones are tried, mm. A strand that cannot go on by this has no pose.
    pub(super) fn least_stride_mm(&self) -> f64 {
        (LEAST_STRIDE * self.sizes.side_gap_mm()).max(SHORTEST * self.sizes.pitch_mm)
    }

    /// Takes the strand to an offset, mm, to within a step of so many mm. Returns how it ended and after how
    /// many rounds.
    pub(super) fn reach(&mut self, wanted_mm: f64, within_mm: f64) -> (Outcome, u32) {
        let far = self.is_past(wanted_mm) || self.offset_mm + self.stride_mm < wanted_mm;
        if far
            && wanted_mm > self.free_offset_mm()
            && let Some(rounds) = self.lengthen(wanted_mm, within_mm)
        {
            return (Outcome::Solved, rounds);
        }
        self.go_to(wanted_mm, within_mm)
    }

    /// Leads the strand to an offset, mm: on from the last answer, or from the free strand.
    pub(super) fn go_to(&mut self, wanted_mm: f64, within_mm: f64) -> (Outcome, u32) {
        if self.is_past(wanted_mm) {
            self.lay_free(wanted_mm.min(self.free_offset_mm()));
        }
        self.lead(wanted_mm, within_mm)
    }

    /// Whether no answer leads on to an offset, mm.
    fn is_past(&self, wanted_mm: f64) -> bool {
        !self.solved || wanted_mm < self.offset_mm || self.offset_mm <= self.free_offset_mm()
    }

    /// Leads the strand on to an offset, mm.
    fn lead(&mut self, wanted_mm: f64, in_the_end_mm: f64) -> (Outcome, u32) {
        let mut rounds = 0;
        loop {
            let on_the_way = self.offset_mm + self.stride_mm < wanted_mm;
            let within_mm = if on_the_way { ON_THE_WAY_MM } else { in_the_end_mm };
            let (outcome, spent) = self.stride(wanted_mm, within_mm);
            rounds += spent;
            if outcome == Outcome::Solved && self.offset_mm >= wanted_mm {
                return (outcome, rounds);
            }
            if outcome != Outcome::Solved && !self.shorten() {
                self.solved = false;
                return (outcome, rounds);
            }
        }
    }

    /// One stride, no further than to an offset, mm; a longer one that does not settle is taken back.
    /// It begins where the links would stand if they went on as in the last stride.
    fn stride(&mut self, to_mm: f64, within_mm: f64) -> (Outcome, u32) {
        let from_mm = self.offset_mm;
        self.offset_mm = (from_mm + self.stride_mm).min(to_mm);
        let by_mm = self.offset_mm - from_mm;
        self.go_on(by_mm);
        let longer = self.stride_mm > self.least_stride_mm();
        let (outcome, rounds) = self.settle(within_mm, if longer { PATIENCE } else { MOST_ROUNDS });
        self.gone_mm = if outcome == Outcome::Solved { by_mm } else { 0.0 };
        if outcome == Outcome::Solved {
            self.solved = true;
            if rounds <= WELL {
                self.stride_mm *= 2.0;
            }
        } else if longer {
            self.links.clone_from(&self.good);
            self.offset_mm = from_mm;
        }
        (outcome, rounds)
    }

    /// Keeps where the links stand, and lets them go on as far as so many mm of offset take them at the
    /// pace of the last stride, where that says anything.
    fn go_on(&mut self, by_mm: f64) {
        let foreseen = self.gone_mm > 0.0 && by_mm <= FORESEEN * self.gone_mm;
        let times = if foreseen { by_mm / self.gone_mm } else { 0.0 };
        for (good, link) in self.good.iter_mut().zip(&mut self.links) {
            let on = link.gone_on(good, times);
            (*good, *link) = (*link, on);
        }
    }

    /// Makes the next stride shorter; false where it is the least.
    fn shorten(&mut self) -> bool {
        let least_mm = self.least_stride_mm();
        let longer = self.stride_mm > least_mm;
        self.stride_mm = (0.25 * self.stride_mm).max(least_mm);
        longer
    }
}
