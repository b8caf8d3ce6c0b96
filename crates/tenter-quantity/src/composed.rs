//! Divided units that figures are shown in: `g/L`, `oz/gal`, `g/piece`. Reading never needs them (it divides what it
//! finds on either side of the stroke); showing does, because a figure carries one unit.

use crate::dimension::Dimension::{
    self, AmountConcentration, LiquorRatio, Mass, MassConcentration, MassFraction, MassPerArea, TemperatureRate,
    Volume, VolumeFraction, VolumePerMass,
};
use crate::quantity::Basis;
use crate::unit::{System, Unit};

const WORKED: &str = "worked out from its parts";
const OUNCE: f64 = 0.028_349_523_125;
const US_GALLON: f64 = 3.785_411_784e-3;
const YARD: f64 = 0.9144;

const fn row(symbol: &'static str, name: &'static str, dimension: Dimension, factor: f64, basis: Basis) -> Unit {
    Unit {
        symbol,
        plural: symbol,
        name,
        spellings: &[],
        dimension,
        factor,
        offset: 0.0,
        spread: 0.0,
        system: System::Any,
        basis,
        source: WORKED,
    }
}

use Basis::{Absolute, PerGoods, PerLot, PerPiece};

/// Every divided unit figures are shown in.
pub static COMPOSED: &[Unit] = &[
    row("g/L", "grams in a litre", MassConcentration, 1.0, Absolute),
    row("mg/L", "milligrams in a litre", MassConcentration, 1e-3, Absolute),
    row("kg/L", "kilograms in a litre", MassConcentration, 1000.0, Absolute),
    row("g/mL", "grams in a millilitre", MassConcentration, 1000.0, Absolute),
    row("oz/US gal", "ounces in a US gallon", MassConcentration, OUNCE / US_GALLON, Absolute),
    row("lb/US gal", "pounds in a US gallon", MassConcentration, 16.0 * OUNCE / US_GALLON, Absolute),
    row("mL/L", "millilitres in a litre", VolumeFraction, 1e-3, Absolute),
    row("g/kg", "grams in a kilogram", MassFraction, 1e-3, Absolute),
    row("g/kg goods", "grams for a kilogram of goods", MassFraction, 1e-3, PerGoods),
    row("L/kg goods", "litres for a kilogram of goods", VolumePerMass, 1e-3, PerGoods),
    row("L/kg", "litres for a kilogram", VolumePerMass, 1e-3, Absolute),
    row("mL/g", "millilitres for a gram", VolumePerMass, 1e-3, Absolute),
    row("oz/sq yd", "ounces in a square yard", MassPerArea, OUNCE / (YARD * YARD), Absolute),
    row("mol/L", "moles in a litre", AmountConcentration, 1000.0, Absolute),
    row("mmol/L", "millimoles in a litre", AmountConcentration, 1.0, Absolute),
    row("°C/min", "degrees Celsius a minute", TemperatureRate, 1.0 / 60.0, Absolute),
    row("°C/h", "degrees Celsius an hour", TemperatureRate, 1.0 / 3600.0, Absolute),
    row("°F/min", "degrees Fahrenheit a minute", TemperatureRate, 1.0 / 1.8 / 60.0, Absolute),
    row("mg/piece", "milligrams for a piece", Mass, 1e-6, PerPiece),
    row("g/piece", "grams for a piece", Mass, 1e-3, PerPiece),
    row("kg/piece", "kilograms for a piece", Mass, 1.0, PerPiece),
    row("oz/piece", "ounces for a piece", Mass, OUNCE, PerPiece),
    row("mL/piece", "millilitres for a piece", Volume, 1e-6, PerPiece),
    row("L/piece", "litres for a piece", Volume, 1e-3, PerPiece),
    row("g/lot", "grams for a lot", Mass, 1e-3, PerLot),
    row("kg/lot", "kilograms for a lot", Mass, 1.0, PerLot),
    row("mL/lot", "millilitres for a lot", Volume, 1e-6, PerLot),
    row("L/lot", "litres for a lot", Volume, 1e-3, PerLot),
    row("liquor ratio", "liquor ratio", LiquorRatio, 1.0, Absolute),
    row("", "plain number", Dimension::None, 1.0, Absolute),
    row("m³/kg", "cubic metres for a kilogram", VolumePerMass, 1.0, Absolute),
];
