//! Units by name, for figures made by the program: `GRAM`, `GRAM_PER_LITRE`. A missing one stops the build.

use crate::composed::COMPOSED;
use crate::dimension::Dimension;
use crate::quantity::Basis;
use crate::table::UNITS;
use crate::unit::Unit;

const fn same(a: &str, b: &str) -> bool {
    let (a, b) = (a.as_bytes(), b.as_bytes());
    if a.len() != b.len() {
        return false;
    }
    let mut at = 0;
    while at < a.len() {
        if a[at] != b[at] {
            return false;
        }
        at += 1;
    }
    true
}

const fn search(units: &'static [Unit], symbol: &str) -> Option<&'static Unit> {
    let mut at = 0;
    while at < units.len() {
        if same(units[at].symbol, symbol) {
            return Some(&units[at]);
        }
        at += 1;
    }
    None
}

/// Runs only while the program is built: every use initialises a static.
const fn named(symbol: &str) -> &'static Unit {
    let mut group = 0;
    while group < UNITS.len() {
        if let Some(unit) = search(UNITS[group], symbol) {
            return unit;
        }
        group += 1;
    }
    match search(COMPOSED, symbol) {
        Some(unit) => unit,
        None => panic!("no unit of this symbol"),
    }
}

macro_rules! standard {
    ($($(#[$doc:meta])* $name:ident = $symbol:literal;)*) => {
        $($(#[$doc])* pub static $name: &Unit = named($symbol);)*
    };
}

standard! {
    /// g
    GRAM = "g";
    /// kg
    KILOGRAM = "kg";
    /// mg
    MILLIGRAM = "mg";
    /// mL
    MILLILITRE = "mL";
    /// L
    LITRE = "L";
    /// °C
    CELSIUS = "°C";
    /// s
    SECOND = "s";
    /// min
    MINUTE = "min";
    /// h
    HOUR = "h";
    /// day
    DAY = "day";
    /// m
    METRE = "m";
    /// cm
    CENTIMETRE = "cm";
    /// mm
    MILLIMETRE = "mm";
    /// m²
    SQUARE_METRE = "m²";
    /// mol
    MOLE = "mol";
    /// mmol
    MILLIMOLE = "mmol";
    /// mol/L
    MOLE_PER_LITRE = "mol/L";
    /// mmol/L
    MILLIMOLE_PER_LITRE = "mmol/L";
    /// g/L
    GRAM_PER_LITRE = "g/L";
    /// g/mL
    GRAM_PER_MILLILITRE = "g/mL";
    /// g/kg
    GRAM_PER_KILOGRAM = "g/kg";
    /// mL/L
    MILLILITRE_PER_LITRE = "mL/L";
    /// L/kg
    LITRE_PER_KILOGRAM = "L/kg";
    /// L/kg of goods
    LITRE_PER_KILOGRAM_GOODS = "L/kg goods";
    /// g/m²
    GRAM_PER_SQUARE_METRE = "g/m²";
    /// mg/L CaCO₃
    HARDNESS = "mg/L CaCO3";
    /// °C/min
    CELSIUS_PER_MINUTE = "°C/min";
    /// g/piece
    GRAM_PER_PIECE = "g/piece";
    /// mL/piece
    MILLILITRE_PER_PIECE = "mL/piece";
    /// pieces
    PIECE = "piece";
    /// parts
    PART = "part";
    /// times
    TIMES = "times";
    /// %
    PER_CENT = "%";
    /// % owg
    PER_CENT_OWG = "% owg";
    /// % w/w
    PER_CENT_MASS = "% w/w";
    /// % v/v
    PER_CENT_VOLUME = "% v/v";
    /// shown as 1:20
    LIQUOR_RATIO = "liquor ratio";
    /// a number without a unit
    NUMBER = "";
}

impl Dimension {
    /// The unit a dyer would weigh or measure this in, where the recipe names none. Money has no unit of its own and
    /// is shown as a plain number: give figures of money the unit of their currency.
    pub fn usual_unit(self, basis: Basis) -> &'static Unit {
        match (self, basis) {
            (Self::Mass, Basis::PerPiece) => GRAM_PER_PIECE,
            (Self::Volume, Basis::PerPiece) => MILLILITRE_PER_PIECE,
            (Self::MassFraction, Basis::PerGoods) => PER_CENT_OWG,
            (Self::VolumePerMass, Basis::PerGoods) => LITRE_PER_KILOGRAM_GOODS,
            (Self::Mass, _) => GRAM,
            (Self::Volume, _) => MILLILITRE,
            (Self::Temperature | Self::TemperatureDifference, _) => CELSIUS,
            (Self::TemperatureRate, _) => CELSIUS_PER_MINUTE,
            (Self::Time, _) => MINUTE,
            (Self::Length, _) => CENTIMETRE,
            (Self::Area, _) => SQUARE_METRE,
            (Self::Amount, _) => MOLE,
            (Self::AmountConcentration, _) => MOLE_PER_LITRE,
            (Self::MassConcentration, _) => GRAM_PER_LITRE,
            (Self::MassFraction, _) => PER_CENT_MASS,
            (Self::VolumeFraction, _) => MILLILITRE_PER_LITRE,
            (Self::VolumePerMass, _) => LITRE_PER_KILOGRAM,
            (Self::MassPerArea, _) => GRAM_PER_SQUARE_METRE,
            (Self::Hardness, _) => HARDNESS,
            (Self::Part, _) => PART,
            (Self::Piece, _) => PIECE,
            (Self::LiquorRatio, _) => LIQUOR_RATIO,
            (Self::PerCent, _) => PER_CENT,
            (Self::None | Self::Money | Self::MoneyPerMass | Self::MoneyPerVolume, _) => NUMBER,
        }
    }
}
