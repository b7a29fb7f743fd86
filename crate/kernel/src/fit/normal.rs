//! Normal numbers by layers: the ziggurat.
//!
//! The area under exp(-x^2/2) is cut into 128 layers of equal area v. A point drawn evenly in a
//! layer lies nearly always below the curve, and then costs one draw of 32 bits, one multiplication
//! and one comparison. Source: Marsaglia and Tsang, The Ziggurat Method for Generating Random
//! Variables, Journal of Statistical Software 5(8), 2000; r and v from there, the rest derived.
//! Transcendental functions are libm's, so that every machine draws the same numbers.

use super::stream::Stream;

/// How many layers.
const LAYERS: usize = 128;
/// Where the tail begins.
const TAIL: f64 = 3.442_619_855_899;
/// The area of each layer.
const AREA: f64 = 9.912_563_035_262_17e-3;
/// Bits that choose a layer and its side; the others place a point along it.
const PLACE_SHIFT: u32 = 8;
const SIDE_BIT: u32 = LAYERS as u32;
/// One of the 2^24 steps along a layer.
const PLACE_STEP: f64 = 1.0 / 16_777_216.0;

/// The layers, worked out once.
#[derive(Debug, Clone)]
pub struct Ziggurat {
    /// Outer end of each layer, the lowest first; the last one is the top, zero.
    end: [f64; LAYERS + 1],
    /// Height of the curve at each end.
    height: [f64; LAYERS + 1],
}

/// exp(-x^2/2).
fn curve(x: f64) -> f64 {
    libm::exp(-0.5 * x * x)
}

impl Default for Ziggurat {
    fn default() -> Self {
        let mut end = [0.0; LAYERS + 1];
        // The lowest layer holds the tail; its box is as long as gives it the same area.
        end[0] = AREA / curve(TAIL);
        end[1] = TAIL;
        for i in 2..LAYERS {
            let higher = AREA / end[i - 1] + curve(end[i - 1]);
            end[i] = (-2.0 * libm::log(higher)).sqrt();
        }
        Self { end, height: end.map(curve) }
    }
}

impl Ziggurat {
    /// The next normal number of a stream: mean 0, standard deviation 1.
    #[inline]
    pub fn draw(&self, stream: &mut Stream) -> f64 {
        loop {
            let bits = stream.bits();
            let layer = (bits as usize) % LAYERS;
            let x = (f64::from(bits >> PLACE_SHIFT) + 0.5) * PLACE_STEP * self.end[layer];
            let below = x < self.end[layer + 1] || self.is_below(layer, x, stream);
            if below {
                return if bits & SIDE_BIT == 0 { x } else { -x };
            }
            if layer == 0 {
                let far = tail(stream);
                return if bits & SIDE_BIT == 0 { far } else { -far };
            }
        }
    }

    /// Whether a point at `x`, drawn evenly between the heights of a layer's two ends, lies below
    /// the curve. Never in the lowest layer: beyond its inner end lies the tail.
    #[inline(never)]
    fn is_below(&self, layer: usize, x: f64, stream: &mut Stream) -> bool {
        let (low, high) = (self.height[layer], self.height[layer + 1]);
        layer > 0 && low + (high - low) * stream.share() < curve(x)
    }
}

/// A number beyond the tail's beginning (Marsaglia, Generating a variable from the tail of the
/// normal distribution, Technometrics 6, 1964; from memory).
#[inline(never)]
fn tail(stream: &mut Stream) -> f64 {
    loop {
        let beyond = -libm::log(stream.share()) / TAIL;
        if -2.0 * libm::log(stream.share()) > beyond * beyond {
            return TAIL + beyond;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_layers_close_at_the_top() {
        let layers = Ziggurat::default();
        let top = layers.end[LAYERS - 1];
        assert!((top * (1.0 - curve(top)) - AREA).abs() < 1e-9, "{top}");
        assert!(layers.end.is_sorted_by(|a, b| a > b));
    }

    #[test]
    fn numbers_have_the_moments_and_the_distribution_of_a_normal_law() {
        const COUNT: u32 = 1_000_000;
        let (layers, mut stream) = (Ziggurat::default(), Stream::of(11, 0, 0));
        let (mut sums, mut beyond) = ([0.0; 4], [0.0_f64; 5]);
        for _ in 0..COUNT {
            let x = layers.draw(&mut stream);
            let squared = x * x;
            for (sum, power) in sums.iter_mut().zip([x, squared, squared * x, squared * squared]) {
                *sum += power;
            }
            for (i, count) in beyond.iter_mut().enumerate() {
                *count += f64::from(u8::from(x > i as f64));
            }
        }
        // Five standard errors of each moment; their variances are 1, 2, 15 and 96.
        let count = f64::from(COUNT);
        let moments = [(0.0, 1.0_f64), (1.0, 2.0), (0.0, 15.0), (3.0, 96.0)];
        for (sum, (mean, variance)) in sums.iter().zip(moments) {
            let error = (variance / count).sqrt();
            assert!((sum / count - mean).abs() < 5.0 * error, "{} for {mean}", sum / count);
        }
        for (i, found) in beyond.iter().enumerate() {
            let share = 0.5 * libm::erfc(i as f64 / 2.0_f64.sqrt());
            let error = (share * (1.0 - share) * count).sqrt();
            assert!((found - share * count).abs() < 5.0 * error, "{found} beyond {i}");
        }
    }
}
