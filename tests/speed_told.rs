//! `docs/speed.md` has the rows, goals and versions of today. Nothing is timed here.

use lightgap_tests::speed::{Machine, PAGE, Row, Timed, faults, locked, page, rows};
use lightgap_tests::text_of;

/// A page that was just written.
fn fresh(rows: &[Row]) -> String {
    let machine = Machine { said: "A machine.".into(), commit: "0000000".into() };
    let timed = |row: &Row| {
        let (rival, ns) = (row.rival_at(locked), Some([2.0 * row.goal, 1.0]));
        Timed { row: row.clone(), rival, ns, note: String::new() }
    };
    page(&machine, &rows.iter().map(timed).collect::<Vec<_>>())
}

#[test]
fn the_table_of_speed_is_of_the_rows_of_today() {
    let faults = faults(&text_of(PAGE));
    assert!(faults.is_empty(), "{PAGE}:\n{}", faults.join("\n"));
}

#[test]
fn every_row_names_a_work_once_and_a_library_whose_version_is_known() {
    let rows = rows();
    for (at, row) in rows.iter().enumerate() {
        assert!(rows[..at].iter().all(|other| other.work != row.work), "{} twice", row.work);
        assert!(row.goal > 0.0 && !row.from.is_empty(), "{}", row.work);
        let known = row.from.iter().all(|name| locked(name).is_some());
        assert_eq!(known, row.is_locked(), "{}", row.work);
        let named = row.rival_at(|_| Some("9.9".into()));
        assert_eq!(named.matches("9.9").count(), row.from.len(), "{named}");
    }
}

#[test]
fn a_table_that_is_out_of_date_is_told_with_the_way_to_renew_it() {
    let mut rows = rows();
    assert_eq!(faults(&fresh(&rows)), [""; 0]);
    let clarabel = locked("clarabel").expect("a version");
    for (why, page) in [
        ("clarabel", fresh(&rows).replace(&format!("clarabel {clarabel}"), "clarabel 0.0.1")),
        ("is told as", fresh(&rows).replacen("| yes |", "| no |", 1)),
        ("other rows", fresh(&rows[1..])),
    ] {
        let found = faults(&page);
        assert!(!found.is_empty(), "{why}");
        assert!(found[0].contains(why) && found[0].contains("cargo speed"), "{}", found[0]);
    }
    rows[0].goal += 1.0;
    assert!(faults(&fresh(&rows))[0].contains("goal"));
}
