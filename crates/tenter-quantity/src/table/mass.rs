//! Masses and amounts of substance.

use super::{SI, SP811, row};
use crate::dimension::Dimension::{Amount, AmountConcentration, Mass};
use crate::unit::Unit;

pub(super) static UNITS: &[Unit] = &[
    row("g", "gram", &["g", "gm", "gms", "gram", "grams", "gramme", "grammes"], Mass, 1e-3, SI),
    row(
        "kg",
        "kilogram",
        &["kg", "kgs", "kilo", "kilos", "kilogram", "kilograms", "kilogramme", "kilogrammes"],
        Mass,
        1.0,
        SI,
    ),
    row("mg", "milligram", &["mg", "milligram", "milligrams"], Mass, 1e-6, SI),
    row("ug", "microgram", &["ug", "mcg", "microgram", "micrograms"], Mass, 1e-9, SI),
    row("tonne", "tonne (metric ton)", &["tonne", "tonnes"], Mass, 1000.0, SI).plural("tonnes"),
    // Exact: 0.45359237 kg / 16.
    row(
        "oz",
        "ounce avoirdupois",
        &["oz", "ozs", "ounce", "ounces", "oz wt", "dry oz"],
        Mass,
        0.028_349_523_125,
        SP811,
    ),
    row("lb", "pound avoirdupois", &["lb", "lbs", "pound", "pounds"], Mass, 0.453_592_37, SP811),
    row("grain", "grain", &["grain", "grains"], Mass, 64.798_91e-6, SP811).plural("grains"),
    row("mol", "mole", &["mol", "mols", "mole", "moles"], Amount, 1.0, SI),
    row("mmol", "millimole", &["mmol", "millimole", "millimoles"], Amount, 1e-3, SI),
    row("M", "moles in a litre (molar)", &["M", "molar"], AmountConcentration, 1000.0, SI),
    row("mM", "millimoles in a litre (millimolar)", &["mM", "millimolar"], AmountConcentration, 1.0, SI),
];
