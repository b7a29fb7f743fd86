//! Everything that is worked out of a scenario, as plain data.
//!
//! Every key ends in its unit. A section that does not apply is absent. No number is NaN, infinite
//! or negative zero.

mod drive;
mod fit;
mod reach;
mod surface;
mod wear;
mod width;

pub use drive::{DriveSection, SpanSection, StrandSection};
pub use fit::{
    AllocationSection, CostSection, DemandSection, FitSection, MatchingSection, PercentileSection,
};
pub use reach::{FaceSection, ReachSection};
pub use surface::SurfaceSection;
pub use wear::{GAUGE_PITCHES, WearSection};
pub use width::WidthSection;

use crate::chain::{Chain, Interference, Sizes};
use crate::contact::Play;
use crate::drive::{ChainLine, Crooked, Slim, Tired};
use crate::scenario::{Corner, FORMAT, Scenario};
use serde::{Serialize, Serializer};

/// The report of one scenario.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Report {
    /// As in the scenario.
    pub title: String,
    /// As in the scenario.
    pub format: u32,
    /// What follows from the sizes by addition.
    pub geometry: GeometrySection,
    /// How far the chain can give; absent when it does not go together.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub play: Option<PlaySection>,
    /// The overlaps of a chain that does not go together.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub interference: Option<Vec<Overlap>>,
    /// The tight strand between the wheels.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub span: Option<SpanSection>,
    /// The drive: articulation and losses.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub drive: Option<DriveSection>,
    /// What gets in between its parts.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub reach: Option<ReachSection>,
    /// A rough face of the chain.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub surface: Option<SurfaceSection>,
    /// What wear has added.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub wear: Option<WearSection>,
    /// Many chains of one drawing: yields, sorting, cost.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub fit: Option<FitSection>,
    /// Where the width goes.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub width: Option<WidthSection>,
    /// The same answers at the extremes of the limits.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub range: Option<RangeSection>,
}

/// Sums and differences of sizes, mm.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct GeometrySection {
    /// b2 = b1 + 2 ti.
    pub inner_link_width_mm: f64,
    /// a = b3 - b2, in total.
    pub side_gap_mm: f64,
    /// c = d3 - d2, on the diameter.
    pub pin_clearance_mm: f64,
    /// Roller bore less barrel, on the diameter.
    pub roller_clearance_mm: f64,
    /// b1 less roller length, in total.
    pub roller_side_clearance_mm: f64,
    /// B, between the outermost effective ends of the bore.
    pub bearing_width_mm: f64,
    /// Over the heads of a pin.
    pub width_over_pins_mm: f64,
}

/// How far a chain can give.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct PlaySection {
    /// The inner link against one held outer link.
    pub yaw_limit_rad: f64,
    /// What stops it: `pin` or `face`.
    pub yaw_limited_by: &'static str,
    /// The inner link aside without turning, each way.
    pub offset_limit_mm: f64,
    /// The next outer link against the held one, across one inner link.
    pub turn_limit_rad: f64,
    /// The inner link between two outer links held parallel.
    pub shear_limit_rad: f64,
    /// The inner link about the chain's own axis.
    pub twist_limit_rad: f64,
    /// Bow of a free strand laid on its side, without lateral play.
    pub side_bow_mm_per_m: f64,
}

/// Two parts that overlap.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Overlap {
    /// The gap that is too small: `pin_bore`, `side_gap`, `roller_barrel` or `roller_plates`.
    pub between: &'static str,
    /// By how much.
    pub too_little_mm: f64,
}

/// The extremes of the limits.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct RangeSection {
    /// Where the chain can give least.
    pub tightest: Extreme,
    /// Where the chain can give most.
    pub loosest: Extreme,
}

/// One extreme: its play, or its overlaps when it does not go together.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Extreme {
    /// How far the chain can give.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub play: Option<PlaySection>,
    /// The overlaps of a chain that does not go together.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub interference: Option<Vec<Overlap>>,
}

/// Writes pairs of name and value as one object, in their order.
pub fn named<V: Serialize, S: Serializer>(
    pairs: &[(&'static str, V)],
    serializer: S,
) -> Result<S::Ok, S::Error> {
    serializer.collect_map(pairs.iter().map(|(name, value)| (name, value)))
}

impl Report {
    /// The report of a scenario.
    pub fn of(scenario: &Scenario) -> Self {
        let chain = scenario.chain.chain();
        let middle = Extreme::of(chain);
        let crooked = ChainLine::of(scenario).map(|line| Crooked::of(&line));
        let solved = middle.interference.is_none();
        Self {
            title: scenario.title.clone(),
            format: FORMAT,
            geometry: GeometrySection::of(chain),
            play: middle.play,
            interference: middle.interference,
            span: crooked.as_ref().map(SpanSection::of),
            drive: crooked.as_ref().map(DriveSection::of),
            reach: scenario
                .reach
                .as_ref()
                .filter(|_| solved)
                .map(|reach| ReachSection::of(chain, reach)),
            surface: scenario
                .surface
                .as_ref()
                .filter(|_| solved)
                .map(|surface| SurfaceSection::of(chain, surface)),
            wear: Tired::of(scenario).as_ref().map(WearSection::of),
            fit: FitSection::of(scenario),
            width: scenario.width.and_then(|_| Slim::of(scenario)).as_ref().map(WidthSection::of),
            range: RangeSection::of(scenario).filter(|_| solved),
        }
    }
}

impl GeometrySection {
    /// The section of a chain.
    pub fn of(chain: &Sizes) -> Self {
        Self {
            inner_link_width_mm: plain(chain.inner_link_width_mm()),
            side_gap_mm: plain(chain.side_gap_mm()),
            pin_clearance_mm: plain(chain.pin_clearance_mm()),
            roller_clearance_mm: plain(chain.roller_clearance_mm()),
            roller_side_clearance_mm: plain(chain.roller_side_clearance_mm()),
            bearing_width_mm: plain(chain.bearing_width_mm()),
            width_over_pins_mm: plain(chain.width_over_pins_mm()),
        }
    }
}

impl PlaySection {
    /// The section of a chain that goes together.
    pub fn of(chain: &Chain) -> Self {
        let play = Play::of(chain);
        Self {
            yaw_limit_rad: room(play.yaw.angle_rad),
            yaw_limited_by: play.yaw.by.key(),
            offset_limit_mm: room(play.offset_mm),
            turn_limit_rad: room(play.turn.angle_rad),
            shear_limit_rad: room(play.shear.angle_rad),
            twist_limit_rad: room(play.twist.angle_rad),
            side_bow_mm_per_m: room(play.side_bow_mm_per_m),
        }
    }
}

impl From<Interference> for Overlap {
    fn from(interference: Interference) -> Self {
        Self {
            between: interference.between.key(),
            too_little_mm: plain(interference.too_little_mm),
        }
    }
}

impl Extreme {
    /// What a chain can do, or why it does not go together.
    pub fn of(chain: &Chain) -> Self {
        let overlaps: Vec<_> = chain.interference().into_iter().map(Overlap::from).collect();
        if overlaps.is_empty() {
            Self { play: Some(PlaySection::of(chain)), interference: None }
        } else {
            Self { play: None, interference: Some(overlaps) }
        }
    }
}

impl RangeSection {
    /// The section of a scenario; none without limits, or where an extreme of theirs is no chain,
    /// which the reader of scenarios refuses.
    pub fn of(scenario: &Scenario) -> Option<Self> {
        let (middle, limits) = (scenario.chain.chain(), &scenario.limits);
        let at = |corner: Corner| Chain::new(corner.sizes(middle, limits)).ok();
        let tightest = at(Corner::Tightest).filter(|_| !limits.is_empty())?;
        let loosest = at(Corner::Loosest)?;
        Some(Self { tightest: Extreme::of(&tightest), loosest: Extreme::of(&loosest) })
    }
}

/// Room is never less than none: a gap of nothing but rounding may be a hair below zero.
fn room(number: f64) -> f64 {
    plain(number.max(0.0))
}

/// The same number, never negative zero.
fn plain(number: f64) -> f64 {
    number + 0.0
}
