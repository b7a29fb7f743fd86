//! What a scene is told: a chain on its sheet and, when it goes together, its solved poses.

use super::View;
use super::drawing::Drawing;
use super::item::Id;
use super::lexicon::Lexicon;
use crate::chain::Sizes;
use crate::contact::{Body, Elevation, Pose};
use crate::plane::Placement;
use crate::posing::{ContactState, Mode, Posing};

/// Everything that is drawn. Poses are those of the drawn chain, whose gaps are widened; numbers are
/// those of the true one.
#[derive(Clone, Copy)]
pub struct Staging<'a> {
    /// The drawn chain on its sheet.
    pub drawing: &'a Drawing,
    /// How many times too big its gaps are.
    pub factor: u32,
    /// Which movement is shown.
    pub mode: Mode,
    /// The posed pitch; without it the chain is drawn straight with its overlaps.
    pub posing: Option<&'a Posing>,
    /// What is pointed at.
    pub lit: Option<Id>,
    /// Words and how numbers are written.
    pub lexicon: &'a Lexicon,
}

/// The poses of a staging, one for each section, and its numbers.
pub(super) struct Posed<'a> {
    /// The drawn bodies from above: x along, y across.
    pub plan: Pose,
    /// From the side: x along, z up.
    pub side: Pose,
    /// Across at the first pin: y across, z up.
    pub across: Pose,
    /// Every contact, those that touch first.
    pub contacts: &'a [ContactState],
    /// How far the true chain has come.
    pub moved: Moved,
}

/// How far the true chain has come.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(super) struct Moved {
    /// Yaw of the inner link against the held one, rad.
    pub first_rad: f64,
    /// Yaw of the next outer link against the held one, rad.
    pub total_rad: f64,
    /// Offset of the second pin across the chain, mm.
    pub offset_mm: f64,
    /// Twist of the inner link, rad.
    pub twist_rad: f64,
    /// Fold of the first joint, rad.
    pub fold_rad: f64,
}

impl<'a> Posed<'a> {
    pub fn of(staging: &Staging<'a>) -> Self {
        Self::standing(staging.drawing.chain(), staging.posing, staging.mode)
    }

    /// A drawn chain in its pose; without one, straight.
    pub fn standing(chain: &Sizes, posing: Option<&'a Posing>, mode: Mode) -> Self {
        match posing {
            Some(posing) => Self::settled(posing, mode),
            None => Self::straight(chain),
        }
    }

    fn settled(posing: &'a Posing, mode: Mode) -> Self {
        let poses = (posing.drawn_pose(), posing.drawn_elevation(), posing.drawn_end_pose());
        Self::with(posing, mode, poses)
    }

    /// The true poses, where nothing is widened.
    pub fn truth(posing: &'a Posing, mode: Mode) -> Self {
        Self::with(posing, mode, (posing.pose(), posing.elevation(), posing.end_pose()))
    }

    fn with(posing: &'a Posing, mode: Mode, (plan, side, end): (&Pose, &Elevation, &Pose)) -> Self {
        let plan = *plan;
        let across = if mode == Mode::Twist {
            let mut pose = *end;
            pose.0[Body::FirstRoller.index()] = *pose.of(Body::InnerFar);
            pose
        } else {
            seen_from_end(&plan)
        };
        let moved = Moved {
            first_rad: posing.first_joint().1,
            total_rad: posing.total_yaw_rad(),
            offset_mm: posing.pose().of(Body::NextOuter).y_mm,
            twist_rad: posing.twist_rad(),
            fold_rad: posing.elevation().inner.yaw_rad,
        };
        Self { plan, side: seen_from_side(side), across, contacts: posing.contacts(), moved }
    }

    fn straight(sizes: &Sizes) -> Self {
        let plan = Pose::straight(sizes);
        let across = Pose([Placement::default(); 6]);
        Self { plan, side: plan, across, contacts: &[], moved: Moved::default() }
    }

    /// The poses in a section.
    pub fn of_view(&self, view: View) -> &Pose {
        match view {
            View::Plan => &self.plan,
            View::Elevation => &self.side,
            View::End => &self.across,
        }
    }
}

fn seen_from_side(seen: &Elevation) -> Pose {
    let mut pose = Pose([Placement::default(); 6]);
    pose.0[Body::InnerFar.index()] = seen.inner;
    pose.0[Body::InnerNear.index()] = seen.inner;
    pose.0[Body::NextOuter.index()] = seen.next;
    for (body, at) in [Body::FirstRoller, Body::SecondRoller].into_iter().zip(seen.rollers) {
        pose.0[body.index()] = Placement::new(at.x, at.y, seen.inner.yaw_rad);
    }
    pose
}

/// The bodies across the chain at the first pin of a chain that is not twisted: they stand across as
/// in the plan section.
fn seen_from_end(plan: &Pose) -> Pose {
    let mut pose = Pose([Placement::default(); 6]);
    for body in [Body::InnerFar, Body::InnerNear, Body::FirstRoller] {
        pose.0[body.index()] = Placement::new(plan.of(body).y_mm, 0.0, 0.0);
    }
    pose
}
