//! The limits of one pitch against a general-purpose simplex solver (microlp): the gaps, linear in
//! small movements, are its constraints, and it knows nothing else.
//!
//! First as the limits are defined: rollers left out, the inner plates at their nominal distance
//! with one yaw, each free along the chain. Then with every part as a body of its own.

#[path = "../properties/chains.rs"]
mod chains;

use chains::fixed;
use lightgap::chain::{Chain, Construction, Sizes};
use lightgap::contact::{Body, Joint, Kind, Meeting, Play, Pose, meetings};
use lightgap::table::PUBLISHED;
use lightgap_tests::scenarios;
use microlp::{ComparisonOp, OptimizationDirection, Problem};
use proptest::prelude::*;

/// Agreement with the simplex solver, whose own tolerance is 1e-8 of gaps scaled to 1, as a share.
const AGREE: f64 = 1e-6;

const X: usize = 0;
const Y: usize = 1;
const YAW: usize = 2;

/// What one unknown moves: numbers of bodies' placements.
type Moves = Vec<(Body, usize)>;

/// Which parts are bodies.
#[derive(Debug, Clone, Copy, PartialEq)]
enum Parts {
    /// No rollers; both plates share y and yaw.
    AsDefined,
    /// Every part.
    All,
}

fn inner(construction: Construction, parts: Parts) -> Vec<Moves> {
    use Body::{InnerFar as F, InnerNear as N};
    let together = |axis| vec![(F, axis), (N, axis)];
    match (construction, parts) {
        (Construction::Bushed, _) => vec![together(X), together(Y), together(YAW)],
        (Construction::Collared, Parts::AsDefined) => {
            vec![vec![(F, X)], vec![(N, X)], together(Y), together(YAW)]
        }
        (Construction::Collared, Parts::All) => [F, N].into_iter().flat_map(single).collect(),
    }
}

fn single(body: Body) -> [Moves; 3] {
    [X, Y, YAW].map(|axis| vec![(body, axis)])
}

/// Unknowns of a whole pitch, the next outer link without those in `still`.
fn pitch(construction: Construction, parts: Parts, still: &[usize]) -> Vec<Moves> {
    let mut unknowns = inner(construction, parts);
    let next = single(Body::NextOuter).into_iter().enumerate();
    unknowns.extend(next.filter(|(axis, _)| !still.contains(axis)).map(|(_, moves)| moves));
    if parts == Parts::All {
        unknowns.extend([Body::FirstRoller, Body::SecondRoller].into_iter().flat_map(single));
    }
    unknowns
}

/// Whether a contact is there.
fn takes_part(meeting: &Meeting, parts: Parts, joints: &[Joint]) -> bool {
    let contact = meeting.contact;
    let own = matches!(contact.kind, Kind::PinBore | Kind::PlateFace);
    joints.contains(&contact.joint) && (own || parts == Parts::All)
}

/// The most of a sum of placements' numbers (mm, or rad) that the linear gaps allow.
fn most(s: &Sizes, unknowns: &[Moves], parts: Parts, joints: &[Joint], goal: &Moves) -> f64 {
    let straight = Pose::straight(s);
    // Lengths in units of the largest clearance, yaws times the pitch.
    let unit_mm = s.side_gap_mm().max(s.pin_clearance_mm()).max(s.roller_clearance_mm());
    let lever_mm = |axis| if axis == YAW { s.pitch_mm } else { 1.0 };
    let mut problem = Problem::new(OptimizationDirection::Maximize);
    let wanted = |moves: &Moves| {
        let parts = moves.iter().filter(|part| goal.contains(part));
        parts.map(|(_, axis)| 1.0 / lever_mm(*axis)).sum::<f64>() / goal.len() as f64
    };
    let free = (f64::NEG_INFINITY, f64::INFINITY);
    let variables: Vec<_> =
        unknowns.iter().map(|moves| problem.add_var(wanted(moves) * s.pitch_mm, free)).collect();
    for meeting in meetings(s).iter().filter(|meeting| takes_part(meeting, parts, joints)) {
        let slope = meeting.slope(&straight);
        let change = |(body, axis): &(Body, usize)| {
            let of = |own: Body, change: [f64; 3]| if own == *body { change[*axis] } else { 0.0 };
            (of(meeting.corner_body, slope.corner) + of(meeting.face_body, slope.face))
                / lever_mm(*axis)
        };
        let row =
            variables.iter().zip(unknowns).map(|(v, moves)| (*v, moves.iter().map(change).sum()));
        let row: Vec<_> = row.filter(|(_, value): &(_, f64)| *value != 0.0).collect();
        problem.add_constraint(&row, ComparisonOp::Ge, -slope.gap_mm / unit_mm);
    }
    let solved = problem.solve().expect("a bounded problem").into_solution().expect("an optimum");
    solved.objective() * unit_mm / s.pitch_mm
}

/// The four limits that the simplex solver finds: yaw, shear, turn, and offset over two joints.
#[derive(Debug)]
struct Limits {
    yaw_rad: f64,
    shear_rad: f64,
    turn_rad: f64,
    offset_mm: f64,
}

fn limits(s: &Sizes, parts: Parts) -> Limits {
    let c = s.construction;
    let inner_yaw = vec![(Body::InnerFar, YAW), (Body::InnerNear, YAW)];
    let next = |axis| vec![(Body::NextOuter, axis)];
    let both = [Joint::First, Joint::Second];
    // Straight links: no yaw among the unknowns.
    let flat: Vec<Moves> = pitch(c, parts, &[YAW])
        .into_iter()
        .filter(|moves| moves.iter().all(|(_, axis)| *axis != YAW))
        .collect();
    let one = if parts == Parts::All { pitch(c, parts, &[]) } else { inner(c, parts) };
    let joints: &[Joint] = if parts == Parts::All { &both } else { &[Joint::First] };
    Limits {
        yaw_rad: most(s, &one, parts, joints, &inner_yaw),
        shear_rad: most(s, &pitch(c, parts, &[YAW]), parts, &both, &inner_yaw),
        turn_rad: most(s, &pitch(c, parts, &[]), parts, &both, &next(YAW)),
        offset_mm: most(s, &flat, parts, &both, &next(Y)),
    }
}

/// The same limits by the small-angle forms of the model: yaw and shear min(c / le, a / (gi + go)),
/// turn min(2 c / B, 2 a / (gi + go)), offset a for two joints.
fn small_angle(s: &Sizes) -> Limits {
    let (c, a) = (s.pin_clearance_mm(), s.side_gap_mm());
    let reach_mm = s.inner_reach_mm() + s.outer_reach_mm();
    let yaw_rad = (c / s.effective_length_mm()).min(a / reach_mm);
    Limits {
        yaw_rad,
        shear_rad: yaw_rad,
        turn_rad: 2.0 * (c / s.bearing_width_mm()).min(a / reach_mm),
        offset_mm: a,
    }
}

fn agree(got: f64, wanted: f64) -> bool {
    (got - wanted).abs() <= AGREE * wanted
}

/// Whether the exact limits are the simplex solver's to second order: angle squared, with the widest
/// part as its lever, and the pin's own play along the chain.
fn are_near_the_exact_ones(s: &Sizes, got: &Limits) -> bool {
    let play = Play::of(s);
    let wide_mm = s.outer_spacing_mm + s.bore_mm + 2.0 * s.mouth_radius_mm;
    let short_mm = s.effective_length_mm().min(s.inner_reach_mm() + s.outer_reach_mm());
    let near = |exact: f64, linear: f64| {
        let second = linear * (wide_mm * linear + s.pin_clearance_mm()) / short_mm;
        (exact - linear).abs() <= second + AGREE * linear
    };
    near(play.yaw.angle_rad, got.yaw_rad)
        && near(play.shear.angle_rad, got.shear_rad)
        && near(0.5 * play.turn.angle_rad, 0.5 * got.turn_rad)
        && agree(2.0 * play.offset_mm, got.offset_mm)
}

/// Whether the simplex solver's limits are those of the small-angle forms, and near the exact ones.
fn are_those_of_the_model(s: &Sizes) -> bool {
    let (got, wanted) = (limits(s, Parts::AsDefined), small_angle(s));
    agree(got.yaw_rad, wanted.yaw_rad)
        && agree(got.shear_rad, wanted.shear_rad)
        && agree(got.turn_rad, wanted.turn_rad)
        && agree(got.offset_mm, wanted.offset_mm)
        && are_near_the_exact_ones(s, &got)
}

/// How far the two plates of a collared chain can move towards each other: as far as the rollers let
/// them or until their collars meet, whichever is first. A bushed link's plates cannot.
fn plates_give_mm(s: &Sizes) -> f64 {
    let collars_mm = s.inner_link_width_mm() - 2.0 * s.bearing_length_mm;
    match s.construction {
        Construction::Bushed => 0.0,
        Construction::Collared => s.roller_side_clearance_mm().min(collars_mm),
    }
}

/// Whether the limits with every part as a body lie where the model says they may.
fn whole_pitch_stays_within_the_model(s: &Sizes) -> Result<(), String> {
    let (all, defined) = (limits(s, Parts::All), small_angle(s));
    let (c, a) = (s.pin_clearance_mm(), s.side_gap_mm());
    let reach_mm = s.inner_reach_mm() + s.outer_reach_mm();
    let wide_mm = a + plates_give_mm(s);
    let lean_rad = (c / s.effective_length_mm()).min(wide_mm / reach_mm);
    let within = |name: &str, got: f64, low: f64, high: f64| {
        let held = got >= low * (1.0 - AGREE) && got <= high * (1.0 + AGREE);
        if held { Ok(()) } else { Err(format!("{name} {got}, not in {low}..={high}")) }
    };
    let turn_rad = 2.0 * (c / s.bearing_width_mm()).min(wide_mm / reach_mm);
    within("turn", all.turn_rad, defined.turn_rad, turn_rad)?;
    within("offset", all.offset_mm, defined.offset_mm, wide_mm)?;
    // A roller may stop a shear before the plates do, so there is no lower bound but for a bush.
    let least_rad = if s.construction == Construction::Bushed { defined.shear_rad } else { 0.0 };
    within("shear", all.shear_rad, least_rad, lean_rad)?;
    within("yaw", all.yaw_rad, all.shear_rad, lean_rad)
}

proptest! {
    #![proptest_config(fixed())]

    #[test]
    fn the_defined_limits_are_those_of_a_linear_programme(sizes in chains::any()) {
        prop_assert!(
            are_those_of_the_model(&sizes),
            "{:?} {:?}", limits(&sizes, Parts::AsDefined), small_angle(&sizes)
        );
    }

    #[test]
    fn a_whole_pitch_gives_as_much_as_the_model_says(sizes in chains::any()) {
        let verdict = whole_pitch_stays_within_the_model(&sizes);
        prop_assert!(verdict.is_ok(), "{verdict:?}");
    }

    #[test]
    fn a_looser_whole_pitch_never_gives_less(sizes in chains::any(), more in 0.0..0.01_f64) {
        let (s, more_mm) = (&sizes, more * sizes.pitch_mm);
        let looser = [
            Sizes { pin_diameter_mm: s.pin_diameter_mm - more_mm, ..sizes },
            Sizes { outer_spacing_mm: s.outer_spacing_mm + more_mm, ..sizes },
            Sizes { roller_bore_mm: s.roller_bore_mm + more_mm, ..sizes },
            // Plates thinner on the inside: a shorter roller would also bear nearer the middle.
            Sizes {
                inner_width_mm: s.inner_width_mm + more_mm,
                inner_plate_mm: s.inner_plate_mm - 0.5 * more_mm,
                ..sizes
            },
        ];
        let freedom = |s: &Sizes| {
            let all = limits(s, Parts::All);
            [all.yaw_rad, all.shear_rad, all.turn_rad, all.offset_mm]
        };
        let before = freedom(s);
        for looser in &looser {
            for (less, more) in before.into_iter().zip(freedom(looser)) {
                prop_assert!(more >= less * (1.0 - AGREE), "{less} {more}");
            }
        }
    }
}

/// Every published size in both constructions, and every scenario, that goes together.
fn real() -> Vec<(String, Sizes)> {
    let published = PUBLISHED.iter().flat_map(|size| {
        let named =
            |c: &Construction| (format!("{} {}", size.number, c.key()), size.fill(*c).sizes());
        Construction::ALL.iter().map(named)
    });
    let ours = scenarios().into_iter().map(|(id, scenario)| (id, *scenario.chain.chain().sizes()));
    let together = |(_, s): &(String, Sizes)| Chain::new(*s).is_ok_and(|c| c.goes_together());
    published.chain(ours).filter(together).filter(|(_, s)| s.pin_clearance_mm() > 0.0).collect()
}

#[test]
fn real_chains_hold_both() {
    for (name, s) in real() {
        assert!(are_those_of_the_model(&s), "{name} {:?}", limits(&s, Parts::AsDefined));
        let all = limits(&s, Parts::All);
        whole_pitch_stays_within_the_model(&s).unwrap_or_else(|fault| panic!("{name}: {fault}"));
        let play = Play::of(&s);
        println!(
            "{name}: turn {:.5} defined, {:.5} whole pitch; shear {:.5}, {:.5}; two joints {:.4}, {:.4} mm",
            play.turn.angle_rad,
            all.turn_rad,
            play.shear.angle_rad,
            all.shear_rad,
            2.0 * play.offset_mm,
            all.offset_mm
        );
    }
}
