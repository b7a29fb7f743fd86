//! Normal numbers by layers: the ziggurat.
//!
//! The area under exp(-x^2/2) is cut into 256 layers of equal area v. A point drawn evenly in a
//! layer lies nearly always below the curve, and then costs one draw of 64 bits, one multiplication
//! and one comparison; whoever draws many takes that first for all of them, and comes back to the few
//! that do not. Source: Marsaglia and Tsang, The Ziggurat Method for Generating Random Variables,
//! Journal of Statistical Software 5(8), 2000; r from there, the rest derived. Transcendental functions
//! are libm's, so that every machine draws the same numbers.

use super::stream::Stream;

/// How many layers.
const LAYERS: usize = 256;
/// Where the tail begins.
const TAIL: f64 = 3.654_152_885_361_009;
/// The upper bits place a point along a layer and on a side; the lowest choose the layer.
const PLACE_SHIFT: u32 = 11;
/// One of the 2^52 steps along a layer.
const PLACE_STEP: f64 = 1.0 / 4_503_599_627_370_496.0;

/// The layers, worked out once.
#[derive(Debug, Clone)]
pub struct Ziggurat {
    /// Height of the curve at the outer end of each layer, the lowest first; the last is the top.
    height: [f64; LAYERS + 1],
    /// One step along each layer.
    step: [f64; LAYERS],
    /// How far out a point of each layer surely lies below the curve: the next end.
    sure: [f64; LAYERS],
}

/// A point that fell into a layer, and on a side.
#[derive(Debug, Clone, Copy)]
pub struct Point {
    layer: usize,
    /// How far from the middle, with its sign.
    pub x: f64,
    /// Whether it surely lies below the curve: then it is a normal number.
    pub is_below: bool,
}

/// exp(-x^2/2).
fn curve(x: f64) -> f64 {
    libm::exp(-0.5 * x * x)
}

/// The area of each layer: that of the lowest, a box with the tail beside it.
fn area() -> f64 {
    TAIL * curve(TAIL) + core::f64::consts::FRAC_PI_2.sqrt() * libm::erfc(TAIL * 0.5_f64.sqrt())
}

impl Default for Ziggurat {
    fn default() -> Self {
        let mut end = [0.0; LAYERS + 1];
        // The lowest layer holds the tail; its box is as long as gives it the same area.
        end[0] = area() / curve(TAIL);
        end[1] = TAIL;
        for i in 2..LAYERS {
            let higher = area() / end[i - 1] + curve(end[i - 1]);
            end[i] = (-2.0 * libm::log(higher)).sqrt();
        }
        let step = core::array::from_fn(|layer| end[layer] * PLACE_STEP);
        let sure = core::array::from_fn(|layer| end[layer + 1]);
        Self { height: end.map(curve), step, sure }
    }
}

impl Ziggurat {
    /// Where 64 bits place a point.
    #[inline]
    pub fn point(&self, bits: u64) -> Point {
        let layer = bits as usize % LAYERS;
        // A shift of a signed number keeps its sign.
        let place = (bits.cast_signed() >> PLACE_SHIFT) as f64;
        let x = place * self.step[layer];
        Point { layer, x, is_below: x.abs() < self.sure[layer] }
    }

    /// The normal number of a point, with more from a stream where the point itself is none: mean 0,
    /// standard deviation 1.
    #[inline(never)]
    pub fn number(&self, mut point: Point, stream: &mut Stream) -> f64 {
        loop {
            if point.is_below || self.lies_below(&point, stream) {
                return point.x;
            }
            if point.layer == 0 {
                return tail(stream).copysign(point.x);
            }
            point = self.point(stream.bits());
        }
    }

    /// The next normal number of a stream.
    pub fn draw(&self, stream: &mut Stream) -> f64 {
        let point = self.point(stream.bits());
        self.number(point, stream)
    }

    /// Whether a point, drawn evenly between the heights of its layer's two ends, lies below the
    /// curve. Never in the lowest layer: beyond its inner end lies the tail.
    fn lies_below(&self, point: &Point, stream: &mut Stream) -> bool {
        let (low, high) = (self.height[point.layer], self.height[point.layer + 1]);
        point.layer > 0 && low + (high - low) * stream.share() < curve(point.x)
    }
}

/// A number beyond the tail's beginning (Marsaglia, Generating a variable from the tail of the
/// normal distribution, Technometrics 6, 1964; from memory).
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
        let top = layers.sure[LAYERS - 2];
        assert!((top * (1.0 - curve(top)) - area()).abs() < 1e-9, "{top}");
        assert!(layers.sure.is_sorted_by(|a, b| a > b));
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
