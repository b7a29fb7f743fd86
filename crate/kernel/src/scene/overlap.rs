//! Metal that overlaps, in a chain that does not go together: drawn where it is, nothing solved.

use super::View;
use super::compose::Staged;
use super::item::{Align, Id, Layer, Size};
use super::role::Role;
use super::sketch::{Patch, Sketch};
use crate::chain::{Pair, Sizes};
use crate::contact::Body;
use crate::plane::{Pen, Point, Step};

/// Every overlap of the drawn chain, in the plan section and, for round parts, from the side.
pub(super) fn draw(sketch: &mut Sketch, staged: &Staged) {
    let chain = staged.drawing.chain();
    for found in chain.interference() {
        let what = (Id::Dimension(found.between.key()), Layer::Marks, Role::Overlap);
        for placed in staged.drawing.layout().views() {
            let bodies = staged.bodies_on_sheet(placed);
            let steps = match placed.view {
                View::Plan => in_plan(chain.sizes(), found.between),
                View::Elevation => from_side(chain.sizes(), found.between),
                View::End => across(chain.sizes(), found.between),
            };
            sketch.carry(what, &steps, &bodies[Body::InnerFar.index()]);
        }
    }
}

/// How much too little there is, once for each overlap, with a leader to one place of it.
pub(super) fn draw_numbers(sketch: &mut Sketch, staged: &Staged) {
    let plan = staged.drawing.layout().plan();
    let drawn = staged.drawing.chain();
    let truth = 1.0 / f64::from(staged.staging.factor);
    for found in drawn.interference() {
        let (low, high) = shared(drawn.sizes(), found.between, reach_mm(drawn.sizes()));
        let second = Point::new(drawn.pitch_mm, 0.0);
        let on = second + 0.5 * Point::new(low.0 + high.0, low.1 + high.1);
        let on = plan.projection().point(on);
        draw_number(sketch, staged, (found.between, truth * found.too_little_mm), on);
    }
}

fn draw_number(sketch: &mut Sketch, staged: &Staged, (pair, mm): (Pair, f64), on: Point) {
    const ASIDE_EM: f64 = 0.4;
    const HALF_FIGURE_EM: f64 = 0.35;
    let id = Id::Dimension(pair.key());
    let mut number = String::from(MINUS);
    staged.lexicon.write_figure(&mut number, mm);
    let align = (Align::Start, Size::SmallStrong);
    let ways = [(1.6, -1.2), (1.6, 1.2), (1.6, -2.6), (1.6, 2.6), (1.6, 4.0), (1.6, -4.0)];
    let places = ways.map(|(x, y)| on + Point::new(x, y));
    let at = sketch.first_free(&places, align, &number);
    let end = at - Point::new(ASIDE_EM, HALF_FIGURE_EM);
    let place = Patch::of_text(at, align.0, align.1, &number);
    let corners = [place.low, Point::new(place.high.x, place.low.y), place.high];
    let last = Point::new(place.low.x, place.high.y);
    sketch.line(id, Layer::Marks, Role::Leader, on, end);
    let [a, b, c] = corners;
    sketch.polygon(id, Layer::Marks, Role::Patch, &[a, b, c, last]);
    sketch.text((id, Layer::Marks, Role::OverlapNumber), at, align, |out| out.push_str(&number));
}

/// The sign of a number below zero.
const MINUS: &str = "\u{2212}";

/// How far from a pin's axis plates can overlap, mm.
fn reach_mm(s: &Sizes) -> f64 {
    s.outer_overhang_mm.min(s.inner_overhang_mm)
}

/// The rectangle that two parts share in a quarter of a joint: u away from the pin's axis, v along
/// it.
fn shared(s: &Sizes, pair: Pair, reach_mm: f64) -> ((f64, f64), (f64, f64)) {
    let (half_bush, half_roller) = (0.5 * s.bearing_length_mm, 0.5 * s.roller_length_mm);
    let (half_inner, half_outer) = (0.5 * s.inner_link_width_mm(), 0.5 * s.outer_spacing_mm);
    match pair {
        Pair::PinBore if s.construction == crate::chain::Construction::Bushed => {
            ((0.5 * s.bore_mm, 0.0), (0.5 * s.pin_diameter_mm, half_bush))
        }
        Pair::PinBore => (
            (0.5 * s.bore_mm, half_inner - s.bearing_length_mm),
            (0.5 * s.pin_diameter_mm, half_inner),
        ),
        Pair::SideGap => ((0.5 * s.barrel_mm, half_outer), (reach_mm, half_inner)),
        Pair::RollerBarrel => ((0.5 * s.roller_bore_mm, 0.0), (0.5 * s.barrel_mm, half_roller)),
        Pair::RollerPlates => (
            (0.5 * s.roller_bore_mm, 0.5 * s.inner_width_mm),
            (0.5 * s.roller_diameter_mm, half_roller),
        ),
    }
}

const BOTH: [f64; 2] = [1.0, -1.0];

fn in_plan(s: &Sizes, pair: Pair) -> Vec<Step> {
    let reach = reach_mm(s);
    let mut pen = Pen::new();
    for x in [0.0, s.pitch_mm] {
        pen.origin = Point::new(x, 0.0);
        for (u, v) in BOTH.into_iter().flat_map(|u| BOTH.map(|v| (u, v))) {
            let (low, high) = shared(s, pair, reach);
            pen.mirror(u, v).rectangle(low, high);
        }
    }
    pen.steps
}

fn across(s: &Sizes, pair: Pair) -> Vec<Step> {
    let reach = 0.5 * s.outer_plate_height_mm.min(s.inner_plate_height_mm);
    let mut pen = Pen { swapped: true, ..Pen::new() };
    for (u, v) in BOTH.into_iter().flat_map(|u| BOTH.map(|v| (u, v))) {
        let (low, high) = shared(s, pair, reach);
        pen.mirror(u, v).rectangle(low, high);
    }
    pen.steps
}

fn from_side(s: &Sizes, pair: Pair) -> Vec<Step> {
    let (inside, outside) = match pair {
        Pair::PinBore => (s.bore_mm, s.pin_diameter_mm),
        Pair::RollerBarrel => (s.roller_bore_mm, s.barrel_mm),
        Pair::SideGap | Pair::RollerPlates => return Vec::new(),
    };
    let mut pen = Pen::new();
    for x in [0.0, s.pitch_mm] {
        pen.circle((x, 0.0), 0.5 * outside).circle((x, 0.0), 0.5 * inside);
    }
    pen.steps
}
