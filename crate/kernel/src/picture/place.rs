//! Where things stand on the pixels of a page.

use super::Picture;
use crate::plane::Point;
use crate::quantity::Quantity;
use crate::scene::{Grip, Holds, Placed};
use crate::stage::Stage;
use serde::Serialize;

/// A point of a section.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Spot {
    /// The key of the section.
    pub view: &'static str,
    /// Along its first axis, mm.
    pub x_mm: f64,
    /// Along its second axis, mm.
    pub y_mm: f64,
}

/// Where a section lies: px = x_px + x_mm px_per_mm, py = y_px - y_mm px_per_mm.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct ViewPlace {
    /// The key of the section.
    pub view: &'static str,
    /// Where its origin lies, pixels from the left.
    pub x_px: f64,
    /// Where its origin lies, pixels from the top.
    pub y_px: f64,
    /// Its scale.
    pub px_per_mm: f64,
}

/// Something that can be taken hold of.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct GripPlace {
    /// Its id.
    pub id: String,
    /// The key of the gap that it pulls; none for a link.
    pub gap: Option<&'static str>,
    /// The key of the section it moves in.
    pub view: &'static str,
    /// Where it holds the link, mm.
    pub x_mm: f64,
    /// Where it holds the link, mm.
    pub y_mm: f64,
    /// Its middle, pixels from the left.
    pub x_px: f64,
    /// Its middle, pixels from the top.
    pub y_px: f64,
}

impl Picture {
    /// The point of a section under a pixel; none beside the sections.
    pub fn spot_at(&mut self, stage: &Stage, x_px: f64, y_px: f64) -> Option<Spot> {
        let unit_px = self.unit_px;
        let at = Point::new(x_px, y_px) / unit_px;
        let (view, at) = self.laid_out(stage).view_at(at)?;
        Some(Spot { view: view.key(), x_mm: at.x, y_mm: at.y })
    }

    /// Where every section lies.
    pub fn views(&mut self, stage: &Stage) -> Vec<ViewPlace> {
        let unit_px = self.unit_px;
        let place = |placed: &Placed| ViewPlace {
            view: placed.view.key(),
            x_px: unit_px * placed.origin.x,
            y_px: unit_px * placed.origin.y,
            px_per_mm: unit_px * placed.em_per_mm,
        };
        self.laid_out(stage).views.iter().map(place).collect()
    }

    /// What can be taken hold of.
    pub fn grips(&mut self, stage: &Stage) -> Vec<GripPlace> {
        let unit_px = self.unit_px;
        let place = |grip: &Grip| GripPlace {
            id: grip.holds.id(),
            gap: gap_of(grip),
            view: grip.view.key(),
            x_mm: grip.at_mm.x,
            y_mm: grip.at_mm.y,
            x_px: unit_px * grip.at.x,
            y_px: unit_px * grip.at.y,
        };
        self.laid_out(stage).grips.iter().map(place).collect()
    }
}

/// The key of the gap whose dimension line a grip ends.
fn gap_of(grip: &Grip) -> Option<&'static str> {
    let Holds::End(contact) = grip.holds else { return None };
    contact.kind.pair().map(|pair| Quantity::of_pair(pair).key())
}
