//! Every spelling finds its unit, and no spelling finds two by accident.

use std::collections::BTreeMap;

use tenter_quantity::{Lookup, System, canonical_spelling, lookup_unit, nearest_unit, table, unit_by_symbol};

fn symbol(words: &str, measures: Option<System>) -> String {
    let words: Vec<&str> = words.split(' ').collect();
    match lookup_unit(&words, measures) {
        None => "nothing".to_owned(),
        Some((Lookup::Unit(unit), used)) if used == words.len() => unit.symbol.to_owned(),
        Some((Lookup::Unit(unit), used)) => format!("{} ({used})", unit.symbol),
        Some((Lookup::Ambiguous { candidates, .. }, _)) => {
            let symbols: Vec<&str> = candidates.iter().map(|unit| unit.symbol).collect();
            format!("one of {}", symbols.join(", "))
        }
        Some((Lookup::Doubtful { meant, .. }, _)) => {
            let symbols: Vec<&str> = meant.iter().map(|unit| unit.symbol).collect();
            format!("doubtful: {}", symbols.join(", "))
        }
    }
}

#[test]
fn only_kitchen_measures_of_several_countries_share_a_spelling() {
    let mut owners: BTreeMap<String, Vec<&str>> = BTreeMap::new();
    for unit in table::all() {
        for spelling in unit.spellings {
            let key = if table::CASE_MATTERS.contains(spelling) {
                (*spelling).to_owned()
            } else {
                spelling.to_lowercase().replace('.', "")
            };
            let owner = owners.entry(key).or_default();
            if owner.last() != Some(&unit.symbol) {
                owner.push(unit.symbol);
            }
        }
    }
    for (spelling, symbols) in owners.iter().filter(|(_, symbols)| symbols.len() > 1) {
        let systems: Vec<System> = symbols.iter().map(|symbol| unit_by_symbol(symbol).unwrap().system).collect();
        assert!(
            !systems.contains(&System::Any),
            "`{spelling}` is shared by {symbols:?}, and a `measures` line could not settle it"
        );
        assert!(systems.windows(2).all(|pair| pair[0] != pair[1]), "{spelling}: {symbols:?}");
        assert_eq!(systems[0], System::Us, "the best estimate stands first: {spelling}");
    }
    for doubtful in table::DOUBTFUL {
        assert!(
            doubtful.meant.iter().all(|symbol| unit_by_symbol(symbol).is_some()),
            "{} names an unknown unit",
            doubtful.spelling
        );
    }
}

#[test]
fn symbols_are_unique_and_read_back() {
    let mut symbols: Vec<&str> =
        table::all().chain(tenter_quantity::composed::COMPOSED).map(|unit| unit.symbol).collect();
    let count = symbols.len();
    symbols.sort_unstable();
    symbols.dedup();
    assert_eq!(symbols.len(), count, "two units have one symbol");
    for unit in table::all() {
        assert!(!unit.source.is_empty() && unit.factor > 0.0, "{}", unit.symbol);
        if unit.symbol != "g/m²" {
            // What the formatter writes must be read as the same unit.
            assert_eq!(symbol(unit.symbol, None), unit.symbol);
            assert_eq!(symbol(unit.plural, None), unit.symbol, "plural of {}", unit.symbol);
        }
        for spelling in unit.spellings {
            let words: Vec<&str> = spelling.split(' ').collect();
            assert!(tenter_quantity::candidates(&words).contains(&unit), "`{spelling}` does not find {}", unit.symbol);
        }
    }
}

#[test]
fn spellings_of_the_bench() {
    for (written, expected) in [
        ("g", "g"),
        ("G", "g"),
        ("gm", "g"),
        ("Grams", "g"),
        ("KG", "kg"),
        ("ml", "mL"),
        ("mL", "mL"),
        ("ML", "mL"),
        ("l", "L"),
        ("L", "L"),
        ("Litres", "L"),
        ("oz", "oz"),
        ("OZ", "oz"),
        ("oz.", "oz"),
        ("lbs", "lb"),
        ("C", "°C"),
        ("°C", "°C"),
        ("ºC", "°C"),
        ("°c", "°C"),
        ("℃", "°C"),
        ("deg C", "°C"),
        ("F", "°F"),
        ("degrees F", "°F"),
        ("K", "K"),
        ("k", "nothing"),
        ("m", "m"),
        ("M", "M"),
        ("mm", "mm"),
        ("MM", "mm"),
        ("mM", "mM"),
        ("min", "min"),
        ("Min.", "min"),
        ("hrs", "h"),
        ("sec", "s"),
        ("days", "day"),
        ("% owg", "% owg"),
        ("%owg", "% owg"),
        ("% o.w.g.", "% owg"),
        ("% OWF", "% owg"),
        ("%", "%"),
        ("% w/v", "% w/v"),
        ("% night", "% (1)"),
        ("g soda ash", "g (1)"),
        ("fl oz", "one of US fl oz, imperial fl oz"),
        ("US fl oz", "US fl oz"),
        ("imperial gallons", "imperial gal"),
        ("metric cup", "metric cup"),
        ("tsp", "US tsp"),
        ("tsp.", "US tsp"),
        ("teaspoons", "US tsp"),
        ("cup", "one of US cup, metric cup, imperial cup"),
        ("tbsp", "one of US tbsp, metric tbsp, Australian tbsp"),
        ("gal", "one of US gal, imperial gal"),
        ("T", "doubtful: US tbsp, tonne"),
        ("t", "doubtful: US tsp, tonne"),
        ("c", "doubtful: US cup, °C"),
        ("°", "doubtful: °C, °F"),
        ("in", "doubtful: inch"),
        ("inch", "inch"),
        ("gr", "doubtful: g, grain"),
        ("°dH", "°dH"),
        ("dH", "°dH"),
        ("gr/gal", "gr/gal"),
        ("gpg", "gr/gal"),
        ("mg/L CaCO3", "mg/L CaCO3"),
        ("ppm CaCO₃", "mg/L CaCO3"),
        ("EUR", "EUR"),
        ("eur", "nothing"),
        ("CUP", "one of US cup, metric cup, imperial cup"),
        ("gl", "nothing"),
        ("glauber's salt", "nothing"),
        ("", "nothing"),
        ("/", "nothing"),
        (".", "nothing"),
        ("drop black", "drop (1)"),
        ("pieces", "piece"),
        ("x", "times"),
        ("gsm", "g/m²"),
        ("m2", "m²"),
        ("cm²", "cm²"),
    ] {
        assert_eq!(symbol(written, None), expected, "`{written}`");
    }
}

#[test]
fn measures_settle_whose_cup_it_is() {
    for (written, measures, expected) in [
        ("cup", System::Us, "US cup"),
        ("cup", System::Metric, "metric cup"),
        ("cup", System::Imperial, "imperial cup"),
        ("cup", System::Australian, "metric cup"),
        ("tbsp", System::Us, "US tbsp"),
        ("tbsp", System::Metric, "metric tbsp"),
        ("tbsp", System::Imperial, "metric tbsp"),
        ("tbsp", System::Australian, "Australian tbsp"),
        ("tsp", System::Metric, "metric tsp"),
        ("gal", System::Us, "US gal"),
        ("gal", System::Imperial, "imperial gal"),
        ("gal", System::Australian, "imperial gal"),
        ("gal", System::Metric, "one of US gal, imperial gal"),
        ("fl oz", System::Imperial, "imperial fl oz"),
        ("US cup", System::Metric, "US cup"),
        ("g", System::Us, "g"),
    ] {
        assert_eq!(symbol(written, Some(measures)), expected, "`{written}` in {measures:?}");
    }
    assert_eq!(System::parse("us"), Some(System::Us));
    assert_eq!(System::parse("Imperial"), Some(System::Imperial));
    assert_eq!(System::parse("martian"), None);
}

#[test]
fn the_formatter_adds_no_country() {
    for (written, number, expected) in [
        ("teaspoons", 2.0, Some("tsp")),
        ("cup", 2.0, Some("cups")),
        ("Cups", 1.0, Some("cup")),
        ("pt", 2.0, Some("pints")),
        ("US cup", 2.0, Some("US cups")),
        ("gallons", 3.0, Some("gal")),
        ("ML", 3.0, Some("mL")),
        ("T", 2.0, None),
        ("60 C", 2.0, None),
        ("C", 60.0, Some("°C")),
    ] {
        let words: Vec<&str> = written.split(' ').collect();
        let got = canonical_spelling(&words, number).map(|(spelling, _)| spelling);
        assert_eq!(got, expected, "{written}");
    }
}

#[test]
fn slips_find_the_nearest_unit() {
    for (slip, expected) in [
        ("teaspon", Some("US tsp")),
        ("tpsp", Some("US tsp")),
        ("grasm", Some("g")),
        ("minuts", Some("min")),
        ("mlt", Some("mL")),
        ("liters", Some("L")),
        ("galons", Some("US gal")),
        ("litrs", Some("L")),
        ("lagoon", None),
        ("xy", None),
        ("", None),
    ] {
        assert_eq!(nearest_unit(slip).map(|unit| unit.symbol), expected, "{slip}");
    }
}
