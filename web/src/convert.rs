//! Between the page's values and ours. What JSON can say goes over as JSON, which the browser writes
//! and reads by itself: that leaves little to fetch.

use js_sys::{Array, JSON, Object};
use serde::Serialize;
use serde::de::DeserializeOwned;
use sim::document::Document;
use sim::error::Fault;
use wasm_bindgen::{JsCast, JsValue};

/// One of our values as plain objects, arrays and numbers of the page.
pub fn to_page<T: Serialize + ?Sized>(value: &T) -> JsValue {
    // Plain data can always be written, and the browser reads what was just written.
    let text = serde_json::to_string(value).unwrap_or_default();
    JSON::parse(&text).unwrap_or(JsValue::UNDEFINED)
}

/// One of the page's values as ours.
///
/// # Errors
/// Says what does not fit; this is the page's fault, never the reader's.
pub fn from_page<T: DeserializeOwned>(value: &JsValue) -> Result<T, JsValue> {
    let read = document(value).read();
    read.map_err(|fault: Fault| to_page(&fault))
}

/// One of the page's values as a document; what JSON cannot say is nothing.
pub fn document(value: &JsValue) -> Document {
    if let Some(number) = value.as_f64() {
        Document::Number(number)
    } else if let Some(text) = value.as_string() {
        Document::Text(text)
    } else if let Some(truth) = value.as_bool() {
        Document::Truth(truth)
    } else if let Some(items) = value.dyn_ref::<Array>() {
        Document::List(items.iter().map(|item| document(&item)).collect())
    } else if let Some(object) = value.dyn_ref::<Object>() {
        let entries = Object::entries(object);
        Document::Fields(entries.iter().map(|entry| field(&entry)).collect())
    } else {
        Document::Null
    }
}

fn field(entry: &JsValue) -> (String, Document) {
    let pair: &Array = entry.unchecked_ref();
    (
        pair.get(0).as_string().unwrap_or_default(),
        document(&pair.get(1)),
    )
}
