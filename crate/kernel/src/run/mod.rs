//! A drive that moves: where every joint is, what one that is followed bears, how far it has folded
//! and what that took, as a pure function of how far the chain has travelled.
//!
//! The driver pulls: joints of the tight strand move towards it. A circuit begins where a joint has
//! just run off the driven wheel onto the tight strand. On its way round it folds four times: onto
//! the driver and off it, onto the driven wheel and off it; the first and the last under the tight
//! pull, the others under the slack one. Two joints that follow each other differ in which of their
//! links turns, so that the work of both over one circuit, halved, is what the drive loses while the
//! chain moves on by one pitch.
//!
//! What is left out: speed and impact, the weight and the sag of the slack strand, what swings. Both
//! wheels turn evenly. The wheels stand so far apart that a whole, even number of pitches closes.

mod path;

use crate::drive::ChainLine;
use crate::friction::{JointLoad, Work};
use crate::plane::Point;
use crate::seating::{Engagement, Seated, Turns};
use crate::sprocket::{Layout, Wheel, WheelPlace};
use path::Path;
use serde::Serialize;

/// Where along its way a joint is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Place {
    /// On the strand that pulls.
    Tight,
    /// On the wheel that pulls.
    Driver,
    /// On the other strand.
    Slack,
    /// On the wheel that is pulled.
    Driven,
}

/// How many times a joint folds or unfolds in one circuit.
pub const FOLDS: usize = 4;

/// A drive and its joints' loads where they fold.
#[derive(Debug, Clone, PartialEq)]
pub struct Run {
    line: ChainLine,
    path: Path,
    /// What presses where a joint runs onto the driver, and off the driven wheel.
    ends: [JointLoad; 2],
}

/// The chain after some travel.
#[derive(Debug, Clone, PartialEq)]
pub struct Moment {
    /// Every joint's centre, in the order in which they pass a place, mm.
    pub joints: Vec<Point>,
    /// How far the driver's and the driven wheel's first gaps are turned, rad, anticlockwise.
    pub turns_rad: [f64; 2],
    /// The joint that is followed.
    pub followed: Followed,
    /// Where it is, mm.
    pub followed_at: Point,
}

/// One joint on its way.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Followed {
    /// How many pitches of its circuit it has done.
    pub done_pitches: f64,
    /// Where it is.
    pub place: Place,
    /// Which of its four folds is under way.
    pub folding: Option<usize>,
    /// The share that each fold is done.
    pub shares: [f64; FOLDS],
    /// How far it is bent now, rad.
    pub bent_rad: f64,
    /// Pull of the link that it carries, N.
    pub pull_n: f64,
    /// What presses between pin and bore and between plates.
    pub load: JointLoad,
    /// Push of the tooth on the roller, and of the roller on its barrel, N.
    pub tooth_push_n: f64,
    /// Work in this circuit so far.
    pub work: Work,
}

impl Run {
    /// The run of a drive whose joints are loaded so where they run onto the driver and off the
    /// driven wheel, under the tight pull.
    pub fn of(line: &ChainLine, ends: [JointLoad; 2]) -> Self {
        Self { line: *line, path: Path::of(&line.layout), ends }
    }

    /// The drive.
    pub fn line(&self) -> &ChainLine {
        &self.line
    }

    /// The wheels as they stand here: so far apart that the chain closes.
    pub fn layout(&self) -> &Layout {
        &self.path.layout
    }

    /// Both wheels in their places.
    pub fn places(&self) -> &[WheelPlace; 2] {
        self.path.places()
    }

    /// Pitches of the whole chain, which is also its number of joints; even.
    pub fn pitches(&self) -> u32 {
        self.path.pitches
    }

    /// Where each fold begins, in pitches of a circuit; it lasts one pitch.
    pub fn folds_at(&self) -> [f64; FOLDS] {
        let [tight, driven, slack, driver] = self.path.stretches;
        [0.0, driver, driver + slack, driver + slack + driven].map(|past| tight - 1.0 + past)
    }

    /// Where a joint is in the middle of a fold, mm.
    pub fn fold_point(&self, fold: usize) -> Point {
        let done = self.folds_at()[fold.min(FOLDS - 1)] + 0.5;
        self.path.point(self.path.stretches[0] - 0.5 - done)
    }

    /// The same drive with rollers that turn on their bushes, or with stuck ones.
    #[must_use]
    pub fn with_rollers(mut self, rollers_turn: bool) -> Self {
        self.line.running.rubbing.rollers_turn = rollers_turn;
        self
    }

    /// The four folds of a joint. `first` says which of its links turns as it runs onto the driver.
    pub fn engagements(&self, first: Turns) -> [Engagement; FOLDS] {
        let running = &self.line.running;
        let (tight, slack) = (running.tight_n, running.slack_n);
        let straight = JointLoad::straight(slack);
        let fold = |wheel: Wheel, pull_n: f64, load, turns| Engagement {
            wheel,
            load,
            tooth_push_n: pull_n * wheel.tooth_push_ratio(),
            rubbing: running.rubbing,
            clearance_mm: self.line.sizes.pin_clearance_mm(),
            turns,
        };
        [
            fold(running.driver, tight, self.ends[0], first),
            fold(running.driver, slack, straight, first.other()),
            fold(running.driven, slack, straight, first),
            fold(running.driven, tight, self.ends[1], first.other()),
        ]
    }

    /// Which link of a joint turns as it runs onto the driver: joints take turns.
    pub fn first_turns(joint: u32) -> Turns {
        if joint.is_multiple_of(2) { Turns::Outer } else { Turns::Inner }
    }

    /// Work of one joint over one circuit.
    pub fn circuit(&self, first: Turns) -> Work {
        sum(self.engagements(first).map(|fold| fold.work(fold.articulation_rad())))
    }

    /// What the drive takes while the chain moves on by one pitch, N mm: half of what two joints
    /// that follow each other take in one circuit.
    pub fn lost_per_pitch_n_mm(&self) -> f64 {
        let both = [Turns::Outer, Turns::Inner].map(|first| self.circuit(first).total_n_mm());
        0.5 * (both[0] + both[1])
    }

    /// The loss as a fraction of the power carried, pins, faces and rollers.
    pub fn loss_fraction(&self) -> f64 {
        let running = &self.line.running;
        self.lost_per_pitch_n_mm() / (running.net_n() * running.driver.pitch_mm)
    }

    /// The chain after a travel, in pitches, with one joint followed. Travel 0: joint 0 has just run
    /// off the driven wheel.
    pub fn at(&self, travel: f64, joint: u32) -> Moment {
        let start = self.path.stretches[0] - 0.5 - travel;
        let at = |joint: u32| self.path.point(start + f64::from(joint));
        Moment {
            joints: (0..self.pitches()).map(at).collect(),
            turns_rad: self.path.turns_rad(start),
            followed: self.followed(travel, joint),
            followed_at: at(joint),
        }
    }

    /// One joint after a travel, in pitches.
    pub fn followed(&self, travel: f64, joint: u32) -> Followed {
        let whole = f64::from(self.pitches());
        let done = travel - f64::from(joint);
        let done_pitches = done - whole * libm::floor(done / whole);
        let shares = self.folds_at().map(|from| (done_pitches - from).clamp(0.0, 1.0));
        let folding = shares.iter().position(|&share| share > 0.0 && share < 1.0);
        let folds = self.engagements(Self::first_turns(joint));
        let work = |fold: usize| folds[fold].work(shares[fold] * folds[fold].articulation_rad());
        let place = self.place(done_pitches);
        let pull_n = self.pull_n(done_pitches, place);
        let (load, push_ratio) = match (folding, place) {
            (Some(fold), _) => (folds[fold].load, folds[fold].wheel.tooth_push_ratio()),
            (None, Place::Driver) => {
                (JointLoad::straight(pull_n), folds[0].wheel.tooth_push_ratio())
            }
            (None, Place::Driven) => {
                (JointLoad::straight(pull_n), folds[2].wheel.tooth_push_ratio())
            }
            _ => (JointLoad::straight(pull_n), 0.0),
        };
        Followed {
            done_pitches,
            place,
            folding,
            shares,
            bent_rad: bent_rad(&shares, &folds),
            pull_n,
            load,
            tooth_push_n: push_ratio * pull_n,
            work: sum([work(0), work(1), work(2), work(3)]),
        }
    }

    /// The state of a fold that is under way.
    pub fn seated(&self, followed: &Followed, joint: u32) -> Option<(Engagement, Seated)> {
        let fold = followed.folding?;
        let engagement = self.engagements(Self::first_turns(joint))[fold];
        Some((engagement, engagement.at(followed.shares[fold])))
    }

    /// Where a joint is that has done so many pitches of its circuit: on a wheel from its first fold
    /// there to the end of its second.
    fn place(&self, done: f64) -> Place {
        let [on_driver, off_driver, on_driven, _] = self.folds_at();
        if done < on_driver {
            Place::Tight
        } else if done < off_driver + 1.0 {
            Place::Driver
        } else if done < on_driven {
            Place::Slack
        } else {
            Place::Driven
        }
    }

    /// The pull at a joint, N: the tight one falls tooth by tooth round a wheel, down to the slack
    /// one at the least.
    fn pull_n(&self, done: f64, place: Place) -> f64 {
        let running = &self.line.running;
        let after = |wheel: &Wheel, teeth: f64| {
            let left = libm::pow(wheel.pull_left_ratio(), libm::floor(teeth.max(0.0)));
            (running.tight_n * left).max(running.slack_n)
        };
        match place {
            Place::Tight => running.tight_n,
            Place::Slack => running.slack_n,
            Place::Driver => after(&running.driver, done - self.folds_at()[0]),
            Place::Driven => after(&running.driven, f64::from(self.pitches()) - done),
        }
    }
}

/// How far a joint is bent: what it has folded less what it has unfolded, rad.
fn bent_rad(shares: &[f64; FOLDS], folds: &[Engagement; FOLDS]) -> f64 {
    let on_driver = (shares[0] - shares[1]) * folds[0].articulation_rad();
    let on_driven = (shares[2] - shares[3]) * folds[2].articulation_rad();
    on_driver + on_driven
}

fn sum(works: [Work; FOLDS]) -> Work {
    works.iter().fold(Work::default(), |sum, work| Work {
        pin_n_mm: sum.pin_n_mm + work.pin_n_mm,
        face_n_mm: sum.face_n_mm + work.face_n_mm,
        roller_n_mm: sum.roller_n_mm + work.roller_n_mm,
    })
}

#[cfg(test)]
mod tests;
