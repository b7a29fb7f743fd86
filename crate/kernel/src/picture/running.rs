//! A drive that moves, as a page shows it: numbers and pictures of one moment.

use crate::drive::ChainLine;
use crate::friction::{JointLoad, Turning, Work};
use crate::paint::{Leaves, leaves};
use crate::run::{FOLDS, Followed, Moment, Place, Run};
use crate::scenario::Scenario;
use crate::scene::{FOLD_TIMES, Folding, Scene};
use crate::seating::Engagement;
use serde::Serialize;

/// What is asked of a running drive.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct RunAsked {
    /// How far the chain has travelled, pitches.
    pub travel_pitches: f64,
    /// A fold and its share instead: the followed joint is put there.
    pub fold: Option<(usize, f64)>,
    /// Which joint is followed.
    pub joint: u32,
    /// Whether the rollers are stuck on their bushes.
    pub stuck: bool,
    /// Width of the picture of the drive, pixels.
    pub width_px: f64,
    /// Width of the close picture, pixels.
    pub close_px: f64,
    /// Size of text, pixels.
    pub text_px: f64,
}

/// Work by surface.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct WorkView {
    /// Pin in bore.
    pub pin_n_mm: f64,
    /// Plate on plate.
    pub face_n_mm: f64,
    /// Roller.
    pub roller_n_mm: f64,
    /// All of it.
    pub total_n_mm: f64,
}

/// One of the four folds.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct FoldView {
    /// `driver` or `driven`.
    pub wheel: &'static str,
    /// Whether the joint runs onto the wheel.
    pub runs_on: bool,
    /// The link that turns: `outer` or `inner`.
    pub turns: &'static str,
    /// Sum of the forces between pin and bore.
    pub pin_n: f64,
    /// Sum of the forces between plates.
    pub face_n: f64,
    /// Push of the tooth.
    pub tooth_push_n: f64,
    /// How far it folds in all.
    pub articulation_rad: f64,
    /// How much of that the pin rolls before it slides.
    pub roll_rad: f64,
    /// Where in the circuit it begins; it lasts one pitch.
    pub start_pitches: f64,
    /// How much of it is done, 0 to 1.
    pub share: f64,
    /// How far it has folded.
    pub fold_rad: f64,
    /// Its whole work.
    pub whole: WorkView,
    /// What of it is done.
    pub so_far: WorkView,
}

/// A running drive at one moment.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct RunState {
    /// Pitches of the chain, and of a circuit.
    pub pitches: u32,
    /// Shaft to shaft, so that the chain closes.
    pub centre_distance_mm: f64,
    /// Pitches that pass in a second; none where the speed is not known.
    pub pitches_per_s: Option<f64>,
    /// How far the chain has travelled.
    pub travel_pitches: f64,
    /// How much of its circuit the joint has done.
    pub done_pitches: f64,
    /// Where it is.
    pub place: Place,
    /// The fold under way.
    pub folding: Option<usize>,
    /// The fold that the close picture shows.
    pub shown: usize,
    /// How far the joint is bent.
    pub bent_rad: f64,
    /// Sum of the forces between pin and bore, now.
    pub pin_n: f64,
    /// Sum of the forces between plates, now.
    pub face_n: f64,
    /// Push of a tooth on the roller, now.
    pub tooth_push_n: f64,
    /// Work in this circuit so far.
    pub so_far: WorkView,
    /// Work of a whole circuit.
    pub circuit: WorkView,
    /// The drive's loss at pins, faces and rollers, as a fraction of the power carried.
    pub loss_fraction: f64,
    /// Whether its joints are loaded as in a straight line, since no pose is reached at its offset.
    pub as_straight: bool,
    /// The four folds.
    pub folds: [FoldView; FOLDS],
    /// Work so far against pitches of the circuit, corner by corner.
    pub curve: Vec<[f64; 2]>,
    /// How many times too big the close picture draws gaps.
    pub fold_times: f64,
    /// The drive from the side.
    pub drive: Leaves,
    /// Where names stand on it: driver, driven wheel, tight strand, slack strand.
    pub names: [[f64; 2]; 4],
    /// The joint on its wheel.
    pub close: Leaves,
}

/// The run of the drive that was last asked for, and whether its joints are loaded as in a straight
/// line.
#[derive(Default)]
pub struct RunDesk {
    run: Option<(Run, bool)>,
}

impl RunDesk {
    /// The run of a scenario: its joints loaded as its own offset loads them, or straight, which it says, where no
    /// pose is reached. None without a drive, or where the chain does not go together.
    fn run(&mut self, scenario: &Scenario) -> Option<&(Run, bool)> {
        let line = ChainLine::of(scenario)?;
        if self.run.as_ref().is_none_or(|(run, _)| *run.line() != line) {
            let straight = [JointLoad::straight(line.running.tight_n); 2];
            let loads = line.own_loads();
            self.run = Some((Run::of(&line, loads.unwrap_or(straight)), loads.is_err()));
        }
        self.run.as_ref()
    }

    /// One moment of a scenario's drive.
    pub fn state(&mut self, scenario: &Scenario, asked: &RunAsked) -> Option<RunState> {
        let (run, as_straight) = self.run(scenario)?.clone();
        let run = run.with_rollers(!asked.stuck);
        let joint = asked.joint % run.pitches();
        let travel = match asked.fold {
            Some((fold, share)) => {
                f64::from(joint) + run.folds_at()[fold.min(FOLDS - 1)] + share.clamp(0.0, 1.0)
            }
            None => asked.travel_pitches,
        };
        let moment = run.at(travel, joint);
        let shown =
            asked.fold.map_or_else(|| shown(&moment.followed), |(fold, _)| fold.min(FOLDS - 1));
        Some(RunState { as_straight, ..state(&run, joint, travel, &moment, shown, asked) })
    }
}

/// The fold to show: the one under way; on a wheel the one just done, on a strand the next one.
fn shown(followed: &Followed) -> usize {
    let done = followed.shares.iter().filter(|&&share| share >= 1.0).count();
    let last = FOLDS - 1;
    followed.folding.unwrap_or(match followed.place {
        Place::Driver | Place::Driven => done.saturating_sub(1),
        Place::Tight | Place::Slack => done.min(last),
    })
}

fn view(work: &Work) -> WorkView {
    let Work { pin_n_mm, face_n_mm, roller_n_mm } = *work;
    WorkView { pin_n_mm, face_n_mm, roller_n_mm, total_n_mm: work.total_n_mm() }
}

fn fold_view(run: &Run, fold: usize, of: &Engagement, share: f64) -> FoldView {
    let (articulation_rad, fold_rad) = (of.articulation_rad(), share * of.articulation_rad());
    FoldView {
        wheel: if fold < 2 { "driver" } else { "driven" },
        runs_on: fold.is_multiple_of(2),
        turns: of.turns.key(),
        pin_n: of.load.pin_n,
        face_n: of.load.face_n,
        tooth_push_n: of.tooth_push_n,
        articulation_rad,
        roll_rad: of.roll_rad(),
        start_pitches: run.folds_at()[fold],
        share,
        fold_rad,
        whole: view(&of.work(articulation_rad)),
        so_far: view(&of.work(fold_rad)),
    }
}

fn state(
    run: &Run,
    joint: u32,
    travel: f64,
    moment: &Moment,
    shown: usize,
    asked: &RunAsked,
) -> RunState {
    let (followed, line) = (&moment.followed, run.line());
    let first = Run::first_turns(joint);
    let engagements = run.engagements(first);
    let mut folds = [0, 1, 2, 3].map(|fold: usize| (fold, followed.shares[fold]));
    // At its very ends a fold that is asked for is the one that is told.
    if let Some((fold, share)) = asked.fold {
        folds[fold.min(FOLDS - 1)].1 = share.clamp(0.0, 1.0);
    }
    let speed = line.power.map(|power| Turning {
        wheel: line.layout.driver,
        turns_per_minute: power.turns_per_minute,
    });
    RunState {
        pitches: run.pitches(),
        centre_distance_mm: run.layout().centre_distance_mm,
        pitches_per_s: speed.map(|speed| speed.pitches_per_s()),
        travel_pitches: travel,
        done_pitches: followed.done_pitches,
        place: followed.place,
        folding: followed.folding,
        shown,
        bent_rad: followed.bent_rad,
        pin_n: followed.load.pin_n,
        face_n: followed.load.face_n,
        tooth_push_n: followed.tooth_push_n,
        so_far: view(&followed.work),
        circuit: view(&run.circuit(first)),
        loss_fraction: run.loss_fraction(),
        as_straight: false,
        folds: folds.map(|(fold, share)| fold_view(run, fold, &engagements[fold], share)),
        curve: curve(run, &engagements),
        fold_times: FOLD_TIMES,
        drive: leaves(&Scene::of_run(run, moment, asked.width_px / asked.text_px), asked.text_px),
        names: Scene::names_of_run(run, asked.width_px / asked.text_px)
            .map(|at| [asked.text_px * at.x, asked.text_px * at.y]),
        close: close(run, &engagements[shown], shown, folds[shown].1, asked),
    }
}

/// The corners of the work of a circuit.
fn curve(run: &Run, engagements: &[Engagement; FOLDS]) -> Vec<[f64; 2]> {
    let mut done = 0.0;
    let mut corners = vec![[0.0, 0.0]];
    for (start, fold) in run.folds_at().into_iter().zip(engagements) {
        corners.push([start, done]);
        done += fold.work(fold.articulation_rad()).total_n_mm();
        corners.push([start + 1.0, done]);
    }
    corners
}

fn close(run: &Run, of: &Engagement, fold: usize, share: f64, asked: &RunAsked) -> Leaves {
    let folding = Folding {
        sizes: &run.line().sizes,
        engagement: of,
        seated: &of.at(share),
        runs_on: fold.is_multiple_of(2),
        size_em: asked.close_px / asked.text_px,
    };
    leaves(&Scene::of_fold(&folding), asked.text_px)
}

#[cfg(test)]
mod tests;
