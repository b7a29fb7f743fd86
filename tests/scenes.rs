//! Every scenario drawn on every kind of sheet: what the drawing promises a reader.

use lightgap::chain::{Chain, Construction, Dimension, Sizes};
use lightgap::contact::{Body, Play, widen};
use lightgap::plane::{Point, Step, area, bounds};
use lightgap::posing::{Ask, Mode, Posing, cap};
use lightgap::scene::{
    Drawing, Id, Layer, Lexicon, Role, Scene, Shape, Sheet, Show, Staging, Text,
};
use proptest::prelude::*;

/// A laptop's stage, a wide one, a phone's, the narrowest page, and a projector's large letters, em.
const SHEETS: [Sheet; 5] = [
    Sheet { width_em: 60.0, height_em: 50.0, narrow: false },
    Sheet { width_em: 104.0, height_em: 48.0, narrow: false },
    Sheet { width_em: 28.0, height_em: 32.0, narrow: true },
    Sheet { width_em: 25.0, height_em: 30.0, narrow: true },
    Sheet { width_em: 48.0, height_em: 30.0, narrow: false },
];

/// How far a fold goes here, rad.
const FOLD_RAD: f64 = 0.39;

/// Stands among the shares for a link that a hand has pulled as far aside and round as it goes.
const PULLED: f64 = -0.999;

/// Turns the chain one way and pulls the next link on, past where the turn alone comes to.
fn pull(posing: &mut Posing, mode: Mode) {
    const FAR_MM: f64 = 40.0;
    posing.put(Ask::Share { mode, share: -1.0 });
    let next = posing.drawn_pose().of(Body::NextOuter);
    let at = next.outward(Point::new(0.4 * next.x_mm, 0.0));
    posing.grab(Body::NextOuter, at);
    posing.drag(at - Point::new(0.0, FAR_MM));
}

/// The words of the page.
fn words() -> Lexicon {
    let file: std::collections::BTreeMap<String, serde_json::Value> =
        serde_json::from_value(lightgap_tests::words()).expect("words");
    let text = |value: serde_json::Value| value.as_str().unwrap_or_default().to_owned();
    Lexicon::new(file.into_iter().map(|(id, value)| (id, text(value))))
}

/// How deep joints have worn where they are drawn worn, mm: a chain at the end of its life.
const WORN_MM: f64 = 0.1;

/// Every scenario's chain, as new and worn.
fn chains() -> impl Iterator<Item = (String, Chain)> {
    lightgap_tests::scenarios().into_iter().flat_map(|(name, scenario)| {
        let chain = *scenario.chain.chain();
        let worn = chain.goes_together().then(|| (format!("{name}, worn"), chain.worn(WORN_MM)));
        [(name.to_string(), chain)].into_iter().chain(worn)
    })
}

/// Calls `each` with the scene of every scenario, as new and worn, on every sheet, movement and place along it.
fn each_scene(mut each: impl FnMut(&Scene, &str)) {
    let lexicon = words();
    let mut scene = Scene::default();
    for (name, chain) in chains() {
        let factor = cap(&chain);
        let times = f64::from(factor);
        let drawn = Chain::new(widen(&chain, times)).expect("a chain that can be drawn");
        let mut posing =
            chain.goes_together().then(|| Posing::new(&chain, &drawn, times, FOLD_RAD));
        for &mode in Mode::ALL {
            let most_bend_rad = if mode == Mode::Bend { [-FOLD_RAD; 2] } else { [0.0; 2] };
            let show = Show { mode, most_bend_rad };
            let drawings = SHEETS.map(|sheet| Drawing::new(&drawn, sheet, show));
            for share in [-1.0, 0.0, 0.7, 1.0, PULLED] {
                match &mut posing {
                    Some(posing) if share == PULLED && mode.is_plan() => pull(posing, mode),
                    Some(posing) => {
                        posing.put(Ask::Share { mode, share: f64::max(share, mode.least_share()) });
                    }
                    None => {}
                }
                for drawing in &drawings {
                    let (posing, lexicon, lit) = (posing.as_ref(), &lexicon, None);
                    scene.compose(&Staging { drawing, factor, mode, posing, lit, lexicon });
                    let wide = drawing.layout().sheet.width_em;
                    each(&scene, &format!("{name}, {}, {share}, {wide} em", mode.key()));
                }
            }
        }
    }
}

fn texts(scene: &Scene) -> impl Iterator<Item = (&Id, &Text)> {
    scene.items.iter().filter_map(|item| match &item.shape {
        Shape::Text(text) => Some((&item.id, text)),
        Shape::Path(_) => None,
    })
}

/// The numbers of dimensions.
fn figures(scene: &Scene) -> impl Iterator<Item = &Text> {
    scene.items.iter().filter_map(|item| match &item.shape {
        Shape::Text(text) if item.role == Role::Figure => Some(text),
        _ => None,
    })
}

/// Places of discs.
fn discs(scene: &Scene) -> Vec<(Point, Point)> {
    let disc = |role: Role| matches!(role, Role::Disc | Role::DiscLit | Role::Grip);
    let shapes = scene.items.iter().filter(|item| disc(item.role)).map(|item| &item.shape);
    let place = |shape: &Shape| match shape {
        Shape::Path(steps) => bounds(&scene.steps[steps.clone()]),
        Shape::Text(_) => None,
    };
    shapes.filter_map(place).collect()
}

fn meet(one: (Point, Point), other: (Point, Point)) -> bool {
    one.0.cmplt(other.1).all() && other.0.cmplt(one.1).all()
}

/// Whether the straight line between two points runs through a place.
fn runs_through(from: Point, to: Point, place: (Point, Point)) -> bool {
    const STEPS: u32 = 64;
    (0..=STEPS).any(|i| {
        let at = from.lerp(to, f64::from(i) / f64::from(STEPS));
        place.0.cmplt(at).all() && at.cmplt(place.1).all()
    })
}

#[test]
fn no_dimension_line_of_a_gap_runs_through_the_number_of_a_gap() {
    let mut faults = Vec::new();
    each_scene(|scene, what| {
        let lines =
            scene.items.iter().filter_map(|item| match (&item.shape, item.role, &item.id) {
                (Shape::Path(steps), Role::Dimension, Id::Contact(_)) => {
                    Some(&scene.steps[steps.clone()])
                }
                _ => None,
            });
        for line in lines {
            let [Step::Move(from), Step::Line(to)] = *line else { continue };
            for number in figures(scene).filter(|text| runs_through(from, to, scene.place_of(text)))
            {
                faults.push(format!("{what}: {}", scene.letters(number)));
            }
        }
    });
    assert!(faults.is_empty(), "{}", listed(&faults));
}

/// The number of faults and the first of them.
fn listed(faults: &[String]) -> String {
    const MOST: usize = 20;
    format!("{} faults:\n{}", faults.len(), faults[..faults.len().min(MOST)].join("\n"))
}

#[test]
fn no_two_words_lie_over_each_other_and_none_runs_off_the_sheet() {
    let mut faults = Vec::new();
    each_scene(|scene, what| {
        let all: Vec<_> = texts(scene)
            .map(|(id, text)| (id, scene.letters(text), scene.place_of(text)))
            .collect();
        let edge = Point::new(scene.sheet.width_em, scene.sheet.height_em);
        for (i, (id, letters, place)) in all.iter().enumerate() {
            if letters.contains("draw.") || letters.contains("unit.") {
                faults.push(format!("{what}: no word for {letters}"));
            }
            if !(place.0.cmpge(Point::ZERO).all() && place.1.cmple(edge).all()) {
                faults.push(format!("{what}: {letters} ({}) leaves the sheet", id.text()));
            }
            for (_, other, there) in &all[i + 1..] {
                if meet(*place, *there) {
                    faults.push(format!("{what}: {letters} and {other}"));
                }
            }
        }
    });
    assert!(faults.is_empty(), "{}", listed(&faults));
}

#[test]
fn discs_and_grips_keep_clear_of_each_other_and_of_words() {
    let mut faults = Vec::new();
    each_scene(|scene, what| {
        let all = discs(scene);
        for (i, disc) in all.iter().enumerate() {
            if all[i + 1..].iter().any(|other| meet(*disc, *other)) {
                faults.push(format!("{what}: two discs"));
            }
            for (id, text) in texts(scene) {
                let own = scene.place_of(text);
                let inside = own.0.cmpgt(disc.0).all() && own.1.cmplt(disc.1).all();
                if meet(*disc, own) && !inside {
                    faults.push(format!("{what}: a disc and {} {:?}", scene.letters(text), id));
                }
            }
        }
    });
    assert!(faults.is_empty(), "{}", listed(&faults));
}

/// A chain of random sizes that can be drawn: bushed or collared, tight or loose, with or without
/// roundings, hollow or solid.
fn any_chain() -> impl Strategy<Value = Chain> {
    let shares = (0.3..0.7, 0.15..0.9, 0.1..0.35, -0.004..0.02, 0.0..0.06, 0.05..0.16);
    let details = (0.0..0.03, 0.0..0.02, 0.0..0.6, 0.6..1.05, 0.5..1.0, any::<bool>());
    (6.0..40.0, shares, details).prop_filter_map("a chain that exists", |(p, shares, details)| {
        let (roller, width, pin, clearance, side, plate) = shares;
        let (mouth, chamfer, hollow, height, waist, bushed) = details;
        let construction = if bushed { Construction::Bushed } else { Construction::Collared };
        let stated = [
            (Dimension::Pitch, p),
            (Dimension::RollerDiameter, roller * p),
            (Dimension::InnerWidth, width * p),
            (Dimension::PinDiameter, pin * p),
            (Dimension::Bore, (pin + clearance) * p),
            (Dimension::InnerPlate, plate * p),
            (Dimension::MouthRadius, mouth * p),
            (Dimension::EdgeChamfer, chamfer * p),
            (Dimension::PinBore, hollow * pin * p),
            (Dimension::InnerPlateHeight, height * p),
            (Dimension::InnerWaist, waist * height * p),
            (Dimension::OuterSpacing, (width + 2.0 * plate + side) * p),
        ];
        Chain::new(Sizes::from_stated(construction, &stated)).ok()
    })
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 96, ..ProptestConfig::default() })]

    #[test]
    fn any_chain_that_exists_can_be_drawn(chain in any_chain(), share in -1.0..1.0) {
        let factor = cap(&chain);
        let times = f64::from(factor);
        let drawn = Chain::new(widen(&chain, times)).expect("a chain that can be drawn");
        let mode = Mode::Turn;
        let posing = chain.goes_together().then(|| {
            let mut posing = Posing::new(&chain, &drawn, times, FOLD_RAD);
            posing.put(Ask::Share { mode, share });
            posing
        });
        let (lexicon, mut scene) = (Lexicon::new([]), Scene::default());
        for sheet in SHEETS {
            let drawing = Drawing::new(&drawn, sheet, Show { mode, most_bend_rad: [0.0; 2] });
            let (posing, lit) = (posing.as_ref(), None);
            let (drawing, lexicon) = (&drawing, &lexicon);
            scene.compose(&Staging { drawing, factor, mode, posing, lit, lexicon });
            prop_assert!(scene.steps.iter().all(is_finite));
            for figure in drawing.figures() {
                prop_assert!(area(&figure.outline).abs() > 0.0, "{:?}", figure);
            }
        }
    }
}

fn is_finite(step: &Step) -> bool {
    match step {
        Step::Move(p) | Step::Line(p) => p.is_finite(),
        Step::Arc(arc) => arc.centre.is_finite() && arc.radius > 0.0 && arc.sweep_rad.is_finite(),
        Step::Close => true,
    }
}

#[test]
fn every_number_of_a_scene_is_finite_and_every_metal_part_on_the_sheet() {
    const OVER_EM: f64 = 0.01;
    each_scene(|scene, what| {
        assert!(scene.steps.iter().all(is_finite), "{what}");
        let edge = Point::new(scene.sheet.width_em, scene.sheet.height_em) + OVER_EM;
        for item in scene.items.iter().filter(|item| item.layer == Layer::Metal) {
            let Shape::Path(steps) = &item.shape else { continue };
            let (low, high) = bounds(&scene.steps[steps.clone()]).expect("a path has steps");
            let on_sheet = low.cmpge(Point::splat(-OVER_EM)).all() && high.cmple(edge).all();
            assert!(on_sheet, "{what}: {} {:?} {low} {high}", item.id.text(), item.role);
        }
    });
}

#[test]
fn no_metal_runs_under_the_name_of_a_part() {
    let mut faults = Vec::new();
    each_scene(|scene, what| {
        // a hand may pull a worn link on past its stop, further than the sheet keeps room for
        if what.contains(", worn,") && what.contains(&format!(", {PULLED},")) {
            return;
        }
        let parts = scene.items.iter().filter(|item| item.layer == Layer::Metal);
        let metal: Vec<_> = parts
            .filter_map(|item| match &item.shape {
                Shape::Path(steps) => bounds(&scene.steps[steps.clone()]),
                Shape::Text(_) => None,
            })
            .collect();
        let names = scene.items.iter().filter(|item| matches!(item.role, Role::Name(_)));
        for item in names {
            let Shape::Text(text) = &item.shape else { continue };
            if metal.iter().any(|part| meet(*part, scene.place_of(text))) {
                faults.push(format!("{what}: {}", scene.letters(text)));
            }
        }
    });
    assert!(faults.is_empty(), "{}", listed(&faults));
}

#[test]
fn what_stops_the_drawn_chain_stops_the_true_one() {
    for (name, scenario) in lightgap_tests::scenarios() {
        let chain = scenario.chain.chain();
        if chain.goes_together() {
            let drawn = widen(chain, f64::from(cap(chain)));
            let stops = |play: Play| [play.yaw.by, play.turn.by, play.shear.by, play.twist.by];
            assert_eq!(stops(Play::of(chain)), stops(Play::of(&drawn)), "{name}");
        }
    }
}

/// One scene written out: what is drawn, in order, with the corners of its place to a tenth of an em.
/// A change of the drawing shows here as changed lines.
#[test]
fn the_ferry_winch_at_its_stop_is_drawn_as_before() {
    use std::fmt::Write as _;
    let mut written = String::new();
    each_scene(|scene, what| {
        if what != "ferry-winch, turn, 1, 60 em" {
            return;
        }
        for item in &scene.items {
            let (place, words) = match &item.shape {
                Shape::Path(steps) => (bounds(&scene.steps[steps.clone()]).expect("steps"), ""),
                Shape::Text(text) => (scene.place_of(text), scene.letters(text)),
            };
            let [a, b] = [place.0, place.1].map(|p| format!("{:.1} {:.1}", p.x, p.y));
            let (id, role) = (item.id.text(), item.role);
            writeln!(written, "{id} | {role:?} | {a} | {b} | {words}").expect("a string");
        }
    });
    insta::assert_snapshot!(written);
}
