//! One strand solved at growing offsets, each answer kept: a slider that goes back asks for nothing
//! anew, one that goes on starts where it was.

use super::{ChainLine, Missing};
use crate::strand::{Solution, Strand};

/// A strand and its answers at offsets 0, s, 2 s, ... of the wheels, as far as they were asked for.
pub struct Sweep {
    line: ChainLine,
    strand: Strand,
    step_mm: f64,
    solved: Vec<Result<Solution, Missing>>,
    ended: bool,
}

impl Sweep {
    /// A sweep of a drive's strand, not yet solved, in steps of an offset, mm.
    pub fn new(line: &ChainLine, strand: Strand, step_mm: f64) -> Self {
        Self { line: *line, strand, step_mm, solved: Vec::new(), ended: false }
    }

    /// The drive.
    pub fn line(&self) -> &ChainLine {
        &self.line
    }

    /// The offset of the wheels at a step, mm.
    pub fn offset_mm(&self, step: usize) -> f64 {
        self.step_mm * step as f64
    }

    /// The step nearest to an offset, either way, mm.
    pub fn step(&self, offset_mm: f64) -> usize {
        libm::round(offset_mm.abs() / self.step_mm) as usize
    }

    /// The answer at a step.
    ///
    /// # Errors
    /// Why there is none.
    pub fn at(&mut self, step: usize) -> Result<&Solution, Missing> {
        while !self.ended && self.solved.len() <= step {
            let offset_mm = self.offset_mm(self.solved.len());
            let solution = self.strand.solve(self.line.strand_offset_mm(offset_mm));
            match Missing::of(solution) {
                Err(Missing::NoPose) => self.ended = true,
                told => self.solved.push(told),
            }
        }
        self.solved.get(step).ok_or(Missing::NoPose)?.as_ref().map_err(|missing| *missing)
    }

    /// The last offset before the one without a pose, mm; none while every step asked for had one.
    pub fn end_mm(&self) -> Option<f64> {
        self.ended.then(|| self.offset_mm(self.solved.len().saturating_sub(1)))
    }
}
