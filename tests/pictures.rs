//! Pictures of every scenario: what a file holds is what a canvas is told, and the colours of a
//! file are the page's.

use lightgap::paint::{Call, Recorder, SvgOptions, Theme, svg, walk};
use lightgap::picture::Picture;
use lightgap::plane::Arc;
use lightgap::scene::{Ink, Lexicon};
use lightgap::stage::Stage;
use lightgap_tests::{scenarios, text_of, words};

/// Pixels to the em.
const UNIT: f64 = 13.0;
/// Rounding of a coordinate in a document, with the rounding of an arc's end.
const ROUNDING: f64 = 0.000_51;

fn picture() -> Picture {
    let words: Vec<(String, String)> = {
        let words = words();
        let words = words.as_object().unwrap().iter();
        words.map(|(id, text)| (id.clone(), text.as_str().unwrap().to_owned())).collect()
    };
    let mut picture = Picture::new(Lexicon::new(words));
    picture.lay(820.0, 600.0, UNIT, false);
    picture
}

fn document(picture: &mut Picture, stage: &Stage) -> String {
    let (title, description) = ("", "");
    let scene = picture.scene(stage, None);
    let hidden = &[];
    let options =
        SvgOptions { title, description, caption: &[], unit: UNIT, width_px: None, hidden };
    svg(scene, &Theme::light(), &options)
}

/// The figures of every path of a document.
fn written(document: &str) -> Vec<Vec<f64>> {
    let numbers = |data: &str| {
        let figures = data.split(|c: char| c.is_ascii_alphabetic() || c == ' ');
        figures.filter(|figure| !figure.is_empty()).map(|f| f.parse().unwrap()).collect()
    };
    let paths = document.split(" d=\"").skip(1);
    paths.map(|rest| numbers(rest.split('"').next().unwrap())).collect()
}

/// The figures that a document must write for the calls of a walk.
fn told(calls: &[Call]) -> Vec<Vec<f64>> {
    let mut paths: Vec<Vec<f64>> = Vec::new();
    for call in calls {
        match call {
            Call::Begin => paths.push(Vec::new()),
            Call::Move(p) | Call::Line(p) => paths.last_mut().unwrap().extend([p.x, p.y]),
            Call::Arc(arc) => paths.last_mut().unwrap().extend(figures_of(arc)),
            _ => {}
        }
    }
    paths
}

/// An arc as SVG writes it; from half a turn on, in two.
fn figures_of(arc: &Arc) -> Vec<f64> {
    let pieces = if arc.sweep_rad.abs() < core::f64::consts::PI { 1 } else { 2 };
    let sense = if arc.sweep_rad > 0.0 { 1.0 } else { 0.0 };
    let end = |piece: i32| {
        let end = arc.at(arc.start_rad + arc.sweep_rad * f64::from(piece) / f64::from(pieces));
        [arc.radius, arc.radius, 0.0, 0.0, sense, end.x, end.y]
    };
    (1..=pieces).flat_map(end).collect()
}

#[test]
fn a_canvas_is_told_the_paths_of_the_document_of_every_scenario() {
    for (id, scenario) in scenarios() {
        let (mut picture, mut stage) = (picture(), Stage::new(scenario));
        for share in [-1.0, 0.0, 0.6, 1.0] {
            stage.scrub(share);
            picture.stage_changed();
            let mut recorder = Recorder::default();
            walk(picture.scene(&stage, None), UNIT, |_| true, &mut recorder);
            let (told, written) = (told(&recorder.calls), written(&document(&mut picture, &stage)));
            assert!(told.len() > 50, "{id}: {} paths", told.len());
            assert_eq!(told.len(), written.len(), "{id}");
            for (told, written) in told.iter().zip(&written) {
                assert_eq!(told.len(), written.len(), "{id}");
                let near = |(a, b): (&f64, &f64)| (a - b).abs() <= ROUNDING;
                assert!(told.iter().zip(written).all(near), "{id}: {told:?} {written:?}");
            }
        }
    }
}

#[test]
fn a_document_is_well_formed_and_stands_alone() {
    for (id, scenario) in scenarios() {
        let document = document(&mut picture(), &Stage::new(scenario));
        for outside in ["href", "url(h", "@import", "<style", "<script", "class="] {
            assert!(!document.contains(outside), "{id}: {outside}");
        }
        assert!(!document.contains("NaN") && !document.contains("inf"), "{id}");
        let [opened, closed] = ["<g ", "</g>"].map(|tag| document.matches(tag).count());
        assert_eq!(opened, closed, "{id}");
    }
}

#[test]
fn the_colours_of_a_file_are_those_of_the_page_in_light() {
    let style = text_of("www/style.css");
    let light = style.split('}').next().expect("the first rule");
    for ink in Ink::all() {
        let line = format!("--{}: {};", ink.key(), Theme::light().colour(ink));
        assert!(light.contains(&line), "{line}");
    }
}

/// A record: where the drawing is meant to change, look at it and take the new one
/// (`INSTA_UPDATE=always`).
#[test]
fn the_ferry_trike_is_written_as_before() {
    let (_, trike) =
        scenarios().into_iter().find(|(id, _)| id == "ferry-trike").expect("the trike");
    let (mut picture, mut stage) = (picture(), Stage::new(trike));
    stage.scrub(1.0);
    insta::assert_snapshot!(document(&mut picture, &stage));
}
