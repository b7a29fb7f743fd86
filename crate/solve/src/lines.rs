//! Sums over one row, written out for the lengths that bodies in a plane give.

/// The lengths written out: one, two and three bodies. Others take the same path, a little slower.
macro_rules! by_length {
    ($length:expr, $call:ident, $($argument:expr),*) => {
        match $length {
            #[cfg(not(lightgap_small))]
            3 => $call::<3>($($argument),*),
            #[cfg(not(lightgap_small))]
            6 => $call::<6>($($argument),*),
            #[cfg(not(lightgap_small))]
            9 => $call::<9>($($argument),*),
            _ => $call::<0>($($argument),*),
        }
    };
}
pub(super) use by_length;

/// The same for whole methods, whose code is long: the lengths of strands' rows only.
macro_rules! by_joint {
    ($length:expr, $of:ident.$call:ident($($argument:expr),*)) => {
        match $length {
            #[cfg(not(lightgap_small))]
            6 => $of.$call::<6>($($argument),*),
            #[cfg(not(lightgap_small))]
            9 => $of.$call::<9>($($argument),*),
            _ => $of.$call::<0>($($argument),*),
        }
    };
}
pub(super) use by_joint;

/// Sum of products over the length of `a`: even and odd places apart, then both, so that two go at
/// a time.
#[cfg_attr(not(lightgap_small), inline(always))]
#[cfg_attr(lightgap_small, inline(never))]
pub(super) fn dot(a: &[f64], b: &[f64]) -> f64 {
    by_length!(a.len(), dot_of, a, b)
}

/// The same where the length is `N`, or that of `a` where `N` is 0.
#[inline(always)]
pub(super) fn dot_of<const N: usize>(a: &[f64], b: &[f64]) -> f64 {
    let n = if N == 0 { a.len() } else { N };
    let (a, b) = (&a[..n], &b[..n]);
    let mut lanes = [0.0; 2];
    for pair in 0..n / 2 {
        for (lane, sum) in lanes.iter_mut().enumerate() {
            *sum += a[2 * pair + lane] * b[2 * pair + lane];
        }
    }
    if n % 2 == 1 {
        lanes[0] += a[n - 1] * b[n - 1];
    }
    lanes[0] + lanes[1]
}

/// `to += factor * line` over the length of `line`.
#[cfg_attr(not(lightgap_small), inline(always))]
#[cfg_attr(lightgap_small, inline(never))]
pub(super) fn add_times(to: &mut [f64], factor: f64, line: &[f64]) {
    by_length!(line.len(), add_times_of, to, factor, line);
}

/// The same where the length is `N`, or that of `line` where `N` is 0.
#[inline(always)]
pub(super) fn add_times_of<const N: usize>(to: &mut [f64], factor: f64, line: &[f64]) {
    let n = if N == 0 { line.len() } else { N };
    let (to, line) = (&mut to[..n], &line[..n]);
    for i in 0..n {
        to[i] += factor * line[i];
    }
}

/// `to += sum of factor line`, `other` by the second factors, over lines one after another, of `N`
/// entries each, or of as many as `to` has where `N` is 0.
#[inline(always)]
pub(super) fn add_lines<const N: usize>(
    to: &mut [f64],
    other: &mut [f64],
    lines: &[f64],
    factors: impl Iterator<Item = [f64; 2]>,
) {
    if N == 0 {
        for (line, factor) in lines.chunks_exact(to.len()).zip(factors) {
            add_times(to, factor[0], line);
            add_times(other, factor[1], line);
        }
        return;
    }
    let mut sum = [[0.0; N]; 2];
    for (line, factor) in lines.as_chunks::<N>().0.iter().zip(factors) {
        for i in 0..N {
            sum[0][i] += factor[0] * line[i];
            sum[1][i] += factor[1] * line[i];
        }
    }
    for i in 0..N {
        to[i] += sum[0][i];
        other[i] += sum[1][i];
    }
}

/// Adds a line times each factor to `sum`, or where `N` is 0 to the pairs in `to`.
#[inline(always)]
pub(super) fn add_pair<const N: usize>(
    sum: &mut [[f64; N]; 2],
    to: &mut [[f64; 2]],
    line: &[f64],
    factors: [f64; 2],
) {
    if N == 0 {
        for (to, value) in to.iter_mut().zip(line) {
            *to = [to[0] + factors[0] * value, to[1] + factors[1] * value];
        }
        return;
    }
    for (sum, factor) in sum.iter_mut().zip(factors) {
        add_times_of::<N>(sum, factor, line);
    }
}
