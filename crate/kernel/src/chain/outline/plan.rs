//! Parts cut through the pins' axes, seen from above.
//!
//! Every shape is said once in (u, v): u away from a pin's axis, v along it away from the chain's
//! middle, and mirrored into its place. The section across the chain uses the same shapes.

use core::f64::consts::{FRAC_PI_2, PI};

use super::{Link, Look, Part, Piece, break_mm, collar_end_mm, is_bushed};
use crate::chain::{Sizes, WornBore};
use crate::plane::{Pen, Point, Step};

/// Both ways along or across.
const BOTH: [f64; 2] = [1.0, -1.0];

/// An outer link: eyes, broken-off lengths, pin.
pub(super) fn outer(s: &Sizes, link: Link) -> Vec<Piece> {
    let mut pieces = Vec::new();
    for end in BOTH {
        let mut eye = Pen::new();
        eye.mirror(-link.reaches(), end);
        outer_eye(&mut eye, s, s.outer_overhang_mm);
        let mut length = Pen::new();
        length.mirror(link.reaches(), end);
        outer_length(&mut length, s, break_mm(s, link));
        pieces.extend([eye, length].map(|pen| cut(Part::OuterPlate, pen)));
    }
    pieces.extend(pin(s, false, Some(link)));
    pieces
}

/// An inner link, or one plate of it.
pub(super) fn inner(s: &Sizes, link: Link) -> Vec<Piece> {
    let (p, loaded) = (s.pitch_mm, &WornBore::loaded_wall(s));
    let mut pieces = Vec::new();
    for &end in link.ends() {
        let pens = [(0.0, -1.0), (p, 1.0)].map(|(x, u)| {
            let mut eye = Pen { origin: Point::new(x, 0.0), ..Pen::new() };
            eye.mirror(u, end);
            inner_eye(&mut eye, loaded, s.inner_overhang_mm);
            eye
        });
        pieces.extend(pens.map(|pen| cut(Part::InnerPlate, pen)));
        let mut middle = Pen::new();
        middle.mirror(1.0, end);
        inner_middle(&mut middle, s);
        pieces.push(cut(Part::InnerPlate, middle));
    }
    if is_bushed(s) {
        for (x, u, s) in [(0.0, -1.0, loaded), (0.0, 1.0, s), (p, -1.0, s), (p, 1.0, loaded)] {
            let mut wall = Pen { origin: Point::new(x, 0.0), ..Pen::new() };
            wall.mirror(u, 1.0);
            bush_wall(&mut wall, s);
            pieces.push(cut(Part::Bush, wall));
        }
    }
    pieces
}

/// A roller: two walls.
pub(super) fn roller(s: &Sizes) -> Vec<Piece> {
    BOTH.map(|u| {
        let mut wall = Pen::new();
        wall.mirror(u, 1.0);
        roller_wall(&mut wall, s);
        cut(Part::Roller, wall)
    })
    .into()
}

pub(super) fn cut(part: Part, pen: Pen) -> Piece {
    Piece { part, look: Look::Cut, outline: pen.steps }
}

/// The outer plate from the pin to its rounded end, far side.
pub(super) fn outer_eye(pen: &mut Pen, s: &Sizes, reach_mm: f64) {
    let (low, high) = (0.5 * s.outer_spacing_mm, 0.5 * s.outer_spacing_mm + s.outer_plate_mm);
    chamfered(pen, (0.5 * s.pin_diameter_mm, reach_mm), (low, high), s.edge_chamfer_mm);
}

/// The outer plate from the pin to where it is broken off, far side; open at the break.
fn outer_length(pen: &mut Pen, s: &Sizes, to: f64) {
    let (low, high) = (0.5 * s.outer_spacing_mm, 0.5 * s.outer_spacing_mm + s.outer_plate_mm);
    let from = 0.5 * s.pin_diameter_mm;
    pen.go(to, low).line(from, low).line(from, high).line(to, high);
}

/// A rectangle whose far end has chamfered corners.
fn chamfered(pen: &mut Pen, (from, to): (f64, f64), (low, high): (f64, f64), chamfer: f64) {
    let c = chamfer;
    if c > 0.0 {
        let end = [(to - c, low), (to, low + c), (to, high - c), (to - c, high)];
        pen.polygon(&[(from, low), end[0], end[1], end[2], end[3], (from, high)]);
    } else {
        pen.rectangle((from, low), (to, high));
    }
}

/// The inner plate from its bore to its rounded end, with its collar when it has one.
pub(super) fn inner_eye(pen: &mut Pen, s: &Sizes, reach_mm: f64) {
    let (low, high) = (0.5 * s.inner_width_mm, 0.5 * s.inner_link_width_mm());
    if is_bushed(s) {
        return chamfered(pen, (0.5 * s.barrel_mm, reach_mm), (low, high), s.edge_chamfer_mm);
    }
    let c = s.edge_chamfer_mm;
    collar_from_inside(pen, s);
    pen.line(reach_mm - c, low);
    if c > 0.0 {
        pen.line(reach_mm, low + c).line(reach_mm, high - c).line(reach_mm - c, high);
    } else {
        pen.line(reach_mm, high);
    }
    pen.close();
}

/// The inner plate between its two bores, far side.
fn inner_middle(pen: &mut Pen, s: &Sizes) {
    let (low, high, p) = (0.5 * s.inner_width_mm, 0.5 * s.inner_link_width_mm(), s.pitch_mm);
    if is_bushed(s) {
        let wall = 0.5 * s.barrel_mm;
        pen.rectangle((wall, low), (p - wall, high));
        return;
    }
    let (bore, barrel, r) = (0.5 * s.bore_mm, 0.5 * s.barrel_mm, s.mouth_radius_mm);
    let end = collar_end_mm(s);
    collar_from_inside(pen, s);
    pen.line(p - barrel, low).line(p - barrel, end).line(p - bore - r, end);
    if r > 0.0 {
        pen.arc((p - bore - r, end + r), r, -FRAC_PI_2, FRAC_PI_2).line(p - bore, high - r);
        pen.arc((p - bore - r, high - r), r, 0.0, FRAC_PI_2);
    } else {
        pen.line(p - bore, high);
    }
    pen.close();
}

/// Begins at a collar's mouth, goes in along its bore, round its inner end and up its barrel to the
/// plate's inner face.
fn collar_from_inside(pen: &mut Pen, s: &Sizes) {
    let (bore, barrel, r) = (0.5 * s.bore_mm, 0.5 * s.barrel_mm, s.mouth_radius_mm);
    let (low, high) = (0.5 * s.inner_width_mm, 0.5 * s.inner_link_width_mm());
    let end = collar_end_mm(s);
    if r > 0.0 {
        pen.go(bore + r, high).arc((bore + r, high - r), r, FRAC_PI_2, FRAC_PI_2);
        pen.line(bore, end + r).arc((bore + r, end + r), r, PI, FRAC_PI_2);
    } else {
        pen.go(bore, high).line(bore, end);
    }
    pen.line(barrel, end).line(barrel, low);
}

/// One wall of a bush with its rounded mouths.
pub(super) fn bush_wall(pen: &mut Pen, s: &Sizes) {
    let (bore, barrel) = (0.5 * s.bore_mm, 0.5 * s.barrel_mm);
    let (half, r) = (0.5 * s.bearing_length_mm, s.mouth_radius_mm);
    if r > 0.0 {
        pen.go(barrel, -half).line(barrel, half).line(bore + r, half);
        pen.arc((bore + r, half - r), r, FRAC_PI_2, FRAC_PI_2).line(bore, r - half);
        pen.arc((bore + r, r - half), r, PI, FRAC_PI_2).close();
    } else {
        pen.rectangle((bore, -half), (barrel, half));
    }
}

/// One wall of a roller.
pub(super) fn roller_wall(pen: &mut Pen, s: &Sizes) {
    let half = 0.5 * s.roller_length_mm;
    pen.rectangle((0.5 * s.roller_bore_mm, -half), (0.5 * s.roller_diameter_mm, half));
}

/// How far a riveted head reaches from the pin's axis, mm: a tenth more than the pin, or less
/// where the pin hardly stands out of the plate (chosen).
pub fn head_radius_mm(s: &Sizes) -> f64 {
    const BULGE: f64 = 0.1;
    let radius = 0.5 * s.pin_diameter_mm;
    radius + (BULGE * radius).min(0.5 * protrusion_mm(s))
}

/// How far the pin stands out of the outer plate, mm.
fn protrusion_mm(s: &Sizes) -> f64 {
    (0.5 * (s.pin_length_mm - s.outer_spacing_mm) - s.outer_plate_mm).max(0.0)
}

/// The corners of one side of the pin from near to far end: (u, v), u away from its axis. Between the
/// outer plates it has worn so deep, mm.
fn pin_side(s: &Sizes, worn_mm: f64) -> Vec<(f64, f64)> {
    const ROUNDED: f64 = 0.5;
    let (radius, head) = (0.5 * s.pin_diameter_mm, head_radius_mm(s));
    let (face, tip) = (0.5 * s.outer_spacing_mm + s.outer_plate_mm, 0.5 * s.pin_length_mm);
    let stands = protrusion_mm(s);
    if stands <= 0.0 {
        return vec![(radius, -tip), (radius, tip)];
    }
    let solid = 0.5 * (head - 0.5 * s.pin_bore_mm);
    let c = (ROUNDED * stands).min(solid);
    let (inside, bears) = (0.5 * s.outer_spacing_mm, radius - worn_mm);
    let ends = [(radius, face), (head, face), (head, tip - c), (head - c, tip)];
    let half = [(bears, inside), (radius, inside), ends[0], ends[1], ends[2], ends[3]];
    let half = if worn_mm > 0.0 { &half[..] } else { &half[2..] };
    half.iter().rev().map(|&(u, v)| (u, -v)).chain(half.iter().copied()).collect()
}

/// The pin, cut lengthwise: one outline, or the two walls of a hollow pin. Cut along the load it shows
/// what it has worn on the side of its own link's middle.
pub(super) fn pin(s: &Sizes, swapped: bool, link: Option<Link>) -> Vec<Piece> {
    let piece = |pen: Pen| Piece { part: Part::Pin, look: Look::Plain, outline: pen.steps };
    let side = |u: f64| {
        let loaded = link.is_some_and(|link| u * link.reaches() > 0.0);
        pin_side(s, if loaded { s.worn.pin_mm } else { 0.0 })
    };
    let hole = 0.5 * s.pin_bore_mm;
    let mut pen = Pen { swapped, ..Pen::new() };
    if hole > 0.0 {
        return BOTH
            .map(|u| {
                let side = side(u);
                let (first, last) = (side[0], side[side.len() - 1]);
                let bore = [(hole, last.1), (hole, first.1)];
                let wall: Vec<_> = side.iter().copied().chain(bore).collect();
                let mut pen = Pen { swapped, ..Pen::new() };
                pen.mirror(u, 1.0).polygon(&wall);
                piece(pen)
            })
            .into();
    }
    let back = side(-1.0).into_iter().rev().map(|(u, v)| (-u, v));
    let whole: Vec<_> = side(1.0).into_iter().chain(back).collect();
    pen.polygon(&whole);
    vec![piece(pen)]
}

/// The pin's axis, a little past both heads.
pub(super) fn pin_axis(s: &Sizes) -> [Step; 2] {
    const PAST: f64 = 0.08;
    let reach = 0.5 * s.pin_length_mm + PAST * s.pitch_mm;
    [Step::Move(Point::new(0.0, -reach)), Step::Line(Point::new(0.0, reach))]
}
