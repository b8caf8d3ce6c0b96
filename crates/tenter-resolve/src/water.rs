//! Water by its words and temperatures.

use tenter_quantity::{Basis, Dimension, Figure, Interval};

use crate::names::WaterWord;
use crate::recipe::Ingredient;

const ZERO_CELSIUS: f64 = 273.15;

/// What a word for water is taken to mean, K.
pub(crate) fn temperature(word: WaterWord) -> Figure {
    let (low, best, high) = word.celsius();
    let value = Interval::new(low + ZERO_CELSIUS, best + ZERO_CELSIUS, high + ZERO_CELSIUS);
    let what = match word {
        WaterWord::Cold => "temperature of cold water",
        WaterWord::Lukewarm => "temperature of lukewarm water",
        WaterWord::Warm => "temperature of warm water",
        WaterWord::Hot => "temperature of hot water",
        WaterWord::Boiling => "temperature of boiling water",
    };
    Figure::assumed(
        value,
        Dimension::Temperature,
        Dimension::Temperature.usual_unit(Basis::Absolute),
        what,
        "a word and no number; common practice, no source",
    )
}

/// The temperature of the liquids put together, weighted by volume; `None` when none has one.
pub(crate) fn mean_temperature(ingredients: &[Ingredient]) -> Option<Figure> {
    let parts: Vec<(&Figure, &Figure)> = ingredients
        .iter()
        .filter_map(|ingredient| {
            let volume = ingredient.amount.as_ref()?.volume.as_ref()?;
            Some((ingredient.temperature.as_ref()?, volume))
        })
        .collect();
    match parts.as_slice() {
        [] => ingredients.iter().find_map(|ingredient| ingredient.temperature.clone()),
        [(only, _)] => Some((*only).clone()),
        several => {
            let total: f64 = several.iter().map(|(_, volume)| volume.value.best).sum();
            let weighted = |pick: fn(Interval) -> f64| {
                several.iter().map(|(temperature, volume)| pick(temperature.value) * volume.value.best).sum::<f64>()
                    / total.max(f64::MIN_POSITIVE)
            };
            let value =
                Interval::new(weighted(|value| value.low), weighted(|value| value.best), weighted(|value| value.high));
            let inputs = several
                .iter()
                .flat_map(|(temperature, volume)| [("", (*temperature).clone()), ("", (*volume).clone())])
                .collect();
            Some(Figure::worked(
                "mean of the temperatures by volume",
                value,
                Dimension::Temperature,
                Dimension::Temperature.usual_unit(Basis::Absolute),
                inputs,
            ))
        }
    }
}
