//! How much of the plane each section needs, at the stops of what is shown.

use super::drawing::Show;
use crate::chain::outline::{Link, break_mm, head_radius_mm};
use crate::chain::{Chain, Sizes};
use crate::contact::Play;
use crate::plane::Point;
use crate::posing::Mode;

/// How large the sections are, mm.
pub(super) struct Extent {
    /// Ends of what is drawn along the chain.
    pub left: f64,
    pub right: f64,
    /// Half the height of the plan section, half the length of the pin, and how far across the
    /// outer links come.
    pub plan: f64,
    pub half_pin: f64,
    pub link: f64,
    /// Seen from the side: below and above the axis.
    pub side: (f64, f64),
    /// Across: half the width and half the height.
    pub across: Point,
}

impl Extent {
    /// What a drawn chain needs for a movement.
    pub fn of(chain: &Chain, show: Show) -> Self {
        let s = chain.sizes();
        let play = chain.goes_together().then(|| Play::of(s));
        let (turn, twist) =
            play.map_or((0.0, 0.0), |play| (play.turn.angle_rad, play.twist.angle_rad));
        let (plan, link) = half_plan_mm(s, turn, show.mode);
        Self {
            left: -break_mm(s, Link::OuterToLeft),
            right: right_mm(s, show.most_bend_rad),
            plan,
            half_pin: 0.5 * s.pin_length_mm,
            link,
            side: side_mm(s, show.most_bend_rad),
            across: half_across_mm(s, twist),
        }
    }
}

/// How far from the axis the plan section comes at the stop, or with the links pushed aside, and how
/// far the outer links' plates do, mm. A hand may push the link further aside than a turn does; for
/// that half of the way is kept. A load may do both.
fn half_plan_mm(s: &Sizes, turn_rad: f64, mode: Mode) -> (f64, f64) {
    /// A little air, and how far the axis of a pin comes past its heads, as shares of the pitch.
    const AIR: f64 = 0.03;
    const PAST_PIN: f64 = 0.09;
    let turn_rad = if mode.is_plan() { turn_rad } else { 0.0 };
    let half_pin = 0.5 * s.pin_length_mm;
    let half_link = 0.5 * s.outer_spacing_mm + s.outer_plate_mm;
    let second = s.pitch_mm * libm::sin(0.5 * turn_rad);
    let head = head_radius_mm(s) * libm::sin(turn_rad);
    let turned = second + break_mm(s, Link::OuterToRight) * libm::sin(turn_rad) + half_link;
    let pin = second + half_pin * libm::cos(turn_rad) + head;
    let aside = s.side_gap_mm().max(0.0)
        * match mode {
            Mode::Turn | Mode::Lean => 0.5,
            Mode::Aside | Mode::Load => 1.0,
            Mode::Twist | Mode::Bend => 0.0,
        };
    let both = if mode == Mode::Load { aside } else { 0.0 };
    let link = (turned + both).max(half_link + aside);
    let axis = (pin + both).max(half_pin + aside) + PAST_PIN * s.pitch_mm;
    ((link + AIR * s.pitch_mm).max(axis), link)
}

/// How far right the next outer link comes, straight or folded, mm from the first pin.
fn right_mm(s: &Sizes, most_bend_rad: [f64; 2]) -> f64 {
    const STEPS: u32 = 8;
    let reach = break_mm(s, Link::OuterToRight);
    let right = |share: f64| {
        let [inner, next] = most_bend_rad.map(|most| share * most);
        s.pitch_mm * libm::cos(inner)
            + reach * libm::cos(next)
            + 0.5 * s.outer_plate_height_mm * libm::sin(next).abs()
    };
    let farthest = (0..=STEPS).map(|i| right(f64::from(i) / f64::from(STEPS))).fold(0.0, f64::max);
    farthest + s.worn.along_mm(s).max(0.0)
}

/// How far below and above the axis the view from the side comes at the largest fold, mm.
fn side_mm(s: &Sizes, most_bend_rad: [f64; 2]) -> (f64, f64) {
    const AIR: f64 = 0.03;
    let plates = 0.5 * s.inner_plate_height_mm.max(s.outer_plate_height_mm);
    let hang = s.pin_clearance_mm().max(0.0) + s.roller_clearance_mm().max(0.0);
    let half = plates.max(0.5 * (s.roller_diameter_mm + hang));
    let second = s.pitch_mm * libm::sin(most_bend_rad[0]);
    let end = second + break_mm(s, Link::OuterToRight) * libm::sin(most_bend_rad[1]);
    let air = half + AIR * s.pitch_mm;
    (air + (-second).max(-end).max(0.0), air + second.max(end).max(0.0))
}

/// Half the width and half the height of the section across, at the largest twist, mm.
fn half_across_mm(s: &Sizes, twist_rad: f64) -> Point {
    const AIR: f64 = 0.04;
    let (sin, cos) = libm::sincos(twist_rad);
    let (b2, h2) = (0.5 * s.inner_link_width_mm(), 0.5 * s.inner_plate_height_mm);
    let inner = Point::new(b2 * cos + h2 * sin, h2 * cos + b2 * sin);
    let outer = Point::new(0.5 * s.pin_length_mm, 0.5 * s.outer_plate_height_mm);
    inner.max(outer) + Point::splat(AIR * s.pitch_mm)
}
