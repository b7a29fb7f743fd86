//! Where the sections and their words lie on the sheet.
//!
//! The plan section stands on top; the view from the side hangs under it on the same x axis; the
//! section across stands beside that on the same height, where there is room, or in its place when
//! a twist is shown. One scale serves all sections that share an axis.

use super::drawing::Show;
use super::sheet::{Placed, Sheet, View};
use crate::chain::outline::{Link, break_mm, head_radius_mm};
use crate::chain::{Chain, Sizes};
use crate::contact::Play;
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

/// How large the sections are, mm.
struct Extent {
    /// Ends of what is drawn along the chain.
    left: f64,
    right: f64,
    /// Half the height of the plan section, and half the length of the pin.
    plan: f64,
    half_pin: f64,
    /// Seen from the side: below and above the axis.
    side: (f64, f64),
    /// Across: half the width and half the height.
    across: Point,
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
        let grip = if alone { GRIP_ROOM_EM } else { 0.0 };
        let space = Point::new(sheet.width_em - 2.0 * letter - total - WALL_EM, sheet.height_em);
        let length = extent.right - extent.left;
        let fit = |cuts: f64| {
            let height = (space.y - rows - 2.0 * cuts - grip).max(0.0);
            let high = 2.0 * extent.plan + if alone { 0.0 } else { under.low + under.high };
            let share = if alone { PLAN_SHARE } else { 1.0 };
            (share * height / high).min(space.x / length).max(LEAST_SCALE)
        };
        let needed = |scale: f64| 2.0 * (scale * extent.across.x + GUTTER_EM);
        let stands_beside =
            |scale: f64| !sheet.narrow && !alone && space.x - scale * length > needed(scale);
        let loose = fit(0.0);
        let cuts = if alone || stands_beside(loose) {
            (CUT_EM - loose * (extent.plan - extent.half_pin)).max(0.0)
        } else {
            0.0
        };
        let scale = fit(cuts);
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
        let beside = stands_beside(scale);
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
            let across = origin_x + scale * extent.right + total + GUTTER_EM;
            layout.stand_beside(extent, across + scale * extent.across.x, scale);
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
    fn stand_beside(&mut self, extent: &Extent, x: f64, scale: f64) {
        let Some(side) = self.view(View::Elevation) else { return };
        let (z, half) = (side.origin.y, scale * extent.across.y);
        self.put(View::End, Point::new(x, z), scale, (z - half, z + half));
        let left = x - scale * extent.across.x;
        self.captions.push(Point::new(left, z - half - 0.4 * ROW_EM));
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

impl Extent {
    fn of(chain: &Chain, show: Show) -> Self {
        let (s, p) = (chain.sizes(), chain.pitch_mm);
        let play = chain.goes_together().then(|| Play::of(s));
        let (turn, twist) =
            play.map_or((0.0, 0.0), |play| (play.turn.angle_rad, play.twist.angle_rad));
        Self {
            left: -break_mm(s, Link::OuterToLeft),
            right: p + break_mm(s, Link::OuterToRight),
            plan: half_plan_mm(s, turn, show.mode),
            half_pin: 0.5 * s.pin_length_mm,
            side: side_mm(s, show.most_bend_rad),
            across: half_across_mm(s, twist),
        }
    }
}

/// How far from the axis the plan section comes at the stop, or with the links pushed aside, mm.
/// A hand may push the link further aside than a turn does; for that half of the way is kept.
fn half_plan_mm(s: &Sizes, turn_rad: f64, mode: Mode) -> f64 {
    /// A little air, as a share of the pitch.
    const AIR: f64 = 0.03;
    let half_pin = 0.5 * s.pin_length_mm;
    let half_link = 0.5 * s.outer_spacing_mm + s.outer_plate_mm;
    let second = s.pitch_mm * libm::sin(0.5 * turn_rad);
    let head = head_radius_mm(s) * libm::sin(turn_rad);
    let turned = (second + break_mm(s, Link::OuterToRight) * libm::sin(turn_rad) + half_link)
        .max(second + half_pin * libm::cos(turn_rad) + head);
    let aside = match mode {
        Mode::Turn | Mode::Lean => 0.5,
        Mode::Aside => 1.0,
        Mode::Twist | Mode::Bend => 0.0,
    };
    let turned = if mode.is_plan() { turned } else { half_pin };
    turned.max(half_pin + aside * s.side_gap_mm().max(0.0)) + AIR * s.pitch_mm
}

/// How far below and above the axis the view from the side comes at the largest fold, mm.
fn side_mm(s: &Sizes, most_bend_rad: [f64; 2]) -> (f64, f64) {
    const AIR: f64 = 0.03;
    let plates = 0.5 * s.inner_plate_height_mm.max(s.outer_plate_height_mm);
    let hang = s.pin_clearance_mm().max(0.0) + s.roller_clearance_mm().max(0.0);
    let half = plates.max(0.5 * (s.roller_diameter_mm + hang));
    let second = s.pitch_mm * libm::sin(most_bend_rad[0]);
    let end = second + break_mm(s, Link::OuterToRight) * libm::sin(most_bend_rad[1]);
    let air = half + AIR * s.pitch_mm;
    (air + (-second).max(-end).max(0.0), air + second.max(end).max(0.0))
}

/// Half the width and half the height of the section across, at the largest twist, mm.
fn half_across_mm(s: &Sizes, twist_rad: f64) -> Point {
    const AIR: f64 = 0.04;
    let (sin, cos) = libm::sincos(twist_rad);
    let (b2, h2) = (0.5 * s.inner_link_width_mm(), 0.5 * s.inner_plate_height_mm);
    let inner = Point::new(b2 * cos + h2 * sin, h2 * cos + b2 * sin);
    let outer = Point::new(0.5 * s.pin_length_mm, 0.5 * s.outer_plate_height_mm);
    inner.max(outer) + Point::splat(AIR * s.pitch_mm)
}
