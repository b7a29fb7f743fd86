//! Metal that overlaps, in a chain that does not go together: drawn where it is, nothing solved.

use super::View;
use super::compose::Staged;
use super::item::{Id, Layer};
use super::role::Role;
use super::sketch::Sketch;
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
    let reach = s.outer_overhang_mm.min(s.inner_overhang_mm);
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
