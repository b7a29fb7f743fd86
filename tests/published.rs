//! Every check against the outside: published figures, arithmetic, other libraries (`checked/`). The
//! table of source, expected and got is [docs/checks.md](../docs/checks.md), held to the kernel here.

use lightgap::table::PUBLISHED;
use lightgap_tests::checked::{check, page, sheets};
use lightgap_tests::{rows, text_of};

#[test]
fn every_check_holds_and_the_table_of_them_is_not_out_of_date() {
    let sheets = sheets();
    for sheet in &sheets {
        sheet.hold();
    }
    assert!(sheets.iter().map(|sheet| sheet.checks.len()).sum::<usize>() > 200);
    let advice = "docs/checks.md is out of date: `cargo renew` writes it anew";
    assert!(text_of("docs/checks.md") == page(&sheets), "{advice}");
}

#[test]
fn a_check_that_is_off_or_has_no_answer_does_not_hold() {
    let of = |got| check("arithmetic", "one and one", (2.0, got), 0.1, "");
    assert!(of(2.05).holds() && !of(2.2).holds() && !of(f64::NAN).holds());
}

#[test]
fn every_published_size_is_checked() {
    let rows = rows("tests/reference/sizes.csv");
    for size in PUBLISHED {
        let checked = rows.iter().filter(|row| row.of == size.number).count();
        let heights = 2 * usize::from(size.highest_inner_plate_mm().is_some());
        assert_eq!(checked, 10 + heights, "{}", size.number);
    }
}
