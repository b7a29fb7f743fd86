//! A frame of the picture beside the libraries that would make one: clarabel for both poses, parry for
//! all their gaps, kurbo for the paths and their text.
//!
//! The rival's frame is the smaller work: it is given the last round's problem of the true and the
//! drawn pitch, the shapes in their places and the scene composed. Ours finds the poses, marks what
//! touches, composes the scene with its labels and writes the whole document.

use crate::cases::Case;
use crate::clarabel::{Posed, pose};
use crate::pitches::{POSE, Query, next_yaw, timed};
use crate::work::Work;
use kurbo::BezPath;
use lightgap::contact::Settler;
use lightgap::paint::{Line, Painter, SvgOptions, Theme, Writing, walk};
use lightgap::picture::Picture;
use lightgap::plane::{Arc, Point};
use lightgap::posing::Posing;
use lightgap::scenario::Scenario;
use lightgap::scene::{Circle, Ink, Layer, Lexicon, Scene};
use lightgap::stage::Stage;
use std::hint::black_box;

/// What the page leaves out of its documents.
const HIDDEN: &[Layer] = &[Layer::Grips];
/// Frames of a movement.
const FRAMES: usize = 16;

pub(crate) fn works() -> Vec<Work> {
    timed().into_iter().map(|(id, scenario)| frame(id, scenario)).collect()
}

/// What the rival is given for one frame.
struct Given {
    posed: [Posed; 2],
    queries: Vec<Query>,
    scene: Scene,
}

impl Given {
    fn of(stage: &Stage, scene: Scene) -> Self {
        let posing = stage.posing().expect("a chain that goes together");
        let plans = [posing.plan(), posing.drawn_plan()];
        let queries = plans.into_iter().flat_map(|plan: &Settler| {
            plan.meetings().iter().map(|meeting| Query::of(meeting, plan.pose()))
        });
        Self {
            posed: plans.map(|plan| pose(&Case::of(plan.problem()))),
            queries: queries.collect(),
            scene,
        }
    }
}

/// Our frame, its state kept from one to the next as in the page.
pub(crate) struct Bench {
    pub(crate) stage: Stage,
    picture: Picture,
    theme: Theme,
}

impl Bench {
    pub(crate) fn new(scenario: Scenario) -> Self {
        let mut picture = Picture::new(Lexicon::new([]));
        picture.lay(1000.0, 700.0, 14.0, false);
        Self { stage: Stage::new(scenario), picture, theme: Theme::light() }
    }

    /// The picture at a share of the movement.
    pub(crate) fn svg(&mut self, share: f64) -> String {
        self.stage.scrub(share);
        self.picture.stage_changed();
        let unit = self.picture.unit_px();
        let (title, description) = ("Frame", "");
        let options =
            SvgOptions { title, description, caption: &[], unit, width_px: None, hidden: HIDDEN };
        self.picture.svg(&self.stage, &self.theme, &options)
    }
}

fn share(frame: usize) -> f64 {
    frame as f64 / FRAMES as f64
}

fn frame(id: &str, scenario: Scenario) -> Work {
    let mut bench = Bench::new(scenario);
    let (unit, mut given) = (bench.picture.unit_px(), Vec::new());
    for frame in 0..FRAMES {
        let svg = bench.svg(share(frame));
        let scene = bench.picture.scene(&bench.stage, None).clone();
        assert_eq!(loops_of_svg(&svg), loops_of_paths(&paths(&scene, unit)), "frame {frame}");
        given.push(Given::of(&bench.stage, scene));
    }
    let sizes = *bench.stage.chain().sizes();
    let (mut their_turn, mut turn) = (0, 0);
    Work::new(
        &format!("{id}, a frame"),
        POSE,
        move || {
            their_turn = (their_turn + 1) % FRAMES;
            let Given { posed, queries, scene } = &given[their_turn];
            let x = posed.each_ref().map(|posed| posed.solve().x[next_yaw(&sizes)]);
            black_box(queries.iter().map(|query| black_box(query).gap_mm()).sum::<f64>());
            black_box(paths(scene, unit));
            x[0] / sizes.pitch_mm
        },
        move || {
            turn = (turn + 1) % FRAMES;
            black_box(bench.svg(share(turn)));
            bench.stage.posing().map_or(f64::NAN, Posing::total_yaw_rad)
        },
    )
}

/// How many loops the paths of an SVG document have.
fn loops_of_svg(svg: &str) -> usize {
    let paths = svg.split(" d=\"").skip(1);
    paths.map(|path| loops_of_paths(path.split('"').next().unwrap_or(""))).sum()
}

fn loops_of_paths(text: &str) -> usize {
    text.matches('M').count()
}

/// Every path of a scene as SVG's text.
fn paths(scene: &Scene, unit: f64) -> String {
    let mut pen = Kurbo::default();
    walk(scene, unit, |item| !HIDDEN.contains(&item.layer), &mut pen);
    pen.text
}

/// Builds every path as kurbo's, and writes it as text.
#[derive(Default)]
struct Kurbo {
    path: BezPath,
    text: String,
}

fn point(at: Point) -> kurbo::Point {
    kurbo::Point::new(at.x, at.y)
}

impl Painter for Kurbo {
    fn sheet(&mut self, _: f64, _: f64) {}

    fn clip(&mut self, _: Option<Circle>) {}

    fn begin(&mut self) {
        self.path.truncate(0);
    }

    fn move_to(&mut self, at: Point) {
        self.path.move_to(point(at));
    }

    fn line_to(&mut self, to: Point) {
        self.path.line_to(point(to));
    }

    fn arc(&mut self, arc: &Arc) {
        /// A tenth of a pixel.
        const TOLERANCE: f64 = 0.1;
        let radii = kurbo::Vec2::new(arc.radius, arc.radius);
        let arc = kurbo::Arc::new(point(arc.centre), radii, arc.start_rad, arc.sweep_rad, 0.0);
        self.path.extend(arc.append_iter(TOLERANCE));
    }

    fn close(&mut self) {
        self.path.close_path();
    }

    fn paint(&mut self, _: Option<Ink>, _: Option<&Line>) {
        self.text.push_str(&self.path.to_svg());
    }

    fn text(&mut self, letters: &str, _: &Writing) {
        // Both sides copy the letters.
        black_box(letters.to_owned());
    }
}
