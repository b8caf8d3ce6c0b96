//! A value with its kind and what it is counted on.

use crate::dimension::Dimension;
use crate::dimension_problem::DimensionProblem;
use crate::interval::Interval;
use crate::unit::Unit;

/// What an amount is counted on.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug, Default, serde::Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Basis {
    /// As it stands.
    #[default]
    Absolute,
    /// For each piece of goods: `9 g/piece`.
    PerPiece,
    /// For the dry weight of the goods: `% owg`, `2 L per 100 g goods`.
    PerGoods,
    /// For each lot of goods.
    PerLot,
}

/// A value in SI, its kind and its basis.
#[derive(Clone, Copy, Debug, PartialEq, serde::Serialize)]
pub struct Quantity {
    /// In the SI unit of the dimension.
    pub value: Interval,
    /// What it measures.
    pub dimension: Dimension,
    /// What it is counted on.
    pub basis: Basis,
}

/// Mass of one mole of CaCO₃, kg/mol: IUPAC 2021 abridged standard atomic weights Ca 40.078, C 12.011, O 15.999.
pub const MOLAR_MASS_CALCIUM_CARBONATE: f64 = 0.100_086;

/// Water is taken as 1 kg/L where ppm of it is read as mg/L: the convention of water analysis (ppm and mg/L are
/// used as one in fresh water), within 0.3 % from 0 to 25 °C.
const WATER_FOR_PPM: f64 = 1000.0;

impl Quantity {
    /// An absolute quantity.
    pub const fn new(value: Interval, dimension: Dimension) -> Self {
        Self { value, dimension, basis: Basis::Absolute }
    }

    /// Itself if it is one of the kinds needed; else what is wrong.
    pub fn expect(self, needed: &[Dimension]) -> Result<Self, DimensionProblem> {
        if needed.contains(&self.dimension) { Ok(self) } else { Err(DimensionProblem::new(self.dimension, needed)) }
    }

    /// How many of a unit it is; `None` where the unit measures something else.
    pub fn in_unit(&self, unit: &Unit) -> Option<Interval> {
        let difference = self.dimension == Dimension::TemperatureDifference && unit.dimension == Dimension::Temperature;
        if difference {
            Some(self.value / unit.factor)
        } else if unit.dimension == self.dimension {
            Some(unit.from_si(self.value))
        } else {
            None
        }
    }

    /// A bare per cent taken as a share of the dry weight of the goods; anything else unchanged.
    pub fn of_goods(self) -> Self {
        if self.dimension == Dimension::PerCent {
            Self { dimension: Dimension::MassFraction, basis: Basis::PerGoods, ..self }
        } else {
            self
        }
    }

    /// Read where a hardness is asked for: mg/L, ppm and mmol/L are all taken as calcium carbonate.
    pub fn as_hardness(self) -> Result<Self, DimensionProblem> {
        let value = match self.dimension {
            Dimension::Hardness | Dimension::MassConcentration => self.value,
            Dimension::MassFraction => self.value * WATER_FOR_PPM,
            Dimension::AmountConcentration => self.value * MOLAR_MASS_CALCIUM_CARBONATE,
            _ => {
                return Err(DimensionProblem::new(self.dimension, &[Dimension::Hardness]));
            }
        };
        Ok(Self::new(value, Dimension::Hardness))
    }
}

/// `1:20`, goods to liquor: kilograms of liquor for each kilogram of dry goods (20). `None` unless both are above
/// zero and finite.
pub fn liquor_ratio(goods: f64, liquor: f64) -> Option<Quantity> {
    let fit = |x: f64| x.is_finite() && x > 0.0;
    (fit(goods) && fit(liquor)).then(|| Quantity::new(Interval::exact(liquor / goods), Dimension::LiquorRatio))
}
