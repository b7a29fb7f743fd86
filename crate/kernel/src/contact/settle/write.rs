//! Writing the problem of a round: wishes and looseness as squares, gaps as rows.

use super::{Along, MOST_UNKNOWNS, Settler, Wish};
use crate::contact::body::{Body, Pose};
use crate::contact::meeting::{Meeting, Slope};
use crate::plane::{Point, quarter_turn};

/// Weight of a joint's looseness against a wish of weight 1: small enough to move no wish by a
/// visible amount, large enough to decide where wishes do not.
const REST_WEIGHT: f64 = 1e-4;
/// Weight that lets two collared plates turn together. Without it a plate in compression would
/// buckle to one side or the other, which is as real as it is useless to a hand on the link.
const TOGETHER_WEIGHT: f64 = 0.1;
/// Weight of a held point along the chain: the hand leads across, and pushing a loose chain endwise
/// would fold it.
const ENDWISE_WEIGHT: f64 = 1e-3;

impl Settler {
    /// Weights of a held point along the chain and across it.
    pub(super) const POINT_WEIGHTS: Point = Point::new(ENDWISE_WEIGHT, 1.0);

    /// The place of a body's unknowns, if it is free.
    pub(super) fn place(&self, body: Body) -> Option<usize> {
        let body = body.rigid(self.construction);
        self.free.iter().position(|&free| free == body).map(|i| 3 * i)
    }

    /// The problem about the present pose.
    pub(super) fn write_problem(&mut self, wishes: &[Wish], rest: &Pose) {
        self.write_squares(wishes, rest);
        for i in 0..self.meetings.len() {
            let slope = self.meetings[i].slope(&self.pose);
            let (row, gap) = self.row(&self.meetings[i], &slope);
            let unknowns = self.problem.unknowns();
            self.problem.push_row(0, &row[..unknowns], gap);
        }
    }

    /// The squares of the problem about the present pose, and what they are there.
    pub(super) fn write_squares(&mut self, wishes: &[Wish], rest: &Pose) {
        self.problem.clear();
        self.squares_mm2 = 0.0;
        for wish in wishes {
            self.write_wish(wish);
        }
        for i in 0..self.loose.len() {
            let (one, other) = self.loose[i];
            self.write_looseness(one, other, rest);
        }
        self.write_togetherness();
    }

    /// A wish as squares about the present pose.
    fn write_wish(&mut self, wish: &Wish) {
        match *wish {
            Wish::Coordinate { body, along, value, weight } => {
                let Some(place) = self.place(body) else { return };
                let straight = self.straight.of(body);
                let (i, target) = match along {
                    Along::X => (0, value - straight.x_mm),
                    Along::Y => (1, value - straight.y_mm),
                    Along::Yaw => (2, (value - straight.yaw_rad) * self.pitch_mm),
                };
                let mut form = [0.0; MOST_UNKNOWNS];
                form[place + i] = 1.0;
                self.add_square(&form, target, weight);
            }
            Wish::Point { body, inside, to } => {
                let Some(place) = self.place(body) else { return };
                let now = *self.pose.of(body);
                let arm = quarter_turn(now.direction(inside)) / self.pitch_mm;
                let x = self.deviation(body);
                let miss = self.miss(body, inside, to);
                let weights = Self::POINT_WEIGHTS;
                let axes = [(0, arm.x, miss.x, weights.x), (1, arm.y, miss.y, weights.y)];
                for (axis, arm, miss, weight) in axes {
                    let mut form = [0.0; MOST_UNKNOWNS];
                    form[place + axis] = 1.0;
                    form[place + 2] = arm;
                    self.add_square(&form, miss + x[axis] + arm * x[2], weight);
                }
            }
        }
    }

    /// The weak squares that keep one body where it rests on another: both coordinates of the other
    /// body's origin in the first one's axes, and the yaw between them, to first order.
    fn write_looseness(&mut self, one: Body, other: Body, rest: &Pose) {
        let arm_mm = self.straight.of(other).x_mm - self.straight.of(one).x_mm;
        let of = |pose: &Pose| {
            let (a, b) = (pose.of(one), pose.of(other));
            let (sa, sb) = (self.straight.of(one), self.straight.of(other));
            let turn = a.yaw_rad - sa.yaw_rad;
            [
                b.x_mm - sb.x_mm - (a.x_mm - sa.x_mm),
                b.y_mm - sb.y_mm - (a.y_mm - sa.y_mm) - arm_mm * turn,
                (b.yaw_rad - sb.yaw_rad - turn) * self.pitch_mm,
            ]
        };
        let targets = of(rest);
        let (place, other_place) = (self.place(one), self.place(other));
        for (axis, target) in targets.into_iter().enumerate() {
            let mut form = [0.0; MOST_UNKNOWNS];
            if let Some(at) = other_place {
                form[at + axis] += 1.0;
            }
            if let Some(at) = place {
                form[at + axis] -= 1.0;
                if axis == 1 {
                    form[at + 2] -= arm_mm / self.pitch_mm;
                }
            }
            self.add_square(&form, target, REST_WEIGHT);
        }
    }

    /// The square that turns two collared plates together.
    fn write_togetherness(&mut self) {
        let (far, near) = (self.place(Body::InnerFar), self.place(Body::InnerNear));
        if let (Some(far), Some(near)) = (far, near)
            && far != near
        {
            let mut form = [0.0; MOST_UNKNOWNS];
            (form[far + 2], form[near + 2]) = (1.0, -1.0);
            self.add_square(&form, 0.0, TOGETHER_WEIGHT);
        }
    }

    /// Adds weight/2 (form.x - target)^2 to the objective.
    fn add_square(&mut self, form: &[f64; MOST_UNKNOWNS], target: f64, weight: f64) {
        let mut miss = -target;
        for i in 0..self.problem.unknowns() {
            if form[i] == 0.0 {
                continue;
            }
            miss += form[i] * self.deviation(self.free[i / 3])[i % 3];
            for j in 0..=i {
                *self.problem.hessian_mut(i, j) += weight * form[i] * form[j];
            }
            self.problem.gradient_mut()[i] -= weight * target * form[i];
        }
        self.squares_mm2 += 0.5 * weight * miss * miss;
    }

    /// A meeting as a row over all unknowns, and its gap where every deviation is zero.
    fn row(&self, meeting: &Meeting, slope: &Slope) -> ([f64; MOST_UNKNOWNS], f64) {
        let mut row = [0.0; MOST_UNKNOWNS];
        let mut gap = slope.gap_mm;
        for (body, change) in [(meeting.corner_body, slope.corner), (meeting.face_body, slope.face)]
        {
            let Some(place) = self.place(body) else { continue };
            let x = self.deviation(body);
            let change = [change[0], change[1], change[2] / self.pitch_mm];
            for axis in 0..3 {
                row[place + axis] += change[axis];
                gap -= change[axis] * x[axis];
            }
        }
        (row, gap)
    }
}
