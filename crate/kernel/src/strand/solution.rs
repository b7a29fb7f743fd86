//! What a solved strand tells.

use super::Strand;
use super::joint::Met;
use crate::contact::Kind;
use crate::plane::{Placement, Point};

/// How a solve ended.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Outcome {
    /// The strand is in balance.
    Solved,
    /// Springy joints within the free offset: the pins bear the tension and no more, and of the many
    /// poses that do so the one without yaw is told.
    Free,
    /// No pose keeps every gap: the offset is too large.
    NoPose,
    /// The rounds did not settle.
    Stalled,
}

/// The thrust line: the line of action of the force that the strand carries.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Thrust {
    /// Where it crosses the first pin's axis, mm across.
    pub at_start_mm: f64,
    /// Its slope, mm across per mm along.
    pub slope: f64,
}

impl Thrust {
    /// How far across the line passes from a point, mm; positive when it passes on the far side. The
    /// tension, which is the force along the strand, times this is the moment at a joint's centre.
    pub fn eccentricity_mm(&self, at: Point) -> f64 {
        self.at_start_mm + self.slope * at.x - at.y
    }
}

/// A solved strand, by joint from the driver's end.
#[derive(Debug, Clone, PartialEq)]
pub struct Solution {
    /// How the solve ended; without a pose the rest tells the last one that there was.
    pub outcome: Outcome,
    /// The offset that was reached, mm.
    pub offset_mm: f64,
    /// Rounds of linearisation.
    pub rounds: u32,
    /// Yaw of each joint, rad, anticlockwise, its springy part included.
    pub turn_rad: Vec<f64>,
    /// Sum of the pin's contact forces at each joint, N.
    pub pin_force_n: Vec<f64>,
    /// The larger of the two inner plates' shares of it, N; the whole for a bush.
    pub plate_force_n: Vec<f64>,
    /// Sum of the plate faces' contact forces at each joint, N.
    pub face_force_n: Vec<f64>,
    /// Sum of face force times the distance of its edge from the pin's axis, N mm.
    pub face_moment_n_mm: Vec<f64>,
    /// Moment of the pin's contact forces about the joint's centre, N mm, on the link after it.
    pub pin_moment_n_mm: Vec<f64>,
    /// The same about the bore's own centre: what a springy joint's yaw e is bent by, `-K e`.
    pub bore_moment_n_mm: Vec<f64>,
    /// The total moment about the joint's centre, N mm, on the link after it.
    pub moment_n_mm: Vec<f64>,
    /// The force of each joint's contacts on the link after it, N: along, across.
    pub force_n: Vec<Point>,
    /// The joints' centres, mm: the pins'.
    pub joint: Vec<Point>,
    /// The thrust line.
    pub thrust: Thrust,
    /// The smallest exact gap, mm.
    pub worst_gap_mm: f64,
}

/// What the contacts of one joint do to the link after it.
#[derive(Debug, Clone, Copy, Default)]
struct Load {
    force: Point,
    moment_n_mm: f64,
    pin_moment_n_mm: f64,
    bore_moment_n_mm: f64,
    pin_n: f64,
    plate_n: [f64; 2],
    face_n: f64,
    face_moment_n_mm: f64,
}

impl Solution {
    /// Reads a strand's present pose and its pushes, spread over all faces that meet; `way` is -1 for an offset to the near side, of which
    /// the solved strand is the mirror image.
    pub(super) fn read(strand: &mut Strand, outcome: Outcome, rounds: u32, way: f64) -> Self {
        let pushes = strand.solver.spread(&strand.problem).to_vec();
        let (strand, loads) = (&*strand, loads(strand, &pushes));
        let per = |of: &dyn Fn(&Load) -> f64| loads.iter().map(of).collect::<Vec<_>>();
        let joint: Vec<_> = (0..loads.len()).map(|joint| centre(strand, joint)).collect();
        let turn = |pair: &[super::link::Link]| way * (pair[1].yaw_rad() - pair[0].yaw_rad());
        let thrust = thrust(&loads, &joint);
        Self {
            outcome,
            offset_mm: way * strand.offset_mm,
            rounds,
            turn_rad: strand.links.windows(2).map(turn).collect(),
            pin_force_n: per(&|load| load.pin_n),
            plate_force_n: per(&|load| harder(strand, load)),
            face_force_n: per(&|load| load.face_n),
            face_moment_n_mm: per(&|load| load.face_moment_n_mm),
            pin_moment_n_mm: per(&|load| way * load.pin_moment_n_mm),
            bore_moment_n_mm: per(&|load| way * load.bore_moment_n_mm),
            moment_n_mm: per(&|load| way * load.moment_n_mm),
            force_n: loads
                .iter()
                .map(|load| Point::new(load.force.x, way * load.force.y))
                .collect(),
            joint: joint.iter().map(|at| Point::new(at.x, way * at.y)).collect(),
            thrust: Thrust { at_start_mm: way * thrust.at_start_mm, slope: way * thrust.slope },
            worst_gap_mm: worst_gap_mm(strand),
        }
    }
}

/// Where a link of a strand stands; the origin of an inner link is its first bore's centre, that of an
/// outer one its first pin's, and that of link 0 its only pin's.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LinkPose {
    /// Its far and its near plate, which slide apart in a collared inner link.
    pub plate: [Placement; 2],
    /// The springy part of the yaw at the joint before the link, rad.
    pub spring_rad: f64,
}

impl Strand {
    /// A joint's links as its faces meet.
    pub(super) fn met(&self, joint: usize) -> Met<'_> {
        let [before, after] = [joint, joint + 1].map(|link| &self.links[link]);
        Met::of(before, after, joint.is_multiple_of(2), self.sizes.pitch_mm)
    }

    /// Where the links stand, from link 0 on, after the last solve; with an offset to the near side,
    /// the mirror image of what was told.
    pub fn links(&self) -> Vec<LinkPose> {
        let pose = |link: &super::link::Link| LinkPose {
            plate: [link.plate(0), link.plate(1)],
            spring_rad: link.sprung().yaw_rad,
        };
        self.links.iter().map(pose).collect()
    }
}

/// The load of the harder of two inner plates; with a bush, of the whole.
fn harder(strand: &Strand, load: &Load) -> f64 {
    match strand.sizes.construction {
        crate::chain::Construction::Bushed => load.pin_n,
        crate::chain::Construction::Collared => load.plate_n[0].max(load.plate_n[1]),
    }
}

/// The centre of a joint's pin, mm.
fn centre(strand: &Strand, joint: usize) -> Point {
    let (before, after) = (&strand.links[joint], &strand.links[joint + 1]);
    if joint % 2 == 1 {
        after.plate(0).origin()
    } else if joint == 0 {
        before.plate(0).origin()
    } else {
        before.plate(0).outward(Point::new(strand.sizes.pitch_mm, 0.0))
    }
}

/// Sums the pushes of every row by joint.
fn loads(strand: &Strand, pushes: &[f64]) -> Vec<Load> {
    let mut loads = vec![Load::default(); strand.setup.joints];
    for (&(joint, facing), push) in strand.rows.iter().zip(pushes) {
        let push_n = push * strand.setup.tension_n;
        if push_n == 0.0 {
            continue;
        }
        let facing = &strand.facings[joint % 2][facing];
        let met = strand.met(joint);
        let (at, normal) = facing.bearing(&met);
        let way = if facing.pushes_after() { 1.0 } else { -1.0 };
        let force = normal * (way * push_n);
        let moment = (at - centre(strand, joint)).perp_dot(force);
        let load = &mut loads[joint];
        load.force += force;
        load.moment_n_mm += moment;
        if facing.contact().kind == Kind::PinBore {
            load.pin_n += push_n;
            load.pin_moment_n_mm += moment;
            load.bore_moment_n_mm += (at - facing.bore(&met)).perp_dot(force);
            load.plate_n[facing.plate()] += push_n;
        } else {
            load.face_n += push_n;
            load.face_moment_n_mm += push_n * facing.arm_mm;
        }
    }
    loads
}

/// The line about which the force through the first joint has no moment.
fn thrust(loads: &[Load], joint: &[Point]) -> Thrust {
    let (Some(load), Some(at)) = (loads.first(), joint.first()) else { return Thrust::default() };
    if load.force.x == 0.0 {
        return Thrust::default();
    }
    let slope = load.force.y / load.force.x;
    let through = at.y - load.moment_n_mm / load.force.x;
    Thrust { at_start_mm: through - slope * at.x, slope }
}

fn worst_gap_mm(strand: &Strand) -> f64 {
    let gap = |&(joint, facing): &(usize, usize)| {
        strand.facings[joint % 2][facing].gap_mm(&strand.met(joint))
    };
    strand.rows.iter().map(gap).fold(f64::INFINITY, f64::min)
}
