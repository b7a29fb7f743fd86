//! The faces that can meet at a joint of a strand.

use super::link::{Link, Row, sides};
use crate::chain::Sizes;
use crate::contact::{Body, Contact, Joint, Kind, Meeting, Pose, Slope, meetings};
use crate::plane::{Placement, Point, quarter_turn};

/// A corner and a face at a joint, one of the inner link and one of the outer.
#[derive(Debug, Clone, Copy)]
pub(super) struct Facing {
    pub meeting: Meeting,
    /// Whether the inner link comes after the joint.
    inner_after: bool,
    /// Which plate of the inner link: 0 far, 1 near.
    plate: usize,
    corner_is_inner: bool,
    /// The joint's centre in the inner link's axes.
    centre: Point,
    /// How far from the pin's axis a face's edge bears, mm; zero for the pin.
    pub arm_mm: f64,
}

/// The facings of joints after an outer link, and of joints after an inner one.
pub(super) fn facings(sizes: &Sizes) -> [Vec<Facing>; 2] {
    let of = |joint: Joint| {
        meetings(sizes)
            .into_iter()
            .filter(|m| m.contact.joint == joint)
            .filter(|m| matches!(m.contact.kind, Kind::PinBore | Kind::PlateFace))
            .map(|m| Facing::new(sizes, m))
            .collect()
    };
    [of(Joint::First), of(Joint::Second)]
}

impl Facing {
    fn new(sizes: &Sizes, meeting: Meeting) -> Self {
        let first = meeting.contact.joint == Joint::First;
        let is_inner = |body| matches!(body, Body::InnerFar | Body::InnerNear);
        let corner_is_inner = is_inner(meeting.corner_body);
        let inner_body = if corner_is_inner { meeting.corner_body } else { meeting.face_body };
        let centre = if first { Point::ZERO } else { Point::new(sizes.pitch_mm, 0.0) };
        let arm_mm = match meeting.contact.kind {
            Kind::PinBore => 0.0,
            _ if corner_is_inner => sizes.inner_reach_mm(),
            _ => sizes.outer_reach_mm(),
        };
        let plate = usize::from(inner_body == Body::InnerNear);
        Self { meeting, inner_after: first, plate, corner_is_inner, centre, arm_mm }
    }

    /// The contact's name within its joint.
    pub(super) fn contact(&self) -> Contact {
        self.meeting.contact
    }

    /// Which plate of the inner link it is on.
    pub(super) fn plate(&self) -> usize {
        self.plate
    }

    /// The meeting with the pin's contacts turned back by the joint's springy yaw.
    fn sprung(&self, spring_rad: f64) -> Meeting {
        let mut meeting = self.meeting;
        if meeting.contact.kind == Kind::PinBore && spring_rad != 0.0 {
            let turned =
                Placement::new(self.centre.x, self.centre.y, self.inner_spring(spring_rad));
            meeting.corner = turned.outward(meeting.corner - self.centre);
        }
        meeting
    }

    /// The turn of the bore in the inner link's own axes: the inner link yaws by the spring more than
    /// its bore when it comes after the joint, less when it comes before.
    fn inner_spring(&self, spring_rad: f64) -> f64 {
        if self.inner_after { -spring_rad } else { spring_rad }
    }

    /// The outer link's placement with its origin at this joint's pin.
    fn outer_at_pin(&self, before: &Link, after: &Link, pitch_mm: f64) -> Placement {
        if self.inner_after {
            let outer = before.plate(0);
            if before.unknowns.slide[0].is_none() {
                return outer;
            }
            let pin = outer.outward(Point::new(pitch_mm, 0.0));
            Placement::new(pin.x, pin.y, outer.yaw_rad)
        } else {
            after.plate(0)
        }
    }

    /// The two bodies placed, as a pose of the meeting's own bodies.
    fn pose(&self, before: &Link, after: &Link, pitch_mm: f64) -> Pose {
        let inner = if self.inner_after { after } else { before };
        let outer = self.outer_at_pin(before, after, pitch_mm);
        let mut pose = Pose([Placement::default(); 6]);
        for body in [Body::HeldOuter, Body::NextOuter] {
            pose.0[body.index()] = outer;
        }
        for body in [Body::InnerFar, Body::InnerNear] {
            pose.0[body.index()] = inner.plate(self.plate);
        }
        pose
    }

    /// The exact gap at the links' present places, mm.
    pub(super) fn gap_mm(&self, before: &Link, after: &Link, pitch_mm: f64) -> f64 {
        self.sprung(after.spring_rad).gap_mm(&self.pose(before, after, pitch_mm))
    }

    /// Where on the face it bears, and the face's normal, in the plane.
    pub(super) fn bearing(&self, before: &Link, after: &Link, pitch_mm: f64) -> (Point, Point) {
        let pose = self.pose(before, after, pitch_mm);
        let meeting = self.sprung(after.spring_rad);
        let normal = pose.of(meeting.face_body).direction(meeting.normal);
        (meeting.place_on_face(&pose), normal)
    }

    /// Whether the push on the corner is a push on the link after the joint.
    pub(super) fn pushes_after(&self) -> bool {
        self.corner_is_inner == self.inner_after
    }

    /// The gap and its row about the links' present places; `spring_scale` is springy yaw times pitch
    /// over its unknown.
    pub(super) fn row(
        &self,
        before: &Link,
        after: &Link,
        pitch_mm: f64,
        spring_scale: f64,
    ) -> (Row, f64) {
        let pose = self.pose(before, after, pitch_mm);
        let meeting = self.sprung(after.spring_rad);
        let slope = meeting.slope(&pose);
        let (inner, outer) = sides(&slope, self.corner_is_inner);
        let mut row = Row::at(first_unknown(before, after));
        let (inner_link, outer_link) =
            if self.inner_after { (after, before) } else { (before, after) };
        row.add_plate(inner_link, self.plate, inner, pitch_mm);
        let outer = self.at_own_origin(outer, outer_link, pitch_mm);
        row.add_plate(outer_link, 0, outer, pitch_mm);
        let springs = self.spring_slope(&meeting, &slope, &pose) / pitch_mm;
        row.add(after.unknowns.spring, spring_scale * springs);
        (row, slope.gap_mm)
    }

    /// A change with the outer link's pin at this joint, as a change with the link's own origin.
    fn at_own_origin(&self, change: [f64; 3], outer: &Link, pitch_mm: f64) -> [f64; 3] {
        if !self.inner_after || outer.unknowns.slide[0].is_none() {
            return change;
        }
        let arm = quarter_turn(outer.plate(0).direction(Point::new(pitch_mm, 0.0)));
        [change[0], change[1], change[2] + change[0] * arm.x + change[1] * arm.y]
    }

    /// How the gap changes with the springy yaw, mm/rad.
    fn spring_slope(&self, meeting: &Meeting, slope: &Slope, pose: &Pose) -> f64 {
        if meeting.contact.kind != Kind::PinBore {
            return 0.0;
        }
        let arm = pose.of(meeting.corner_body).direction(meeting.corner - self.centre);
        let turned = quarter_turn(arm);
        let way = self.inner_spring(1.0);
        way * (slope.corner[0] * turned.x + slope.corner[1] * turned.y)
    }
}

/// The first unknown that a joint's rows can touch.
fn first_unknown(before: &Link, after: &Link) -> usize {
    let all = |link: &Link| {
        let u = link.unknowns;
        [u.slide[0], u.slide[1], u.across, u.yaw]
    };
    let of_after = all(after).into_iter().chain([after.unknowns.spring]);
    all(before).into_iter().chain(of_after).flatten().min().unwrap_or(0)
}
