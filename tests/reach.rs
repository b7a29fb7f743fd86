//! Reach against sampling: lines and disks tried one by one on random sections, with their own
//! geometry and their own dice.

use lightgap::contact::{End, Joint};
use lightgap::plane::Point;
use lightgap::reach::{Face, Gap, Hull, Section, Span, Wall};
use lightgap::report::{ReachSection, Report};
use lightgap_tests::scenarios;
use proptest::test_runner::{Config, RngAlgorithm, TestRng, TestRunner};
use std::collections::VecDeque;

/// Everything lies in this square about the origin.
const ROOM: f64 = 2.0;
/// Where nothing is left.
const FAR: f64 = 4.0;
const DIAMETER: f64 = 0.3;
/// A probe this much thicker leaves sampling enough room to find a way too.
const THICKER: f64 = 1.12;

/// A rectangle: middle, half sizes, turn.
#[derive(Clone, Copy, Debug)]
struct Block {
    middle: Point,
    half: Point,
    turn: f64,
}

impl Block {
    fn axes(&self) -> [Point; 2] {
        let (sin, cos) = self.turn.sin_cos();
        [Point::new(cos, sin), Point::new(-sin, cos)]
    }

    /// How far a point is from the block; 0 inside.
    fn apart(&self, to: Point) -> f64 {
        let [u, v] = self.axes();
        let arm = to - self.middle;
        let past = |along: f64, half: f64| (along.abs() - half).max(0.0);
        Point::new(past(arm.dot(u), self.half.x), past(arm.dot(v), self.half.y)).length()
    }

    fn corners(&self) -> [Point; 4] {
        let [u, v] = self.axes();
        let corner = |a: f64, b: f64| self.middle + a * self.half.x * u + b * self.half.y * v;
        [corner(1.0, 1.0), corner(-1.0, 1.0), corner(-1.0, -1.0), corner(1.0, -1.0)]
    }
}

/// Some blocks by the dice of a seed.
fn blocks(seed: u8, count: usize) -> Vec<Block> {
    let dice = TestRng::from_seed(RngAlgorithm::ChaCha, &[seed; 32]);
    let mut runner = TestRunner::new_with_rng(Config::default(), dice);
    let mut even = |low: f64, high: f64| {
        let word = rand_word(&mut runner);
        low + (high - low) * word
    };
    let block = |_| Block {
        middle: Point::new(even(-1.3, 1.3), even(-1.3, 1.3)),
        half: Point::new(even(0.1, 0.9), even(0.05, 0.2)),
        turn: even(0.0, 3.0),
    };
    (0..count).map(block).collect()
}

/// An even draw from 0 to below 1.
fn rand_word(runner: &mut TestRunner) -> f64 {
    use proptest::strategy::{Strategy, ValueTree};
    (0.0..1.0_f64).new_tree(runner).expect("a number").current()
}

fn section(blocks: &[Block]) -> Section {
    let face = Face { joint: Joint::First, gap: Gap::Side, end: End::Far };
    let mut section = Section::default();
    for block in blocks {
        let corners = block.corners();
        section.hulls.push(Hull::new(corners.to_vec(), 0.0));
        for i in 0..4 {
            let (from, to) = (corners[i], corners[(i + 1) % 4]);
            let normal = (0.5 * (from + to) - block.middle).normalize();
            let along = (to - from).normalize();
            let normal = (normal - normal.dot(along) * along).normalize();
            section.walls.push(Wall { face, from, to, normal });
        }
    }
    section
}

fn apart(blocks: &[Block], to: Point) -> f64 {
    blocks.iter().map(|block| block.apart(to)).fold(f64::INFINITY, f64::min)
}

/// Whether a straight strip with round ends leads from a point to far away, by trying directions.
fn a_line_leads_out(blocks: &[Block], tip: Point, radius: f64) -> bool {
    const DIRECTIONS: u32 = 2000;
    const STEP: f64 = 0.03;
    (0..DIRECTIONS).any(|i| {
        let angle = f64::from(i) / f64::from(DIRECTIONS) * core::f64::consts::TAU;
        let way = Point::new(angle.cos(), angle.sin());
        let steps = (2.0 * FAR / STEP) as u32;
        (0..steps).all(|k| apart(blocks, tip + f64::from(k) * STEP * way) >= radius - 1e-3)
    })
}

/// Where the middle of a disk can be, on a grid, coming from outside.
struct Flood {
    wet: Vec<bool>,
}

impl Flood {
    const ACROSS: usize = 321;
    const CELL: f64 = 2.0 * 3.2 / 320.0;

    fn point(i: usize, j: usize) -> Point {
        Point::new(i as f64, j as f64) * Self::CELL - Point::splat(3.2)
    }

    fn of(blocks: &[Block], radius: f64) -> Self {
        let index = |i: usize, j: usize| i * Self::ACROSS + j;
        let mut wet = vec![false; Self::ACROSS * Self::ACROSS];
        wet[0] = true;
        let mut queue = VecDeque::from([(0_usize, 0_usize)]);
        while let Some((i, j)) = queue.pop_front() {
            let next = [(i + 1, j), (i, j + 1), (i.wrapping_sub(1), j), (i, j.wrapping_sub(1))];
            for (a, b) in next.into_iter().filter(|(a, b)| *a < Self::ACROSS && *b < Self::ACROSS) {
                if !wet[index(a, b)] && apart(blocks, Self::point(a, b)) >= radius {
                    wet[index(a, b)] = true;
                    queue.push_back((a, b));
                }
            }
        }
        Self { wet }
    }

    /// Whether the flood comes within two cells of a point.
    fn reaches(&self, to: Point) -> bool {
        let cell = (to + Point::splat(3.2)) / Self::CELL;
        let near = |i: f64| (i as usize).saturating_sub(1)..=(i as usize + 2).min(Self::ACROSS - 1);
        near(cell.x).any(|i| near(cell.y).any(|j| self.wet[i * Self::ACROSS + j]))
    }
}

/// Points along walls, away from the ends of every span.
fn asked(spans: &[Vec<Span>], walls: &[Wall]) -> Vec<(usize, f64)> {
    let shares = [0.13, 0.31, 0.5, 0.69, 0.87];
    let clear = |wall: usize, share: f64| {
        let ends = spans[wall].iter().flat_map(|(from, to)| [*from, *to]);
        ends.into_iter().all(|end| (end - share).abs() > 0.01)
    };
    let all = (0..walls.len()).flat_map(|wall| shares.map(|share| (wall, share)));
    all.filter(|(wall, share)| clear(*wall, *share)).collect()
}

fn holds(spans: &[Span], share: f64) -> bool {
    spans.iter().any(|(from, to)| (*from..=*to).contains(&share))
}

/// Outer ends of the spans of a wall may hide a gap between two asked points of the kernel; such short
/// ones are rare, and this share of the comparisons may miss one.
const MISSED: f64 = 0.01;

#[test]
fn a_bristle_reaches_what_lines_tried_one_by_one_reach() {
    let [mut both, mut neither, mut missed] = [0, 0, 0];
    for seed in 0..10 {
        let blocks = blocks(seed, 7);
        let section = section(&blocks);
        let exact = section.straight(DIAMETER);
        let thicker = section.straight(THICKER * DIAMETER);
        for (wall, share) in asked(&exact, &section.walls) {
            let at = &section.walls[wall];
            let tip = |diameter: f64| at.at(share) + 0.5 * diameter * at.normal;
            let free = apart(&blocks, tip(DIAMETER)) >= 0.5 * DIAMETER - 1e-9;
            let sampled = free && a_line_leads_out(&blocks, tip(DIAMETER), 0.5 * DIAMETER);
            let found = holds(&exact[wall], share);
            missed += usize::from(sampled && !found);
            missed += usize::from(!sampled && holds(&thicker[wall], share));
            both += usize::from(sampled && found);
            neither += usize::from(!sampled && !found);
        }
    }
    println!("lines: {both} reached, {neither} not, {missed} told otherwise");
    assert!(both > 100 && neither > 300);
    assert!(f64::from(missed as u32) <= MISSED * f64::from((both + neither) as u32));
}

#[test]
fn a_particle_reaches_what_disks_rolled_on_a_grid_reach() {
    let [mut both, mut neither, mut shut_in, mut missed] = [0, 0, 0, 0];
    for seed in 0..25 {
        let blocks = blocks(seed + 100, 12);
        let section = section(&blocks);
        let exact = section.rolling(DIAMETER);
        let thicker = section.rolling(THICKER * DIAMETER);
        let flood = Flood::of(&blocks, 0.5 * DIAMETER);
        let flood_thicker = Flood::of(&blocks, 0.5 * THICKER * DIAMETER);
        for (wall, share) in asked(&exact, &section.walls) {
            let at = &section.walls[wall];
            let middle = |diameter: f64| at.at(share) + 0.5 * diameter * at.normal;
            let fits = |diameter: f64| apart(&blocks, middle(diameter)) >= 0.5 * diameter - 1e-9;
            let rolls = fits(DIAMETER) && flood.reaches(middle(DIAMETER));
            let thick = THICKER * DIAMETER;
            let rolls_thick = fits(thick) && flood_thicker.reaches(middle(thick));
            let found = holds(&exact[wall], share);
            missed += usize::from(rolls_thick && !found);
            missed += usize::from(!rolls && holds(&thicker[wall], share));
            both += usize::from(rolls && found);
            neither += usize::from(!rolls && !found);
            shut_in += usize::from(fits(DIAMETER) && !rolls && !found);
        }
    }
    println!(
        "disks: {both} reached, {neither} not, of them {shut_in} shut in; {missed} told otherwise"
    );
    assert!(both > 500 && neither > 500 && shut_in > 20);
    assert!(f64::from(missed as u32) <= MISSED * f64::from((both + neither) as u32));
}

#[test]
fn blocks_lie_in_the_room() {
    let all = (0..10).flat_map(|seed| blocks(seed, 7));
    assert!(all.flat_map(|block| block.corners()).all(|corner| corner.length() < 2.0 * ROOM));
}

/// The report of a scenario of the menu.
fn told(id: &str) -> ReachSection {
    let scenario = scenarios().into_iter().find(|(found, _)| found == id).expect(id).1;
    Report::of(&scenario).reach.expect("it is asked for")
}

/// Common practice, no source: a bristle reaches the outer rim of the side gap but none of the face
/// between pin and bore.
#[test]
fn the_winchs_brush_cleans_the_side_gap_and_leaves_the_pin() {
    let told = told("oiled-winch");
    let of = |gap: &str| {
        let all = told.faces.iter().filter(|face| face.face.contains(gap));
        all.cloned().collect::<Vec<_>>()
    };
    assert_eq!(told.faces.len(), 8);
    assert!(of("side-gap").iter().all(|face| face.bristle_fraction > 0.0));
    assert!(of("pin-bore").iter().all(|face| face.bristle_fraction <= 0.0));
    assert!(of("pin-bore").iter().all(|face| face.liquid && face.corner_count == 1));
    assert!(
        told.faces.iter().all(|face| face.bristle_fraction <= f64::from(u8::from(face.liquid)))
    );
    assert!(told.pumped_pin_mm3_per_cycle < told.pumped_mm3_per_cycle);
}
