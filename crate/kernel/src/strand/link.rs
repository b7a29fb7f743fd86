//! The links of a strand: where each one's unknowns lie, and where it stands.

use crate::chain::{Construction, Sizes};
use crate::contact::Slope;
use crate::plane::Placement;

/// What the sprocket does with the link at an end of the strand.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Ends {
    /// Holds it straight: an upper bound, since a tooth resists a yaw only weakly.
    Held,
    /// Holds its pin and lets it turn: a lower bound.
    Hinged,
}

/// The unknowns that a link has, as indices into the problem.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(super) struct Unknowns {
    /// Slide of each plate along the link; the same index twice for a rigid link.
    pub slide: [Option<usize>; 2],
    /// Position across.
    pub across: Option<usize>,
    /// Yaw times pitch.
    pub yaw: Option<usize>,
    /// The springy yaw of the joint before the link, times pitch over the springs' scale.
    pub spring: Option<usize>,
}

/// One link: its unknowns' indices and where it stands.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Link {
    pub unknowns: Unknowns,
    /// Where its first joint's centre is when the strand is straight, mm.
    pub nominal_mm: f64,
    /// Slide of each plate along the link, mm.
    pub slide_mm: [f64; 2],
    /// Position of the first joint's centre across, mm.
    pub across_mm: f64,
    /// At the origin, turned by its yaw.
    turned: Placement,
    /// At the origin, turned by the springy part of the yaw at the joint before the link.
    sprung: Placement,
}

impl Link {
    /// The links of a strand of so many joints: link 0 is an outer link, and they alternate. Returns
    /// the links and how many unknowns they have.
    pub(super) fn row(
        sizes: &Sizes,
        joints: usize,
        ends: Ends,
        springy: bool,
    ) -> (Vec<Self>, usize) {
        let mut next = 0;
        let mut take = |wanted: bool| {
            wanted.then(|| {
                next += 1;
                next - 1
            })
        };
        let mut links = Vec::with_capacity(joints + 1);
        for i in 0..=joints {
            let (first, last) = (i == 0, i == joints);
            let spring = take(springy && !first);
            let far = take(!first);
            let split = sizes.construction == Construction::Collared && i % 2 == 1 && !last;
            let near = if split { take(true) } else { far };
            let across = take(!first && !last);
            let yaw = take(!(first || last) || ends == Ends::Hinged);
            links.push(Self {
                unknowns: Unknowns { slide: [far, near], across, yaw, spring },
                nominal_mm: (i as f64 - 1.0).max(0.0) * sizes.pitch_mm,
                slide_mm: [0.0; 2],
                across_mm: 0.0,
                turned: Placement::default(),
                sprung: Placement::default(),
            });
        }
        (links, next)
    }

    /// Where it would stand in a mirror along the strand.
    #[cfg(test)]
    pub(super) fn mirrored(&self) -> Self {
        let back = |place: &Placement| Placement::default().turned(-place.yaw_rad);
        Self {
            slide_mm: [self.slide_mm[1], self.slide_mm[0]],
            across_mm: -self.across_mm,
            turned: back(&self.turned),
            sprung: back(&self.sprung),
            ..*self
        }
    }

    /// Its yaw, rad.
    pub(super) fn yaw_rad(&self) -> f64 {
        self.turned.yaw_rad
    }

    /// The springy part of the yaw at the joint before it, as a turn about the origin.
    pub(super) fn sprung(&self) -> &Placement {
        &self.sprung
    }

    /// Turns it back to no yaw, its spring as well.
    pub(super) fn straighten(&mut self) {
        (self.turned, self.sprung) = (Placement::default(), Placement::default());
    }

    /// Where one of its plates stands: 0 far, 1 near.
    pub(super) fn plate(&self, plate: usize) -> Placement {
        self.plate_at(plate, self.nominal_mm)
    }

    /// The same where its first joint's centre is elsewhere along the straight strand, mm: a joint's
    /// gaps are told from its own links, so that how long the strand is adds no rounding.
    pub(super) fn plate_at(&self, plate: usize, nominal_mm: f64) -> Placement {
        let slide_mm = self.slide_mm[plate];
        if self.unknowns.across.is_some() {
            let (along, _) = self.turned.axes();
            let (x_mm, y_mm) =
                (nominal_mm + slide_mm * along.x, self.across_mm + slide_mm * along.y);
            self.turned.moved_to(x_mm, y_mm)
        } else {
            self.turned.moved_to(nominal_mm + slide_mm, self.across_mm)
        }
    }

    /// How a gap changes with this link's slide, across (mm/mm) and yaw times pitch, from its change
    /// with a plate's x, y and yaw.
    pub(super) fn pull_back(&self, plate: usize, change: [f64; 3], pitch_mm: f64) -> [f64; 3] {
        let [x, y, yaw] = change;
        if self.unknowns.across.is_none() {
            return [x, y, yaw / pitch_mm];
        }
        let axis = self.turned.axes().0;
        let along = x * axis.x + y * axis.y;
        let turning = yaw + self.slide_mm[plate] * (y * axis.x - x * axis.y);
        [along, y, turning / pitch_mm]
    }

    /// Where it would stand if it went on so many times as far as it has come from another place.
    pub(super) fn gone_on(&self, from: &Self, times: f64) -> Self {
        let on = |now: f64, before: f64| now + times * (now - before);
        let turned = |now: &Placement, before: &Placement| {
            now.turned(times * (now.yaw_rad - before.yaw_rad))
        };
        Self {
            slide_mm: [0, 1].map(|plate| on(self.slide_mm[plate], from.slide_mm[plate])),
            across_mm: on(self.across_mm, from.across_mm),
            turned: turned(&self.turned, &from.turned),
            sprung: turned(&self.sprung, &from.sprung),
            ..*self
        }
    }

    /// Stands as another link does, but so far further along itself and across, mm.
    pub(super) fn stand_as(&mut self, other: &Self, [slide_mm, across_mm]: [f64; 2]) {
        let Self { unknowns, nominal_mm, .. } = *self;
        *self = Self { unknowns, nominal_mm, ..*other };
        self.slide_mm.iter_mut().for_each(|slide| *slide += slide_mm);
        self.across_mm += across_mm;
    }

    /// Takes so many times a step of all unknowns.
    pub(super) fn step(&mut self, x: &[f64], times: f64, pitch_mm: f64, spring_scale: f64) {
        let at = |index: Option<usize>| index.map_or(0.0, |i| times * x[i]);
        let Unknowns { slide, across, yaw, spring } = self.unknowns;
        self.slide_mm[0] += at(slide[0]);
        self.slide_mm[1] += at(slide[1]);
        self.across_mm += at(across);
        self.turned = self.turned.turned(at(yaw) / pitch_mm);
        self.sprung = self.sprung.turned(spring_scale * at(spring) / pitch_mm);
    }
}

/// A row of the problem while it is being put together: a range of unknowns around a joint.
#[derive(Debug, Clone)]
pub(super) struct Row {
    first: usize,
    coefficients: [f64; MOST_ROW],
    end: usize,
}

/// The most unknowns that one joint touches: two links of four and a spring.
pub(super) const MOST_ROW: usize = 9;

impl Row {
    /// An empty row of a joint, whose unknowns start at `first`.
    pub(super) fn at(first: usize) -> Self {
        Self { first, coefficients: [0.0; MOST_ROW], end: 0 }
    }

    /// Adds to the coefficient of an unknown, if there is one.
    pub(super) fn add(&mut self, index: Option<usize>, value: f64) {
        if let Some(index) = index {
            let place = index - self.first;
            self.coefficients[place] += value;
            self.end = self.end.max(place + 1);
        }
    }

    /// Adds how a gap changes with a link's plate.
    pub(super) fn add_plate(&mut self, link: &Link, plate: usize, change: [f64; 3], pitch_mm: f64) {
        let [along, across, yaw] = link.pull_back(plate, change, pitch_mm);
        self.add(link.unknowns.slide[plate], along);
        self.add(link.unknowns.across, across);
        self.add(link.unknowns.yaw, yaw);
    }

    /// The first unknown and the coefficients from there.
    pub(super) fn parts(&self) -> (usize, &[f64]) {
        (self.first, &self.coefficients[..self.end.max(1)])
    }
}

/// A slope, split by which of the two bodies belongs to the inner link.
pub(super) fn sides(slope: &Slope, corner_is_inner: bool) -> ([f64; 3], [f64; 3]) {
    if corner_is_inner { (slope.corner, slope.face) } else { (slope.face, slope.corner) }
}
