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

    /// The meeting with the pin's contacts turned back by the joint's springy yaw: the inner link yaws by
    /// the spring more than its bore when it comes after the joint, less when it comes before.
    fn sprung(&self, spring: &Placement) -> Meeting {
        let mut meeting = self.meeting;
        if meeting.contact.kind == Kind::PinBore && spring.yaw_rad != 0.0 {
            let arm = meeting.corner - self.centre;
            let turned = if self.inner_after { spring.inward(arm) } else { spring.outward(arm) };
            meeting.corner = self.centre + turned;
        }
        meeting
    }

    /// The exact gap as the joint's links stand, mm.
    pub(super) fn gap_mm(&self, met: &Met) -> f64 {
        self.sprung(met.after.sprung()).gap_mm(&met.pose[self.plate])
    }

    /// Where on the face it bears, and the face's normal, in the plane.
    pub(super) fn bearing(&self, met: &Met) -> (Point, Point) {
        let pose = &met.pose[self.plate];
        let meeting = self.sprung(met.after.sprung());
        let normal = pose.of(meeting.face_body).direction(meeting.normal);
        (meeting.place_on_face(pose) + Point::new(met.before.nominal_mm, 0.0), normal)
    }

    /// The centre of the bore that a pin's contact is in, in the plane.
    pub(super) fn bore(&self, met: &Met) -> Point {
        let bore = met.pose[self.plate].of(self.meeting.corner_body).outward(self.centre);
        bore + Point::new(met.before.nominal_mm, 0.0)
    }

    /// Whether the push on the corner is a push on the link after the joint.
    pub(super) fn pushes_after(&self) -> bool {
        self.corner_is_inner == self.inner_after
    }

    /// The gap and its row as the joint's links stand; `spring_scale` is springy yaw times pitch over its
    /// unknown.
    pub(super) fn row(&self, met: &Met, spring_scale: f64) -> (Row, f64) {
        let Met { before, after, pitch_mm, .. } = *met;
        let pose = &met.pose[self.plate];
        let meeting = self.sprung(after.sprung());
        let slope = meeting.slope(pose);
        let (inner, outer) = sides(&slope, self.corner_is_inner);
        let mut row = Row::at(met.first_unknown);
        let (inner_link, outer_link) =
            if self.inner_after { (after, before) } else { (before, after) };
        row.add_plate(inner_link, self.plate, inner, pitch_mm);
        row.add_plate(outer_link, 0, met.at_own_origin(outer), pitch_mm);
        if after.unknowns.spring.is_some() {
            let springs = self.spring_slope(&meeting, &slope, pose) / pitch_mm;
            row.add(after.unknowns.spring, spring_scale * springs);
        }
        (row, slope.gap_mm)
    }

    /// How the gap changes with the springy yaw, mm/rad.
    fn spring_slope(&self, meeting: &Meeting, slope: &Slope, pose: &Pose) -> f64 {
        if meeting.contact.kind != Kind::PinBore {
            return 0.0;
        }
        let arm = pose.of(meeting.corner_body).direction(meeting.corner - self.centre);
        let turned = quarter_turn(arm);
        let way = if self.inner_after { -1.0 } else { 1.0 };
        way * (slope.corner[0] * turned.x + slope.corner[1] * turned.y)
    }
}

/// The two links of a joint as they stand, along the strand from where the one before would be if the
/// strand were straight.
pub(super) struct Met<'a> {
    before: &'a Link,
    after: &'a Link,
    pitch_mm: f64,
    /// From the outer link's own origin to this joint's pin, in the plane, mm.
    pin_arm: Point,
    /// As poses of the meetings' own bodies, by the plate of the inner link.
    pose: [Pose; 2],
    /// The first unknown that the joint's rows can touch.
    first_unknown: usize,
}

impl<'a> Met<'a> {
    /// The links before and after a joint, the inner one after it or before it.
    pub(super) fn of(before: &'a Link, after: &'a Link, inner_after: bool, pitch_mm: f64) -> Self {
        let first = before.unknowns.slide[0].is_none();
        let after_mm = if first { 0.0 } else { pitch_mm };
        let ((inner, inner_mm), (outer, outer_mm)) = if inner_after {
            ((after, after_mm), (before, 0.0))
        } else {
            ((before, 0.0), (after, after_mm))
        };
        let mut outer = outer.plate_at(0, outer_mm);
        let mut pin_arm = Point::ZERO;
        if inner_after && !first {
            pin_arm = outer.direction(Point::new(pitch_mm, 0.0));
            let pin = outer.origin() + pin_arm;
            outer = outer.moved_to(pin.x, pin.y);
        }
        let pose = [0, 1].map(|plate| {
            let mut pose = Pose([outer; 6]);
            for body in [Body::InnerFar, Body::InnerNear] {
                pose.0[body.index()] = inner.plate_at(plate, inner_mm);
            }
            pose
        });
        let first_unknown = first_unknown(before, after);
        Self { before, after, pitch_mm, pin_arm, pose, first_unknown }
    }

    /// A change with the outer link's pin at this joint, as a change with the link's own origin.
    fn at_own_origin(&self, change: [f64; 3]) -> [f64; 3] {
        let arm = quarter_turn(self.pin_arm);
        [change[0], change[1], change[2] + change[0] * arm.x + change[1] * arm.y]
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
