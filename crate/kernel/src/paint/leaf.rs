//! A scene as a list of plain leaves, for a page that paints away from where the scene is made.

use super::trace::{Trace, dashes};
use super::{Line, Painter, Writing, walk};
use crate::plane::{Arc, Point};
use crate::scene::{Align, Circle, Ink, Scene};
use serde::Serialize;

/// A scene on its sheet, in the unit that it was asked for.
#[derive(Debug, Clone, PartialEq, Default, Serialize)]
pub struct Leaves {
    /// Width of the sheet.
    pub width: f64,
    /// Height of the sheet.
    pub height: f64,
    /// Circles that leaves are cut to: centre and radius.
    pub clips: Vec<[f64; 3]>,
    /// What is drawn, back to front.
    pub leaves: Vec<Leaf>,
}

/// One painted path or line of letters. Inks are named as in a theme.
#[derive(Debug, Clone, PartialEq, Default, Serialize)]
pub struct Leaf {
    /// The path as SVG writes it; empty for letters.
    pub d: String,
    /// The ink that fills the path by the even-odd rule, or the letters.
    pub fill: Option<&'static str>,
    /// The ink of its line.
    pub line: Option<&'static str>,
    /// The width of its line.
    pub width: f64,
    /// Dashes and gaps in turn; empty for a whole line.
    pub dash: String,
    /// The place in [`Leaves::clips`] of the circle that it is cut to.
    pub clip: Option<usize>,
    /// The letters; empty for a path.
    pub letters: String,
    /// The anchor of letters, on the baseline.
    pub at: [f64; 2],
    /// `start`, `middle` or `end`: where along the letters the anchor is.
    pub anchor: &'static str,
    /// The size of the letters.
    pub size: f64,
    /// Whether they are bold.
    pub bold: bool,
}

/// A scene as leaves, `unit` to the em.
pub fn leaves(scene: &Scene, unit: f64) -> Leaves {
    let mut painter = Gatherer::default();
    walk(scene, unit, |_| true, &mut painter);
    painter.found
}

#[derive(Default)]
struct Gatherer {
    found: Leaves,
    trace: Trace,
    clip: Option<usize>,
}

impl Painter for Gatherer {
    fn sheet(&mut self, width: f64, height: f64) {
        (self.found.width, self.found.height) = (width, height);
    }

    fn clip(&mut self, circle: Option<Circle>) {
        self.clip = circle.map(|circle| {
            self.found.clips.push([circle.centre.x, circle.centre.y, circle.radius]);
            self.found.clips.len() - 1
        });
    }

    fn begin(&mut self) {
        self.trace.letters.clear();
    }

    fn move_to(&mut self, at: Point) {
        self.trace.push_point('M', at);
    }

    fn line_to(&mut self, to: Point) {
        self.trace.push_point('L', to);
    }

    fn arc(&mut self, arc: &Arc) {
        self.trace.arc(arc);
    }

    fn close(&mut self) {
        self.trace.letters.push('Z');
    }

    fn paint(&mut self, fill: Option<Ink>, line: Option<&Line>) {
        self.found.leaves.push(Leaf {
            d: self.trace.letters.clone(),
            fill: fill.map(Ink::key),
            line: line.map(|line| line.ink.key()),
            width: line.map_or(0.0, |line| line.width),
            dash: line.map(dashes).unwrap_or_default(),
            clip: self.clip,
            ..Leaf::default()
        });
    }

    fn text(&mut self, letters: &str, writing: &Writing) {
        self.found.leaves.push(Leaf {
            fill: Some(writing.ink.key()),
            clip: self.clip,
            letters: letters.to_owned(),
            at: [writing.at.x, writing.at.y],
            anchor: match writing.align {
                Align::Start => "start",
                Align::Middle => "middle",
                Align::End => "end",
            },
            size: writing.size,
            bold: writing.bold,
            ..Leaf::default()
        });
    }
}
