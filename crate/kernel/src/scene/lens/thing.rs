//! Things that people know the size of, laid beside the gap at its own scale.

use super::Lens;
use super::frame::{BARE, Frame, NAME_EM};
use crate::plane::Point;
use crate::scene::Circle;
use crate::scene::item::{Id, Layer, Size};
use crate::scene::measure::OUTSIDE_EM;
use crate::scene::role::Role;
use crate::scene::sketch::{Sketch, width_em};

/// A thing to lay beside a gap.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Thing {
    /// A sheet of ordinary paper, from its edge.
    #[default]
    Paper,
    /// A human hair, cut across.
    Hair,
    /// A grain of fine sand.
    Sand,
    /// A thin bristle of a brush, cut across.
    Bristle,
    /// A grain of dust.
    Dust,
}

impl Thing {
    /// Every thing, the usual one first.
    pub const ALL: &'static [Self] =
        &[Self::Paper, Self::Hair, Self::Sand, Self::Bristle, Self::Dust];

    /// Its key on the page.
    pub fn key(self) -> &'static str {
        match self {
            Self::Paper => "paper",
            Self::Hair => "hair",
            Self::Sand => "sand",
            Self::Bristle => "bristle",
            Self::Dust => "dust",
        }
    }

    /// The thing of a key.
    pub fn of_key(key: &str) -> Option<Self> {
        Self::ALL.iter().copied().find(|thing| thing.key() == key)
    }

    /// How thick it is, mm. Paper of 80 g/m2: common practice, no source. A hair: 0.05 to 0.1, from
    /// memory. Fine sand ends at 0.2 (ISO 14688-1, from memory). A thin bristle: common practice, no
    /// source. Dust of ten micrometres is the coarsest that is counted as breathed in (from memory).
    pub fn size_mm(self) -> f64 {
        match self {
            Self::Paper => 0.1,
            Self::Hair => 0.07,
            Self::Sand => 0.2,
            Self::Bristle => 0.08,
            Self::Dust => 0.01,
        }
    }

    /// The id of its name in the glass.
    fn word(self) -> &'static str {
        match self {
            Self::Paper => "draw.paper",
            Self::Hair => "draw.hair",
            Self::Sand => "draw.sand",
            Self::Bristle => "draw.bristle",
            Self::Dust => "draw.dust",
        }
    }

    /// How much the glass shows at least, so that the thing lies in it as a whole, mm.
    pub(super) fn least_glass_mm(self) -> f64 {
        const LEAST_MM: f64 = 0.3;
        /// How many of a round thing lie across the glass.
        const ROUND: f64 = 3.1;
        match self {
            Self::Paper => LEAST_MM,
            _ => LEAST_MM.max(ROUND * self.size_mm()),
        }
    }

    /// Corners of a grain, as shares of its radius; nothing for what is round.
    fn corners(self) -> &'static [f64] {
        match self {
            Self::Sand => &[1.0, 0.88, 0.97, 0.84, 0.95, 1.0, 0.86, 0.93, 0.98],
            Self::Dust => &[1.0, 0.8, 0.96, 0.78, 0.9, 1.0, 0.82],
            Self::Paper | Self::Hair | Self::Bristle => &[],
        }
    }
}

impl Frame {
    /// The thing at the scale of the gap, on bare ground beside the metal.
    pub(super) fn draw_thing(&self, sketch: &mut Sketch, lens: &Lens) {
        self.clear_ground(sketch);
        match lens.thing {
            Thing::Paper => self.draw_paper(sketch, lens),
            round => self.draw_round(sketch, lens, round),
        }
    }

    /// From the middle of the gap along the faces and across them.
    fn corner(&self, along: f64, across: f64) -> Point {
        self.centre + along * self.aside() + across * self.out
    }

    fn band(&self, sketch: &mut Sketch, half: f64, (id, role): (Id, Role)) {
        let (near, far) = (BARE * self.radius, 1.1 * self.radius);
        let ends = [(near, -half), (near, half), (far, half), (far, -half)];
        let corners = ends.map(|(along, across)| self.corner(along, across));
        sketch.polygon(id, Layer::Metal, role, &corners);
    }

    /// Takes the metal off the ground where the thing lies.
    fn clear_ground(&self, sketch: &mut Sketch) {
        self.band(sketch, 1.1 * self.radius, (Id::Mark("lens"), Role::Patch));
        let edge = [-self.radius, self.radius].map(|v| self.corner(BARE * self.radius, v));
        sketch.line(Id::Mark("lens"), Layer::Metal, Role::Dimension, edge[0], edge[1]);
    }

    /// A sheet of paper seen from its edge, in the same direction as the gap and centred on it. Its
    /// arrows keep off it: paper stays white where ink is white too.
    fn draw_paper(&self, sketch: &mut Sketch, lens: &Lens) {
        /// From where the bare ground begins to the arrows and the name, as shares of the radius.
        const ARROWS: f64 = 0.2;
        const INSIDE: f64 = 0.48;
        let id = Id::Mark("paper");
        let (along, across) = (self.aside(), self.out);
        let half = 0.5 * self.scale * lens.thing.size_mm();
        self.band(sketch, half, (id, Role::Paper));
        let middle = (BARE + ARROWS) * self.radius;
        for side in [-1.0, 1.0] {
            let tip = self.corner(middle, side * half);
            let tail = tip + side * OUTSIDE_EM * across;
            sketch.line(id, Layer::Dimensions, Role::Dimension, tail, tip);
            sketch.arrow(id, Layer::Dimensions, tip, -side * across);
        }
        let word = lens.thing.word();
        let width = width_em(lens.lexicon.word(word), Size::Small);
        if 2.0 * half > width + NAME_EM {
            let at = self.corner((BARE + INSIDE) * self.radius, 0.0);
            self.write(sketch, lens, (id, word), at, Point::ZERO);
        } else {
            let way = if across.x + across.y < 0.0 { -1.0 } else { 1.0 };
            let beyond = self.corner(middle, way * (half + OUTSIDE_EM + NAME_EM));
            let grows = if self.upright() { way * across } else { along };
            let at = self.within(beyond + 0.5 * width * grows, width);
            self.write(sketch, lens, (id, word), at, Point::ZERO);
        }
    }

    /// Something round or a grain: its name inside where it has room, else to its right or under it.
    fn draw_round(&self, sketch: &mut Sketch, lens: &Lens, thing: Thing) {
        /// Where it lies along the faces, and how far to the side of the gap it makes room for its
        /// name, as shares of the radius.
        const ALONG: f64 = 0.6;
        const SIDEWAYS: f64 = 0.32;
        let id = Id::Mark(thing.key());
        let radius = 0.5 * self.scale * thing.size_mm();
        let letters = lens.lexicon.word(thing.word());
        let width = width_em(letters, Size::Small);
        let inside = 2.0 * radius > width + NAME_EM;
        let way = if self.out.x + self.out.y < 0.0 { -1.0 } else { 1.0 };
        let sideways = if inside { 0.0 } else { -way * SIDEWAYS };
        let centre = self.corner(ALONG * self.radius, sideways * self.radius);
        draw_grain(sketch, id, thing, Circle { centre, radius });
        let right = Point::new(radius + 0.5 * NAME_EM + 0.5 * width, 0.0);
        let at = match (inside, self.upright()) {
            (true, _) => centre,
            (false, true) => centre + right,
            (false, false) => centre + Point::new(0.0, radius + NAME_EM),
        };
        self.write(sketch, lens, (id, thing.word()), at, Point::ZERO);
    }
}

fn draw_grain(sketch: &mut Sketch, id: Id, thing: Thing, round: Circle) {
    let shares = thing.corners();
    if shares.is_empty() {
        return sketch.circle(id, Layer::Metal, Role::Paper, round);
    }
    let step_rad = core::f64::consts::TAU / shares.len() as f64;
    let corner = |(i, share): (u32, &f64)| {
        let (sin, cos) = libm::sincos(step_rad * f64::from(i));
        round.centre + share * round.radius * Point::new(cos, sin)
    };
    let corners: Vec<Point> = (0..).zip(shares).map(corner).collect();
    sketch.polygon(id, Layer::Metal, Role::Paper, &corners);
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_thing_is_found_by_its_key_and_a_grain_fills_the_circle_of_its_size() {
        for &thing in Thing::ALL {
            assert_eq!(Thing::of_key(thing.key()), Some(thing));
            let largest = thing.corners().iter().copied().fold(0.0, f64::max);
            assert!(thing.corners().is_empty() || (largest - 1.0).abs() < f64::EPSILON);
            assert!(thing.size_mm() < thing.least_glass_mm());
        }
        assert_eq!(Thing::of_key("elephant"), None);
    }
}
