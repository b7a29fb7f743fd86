//! A joint that folds on a wheel, close up and from the side: the tooth gap, the seated roller with
//! its bush and its pin, the link that rests and the link that turns, and where metal rubs.
//!
//! Drawn in the wheel's own axes, the joint on top and the turning link to the right. Every gap is
//! drawn [`FOLD_TIMES`] times too big.

use super::drawing::section_lines;
use super::item::{Align, Id, Layer, Size, Tint};
use super::role::Role;
use super::sheet::Sheet;
use super::sketch::Sketch;
use super::{Circle, Scene};
use crate::chain::Sizes;
use crate::chain::outline::{Part, whole_plates};
use crate::contact::widen;
use crate::plane::{Arc, Hatch, Pen, Placement, Point, Projection, Step};
use crate::seating::{Engagement, Seated, Turns};
use crate::sprocket::{Form, Seat, Wheel};
use core::f64::consts::{FRAC_PI_2, FRAC_PI_4, PI};

/// How many times too big gaps are drawn.
pub const FOLD_TIMES: f64 = 5.0;

/// What is to be drawn.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Folding<'a> {
    /// The chain's sizes.
    pub sizes: &'a Sizes,
    /// The joint and its wheel.
    pub engagement: &'a Engagement,
    /// How far it has folded.
    pub seated: &'a Seated,
    /// Whether the joint runs onto the wheel: the turning link swings in. Else it swings out.
    pub runs_on: bool,
    /// Width and height of the round picture, em.
    pub size_em: f64,
}

/// Where everything stands, mm: the seated roller's centre is the origin, the wheel's below it.
struct Stand {
    wide: Sizes,
    wheel: Wheel,
    /// The gap of the wheel, its centre at its own origin and the seat on its first axis.
    wheel_at: Placement,
    resting: Placement,
    turning: Placement,
    bush: Point,
    pin: Point,
    /// The way in which the turning link turns: 1 anticlockwise.
    way: f64,
    /// Direction of the contact of pin and bore, now, and as it was at the start, rad.
    contact_rad: f64,
    start_rad: f64,
    /// Direction from the roller to the tooth that pushes it, rad.
    tooth_rad: f64,
}

fn unit(angle_rad: f64) -> Point {
    let (sin, cos) = libm::sincos(angle_rad);
    Point::new(cos, sin)
}

impl Stand {
    fn of(folding: &Folding) -> Self {
        let (engagement, seated) = (folding.engagement, folding.seated);
        let wide = widen(folding.sizes, FOLD_TIMES);
        let wheel = Wheel { roller_diameter_mm: wide.roller_diameter_mm, ..engagement.wheel };
        let half_rad = 0.5 * wheel.articulation_rad();
        let way = if folding.runs_on { -1.0 } else { 1.0 };
        let from_rad = -way * half_rad;
        let turned_rad = from_rad + way * seated.fold_rad;
        let outer = engagement.turns == Turns::Outer;
        let start_rad = if outer { from_rad } else { from_rad + PI };
        let contact_rad = start_rad + way * (seated.fold_rad + seated.climb_rad);
        let tooth_rad = -wheel.pressure_angle_rad();
        let bush = 0.5 * wide.roller_clearance_mm() * unit(tooth_rad);
        let pin = bush + 0.5 * wide.pin_clearance_mm() * unit(contact_rad);
        let (rests_at, turns_at) = if outer { (bush, pin) } else { (pin, bush) };
        Self {
            wheel_at: Placement::new(0.0, -wheel.pitch_radius_mm(), FRAC_PI_2),
            resting: Placement::new(rests_at.x, rests_at.y, PI + half_rad),
            turning: Placement::new(turns_at.x, turns_at.y, turned_rad),
            wide,
            wheel,
            bush,
            pin,
            way,
            contact_rad,
            start_rad,
            tooth_rad,
        }
    }

    /// The far ends of both links and the joint itself.
    fn joints(&self) -> [Point; 3] {
        let far = Point::new(self.wide.pitch_mm, 0.0);
        [self.resting.outward(far), self.turning.outward(far), Point::ZERO]
    }

    fn is_outer_turning(&self) -> bool {
        self.turning.origin() == self.pin
    }
}

/// Words and marks have no body of their own.
const MARK: Id = Id::Mark("fold");

impl Scene {
    /// The picture of a joint that folds on a wheel.
    pub fn of_fold(folding: &Folding) -> Self {
        /// Half of what is seen, in pitches, and the middle of it.
        const HALF_PITCHES: f64 = 1.36;
        const MIDDLE: Point = Point::new(0.1, -0.06);
        const MARGIN_EM: f64 = 0.2;
        let size_em = folding.size_em;
        let sheet = Sheet { width_em: size_em, height_em: size_em, narrow: false };
        let mut scene = Self { sheet, ..Self::default() };
        let stand = Stand::of(folding);
        let radius = 0.5 * folding.size_em - MARGIN_EM;
        let em_per_mm = radius / (HALF_PITCHES * stand.wide.pitch_mm);
        let centre = Point::new(0.5 * folding.size_em, 0.5 * folding.size_em);
        let middle = em_per_mm * stand.wide.pitch_mm * Point::new(MIDDLE.x, -MIDDLE.y);
        let to = Projection::new(centre - middle, em_per_mm, 0.0, true);
        let circle = Circle { centre, radius };
        scene.clips.push(circle);
        let mut sketch = Sketch::new(&mut scene);
        sketch.clip = Some(0);
        draw_metal(&mut sketch, &stand, &to);
        draw_axes(&mut sketch, &stand, &to);
        draw_marks(&mut sketch, &stand, folding.seated, folding.engagement, &to);
        sketch.clip = None;
        sketch.circle(MARK, Layer::Ground, Role::Rim, circle);
        scene
    }
}

/// Plates behind, then the wheel, then rollers, bushes and pins, all cut along the middle.
fn draw_metal(sketch: &mut Sketch, stand: &Stand, to: &Projection) {
    let [outer, inner] = whole_plates(&stand.wide);
    let turning_outer = stand.is_outer_turning();
    let (of_outer, of_inner) =
        if turning_outer { (stand.turning, stand.resting) } else { (stand.resting, stand.turning) };
    let behind = |tint| (MARK, Layer::Metal, Role::Behind(tint));
    sketch.carry(behind(Tint::Held), &outer, &to.of_body(&of_outer));
    sketch.carry(behind(Tint::Inner), &inner, &to.of_body(&of_inner));
    draw_wheel(sketch, stand, to);
    for joint in stand.joints() {
        let centred = joint != Point::ZERO;
        let (bush, pin) = if centred { (joint, joint) } else { (stand.bush, stand.pin) };
        draw_rings(sketch, &stand.wide, [joint, bush, pin], to);
    }
}

fn draw_wheel(sketch: &mut Sketch, stand: &Stand, to: &Projection) {
    const PITCH_EM: f64 = 0.8;
    let outline = Seat::of(&stand.wheel, Form::Least).outline(&stand.wheel).steps;
    let body = to.of_body(&stand.wheel_at);
    let hatch = Hatch { along_rad: FRAC_PI_4, pitch: PITCH_EM / to.scale };
    let seat = Point::new(stand.wheel.pitch_radius_mm(), 0.0);
    let lines = hatch.clip_near(&outline, seat, 2.0 * stand.wide.pitch_mm);
    sketch.carry((MARK, Layer::Metal, Role::Paper), &outline, &body);
    sketch.carry((MARK, Layer::Section, Role::Leader), &lines, &body);
}

/// A roller, a bush and a pin with their section lines.
fn draw_rings(sketch: &mut Sketch, s: &Sizes, [roller, bush, pin]: [Point; 3], to: &Projection) {
    let rings = [
        (Part::Roller, Tint::Roller, roller, s.roller_diameter_mm, s.roller_bore_mm),
        (Part::Bush, Tint::Inner, bush, s.barrel_mm, s.bore_mm),
        (Part::Pin, Tint::Held, pin, s.pin_diameter_mm, s.pin_bore_mm),
    ];
    for (part, tint, centre, outside_mm, inside_mm) in rings {
        let mut hole = Pen::new();
        hole.circle((centre.x, centre.y), 0.5 * inside_mm.max(0.0));
        let mut ring = Pen::new();
        ring.circle((centre.x, centre.y), 0.5 * outside_mm);
        if inside_mm > 0.0 {
            ring.circle((centre.x, centre.y), 0.5 * inside_mm);
            sketch.carry((MARK, Layer::Metal, Role::Patch), &hole.steps, to);
        }
        let lines = section_lines(part, tint, to.scale).clip(&ring.steps);
        sketch.carry((MARK, Layer::Metal, Role::Cut(tint)), &ring.steps, to);
        sketch.carry((MARK, Layer::Section, Role::SectionLine(tint)), &lines, to);
    }
}

/// The turning link's axis as it was, and as it is; an arc with an arrowhead between them.
fn draw_axes(sketch: &mut Sketch, stand: &Stand, to: &Projection) {
    const REACH_PITCHES: f64 = 1.25;
    const ARC_PITCHES: f64 = 1.18;
    /// Below this turn no arrow is drawn, em of its arc.
    const LEAST_EM: f64 = 0.7;
    let half_rad = 0.5 * stand.wheel.articulation_rad();
    let (from_rad, now_rad) = (-stand.way * half_rad, stand.turning.yaw_rad);
    let reach_mm = REACH_PITCHES * stand.wide.pitch_mm;
    for (role, angle_rad) in [(Role::Axis, from_rad), (Role::Dimension, now_rad)] {
        let line = [Step::Move(Point::ZERO), Step::Line(reach_mm * unit(angle_rad))];
        sketch.carry((MARK, Layer::Centre, role), &line, to);
    }
    let radius = ARC_PITCHES * stand.wide.pitch_mm;
    let sweep_rad = now_rad - from_rad;
    if sweep_rad.abs() * radius * to.scale < LEAST_EM {
        return;
    }
    let arc = Arc { centre: Point::ZERO, radius, start_rad: from_rad, sweep_rad };
    sketch.carry(
        (MARK, Layer::Centre, Role::Dimension),
        &[Step::Move(arc.start()), Step::Arc(arc)],
        to,
    );
    let ahead = stand.way * Point::new(-libm::sin(now_rad), libm::cos(now_rad));
    sketch.arrow(MARK, Layer::Centre, to.point(arc.end()), Point::new(ahead.x, -ahead.y));
}

/// Where metal rubs: arcs that the contacts have swept, spots where they are, and lettered discs.
fn draw_marks(
    sketch: &mut Sketch,
    stand: &Stand,
    seated: &Seated,
    of: &Engagement,
    to: &Projection,
) {
    let (s, way) = (&stand.wide, stand.way);
    let (centre, radius, swept) = match of.turns {
        Turns::Outer => (stand.bush, 0.5 * s.bore_mm, seated.on_bore),
        Turns::Inner => (stand.pin, 0.5 * s.pin_diameter_mm, seated.on_pin),
    };
    let arc = |centre, radius, start_rad, sweep_rad| Arc { centre, radius, start_rad, sweep_rad };
    let pin_arc = arc(
        centre,
        radius,
        stand.start_rad + way * swept.low_rad,
        way * (swept.high_rad - swept.low_rad),
    );
    lit(sketch, pin_arc, to);
    let barrel_mm = 0.5 * s.barrel_mm;
    if of.turns == Turns::Inner {
        let (at, radius) = if of.rubbing.rollers_turn {
            (stand.bush, barrel_mm)
        } else {
            (Point::ZERO, 0.5 * s.roller_diameter_mm)
        };
        lit(sketch, arc(at, radius, stand.tooth_rad, way * seated.fold_rad), to);
    }
    let spots = [
        stand.pin + 0.5 * s.pin_diameter_mm * unit(stand.contact_rad),
        0.5 * s.roller_diameter_mm * unit(stand.tooth_rad),
        stand.bush + barrel_mm * unit(stand.tooth_rad),
    ];
    draw_discs(sketch, stand, spots, to);
}

/// A thick edge along an arc that has some length.
fn lit(sketch: &mut Sketch, arc: Arc, to: &Projection) {
    const LEAST_RAD: f64 = 1e-6;
    if arc.sweep_rad.abs() > LEAST_RAD {
        let steps = [Step::Move(arc.start()), Step::Arc(arc)];
        sketch.carry((MARK, Layer::Marks, Role::TouchingEdge), &steps, to);
    }
}

/// A spot and a lettered disc for each contact: a pin in bore, b tooth on roller, c roller on bush.
fn draw_discs(sketch: &mut Sketch, stand: &Stand, spots: [Point; 3], to: &Projection) {
    const SPOT_EM: f64 = 0.2;
    const DISC_EM: f64 = 0.68;
    const LOWER_EM: f64 = 0.31;
    /// Directions in which the discs stand off the joint, rad, and how far, in pitches.
    const AWAY: [(f64, f64); 3] = [(1.45, 0.62), (-0.55, 0.78), (-1.35, 0.6)];
    const LETTERS: [&str; 3] = ["a", "b", "c"];
    for ((spot, (angle_rad, pitches)), letter) in spots.into_iter().zip(AWAY).zip(LETTERS) {
        let disc = to.point(pitches * stand.wide.pitch_mm * unit(angle_rad));
        let spot = to.point(spot);
        sketch.line(MARK, Layer::Marks, Role::DiscLeader, spot, disc);
        sketch.circle(
            MARK,
            Layer::Marks,
            Role::TouchingSpot,
            Circle { centre: spot, radius: SPOT_EM },
        );
        sketch.circle(MARK, Layer::Marks, Role::Disc, Circle { centre: disc, radius: DISC_EM });
        let (what, at) = ((MARK, Layer::Marks, Role::DiscNumber), disc + Point::new(0.0, LOWER_EM));
        sketch.text(what, at, (Align::Middle, Size::SmallStrong), |out| out.push_str(letter));
    }
}
