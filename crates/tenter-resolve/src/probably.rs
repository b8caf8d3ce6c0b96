//! Guesses at what a quantity of the wrong kind was meant to be.

use std::sync::Arc;

use tenter_quantity::Dimension;

use crate::phrase::Measured;

/// What was probably meant; `None` when nothing is likely.
pub(crate) fn meant(written: &str, measured: &Measured, needed: &[Dimension]) -> Option<Arc<str>> {
    let number = written.trim_end_matches(|character: char| !character.is_ascii_digit()).trim();
    let given = measured.quantity.dimension;
    let symbol = measured.unit.symbol;
    let guess = match given {
        Dimension::Mass if symbol == "g" && needed.contains(&Dimension::MassConcentration) => {
            format!("{number} g/L")
        }
        Dimension::MassConcentration if needed == [Dimension::Mass] => format!("{number} g"),
        Dimension::Length if needed.contains(&Dimension::Time) && symbol == "m" => {
            format!("{number} min")
        }
        Dimension::TemperatureDifference if needed.contains(&Dimension::Temperature) => {
            format!("{number} °C")
        }
        Dimension::Mass if needed.contains(&Dimension::Volume) && symbol == "g" => {
            format!("{number} mL")
        }
        Dimension::Volume if needed == [Dimension::Mass] => format!("{number} g, weighed"),
        Dimension::Volume if needed.contains(&Dimension::Time) => format!("{number} min"),
        Dimension::Temperature if needed.contains(&Dimension::Time) => format!("at {number} °C"),
        Dimension::Time if needed.contains(&Dimension::Temperature) => format!("{number} °C"),
        _ => return None,
    };
    Some(guess.into())
}
