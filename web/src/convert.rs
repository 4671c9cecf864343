//! Between the page's values and ours.

use serde::Serialize;
use serde::de::DeserializeOwned;
use wasm_bindgen::JsValue;

/// One of our values as plain objects, arrays and numbers of the page.
pub fn to_page<T: Serialize + ?Sized>(value: &T) -> JsValue {
    let writer = serde_wasm_bindgen::Serializer::json_compatible();
    match value.serialize(&writer) {
        Ok(value) => value,
        Err(error) => JsValue::from_str(&error.to_string()),
    }
}

/// One of the page's values as ours.
///
/// # Errors
/// Says what does not fit; this is the page's fault, never the reader's.
pub fn from_page<T: DeserializeOwned>(value: JsValue) -> Result<T, JsValue> {
    serde_wasm_bindgen::from_value(value).map_err(|error| JsValue::from_str(&error.to_string()))
}
