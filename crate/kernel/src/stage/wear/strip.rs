//! A rule and a gauge laid on the same taut chain.

use crate::chain::Sizes;
use crate::report::GAUGE_PITCHES;
use crate::wear::Length;
use serde::Serialize;

/// Gaps and wear are drawn at most so many times too big.
const MOST_TIMES: u32 = 30;
/// What wear and gaps may add to the drawn strip, in pitches.
const MOST_LONGER: f64 = 0.7;

/// The picture: everything along the chain from the first pin, drawn.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct StripView {
    /// How many times too big wear and gaps are drawn.
    pub times: u32,
    /// Pitches between the ends.
    pub pitches: u32,
    /// Pins of the taut chain; the first link is an inner one.
    pub pins_mm: Vec<f64>,
    /// Marks of the rule, a pitch apart.
    pub marks_mm: Vec<f64>,
    /// The gauge's two faces: against the first roller and against the last.
    pub gauge_mm: [f64; 2],
    /// Where the second face would be on a chain of whole pitches and rollers without play.
    pub nominal_mm: f64,
    /// The two rollers that it pushes apart.
    pub rollers_mm: [f64; 2],
    /// Radius of a roller.
    pub roller_mm: f64,
    /// Drawn excess of the rule's reading.
    pub rule_over_mm: f64,
    /// Drawn excess of the gauge's reading.
    pub gauge_over_mm: f64,
    /// True excess of the rule's reading over these pitches.
    pub rule_true_mm: f64,
    /// True excess of the gauge's reading.
    pub gauge_true_mm: f64,
}

impl StripView {
    /// The strip of a worn chain.
    pub fn of(sizes: &Sizes, length: &Length) -> Self {
        let (p, count) = (sizes.pitch_mm, f64::from(GAUGE_PITCHES));
        let rule_true_mm = length.rule_fraction() * count * p;
        let gauge_true_mm = length.gauge_fraction(count) * count * p;
        let times = times(gauge_true_mm, p);
        let factor = f64::from(times);
        let (rule_over_mm, gauge_over_mm) = (factor * rule_true_mm, factor * gauge_true_mm);
        // An outer link holds its pins p apart; an inner one lets each lie at its bore's worn side.
        let inner_mm = p + 2.0 * rule_over_mm / count;
        let pin = |i: u32| f64::from(i.div_ceil(2)) * inner_mm + f64::from(i / 2) * p;
        let roller_mm = 0.5 * sizes.roller_diameter_mm;
        let push_mm = 0.5 * factor * sizes.roller_clearance_mm();
        let end_mm = pin(GAUGE_PITCHES);
        let rollers_mm = [-push_mm, end_mm + push_mm];
        Self {
            times,
            pitches: GAUGE_PITCHES,
            pins_mm: (0..=GAUGE_PITCHES).map(pin).collect(),
            marks_mm: (0..=GAUGE_PITCHES).map(|i| f64::from(i) * p).collect(),
            gauge_mm: [rollers_mm[0] + roller_mm, rollers_mm[1] - roller_mm],
            nominal_mm: rollers_mm[0] + count * p - roller_mm,
            rollers_mm,
            roller_mm,
            rule_over_mm,
            gauge_over_mm,
            rule_true_mm,
            gauge_true_mm,
        }
    }
}

fn times(over_mm: f64, pitch_mm: f64) -> u32 {
    let fits = |times: &u32| f64::from(*times) * over_mm <= MOST_LONGER * pitch_mm;
    (1..=MOST_TIMES).take_while(fits).last().unwrap_or(1)
}
