//! Water hardness, all as calcium carbonate.

use super::row;
use crate::dimension::Dimension::Hardness;
use crate::unit::Unit;

/// Grain, kg (NIST SP 811) over the US gallon, m³ (231 in³).
const GRAIN_PER_US_GALLON: f64 = 64.798_91e-6 / 3.785_411_784e-3;
/// Grain over the imperial gallon of 4.546 09 L.
const GRAIN_PER_IMPERIAL_GALLON: f64 = 64.798_91e-6 / 4.546_09e-3;
/// 10 mg CaO in a litre, as CaCO₃: 10 mg × M(CaCO₃) / M(CaO), IUPAC 2021 weights Ca 40.078, C 12.011, O 15.999.
const GERMAN_DEGREE: f64 = 0.01 * 100.086 / 56.077;

pub(super) static UNITS: &[Unit] = &[
    row(
        "mg/L CaCO3",
        "milligrams of calcium carbonate in a litre",
        &["mg/L CaCO3", "mg/L as CaCO3", "mg/L hardness", "mg CaCO3/L", "ppm CaCO3", "ppm as CaCO3", "ppm hardness"],
        Hardness,
        1e-3,
        "by definition; ppm of fresh water taken as mg/L",
    ),
    row(
        "°dH",
        "German degree of hardness",
        &["°dH", "dH", "° dH", "deg dH"],
        Hardness,
        GERMAN_DEGREE,
        "10 mg CaO/L (1 part in 100 000), wiktel.com/standards/hardnes.htm; molar masses IUPAC 2021",
    ),
    row(
        "°fH",
        "French degree of hardness",
        &["°fH", "fH", "° fH", "deg fH"],
        Hardness,
        1e-2,
        "10 mg CaCO3/L (1 part in 100 000), wiktel.com/standards/hardnes.htm",
    ),
    row(
        "°e",
        "English (Clark) degree of hardness",
        &["°e", "°Clark", "Clark", "deg Clark", "degrees Clark"],
        Hardness,
        GRAIN_PER_IMPERIAL_GALLON,
        "one grain of CaCO3 in an imperial gallon, sizes.com/units/clark_degree.htm; grain NIST SP 811",
    ),
    row(
        "gr/gal",
        "grains of calcium carbonate in a US gallon",
        &["gr/gal", "gpg", "grains/gal", "grain/gal", "grains per gallon"],
        Hardness,
        GRAIN_PER_US_GALLON,
        "grain and US gallon, NIST SP 811: 17.118 mg/L",
    ),
];
