//! The drive of a page: its strands are kept as the offset slides, so that each step costs one warm
//! solve and a step back costs none.

use super::curve::{Curve, Curves, Marks, Variant};
use super::sweep::Sweep;
use super::view::LineView;
use super::{ChainLine, Cost, Costs, Missing};

/// The strands of every variant of a drive, solved as far as they were asked for.
pub struct Study {
    line: ChainLine,
    largest_mm: f64,
    step_mm: f64,
    to_mm: f64,
    sweeps: Vec<(Variant, Option<Sweep>)>,
}

/// An offset this near to a step, in steps, is on it.
const ON_A_STEP: f64 = 1e-9;
/// Where a chart ends, in largest offsets of rigid joints.
const TO: f64 = 1.1;

impl Study {
    /// A study of a drive up to a tenth past the largest offset that rigid joints reach, in at most
    /// so many steps of a round length.
    pub fn of(line: &ChainLine, steps: u32) -> Self {
        let largest_mm = line.largest_mm() + line.float_mm();
        let step_mm = round_step_mm(TO * largest_mm / f64::from(steps.max(1)));
        let to_mm = step_mm * libm::ceil(TO * largest_mm / step_mm);
        let sweeps = Variant::ALL.iter().map(|&variant| (variant, variant.sweep(line, step_mm)));
        Self { line: *line, largest_mm, step_mm, to_mm, sweeps: sweeps.collect() }
    }

    /// Whether this is a study of the same drive, whatever its offset.
    pub fn is_of(&self, line: &ChainLine) -> bool {
        let mut same = self.line;
        same.layout.offset_mm = line.layout.offset_mm;
        same == *line
    }

    /// Where the chart ends, mm.
    pub fn to_mm(&self) -> f64 {
        self.to_mm
    }

    /// Between two offsets that are solved, mm.
    pub fn step_mm(&self) -> f64 {
        self.step_mm
    }

    /// The largest offset of the wheels with rigid joints, mm.
    pub fn largest_mm(&self) -> f64 {
        self.largest_mm
    }

    fn sweep(&mut self, variant: Variant) -> Option<&mut Sweep> {
        let found = self.sweeps.iter_mut().find(|(of, _)| *of == variant)?;
        found.1.as_mut()
    }

    /// The curve of a variant; none where its chain cannot be built.
    pub fn curve(&mut self, variant: Variant) -> Option<Curve> {
        let to_mm = self.to_mm;
        Some(Curve::of(variant, self.sweep(variant)?, to_mm))
    }

    /// Every curve and the marks, with the offset of the drive as it is now, mm.
    pub fn curves(&mut self, offset_mm: f64) -> Curves {
        let curves: Vec<_> =
            Variant::ALL.iter().filter_map(|&variant| self.curve(variant)).collect();
        let mut marks = Marks::of(&self.line, &curves);
        (marks.offset_mm, marks.end_mm) = (offset_mm, Some(self.largest_mm));
        Curves { to_mm: self.to_mm, marks, curves }
    }

    /// What an offset costs a variant, mm, at the nearest step.
    ///
    /// # Errors
    /// Why there is no answer.
    pub fn cost(&mut self, variant: Variant, offset_mm: f64) -> Result<Cost, Missing> {
        let sweep = self.sweep(variant).ok_or(Missing::NoPose)?;
        let (line, step) = (*sweep.line(), sweep.step(offset_mm));
        Ok(line.cost_of(sweep.at(step)?))
    }

    /// What an offset costs these variants, mm, the others left out: from the strands that are kept
    /// where it is one of the steps, else solved anew.
    pub fn costs(&mut self, offset_mm: f64, asked: &[Variant]) -> Costs {
        let mut line = self.line;
        line.layout.offset_mm = offset_mm;
        let steps = offset_mm.abs() / self.step_mm;
        if (steps - libm::round(steps)).abs() > ON_A_STEP || offset_mm.abs() > self.to_mm {
            return Costs::some(&line, asked);
        }
        let largest_mm = self.largest_mm - line.float_mm();
        Costs::by(&line, largest_mm, asked, |variant| self.cost(variant, offset_mm))
    }

    /// The strand of a variant at the step nearest to an offset, mm, to its side; none without an
    /// answer.
    pub fn view(&mut self, variant: Variant, offset_mm: f64) -> Option<LineView> {
        let sweep = self.sweep(variant)?;
        let (line, step) = (*sweep.line(), sweep.step(offset_mm));
        let at_mm = sweep.offset_mm(step);
        let view = LineView::of(&line, sweep.at(step).ok()?, at_mm);
        Some(if offset_mm < 0.0 { view.mirrored() } else { view })
    }
}

/// The least of 1, 2, 5, 10, 20, ... and of 0.5, 0.2, 0.1, ... mm that is at least so long.
fn round_step_mm(least_mm: f64) -> f64 {
    const FOLLOWING: [f64; 3] = [2.0, 5.0, 10.0];
    /// No step is shorter, mm.
    const SHORTEST_MM: f64 = 0.001;
    let mut decade_mm = SHORTEST_MM;
    while decade_mm * FOLLOWING[2] < least_mm {
        decade_mm *= FOLLOWING[2];
    }
    let times = FOLLOWING.into_iter().find(|times| decade_mm * times >= least_mm);
    if least_mm <= decade_mm { decade_mm } else { decade_mm * times.unwrap_or(1.0) }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn steps_are_round_and_long_enough() {
        const ROUNDING: f64 = 1e-12;
        let of = [(0.0, 0.001), (0.43, 0.5), (0.5, 0.5), (0.51, 1.0), (3.0, 5.0), (12.0, 20.0)];
        for (least_mm, expected_mm) in of {
            let got_mm = round_step_mm(least_mm);
            assert!((got_mm / expected_mm - 1.0).abs() < ROUNDING, "{least_mm} {got_mm}");
        }
    }
}
