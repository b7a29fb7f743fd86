//! The problem of a round, and the step that it gives.

use super::Loaded;
use crate::contact::body::Body;
use crate::contact::name::Joint;
use crate::plane::Placement;

/// A step below this, in pitches, is near the end: the faces that push will go on pushing.
const NEAR: f64 = 1e-3;

impl Loaded {
    /// The place of a body's unknowns, if it is free.
    pub(super) fn place(&self, body: Body) -> Option<usize> {
        let body = body.rigid(self.construction);
        self.free.iter().position(|&free| free == body).map(|i| 3 * i)
    }

    /// The place of a joint's springy yaw, if there is one.
    pub(super) fn spring_place(&self, joint: Joint) -> Option<usize> {
        self.stiffness_n_mm.map(|_| 3 * self.free.len() + joint as usize)
    }

    /// Stiffness of a spring whose unknown is its yaw times pitch, in units of the load, 1/mm.
    pub(super) fn spring_stiffness(&self) -> f64 {
        self.stiffness_n_mm.unwrap_or(0.0) / (self.size_n * self.pitch_mm * self.pitch_mm)
    }

    /// Takes so much of the solver's step.
    pub(super) fn step(&mut self, share: f64) {
        for i in 0..self.free.len() {
            let body = self.free[i];
            let step = |axis: usize| share * self.solver.x()[3 * i + axis];
            let now = self.pose.of(body);
            let place = Placement::new(
                now.x_mm + step(0),
                now.y_mm + step(1),
                now.yaw_rad + step(2) / self.pitch_mm,
            );
            self.pose.put(self.construction, body, place);
        }
        for &joint in Joint::ALL {
            if let Some(at) = self.spring_place(joint) {
                let bent = share * self.spring_scale * self.solver.x()[at];
                self.spring_rad[joint as usize] += bent / self.pitch_mm;
            }
        }
    }

    /// The problem of the next step, in units of the load.
    pub(super) fn write(&mut self) {
        self.problem.clear();
        let p = self.pitch_mm;
        for i in 0..self.problem.unknowns() {
            *self.problem.hessian_mut(i, i) = self.pace.weight / p;
        }
        if let Some(at) = self.place(self.load.on()) {
            let wrench = self.load.wrench();
            let pull = [wrench.force_n.x, wrench.force_n.y, wrench.moment_n_mm / p];
            for (axis, pull) in pull.into_iter().enumerate() {
                self.problem.gradient_mut()[at + axis] = -pull / self.size_n;
            }
        }
        for &joint in Joint::ALL {
            if let Some(at) = self.spring_place(joint) {
                let stiff = self.spring_stiffness() * self.spring_scale;
                *self.problem.hessian_mut(at, at) += stiff * self.spring_scale;
                self.problem.gradient_mut()[at] = stiff * p * self.spring_rad[joint as usize];
            }
        }
        self.lines.clear();
        for i in 0..self.meetings.len() {
            let (line, gap_mm) = self.line(i);
            self.problem.push_row(0, &line[..self.problem.unknowns()], gap_mm);
            self.lines.push(line);
            self.gaps_mm[i] = gap_mm;
        }
        if self.pace.before_mm.is_finite() {
            self.write_bend(self.pace.before_mm <= NEAR * self.pitch_mm);
        }
    }
}
