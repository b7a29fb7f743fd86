//! What can be taken hold of on the drawing.

use super::compose::Staged;
use super::item::{Id, Layer};
use super::role::Role;
use super::sketch::{Patch, Sketch};
use super::{Circle, Grip, Holds, View};
use crate::chain::outline::{Link, break_mm};
use crate::contact::Body;
use crate::plane::Point;
use crate::posing::Mode;

/// Radius of a grip, em.
const GRIP_EM: f64 = 1.55;

/// The grip that the mode offers: on the next outer link, on the inner link across, or none.
fn grip(staged: &Staged) -> Option<Grip> {
    const TOWARDS_BREAK: f64 = 0.86;
    const CLEAR_EM: f64 = 0.65;
    let layout = staged.drawing.layout();
    let s = staged.drawing.chain().sizes();
    let plan = layout.plan();
    let pin = plan.origin.x + plan.em_per_mm * (s.pitch_mm + s.worn.depth_mm());
    let before_cut = (layout.cuts_em().1 - CLEAR_EM - GRIP_EM - pin) / plan.em_per_mm;
    let reach = before_cut.min(TOWARDS_BREAK * break_mm(s, Link::OuterToRight));
    let (view, at_mm) = match staged.staging.mode {
        Mode::Turn | Mode::Aside | Mode::Lean => {
            let next = staged.posed.plan.of(Body::NextOuter);
            (View::Plan, next.outward(Point::new(reach, 0.0)))
        }
        Mode::Load => return None,
        Mode::Bend => {
            (View::Elevation, staged.posed.side.of(Body::NextOuter).outward(Point::new(reach, 0.0)))
        }
        Mode::Twist => {
            const ABOVE_EM: f64 = 2.1;
            let scale = layout.view(View::End)?.em_per_mm;
            let up = 0.5 * s.inner_plate_height_mm + ABOVE_EM / scale;
            (View::End, staged.posed.across.of(Body::InnerFar).outward(Point::new(0.0, up)))
        }
    };
    let placed = layout.view(view)?;
    let at = placed.projection().point(at_mm);
    Some(Grip { holds: Holds::Link, view, at_mm, at, radius_em: GRIP_EM })
}

/// Keeps words and discs off the grip, and tells where it is.
pub(super) fn reserve(sketch: &mut Sketch, staged: &Staged) {
    let apart = !staged.drawing.chain().goes_together();
    if let Some(grip) = grip(staged).filter(|_| !apart) {
        sketch.taken.push(Patch::around(grip.at, grip.radius_em));
        sketch.scene.grips.push(grip);
    }
}

/// Every grip that has a place.
pub(super) fn draw(sketch: &mut Sketch) {
    for at in 0..sketch.scene.grips.len() {
        let grip = sketch.scene.grips[at];
        match grip.holds {
            Holds::Link => draw_link(sketch, &grip),
            Holds::End(_) => {
                let circle = Circle { centre: grip.at, radius: grip.radius_em };
                sketch.circle(Id::Grip("end"), Layer::Grips, Role::GripEnd, circle);
            }
        }
    }
}

/// The disc on the link with the two ways it can go.
fn draw_link(sketch: &mut Sketch, grip: &Grip) {
    const AWAY_EM: f64 = 0.55;
    const WAY_EM: f64 = 1.4;
    let id = Id::Grip("next");
    let along = if grip.view == View::End { Point::X } else { Point::Y };
    for way in [along, -along] {
        let (from, to) =
            (grip.at + grip.radius_em * way, grip.at + (grip.radius_em + WAY_EM) * way);
        sketch.line(id, Layer::Grips, Role::GripPath, from, to);
        sketch.arrow(id, Layer::Grips, to + AWAY_EM * way, way);
    }
    let circle = Circle { centre: grip.at, radius: grip.radius_em };
    sketch.circle(id, Layer::Grips, Role::Grip, circle);
    for way in [along, -along] {
        sketch.arrow(id, Layer::Grips, grip.at + 0.6 * grip.radius_em * way, way);
    }
}

/// Radius of the ring at the end of a dimension line, em.
pub(super) const END_EM: f64 = 0.42;

/// Puts a ring at a place past the end of a dimension line, where it lies free and can be told from
/// the other grips by a finger or a pointer; tells whether it stands.
pub(super) fn add_end(sketch: &mut Sketch, staged: &Staged, grip: Grip) -> bool {
    /// How far apart two grips are: a pointer's 24 px, a finger's 44 px.
    const APART_EM: f64 = 2.0;
    const APART_NARROW_EM: f64 = 3.5;
    let sheet = staged.drawing.layout().sheet;
    let apart = if sheet.narrow { APART_NARROW_EM } else { APART_EM };
    let place = Patch::around(grip.at, grip.radius_em);
    let edge = Point::new(sheet.width_em, sheet.height_em);
    let alone = sketch.scene.grips.iter().all(|other| other.at.distance(grip.at) >= apart);
    let stands = alone && place.within(Point::ZERO, edge) && sketch.is_free(&place);
    if stands {
        sketch.taken.push(place);
        sketch.scene.grips.push(grip);
    }
    stands
}
