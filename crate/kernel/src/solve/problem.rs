//! The data of one contact problem.

use super::band::Band;

/// Gap rows: `gap_i + sum over k of coefficient_ik x[first_i + k]`.
///
/// Every row is stored over the full band width, so the loops over rows have one stride.
#[derive(Clone, Debug)]
pub struct Rows {
    pub(super) stride: usize,
    pub(super) first: Vec<u32>,
    pub(super) coefficient: Vec<f64>,
    pub(super) gap: Vec<f64>,
    /// 1 / (sum of squares of the coefficients): what makes one penalty fit rows of any size.
    pub(super) weight: Vec<f64>,
}

impl Rows {
    fn new(stride: usize) -> Rows {
        Rows {
            stride,
            first: Vec::new(),
            coefficient: Vec::new(),
            gap: Vec::new(),
            weight: Vec::new(),
        }
    }

    fn clear(&mut self) {
        self.first.clear();
        self.coefficient.clear();
        self.gap.clear();
        self.weight.clear();
    }

    /// How many rows there are.
    pub fn len(&self) -> usize {
        self.gap.len()
    }

    /// Whether there are no rows.
    pub fn is_empty(&self) -> bool {
        self.gap.is_empty()
    }

    /// The first unknown that row `row` touches, and its coefficients from there on.
    pub fn row(&self, row: usize) -> (usize, &[f64]) {
        let start = row * self.stride;
        (self.first[row] as usize, &self.coefficient[start..start + self.stride])
    }

    /// The gap of row `row` at `x = 0`.
    pub fn gap(&self, row: usize) -> f64 {
        self.gap[row]
    }

    /// The gap of row `row` at `x`.
    pub fn gap_at(&self, row: usize, x: &[f64]) -> f64 {
        let (first, coefficient) = self.row(row);
        self.gap[row] + dot(coefficient, &x[first..])
    }
}

/// Sum of products over the length of `a`, in index order.
#[inline(always)]
pub(super) fn dot(a: &[f64], b: &[f64]) -> f64 {
    let mut sum = 0.0;
    for (a, b) in a.iter().zip(b) {
        sum += a * b;
    }
    sum
}

/// One convex contact problem: minimise `1/2 x'Hx + q'x` with every `gap_i + row_i . x >= 0`.
///
/// Any one unit of length for `x` and the gaps and any one unit of force for `q` and the pushes
/// will do; an angle is best made a length (multiplied by a lever, such as the pitch).
#[derive(Clone, Debug)]
pub struct Problem {
    pub(super) unknowns: usize,
    pub(super) hessian: Band,
    pub(super) gradient: Vec<f64>,
    pub(super) rows: Rows,
}

impl Problem {
    /// A problem with `H = 0`, `q = 0` and no rows. Rows and `H` may couple unknowns whose
    /// indices differ by at most `half_band`.
    pub fn new(unknowns: usize, half_band: usize) -> Problem {
        let stride = (half_band + 1).min(unknowns);
        Problem {
            unknowns,
            hessian: Band::new(unknowns, stride),
            gradient: vec![0.0; unknowns],
            rows: Rows::new(stride),
        }
    }

    /// Back to `H = 0`, `q = 0` and no rows, keeping shape and buffers.
    pub fn clear(&mut self) {
        self.hessian.fill(0.0);
        self.gradient.fill(0.0);
        self.rows.clear();
    }

    /// How many unknowns there are.
    pub fn unknowns(&self) -> usize {
        self.unknowns
    }

    /// The gap rows.
    pub fn rows(&self) -> &Rows {
        &self.rows
    }

    /// The entry of `H` at row `i`, column `j`, and so at `j`, `i`.
    ///
    /// # Panics
    /// Unless `j <= i <= j + half_band` and `i` is an unknown.
    pub fn hessian_mut(&mut self, i: usize, j: usize) -> &mut f64 {
        self.hessian.entry_mut(i, j)
    }

    /// `q`, one entry an unknown.
    pub fn gradient_mut(&mut self) -> &mut [f64] {
        &mut self.gradient
    }

    /// `q`, one entry an unknown.
    pub fn gradient(&self) -> &[f64] {
        &self.gradient
    }

    /// Adds `gap + sum of coefficients[k] x[first + k] >= 0`; answers the row's number.
    ///
    /// # Panics
    /// When the row is longer than the band or reaches past the last unknown.
    pub fn push_row(&mut self, first: usize, coefficients: &[f64], gap: f64) -> usize {
        let rows = &mut self.rows;
        assert!(coefficients.len() <= rows.stride, "row longer than the band");
        assert!(first + coefficients.len() <= self.unknowns, "row past the last unknown");
        let start = first.min(self.unknowns - rows.stride);
        let from = rows.coefficient.len() + (first - start);
        rows.coefficient.resize(rows.coefficient.len() + rows.stride, 0.0);
        rows.coefficient[from..from + coefficients.len()].copy_from_slice(coefficients);
        let square = dot(coefficients, coefficients);
        rows.first.push(start as u32);
        rows.weight.push(if square > 0.0 { 1.0 / square } else { 1.0 });
        rows.gap.push(gap);
        rows.len() - 1
    }

    /// Replaces the gap of row `row` at `x = 0`.
    pub fn set_gap(&mut self, row: usize, gap: f64) {
        self.rows.gap[row] = gap;
    }
}
