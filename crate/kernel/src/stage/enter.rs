//! What gets into a joint, answered as it is flexed.

use crate::answer::{Answer, enter};
use crate::chain::outline::{Link, Part};
use crate::chain::{Chain, Construction, Sizes, outline};
use crate::contact::{Body, Joint, Pose, widen};
use crate::plane::{Placement, Point, Step};
use crate::posing::{Ask, Mode, Posing, cap};
use crate::reach::{Entered, Pumped, Wall, WallEntry, section};
use crate::report::FaceSection;
use crate::scenario::Scenario;
use serde::Serialize;

/// What a page shows of the gaps of one joint.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct EnterState {
    /// How far the pitch is turned, -1 to 1: the stop either way.
    pub share: f64,
    /// Every hidden face of the joint, as it stands.
    pub faces: Vec<FaceSection>,
    /// What it breathes, from stop to stop.
    pub pumped_mm3_per_cycle: f64,
    /// Ids and numbers of the sentences.
    pub answers: Vec<Answer>,
    /// The joint, cut.
    pub view: EnterView,
}

/// A joint cut through its pin, gaps drawn too big; points in mm, x along the chain, y across.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct EnterView {
    /// How many times too big the gaps are.
    pub times: f64,
    /// How far the picture reaches from the pin: along, across.
    pub half_mm: [f64; 2],
    /// Metal, back to front.
    pub pieces: Vec<MetalView>,
    /// The hidden walls.
    pub walls: Vec<WallView>,
}

/// A piece of metal in a section.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct MetalView {
    /// The body that it moves with, or `pin`.
    pub body: &'static str,
    /// Its outline.
    pub loops: Vec<Vec<[f64; 2]>>,
}

/// A hidden wall and what reaches which share of it.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct WallView {
    /// The id of its face.
    pub face: String,
    /// Its two ends.
    pub ends: [[f64; 2]; 2],
    /// Into the air.
    pub air: [f64; 2],
    /// What the bristle touches.
    pub bristle: Vec<(f64, f64)>,
    /// Where the grain rolls.
    pub particle: Vec<(f64, f64)>,
    /// Whether the liquid comes there.
    pub liquid: bool,
}

/// The pitch that was flexed last, kept while its chain stays.
#[derive(Default)]
pub struct EnterDesk {
    held: Option<(Chain, f64, Posing)>,
}

/// How far the picture reaches past the longer plate, of the pitch.
const PAST_PLATE: f64 = 0.07;
/// Straight pieces to a quarter turn of an arc.
const PIECES: u32 = 5;

impl EnterDesk {
    /// One joint, its pitch turned by a share of its stop; none where nothing is asked or the chain
    /// does not go together.
    pub fn state(&mut self, scenario: &Scenario, share: f64) -> Option<EnterState> {
        let reach = scenario.reach.as_ref()?;
        let chain = scenario.chain.chain();
        let (times, posing) = self.posing(chain)?;
        posing.put(Ask::Share { mode: Mode::Turn, share });
        let (probes, liquid) = (reach.probes(), reach.liquid());
        let entered = Entered::of(chain, posing.pose(), Joint::First, &probes, &liquid);
        let pumped = Pumped::of(chain);
        Some(EnterState {
            share,
            faces: entered.faces.iter().map(FaceSection::of).collect(),
            pumped_mm3_per_cycle: pumped.turned_mm3(),
            answers: enter(&entered, &probes, &liquid, &pumped),
            view: EnterView::of(chain, times, posing.drawn_pose(), &entered),
        })
    }

    fn posing(&mut self, chain: &Chain) -> Option<(f64, &mut Posing)> {
        if !self.held.as_ref().is_some_and(|(held, ..)| held == chain) {
            let wanted = chain.goes_together().then(|| f64::from(cap(chain)));
            self.held = wanted.and_then(|times| {
                let drawn = Chain::new(widen(chain, times)).ok()?;
                Some((*chain, times, Posing::new(chain, &drawn, times, 0.0)))
            });
        }
        self.held.as_mut().map(|(_, times, posing)| (*times, posing))
    }
}

impl EnterView {
    fn of(chain: &Chain, times: f64, drawn_pose: &Pose, entered: &Entered) -> Self {
        let drawn = widen(chain, times);
        let cut = section(&drawn, drawn_pose, Joint::First);
        let along = drawn.inner_overhang_mm.max(drawn.outer_overhang_mm);
        Self {
            times,
            half_mm: [along + PAST_PLATE * drawn.pitch_mm, 0.5 * drawn.pin_length_mm],
            pieces: metal(&drawn, drawn_pose),
            walls: cut.walls.iter().zip(&entered.walls).map(|(w, e)| wall(w, e, entered)).collect(),
        }
    }
}

fn wall(wall: &Wall, entry: &WallEntry, entered: &Entered) -> WallView {
    let same = |face: &&crate::reach::FaceEntry| face.face == entry.face;
    let wet = entered.faces.iter().find(same).is_some_and(|face| face.fill_time_s.is_some());
    WallView {
        face: entry.face.id(),
        ends: [wall.from, wall.to].map(pair),
        air: pair(wall.normal),
        bristle: entry.bristle.clone(),
        particle: entry.particle.clone(),
        liquid: wet,
    }
}

/// The metal of the first joint of a pitch in its pose.
pub(super) fn metal(drawn: &Sizes, pose: &Pose) -> Vec<MetalView> {
    let inner: &[_] = match drawn.construction {
        Construction::Bushed => &[(Body::InnerFar, Link::Inner)],
        Construction::Collared => {
            &[(Body::InnerFar, Link::InnerFar), (Body::InnerNear, Link::InnerNear)]
        }
    };
    let mut bodies = vec![(Body::HeldOuter, Link::OuterToLeft)];
    bodies.extend(inner);
    bodies.push((Body::FirstRoller, Link::Roller));
    let mut all = Vec::new();
    for (body, link) in bodies {
        for piece in outline::plan(drawn, link) {
            let own = if piece.part == Part::Pin { "pin" } else { body.key() };
            all.push(MetalView { body: own, loops: loops(&piece.outline, pose.of(body)) });
        }
    }
    all
}

/// An outline as closed loops of points, arcs in short straight pieces.
fn loops(outline: &[Step], place: &Placement) -> Vec<Vec<[f64; 2]>> {
    let mut loops: Vec<Vec<[f64; 2]>> = Vec::new();
    let put = |loops: &mut Vec<Vec<[f64; 2]>>, point: Point| {
        let placed = pair(place.outward(point));
        loops.last_mut().into_iter().for_each(|points| points.push(placed));
    };
    for step in outline {
        match step {
            Step::Move(at) => {
                loops.push(Vec::new());
                put(&mut loops, *at);
            }
            Step::Line(to) => put(&mut loops, *to),
            Step::Arc(arc) => {
                for i in 1..=PIECES {
                    let share = f64::from(i) / f64::from(PIECES);
                    put(&mut loops, arc.at(arc.start_rad + share * arc.sweep_rad));
                }
            }
            Step::Close => {}
        }
    }
    loops
}

fn pair(point: Point) -> [f64; 2] {
    [point.x + 0.0, point.y + 0.0]
}
