//! A stage on a sheet: what a page or a file shows of it.
//!
//! A picture keeps its drawing in step with the chain on the stage, the sheet and the movement shown:
//! outlines and section lines are made anew only when one of those changes, and a pose only carries
//! them. Everything that a page says in pixels is turned into the sheet's em and back here.

mod caliper;
mod caption;
mod ghost;
mod hidden;
mod lens;
mod place;
mod running;

pub use caliper::{CaliperState, readings_of};
pub use ghost::{GhostAsked, GhostDesk};
pub use hidden::Hidden;
pub use lens::{At, Magnified};
pub use place::{GripPlace, Spot, ViewPlace};
pub use running::{FoldView, RunAsked, RunDesk, RunState, WorkView};

use crate::paint::{SvgOptions, Theme, svg};
use crate::posing::{Mode, Posing};
use crate::scene::{Drawing, Id, Lexicon, Scene, Sheet, Show, Staging};
use crate::stage::Stage;

/// A sheet that a stage is drawn on, and the words on it.
pub struct Picture {
    lexicon: Lexicon,
    sheet: Sheet,
    /// Pixels to the em.
    unit_px: f64,
    drawing: Option<Drawing>,
    scene: Scene,
    /// What the scene was composed with; nothing once the stage has changed.
    shown: Option<Option<Id>>,
}

/// The sheet of a picture that nobody has laid out, em: a little wider than high.
const SHEET: Sheet = Sheet { width_em: 60.0, height_em: 45.0, narrow: false };
/// The text of such a sheet, pixels.
const TEXT_PX: f64 = 14.0;
/// No sheet is smaller, em, and no text, pixels.
const LEAST: f64 = 1.0;
/// No text is larger, pixels.
const MOST_TEXT_PX: f64 = 500.0;
/// No sheet is larger, em.
const MOST_EM: f64 = 1000.0;

impl Picture {
    /// An empty picture with the words of one language.
    pub fn new(lexicon: Lexicon) -> Self {
        let (drawing, scene) = (None, Scene::default());
        Self { lexicon, sheet: SHEET, unit_px: TEXT_PX, drawing, scene, shown: None }
    }

    /// The words, and how numbers are written.
    pub fn lexicon_mut(&mut self) -> &mut Lexicon {
        self.stage_changed();
        &mut self.lexicon
    }

    /// Lays the picture out on so many pixels with a text of so many; a size that is no size is taken
    /// as the smallest.
    pub fn lay(&mut self, width_px: f64, height_px: f64, text_px: f64, narrow: bool) {
        self.unit_px = MOST_TEXT_PX.min(text_px.max(LEAST));
        let em = |px: f64| MOST_EM.min((px / self.unit_px).max(LEAST));
        let (width_em, height_em) = (em(width_px), em(height_px));
        self.sheet = Sheet { width_em, height_em, narrow };
        self.stage_changed();
    }

    /// Pixels to the em.
    pub fn unit_px(&self) -> f64 {
        self.unit_px
    }

    /// Tells that the stage is no longer what was composed last.
    pub fn stage_changed(&mut self) {
        self.shown = None;
    }

    /// The scene of a stage, composed anew only when something has changed.
    pub fn scene(&mut self, stage: &Stage, lit: Option<Id>) -> &Scene {
        if self.shown != Some(lit) {
            self.compose(stage, lit);
        }
        &self.scene
    }

    /// The item that a page calls by the id of a contact.
    pub fn item_of(stage: &Stage, id: &str) -> Option<Id> {
        let mut contacts = stage.posing().into_iter().flat_map(Posing::contacts);
        let contact = contacts.find(|state| state.contact.id() == id);
        contact.map(|state| Id::Contact(state.contact))
    }

    /// The stage as one SVG document on this sheet.
    pub fn svg(&mut self, stage: &Stage, theme: &Theme, options: &SvgOptions) -> String {
        svg(self.scene(stage, None), theme, options)
    }

    /// The scene as it was composed last, whatever is lit in it.
    fn laid_out(&mut self, stage: &Stage) -> &Scene {
        if self.shown.is_none() {
            self.compose(stage, None);
        }
        &self.scene
    }

    fn compose(&mut self, stage: &Stage, lit: Option<Id>) {
        let show = Show { mode: stage.mode(), most_bend_rad: most_bend_rad(stage) };
        let in_step = |drawing: &Drawing| {
            let layout = drawing.layout();
            drawing.chain() == stage.drawn() && layout.sheet == self.sheet && layout.show == show
        };
        let drawing = match self.drawing.take() {
            Some(drawing) if in_step(&drawing) => drawing,
            last => Drawing::after(last.as_ref(), stage.drawn(), self.sheet, show),
        };
        let (factor, mode, posing) = (stage.factor(), stage.mode(), stage.posing());
        let lexicon = &self.lexicon;
        let drawing = self.drawing.insert(drawing);
        let staging = Staging { drawing, factor, mode, posing, lit, lexicon };
        self.scene.compose(&staging);
        self.shown = Some(lit);
    }
}

/// How far the inner and the next outer link come to fold, rad: the first joint folds downwards and
/// the rest goes along.
fn most_bend_rad(stage: &Stage) -> [f64; 2] {
    match stage.mode() {
        Mode::Bend => [-stage.bend_rad(); 2],
        _ => [0.0; 2],
    }
}

#[cfg(test)]
mod tests;
