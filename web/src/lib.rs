//! The simulator in the browser.
//!
//! It is compiled twice. The page's own rides, draws and studies; the shed, with the feature of that name, studies
//! as well what test rides teach, and works out the job of building; it is fetched only by who asks for one or the other.

#![cfg_attr(feature = "shed", allow(dead_code, reason = "the shed draws no ride"))]

mod chance;
#[cfg(not(feature = "shed"))]
mod drawing;
#[cfg(not(feature = "shed"))]
mod face;
#[cfg(any(feature = "shed", not(target_arch = "wasm32")))]
mod job;
mod learnt;
mod paint;
mod panic;
mod qr;
pub mod scene;
#[cfg(any(feature = "shed", not(target_arch = "wasm32")))]
mod sketch;
mod story;
mod study;

#[cfg(not(feature = "shed"))]
pub use drawing::Drawing;
#[cfg(not(feature = "shed"))]
pub use face::*;
#[cfg(feature = "shed")]
pub use job::{Works, usual_supplies};
pub use study::study;

use serde::Serialize;
use serde::de::DeserializeOwned;
use serde_wasm_bindgen::{Serializer, from_value};
use sim::json;
use wasm_bindgen::JsValue;

#[cfg(target_arch = "wasm32")]
#[global_allocator]
static MEMORY: rlsf::SmallGlobalTlsf = rlsf::SmallGlobalTlsf::new();

/// One of our values as plain objects, arrays and numbers of the page; what there is none of is null.
pub(crate) fn to_page<T: Serialize + ?Sized>(value: &T) -> JsValue {
    // Plain data can always be written.
    value
        .serialize(&Serializer::json_compatible())
        .unwrap_or(JsValue::UNDEFINED)
}

/// What a reader may have got wrong, as ours. The bindings know no fields and would pass over an unknown one,
/// so that it goes through the door of plan files.
///
/// # Errors
/// The first fault, as an array.
pub(crate) fn asked<T: DeserializeOwned>(value: JsValue) -> Result<T, JsValue> {
    json::from_value(from_value(value)?).map_err(|fault| to_page(&[fault]))
}
