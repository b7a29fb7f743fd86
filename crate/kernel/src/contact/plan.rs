//! One pitch in the plan section: two links and two rollers that move, one link that is held.

use super::body::{Body, Pose};
use super::meeting::meetings;
use super::settle::Settler;
use crate::chain::{Construction, Sizes};

impl Settler {
    /// The whole pitch of a chain that goes together, in the plan section.
    pub fn plan(sizes: &Sizes) -> Self {
        use Body::{FirstRoller, HeldOuter, InnerFar, InnerNear, NextOuter, SecondRoller};
        let mut free = vec![InnerFar, NextOuter, FirstRoller, SecondRoller];
        let mut loose = vec![
            (HeldOuter, InnerFar),
            (InnerFar, NextOuter),
            (InnerFar, FirstRoller),
            (InnerFar, SecondRoller),
        ];
        if sizes.construction == Construction::Collared {
            free.insert(1, InnerNear);
            loose.extend([
                (HeldOuter, InnerNear),
                (InnerNear, NextOuter),
                (InnerNear, FirstRoller),
                (InnerNear, SecondRoller),
            ]);
        }
        Self::with(sizes, meetings(sizes), free, loose, Pose::straight(sizes))
    }
}
