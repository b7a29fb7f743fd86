//! What is said of a pitch under load.

use super::{Answer, answer};
use crate::contact::{Joint, Kind};
use crate::plane::Point;
use crate::posing::{ContactState, Posing};

/// A force below this, N, is rounding of the load.
const LEAST_N: f64 = 1e-9;

/// The load and what carries it, how the pushes on the inner link cancel, and what the first pin is
/// pressed with against the pull; nothing while no load is shown.
pub fn load(posing: &Posing) -> Vec<Answer> {
    let Some(rests) = posing.rests() else { return Vec::new() };
    let share = posing.share(crate::posing::Mode::Load);
    let pulls = posing.pulls();
    let (tension_n, side_n) = (share * pulls.tension_n, share * pulls.side_n);
    let moment_n_mm = share * pulls.moment_n_mm;
    let given = [("tension_n", tension_n), ("side_n", side_n), ("moment_n_mm", moment_n_mm)];
    if !rests {
        return vec![answer("load.stalled", given.to_vec())];
    }
    let pressed: Vec<&ContactState> =
        posing.contacts().iter().filter(|state| state.push_n.length() > LEAST_N).collect();
    if pressed.is_empty() {
        return vec![answer("load.none", given.to_vec())];
    }
    let mut said = vec![rest(&pressed, given)];
    said.extend(first_pin(&pressed, tension_n));
    said
}

/// How many faces press, how hard the hardest does, and the sums of the pushes on the inner link each
/// way: left and right, far and near, which cancel.
fn rest(pressed: &[&ContactState], given: [(&'static str, f64); 3]) -> Answer {
    let most_n = pressed.iter().map(|state| state.push_n.length()).fold(0.0, f64::max);
    let sum = |way: Point| pressed.iter().map(|state| state.push_n.dot(way).max(0.0)).sum::<f64>();
    let mut numbers = given.to_vec();
    numbers.extend([
        ("count", pressed.len() as f64),
        ("most_n", most_n),
        ("left_n", sum(-Point::X)),
        ("right_n", sum(Point::X)),
        ("far_n", sum(Point::Y)),
        ("near_n", sum(-Point::Y)),
    ]);
    answer("load.rest", numbers)
}

/// The forces on the first pin in all, and how many times the pull that is; nothing without a pull.
fn first_pin(pressed: &[&ContactState], tension_n: f64) -> Option<Answer> {
    let of_pin = |state: &&&ContactState| {
        state.contact.kind == Kind::PinBore && state.contact.joint == Joint::First
    };
    let pin_n: f64 = pressed.iter().filter(of_pin).map(|state| state.push_n.length()).sum();
    (tension_n > 0.0).then(|| {
        answer("pressed.pin", vec![("pin_n", pin_n), ("multiple_ratio", pin_n / tension_n)])
    })
}
