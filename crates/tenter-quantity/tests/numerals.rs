//! Number forms: what is read, what is refused, and what is offered instead.

use proptest::prelude::*;
use tenter_quantity::{Bound, Interval, NumeralProblemKind as Kind, bound, parse_amount, parse_numeral};

#[test]
fn forms_that_are_read() {
    for (text, value) in [
        ("60", 60.0),
        ("0.5", 0.5),
        (".5", 0.5),
        ("1/4", 0.25),
        ("1 1/2", 1.5),
        ("1½", 1.5),
        ("1 ½", 1.5),
        ("½", 0.5),
        ("3/2", 1.5),
        ("2 3/8", 2.375),
        ("1⁄4", 0.25),
        ("-18", -18.0),
        ("−18", -18.0),
        ("+5", 5.0),
        ("0", 0.0),
        ("-0", 0.0),
        (" 12 ", 12.0),
        ("007", 7.0),
        ("1000000000", 1e9),
        ("0.000000001", 1e-9),
        ("−1½", -1.5),
        ("⅔", 2.0 / 3.0),
        ("1/3", 1.0 / 3.0),
    ] {
        let got = parse_numeral(text);
        assert_eq!(got.as_ref().ok(), Some(&value), "`{text}`: {got:?}");
        assert!(!(value == 0.0 && got.unwrap().is_sign_negative()), "no negative zero");
    }
}

#[test]
fn forms_that_are_refused_with_a_fix() {
    for (text, kind, fixes) in [
        ("2,5", Kind::DecimalComma, &["2.5"][..]),
        ("0,125", Kind::DecimalComma, &["0.125"]),
        ("1.234,5", Kind::DecimalComma, &["1234.5"]),
        ("1,000", Kind::ThousandsComma, &["1000", "1.000"]),
        ("1,234.5", Kind::ThousandsComma, &["1234.5"]),
        ("1,234,567", Kind::ThousandsComma, &["1234567"]),
        ("1 000", Kind::ThousandsGap, &["1000"]),
        ("1'000", Kind::ThousandsGap, &["1000"]),
        ("1-1/2", Kind::HyphenFraction, &["1 1/2", "1/2 to 1"]),
        ("1-3/2", Kind::HyphenFraction, &["1 3/2", "1 to 3/2"]),
        ("1e3", Kind::Scientific, &["1000"]),
        ("2.5E-3", Kind::Scientific, &["0.0025"]),
        ("1e999", Kind::Scientific, &[]),
        ("1/0", Kind::ZeroDenominator, &[]),
        ("1/2/3", Kind::OddFraction, &[]),
        ("1.5/2", Kind::OddFraction, &[]),
        ("１２", Kind::OtherDigits, &["12"]),
        ("٣", Kind::OtherDigits, &["3"]),
        ("99999999999", Kind::TooLarge, &[]),
        ("0.0000000000001", Kind::TooSmall, &[]),
        ("5.", Kind::Unreadable, &["5"]),
        ("1.2.3", Kind::Unreadable, &[]),
        ("some", Kind::Unreadable, &[]),
        ("nan", Kind::Unreadable, &[]),
        ("inf", Kind::Unreadable, &[]),
        ("--3", Kind::Unreadable, &[]),
        ("1,,2", Kind::Unreadable, &[]),
        ("", Kind::Empty, &[]),
        ("  ", Kind::Empty, &[]),
    ] {
        let problem = parse_numeral(text).expect_err(text);
        assert_eq!(problem.kind, kind, "`{text}`");
        assert_eq!(problem.fixes, fixes, "`{text}`");
        let told = problem.to_string();
        assert!(fixes.iter().all(|fix| told.contains(fix)), "{told}");
        for fix in &problem.fixes {
            assert!(parse_amount(fix).is_ok(), "the fix `{fix}` must be readable");
        }
    }
}

#[test]
fn whole_amounts() {
    let exact = |x| (Interval::exact(x), Bound::Exact);
    for (text, expected) in [
        ("60", exact(60.0)),
        ("10-20", (Interval::range(10.0, 20.0), Bound::Range)),
        ("10–20", (Interval::range(10.0, 20.0), Bound::Range)),
        ("10 to 20", (Interval::range(10.0, 20.0), Bound::Range)),
        ("-18--5", (Interval::range(-18.0, -5.0), Bound::Range)),
        ("−18 to −5", (Interval::range(-18.0, -5.0), Bound::Range)),
        ("-5", exact(-5.0)),
        ("20 ± 2", (Interval::new(18.0, 20.0, 22.0), Bound::PlusMinus)),
        ("20 +/- 2", (Interval::new(18.0, 20.0, 22.0), Bound::PlusMinus)),
        ("about 20", (Interval::new(18.0, 20.0, 22.0), Bound::About)),
        ("~20", (Interval::new(18.0, 20.0, 22.0), Bound::About)),
        ("about 10 to 20", (Interval::range(10.0, 20.0), Bound::Range)),
        ("at least 20", (Interval::new(20.0, 20.0, 30.0), Bound::AtLeast)),
        ("At Most 20", (Interval::new(10.0, 20.0, 20.0), Bound::AtMost)),
        ("1/2 to 3/4", (Interval::range(0.5, 0.75), Bound::Range)),
        ("0.42 to 0.58", (Interval::range(0.42, 0.58), Bound::Range)),
    ] {
        assert_eq!(parse_amount(text), Ok(expected), "`{text}`");
    }
    assert!(Bound::About.assumption().is_some() && Bound::Range.assumption().is_none());
    assert_eq!(bound::at_least(-4.0), Interval::new(-4.0, -4.0, -2.0));

    let backwards = parse_amount("20 to 10").expect_err("backwards");
    assert_eq!((backwards.kind, backwards.fixes), (Kind::OddBounds, vec!["10 to 20".to_owned()]));
    assert_eq!(parse_amount("20 ± -2").map_err(|p| p.kind), Err(Kind::OddBounds));
    assert_eq!(parse_amount("1-1/2").map_err(|p| p.kind), Err(Kind::HyphenFraction));
    assert_eq!(parse_amount("2,5 to 3").map_err(|p| p.kind), Err(Kind::DecimalComma));
    assert_eq!(parse_amount("aboutish").map_err(|p| p.kind), Err(Kind::Unreadable));
}

proptest! {
    #[test]
    fn every_decimal_reads_back(whole in 0u32..1_000_000, part in 0u32..1000) {
        let text = format!("{whole}.{part:03}");
        prop_assert_eq!(parse_numeral(&text).ok(), text.parse::<f64>().ok());
    }

    #[test]
    fn mixed_fractions_are_their_sum(whole in 0u32..1000, above in 0u32..64, below in 1u32..64) {
        let got = parse_numeral(&format!("{whole} {above}/{below}")).unwrap();
        let expected = f64::from(whole) + f64::from(above) / f64::from(below);
        prop_assert!((got - expected).abs() <= expected * 1e-15);
    }

    #[test]
    fn any_text_is_read_or_explained(text in ".{0,40}") {
        for result in [parse_numeral(&text).map(Interval::exact), parse_amount(&text).map(|(value, _)| value)] {
            match result {
                Ok(value) => prop_assert!(value.is_bounded()),
                Err(problem) => prop_assert!(!problem.to_string().is_empty()),
            }
        }
    }

    #[test]
    fn number_like_text_is_read_or_explained(text in "[-−–0-9 ,./½⁄eE±to]{0,16}") {
        if let Err(problem) = parse_amount(&text) {
            for fix in problem.fixes {
                prop_assert!(parse_amount(&fix).is_ok(), "{:?} offers {:?}", text, fix);
            }
        }
    }
}
