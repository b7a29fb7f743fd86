//! A symmetric banded matrix and its `L D L'` factorisation: the one factorisation of the kernel.

use super::lines::by_length;

/// A symmetric matrix of `size` rows whose entries are zero where `|i - j| >= stride`.
///
/// Column `j` of the lower triangle is stored at `j * stride`: its diagonal, then downwards. The
/// last columns are padded with zeros past the matrix, so every column has the same length.
#[derive(Clone, Debug)]
pub struct Band {
    size: usize,
    stride: usize,
    entry: Vec<f64>,
}

impl Band {
    /// Zero, of `size` rows, coupling indices that differ by less than `stride`.
    pub fn new(size: usize, stride: usize) -> Band {
        Band { size, stride, entry: vec![0.0; (size + stride) * stride] }
    }

    /// Takes another shape, keeping the buffer; the entries are zero afterwards.
    pub fn reshape(&mut self, size: usize, stride: usize) {
        self.size = size;
        self.stride = stride;
        self.entry.clear();
        self.entry.resize((size + stride) * stride, 0.0);
    }

    /// Becomes another matrix. (A derived `clone_from` would allocate.)
    pub(super) fn take(&mut self, other: &Band) {
        self.size = other.size;
        self.stride = other.stride;
        self.entry.clone_from(&other.entry);
    }

    /// Becomes `factor` times another matrix.
    pub(super) fn take_times(&mut self, other: &Band, factor: f64) {
        self.size = other.size;
        self.stride = other.stride;
        self.entry.resize(other.entry.len(), 0.0);
        for (to, from) in self.entry.iter_mut().zip(&other.entry) {
            *to = factor * from;
        }
    }

    /// Sets every entry inside the band; the padding stays zero.
    pub fn fill(&mut self, value: f64) {
        let used = self.size * self.stride;
        self.entry[..used].fill(value);
    }

    /// How many rows.
    pub fn size(&self) -> usize {
        self.size
    }

    /// The entry at row `i`, column `j`, `i >= j`.
    ///
    /// # Panics
    /// When the entry is outside the matrix or its band.
    pub fn entry_mut(&mut self, i: usize, j: usize) -> &mut f64 {
        assert!(i < self.size && j <= i && i - j < self.stride, "outside the band");
        &mut self.entry[j * self.stride + (i - j)]
    }

    /// The entry at row `i`, column `j`, `i >= j`; zero outside the band.
    pub(super) fn entry(&self, i: usize, j: usize) -> f64 {
        if i - j < self.stride { self.entry[j * self.stride + (i - j)] } else { 0.0 }
    }

    pub(super) fn stride(&self) -> usize {
        self.stride
    }

    pub(super) fn entries(&self) -> &[f64] {
        &self.entry
    }

    /// Adds `value` to every diagonal entry.
    pub(super) fn add_diagonal(&mut self, value: f64) {
        for j in 0..self.size {
            self.entry[j * self.stride] += value;
        }
    }

    /// Adds `weight * row row'`, the row touching `stride` unknowns from `first` on.
    #[inline(always)]
    pub(super) fn add_outer(&mut self, first: usize, row: &[f64], weight: f64) {
        let block = &mut self.entry[first * self.stride..];
        by_length!(row.len(), add_outer_of, block, row, weight);
    }

    /// Adds `sum of weight line line'` over lines one after another that all touch the unknowns from
    /// `first` on, of `N` entries each; `N` is the stride, or 0 where that is not known beforehand.
    #[inline(always)]
    pub(super) fn add_outers<const N: usize>(
        &mut self,
        first: usize,
        lines: &[f64],
        weights: impl Iterator<Item = f64> + Clone,
    ) {
        if N == 0 {
            for (line, weight) in lines.chunks_exact(self.stride).zip(weights) {
                self.add_outer(first, line, weight);
            }
            return;
        }
        let block = &mut self.entry[first * N..(first + N) * N];
        for j in (0..N).step_by(2) {
            let other = (j + 1).min(N - 1);
            let mut sums = [[0.0; N]; 2];
            for (line, weight) in lines.as_chunks::<N>().0.iter().zip(weights.clone()) {
                let factors = [weight * line[j], weight * line[other]];
                for i in 0..N {
                    sums[0][i] += factors[0] * line[i];
                    sums[1][i] += factors[1] * line[i];
                }
            }
            for (column, sum) in [j, other].into_iter().zip(&sums).take(N - j) {
                let below = &mut block[column * N..(column + 1) * N - column];
                for (to, value) in below.iter_mut().zip(&sum[column..]) {
                    *to += value;
                }
            }
        }
    }

    /// `out = matrix * x`; both of `size` entries or more.
    #[inline]
    pub(super) fn multiply(&self, x: &[f64], out: &mut [f64]) {
        by_length!(self.stride, multiply_of, &self.entry, self.size, self.stride, x, out);
    }

    /// Whether the matrix is positive definite; `work` is left as its factors.
    pub fn is_positive(&self, work: &mut Band) -> bool {
        work.clone_from(self);
        work.factor();
        (0..self.size).all(|j| work.entry[j * work.stride] > 0.0)
    }

    /// Replaces a positive definite matrix by its factors: unit lower `L` below the diagonal, the
    /// reciprocals of `D` on it. A pivot lost to rounding freezes its unknown.
    pub(super) fn factor(&mut self) {
        by_length!(self.stride, factor_of, &mut self.entry, self.size, self.stride);
    }

    /// Solves with the factors in place; `x` has `size + stride` entries, the last ones zero.
    pub(super) fn solve(&self, x: &mut [f64]) {
        by_length!(self.stride, solve_of, &self.entry, self.size, self.stride, x);
    }
}

#[inline(always)]
fn add_outer_of<const N: usize>(block: &mut [f64], row: &[f64], weight: f64) {
    let n = if N == 0 { row.len() } else { N };
    let (block, row) = (&mut block[..n * n], &row[..n]);
    for j in 0..n {
        let factor = weight * row[j];
        for k in 0..n - j {
            block[j * n + k] += factor * row[j + k];
        }
    }
}

#[inline(always)]
fn multiply_of<const N: usize>(
    entry: &[f64],
    size: usize,
    stride: usize,
    x: &[f64],
    out: &mut [f64],
) {
    let n = if N == 0 { stride } else { N };
    out[..size].fill(0.0);
    for (j, column) in entry.chunks_exact(n).enumerate().take(size) {
        let reach = n.min(size - j);
        let (x, out) = (&x[j..j + reach], &mut out[j..j + reach]);
        let mut sum = column[0] * x[0];
        for k in 1..reach {
            sum += column[k] * x[k];
            out[k] += column[k] * x[0];
        }
        out[0] += sum;
    }
}

#[inline(always)]
fn factor_of<const N: usize>(entry: &mut [f64], size: usize, stride: usize) {
    let n = if N == 0 { stride } else { N };
    for j in 0..size {
        let block = &mut entry[j * n..(j + n) * n];
        let pivot = block[0];
        let reciprocal = if pivot > f64::MIN_POSITIVE { 1.0 / pivot } else { 0.0 };
        block[0] = reciprocal;
        for i in 1..n {
            let factor = block[i] * reciprocal;
            for k in i..n {
                block[i * n + k - i] -= factor * block[k];
            }
        }
        for below in &mut block[1..n] {
            *below *= reciprocal;
        }
    }
}

#[inline(always)]
fn solve_of<const N: usize>(entry: &[f64], size: usize, stride: usize, x: &mut [f64]) {
    let n = if N == 0 { stride } else { N };
    for j in 0..size {
        let column = &entry[j * n..(j + 1) * n];
        let part = &mut x[j..j + n];
        for k in 1..n {
            part[k] -= column[k] * part[0];
        }
    }
    for j in (0..size).rev() {
        let column = &entry[j * n..(j + 1) * n];
        let part = &mut x[j..j + n];
        let mut value = part[0] * column[0];
        for k in 1..n {
            value -= column[k] * part[k];
        }
        part[0] = value;
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Rounding of a few dozen operations on numbers near 1.
    const ROUNDING: f64 = 1e-14;

    #[test]
    fn factors_solve_what_the_matrix_multiplies() {
        for (size, stride) in [(1, 1), (3, 3), (7, 2), (12, 5)] {
            let mut band = Band::new(size, stride);
            for j in 0..size {
                for i in j..size.min(j + stride) {
                    *band.entry_mut(i, j) = if i == j { 4.0 } else { 0.5 / (1.0 + (i + j) as f64) };
                }
            }
            let wanted: Vec<f64> = (0..size).map(|i| 1.0 - 0.25 * i as f64).collect();
            let mut x = vec![0.0; size + stride];
            band.multiply(&wanted, &mut x);
            let mut factors = band.clone();
            factors.factor();
            factors.solve(&mut x);
            for (got, wanted) in x.iter().zip(&wanted) {
                assert!((got - wanted).abs() < ROUNDING);
            }
            assert!(x[size..].iter().all(|&pad| pad == 0.0));
        }
    }

    #[test]
    fn a_matrix_with_a_direction_that_goes_down_is_not_positive() {
        let mut band = Band::new(3, 3);
        for i in 0..3 {
            *band.entry_mut(i, i) = 1.0;
        }
        let mut work = Band::new(3, 3);
        assert!(band.is_positive(&mut work));
        *band.entry_mut(2, 0) = 1.001;
        assert!(!band.is_positive(&mut work));
    }
}
