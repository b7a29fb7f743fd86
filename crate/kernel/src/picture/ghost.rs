//! A chain that is held, as outlines over the picture of the present one.

use crate::paint::{Leaves, leaves};
use crate::plane::Point;
use crate::scenario::{Corner, Scenario};
use crate::scene::{Placed, Scene, Sheet, Standing, View};
use crate::stage::Stage;

/// What is asked of a ghost.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct GhostAsked {
    /// The movement by its word.
    pub mode: String,
    /// How far along it both chains are.
    pub share: f64,
    /// A place in the room to move instead: offset, mm, and yaw, rad.
    pub room: Option<(f64, f64)>,
    /// How many times too big gaps are drawn.
    pub times: f64,
    /// The extreme of the limits that stands there.
    pub corner: Option<Corner>,
    /// Whether plates and pins give under a load: of the held chain and of the present one.
    pub springy: [bool; 2],
    /// How deep joints have worn, mm: of the held chain and of the present one.
    pub worn_mm: [f64; 2],
    /// Width and height of the picture, pixels.
    pub size_px: [f64; 2],
    /// The size of its text, pixels.
    pub text_px: f64,
    /// Where every section lies: its word, its origin in pixels, pixels to the mm.
    pub views: Vec<(String, [f64; 2], f64)>,
    /// What the ghost is called on the drawing.
    pub name: String,
}

/// The two chains that stood last, kept while their scenarios stay.
#[derive(Default)]
pub struct GhostDesk {
    held: Option<Stage>,
    now: Option<Stage>,
}

impl GhostDesk {
    /// The outlines of a held chain where it does not stand as the present one, in pixels.
    pub fn leaves(&mut self, held: &Scenario, now: &Scenario, asked: &GhostAsked) -> Leaves {
        let held = stand(&mut self.held, held, asked, 0);
        let now = stand(&mut self.now, now, asked, 1);
        let [width_em, height_em] = asked.size_px.map(|px| px / asked.text_px);
        let sheet = Sheet { width_em, height_em, narrow: false };
        let scene =
            Scene::of_ghost(sheet, &placed(asked), &standing(held), &standing(now), &asked.name);
        leaves(&scene, asked.text_px)
    }
}

fn standing(stage: &Stage) -> Standing<'_> {
    Standing { chain: stage.drawn(), posing: stage.posing(), mode: stage.mode() }
}

/// A scenario on its stage as it is asked for, the held one (0) or the present one (1); a movement
/// that there is not leaves the last.
fn stand<'a>(
    kept: &'a mut Option<Stage>,
    scenario: &Scenario,
    asked: &GhostAsked,
    which: usize,
) -> &'a Stage {
    if kept.as_ref().is_some_and(|stage| stage.scenario() != scenario) {
        *kept = None;
    }
    let stage = kept.get_or_insert_with(|| Stage::new(scenario.clone()));
    stage.set_springy(asked.springy[which]);
    stage.show_corner(asked.corner);
    stage.show_worn(asked.worn_mm[which]);
    let _ = stage.show(&asked.mode);
    stage.widen(asked.times);
    match asked.room {
        Some((offset_mm, yaw_rad)) => stage.room_to(offset_mm, yaw_rad),
        None => stage.scrub(asked.share),
    }
    stage
}

/// The sections on a sheet of ems.
fn placed(asked: &GhostAsked) -> Vec<Placed> {
    let [width_em, height_em] = asked.size_px.map(|px| px / asked.text_px);
    let of = |(key, [x_px, y_px], px_per_mm): &(String, [f64; 2], f64)| {
        Some(Placed {
            view: View::of_key(key)?,
            origin: Point::new(*x_px, *y_px) / asked.text_px,
            em_per_mm: px_per_mm / asked.text_px,
            low: Point::ZERO,
            high: Point::new(width_em, height_em),
        })
    };
    asked.views.iter().filter_map(of).collect()
}

#[cfg(test)]
mod tests {
    use super::{GhostAsked, GhostDesk};
    use crate::scenario::Value;
    use crate::scenario::sample::aside;

    fn asked(share: f64) -> GhostAsked {
        GhostAsked {
            mode: "turn".to_owned(),
            share,
            times: 4.0,
            size_px: [800.0, 600.0],
            text_px: 14.0,
            views: vec![("plan".to_owned(), [200.0, 200.0], 20.0)],
            name: "A".to_owned(),
            ..GhostAsked::default()
        }
    }

    #[test]
    fn a_chain_over_itself_shows_nothing() {
        let chain = aside(0.0);
        for share in [0.0, 0.4, 1.0] {
            let found = GhostDesk::default().leaves(&chain, &chain, &asked(share));
            assert!(found.leaves.is_empty(), "{share}: {:?}", found.leaves);
        }
    }

    #[test]
    fn a_wider_one_shows_its_outer_link_in_broken_lines_and_its_letter_at_its_own_pose() {
        let now = aside(0.0);
        let wider_mm = now.chain.chain().outer_spacing_mm + 0.2;
        let held = now.with("chain.outer_spacing_mm", Value::from(wider_mm)).expect("a chain");
        let mut desk = GhostDesk::default();
        let [straight, turned] = [0.0, 1.0].map(|share| desk.leaves(&held, &now, &asked(share)));
        let dashed = straight.leaves.iter().filter(|leaf| !leaf.dash.is_empty()).count();
        // Of each outer link its pin, and two plates that the pin cuts in two.
        assert_eq!(dashed, 2 * (1 + 2 * 2));
        let letters: Vec<_> = straight.leaves.iter().map(|leaf| leaf.letters.as_str()).collect();
        assert_eq!(letters.iter().filter(|letters| **letters == "A").count(), 1);
        assert_ne!(straight, turned);
    }

    #[test]
    fn a_chain_over_itself_shows_where_its_joints_have_worn_otherwise() {
        let chain = aside(0.0);
        let worn = |worn_mm| GhostAsked { worn_mm, ..asked(1.0) };
        let alike = GhostDesk::default().leaves(&chain, &chain, &worn([0.2, 0.2]));
        assert!(alike.leaves.is_empty(), "{:?}", alike.leaves);
        let unlike = GhostDesk::default().leaves(&chain, &chain, &worn([0.2, 0.0]));
        assert!(unlike.leaves.iter().any(|leaf| !leaf.dash.is_empty()));
    }

    #[test]
    fn what_is_asked_in_vain_still_draws() {
        let chain = aside(0.0);
        let odd = GhostAsked { mode: "?".to_owned(), times: f64::NAN, ..asked(f64::NAN) };
        assert!(GhostDesk::default().leaves(&chain, &chain, &odd).leaves.is_empty());
    }
}
