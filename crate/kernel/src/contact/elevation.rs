//! The pitch from the side: links that turn about their pins, pins that lie in their bores.
//!
//! A pin in a bore is a circle in a circle, so it needs no solver: its centre is within c/2 of the
//! bore's, and under a pull it lies at the rim. The first axis is x (along), the second z (up).

use super::name::{Contact, End, Joint, Kind, Side};
use crate::chain::Sizes;
use crate::plane::{Placement, Point, quarter_turn};

/// What the loose parts follow.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Pull {
    /// The links are pulled apart along the chain.
    Taut,
    /// Everything hangs by its own weight.
    Hanging,
}

/// Where everything stands, seen from the side.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Elevation {
    /// The inner link: its first bore's centre and its angle.
    pub inner: Placement,
    /// The next outer link: its pin's centre and its angle.
    pub next: Placement,
    /// The rollers' centres.
    pub rollers: [Point; 2],
    /// The gaps at the touching side and at the side across, of each pin and each roller.
    pub gaps: [SideGap; 8],
}

/// A gap as seen from the side.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SideGap {
    /// Which.
    pub contact: Contact,
    /// Its size, mm.
    pub gap_mm: f64,
    /// Where it is, mm.
    pub at: Point,
}

impl Elevation {
    /// The pose in which the inner link is turned by `inner_rad` about the first pin and the next
    /// outer link by `next_rad`, both against the held outer link, anticlockwise.
    pub fn bent(sizes: &Sizes, inner_rad: f64, next_rad: f64, pull: Pull) -> Self {
        let direction = |angle_rad: f64| Point::new(libm::cos(angle_rad), libm::sin(angle_rad));
        let down = Point::new(0.0, -1.0);
        let (along_inner, along_next) = match pull {
            Pull::Taut => (direction(inner_rad), direction(next_rad)),
            Pull::Hanging => (down, down),
        };
        let slack = 0.5 * sizes.pin_clearance_mm();
        let bore = along_inner * slack;
        let second_bore = bore + direction(inner_rad) * sizes.pitch_mm;
        let pin = second_bore + along_next * slack;
        let drop = down * (0.5 * sizes.roller_clearance_mm());
        let side = Seat { down, along_inner, along_next };
        Self {
            inner: Placement::new(bore.x, bore.y, inner_rad),
            next: Placement::new(pin.x, pin.y, next_rad),
            rollers: [bore + drop, second_bore + drop],
            gaps: side.gaps(sizes, [bore, second_bore], pin),
        }
    }
}

/// Which way each loose part has gone.
struct Seat {
    down: Point,
    along_inner: Point,
    along_next: Point,
}

impl Seat {
    /// The eight gaps: the pin touches where the bore's rim comes to it.
    fn gaps(&self, sizes: &Sizes, bores: [Point; 2], pin: Point) -> [SideGap; 8] {
        let pin_radius = 0.5 * sizes.pin_diameter_mm;
        let barrel_radius = 0.5 * sizes.barrel_mm;
        let pair = |kind, joint, centre: Point, touch: Point, radius: f64, open_mm: f64| {
            let at = |way: Point, gap_mm| SideGap {
                contact: Contact { kind, joint, end: End::Whole, side: side_of(way), inner: false },
                gap_mm,
                at: centre + way * radius,
            };
            [at(touch, 0.0), at(-touch, open_mm)]
        };
        let c = sizes.pin_clearance_mm();
        let rc = sizes.roller_clearance_mm();
        let [a, b] =
            pair(Kind::PinBore, Joint::First, Point::ZERO, -self.along_inner, pin_radius, c);
        let [d, e] = pair(Kind::PinBore, Joint::Second, pin, self.along_next, pin_radius, c);
        let up = -self.down;
        let [f, g] = pair(Kind::RollerBarrel, Joint::First, bores[0], up, barrel_radius, rc);
        let [h, i] = pair(Kind::RollerBarrel, Joint::Second, bores[1], up, barrel_radius, rc);
        [a, b, d, e, f, g, h, i]
    }
}

/// The name of the side that a direction points to.
fn side_of(way: Point) -> Side {
    let across = quarter_turn(way);
    if way.x.abs() >= across.x.abs() {
        if way.x < 0.0 { Side::Left } else { Side::Right }
    } else if way.y < 0.0 {
        Side::Below
    } else {
        Side::Above
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::chain::{Construction, Dimension};

    fn sizes() -> Sizes {
        let stated = [
            (Dimension::Pitch, 12.7),
            (Dimension::RollerDiameter, 7.75),
            (Dimension::InnerWidth, 3.0),
            (Dimension::PinDiameter, 3.6),
        ];
        Sizes::from_stated(Construction::Bushed, &stated)
    }

    #[test]
    fn a_taut_chain_is_longer_by_its_clearances() {
        let s = sizes();
        let pose = Elevation::bent(&s, 0.0, 0.0, Pull::Taut);
        let length_mm = pose.next.origin().length();
        assert!((length_mm - s.pitch_mm - s.pin_clearance_mm()).abs() < 1e-12);
        assert_eq!(pose.gaps[0].contact.side, Side::Left);
        assert_eq!(pose.gaps[2].contact.side, Side::Right);
    }

    #[test]
    fn no_pin_leaves_its_bore_at_any_angle() {
        let s = sizes();
        for i in -20..=20 {
            for pull in [Pull::Taut, Pull::Hanging] {
                let angle = 0.05 * f64::from(i);
                let pose = Elevation::bent(&s, angle, 2.0 * angle, pull);
                let bore = pose.inner.outward(Point::new(s.pitch_mm, 0.0));
                let off_mm = (pose.next.origin() - bore).length();
                assert!(off_mm <= 0.5 * s.pin_clearance_mm() + 1e-12);
                assert!(pose.inner.origin().length() <= 0.5 * s.pin_clearance_mm() + 1e-12);
            }
        }
    }

    #[test]
    fn what_hangs_touches_above() {
        let pose = Elevation::bent(&sizes(), 0.2, 0.2, Pull::Hanging);
        assert_eq!(pose.gaps[0].contact.side, Side::Above);
        assert_eq!(pose.gaps[2].contact.side, Side::Below);
        assert_eq!(pose.gaps[4].contact.side, Side::Above);
    }
}
