//! Pulling at the end of a gap's dimension line: the gap follows the hand.

use super::Stage;
use crate::chain::Pair;
use crate::contact::Contact;
use crate::error::Error;
use crate::plane::Point;
use crate::posing::{ContactState, Posing, Seen};
use crate::quantity::Quantity;

/// The end of a dimension line in the hand.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct End {
    contact: Contact,
    pair: Pair,
    /// The true gap there when it was taken hold of, mm.
    start_mm: f64,
    /// The way it goes as the gap grows, in the drawn section.
    way: Point,
    /// How many times too big gaps were drawn.
    factor: f64,
}

/// Steps of a secant on the gap; three are usual, one more where what stops the chain changes.
const ROUNDS: u32 = 5;
/// Near enough to the hand, mm: a hundredth of a micrometre.
const NEAR_MM: f64 = 1e-5;
/// A gap that follows its pair by a smaller share than this is held by other metal.
const LEAST_SLOPE: f64 = 0.05;

impl Stage {
    /// Takes hold of the end of a contact's dimension line, by the id of the contact in the plan
    /// section. False where there is none, or its gap belongs to no pair of parts.
    pub fn hold_end(&mut self, id: &str) -> bool {
        self.end = self.posing.as_ref().and_then(|posing| {
            let state = state_of(posing, |contact| contact.id() == id)?;
            let pair = state.contact.kind.pair()?;
            let mut meetings = posing.plan().meetings().iter();
            let meeting = meetings.find(|meeting| meeting.contact == state.contact)?;
            let sign = if meeting.moves_at_the_corner() { 1.0 } else { -1.0 };
            let (start_mm, way) = (state.gap_mm.max(0.0), sign * state.drawn_normal);
            Some(End { contact: state.contact, pair, start_mm, way, factor: posing.factor() })
        });
        self.end.is_some()
    }

    /// Pulls the held end so far from where it was taken hold of, mm of the drawn section: the gap of
    /// the pair is set so that the gap at this place is as wide as asked for, and never below
    /// nothing. Where other metal holds the place, it comes as near as it can.
    ///
    /// # Errors
    /// Every fault that the change makes; the last good scenario stays.
    pub fn pull_end(&mut self, by: Point) -> Result<(), Vec<Error>> {
        let Some(end) = self.end.filter(|_| by.is_finite()) else { return Ok(()) };
        let wished_mm = (end.start_mm + by.dot(end.way) / end.factor).max(0.0);
        let before = self.scenario().clone();
        let pulled = self.follow(&end, wished_mm);
        if pulled.is_err() {
            self.take(before);
        }
        pulled
    }

    fn follow(&mut self, end: &End, wished_mm: f64) -> Result<(), Vec<Error>> {
        let key = Quantity::of_pair(end.pair).key();
        let mut slope = 1.0;
        for _ in 0..ROUNDS {
            let (gap_mm, here_mm) = (end.pair.gap_mm(self.chain()), self.gap_here_mm(end));
            let miss_mm = wished_mm - here_mm;
            let next_mm = (gap_mm + miss_mm / slope).max(0.0);
            let closed = miss_mm < 0.0 && gap_mm <= 0.0;
            if miss_mm.abs() < NEAR_MM || closed {
                break;
            }
            self.set_gap(key, next_mm)?;
            let followed = (self.gap_here_mm(end) - here_mm) / (next_mm - gap_mm);
            slope = if followed > LEAST_SLOPE { followed } else { 1.0 };
        }
        Ok(())
    }

    /// The true gap at the held end; nothing where the chain does not go together.
    fn gap_here_mm(&self, end: &End) -> f64 {
        let posing = self.posing.as_ref();
        let state = posing.and_then(|posing| state_of(posing, |contact| *contact == end.contact));
        state.map_or(0.0, |state| state.gap_mm.max(0.0))
    }
}

fn state_of(posing: &Posing, is: impl Fn(&Contact) -> bool) -> Option<&ContactState> {
    posing.contacts().iter().find(|state| state.seen == Seen::Plan && is(&state.contact))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::posing::Mark;

    /// The open gaps of the plan section that belong to a pair.
    fn open(stage: &Stage) -> Vec<String> {
        let states = stage.posing().into_iter().flat_map(Posing::contacts);
        states
            .filter(|s| s.seen == Seen::Plan && s.mark == Mark::Open)
            .filter(|s| s.contact.kind.pair().is_some())
            .map(|s| s.contact.id())
            .collect()
    }

    #[test]
    fn an_end_that_is_pulled_opens_the_gap_by_as_much_as_it_is_drawn_further() {
        const BY_MM: f64 = 0.05;
        let mut stage = Stage::default();
        stage.scrub(0.5);
        let ids = open(&stage);
        assert!(ids.len() > 12, "{ids:?}");
        for id in ids {
            let mut stage = Stage::default();
            stage.scrub(0.5);
            assert!(stage.hold_end(&id));
            let end = stage.end.expect("held");
            let by = BY_MM * end.factor * end.way;
            stage.pull_end(by).expect("a chain");
            let here_mm = stage.gap_here_mm(&end);
            assert!((here_mm - end.start_mm - BY_MM).abs() < 2.0 * NEAR_MM, "{id}: {here_mm}");
            stage.pull_end(Point::ZERO).expect("a chain");
            let back_mm = stage.gap_here_mm(&end);
            assert!((back_mm - end.start_mm).abs() < 2.0 * NEAR_MM, "{id}: {back_mm}");
        }
    }

    #[test]
    fn a_pull_ends_at_no_gap_and_a_chain_that_cannot_be_is_refused_whole() {
        let mut stage = Stage::default();
        let id = "first.plate-face.far.right";
        assert!(stage.hold_end(id), "{:?}", open(&stage));
        let way = stage.end.expect("held").way;
        stage.pull_end(-1e3 * way).expect("closed");
        assert!(Pair::SideGap.gap_mm(stage.chain()) < NEAR_MM && stage.posing().is_some());
        let before = stage.scenario().clone();
        assert!(stage.pull_end(1e9 * way).is_err());
        assert_eq!(*stage.scenario(), before);
        stage.pull_end(Point::new(f64::NAN, 0.0)).expect("nothing is asked");
        stage.release();
        stage.pull_end(way).expect("nothing is held");
        assert_eq!(*stage.scenario(), before);
        assert!(!stage.hold_end("first.collar-ends.whole.right") && !stage.hold_end("nothing"));
    }
}
