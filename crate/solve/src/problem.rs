//! The data of one contact problem.

use super::band::Band;
use super::lines::dot;
use core::ops::Range;

/// Gap rows: `gap_i + sum over k of coefficient_ik x[first_i + k]`.
///
/// Every row is stored over the full band width, so the loops over rows have one stride, and
/// multiplied by the power of two (its `scale`) that brings its norm nearest to 1: rounding-free,
/// and one penalty and one tolerance fit rows of any size. Rows near norm 1 are stored as given.
#[derive(Clone, Debug)]
pub struct Rows {
    pub(super) stride: usize,
    pub(super) first: Vec<u32>,
    pub(super) coefficient: Vec<f64>,
    pub(super) gap: Vec<f64>,
    pub(super) scale: Vec<f64>,
    /// 1 / scale, also a power of two.
    pub(super) size: Vec<f64>,
    /// Runs of rows that touch the same unknowns.
    runs: Vec<Run>,
    /// Whether every coefficient is finite.
    pub(super) finite: bool,
}

/// Rows one after another that touch the same unknowns, as those of one joint do.
#[derive(Clone, Copy, Debug)]
struct Run {
    first: u32,
    end: u32,
}

impl Rows {
    fn new(stride: usize) -> Rows {
        Rows {
            stride,
            first: Vec::new(),
            coefficient: Vec::new(),
            gap: Vec::new(),
            scale: Vec::new(),
            size: Vec::new(),
            runs: Vec::new(),
            finite: true,
        }
    }

    fn clear(&mut self) {
        self.first.clear();
        self.coefficient.clear();
        self.gap.clear();
        self.scale.clear();
        self.size.clear();
        self.runs.clear();
        self.finite = true;
    }

    /// How many rows there are.
    pub fn len(&self) -> usize {
        self.gap.len()
    }

    /// Whether there are no rows.
    pub fn is_empty(&self) -> bool {
        self.gap.is_empty()
    }

    /// The first unknown that row `row` touches, and its scaled coefficients from there on.
    #[inline(always)]
    pub(super) fn row(&self, row: usize) -> (usize, &[f64]) {
        let start = row * self.stride;
        (self.first[row] as usize, &self.coefficient[start..start + self.stride])
    }

    /// The same, the number of coefficients being `N`, or not known beforehand where `N` is 0.
    #[inline(always)]
    pub(super) fn line<const N: usize>(&self, row: usize) -> (usize, &[f64]) {
        let n = if N == 0 { self.stride } else { N };
        (self.first[row] as usize, &self.coefficient[row * n..][..n])
    }

    /// Runs of rows that touch the same unknowns: the first of these, and the rows.
    #[inline(always)]
    pub(super) fn runs(&self) -> impl Iterator<Item = (usize, Range<usize>)> {
        let mut start = 0;
        self.runs.iter().map(move |run| {
            let rows = start..run.end as usize;
            start = rows.end;
            (run.first as usize, rows)
        })
    }

    /// The gap of row `row` at `x = 0`.
    pub fn gap(&self, row: usize) -> f64 {
        self.gap[row]
    }

    /// How much the gap of row `row` changes with the unknown `unknown`.
    pub fn coefficient(&self, row: usize, unknown: usize) -> f64 {
        let (first, coefficient) = self.row(row);
        let inside = unknown.checked_sub(first).and_then(|at| coefficient.get(at));
        inside.map_or(0.0, |value| value / self.scale[row])
    }

    /// The gap of row `row` at `x`.
    #[inline]
    pub fn gap_at(&self, row: usize, x: &[f64]) -> f64 {
        let (first, coefficient) = self.row(row);
        self.gap[row] + dot(coefficient, &x[first..]) * self.size[row]
    }
}

/// The power of two nearest (in ratio) to the square root of `square`; 1 where there is none.
fn power_of_two_root(square: f64) -> f64 {
    const BIAS: u64 = 1023;
    const FRACTION_BITS: u64 = 52;
    if !(f64::MIN_POSITIVE..=f64::MAX).contains(&square) {
        return 1.0;
    }
    // 2^e <= square < 2^(e + 1) with e + bias in the exponent bits; the root is 2^round(e / 2),
    // the bias of e halved along with it.
    let exponent = square.to_bits() >> FRACTION_BITS;
    f64::from_bits((exponent + BIAS).div_ceil(2) << FRACTION_BITS)
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
    ///
    /// # Panics
    /// Without unknowns.
    pub fn new(unknowns: usize, half_band: usize) -> Problem {
        assert!(unknowns > 0, "a problem without unknowns");
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

    /// `H`.
    pub fn hessian_band(&self) -> &Band {
        &self.hessian
    }

    /// The entry of `H` at row `i`, column `j`; zero outside the band.
    pub fn hessian(&self, i: usize, j: usize) -> f64 {
        self.hessian.entry(i.max(j), i.min(j))
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
        let scale = power_of_two_root(1.0 / dot(coefficients, coefficients));
        let stored = &mut rows.coefficient[from..from + coefficients.len()];
        for (stored, given) in stored.iter_mut().zip(coefficients) {
            *stored = scale * given;
        }
        let (first, end) = (start as u32, rows.first.len() as u32 + 1);
        match rows.runs.last_mut() {
            Some(run) if run.first == first => run.end = end,
            _ => rows.runs.push(Run { first, end }),
        }
        rows.first.push(first);
        rows.scale.push(scale);
        rows.size.push(1.0 / scale);
        rows.finite &= coefficients.iter().all(|value| value.is_finite());
        rows.gap.push(gap);
        rows.len() - 1
    }

    /// Replaces the gap of row `row` at `x = 0`.
    pub fn set_gap(&mut self, row: usize, gap: f64) {
        self.rows.gap[row] = gap;
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn rows_near_norm_one_are_stored_as_given() {
        for (square, root) in
            [(1.0, 1.0), (1.9, 1.0), (0.51, 1.0), (2.0, 2.0), (0.49, 0.5), (1e-8, 1.0 / 8192.0)]
        {
            assert_eq!(power_of_two_root(square).to_bits(), f64::to_bits(root), "{square}");
        }
        for odd in [0.0, f64::NAN, f64::INFINITY] {
            assert_eq!(power_of_two_root(odd).to_bits(), f64::to_bits(1.0));
        }
    }
}
