//! A mark that a telephone reads: an address as a QR code (ISO/IEC 18004), so that a hall can follow.

use lightgap_wasm::cross::{member, object};
use qrcodegen::{QrCode, QrCodeEcc};
use wasm_bindgen::prelude::*;

/// The mark of `asked.text`: how many squares a side has, and the dark ones row by row as one text of
/// ones and noughts; `null` where there is no text, or more than a mark can hold.
pub fn answer(asked: &JsValue) -> JsValue {
    let text = member(asked, "text").as_string();
    let code = text.and_then(|text| QrCode::encode_text(&text, QrCodeEcc::Medium).ok());
    let Some(code) = code else { return JsValue::NULL };
    let side = 0..code.size();
    let rows = side.clone().flat_map(|y| side.clone().map(move |x| (x, y)));
    let dark: String = rows.map(|(x, y)| if code.get_module(x, y) { '1' } else { '0' }).collect();
    object([("size", code.size().into()), ("dark", dark.into())])
}
