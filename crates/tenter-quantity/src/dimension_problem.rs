//! A quantity of the wrong kind, told so that the writer sees what was meant.

use std::fmt;

use crate::dimension::Dimension::{self, self as D};

/// A quantity of the wrong kind: what was given, what is needed, what was probably meant.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct DimensionProblem {
    /// The kind that was written.
    pub given: Dimension,
    /// The kinds that would do.
    pub needed: Vec<Dimension>,
    /// What the writer probably meant, as a half-sentence: "write `g/L`, grams in each litre".
    pub probably: Option<String>,
}

impl DimensionProblem {
    /// Works out what was probably meant from the two kinds alone.
    pub fn new(given: Dimension, needed: &[Dimension]) -> Self {
        let probably = needed.iter().find_map(|&kind| probably_meant(given, kind)).map(str::to_owned);
        Self { given, needed: needed.to_vec(), probably }
    }

    /// With a better guess at what was meant, from one who sees the words around it.
    pub fn meaning(mut self, probably: impl Into<String>) -> Self {
        self.probably = Some(probably.into());
        self
    }
}

impl fmt::Display for DimensionProblem {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "this is {} (as in {})", self.given, self.given.example())?;
        for (position, kind) in self.needed.iter().enumerate() {
            let link = if position == 0 { ", but needed is" } else { " or" };
            write!(f, "{link} {} (as in {})", kind, kind.example())?;
        }
        match &self.probably {
            Some(meant) => write!(f, "; probably meant: {meant}"),
            None => Ok(()),
        }
    }
}

impl std::error::Error for DimensionProblem {}

fn probably_meant(given: Dimension, needed: Dimension) -> Option<&'static str> {
    Some(match (given, needed) {
        (D::PerCent, D::MassFraction) => {
            "a share of the dry weight of the goods, written `% owg`, or a share by mass, `% w/w`"
        }
        (D::PerCent, D::MassConcentration) => "grams in 100 mL, written `% w/v`, or a share of the goods, `% owg`",
        (D::PerCent, D::Mass) => "a share of the dry weight of the goods, written `% owg`",
        (D::PerCent, D::VolumeFraction) => "a share by volume, written `% v/v`",
        (D::Mass, D::MassConcentration) => "a mass in each litre, written `g/L`",
        (D::MassConcentration, D::Mass) => "a mass in all, written in `g` without `/L`",
        (D::MassConcentration, D::MassFraction) => "a share of the goods, written `% owg`",
        (D::Volume, D::VolumeFraction) => "a volume in each litre, written `mL/L`",
        (D::Volume, D::Time | D::Temperature) => "`min`, `h` or `°C`; this unit is a volume",
        (D::Volume, D::Mass) => "a mass in `g`; a volume of powder needs its bulk density to become one",
        (D::Mass, D::Volume) => "a volume in `mL` or `L`; an `oz` of liquid is written `fl oz`",
        (D::None, D::Temperature) => "a temperature with its unit, `°C` or `°F`",
        (D::None, D::Time) => "a time with its unit, `min` or `h`",
        (D::None, D::Mass) => "a mass with its unit, `g`",
        (D::None, D::Volume) => "a volume with its unit, `mL` or `L`",
        (D::None, D::Piece) => "a count, written `6 pieces`",
        (D::Time, D::Temperature) => "`°C` or `°F`; the unit written is one of time",
        (D::Temperature, D::Time) => "`min` or `h`; the unit written is one of temperature",
        (D::Length, D::Time) => "minutes, written `min`; `m` is a metre",
        (D::Length, D::AmountConcentration) => "moles in a litre, written `M` or `mol/L`",
        (D::AmountConcentration, D::Length) => "a length in metres, written `m`",
        (D::LiquorRatio, D::Time) => "a length of time, written `90 min`",
        (D::VolumePerMass, D::LiquorRatio) => "a liquor ratio, written `1:20`",
        (D::MassFraction | D::MassConcentration, D::Hardness) => "a hardness, written `mg/L CaCO3`",
        (D::Part, D::Mass | D::Volume) => "an amount in `g` or `mL`; parts need a whole to share",
        _ => return None,
    })
}
