//! Question 8: how narrow it can go.

use super::{Answered, plain};
use lightgap::scenario::Scenario;
use lightgap::stage::WidthState;

/// Where the width goes and what a narrower chain gives up; `null` where the chain as it is does not
/// go together.
pub fn answer(scenario: &Scenario) -> Answered {
    plain(&WidthState::of(scenario))
}
