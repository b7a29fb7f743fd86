//! A painter that writes down what it is told, for comparison.

use super::{Line, Painter, Writing};
use crate::plane::{Arc, Point};
use crate::scene::{Circle, Ink};

/// One call of a painter.
#[derive(Debug, Clone, PartialEq)]
pub enum Call {
    /// [`Painter::sheet`]: width and height.
    Sheet(f64, f64),
    /// [`Painter::clip`].
    Clip(Option<Circle>),
    /// [`Painter::begin`].
    Begin,
    /// [`Painter::move_to`].
    Move(Point),
    /// [`Painter::line_to`].
    Line(Point),
    /// [`Painter::arc`].
    Arc(Arc),
    /// [`Painter::close`].
    Close,
    /// [`Painter::paint`].
    Paint(Option<Ink>, Option<Line>),
    /// [`Painter::text`].
    Text(String, Writing),
}

/// The calls of a walk, in order.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Recorder {
    /// The calls.
    pub calls: Vec<Call>,
}

impl Painter for Recorder {
    fn sheet(&mut self, width: f64, height: f64) {
        self.calls.push(Call::Sheet(width, height));
    }

    fn clip(&mut self, circle: Option<Circle>) {
        self.calls.push(Call::Clip(circle));
    }

    fn begin(&mut self) {
        self.calls.push(Call::Begin);
    }

    fn move_to(&mut self, at: Point) {
        self.calls.push(Call::Move(at));
    }

    fn line_to(&mut self, to: Point) {
        self.calls.push(Call::Line(to));
    }

    fn arc(&mut self, arc: &Arc) {
        self.calls.push(Call::Arc(*arc));
    }

    fn close(&mut self) {
        self.calls.push(Call::Close);
    }

    fn paint(&mut self, fill: Option<Ink>, line: Option<&Line>) {
        self.calls.push(Call::Paint(fill, line.copied()));
    }

    fn text(&mut self, letters: &str, writing: &Writing) {
        self.calls.push(Call::Text(letters.to_owned(), *writing));
    }
}
