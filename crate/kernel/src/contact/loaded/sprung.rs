//! Gaps at a joint that springs: its pin's contacts turn about the bore's centre.

use super::{Loaded, MOST_UNKNOWNS};
use crate::contact::meeting::Meeting;
use crate::contact::name::{Joint, Kind};
use crate::plane::{Placement, Point, quarter_turn};

impl Loaded {
    /// The joint's centre in the inner link's own axes.
    pub(super) fn centre(&self, joint: Joint) -> Point {
        match joint {
            Joint::First => Point::ZERO,
            Joint::Second => Point::new(self.pitch_mm, 0.0),
        }
    }

    /// Which way the bore turns in the inner link's own axes as the springy yaw grows: back where the
    /// inner link comes after the joint, on where it comes before.
    fn bore_way(joint: Joint) -> f64 {
        match joint {
            Joint::First => -1.0,
            Joint::Second => 1.0,
        }
    }

    /// A meeting with its bore turned by the joint's springy yaw.
    pub(super) fn sprung(&self, i: usize) -> Meeting {
        let mut meeting = self.meetings[i];
        let joint = meeting.contact.joint;
        let spring_rad = self.spring_rad[joint as usize];
        if meeting.contact.kind == Kind::PinBore && spring_rad != 0.0 {
            let centre = self.centre(joint);
            let bore = Placement::new(centre.x, centre.y, Self::bore_way(joint) * spring_rad);
            meeting.corner = bore.outward(meeting.corner - centre);
        }
        meeting
    }

    /// The arm that the springy yaw turns, in the plane, and which way; none where it turns nothing.
    pub(super) fn spring_arm(&self, meeting: &Meeting) -> Option<(usize, Point, f64)> {
        let joint = meeting.contact.joint;
        let at = self.spring_place(joint).filter(|_| meeting.contact.kind == Kind::PinBore)?;
        let inside = meeting.corner - self.centre(joint);
        Some((at, self.pose.of(meeting.corner_body).direction(inside), Self::bore_way(joint)))
    }

    /// A gap about the present pose, as a row over all unknowns and its present size, mm.
    pub(super) fn line(&self, i: usize) -> ([f64; MOST_UNKNOWNS], f64) {
        let meeting = self.sprung(i);
        let slope = meeting.slope(&self.pose);
        let mut line = [0.0; MOST_UNKNOWNS];
        for (body, change) in [(meeting.corner_body, slope.corner), (meeting.face_body, slope.face)]
        {
            let Some(at) = self.place(body) else { continue };
            line[at] += change[0];
            line[at + 1] += change[1];
            line[at + 2] += change[2] / self.pitch_mm;
        }
        if let Some((at, arm, way)) = self.spring_arm(&meeting) {
            let normal = Point::new(slope.corner[0], slope.corner[1]);
            let change = way * normal.dot(quarter_turn(arm)) / self.pitch_mm;
            line[at] = self.spring_scale * change;
        }
        (line, slope.gap_mm)
    }
}
