//! Any chain under any sequence of sliders, hands and loads.

use lightgap::chain::{Construction, Dimension};
use lightgap::contact::loaded::{Ended, Load, Loaded};
use lightgap::contact::{Body, Joint, OVERLAP_MM};
use lightgap::paint::{SvgOptions, Theme};
use lightgap::picture::Picture;
use lightgap::plane::Point;
use lightgap::posing::Posing;
use lightgap::scenario::{Scenario, Value};
use lightgap::scene::{Lexicon, View};
use lightgap::stage::Stage;

/// What may be left unbalanced on a body, as a share of the load.
const BALANCED: f64 = 1e-9;
/// So many movements are done at most.
const MOST_MOVES: usize = 24;
/// Of the numbers of a byte.
const HALF: u8 = 128;
const MODES: [&str; 6] = ["turn", "aside", "lean", "twist", "bend", "load"];
const GAPS: [&str; 4] =
    ["pin_clearance_mm", "side_gap_mm", "roller_clearance_mm", "roller_side_clearance_mm"];

/// Bytes read one after the other; 0 when they have run out.
struct Bytes<'a>(std::slice::Iter<'a, u8>);

impl Bytes<'_> {
    fn next(&mut self) -> u8 {
        self.0.next().copied().unwrap_or(0)
    }

    /// From 0 to 1.
    fn share(&mut self) -> f64 {
        (f64::from(self.next()) * 256.0 + f64::from(self.next())) / 65_535.0
    }

    fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.share()
    }

    /// Between two positive numbers, even in the logarithm.
    fn small(&mut self, low: f64, high: f64) -> f64 {
        low * (high / low).powf(self.share())
    }

    fn point(&mut self, size: f64) -> Point {
        size * Point::new(self.between(-1.0, 1.0), self.between(-1.0, 1.0))
    }

    fn pick<'w>(&mut self, words: &[&'w str]) -> &'w str {
        words[usize::from(self.next()) % words.len()]
    }
}

/// A chain drawn from the bytes and everything that a visitor can do to it, in their order.
pub fn sliders(bytes: &[u8]) {
    let mut bytes = Bytes(bytes.iter());
    let Ok(scenario) = Scenario::read(&file(&mut bytes)) else { return };
    let mut stage = Stage::new(scenario);
    hold(&stage);
    for _ in 0..MOST_MOVES {
        if bytes.0.as_slice().is_empty() {
            break;
        }
        go(&mut stage, &mut bytes);
        hold(&stage);
    }
    hold_picture(&stage);
}

/// A chain from tight to worn out, from narrow to wide.
fn file(bytes: &mut Bytes) -> Value {
    let construction = Construction::ALL[usize::from(bytes.next()) % 2];
    let p = bytes.between(6.0, 40.0);
    let (b1, ti) = (p * bytes.between(0.15, 0.7), p * bytes.between(0.06, 0.13));
    let d2 = p * bytes.between(0.2, 0.34);
    let stated = [
        (Dimension::Pitch, p),
        (Dimension::RollerDiameter, p * bytes.between(0.55, 0.68)),
        (Dimension::InnerWidth, b1),
        (Dimension::PinDiameter, d2),
        (Dimension::Bore, d2 + p * bytes.small(5e-4, 1e-2)),
        (Dimension::InnerPlate, ti),
        (Dimension::OuterPlate, p * bytes.between(0.06, 0.13)),
        (Dimension::OuterSpacing, b1 + 2.0 * ti + p * bytes.small(1e-3, 6e-2)),
        (Dimension::MouthRadius, p * bytes.between(0.0, 0.02)),
        (Dimension::EdgeChamfer, p * bytes.between(0.0, 0.02)),
    ];
    let mut chain = Value::object([("construction", Value::text(construction.key()))]);
    stated.iter().for_each(|(dimension, mm)| chain.put(dimension.key(), Value::from(*mm)));
    let load = Value::object([
        ("tension_n", Value::from(bytes.small(1.0, 1e4))),
        ("side_n", Value::from(bytes.between(-500.0, 500.0))),
        ("moment_n_mm", Value::from(bytes.between(-2e3, 2e3))),
    ]);
    let (format, title) = (Value::from(1.0), Value::text("any"));
    Value::object([("format", format), ("title", title), ("chain", chain), ("load", load)])
}

/// One movement; what is refused changes nothing.
fn go(stage: &mut Stage, bytes: &mut Bytes) {
    let p = stage.chain().pitch_mm;
    match bytes.next() % 11 {
        0 => stage.scrub(bytes.between(-1.2, 1.2)),
        1 => stage.nudge(bytes.between(-9.0, 9.0)),
        2 => drop(stage.show(bytes.pick(&MODES))),
        3 => stage.room_to(bytes.between(-0.1, 0.1) * p, bytes.between(-0.1, 0.1)),
        4 => drop(stage.set_gap(bytes.pick(&GAPS), p * bytes.between(-0.002, 0.05))),
        5 => {
            let dimension = Dimension::ALL[usize::from(bytes.next()) % Dimension::ALL.len()];
            let mm = dimension.of(stage.chain()) * bytes.between(0.8, 1.2);
            drop(stage.set(&format!("chain.{}", dimension.key()), Value::from(mm)));
        }
        6 => stage.widen(bytes.between(0.0, 40.0)),
        7 => stage.set_taut(bytes.next() < HALF),
        8 => stage.set_springy(bytes.next() < HALF),
        9 => {
            let at = Point::new(p * bytes.between(-0.5, 2.5), p * bytes.between(-0.5, 0.5));
            stage.grab(View::Plan, at);
            stage.drag(at + bytes.point(p));
        }
        _ => stage.drag(bytes.point(2.0 * p)),
    }
}

/// What a stage promises after every movement.
pub(super) fn hold(stage: &Stage) {
    let Some(posing) = stage.posing() else { return };
    for settled in posing.settled().into_iter().flatten() {
        let mm = settled.worst_gap_mm;
        assert!(mm >= -OVERLAP_MM, "metal {mm} mm in metal");
    }
    for place in &posing.pose().0 {
        let numbers = [place.x_mm, place.y_mm, place.yaw_rad];
        assert!(numbers.iter().all(|number| number.is_finite()), "{place:?}");
    }
    hold_forces(stage, posing);
}

/// A pitch that rests has no metal in metal, and the forces on every body that is not held add up to
/// nothing with the load. The pose that is shown is settled once more from the one at rest; the forces
/// belong to that one.
fn hold_forces(stage: &Stage, posing: &Posing) {
    if posing.forces().is_empty() {
        return;
    }
    let (pulls, share, sizes) = (posing.pulls(), stage.share(), stage.chain().sizes());
    let load = Load {
        at: Joint::Second,
        tension_n: share * pulls.tension_n,
        side_n: share * pulls.side_n,
        moment_n_mm: share * pulls.moment_n_mm,
    };
    let mut loaded = Loaded::new(sizes, pulls.stiffness_n_mm);
    let rest = loaded.settle(&load);
    assert!(rest.ended == Ended::AtRest && rest.worst_gap_mm >= -OVERLAP_MM, "{rest:?}");
    let size_n = load.tension_n.abs() + load.side_n.abs() + load.moment_n_mm.abs() / sizes.pitch_mm;
    for &body in Body::ALL.iter().filter(|body| **body != Body::HeldOuter) {
        let left_n = left_n(&loaded, &load, body, sizes.pitch_mm);
        assert!(left_n <= BALANCED * size_n, "{body:?}: {left_n} N left of {size_n} N");
    }
}

/// What is left unbalanced on a body, N, its moment over a pitch.
fn left_n(loaded: &Loaded, load: &Load, body: Body, pitch_mm: f64) -> f64 {
    let (mut force_n, mut moment_n_mm) = (Point::ZERO, 0.0);
    if body == load.on() {
        let (at, wrench) = (loaded.pose().of(body).origin(), load.wrench());
        force_n = wrench.force_n;
        moment_n_mm = at.perp_dot(force_n) + wrench.moment_n_mm;
    }
    for force in loaded.forces() {
        let on_n = force.on_body_n(body);
        force_n += on_n;
        moment_n_mm += force.at.perp_dot(on_n);
    }
    force_n.length().max(moment_n_mm.abs() / pitch_mm)
}

/// Everything that is drawn has a place.
fn hold_picture(stage: &Stage) {
    let mut picture = Picture::new(Lexicon::new([]));
    picture.lay(1200.0, 900.0, 15.0, false);
    let unit = picture.unit_px();
    let options =
        SvgOptions { title: "", description: "", caption: &[], unit, width_px: None, hidden: &[] };
    let svg = picture.svg(stage, &Theme::light(), &options);
    assert!(!svg.contains("NaN") && !svg.contains("inf"), "a place that is none is drawn");
}
