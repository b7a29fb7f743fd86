//! A pitch under load: where the true chain comes to rest, how hard its faces press, and how the drawn
//! chain is led to the same place.

use crate::chain::Sizes;
use crate::contact::loaded::{Ended, Force, Load, Loaded};
use crate::contact::{Along, Body, Joint, Pose, Wish};
use crate::plane::Point;

/// What pulls at the next outer link, at its pin.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Pulls {
    /// Along the chain, N.
    pub tension_n: f64,
    /// Across it, towards the far side, N.
    pub side_n: f64,
    /// Anticlockwise, N mm.
    pub moment_n_mm: f64,
    /// Yaw stiffness of a joint, N mm/rad; none where plates and pins are rigid.
    pub stiffness_n_mm: Option<f64>,
}

impl Pulls {
    /// A share of the load.
    fn share(&self, share: f64) -> Load {
        Load {
            at: Joint::Second,
            tension_n: share * self.tension_n,
            side_n: share * self.side_n,
            moment_n_mm: share * self.moment_n_mm,
        }
    }
}

/// The load of a pitch and what came of it last.
#[derive(Default)]
pub(super) struct Pulled {
    pub pulls: Pulls,
    /// Made when a load is first asked for, anew for another stiffness.
    bench: Option<(Option<f64>, Loaded)>,
    /// How it ended; nothing while no load is asked for.
    pub ended: Option<Ended>,
}

impl Pulled {
    /// These pulls, of which none has been asked for yet.
    pub fn by(pulls: Pulls) -> Self {
        Self { pulls, ..Self::default() }
    }

    /// Brings the true chain to rest under a share of the load; gives its pose.
    pub fn settle(&mut self, sizes: &Sizes, share: f64) -> Pose {
        let stiffness = self.pulls.stiffness_n_mm;
        let known = self.bench.take().filter(|(made_for, _)| *made_for == stiffness);
        let (_, bench) =
            self.bench.insert(known.unwrap_or_else(|| (stiffness, Loaded::new(sizes, stiffness))));
        self.ended = Some(bench.settle(&self.pulls.share(share)).ended);
        *bench.pose()
    }

    /// No load is asked for.
    pub fn rest(&mut self) {
        self.ended = None;
    }

    /// The exact gaps under the load, one a meeting of the plan section, mm: what is springy has given
    /// way in them. Nothing without a load.
    pub fn gaps_mm(&self) -> Option<&[f64]> {
        let (_, bench) = self.bench.as_ref()?;
        self.ended.map(|_| bench.gaps_mm())
    }

    /// The contact forces; none without a load, or where the pitch did not come to rest.
    pub fn forces(&self) -> &[Force] {
        match (&self.bench, self.ended) {
            (Some((_, bench)), Some(Ended::AtRest)) => bench.forces(),
            _ => &[],
        }
    }
}

/// The wishes that lead a chain whose gaps are `factor` times too big to a pose of the true one, its
/// deviations from straight as many times larger; and that pose.
pub(super) fn led(pose: &Pose, (straight, own): (&Pose, &Pose), factor: f64) -> (Vec<Wish>, Pose) {
    let mut wishes = Vec::new();
    let mut rest = *own;
    for &body in Body::ALL.iter().filter(|&&body| body != Body::HeldOuter) {
        let (at, from, to) = (pose.of(body), straight.of(body), own.of(body));
        let x = to.x_mm + factor * (at.x_mm - from.x_mm);
        let y = to.y_mm + factor * (at.y_mm - from.y_mm);
        let yaw = to.yaw_rad + factor * (at.yaw_rad - from.yaw_rad);
        rest.0[body.index()] = crate::plane::Placement::new(x, y, yaw);
        for (along, value) in [(Along::X, x), (Along::Y, y), (Along::Yaw, yaw)] {
            wishes.push(Wish::Coordinate { body, along, value, weight: 1.0 });
        }
    }
    (wishes, rest)
}

/// The push of a force on the inner link, N; of two collars that meet, on the far one.
pub(super) fn push_on_inner_n(force: &Force) -> Point {
    let inner = |body| matches!(body, Body::InnerFar | Body::InnerNear);
    let body = if inner(force.on) && (force.on == Body::InnerFar || !inner(force.by)) {
        force.on
    } else {
        force.by
    };
    force.on_body_n(body)
}
