//! Plain JavaScript objects and lists of whatever the kernel tells.
//!
//! Every value is put straight where it belongs, in an object under its name or in a list behind
//! the others, and nothing can fail: what is left of a member in a program is one call with its name.

mod parts;
mod place;

use core::cell::RefCell;
use core::fmt::{Display, Formatter};
use js_sys::Array;
use serde::Serialize;
use serde::ser;
use wasm_bindgen::JsValue;
use wasm_bindgen::prelude::wasm_bindgen;

#[wasm_bindgen]
extern "C" {
    /// Whatever has members: an object or a list.
    type Whole;
    #[wasm_bindgen(method, structural, indexing_setter)]
    fn name_number(this: &Whole, name: &JsValue, value: f64);
    #[wasm_bindgen(method, structural, indexing_setter)]
    fn name(this: &Whole, name: &JsValue, value: &JsValue);
    #[wasm_bindgen(method, js_name = push)]
    fn add_number(this: &Whole, value: f64);
    #[wasm_bindgen(method, js_name = push)]
    fn add(this: &Whole, value: &JsValue);
    #[wasm_bindgen(method, structural, indexing_getter)]
    fn get(this: &Whole, index: u32) -> JsValue;
}

/// A plain JavaScript object, list or value; what is missing becomes `null`.
pub fn plain(what: &impl Serialize) -> JsValue {
    let one = Whole::from(JsValue::from(Array::new()));
    let Ok(()) = what.serialize(Place { whole: &one, name: None });
    one.get(0)
}

/// What never happens: a value that refuses to be told.
#[derive(Debug)]
enum Never {}

impl Display for Never {
    fn fmt(&self, _: &mut Formatter<'_>) -> core::fmt::Result {
        match *self {}
    }
}

impl core::error::Error for Never {}

impl ser::Error for Never {
    fn custom<T: Display>(_: T) -> Self {
        never()
    }
}

/// Enums that hold something, bytes and the like: the kernel tells none.
fn never() -> ! {
    unreachable!("the kernel tells numbers, texts, lists and objects")
}

/// Where a value goes: under its name or, in a list, behind the others.
#[derive(Clone, Copy)]
struct Place<'a> {
    whole: &'a Whole,
    name: Option<&'static str>,
}

#[inline(never)]
fn put_number(whole: &Whole, name: Option<&'static str>, value: f64) {
    match name {
        Some(name) => with_name(name, |name| whole.name_number(name, value)),
        None => whole.add_number(value),
    }
}

#[inline(never)]
fn put_text(whole: &Whole, name: Option<&'static str>, value: &str) {
    put(whole, name, &value.into());
}

#[inline(never)]
fn put(whole: &Whole, name: Option<&'static str>, value: &JsValue) {
    match name {
        Some(name) => with_name(name, |name| whole.name(name, value)),
        None => whole.add(value),
    }
}

#[inline(never)]
fn put_whole(whole: &Whole, name: Option<&'static str>, part: JsValue) -> Whole {
    put(whole, name, &part);
    part.into()
}

/// How many names are known at once; the kernel has a third as many.
const NAMES: usize = 512;

thread_local! {
    /// Names that JavaScript has been told, each in the place of its address: a name crosses once.
    static KNOWN: RefCell<Vec<(&'static str, JsValue)>> =
        RefCell::new(vec![("", JsValue::UNDEFINED); NAMES]);
}

fn with_name(name: &'static str, put: impl FnOnce(&JsValue)) {
    let address = name.as_ptr().addr();
    let place = (address ^ (address / NAMES)) % NAMES;
    KNOWN.with_borrow_mut(|known| {
        let known = &mut known[place];
        if !core::ptr::eq(known.0, name) {
            *known = (name, name.into());
        }
        put(&known.1);
    });
}

/// An object or a list that is being filled.
struct Parts {
    whole: Whole,
    /// The name that a map has given for its next value.
    key: JsValue,
}

impl Parts {
    /// An empty one in its place.
    fn at(place: Place, part: JsValue) -> Self {
        Self { whole: put_whole(place.whole, place.name, part), key: JsValue::UNDEFINED }
    }

    fn item(&self, value: &(impl Serialize + ?Sized)) -> Result<(), Never> {
        value.serialize(Place { whole: &self.whole, name: None })
    }

    fn member(&self, name: &'static str, value: &(impl Serialize + ?Sized)) -> Result<(), Never> {
        value.serialize(Place { whole: &self.whole, name: Some(name) })
    }
}
