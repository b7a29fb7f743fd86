//! What stops the drawn chain is what stops the true one, on every scenario and published size at
//! the factor that the stage starts with.

use lightgap::chain::Construction;
use lightgap::contact::{Kind, Play, Settler};
use lightgap::posing::Mode;
use lightgap::stage::Stage;
use lightgap::table::PUBLISHED;
use lightgap_tests::scenarios;

/// A true gap up to this touches, mm; a drawn one up to the factor times this.
const TOUCH_MM: f64 = 1e-7;
/// What pushes less than this share of the hardest push stops nothing.
const SLIGHT: f64 = 0.01;

/// Every stage that goes together, by a name, as it starts.
fn stages() -> Vec<(String, Stage)> {
    let mut all: Vec<(String, Stage)> =
        scenarios().into_iter().map(|(id, scenario)| (id, Stage::new(scenario))).collect();
    for size in PUBLISHED {
        for construction in Construction::ALL {
            let (_, scenario) = scenarios().swap_remove(0);
            let mut stage = Stage::new(scenario);
            stage.adopt_size(size.number, construction.key()).expect("a published size");
            all.push((format!("{} {}", size.number, construction.key()), stage));
        }
    }
    all.retain(|(_, stage)| stage.posing().is_some());
    all
}

/// Pins in bores and plates on plates of one section: id, whether it touches, its share of the
/// hardest push.
fn stops(section: &Settler, factor: f64) -> Vec<(Kind, String, bool, f64)> {
    let hardest = section.push().iter().fold(0.0, |most: f64, push| most.max(*push));
    let share = |push: f64| if hardest > 0.0 { push / hardest } else { 0.0 };
    let pairs = section.gaps_mm().iter().zip(section.push());
    let lines = section.meetings().iter().zip(pairs).map(|(meeting, (gap_mm, push))| {
        let (kind, id) = (meeting.contact.kind, meeting.contact.id());
        (kind, id, *gap_mm <= TOUCH_MM * factor, share(*push))
    });
    lines.filter(|(kind, ..)| matches!(kind, Kind::PinBore | Kind::PlateFace)).collect()
}

/// The two sections of a mode: true and drawn.
fn sections(stage: &Stage, mode: Mode) -> [&Settler; 2] {
    let posing = stage.posing().expect("it goes together");
    match mode {
        Mode::Twist => [posing.end(), posing.drawn_end()],
        _ => [posing.plan(), posing.drawn_plan()],
    }
}

#[test]
fn the_drawn_stop_is_the_true_one_in_every_movement() {
    for (name, mut stage) in stages() {
        let factor = f64::from(stage.factor());
        for mode in [Mode::Turn, Mode::Aside, Mode::Lean, Mode::Twist] {
            stage.show(mode.key()).expect("a movement");
            for share in [-1.0, 1.0] {
                stage.scrub(share);
                let [truth, drawn] = sections(&stage, mode);
                let lines = stops(truth, 1.0).into_iter().zip(stops(drawn, factor));
                let mut touching = 0;
                for ((_, id, touches, push), (_, drawn_id, drawn_touches, drawn_push)) in lines {
                    assert_eq!(id, drawn_id);
                    let slight = push <= SLIGHT && drawn_push <= SLIGHT;
                    assert!(
                        touches == drawn_touches || slight,
                        "{name} {mode:?} {share} drawn {factor} times: {id} touches {touches}, drawn {drawn_touches}"
                    );
                    touching += u32::from(touches);
                }
                assert!(touching > 0, "{name} {mode:?}: nothing stops it");
            }
        }
    }
}

#[test]
fn the_hardest_push_at_a_stop_is_of_the_same_kind() {
    for (name, mut stage) in stages() {
        let factor = f64::from(stage.factor());
        for mode in [Mode::Turn, Mode::Aside, Mode::Lean, Mode::Twist] {
            stage.show(mode.key()).expect("a movement");
            stage.scrub(1.0);
            let hardest = |section: &Settler, factor| {
                let all = stops(section, factor);
                all.into_iter().max_by(|a, b| a.3.total_cmp(&b.3)).map(|line| line.0)
            };
            let [truth, drawn] = sections(&stage, mode);
            assert_eq!(hardest(truth, 1.0), hardest(drawn, factor), "{name} {mode:?}");
        }
    }
}

#[test]
fn the_limits_of_the_drawn_chain_have_the_same_limiters() {
    for (name, stage) in stages() {
        assert!(stage.factor() > 1, "{name}: nothing is drawn wider");
        let by = |play: Play| [play.yaw.by, play.turn.by, play.shear.by, play.twist.by];
        let (truth, drawn) = (Play::of(stage.chain()), Play::of(stage.drawn()));
        assert_eq!(by(truth), by(drawn), "{name} drawn {} times", stage.factor());
    }
}

#[test]
fn a_taut_chain_is_held_at_the_same_joints_by_the_same_kinds() {
    for (name, mut stage) in stages() {
        stage.set_taut(true);
        let factor = f64::from(stage.factor());
        for mode in [Mode::Turn, Mode::Aside, Mode::Lean] {
            stage.show(mode.key()).expect("a movement");
            stage.scrub(1.0);
            let held = |section: &Settler, factor| {
                let touching = stops(section, factor).into_iter().filter(|line| line.2);
                let mut held: Vec<String> = touching
                    .map(|(_, id, ..)| id.split('.').take(2).collect::<Vec<_>>().join("."))
                    .collect();
                held.sort();
                held.dedup();
                held
            };
            let [truth, drawn] = sections(&stage, mode);
            assert_eq!(held(truth, 1.0), held(drawn, factor), "{name} {mode:?}");
        }
    }
}
