//! What kind of thing a number measures, and how kinds combine.

use std::fmt;

/// The kind of a quantity, with the SI unit its value is kept in.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug, serde::Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Dimension {
    /// A pure number: a count, a ratio.
    None,
    /// kg.
    Mass,
    /// m³.
    Volume,
    /// An absolute temperature, K.
    Temperature,
    /// A difference of temperatures, K.
    TemperatureDifference,
    /// A rate of heating or cooling, K/s.
    TemperatureRate,
    /// s.
    Time,
    /// m.
    Length,
    /// m².
    Area,
    /// Amount of substance, mol.
    Amount,
    /// mol/m³.
    AmountConcentration,
    /// Mass in a volume, also a density: kg/m³.
    MassConcentration,
    /// kg/kg.
    MassFraction,
    /// m³/m³.
    VolumeFraction,
    /// m³/kg, such as 2 L per 100 g.
    VolumePerMass,
    /// kg/m².
    MassPerArea,
    /// Water hardness as kg CaCO₃ per m³.
    Hardness,
    /// An amount of a currency; the unit says which.
    Money,
    /// Money per kg.
    MoneyPerMass,
    /// Money per m³.
    MoneyPerVolume,
    /// Parts of a mixture.
    Part,
    /// A count of pieces of goods.
    Piece,
    /// kg of liquor per kg of dry goods: 1:20 is 20.
    LiquorRatio,
    /// A bare per cent, as a fraction of something not said.
    PerCent,
}

use Dimension as D;

/// Products that have a name here; each also gives two quotients.
const PRODUCTS: &[(Dimension, Dimension, Dimension)] = &[
    (D::MassConcentration, D::Volume, D::Mass),
    (D::AmountConcentration, D::Volume, D::Amount),
    (D::Hardness, D::Volume, D::Mass),
    (D::VolumePerMass, D::Mass, D::Volume),
    (D::MassFraction, D::Mass, D::Mass),
    (D::VolumeFraction, D::Volume, D::Volume),
    (D::MassPerArea, D::Area, D::Mass),
    (D::LiquorRatio, D::Mass, D::Mass),
    (D::Length, D::Length, D::Area),
    (D::Area, D::Length, D::Volume),
    (D::TemperatureRate, D::Time, D::TemperatureDifference),
    (D::MoneyPerMass, D::Mass, D::Money),
    (D::MoneyPerVolume, D::Volume, D::Money),
];

impl Dimension {
    /// As it is called in a message: "a mass".
    pub const fn name(self) -> &'static str {
        match self {
            Self::None => "a plain number",
            Self::Mass => "a mass",
            Self::Volume => "a volume",
            Self::Temperature => "a temperature",
            Self::TemperatureDifference => "a difference in temperature",
            Self::TemperatureRate => "a rate of heating",
            Self::Time => "a length of time",
            Self::Length => "a length",
            Self::Area => "an area",
            Self::Amount => "an amount in moles",
            Self::AmountConcentration => "a molar concentration",
            Self::MassConcentration => "a strength, mass in a volume",
            Self::MassFraction => "a share by mass",
            Self::VolumeFraction => "a share by volume",
            Self::VolumePerMass => "a volume for a mass",
            Self::MassPerArea => "a mass for an area",
            Self::Hardness => "a water hardness",
            Self::Money => "an amount of money",
            Self::MoneyPerMass => "a price for a mass",
            Self::MoneyPerVolume => "a price for a volume",
            Self::Part => "a number of parts",
            Self::Piece => "a number of pieces",
            Self::LiquorRatio => "a liquor ratio",
            Self::PerCent => "a percentage of something not said",
        }
    }

    /// Units it may be written in: "g, oz, lb".
    pub const fn example(self) -> &'static str {
        match self {
            Self::None => "3, 2 times",
            Self::Mass => "g, kg, oz, lb",
            Self::Volume => "mL, L, tsp, US cup",
            Self::Temperature => "°C, °F",
            Self::TemperatureDifference => "± 2 °C",
            Self::TemperatureRate => "°C/min",
            Self::Time => "min, h, days",
            Self::Length => "cm, m, inch",
            Self::Area => "cm², m², sq ft",
            Self::Amount => "mol, mmol",
            Self::AmountConcentration => "mol/L, M",
            Self::MassConcentration => "g/L, oz/gal, % w/v",
            Self::MassFraction => "% owg, % w/w, g/kg",
            Self::VolumeFraction => "mL/L, % v/v, 4 tsp per cup",
            Self::VolumePerMass => "L/kg, 2 L per 100 g goods",
            Self::MassPerArea => "g/m²",
            Self::Hardness => "mg/L CaCO3, °dH, gr/gal",
            Self::Money => "EUR, USD",
            Self::MoneyPerMass => "EUR/kg, 24 EUR per 500 g",
            Self::MoneyPerVolume => "EUR/L",
            Self::Part => "parts",
            Self::Piece => "pieces",
            Self::LiquorRatio => "1:20",
            Self::PerCent => "%",
        }
    }

    /// The kind of a product, where it has a name here.
    pub fn times(self, other: Self) -> Option<Self> {
        match (self, other) {
            (D::None, kind) | (kind, D::None) => Some(kind),
            _ => PRODUCTS
                .iter()
                .find(|&&(a, b, _)| (a, b) == (self, other) || (b, a) == (self, other))
                .map(|&(_, _, product)| product),
        }
    }

    /// The kind of a quotient, where it has a name here. Two of a kind give a plain number, except that mass over
    /// mass and volume over volume are kept apart as shares.
    pub fn over(self, other: Self) -> Option<Self> {
        match (self, other) {
            (kind, D::None) => Some(kind),
            (D::Mass, D::Mass) => Some(D::MassFraction),
            (D::Volume, D::Volume) => Some(D::VolumeFraction),
            (D::Mass, D::Volume) => Some(D::MassConcentration),
            (D::Temperature, D::Time) => Some(D::TemperatureRate),
            (a, b) if a == b => Some(D::None),
            _ => PRODUCTS.iter().find_map(|&(a, b, product)| {
                if product != self {
                    None
                } else if b == other {
                    Some(a)
                } else if a == other {
                    Some(b)
                } else {
                    None
                }
            }),
        }
    }
}

impl fmt::Display for Dimension {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.name())
    }
}
