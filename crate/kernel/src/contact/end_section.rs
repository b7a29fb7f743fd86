//! The inner link and the held outer link in the end section, cut across through the first pin.
//!
//! The same corners against the same faces as in the plan section, seen along the chain: the first
//! axis is y (across), the second z (up), and a body's rotation is its twist about the chain's own
//! axis. Rollers are left out: they turn about the pin anyway and twist with the barrel.

use super::body::{Body, Pose};
use super::meeting::{Meeting, bore_ends_mm};
use super::name::{Contact, End, Joint, Kind, Side};
use super::settle::Settler;
use crate::chain::{Construction, Sizes};
use crate::plane::{Placement, Point};

impl Settler {
    /// The inner link of a chain that goes together, against the held outer link, in the end
    /// section.
    pub fn end_section(sizes: &Sizes) -> Self {
        let mut free = vec![Body::InnerFar];
        let mut loose = vec![(Body::HeldOuter, Body::InnerFar)];
        if sizes.construction == Construction::Collared {
            free.push(Body::InnerNear);
            loose.push((Body::HeldOuter, Body::InnerNear));
        }
        let centred = Pose([Placement::default(); 6]);
        Self::with(sizes, end_meetings(sizes), free, loose, centred)
    }
}

/// Every meeting of the end section, in a fixed order.
fn end_meetings(sizes: &Sizes) -> Vec<Meeting> {
    let mut all = Vec::new();
    for &end in End::ALL {
        for &side in Side::UPRIGHT {
            let contact = |kind, inner| Contact { kind, joint: Joint::First, end, side, inner };
            for (inner, across) in bore_ends_mm(sizes) {
                all.push(pin_bore(sizes, contact(Kind::PinBore, inner), across));
            }
            all.push(plate_face(sizes, contact(Kind::PlateFace, false)));
        }
    }
    all
}

/// A mouth of the bore against the pin, above or below.
fn pin_bore(sizes: &Sizes, contact: Contact, across_mm: f64) -> Meeting {
    let r = sizes.mouth_radius_mm;
    let normal = Point::new(0.0, contact.side.sign());
    Meeting {
        contact,
        corner_body: contact.inner_plate(),
        corner: Point::new(contact.end.sign() * across_mm, 0.0)
            + normal * (0.5 * sizes.bore_mm + r),
        radius_mm: r,
        face_body: contact.outer(),
        face: normal * (0.5 * sizes.pin_diameter_mm),
        normal,
    }
}

/// The edge of the lower of two plates against the face of the higher one.
fn plate_face(sizes: &Sizes, contact: Contact) -> Meeting {
    let s = sizes;
    let outward = Point::new(contact.end.sign(), 0.0);
    let inner_face = outward * (0.5 * s.inner_link_width_mm());
    let outer_face = outward * (0.5 * s.outer_spacing_mm);
    let edge = |height_mm: f64| {
        Point::new(0.0, contact.side.sign() * (0.5 * height_mm - s.edge_chamfer_mm))
    };
    if s.inner_plate_height_mm <= s.outer_plate_height_mm {
        Meeting {
            contact,
            corner_body: contact.inner_plate(),
            corner: inner_face + edge(s.inner_plate_height_mm),
            radius_mm: 0.0,
            face_body: contact.outer(),
            face: outer_face,
            normal: -outward,
        }
    } else {
        Meeting {
            contact,
            corner_body: contact.outer(),
            corner: outer_face + edge(s.outer_plate_height_mm),
            radius_mm: 0.0,
            face_body: contact.inner_plate(),
            face: inner_face,
            normal: outward,
        }
    }
}
