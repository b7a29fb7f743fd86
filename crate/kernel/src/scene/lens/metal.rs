//! The metal that is seen through the glass.

use super::Lens;
use crate::plane::{Hatch, Point, Projection, Step, bounds};
use crate::scene::View;
use crate::scene::drawing::{Figure, figures_of};
use crate::scene::item::{Id, Layer};
use crate::scene::metal::role_of;
use crate::scene::role::Role;
use crate::scene::sketch::Sketch;
use crate::scene::staging::Posed;

/// The neighbouring metal that reaches into the glass, with section lines only there.
pub(super) fn draw(sketch: &mut Sketch, lens: &Lens, view: View, to_sheet: &Projection) {
    let posed = Posed::truth(lens.posing, lens.mode);
    let pose = posed.of_view(view);
    let middle = to_sheet.inverse(sketch.scene.clips[sketch.scene.clips.len() - 1].centre);
    let reach = lens.radius_em() / to_sheet.scale;
    let near = |body, lines: &Hatch, outline: &[Step]| {
        let centre = pose.of(body).inward(middle);
        if comes_near(outline, centre, reach) {
            short(&lines.clip_near(outline, centre, reach), centre, reach)
        } else {
            Vec::new()
        }
    };
    for figure in figures_of(lens.sizes, view, to_sheet.scale, near) {
        let place = pose.of(figure.body);
        if comes_near(&figure.outline, place.inward(middle), reach) {
            draw_figure(sketch, &figure, &to_sheet.of_body(place));
        }
    }
}

fn draw_figure(sketch: &mut Sketch, figure: &Figure, to: &Projection) {
    let id = Id::Body(figure.body);
    sketch.carry((id, Layer::Marks, role_of(figure)), &figure.outline, to);
    if !figure.section.is_empty() {
        let what = (id, Layer::Marks, Role::SectionLine(figure.tint));
        sketch.carry(what, &figure.section, to);
    }
}

fn comes_near(outline: &[Step], centre: Point, reach: f64) -> bool {
    bounds(outline).is_some_and(|(low, high)| centre.clamp(low, high).distance(centre) < reach)
}

/// The stretches of lines that lie within reach of a point.
fn short(lines: &[Step], centre: Point, reach: f64) -> Vec<Step> {
    let mut kept = Vec::with_capacity(lines.len());
    for pair in lines.chunks_exact(2) {
        let (&[Step::Move(a), Step::Line(b)] | &[Step::Line(a), Step::Move(b)]) = pair else {
            continue;
        };
        let way = (b - a).normalize_or_zero();
        let foot = (centre - a).dot(way);
        let from = (foot - reach).max(0.0).min(a.distance(b));
        let to = (foot + reach).max(0.0).min(a.distance(b));
        kept.extend([Step::Move(a + from * way), Step::Line(a + to * way)]);
    }
    kept
}
