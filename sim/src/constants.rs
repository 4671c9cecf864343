//! Physical constants, each with its value, unit and source.

/// Standard acceleration of free fall, m/s².
///
/// # References
/// 3rd CGPM (1901), resolution 2; ISO 80000-3.
pub const GRAVITY: f64 = 9.80665;

/// Version of the ride's model. It grows whenever a change gives some plan other numbers, so that
/// a link made before can say so.
pub const MODEL_VERSION: u16 = 5;
