//! Two chains side by side: the figures that each question is answered with, of both, and what has
//! changed from the one to the other.

use crate::chain::Chain;
use crate::drive::{ChainLine, Crooked, Slim, Tired};
use crate::report::{
    DriveSection, FitSection, GeometrySection, PlaySection, ReachSection, SpanSection,
    SurfaceSection, WearSection, WidthSection,
};
use crate::scenario::{Corner, Scenario};
use serde::Serialize;

/// Figures by their keys, each of which ends in its unit.
pub type Figures = Vec<(&'static str, f64)>;

/// The questions that have figures, in their order on the page.
pub const QUESTIONS: [&str; 8] =
    ["give", "touch", "line", "fit", "wear", "reach", "surface", "width"];

/// One figure of two chains, held (a) and present (b).
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Pair {
    /// Its key, which ends in its unit.
    pub key: &'static str,
    /// Of the chain that is held; none where it has no such figure.
    pub a: Option<f64>,
    /// Of the present chain; none where it has no such figure.
    pub b: Option<f64>,
    /// b - a; none where either is missing.
    pub change: Option<f64>,
    /// `more`, `less`, `same`, or `none` where there is nothing to compare.
    pub way: &'static str,
}

impl Pair {
    /// The figure of a key in both; a difference of nothing but rounding is none.
    fn of(key: &'static str, a: Option<f64>, b: Option<f64>) -> Self {
        /// What rounding may leave of the larger figure.
        const ROUNDING: f64 = 1e-12;
        let change = a.zip(b).map(|(a, b)| {
            let change = b - a;
            if change.abs() <= ROUNDING * a.abs().max(b.abs()) { 0.0 } else { change }
        });
        let way = change.map_or("none", |change| match change {
            more if more > 0.0 => "more",
            less if less < 0.0 => "less",
            _ => "same",
        });
        Self { key, a, b, change, way }
    }
}

/// The figures of a held chain beside those of the present one: in the order of the present one,
/// then what only the other has.
pub fn pairs(a: &[(&'static str, f64)], b: &[(&'static str, f64)]) -> Vec<Pair> {
    let value = |of: &[(&'static str, f64)], key: &str| {
        of.iter().find(|(known, _)| *known == key).map(|(_, value)| *value)
    };
    let only = a.iter().filter(|(key, _)| value(b, key).is_none());
    let keys = b.iter().chain(only).map(|(key, _)| *key);
    keys.map(|key| Pair::of(key, value(a, key), value(b, key))).collect()
}

/// The figures of a question for a scenario: of the tightest or loosest chain of its limits, or of the
/// middle; what the limits themselves come to is of none of them. None where it cannot be asked.
pub fn figures(question: &str, scenario: &Scenario, corner: Option<Corner>) -> Figures {
    let one = corner.filter(|_| question != "fit").and_then(|corner| scenario.at(corner));
    let scenario = one.as_ref().unwrap_or(scenario);
    let chain = scenario.chain.chain();
    match question {
        "give" => give(chain),
        "touch" => touch(chain),
        "line" => line(scenario),
        "fit" => fit(scenario),
        _ if !chain.goes_together() => Vec::new(),
        "wear" => wear(scenario),
        "reach" => reach(scenario),
        "surface" => surface(scenario),
        "width" => width(scenario),
        _ => Vec::new(),
    }
}

/// One figure over the limits; none at an extreme that does not have it.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Span {
    /// Its key, which ends in its unit.
    pub key: &'static str,
    /// Of the tightest chain.
    pub tightest: Option<f64>,
    /// Of the loosest chain.
    pub loosest: Option<f64>,
}

/// The figures of a question that are others at the tightest chain of the limits than at the
/// loosest; none without limits.
pub fn spans(question: &str, scenario: &Scenario) -> Vec<Span> {
    let at = |corner| Some(figures(question, &scenario.at(corner)?, None));
    let (Some(tightest), Some(loosest)) = (at(Corner::Tightest), at(Corner::Loosest)) else {
        return Vec::new();
    };
    let differs = |pair: &Pair| pair.way != "same";
    let span = |Pair { key, a, b, .. }| Span { key, tightest: a, loosest: b };
    pairs(&tightest, &loosest).into_iter().filter(differs).map(span).collect()
}

/// How far it can give, and the two gaps that decide it.
fn give(chain: &Chain) -> Figures {
    let g = GeometrySection::of(chain);
    let mut told = vec![("side_gap_mm", g.side_gap_mm), ("pin_clearance_mm", g.pin_clearance_mm)];
    if chain.goes_together() {
        let p = PlaySection::of(chain);
        told.extend([
            ("turn_limit_rad", p.turn_limit_rad),
            ("offset_limit_mm", p.offset_limit_mm),
            ("shear_limit_rad", p.shear_limit_rad),
            ("twist_limit_rad", p.twist_limit_rad),
            ("side_bow_mm_per_m", p.side_bow_mm_per_m),
        ]);
    }
    told
}

/// The gaps between what can touch.
fn touch(chain: &Chain) -> Figures {
    let g = GeometrySection::of(chain);
    vec![
        ("pin_clearance_mm", g.pin_clearance_mm),
        ("side_gap_mm", g.side_gap_mm),
        ("roller_clearance_mm", g.roller_clearance_mm),
        ("roller_side_clearance_mm", g.roller_side_clearance_mm),
        ("bearing_width_mm", g.bearing_width_mm),
    ]
}

/// What a crooked line costs, the teeth's share of the offset included; nothing without a drive.
fn line(scenario: &Scenario) -> Figures {
    let Some(line) = ChainLine::of(scenario) else { return Vec::new() };
    let crooked = Crooked::of(&line);
    let (span, drive) = (SpanSection::of(&crooked), DriveSection::of(&crooked));
    let most = |numbers: &[f64]| numbers.iter().copied().fold(0.0, f64::max);
    let mut told = vec![
        ("free_aside_mm", span.free_offset_mm + span.tooth_float_mm),
        ("max_aside_mm", span.max_offset_mm + span.tooth_float_mm),
        ("loss_fraction_straight", drive.loss_fraction_straight),
    ];
    told.extend(drive.loss_fraction_offset.map(|loss| ("loss_fraction_offset", loss)));
    if let Some(elastic) = &span.elastic {
        told.push(("friction_multiple", most(&elastic.friction_multiple)));
        told.push(("pin_force_n", most(&elastic.pin_force_n)));
    }
    told
}

/// Whether every one will fit; nothing without demands.
fn fit(scenario: &Scenario) -> Figures {
    let Some(fit) = FitSection::of(scenario) else { return Vec::new() };
    let least = fit.demands.iter().map(|demand| demand.yield_fraction).fold(1.0, f64::min);
    let mut told = vec![
        ("yield_fraction", fit.yield_fraction),
        ("least_yield_fraction", least),
        ("apart_fraction", fit.apart_fraction),
    ];
    told.extend(fit.cost.map(|cost| ("cost_units", cost.total)));
    told
}

/// What wear adds: the scenario's, or what the question begins with.
fn wear(scenario: &Scenario) -> Figures {
    let Some(tired) = Tired::shown(scenario) else { return Vec::new() };
    let w = WearSection::at_once(&tired);
    let mut told = vec![
        ("joint_wear_mm", w.joint_wear_mm),
        ("elongation_fraction", w.elongation_fraction),
        ("limit_fraction", w.limit_fraction),
        ("gauge_reading_fraction", w.gauge_reading_fraction),
        ("sprocket_rise_mm", w.sprocket_rise_mm),
        ("turn_limit_worn_rad", w.turn_limit_worn_rad),
    ];
    told.extend(w.sag_mm.map(|sag_mm| ("sag_mm", sag_mm)));
    told
}

/// What can get in: the mean over all hidden faces, and the face that oil reaches last.
fn reach(scenario: &Scenario) -> Figures {
    let Some(asked) = &scenario.reach else { return Vec::new() };
    let told = ReachSection::of(scenario.chain.chain(), asked);
    let faces = told.faces.len().max(1) as f64;
    let mean =
        |of: fn(&crate::report::FaceSection) -> f64| told.faces.iter().map(of).sum::<f64>() / faces;
    let last_s = told.faces.iter().filter_map(|face| face.fill_time_s).fold(0.0, f64::max);
    vec![
        ("bristle_fraction", mean(|face| face.bristle_fraction)),
        ("particle_fraction", mean(|face| face.particle_fraction)),
        ("fill_time_s", last_s),
        ("pumped_mm3_per_cycle", told.pumped_mm3_per_cycle),
        ("pumped_aside_mm3_per_cycle", told.pumped_aside_mm3_per_cycle),
    ]
}

/// How smooth is smooth; nothing where no surface is stated.
fn surface(scenario: &Scenario) -> Figures {
    let Some(asked) = &scenario.surface else { return Vec::new() };
    let told = SurfaceSection::of(scenario.chain.chain(), asked);
    vec![
        ("seated_fraction", told.seated_fraction),
        ("film_ratio", told.film_ratio),
        ("first_touch_ratio", told.first_touch_ratio),
        ("ra_um", told.ra_um),
    ]
}

/// How narrow it can go.
fn width(scenario: &Scenario) -> Figures {
    let Some(slim) = Slim::of(scenario) else { return Vec::new() };
    let w = WidthSection::of(&slim);
    vec![
        ("width_over_pins_mm", w.width_over_pins_mm),
        ("side_gap_mm", w.side_gap_mm),
        ("free_offset_mm", w.free_offset_mm),
        ("plate_stress_mpa", w.plate_stress_mpa),
        ("pin_pressure_mpa", w.pin_pressure_mpa),
        ("clearance_left_mm", w.clearance_left_mm),
    ]
}

#[cfg(test)]
mod tests;
