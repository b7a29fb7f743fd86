//! The report of a scenario, as `cargo solve` prints it.

use super::{Answered, plain};
use lightgap::report::Report;
use lightgap::scenario::Scenario;

/// Everything that is worked out of the scenario.
pub fn answer(scenario: &Scenario) -> Answered {
    plain(&Report::of(scenario))
}
