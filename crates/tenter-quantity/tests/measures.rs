//! Units as recipes write them: divided, counted on something, ambiguous, half typed.

use proptest::prelude::*;
use tenter_quantity::{
    Basis, Dimension, Interval, Quantity, System, Token, UnitExpression, UnitProblem, liquor_ratio, read_denominator,
    read_price, read_unit,
};

/// Numbers become numbers, the rest words.
fn tokens(text: &str) -> Vec<Token<'_>> {
    text.split(' ')
        .filter(|word| !word.is_empty())
        .map(|word| word.parse().map_or(Token::Word(word), Token::Number))
        .collect()
}

fn read(text: &str, measures: Option<System>) -> UnitExpression<'_> {
    read_unit(&tokens(text), measures)
        .unwrap_or_else(|problem| panic!("{text}: {problem}"))
        .unwrap_or_else(|| panic!("{text}: no unit"))
}

fn close(a: f64, b: f64) -> bool {
    (a - b).abs() <= b.abs() * 1e-9
}

use Basis::{Absolute, PerGoods, PerLot, PerPiece};
use Dimension as D;

#[test]
fn units_of_real_lines() {
    // Written, words used, number, SI value, kind, basis.
    let rows: &[(&str, usize, f64, f64, Dimension, Basis)] = &[
        ("g lagoon", 1, 9.0, 0.009, D::Mass, Absolute),
        ("g/L soda ash", 1, 60.0, 60.0, D::MassConcentration, Absolute),
        ("g / L soda ash", 3, 60.0, 60.0, D::MassConcentration, Absolute),
        ("g /L soda", 2, 60.0, 60.0, D::MassConcentration, Absolute),
        ("g/ L soda", 2, 60.0, 60.0, D::MassConcentration, Absolute),
        ("g per L soda", 3, 60.0, 60.0, D::MassConcentration, Absolute),
        ("g/piece lagoon", 1, 9.0, 0.009, D::Mass, PerPiece),
        ("g per piece", 3, 9.0, 0.009, D::Mass, PerPiece),
        ("mL/pc from bottle", 1, 60.0, 60e-6, D::Volume, PerPiece),
        ("g/tee lagoon", 1, 9.0, 0.009, D::Mass, PerPiece),
        ("g per lot", 3, 9.0, 0.009, D::Mass, PerLot),
        ("oz/US gal", 2, 1.0, 7.489_151_707, D::MassConcentration, Absolute),
        ("US fl oz/US gal x", 4, 128.0, 1.0, D::VolumeFraction, Absolute),
        ("mL/L softener", 1, 2.0, 0.002, D::VolumeFraction, Absolute),
        ("L per 100 g goods", 5, 2.0, 0.02, D::VolumePerMass, PerGoods),
        ("L per 100 g", 4, 2.0, 0.02, D::VolumePerMass, Absolute),
        ("L/100g goods", 2, 2.0, 0.02, D::VolumePerMass, PerGoods),
        ("L/kg goods", 2, 20.0, 0.02, D::VolumePerMass, PerGoods),
        ("g per 100 g goods", 5, 4.0, 0.04, D::MassFraction, PerGoods),
        ("g/kg", 1, 4.0, 0.004, D::MassFraction, Absolute),
        ("% owg lagoon", 2, 4.0, 0.04, D::MassFraction, PerGoods),
        ("%owg", 1, 4.0, 0.04, D::MassFraction, PerGoods),
        ("% w/v", 2, 1.0, 10.0, D::MassConcentration, Absolute),
        ("% night", 1, 5.0, 0.05, D::PerCent, Absolute),
        ("mol/L", 1, 0.5, 500.0, D::AmountConcentration, Absolute),
        ("M", 1, 0.5, 500.0, D::AmountConcentration, Absolute),
        ("g/m2", 1, 150.0, 0.15, D::MassPerArea, Absolute),
        ("gsm", 1, 150.0, 0.15, D::MassPerArea, Absolute),
        ("g/mL", 1, 0.5, 500.0, D::MassConcentration, Absolute),
        ("°C at", 1, 40.0, 313.15, D::Temperature, Absolute),
        ("C/min", 1, 2.0, 2.0 / 60.0, D::TemperatureRate, Absolute),
        ("min", 1, 45.0, 2700.0, D::Time, Absolute),
        ("EUR per 500 g", 4, 24.0, 48.0, D::MoneyPerMass, Absolute),
        ("EUR/L", 1, 3.0, 3000.0, D::MoneyPerVolume, Absolute),
        ("EUR/piece", 1, 3.0, 3.0, D::Money, PerPiece),
        ("parts per 1000", 3, 25.0, 0.025, D::MassFraction, Absolute),
        ("parts water", 1, 3.0, 3.0, D::Part, Absolute),
        ("pieces in", 1, 12.0, 12.0, D::Piece, Absolute),
        ("times", 1, 2.0, 2.0, D::None, Absolute),
        ("mg/L CaCO3", 2, 120.0, 0.12, D::Hardness, Absolute),
        ("gr/gal", 1, 1.0, 0.017_118_061_045, D::Hardness, Absolute),
    ];
    for &(text, used, number, si, dimension, basis) in rows {
        let unit = read(text, None);
        let got = unit.apply(Interval::exact(number));
        assert_eq!((got.dimension, got.basis), (dimension, basis), "{text}");
        assert!(close(got.value.best, si), "{text}: {} against {si}", got.value.best);
        assert!(got.value.is_exact(), "{text}");
        assert_eq!(unit.words_used, used, "{text}");
        assert_eq!(unit.ambiguity, None, "{text}");
    }
}

#[test]
fn words_below_the_stroke_are_kept_for_the_resolver() {
    assert_eq!(read("g per tee lagoon", None).per_word, Some("tee"));
    assert_eq!(read("g/tee", None).per_word, Some("tee"));
    assert_eq!(read("g/piece", None).per_word, None);
    let tokens = tokens("tee");
    let (below, used) = read_denominator(&tokens).unwrap().unwrap();
    assert_eq!((below.word, used), (Some("tee"), 1));
    // `9 g lagoon per tee`
    let unit = read("g lagoon", None).divided_by(below, None).unwrap();
    assert_eq!((unit.per_word, unit.basis, unit.words_used), (Some("tee"), PerPiece, 1));
}

#[test]
fn below_the_stroke_elsewhere_in_the_line() {
    for (top, bottom, dimension) in
        [("tsp", "cup", D::VolumeFraction), ("g", "100 g goods", D::MassFraction), ("g", "L", D::MassConcentration)]
    {
        let tokens = tokens(bottom);
        let (below, used) = read_denominator(&tokens).unwrap().unwrap();
        assert_eq!(used, tokens.len(), "{bottom}");
        let unit = read(top, None).divided_by(below, None).unwrap();
        assert_eq!(unit.dimension, dimension, "{top} per {bottom}");
        let whole = format!("{top} per {bottom}");
        assert_eq!(unit.factor, read(&whole, None).factor, "{whole}");
    }
    assert_eq!(read_denominator(&[]), Ok(None));
}

#[test]
fn a_cup_without_a_country_spans_them_all() {
    let cup = read("cup", None);
    let value = cup.apply(Interval::ONE).value;
    // facts: 236.588 mL US (NIST HB 44), 250 mL metric, 284.13 mL imperial; US first.
    assert!(close(value.low, 236.588_236_5e-6) && close(value.high, 284.130_625e-6));
    assert_eq!(value.best, value.low);
    assert_eq!(cup.ambiguity.map(|doubt| doubt.candidates.len()), Some(3));
    assert!(read("cup", Some(System::Metric)).apply(Interval::ONE).value.is_exact());
    assert_eq!(read("cup", Some(System::Metric)).ambiguity, None);
}

#[test]
fn teaspoons_of_two_countries_are_alike_enough() {
    let tsp = read("tsp", None);
    assert_eq!(tsp.ambiguity, None);
    let value = tsp.apply(Interval::ONE).value;
    assert!(close(value.low, 4.928_921_593_75e-6) && close(value.high, 5e-6));
    assert!(read("tsp", Some(System::Us)).factor.is_exact());
}

#[test]
fn both_sides_of_the_stroke_are_of_one_country() {
    // 4 US tsp in a US cup: 1/12; 4 × 5 mL in 250 mL: 0.08; 4 × 5 mL in 284.13 mL: 0.0704.
    let value = read("tsp per cup", None).apply(Interval::exact(4.0)).value;
    assert!(close(value.high, 1.0 / 12.0), "{value:?}");
    assert!(close(value.low, 20.0 / 284.130_625), "{value:?}");
    assert!(close(value.best, 1.0 / 12.0));
    let us = read("tsp per cup", Some(System::Us)).apply(Interval::exact(4.0)).value;
    assert!(us.is_exact() && close(us.best, 1.0 / 12.0));
    // 1 cup per 3 gal: 1/48 in US measures, and in imperial ones too.
    let cups = read("cup per 3 gal", Some(System::Imperial)).apply(Interval::ONE).value;
    assert!(close(cups.best, 1.0 / 48.0));
    // NIST SP 811: 7.489 152 and 6.236 023 kg/m³ for the ounce in the US and the imperial gallon.
    let ounces = read("oz/gal", None);
    let value = ounces.apply(Interval::ONE).value;
    assert!((value.high - 7.489_152).abs() < 1e-6 && (value.low - 6.236_023).abs() < 1e-6);
    assert!(ounces.ambiguity.is_some());
}

#[test]
fn problems_say_what_is_wrong() {
    let problem = |text: &str| read_unit(&tokens(text), None).expect_err(text);
    for (text, used) in [("g/", 1), ("g per", 2), ("g /", 2), ("% owg /", 3)] {
        let half = problem(text);
        assert!(matches!(half, UnitProblem::HalfUnit { .. }), "{text}: {half:?}");
        assert_eq!(half.words_used(), used, "{text}");
    }
    for text in ["T", "t lagoon", "c water", "°", "in wide", "g/t", "gr salt"] {
        let doubt = problem(text);
        assert!(matches!(doubt, UnitProblem::Doubtful { .. }), "{text}: {doubt:?}");
    }
    for text in ["min/L", "g/min", "% owg/L", "g/m", "EUR/min", "pieces/L"] {
        let odd = problem(text);
        assert!(matches!(odd, UnitProblem::Combination { .. }), "{text}: {odd:?}");
    }
    assert!(matches!(problem("g/L/min"), UnitProblem::TwoDivisions { words_used: 1, .. }));
    assert!(matches!(problem("g/L per piece"), UnitProblem::TwoDivisions { words_used: 3, .. }));
    assert!(matches!(problem("g per 100 xy"), UnitProblem::NumberWithoutUnit { words_used: 3, .. }));
    assert!(matches!(problem("g per 0 L"), UnitProblem::PerZero { .. }));
    for text in ["g/", "T", "min/L", "g/L/min", "g per 100", "g per 0 L"] {
        let told = problem(text).to_string();
        assert!(told.len() > 15 && !told.contains("{"), "{told}");
    }
    assert_eq!(problem("min/L").to_string(), "`min/L` makes no quantity: a length of time divided by a volume");
    for text in ["lagoon", "gl", "/", "/L", "w/v", "night/day", "per tee", ""] {
        assert_eq!(read_unit(&tokens(text), None), Ok(None), "{text}");
    }
    assert_eq!(read_unit(&[Token::Number(3.0)], None), Ok(None));
}

#[test]
fn prices_know_money_first() {
    let peso = tokens("CUP per 500 g");
    let price = read_price(&peso, None).unwrap().unwrap();
    assert_eq!((price.numerator.symbol, price.dimension), ("CUP", D::MoneyPerMass));
    assert_eq!(price.display_unit().symbol, "CUP/kg");
    // Anywhere else the capitals are cups.
    assert_eq!(read("CUP", None).dimension, D::Volume);
    assert_eq!(read_price(&tokens("g"), None).unwrap().unwrap().dimension, D::Mass);
}

#[test]
fn temperatures_and_differences() {
    let fahrenheit = read("F", None);
    // 180 °F is 82.2 °C (355.372 K); 9 °F apart is 5 K.
    let hot = fahrenheit.apply(Interval::exact(180.0)).value.best;
    assert!((hot - 355.372_222_222).abs() < 1e-8);
    let apart = fahrenheit.apply_difference(Interval::exact(9.0));
    assert_eq!(apart.dimension, D::TemperatureDifference);
    assert!(close(apart.value.best, 5.0));
    // `20 °C ± 2 °C`
    let celsius = read("°C", None);
    let swing = celsius.apply_difference(Interval::exact(2.0)).value.best;
    let room = celsius.apply(Interval::exact(20.0)).value + Interval::plus_minus(0.0, swing);
    assert!(close(room.low, 291.15) && close(room.high, 295.15));
}

#[test]
fn hardness_however_written() {
    let hardness = |text: &str, number: f64| {
        let quantity: Quantity = read(text, None).apply(Interval::exact(number));
        quantity.as_hardness().map(|hardness| hardness.value.best * 1e3)
    };
    for (text, number, mg_per_litre) in [
        ("mg/L CaCO3", 178.48, 178.48),
        ("mg/L", 178.48, 178.48),
        ("ppm", 178.48, 178.48),
        ("°dH", 10.0, 178.48),
        ("gr/gal", 10.0, 171.18),
        ("gpg", 10.0, 171.18),
        ("°fH", 10.0, 100.0),
        ("mmol/L", 1.0, 100.09),
    ] {
        let got = hardness(text, number).unwrap();
        assert!((got - mg_per_litre).abs() < 0.01, "{number} {text}: {got} against {mg_per_litre}");
    }
    assert!(hardness("min", 3.0).is_err());
}

#[test]
fn ratios() {
    let ratio = liquor_ratio(1.0, 20.0).unwrap();
    assert_eq!((ratio.dimension, ratio.value), (D::LiquorRatio, Interval::exact(20.0)));
    assert_eq!(liquor_ratio(2.0, 15.0).unwrap().value.best, 7.5);
    for (goods, liquor) in [(0.0, 20.0), (1.0, 0.0), (-1.0, 5.0), (f64::NAN, 1.0)] {
        assert_eq!(liquor_ratio(goods, liquor), None);
    }
}

/// Journal of Textiles (Hindawi) 2016, article 9739380, table 2: 1 kg at 1:10 with 0.5 / 1.5 / 4 % dye, sodium sulfate
/// 20 / 50 / 70 g/L and soda ash 5 / 15 / 20 g/L. The grams are arithmetic on the table.
#[test]
fn a_published_table_of_reactive_dyeing() {
    let goods = read("kg", None).apply(Interval::ONE).value;
    let litres = goods * liquor_ratio(1.0, 10.0).unwrap().value / 1000.0;
    let rows = [
        (0.5, 5.0, 20.0, 200.0, 5.0, 50.0),
        (1.5, 15.0, 50.0, 500.0, 15.0, 150.0),
        (4.0, 40.0, 70.0, 700.0, 20.0, 200.0),
    ];
    for (share, dye, sulfate_strength, sulfate, soda_strength, soda) in rows {
        let of_goods = read("% owg", None).apply(Interval::exact(share)).value * goods;
        let strength = |x| read("g/L", None).apply(Interval::exact(x)).value;
        assert!(close(of_goods.best * 1e3, dye));
        assert!(close((strength(sulfate_strength) * litres).best * 1e3, sulfate));
        assert!(close((strength(soda_strength) * litres).best * 1e3, soda));
    }
}

#[test]
fn spread_of_a_drop() {
    let drop = read("drops", None).apply(Interval::exact(10.0)).value;
    assert!(!drop.is_exact() && close(drop.best, 0.5e-6) && close(drop.low, 0.3e-6));
}

#[test]
fn shown_in_the_unit_written() {
    for (text, unit, formatted) in [
        ("g", "g", "g"),
        ("g per L", "g/L", "g/L"),
        ("g/piece", "g/piece", "g/piece"),
        ("g/tee", "g/piece", "g/tee"),
        ("L per 100 g goods", "L/kg goods", "L per 100 g goods"),
        ("L/kg goods", "L/kg goods", "L/kg goods"),
        ("oz/gal", "oz/US gal", "oz/US gal"),
        ("tsp per cup", "mL/L", "US tsp/US cup"),
        ("EUR per 500 g", "EUR/kg", "EUR per 500 g"),
        ("EUR/piece", "EUR", "EUR/piece"),
        ("parts per 1000", "% w/w", "part per 1000"),
        ("US tsp/piece", "US tsp", "US tsp/piece"),
    ] {
        let read = read(text, None);
        assert_eq!(read.display_unit().symbol, unit, "{text}");
        assert_eq!(read.text(), formatted, "{text}");
    }
}

#[test]
fn kinds_that_do_not_fit() {
    let given = read("%", None).apply(Interval::exact(5.0));
    let problem = given.expect(&[D::MassFraction]).expect_err("per cent of what");
    assert_eq!(
        problem.to_string(),
        "this is a percentage of something not said (as in %), but needed is a share by mass (as in % owg, % w/w, g/kg); \
         probably meant: a share of the dry weight of the goods, written `% owg`, or a share by mass, `% w/w`"
    );
    assert_eq!(given.of_goods().basis, PerGoods);
    let volume = read("mL", None).apply(Interval::ONE);
    assert!(volume.expect(&[D::Mass, D::Volume]).is_ok());
    let unguessed = volume.expect(&[D::Money]).expect_err("no money");
    assert_eq!(unguessed.probably, None);
    assert_eq!(unguessed.meaning("a price").probably.as_deref(), Some("a price"));
}

#[test]
fn kinds_combine_both_ways() {
    for (a, b, product) in [
        (D::MassConcentration, D::Volume, Some(D::Mass)),
        (D::VolumePerMass, D::Mass, Some(D::Volume)),
        (D::MassPerArea, D::Area, Some(D::Mass)),
        (D::MoneyPerMass, D::Mass, Some(D::Money)),
        (D::None, D::Time, Some(D::Time)),
        (D::Time, D::Mass, None),
    ] {
        assert_eq!(a.times(b), product);
        assert_eq!(b.times(a), product);
        if let Some(product) = product.filter(|_| a != D::None) {
            assert_eq!(product.over(b), Some(a), "{product:?} over {b:?}");
        }
    }
    assert_eq!(D::Mass.over(D::Mass), Some(D::MassFraction));
    assert_eq!(D::Volume.over(D::Mass), Some(D::VolumePerMass));
    assert_eq!(D::Time.over(D::Time), Some(D::None));
    assert_eq!(D::Time.over(D::Mass), None);
}

proptest! {
    #[test]
    fn any_tokens_are_read_or_refused(
        words in proptest::collection::vec(
            prop_oneof![
                3 => "(g|L|mL|gal|cup|oz|fl|US|tsp|per|/|%|owg|w/v|goods|100|0|piece|lot|EUR|°|T|min|C|g/L|/L|g/|//|tee)",
                1 => ".{0,40}",
            ],
            0..8,
        ),
        numbers in proptest::collection::vec(any::<f64>(), 8),
    ) {
        let tokens: Vec<Token<'_>> = words
            .iter()
            .zip(numbers)
            .map(|(word, number)| if word == "100" { Token::Number(number) } else { Token::Word(word) })
            .collect();
        for measures in [None, Some(System::Us), Some(System::Australian), Some(System::Any)] {
            match read_unit(&tokens, measures) {
                Ok(None) => {}
                Ok(Some(unit)) => {
                    prop_assert!(unit.words_used >= 1 && unit.words_used <= tokens.len());
                    let value = unit.apply(Interval::range(1.0, 2.0)).value;
                    prop_assert!(value.low <= value.best && value.best <= value.high);
                    prop_assert!(!unit.text().is_empty());
                    // A figure must be showable in its unit.
                    let shown = unit.display_unit();
                    prop_assert!(shown.dimension == unit.dimension || shown.symbol.is_empty() || unit.per_word.is_some(), "{:?}", unit);
                }
                Err(problem) => {
                    prop_assert!(problem.words_used() >= 1 && problem.words_used() <= tokens.len());
                    prop_assert!(!problem.to_string().is_empty());
                }
            }
        }
    }
}
