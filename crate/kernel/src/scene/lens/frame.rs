//! The glass as a place: the dimension line of the gap and the names of the two parts.

use super::Lens;
use crate::chain::{Construction, Sizes};
use crate::contact::{Contact, Kind};
use crate::plane::Point;
use crate::posing::{ContactState, Seen};
use crate::scene::item::{Align, Id, Layer, Size};
use crate::scene::measure::{OUTSIDE_EM, draw_span};
use crate::scene::role::Role;
use crate::scene::sketch::{Patch, Sketch};

/// The glass as a place to put things: its middle is the middle of the gap.
pub(super) struct Frame {
    pub centre: Point,
    pub radius: f64,
    pub scale: f64,
    /// Out of the face's metal, on the sheet.
    pub out: Point,
    /// Where there is least to see, on the sheet: past the end of the corner's metal.
    pub bare: Point,
}

impl Frame {
    /// Whether the faces stand upright in the glass, so that the thing goes under them.
    pub(super) fn upright(&self) -> bool {
        self.out.x.abs() > self.out.y.abs()
    }

    /// Along the faces, towards where the thing is shown.
    pub(super) fn aside(&self) -> Point {
        let along = self.out.perp();
        if along.dot(self.bare) < 0.0 { -along } else { along }
    }

    /// The place of a word so wide, its middle, moved sideways as far as the rim asks for.
    pub(super) fn within(&self, at: Point, width: f64) -> Point {
        let from = at - self.centre;
        let high = from.y.abs() + NAME_EM;
        let half_chord = libm::sqrt((self.radius * self.radius - high * high).max(0.0));
        let most = (half_chord - 0.5 * width).max(0.0);
        self.centre + Point::new(from.x.clamp(-most, most), from.y)
    }

    /// The dimension line of the gap, and the names of the two parts.
    pub(super) fn draw_gap(&self, sketch: &mut Sketch, lens: &Lens, state: &ContactState) {
        /// Where along the faces the arrows and the names are, as shares of the radius.
        const ARROWS: f64 = -0.3;
        const NAMES: f64 = -0.6;
        const NARROWEST_EM: f64 = 0.05;
        let gap = self.scale * state.gap_mm.max(0.0);
        let (id, half) = (Id::Contact(state.contact), 0.5 * gap);
        if gap > NARROWEST_EM {
            let at = self.centre + ARROWS * self.radius * self.aside();
            draw_span(sketch, id, at - half * self.out, at + half * self.out);
        }
        let (along, clear) = if self.upright() {
            (NAMES * self.radius, half + NAME_EM)
        } else {
            (BARE * self.radius - 0.4 * NAME_EM, half + OUTSIDE_EM + NAME_EM)
        };
        let at = self.centre + along * self.aside();
        let [face, corner] = parts(lens.sizes, &state.contact, state.seen);
        self.write(sketch, lens, (id, face), at - clear * self.out, -self.out);
        self.write(sketch, lens, (id, corner), at + clear * self.out, self.out);
    }

    /// A word on a patch of sheet, growing away from the gap.
    pub(super) fn write(
        &self,
        sketch: &mut Sketch,
        lens: &Lens,
        (id, word): (Id, &'static str),
        at: Point,
        way: Point,
    ) {
        const HALF_FIGURE_EM: f64 = 0.31;
        let align = match () {
            () if way == Point::ZERO => Align::Middle,
            () if (if self.upright() { -way.x } else { self.aside().x }) > 0.0 => Align::End,
            () => Align::Start,
        };
        let at = at + Point::new(0.0, HALF_FIGURE_EM);
        let letters = lens.lexicon.word(word);
        let Patch { low, high } = Patch::of_text(at, align, Size::Small, letters);
        let corners = [low, Point::new(high.x, low.y), high, Point::new(low.x, high.y)];
        sketch.polygon(id, Layer::Labels, Role::Patch, &corners);
        let what = (id, Layer::Labels, Role::Figure);
        sketch.text(what, at, (align, Size::Small), |out| out.push_str(letters));
    }
}

/// Where along the faces the bare ground for the thing begins, as a share of the radius.
pub(super) const BARE: f64 = 0.22;
/// From a face to the name of its part, em.
pub(super) const NAME_EM: f64 = 0.75;

/// The words of the part with the face and of the part across the gap.
fn parts(sizes: &Sizes, contact: &Contact, seen: Seen) -> [&'static str; 2] {
    let barrel = match sizes.construction {
        Construction::Bushed => "draw.part.bush",
        Construction::Collared => "draw.part.collar",
    };
    let plates = ["draw.part.outer", "draw.part.inner"];
    let [outer, inner] = plates;
    let plan = || crate::contact::meetings(sizes).into_iter().find(|m| m.contact == *contact);
    let corner_inside = || match seen {
        Seen::Plan => plan().is_some_and(|m| m.corner_body == contact.inner_plate()),
        Seen::End => sizes.inner_plate_height_mm <= sizes.outer_plate_height_mm,
        Seen::Elevation => false,
    };
    let swapped = |[a, b]: [&'static str; 2], swap: bool| if swap { [b, a] } else { [a, b] };
    match contact.kind {
        Kind::PinBore => ["draw.part.pin", barrel],
        Kind::PlateFace => swapped([inner, outer], corner_inside()),
        Kind::RollerPlate => swapped([inner, "draw.part.roller"], corner_inside()),
        Kind::RollerBarrel => swapped([barrel, "draw.part.roller"], corner_inside()),
        Kind::CollarEnds => [barrel, barrel],
    }
}
