//! Motion and drive: how the chain moves and what pulls it.

use super::fields::Fields;
use super::range::Range;
use super::section::{Friction, Wheels};
use super::value::Value;
use crate::chain::Sizes;
use crate::error::{Given, Rule};
use crate::friction::{Coefficients, Rubbing, Running, Turning};
use crate::sprocket::{Layout, Wheel};

/// The kinds of motion.
const KINDS: &[&str] = &["flex", "bend", "run", "wear", "still"];
/// The two ways to say what pulls.
const PULLS: &[&str] = &["tight_n", "watts with turns_per_minute"];

/// How the chain moves.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Motion {
    /// The word of a scenario: `flex`, `bend`, `run`, `wear` or `still`.
    pub kind: &'static str,
    /// Share of the whole movement, 0 to 1.
    pub amplitude: f64,
    /// Time for one movement to and fro, s.
    pub period_s: f64,
}

impl Motion {
    pub(super) fn read(fields: &mut Fields) -> Self {
        Self {
            kind: fields.word("kind", KINDS).unwrap_or("still"),
            amplitude: fields.number("amplitude", Range::between(0.0, 1.0), Some(1.0)),
            period_s: fields.number("period_s", Range::between(0.1, 600.0), Some(4.0)),
        }
    }

    pub(super) fn write(&self) -> Value {
        let mut whole = Value::Null;
        whole.put_text("kind", self.kind);
        whole.put_number("amplitude", self.amplitude);
        whole.put_number("period_s", self.period_s);
        whole
    }
}

/// What pulls the tight side.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Pull {
    /// A force, N.
    Tight(f64),
    /// Power at the driver.
    Power {
        /// Power, W.
        watts: f64,
        /// Speed of the driver.
        turns_per_minute: f64,
    },
}

impl Pull {
    /// Exactly one of the two ways; neither takes the tension of the load.
    fn read(fields: &mut Fields, tension_n: f64) -> Self {
        let tight = fields.number_if_given("tight_n", Range::above_zero(1e7));
        let watts = fields.number_if_given("watts", Range::above_zero(1e7));
        let turns = fields.number_if_given("turns_per_minute", Range::above_zero(1e5));
        match (tight, watts, turns) {
            (tight, None, None) => Self::Tight(tight.unwrap_or(tension_n)),
            (None, Some(watts), Some(turns_per_minute)) => Self::Power { watts, turns_per_minute },
            _ => {
                fields.fault_of_all(Rule::ExactlyOne { choices: PULLS });
                Self::Tight(0.0)
            }
        }
    }

    fn write(self, whole: &mut Value) {
        match self {
            Self::Tight(force_n) => whole.put_number("tight_n", force_n),
            Self::Power { watts, turns_per_minute } => {
                whole.put_number("watts", watts);
                whole.put_number("turns_per_minute", turns_per_minute);
            }
        }
    }
}

/// The shortest free span between two wheels that is solved, in pitches.
const SHORTEST_SPAN: f64 = 2.0;
/// The farthest two shafts may stand, in pitches.
const LONGEST_SPAN: f64 = 1000.0;

/// A two-sprocket drive.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Drive {
    /// The wheels and where they stand.
    pub wheels: Wheels,
    /// Width of a tooth, mm; none takes 0.93 b1 up to a pitch of 12.7 mm and 0.95 b1 above (ISO
    /// 606, from memory).
    pub tooth_width_mm: Option<f64>,
    /// What pulls the tight side.
    pub pull: Pull,
    /// Tension of the slack side, N.
    pub slack_n: f64,
    /// Coefficients of friction.
    pub friction: Friction,
    /// Stiffness K of a joint in yaw, N mm/rad; none takes the estimate from the plates.
    pub joint_n_mm_per_rad: Option<f64>,
}

impl Drive {
    /// Reads a scenario's `drive`; `sizes` is absent when the chain has faults.
    pub(super) fn read(fields: &mut Fields, tension_n: f64, sizes: Option<&Sizes>) -> Self {
        let joint = Range::above_zero(1e15);
        let drive = Self {
            wheels: Wheels::read(fields),
            tooth_width_mm: fields.number_if_given("tooth_width_mm", Range::above_zero(1000.0)),
            pull: Pull::read(fields, tension_n),
            slack_n: fields.number("slack_n", Range::from_zero(1e7), Some(0.0)),
            friction: Friction::read(fields),
            joint_n_mm_per_rad: fields.number_if_given("joint_n_mm_per_rad", joint),
        };
        drive.refuse_impossible(fields, sizes);
        drive
    }

    /// The wheels in their places.
    pub fn layout(&self, sizes: &Sizes) -> Layout {
        let wheel = |teeth| Wheel {
            teeth,
            pitch_mm: sizes.pitch_mm,
            roller_diameter_mm: sizes.roller_diameter_mm,
        };
        Layout {
            driver: wheel(self.wheels.driver_teeth),
            driven: wheel(self.wheels.driven_teeth),
            centre_distance_mm: self.wheels.centre_distance_mm,
            offset_mm: self.wheels.offset_mm,
        }
    }

    /// The drive as it runs with a chain of these sizes.
    pub fn running(&self, sizes: &Sizes) -> Running {
        let Layout { driver, driven, .. } = self.layout(sizes);
        let slack_n = self.slack_n;
        let tight_n = match self.pull {
            Pull::Tight(tight_n) => tight_n,
            Pull::Power { watts, turns_per_minute } => {
                Turning { wheel: driver, turns_per_minute }.net_n(watts) + slack_n
            }
        };
        let friction = Coefficients {
            pin: self.friction.pin_friction,
            face: self.friction.face_friction,
            roller: self.friction.roller_friction,
        };
        let rubbing = Rubbing {
            friction,
            pin_radius_mm: 0.5 * sizes.pin_diameter_mm,
            barrel_radius_mm: 0.5 * sizes.barrel_mm,
            roller_radius_mm: 0.5 * sizes.roller_diameter_mm,
            rollers_turn: true,
        };
        Running { driver, driven, tight_n, slack_n, rubbing }
    }

    /// Refuses a slack side that pulls as hard as the tight one or stops the drive, wheels that stand
    /// too near or too far, and teeth that do not go between the plates.
    fn refuse_impossible(&self, fields: &Fields, sizes: Option<&Sizes>) {
        if fields.any_fault() {
            return;
        }
        if let Some(rule) = self.too_tight().or_else(|| self.stops(sizes?)) {
            fields.fault("slack_n", Given::Number(self.slack_n), rule);
        }
        if let Some((key, number, rule)) = sizes.and_then(|sizes| self.broken_by(sizes)) {
            fields.fault(key, Given::Number(number), rule);
        }
    }

    /// The rule that a slack pull breaks which is not less than a stated tight one.
    fn too_tight(&self) -> Option<Rule> {
        let Pull::Tight(limit) = self.pull else { return None };
        (self.slack_n >= limit).then_some(Rule::BelowSize { limit, of: "tight_pull" })
    }

    /// The rule that a slack pull Ts breaks at which friction at the pins takes all that is carried, in
    /// a straight line: the loss c (T + Ts) / (T - Ts) is to be less than 1, c that without a slack pull.
    /// From there on the drive cannot turn.
    fn stops(&self, sizes: &Sizes) -> Option<Rule> {
        let running = self.running(sizes);
        let loss = Running { tight_n: 1.0, slack_n: 0.0, ..running }.straight_fraction();
        let limit = match self.pull {
            Pull::Tight(tight_n) => tight_n * (1.0 - loss) / (1.0 + loss),
            Pull::Power { watts, turns_per_minute } => {
                let net_n = Turning { wheel: running.driver, turns_per_minute }.net_n(watts);
                net_n * (1.0 - loss) / (2.0 * loss)
            }
        };
        let limit = limit.max(0.0);
        let refused = self.slack_n > 0.0 && self.slack_n >= limit;
        refused.then_some(Rule::BelowSize { limit, of: "slack_that_stops" })
    }

    /// The rule of place that this drive breaks with a chain of these sizes.
    fn broken_by(&self, sizes: &Sizes) -> Option<(&'static str, f64, Rule)> {
        let (layout, pitch_mm) = (self.layout(sizes), sizes.pitch_mm);
        let centres_mm = self.wheels.centre_distance_mm;
        let radii_mm = layout.driver.pitch_radius_mm() + layout.driven.pitch_radius_mm();
        let (near_mm, far_mm) = (radii_mm + SHORTEST_SPAN * pitch_mm, LONGEST_SPAN * pitch_mm);
        let (width_mm, inner_mm) = (self.tooth_width_mm.unwrap_or(0.0), sizes.inner_width_mm);
        match () {
            () if centres_mm < near_mm => {
                let rule = Rule::AtLeastSize { limit: near_mm, of: "pitch_radii_and_span" };
                Some(("centre_distance_mm", centres_mm, rule))
            }
            () if centres_mm > far_mm => {
                let rule = Rule::AtMostSize { limit: far_mm, of: "longest_span" };
                Some(("centre_distance_mm", centres_mm, rule))
            }
            () if width_mm > inner_mm => {
                let rule = Rule::AtMostSize { limit: inner_mm, of: "inner_width" };
                Some(("tooth_width_mm", width_mm, rule))
            }
            () => None,
        }
    }

    pub(super) fn write(&self) -> Value {
        let mut whole = self.wheels.write();
        self.pull.write(&mut whole);
        whole.put_if_given("tooth_width_mm", self.tooth_width_mm);
        whole.put_number("slack_n", self.slack_n);
        whole.put_if_given("joint_n_mm_per_rad", self.joint_n_mm_per_rad);
        whole.extend(self.friction.write());
        whole
    }
}
