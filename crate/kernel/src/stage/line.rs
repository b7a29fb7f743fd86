//! The drive of a scenario: what its offset costs, answered as it slides.

use crate::answer::{Answer, line};
use crate::bow::{BowView, SideBow};
use crate::drive::{Arrangement, ChainLine, Curve, LineView, Study, Variant, Wanted};
use crate::error::Error;
use crate::scenario::Scenario;
use serde::Serialize;

/// Offsets between a straight line and the end of the chart, at most.
const STEPS: u32 = 60;
/// What is told beside the answer.
const TOLD: &[Variant] = &[Variant::Softer, Variant::Stiffer, Variant::Hinged];

/// What a page shows of a drive at its own offset.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct LineState {
    /// Offset of the wheels, whichever way.
    pub offset_mm: f64,
    /// Offset of the driven wheel, positive to the far side, as the view shows it.
    pub aside_mm: f64,
    /// Between two offsets of the slider.
    pub step_mm: f64,
    /// Where chart and slider end.
    pub to_mm: f64,
    /// Up to here the links only slide in their side gaps.
    pub free_mm: f64,
    /// No pose of rigid links exists beyond.
    pub reach_mm: f64,
    /// Joints of the strand between the wheels.
    pub joints: usize,
    /// Pull of the tight strand.
    pub tight_n: f64,
    /// Whether the pins rub at all.
    pub pins_rub: bool,
    /// Ids and numbers of the sentences.
    pub answers: Vec<Answer>,
    /// The strand between its wheels, joints elastic; none where the first answer says why.
    pub view: Option<LineView>,
}

/// The strands of the drive that was last asked for, kept while only its offset changes.
#[derive(Default)]
pub struct LineDesk {
    study: Option<Study>,
}

impl LineDesk {
    /// The drive of a scenario and the study of it; none without a drive, or where the
    /// chain does not go together.
    fn study(&mut self, scenario: &Scenario) -> Option<(ChainLine, &mut Study)> {
        let line = ChainLine::of(scenario)?;
        if !self.study.as_ref().is_some_and(|study| study.is_of(&line)) {
            self.study = Some(Study::of(&line, STEPS));
        }
        self.study.as_mut().map(|study| (line, study))
    }

    /// The drive at its offset; none without a drive, or where the chain does not go together.
    pub fn state(&mut self, scenario: &Scenario) -> Option<LineState> {
        self.told(scenario, TOLD)
    }

    /// The same without what other assumptions say of the joints and the ends: the answer alone, for a
    /// hand that slides.
    pub fn quick_state(&mut self, scenario: &Scenario) -> Option<LineState> {
        self.told(scenario, &[])
    }

    fn told(&mut self, scenario: &Scenario, besides: &[Variant]) -> Option<LineState> {
        let (drive, study) = self.study(scenario)?;
        let aside_mm = drive.layout.offset_mm + 0.0;
        let offset_mm = aside_mm.abs();
        let costs = study.costs(offset_mm, besides);
        let view = costs.cost().and_then(|_| study.view(Variant::Elastic, aside_mm));
        Some(LineState {
            offset_mm,
            aside_mm,
            step_mm: study.step_mm(),
            to_mm: study.to_mm(),
            free_mm: drive.free_mm(),
            reach_mm: study.largest_mm(),
            joints: drive.joints(),
            tight_n: drive.running.tight_n,
            pins_rub: drive.straight().multiples.is_some(),
            answers: line(&costs),
            view,
        })
    }

    /// What the wheels of an arrangement cost in the scenario's drive; none without a drive, or where
    /// the chain does not go together. Every fault of the arrangement, by the name of its field.
    pub fn gears(scenario: &Scenario, wanted: &Wanted) -> Result<Option<Arrangement>, Vec<Error>> {
        let gears = wanted.gears()?;
        Ok(ChainLine::of(scenario).map(|line| Arrangement::of(&line, &gears)))
    }

    /// The scenario's chain laid on its side, in as many links as reach a length, mm; none where it
    /// does not go together.
    pub fn bow(scenario: &Scenario, reach_mm: f64) -> Option<BowView> {
        let chain = scenario.chain.chain();
        chain.goes_together().then(|| BowView::of(&SideBow::of(chain.sizes(), reach_mm)))
    }

    /// The curve of a variant by its key; none without a drive or where its chain cannot be built.
    pub fn curve(&mut self, scenario: &Scenario, variant: &str) -> Option<Curve> {
        let variant = Variant::ALL.iter().copied().find(|known| known.key() == variant)?;
        self.study(scenario)?.1.curve(variant)
    }
}

#[cfg(test)]
mod tests;
