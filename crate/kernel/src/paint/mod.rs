//! From a scene to a picture: one walk over the items, and the painters it calls.
//!
//! [`walk`] is the only reader of a [`Scene`]. Whatever it calls on a [`Painter`] is the picture:
//! the page's canvas and the files written by [`Svg`] get the same calls with the same numbers. A
//! painter knows inks, lines and letters; it knows no chain.

mod leaf;
mod recorder;
mod svg;
mod theme;
mod trace;

pub use leaf::{Leaf, Leaves, leaves};
pub use recorder::{Call, Recorder};
pub use svg::{FONT_FAMILY, Svg, SvgOptions, svg};
pub use theme::Theme;

use crate::plane::{Arc, Point, Step};
use crate::scene::{Align, Circle, Ink, Item, Role, Scene, Shape, Text};

/// Something that a scene can be painted on. Its unit is whatever [`walk`] was told an em is; x goes
/// right, y goes down, angles go from x towards y.
pub trait Painter {
    /// Lays an empty sheet of this size, in the ink of the sheet. Called once, first.
    fn sheet(&mut self, width: f64, height: f64);
    /// Lets what follows show inside a circle only; with nothing, everywhere again.
    fn clip(&mut self, circle: Option<Circle>);
    /// Begins a path.
    fn begin(&mut self);
    /// Lifts the pen and puts it down.
    fn move_to(&mut self, at: Point);
    /// Draws a straight line.
    fn line_to(&mut self, to: Point);
    /// Draws an arc that begins where the pen is.
    fn arc(&mut self, arc: &Arc);
    /// Closes the loop.
    fn close(&mut self);
    /// Fills the path by the even-odd rule, then draws its line.
    fn paint(&mut self, fill: Option<Ink>, line: Option<&Line>);
    /// Writes one line of letters.
    fn text(&mut self, letters: &str, writing: &Writing);
}

/// A line in the painter's unit; ends are butt, joins round.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Line {
    /// Its colour.
    pub ink: Ink,
    /// Its width.
    pub width: f64,
    /// Dashes and gaps in turn, as shares of [`Line::unit`]; empty for a whole line.
    pub dash_em: &'static [f64],
    /// One em in the painter's unit.
    pub unit: f64,
}

impl Line {
    /// The lengths of dashes and gaps in turn; none for a whole line.
    pub fn dashes(&self) -> impl Iterator<Item = f64> {
        self.dash_em.iter().map(|em| self.unit * em)
    }
}

/// Where and how letters stand, in the painter's unit.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Writing {
    /// The anchor, on the baseline.
    pub at: Point,
    /// Where along the letters the anchor is.
    pub align: Align,
    /// The size of the letters.
    pub size: f64,
    /// Whether they are bold.
    pub bold: bool,
    /// Their colour.
    pub ink: Ink,
}

/// Calls a painter for every item of a scene that is `shown`, back to front, `unit` to the em.
pub fn walk(scene: &Scene, unit: f64, shown: impl Fn(&Item) -> bool, painter: &mut impl Painter) {
    painter.sheet(unit * scene.sheet.width_em, unit * scene.sheet.height_em);
    let mut clip = None;
    for item in scene.items.iter().filter(|item| shown(item)) {
        if item.clip != clip {
            clip = item.clip;
            painter.clip(clip.map(|place| grown(scene.clips[place], unit)));
        }
        walk_item(scene, item, unit, painter);
    }
    if clip.is_some() {
        painter.clip(None);
    }
}

fn walk_item(scene: &Scene, item: &Item, unit: f64, painter: &mut impl Painter) {
    match &item.shape {
        Shape::Path(steps) => {
            painter.begin();
            for &step in &scene.steps[steps.clone()] {
                walk_step(step, unit, painter);
            }
            painter.paint(item.role.fill(), line(item.role, unit).as_ref());
        }
        Shape::Text(text) => {
            if let Some(ink) = item.role.fill() {
                painter.text(scene.letters(text), &writing(text, ink, unit));
            }
        }
    }
}

fn walk_step(step: Step, unit: f64, painter: &mut impl Painter) {
    match step {
        Step::Move(at) => painter.move_to(unit * at),
        Step::Line(to) => painter.line_to(unit * to),
        Step::Arc(arc) => {
            painter.arc(&Arc { centre: unit * arc.centre, radius: unit * arc.radius, ..arc });
        }
        Step::Close => painter.close(),
    }
}

fn line(role: Role, unit: f64) -> Option<Line> {
    let stroke = role.stroke()?;
    let width = unit * stroke.width_em;
    Some(Line { ink: stroke.ink, width, dash_em: stroke.dash_em, unit })
}

fn writing(text: &Text, ink: Ink, unit: f64) -> Writing {
    let (size, bold) = (unit * text.size.em(), text.size.is_bold());
    Writing { at: unit * text.at, align: text.align, size, bold, ink }
}

fn grown(circle: Circle, unit: f64) -> Circle {
    Circle { centre: unit * circle.centre, radius: unit * circle.radius }
}

#[cfg(test)]
mod tests;
