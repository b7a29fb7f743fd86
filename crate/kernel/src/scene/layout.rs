//! Where the sections and their words lie on the sheet.
//!
//! The plan section stands on top; the view from the side hangs under it on the same x axis; the
//! section across stands beside that on the same height, where there is room, or in its place when
//! a twist is shown. One scale serves all sections that share an axis.

use super::drawing::Show;
use super::extent::Extent;
use super::sheet::{Placed, Sheet, View};
use crate::chain::Chain;
use crate::plane::Point;
use crate::posing::Mode;

/// Height of a row of words, em.
pub const ROW_EM: f64 = 1.5;
/// Room at the sheet's edge, em.
const EDGE_EM: f64 = 0.4;
/// Room for a cut's letter beside the drawing, em.
const LETTER_EM: f64 = 2.1;
/// Room for the wall on the left, em.
const WALL_EM: f64 = 1.4;
/// Room for the total angle on the right, em.
const TOTAL_EM: f64 = 5.6;
/// Room between the sections that stand side by side, em.
const GUTTER_EM: f64 = 1.6;
/// Room for the caption of the section across where it stands beside, em.
const CAPTION_EM: f64 = 14.0;
/// Room above and below the outer links for the ends of break lines, em.
const BREAK_EM: f64 = 0.95;
/// Room above and below the pin for the marks of a cut across, em.
const CUT_EM: f64 = 2.2;
/// Room for the grip over the section across, em.
const GRIP_ROOM_EM: f64 = 3.9;
/// Share of the height that the plan takes when the section across stands under it.
const PLAN_SHARE: f64 = 0.45;
/// How many times the plan's scale the section across may have where it stands alone.
const LARGEST_ALONE: f64 = 2.2;
/// A scale below this is not drawn, em per mm.
const LEAST_SCALE: f64 = 0.05;

/// The places of one drawing.
#[derive(Debug, Clone, PartialEq)]
pub struct Layout {
    /// The sheet.
    pub sheet: Sheet,
    /// What is shown.
    pub show: Show,
    /// The sections that are drawn, the plan first.
    views: Vec<Placed>,
    /// The baseline of the names of parts, em.
    pub names_em: f64,
    /// The baseline of the caption of each section, in the order of `views`, and its left end, em.
    pub captions: Vec<Point>,
    /// The right end of the scale bar, em.
    pub bar: Point,
    /// The left and right end of what is drawn in the plan section, mm.
    pub reach_mm: (f64, f64),
}

/// Where the plan and the section under it stand, em.
struct Stack {
    /// The first pin, from the left.
    x: f64,
    /// The plan's scale, and that of the section under it.
    scale: f64,
    under_scale: f64,
    /// Room above and below the plan for the marks of a cut across.
    cuts: f64,
    /// Room above the lower section for its grip.
    grip: f64,
    /// Height that nothing needs.
    spare: f64,
}

/// The section under the plan.
#[derive(Clone, Copy)]
struct Under {
    view: View,
    low: f64,
    high: f64,
}

impl Layout {
    /// Lays out a drawn chain.
    pub(super) fn new(chain: &Chain, sheet: Sheet, show: Show) -> Self {
        let extent = Extent::of(chain, show);
        let side = Under { view: View::Elevation, low: extent.side.0, high: extent.side.1 };
        let across = Under { view: View::End, low: extent.across.y, high: extent.across.y };
        let usual = Self::with(&extent, side, sheet, show);
        if show.mode == Mode::Twist && usual.view(View::End).is_none() {
            Self::with(&extent, across, sheet, show)
        } else {
            usual
        }
    }

    fn with(extent: &Extent, under: Under, sheet: Sheet, show: Show) -> Self {
        let (letter, total, rows) = margins(sheet);
        let alone = under.view == View::End;
        let twisted = show.mode == Mode::Twist;
        let grip_beside = |beside: bool| {
            if twisted && (alone || beside) { GRIP_ROOM_EM } else { 0.0 }
        };
        let space = Point::new(sheet.width_em - 2.0 * letter - total - WALL_EM, sheet.height_em);
        let length = extent.right - extent.left;
        let fit = |cuts: f64, grip: f64| {
            let height = (space.y - rows - 2.0 * cuts - grip).max(0.0);
            let high = 2.0 * extent.plan + if alone { 0.0 } else { under.low + under.high };
            let share = if alone { PLAN_SHARE } else { 1.0 };
            (share * height / high).min(space.x / length).max(LEAST_SCALE)
        };
        let needed = |scale: f64| (2.0 * (scale * extent.across.x + GUTTER_EM)).max(CAPTION_EM);
        let stands_beside =
            |scale: f64| !sheet.narrow && !alone && space.x - scale * length > needed(scale);
        let loose = fit(0.0, grip_beside(alone));
        let beside = stands_beside(loose);
        let grip = grip_beside(beside);
        let for_cuts = if alone || beside { CUT_EM } else { 0.0 };
        let pads = [(for_cuts, extent.half_pin), (BREAK_EM, extent.link)];
        let pad = |(em, half): (f64, f64)| (em - loose * (extent.plan - half)).max(0.0);
        let cuts = pads.map(pad).into_iter().fold(0.0, f64::max);
        let scale = fit(cuts, grip);
        let left_over = space.y - rows - 2.0 * (cuts + scale * extent.plan) - grip;
        let under_scale = if alone {
            let wide = (sheet.width_em - 4.0 * GUTTER_EM) / (2.0 * extent.across.x);
            wide.min(left_over / (2.0 * extent.across.y))
                .min(LARGEST_ALONE * scale)
                .max(LEAST_SCALE)
        } else {
            scale
        };
        let spare = left_over - under_scale * (under.low + under.high);
        let room = space.x - scale * length - if beside { needed(scale) } else { 0.0 };
        let origin_x = letter + WALL_EM + 0.5 * room.max(0.0) - scale * extent.left;
        let mut layout = Self {
            sheet,
            show,
            views: Vec::new(),
            names_em: 0.0,
            captions: Vec::new(),
            bar: Point::new(sheet.width_em - EDGE_EM, 0.0),
            reach_mm: (extent.left, extent.right),
        };
        let stack = Stack { x: origin_x, scale, under_scale, cuts, grip, spare: spare.max(0.0) };
        layout.stack(extent, under, &stack);
        if beside {
            let left = origin_x + scale * extent.right + total + GUTTER_EM;
            let half = 0.5 * needed(scale) - GUTTER_EM;
            layout.stand_beside(extent, left + half, scale, grip);
        }
        layout
    }

    /// The plan, the names, and the section under it.
    fn stack(&mut self, extent: &Extent, under: Under, stack: &Stack) {
        /// Shares of spare height above the plan and between the sections.
        const ABOVE: f64 = 0.3;
        const BETWEEN: f64 = 0.35;
        let Stack { x, scale, .. } = *stack;
        let caption = EDGE_EM + ABOVE * stack.spare + 0.75 * ROW_EM;
        let top = EDGE_EM + ABOVE * stack.spare + ROW_EM + stack.cuts;
        let bottom = top + 2.0 * scale * extent.plan;
        self.put(View::Plan, Point::new(x, 0.5 * (top + bottom)), scale, (top, bottom));
        self.captions.push(Point::new(EDGE_EM, caption));
        self.names_em = bottom + stack.cuts + 0.8 * ROW_EM;
        let row = self.names_em + BETWEEN * stack.spare;
        let below = row + 1.7 * ROW_EM + stack.grip;
        self.captions.push(Point::new(EDGE_EM, row + 0.8 * ROW_EM));
        self.bar = Point::new(self.sheet.width_em - EDGE_EM, row + 0.8 * ROW_EM);
        let high = stack.under_scale * (under.low + under.high);
        let z = below + stack.under_scale * under.high;
        let middle = match under.view {
            View::End => x + 0.5 * scale * (extent.left + extent.right),
            _ => x,
        };
        let room = (below - stack.grip, below + high + 0.6 * ROW_EM);
        self.put(under.view, Point::new(middle, z), stack.under_scale, room);
    }

    /// The section across, to the right of the view from the side and on its height.
    fn stand_beside(&mut self, extent: &Extent, x: f64, scale: f64, grip: f64) {
        let Some(side) = self.view(View::Elevation) else { return };
        let (z, half) = (side.origin.y, scale * extent.across.y);
        let room = (z - half - grip, z + half);
        self.put(View::End, Point::new(x, z), scale, room);
        let left = x - (scale * extent.across.x).max(0.5 * CAPTION_EM - GUTTER_EM);
        self.captions.push(Point::new(left, room.0 - 0.4 * ROW_EM));
        self.bar.x = left - GUTTER_EM;
        let at = self.views.len() - 1;
        self.views[at].low.x = left;
        for placed in &mut self.views[..at] {
            placed.high.x = placed.high.x.min(left);
        }
    }

    fn put(&mut self, view: View, origin: Point, em_per_mm: f64, (top, bottom): (f64, f64)) {
        let (low, high) = (Point::new(0.0, top), Point::new(self.sheet.width_em, bottom));
        self.views.push(Placed { view, origin, em_per_mm, low, high });
    }

    /// The sections that are drawn.
    pub fn views(&self) -> &[Placed] {
        &self.views
    }

    /// Where a section lies, if it is drawn.
    pub fn view(&self, view: View) -> Option<&Placed> {
        self.views.iter().find(|placed| placed.view == view)
    }

    /// Where the marks of the cuts along the chain stand, left and right of it, em.
    pub fn cuts_em(&self) -> (f64, f64) {
        const LEFT_EM: f64 = 0.6;
        const RIGHT_EM: f64 = 0.5;
        let plan = self.plan();
        let x = |mm: f64| plan.origin.x + plan.em_per_mm * mm;
        (x(self.reach_mm.0) - WALL_EM - LEFT_EM, x(self.reach_mm.1) + self.total_em() + RIGHT_EM)
    }

    /// How far right of the break the arc of the total angle may come, em.
    pub fn total_em(&self) -> f64 {
        const WIDE_EM: f64 = 1.5;
        const NARROW_EM: f64 = 0.2;
        if self.sheet.narrow { NARROW_EM } else { WIDE_EM }
    }

    /// The plan section, which is always drawn.
    pub fn plan(&self) -> &Placed {
        &self.views[0]
    }
}

/// Room beside the drawing for cuts' letters, on its right for the total, and for rows of words, em.
fn margins(sheet: Sheet) -> (f64, f64, f64) {
    /// Rows of words on a narrow and on a wide sheet.
    const ROWS: (f64, f64) = (3.9, 3.9);
    if sheet.narrow {
        (0.7 * LETTER_EM, 0.0, 2.0 * EDGE_EM + ROWS.0 * ROW_EM)
    } else {
        (LETTER_EM, TOTAL_EM, 2.0 * EDGE_EM + ROWS.1 * ROW_EM)
    }
}
