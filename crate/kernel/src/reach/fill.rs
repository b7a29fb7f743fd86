//! How a liquid creeps in.

use super::network::{NODES, Network, OUTSIDES};
use super::passage::Passage;

/// Millimetres in a metre.
const MM_PER_M: f64 = 1000.0;

/// The pull of a wetting liquid into a slot: 2 gamma cos(theta) / h, Pa; gamma in N/m, h in mm. Negative
/// where the liquid does not wet. Source: Young and Laplace, two walls.
pub fn capillary_pressure_pa(tension_n_per_m: f64, angle_rad: f64, height_mm: f64) -> f64 {
    2.0 * tension_n_per_m * libm::cos(angle_rad) * MM_PER_M / height_mm
}

/// When each passage of a network is full; none where the liquid does not come.
#[derive(Debug, Clone, PartialEq)]
pub struct Filled {
    /// By passage, s.
    pub times_s: Vec<Option<f64>>,
}

/// The front of the liquid at a place: when it arrived, and what it flows through behind.
#[derive(Clone, Copy)]
struct Front {
    time_s: f64,
    /// Pressure for a flow, Pa s/mm^3.
    resistance: f64,
}

impl Network {
    /// Fills the network from all its openings at once, the liquid under a pressure, Pa, besides its
    /// own pull. Air leaves ahead of it and resists nothing; weight is left out.
    ///
    /// In a passage of cross-section A, length L and resistance r L, behind others of resistance R, the
    /// front moves by A dx/dt = p / (R + r x), so that t = A (R L + r L^2 / 2) / p. For one slot alone
    /// that is 3 mu L^2 / (h gamma cos(theta)). Source: derived from slow slot flow, as Washburn's law is.
    pub fn fill(&self, viscosity_pa_s: f64, pressure_pa: impl Fn(&Passage) -> f64) -> Filled {
        let mut fronts: [Option<Front>; NODES] = [None; NODES];
        let outside = Front { time_s: 0.0, resistance: 0.0 };
        fronts[..OUTSIDES].fill(Some(outside));
        let advance = |front: Option<Front>, passage: &Passage| {
            let front = front.filter(|_| passage.is_open())?;
            let (pressure_pa, own) = (pressure_pa(passage), passage.conductance(viscosity_pa_s));
            let volume_mm3 = passage.area_mm2() * passage.length_mm;
            let takes_s = volume_mm3 * (front.resistance + 0.5 / own) / pressure_pa;
            let resistance = front.resistance + 1.0 / own;
            (pressure_pa > 0.0).then_some(Front { time_s: front.time_s + takes_s, resistance })
        };
        let mut times_s = vec![None; self.edges.len()];
        // Each round carries the front one passage further.
        for _ in 0..NODES {
            for (time_s, edge) in times_s.iter_mut().zip(&self.edges) {
                let forth = advance(fronts[edge.from], &edge.passage);
                let back = advance(fronts[edge.to], &edge.passage);
                fronts[edge.to] = earlier(fronts[edge.to], forth);
                fronts[edge.from] = earlier(fronts[edge.from], back);
                let full = earlier(forth, back);
                *time_s = full.map(|front| front.time_s);
            }
        }
        Filled { times_s }
    }
}

/// The front that arrived first.
fn earlier(one: Option<Front>, other: Option<Front>) -> Option<Front> {
    match (one, other) {
        (Some(a), Some(b)) => Some(if b.time_s < a.time_s { b } else { a }),
        (one, other) => one.or(other),
    }
}
