//! The same problem put to clarabel, an interior point solver with its own equilibration and
//! factorisation.

#![allow(dead_code)]

use super::cases::Case;
use clarabel::algebra::CscMatrix;
use clarabel::solver::{
    DefaultSettings, DefaultSettingsBuilder, DefaultSolver, IPSolver, NonnegativeConeT,
    SolverStatus, SupportedConeT,
};

/// What clarabel says of a case.
pub struct Opinion {
    pub status: SolverStatus,
    pub x: Vec<f64>,
    pub push: Vec<f64>,
}

/// A case in clarabel's form: minimise `1/2 x'Px + q'x` with `Ax + s = b`, `s >= 0`.
pub struct Posed {
    hessian: CscMatrix<f64>,
    gradient: Vec<f64>,
    rows: CscMatrix<f64>,
    gaps: Vec<f64>,
    cones: Vec<SupportedConeT<f64>>,
}

pub fn pose(case: &Case) -> Posed {
    let n = case.unknowns;
    let upper = case.hessian.iter().map(|&(i, j, value)| (j, i, value));
    let rows = case.rows.iter().enumerate().flat_map(|(row, (first, coefficients, _))| {
        coefficients.iter().enumerate().map(move |(k, value)| (row, first + k, -value))
    });
    let hessian = matrix(n, n, upper);
    let rows = matrix(case.rows.len(), n, rows.filter(|&(_, _, value)| value != 0.0));
    Posed {
        hessian,
        gradient: case.gradient.clone(),
        rows,
        gaps: case.rows.iter().map(|row| row.2).collect(),
        cones: vec![NonnegativeConeT(case.rows.len())],
    }
}

fn matrix(
    rows: usize,
    columns: usize,
    entries: impl Iterator<Item = (usize, usize, f64)>,
) -> CscMatrix<f64> {
    let (mut i, mut j, mut values) = (Vec::new(), Vec::new(), Vec::new());
    for entry in entries {
        i.push(entry.0);
        j.push(entry.1);
        values.push(entry.2);
    }
    CscMatrix::new_from_triplets(rows, columns, i, j, values)
}

impl Posed {
    /// Solves from nothing: set-up, equilibration, factorisations.
    pub fn solve(&self) -> Opinion {
        self.solve_with(DefaultSettingsBuilder::default().verbose(false).build().unwrap())
    }

    /// The same, two digits closer than it goes by itself.
    pub fn solve_closely(&self) -> Opinion {
        const CLOSE: f64 = 1e-10;
        let mut settings = DefaultSettingsBuilder::default();
        let closer = settings.tol_feas(CLOSE).tol_gap_abs(CLOSE).tol_gap_rel(CLOSE);
        self.solve_with(closer.verbose(false).build().unwrap())
    }

    fn solve_with(&self, settings: DefaultSettings<f64>) -> Opinion {
        let mut solver = DefaultSolver::new(
            &self.hessian,
            &self.gradient,
            &self.rows,
            &self.gaps,
            &self.cones,
            settings,
        )
        .unwrap();
        solver.solve();
        let solution = &solver.solution;
        Opinion { status: solution.status, x: solution.x.clone(), push: solution.z.clone() }
    }
}
