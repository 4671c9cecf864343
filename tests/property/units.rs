//! Quantities as text: what is written reads back, and nothing typed breaks the reader.

use proptest::prelude::*;
use proptest::sample::select;
use sim::error::Quantity;
use sim::units::{System, Wrong, edit, format, pairs, parse, plain, step};
use tests::plans;

const QUANTITIES: [Quantity; 16] = [
    Quantity::Length,
    Quantity::Margin,
    Quantity::Sawn,
    Quantity::Area,
    Quantity::Volume,
    Quantity::Angle,
    Quantity::Speed,
    Quantity::Time,
    Quantity::Mass,
    Quantity::Force,
    Quantity::Inertia,
    Quantity::Pressure,
    Quantity::Stiffness,
    Quantity::Temperature,
    Quantity::Number,
    Quantity::Count,
];

/// What fields of a plan accept, with every quantity that is no count; some have further ranges.
const FIELDS: [(Quantity, f64, f64); 14] = [
    (Quantity::Length, -20.0, 500.0),
    (Quantity::Sawn, 0.0, 6.0),
    (Quantity::Area, 0.0, 1.5),
    (Quantity::Volume, 0.0, 100.0),
    (Quantity::Force, 0.0, 5e4),
    (Quantity::Angle, 0.0, 360.0),
    (Quantity::Speed, -20.0, 20.0),
    (Quantity::Time, 0.05, 120.0),
    (Quantity::Mass, 0.2, 150.0),
    (Quantity::Inertia, 0.001, 1.0),
    (Quantity::Pressure, 5e4, 1e6),
    (Quantity::Stiffness, 1e4, 5e5),
    (Quantity::Temperature, -30.0, 50.0),
    (Quantity::Number, 0.0, 1.0),
];

fn quantity() -> impl Strategy<Value = Quantity> {
    select(QUANTITIES.to_vec())
}

fn system() -> impl Strategy<Value = System> {
    select(vec![System::Metric, System::Feet])
}

proptest! {
    #[test]
    fn written_reads_back_within_half_a_step(
        quantity in quantity(), system in system(), steps in -500_000.0..500_000.0,
    ) {
        let step = step(quantity, system);
        let value = steps * step;
        let text = format(value, quantity, system);
        let back = parse(&text, quantity, system).map_err(|e| TestCaseError::fail(e.to_string()))?;
        // Half a step, and the rounding of numbers of this size.
        let bound = 0.5 * step + 1e-12 * value.abs().max(300.0);
        prop_assert!((back - value).abs() <= bound, "{value} -> {text} -> {back}");
        prop_assert_eq!(format(back, quantity, system), text);
    }

    #[test]
    fn a_field_left_alone_keeps_its_number(
        quantity in quantity(), system in system(), thousandths in -999_999_i32..999_999,
    ) {
        let system_step = 10_f64.powi(3);
        let unit_value = f64::from(thousandths) / system_step;
        let typed = std::format!("{unit_value}");
        if let Ok(value) = parse(&typed, quantity, system) {
            let shown = edit(value, quantity, system);
            prop_assert_eq!(parse(&shown, quantity, system), Ok(value), "{}", shown);
        }
    }

    #[test]
    fn whatever_a_field_shows_is_read(
        (quantity, least, most) in select(FIELDS.to_vec()), system in system(), share in 0.0..1.0,
    ) {
        let value = least + share * (most - least);
        let shown = edit(value, quantity, system);
        let back = parse(&shown, quantity, system).map_err(|e| TestCaseError::fail(e.to_string()))?;
        prop_assert!((back - value).abs() <= 0.5 * step(quantity, system), "{value} -> {shown} -> {back}");
    }

    #[test]
    fn what_is_marked_on_wood_is_read_within_half_a_mark(value in -12.0..12.0_f64, system in system()) {
        let mark = if system == System::Feet { 0.0254 / 16.0 } else { 0.001 };
        let shown = format(value, Quantity::Sawn, system);
        let back = parse(&shown, Quantity::Sawn, system).map_err(|e| TestCaseError::fail(e.to_string()))?;
        prop_assert!((back - value).abs() <= 0.5 * mark + 1e-12, "{value} -> {shown} -> {back}");
    }

    #[test]
    fn columns_read_back_whatever_stands_between_them(
        system in system(), sign in select(vec!["\t", ";", ",", " ", ", "]),
        sixteenths in proptest::collection::vec((-9999_i32..9999, -9999_i32..9999), 0..20),
    ) {
        let unit = if system == System::Feet { 0.3048 } else { 1.0 };
        let length = |n: i32| {
            let typed = std::format!("{}", f64::from(n) / 16.0);
            parse(&typed, Quantity::Length, system).unwrap_or(f64::NAN)
        };
        let points: Vec<_> = sixteenths.iter().map(|&(a, b)| (length(a), length(b))).collect();
        prop_assert!(points.iter().zip(&sixteenths).all(|(p, n)| (p.0 - f64::from(n.0) / 16.0 * unit).abs() < 1e-9));
        let write = |&(a, b): &(f64, f64)| {
            let [a, b] = [a, b].map(|v| plain(v, Quantity::Length, system));
            std::format!("{a}{sign}{b}\n")
        };
        let text: String = points.iter().map(write).collect();
        prop_assert_eq!(pairs(&text, system), Ok(points), "{}", text);
    }

    #[test]
    fn no_columns_break_the_reader(text in ".{0,60}", digits in "[0-9,;. '\"\t\n-]{0,40}", system in system()) {
        for text in [text, digits] {
            if let Err(errors) = pairs(&text, system) {
                let rows = text.lines().count();
                prop_assert!(!errors.is_empty() && errors.iter().all(|e| e.row >= 1 && e.row <= rows));
            }
        }
    }

    #[test]
    fn nothing_typed_breaks_the_reader(
        text in ".{0,40}",
        near in "[-−+ 0-9.,/'\"′″½¼a-z°²%⁄]{0,16}",
        quantity in quantity(), system in system(),
    ) {
        for text in [text, near] {
            match parse(&text, quantity, system) {
                Ok(value) => prop_assert!(value.is_finite(), "{text}"),
                Err(error) => {
                    prop_assert_eq!(&error.given, &text);
                    prop_assert!(error.to_string().contains("accepted: "), "{}", error);
                }
            }
        }
    }

    #[test]
    fn any_number_can_be_written(value in plans::number(), quantity in quantity(), system in system()) {
        prop_assert!(!format(value, quantity, system).is_empty());
        prop_assert!(!edit(value, quantity, system).is_empty());
    }

    #[test]
    fn feet_and_inches_in_every_spelling(feet in 1_i32..40, inches in 0_i32..12, eighths in 1_i32..8) {
        let metres = f64::from((feet * 12 + inches) * 8 + eighths) * 127.0 / 40_000.0;
        for text in [
            std::format!("{feet}' {inches} {eighths}/8\""),
            std::format!("{feet}'{inches}-{eighths}/8\""),
            std::format!("{feet}ft {inches} {eighths}/8 in"),
            std::format!("{feet} feet {inches} {eighths}/8 inches"),
            std::format!("{feet}′-{inches} {eighths}⁄8″"),
            std::format!("{} {eighths}/8in", feet * 12 + inches),
            std::format!("{feet}' {inches} {eighths}/8"),
        ] {
            for system in [System::Metric, System::Feet] {
                prop_assert_eq!(parse(&text, Quantity::Length, system), Ok(metres), "{}", text);
            }
        }
    }
}

/// Expected values: the international yard and pound agreement (1959), 1 in = 0.0254 m.
#[test]
fn lengths_as_builders_type_them() {
    let cases = [
        ("4' 6\"", 1.3716),
        ("4ft 6in", 1.3716),
        ("54in", 1.3716),
        ("4.5", 1.3716),
        ("4 1/2", 1.3716),
        ("4½'", 1.3716),
        ("4' 6", 1.3716),
        ("4'-6\"", 1.3716),
        ("1.37 m", 1.37),
        ("1,37 m", 1.37),
        ("137cm", 1.37),
        ("1 m 37 cm", 1.37),
        ("1370 MM", 1.37),
        ("6-1/2\"", 0.1651),
        ("4' 6 1/2\"", 1.3843),
        ("1/2 in.", 0.0127),
        (".5 ft", 0.1524),
        ("-2' 3\"", -0.6858),
        ("\u{2212}2 m", -2.0),
        ("4 ft.", 1.2192),
    ];
    for (text, metres) in cases {
        assert_eq!(
            parse(text, Quantity::Length, System::Feet),
            Ok(metres),
            "{text}"
        );
    }
    assert_eq!(parse("4.5", Quantity::Length, System::Metric), Ok(4.5));
}

/// Expected values: 1 mi = 1609.344 m and 1 lb = 0.45359237 kg (1959 agreement), standard gravity
/// 9.80665 m/s² (3rd CGPM, 1901), and the definition of the Fahrenheit scale (NIST SP 811, 2008,
/// appendix B).
#[test]
fn other_quantities() {
    use Quantity::*;
    let cases = [
        ("18 km/h", Speed, 5.0),
        ("10 mph", Speed, 4.4704),
        ("5.5 m/s", Speed, 5.5),
        ("59 °F", Temperature, 15.0),
        ("-40 °F", Temperature, -40.0),
        ("15C", Temperature, 15.0),
        ("70 lb", Mass, 31.7514659),
        ("32 kg", Mass, 32.0),
        ("2.5 bar", Pressure, 250_000.0),
        ("250 kPa", Pressure, 250_000.0),
        (
            "36 psi",
            Pressure,
            36.0 * 0.45359237 * 9.80665 / (0.0254 * 0.0254),
        ),
        ("3.5 sq ft", Area, 0.325_160_64),
        ("24°", Angle, 24.0),
        ("60 N/mm", Stiffness, 60_000.0),
        ("50 %", Number, 0.5),
        ("3", Count, 3.0),
    ];
    for (text, quantity, value) in cases {
        for system in [System::Metric, System::Feet] {
            let read = parse(text, quantity, system);
            let near = read
                .as_ref()
                .is_ok_and(|read| (read - value).abs() <= 1e-12 * value.abs());
            assert!(near, "{text}: {read:?}, not {value}");
        }
    }
}

#[test]
fn written_as_a_builder_reads_it() {
    use Quantity::*;
    let cases = [
        (1.3716, Length, "1.37 m", "4' 6\""),
        (0.1651, Length, "0.17 m", "6 1/2\""),
        (1.2192, Length, "1.22 m", "4'"),
        (0.0, Length, "0.00 m", "0\""),
        (-0.6858, Length, "-0.69 m", "-2' 3\""),
        (1.2255, Length, "1.23 m", "4' 1/4\""),
        (0.0445, Sawn, "44.5 mm", "1 3/4\""),
        (1.184, Sawn, "1184 mm", "46 5/8\""),
        (3.0, Volume, "3.00 m³", "3.92 yd³"),
        (1468.0, Force, "1.47 kN", "330 lbf"),
        (5.1, Speed, "18.4 km/h", "11.4 mph"),
        (24.0, Angle, "24°", "24°"),
        (32.0, Mass, "32 kg", "70.5 lb"),
        (250_000.0, Pressure, "2.5 bar", "36 psi"),
        (15.0, Temperature, "15 °C", "59 °F"),
        (-0.04, Number, "-0.04", "-0.04"),
        (2.0, Count, "2", "2"),
    ];
    for (value, quantity, metric, feet) in cases {
        assert_eq!(format(value, quantity, System::Metric), metric);
        assert_eq!(format(value, quantity, System::Feet), feet);
    }
    let fine =
        |value| [System::Metric, System::Feet].map(|system| format(value, Quantity::Sawn, system));
    assert_eq!(fine(1.184), ["1184 mm", "46 5/8\""]);
    assert_eq!(fine(0.0127), ["12.7 mm", "1/2\""]);
    assert_eq!(fine(-0.0254), ["-25.4 mm", "-1\""]);
    assert_eq!(fine(0.0), ["0 mm", "0\""]);
    assert_eq!(edit(0.057, Length, System::Metric), "0.057 m");
    assert_eq!(edit(1.3716, Length, System::Feet), "4' 6\"");
    assert_eq!(edit(1.37, Length, System::Feet), "53.937008 in");
}

#[test]
fn what_cannot_be_read_says_why() {
    let cases = [
        ("", Wrong::Empty),
        ("tall", Wrong::NotANumber),
        ("4 furlongs", Wrong::UnknownUnit("furlongs".to_owned())),
        ("4 kg", Wrong::UnknownUnit("kg".to_owned())),
        ("6\" 4'", Wrong::Order),
        ("4' 14\"", Wrong::Order),
        ("4 6", Wrong::Order),
        ("1,250", Wrong::Comma),
        ("6 3/2", Wrong::Fraction),
        ("1/0", Wrong::Fraction),
        ("4 ft .5 in", Wrong::NotANumber),
        ("1234567890123", Wrong::TooManyDigits),
        ("--4", Wrong::NotANumber),
    ];
    for (text, wrong) in cases {
        let error = parse(text, Quantity::Length, System::Feet).map_err(|e| e.wrong);
        assert_eq!(error, Err(wrong), "{text}");
    }
    let whole = parse("2.5", Quantity::Count, System::Metric).map_err(|e| e.to_string());
    assert_eq!(
        whole,
        Err("\"2.5\": only whole numbers count; accepted: 1, 2, 3".to_owned())
    );
}
