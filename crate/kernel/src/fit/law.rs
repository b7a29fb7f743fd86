//! How the sizes of many parts of one drawing are spread between their limits.

use super::many::BLOCK;
use super::normal::Ziggurat;
use super::stream::{Stream, share};
use crate::chain::Dimension;

/// A law of distribution.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Law {
    /// A bell without ends: some parts lie outside the limits.
    Normal,
    /// A bell whose parts outside the limits have been sorted out.
    Truncated,
    /// Every size as likely.
    Uniform,
    /// Likeliest at the mean, and in a straight line to none.
    Triangular,
}

impl Law {
    /// Every law.
    pub const ALL: &'static [Self] =
        &[Self::Normal, Self::Truncated, Self::Uniform, Self::Triangular];

    /// The word of a scenario file.
    pub fn key(self) -> &'static str {
        match self {
            Self::Normal => "normal",
            Self::Truncated => "truncated",
            Self::Uniform => "uniform",
            Self::Triangular => "triangular",
        }
    }

    /// The law of a word, if there is one.
    pub fn of_key(key: &str) -> Option<Self> {
        Self::ALL.iter().copied().find(|law| law.key() == key)
    }
}

/// From so many standard deviations on a number is rare: one in two million. It lies in the tail.
const RARE: f64 = 5.0;
/// What a size may be off by rounding, as a share.
const ROUNDING: f64 = 1e-9;

/// One dimension with its limits and its law.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Spread {
    /// Which.
    pub dimension: Dimension,
    /// The lower limit, mm.
    pub low_mm: f64,
    /// The upper limit, mm.
    pub high_mm: f64,
    /// How sizes lie between them.
    pub law: Law,
    /// How many standard deviations of the bell lie between the middle and a limit; of no meaning
    /// for the other laws.
    pub sigmas: f64,
    /// Where the mean lies: 0 in the middle, -1 at the lower limit, 1 at the upper one.
    pub mean_shift: f64,
}

impl Spread {
    /// The tolerance t: half of what lies between the limits, mm.
    pub fn half_mm(&self) -> f64 {
        0.5 * (self.high_mm - self.low_mm)
    }

    /// Half way between the limits, mm.
    pub fn middle_mm(&self) -> f64 {
        0.5 * (self.low_mm + self.high_mm)
    }

    /// Where the law has its peak, or its middle, mm: the middle and the shift's share of t.
    pub fn centre_mm(&self) -> f64 {
        self.middle_mm() + self.mean_shift * self.half_mm()
    }

    /// The standard deviation of the whole bell, mm: t / sigmas.
    fn bell_mm(&self) -> f64 {
        self.half_mm() / self.sigmas
    }

    /// Half width of a uniform or triangular law, mm: t less the shift, so that no part lies outside
    /// the limits.
    fn reach_mm(&self) -> f64 {
        self.half_mm() * (1.0 - self.mean_shift.abs())
    }

    /// Mean and standard deviation, mm: of a uniform law its half width / sqrt 3, of a triangular one
    /// / sqrt 6, of a truncated bell by quadrature.
    pub fn moments_mm(&self) -> (f64, f64) {
        const THIRD: f64 = 1.0 / 3.0;
        const SIXTH: f64 = 1.0 / 6.0;
        match self.law {
            _ if self.half_mm() <= 0.0 => (self.middle_mm(), 0.0),
            Law::Normal => (self.centre_mm(), self.bell_mm()),
            Law::Truncated => self.truncated_moments_mm(),
            Law::Uniform => (self.centre_mm(), self.reach_mm() * THIRD.sqrt()),
            Law::Triangular => (self.centre_mm(), self.reach_mm() * SIXTH.sqrt()),
        }
    }

    /// Mean and standard deviation of the bell between the limits, by Simpson's rule over them.
    fn truncated_moments_mm(&self) -> (f64, f64) {
        const STEPS: u32 = 600;
        let (half_mm, bell_mm) = (self.half_mm(), self.bell_mm());
        let mut sums = [0.0; 3];
        for i in 0..=STEPS {
            let place = 2.0 * f64::from(i) / f64::from(STEPS) - 1.0;
            let simpson = match i {
                0 | STEPS => 1.0,
                _ if i % 2 == 1 => 4.0,
                _ => 2.0,
            };
            let z = (place - self.mean_shift) * half_mm / bell_mm;
            let weight = simpson * libm::exp(-0.5 * z * z);
            sums[0] += weight;
            sums[1] += weight * place;
            sums[2] += weight * place * place;
        }
        let mean = sums[1] / sums[0];
        let variance = (sums[2] / sums[0] - mean * mean).max(0.0);
        (self.middle_mm() + mean * half_mm, variance.sqrt() * half_mm)
    }

    /// Between which sizes a draw lies that is no rare one, mm: the limits, or of a bell without ends
    /// so many standard deviations.
    pub fn usual_mm(&self) -> (f64, f64) {
        match self.law {
            Law::Normal => {
                let away_mm = RARE * self.bell_mm();
                (self.centre_mm() - away_mm, self.centre_mm() + away_mm)
            }
            _ => (self.low_mm, self.high_mm),
        }
    }

    /// Draws the sizes of a block, mm, and says whether a rare one is among them. Each place of a block has its own bits; a number that they
    /// alone do not give takes more from beyond the block, place after place.
    pub fn fill(&self, layers: &Ziggurat, stream: &Stream, sizes_mm: &mut [f64]) -> bool {
        let (centre_mm, bell_mm, reach_mm) = (self.centre_mm(), self.bell_mm(), self.reach_mm());
        let mut more = stream.beyond(BLOCK);
        let each = sizes_mm.iter_mut().enumerate();
        match self.law {
            _ if self.half_mm() <= 0.0 => sizes_mm.fill(self.middle_mm()),
            Law::Normal => return self.bells(layers, stream, sizes_mm, (f64::MIN, f64::MAX)),
            Law::Truncated if bell_mm <= self.half_mm() => {
                self.bells(layers, stream, sizes_mm, (self.low_mm, self.high_mm));
            }
            Law::Truncated => sizes_mm.fill_with(|| self.wide_bell_mm(&mut more)),
            Law::Uniform => each.for_each(|(i, mm)| {
                *mm = centre_mm + reach_mm * (2.0 * share(stream.at(i)) - 1.0);
            }),
            Law::Triangular => each.for_each(|(i, mm)| {
                *mm = centre_mm + reach_mm * (share(stream.at(i)) - share(more.at(i)));
            }),
        }
        false
    }

    /// Draws sizes of a bell that lie between two ends, mm, and says whether a rare one is among
    /// them: first what one point gives for every place, which is never rare, then, in order, those
    /// whose point may lie above the curve or whose size outside the ends.
    fn bells(
        &self,
        layers: &Ziggurat,
        stream: &Stream,
        sizes_mm: &mut [f64],
        ends_mm: (f64, f64),
    ) -> bool {
        let (centre_mm, bell_mm) = (self.centre_mm(), self.bell_mm());
        let near_mm = (centre_mm - ends_mm.0).min(ends_mm.1 - centre_mm);
        let surely_inside = (1.0 - ROUNDING) * near_mm / bell_mm;
        let mut again = [0_u16; BLOCK];
        let mut count = 0;
        for (i, mm) in sizes_mm.iter_mut().enumerate() {
            let point = layers.point(stream.at(i));
            *mm = centre_mm + bell_mm * point.x;
            again[count % BLOCK] = i as u16;
            count += usize::from(!(point.is_below & (point.x.abs() < surely_inside)));
        }
        let (mut more, mut rare) = (stream.beyond(BLOCK), false);
        for &i in &again[..count] {
            let mut point = layers.point(stream.at(usize::from(i)));
            let mm = &mut sizes_mm[usize::from(i)];
            loop {
                let number = layers.number(point, &mut more);
                *mm = centre_mm + bell_mm * number;
                if *mm >= ends_mm.0 && *mm <= ends_mm.1 {
                    rare |= number.abs() > RARE;
                    break;
                }
                point = layers.point(more.bits());
            }
        }
        rare
    }

    /// One size of a truncated bell that is wider than its limits, mm: drawn evenly between them and
    /// kept as often as the bell is high there, so that at least an eighth of the draws is kept.
    fn wide_bell_mm(&self, stream: &mut Stream) -> f64 {
        loop {
            let mm = self.low_mm + 2.0 * self.half_mm() * stream.share();
            let z = (mm - self.centre_mm()) / self.bell_mm();
            if stream.share() < libm::exp(-0.5 * z * z) {
                return mm;
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn spread(law: Law, sigmas: f64, mean_shift: f64) -> Spread {
        let (low_mm, high_mm) = (3.59, 3.61);
        Spread { dimension: Dimension::PinDiameter, low_mm, high_mm, law, sigmas, mean_shift }
    }

    #[test]
    fn draws_have_the_moments_of_their_law() {
        const COUNT: usize = 200_000;
        let layers = Ziggurat::default();
        for &law in Law::ALL {
            for (sigmas, shift) in [(3.0, 0.0), (3.0, 0.4), (1.0, -0.6), (0.2, 0.0), (4.0, 1.0)] {
                let spread = spread(law, sigmas, shift);
                let mut drawn = vec![0.0; COUNT];
                for (block, column) in drawn.chunks_mut(BLOCK).enumerate() {
                    spread.fill(&layers, &Stream::of(3, block as u64, 5), column);
                }
                let (mean_mm, sd_mm) = spread.moments_mm();
                let count = COUNT as f64;
                let mean = drawn.iter().sum::<f64>() / count;
                let about = |power: fn(f64) -> f64| {
                    drawn.iter().map(|mm| power(mm - mean)).sum::<f64>() / count
                };
                let (variance, fourth) = (about(|d| d * d), about(|d| d * d * d * d));
                let error_mm = (variance / count).sqrt();
                assert!((mean - mean_mm).abs() <= 5.0 * error_mm + 1e-9, "{law:?} {mean}");
                let error = ((fourth - variance * variance) / count).sqrt();
                assert!((variance - sd_mm * sd_mm).abs() <= 5.0 * error + 1e-15, "{law:?}");
                let outside = drawn.iter().filter(|mm| **mm < 3.59 || **mm > 3.61).count();
                assert!(law == Law::Normal || outside == 0, "{law:?} {outside} outside");
            }
        }
    }

    #[test]
    fn no_tolerance_is_one_size() {
        for &law in Law::ALL {
            let spread = Spread { high_mm: 3.59, ..spread(law, 3.0, 0.5) };
            let mut drawn = [0.0; 3];
            spread.fill(&Ziggurat::default(), &Stream::of(1, 1, 1), &mut drawn);
            assert_eq!((drawn, spread.moments_mm()), ([3.59; 3], (3.59, 0.0)));
        }
    }
}
