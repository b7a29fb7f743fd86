//! A root between two ends of different sign.

/// How a search for a root ended.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RootStatus {
    /// The bracket is as narrow as asked, or the value is exactly zero.
    Found,
    /// The two ends have the same sign, or a value is not a number.
    NotBracketed,
    /// The bracket is still wider than asked after the permitted number of steps.
    Stalled,
}

/// A root and how it was reached.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Root {
    /// How the search ended.
    pub status: RootStatus,
    /// The last argument tried with the smaller value.
    pub at: f64,
    /// The value there.
    pub value: f64,
    /// Values asked for.
    pub steps: u32,
}

/// Steps after which the search gives up: bisection alone narrows any bracket of `f64` by 2^64.
const MOST_STEPS: u32 = 100;

/// Finds `x` between `low` and `high` with `f(x) = 0`, to within `width` of the argument.
///
/// False position with the retained end's value halved (Illinois), and a bisection whenever two
/// steps in a row have not halved the bracket; so it never leaves the bracket and never stalls on
/// a flat side. `f` is asked for at most 100 values.
pub fn root_between(f: impl Fn(f64) -> f64, low: f64, high: f64, width: f64) -> Root {
    let (mut a, mut b) = (low, high);
    let (mut value_a, mut value_b) = (f(a), f(b));
    let mut steps = 2;
    for (at, value) in [(a, value_a), (b, value_b)] {
        if value == 0.0 {
            return Root { status: RootStatus::Found, at, value, steps };
        }
    }
    if !(value_a * value_b < 0.0) {
        return Root { status: RootStatus::NotBracketed, at: a, value: value_a, steps };
    }
    // The weights are the values, halved for an end that has stayed twice in a row.
    let (mut weight_a, mut weight_b) = (value_a, value_b);
    let (mut kept_a, mut kept_b) = (1.0, 1.0);
    let mut slow = 0;
    while (b - a).abs() > width && steps < MOST_STEPS {
        let span = (b - a).abs();
        let guess = if slow < 2 { b - weight_b * (b - a) / (weight_b - weight_a) } else { b };
        let inside = (guess - a) * (guess - b) < 0.0;
        let at = if inside { guess } else { a + 0.5 * (b - a) };
        let value = f(at);
        steps += 1;
        // Exactly: the bracket has no number left inside.
        #[allow(clippy::float_cmp)]
        if value == 0.0 || at == a || at == b {
            return Root { status: RootStatus::Found, at, value, steps };
        }
        if value.is_nan() {
            return Root { status: RootStatus::NotBracketed, at, value, steps };
        }
        if (value > 0.0) == (value_b > 0.0) {
            (b, value_b, weight_b) = (at, value, value);
            weight_a *= kept_a;
            (kept_a, kept_b) = (0.5, 1.0);
        } else {
            (a, value_a, weight_a) = (at, value, value);
            weight_b *= kept_b;
            (kept_a, kept_b) = (1.0, 0.5);
        }
        slow = if (b - a).abs() > 0.5 * span { slow + 1 } else { 0 };
    }
    let status = if (b - a).abs() > width { RootStatus::Stalled } else { RootStatus::Found };
    let (at, value) = if value_a.abs() < value_b.abs() { (a, value_a) } else { (b, value_b) };
    Root { status, at, value, steps }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The width asked for in these tests.
    const WIDTH: f64 = 1e-13;

    #[test]
    fn finds_a_root_in_few_steps() {
        let root = root_between(|x| libm::cos(x) - x, 0.0, 1.0, WIDTH);
        assert_eq!(root.status, RootStatus::Found);
        assert!((root.at - 0.739_085_133_215_160_6).abs() < WIDTH && root.steps < 20);
    }

    #[test]
    fn a_flat_side_does_not_stall_it() {
        let root = root_between(|x| x * x * x * x * x * x * x - 1e-12, 0.0, 10.0, WIDTH);
        assert_eq!(root.status, RootStatus::Found);
        assert!((root.at - libm::pow(1e-12, 1.0 / 7.0)).abs() < 2.0 * WIDTH);
    }

    #[test]
    fn a_jump_is_a_root() {
        let root = root_between(|x| if x < 0.3 { -1.0 } else { 5.0 }, 0.0, 1.0, WIDTH);
        assert_eq!(root.status, RootStatus::Found);
        assert!((root.at - 0.3).abs() < WIDTH);
    }

    #[test]
    fn same_signs_and_nan_are_refused() {
        assert_eq!(root_between(|x| x + 2.0, 0.0, 1.0, WIDTH).status, RootStatus::NotBracketed);
        assert_eq!(root_between(|_| f64::NAN, 0.0, 1.0, WIDTH).status, RootStatus::NotBracketed);
    }
}
