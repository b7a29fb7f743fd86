use super::*;
use crate::paint::{Call, Recorder, walk};
use crate::scene::Layer;

/// A pixel or mm that went through em and back.
const ROUNDING: f64 = 1e-9;

fn picture() -> Picture {
    let mut picture = Picture::new(Lexicon::new([]));
    picture.lay(800.0, 600.0, 16.0, false);
    picture
}

#[test]
fn a_spot_is_where_the_views_say() {
    let (mut picture, stage) = (picture(), Stage::default());
    let views = picture.views(&stage);
    assert_eq!(views[0].view, "plan");
    for view in views {
        let (x_px, y_px) = (view.x_px + 0.25 * view.px_per_mm, view.y_px - 0.5 * view.px_per_mm);
        let spot = picture.spot_at(&stage, x_px, y_px).expect("a section");
        assert_eq!(spot.view, view.view);
        assert!((spot.x_mm - 0.25).abs() < ROUNDING && (spot.y_mm - 0.5).abs() < ROUNDING);
    }
}

#[test]
fn a_grip_stands_where_its_link_is() {
    let (mut picture, mut stage) = (picture(), Stage::default());
    let before = picture.grips(&stage)[0];
    stage.scrub(1.0);
    picture.stage_changed();
    let after = picture.grips(&stage)[0];
    assert!(after.y_mm > before.y_mm && after.y_px < before.y_px);
    let view = picture.views(&stage)[0];
    assert!((view.y_px - after.y_mm * view.px_per_mm - after.y_px).abs() < ROUNDING);
}

#[test]
fn the_drawing_follows_chain_and_movement() {
    let (mut picture, mut stage) = (picture(), Stage::default());
    let straight = picture.scene(&stage, None).clone();
    assert_eq!(*picture.scene(&stage, None), straight);
    stage.set_gap("side_gap_mm", 0.5).expect("a chain");
    picture.stage_changed();
    let wider = picture.scene(&stage, None).clone();
    assert_ne!(wider.steps, straight.steps);
    stage.show("bend").expect("a movement");
    picture.stage_changed();
    assert_ne!(picture.scene(&stage, None).views, wider.views);
}

#[test]
fn a_contact_that_is_held_back_and_a_layer_that_is_left_out_are_not_painted() {
    let (mut picture, mut stage) = (picture(), Stage::default());
    stage.scrub(1.0);
    let ids: Vec<String> = stage.contacts().into_iter().map(|contact| contact.id).collect();
    let painted = |picture: &mut Picture, names: Vec<String>| {
        let hidden = Hidden::of(&stage, names);
        let mut recorder = Recorder::default();
        walk(picture.scene(&stage, None), 16.0, |item| hidden.shows(item), &mut recorder);
        recorder.calls.iter().filter(|call| matches!(call, Call::Paint(..))).count()
    };
    let all = painted(&mut picture, Vec::new());
    assert!(painted(&mut picture, ids) < all);
    assert!(painted(&mut picture, vec![Layer::Section.key().to_owned()]) < all);
    assert_eq!(painted(&mut picture, vec!["nothing of that name".to_owned()]), all);
}

#[test]
fn a_size_that_is_no_size_still_gives_a_sheet() {
    let mut picture = Picture::new(Lexicon::new([]));
    for px in [0.0, -5.0, f64::NAN, f64::INFINITY] {
        picture.lay(px, px, px, true);
        assert!(picture.scene(&Stage::default(), None).sheet.width_em >= 1.0);
    }
}
