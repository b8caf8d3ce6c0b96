//! Currencies: the alphabetic codes of ISO 4217 list one that money is really counted in (no metals, bond units, test
//! codes or funds codes), with the decimals each is written to.

use crate::dimension::Dimension::{self, Money, MoneyPerMass, MoneyPerVolume};
use crate::quantity::Basis;
use crate::unit::{System, Unit};

/// Source of the codes and their decimals.
pub const SOURCE: &str = "ISO 4217 list one, active alphabetic codes";

const fn row(symbol: &'static str, dimension: Dimension, factor: f64) -> Unit {
    Unit {
        symbol,
        plural: symbol,
        name: symbol,
        spellings: &[],
        dimension,
        factor,
        offset: 0.0,
        spread: 0.0,
        system: System::Any,
        basis: Basis::Absolute,
        source: SOURCE,
    }
}

macro_rules! currencies {
    ($(($code:literal, $decimals:literal)),* $(,)?) => {
        static CODES: &[(&str, usize)] = &[$(($code, $decimals)),*];
        static MONEY: &[Unit] = &[$(row($code, Money, 1.0)),*];
        static PER_KILOGRAM: &[Unit] = &[$(row(concat!($code, "/kg"), MoneyPerMass, 1.0)),*];
        // Per litre: a thousand litres to the cubic metre.
        static PER_LITRE: &[Unit] = &[$(row(concat!($code, "/L"), MoneyPerVolume, 1000.0)),*];
    };
}

currencies![
    ("AED", 2),
    ("AFN", 2),
    ("ALL", 2),
    ("AMD", 2),
    ("AOA", 2),
    ("ARS", 2),
    ("AUD", 2),
    ("AWG", 2),
    ("AZN", 2),
    ("BAM", 2),
    ("BBD", 2),
    ("BDT", 2),
    ("BHD", 3),
    ("BIF", 0),
    ("BMD", 2),
    ("BND", 2),
    ("BOB", 2),
    ("BRL", 2),
    ("BSD", 2),
    ("BTN", 2),
    ("BWP", 2),
    ("BYN", 2),
    ("BZD", 2),
    ("CAD", 2),
    ("CDF", 2),
    ("CHF", 2),
    ("CLP", 0),
    ("CNY", 2),
    ("COP", 2),
    ("CRC", 2),
    ("CUP", 2),
    ("CVE", 2),
    ("CZK", 2),
    ("DJF", 0),
    ("DKK", 2),
    ("DOP", 2),
    ("DZD", 2),
    ("EGP", 2),
    ("ERN", 2),
    ("ETB", 2),
    ("EUR", 2),
    ("FJD", 2),
    ("FKP", 2),
    ("GBP", 2),
    ("GEL", 2),
    ("GHS", 2),
    ("GIP", 2),
    ("GMD", 2),
    ("GNF", 0),
    ("GTQ", 2),
    ("GYD", 2),
    ("HKD", 2),
    ("HNL", 2),
    ("HTG", 2),
    ("HUF", 2),
    ("IDR", 2),
    ("ILS", 2),
    ("INR", 2),
    ("IQD", 3),
    ("IRR", 2),
    ("ISK", 0),
    ("JMD", 2),
    ("JOD", 3),
    ("JPY", 0),
    ("KES", 2),
    ("KGS", 2),
    ("KHR", 2),
    ("KMF", 0),
    ("KPW", 2),
    ("KRW", 0),
    ("KWD", 3),
    ("KYD", 2),
    ("KZT", 2),
    ("LAK", 2),
    ("LBP", 2),
    ("LKR", 2),
    ("LRD", 2),
    ("LSL", 2),
    ("LYD", 3),
    ("MAD", 2),
    ("MDL", 2),
    ("MGA", 2),
    ("MKD", 2),
    ("MMK", 2),
    ("MNT", 2),
    ("MOP", 2),
    ("MRU", 2),
    ("MUR", 2),
    ("MVR", 2),
    ("MWK", 2),
    ("MXN", 2),
    ("MYR", 2),
    ("MZN", 2),
    ("NAD", 2),
    ("NGN", 2),
    ("NIO", 2),
    ("NOK", 2),
    ("NPR", 2),
    ("NZD", 2),
    ("OMR", 3),
    ("PAB", 2),
    ("PEN", 2),
    ("PGK", 2),
    ("PHP", 2),
    ("PKR", 2),
    ("PLN", 2),
    ("PYG", 0),
    ("QAR", 2),
    ("RON", 2),
    ("RSD", 2),
    ("RUB", 2),
    ("RWF", 0),
    ("SAR", 2),
    ("SBD", 2),
    ("SCR", 2),
    ("SDG", 2),
    ("SEK", 2),
    ("SGD", 2),
    ("SHP", 2),
    ("SLE", 2),
    ("SOS", 2),
    ("SRD", 2),
    ("SSP", 2),
    ("STN", 2),
    ("SVC", 2),
    ("SYP", 2),
    ("SZL", 2),
    ("THB", 2),
    ("TJS", 2),
    ("TMT", 2),
    ("TND", 3),
    ("TOP", 2),
    ("TRY", 2),
    ("TTD", 2),
    ("TWD", 2),
    ("TZS", 2),
    ("UAH", 2),
    ("UGX", 0),
    ("USD", 2),
    ("UYU", 2),
    ("UZS", 2),
    ("VED", 2),
    ("VES", 2),
    ("VND", 0),
    ("VUV", 0),
    ("WST", 2),
    ("XAF", 0),
    ("XCD", 2),
    ("XCG", 2),
    ("XOF", 0),
    ("XPF", 0),
    ("YER", 2),
    ("ZAR", 2),
    ("ZMW", 2),
    ("ZWG", 2),
];

fn position(code: &str) -> Option<usize> {
    CODES.binary_search_by_key(&code, |&(known, _)| known).ok()
}

/// Whether `code` is the code of a currency, in capitals as the standard writes it.
pub fn is_currency(code: &str) -> bool {
    position(code).is_some()
}

/// The unit of a currency, by its code in capitals.
pub fn lookup_currency(code: &str) -> Option<&'static Unit> {
    MONEY.get(position(code)?)
}

/// The unit `EUR/kg` of a currency.
pub fn price_per_kilogram(code: &str) -> Option<&'static Unit> {
    PER_KILOGRAM.get(position(code)?)
}

/// The unit `EUR/L` of a currency.
pub fn price_per_litre(code: &str) -> Option<&'static Unit> {
    PER_LITRE.get(position(code)?)
}

/// Decimals an amount of this currency is written to: 2 for EUR, 0 for JPY. A price unit `EUR/kg` counts as its
/// currency; anything unknown has 2.
pub fn decimals(symbol: &str) -> usize {
    let code = symbol.split('/').next().unwrap_or(symbol);
    position(code).and_then(|at| CODES.get(at)).map_or(2, |&(_, decimals)| decimals)
}

/// Every code, in order.
pub fn codes() -> impl Iterator<Item = &'static str> {
    CODES.iter().map(|&(code, _)| code)
}

/// A unit of money or of price by its symbol.
pub(crate) fn by_symbol(symbol: &str) -> Option<&'static Unit> {
    match symbol.split_once('/') {
        None => lookup_currency(symbol),
        Some((code, "kg")) => price_per_kilogram(code),
        Some((code, "L")) => price_per_litre(code),
        Some(_) => None,
    }
}
