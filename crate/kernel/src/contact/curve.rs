//! How the slopes of a gap change as the bodies turn.

use super::body::Pose;
use super::meeting::Meeting;
use crate::plane::{Point, quarter_turn};

/// The second derivatives of a gap. Those that are not named are zero: a gap is linear in where
/// bodies are, and bends only as they turn.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Curve {
    /// Twice with the corner body's yaw, mm/rad^2.
    pub corner: f64,
    /// With the corner body's yaw and the face body's, mm/rad^2.
    pub both: f64,
    /// Twice with the face body's yaw, mm/rad^2.
    pub face: f64,
    /// With the face body's yaw and the corner body's x and y, 1/rad; with the face body's own x
    /// and y its negative.
    pub shift: Point,
}

impl Meeting {
    /// The second derivatives of the gap at a pose.
    ///
    /// With n the face's normal, C the arm from the corner body's origin to the corner, O each
    /// body's origin, J a quarter turn: gap = n.(O_corner + C - O_face) - const, so d2/d(corner
    /// yaw)2 = -n.C, d2/d(both yaws) = n.C, d2/d(face yaw)2 = -n.(O_corner + C - O_face),
    /// d2/d(face yaw, O_corner) = Jn.
    pub fn curve(&self, pose: &Pose) -> Curve {
        let (corner_place, face_place) = (pose.of(self.corner_body), pose.of(self.face_body));
        let n = face_place.direction(self.normal);
        let arm = corner_place.direction(self.corner);
        let from_face_body = corner_place.origin() + arm - face_place.origin();
        let lever = n.dot(arm);
        Curve { corner: -lever, both: lever, face: -n.dot(from_face_body), shift: quarter_turn(n) }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::chain::Construction;
    use crate::contact::Body;
    use crate::contact::meeting::meetings;
    use crate::contact::tests::half_inch;

    /// A step whose error, squared, is as small as the rounding it divides.
    const STEP: f64 = 1e-4;
    /// What both leave.
    const AGREE: f64 = 1e-6;

    fn moved(pose: &Pose, body: Body, axis: usize, by: f64) -> Pose {
        let mut pose = *pose;
        let place = &mut pose.0[body.index()];
        match axis {
            0 => place.x_mm += by,
            1 => place.y_mm += by,
            _ => *place = place.turned(by),
        }
        pose
    }

    #[test]
    fn the_curve_of_a_gap_is_the_finite_difference_of_its_slope() {
        let sizes = half_inch(Construction::Collared, 0.4);
        let mut pose = Pose::straight(&sizes);
        for (i, place) in pose.0.iter_mut().enumerate() {
            *place = place.turned(0.03 * (i as f64 - 2.0));
            place.x_mm += 0.01 * i as f64;
            place.y_mm -= 0.02 * i as f64;
        }
        for meeting in meetings(&sizes) {
            let curve = meeting.curve(&pose);
            let (corner, face) = (meeting.corner_body, meeting.face_body);
            let bodies = [corner, face];
            let (u, v) = (curve.shift.x, curve.shift.y);
            // Unknowns: the corner body's x, y, yaw, then the face body's.
            let wanted = [
                [0.0, 0.0, 0.0, 0.0, 0.0, u],
                [0.0, 0.0, 0.0, 0.0, 0.0, v],
                [0.0, 0.0, curve.corner, 0.0, 0.0, curve.both],
                [0.0, 0.0, 0.0, 0.0, 0.0, -u],
                [0.0, 0.0, 0.0, 0.0, 0.0, -v],
                [u, v, curve.both, -u, -v, curve.face],
            ];
            for (k, row) in wanted.iter().enumerate() {
                let [a, b] =
                    [-STEP, STEP].map(|by| meeting.slope(&moved(&pose, bodies[k / 3], k % 3, by)));
                let change = |a: f64, b: f64| (b - a) / (2.0 * STEP);
                for (axis, wanted) in row.iter().enumerate() {
                    let got = match axis {
                        0..3 => change(a.corner[axis], b.corner[axis]),
                        _ => change(a.face[axis - 3], b.face[axis - 3]),
                    };
                    assert!((got - wanted).abs() < AGREE, "{} {k} {axis}", meeting.contact.id());
                }
            }
        }
    }
}
