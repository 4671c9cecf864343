//! How a fault is written down.

use crate::error::{Fault, Quantity};

/// A fault of one field: the value given, and the smallest and largest accepted.
pub(crate) fn fault(
    field: String,
    quantity: Quantity,
    given: f64,
    (least, most): (Option<f64>, Option<f64>),
    why: &str,
) -> Fault {
    Fault {
        field,
        given: Some(given),
        least,
        most,
        quantity,
        why: why.to_owned(),
    }
}
