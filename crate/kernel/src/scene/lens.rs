//! A round magnifier: one gap at its true size, beside a sheet of paper at the same scale.

use super::drawing::{Figure, figures_of};
use super::item::{Align, Id, Layer, Size};
use super::mark::{round_centre, view_of};
use super::measure::{OUTSIDE_EM, draw_span};
use super::metal::role_of;
use super::role::Role;
use super::sketch::{Patch, Sketch, width_em};
use super::staging::Posed;
use super::{Circle, Lexicon, Scene, Sheet, View};
use crate::chain::{Construction, Sizes};
use crate::contact::{Contact, Kind};
use crate::plane::{Hatch, Point, Projection, Step, bounds};
use crate::posing::{ContactState, Mode, Posing, Seen};

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
}

/// Thickness of a sheet of ordinary paper, mm (80 g/m2; common practice, no source).
pub const PAPER_MM: f64 = 0.1;
/// From the sheet's edge to the middle of the rim's line, em.
const RIM_EM: f64 = 0.1;

impl Lens<'_> {
    fn radius_em(&self) -> f64 {
        0.5 * self.size_em - RIM_EM
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
        scale: scale_of(glass.radius, state.gap_mm),
        out: Point::new(normal.x, -normal.y),
        bare: bare_side(&state.contact, state.seen),
    };
    frame.draw_gap(sketch, lens, state);
    frame.draw_paper(sketch, lens);
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
    let scale = scale_of(glass.radius, state.gap_mm);
    let to_sheet = over(state, normal_of(lens, state), glass.centre, scale);
    sketch.clip = Some(sketch.scene.clips.len());
    sketch.scene.clips.push(glass);
    sketch.circle(Id::Mark("lens"), Layer::Marks, Role::Patch, glass);
    draw_metal(sketch, lens, view_of(state.seen), &to_sheet);
}

/// How many em one mm takes: four gaps to the width of the glass, but never so much that the paper
/// would fill it.
fn scale_of(radius_em: f64, gap_mm: f64) -> f64 {
    const GAPS: f64 = 4.0;
    const LEAST_MM: f64 = 0.3;
    2.0 * radius_em / (GAPS * gap_mm).max(LEAST_MM)
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
/// the paper. Round parts have no end; there it is below.
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

/// The neighbouring metal that reaches into the glass, with section lines only there.
fn draw_metal(sketch: &mut Sketch, lens: &Lens, view: View, to_sheet: &Projection) {
    let posed = Posed::truth(lens.posing, lens.mode);
    let pose = posed.of_view(view);
    let middle = to_sheet.inverse(sketch.scene.clips[sketch.scene.clips.len() - 1].centre);
    let reach = lens.radius_em() / to_sheet.scale;
    let near = |body, lines: &Hatch, outline: &[Step]| {
        let centre = pose.of(body).inward(middle);
        if comes_near(outline, centre, reach) {
            short(&lines.clip_near(outline, centre, reach), centre, reach)
        } else {
            Vec::new()
        }
    };
    for figure in figures_of(lens.sizes, view, to_sheet.scale, near) {
        let place = pose.of(figure.body);
        if comes_near(&figure.outline, place.inward(middle), reach) {
            draw_figure(sketch, &figure, &to_sheet.of_body(place));
        }
    }
}

fn draw_figure(sketch: &mut Sketch, figure: &Figure, to: &Projection) {
    let id = Id::Body(figure.body);
    sketch.carry((id, Layer::Marks, role_of(figure)), &figure.outline, to);
    if !figure.section.is_empty() {
        let what = (id, Layer::Marks, Role::SectionLine(figure.tint));
        sketch.carry(what, &figure.section, to);
    }
}

fn comes_near(outline: &[Step], centre: Point, reach: f64) -> bool {
    bounds(outline).is_some_and(|(low, high)| centre.clamp(low, high).distance(centre) < reach)
}

/// The stretches of lines that lie within reach of a point.
fn short(lines: &[Step], centre: Point, reach: f64) -> Vec<Step> {
    let mut kept = Vec::with_capacity(lines.len());
    for pair in lines.chunks_exact(2) {
        let (&[Step::Move(a), Step::Line(b)] | &[Step::Line(a), Step::Move(b)]) = pair else {
            continue;
        };
        let way = (b - a).normalize_or_zero();
        let foot = (centre - a).dot(way);
        let from = (foot - reach).max(0.0).min(a.distance(b));
        let to = (foot + reach).max(0.0).min(a.distance(b));
        kept.extend([Step::Move(a + from * way), Step::Line(a + to * way)]);
    }
    kept
}

/// The glass as a place to put things: its middle is the middle of the gap.
struct Frame {
    centre: Point,
    radius: f64,
    scale: f64,
    /// Out of the face's metal, on the sheet.
    out: Point,
    /// Where there is least to see, on the sheet: past the end of the corner's metal.
    bare: Point,
}

impl Frame {
    /// Whether the faces stand upright in the glass, so that the paper goes under them.
    fn upright(&self) -> bool {
        self.out.x.abs() > self.out.y.abs()
    }

    /// Along the faces, towards where the paper is shown.
    fn aside(&self) -> Point {
        let along = self.out.perp();
        if along.dot(self.bare) < 0.0 { -along } else { along }
    }

    /// The dimension line of the gap, and the names of the two parts.
    fn draw_gap(&self, sketch: &mut Sketch, lens: &Lens, state: &ContactState) {
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
    fn write(
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

    /// A sheet of paper seen from its edge, in the same direction as the gap and centred on it, on
    /// bare ground. Its arrows keep off it: paper stays white where ink is white too.
    fn draw_paper(&self, sketch: &mut Sketch, lens: &Lens) {
        let id = Id::Mark("paper");
        /// From where the bare ground begins to the arrows and the name, as shares of the radius.
        const FROM: f64 = BARE;
        const ARROWS: f64 = 0.2;
        const INSIDE: f64 = 0.48;
        let (along, across) = (self.aside(), self.out);
        let corner = |u: f64, v: f64| self.centre + u * along + v * across;
        let band = |half: f64, (id, role), sketch: &mut Sketch| {
            let (near, far) = (FROM * self.radius, 1.1 * self.radius);
            let corners =
                [corner(near, -half), corner(near, half), corner(far, half), corner(far, -half)];
            sketch.polygon(id, Layer::Metal, role, &corners);
        };
        band(1.1 * self.radius, (Id::Mark("lens"), Role::Patch), sketch);
        let edge =
            [corner(FROM * self.radius, -self.radius), corner(FROM * self.radius, self.radius)];
        sketch.line(Id::Mark("lens"), Layer::Metal, Role::Dimension, edge[0], edge[1]);
        let half = 0.5 * self.scale * PAPER_MM;
        band(half, (id, Role::Paper), sketch);
        let middle = (FROM + ARROWS) * self.radius;
        for side in [-1.0, 1.0] {
            let tip = corner(middle, side * half);
            let tail = tip + side * OUTSIDE_EM * across;
            sketch.line(id, Layer::Dimensions, Role::Dimension, tail, tip);
            sketch.arrow(id, Layer::Dimensions, tip, -side * across);
        }
        let width = width_em(lens.lexicon.word("draw.paper"), Size::Small);
        if 2.0 * half > width + NAME_EM {
            let at = corner((FROM + INSIDE) * self.radius, 0.0);
            self.write(sketch, lens, (id, "draw.paper"), at, Point::ZERO);
        } else {
            let way = if across.x + across.y < 0.0 { -1.0 } else { 1.0 };
            let at = corner(middle, way * (half + OUTSIDE_EM + NAME_EM));
            let way = if self.upright() { way * across } else { Point::ZERO };
            let at = if self.upright() { at } else { at + 0.5 * width * along };
            self.write(sketch, lens, (id, "draw.paper"), at, way);
        }
    }
}

/// Where along the faces the bare ground for the paper begins, as a share of the radius.
const BARE: f64 = 0.22;
/// From a face to the name of its part, em.
const NAME_EM: f64 = 0.75;

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
