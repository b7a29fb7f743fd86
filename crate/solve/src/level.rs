//! The lowest place along a step.

/// Evaluations of one search.
const MOST_TRIALS: u32 = 40;
/// The slope along a line counts as zero at this share of its value at the start.
const LEVEL: f64 = 1e-6;

/// The share of a step at which a convex function along it is level; `at` gives its slope and its
/// curvature at a share. Newton steps; where one leaves the bracket, a
/// bisection, or one whole step on while there is no upper end.
pub(super) fn level(at: &dyn Fn(f64) -> (f64, f64)) -> f64 {
    let start = at(0.0).0;
    let (mut low, mut high) = (0.0, f64::INFINITY);
    let mut taken = 1.0;
    for _ in 0..MOST_TRIALS {
        let (slope, bend) = at(taken);
        if slope.abs() <= LEVEL * start.abs() {
            break;
        }
        if slope < 0.0 {
            low = taken;
        } else {
            high = taken;
        }
        taken -= slope / bend;
        if !(taken > low && taken < high) {
            taken = if high.is_finite() { low + 0.5 * (high - low) } else { low + 1.0 };
        }
    }
    taken
}
