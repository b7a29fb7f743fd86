//! The parts: fills, edges, section lines, breaks.

use super::compose::Staged;
use super::drawing::Figure;
use super::item::{Id, Layer, Shape, Tint};
use super::role::Role;
use super::sketch::{Patch, Sketch};
use super::{Placed, View};
use crate::chain::Sizes;
use crate::chain::outline::{Link, Look, break_mm};
use crate::contact::Body;
use crate::plane::{Point, Projection, Step, bounds};

/// Every part in every section, where its body stands.
pub(super) fn draw(sketch: &mut Sketch, staged: &Staged) {
    for placed in staged.drawing.layout().views() {
        let bodies = staged.bodies_on_sheet(placed);
        let here = |figure: &&Figure| figure.view == placed.view;
        for figure in staged.drawing.figures().iter().filter(here) {
            draw_figure(sketch, staged, figure, &bodies[figure.body.index()]);
        }
        if placed.view != View::End {
            draw_breaks(sketch, staged, placed, &bodies);
        }
    }
}

/// How a figure is painted.
pub(super) fn role_of(figure: &Figure) -> Role {
    match figure.look {
        Look::Cut | Look::Plain => Role::Cut(figure.tint),
        Look::Behind => Role::Behind(figure.tint),
        Look::Air => Role::Patch,
    }
}

fn draw_figure(sketch: &mut Sketch, staged: &Staged, figure: &Figure, to: &Projection) {
    let id = Id::Body(figure.body);
    let role = role_of(figure);
    if staged.staging.lit == Some(id) && figure.look != Look::Air {
        sketch.carry((id, Layer::Metal, Role::Lit), &figure.outline, to);
    }
    sketch.carry((id, Layer::Metal, role), &figure.outline, to);
    let place = last_place(sketch);
    if !figure.section.is_empty() {
        let role = Role::SectionLine(figure.tint);
        sketch.carry((id, Layer::Section, role), &figure.section, to);
    }
    match (figure.view, figure.look) {
        (View::Plan | View::End, Look::Cut) => sketch.metal.extend(place),
        (View::Plan | View::End, Look::Plain) => sketch.pins.extend(place),
        _ => {}
    }
}

/// The place of what was drawn last.
fn last_place(sketch: &Sketch) -> Option<Patch> {
    let Shape::Path(steps) = &sketch.scene.items.last()?.shape else { return None };
    bounds(&sketch.scene.steps[steps.clone()]).map(|(low, high)| Patch { low, high })
}

/// A long break line across both plates of each outer link.
fn draw_breaks(sketch: &mut Sketch, staged: &Staged, placed: &Placed, bodies: &[Projection; 6]) {
    let sizes = staged.drawing.chain().sizes();
    let outer = [
        (Body::HeldOuter, Link::OuterToLeft, Tint::Held),
        (Body::NextOuter, Link::OuterToRight, Tint::Next),
    ];
    for (body, link, tint) in outer {
        let x = link.reaches() * break_mm(sizes, link);
        let line = break_line(sizes, placed, x);
        let what = (Id::Body(body), Layer::Metal, Role::BreakLine(tint));
        let to = &bodies[body.index()];
        sketch.carry(what, &line, to);
        if let (Some(&Step::Move(from)), Some(&Step::Line(end))) = (line.first(), line.last()) {
            sketch.keep_off(to.point(from), to.point(end));
        }
    }
}

/// A thin straight line past both ends of the link, with two zigzags outside the metal, mm.
fn break_line(s: &Sizes, placed: &Placed, x: f64) -> Vec<Step> {
    const PAST_EM: f64 = 0.8;
    const ZIG_EM: f64 = 0.32;
    const BETWEEN_PLATES: f64 = 0.3;
    let (past, zig) = (PAST_EM / placed.em_per_mm, ZIG_EM / placed.em_per_mm);
    let (half, bend) = match placed.view {
        View::Plan => {
            (0.5 * s.outer_spacing_mm + s.outer_plate_mm, BETWEEN_PLATES * s.outer_spacing_mm)
        }
        _ => (0.5 * s.outer_plate_height_mm, 0.5 * (s.outer_plate_height_mm + past)),
    };
    let mut line = vec![Step::Move(Point::new(x, -half - past))];
    for y in [-bend, bend] {
        let corners = [(0.0, -1.0), (-1.0, -0.5), (1.0, 0.5), (0.0, 1.0)];
        line.extend(corners.map(|(u, v)| Step::Line(Point::new(x + u * zig, y + v * zig))));
    }
    line.push(Step::Line(Point::new(x, half + past)));
    line
}
