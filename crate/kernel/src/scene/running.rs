//! A drive that moves, from the side: both wheels, the whole closed chain, the joint that is followed
//! and the four places where it folds.

use super::item::{Align, Id, Layer, Size, Tint};
use super::role::Role;
use super::sheet::Sheet;
use super::sketch::Sketch;
use super::{Circle, Scene};
use crate::plane::{Arc, Placement, Point, Projection, Step};
use crate::run::{Moment, Run};
use crate::sprocket::{Form, Seat};
use core::f64::consts::{FRAC_PI_2, PI};

const MARK: Id = Id::Mark("run");
/// Room about the wheels for the numbers of the folds, em.
const MARGIN_EM: f64 = 2.4;

/// From the drive, mm, to a sheet so many em wide, and the sheet's height, em.
fn projection(run: &Run, width_em: f64) -> (Projection, f64) {
    let (places, sizes) = (run.places(), &run.line().sizes);
    let plate_mm = 0.5 * sizes.outer_plate_height_mm.max(sizes.inner_plate_height_mm);
    let [first_mm, second_mm] = [0, 1].map(|i: usize| places[i].pitch_radius_mm + plate_mm);
    let long_mm = places[1].centre.x + first_mm + second_mm;
    let em_per_mm = (width_em - 2.0 * MARGIN_EM) / long_mm;
    let half_em = first_mm.max(second_mm) * em_per_mm + MARGIN_EM;
    let origin = Point::new(MARGIN_EM + first_mm * em_per_mm, half_em);
    (Projection::new(origin, em_per_mm, 0.0, true), 2.0 * half_em)
}

impl Scene {
    /// The picture of a drive at a moment, so many em wide.
    pub fn of_run(run: &Run, moment: &Moment, width_em: f64) -> Self {
        let (to, height_em) = projection(run, width_em);
        let sheet = Sheet { width_em, height_em, narrow: false };
        let mut scene = Self { sheet, ..Self::default() };
        let mut sketch = Sketch::new(&mut scene);
        draw_wheels(&mut sketch, run, moment, &to);
        draw_plates(&mut sketch, run, moment, &to);
        draw_way(&mut sketch, run, &to);
        draw_folds(&mut sketch, run, moment, &to);
        scene
    }

    /// Where names stand on that picture, em: the driver, the driven wheel, the tight strand, the
    /// slack one.
    pub fn names_of_run(run: &Run, width_em: f64) -> [Point; 4] {
        /// Below the driver's shaft, beside the driven wheel's teeth, inside a strand.
        const BELOW_EM: f64 = 2.4;
        const BESIDE_EM: f64 = 3.4;
        const LOWER_EM: f64 = 0.3;
        const INSIDE_EM: f64 = 1.9;
        let (to, _) = projection(run, width_em);
        let [driver, driven] = run.places();
        let below = to.point(driver.centre) + Point::new(0.0, BELOW_EM);
        let beside_em = driven.pitch_radius_mm * to.scale + BESIDE_EM;
        let beside = to.point(driven.centre) + Point::new(-beside_em, LOWER_EM);
        let [tight, slack] = [
            to.point(driver.tight.lerp(driven.tight, 0.5)),
            to.point(driver.slack.lerp(driven.slack, 0.5)),
        ];
        let inside = Point::new(0.0, INSIDE_EM);
        [below, beside, tight + inside, slack - inside]
    }
}

/// An arrow beside the middle of the tight strand, the way it moves: towards the driver.
fn draw_way(sketch: &mut Sketch, run: &Run, to: &Projection) {
    const OFF_EM: f64 = 1.2;
    const HALF_EM: f64 = 1.8;
    let [driver, driven] = run.places();
    let (from, end) = (to.point(driven.tight), to.point(driver.tight));
    let way = (end - from).normalize_or_zero();
    let plate_em = 0.5 * run.line().sizes.inner_plate_height_mm * to.scale;
    let middle = from.lerp(end, 0.5) + (plate_em + OFF_EM) * Point::new(-way.y, way.x);
    let tip = middle + HALF_EM * way;
    sketch.line(MARK, Layer::Marks, Role::Dimension, middle - HALF_EM * way, tip);
    sketch.arrow(MARK, Layer::Marks, tip, way);
}

fn draw_wheels(sketch: &mut Sketch, run: &Run, moment: &Moment, to: &Projection) {
    /// Radius of a shaft, in pitches.
    const SHAFT: f64 = 0.6;
    let wheels = [run.layout().driver, run.layout().driven];
    for ((wheel, place), turn_rad) in wheels.iter().zip(run.places()).zip(moment.turns_rad) {
        let outline = Seat::of(wheel, Form::Least).outline(wheel).steps;
        let body = to.of_body(&Placement::new(place.centre.x, place.centre.y, turn_rad));
        sketch.carry((MARK, Layer::Metal, Role::Paper), &outline, &body);
        let centre = to.point(place.centre);
        let radius = SHAFT * wheel.pitch_mm * to.scale;
        sketch.circle(MARK, Layer::Metal, Role::Behind(Tint::Roller), Circle { centre, radius });
        let rim = to.point(body_point(place.centre, turn_rad, SHAFT * wheel.pitch_mm));
        sketch.line(MARK, Layer::Metal, Role::Dimension, centre, rim);
    }
}

/// A point so far from a centre in a direction.
fn body_point(centre: Point, angle_rad: f64, far: f64) -> Point {
    let (sin, cos) = libm::sincos(angle_rad);
    centre + far * Point::new(cos, sin)
}

/// Inner plates, outer plates over them, the pins.
fn draw_plates(sketch: &mut Sketch, run: &Run, moment: &Moment, to: &Projection) {
    const PIN_SHARE: f64 = 0.5;
    let sizes = &run.line().sizes;
    let halves = [sizes.inner_plate_height_mm, sizes.outer_plate_height_mm];
    let on_sheet: Vec<_> = moment.joints.iter().map(|&joint| to.point(joint)).collect();
    let next = |at: usize| on_sheet[(at + 1) % on_sheet.len()];
    // The link behind an even joint is an outer one.
    for (odd, tint, height_mm) in [(1, Tint::Inner, halves[0]), (0, Tint::Held, halves[1])] {
        let radius = 0.5 * height_mm * to.scale;
        let links = (0..on_sheet.len()).filter(|joint| joint % 2 == odd);
        let steps: Vec<_> = links.flat_map(|at| capsule(on_sheet[at], next(at), radius)).collect();
        sketch.path(MARK, Layer::Metal, Role::Behind(tint), &steps);
    }
    let radius = PIN_SHARE * sizes.pin_diameter_mm * to.scale;
    let pins: Vec<_> = on_sheet.iter().flat_map(|&at| ring(at, radius)).collect();
    sketch.path(MARK, Layer::Metal, Role::LeaderDot, &pins);
}

/// A plate as two round ends and two straight edges.
fn capsule(from: Point, to: Point, radius: f64) -> [Step; 6] {
    let way = (to - from).normalize_or_zero();
    let along_rad = libm::atan2(way.y, way.x);
    let side = radius * Point::new(-way.y, way.x);
    let end = |centre, start_rad| Step::Arc(Arc { centre, radius, start_rad, sweep_rad: -PI });
    [
        Step::Move(from + side),
        Step::Line(to + side),
        end(to, along_rad + FRAC_PI_2),
        Step::Line(from - side),
        end(from, along_rad - FRAC_PI_2),
        Step::Close,
    ]
}

fn ring(centre: Point, radius: f64) -> [Step; 3] {
    let arc = Arc { centre, radius, start_rad: 0.0, sweep_rad: 2.0 * PI };
    [Step::Move(arc.start()), Step::Arc(arc), Step::Close]
}

/// The four places of folding, numbered outside the chain, the present one filled; and the joint.
fn draw_folds(sketch: &mut Sketch, run: &Run, moment: &Moment, to: &Projection) {
    const DISC_EM: f64 = 0.72;
    const OFF_EM: f64 = 1.45;
    const LOWER_EM: f64 = 0.31;
    const JOINT_EM: f64 = 0.42;
    const NUMBERS: [&str; 4] = ["1", "2", "3", "4"];
    for (fold, number) in NUMBERS.into_iter().enumerate() {
        let at = run.fold_point(fold);
        let centre = run.places()[usize::from(fold > 1)].centre;
        let out = (at - centre).normalize_or_zero();
        let sheet_out = Point::new(out.x, -out.y);
        let plate_em = 0.5 * run.line().sizes.inner_plate_height_mm * to.scale;
        let disc = to.point(at) + (plate_em + OFF_EM) * sheet_out;
        let now = moment.followed.folding == Some(fold);
        let (role, letters) =
            if now { (Role::DiscLit, Role::DiscNumberLit) } else { (Role::Disc, Role::DiscNumber) };
        sketch.line(
            MARK,
            Layer::Marks,
            Role::DiscLeader,
            to.point(at) + plate_em * sheet_out,
            disc,
        );
        sketch.circle(MARK, Layer::Marks, role, Circle { centre: disc, radius: DISC_EM });
        let below = disc + Point::new(0.0, LOWER_EM);
        sketch.text(
            (MARK, Layer::Marks, letters),
            below,
            (Align::Middle, Size::SmallStrong),
            |out| out.push_str(number),
        );
    }
    let centre = to.point(moment.followed_at);
    sketch.circle(MARK, Layer::Marks, Role::DiscLit, Circle { centre, radius: JOINT_EM });
}
