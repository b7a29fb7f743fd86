//! Parts seen from the side, cut along the middle.
//!
//! A plate is two eyes and a waist of tangent arcs. The eye reaches the overhang past the pin and
//! half the height above it; where these differ it is an oval of two arcs to a quarter. The waist is
//! one arc, tangent to both eyes, that leaves the waist's height in the middle (chosen).

use core::f64::consts::{FRAC_PI_2, PI};

use super::plan::cut;
use super::{Link, Look, Part, Piece, break_mm, is_bushed, worn};
use crate::chain::Sizes;
use crate::plane::{Pen, Point, Step};

/// Radius of the arc of a waist, mm: tangent from outside to two eyes of height h a pitch p apart,
/// and w/2 from the axis in the middle. From (p/2)^2 + (w/2 + R)^2 = (h/2 + R)^2. `None` where the
/// plate's edge is straight.
pub fn waist_radius_mm(height_mm: f64, waist_mm: f64, pitch_mm: f64) -> Option<f64> {
    /// A waist of a larger radius than so many pitches is drawn straight.
    const STRAIGHT: f64 = 1e4;
    let (half, eye, waist) = (0.5 * pitch_mm, 0.5 * height_mm, 0.5 * waist_mm);
    let (above, depth) = (half * half + waist * waist - eye * eye, 2.0 * (eye - waist));
    (above > 0.0 && depth * STRAIGHT * pitch_mm > above).then(|| above / depth)
}

/// How far along the plate from the pin the waist's arc begins, mm.
pub(super) fn shoulder_mm(height_mm: f64, waist_mm: f64, pitch_mm: f64) -> f64 {
    let eye = 0.5 * height_mm;
    waist_radius_mm(height_mm, waist_mm, pitch_mm)
        .map_or(0.0, |radius| 0.5 * pitch_mm * eye / (eye + radius))
}

/// A plate: its upper edge from the tip of the left eye at (-overhang, 0), the left pin at the
/// origin.
struct Plate {
    pitch: f64,
    eye: f64,
    waist: f64,
    overhang: f64,
    radius: Option<f64>,
}

/// Centre, radius, start and sweep of an arc in the plate's axes.
type Bend = ((f64, f64), f64, f64, f64);

impl Plate {
    fn new(pitch: f64, height: f64, waist: f64, overhang: f64) -> Self {
        let radius = waist_radius_mm(height, waist, pitch);
        Self { pitch, eye: 0.5 * height, waist: 0.5 * waist, overhang, radius }
    }

    /// The direction from the pin to the place where eye and waist meet, rad.
    fn shoulder_rad(&self) -> f64 {
        self.radius.map_or(FRAC_PI_2, |radius| libm::atan2(self.waist + radius, 0.5 * self.pitch))
    }

    /// From the tip over the top of the eye to its shoulder. With a the overhang and b half the
    /// height, an oval's quarter has radii b^2/a at the tip and a(a + b)/(2b) at the top when a > b,
    /// exchanged when a < b: both tangent to each other and to the sides of the box.
    fn eye(&self) -> [Bend; 3] {
        let (a, b) = (self.overhang, self.eye);
        let (tip, top) = if a > b {
            (b * b / a, a * (a + b) / (2.0 * b))
        } else {
            (b * (a + b) / (2.0 * a), a * a / b)
        };
        let meet = PI - libm::atan2((top - b).abs(), (tip - a).abs());
        [
            ((tip - a, 0.0), tip, PI, meet - PI),
            ((0.0, b - top), top, meet, FRAC_PI_2 - meet),
            ((0.0, 0.0), b, FRAC_PI_2, self.shoulder_rad() - FRAC_PI_2),
        ]
    }

    /// The waist from the left shoulder to a place along the plate, and the height there; without
    /// an arc where the edge is straight.
    fn waist_to(&self, x: f64) -> (Option<Bend>, f64) {
        let Some(radius) = self.radius else { return (None, self.eye) };
        let centre = (0.5 * self.pitch, self.waist + radius);
        let start = self.shoulder_rad() - PI;
        let end = -libm::acos(((x - centre.0) / radius).clamp(-1.0, 1.0));
        (Some((centre, radius, start, end - start)), centre.1 + radius * libm::sin(end))
    }

    /// The closed outline of a whole plate.
    fn whole(&self, pen: &mut Pen) {
        let shoulder_mm = self.eye * libm::cos(self.shoulder_rad());
        let (waist, _) = self.waist_to(self.pitch - shoulder_mm);
        pen.go(-self.overhang, 0.0);
        for (origin, sign) in [(0.0, 1.0), (self.pitch, -1.0)] {
            pen.origin = Point::new(origin, 0.0);
            pen.mirror(sign, sign);
            draw(pen, &self.eye());
            match waist {
                Some(bend) => draw(pen, &[bend]),
                None => drop(pen.line(self.pitch, self.eye)),
            }
            pen.mirror(-sign, sign);
            pen.origin = Point::new(self.pitch - origin, 0.0);
            draw(pen, &backward(&self.eye()));
        }
        pen.close();
    }

    /// The outline from the break round the left eye and back to the break, open there.
    fn broken(&self, pen: &mut Pen, break_mm: f64) {
        let (waist, height) = self.waist_to(break_mm);
        let upper: Vec<Bend> = self.eye().into_iter().chain(waist).collect();
        let (u, v) = (pen.sign.x, pen.sign.y);
        pen.mirror(u, -v).go(break_mm, height);
        if waist.is_none() {
            pen.line(0.0, height);
        }
        draw(pen, &backward(&upper));
        pen.mirror(u, v);
        draw(pen, &upper);
        if waist.is_none() {
            pen.line(break_mm, height);
        }
    }
}

/// The same bends walked from their end.
fn backward(bends: &[Bend]) -> Vec<Bend> {
    let turned = |&(centre, radius, start, sweep): &Bend| (centre, radius, start + sweep, -sweep);
    bends.iter().rev().map(turned).collect()
}

fn draw(pen: &mut Pen, bends: &[Bend]) {
    for &(centre, radius, start, sweep) in bends {
        if sweep != 0.0 {
            pen.arc(centre, radius, start, sweep);
        }
    }
}

/// An outer and an inner plate, whole.
pub(super) fn whole_plates(s: &Sizes) -> [Vec<Step>; 2] {
    let outer = (s.outer_plate_height_mm, s.outer_waist_mm, s.outer_overhang_mm);
    let inner = (s.inner_plate_height_mm, s.inner_waist_mm, s.inner_overhang_mm);
    [outer, inner].map(|(height_mm, waist_mm, overhang_mm)| {
        let mut pen = Pen::new();
        Plate::new(s.pitch_mm, height_mm, waist_mm, overhang_mm).whole(&mut pen);
        pen.steps
    })
}

fn piece(part: Part, look: Look, pen: Pen) -> Piece {
    Piece { part, look, outline: pen.steps }
}

/// An outer link: the far plate, broken off, and the pin.
pub(super) fn outer(s: &Sizes, link: Link) -> Vec<Piece> {
    let plate =
        Plate::new(s.pitch_mm, s.outer_plate_height_mm, s.outer_waist_mm, s.outer_overhang_mm);
    let mut behind = Pen::new();
    behind.mirror(link.reaches(), 1.0);
    plate.broken(&mut behind, break_mm(s, link));
    let mut pin = Pen::new();
    // The pin has worn on the side of its own link's middle.
    pin.mirror(-link.reaches(), 1.0);
    worn::pin(&mut pin, s, &s.worn);
    if s.pin_bore_mm > 0.0 {
        pin.circle((0.0, 0.0), 0.5 * s.pin_bore_mm);
    }
    vec![piece(Part::OuterPlate, Look::Behind, behind), cut(Part::Pin, pin)]
}

/// An inner link, or one plate of it: the plate, and the rings of bush or collar.
pub(super) fn inner(s: &Sizes, _link: Link) -> Vec<Piece> {
    let plate =
        Plate::new(s.pitch_mm, s.inner_plate_height_mm, s.inner_waist_mm, s.inner_overhang_mm);
    let mut behind = Pen::new();
    plate.whole(&mut behind);
    let rings = [(0.0, 1.0), (s.pitch_mm, -1.0)].map(|(x, u)| {
        let mut ring = Pen { origin: Point::new(x, 0.0), ..Pen::new() };
        ring.circle((0.0, 0.0), 0.5 * s.barrel_mm).mirror(u, 1.0);
        worn::bore(&mut ring, s, &s.worn);
        if is_bushed(s) {
            cut(Part::Bush, ring)
        } else {
            piece(Part::InnerPlate, Look::Behind, ring)
        }
    });
    let mut pieces = vec![piece(Part::InnerPlate, Look::Behind, behind)];
    pieces.extend(rings);
    pieces
}

/// A roller: the air inside it, and its ring.
pub(super) fn roller(s: &Sizes) -> Vec<Piece> {
    let mut air = Pen::new();
    air.circle((0.0, 0.0), 0.5 * s.roller_bore_mm);
    let mut ring = Pen::new();
    ring.circle((0.0, 0.0), 0.5 * s.roller_diameter_mm);
    ring.circle((0.0, 0.0), 0.5 * s.roller_bore_mm);
    vec![piece(Part::Roller, Look::Air, air), cut(Part::Roller, ring)]
}
