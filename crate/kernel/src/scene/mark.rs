//! What touches: thick or toothed edges, spots, numbered discs.

use super::compose::Staged;
use super::item::{Align, Id, Layer, Size};
use super::role::Role;
use super::seat::Seat;
use super::sketch::{Patch, Sketch};
use super::{Circle, Placed, View};
use crate::chain::Construction;
use crate::contact::{Body, Contact, Joint, Kind, Pose, Side};
use crate::decimal;
use crate::plane::{Arc, Point, Step};
use crate::posing::{ContactState, Mark, Seen};

/// Where a contact shows on the sheet, em.
pub(super) struct Spot {
    /// The place on the face.
    pub at: Point,
    /// The corner, or the other face, across the gap.
    pub other: Point,
    /// The unit vector out of the face's metal.
    pub out: Point,
    /// The unit vector along the face, away from the end that touches.
    pub along: Point,
    /// The centre of a round face, if it is seen from its end.
    pub round: Option<Point>,
}

/// The section in which a contact is seen.
pub(super) fn view_of(seen: Seen) -> View {
    match seen {
        Seen::Plan => View::Plan,
        Seen::Elevation => View::Elevation,
        Seen::End => View::End,
    }
}

/// Where a contact shows, if its section is drawn.
pub(super) fn spot_of(staged: &Staged, state: &ContactState) -> Option<Spot> {
    let placed = staged.drawing.layout().view(view_of(state.seen))?;
    if placed.view == View::Elevation {
        return round_spot(staged, placed, &state.contact);
    }
    let to_sheet = placed.projection();
    let out = Point::new(state.drawn_normal.x, -state.drawn_normal.y);
    let at = to_sheet.point(state.drawn_at);
    let other = at + placed.em_per_mm * drawn_gap_mm(staged, state) * out;
    let inner = staged.posed.of_view(placed.view).of(state.contact.inner_plate());
    let middle = to_sheet.point(inner.outward(middle_of(staged, placed.view, &state.contact)));
    let along = if out.perp().dot(middle - at) < 0.0 { -out.perp() } else { out.perp() };
    Some(Spot { at, other, out, along, round: None })
}

/// A gap round a pin or a barrel seen from its end.
fn round_spot(staged: &Staged, placed: &Placed, contact: &Contact) -> Option<Spot> {
    let seen = staged.staging.posing?.drawn_elevation();
    let gap = seen.gaps.iter().find(|gap| gap.contact == *contact)?;
    let p = staged.drawing.chain().pitch_mm;
    let centre = placed.projection().point(round_centre(&staged.posed.side, p, contact));
    let at = placed.projection().point(gap.at);
    let out = (at - centre).normalize_or_zero();
    let other = at + placed.em_per_mm * gap.gap_mm * out;
    Some(Spot { at, other, out, along: out.perp(), round: Some(centre) })
}

/// The gap of the drawn chain, mm: exact in the plan section, elsewhere the true gap widened.
fn drawn_gap_mm(staged: &Staged, state: &ContactState) -> f64 {
    let meeting = staged.drawing.meeting(&state.contact).filter(|_| state.seen == Seen::Plan);
    meeting.map_or_else(
        || f64::from(staged.staging.factor) * state.gap_mm,
        |meeting| meeting.gap_mm(&staged.posed.plan),
    )
}

/// The middle of what ends at a contact, in the inner plate's axes: the eye of a plate, the bush,
/// the collar.
fn middle_of(staged: &Staged, view: View, contact: &Contact) -> Point {
    let s = staged.drawing.chain().sizes();
    let x = if contact.joint == Joint::Second { s.pitch_mm } else { 0.0 };
    let ends_a_collar = match contact.kind {
        Kind::PinBore => true,
        Kind::RollerBarrel => contact.inner,
        _ => false,
    };
    let y = if ends_a_collar && s.construction == Construction::Collared {
        0.5 * contact.end.sign() * (s.inner_link_width_mm() - s.bearing_length_mm)
    } else {
        0.0
    };
    if view == View::End { Point::new(y, 0.0) } else { Point::new(x, y) }
}

/// The centre of the pin or the barrel whose side is a contact's face, seen from the side, mm.
pub(super) fn round_centre(side: &Pose, pitch_mm: f64, contact: &Contact) -> Point {
    match (contact.kind, contact.joint) {
        (Kind::PinBore, Joint::First) => side.of(Body::HeldOuter).origin(),
        (Kind::PinBore, Joint::Second) => side.of(Body::NextOuter).origin(),
        (_, Joint::First) => side.of(Body::InnerFar).origin(),
        (_, Joint::Second) => side.of(Body::InnerFar).outward(Point::new(pitch_mm, 0.0)),
    }
}

/// Edges and spots of everything that touches, and the glow of what is pointed at; returns where
/// each mark shows.
pub(super) fn draw_edges(sketch: &mut Sketch, staged: &Staged) -> Vec<Option<Spot>> {
    let spots: Vec<_> =
        staged.posed.contacts.iter().map(|marked| spot_of(staged, marked)).collect();
    for (marked, spot) in staged.posed.contacts.iter().zip(&spots) {
        if let Some(spot) = spot {
            draw_edge(sketch, staged, marked, spot);
        }
    }
    for (marked, spot) in staged.posed.contacts.iter().zip(&spots) {
        if let Some(spot) = spot.as_ref().filter(|_| marked.mark != Mark::Open) {
            const RADIUS_EM: f64 = 0.3;
            let id = Id::Contact(marked.contact);
            let circle = Circle { centre: spot.at, radius: RADIUS_EM };
            sketch.circle(id, Layer::Marks, Role::TouchingSpot, circle);
            sketch.taken.push(Patch::around(spot.at, RADIUS_EM));
        }
    }
    spots
}

fn draw_edge(sketch: &mut Sketch, staged: &Staged, marked: &ContactState, spot: &Spot) {
    let id = Id::Contact(marked.contact);
    let edge = edge_of(spot, flat_end(staged, marked, spot));
    if staged.staging.lit == Some(id) {
        sketch.path(id, Layer::Marks, Role::Lit, &edge);
        if marked.mark == Mark::Open {
            sketch.path(id, Layer::Marks, Role::Lit, &across_gap(spot));
        }
    }
    match marked.mark {
        Mark::Touching => sketch.path(id, Layer::Marks, Role::TouchingEdge, &edge),
        Mark::Rubbing => sketch.path(id, Layer::Marks, Role::RubbingEdge, &toothed(spot)),
        Mark::Open => {}
    }
}

/// The stretch of metal across an open gap, and the gap's own width.
fn across_gap(spot: &Spot) -> [Step; 4] {
    let far = spot.other + EDGE_EM * spot.along;
    [Step::Move(spot.at), Step::Line(spot.other), Step::Move(spot.other), Step::Line(far)]
}

/// How much of a face is marked where only its end touches, em.
const EDGE_EM: f64 = 1.9;

/// The touching edge: to where a flat face ends, else a short stretch.
fn edge_of(spot: &Spot, flat_end: Option<Point>) -> Vec<Step> {
    if let Some(centre) = spot.round {
        let (arm, radius) = (spot.at - centre, spot.at.distance(centre));
        let half = 0.5 * EDGE_EM / radius;
        let start_rad = libm::atan2(arm.y, arm.x) - half;
        let arc = Arc { centre, radius, start_rad, sweep_rad: 2.0 * half };
        return vec![Step::Move(arc.start()), Step::Arc(arc)];
    }
    vec![Step::Move(spot.at), Step::Line(flat_end.unwrap_or(spot.at + EDGE_EM * spot.along))]
}

/// Where a face that lies flat ends, seen from its touching end: at the other end, or at the side of
/// the pin or barrel that goes through it.
fn flat_end(staged: &Staged, marked: &ContactState, spot: &Spot) -> Option<Point> {
    let other = partner_of(staged, marked)?.at;
    let s = staged.drawing.chain().sizes();
    let through_mm = match marked.contact.kind {
        Kind::PlateFace => s.pin_diameter_mm,
        Kind::RollerPlate | Kind::CollarEnds => s.barrel_mm,
        Kind::PinBore | Kind::RollerBarrel => return Some(other),
    };
    let scale = staged.drawing.layout().view(view_of(marked.seen))?.em_per_mm;
    let half = 0.5 * (spot.at.distance(other) - scale * through_mm);
    Some(spot.at + half.max(0.0) * (other - spot.at).normalize_or_zero())
}

/// The other end of the same face, when it touches too.
fn partner_of(staged: &Staged, marked: &ContactState) -> Option<Spot> {
    let one = &marked.contact;
    let same_face = |other: &Contact| {
        let alike = (one.kind, one.joint) == (other.kind, other.joint);
        alike
            && match one.kind {
                Kind::PlateFace | Kind::RollerPlate | Kind::CollarEnds => {
                    one.end == other.end && one.side != other.side
                }
                Kind::PinBore | Kind::RollerBarrel => {
                    one.side == other.side && (one.end, one.inner) != (other.end, other.inner)
                }
            }
    };
    let touches = |other: &&ContactState| other.mark != Mark::Open && other.seen == marked.seen;
    let other = staged.posed.contacts.iter().filter(touches).find(|o| same_face(&o.contact))?;
    spot_of(staged, other)
}

/// A row of solid teeth along the face.
fn toothed(spot: &Spot) -> Vec<Step> {
    const TEETH: u32 = 4;
    const HEIGHT_EM: f64 = 0.42;
    let pitch = EDGE_EM / f64::from(TEETH);
    let out = spot.out * HEIGHT_EM;
    let mut steps = vec![Step::Move(spot.at)];
    for tooth in 0..TEETH {
        let from = spot.at + spot.along * (pitch * f64::from(tooth));
        steps.push(Step::Line(from + spot.along * (0.5 * pitch) + out));
        steps.push(Step::Line(from + spot.along * pitch));
    }
    steps.push(Step::Close);
    steps
}

/// A numbered disc beside each touching place, clear of words and of each other. Where more touch
/// than a reader can tell apart, only the one that is pointed at has its disc.
pub(super) fn draw_discs(sketch: &mut Sketch, staged: &Staged, spots: &[Option<Spot>]) {
    let most = if staged.drawing.layout().sheet.narrow { MOST_DISCS_NARROW } else { MOST_DISCS };
    let count = staged.posed.contacts.iter().filter(|state| state.number.is_some()).count();
    for (marked, spot) in staged.posed.contacts.iter().zip(spots) {
        let lit = staged.staging.lit == Some(Id::Contact(marked.contact));
        let shown = marked.number.is_some() && (count <= most || lit);
        if let Some(spot) = spot.as_ref().filter(|_| shown) {
            draw_disc(sketch, staged, marked, spot);
        }
    }
}

/// The most discs on a wide and on a narrow sheet.
const MOST_DISCS: usize = 16;
const MOST_DISCS_NARROW: usize = 10;
/// Radius of a disc, em.
const DISC_EM: f64 = 0.82;
/// How far from its place a disc may stand, em.
const DISTANCES_EM: [f64; 7] = [1.9, 2.5, 3.2, 4.2, 5.4, 7.0, 9.0];

fn draw_disc(sketch: &mut Sketch, staged: &Staged, marked: &ContactState, spot: &Spot) {
    const NUMBER_DOWN_EM: f64 = 0.31;
    let id = Id::Contact(marked.contact);
    let first = first_choice(spot, &marked.contact);
    let (radius_em, distances_em) = (DISC_EM, &DISTANCES_EM[..]);
    let seat = Seat { at: spot.at, first, radius_em, distances_em, on_pins: true };
    let centre = seat.find(sketch).unwrap_or(spot.at + DISTANCES_EM[0] * first);
    let way = (centre - spot.at).normalize_or_zero();
    sketch.line(id, Layer::Marks, Role::DiscLeader, spot.at, centre - DISC_EM * way);
    let lit = staged.staging.lit == Some(id);
    let (disc, number) =
        if lit { (Role::DiscLit, Role::DiscNumberLit) } else { (Role::Disc, Role::DiscNumber) };
    sketch.circle(id, Layer::Marks, disc, Circle { centre, radius: DISC_EM });
    let at = centre + Point::new(0.0, NUMBER_DOWN_EM);
    sketch.text((id, Layer::Marks, number), at, (Align::Middle, Size::SmallStrong), |out| {
        decimal::write(out, f64::from(marked.number.unwrap_or_default()), 0, '.');
    });
    sketch.taken.push(Patch::around(centre, DISC_EM));
}

/// Away from the pin and along the face, aslant; from a round face straight out.
pub(super) fn first_choice(spot: &Spot, contact: &Contact) -> Point {
    if let Some(centre) = spot.round {
        return (spot.at - centre).normalize_or(Point::X);
    }
    let out = match contact.side {
        Side::Left | Side::Right => Point::new(contact.side.sign(), 0.0),
        _ => Point::new(0.0, -contact.side.sign()),
    };
    (out + 0.7 * spot.along).normalize_or(Point::X)
}
