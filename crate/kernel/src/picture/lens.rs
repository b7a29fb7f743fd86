//! The magnifier: which contact it shows, and what of it is told.

use super::Picture;
use crate::plane::Point;
use crate::posing::{ContactState, Posing, Seen};
use crate::scene::{Lens, Scene, Thing};
use crate::stage::Stage;
use serde::Serialize;

/// What a magnifier is held at.
#[derive(Debug, Clone, PartialEq)]
pub enum At {
    /// A contact, by its id.
    Contact(String),
    /// A point of a drawn section, by the section's key, mm: the contact that is drawn nearest.
    Spot(String, Point),
}

/// What a magnifier shows.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Magnified {
    /// The id of the contact.
    pub id: String,
    /// The true gap, mm.
    pub gap_mm: f64,
    /// How thick the thing beside it is, mm.
    pub thing_mm: f64,
    /// How many times as wide as that the gap is.
    pub thing_ratio: f64,
    /// The drawing, on a sheet of its own.
    #[serde(skip)]
    pub scene: Scene,
}

/// No magnifier is larger, em: its section lines would have no end.
const MOST_EM: f64 = 200.0;

impl Picture {
    /// A magnifier of so many pixels held at a place, with a thing beside the gap; none where the chain does not go together or
    /// nothing is near.
    pub fn lens(&self, stage: &Stage, at: &At, size_px: f64, thing: Thing) -> Option<Magnified> {
        let posing = stage.posing()?;
        let state = state_at(posing, at)?;
        let mut scene = Scene::default();
        let size_em = MOST_EM.min((size_px / self.unit_px).max(super::LEAST));
        let sizes = stage.chain().sizes();
        let (mode, lexicon) = (stage.mode(), &self.lexicon);
        scene.compose_lens(&Lens { sizes, posing, state, mode, lexicon, size_em, thing });
        let (id, gap_mm) = (state.contact.id(), state.gap_mm);
        let thing_mm = thing.size_mm();
        Some(Magnified { id, gap_mm, thing_mm, thing_ratio: gap_mm / thing_mm, scene })
    }
}

fn state_at<'a>(posing: &'a Posing, at: &At) -> Option<&'a ContactState> {
    let mut states = posing.contacts().iter();
    match at {
        At::Contact(id) => states.find(|state| state.contact.id() == *id),
        At::Spot(view, spot) => states
            .filter(|state| state.seen.key() == view)
            .map(|state| (drawn_at(posing, state).distance_squared(*spot), state))
            .min_by(|(one, _), (other, _)| one.total_cmp(other))
            .map(|(_, state)| state),
    }
}

/// Where a contact is drawn, mm of its section.
fn drawn_at(posing: &Posing, state: &ContactState) -> Point {
    let gaps = &posing.drawn_elevation().gaps;
    let seen =
        gaps.iter().find(|gap| state.seen == Seen::Elevation && gap.contact == state.contact);
    seen.map_or(state.drawn_at, |gap| gap.at)
}
