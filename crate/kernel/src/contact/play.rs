//! How far one joint can give: the exact limits, from the sizes alone.
//!
//! Joint pose (x, y, yaw): the bore centre of the inner link in the axes of the pin, x along the
//! chain towards the inner link's own far pin. With W the length of the cylinder that bears on the
//! pin, r the rounding of its mouths, g a plate's reach past the pin (less its chamfer):
//!
//! - pin in bore, at any y: |x| <= ((d3 + 2r) cos yaw - W sin|yaw| - (d2 + 2r)) / 2;
//! - inner plate's corner on the outer plate: |y - gi sin yaw| <= b3/2 - (b2/2) cos yaw;
//! - outer plate's corner on the inner plate, in the inner plate's axes:
//!   (b3/2 -+ y) cos yaw - (go - x) sin yaw >= b2/2.
//!
//! A collared chain is taken with both its inner plates at spacing b2 and one common yaw, each free
//! along x. Source: derived from the shapes of the parts; the small-angle forms c/W and
//! a/(gi + go) are its checks.

use crate::chain::{Construction, Sizes, WornBore};
use crate::solve::{RootStatus, root_between};

/// Which pair of faces stops a movement.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Limiter {
    /// The pin in its bore; also when pin and face stop it together.
    Pin,
    /// The faces of inner and outer plate.
    Face,
}

impl Limiter {
    /// The word of a report.
    pub fn key(self) -> &'static str {
        match self {
            Self::Pin => "pin",
            Self::Face => "face",
        }
    }
}

/// A limit and what makes it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Limit {
    /// The largest angle either way, rad.
    pub angle_rad: f64,
    /// What stops it there.
    pub by: Limiter,
}

impl Limit {
    /// The smaller of the two; a tie is the pin's.
    fn of(pin_rad: f64, face_rad: f64) -> Self {
        if face_rad < pin_rad {
            Self { angle_rad: face_rad, by: Limiter::Face }
        } else {
            Self { angle_rad: pin_rad, by: Limiter::Pin }
        }
    }
}

/// How far a joint and a pitch can give.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Play {
    /// The inner link against one held outer link.
    pub yaw: Limit,
    /// The inner link against a held outer link without turning, mm each way: a/2.
    pub offset_mm: f64,
    /// The next outer link against the held one, across a free inner link.
    pub turn: Limit,
    /// The inner link between two outer links that are held parallel.
    pub shear: Limit,
    /// The inner link about the chain's own axis.
    pub twist: Limit,
    /// Bow of a free strand one metre long, laid flat on its side, without its lateral play, mm.
    pub side_bow_mm_per_m: f64,
    /// At the turn's stop and centred across: the gap left on each side between the plates, mm.
    pub face_left_mm: f64,
    /// At the turn's stop and centred along: the gap left on each side of the pin, mm.
    pub pin_left_mm: f64,
}

impl Play {
    /// The limits of a chain that goes together, as its joints have worn.
    pub fn of(sizes: &Sizes) -> Self {
        Self::worn(sizes, &sizes.worn)
    }

    /// The limits of such a chain whose joints have worn on their loaded sides.
    ///
    /// Wear is seen in the plan section, which cuts along the load; a twist tilts the pin across it,
    /// where the clearance is that of a new joint.
    pub fn worn(sizes: &Sizes, worn: &WornBore) -> Self {
        const METRE_MM: f64 = 1000.0;
        let plan = &worn.plan_sizes(sizes);
        let whole = Bearing::whole(plan).shifted(worn);
        let one = Bearing::one(plan).shifted(worn);
        let turn = Limit::of(whole.tilt_rad(), whole.face_rad());
        let lean = Limit::of(one.tilt_rad(), one.face_rad());
        let twist = Limit::of(Bearing::one(sizes).tilt_rad(), twist_face_rad(sizes));
        let at_stop = turn.angle_rad;
        Self {
            yaw: lean,
            offset_mm: 0.5 * sizes.side_gap_mm(),
            turn: Limit { angle_rad: 2.0 * at_stop, by: turn.by },
            shear: lean,
            twist,
            side_bow_mm_per_m: METRE_MM * METRE_MM * at_stop / (8.0 * sizes.pitch_mm),
            face_left_mm: (0.5 * whole.face_room_mm(at_stop)).max(0.0),
            pin_left_mm: whole.reach_mm(at_stop).max(0.0),
        }
    }
}

/// The cylinder that bears on a pin: the whole link's bore, or one collar's.
#[derive(Debug, Clone, Copy)]
pub(super) struct Bearing<'a> {
    sizes: &'a Sizes,
    /// Its effective length, mm.
    length_mm: f64,
    /// Its middle, mm from the chain's middle: zero for a whole link.
    middle_mm: f64,
    /// How far wear has moved the middle of its clearance along the load, mm.
    shift_mm: f64,
}

impl<'a> Bearing<'a> {
    /// Both ends of the inner link as one: a bush, or two collars that must tilt together because
    /// the next outer link tilts with them.
    pub(super) fn whole(sizes: &'a Sizes) -> Self {
        Self { sizes, length_mm: sizes.bearing_width_mm(), middle_mm: 0.0, shift_mm: 0.0 }
    }

    /// The cylinder that holds an inner plate by itself: the bush, or the plate's own collar.
    pub(super) fn one(sizes: &'a Sizes) -> Self {
        let length_mm = sizes.effective_length_mm();
        let middle_mm = match sizes.construction {
            Construction::Bushed => 0.0,
            Construction::Collared => 0.5 * (sizes.inner_link_width_mm() - sizes.bearing_length_mm),
        };
        Self { sizes, length_mm, middle_mm, shift_mm: 0.0 }
    }

    /// The same bearing of a worn joint, `sizes` being its plan section's.
    pub(super) fn shifted(self, worn: &WornBore) -> Self {
        Self { shift_mm: worn.shift_mm(), ..self }
    }

    /// The exact tilt at which the pin stops: 2 atan(c / (W + sqrt(W^2 + D3^2 - D2^2))), with
    /// D3 = d3 + 2r and D2 = d2 + 2r, rad.
    pub(super) fn tilt_rad(&self) -> f64 {
        let (s, w) = (self.sizes, self.length_mm);
        let bore = s.bore_mm + 2.0 * s.mouth_radius_mm;
        let pin = s.pin_diameter_mm + 2.0 * s.mouth_radius_mm;
        let root = (w * w + (bore - pin) * (bore + pin)).max(0.0).sqrt();
        2.0 * libm::atan(s.pin_clearance_mm() / (w + root))
    }

    /// How far the bore's centre can move along the chain at a yaw, mm either way; negative where
    /// no place is left.
    pub(super) fn reach_mm(&self, yaw_rad: f64) -> f64 {
        let s = self.sizes;
        let (sin, cos) = libm::sincos(yaw_rad.abs());
        let bore = s.bore_mm + 2.0 * s.mouth_radius_mm;
        let pin = s.pin_diameter_mm + 2.0 * s.mouth_radius_mm;
        0.5 * (bore * cos - self.length_mm * sin - pin)
    }

    /// The largest offset across the chain at a yaw, mm, at the best reachable x.
    pub(super) fn offset_high_mm(&self, yaw_rad: f64) -> f64 {
        let s = self.sizes;
        let (sin, cos) = libm::sincos(yaw_rad);
        let (half_outer, half_inner) = (0.5 * s.outer_spacing_mm, 0.5 * s.inner_link_width_mm());
        if yaw_rad < 0.0 {
            return half_outer + s.inner_reach_mm() * sin - half_inner * cos;
        }
        let x = self.reach_mm(yaw_rad).max(0.0) + self.shift_mm + self.middle_mm * sin;
        half_outer - ((s.outer_reach_mm() - x) * sin + half_inner) / cos
    }

    /// The smallest offset across the chain at a yaw, mm: the mirror image of the largest.
    pub(super) fn offset_low_mm(&self, yaw_rad: f64) -> f64 {
        -self.offset_high_mm(-yaw_rad)
    }

    /// Room left across the chain at a yaw, mm in all; negative past the face limit.
    fn face_room_mm(&self, yaw_rad: f64) -> f64 {
        self.offset_high_mm(yaw_rad) - self.offset_low_mm(yaw_rad)
    }

    /// The yaw at which the faces stop, rad.
    fn face_rad(&self) -> f64 {
        const STEEPEST_RAD: f64 = 1.5;
        last_with_room(|yaw_rad| self.face_room_mm(yaw_rad), STEEPEST_RAD)
    }

    /// The limit of this bearing against one held outer link.
    pub(super) fn limit(&self) -> Limit {
        Limit::of(self.tilt_rad(), self.face_rad())
    }
}

/// The twist at which the plates' faces stop, rad. The corner of the lower plate meets the face of
/// the higher one: (b2/2) cos t + (h2/2) sin t = b3/2, or (b3/2) cos t - (h3/2) sin t = b2/2.
fn twist_face_rad(s: &Sizes) -> f64 {
    let (b2, b3) = (s.inner_link_width_mm(), s.outer_spacing_mm);
    let h2 = s.inner_plate_height_mm - 2.0 * s.edge_chamfer_mm;
    let h3 = s.outer_plate_height_mm - 2.0 * s.edge_chamfer_mm;
    let room = |t: f64| {
        let (sin, cos) = libm::sincos(t);
        if h2 <= h3 { b3 - b2 * cos - h2 * sin } else { b3 * cos - h3 * sin - b2 }
    };
    // Past its farthest reach the corner comes back: the way is barred before that or never.
    let farthest_rad = if h2 <= h3 { libm::atan2(h2, b2) } else { core::f64::consts::FRAC_PI_2 };
    last_with_room(room, farthest_rad)
}

/// The angle up to `most_rad` at which `room` is used up, rad: zero when there is none to begin with.
fn last_with_room(room: impl Fn(f64) -> f64, most_rad: f64) -> f64 {
    const WIDTH_RAD: f64 = 1e-16;
    if room(0.0) <= 0.0 {
        return 0.0;
    }
    let root = root_between(room, 0.0, most_rad, WIDTH_RAD);
    if root.status == RootStatus::NotBracketed { most_rad } else { root.at }
}

#[cfg(test)]
pub(super) mod tests {
    use super::*;
    use crate::chain::Dimension;

    /// The pin and bore of the worked figures in the derivation: d2 3.6, d3 3.63, B 5.
    pub(in crate::contact) fn worked(mouth_mm: f64) -> Sizes {
        let stated = [
            (Dimension::Pitch, 12.7),
            (Dimension::RollerDiameter, 7.75),
            (Dimension::InnerWidth, 3.0 + 2.0 * mouth_mm),
            (Dimension::InnerPlate, 1.0),
            (Dimension::PinDiameter, 3.6),
            (Dimension::Bore, 3.63),
            (Dimension::MouthRadius, mouth_mm),
        ];
        Sizes::from_stated(Construction::Bushed, &stated)
    }

    #[test]
    fn the_pin_tilts_as_far_as_the_two_closed_forms_say() {
        // Derived by hand; the second form is the first with r = 0, written with arc cosines.
        assert!((Bearing::one(&worked(0.0)).tilt_rad() - 5.98702e-3).abs() < 5e-9);
        assert!((Bearing::one(&worked(0.5)).tilt_rad() - 5.98346e-3).abs() < 5e-9);
        let (d2, d3, b) = (3.6_f64, 3.63_f64, 5.0_f64);
        let other = libm::acos(d2 / (d3 * d3 + b * b).sqrt()) - libm::atan(b / d3);
        assert!((Bearing::one(&worked(0.0)).tilt_rad() - other.abs()).abs() < 1e-12);
    }

    #[test]
    fn the_faces_stop_where_the_exact_form_says() {
        // b2 5, a 0.4, g 4.2 at x 0: 47.60965 mrad, derived by hand. A pin of no play keeps x at 0.
        let mut s = worked(0.0);
        (s.inner_overhang_mm, s.outer_overhang_mm, s.outer_spacing_mm) = (4.2, 4.2, 5.4);
        s.bore_mm = s.pin_diameter_mm;
        assert!((Bearing::one(&s).face_rad() - 47.60965e-3).abs() < 5e-9);
    }

    #[test]
    fn no_side_gap_no_shift_and_no_pin_gap_no_turn() {
        let mut s = worked(0.0);
        s.outer_spacing_mm = s.inner_link_width_mm();
        let play = Play::of(&s);
        assert_eq!((play.offset_mm, play.yaw.angle_rad), (0.0, 0.0));
        s.outer_spacing_mm += 3.0;
        s.bore_mm = s.pin_diameter_mm;
        let play = Play::of(&s);
        assert_eq!((play.turn.angle_rad, play.turn.by), (0.0, Limiter::Pin));
    }

    #[test]
    fn a_chain_wider_than_high_is_stopped_by_its_faces_too() {
        let mut s = worked(0.0);
        s.inner_width_mm = 20.0;
        s.outer_spacing_mm = s.inner_link_width_mm() + 0.1;
        (s.inner_plate_height_mm, s.outer_plate_height_mm) = (9.0, 9.0);
        let t = twist_face_rad(&s);
        assert!((t - 0.1 / 9.0).abs() < 3.0 * t * t, "{t}");
    }

    #[test]
    fn the_twist_limit_is_exact_for_either_plate_being_the_lower() {
        let mut s = worked(0.0);
        for (h2, h3) in [(11.0, 9.0), (9.0, 11.0)] {
            (s.inner_plate_height_mm, s.outer_plate_height_mm) = (h2, h3);
            let t = twist_face_rad(&s);
            let (a, low) = (s.side_gap_mm(), 9.0);
            // Small angle: a / min(h2, h3); the next order is a few t^2.
            assert!((t - a / low).abs() < 2.0 * t * t, "{t} {}", a / low);
        }
    }
}
