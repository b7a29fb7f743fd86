//! What can be taken hold of on the drawing.

use super::compose::Staged;
use super::item::{Id, Layer};
use super::role::Role;
use super::sketch::{Patch, Sketch};
use super::{Circle, Grip, View};
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
    let pin = plan.origin.x + plan.em_per_mm * s.pitch_mm;
    let before_cut = (layout.cuts_em().1 - CLEAR_EM - GRIP_EM - pin) / plan.em_per_mm;
    let reach = before_cut.min(TOWARDS_BREAK * break_mm(s, Link::OuterToRight));
    let (view, at_mm) = match staged.staging.mode {
        Mode::Turn | Mode::Aside | Mode::Lean => {
            let next = staged.posed.plan.of(Body::NextOuter);
            (View::Plan, next.outward(Point::new(reach, 0.0)))
        }
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
    Some(Grip { id: "next", view, at_mm, at, radius_em: GRIP_EM })
}

/// Keeps words and discs off the grip, and tells where it is.
pub(super) fn reserve(sketch: &mut Sketch, staged: &Staged) {
    let apart = !staged.drawing.chain().goes_together();
    if let Some(grip) = grip(staged).filter(|_| !apart) {
        sketch.taken.push(Patch::around(grip.at, grip.radius_em));
        sketch.scene.grips.push(grip);
    }
}

/// The grip's disc with the two ways it can go.
pub(super) fn draw(sketch: &mut Sketch) {
    const AWAY_EM: f64 = 0.55;
    const WAY_EM: f64 = 1.4;
    let Some(&grip) = sketch.scene.grips.first() else { return };
    let id = Id::Grip(grip.id);
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
