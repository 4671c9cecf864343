//! How the fields of a plan are checked and a fault is written down.

use crate::error::{Fault, Quantity, Why};
use core::ops::RangeInclusive;

/// Most characters of a name or a label: what fits one line on a phone.
const LONGEST_TEXT: usize = 60;

/// A fault of one field: the value given, and the smallest and largest accepted.
pub(crate) fn fault(
    field: String,
    quantity: Quantity,
    given: f64,
    (least, most): (Option<f64>, Option<f64>),
    why: Why,
) -> Fault {
    Fault {
        field,
        given: Some(given),
        least,
        most,
        quantity,
        why,
    }
}

/// Walks through a plan, knows the path to where it is, and collects the faults.
#[derive(Default)]
pub(crate) struct Checker {
    path: String,
    pub faults: Vec<Fault>,
}

impl Checker {
    /// Checks what lies under a name: a field as `.name`, an item of a list as `[3]`.
    pub fn inside(&mut self, name: &str, check: impl FnOnce(&mut Self)) {
        let outside = self.path.len();
        self.path = self.path(name);
        check(self);
        self.path.truncate(outside);
    }

    /// Checks every item of a list.
    pub fn each<T>(&mut self, name: &str, items: &[T], check: impl Fn(&T, &mut Self)) {
        for (i, item) in items.iter().enumerate() {
            self.inside(&format!("{name}[{i}]"), |c| check(item, c));
        }
    }

    /// A number has to lie in a range, ends included. NaN lies in none.
    pub fn within(
        &mut self,
        name: &str,
        quantity: Quantity,
        value: f64,
        accepted: RangeInclusive<f64>,
        why: Why,
    ) {
        if accepted.contains(&value) {
            return;
        }
        let range = (Some(*accepted.start()), Some(*accepted.end()));
        let mut fault = fault(self.path(name), quantity, value, range, why);
        if !value.is_finite() {
            fault.given = None;
            Why::NoNumber.clone_into(&mut fault.why);
        }
        self.faults.push(fault);
    }

    /// A list or a number of things has to lie in a range.
    pub fn count(&mut self, name: &str, value: usize, accepted: RangeInclusive<u32>, why: Why) {
        let accepted = f64::from(*accepted.start())..=f64::from(*accepted.end());
        let value = u32::try_from(value).map_or(f64::INFINITY, f64::from);
        self.within(name, Quantity::Count, value, accepted, why);
    }

    /// A text has to be one short line.
    pub fn text(&mut self, name: &str, text: &str) {
        if text.chars().any(char::is_control) {
            self.wrong(name, Quantity::Text, Why::ControlCharacter);
        }
        let most = LONGEST_TEXT as u32;
        self.count(name, text.chars().count(), 0..=most, Why::LongText);
    }

    /// A fault without a number.
    pub fn wrong(&mut self, name: &str, quantity: Quantity, why: Why) {
        self.faults.push(Fault {
            field: self.path(name),
            given: None,
            least: None,
            most: None,
            quantity,
            why,
        });
    }

    fn path(&self, name: &str) -> String {
        if self.path.is_empty() || name.is_empty() || name.starts_with('[') {
            format!("{}{name}", self.path)
        } else {
            format!("{}.{name}", self.path)
        }
    }
}
