//! Solvers that know no geometry: a banded factorisation, a bracketed root, and the contact problem.
//!
//! The contact problem is one convex quadratic programme,
//!
//! > minimise `1/2 x'Hx + q'x` subject to `gap_i + row_i . x >= 0`,
//!
//! with `H` symmetric, positive semidefinite and banded, and every row touching at most
//! `half_band + 1` neighbouring unknowns. A small dense problem is a band as wide as itself.
//! The multipliers are the contact forces: `Hx + q = sum of push_i row_i`, `push_i >= 0`, and a
//! row that is apart does not push.
//!
//! # How it is solved
//!
//! Forces are scaled by the load and lengths by the largest gap, in a problem of many unknowns so that
//! `H` is of size 1 (by powers of two: scaling rounds nothing). Every step of every method but the first factors one matrix shape,
//! `H + d I + sum of w_i row_i row_i'`, positive definite and banded: an `L D L'` factorisation
//! without pivots, linear in the number of unknowns.
//!
//! 1. *Dual* (up to 17 unknowns): the most violated row is added, one at a time, to a set that
//!    never pulls. Exact, a fraction of a microsecond for one joint.
//! 2. *Rounds* (warm, and to finish every other method): hold the guessed rows, drop rows that
//!    pull, add rows that are violated. A proximal refinement from the forces at hand gives exact
//!    digits.
//! 3. *Interior point*: a predictor-corrector method goes close to the answer from anywhere, in
//!    stages, and the rounds start from its guess and from its forces, which push already.
//! 4. *Descent* on the augmented Lagrangian, where the rounds cycle.
//! 5. *Shortfall*: when no `x` keeps every gap, the pose with the least sum of squares of the
//!    violations is the answer given, with the violations as the proof.
//!
//! Where touching rows depend on each other, many forces balance; [`Solver::push`] are some that do.
//! [`Solver::spread`] gives those of least norm, which are unique, once a pose is to be told.
//!
//! Where the objective leaves `x` free, the dual method and the rounds stay as near as they can to
//! `x = 0` (warm: to the last answer) and the interior point stays in the middle.
//!
//! ```
//! use lightgap_solve::{Problem, Solver, Start, Status};
//! // A body pulled to the right (x) with 2 N, a wall 0.3 mm away.
//! let mut problem = Problem::new(1, 0);
//! problem.gradient_mut()[0] = -2.0;
//! problem.push_row(0, &[-1.0], 0.3);
//! let mut solver = Solver::new();
//! let report = solver.solve(&problem, Start::Cold);
//! assert_eq!(report.status, Status::Solved);
//! assert!((solver.x()[0] - 0.3).abs() < 1e-12 && (solver.push()[0] - 2.0).abs() < 1e-12);
//! ```

// `!(a <= b)` is written on purpose here: a value that is not a number must fail every check.
#![allow(clippy::neg_cmp_op_on_partial_ord)]
// Matrix formulas are written with the indices they have on paper.
#![allow(clippy::needless_range_loop)]

mod answer;
mod band;
mod climb;
mod dense;
mod descent;
mod dual;
mod hold;
mod interior;
mod level;
mod lines;
mod problem;
mod report;
mod root;
mod rounds;
mod scale;
mod shortfall;
mod solver;
mod spread;

pub use band::Band;
pub use problem::{Problem, Rows};
pub use report::{Report, Start, Status};
pub use root::{Root, RootStatus, root_between};
pub use solver::Solver;
