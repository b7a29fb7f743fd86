//! A round magnifier: one gap at its true size, beside a thing that people know at the same scale.

mod frame;
mod metal;
mod thing;

pub use thing::Thing;

use super::item::{Id, Layer};
use super::mark::{round_centre, view_of};
use super::role::Role;
use super::sketch::Sketch;
use super::staging::Posed;
use super::{Circle, Lexicon, Scene, Sheet};
use crate::chain::Sizes;
use crate::contact::{Contact, Kind};
use crate::plane::{Point, Projection};
use crate::posing::{ContactState, Mode, Posing, Seen};
use frame::Frame;

/// What is magnified, and how large the glass is.
#[derive(Clone, Copy)]
pub struct Lens<'a> {
    /// The true sizes.
    pub sizes: &'a Sizes,
    /// The chain as it stands.
    pub posing: &'a Posing,
    /// The contact in its middle.
    pub state: &'a ContactState,
    /// Which movement is shown.
    pub mode: Mode,
    /// Words and how numbers are written.
    pub lexicon: &'a Lexicon,
    /// Its diameter, em.
    pub size_em: f64,
    /// What lies beside the gap.
    pub thing: Thing,
}

/// From the sheet's edge to the middle of the rim's line, em.
const RIM_EM: f64 = 0.1;

impl Lens<'_> {
    fn radius_em(&self) -> f64 {
        0.5 * self.size_em - RIM_EM
    }

    /// How many em one mm takes: four gaps to the width of the glass, but never so much that the thing
    /// beside the gap would fill it.
    fn scale(&self) -> f64 {
        const GAPS: f64 = 4.0;
        2.0 * self.radius_em() / (GAPS * self.state.gap_mm).max(self.thing.least_glass_mm())
    }
}

impl Scene {
    /// Draws what a magnifier shows on a square sheet of its own.
    pub fn compose_lens(&mut self, lens: &Lens) {
        self.clear();
        self.sheet = Sheet { width_em: lens.size_em, height_em: lens.size_em, narrow: true };
        draw(&mut Sketch::new(self), lens, Point::splat(0.5 * lens.size_em));
    }
}

/// The glass with its middle at a place of the sheet.
fn draw(sketch: &mut Sketch, lens: &Lens, centre: Point) {
    let state = lens.state;
    let glass = Circle { centre, radius: lens.radius_em() };
    draw_field(sketch, lens, glass);
    let normal = normal_of(lens, state);
    let frame = Frame {
        centre,
        radius: glass.radius,
        scale: lens.scale(),
        out: Point::new(normal.x, -normal.y),
        bare: bare_side(&state.contact, state.seen),
    };
    frame.draw_gap(sketch, lens, state);
    frame.draw_thing(sketch, lens);
    sketch.clip = None;
    sketch.circle(Id::Mark("lens"), Layer::Labels, Role::Rim, glass);
}

/// A small glass without words, among other things on a sheet.
pub(super) fn draw_small(sketch: &mut Sketch, lens: &Lens, centre: Point) {
    let glass = Circle { centre, radius: lens.radius_em() };
    draw_field(sketch, lens, glass);
    sketch.clip = None;
    sketch.circle(Id::Mark("lens"), Layer::Marks, Role::Rim, glass);
}

/// What is seen through the glass; what follows is still cut to it.
fn draw_field(sketch: &mut Sketch, lens: &Lens, glass: Circle) {
    let state = lens.state;
    let to_sheet = over(state, normal_of(lens, state), glass.centre, lens.scale());
    sketch.clip = Some(sketch.scene.clips.len());
    sketch.scene.clips.push(glass);
    sketch.circle(Id::Mark("lens"), Layer::Marks, Role::Patch, glass);
    metal::draw(sketch, lens, view_of(state.seen), &to_sheet);
}

/// The unit vector across the gap, out of the face's metal: along an axis of the section, which the
/// true faces leave by a degree at most, or out of a round face.
fn normal_of(lens: &Lens, state: &ContactState) -> Point {
    let n = state.drawn_normal;
    if state.seen == Seen::Elevation {
        let side = Posed::truth(lens.posing, lens.mode).side;
        let centre = round_centre(&side, lens.sizes.pitch_mm, &state.contact);
        return (state.at - centre).normalize_or(Point::X);
    }
    if n.x.abs() > n.y.abs() {
        Point::new(n.x.signum(), 0.0)
    } else {
        Point::new(0.0, n.y.signum())
    }
}

/// The way past the end of the metal whose corner makes a contact, on the sheet: there is room for
/// the thing beside it. Round parts have no end; there it is below.
fn bare_side(contact: &Contact, seen: Seen) -> Point {
    let (radial, axial) = match seen {
        Seen::Plan => (Point::X, -Point::Y),
        Seen::End => (-Point::Y, Point::X),
        Seen::Elevation => return Point::new(0.3, 1.0),
    };
    match contact.kind {
        Kind::PinBore | Kind::RollerBarrel => {
            axial * contact.end.sign() * if contact.inner { -1.0 } else { 1.0 }
        }
        Kind::PlateFace | Kind::RollerPlate | Kind::CollarEnds => radial * contact.side.sign(),
    }
}

/// The projection that puts the middle of the gap in the middle of the glass.
fn over(state: &ContactState, normal: Point, centre: Point, scale: f64) -> Projection {
    let middle = state.at + 0.5 * state.gap_mm.max(0.0) * normal;
    let to_sheet = Projection::new(Point::ZERO, scale, 0.0, true);
    Projection::new(centre - to_sheet.point(middle), scale, 0.0, true)
}
