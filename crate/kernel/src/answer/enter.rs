//! Answers to "What can get in?".

use super::{Answer, answer};
use crate::reach::{Entered, FaceEntry, Gap, Liquid, Probes, Pumped};

/// A share of a face below this is its rim alone.
const RIM: f64 = 0.2;

/// What a brush, a grain and a liquid reach in one joint, and what it breathes.
pub fn enter(entered: &Entered, probes: &Probes, liquid: &Liquid, pumped: &Pumped) -> Vec<Answer> {
    let mut answers = vec![brushed(entered, probes), grit(entered, probes), oil(entered)];
    answers.extend(flushed(entered, liquid));
    answers.push(worked(pumped));
    answers
}

fn of_gap(entered: &Entered, gap: Gap) -> impl Iterator<Item = &FaceEntry> {
    entered.faces.iter().filter(move |entry| entry.face.gap == gap)
}

/// The mean share of a gap's faces that something reaches.
fn share(entered: &Entered, gap: Gap, of: fn(&FaceEntry) -> f64) -> f64 {
    let count = of_gap(entered, gap).count().max(1) as f64;
    of_gap(entered, gap).map(of).sum::<f64>() / count
}

fn brushed(entered: &Entered, probes: &Probes) -> Answer {
    let at = |gap| share(entered, gap, |entry| entry.bristle_fraction);
    let (side, pin) = (at(Gap::Side), at(Gap::PinBore));
    let id = match (side, pin) {
        (_, pin) if pin > 0.0 => "reach.brush.pin",
        (side, _) if side <= 0.0 => "reach.brush.nothing",
        (side, _) if side < RIM => "reach.brush.rim",
        _ => "reach.brush.side",
    };
    let bristle_mm = probes.bristle_mm;
    answer(id, vec![("bristle_mm", bristle_mm), ("side_fraction", side), ("pin_fraction", pin)])
}

fn grit(entered: &Entered, probes: &Probes) -> Answer {
    let at = |gap| share(entered, gap, |entry| entry.particle_fraction);
    let (side, pin, barrel) = (at(Gap::Side), at(Gap::PinBore), at(Gap::RollerBarrel));
    let id = match (side, pin, barrel) {
        (_, pin, _) if pin > 0.0 => "reach.grit.pin",
        (_, _, barrel) if barrel > 0.0 => "reach.grit.roller",
        (side, ..) if side > RIM => "reach.grit.side",
        _ => "reach.grit.out",
    };
    let numbers = vec![("particle_mm", probes.particle_mm), ("pin_fraction", pin)];
    answer(id, numbers)
}

/// When the last of the pin's gap is full.
fn oil(entered: &Entered) -> Answer {
    let last = |gap| {
        let times = of_gap(entered, gap).map(|entry| entry.fill_time_s);
        times.reduce(|one, other| Some(one?.max(other?))).flatten()
    };
    match (last(Gap::Side), last(Gap::PinBore)) {
        (Some(side_s), Some(pin_s)) => {
            answer("reach.oil.pin", vec![("side_s", side_s), ("pin_s", pin_s)])
        }
        (Some(side_s), None) => answer("reach.oil.side", vec![("side_s", side_s)]),
        _ => answer("reach.oil.out", Vec::new()),
    }
}

/// What goes through the joint under pressure: past the pin, and past the roller.
fn flushed(entered: &Entered, liquid: &Liquid) -> Option<Answer> {
    let through = |gap| of_gap(entered, gap).map(|entry| entry.flow_mm3_per_s).fold(0.0, f64::max);
    let numbers = vec![
        ("pressure_pa", liquid.pressure_pa),
        ("pin_mm3_per_s", through(Gap::PinBore)),
        ("roller_mm3_per_s", through(Gap::RollerBarrel)),
    ];
    (liquid.pressure_pa > 0.0).then(|| answer("reach.flushed", numbers))
}

fn worked(pumped: &Pumped) -> Answer {
    let numbers = vec![
        ("pumped_mm3", pumped.turned_mm3()),
        ("pin_mm3", pumped.turned_pin_mm3),
        ("slid_mm3", pumped.slid_mm3),
        ("side_mm3", pumped.side_volume_mm3),
    ];
    answer(if pumped.turned_mm3() > 0.0 { "reach.worked" } else { "reach.worked.none" }, numbers)
}
