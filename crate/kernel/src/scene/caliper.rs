//! Where to put a caliper: one pitch of a chain, cut and from the side, the faces of one reading lit
//! and two jaws against them.

use super::Scene;
use super::drawing::{Figure, figures_of};
use super::item::{Id, Layer, Tint};
use super::metal::role_of;
use super::role::Role;
use super::sheet::{Placed, Sheet, View};
use super::sketch::Sketch;
use crate::caliper::Reading;
use crate::chain::outline::{Look, Part};
use crate::chain::{Chain, Sizes};
use crate::contact::{Body, Pose};
use crate::plane::{Point, Projection};

/// Room at the edges, em.
const EDGE_EM: f64 = 1.6;
/// How far the picture reaches past both pins, of the pitch.
const PAST: f64 = 0.62;

/// Two faces that a reading is between, mm of a section: their points, and which way the jaws come:
/// 1 from outside, -1 from inside.
struct Span {
    view: View,
    ends: [Point; 2],
    from: f64,
}

impl Scene {
    /// The picture of a reading, or of none, so many em wide.
    pub fn of_caliper(chain: &Chain, reading: Option<Reading>, width_em: f64) -> Self {
        let s = chain.sizes();
        let em_per_mm = (width_em - 2.0 * EDGE_EM) / ((1.0 + 2.0 * PAST) * s.pitch_mm);
        let half_plan = 0.5 * s.pin_length_mm;
        let half_side = 0.5 * s.inner_plate_height_mm.max(s.outer_plate_height_mm);
        let plan_y = EDGE_EM + em_per_mm * half_plan;
        let side_y = plan_y + em_per_mm * (half_plan + half_side) + 2.0 * EDGE_EM;
        let height_em = side_y + em_per_mm * half_side + EDGE_EM;
        let sheet = Sheet { width_em, height_em, narrow: false };
        let mut scene = Self { sheet, ..Self::default() };
        let mut sketch = Sketch::new(&mut scene);
        for (view, y) in [(View::Plan, plan_y), (View::Elevation, side_y)] {
            let placed = Placed {
                view,
                origin: Point::new(EDGE_EM + em_per_mm * PAST * s.pitch_mm, y),
                em_per_mm,
                low: Point::ZERO,
                high: Point::new(width_em, height_em),
            };
            draw(&mut sketch, chain, &placed, reading);
        }
        scene
    }
}

fn draw(sketch: &mut Sketch, chain: &Chain, placed: &Placed, reading: Option<Reading>) {
    let to_sheet = placed.projection();
    let bodies = Pose::straight(chain.sizes()).0.map(|place| to_sheet.of_body(&place));
    let figures = figures_of(chain.sizes(), placed.view, placed.em_per_mm, |_, hatch, outline| {
        hatch.clip(outline)
    });
    for figure in &figures {
        let lit = reading.is_some_and(|reading| is_lit(figure, reading));
        draw_figure(sketch, figure, &bodies[figure.body.index()], lit);
    }
    let span = reading.map(|reading| span(chain.sizes(), reading));
    if let Some(span) = span.filter(|span| span.view == placed.view) {
        draw_jaws(sketch, &span, &to_sheet);
    }
}

fn draw_figure(sketch: &mut Sketch, figure: &Figure, to: &Projection, lit: bool) {
    let id = Id::Body(figure.body);
    if lit && figure.look != Look::Air {
        sketch.carry((id, Layer::Metal, Role::Lit), &figure.outline, to);
    }
    sketch.carry((id, Layer::Metal, role_of(figure)), &figure.outline, to);
    if !figure.section.is_empty() {
        let role = Role::SectionLine(figure.tint);
        sketch.carry((id, Layer::Section, role), &figure.section, to);
    }
}

/// Whether a reading is taken on a piece.
fn is_lit(figure: &Figure, reading: Reading) -> bool {
    let held = figure.tint == Tint::Held;
    match reading {
        Reading::OverRollers => figure.part == Part::Roller,
        Reading::Roller => figure.part == Part::Roller && figure.body == Body::FirstRoller,
        Reading::BetweenInner | Reading::OverInner => {
            figure.part == Part::InnerPlate && figure.view == View::Plan
        }
        Reading::BetweenOuter | Reading::OverOuter => {
            figure.part == Part::OuterPlate && held && figure.view == View::Plan
        }
        Reading::Pin => figure.part == Part::Pin && held && figure.view == View::Plan,
        Reading::PlateHeight => figure.part == Part::InnerPlate && figure.view == View::Elevation,
    }
}

/// Where a reading is taken, mm.
fn span(s: &Sizes, reading: Reading) -> Span {
    /// Beside the rivets, of the overhang; out on a pin's end, of what stands out of the plate.
    const BESIDE: f64 = 0.8;
    let across = |x: f64, half: f64| [Point::new(x, -half), Point::new(x, half)];
    let along = |from: f64, to: f64, y: f64| [Point::new(from, y), Point::new(to, y)];
    let (middle, beside) = (0.5 * s.pitch_mm, -BESIDE * s.outer_overhang_mm);
    let outer = 0.5 * s.outer_spacing_mm;
    let over_mm = outer + s.outer_plate_mm;
    let [roller, pin] = [0.5 * s.roller_diameter_mm, 0.5 * s.pin_diameter_mm];
    let (ends, from) = match reading {
        Reading::OverRollers => (along(-roller, s.pitch_mm + roller, 0.0), 1.0),
        Reading::Roller => (along(-roller, roller, 0.0), 1.0),
        Reading::BetweenInner => (across(middle, 0.5 * s.inner_width_mm), -1.0),
        Reading::OverInner => (across(middle, 0.5 * s.inner_link_width_mm()), 1.0),
        Reading::BetweenOuter => (across(beside, outer), -1.0),
        Reading::OverOuter => (across(beside, over_mm), 1.0),
        Reading::Pin => (along(-pin, pin, 0.5 * (over_mm + 0.5 * s.pin_length_mm)), 1.0),
        Reading::PlateHeight => (across(0.0, 0.5 * s.inner_plate_height_mm), 1.0),
    };
    let view = if reading == Reading::PlateHeight { View::Elevation } else { View::Plan };
    Span { view, ends, from }
}

/// Two jaws and the line between them.
fn draw_jaws(sketch: &mut Sketch, span: &Span, to: &Projection) {
    const HALF_JAW_EM: f64 = 0.9;
    const TAIL_EM: f64 = 1.0;
    let [a, b] = span.ends.map(|end| to.point(end));
    let way = (b - a) / a.distance(b);
    let side = HALF_JAW_EM * way.perp();
    sketch.line(Id::Mark("between"), Layer::Dimensions, Role::Dimension, a, b);
    for (end, out) in [(a, -way), (b, way)] {
        let back = span.from * out;
        sketch.line(Id::Mark("jaw"), Layer::Marks, Role::TouchingEdge, end - side, end + side);
        if span.from > 0.0 {
            sketch.line(
                Id::Mark("tail"),
                Layer::Dimensions,
                Role::Dimension,
                end,
                end + TAIL_EM * back,
            );
        }
        sketch.arrow(Id::Mark("jaw"), Layer::Dimensions, end, -back);
    }
}
