//! Answers to "What does a crooked line cost?".
//!
//! Watts without a power of their own are of 100 W carried; they are the losses at pins and faces,
//! with those of rollers and guide wheels in answers of their own.

use super::{Answer, answer};
use crate::drive::{ChainLine, Costs, Missing};
use crate::friction::friction_band;

/// Teeth of the two guide wheels of a gear shifter, for an example: chosen.
const GUIDES: [u32; 2] = [11, 11];
/// What losses are a share of, W.
const OF_W: f64 = 100.0;
/// Multiples up to this are as good as one: the faces carry the slope of the pull.
const AS_GOOD_AS_ONE: f64 = 1.05;

/// What the offset of a drive costs, under which assumptions where they make a difference, and what
/// others say of it.
pub fn line(costs: &Costs) -> Vec<Answer> {
    let mut answers = vec![cost(costs)];
    answers.extend(watts(costs));
    if costs.line.layout.offset_mm.abs() > costs.line.free_mm() {
        answers.extend(ends(costs).into_iter().chain(joints(costs)));
    }
    answers.extend(lubricated(costs));
    answers.push(rollers(&costs.line));
    answers.extend(guides(&costs.line));
    answers.extend(["line.laboratory", "line.practice", "line.model"].map(plain));
    answers
}

/// An answer without numbers.
fn plain(id: &'static str) -> Answer {
    answer(id, Vec::new())
}

/// Free, turning, bearing on the bore's ends, or beyond what rigid links reach.
fn cost(costs: &Costs) -> Answer {
    let line = &costs.line;
    let (offset_mm, free_mm) = (line.layout.offset_mm.abs(), line.free_mm());
    let straight_w = OF_W * line.straight().loss_fraction;
    let mut numbers = vec![
        ("offset_mm", offset_mm),
        ("free_mm", free_mm),
        ("straight_w", straight_w),
        ("shortfall_mm", costs.shortfall_mm()),
        ("reach_mm", costs.largest_mm + line.float_mm()),
    ];
    let cost = match costs.elastic {
        Ok(cost) => cost,
        Err(missing) => return answer(without(missing), numbers),
    };
    let multiple = cost.multiple().unwrap_or(1.0);
    numbers.extend([("loss_w", OF_W * cost.loss_fraction), ("multiple", multiple)]);
    let id = match (cost.multiples.is_some(), costs.shortfall_mm() <= 0.0) {
        _ if offset_mm <= free_mm => "line.free",
        (_, false) => "line.beyond",
        (false, _) => "line.smooth",
        (true, true) if multiple <= AS_GOOD_AS_ONE => "line.turning",
        (true, true) => "line.bearing",
    };
    answer(id, numbers)
}

/// The sentence that says why there is no answer.
fn without(missing: Missing) -> &'static str {
    match missing {
        Missing::NoPose => "line.no_pose",
        Missing::Bent => "line.bent",
        Missing::Unsettled => "line.unsettled",
        Missing::Locked => "line.locked",
    }
}

/// The loss in watts of the drive's own power.
fn watts(costs: &Costs) -> Option<Answer> {
    let (line, cost) = (&costs.line, costs.cost()?);
    let watts = line.power?.watts;
    let numbers = vec![
        ("watts", watts),
        ("loss_w", watts * cost.loss_fraction),
        ("straight_w", watts * line.straight().loss_fraction),
        ("tight_n", line.running.tight_n),
    ];
    Some(answer("line.watts", numbers))
}

/// End links free to turn on their teeth, and held straight by them.
fn ends(costs: &Costs) -> Option<Answer> {
    let numbers = vec![
        ("hinged_multiple", costs.hinged?.multiple()?),
        ("held_multiple", costs.cost()?.multiple()?),
    ];
    Some(answer("line.ends", numbers))
}

/// Joints half and twice as stiff.
fn joints(costs: &Costs) -> Option<Answer> {
    let numbers = vec![
        ("softer_multiple", costs.softer?.multiple()?),
        ("stiffer_multiple", costs.stiffer?.multiple()?),
        ("joint_n_mm_per_rad", costs.line.joint_n_mm_per_rad),
    ];
    Some(answer("line.joints", numbers))
}

/// The loss at the ends of the handbook order of friction, pins and faces in step.
fn lubricated(costs: &Costs) -> Option<Answer> {
    let loss_w = OF_W * costs.cost()?.loss_fraction;
    let [low_w, high_w] = friction_band(loss_w, costs.line.running.rubbing.friction.pin)?;
    Some(answer("line.lubricated", vec![("low_w", low_w), ("high_w", high_w)]))
}

/// Rollers that turn, and stuck ones.
fn rollers(line: &ChainLine) -> Answer {
    let [turning_w, stuck_w] = line.roller_fractions().map(|fraction| OF_W * fraction);
    answer("line.rollers", vec![("turning_w", turning_w), ("stuck_w", stuck_w)])
}

/// Two guide wheels in the slack strand; none when it carries no pull.
fn guides(line: &ChainLine) -> Option<Answer> {
    let guides_w = OF_W * line.running.guide_fraction(&GUIDES);
    let numbers = vec![
        ("guides_w", guides_w),
        ("teeth", f64::from(GUIDES[0])),
        ("slack_n", line.running.slack_n),
    ];
    (line.running.slack_n > 0.0).then(|| answer("line.guides", numbers))
}
