//! A narrower chain as a page shows it: what is said of it and its pictures.

use super::shape::Shape;
use crate::answer::{Answer, width};
use crate::chain::outline::{Link, Part, Piece, across};
use crate::chain::{Construction, Sizes};
use crate::drive::Slim;
use crate::plane::Point;
use crate::report::WidthSection;
use crate::scenario::Scenario;
use crate::width::{Keep, Layer, MATERIALS, Material, Rivet, STEEL, most_mm};
use serde::Serialize;

/// Steps of the clearance along a pin.
const STEPS: u32 = 48;

/// A stretch of the width, right of the middle; the left is its mirror image.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Stretch {
    /// The key of its layer.
    pub key: &'static str,
    /// Where it begins, from the chain's middle.
    pub from_mm: f64,
    /// Where it ends.
    pub to_mm: f64,
    /// The layer's whole width, both sides; negative where parts overlap.
    pub width_mm: f64,
    /// The same in the chain as it is.
    pub before_mm: f64,
}

/// Clearance at a place of the pin.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Left {
    /// From the chain's middle.
    pub at_mm: f64,
    /// What is left there; negative where the pin jams.
    pub left_mm: f64,
}

/// Plates of another material: handbook order, from memory.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Row {
    /// The key of its word.
    pub key: &'static str,
    /// Young's modulus.
    pub modulus_mpa: f64,
    /// Where it yields.
    pub yield_mpa: f64,
    /// The pull's stress as a share of that.
    pub pull_fraction: f64,
    /// The press fit's, round the pin's hole.
    pub press_fraction: f64,
    /// What such a plate weighs, one of steel being 1.
    pub mass_ratio: f64,
}

/// What a page shows of a chain's width.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct WidthState {
    /// Ids and numbers of the sentences.
    pub answers: Vec<Answer>,
    /// Every number, as in a report.
    pub section: WidthSection,
    /// The same of the chain as it is.
    pub before: WidthSection,
    /// The most that it can be narrowed with gaps kept, and with plates kept.
    pub most_gaps_mm: f64,
    /// See above.
    pub most_plates_mm: f64,
    /// How much larger a pin is than its hole in the plate.
    pub press_mm: f64,
    /// How much riveting swells it.
    pub swelling_mm: f64,
    /// Over which length that falls to 37 %.
    pub decay_mm: f64,
    /// Pin clearance.
    pub clearance_mm: f64,
    /// The width by layer.
    pub stretches: Vec<Stretch>,
    /// The section across the chain: across to the right, up.
    pub shapes: Vec<Shape>,
    /// Half of its height.
    pub half_height_mm: f64,
    /// What is left of the pin's clearance along what bears on it, from end to end.
    pub profile: Vec<Left>,
    /// Where the cylinders that bear begin and end, right of the middle.
    pub bearing_mm: [f64; 2],
    /// Plates of other materials.
    pub rows: Vec<Row>,
}

impl WidthState {
    /// The chain of a scenario, its width as asked or as it is; none where it does not go together.
    pub fn of(scenario: &Scenario) -> Option<Self> {
        let slim = Slim::of(scenario)?;
        let as_it_is = Slim { slim: slim.wide, ..slim };
        let (rivet, sizes) = (slim.rivet(), &slim.slim);
        Some(Self {
            answers: width(&slim),
            section: WidthSection::of(&slim),
            before: WidthSection::of(&as_it_is),
            most_gaps_mm: most_mm(&slim.wide, Keep::Gaps),
            most_plates_mm: most_mm(&slim.wide, Keep::Plates),
            press_mm: slim.width.press_mm,
            swelling_mm: slim.width.swelling_mm,
            decay_mm: rivet.decay_mm,
            clearance_mm: sizes.pin_clearance_mm() + 0.0,
            stretches: stretches(&slim),
            shapes: shapes(sizes),
            half_height_mm: 0.5 * sizes.inner_plate_height_mm.max(sizes.outer_plate_height_mm),
            profile: profile(&rivet, sizes),
            bearing_mm: bearing_mm(sizes),
            rows: MATERIALS.iter().map(|material| Row::of(&slim, material)).collect(),
        })
    }
}

impl Row {
    fn of(slim: &Slim, material: &Material) -> Self {
        let [pull_fraction, press_fraction] = slim.shares(material);
        Self {
            key: material.key,
            modulus_mpa: material.modulus_mpa,
            yield_mpa: material.yield_mpa,
            pull_fraction,
            press_fraction,
            mass_ratio: material.density_g_per_cm3 / STEEL.density_g_per_cm3,
        }
    }
}

/// Layers from the middle out; an overlap makes a stretch that runs backward.
fn stretches(slim: &Slim) -> Vec<Stretch> {
    let mut from_mm = 0.0;
    let stretch = |layer: &Layer| {
        let width_mm = layer.of(&slim.slim) + 0.0;
        let begins_mm = from_mm;
        from_mm += 0.5 * width_mm;
        let before_mm = layer.of(&slim.wide) + 0.0;
        Stretch { key: layer.key(), from_mm: begins_mm, to_mm: from_mm, width_mm, before_mm }
    };
    Layer::ALL.iter().map(stretch).collect()
}

/// Where the cylinders that bear lie, right of the middle: from and to, mm.
fn bearing_mm(sizes: &Sizes) -> [f64; 2] {
    let [mouth_mm, inside_mm] = Rivet::ends_mm(sizes);
    match sizes.construction {
        Construction::Bushed => [-mouth_mm, mouth_mm],
        Construction::Collared => [inside_mm, mouth_mm],
    }
}

/// The clearance left from one end of what bears to the other; between two collars too, where
/// nothing touches the pin.
fn profile(rivet: &Rivet, sizes: &Sizes) -> Vec<Left> {
    let half_mm = 0.5 * sizes.bearing_width_mm();
    let at = |i: u32| {
        let at_mm = half_mm * (2.0 * f64::from(i) / f64::from(STEPS) - 1.0);
        Left { at_mm: at_mm + 0.0, left_mm: rivet.left_mm(sizes, at_mm) + 0.0 }
    };
    (0..=STEPS).map(at).collect()
}

/// The parts cut across the chain, back to front.
fn shapes(sizes: &Sizes) -> Vec<Shape> {
    let inner: &[Link] = match sizes.construction {
        Construction::Bushed => &[Link::Inner],
        Construction::Collared => &[Link::InnerFar, Link::InnerNear],
    };
    let links = [Link::OuterToLeft].iter().chain(inner).chain(&[Link::Roller]);
    let shape = |piece: Piece| Shape::new(role(piece.part), &piece.outline, Point::ZERO);
    links.flat_map(|&link| across(sizes, link)).map(shape).collect()
}

fn role(part: Part) -> &'static str {
    match part {
        Part::OuterPlate => "outer",
        Part::Pin => "pin",
        Part::InnerPlate => "inner",
        Part::Bush => "bush",
        Part::Roller => "roller",
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::scenario::Value;

    fn state(construction: &str, narrower_mm: f64, keep: &str) -> WidthState {
        let mut file =
            Value::object([("format", Value::from(1.0)), ("title", Value::text("Narrow"))]);
        file.put("chain.construction", Value::text(construction));
        for (key, mm) in [
            ("pitch_mm", 12.7),
            ("roller_diameter_mm", 7.75),
            ("inner_width_mm", 2.4),
            ("pin_diameter_mm", 3.6),
            ("inner_plate_mm", 1.0),
            ("outer_spacing_mm", 4.6),
        ] {
            file.put(&format!("chain.{key}"), Value::from(mm));
        }
        file.put("width.narrower_mm", Value::from(narrower_mm));
        file.put("width.keep", Value::text(keep));
        let scenario = Scenario::read(&file).unwrap_or_else(|faults| panic!("{faults:?}"));
        WidthState::of(&scenario).expect("it goes together")
    }

    #[test]
    fn stretches_join_and_end_at_half_the_width() {
        for construction in ["bushed", "collared"] {
            for (by_mm, keep) in [(0.0, "gaps"), (0.3, "gaps"), (0.15, "plates"), (0.3, "plates")] {
                let state = state(construction, by_mm, keep);
                let last = state.stretches[state.stretches.len() - 1];
                assert!((2.0 * last.to_mm - state.section.width_over_pins_mm).abs() < 1e-12);
                let joined = |two: &[Stretch]| two[0].to_mm.to_bits() == two[1].from_mm.to_bits();
                assert!(state.stretches.windows(2).all(joined));
            }
        }
    }

    #[test]
    fn the_clearance_left_is_least_at_the_mouths_and_the_same_at_both() {
        let state = state("bushed", 0.0, "gaps");
        let (first, last) = (state.profile[0], state.profile[state.profile.len() - 1]);
        assert!((first.left_mm - last.left_mm).abs() < 1e-12);
        assert!((first.left_mm - state.section.clearance_left_mm).abs() < 1e-12);
        assert!(state.profile.iter().all(|place| place.left_mm >= first.left_mm - 1e-15));
    }

    #[test]
    fn every_part_is_cut_across() {
        for (construction, parts) in [("bushed", 5), ("collared", 4)] {
            let state = state(construction, 0.1, "gaps");
            let mut roles: Vec<_> = state.shapes.iter().map(|shape| shape.role).collect();
            roles.sort_unstable();
            roles.dedup();
            assert_eq!(roles.len(), parts, "{roles:?}");
        }
    }
}
