//! A chain made ready to be drawn on a sheet: its sections' places, outlines and section lines, each
//! in the axes of its own body. Made anew when the drawn chain, the sheet or the mode changes; a pose
//! only carries it.

use super::item::Tint;
use super::layout::Layout;
use super::sheet::{Placed, Sheet, View};
use crate::chain::outline::{self, Link, Look, Part, Piece};
use crate::chain::{Chain, Construction, Sizes};
use crate::contact::{Body, Contact, Meeting, meetings};
use crate::plane::{Hatch, Step};
use crate::posing::Mode;

/// One piece of a part in one section, with its section lines.
#[derive(Debug, Clone, PartialEq)]
pub struct Figure {
    /// The section.
    pub view: View,
    /// The rigid body whose axes it is in.
    pub body: Body,
    /// Whose colour.
    pub tint: Tint,
    /// Which part.
    pub part: Part,
    /// How the cut meets it.
    pub look: Look,
    /// Its outline, mm.
    pub outline: Vec<Step>,
    /// How its section lines run; none where it has none.
    pub hatch: Option<Hatch>,
    /// Its section lines, mm.
    pub section: Vec<Step>,
}

/// A chain on a sheet.
#[derive(Debug, Clone, PartialEq)]
pub struct Drawing {
    chain: Chain,
    layout: Layout,
    figures: Vec<Figure>,
    meetings: Vec<Meeting>,
}

/// What is to be shown of a chain.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Show {
    /// The movement.
    pub mode: Mode,
    /// The largest fold of the inner and the next outer link that the movement comes to, rad; room
    /// is kept for it.
    pub most_bend_rad: [f64; 2],
}

impl Drawing {
    /// Lays a drawn chain (its gaps already widened) on a sheet.
    pub fn new(chain: &Chain, sheet: Sheet, show: Show) -> Self {
        Self::after(None, chain, sheet, show)
    }

    /// The same after another drawing, most of whose outlines may be the same: their section lines are kept.
    pub fn after(last: Option<&Self>, chain: &Chain, sheet: Sheet, show: Show) -> Self {
        let layout = Layout::new(chain, sheet, show);
        let known = last.map_or(&[] as &[Figure], |last| &last.figures);
        let mut figures = Vec::new();
        for &Placed { view, em_per_mm, .. } in layout.views() {
            figures.extend(figures_of(chain.sizes(), view, em_per_mm, |body, hatch, outline| {
                let mut known = known.iter().filter(|each| each.view == view && each.body == body);
                let same = |each: &&Figure| each.hatch == Some(*hatch) && each.outline == outline;
                known.find(same).map_or_else(|| hatch.clip(outline), |each| each.section.clone())
            }));
        }
        Self { chain: *chain, layout, figures, meetings: meetings(chain.sizes()) }
    }

    /// The drawn chain.
    pub fn chain(&self) -> &Chain {
        &self.chain
    }

    /// Where everything lies on the sheet.
    pub fn layout(&self) -> &Layout {
        &self.layout
    }

    /// Every piece of every section, back to front.
    pub fn figures(&self) -> &[Figure] {
        &self.figures
    }

    /// The corner and the face of a contact in the plan section.
    pub fn meeting(&self, contact: &Contact) -> Option<&Meeting> {
        self.meetings.iter().find(|meeting| meeting.contact == *contact)
    }
}

/// The bodies of a chain, each with its outline's name and its colour.
fn bodies(construction: Construction) -> Vec<(Body, Link, Tint)> {
    let mut all = vec![
        (Body::HeldOuter, Link::OuterToLeft, Tint::Held),
        (Body::NextOuter, Link::OuterToRight, Tint::Next),
        (Body::FirstRoller, Link::Roller, Tint::Roller),
        (Body::SecondRoller, Link::Roller, Tint::Roller),
    ];
    match construction {
        Construction::Bushed => all.push((Body::InnerFar, Link::Inner, Tint::Inner)),
        Construction::Collared => all.extend([
            (Body::InnerFar, Link::InnerFar, Tint::Inner),
            (Body::InnerNear, Link::InnerNear, Tint::InnerNear),
        ]),
    }
    all
}

/// The figures of one section, back to front; `clip` makes the section lines of a body's outline.
pub(super) fn figures_of(
    sizes: &Sizes,
    view: View,
    em_per_mm: f64,
    clip: impl Fn(Body, &Hatch, &[Step]) -> Vec<Step>,
) -> Vec<Figure> {
    let pieces = |body: Body, link| match view {
        View::Plan => outline::plan(sizes, link),
        View::Elevation if body != Body::InnerNear => outline::elevation(sizes, link),
        View::End if !matches!(body, Body::NextOuter | Body::SecondRoller) => {
            outline::across(sizes, link)
        }
        _ => Vec::new(),
    };
    let mut figures = Vec::new();
    for (body, link, tint) in bodies(sizes.construction) {
        for Piece { part, look, outline } in pieces(body, link) {
            let hatch = (look == Look::Cut).then(|| section_lines(part, tint, em_per_mm));
            let section = hatch.map_or_else(Vec::new, |hatch| clip(body, &hatch, &outline));
            figures.push(Figure { view, body, tint, part, look, outline, hatch, section });
        }
    }
    let mut ordered = Vec::with_capacity(figures.len());
    for wanted in 0..=TOPMOST {
        ordered.extend(figures.extract_if(.., |figure| rank(figure) == wanted));
    }
    ordered
}

/// Direction and pitch of a part's section lines: neighbours differ in both. `em_per_mm` turns the
/// pitch, which is for the eye, into mm.
pub fn section_lines(part: Part, tint: Tint, em_per_mm: f64) -> Hatch {
    const EIGHTH: f64 = core::f64::consts::FRAC_PI_4;
    let (along_rad, pitch_em) = match (part, tint) {
        (Part::OuterPlate, Tint::Next) => (EIGHTH, 0.62),
        (Part::OuterPlate, _) => (EIGHTH, 0.52),
        (Part::Pin, _) => (3.0 * EIGHTH, 0.5),
        (Part::InnerPlate, Tint::InnerNear) => (-0.7 * EIGHTH, 0.5),
        (Part::InnerPlate, _) => (-EIGHTH, 0.5),
        (Part::Bush, _) => (0.7 * EIGHTH, 0.4),
        (Part::Roller, _) => (1.4 * EIGHTH, 0.33),
    };
    Hatch { along_rad, pitch: pitch_em / em_per_mm }
}

/// The rank of what is painted last.
const TOPMOST: u8 = 6;

/// The order of painting, back to front. Seen from the side the outer plates lie behind the inner
/// ones, the roller in front of them with the bush and the pin inside it.
fn rank(figure: &Figure) -> u8 {
    match (figure.part, figure.look) {
        (Part::OuterPlate, _) => 0,
        (Part::InnerPlate, Look::Behind) if is_plate(figure) => 1,
        (Part::Roller, Look::Air) => 2,
        (Part::Roller, _) => 3,
        (Part::InnerPlate, _) => 4,
        (Part::Bush, _) => 5,
        (Part::Pin, _) => TOPMOST,
    }
}

/// Whether an outline is one loop: a plate behind the cut, not the ring of a collar.
fn is_plate(figure: &Figure) -> bool {
    figure.outline.iter().filter(|step| matches!(step, Step::Move(_))).count() == 1
}
