//! The one door to transcendental functions.
//!
//! `std` leaves the last bits of `sin`, `exp` and their kin to the platform, so a native build
//! and a browser could disagree. Everything here comes from `libm` or is written out, and gives
//! the same bits everywhere. The lint in `sim/.clippy.toml` keeps the rest of the crate from
//! going round it. (`sqrt`, `abs`, `floor` and the four operations are exact by IEEE 754.)

pub use core::f64::consts::PI;

use glam::DVec2;

/// Sine and cosine of an angle in radians.
pub fn sin_cos(a: f64) -> (f64, f64) {
    libm::sincos(a)
}

/// Sine of an angle in radians.
pub fn sin(a: f64) -> f64 {
    libm::sin(a)
}

/// Cosine of an angle in radians.
pub fn cos(a: f64) -> f64 {
    libm::cos(a)
}

/// Tangent of an angle in radians.
pub fn tan(a: f64) -> f64 {
    libm::tan(a)
}

/// Angle in radians whose cosine is `x`; the caller makes sure that −1 ≤ x ≤ 1.
pub fn acos(x: f64) -> f64 {
    libm::acos(x)
}

/// Angle in radians of the direction (`x`, `y`), in (−π, π].
pub fn atan2(y: f64, x: f64) -> f64 {
    libm::atan2(y, x)
}

/// `x` to the power `p`.
pub fn pow(x: f64, p: f64) -> f64 {
    libm::pow(x, p)
}

/// Cube root of `x`.
pub fn cbrt(x: f64) -> f64 {
    libm::cbrt(x)
}

/// `a · b + c`, rounded once.
pub fn fma(a: f64, b: f64, c: f64) -> f64 {
    libm::fma(a, b, c)
}

/// Length of the vector (`x`, `y`).
pub fn hypot(x: f64, y: f64) -> f64 {
    (x * x + y * y).sqrt()
}

/// Length of a vector. The vector's own method has the same bits, but works the square root out digit
/// by digit where the processor has one.
pub fn length(v: DVec2) -> f64 {
    v.length_squared().sqrt()
}

/// Degrees to radians.
pub fn radians(degrees: f64) -> f64 {
    degrees * (PI / 180.0)
}

/// Radians to degrees.
pub fn degrees(radians: f64) -> f64 {
    radians * (180.0 / PI)
}

/// The smaller of two numbers; `a` where they are equal.
pub fn min(a: f64, b: f64) -> f64 {
    if b < a { b } else { a }
}

/// The larger of two numbers; `a` where they are equal.
pub fn max(a: f64, b: f64) -> f64 {
    if b > a { b } else { a }
}

/// `x` held between `low` and `high`.
pub fn clamp(x: f64, low: f64, high: f64) -> f64 {
    if x < low {
        low
    } else if x > high {
        high
    } else {
        x
    }
}

/// Goes smoothly from 0 at `x` ≤ 0 to 1 at `x` ≥ 1, flat at both ends.
pub fn smooth(x: f64) -> f64 {
    let x = clamp(x, 0.0, 1.0);
    x * x * (3.0 - 2.0 * x)
}

/// An angle brought into [−π, π).
pub fn wrap(a: f64) -> f64 {
    a - 2.0 * PI * ((a + PI) / (2.0 * PI)).floor()
}
