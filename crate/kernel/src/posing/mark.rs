//! Which contacts touch, which of those rub, and in which order they are told.

use crate::contact::{Contact, Elevation, End, Kind, Meeting, Pose, Settler, Side, SideGap};
use crate::plane::{Point, put_in_order, quarter_turn};

/// A gap up to this counts as touching, mm: a hundred times the overlap a settled pose may have, and
/// a ten thousandth of the smallest gap a chain has.
pub(super) const TOUCH_MM: f64 = 1e-7;
/// Two touching faces rub when they slide by more than this share of the largest movement of the pose.
const RUB_SHARE: f64 = 1e-3;
/// How far back along a movement the sliding is read.
const LITTLE_SHARE: f64 = 0.02;

/// The state of a contact.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Mark {
    /// The faces touch and slide over each other.
    Rubbing,
    /// The faces touch.
    Touching,
    /// The faces are apart.
    Open,
}

impl Mark {
    /// The word of the page.
    pub fn key(self) -> &'static str {
        match self {
            Self::Rubbing => "rubbing",
            Self::Touching => "touching",
            Self::Open => "open",
        }
    }
}

/// In which section a contact is seen.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Seen {
    /// The plan section.
    Plan,
    /// From the side.
    Elevation,
    /// The end section.
    End,
}

impl Seen {
    /// The key of the section.
    pub fn key(self) -> &'static str {
        match self {
            Self::Plan => "plan",
            Self::Elevation => "elevation",
            Self::End => "end",
        }
    }
}

/// One contact as it stands.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ContactState {
    /// Which.
    pub contact: Contact,
    /// In which section.
    pub seen: Seen,
    /// The true gap, mm.
    pub gap_mm: f64,
    /// Touching, rubbing or open.
    pub mark: Mark,
    /// Its number, from 1, when it touches.
    pub number: Option<u32>,
    /// Where it lies on the face, in the true section, mm.
    pub at: Point,
    /// Where it lies on the face, in the drawn section, mm.
    pub drawn_at: Point,
    /// Out of the face's metal, in the drawn section.
    pub drawn_normal: Point,
    /// How hard it pushes the inner link under a load, N, in the true section.
    pub push_n: Point,
}

/// Two true poses, one a little before the other.
pub(super) struct Moved {
    pub before: Pose,
    pub now: Pose,
}

impl Moved {
    /// Whether two faces that touch now rub: they touched before, and have slid since. Faces that
    /// only meet at the end of a movement do not rub.
    fn rubs(&self, meeting: &Meeting) -> bool {
        meeting.gap_mm(&self.before) <= TOUCH_MM
            && self.slide_mm(meeting) > RUB_SHARE * self.largest_mm()
    }

    /// How far the two faces slide over each other between the poses, mm.
    fn slide_mm(&self, meeting: &Meeting) -> f64 {
        let place = meeting.place_on_face(&self.now);
        let path = |body| {
            let inside = self.now.of(body).inward(place);
            place - self.before.of(body).outward(inside)
        };
        let normal = self.now.of(meeting.face_body).direction(meeting.normal);
        (path(meeting.corner_body) - path(meeting.face_body)).dot(quarter_turn(normal)).abs()
    }

    /// The largest movement of any body, mm, its yaw taken over ten millimetres.
    fn largest_mm(&self) -> f64 {
        const ARM_MM: f64 = 10.0;
        let of = |(a, b): (&crate::plane::Placement, &crate::plane::Placement)| {
            (a.x_mm - b.x_mm)
                .abs()
                .max((a.y_mm - b.y_mm).abs())
                .max(ARM_MM * (a.yaw_rad - b.yaw_rad).abs())
        };
        self.now.0.iter().zip(&self.before.0).map(of).fold(0.0, f64::max)
    }
}

/// A share a little nearer to the straight chain, or a little off it.
pub(super) fn a_little_before(share: f64) -> f64 {
    if share == 0.0 { LITTLE_SHARE } else { share * (1.0 - LITTLE_SHARE) }
}

/// Every contact, those that touch first and numbered. The plan section comes with its gaps where they
/// are not those of its pose, mm; `end` is given when the end section moves;
/// `drawn` are the drawn plan and end sections; `bends` tells whether the pins turn in their bores.
pub(super) fn states(
    (plan, gaps_mm): (&Settler, Option<&[f64]>),
    end: Option<&Settler>,
    elevation: &Elevation,
    drawn: [&Settler; 2],
    moved: Option<&Moved>,
    bends: bool,
) -> Vec<ContactState> {
    let rubs = |meeting: &Meeting| moved.is_some_and(|moved| moved.rubs(meeting));
    let mut all: Vec<ContactState> =
        seen_in((plan, gaps_mm.unwrap_or(plan.gaps_mm())), drawn[0], Seen::Plan, rubs).collect();
    if let Some(end) = end {
        all.extend(seen_in((end, end.gaps_mm()), drawn[1], Seen::End, |_| false));
    }
    if bends {
        all.extend(elevation.gaps.iter().map(seen_from_the_side));
    }
    put_in_order(&mut all, &mut |a, b| order(a) < order(b));
    let touching = all.iter_mut().filter(|state| state.mark != Mark::Open);
    for (number, state) in (1..).zip(touching) {
        state.number = Some(number);
    }
    all
}

/// Touching first; then by section, joint and kind; far before near, right before left.
fn order(state: &ContactState) -> impl Ord + use<> {
    let Contact { kind, joint, end, side, inner } = state.contact;
    let end = [End::Far, End::Near, End::Whole].iter().position(|&e| e == end);
    let side = [Side::Right, Side::Left, Side::Above, Side::Below].iter().position(|&s| s == side);
    (state.mark == Mark::Open, state.seen, joint, kind, end, side, inner)
}

/// The contacts of one section.
fn seen_in<'a>(
    (truth, gaps_mm): (&'a Settler, &'a [f64]),
    drawn: &'a Settler,
    seen: Seen,
    rubs: impl Fn(&Meeting) -> bool + 'a,
) -> impl Iterator<Item = ContactState> + 'a {
    let meetings = truth.meetings().iter().zip(gaps_mm).zip(drawn.meetings());
    meetings.map(move |((meeting, &gap_mm), drawn_meeting)| {
        let mark = match gap_mm <= TOUCH_MM {
            false => Mark::Open,
            true if rubs(meeting) => Mark::Rubbing,
            true => Mark::Touching,
        };
        let drawn_pose = drawn.pose();
        ContactState {
            contact: meeting.contact,
            seen,
            gap_mm: gap_mm.max(0.0),
            mark,
            number: None,
            at: meeting.place_on_face(truth.pose()),
            drawn_at: drawn_meeting.place_on_face(drawn_pose),
            drawn_normal: drawn_pose.of(drawn_meeting.face_body).direction(drawn_meeting.normal),
            push_n: Point::ZERO,
        }
    })
}

/// A contact from the side; while a joint bends its pin turns in its bore, so it rubs. The second
/// joint and the rollers go along without turning.
fn seen_from_the_side(gap: &SideGap) -> ContactState {
    let turns =
        gap.contact.kind == Kind::PinBore && gap.contact.joint == crate::contact::Joint::First;
    let mark = match gap.gap_mm <= TOUCH_MM {
        false => Mark::Open,
        true if turns => Mark::Rubbing,
        true => Mark::Touching,
    };
    ContactState {
        contact: gap.contact,
        seen: Seen::Elevation,
        gap_mm: gap.gap_mm,
        mark,
        number: None,
        at: gap.at,
        drawn_at: gap.at,
        drawn_normal: Point::ZERO,
        push_n: Point::ZERO,
    }
}
