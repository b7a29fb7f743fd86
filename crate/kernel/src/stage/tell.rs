//! What the stage tells a page: plain data, in mm and rad, with ids instead of words.

use super::{LoadView, Stage};
use crate::chain::{Dimension, Pair, Sizes, WornBore};
use crate::contact::{Contact, Kind, RoomPoint};
use crate::posing::{ContactState, Mark, Mode, Posing};
use crate::quantity::Quantity;
use crate::report::{GeometrySection, Overlap, PlaySection, named};
use crate::scenario::Corner;
use crate::table::Published;
use serde::Serialize;

/// How a slider may run.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Bounds {
    /// The gap now.
    pub value_mm: f64,
    /// The smallest that the slider offers; below zero the parts overlap.
    pub low_mm: f64,
    /// The largest that the slider offers.
    pub high_mm: f64,
    /// The key of the dimension that moves with it.
    pub moves: &'static str,
}

/// How many times too big gaps are drawn.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Factor {
    /// Now.
    pub value: u32,
    /// At the start: the most at which a turn to its stop is not drawn too steep to be seen large.
    pub start: u32,
    /// The most that is honest.
    pub cap: u32,
}

/// One size at an end of its limits.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct EndView {
    /// Which size.
    pub dimension: &'static str,
    /// `largest` or `smallest`.
    pub end: &'static str,
}

/// The extreme of the limits that stands on the stage.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct CornerView {
    /// `tightest`, `middle` or `loosest`.
    pub at: &'static str,
    /// The sizes that make it; none in the middle.
    pub ends: Vec<EndView>,
}

impl CornerView {
    fn of(stage: &Stage) -> Option<Self> {
        let limits = &stage.scenario.limits;
        let end = |(dimension, largest): (Dimension, bool)| EndView {
            dimension: dimension.key(),
            end: if largest { "largest" } else { "smallest" },
        };
        let ends = stage.corner.map_or_else(Vec::new, |corner| corner.ends(limits));
        (!limits.is_empty()).then(|| Self {
            at: stage.corner.map_or("middle", Corner::key),
            ends: ends.into_iter().map(end).collect(),
        })
    }
}

/// What stands on the stage.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct State {
    /// Whether the parts go together; if not, nothing is solved.
    pub fits: bool,
    /// What overlaps.
    pub interference: Vec<Overlap>,
    /// How the inner link is made.
    pub construction: &'static str,
    /// The number of the published size that this chain has.
    pub number: Option<&'static str>,
    /// Every size by its key, mm.
    #[serde(serialize_with = "named")]
    pub sizes: Vec<(&'static str, f64)>,
    /// Sizes that the published size does not fix: chosen.
    pub chosen: Vec<&'static str>,
    /// Sizes that took their defaults.
    pub defaulted: Vec<&'static str>,
    /// Every gap that has a slider.
    #[serde(serialize_with = "named")]
    pub gaps: Vec<(&'static str, Bounds)>,
    /// As in the report.
    pub geometry: GeometrySection,
    /// As in the report.
    pub play: Option<PlaySection>,
    /// Which extreme of the limits stands here; none without limits.
    pub corner: Option<CornerView>,
    /// How deep the joints on the stage have worn, mm.
    pub worn_mm: f64,
    /// How many times too big gaps are drawn.
    pub factor: Factor,
    /// The movement that is shown.
    pub mode: &'static str,
    /// How far the chain is along it.
    pub amplitude: f64,
    /// Whether it is pulled taut.
    pub taut: bool,
    /// What pulls at it where a load is shown.
    pub load: LoadView,
}

impl Stage {
    /// What stands on the stage.
    pub fn state(&self) -> State {
        let chain = self.chain();
        let middle = self.scenario.chain.chain();
        let published = Published::recognise(middle);
        let chosen = published.map(|size| size.fill(chain.construction).chosen);
        let keys =
            |dimensions: Vec<Dimension>| dimensions.into_iter().map(Dimension::key).collect();
        State {
            fits: self.posing.is_some(),
            interference: chain.interference().into_iter().map(Overlap::from).collect(),
            construction: chain.construction.key(),
            number: published.map(|size| size.number),
            sizes: Dimension::ALL.iter().map(|d| (d.key(), d.of(middle))).collect(),
            chosen: keys(chosen.unwrap_or_default()),
            defaulted: keys(self.scenario.chain.defaulted().collect()),
            gaps: Pair::ALL
                .iter()
                .map(|p| (Quantity::of_pair(*p).key(), bounds(*p, chain)))
                .collect(),
            geometry: self.geometry(),
            play: self.posing.is_some().then(|| PlaySection::of(chain)),
            corner: CornerView::of(self),
            worn_mm: self.worn_mm(),
            factor: Factor { value: self.factor, start: self.start(), cap: self.cap },
            mode: self.mode.key(),
            amplitude: self.share(),
            taut: self.taut,
            load: self.load_view(),
        }
    }

    /// How many times too big gaps are drawn at the start.
    fn start(&self) -> u32 {
        /// A strand that is drawn steeper needs a sheet so high that all on it is small: chosen.
        const STEEPEST_RAD: f64 = 0.21;
        let turn_rad = self.posing.as_ref().map_or(0.0, |posing| posing.play().turn.angle_rad);
        ((STEEPEST_RAD / turn_rad) as u32).clamp(1, self.cap)
    }

    /// What follows from the sizes; of a worn joint the clearance along the load, except where a twist
    /// is shown, which tilts its pin across.
    fn geometry(&self) -> GeometrySection {
        let chain = self.chain();
        let seen = if self.mode == Mode::Twist { WornBore::NONE } else { chain.worn };
        GeometrySection::of(&seen.plan_sizes(chain))
    }

    /// How the chain stands at this moment.
    pub fn live(&self) -> Live {
        self.posing.as_ref().map_or_else(Live::default, |posing| Live::of(posing, self.share()))
    }

    /// Every contact, those that touch first and numbered.
    pub fn contacts(&self) -> Vec<ContactLine> {
        let states = self.posing.as_ref().map_or(&[][..], Posing::contacts);
        states.iter().map(ContactLine::of).collect()
    }
}

/// The run of a gap's slider: from a little overlap to a loose fit, shares of the pitch, and no
/// further than the part that moves can go.
fn bounds(pair: Pair, s: &Sizes) -> Bounds {
    const OVERLAP: f64 = 0.004;
    const LOOSE_FIT: f64 = 0.03;
    const WIDE_GAP: f64 = 0.1;
    /// Share of the metal there is that a gap may take.
    const METAL: f64 = 0.9;
    let p = s.pitch_mm;
    let high_mm = match pair {
        Pair::PinBore => (LOOSE_FIT * p).min(METAL * (s.barrel_mm - s.pin_diameter_mm)),
        Pair::SideGap => WIDE_GAP * p,
        Pair::RollerBarrel => (LOOSE_FIT * p).min(METAL * (s.roller_diameter_mm - s.barrel_mm)),
        Pair::RollerPlates => (WIDE_GAP * p).min(METAL * s.inner_width_mm),
    };
    let value_mm = pair.gap_mm(s);
    Bounds {
        value_mm,
        low_mm: value_mm.min(-OVERLAP * p),
        high_mm: value_mm.max(high_mm),
        moves: pair.moves().key(),
    }
}

/// How the chain stands at this moment.
#[derive(Debug, Clone, Default, PartialEq, Serialize)]
pub struct Live {
    /// How far it is along the shown movement.
    pub amplitude: f64,
    /// Yaw of the inner link against the held one, rad.
    pub yaw_rad: f64,
    /// Offset of the inner link across, mm.
    pub offset_mm: f64,
    /// Yaw of the next outer link against the held one, rad.
    pub total_rad: f64,
    /// Offset of the next outer link's pin across, mm.
    pub total_offset_mm: f64,
    /// Twist of the inner link, rad.
    pub twist_rad: f64,
    /// Bend of the first joint, rad.
    pub bend_rad: f64,
    /// How many places touch.
    pub touching: usize,
    /// How many of them rub.
    pub rubbing: usize,
    /// How many are open.
    pub open: usize,
    /// What holds the first joint and the second: ids of the touching contacts.
    pub limited_by: Vec<String>,
    /// Whether a pin touches in its bore.
    pub pin_touches: bool,
    /// Whether plate faces touch.
    pub faces_touch: bool,
}

impl Live {
    fn of(posing: &Posing, amplitude: f64) -> Self {
        let (offset_mm, yaw_rad) = posing.first_joint();
        let states = posing.contacts();
        let count = |mark| states.iter().filter(|state| state.mark == mark).count();
        let touches = |state: &&ContactState| state.mark != Mark::Open;
        let touch_of = |kind| states.iter().filter(touches).any(|s| s.contact.kind == kind);
        Self {
            amplitude,
            yaw_rad,
            offset_mm,
            total_rad: posing.total_yaw_rad(),
            total_offset_mm: posing.pose().of(crate::contact::Body::NextOuter).y_mm,
            twist_rad: posing.twist_rad(),
            bend_rad: -posing.elevation().inner.yaw_rad,
            touching: count(Mark::Touching) + count(Mark::Rubbing),
            rubbing: count(Mark::Rubbing),
            open: count(Mark::Open),
            limited_by: states.iter().filter(touches).map(|s| s.contact.id()).collect(),
            pin_touches: touch_of(Kind::PinBore),
            faces_touch: touch_of(Kind::PlateFace),
        }
    }
}

/// One contact, as a line of a list.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct ContactLine {
    /// Its id.
    pub id: String,
    /// Which surfaces.
    pub kind: &'static str,
    /// Which joint.
    pub joint: &'static str,
    /// Near, far or the whole.
    pub end: &'static str,
    /// Left, right, below or above.
    pub side: &'static str,
    /// Whether it is the inner end of a collar.
    pub inner: bool,
    /// In which section it is seen: `plan`, `elevation` or `end`.
    pub view: &'static str,
    /// The true gap, mm.
    pub gap_mm: f64,
    /// `touching`, `rubbing` or `open`.
    pub mark: &'static str,
    /// Its number, from 1, when it touches.
    pub number: Option<u32>,
    /// How hard it presses under a load, N.
    pub force_n: f64,
}

impl ContactLine {
    fn of(state: &ContactState) -> Self {
        let Contact { kind, joint, end, side, inner } = state.contact;
        Self {
            id: state.contact.id(),
            kind: kind.key(),
            joint: joint.key(),
            end: end.key(),
            side: side.key(),
            inner,
            view: state.seen.key(),
            gap_mm: state.gap_mm,
            mark: state.mark.key(),
            number: state.number,
            force_n: state.push_n.length(),
        }
    }
}

/// A point of the room to move.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct RoomLine {
    /// Offset across, mm.
    pub offset_mm: f64,
    /// Yaw, rad.
    pub yaw_rad: f64,
    /// The contact that makes the edge from here to the next point.
    pub by: String,
}

/// The room to move and where the chain is in it.
#[derive(Debug, Clone, Default, PartialEq, Serialize)]
pub struct RoomView {
    /// The outline, anticlockwise.
    pub outline: Vec<RoomLine>,
    /// The first joint's offset now, mm.
    pub offset_mm: f64,
    /// The first joint's yaw now, rad.
    pub yaw_rad: f64,
}

impl RoomView {
    pub(super) fn of(outline: &[RoomPoint], posing: &Posing) -> Self {
        let line = |point: &RoomPoint| RoomLine {
            offset_mm: point.offset_mm,
            yaw_rad: point.yaw_rad,
            by: point.by.id(),
        };
        let (offset_mm, yaw_rad) = posing.first_joint();
        Self { outline: outline.iter().map(line).collect(), offset_mm, yaw_rad }
    }
}
