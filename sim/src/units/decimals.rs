//! Numbers with places behind the point.

use crate::num;

/// A number with so many places behind the point, at most fifteen, rounded to the nearest and from the
/// middle to the even one: to the letter what the standard library writes. That can write any number with
/// any count of places, for which a browser would fetch a good part of the simulator once more. Whole
/// parts beyond 1.8e19 are written as that.
pub fn decimals(value: f64, places: usize) -> String {
    if value.is_nan() {
        return "NaN".to_owned();
    }
    let sign = if value.is_sign_negative() { "-" } else { "" };
    if value.is_infinite() {
        return format!("{sign}inf");
    }
    let scale = 10_u64.pow(places as u32);
    let mut whole = value.abs() as u64;
    // Both exact: the part behind the point, and what its product with the scale loses.
    let part = value.abs() - value.abs().trunc();
    let scaled = part * scale as f64;
    let lost = num::fma(part, scale as f64, -scaled);
    let mut figures = scaled as u64;
    let over = scaled - scaled.trunc() - 0.5;
    let odd = (if places == 0 { whole } else { figures }) % 2 == 1;
    if over > 0.0 || (over == 0.0 && (lost > 0.0 || (lost == 0.0 && odd))) {
        figures += 1;
    }
    if figures == scale {
        whole = whole.saturating_add(1);
        figures = 0;
    }
    if places == 0 {
        format!("{sign}{whole}")
    } else {
        format!("{sign}{whole}.{figures:0places$}")
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn the_middle_goes_to_the_even_one() {
        let cases = [
            (0.125, 2, "0.12"),
            (0.375, 2, "0.38"),
            (2.5, 0, "2"),
            (3.5, 0, "4"),
            (9.999, 2, "10.00"),
            (-0.04, 1, "-0.0"),
            (0.3, 15, "0.300000000000000"),
        ];
        for (value, places, text) in cases {
            assert_eq!(decimals(value, places), text, "{value}");
        }
    }

    proptest! {
        #[test]
        fn it_is_what_the_standard_library_writes(
            value in prop_oneof![
                -1e18..1e18_f64,
                -100.0..100.0_f64,
                // Numbers near the middle between two neighbours.
                (-100_000..100_000_i32).prop_map(|n| f64::from(n) / 2000.0),
                any::<f64>().prop_filter("as large as can be", |v| !v.is_finite() || v.abs() < 1e18),
            ],
            places in 0..=6_usize,
        ) {
            prop_assert_eq!(decimals(value, places), format!("{value:.places$}"));
        }
    }
}
