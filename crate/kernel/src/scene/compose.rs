//! The order in which a scene is drawn.

use super::sketch::Sketch;
use super::staging::Posed;
use super::{
    Drawing, Lexicon, Placed, Scene, Staging, force, grip, ground, mark, measure, metal, naming,
    overlap, pinned,
};
use crate::plane::Projection;

/// A staging with its poses at hand.
pub(super) struct Staged<'a> {
    /// What is to be drawn.
    pub staging: &'a Staging<'a>,
    /// Where everything stands.
    pub posed: Posed<'a>,
    /// The chain on its sheet.
    pub drawing: &'a Drawing,
    /// Words and how numbers are written.
    pub lexicon: &'a Lexicon,
}

impl Staged<'_> {
    /// From each body's own axes to the sheet, in a section.
    pub fn bodies_on_sheet(&self, placed: &Placed) -> [Projection; 6] {
        let to_sheet = placed.projection();
        self.posed.of_view(placed.view).0.map(|place| to_sheet.of_body(&place))
    }
}

impl Scene {
    /// Draws a staging anew, keeping the buffers of the last drawing.
    pub fn compose(&mut self, staging: &Staging) {
        let (drawing, lexicon) = (staging.drawing, staging.lexicon);
        let staged = Staged { staging, posed: Posed::of(staging), drawing, lexicon };
        self.clear();
        self.sheet = drawing.layout().sheet;
        self.views.extend_from_slice(drawing.layout().views());
        let mut sketch = Sketch::new(self);
        ground::draw(&mut sketch, &staged);
        metal::draw(&mut sketch, &staged);
        overlap::draw(&mut sketch, &staged);
        ground::draw_axes(&mut sketch, &staged);
        grip::reserve(&mut sketch, &staged);
        naming::draw(&mut sketch, &staged);
        let spots = mark::draw_edges(&mut sketch, &staged);
        force::draw(&mut sketch, &staged, &spots);
        measure::draw(&mut sketch, &staged);
        overlap::draw_numbers(&mut sketch, &staged);
        mark::draw_discs(&mut sketch, &staged, &spots);
        pinned::draw(&mut sketch, &staged, &spots);
        grip::draw(&mut sketch);
    }

    pub(super) fn clear(&mut self) {
        self.items.clear();
        self.steps.clear();
        self.text.clear();
        self.clips.clear();
        self.views.clear();
        self.grips.clear();
    }
}
