//! How many times too big gaps can be drawn so that a drawn stop is the true one.

use super::mark::TOUCH_MM;
use super::{Ask, Bench, Mode};
use crate::chain::Chain;
use crate::contact::{self, Contact, Kind, Settler, widen};

/// A contact counts as stopping a movement when it pushes this share of the hardest push.
const STOPPING: f64 = 0.01;

/// What holds a chain at the stop of a movement: pins in bores and plates on plates. Rollers float
/// between their stops and are left out.
struct Stop {
    touching: Vec<Contact>,
    stopping: Vec<Contact>,
}

impl Stop {
    /// The stop at which a section stands, its gaps `factor` times too big.
    fn of(section: &Settler, factor: f64) -> Self {
        let hardest = section.push().iter().fold(0.0, |most: f64, push| most.max(*push));
        let pairs = section.gaps_mm().iter().zip(section.push());
        let held = section.meetings().iter().map(|meeting| meeting.contact).zip(pairs);
        let held = held.filter(|(c, _)| matches!(c.kind, Kind::PinBore | Kind::PlateFace));
        let mut stop = Self { touching: Vec::new(), stopping: Vec::new() };
        for (contact, (gap_mm, push)) in held {
            if *gap_mm <= TOUCH_MM * factor {
                stop.touching.push(contact);
            }
            if *push > STOPPING * hardest {
                stop.stopping.push(contact);
            }
        }
        stop
    }

    /// Whether everything that stops the one touches in the other.
    fn is_that_of(&self, other: &Self) -> bool {
        let within = |some: &[Contact], all: &[Contact]| some.iter().all(|c| all.contains(c));
        within(&self.stopping, &other.touching) && within(&other.stopping, &self.touching)
    }
}

/// Every movement that ends on metal.
const STOPPED: [Mode; 4] = [Mode::Turn, Mode::Aside, Mode::Lean, Mode::Twist];

/// The stop of one movement of a slack chain, its gaps `factor` times too big.
fn stop(bench: &mut Bench, mode: Mode, factor: f64) -> Stop {
    let ask = Ask::Share { mode, share: 1.0 };
    if mode == Mode::Twist {
        let straight = *bench.end.straight();
        bench.end.settle(&ask.end_wishes(&bench.play), &straight);
        return Stop::of(&bench.end, factor);
    }
    bench.settle_plan(&ask, false, (factor, factor), 0);
    Stop::of(&bench.plan, factor)
}

/// The largest whole factor at which gaps can be drawn too big and every movement still ends on the
/// same faces: at most what [`contact::cap`] allows, at least 1. The movement that a factor has
/// failed by is tried first at the next: it mostly fails by the same.
pub fn cap(chain: &Chain) -> u32 {
    let most = contact::cap(chain);
    if !chain.goes_together() {
        return most;
    }
    let mut truth = Bench::new(chain);
    let mut stops = STOPPED.map(|mode| (mode, stop(&mut truth, mode, 1.0)));
    let honest = |times: &u32| {
        let factor = f64::from(*times);
        let mut drawn = Bench::new(&widen(chain, factor));
        let other =
            |(mode, truth): &(Mode, Stop)| !truth.is_that_of(&stop(&mut drawn, *mode, factor));
        let failed = stops.iter().position(other);
        if let Some(at) = failed {
            stops[..=at].rotate_right(1);
        }
        failed.is_none()
    };
    (2..=most).rev().find(honest).unwrap_or(1)
}
