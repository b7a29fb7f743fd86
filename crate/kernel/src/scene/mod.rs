//! What is drawn: a state becomes items, and the items say nothing of pixels or colours.
//!
//! # The sheet
//! Everything lies on a sheet whose unit is one em, the size of its ordinary text. The origin is the
//! top left corner, x goes right and y goes DOWN. A painter multiplies by the size of its text (in
//! pixels, in points) and is done: text, line widths and the drawing grow together. The scene
//! chooses the scale of the drawing itself and tells it in [`Placed::em_per_mm`].
//!
//! # The walk
//! [`Scene::items`] lie back to front. An item is a path or a text. A path is a range of
//! [`Scene::steps`] (lines and circular arcs, already on the sheet; angles go from x towards y, which
//! is clockwise to the eye, as a canvas counts them); it is filled by the even-odd rule when
//! [`Role::fill`] names an ink and then stroked when [`Role::stroke`] does. A text is a range of
//! [`Scene::text`], filled with [`Role::fill`]. Line ends are butt, joins round. An item with a
//! `clip` shows only inside that circle of [`Scene::clips`]; such items lie next to each other.
//!
//! All visible words come from outside, in a [`Lexicon`]; the scene fills in the numbers.

mod caliper;
mod compose;
mod drawing;
mod extent;
mod folding;
mod force;
mod ghost;
mod grip;
mod ground;
mod item;
mod layout;
mod lens;
mod lexicon;
mod mark;
mod measure;
mod metal;
mod names;
mod naming;
mod overlap;
mod pinned;
mod role;
mod running;
mod seat;
mod sheet;
mod sketch;
mod staging;

pub use drawing::{Drawing, Figure, Show, section_lines};
pub use folding::{FOLD_TIMES, Folding};
pub use ghost::Standing;
pub use item::{Align, CHARACTER_EM, Id, Ink, Item, Layer, Shape, Size, Text, Tint};
pub use layout::Layout;
pub use lens::{Lens, Thing};
pub use lexicon::{Length, Lexicon};
pub use role::{Role, Stroke};
pub use sheet::{Grip, Holds, Placed, Sheet, View};
pub use staging::Staging;

use crate::plane::{Point, Step};

/// A circle outside which clipped items do not show, em.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Circle {
    /// Its centre on the sheet.
    pub centre: Point,
    /// Its radius.
    pub radius: f64,
}

/// One drawing.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Scene {
    /// What it is drawn on.
    pub sheet: Sheet,
    /// Drawn things, back to front.
    pub items: Vec<Item>,
    /// The steps of all paths, on the sheet, em.
    pub steps: Vec<Step>,
    /// The letters of all texts.
    pub text: String,
    /// Circles that some items are cut to.
    pub clips: Vec<Circle>,
    /// Where each section lies on the sheet.
    pub views: Vec<Placed>,
    /// What can be taken hold of.
    pub grips: Vec<Grip>,
}

impl Scene {
    /// The letters of a text.
    pub fn letters(&self, text: &Text) -> &str {
        self.text.get(text.letters.clone()).unwrap_or_default()
    }

    /// The smallest and the largest corner of the place that is reserved for a text, em.
    pub fn place_of(&self, text: &Text) -> (Point, Point) {
        let place = sketch::Patch::of_text(text.at, text.align, text.size, self.letters(text));
        (place.low, place.high)
    }

    /// The section under a point of the sheet, and the point in its mm.
    pub fn view_at(&self, at: Point) -> Option<(View, Point)> {
        let placed = self.views.iter().find(|placed| placed.holds(at))?;
        Some((placed.view, placed.projection().inverse(at)))
    }
}
