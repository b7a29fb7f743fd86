//! How much work a pose is, in counts that do not drift: rounds of linearisation, and how the last
//! of them ended, on every scenario and published size.

use lightgap::chain::{Chain, Construction};
use lightgap::contact::{Body, OVERLAP_MM, Settled, widen};
use lightgap::plane::Point;
use lightgap::posing::{Ask, Mode, Posing, cap};
use lightgap::solve::Status;
use lightgap::table::PUBLISHED;
use lightgap_tests::scenarios;

/// Rounds of any pose of a named movement.
const MOST_OF_A_MOVEMENT: u32 = 6;
/// Rounds of a pose that a hand leads a link to, within its reach and far beyond.
const MOST_OF_A_DRAG: u32 = 12;
/// Of a pose in which a hand far off is about to buckle a plate, one in a hundred.
const MOST_OF_A_FOLD: u32 = 35;
const FOLDS: f64 = 0.01;

/// Every chain that goes together, true and drawn as wide as it may be, by a name.
fn pitches() -> Vec<(String, Posing)> {
    let ours = scenarios().into_iter().map(|(id, scenario)| (id, *scenario.chain.chain()));
    let published = PUBLISHED.iter().flat_map(|size| {
        Construction::ALL.iter().map(move |construction| {
            let chain = Chain::new(size.fill(*construction).sizes()).expect("a published size");
            (format!("{} {}", size.number, construction.key()), chain)
        })
    });
    let together = ours.chain(published).filter(|(_, chain)| chain.goes_together());
    let posed = together.map(|(name, chain)| {
        let factor = f64::from(cap(&chain));
        let drawn = Chain::new(widen(&chain, factor)).expect("it can be drawn");
        (name, Posing::new(&chain, &drawn, factor, 0.4))
    });
    posed.collect()
}

/// Checks both poses; answers the larger number of rounds.
fn check(what: &str, posing: &Posing, most: u32) -> u32 {
    let settled = posing.settled().map(|settled| settled.expect("it was settled"));
    for Settled { solve, rounds, worst_gap_mm, .. } in settled {
        assert_eq!(solve.status, Status::Solved, "{what}");
        assert!(worst_gap_mm >= -OVERLAP_MM, "{what}: {worst_gap_mm}");
        assert!(rounds <= most, "{what}: {rounds} rounds");
    }
    settled[0].rounds.max(settled[1].rounds)
}

#[test]
fn a_movement_settles_in_a_few_rounds() {
    const STEPS: i32 = 8;
    let mut most = 0;
    for (name, mut posing) in pitches() {
        for taut in [false, true] {
            posing.set_taut(taut);
            for mode in [Mode::Turn, Mode::Aside, Mode::Lean] {
                for step in -STEPS..=STEPS {
                    let share = f64::from(step) / f64::from(STEPS);
                    posing.put(Ask::Share { mode, share });
                    let what = format!("{name} {mode:?} {share} taut {taut}");
                    most = most.max(check(&what, &posing, MOST_OF_A_MOVEMENT));
                }
            }
        }
    }
    println!("at most {most} rounds");
}

#[test]
fn a_hand_waits_for_a_few_rounds() {
    const STEPS: u32 = 24;
    const TURN_RAD: f64 = 0.6;
    /// How far the hand goes, in pitches: several times what any of these chains gives.
    const REACH: f64 = 0.2;
    let (mut most, mut poses, mut folds) = (0, 0_u32, 0_u32);
    for (name, mut posing) in pitches() {
        let held = [(Body::NextOuter, 0.8), (Body::InnerFar, 0.5)];
        for (body, along) in held {
            posing.put(Ask::Share { mode: Mode::Turn, share: 0.0 });
            let pitch_mm = posing.pose().of(Body::NextOuter).x_mm;
            let at = posing.drawn_pose().of(body).outward(Point::new(along * pitch_mm, 0.1));
            posing.grab(body, at);
            for step in 0..STEPS {
                let turn = TURN_RAD * f64::from(step);
                let reach_mm = REACH * pitch_mm * f64::from(step) / f64::from(STEPS);
                posing.drag(at + reach_mm * Point::new(turn.cos(), turn.sin()));
                let what = format!("{name} {body:?} step {step}");
                let rounds = check(&what, &posing, MOST_OF_A_FOLD);
                most = most.max(rounds);
                poses += 1;
                folds += u32::from(rounds > MOST_OF_A_DRAG);
            }
        }
    }
    println!("at most {most} rounds, {folds} of {poses} poses fold");
    assert!(f64::from(folds) <= FOLDS * f64::from(poses), "{folds} of {poses} poses fold");
}
