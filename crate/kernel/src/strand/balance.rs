//! Whether a strand is in balance where it stands.

use super::Strand;
use super::link::{Link, Unknowns};

/// What may be left unbalanced in a strand in balance, as a share of the load: rounding.
pub(super) const BALANCED: f64 = 1e-9;

impl Strand {
    /// The largest force or moment that the pushes leave unbalanced, as a share of the load.
    ///
    /// For every unknown of every link, `r = sum of push_i dgap_i - dE`: along each plate and across, N;
    /// about the link's place, N mm over the pitch; in each spring the moment of the pin's contacts about
    /// the bore's centre and `K e`, N mm over the pitch. E is the energy, `-T x_end` and the springs';
    /// `dgap_i` is the exact slope of gap i in this very pose. The load is the tension or, where that is
    /// more, the largest push.
    pub(super) fn unbalanced(&mut self) -> f64 {
        let mut left = core::mem::take(&mut self.left);
        left.clear();
        left.resize(self.problem.unknowns(), 0.0);
        self.pull(&mut left);
        let mut load = 1.0_f64;
        for (&(joint, facing), &push) in self.rows.iter().zip(self.solver.push()) {
            if push > 0.0 {
                let facing = &self.facings[joint % 2][facing];
                let (row, _) = facing.row(&self.met(joint), self.spring_scale);
                let (first, coefficients) = row.parts();
                for (left, coefficient) in left[first..].iter_mut().zip(coefficients) {
                    *left += push * coefficient;
                }
                load = load.max(push);
            }
        }
        let most = self.links.iter().map(|link| self.left_at(link, &left)).fold(0.0, f64::max);
        self.left = left;
        most / load
    }

    /// The tension's pull and that of the springs as they are bent, at each unknown, in tensions.
    fn pull(&self, left: &mut [f64]) {
        for link in &self.links {
            if let Some(spring) = link.unknowns.spring {
                left[spring] -= self.spring_pull(link);
            }
        }
        if let Some(slide) = self.links.last().and_then(|link| link.unknowns.slide[0]) {
            left[slide] += 1.0;
        }
    }

    /// The largest of what is left at a link's unknowns.
    fn left_at(&self, link: &Link, left: &[f64]) -> f64 {
        let Unknowns { slide: [far, near], across, yaw, spring } = link.unknowns;
        let at = |index: Option<usize>| index.map_or(0.0, |i| left[i].abs());
        let bent = at(spring) / self.spring_scale;
        [at(near), at(across), at(yaw), bent].into_iter().fold(at(far), f64::max)
    }

    /// The force on a spring's unknown for each mm that it is bent, in tensions.
    pub(super) fn spring_stiff(&self) -> f64 {
        let pitch_mm = self.sizes.pitch_mm;
        let stiffness_n_mm = self.setup.stiffness_n_mm.unwrap_or(0.0);
        self.spring_scale * stiffness_n_mm / (self.setup.tension_n * pitch_mm * pitch_mm)
    }

    /// The force on a spring's unknown as it is bent, in tensions.
    pub(super) fn spring_pull(&self, link: &Link) -> f64 {
        self.spring_stiff() * link.sprung().yaw_rad * self.sizes.pitch_mm
    }
}
