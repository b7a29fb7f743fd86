//! A joint that folds on a wheel: where the pin lies in its bore, what has been rubbed so far, and
//! what it took.
//!
//! A roller comes to its seat while the link behind it still lies along the strand. Until the next
//! roller seats the wheel turns by alpha = 2 pi / z, and the joint folds by that angle. In the
//! wheel's own axes one link of the joint rests and the other turns. Where an outer link turns, its
//! pin turns in a bush that sits still in its roller; where an inner link turns, its bush turns
//! about a pin that rests, and its barrel turns in the seated roller too. At one wheel every joint
//! does the one as it runs on and the other as it runs off.
//!
//! A pin rolls in its bore before it slides: the contact climbs out of the line of the pull until
//! the friction angle atan(mu) holds it, and stays there. With r and R the radii of pin and bore,
//! c = 2 (R - r) and no sliding, a pin that turns by t takes the contact back round the bore by
//! (d2/c) t, while the pull has gone on by t; a bush that turns by t takes it on round the pin by
//! (d3/c) t. So the pin slides from atan(mu) c/d3 on where the outer link turns, and from
//! atan(mu) c/d2 where the inner link does. Derived; the joint is taken as at rest in the line of
//! the pull when it seats.

use crate::friction::{JointLoad, Rubbing, Work, pin_roll_rad};
use crate::sprocket::Wheel;

/// Which link of a joint turns while the other rests on the wheel.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Turns {
    /// The outer link, and its pin with it.
    Outer,
    /// The inner link, and its bush or collars with it.
    Inner,
}

impl Turns {
    /// The key in the data of a page.
    pub fn key(self) -> &'static str {
        match self {
            Self::Outer => "outer",
            Self::Inner => "inner",
        }
    }

    /// The other link.
    #[must_use]
    pub fn other(self) -> Self {
        match self {
            Self::Outer => Self::Inner,
            Self::Inner => Self::Outer,
        }
    }
}

/// One joint folding once on one wheel.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Engagement {
    /// The wheel.
    pub wheel: Wheel,
    /// What presses in the joint.
    pub load: JointLoad,
    /// Push of the tooth on the roller, N.
    pub tooth_push_n: f64,
    /// What rubs.
    pub rubbing: Rubbing,
    /// Clearance c of the pin in its bore, mm.
    pub clearance_mm: f64,
    /// Which link turns.
    pub turns: Turns,
}

/// Where a contact is and where it has been: angles round the pin's axis from the line of the pull
/// as it was when the joint seated, rad, positive the way the joint folds.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Rubbed {
    /// Where it is now.
    pub at_rad: f64,
    /// The least angle it has had.
    pub low_rad: f64,
    /// The greatest.
    pub high_rad: f64,
}

/// A joint part of the way through its fold.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Seated {
    /// How far it has folded, rad.
    pub fold_rad: f64,
    /// How much of that its pin rolled, rad: nothing slides there.
    pub rolled_rad: f64,
    /// How far the contact stands out of the line of the pull, rad: the friction angle once it
    /// slides; negative where it hangs back.
    pub climb_rad: f64,
    /// The contact in the axes of the bore.
    pub on_bore: Rubbed,
    /// The contact in the axes of the pin.
    pub on_pin: Rubbed,
    /// Work so far. The rolled part is counted as if it slid, as the closed form mu N r alpha does:
    /// too much by that share, less than a thousandth.
    pub work: Work,
}

impl Engagement {
    /// How far the joint folds in all, rad: alpha = 2 pi / z.
    pub fn articulation_rad(&self) -> f64 {
        self.wheel.articulation_rad()
    }

    /// How far the joint folds before its pin slides, rad: atan(mu) c/d3 where the outer link turns,
    /// atan(mu) c/d2 where the inner link does.
    pub fn roll_rad(&self) -> f64 {
        let pin_mm = 2.0 * self.rubbing.pin_radius_mm;
        let over_mm = match self.turns {
            Turns::Outer => pin_mm + self.clearance_mm,
            Turns::Inner => pin_mm,
        };
        pin_roll_rad(self.rubbing.friction.pin, self.clearance_mm, over_mm)
    }

    /// Work of a part of the fold, rad. The roller's is all of it where the inner link turns, and
    /// nothing where the outer one does.
    pub fn work(&self, fold_rad: f64) -> Work {
        let mean = self.rubbing.work(&self.load, self.tooth_push_n, fold_rad);
        let times = if self.turns == Turns::Inner { 2.0 } else { 0.0 };
        Work { roller_n_mm: times * mean.roller_n_mm, ..mean }
    }

    /// The joint after a share of its fold, 0 to 1; what is beyond is taken as the end.
    pub fn at(&self, share: f64) -> Seated {
        let fold_rad = share.clamp(0.0, 1.0) * self.articulation_rad();
        let rolled_rad = fold_rad.min(self.roll_rad());
        let friction_rad = libm::atan(self.rubbing.friction.pin);
        let risen = if self.roll_rad() > 0.0 { rolled_rad / self.roll_rad() } else { 0.0 };
        let climb_rad = match self.turns {
            Turns::Outer => 0.0 - friction_rad * risen,
            Turns::Inner => friction_rad * risen,
        };
        let still = Rubbed::over(climb_rad, climb_rad);
        let moved = Rubbed::over(fold_rad + climb_rad, rolled_rad + climb_rad);
        let (on_bore, on_pin) = match self.turns {
            Turns::Outer => (moved, still),
            Turns::Inner => (still, moved),
        };
        let work = self.work(fold_rad);
        Seated { fold_rad, rolled_rad, climb_rad, on_bore, on_pin, work }
    }
}

impl Rubbed {
    /// A contact that began in the line of the pull, rolled to `turned_rad` and is now at `at_rad`.
    fn over(at_rad: f64, turned_rad: f64) -> Self {
        Self {
            at_rad,
            low_rad: at_rad.min(turned_rad).min(0.0),
            high_rad: at_rad.max(turned_rad).max(0.0),
        }
    }
}

#[cfg(test)]
mod tests;
