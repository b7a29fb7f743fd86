//! The load on the stage: what pulls at the next outer link, and what comes of it.

use super::Stage;
use crate::drive::default_stiffness_n_mm;
use crate::posing::Pulls;
use crate::scenario::DEFAULT_TENSION_N;
use serde::Serialize;

/// What a page shows of the load.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct LoadView {
    /// Along the chain, N.
    pub tension_n: f64,
    /// Across it, towards the far side, N.
    pub side_n: f64,
    /// Anticlockwise, N mm.
    pub moment_n_mm: f64,
    /// Whether plates and pins give.
    pub springy: bool,
    /// How stiff a joint then is, N mm/rad.
    pub stiffness_n_mm: f64,
}

impl Stage {
    /// Lets plates and pins give by the stiffness of a joint, or makes them rigid.
    pub fn set_springy(&mut self, springy: bool) {
        self.springy = springy;
        let pulls = self.pulls();
        if let Some(posing) = &mut self.posing {
            posing.set_pulls(pulls);
        }
    }

    /// The load of the scenario; without one, the tension that is usual.
    pub fn load_view(&self) -> LoadView {
        let load = self.scenario.load.as_ref();
        LoadView {
            tension_n: load.map_or(DEFAULT_TENSION_N, |load| load.tension_n),
            side_n: load.map_or(0.0, |load| load.side_n),
            moment_n_mm: load.map_or(0.0, |load| load.moment_n_mm),
            springy: self.springy,
            stiffness_n_mm: self.stiffness_n_mm(),
        }
    }

    pub(super) fn pulls(&self) -> Pulls {
        let LoadView { tension_n, side_n, moment_n_mm, springy, stiffness_n_mm } = self.load_view();
        let stiffness_n_mm = springy.then_some(stiffness_n_mm);
        Pulls { tension_n, side_n, moment_n_mm, stiffness_n_mm }
    }

    /// What the scenario's drive states of a joint, or the estimate from its plates.
    fn stiffness_n_mm(&self) -> f64 {
        let stated = self.scenario.drive.as_ref().and_then(|drive| drive.joint_n_mm_per_rad);
        stated.unwrap_or_else(|| default_stiffness_n_mm(self.chain()))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::answer::Answer;
    use crate::chain::Construction;
    use crate::plane::Point;
    use crate::posing::{Mark, Posing, Seen};
    use crate::scenario::Value;

    /// Both constructions under a load, rigid and springy.
    fn each_loaded(mut each: impl FnMut(&mut Stage, &str)) {
        for construction in Construction::ALL {
            for springy in [false, true] {
                for (tension_n, side_n, moment_n_mm) in
                    [(300.0, 0.0, 0.0), (300.0, 40.0, 0.0), (120.0, -35.0, 400.0), (0.0, 9.0, 0.0)]
                {
                    let mut stage = Stage::default();
                    stage.adopt_size("40", construction.key()).expect("a size");
                    stage.set("load.tension_n", Value::Number(tension_n)).expect("a load");
                    stage.set("load.side_n", Value::Number(side_n)).expect("a load");
                    stage.set("load.moment_n_mm", Value::Number(moment_n_mm)).expect("a load");
                    stage.show("load").expect("a movement");
                    stage.set_springy(springy);
                    stage.scrub(1.0);
                    let what = format!("{construction:?} {springy} {tension_n} {side_n}");
                    each(&mut stage, &what);
                }
            }
        }
    }

    fn number(answer: &Answer, name: &str) -> f64 {
        let found = answer.numbers.iter().find(|(known, _)| *known == name);
        found.expect("a number of that name").1
    }

    #[test]
    fn the_pushes_that_are_shown_on_the_inner_link_cancel() {
        each_loaded(|stage, what| {
            let posing = stage.posing().expect("a chain");
            let sum_n: Point = posing.contacts().iter().map(|state| state.push_n).sum();
            let most_n = posing.contacts().iter().map(|s| s.push_n.length()).fold(0.0, f64::max);
            assert!(most_n > 1.0, "{what}: {most_n}");
            assert!(sum_n.length() < 1e-6 * most_n, "{what}: {sum_n} of {most_n}");
            let answers = stage.answers();
            let rest = answers.iter().find(|a| a.id == "load.rest").expect("it rests");
            let cancels = |one, other| number(rest, one) - number(rest, other);
            assert!(cancels("left_n", "right_n").abs() < 1e-6 * most_n, "{what}");
            assert!(cancels("far_n", "near_n").abs() < 1e-6 * most_n, "{what}");
        });
    }

    #[test]
    fn every_face_that_presses_is_numbered_and_a_straight_pull_is_shared_by_the_pins() {
        each_loaded(|stage, what| {
            let posing = stage.posing().expect("a chain");
            for state in posing.contacts().iter().filter(|state| state.push_n.length() > 0.0) {
                assert!(state.mark != Mark::Open && state.seen == Seen::Plan, "{what} {state:?}");
            }
        });
        let mut stage = Stage::default();
        stage.show("load").expect("a movement");
        stage.scrub(1.0);
        let answers = stage.answers();
        let pin = answers.iter().find(|answer| answer.id == "pressed.pin").expect("a pull");
        assert!((number(pin, "multiple_ratio") - 1.0).abs() < 1e-9);
    }

    #[test]
    fn half_the_share_is_half_the_load_and_another_movement_has_none() {
        let mut stage = Stage::default();
        stage.show("load").expect("a movement");
        let most_n = |stage: &Stage| {
            let states = stage.posing().into_iter().flat_map(Posing::contacts);
            states.map(|state| state.push_n.length()).fold(0.0, f64::max)
        };
        stage.scrub(1.0);
        let whole_n = most_n(&stage);
        stage.scrub(0.5);
        assert!((most_n(&stage) - 0.5 * whole_n).abs() < 1e-6 * whole_n);
        assert!((stage.share() - 0.5).abs() < 1e-12);
        assert!(!stage.grab(crate::scene::View::Plan, Point::new(20.0, 0.0)), "a load holds it");
        stage.show("turn").expect("a movement");
        stage.scrub(1.0);
        assert!(most_n(&stage) <= 0.0 && stage.posing().expect("a chain").rests().is_none());
    }
}
