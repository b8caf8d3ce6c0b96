//! How full of each material a liquor is, worked out when somebody asks.

use tenter_chemistry::solubility::{Solute, dissolving_temperature, solubility};
use tenter_quantity::Interval;
use tenter_resolve::Recipe;
use tenter_resolve::recipe::MaterialId;

use crate::contents::Contents;

/// Saturation of one material: 1 when the liquor holds as much as it can.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Saturation {
    /// Which.
    pub material: MaterialId,
    /// How full, 1 = saturated.
    pub full: Interval,
    /// Dissolves in a kilogram of water at that temperature, kg of the anhydrous substance.
    pub dissolves: Interval,
    /// Coolest temperature at which all of it (best value) dissolves, K; `None` where no temperature of the table will do.
    pub dissolves_at: Option<f64>,
}

/// Saturation of every material with a table, in pure water: salts together dissolve less of each (common ions), which is
/// left out. Materials that are the same substance (crystals and dry) count by themselves.
pub fn saturation(recipe: &Recipe, contents: &Contents, temperature: Interval) -> Vec<Saturation> {
    let water = contents.water_mass();
    if water.best <= 0.0 {
        return Vec::new();
    }
    contents
        .parts
        .iter()
        .filter_map(|(id, figure)| {
            let entry = recipe.materials.get(id.0)?.reference?;
            let solute = Solute::from_formula(entry.solubility.as_deref()?)?;
            let anhydrous = entry.anhydrous.as_ref().map_or(1.0, |form| form.fraction);
            let at = |kelvin: f64| solubility(solute, kelvin);
            let (cold, middle, warm) = (at(temperature.low), at(temperature.best), at(temperature.high));
            let dissolves = Interval::new(cold.min(warm), middle, cold.max(warm));
            let content = figure.value * anhydrous / water.clamp_low(1e-9);
            let dissolves_at = dissolving_temperature(solute, content.best);
            Some(Saturation { material: *id, full: content / dissolves, dissolves, dissolves_at })
        })
        .collect()
}
