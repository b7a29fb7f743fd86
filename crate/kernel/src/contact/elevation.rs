//! The pitch from the side: links that turn about their pins, pins that lie in their bores.
//!
//! A pin in a bore is a circle in a circle, so it needs no solver: its centre is within c/2 of the
//! bore's, and under a pull it lies at the rim. A worn pin is a round of the same radius on its loaded
//! side, its centre so much deeper in the pin as that has worn, and a worn bore has a groove of that
//! radius: under a pull the one lies in the other, whatever the fold, which is the farthest that the
//! pull can bring them. The first axis is x (along), the second z (up).

use super::name::{Contact, End, Joint, Kind, Side};
use crate::chain::Sizes;
use crate::plane::{Placement, Point, quarter_turn};

/// The gaps seen from the side: of two pins and two rollers, where they touch and across.
const GAPS: usize = 8;

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
    pub gaps: [SideGap; GAPS],
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
        let (groove, round) = match pull {
            Pull::Taut => (slack + sizes.worn.bore_mm, sizes.worn.pin_mm),
            Pull::Hanging => (slack, 0.0),
        };
        let rounds = [Point::new(round, 0.0), along_next * -round];
        let bore = along_inner * groove + rounds[0];
        let second_bore = bore + direction(inner_rad) * sizes.pitch_mm;
        // Past a fold at which the groove is no deeper than the old bore, that holds the pin.
        let in_groove = groove * along_inner.dot(along_next) > slack;
        let held = if in_groove { along_inner * groove } else { along_next * slack };
        let pin = second_bore + held - rounds[1];
        let drop = down * (0.5 * sizes.roller_clearance_mm());
        let side = Seat { down, along_inner, along_next, rounds };
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
    /// From each pin's centre to that of the round on which it bears.
    rounds: [Point; 2],
}

impl Seat {
    /// The gaps: the pin touches where the bore's rim comes to it.
    fn gaps(&self, sizes: &Sizes, bores: [Point; 2], pin: Point) -> [SideGap; GAPS] {
        let [pin_radius, barrel_radius] = [0.5 * sizes.pin_diameter_mm, 0.5 * sizes.barrel_mm];
        let slack = 0.5 * sizes.pin_clearance_mm();
        let pins = [(Point::ZERO, -self.along_inner), (pin, self.along_next)];
        core::array::from_fn(|i| {
            let (second, roller, across) = (i / 2 % 2, i >= GAPS / 2, i % 2 == 1);
            let (bore, round, (pin, toward)) = (bores[second], self.rounds[second], pins[second]);
            let (kind, centre, touch, radius, open_mm) = if roller {
                (Kind::RollerBarrel, bore, -self.down, barrel_radius, sizes.roller_clearance_mm())
            } else {
                let from = if across { pin } else { pin + round };
                (Kind::PinBore, from, toward, pin_radius, slack + pin.distance(bore))
            };
            let (way, gap_mm) = if across { (-touch, open_mm) } else { (touch, 0.0) };
            let (joint, side) = (Joint::ALL[second], side_of(way));
            let contact = Contact { kind, joint, end: End::Whole, side, inner: false };
            SideGap { contact, gap_mm, at: centre + way * radius }
        })
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
    use crate::chain::{Construction, Dimension, WornBore};

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
    fn a_worn_pin_lies_in_its_groove_at_any_fold_and_the_chain_is_longer_by_its_wear() {
        let worn = WornBore { pin_mm: 0.07, bore_mm: 0.05 };
        let s = Sizes { worn, ..sizes() };
        let straight = Elevation::bent(&s, 0.0, 0.0, Pull::Taut);
        let longer_mm = straight.next.origin().length() - s.pitch_mm;
        let [c, w] = [s.pin_clearance_mm(), worn.depth_mm()];
        assert!((longer_mm - (c + 2.0 * w)).abs() < 1e-12);
        assert!((straight.gaps[1].gap_mm - worn.along_mm(&s)).abs() < 1e-12);
        let (pin, bore) = (0.5 * s.pin_diameter_mm, 0.5 * s.bore_mm);
        for i in -20..=20 {
            let (fold, next) = (0.02 * f64::from(i), 0.03 * f64::from(i));
            let pose = Elevation::bent(&s, fold, next, Pull::Taut);
            let groove = |at: Point, way: f64| {
                let off = way * (0.5 * c + worn.bore_mm);
                pose.inner.outward(at - Point::new(off, 0.0))
            };
            // The pin is what two circles share; it is free where the old bore or the groove is.
            let joints = [
                (Point::ZERO, Point::new(worn.pin_mm, 0.0), Point::ZERO, 1.0),
                (
                    pose.next.origin(),
                    pose.next.outward(Point::new(-worn.pin_mm, 0.0)),
                    Point::new(s.pitch_mm, 0.0),
                    -1.0,
                ),
            ];
            for (centre, round, bore_at, way) in joints {
                let (mut tightest, mut deepest) = (f64::MAX, f64::MAX);
                for j in 0..720 {
                    let along = core::f64::consts::PI * f64::from(j) / 360.0;
                    let out = Point::new(libm::cos(along), libm::sin(along)) * pin;
                    let rim = [(centre, round), (round, centre)]
                        .map(|(one, other)| (one + out, (one + out - other).length()));
                    let rim = rim.into_iter().filter(|(_, off)| *off <= pin + 1e-12);
                    for (point, _) in rim {
                        let old = bore - (point - pose.inner.outward(bore_at)).length();
                        let new = pin - (point - groove(bore_at, way)).length();
                        tightest = tightest.min(old.max(new));
                        deepest = deepest.min(new.abs());
                    }
                }
                assert!(tightest > -1e-9, "{fold} {tightest}");
                assert!(deepest < 1e-9, "it bears on the groove: {fold} {deepest}");
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
