//! The pencil of a scene: puts paths and texts on the sheet and remembers which places are taken.

use super::item::{Align, CHARACTER_EM, Id, Item, Layer, Shape, Size, Text};
use super::role::Role;
use super::{Circle, Scene};
use crate::plane::{Arc, Point, Projection, Step};

/// An upright rectangle on the sheet, em.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Patch {
    /// Smallest x and y.
    pub low: Point,
    /// Largest x and y.
    pub high: Point,
}

impl Patch {
    /// The square around a circle.
    pub fn around(centre: Point, radius: f64) -> Self {
        Self { low: centre - radius, high: centre + radius }
    }

    /// Whether two rectangles share any place.
    pub fn meets(&self, other: &Self) -> bool {
        self.low.cmplt(other.high).all() && other.low.cmplt(self.high).all()
    }

    /// The area that two rectangles share.
    pub fn shared(&self, other: &Self) -> f64 {
        let size = (self.high.min(other.high) - self.low.max(other.low)).max(Point::ZERO);
        size.x * size.y
    }

    /// Whether it lies on the sheet.
    pub fn within(&self, low: Point, high: Point) -> bool {
        self.low.cmpge(low).all() && self.high.cmple(high).all()
    }

    /// The place that a line of letters takes.
    #[inline(never)]
    pub fn of_text(at: Point, align: Align, size: Size, letters: &str) -> Self {
        /// How far letters reach above and below their line, as shares of their size.
        const ABOVE: f64 = 0.8;
        const BELOW: f64 = 0.25;
        let width = width_em(letters, size);
        let left = match align {
            Align::Start => at.x,
            Align::Middle => at.x - 0.5 * width,
            Align::End => at.x - width,
        };
        Self {
            low: Point::new(left, at.y - ABOVE * size.em()),
            high: Point::new(left + width, at.y + BELOW * size.em()),
        }
    }
}

/// The width that is reserved for letters, em: [`CHARACTER_EM`] of their size each, and half as
/// much again for the widest.
pub fn width_em(letters: &str, size: Size) -> f64 {
    const WIDEST: f64 = 1.55;
    let share = |letter: char| if matches!(letter, 'm' | 'w' | 'M' | 'W') { WIDEST } else { 1.0 };
    CHARACTER_EM * size.em() * letters.chars().map(share).sum::<f64>()
}

/// A scene being drawn.
pub struct Sketch<'a> {
    /// What has been drawn.
    pub scene: &'a mut Scene,
    /// Places that words and discs have taken.
    pub taken: Vec<Patch>,
    /// Places of metal that a disc had better not hide.
    pub metal: Vec<Patch>,
    /// Places of pins, which a disc may lie on but a number had better not.
    pub pins: Vec<Patch>,
    /// The circle that paths are cut to.
    pub clip: Option<usize>,
}

impl<'a> Sketch<'a> {
    /// Begins on an empty sheet, keeping the buffers.
    pub fn new(scene: &'a mut Scene) -> Self {
        Self { scene, taken: Vec::new(), metal: Vec::new(), pins: Vec::new(), clip: None }
    }

    /// A path already on the sheet.
    #[inline(never)]
    pub fn path(&mut self, id: Id, layer: Layer, role: Role, steps: &[Step]) {
        let start = self.scene.steps.len();
        self.scene.steps.extend_from_slice(steps);
        self.push(id, layer, role, start);
    }

    /// A path carried to the sheet.
    #[inline(never)]
    pub fn carry(&mut self, what: (Id, Layer, Role), steps: &[Step], to: &Projection) {
        let start = self.scene.steps.len();
        self.scene.steps.extend(steps.iter().map(|&step| to.step(step)));
        self.push(what.0, what.1, what.2, start);
    }

    #[inline(never)]
    fn push(&mut self, id: Id, layer: Layer, role: Role, start: usize) {
        let shape = Shape::Path(start..self.scene.steps.len());
        self.scene.items.push(Item { id, layer, role, shape, clip: self.clip });
    }

    /// A straight line.
    #[inline(never)]
    pub fn line(&mut self, id: Id, layer: Layer, role: Role, from: Point, to: Point) {
        self.path(id, layer, role, &[Step::Move(from), Step::Line(to)]);
    }

    /// A closed polygon.
    #[inline(never)]
    pub fn polygon(&mut self, id: Id, layer: Layer, role: Role, corners: &[Point]) {
        let start = self.scene.steps.len();
        for (i, &corner) in corners.iter().enumerate() {
            self.scene.steps.push(if i == 0 { Step::Move(corner) } else { Step::Line(corner) });
        }
        self.scene.steps.push(Step::Close);
        self.push(id, layer, role, start);
    }

    /// A whole circle.
    #[inline(never)]
    pub fn circle(&mut self, id: Id, layer: Layer, role: Role, circle: Circle) {
        let Circle { centre, radius } = circle;
        let sweep_rad = core::f64::consts::TAU;
        let arc = Arc { centre, radius, start_rad: 0.0, sweep_rad };
        let steps = [Step::Move(arc.start()), Step::Arc(arc), Step::Close];
        self.path(id, layer, role, &steps);
    }

    /// A slim arrowhead with its tip at `tip`, pointing along the unit vector `way`.
    #[inline(never)]
    pub fn arrow(&mut self, id: Id, layer: Layer, tip: Point, way: Point) {
        const LENGTH_EM: f64 = 0.62;
        const HALF_WIDTH_EM: f64 = 0.19;
        let (back, side) = (tip - LENGTH_EM * way, HALF_WIDTH_EM * way.perp());
        self.polygon(id, layer, Role::Arrow, &[tip, back + side, back - side]);
    }

    /// A line of letters written by `write`; its place is taken. Returns the place.
    pub fn text(
        &mut self,
        (id, layer, role): (Id, Layer, Role),
        at: Point,
        (align, size): (Align, Size),
        write: impl FnOnce(&mut String),
    ) -> Patch {
        let start = self.scene.text.len();
        write(&mut self.scene.text);
        let letters = start..self.scene.text.len();
        let place = Patch::of_text(
            at,
            align,
            size,
            self.scene.text.get(letters.clone()).unwrap_or_default(),
        );
        let shape = Shape::Text(Text { at, align, size, letters });
        self.scene.items.push(Item { id, layer, role, shape, clip: self.clip });
        self.taken.push(place);
        place
    }

    /// How much metal or pin a place would hide.
    pub fn hidden_in_all(&self, place: &Patch) -> f64 {
        self.hidden(place) + self.pins.iter().map(|pin| pin.shared(place)).sum::<f64>()
    }

    /// The first of some places where letters lie free on the sheet; the first of all if none does.
    pub fn first_free(&self, places: &[Point], (align, size): (Align, Size), text: &str) -> Point {
        let sheet = Point::new(self.scene.sheet.width_em, self.scene.sheet.height_em);
        let free = |at: &&Point| {
            let place = Patch::of_text(**at, align, size, text);
            place.within(Point::ZERO, sheet) && self.is_free(&place)
        };
        places.iter().find(free).or(places.first()).copied().unwrap_or_default()
    }

    /// Keeps words and discs off a straight line.
    pub fn keep_off(&mut self, from: Point, to: Point) {
        const STEP_EM: f64 = 0.5;
        const HALF_EM: f64 = 0.2;
        let steps = libm::ceil(from.distance(to) / STEP_EM).max(1.0);
        for i in 0..=steps as u32 {
            let at = from.lerp(to, f64::from(i) / steps);
            self.taken.push(Patch::around(at, HALF_EM));
        }
    }

    /// How much metal a place would hide.
    pub fn hidden(&self, place: &Patch) -> f64 {
        self.metal.iter().map(|metal| metal.shared(place)).sum()
    }

    /// Whether a place is free of words and discs.
    #[inline(never)]
    pub fn is_free(&self, place: &Patch) -> bool {
        !self.taken.iter().any(|other| other.meets(place))
    }
}
