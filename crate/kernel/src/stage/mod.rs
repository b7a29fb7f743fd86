//! What is on the stage: a scenario, its chain posed by hand, and how it is shown.
//!
//! A pure state machine: every call of a page is one function here, so that what the page does can
//! be tested without one. Data flows one way, from the scenario to the pose; a change that would
//! break a rule is refused whole and the last good chain stays.

mod end;
mod enter;
mod fit;
mod hand;
mod line;
mod load;
mod rough;
mod shape;
mod tell;
mod twin;
mod wear;
mod width;

pub use enter::{EnterDesk, EnterState, EnterView, MetalView, WallView};
pub use fit::{ChanceView, FitDesk, FitState, MatchView, TriedView, bought};
pub use line::{LineDesk, LineState};
pub use load::LoadView;
pub use rough::RoughState;
pub use shape::Shape;
pub use tell::{Bounds, ContactLine, CornerView, EndView, Factor, Live, RoomLine, RoomView, State};
pub use wear::WearState;
pub use width::WidthState;

use crate::chain::{Chain, Construction, Dimension, Pair};
use crate::contact::{room, widen};
use crate::error::{Error, Rule};
use crate::motion::Motion;
use crate::posing::{Ask, Mode, Posing, cap};
use crate::quantity::Quantity;
use crate::report::Report;
use crate::scenario::{Corner, Scenario, Value};
use crate::table::{PUBLISHED, Published};
use end::End;
use hand::Hand;

/// Teeth of the wheel whose bend the side view shows when the scenario names none.
const TEETH: f64 = 16.0;

/// A scenario on the stage.
pub struct Stage {
    scenario: Scenario,
    corner: Option<Corner>,
    /// The true chain: the scenario's, or the one at an extreme of its limits.
    chain: Chain,
    drawn: Chain,
    posing: Option<Posing>,
    wished_factor: Option<u32>,
    factor: u32,
    cap: u32,
    mode: Mode,
    taut: bool,
    springy: bool,
    worn_mm: f64,
    hand: Hand,
    end: Option<End>,
}

impl Default for Stage {
    /// A bushed chain of the first published size, until a scenario is loaded.
    fn default() -> Self {
        let file = PUBLISHED[0].fill(Construction::Bushed).file();
        match Scenario::read(&file) {
            Ok(scenario) => Self::new(scenario),
            Err(_) => unreachable!("every published size is a chain"),
        }
    }
}

impl Stage {
    /// A scenario on the stage, straight.
    pub fn new(scenario: Scenario) -> Self {
        let cap = cap(scenario.chain.chain());
        let mut stage = Self {
            corner: None,
            chain: *scenario.chain.chain(),
            drawn: *scenario.chain.chain(),
            scenario,
            posing: None,
            wished_factor: None,
            factor: 1,
            cap,
            mode: Mode::Turn,
            taut: false,
            springy: false,
            worn_mm: 0.0,
            hand: Hand::Empty,
            end: None,
        };
        stage.build(Ask::Share { mode: Mode::Turn, share: 0.0 });
        stage
    }

    /// Puts another scenario on the stage, shown and asked as the last one was.
    ///
    /// # Errors
    /// Every fault of the scenario; what is on the stage stays.
    pub fn load(&mut self, file: &Value) -> Result<(), Vec<Error>> {
        self.take(Scenario::read(file)?);
        Ok(())
    }

    /// The scenario as it stands.
    pub fn scenario(&self) -> &Scenario {
        &self.scenario
    }

    /// The scenario of the chain at the extreme of the limits that stands here.
    pub fn standing(&self) -> Option<Scenario> {
        self.corner.and_then(|corner| self.scenario.at(corner))
    }

    /// The true chain.
    pub fn chain(&self) -> &Chain {
        &self.chain
    }

    /// The extreme of the limits that stands here; none for the middle of them.
    pub fn corner(&self) -> Option<Corner> {
        self.corner
    }

    /// Puts the chain at an extreme of the scenario's limits on the stage, or the one in the middle.
    pub fn show_corner(&mut self, corner: Option<Corner>) {
        if corner != self.corner {
            self.corner = corner;
            self.choose();
            self.build(self.ask());
        }
    }

    /// Puts the chain on the stage with joints that have worn so deep, pin and bore together, mm; 0 is as
    /// new. What a scenario's wear comes to is told by [`WearState`].
    pub fn show_worn(&mut self, worn_mm: f64) {
        let worn_mm = if worn_mm.is_finite() { worn_mm.max(0.0) } else { 0.0 };
        if worn_mm.total_cmp(&self.worn_mm).is_ne() {
            self.worn_mm = worn_mm;
            self.choose();
            self.build(self.ask());
        }
    }

    /// How deep the joints on the stage have worn, mm: nothing as new.
    pub fn worn_mm(&self) -> f64 {
        self.chain.worn.depth_mm()
    }

    /// Works out which chain stands on the stage. Without limits an extreme is the middle. How far its gaps
    /// can be drawn too big takes more than a pose does, and is known of a chain that stood there before.
    fn choose(&mut self) {
        let extreme = self.corner.and_then(|corner| self.scenario.chain_at(corner));
        let new = extreme.unwrap_or(*self.scenario.chain.chain());
        let chain = if new.goes_together() { new.worn(self.worn_mm) } else { new };
        if chain != self.chain {
            self.chain = chain;
            self.cap = cap(&chain);
        }
    }

    /// The chain as it is drawn.
    pub fn drawn(&self) -> &Chain {
        &self.drawn
    }

    /// The posed pitch; none when the chain does not go together.
    pub fn posing(&self) -> Option<&Posing> {
        self.posing.as_ref()
    }

    /// The movement that is shown.
    pub fn mode(&self) -> Mode {
        self.mode
    }

    /// How many times too big gaps and tilts are drawn.
    pub fn factor(&self) -> u32 {
        self.factor
    }

    /// Sets a value of the scenario at a path such as `chain.bore_mm`.
    ///
    /// # Errors
    /// Every fault that the change makes; the last good scenario stays.
    pub fn set(&mut self, path: &str, value: Value) -> Result<(), Vec<Error>> {
        self.take(self.scenario.with(path, value)?);
        Ok(())
    }

    /// Sets a gap, mm, by moving the one dimension that moves it and no other: `pin_clearance_mm`,
    /// `side_gap_mm`, `roller_clearance_mm`, `roller_side_clearance_mm`.
    ///
    /// # Errors
    /// Every fault that the change makes, or an unknown gap; the last good scenario stays.
    pub fn set_gap(&mut self, key: &str, gap_mm: f64) -> Result<(), Vec<Error>> {
        let Some(pair) =
            Pair::ALL.iter().copied().find(|pair| Quantity::of_pair(*pair).key() == key)
        else {
            return Err(vec![Error::number(key, gap_mm, Rule::UnknownKey)]);
        };
        let dimension = pair.moves();
        let now_mm = dimension.of(self.scenario.chain.chain());
        let grows = if dimension == Dimension::RollerLength { -1.0 } else { 1.0 };
        let mm = now_mm + grows * (gap_mm - pair.gap_mm(self.chain()));
        self.set(&["chain.", dimension.key()].concat(), Value::Number(mm))
    }

    /// Puts a published size on the stage as a scenario of its own, in the construction of a word.
    ///
    /// # Errors
    /// An unknown number or construction; the last good scenario stays.
    pub fn adopt_size(&mut self, number: &str, construction: &str) -> Result<(), Vec<Error>> {
        let unknown = |field: &str, value: &str| vec![Error::text(field, value, Rule::UnknownKey)];
        let size = Published::of_number(number).ok_or_else(|| unknown("number", number))?;
        let known = Construction::of_key(construction);
        let construction = known.ok_or_else(|| unknown("chain.construction", construction))?;
        self.take(Scenario::read(&size.fill(construction).file())?);
        Ok(())
    }

    /// Shows another movement, straight.
    ///
    /// # Errors
    /// An unknown movement.
    pub fn show(&mut self, mode: &str) -> Result<(), Vec<Error>> {
        let found = Mode::of_key(mode);
        self.mode = found.ok_or_else(|| vec![Error::text("mode", mode, Rule::UnknownKey)])?;
        self.scrub(0.0);
        Ok(())
    }

    /// Goes to a share of the shown movement: 1 is the stop. A share that is no number is taken as 0.
    pub fn scrub(&mut self, share: f64) {
        let share = if share.is_finite() { share } else { 0.0 };
        let mode = self.mode;
        self.put(Ask::Share { mode, share: share.max(mode.least_share()).min(1.0) });
    }

    /// Goes some steps of a twentieth along the shown movement, from where the chain stands now.
    pub fn nudge(&mut self, steps: f64) {
        const STEP: f64 = 0.05;
        self.scrub(self.share() + STEP * steps);
    }

    /// How far the chain is along the shown movement.
    pub fn share(&self) -> f64 {
        self.posing.as_ref().map_or(0.0, |posing| posing.share(self.mode))
    }

    /// The share of the shown movement some seconds after it had another, as the scenario's motion
    /// has it.
    pub fn share_after(&self, from_share: f64, seconds: f64) -> f64 {
        const PERIOD_S: f64 = 4.0;
        let motion = self.scenario.motion.as_ref();
        let motion = Motion {
            mode: self.mode,
            amplitude: motion.map_or(1.0, |motion| motion.amplitude),
            period_s: motion.map_or(PERIOD_S, |motion| motion.period_s),
        };
        motion.share(motion.time_s(from_share) + seconds)
    }

    /// Puts the first joint at an offset, mm, and a yaw, rad, or as near as it can go.
    pub fn room_to(&mut self, offset_mm: f64, yaw_rad: f64) {
        /// No joint turns as far as an eighth of a turn; what asks for more asks for this.
        const MOST_RAD: f64 = core::f64::consts::FRAC_PI_4;
        if offset_mm.is_finite() && yaw_rad.is_finite() {
            let pitch_mm = self.chain().pitch_mm;
            let offset_mm = offset_mm.max(-pitch_mm).min(pitch_mm);
            self.put(Ask::Room { offset_mm, yaw_rad: yaw_rad.clamp(-MOST_RAD, MOST_RAD) });
        }
    }

    /// Pulls the chain taut, or lets it go.
    pub fn set_taut(&mut self, taut: bool) {
        self.taut = taut;
        if let Some(posing) = &mut self.posing {
            posing.set_taut(taut);
        }
    }

    /// Draws gaps and tilts so many times too big, from 1 to the most that is honest.
    pub fn widen(&mut self, factor: f64) {
        let factor = if factor.is_finite() { factor.round() } else { 1.0 };
        let factor = factor.max(1.0).min(f64::from(self.cap)) as u32;
        self.wished_factor = Some(factor);
        self.hand = Hand::Empty;
        let ask = self.posing.as_ref().map(Posing::ask);
        if factor != self.factor || !matches!(ask, Some(Ask::Share { .. })) {
            self.build(self.ask());
        }
    }

    /// The report.
    pub fn report(&self) -> Report {
        Report::of(&self.scenario)
    }

    /// Takes a good scenario; where nothing follows from the change that is drawn, the chain stays as it is posed.
    fn take(&mut self, scenario: Scenario) {
        let stood = (self.chain, self.bend_rad(), self.pulls());
        self.scenario = scenario;
        self.choose();
        if stood != (self.chain, self.bend_rad(), self.pulls()) {
            self.build(self.ask());
        }
    }

    /// What can be asked of the next chain as it was of this one: what a hand holds becomes the share
    /// that it has reached.
    fn ask(&self) -> Ask {
        match self.posing.as_ref().map(Posing::ask) {
            Some(ask @ (Ask::Share { .. } | Ask::Room { .. })) => ask.clone(),
            _ => Ask::Share { mode: self.mode, share: self.share() },
        }
    }

    fn put(&mut self, ask: Ask) {
        self.hand = Hand::Empty;
        if let Some(posing) = &mut self.posing {
            posing.put(ask);
        }
    }

    /// Builds what is drawn and posed from the scenario's chain.
    fn build(&mut self, ask: Ask) {
        let chain = *self.chain();
        self.factor = self.wished_factor.unwrap_or(self.cap).clamp(1, self.cap);
        let factor = f64::from(self.factor);
        self.drawn = Chain::new(widen(&chain, factor)).unwrap_or(chain);
        self.hand = Hand::Empty;
        self.posing = chain.goes_together().then(|| {
            let drawn = &self.drawn;
            Posing::asked(&chain, drawn, factor, self.bend_rad(), (self.taut, self.pulls()), ask)
        });
    }

    /// How far a joint bends as it enters the scenario's smaller wheel: 2 pi / z, rad.
    pub fn bend_rad(&self) -> f64 {
        let teeth =
            self.scenario.drive.as_ref().map_or(TEETH, |drive| drive.wheels.driven_teeth.into());
        2.0 * core::f64::consts::PI / teeth
    }

    /// The room to move of the first joint; empty when the chain does not go together.
    pub fn room(&self) -> RoomView {
        let Some(posing) = &self.posing else { return RoomView::default() };
        RoomView::of(&room(self.chain()), posing)
    }
}

#[cfg(test)]
mod tests;
