//! The magnifier: the true chain around one contact, so large that a sheet of paper is seen beside
//! its gap.

use super::drawing::figures_of;
use super::item::{Id, Layer};
use super::role::Role;
use super::sheet::{Sheet, View};
use super::sketch::Sketch;
use super::staging::true_pose;
use super::{Circle, Scene};
use crate::chain::Sizes;
use crate::chain::outline::Look;
use crate::plane::{Point, Projection, quarter_turn};
use crate::posing::{ContactState, Mark, Posing, Seen};

/// Thickness of the sheet of paper, mm: ordinary office paper (common practice, no source).
pub const PAPER_MM: f64 = 0.1;
/// The least that is seen across, mm.
const LEAST_FIELD_MM: f64 = 0.6;
/// A gap takes at most this share of what is seen.
const GAP_SHARE: f64 = 0.3;

/// What a magnifier shows.
#[derive(Clone, Copy)]
pub struct Lens<'a> {
    /// The true sizes.
    pub sizes: &'a Sizes,
    /// The chain as it stands.
    pub posing: &'a Posing,
    /// The contact in its middle.
    pub state: &'a ContactState,
    /// Its diameter, em.
    pub size_em: f64,
}

/// How a lens lies on its sheet.
struct Glass {
    view: View,
    /// The middle of the gap, mm of the section.
    middle: Point,
    /// Out of the face's metal, a unit vector; nothing where a pin turns in its bore.
    normal: Option<Point>,
    radius_em: f64,
    to: Projection,
}

impl Glass {
    fn of(lens: &Lens) -> Self {
        let ContactState { seen, gap_mm, at, .. } = *lens.state;
        let view = match seen {
            Seen::Plan => View::Plan,
            Seen::Elevation => View::Elevation,
            Seen::End => View::End,
        };
        let normal = lens.state.drawn_normal.try_normalize();
        let middle = at + 0.5 * gap_mm * normal.unwrap_or(Point::ZERO);
        let radius_em = 0.5 * lens.size_em;
        let em_per_mm = lens.size_em / LEAST_FIELD_MM.max(gap_mm / GAP_SHARE);
        let corner = Projection::new(Point::ZERO, em_per_mm, 0.0, true).point(middle);
        let to = Projection::new(Point::splat(radius_em) - corner, em_per_mm, 0.0, true);
        Self { view, middle, normal, radius_em, to }
    }

    fn circle(&self) -> Circle {
        Circle { centre: Point::splat(self.radius_em), radius: self.radius_em }
    }
}

impl Scene {
    /// Draws what a magnifier shows on a square sheet of its own.
    pub fn compose_lens(&mut self, lens: &Lens) {
        let glass = Glass::of(lens);
        self.clear();
        self.sheet = Sheet { width_em: lens.size_em, height_em: lens.size_em, narrow: true };
        self.clips.push(glass.circle());
        let mut sketch = Sketch::new(self);
        sketch.clip = Some(0);
        draw_metal(&mut sketch, lens, &glass);
        draw_paper(&mut sketch, lens, &glass);
        draw_gap(&mut sketch, lens, &glass);
        sketch.clip = None;
        let id = Id::Mark("lens");
        let rim = Circle { radius: glass.radius_em - RIM_EM, ..glass.circle() };
        sketch.circle(id, Layer::Labels, Role::Rim, rim);
    }
}

/// From the sheet's edge to the middle of the rim's line, em.
const RIM_EM: f64 = 0.1;

fn draw_metal(sketch: &mut Sketch, lens: &Lens, glass: &Glass) {
    let pose = true_pose(lens.posing, glass.view);
    let near_mm = glass.radius_em / glass.to.scale;
    let figures = figures_of(lens.sizes, glass.view, glass.to.scale, |body, hatch, outline| {
        hatch.clip_near(outline, pose.of(body).inward(glass.middle), near_mm)
    });
    for figure in figures {
        let to = glass.to.of_body(pose.of(figure.body));
        let id = Id::Body(figure.body);
        let role = match figure.look {
            Look::Cut | Look::Plain => Role::Cut(figure.tint),
            Look::Behind => Role::Behind(figure.tint),
            Look::Air => Role::Patch,
        };
        sketch.carry((id, Layer::Metal, role), &figure.outline, &to);
        sketch.carry((id, Layer::Section, Role::SectionLine(figure.tint)), &figure.section, &to);
    }
}

/// A sheet of paper on edge on the face, over the lower part of the glass.
fn draw_paper(sketch: &mut Sketch, lens: &Lens, glass: &Glass) {
    const FROM_MIDDLE: f64 = 0.36;
    let Some(normal) = glass.normal else { return };
    let along = quarter_turn(normal);
    let down = if along.y > 0.0 { -along } else { along };
    let reach_mm = glass.radius_em / glass.to.scale;
    let corner = |share: f64, thick_mm: f64| {
        glass.to.point(lens.state.at + share * reach_mm * down + thick_mm * normal)
    };
    let (near, far) = (FROM_MIDDLE, 1.0 + FROM_MIDDLE);
    let corners =
        [corner(near, 0.0), corner(near, PAPER_MM), corner(far, PAPER_MM), corner(far, 0.0)];
    sketch.polygon(Id::Mark("paper"), Layer::Labels, Role::Paper, &corners);
}

/// Arrows to both sides of an open gap; a spot where there is none.
fn draw_gap(sketch: &mut Sketch, lens: &Lens, glass: &Glass) {
    const SPOT_EM: f64 = 0.36;
    const TAIL_EM: f64 = 1.3;
    let id = Id::Contact(lens.state.contact);
    let face = glass.to.point(lens.state.at);
    if lens.state.mark != Mark::Open {
        let spot = Circle { centre: face, radius: SPOT_EM };
        return sketch.circle(id, Layer::Marks, Role::TouchingSpot, spot);
    }
    let Some(normal) = glass.normal else { return };
    let other = glass.to.point(lens.state.at + lens.state.gap_mm * normal);
    let way = Point::new(normal.x, -normal.y);
    for (tip, way) in [(face, way), (other, -way)] {
        sketch.line(id, Layer::Dimensions, Role::Dimension, tip - TAIL_EM * way, tip);
        sketch.arrow(id, Layer::Dimensions, tip, way);
    }
}
