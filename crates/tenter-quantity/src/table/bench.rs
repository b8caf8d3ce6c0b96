//! Lengths, areas, counts, shares of the goods: the rest of the bench.

use super::{SI, SP811, row};
use crate::dimension::Dimension::{
    Area, Length, MassConcentration, MassFraction, MassPerArea, None, Part, PerCent, Piece, VolumeFraction,
};
use crate::quantity::Basis;
use crate::unit::Unit;

const INCH: f64 = 0.0254;
const FOOT: f64 = 0.3048;
const YARD: f64 = 0.9144;
const COUNT: &str = "a count, by definition";
const SHARE: &str = "by definition";
const TRADE: &str = "share of the dry weight of goods, usage of the dyeing trade: common practice, no source";
const PER_VOLUME: &str = "grams in 100 mL, usage of chemists: common practice, no source";

pub(super) static UNITS: &[Unit] = &[
    row("m", "metre", &["m", "metre", "metres", "meter", "meters"], Length, 1.0, SI),
    row("cm", "centimetre", &["cm", "cms", "centimetre", "centimetres", "centimeter", "centimeters"], Length, 1e-2, SI),
    row("mm", "millimetre", &["mm", "mms", "millimetre", "millimetres", "millimeter", "millimeters"], Length, 1e-3, SI),
    row("inch", "inch", &["inch", "inches"], Length, INCH, SP811).plural("inches"),
    row("ft", "foot", &["ft", "foot", "feet"], Length, FOOT, SP811),
    row("yd", "yard", &["yd", "yds", "yard", "yards"], Length, YARD, SP811),
    row(
        "m²",
        "square metre",
        &["m2", "sq m", "sqm", "square metre", "square metres", "square meter", "square meters"],
        Area,
        1.0,
        SI,
    ),
    row(
        "cm²",
        "square centimetre",
        &["cm2", "sq cm", "square centimetre", "square centimetres", "square centimeter", "square centimeters"],
        Area,
        1e-4,
        SI,
    ),
    row(
        "sq inch",
        "square inch",
        &["sq inch", "sq inches", "sq in", "square inch", "square inches"],
        Area,
        INCH * INCH,
        SP811,
    )
    .plural("sq inches"),
    row("sq ft", "square foot", &["sq ft", "ft2", "square foot", "square feet"], Area, FOOT * FOOT, SP811),
    row("sq yd", "square yard", &["sq yd", "yd2", "square yard", "square yards"], Area, YARD * YARD, SP811),
    row("g/m²", "grams in a square metre", &["gsm"], MassPerArea, 1e-3, SI),
    row("times", "times", &["times", "time", "x", "×"], None, 1.0, COUNT),
    row("dozen", "dozen", &["dozen"], Piece, 12.0, COUNT),
    row("piece", "piece of goods", &["piece", "pieces", "pc", "pcs"], Piece, 1.0, COUNT).plural("pieces"),
    row("part", "part of a mixture", &["part", "parts"], Part, 1.0, COUNT).plural("parts"),
    row("%", "per cent", &["%", "percent", "per cent", "pct"], PerCent, 0.01, SHARE),
    row("‰", "per mille", &["‰", "permille", "per mille"], PerCent, 0.001, SHARE),
    row(
        "% owg",
        "per cent on weight of goods",
        &["% owg", "%owg", "% owf", "%owf", "% o.w.g", "% o.w.f", "% wog", "percent owg", "% of goods"],
        MassFraction,
        0.01,
        TRADE,
    )
    .counted(Basis::PerGoods),
    row("% w/w", "per cent by mass", &["% w/w", "%w/w", "% m/m", "%m/m", "percent w/w"], MassFraction, 0.01, SHARE),
    row(
        "% w/v",
        "grams in 100 mL",
        &["% w/v", "%w/v", "% m/v", "%m/v", "percent w/v"],
        MassConcentration,
        10.0,
        PER_VOLUME,
    ),
    row("% v/v", "per cent by volume", &["% v/v", "%v/v", "percent v/v"], VolumeFraction, 0.01, SHARE),
    row("ppm", "parts per million by mass", &["ppm"], MassFraction, 1e-6, SHARE),
];
