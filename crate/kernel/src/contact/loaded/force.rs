//! The contact forces of a loaded pitch, and what they come to on each body.

use super::{Ended, Loaded};
use crate::contact::body::Body;
use crate::contact::name::Contact;
use crate::plane::Point;

/// A push below this share of the load is rounding.
const ROUNDING: f64 = 1e-13;

/// One contact force. The other body is pushed as hard the other way, at the same place.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Force {
    /// The contact's name.
    pub contact: Contact,
    /// The body that is pushed: that of the corner.
    pub on: Body,
    /// The body that pushes: that of the face.
    pub by: Body,
    /// Where, in the plane, mm.
    pub at: Point,
    /// Which way it pushes `on`: a unit vector, square to the face of `by`.
    pub direction: Point,
    /// How hard, N; greater than 0.
    pub size_n: f64,
}

/// A force and a moment about a point.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Wrench {
    /// The force, N.
    pub force_n: Point,
    /// The moment, N mm, anticlockwise.
    pub moment_n_mm: f64,
}

impl Force {
    /// The force on a body: zero unless it is one of the two.
    pub fn on_body_n(&self, body: Body) -> Point {
        let push_n = self.size_n * self.direction;
        if body == self.on {
            push_n
        } else if body == self.by {
            -push_n
        } else {
            Point::ZERO
        }
    }
}

impl Loaded {
    /// The contact forces; none when the pitch did not come to rest. Sums over faces that lie flat on
    /// each other are sure; how such a face's ends share a sum is that of least squares.
    pub fn forces(&self) -> &[Force] {
        &self.forces
    }

    /// What the contacts do to a body: force and moment about the body's own origin. Of a bushed
    /// inner link both plates answer for the whole.
    pub fn pushed(&self, body: Body) -> Wrench {
        let body = body.rigid(self.construction);
        let origin = self.pose.of(body).origin();
        let mut sum = Wrench::default();
        for force in &self.forces {
            let push_n = force.on_body_n(body);
            sum.force_n += push_n;
            sum.moment_n_mm += (force.at - origin).perp_dot(push_n);
        }
        sum
    }

    /// What holds the held link: force and moment at its pin.
    pub fn reaction(&self) -> Wrench {
        let pushed = self.pushed(self.load.against());
        Wrench { force_n: -pushed.force_n, moment_n_mm: -pushed.moment_n_mm }
    }

    pub(super) fn read_forces(&mut self, ended: Ended) {
        self.forces.clear();
        if ended != Ended::AtRest {
            return;
        }
        for i in 0..self.meetings.len() {
            let push = self.pushes[i];
            if push <= ROUNDING {
                continue;
            }
            let meeting = self.sprung(i);
            self.forces.push(Force {
                contact: meeting.contact,
                on: meeting.corner_body.rigid(self.construction),
                by: meeting.face_body.rigid(self.construction),
                at: meeting.place_on_face(&self.pose),
                direction: self.pose.of(meeting.face_body).direction(meeting.normal),
                size_n: push * self.size_n,
            });
        }
    }
}
