//! Volumes: metric, and the kitchen measures of four countries kept apart.

use super::{HB44, SI, SP811, row};
use crate::dimension::Dimension::Volume;
use crate::unit::System::{Australian, Imperial, Metric, Us};
use crate::unit::Unit;

/// 231 cubic inches of 0.0254 m each, exactly.
const US_GALLON: f64 = 3.785_411_784e-3;
/// Exact by law.
const IMPERIAL_GALLON: f64 = 4.546_09e-3;

const US_SPOON: &str = "NIST Handbook 44, appendix C: 231 in³ to the US gallon, 768 teaspoons to it";
const UK_ACT: &str = "UK Weights and Measures Act 1985, schedule 1: gallon of 4.546 09 L";
const METRIC_SPOON: &str = "metric kitchen measures: common practice, no source";
const METRIC_CUP: &str = "metric cup of 250 mL, AS 1325: from memory";
const AUSTRALIAN_SPOON: &str = "Australian tablespoon of 20 mL, AS 1325: from memory";

pub(super) static UNITS: &[Unit] = &[
    row(
        "mL",
        "millilitre",
        &["mL", "mls", "cc", "cm3", "millilitre", "millilitres", "milliliter", "milliliters"],
        Volume,
        1e-6,
        SI,
    ),
    row("L", "litre", &["L", "ltr", "ltrs", "litre", "litres", "liter", "liters"], Volume, 1e-3, SI),
    row("cL", "centilitre", &["cL", "centilitre", "centilitres", "centiliter", "centiliters"], Volume, 1e-5, SI),
    row("dL", "decilitre", &["dL", "decilitre", "decilitres", "deciliter", "deciliters"], Volume, 1e-4, SI),
    row("uL", "microlitre", &["uL", "microlitre", "microlitres", "microliter", "microliters"], Volume, 1e-9, SI),
    row("m³", "cubic metre", &["m3", "cubic metre", "cubic metres", "cubic meter", "cubic meters"], Volume, 1.0, SI),
    // 20 drops to the millilitre is usual; real drops run from 0.03 to 0.07 mL.
    row("drop", "drop", &["drop", "drops"], Volume, 0.05e-6, "20 drops to the millilitre: common practice, no source")
        .plural("drops")
        .spread(0.4),
    row(
        "US tsp",
        "US teaspoon",
        &["tsp", "tsps", "teaspoon", "teaspoons", "US tsp", "US teaspoon", "US teaspoons"],
        Volume,
        US_GALLON / 768.0,
        US_SPOON,
    )
    .of(Us),
    row(
        "metric tsp",
        "metric teaspoon",
        &["tsp", "tsps", "teaspoon", "teaspoons", "metric tsp", "metric teaspoon", "metric teaspoons", "UK tsp"],
        Volume,
        5e-6,
        METRIC_SPOON,
    )
    .of(Metric),
    row(
        "US tbsp",
        "US tablespoon",
        &["tbsp", "tbsps", "tbs", "tblsp", "tablespoon", "tablespoons", "US tbsp", "US tablespoon", "US tablespoons"],
        Volume,
        US_GALLON / 256.0,
        HB44,
    )
    .of(Us),
    row(
        "metric tbsp",
        "metric tablespoon",
        &[
            "tbsp",
            "tbsps",
            "tbs",
            "tblsp",
            "tablespoon",
            "tablespoons",
            "metric tbsp",
            "metric tablespoon",
            "metric tablespoons",
            "UK tbsp",
        ],
        Volume,
        15e-6,
        METRIC_SPOON,
    )
    .of(Metric),
    row(
        "Australian tbsp",
        "Australian tablespoon",
        &[
            "tbsp",
            "tbsps",
            "tbs",
            "tblsp",
            "tablespoon",
            "tablespoons",
            "Australian tbsp",
            "Australian tablespoon",
            "Australian tablespoons",
        ],
        Volume,
        20e-6,
        AUSTRALIAN_SPOON,
    )
    .of(Australian),
    row(
        "US fl oz",
        "US fluid ounce",
        &["fl oz", "floz", "fluid oz", "fluid ounce", "fluid ounces", "US fl oz", "US fluid ounce", "US fluid ounces"],
        Volume,
        US_GALLON / 128.0,
        HB44,
    )
    .of(Us),
    row(
        "imperial fl oz",
        "imperial fluid ounce",
        &[
            "fl oz",
            "floz",
            "fluid oz",
            "fluid ounce",
            "fluid ounces",
            "imperial fl oz",
            "imp fl oz",
            "UK fl oz",
            "imperial fluid ounce",
            "imperial fluid ounces",
        ],
        Volume,
        IMPERIAL_GALLON / 160.0,
        UK_ACT,
    )
    .of(Imperial),
    row("US cup", "US customary cup", &["cup", "cups", "US cup", "US cups"], Volume, US_GALLON / 16.0, HB44)
        .of(Us)
        .plural("US cups"),
    row(
        "metric cup",
        "metric cup",
        &["cup", "cups", "metric cup", "metric cups", "Australian cup", "Australian cups"],
        Volume,
        250e-6,
        METRIC_CUP,
    )
    .of(Metric)
    .plural("metric cups"),
    row(
        "imperial cup",
        "imperial cup of 10 fluid ounces",
        &["cup", "cups", "imperial cup", "imperial cups", "imp cup", "imp cups", "UK cup", "UK cups"],
        Volume,
        IMPERIAL_GALLON / 16.0,
        "half an imperial pint: common practice, no source; pint by UK Weights and Measures Act 1985",
    )
    .of(Imperial)
    .plural("imperial cups"),
    row(
        "US pint",
        "US liquid pint",
        &["pint", "pints", "pt", "pts", "US pint", "US pints", "US pt"],
        Volume,
        US_GALLON / 8.0,
        HB44,
    )
    .of(Us)
    .plural("US pints"),
    row(
        "imperial pint",
        "imperial pint",
        &[
            "pint",
            "pints",
            "pt",
            "pts",
            "imperial pint",
            "imperial pints",
            "imp pint",
            "imp pints",
            "UK pint",
            "UK pints",
        ],
        Volume,
        IMPERIAL_GALLON / 8.0,
        UK_ACT,
    )
    .of(Imperial)
    .plural("imperial pints"),
    row(
        "US qt",
        "US liquid quart",
        &["quart", "quarts", "qt", "qts", "US quart", "US quarts", "US qt", "US qts"],
        Volume,
        US_GALLON / 4.0,
        HB44,
    )
    .of(Us),
    row(
        "imperial qt",
        "imperial quart",
        &[
            "quart",
            "quarts",
            "qt",
            "qts",
            "imperial quart",
            "imperial quarts",
            "imperial qt",
            "imp qt",
            "UK quart",
            "UK quarts",
        ],
        Volume,
        IMPERIAL_GALLON / 4.0,
        UK_ACT,
    )
    .of(Imperial),
    row(
        "US gal",
        "US gallon",
        &["gal", "gals", "gallon", "gallons", "US gal", "US gallon", "US gallons"],
        Volume,
        US_GALLON,
        SP811,
    )
    .of(Us),
    row(
        "imperial gal",
        "imperial gallon",
        &[
            "gal",
            "gals",
            "gallon",
            "gallons",
            "imperial gal",
            "imp gal",
            "UK gal",
            "imperial gallon",
            "imperial gallons",
            "UK gallon",
            "UK gallons",
        ],
        Volume,
        IMPERIAL_GALLON,
        UK_ACT,
    )
    .of(Imperial),
];
