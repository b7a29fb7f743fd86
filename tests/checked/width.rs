//! Press fits and stresses against an independent reckoning: `reference/width.csv`.

use super::Sheet;
use crate::Row;
use lightgap::width::{Elastic, Press, STEEL, plate_mpa};

const UM_PER_MM: f64 = 1000.0;

/// The press fit that `pin x hole x eye x interference x modulus x poisson` names, its pin of steel.
fn press(of: &str) -> Option<Press> {
    let numbers: Vec<f64> = of.split(" x ").filter_map(|number| number.parse().ok()).collect();
    let [pin_mm, hole_mm, eye_mm, interference_mm, modulus_mpa, poisson_ratio] = numbers[..] else {
        return None;
    };
    let plate = Elastic { modulus_mpa, poisson_ratio };
    Some(Press { pin_mm, hole_mm, eye_mm, interference_mm, pin: STEEL.elastic(), plate })
}

fn got(row: &Row) -> Option<f64> {
    let fit = press(&row.of);
    Some(match row.what.as_str() {
        "press_pressure" => fit?.pressure_mpa(),
        "press_hoop" => fit?.hoop_mpa(),
        "eye_growth" => UM_PER_MM * fit?.growth_mm(),
        "same_material" => {
            let p = fit?;
            let ratio = p.pin_mm * p.pin_mm / (p.eye_mm * p.eye_mm);
            let short = p.pin.modulus_mpa * p.interference_mm * (1.0 - ratio) / (2.0 * p.pin_mm);
            short / p.pressure_mpa()
        }
        "plate_stress" => plate_mpa(300.0, 1.0, 6.4, 8.6, 5.0),
        _ => return None,
    })
}

pub(super) fn sheet() -> Sheet {
    Sheet::of_rows("Press fits and plate stress", "tests/reference/width.csv", got)
}
