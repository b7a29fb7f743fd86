//! Contact problems as plain data: random ones and degenerate ones, with their twins.

// The tests and the benchmarks each use a part of this.
#![allow(dead_code)]

use lightgap::solve::Problem;

/// One problem: minimise `1/2 x'Hx + q'x` with every `gap + row . x >= 0`.
#[derive(Clone, Debug)]
pub struct Case {
    pub unknowns: usize,
    pub half_band: usize,
    /// Lower triangle: row, column, value.
    pub hessian: Vec<(usize, usize, f64)>,
    pub gradient: Vec<f64>,
    /// First unknown, coefficients, gap.
    pub rows: Vec<(usize, Vec<f64>, f64)>,
}

impl Case {
    pub fn new(unknowns: usize, half_band: usize) -> Case {
        let gradient = vec![0.0; unknowns];
        Case { unknowns, half_band, hessian: Vec::new(), gradient, rows: Vec::new() }
    }

    /// The case of a problem that a settler has written.
    pub fn of(problem: &Problem) -> Case {
        let (n, rows) = (problem.unknowns(), problem.rows());
        let mut case = Case::new(n, n - 1);
        let lower = (0..n).flat_map(|i| (0..=i).map(move |j| (i, j)));
        let entry = |(i, j)| (i, j, problem.hessian(i, j));
        case.hessian = lower.map(entry).filter(|entry| entry.2 != 0.0).collect();
        case.gradient = problem.gradient().to_vec();
        for row in 0..rows.len() {
            let coefficients: Vec<f64> = (0..n).map(|j| rows.coefficient(row, j)).collect();
            case.row(0, &coefficients, rows.gap(row));
        }
        case
    }

    pub fn row(&mut self, first: usize, coefficients: &[f64], gap: f64) {
        self.rows.push((first, coefficients.to_vec(), gap));
    }

    pub fn problem(&self) -> Problem {
        let mut problem = Problem::new(self.unknowns, self.half_band);
        for &(i, j, value) in &self.hessian {
            *problem.hessian_mut(i, j) += value;
        }
        problem.gradient_mut().copy_from_slice(&self.gradient);
        for (first, coefficients, gap) in &self.rows {
            problem.push_row(*first, coefficients, *gap);
        }
        problem
    }

    /// `1/2 x'Hx + q'x`.
    pub fn value(&self, x: &[f64]) -> f64 {
        let linear: f64 = self.gradient.iter().zip(x).map(|(q, x)| q * x).sum();
        let square = |&(i, j, h): &(usize, usize, f64)| {
            if i == j { 0.5 * h * x[i] * x[i] } else { h * x[i] * x[j] }
        };
        linear + self.hessian.iter().map(square).sum::<f64>()
    }

    /// `Hx + q`: the force that the rows must balance; the same for every optimum.
    pub fn force(&self, x: &[f64]) -> Vec<f64> {
        let mut force = self.gradient.clone();
        for &(i, j, h) in &self.hessian {
            force[i] += h * x[j];
            if i != j {
                force[j] += h * x[i];
            }
        }
        force
    }

    /// The twin that no `x` solves: one row again from the other side, `short` too tight.
    pub fn infeasible_twin(&self, short: f64) -> Case {
        let mut twin = self.clone();
        if let Some((first, coefficients, gap)) = self.rows.first() {
            let opposite: Vec<f64> = coefficients.iter().map(|value| -value).collect();
            twin.row(*first, &opposite, -gap - short);
        }
        twin
    }

    /// The twin in odd units: every row multiplied by a factor from 1e-2 to 1e2, which changes no
    /// answer but the pushes.
    pub fn uneven_twin(&self, random: &mut Random) -> Case {
        let mut twin = self.clone();
        for (_, coefficients, gap) in &mut twin.rows {
            let factor = [0.01, 0.1, 1.0, 10.0, 100.0][random.below(5)];
            coefficients.iter_mut().for_each(|value| *value *= factor);
            *gap *= factor;
        }
        twin
    }

    /// The ill-conditioned twin: one direction of each body a million times stiffer.
    pub fn stiff_twin(&self, random: &mut Random) -> Case {
        const STIFF: f64 = 1e6;
        let mut twin = self.clone();
        let direction = random.below(3);
        let stiff = (0..self.unknowns).skip(direction).step_by(3);
        twin.hessian.extend(stiff.map(|i| (i, i, STIFF)));
        twin
    }
}

/// A splitmix64 stream: small, and the same everywhere.
pub struct Random(pub u64);

impl Random {
    pub fn bits(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    /// Uniform in -1..1.
    pub fn signed(&mut self) -> f64 {
        (self.bits() >> 11) as f64 / (1_u64 << 52) as f64 - 1.0
    }

    /// Uniform in 0..1.
    pub fn unit(&mut self) -> f64 {
        0.5 * (self.signed() + 1.0)
    }

    pub fn below(&mut self, bound: usize) -> usize {
        (self.bits() % bound as u64) as usize
    }
}

/// A dense random problem that some `x` solves; `H` of rank `rank`; a box of half-width 10 keeps
/// it bounded. Every fourth row touches at the feasible point it was built around.
pub fn random(random: &mut Random, unknowns: usize, rows: usize, rank: usize) -> Case {
    let mut case = Case::new(unknowns, unknowns - 1);
    for _ in 0..rank {
        let factor: Vec<f64> = (0..unknowns).map(|_| random.signed()).collect();
        for i in 0..unknowns {
            for j in 0..=i {
                case.hessian.push((i, j, factor[i] * factor[j]));
            }
        }
    }
    case.gradient.iter_mut().for_each(|q| *q = 3.0 * random.signed());
    let inside: Vec<f64> = (0..unknowns).map(|_| random.signed()).collect();
    for row in 0..rows {
        let coefficients: Vec<f64> = (0..unknowns).map(|_| random.signed()).collect();
        let slack = if row % 4 == 0 { 0.0 } else { random.unit() };
        let at: f64 = coefficients.iter().zip(&inside).map(|(a, x)| a * x).sum();
        case.row(0, &coefficients, slack - at);
    }
    for i in 0..unknowns {
        case.row(i, &[1.0], 10.0);
        case.row(i, &[-1.0], 10.0);
    }
    case
}

/// Sizes of one joint in plan: pin clearance, bearing width, side gap, overhang.
#[derive(Clone, Copy, Debug)]
pub struct Joint {
    pub clearance: f64,
    pub bearing: f64,
    pub side_gap: f64,
    pub overhang: f64,
    pub pitch: f64,
}

/// The sizes of the reference strand.
pub const REFERENCE: Joint =
    Joint { clearance: 0.03, bearing: 5.0, side_gap: 0.4, overhang: 4.2, pitch: 12.7 };

impl Joint {
    /// The 16 small-angle gap rows of one joint in (x, y, pitch * yaw), the pin held: each side of
    /// the pin at each bore end, at the middle of each end's metal, and each plate face at both
    /// ends of its overhang (so a flat face touches with two rows, a straight pin with four).
    fn rows(&self) -> Vec<([f64; 3], f64)> {
        let mut rows = Vec::new();
        for side in [-1.0, 1.0] {
            for lever in [-0.5, -0.25, 0.25, 0.5] {
                let lever = lever * self.bearing / self.pitch;
                rows.push(([side, 0.0, lever], 0.5 * self.clearance));
            }
            for lever in [-1.0, -0.5, 0.5, 1.0] {
                let lever = lever * self.overhang / self.pitch;
                rows.push(([0.0, side, lever], 0.5 * self.side_gap));
            }
        }
        rows
    }
}

/// One inner link on a held pin, pulled by a load in (x, y, yaw): 3 unknowns, 16 gaps. A weak
/// spring towards the centre (1e-2) when `centred`.
pub fn joint(sizes: Joint, load: [f64; 3], centred: bool) -> Case {
    let mut case = Case::new(3, 2);
    case.gradient = load.iter().map(|load| -load).collect();
    for i in 0..3 {
        if centred {
            case.hessian.push((i, i, 0.01));
        }
    }
    for (coefficients, gap) in sizes.rows() {
        case.row(0, &coefficients, gap);
    }
    case
}

/// Three bodies in a row on a held pin (9 unknowns, 48 joint rows and 12 stops): the last one is
/// pulled along, aside and round.
pub fn three_links(sizes: Joint, load: [f64; 3]) -> Case {
    let mut case = Case::new(9, 8);
    for body in 0..3 {
        joint_rows(&mut case, sizes, body, 0.0);
        case.hessian.push((3 * body + 2, 3 * body + 2, 300.0 / sizes.pitch));
        for stop in [1.0, -1.0] {
            case.row(3 * body + 1, &[stop], 0.7 * sizes.side_gap);
            case.row(3 * body + 2, &[stop], 0.2);
        }
    }
    for (axis, load) in load.iter().enumerate() {
        case.gradient[6 + axis] = -load;
    }
    case
}

/// The rows of the joint before `body`; body -1 is held at zero. `offset` is added to the lateral
/// position of a held last link, `body` then being one past the last free one.
fn joint_rows(case: &mut Case, sizes: Joint, body: usize, offset: f64) {
    let last = 3 * body >= case.unknowns.saturating_sub(1) && case.unknowns % 3 == 1;
    for ([along, aside, yaw], gap) in sizes.rows() {
        // Relative pose: own (x, y, yaw) less the pin's (x, y + pitch * yaw, yaw) of the link before.
        let before = [-along, -aside, -aside - yaw];
        let own = [along, aside, yaw];
        if last {
            let row = [before[0], before[1], before[2], along];
            case.row(3 * body - 3, &row, gap + aside * offset);
        } else if body == 0 {
            case.row(0, &own, gap);
        } else {
            let row = [before[0], before[1], before[2], own[0], own[1], own[2]];
            case.row(3 * body - 3, &row, gap);
        }
    }
}

/// A taut strand between two links held straight, `links` free links (3 unknowns each, 16 rows a
/// joint), the far end `offset` aside and free along, pulled with `tension`.
pub fn strand(sizes: Joint, links: usize, offset: f64, tension: f64) -> Case {
    let mut case = Case::new(3 * links + 1, 5);
    for body in 0..=links {
        joint_rows(&mut case, sizes, body, offset);
        if body < links {
            case.hessian.push((3 * body + 2, 3 * body + 2, tension / sizes.pitch));
        }
    }
    case.gradient[3 * links] = -tension;
    case
}
