//! Where what grows along a way from 0 to 1 passes nought.

/// The share of the way at which `over`, below nought at 0 (`low` there) and above at 1 (`high` there), passes
/// nought: by so many secants and one more. The end that stays counts half, so that neither stays for good.
///
/// # References
/// Dowell and Jarratt 1971, BIT 11:168-174: the Illinois variant of regula falsi (from memory).
#[inline]
pub fn crossing([low, high]: [f64; 2], secants: usize, over: impl Fn(f64) -> f64) -> f64 {
    let (mut a, mut fa, mut b, mut fb) = (0.0, low, 1.0, high);
    for _ in 0..secants {
        let c = b - fb * (b - a) / (fb - fa);
        let fc = over(c);
        if fc > 0.0 {
            (b, fb) = (c, fc);
            fa *= 0.5;
        } else {
            (a, fa) = (c, fc);
            fb *= 0.5;
        }
    }
    b - fb * (b - a) / (fb - fa)
}
