//! How many checks passed and failed.

use std::ops::AddAssign;

/// A count of checks.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Tally {
    /// Checks that held.
    pub passed: u64,
    /// Checks that did not, or could not be made.
    pub failed: u64,
}

impl AddAssign for Tally {
    fn add_assign(&mut self, other: Self) {
        self.passed += other.passed;
        self.failed += other.failed;
    }
}

impl Tally {
    /// One check.
    pub fn of_one(good: bool) -> Self {
        Self { passed: u64::from(good), failed: u64::from(!good) }
    }

    /// Something passed and nothing failed.
    pub fn is_good(self) -> bool {
        self.failed == 0 && self.passed > 0
    }

    /// How many checks there were.
    pub fn of(self) -> u64 {
        self.passed + self.failed
    }

    /// The sum of the closing lines of cargo's or node's test runner in the output; a run that
    /// ended badly without naming a failed test (it did not compile, it was killed) is one.
    pub fn in_output(output: &str, ended_well: bool) -> Self {
        let mut sum = Self::default();
        for line in output.lines() {
            sum += cargo_line(line).or_else(|| node_line(line)).unwrap_or_default();
        }
        if !ended_well && sum.failed == 0 {
            sum.failed = 1;
        }
        sum
    }
}

/// `test result: ok. 14 passed; 0 failed; ...`
fn cargo_line(line: &str) -> Option<Tally> {
    let rest = line.strip_prefix("test result: ")?;
    let count = |word: &str| {
        let before = rest.split(word).next()?;
        before.rsplit(' ').find(|part| !part.is_empty())?.parse().ok()
    };
    Some(Tally { passed: count(" passed")?, failed: count(" failed")? })
}

/// `ℹ pass 5`, or with `#`; a test left out or stopped counts as failed.
fn node_line(line: &str) -> Option<Tally> {
    let mut words = line.split(' ');
    if !matches!(words.next()?, "ℹ" | "#") {
        return None;
    }
    let (name, count) = (words.next()?, words.next()?.parse().ok()?);
    match name {
        "pass" => Some(Tally { passed: count, failed: 0 }),
        "fail" | "cancelled" | "skipped" | "todo" => Some(Tally { passed: 0, failed: count }),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::Tally;

    #[test]
    fn the_closing_lines_of_cargo_are_added_up() {
        let output = "test result: ok. 14 passed; 0 failed; 0 ignored\nother\n\
                      test result: FAILED. 3 passed; 2 failed; 0 ignored";
        assert_eq!(Tally::in_output(output, false), Tally { passed: 17, failed: 2 });
    }

    #[test]
    fn a_test_that_node_left_out_has_failed() {
        let output = "ℹ tests 8\nℹ pass 5\nℹ fail 0\nℹ cancelled 1\nℹ skipped 2\nℹ todo 0";
        assert_eq!(Tally::in_output(output, true), Tally { passed: 5, failed: 3 });
    }

    #[test]
    fn a_run_that_broke_off_has_failed() {
        assert_eq!(Tally::in_output("error: could not compile", false).failed, 1);
        assert!(!Tally::in_output("", true).is_good(), "nothing ran");
    }
}
