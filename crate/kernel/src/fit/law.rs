//! How the sizes of many parts of one drawing are spread between their limits.

use super::normal::Ziggurat;
use super::stream::Stream;
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

    /// Draws sizes, mm, one after the other.
    pub fn fill(&self, layers: &Ziggurat, stream: &mut Stream, sizes_mm: &mut [f64]) {
        let (centre_mm, bell_mm, reach_mm) = (self.centre_mm(), self.bell_mm(), self.reach_mm());
        match self.law {
            _ if self.half_mm() <= 0.0 => sizes_mm.fill(self.middle_mm()),
            Law::Normal => {
                sizes_mm.fill_with(|| centre_mm + bell_mm * layers.draw(stream));
            }
            Law::Truncated => sizes_mm.fill_with(|| self.truncated_mm(layers, stream)),
            Law::Uniform => sizes_mm.fill_with(|| {
                let share = stream.share();
                centre_mm + reach_mm * (2.0 * share - 1.0)
            }),
            Law::Triangular => sizes_mm.fill_with(|| {
                let (one, other) = (stream.share(), stream.share());
                centre_mm + reach_mm * (one - other)
            }),
        }
    }

    /// One size of the truncated bell, mm. A bell narrower than the limits is drawn until it lies
    /// between them; a wider one is drawn evenly between them and kept as often as it is high, so
    /// that either way at least an eighth of the draws is kept.
    #[inline]
    fn truncated_mm(&self, layers: &Ziggurat, stream: &mut Stream) -> f64 {
        let (centre_mm, bell_mm) = (self.centre_mm(), self.bell_mm());
        let wide = bell_mm > self.half_mm();
        loop {
            if wide {
                let mm = self.low_mm + 2.0 * self.half_mm() * stream.share();
                let z = (mm - centre_mm) / bell_mm;
                if stream.share() < libm::exp(-0.5 * z * z) {
                    return mm;
                }
            } else {
                let mm = centre_mm + bell_mm * layers.draw(stream);
                if mm >= self.low_mm && mm <= self.high_mm {
                    return mm;
                }
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
                spread.fill(&layers, &mut Stream::of(3, 1, 5), &mut drawn);
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
            spread.fill(&Ziggurat::default(), &mut Stream::of(1, 1, 1), &mut drawn);
            assert_eq!((drawn, spread.moments_mm()), ([3.59; 3], (3.59, 0.0)));
        }
    }
}
