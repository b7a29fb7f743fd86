//! One pitch in the hand: what is asked of it, and the pose and the contacts that follow.
//!
//! Two chains are posed side by side: the true one, from which every contact, number and word comes,
//! and the drawn one, whose gaps are `factor` times bigger so that they can be seen. What is asked
//! (a share of a movement, a point held by the pointer, a dot in the room to move) means the same
//! for both: deviations from the straight chain are `factor` times larger in the drawn one.

mod ask;
mod bench;
mod honest;
mod mark;
mod mode;
mod pull;

pub use ask::Ask;
pub use honest::cap;
pub use mark::{ContactState, Mark, Seen};
pub use mode::Mode;
pub use pull::Pulls;

use crate::chain::{Chain, Sizes};
use crate::contact::loaded::{Ended, Force};
use crate::contact::{Body, Elevation, Play, Pose, Pull, Settled, Settler};
use crate::plane::Point;
use bench::Bench;
use pull::Pulled;

/// One pitch of a chain that goes together, true and drawn, in the hand.
pub struct Posing {
    truth: Bench,
    drawn: Bench,
    factor: f64,
    bend_rad: f64,
    taut: bool,
    ask: Ask,
    elevation: Elevation,
    drawn_elevation: Elevation,
    before: Option<Pose>,
    states: Vec<ContactState>,
    pulled: Pulled,
}

impl Posing {
    /// The straight pitch. `drawn` is `chain` with its gaps `factor` times bigger; `bend_rad` is how
    /// far a joint bends from the side when it is asked to bend fully.
    pub fn new(chain: &Chain, drawn: &Chain, factor: f64, bend_rad: f64) -> Self {
        let straight = Ask::Share { mode: Mode::Turn, share: 0.0 };
        Self::asked(chain, drawn, factor, bend_rad, (false, Pulls::default()), straight)
    }

    /// The same pitch with something asked of it from the first; it may be pulled taut, and by a load.
    pub fn asked(
        chain: &Chain,
        drawn: &Chain,
        factor: f64,
        bend_rad: f64,
        (taut, pulls): (bool, Pulls),
        ask: Ask,
    ) -> Self {
        let straight = |sizes: &Sizes| Elevation::bent(sizes, 0.0, 0.0, Pull::Hanging);
        let mut posing = Self {
            truth: Bench::new(chain),
            drawn: Bench::new(drawn),
            factor,
            bend_rad,
            taut,
            ask,
            elevation: straight(chain),
            drawn_elevation: straight(drawn),
            before: None,
            states: Vec::new(),
            pulled: Pulled::by(pulls),
        };
        posing.before = Some(*posing.pose());
        posing.settle();
        posing
    }

    /// The limits of the true chain.
    pub fn play(&self) -> &Play {
        &self.truth.play
    }

    /// The true pose in the plan section.
    pub fn pose(&self) -> &Pose {
        self.truth.plan.pose()
    }

    /// The drawn pose in the plan section.
    pub fn drawn_pose(&self) -> &Pose {
        self.drawn.plan.pose()
    }

    /// The drawn pose in the end section: first axis y, second z.
    pub fn drawn_end_pose(&self) -> &Pose {
        self.drawn.end.pose()
    }

    /// The true pose in the end section.
    pub fn end_pose(&self) -> &Pose {
        self.truth.end.pose()
    }

    /// The true pose from the side.
    pub fn elevation(&self) -> &Elevation {
        &self.elevation
    }

    /// The drawn pose from the side.
    pub fn drawn_elevation(&self) -> &Elevation {
        &self.drawn_elevation
    }

    /// How many times too big gaps and tilts are drawn.
    pub fn factor(&self) -> f64 {
        self.factor
    }

    /// Every contact of all three sections: those that touch first, numbered.
    pub fn contacts(&self) -> &[ContactState] {
        &self.states
    }

    /// The settler of the true chain's plan section, as it stands.
    pub fn plan(&self) -> &Settler {
        &self.truth.plan
    }

    /// The settler of the drawn chain's plan section, as it stands.
    pub fn drawn_plan(&self) -> &Settler {
        &self.drawn.plan
    }

    /// The settler of the true chain's end section, as it stands.
    pub fn end(&self) -> &Settler {
        &self.truth.end
    }

    /// The settler of the drawn chain's end section, as it stands.
    pub fn drawn_end(&self) -> &Settler {
        &self.drawn.end
    }

    /// How the plan sections of the true and of the drawn chain were settled last.
    pub fn settled(&self) -> [Option<Settled>; 2] {
        [self.truth.settled, self.drawn.settled]
    }

    /// What is asked at present.
    pub fn ask(&self) -> &Ask {
        &self.ask
    }

    /// Whether the chain is pulled taut.
    pub fn is_taut(&self) -> bool {
        self.taut
    }

    /// Pulls the chain taut, or lets it go.
    pub fn set_taut(&mut self, taut: bool) {
        if taut != self.taut {
            self.taut = taut;
            self.settle();
        }
    }

    /// What pulls at the next outer link where a load is asked for.
    pub fn pulls(&self) -> &Pulls {
        &self.pulled.pulls
    }

    /// Sets what pulls; where no load is asked for, the pose stays as it is.
    pub fn set_pulls(&mut self, pulls: Pulls) {
        let others = pulls != self.pulled.pulls;
        self.pulled.pulls = pulls;
        if others && self.ask.load_share().is_some() {
            self.settle();
        }
    }

    /// The contact forces of the true chain; none where no load is asked for or it found no rest.
    pub fn forces(&self) -> &[Force] {
        self.pulled.forces()
    }

    /// Whether a load is asked for and the pitch came to rest under it; nothing without a load.
    pub fn rests(&self) -> Option<bool> {
        self.pulled.ended.map(|ended| ended == Ended::AtRest)
    }

    /// Asks for something else; the same pose follows from the same question, so that a share which is asked
    /// already is not settled again.
    pub fn put(&mut self, ask: Ask) {
        if matches!(ask, Ask::Share { .. }) && ask == self.ask {
            return;
        }
        self.before = Some(*self.pose());
        self.ask = ask;
        self.settle();
    }

    /// Takes hold of a body at a point of the drawn plan section, mm, so that [`Posing::drag`] moves
    /// it. The point stays where it is until it is dragged.
    pub fn grab(&mut self, body: Body, at: Point) {
        let inside = self.drawn_pose().of(body).inward(at);
        let rest = [*self.pose(), *self.drawn_pose()];
        self.ask = Ask::Hold { body, inside, to: at, rest: Box::new(rest) };
    }

    /// Moves the held point to a place of the drawn plan section, mm; the chain goes as near as its
    /// metal lets it. Nothing happens when nothing is held.
    pub fn drag(&mut self, to: Point) {
        if let Ask::Hold { body, inside, rest, .. } = &self.ask {
            let ask = Ask::Hold { body: *body, inside: *inside, to, rest: rest.clone() };
            self.put(ask);
        }
    }

    /// The first joint of the true chain: offset across, mm, and yaw, rad, of the inner link; of a
    /// collared one, the mean of its two plates.
    pub fn first_joint(&self) -> (f64, f64) {
        let pose = self.pose();
        let (far, near) = (pose.of(Body::InnerFar), pose.of(Body::InnerNear));
        (0.5 * (far.y_mm + near.y_mm), 0.5 * (far.yaw_rad + near.yaw_rad))
    }

    /// The next outer link of the true chain against the held one, rad.
    pub fn total_yaw_rad(&self) -> f64 {
        self.pose().of(Body::NextOuter).yaw_rad
    }

    /// The twist of the true inner link, rad.
    pub fn twist_rad(&self) -> f64 {
        self.end_pose().of(Body::InnerFar).yaw_rad
    }

    /// How far the true chain is along a movement, as a share of its stop: -1 to 1.
    pub fn share(&self, mode: Mode) -> f64 {
        let play = self.play();
        let of = |value: f64, stop: f64| {
            if stop > 0.0 { (value / stop).clamp(-1.0, 1.0) } else { 0.0 }
        };
        match mode {
            Mode::Turn => of(self.total_yaw_rad(), play.turn.angle_rad),
            Mode::Aside => of(self.first_joint().0, play.offset_mm),
            Mode::Lean => of(self.first_joint().1, play.shear.angle_rad),
            Mode::Twist => of(self.twist_rad(), play.twist.angle_rad),
            Mode::Bend => of(-self.elevation.inner.yaw_rad, self.bend_rad),
            Mode::Load => self.ask.load_share().unwrap_or(0.0),
        }
    }

    /// Settles both chains at what is asked and reads the contacts.
    fn settle(&mut self) {
        let (ask, taut) = (self.ask.clone(), self.taut);
        let earlier = self.earlier_pose();
        let rest = ask.load_share().map(|share| self.pulled.settle(&self.truth.sizes, share));
        if rest.is_none() {
            self.pulled.rest();
        }
        let straight = *self.truth.plan.straight();
        for (bench, factor, which) in [(&mut self.truth, 1.0, 0), (&mut self.drawn, self.factor, 1)]
        {
            match &rest {
                Some(pose) => {
                    let own = *bench.plan.straight();
                    let (wishes, rest) = pull::led(pose, (&straight, &own), factor);
                    bench.settled = Some(bench.plan.settle(&wishes, &rest));
                }
                None => bench.settle_plan(&ask, taut, (factor, self.factor), which),
            }
            let wishes = ask.end_wishes(&bench.play);
            let straight = *bench.end.straight();
            bench.end.settle(&wishes, &straight);
        }
        let bend_rad = -ask.bend_share() * self.bend_rad;
        let pull = if taut || ask.bend_share() != 0.0 { Pull::Taut } else { Pull::Hanging };
        self.elevation = Elevation::bent(&self.truth.sizes, bend_rad, bend_rad, pull);
        self.drawn_elevation = Elevation::bent(&self.drawn.sizes, bend_rad, bend_rad, pull);
        self.read_contacts(earlier);
    }

    /// The true pose that sliding is read from: a little before along a movement, else the last one.
    /// The true chain stands anywhere afterwards.
    fn earlier_pose(&mut self) -> Option<Pose> {
        match self.ask {
            Ask::Share { mode, share } if mode.is_plan() && mode != Mode::Load => {
                let back = Ask::Share { mode, share: mark::a_little_before(share) };
                self.truth.settle_plan(&back, self.taut, (1.0, self.factor), 0);
                Some(*self.pose())
            }
            Ask::Share { .. } => None,
            _ => self.before,
        }
    }

    /// Reads every contact of the true chain, and which of them rub.
    fn read_contacts(&mut self, earlier: Option<Pose>) {
        let now = *self.pose();
        let moved = earlier.map(|before| mark::Moved { before, now });
        let bends = self.ask.bend_share() != 0.0;
        let twists = matches!(self.ask, Ask::Share { mode: Mode::Twist, .. });
        let end = twists.then_some(&self.truth.end);
        let drawn = [&self.drawn.plan, &self.drawn.end];
        let plan = (&self.truth.plan, self.pulled.gaps_mm());
        self.states = mark::states(plan, end, &self.elevation, drawn, moved.as_ref(), bends);
        for force in self.pulled.forces() {
            let mut plan = self.states.iter_mut().filter(|state| state.seen == Seen::Plan);
            if let Some(state) = plan.find(|state| state.contact == force.contact) {
                state.push_n = pull::push_on_inner_n(force);
            }
        }
    }
}

#[cfg(test)]
mod tests;
