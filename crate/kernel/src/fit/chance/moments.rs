//! Sums of powers, from which mean and standard deviation follow.

/// Count and sums of the first four powers of deviations.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Moments {
    /// How many.
    pub count: f64,
    /// Sums of d, d^2, d^3 and d^4.
    pub sums: [f64; 4],
}

impl Moments {
    /// Adds one deviation.
    #[inline]
    pub fn add(&mut self, d: f64) {
        let squared = d * d;
        self.count += 1.0;
        self.sums[0] += d;
        self.sums[1] += squared;
        self.sums[2] += squared * d;
        self.sums[3] += squared * squared;
    }

    /// Adds others.
    pub fn join(&mut self, other: &Self) {
        self.count += other.count;
        for (sum, more) in self.sums.iter_mut().zip(other.sums) {
            *sum += more;
        }
    }

    /// The mean deviation; zero of none.
    pub fn mean(&self) -> f64 {
        self.of_count(self.sums[0])
    }

    fn of_count(&self, sum: f64) -> f64 {
        if self.count > 0.0 { sum / self.count } else { 0.0 }
    }

    /// The second moment about the mean.
    fn second(&self) -> f64 {
        let mean = self.mean();
        (self.of_count(self.sums[1]) - mean * mean).max(0.0)
    }

    /// The fourth moment about the mean: E d^4 - 4 m E d^3 + 6 m^2 E d^2 - 3 m^4.
    fn fourth(&self) -> f64 {
        let [_, second, third, fourth] = self.sums.map(|sum| self.of_count(sum));
        let mean = self.mean();
        let squared = mean * mean;
        (fourth - 4.0 * mean * third + 6.0 * squared * second - 3.0 * squared * squared).max(0.0)
    }

    /// The standard deviation, of the sample with n - 1; zero of fewer than two.
    pub fn sd(&self) -> f64 {
        let unbiased = self.count / (self.count - 1.0).max(1.0);
        (self.second() * unbiased).sqrt()
    }

    /// Standard error of the mean: sd / sqrt n.
    pub fn mean_se(&self) -> f64 {
        self.of_count(self.second()).sqrt()
    }

    /// Standard error of the standard deviation: sqrt((m4 - s^4) / (4 n s^2)).
    pub fn sd_se(&self) -> f64 {
        const FOUR: f64 = 4.0;
        let second = self.second();
        if second <= 0.0 {
            return 0.0;
        }
        self.of_count((self.fourth() - second * second).max(0.0) / (FOUR * second)).sqrt()
    }
}
