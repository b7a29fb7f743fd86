//! What a solve says about itself.

/// Where a solve starts from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Start {
    /// From nothing: the answer depends on the problem alone.
    Cold,
    /// From this solver's last active set. When the shape (unknowns, rows) has changed, or the
    /// solver has not solved yet, the same as `Cold`.
    Warm,
}

/// How a solve ended. The first thing to look at.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Status {
    /// The conditions of the optimum hold to rounding.
    Solved,
    /// The interior point is good to about 1e-8 of the scales, but no active set was found that
    /// holds to rounding: sums of forces are good to that figure, single ones may not be.
    Unpolished,
    /// No `x` keeps every gap. `x` is the pose with the least sum of squares of the violations,
    /// `push` holds the violations (each times its row's own power of two): a proof, as their rows
    /// cancel while their gaps add up to less than nothing.
    Infeasible,
    /// No answer: data that are not finite, an objective without a lower bound, or steps that
    /// stopped improving. `x` and `push` are zero.
    Stalled,
}

/// How a solve went. Check `status` first.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Report {
    /// How it ended.
    pub status: Status,
    /// Factorisations done, over all methods tried.
    pub rounds: u32,
    /// The smallest `gap_i + row_i . x`, in the unit of the gaps; +0 when there are no rows.
    pub worst_gap: f64,
    /// The largest component of `Hx + q - sum of push_i row_i`, in the unit of the gradient
    /// (for `Infeasible`: of the sum of `push_i row_i` alone).
    pub stationarity: f64,
}
