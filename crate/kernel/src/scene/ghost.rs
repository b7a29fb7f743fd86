//! The outlines of another chain over a drawing: where its parts would stand, in dashes and two dots, each
//! section with a letter. What stands where the present chain's own parts stand is left out.

use super::Scene;
use super::drawing::figures_of;
use super::item::{Align, Id, Layer, Size};
use super::role::Role;
use super::sheet::{Placed, Sheet, View};
use super::sketch::Sketch;
use super::staging::Posed;
use crate::chain::Chain;
use crate::chain::outline::{Look, Part};
use crate::contact::Body;
use crate::plane::{Point, Step, bounds};
use crate::posing::{Mode, Posing};

/// A drawn chain and how it stands; without a pose, straight.
#[derive(Clone, Copy)]
pub struct Standing<'a> {
    /// Its gaps already widened.
    pub chain: &'a Chain,
    /// Its pose.
    pub posing: Option<&'a Posing>,
    /// The movement that is shown.
    pub mode: Mode,
}

/// The outline of one piece, on the sheet.
struct Outline {
    body: Body,
    part: Part,
    steps: Vec<Step>,
}

impl Standing<'_> {
    /// Every outline in a section.
    fn outlines(&self, placed: &Placed) -> Vec<Outline> {
        let posed = Posed::standing(self.chain, self.posing, self.mode);
        let to_sheet = placed.projection();
        let bodies = posed.of_view(placed.view).0.map(|place| to_sheet.of_body(&place));
        let figures =
            figures_of(self.chain.sizes(), placed.view, placed.em_per_mm, |_, _, _| Vec::new());
        let seen = figures.into_iter().filter(|figure| figure.look != Look::Air);
        seen.map(|figure| {
            let to = &bodies[figure.body.index()];
            let steps = figure.outline.iter().map(|&step| to.step(step)).collect();
            Outline { body: figure.body, part: figure.part, steps }
        })
        .collect()
    }
}

impl Scene {
    /// The outlines of a held chain on the sheet of the present one, each section where that one's
    /// lies, under a short name.
    pub fn of_ghost(
        sheet: Sheet,
        views: &[Placed],
        held: &Standing,
        now: &Standing,
        name: &str,
    ) -> Self {
        let mut scene = Self { sheet, ..Self::default() };
        let mut sketch = Sketch::new(&mut scene);
        for placed in views {
            let own = now.outlines(placed);
            let mut ghosts = held.outlines(placed);
            ghosts.retain(|ghost| !own.iter().any(|piece| covers(piece, ghost)));
            for ghost in &ghosts {
                let id = Id::Body(ghost.body);
                sketch.path(id, Layer::Marks, Role::Ghost, &ghost.steps);
            }
            name_in(&mut sketch, placed.view, &ghosts, name);
        }
        scene
    }
}

/// Whether a piece stands where a ghost of the same part does.
fn covers(piece: &Outline, ghost: &Outline) -> bool {
    /// As near as this is the same place, em: a third of a thin line.
    const NEAR_EM: f64 = 0.02;
    let near = |a: Point, b: Point| a.distance(b) <= NEAR_EM;
    let same = |(a, b): (&Step, &Step)| match (a, b) {
        (Step::Move(a), Step::Move(b)) | (Step::Line(a), Step::Line(b)) => near(*a, *b),
        (Step::Arc(a), Step::Arc(b)) => {
            near(a.start(), b.start())
                && near(a.at(a.start_rad + a.sweep_rad), b.at(b.start_rad + b.sweep_rad))
        }
        (Step::Close, Step::Close) => true,
        _ => false,
    };
    (piece.body, piece.part) == (ghost.body, ghost.part)
        && piece.steps.len() == ghost.steps.len()
        && piece.steps.iter().zip(&ghost.steps).all(same)
}

/// The name at the upper right of the ghost that has moved with the chain, or of any.
fn name_in(sketch: &mut Sketch, view: View, ghosts: &[Outline], name: &str) {
    const ABOVE_EM: f64 = 0.3;
    let named = ghosts.iter().find(|ghost| ghost.body == Body::NextOuter).or(ghosts.first());
    let Some((low, high)) = named.and_then(|ghost| bounds(&ghost.steps)) else { return };
    let sheet = Point::new(sketch.scene.sheet.width_em, sketch.scene.sheet.height_em);
    let at = Point::new(high.x, low.y - ABOVE_EM).max(Point::ONE).min(sheet - 1.0);
    let what = (Id::Mark(view.key()), Layer::Labels, Role::Figure);
    sketch.text(what, at, (Align::End, Size::SmallStrong), |text| text.push_str(name));
}
