//! Unit factors against values printed elsewhere: NIST SP 811, NIST Handbook 44, the pint library, ISO 4217.

use tenter_quantity::{Interval, Unit, currency, is_currency, table, unit_by_symbol};

fn unit(symbol: &str) -> &'static Unit {
    unit_by_symbol(symbol).unwrap_or_else(|| panic!("no unit {symbol}"))
}

fn close(ours: f64, theirs: f64, share: f64) -> bool {
    (ours - theirs).abs() <= theirs.abs() * share
}

/// NIST SP 811 (2008), appendix B.8, "Factors for units listed alphabetically". Printed to seven digits; bold (exact)
/// entries marked. Digits given from memory of that table and consistent with the exact definitions in it.
const SP_811: &[(&str, f64)] = &[
    ("US cup", 2.365_882E-04),
    ("US fl oz", 2.957_353E-05),
    ("imperial fl oz", 2.841_306E-05),
    ("US gal", 3.785_412E-03),
    ("imperial gal", 4.546_09E-03),
    ("US pint", 4.731_765E-04),
    ("US qt", 9.463_529E-04),
    ("US tbsp", 1.478_676E-05),
    ("US tsp", 4.928_922E-06),
    ("oz", 2.834_952E-02),
    ("lb", 4.535_924E-01),
    ("grain", 6.479_891E-05),
    ("ft", 3.048E-01),
    ("yd", 9.144E-01),
    ("inch", 2.54E-02),
    ("sq ft", 9.290_304E-02),
    ("sq inch", 6.4516E-04),
    ("sq yd", 8.361_274E-01),
    ("oz/US gal", 7.489_152),
    ("lb/US gal", 1.198_264E+02),
    ("oz/sq yd", 3.390_575E-02),
    // "grain per gallon (US)", kg/m³
    ("gr/gal", 1.711_806E-02),
    ("tonne", 1.0E+03),
    ("day", 8.64E+04),
    ("h", 3.6E+03),
];

#[test]
fn factors_agree_with_nist_sp_811() {
    for &(symbol, printed) in SP_811 {
        let ours = unit(symbol).factor;
        // Seven printed digits: half a unit of the last is at most 5 parts in 10 million.
        assert!(close(ours, printed, 5.1e-7), "{symbol}: {ours} against {printed}");
    }
}

#[test]
fn temperatures_agree_with_nist_sp_811() {
    // NIST SP 811 B.8: T/K = t/°C + 273.15; T/K = (t/°F + 459.67)/1.8. Fixed points common to both scales.
    for (celsius, fahrenheit, kelvin) in [(0.0, 32.0, 273.15), (100.0, 212.0, 373.15), (-40.0, -40.0, 233.15)] {
        let from_celsius = unit("°C").to_si(Interval::exact(celsius)).best;
        let from_fahrenheit = unit("°F").to_si(Interval::exact(fahrenheit)).best;
        assert!((from_celsius - kelvin).abs() < 1e-9, "{celsius} °C");
        assert!((from_fahrenheit - kelvin).abs() < 1e-9, "{fahrenheit} °F");
    }
}

/// NIST Handbook 44, appendix C, "Units of liquid volume": how many of one make another, exactly (counts from memory).
#[test]
fn us_liquid_measures_nest_as_in_handbook_44() {
    let ratio = |large: &str, small: &str| unit(large).factor / unit(small).factor;
    for (large, small, count) in [
        ("US gal", "US qt", 4.0),
        ("US gal", "US pint", 8.0),
        ("US gal", "US cup", 16.0),
        ("US gal", "US fl oz", 128.0),
        ("US gal", "US tbsp", 256.0),
        ("US gal", "US tsp", 768.0),
        ("US cup", "US tbsp", 16.0),
        ("US tbsp", "US tsp", 3.0),
        ("imperial gal", "imperial qt", 4.0),
        ("imperial gal", "imperial pint", 8.0),
        ("imperial gal", "imperial fl oz", 160.0),
        ("lb", "oz", 16.0),
        ("lb", "grain", 7000.0),
        ("yd", "ft", 3.0),
        ("ft", "inch", 12.0),
    ] {
        assert!(close(ratio(large, small), count, 1e-14), "{large} in {small}");
    }
    // 231 cubic inches to the US gallon.
    let inch = unit("inch").factor;
    assert!(close(unit("US gal").factor, 231.0 * inch * inch * inch, 1e-14));
}

#[test]
fn factors_agree_with_pint() {
    let rows = include_str!("data/pint.csv").lines().skip(1);
    let mut checked = Vec::new();
    for row in rows {
        let fields: Vec<&str> = row.split(',').collect();
        let [symbol, _, factor, offset] = fields[..] else {
            panic!("bad row {row}");
        };
        let ours = unit(symbol);
        let (factor, offset): (f64, f64) = (factor.parse().unwrap(), offset.parse().unwrap());
        // Both round differently on the way: a few units in the last place.
        assert!(close(ours.factor, factor, 1e-14), "{symbol}: {} against {factor}", ours.factor);
        assert!((ours.offset - offset).abs() < 1e-10, "{symbol}: {} against {offset}", ours.offset);
        checked.push(symbol.to_owned());
    }
    let unchecked: Vec<&str> =
        table::all().map(|unit| unit.symbol).filter(|symbol| !checked.iter().any(|known| known == symbol)).collect();
    // What pint does not have: usage of kitchens, dyers and water works, and plain counts.
    assert_eq!(
        unchecked,
        [
            "drop",
            "metric tsp",
            "metric tbsp",
            "Australian tbsp",
            "metric cup",
            "month",
            "times",
            "dozen",
            "piece",
            "part",
            "‰",
            "% owg",
            "% w/w",
            "% w/v",
            "% v/v",
            "mg/L CaCO3",
            "°dH",
            "°fH",
        ]
    );
}

#[test]
fn hardness_degrees_agree_with_published_equivalents() {
    // German degree: 17.848 mg/L CaCO3 (from memory, tables of water hardness units).
    assert!(close(unit("°dH").factor * 1e3, 17.848, 5e-5));
    // One grain per US gallon: 17.118 mg/L, NIST SP 811 B.8 (1.711 806 E-02 kg/m³).
    assert!(close(unit("gr/gal").factor * 1e3, 17.118, 5e-5));
    // wiktel.com/standards/hardnes.htm: 1 grain/US gallon = 1.20 Clark, 1.71 French, 0.958 German degrees.
    let grain = unit("gr/gal").factor;
    assert!(close(grain / unit("°e").factor, 1.20, 5e-3));
    assert!(close(grain / unit("°fH").factor, 1.71, 3e-3));
    // Three digits printed.
    assert!(close(grain / unit("°dH").factor, 0.958, 2e-3));
}

#[test]
fn currencies_are_those_of_iso_4217() {
    let listed: Vec<(&str, &str)> =
        include_str!("data/currencies.csv").lines().skip(1).filter_map(|row| row.split_once(',')).collect();
    for code in currency::codes() {
        assert!(listed.iter().any(|(known, _)| *known == code), "{code} is not listed");
    }
    // Left out: funds codes, units of account, metals, test and void codes. Nobody buys soda ash in them.
    let left_out: Vec<&str> = listed.iter().map(|(code, _)| *code).filter(|code| !is_currency(code)).collect();
    assert_eq!(
        left_out,
        [
            "BOV", "CHE", "CHW", "CLF", "COU", "MXV", "USN", "UYI", "UYW", "XAD", "XAG", "XAU", "XBA", "XBB", "XBC",
            "XBD", "XDR", "XPD", "XPT", "XSU", "XTS", "XUA", "XXX",
        ]
    );
    let sorted: Vec<&str> = currency::codes().collect();
    assert!(sorted.is_sorted(), "binary search needs order");
    // Decimals: ISO 4217 list one, column "minor unit".
    for (code, places) in [("EUR", 2), ("JPY", 0), ("KWD", 3), ("EUR/kg", 2), ("ISK", 0), ("TND", 3)] {
        assert_eq!(currency::decimals(code), places, "{code}");
    }
    assert!(!is_currency("eur") && !is_currency("") && !is_currency("EURO"));
}
