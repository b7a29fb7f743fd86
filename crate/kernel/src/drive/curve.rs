//! What a crooked line costs at every offset: the curves of a chart and the marks on it.

use super::sweep::Sweep;
use super::{ChainLine, Cost, Missing};
use crate::chain::Chain;
use crate::friction::friction_band;
use crate::strand::{Ends, Strand};
use serde::Serialize;

/// A strand that is compared with others.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Variant {
    /// Elastic joints of the drive's stiffness, ends held: the answer.
    Elastic,
    /// Rigid joints, ends held.
    Rigid,
    /// Half as stiff.
    Softer,
    /// Twice as stiff.
    Stiffer,
    /// Elastic, the end links free to turn on their teeth: the least that it can cost.
    Hinged,
    /// Elastic, half as much side gap again.
    Wider,
    /// Elastic, half the side gap.
    Tighter,
}

/// How much stiffer or softer a joint of the band is.
const STIFFNESS_BAND: f64 = 2.0;
/// Side gaps that are compared, in side gaps of the chain.
const WIDER_GAP: f64 = 1.5;
const TIGHTER_GAP: f64 = 0.5;
/// A pin bears on both ends of its bore once its forces exceed the pull by this share: the
/// straightness of a strand under way takes some tenths of a percent by itself.
const BEARS_FROM: f64 = 0.01;
/// What losses are a share of, W.
const OF_W: f64 = 100.0;

impl Variant {
    /// Every variant.
    pub const ALL: &'static [Self] = &[
        Self::Elastic,
        Self::Rigid,
        Self::Softer,
        Self::Stiffer,
        Self::Hinged,
        Self::Wider,
        Self::Tighter,
    ];

    /// The key in the data of a page.
    pub fn key(self) -> &'static str {
        match self {
            Self::Elastic => "elastic",
            Self::Rigid => "rigid",
            Self::Softer => "softer",
            Self::Stiffer => "stiffer",
            Self::Hinged => "hinged",
            Self::Wider => "wider",
            Self::Tighter => "tighter",
        }
    }

    /// The drive that is solved; none where its chain cannot be built.
    fn line(self, line: &ChainLine) -> Option<ChainLine> {
        let times = match self {
            Self::Wider => WIDER_GAP,
            Self::Tighter => TIGHTER_GAP,
            _ => return Some(*line),
        };
        let mut sizes = line.sizes;
        let more_mm = (times - 1.0) * sizes.side_gap_mm();
        sizes.outer_spacing_mm += more_mm;
        sizes.pin_length_mm += more_mm;
        Chain::new(sizes).ok().map(|_| ChainLine { sizes, ..*line })
    }

    /// The strand of this variant, not yet solved; none where its chain cannot be built.
    pub fn strand(self, line: &ChainLine) -> Option<Strand> {
        let stiffness = match self {
            Self::Rigid => None,
            Self::Softer => Some(line.joint_n_mm_per_rad / STIFFNESS_BAND),
            Self::Stiffer => Some(line.joint_n_mm_per_rad * STIFFNESS_BAND),
            _ => Some(line.joint_n_mm_per_rad),
        };
        let ends = if self == Self::Hinged { Ends::Hinged } else { Ends::Held };
        Some(self.line(line)?.strand(stiffness, ends))
    }

    /// The sweep of this variant in steps of an offset, mm; none where its chain cannot be built.
    pub fn sweep(self, line: &ChainLine, step_mm: f64) -> Option<Sweep> {
        Some(Sweep::new(&self.line(line)?, self.strand(line)?, step_mm))
    }
}

/// One offset of a curve.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Sample {
    /// Offset of the wheels.
    pub offset_mm: f64,
    /// Times as much as straight, at the joint of the two that costs more; none without friction.
    pub friction_multiple: Option<f64>,
    /// Loss at pins and faces, of the power carried.
    pub loss_fraction: f64,
    /// The same in watts of 100.
    pub loss_w: f64,
    /// That at the ends of the handbook order of friction, pins and faces in step; none without
    /// friction.
    pub band_w: Option<[f64; 2]>,
}

impl Sample {
    fn new(line: &ChainLine, offset_mm: f64, cost: &Cost) -> Self {
        let loss_w = OF_W * cost.loss_fraction;
        Self {
            offset_mm,
            friction_multiple: cost.multiple(),
            loss_fraction: cost.loss_fraction,
            loss_w,
            band_w: friction_band(loss_w, line.running.rubbing.friction.pin),
        }
    }
}

/// The cost of one variant at growing offsets; it ends where the next step has no pose.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Curve {
    /// The key of the variant.
    pub variant: &'static str,
    /// The offset up to which nothing turns.
    pub free_mm: f64,
    /// Where the first pin begins to bear on both ends of its bore; none on this curve.
    pub onset_mm: Option<f64>,
    /// The last offset that has a pose, where the curve ends before the chart does.
    pub end_mm: Option<f64>,
    /// Offsets at which the solve came to no rest: the curve goes over them.
    pub unsettled_mm: Vec<f64>,
    /// The samples.
    pub samples: Vec<Sample>,
}

impl Curve {
    /// The curve of a sweep up to an offset, mm.
    pub fn of(variant: Variant, sweep: &mut Sweep, to_mm: f64) -> Self {
        let (line, steps) = (*sweep.line(), sweep.step(to_mm));
        let (mut samples, mut unsettled_mm) = (Vec::with_capacity(steps + 1), Vec::new());
        let mut onset = Onset::default();
        for step in 0..=steps {
            let offset_mm = sweep.offset_mm(step);
            let ends = match sweep.at(step) {
                Ok(solution) => ChainLine::end_loads(solution),
                Err(Missing::NoPose) => break,
                Err(_) => {
                    unsettled_mm.push(offset_mm);
                    continue;
                }
            };
            onset.pass(offset_mm, ends[0].pin_n.max(ends[1].pin_n) / line.running.tight_n - 1.0);
            samples.push(Sample::new(&line, offset_mm, &line.cost(&ends)));
        }
        let (variant, free_mm, end_mm) = (variant.key(), line.free_mm(), sweep.end_mm());
        Self { variant, free_mm, onset_mm: onset.at_mm, end_mm, unsettled_mm, samples }
    }
}

/// Looks for the offset at which a pin begins to carry more than the pull.
#[derive(Default)]
struct Onset {
    before: (f64, f64),
    at_mm: Option<f64>,
}

impl Onset {
    /// Takes the next offset, mm, and the share by which a pin's forces exceed the pull there.
    fn pass(&mut self, offset_mm: f64, excess: f64) {
        let (before_mm, before) = self.before;
        if self.at_mm.is_none() && excess > BEARS_FROM {
            let share = (BEARS_FROM - before) / (excess - before);
            self.at_mm = Some(before_mm + share.clamp(0.0, 1.0) * (offset_mm - before_mm));
        }
        self.before = (offset_mm, excess);
    }
}

/// The marks of a chart, offsets of the wheels.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Marks {
    /// What the teeth take up.
    pub float_mm: f64,
    /// Up to here the links only slide in their side gaps.
    pub free_mm: f64,
    /// From here a pin of rigid joints bears on both ends of its bore.
    pub onset_mm: Option<f64>,
    /// No rigid pose exists beyond.
    pub end_mm: Option<f64>,
    /// Where the scenario's wheels stand.
    pub offset_mm: f64,
}

/// Everything that the chart of a crooked line shows.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Curves {
    /// Where the chart ends.
    pub to_mm: f64,
    /// The marks.
    pub marks: Marks,
    /// The curves of the variants that can be built, in the order of [`Variant::ALL`].
    pub curves: Vec<Curve>,
}

impl Marks {
    /// The marks of a drive, those of rigid joints from the curve of that variant.
    pub fn of(line: &ChainLine, curves: &[Curve]) -> Self {
        let rigid = curves.iter().find(|curve| curve.variant == Variant::Rigid.key());
        Self {
            float_mm: line.float_mm(),
            free_mm: line.free_mm(),
            onset_mm: rigid.and_then(|curve| curve.onset_mm),
            end_mm: rigid.and_then(|curve| curve.end_mm),
            offset_mm: line.layout.offset_mm,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_onset_is_read_between_two_samples() {
        let mut onset = Onset::default();
        for (offset_mm, excess) in [(0.0, 0.0), (5.0, 0.0), (6.0, 0.04), (7.0, 0.2)] {
            onset.pass(offset_mm, excess);
        }
        assert!(onset.at_mm.is_some_and(|at_mm| (at_mm - 5.25).abs() < 1e-12));
    }

    #[test]
    fn a_strand_that_never_bears_has_no_onset() {
        let mut onset = Onset::default();
        onset.pass(5.0, 0.002);
        assert_eq!(onset.at_mm, None);
    }
}
