use super::*;
use crate::contact::Kind;
use crate::paint::{Call, Recorder, walk};
use crate::plane::{Point, Step};
use crate::scene::{Item, Layer, Role, Shape, Thing};

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
    let before = picture.grips(&stage)[0].clone();
    stage.scrub(1.0);
    picture.stage_changed();
    let after = picture.grips(&stage)[0].clone();
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

#[test]
fn a_magnifier_shows_the_true_gap_of_the_contact_it_is_held_at() {
    let (picture, mut stage) = (picture(), Stage::default());
    stage.scrub(1.0);
    for contact in stage.contacts() {
        let seen = picture
            .lens(&stage, &At::Contact(contact.id.clone()), 140.0, Thing::Paper)
            .expect("a contact");
        assert_eq!((seen.id, seen.gap_mm.to_bits()), (contact.id, contact.gap_mm.to_bits()));
        assert!(seen.scene.items.iter().any(|item| item.id == Id::Mark("paper")));
    }
    assert_eq!(picture.lens(&stage, &At::Contact("nothing".to_owned()), 140.0, Thing::Paper), None);
}

#[test]
fn a_magnifier_in_the_drawing_takes_the_nearest_contact() {
    let (picture, mut stage) = (picture(), Stage::default());
    stage.scrub(1.0);
    let posing = stage.posing().expect("a chain that goes together");
    for state in posing.contacts().iter().filter(|state| state.contact.kind == Kind::PinBore) {
        let spot = At::Spot("plan".to_owned(), state.drawn_at);
        let seen = picture.lens(&stage, &spot, 140.0, Thing::Paper).expect("a contact");
        assert_eq!(seen.id, state.contact.id());
    }
    assert_eq!(
        picture.lens(&stage, &At::Spot("end".to_owned(), Point::ZERO), 140.0, Thing::Paper),
        None
    );
}

/// The strip of paper is as thick as the scale says: 0.1 mm where 0.3 mm are seen across.
#[test]
fn the_paper_is_drawn_at_the_scale_of_the_gap() {
    let (picture, mut stage) = (picture(), Stage::default());
    stage.scrub(1.0);
    let touching = stage.contacts().into_iter().find(|contact| contact.number == Some(1));
    let at = At::Contact(touching.expect("something touches").id);
    let scene = picture.lens(&stage, &at, 160.0, Thing::Paper).expect("a contact").scene;
    let paper = scene.items.iter().find(|item| item.id == Id::Mark("paper")).expect("paper");
    let Shape::Path(steps) = &paper.shape else { panic!("paper is a path") };
    let (Step::Move(a), Step::Line(b)) = (scene.steps[steps.start], scene.steps[steps.start + 1])
    else {
        panic!("paper is a polygon")
    };
    let glass = 2.0 * scene.clips[0].radius;
    assert!((a.distance(b) - 0.1 / 0.3 * glass).abs() < ROUNDING);
}

/// However small the glass, the name of the thing is not cut by its rim.
#[test]
fn the_name_of_the_thing_stays_inside_the_glass() {
    let mut picture = Picture::new(Lexicon::new([("draw.paper".to_owned(), "paper".to_owned())]));
    picture.lay(800.0, 600.0, 16.0, false);
    for (mode, size_px) in [("turn", 140.0), ("turn", 170.0), ("aside", 140.0)] {
        let mut stage = Stage::default();
        stage.show(mode).expect("a way");
        stage.scrub(1.0);
        for contact in stage.contacts() {
            let at = At::Contact(contact.id.clone());
            let scene = picture.lens(&stage, &at, size_px, Thing::Paper).expect("a contact").scene;
            let (glass, paper) = (&scene.clips[0], Id::Mark("paper"));
            let named = |item: &&Item| item.id == paper && item.layer == Layer::Labels;
            let patch = scene.items.iter().find(|item| named(item) && item.role == Role::Patch);
            let Shape::Path(steps) = &patch.expect("a patch").shape else { panic!("a path") };
            let (low, high) = crate::plane::bounds(&scene.steps[steps.clone()]).expect("steps");
            for x in [low.x, high.x] {
                let middle = Point::new(x, 0.5 * (low.y + high.y));
                assert!(middle.distance(glass.centre) <= glass.radius, "{mode} {}", contact.id);
            }
        }
    }
}

/// Everything that can lie beside a gap is as large there as the gap's own dimension line says.
#[test]
fn every_thing_is_drawn_at_the_scale_of_the_gap() {
    let (picture, mut stage) = (picture(), Stage::default());
    stage.set_gap("side_gap_mm", 1.0).expect("a chain");
    stage.scrub(0.0);
    let plates = stage.contacts().into_iter().find(|contact| contact.kind == "plate-face");
    let at = At::Contact(plates.expect("plates").id);
    for &thing in Thing::ALL {
        let seen = picture.lens(&stage, &at, 400.0, thing).expect("a contact");
        let scene = &seen.scene;
        let drawn = scene.items.iter().find(|item| item.id == Id::Mark(thing.key()));
        let Shape::Path(steps) = &drawn.expect("the thing").shape else { panic!("a path") };
        let (low, high) = crate::plane::bounds(&scene.steps[steps.clone()]).expect("steps");
        let scale = 2.0 * scene.clips[0].radius / (4.0 * seen.gap_mm);
        let across = (high.y - low.y) / scale; // the plates part up and down
        let grain = matches!(thing, Thing::Sand | Thing::Dust);
        let least = if grain { 0.85 } else { 1.0 } * thing.size_mm();
        assert!(across <= thing.size_mm() + ROUNDING && across >= least - ROUNDING, "{thing:?}");
        assert!((seen.thing_ratio * seen.thing_mm - seen.gap_mm).abs() < ROUNDING);
    }
}

#[test]
fn a_magnifier_of_no_size_or_of_any_size_comes_to_an_end() {
    let (picture, stage) = (picture(), Stage::default());
    let at = At::Contact(stage.contacts().remove(0).id);
    for size_px in [f64::NAN, -1.0, 0.0, 1e300, f64::INFINITY] {
        let seen = picture.lens(&stage, &at, size_px, Thing::Sand).expect("a contact");
        assert!(seen.scene.sheet.width_em >= 1.0 && seen.scene.steps.len() < 100_000);
    }
}

#[test]
fn a_drawing_after_another_is_the_one_made_anew() {
    let sheet = Sheet { width_em: 60.0, height_em: 36.0, narrow: false };
    let show = Show { mode: Mode::Turn, most_bend_rad: [0.0; 2] };
    let mut stage = Stage::default();
    let mut last = Drawing::new(stage.drawn(), sheet, show);
    for worn_mm in [0.01, 0.05, 0.05, 0.0] {
        stage.show_worn(worn_mm);
        let next = Drawing::after(Some(&last), stage.drawn(), sheet, show);
        assert_eq!(next, Drawing::new(stage.drawn(), sheet, show), "worn by {worn_mm} mm");
        last = next;
    }
}
