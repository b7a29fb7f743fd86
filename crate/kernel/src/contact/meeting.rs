//! A corner of one body against a flat face of another, and all those of a pitch.
//!
//! The gap of a corner rounded with radius r is the distance of its centre from the face, less r.
//! It is exact at any rotation of either body. Positive is apart.

use super::body::{Body, Pose};
use super::name::{Contact, End, Joint, Kind, Side};
use crate::chain::{Construction, Sizes, WornBore};
use crate::plane::{Point, quarter_turn};

/// One corner and the face that it can meet. Points are in the axes of their own bodies, mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Meeting {
    /// What it is called.
    pub contact: Contact,
    /// The body with the corner.
    pub corner_body: Body,
    /// The centre of the corner's rounding.
    pub corner: Point,
    /// The radius of the corner's rounding, mm; zero when sharp.
    pub radius_mm: f64,
    /// The body with the face.
    pub face_body: Body,
    /// A point of the face.
    pub face: Point,
    /// The unit vector out of the face's metal.
    pub normal: Point,
}

/// The gap of a meeting at a pose and how it changes as each body moves.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Slope {
    /// The gap, mm.
    pub gap_mm: f64,
    /// Change with the corner body's x, y (mm/mm) and yaw (mm/rad).
    pub corner: [f64; 3],
    /// Change with the face body's x, y (mm/mm) and yaw (mm/rad).
    pub face: [f64; 3],
}

impl Meeting {
    /// The signed gap at a pose, mm.
    pub fn gap_mm(&self, pose: &Pose) -> f64 {
        let face = pose.of(self.face_body);
        let from_face = pose.of(self.corner_body).outward(self.corner) - face.outward(self.face);
        face.direction(self.normal).dot(from_face) - self.radius_mm
    }

    /// The gap and its first derivatives.
    ///
    /// With n the face's normal, C the corner's centre, Q the face's point and O each body's origin,
    /// all in the plane: gap = n.(C - Q) - r; d/d(corner yaw) = n.J(C - O_corner), d/d(face yaw) =
    /// Jn.(C - Q) - n.J(Q - O_face), J a quarter turn.
    pub fn slope(&self, pose: &Pose) -> Slope {
        let (corner_place, face_place) = (pose.of(self.corner_body), pose.of(self.face_body));
        let corner_arm = corner_place.direction(self.corner);
        let face_arm = face_place.direction(self.face);
        let n = face_place.direction(self.normal);
        let from_face = corner_place.origin() + corner_arm - face_place.origin() - face_arm;
        let corner_turn = n.dot(quarter_turn(corner_arm));
        let face_turn = quarter_turn(n).dot(from_face) - n.dot(quarter_turn(face_arm));
        Slope {
            gap_mm: n.dot(from_face) - self.radius_mm,
            corner: [n.x, n.y, corner_turn],
            face: [-n.x, -n.y, face_turn],
        }
    }

    /// The place on the face nearest to the corner, in the plane.
    pub fn place_on_face(&self, pose: &Pose) -> Point {
        let centre = pose.of(self.corner_body).outward(self.corner);
        let n = pose.of(self.face_body).direction(self.normal);
        centre - n * (self.radius_mm + self.gap_mm(pose))
    }
}

/// Every meeting of a pitch, in a fixed order.
pub fn meetings(sizes: &Sizes) -> Vec<Meeting> {
    let mut all = Vec::new();
    for &joint in Joint::ALL {
        for &end in End::ALL {
            for &side in Side::ALONG {
                let place = At { sizes, joint, end, side };
                all.extend(place.pin_bore());
                all.push(place.plate_face());
                all.push(place.roller_plate());
                all.extend(place.roller_barrel());
                all.extend(place.collar_ends());
            }
        }
    }
    all
}

/// One quarter of one joint.
struct At<'a> {
    sizes: &'a Sizes,
    joint: Joint,
    end: End,
    side: Side,
}

impl At<'_> {
    fn contact(&self, kind: Kind, inner: bool) -> Contact {
        Contact { kind, joint: self.joint, end: self.end, side: self.side, inner }
    }

    /// The joint's centre in the inner link's own axes.
    fn centre(&self) -> Point {
        match self.joint {
            Joint::First => Point::ZERO,
            Joint::Second => Point::new(self.sizes.pitch_mm, 0.0),
        }
    }

    /// Along the chain from the joint's centre, towards this side and end.
    fn off_centre(&self, along_mm: f64, across_mm: f64) -> Point {
        Point::new(self.side.sign() * along_mm, self.end.sign() * across_mm)
    }

    /// The rounded mouths of the bore against the side of the pin.
    fn pin_bore(&self) -> impl Iterator<Item = Meeting> {
        let s = self.sizes;
        let r = s.mouth_radius_mm;
        let worn = if self.side == self.joint.loaded() { s.worn } else { WornBore::NONE };
        let (bore_mm, pin_mm) =
            (0.5 * s.bore_mm + worn.bore_mm, 0.5 * s.pin_diameter_mm - worn.pin_mm);
        bore_ends_mm(s).map(move |(inner, across)| {
            let contact = self.contact(Kind::PinBore, inner);
            let normal = Point::new(self.side.sign(), 0.0);
            Meeting {
                contact,
                corner_body: contact.inner_plate(),
                corner: self.centre() + self.off_centre(bore_mm + r, across),
                radius_mm: r,
                face_body: contact.outer(),
                face: normal * pin_mm,
                normal,
            }
        })
    }

    /// Inner plate and outer plate: on the side where the inner plate ends, its corner against the
    /// outer plate; on the side where the outer plate ends, that one's corner against the inner.
    fn plate_face(&self) -> Meeting {
        let s = self.sizes;
        let contact = self.contact(Kind::PlateFace, false);
        let outward = Point::new(0.0, self.end.sign());
        let inner_face = Point::new(0.0, 0.5 * s.inner_link_width_mm() * self.end.sign());
        let outer_face = Point::new(0.0, 0.5 * s.outer_spacing_mm * self.end.sign());
        let inner_ends_here = (self.joint == Joint::First) == (self.side == Side::Left);
        let sideways = |reach_mm: f64| Point::new(self.side.sign() * reach_mm, 0.0);
        if inner_ends_here {
            Meeting {
                contact,
                corner_body: contact.inner_plate(),
                corner: self.centre() + sideways(s.inner_reach_mm()) + inner_face,
                radius_mm: 0.0,
                face_body: contact.outer(),
                face: outer_face,
                normal: -outward,
            }
        } else {
            Meeting {
                contact,
                corner_body: contact.outer(),
                corner: sideways(s.outer_reach_mm()) + outer_face,
                radius_mm: 0.0,
                face_body: contact.inner_plate(),
                face: self.centre() + inner_face,
                normal: outward,
            }
        }
    }

    /// The rim of the roller's end against the inner plate; where the plate is shorter than the
    /// roller, the plate's own corner against the roller's end.
    fn roller_plate(&self) -> Meeting {
        let s = self.sizes;
        let contact = self.contact(Kind::RollerPlate, false);
        let outward = Point::new(0.0, self.end.sign());
        let plate_face = Point::new(0.0, 0.5 * s.inner_width_mm * self.end.sign());
        let roller_face = Point::new(0.0, 0.5 * s.roller_length_mm * self.end.sign());
        let sideways = |mm: f64| Point::new(self.side.sign() * mm, 0.0);
        let rim_mm = 0.5 * s.roller_diameter_mm;
        let plate_ends_here = (self.joint == Joint::First) == (self.side == Side::Left);
        if plate_ends_here && s.inner_reach_mm() < rim_mm {
            Meeting {
                contact,
                corner_body: contact.inner_plate(),
                corner: self.centre() + sideways(s.inner_reach_mm()) + plate_face,
                radius_mm: 0.0,
                face_body: contact.roller(),
                face: roller_face,
                normal: outward,
            }
        } else {
            Meeting {
                contact,
                corner_body: contact.roller(),
                corner: sideways(rim_mm) + roller_face,
                radius_mm: 0.0,
                face_body: contact.inner_plate(),
                face: self.centre() + plate_face,
                normal: -outward,
            }
        }
    }

    /// The ends of the roller's bore against the barrel, and with a collar the collar's inner end
    /// against the roller's bore.
    fn roller_barrel(&self) -> impl Iterator<Item = Meeting> {
        let s = self.sizes;
        let outward = Point::new(self.side.sign(), 0.0);
        let contact = self.contact(Kind::RollerBarrel, false);
        let roller_end = Meeting {
            contact,
            corner_body: contact.roller(),
            corner: self.off_centre(0.5 * s.roller_bore_mm, 0.5 * s.roller_length_mm),
            radius_mm: 0.0,
            face_body: contact.inner_plate(),
            face: self.centre() + outward * (0.5 * s.barrel_mm),
            normal: outward,
        };
        let collar_end = Meeting {
            contact: Contact { inner: true, ..contact },
            corner_body: contact.inner_plate(),
            corner: self.centre() + self.off_centre(0.5 * s.barrel_mm, collar_end_mm(s)),
            radius_mm: 0.0,
            face_body: contact.roller(),
            face: outward * (0.5 * s.roller_bore_mm),
            normal: -outward,
        };
        let collared = s.construction == Construction::Collared;
        [roller_end].into_iter().chain(collared.then_some(collar_end))
    }

    /// The end of this collar, at this side, against the end face of the other plate's collar.
    fn collar_ends(&self) -> Option<Meeting> {
        let s = self.sizes;
        let contact = self.contact(Kind::CollarEnds, false);
        let toward_other = Point::new(0.0, -self.end.sign());
        let other_plate = match self.end {
            End::Far | End::Whole => Body::InnerNear,
            End::Near => Body::InnerFar,
        };
        (s.construction == Construction::Collared).then(|| Meeting {
            contact,
            corner_body: contact.inner_plate(),
            corner: self.centre() + self.off_centre(0.5 * s.barrel_mm, collar_end_mm(s)),
            radius_mm: 0.0,
            face_body: other_plate,
            face: self.centre() + toward_other * collar_end_mm(s),
            normal: -toward_other,
        })
    }
}

/// Ends of the cylinder that bears at one end of the chain, mm from its middle: the mouth, and with
/// a collar (`true`) its inner end.
pub(super) fn bore_ends_mm(s: &Sizes) -> impl Iterator<Item = (bool, f64)> + use<> {
    let r = s.mouth_radius_mm;
    let collared = s.construction == Construction::Collared;
    let mouth =
        if collared { 0.5 * s.inner_link_width_mm() - r } else { 0.5 * s.bearing_length_mm - r };
    let inside = collar_end_mm(s) + r;
    [(false, mouth)].into_iter().chain(collared.then_some((true, inside)))
}

/// Where a collar ends, mm from the chain's middle.
fn collar_end_mm(sizes: &Sizes) -> f64 {
    0.5 * sizes.inner_link_width_mm() - sizes.bearing_length_mm
}
