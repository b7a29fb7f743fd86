//! Answers to "What does wear add?".

use super::{Answer, answer};
use crate::drive::Tired;
use crate::report::{GAUGE_PITCHES, WearSection};
use crate::wear::{Grind, large_wheel_fraction};

/// A joint that is clean and lubricated, and one with grit: orders of magnitude, from memory.
const CLEAN: Grind = Grind { hardness_mpa: 6000.0, wear_coefficient: 1e-7 };
const GRITTY: Grind = Grind { hardness_mpa: 6000.0, wear_coefficient: 1e-5 };

/// What wear has added: all that is known without a solve of the drive's strand.
pub fn wear(tired: &Tired) -> Vec<Answer> {
    let section = WearSection::at_once(tired);
    let mut answers = vec![
        length(tired, &section),
        answer("wear.pitches", pitches(&section)),
        measured(tired, &section),
        wheel(tired, &section),
        play(&section),
    ];
    answers.extend(slack(&section));
    answers.push(life(tired, &section));
    answers
}

/// What the drive's offset costs as new and worn; none without a drive or a pose.
pub fn wear_friction(tired: &Tired) -> Option<Answer> {
    /// Multiples this near read alike.
    const ALIKE: f64 = 0.01;
    let [new, worn] = tired.costs()?;
    let alike = (new.multiple()? - worn.multiple()?).abs() < ALIKE;
    let offset_mm = tired.line?.layout.offset_mm.abs();
    let numbers = vec![
        ("new_multiple", new.multiple()?),
        ("worn_multiple", worn.multiple()?),
        ("offset_mm", offset_mm),
    ];
    Some(answer(if alike { "wear.friction.alike" } else { "wear.friction" }, numbers))
}

/// How much longer, and which limit a rule finds passed.
fn length(tired: &Tired, section: &WearSection) -> Answer {
    let now = section.rule_reading_fraction;
    let id = match () {
        () if tired.worn_through => "wear.through",
        () if section.joint_wear_mm <= 0.0 => "wear.none",
        () if tired.climb().past_tip => "wear.past",
        () if now > section.limit_fraction => "wear.over",
        () if now > section.limit_fixed_fraction => "wear.adjustable",
        () => "wear.within",
    };
    let numbers = vec![
        ("joint_wear_mm", section.joint_wear_mm),
        ("elongation_fraction", section.elongation_fraction),
        ("rule_fraction", now),
        ("longer_mm", section.longer_mm),
        ("pitches", f64::from(tired.pitches)),
        ("limit_fraction", section.limit_fraction),
        ("limit_fixed_fraction", section.limit_fixed_fraction),
        ("pass_fraction", section.sprocket_pass_fraction),
        ("teeth", f64::from(section.sprocket_teeth_count)),
    ];
    answer(id, numbers)
}

fn pitches(section: &WearSection) -> Vec<(&'static str, f64)> {
    vec![
        ("inner_pitch_mm", section.inner_pitch_mm),
        ("outer_pitch_mm", section.outer_pitch_mm),
        ("joint_wear_mm", section.joint_wear_mm),
    ]
}

/// A rule, and a gauge that pushes two rollers apart.
fn measured(tired: &Tired, section: &WearSection) -> Answer {
    let length = &tired.length;
    let even = length.roller_clearance_mm <= 0.0;
    let numbers = vec![
        ("rule_fraction", section.rule_reading_fraction),
        ("gauge_fraction", section.gauge_reading_fraction),
        ("elongation_fraction", section.elongation_fraction),
        ("roller_clearance_mm", length.roller_clearance_mm),
        ("pin_clearance_mm", length.pin_clearance_mm),
        ("gauge_pitches", f64::from(GAUGE_PITCHES)),
    ];
    answer(if even { "wear.measured.alike" } else { "wear.measured" }, numbers)
}

/// How the chain stands on its wheel, and where that gives up.
fn wheel(tired: &Tired, section: &WearSection) -> Answer {
    let numbers = vec![
        ("rise_mm", section.sprocket_rise_mm),
        ("low_mm", section.low_rise_mm),
        ("high_mm", section.high_rise_mm),
        ("teeth", f64::from(section.sprocket_teeth_count)),
        ("pass_fraction", section.sprocket_pass_fraction),
        ("rule_fraction", large_wheel_fraction(section.sprocket_teeth_count)),
    ];
    let even = section.sprocket_teeth_count.is_multiple_of(2);
    let id = match (tired.climb().past_tip, even) {
        (true, _) => "wear.wheel.past",
        (false, true) => "wear.wheel",
        (false, false) => "wear.wheel.odd",
    };
    answer(id, numbers)
}

/// What a worn joint allows sideways.
fn play(section: &WearSection) -> Answer {
    let numbers = vec![
        ("new_rad", section.turn_limit_new_rad),
        ("worn_rad", section.turn_limit_worn_rad),
        ("twist_rad", section.twist_limit_rad),
        ("along_mm", section.clearance_along_mm),
        ("across_mm", section.clearance_across_mm),
    ];
    answer("wear.play", numbers)
}

fn slack(section: &WearSection) -> Option<Answer> {
    let numbers = vec![("sag_mm", section.sag_mm?), ("longer_mm", section.longer_mm)];
    Some(answer("wear.slack", numbers))
}

/// How often a joint passes a wheel until its chain is at the limit, clean and with grit.
fn life(tired: &Tired, section: &WearSection) -> Answer {
    let [clean, gritty] = [CLEAN, GRITTY].map(|grind| tired.passes(&grind, section.limit_fraction));
    let mut numbers = vec![
        ("clean_passes", clean),
        ("gritty_passes", gritty),
        ("limit_fraction", section.limit_fraction),
    ];
    let Some(per_hour) = tired.usage.passes_per_hour else { return answer("wear.life", numbers) };
    numbers.extend([("clean_hours", clean / per_hour), ("gritty_hours", gritty / per_hour)]);
    answer("wear.life.hours", numbers)
}
