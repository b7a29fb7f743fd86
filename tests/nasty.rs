//! Every member of a whole scenario replaced by every nasty value: it is read or refused, never a
//! crash; what is read comes back as it was, and its report holds ordinary numbers.

use lightgap::answer::{give, ranges};
use lightgap::report::Report;
use lightgap::scenario::{Scenario, Value};
use lightgap_tests::{numbers, text_of};

fn whole() -> Value {
    serde_json::from_str(&text_of("tests/hostile/whole.json")).expect("a plain value")
}

fn nasty() -> Vec<Value> {
    let numbers = [
        f64::NAN,
        f64::INFINITY,
        f64::NEG_INFINITY,
        f64::MAX,
        f64::MIN_POSITIVE,
        -f64::MIN_POSITIVE,
        0.0,
        -1.0,
        0.5,
        1.0,
        1e-9,
        3.0,
        999.0,
        1e18,
    ];
    let others = [
        Value::Null,
        Value::Bool(true),
        Value::text(""),
        Value::text("\u{0}\u{202e}é"),
        Value::List(Vec::new()),
        Value::List(vec![Value::Null; 3]),
        Value::object([]),
        Value::object([("inch", Value::Number(0.1))]),
        Value::object([("inch", Value::Number(f64::MAX))]),
    ];
    numbers.into_iter().map(Value::Number).chain(others).collect()
}

/// Replaces the member of a number, counted depth first from 0; false when there are not so many.
fn replace(value: &mut Value, left: &mut usize, with: &Value) -> bool {
    if *left == 0 {
        *value = with.clone();
        return true;
    }
    *left -= 1;
    match value {
        Value::List(items) => items.iter_mut().any(|item| replace(item, left, with)),
        Value::Object(members) => members.iter_mut().any(|(_, item)| replace(item, left, with)),
        _ => false,
    }
}

/// Reads a scenario and takes everything from it that can be taken; whether it was read.
fn use_up(value: &Value, what: &str) -> bool {
    let scenario = match Scenario::read(value) {
        Ok(scenario) => scenario,
        Err(faults) => {
            assert!((1..=100).contains(&faults.len()), "{what}");
            return false;
        }
    };
    assert_eq!(Scenario::read(&scenario.write()).as_ref(), Ok(&scenario), "{what}");
    for (path, number) in numbers(&Report::of(&scenario)) {
        let ordinary = number.is_finite() && (number != 0.0 || number.is_sign_positive());
        assert!(ordinary, "{what}: {path} {number}");
    }
    let answers = give(scenario.chain.chain()).into_iter().chain(ranges(&scenario));
    for answer in answers {
        assert!(answer.numbers.iter().all(|(_, number)| number.is_finite()), "{what}: {answer:?}");
    }
    true
}

#[test]
fn every_member_with_every_nasty_value_is_read_or_refused() {
    let (mut read, mut refused) = (0, 0);
    for with in nasty() {
        for place in 0.. {
            let mut value = whole();
            if !replace(&mut value, &mut place.clone(), &with) {
                break;
            }
            if use_up(&value, &format!("{with:?} at {place}")) { read += 1 } else { refused += 1 }
        }
    }
    println!("{read} read, {refused} refused");
    assert!(read > 200 && refused > 1000, "{read} read, {refused} refused");
}
