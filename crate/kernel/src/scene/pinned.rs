//! Small magnifiers pinned to touching places whose gaps would be too narrow to be seen.

use super::compose::Staged;
use super::item::{Id, Layer};
use super::lens::{Lens, Thing, draw_small};
use super::mark::{Spot, first_choice};
use super::role::Role;
use super::seat::Seat;
use super::sketch::{Patch, Sketch};
use crate::chain::Sizes;
use crate::contact::widen;
use crate::posing::{ContactState, Seen};

/// A gap narrower than this on the sheet is not seen, em: 3 px of ordinary text.
const SEEN_EM: f64 = 0.23;
/// The most of them on one sheet.
const MOST: usize = 2;
/// Radius of a small glass, em.
const RADIUS_EM: f64 = 2.7;
/// How far from its place it may stand, em.
const DISTANCES_EM: [f64; 6] = [5.0, 6.5, 8.0, 10.0, 12.5, 15.0];

/// A glass beside the first places that touch, where the whole gap is too narrow; none on a narrow
/// sheet, which has no room for them.
pub(super) fn draw(sketch: &mut Sketch, staged: &Staged, spots: &[Option<Spot>]) {
    if staged.staging.posing.is_none() || staged.drawing.layout().sheet.narrow {
        return;
    }
    let truth = widen(staged.drawing.chain().sizes(), 1.0 / f64::from(staged.staging.factor));
    let narrow = |state: &ContactState| {
        state.number.is_some() && state.seen == Seen::Plan && is_too_narrow(staged, state)
    };
    let places = staged.posed.contacts.iter().zip(spots);
    let shown = places.filter(|(state, _)| narrow(state)).take(MOST);
    for (state, spot) in shown {
        if let Some(spot) = spot {
            pin(sketch, staged, &truth, (state, spot));
        }
    }
}

/// Whether the whole gap between the two parts, not the one that is closed, cannot be seen.
fn is_too_narrow(staged: &Staged, state: &ContactState) -> bool {
    let scale = staged.drawing.layout().plan().em_per_mm;
    let pair = state.contact.kind.pair();
    pair.is_some_and(|pair| scale * pair.gap_mm(staged.drawing.chain()) < SEEN_EM)
}

fn pin(sketch: &mut Sketch, staged: &Staged, truth: &Sizes, (state, spot): (&ContactState, &Spot)) {
    let Some(posing) = staged.staging.posing else { return };
    let first = first_choice(spot, &state.contact);
    let (radius_em, distances_em) = (RADIUS_EM, &DISTANCES_EM[..]);
    let seat = Seat { at: spot.at, first, radius_em, distances_em, on_pins: false };
    let Some(centre) = seat.find(sketch) else { return };
    let (mode, lexicon) = (staged.staging.mode, staged.lexicon);
    let (size_em, thing) = (2.0 * RADIUS_EM, Thing::Paper);
    let lens = Lens { sizes: truth, posing, state, mode, lexicon, size_em, thing };
    let way = (centre - spot.at).normalize_or_zero();
    let rim = centre - RADIUS_EM * way;
    sketch.line(Id::Contact(state.contact), Layer::Marks, Role::DiscLeader, spot.at, rim);
    draw_small(sketch, &lens, centre);
    sketch.taken.push(Patch::around(centre, RADIUS_EM));
}
