//! An arrangement of wheels as a page asks for it: read, refused, and told pair by pair.

use super::{ChainLine, Gears, Pair};
use crate::error::{Error, Rule};
use serde::Serialize;

/// Watts that losses are a share of where the drive's power is not known.
const OF_W: f64 = 100.0;
/// Wheels of one row, at most.
const MOST_WHEELS: usize = 20;
/// Teeth of a wheel.
const TEETH: [f64; 2] = [5.0, 1000.0];
/// Between two wheels of a row, and from the middle of one row to the other, mm at most.
const LONGEST_MM: f64 = 200.0;

/// What is asked for: rows of teeth, each from the side nearest the frame outwards.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Wanted {
    /// Teeth at the driver.
    pub front: Vec<f64>,
    /// Between two wheels there, mm.
    pub front_step_mm: f64,
    /// Teeth at the driven shaft.
    pub back: Vec<f64>,
    /// Between two wheels there, mm.
    pub back_step_mm: f64,
    /// How much farther out the middle of the front row stands than the middle of the back one, mm.
    pub aside_mm: f64,
    /// Teeth of guide wheels in the slack strand.
    pub guides: Vec<f64>,
}

/// An arrangement, told.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Arrangement {
    /// Where the front wheels stand, from the middle of the back row outwards, mm.
    pub front_mm: Vec<f64>,
    /// Where the back wheels stand.
    pub back_mm: Vec<f64>,
    /// The smallest and the largest offset of all pairs.
    pub range_mm: [f64; 2],
    /// The power that losses are told of.
    pub of_w: f64,
    /// By front wheel and then by back wheel; none where the two do not fit between the shafts.
    pub pairs: Vec<Option<PairView>>,
}

/// A pair of wheels and the watts that it takes.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct PairView {
    /// What it costs, as fractions.
    #[serde(flatten)]
    pub pair: Pair,
    /// Whether links only slide in their side gaps.
    pub free: bool,
    /// Loss at pins and faces in a straight line.
    pub straight_w: f64,
    /// The same with the offset; none where no pose is reached.
    pub loss_w: Option<f64>,
    /// What guide wheels add at their joints.
    pub guide_w: f64,
}

impl Wanted {
    /// The wheels; or every fault, by the name of its field.
    pub fn gears(&self) -> Result<Gears, Vec<Error>> {
        let rows =
            [("front", &self.front, 1), ("back", &self.back, 1), ("guides", &self.guides, 0)];
        let lengths = [
            ("front_step_mm", self.front_step_mm, 0.0),
            ("back_step_mm", self.back_step_mm, 0.0),
            ("aside_mm", self.aside_mm, -LONGEST_MM),
        ];
        let of_rows =
            rows.into_iter().filter_map(|(name, row, least)| fault_of_row(name, row, least));
        let of_lengths = lengths.into_iter().filter_map(|(name, mm, low_mm)| {
            Some(Error::number(name, mm, outside(mm, [low_mm, LONGEST_MM])?))
        });
        let faults: Vec<_> = of_rows.chain(of_lengths).collect();
        if !faults.is_empty() {
            return Err(faults);
        }
        let teeth = |row: &[f64]| row.iter().map(|&teeth| teeth as u32).collect::<Vec<_>>();
        Ok(Gears {
            front: Gears::row(&teeth(&self.front), self.front_step_mm, self.aside_mm),
            back: Gears::row(&teeth(&self.back), self.back_step_mm, 0.0),
            guides: teeth(&self.guides),
        })
    }
}

/// The first fault of a row of teeth.
fn fault_of_row(name: &str, row: &[f64], least: usize) -> Option<Error> {
    if row.len() < least {
        return Some(Error::number(name, 0.0, Rule::Missing));
    }
    if row.len() > MOST_WHEELS {
        let limit = MOST_WHEELS as f64;
        return Some(Error::number(name, row.len() as f64, Rule::AtMost { limit }));
    }
    row.iter().find_map(|&teeth| {
        let whole = (teeth % 1.0 > 0.0).then_some(Rule::Whole);
        Some(Error::number(name, teeth, outside(teeth, TEETH).or(whole)?))
    })
}

/// The rule that a number outside a range breaks.
fn outside(number: f64, [low, high]: [f64; 2]) -> Option<Rule> {
    match number {
        _ if !number.is_finite() => Some(Rule::Finite),
        _ if number < low => Some(Rule::AtLeast { limit: low }),
        _ if number > high => Some(Rule::AtMost { limit: high }),
        _ => None,
    }
}

impl Arrangement {
    /// What each pair of an arrangement costs in a drive whose own wheels it replaces.
    pub fn of(line: &ChainLine, gears: &Gears) -> Self {
        let of_w = line.power.map_or(OF_W, |power| power.watts);
        let aside = |row: &[super::Gear]| row.iter().map(|gear| gear.aside_mm).collect();
        let pairs = gears.pair_costs(line).into_iter();
        Self {
            front_mm: aside(&gears.front),
            back_mm: aside(&gears.back),
            range_mm: gears.range_mm().unwrap_or_default(),
            of_w,
            pairs: pairs.map(|pair| pair.map(|pair| view(pair, of_w))).collect(),
        }
    }
}

fn view(pair: Pair, of_w: f64) -> PairView {
    PairView {
        pair,
        free: pair.offset_mm.abs() <= pair.free_mm,
        straight_w: of_w * pair.straight_fraction,
        loss_w: pair.loss_fraction.map(|fraction| of_w * fraction),
        guide_w: of_w * pair.guide_fraction,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn wanted() -> Wanted {
        Wanted {
            front: vec![30.0, 46.0],
            front_step_mm: 8.0,
            back: vec![28.0, 16.0, 11.0],
            back_step_mm: 4.0,
            aside_mm: 1.0,
            guides: vec![11.0, 11.0],
        }
    }

    #[test]
    fn rows_stand_about_their_middles() {
        let gears = wanted().gears().expect("good rows");
        let aside =
            |row: &[super::super::Gear]| row.iter().map(|gear| gear.aside_mm).collect::<Vec<_>>();
        assert_eq!(aside(&gears.front), [-3.0, 5.0]);
        assert_eq!(aside(&gears.back), [-4.0, 0.0, 4.0]);
        assert_eq!(gears.range_mm(), Some([-9.0, 7.0]));
        assert_eq!(gears.guides, [11, 11]);
    }

    #[test]
    fn every_field_that_cannot_be_is_named() {
        let bad = Wanted {
            front: Vec::new(),
            front_step_mm: -1.0,
            back: vec![11.5, 12.0],
            back_step_mm: f64::NAN,
            aside_mm: 1e6,
            guides: vec![3.0],
        };
        let faults = bad.gears().expect_err("nothing is good");
        let named: Vec<_> =
            faults.iter().map(|fault| (fault.field.as_str(), fault.rule.id())).collect();
        assert_eq!(named.len(), 6, "{named:?}");
        for field in ["front", "front_step_mm", "back", "back_step_mm", "aside_mm", "guides"] {
            assert!(named.iter().any(|(name, _)| *name == field), "{field}");
        }
        assert!(Wanted { guides: Vec::new(), ..wanted() }.gears().is_ok());
    }
}
