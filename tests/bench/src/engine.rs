//! A whole pitch beside rapier, a rigid-body engine: one of its steps against all our rounds.
//!
//! The engine steps towards a pose in time and never says when it has come there: its contacts are
//! soft, and what is printed of its answer is how far it stands from the exact pose after
//! [`REST_STEPS`] steps. A step is the least that a picture made with it would take a frame.

use crate::pitches::{timed, to_the_stop};
use crate::work::Work;
use lightgap::chain::Sizes;
use lightgap::chain::outline::{Link, Part, Piece, plan};
use lightgap::contact::{Body, Settler};
use lightgap::plane::{Point, Step};
use rapier2d_f64::prelude::{
    ColliderBuilder, PhysicsWorld, RigidBodyBuilder, RigidBodyHandle, Vector,
};

/// Steps after which it is taken to rest.
const REST_STEPS: usize = 2000;
/// Its answer may be off by this share; it says by how much.
const SOFT: f64 = 0.05;
/// Turning moment on the next link, over the moment of inertia that plates of density 1 give: gentle,
/// so that contacts give little.
const PUSH: f64 = 2e4;
/// Damping, 1/s, that brings the bodies to rest.
const DAMPING: f64 = 5.0;

pub(crate) fn works() -> Vec<Work> {
    // Only a chain with bushes falls into convex pieces.
    let bushed = timed().into_iter().take(1);
    bushed.map(|(id, scenario)| step(id, scenario.chain.chain().sizes())).collect()
}

fn step(id: &str, sizes: &Sizes) -> Work {
    let mut engine = Engine::new(sizes);
    for _ in 0..REST_STEPS {
        engine.step();
    }
    let mut settler = Settler::plan(sizes);
    let (straight, wishes) = (*settler.straight(), to_the_stop(sizes));
    settler.settle(&wishes, &straight);
    let exact_rad = settler.pose().of(Body::NextOuter).yaw_rad;
    let off = engine.turn_rad() / exact_rad - 1.0;
    Work::new(
        &format!("{id} to its stop, exact"),
        SOFT,
        move || engine.step(),
        move || {
            settler.settle(&wishes, &straight);
            settler.pose().of(Body::NextOuter).yaw_rad
        },
    )
    .noted(format!("after {REST_STEPS} steps rapier stands {:.2} % off", 100.0 * off))
}

/// The bodies of a pitch in the engine.
struct Engine {
    world: PhysicsWorld,
    next: RigidBodyHandle,
}

impl Engine {
    fn new(sizes: &Sizes) -> Self {
        let mut world = PhysicsWorld::new();
        world.gravity = Vector::ZERO;
        let second = Point::new(sizes.pitch_mm, 0.0);
        let held = RigidBodyBuilder::fixed();
        put(&mut world, held, plan(sizes, Link::OuterToLeft), sizes, Point::ZERO);
        for (link, at) in
            [(Link::Inner, Point::ZERO), (Link::Roller, Point::ZERO), (Link::Roller, second)]
        {
            put(&mut world, RigidBodyBuilder::dynamic(), plan(sizes, link), sizes, at);
        }
        let free = RigidBodyBuilder::dynamic();
        let next = put(&mut world, free, plan(sizes, Link::OuterToRight), sizes, second);
        world.bodies[next].add_torque(PUSH, true);
        Self { world, next }
    }

    /// One step; how far the next link stands turned.
    fn step(&mut self) -> f64 {
        self.world.step();
        self.turn_rad()
    }

    fn turn_rad(&self) -> f64 {
        self.world.bodies[self.next].rotation().angle()
    }
}

/// Puts a body with the exact outlines of its pieces; the pin without its heads, which meet nothing.
fn put(
    world: &mut PhysicsWorld,
    body: RigidBodyBuilder,
    pieces: Vec<Piece>,
    sizes: &Sizes,
    at: Point,
) -> RigidBodyHandle {
    let body = body.translation(Vector::new(at.x, at.y)).can_sleep(false);
    let handle = world.insert_body(body.linear_damping(DAMPING).angular_damping(DAMPING));
    for piece in pieces {
        let shape = if piece.part == Part::Pin {
            ColliderBuilder::cuboid(0.5 * sizes.pin_diameter_mm, 0.5 * sizes.pin_length_mm)
        } else {
            ColliderBuilder::convex_hull(&corners(&piece.outline)).expect("a convex piece")
        };
        world.insert_collider(shape.friction(0.0).restitution(0.0), Some(handle));
    }
    handle
}

/// The corners of an outline, its arcs in short chords.
fn corners(outline: &[Step]) -> Vec<Vector> {
    const CHORDS: u32 = 16;
    let mut corners = Vec::new();
    for step in outline {
        match step {
            Step::Move(at) | Step::Line(at) => corners.push(*at),
            Step::Arc(arc) => corners.extend((0..=CHORDS).map(|chord| {
                arc.at(arc.start_rad + arc.sweep_rad * f64::from(chord) / f64::from(CHORDS))
            })),
            Step::Close => {}
        }
    }
    corners.into_iter().map(|at| Vector::new(at.x, at.y)).collect()
}
