//! pH of a liquor, worked out only when somebody asks.

use std::sync::LazyLock;

use tenter_chemistry::equilibrium::{Caution, Model, Totals, realistic_spread};
use tenter_quantity::Interval;
use tenter_resolve::recipe::MaterialId;

use crate::contents::Contents;
use crate::substances::Substances;

/// Share of the water up to which a material that the model does not know is left out.
const UNKNOWN_TRACE: f64 = 1e-4;

/// Known alkali or acid, mol to a kilogram of materials whose effect on the pH is not known, from which those hardly count:
/// alum, among the strongest of them, gives off some 6 mol of acid a kilogram.
const KNOWN_ENOUGH: f64 = 20.0;

/// The pH of a liquor at its temperature.
#[derive(Clone, Debug, PartialEq)]
pub struct Acidity {
    /// pH with everything that is uncertain: amounts, water, temperature, and the realistic spread of real solutions.
    pub ph: Interval,
    /// The solver's own figure for the best values, without spread.
    pub solved: f64,
    /// Realistic half width of the model.
    pub spread: f64,
    /// What a reader of the pH must know.
    pub cautions: Vec<Caution>,
    /// Total molalities of the best values, mol per kg of water.
    pub totals: Totals,
    /// Water that dissolves, best value, kg.
    pub water: f64,
    /// Temperature of the best value, K.
    pub temperature: f64,
}

/// 25 °C, at which the pH of every reaction is told.
pub(crate) const AT_25: f64 = 298.15;
static MODEL_AT_25: LazyLock<Option<Model>> = LazyLock::new(|| Model::at(AT_25).ok());

/// Which end of an interval.
#[derive(Clone, Copy, PartialEq)]
enum End {
    Low,
    Best,
    High,
}

fn at(value: Interval, end: End) -> f64 {
    match end {
        End::Low => value.low,
        End::Best => value.best,
        End::High => value.high,
    }
}

/// Works the pH out; `None` where there is no liquor to speak of, something in it that the model does not know, or no
/// answer.
///
/// The low end takes alkalis at their least, acids at their most and the warmer temperature, the high end the other
/// way round, each with the least and the most water.
///
/// `decarbonated` is the share of bicarbonate that heat has turned into carbonate (2 HCO₃⁻ → CO₃²⁻ + CO₂ + H₂O).
pub fn acidity(
    contents: &Contents,
    substances: &Substances,
    temperature: Interval,
    decarbonated: Interval,
) -> Option<Acidity> {
    let water = water(contents, substances);
    if water.best <= 0.0 || water.best < 0.05 * contents.total_mass().best {
        return None;
    }
    // Beyond a trace of what the model does not know there is no saying.
    let unknown = |id: MaterialId| substances.get(id).is_some_and(|substance| substance.unmodelled);
    if contents.parts.iter().any(|(id, mass)| unknown(*id) && mass.value.best > UNKNOWN_TRACE * water.best) {
        return None;
    }
    let doubtful: f64 = contents
        .parts
        .iter()
        .filter(|(id, _)| substances.get(*id).is_some_and(|substance| substance.doubtful))
        .map(|(_, mass)| mass.value.best)
        .sum();
    if doubtful > UNKNOWN_TRACE * water.best {
        let known = substances.base(contents).best.max(substances.acid(contents).best);
        if known < KNOWN_ENOUGH * doubtful {
            return None;
        }
    }
    let kelvin = temperature.max(Interval::exact(273.15)).min(Interval::exact(373.15));
    let lost = decarbonated;
    let totals = totals(contents, substances, (End::Best, End::Best), lost, water.best);
    // A model for a temperature costs as much as solving with it: one for each temperature, not one for each corner.
    let own;
    let model = if kelvin.best == AT_25 {
        MODEL_AT_25.as_ref()?
    } else {
        own = Model::at(kelvin.best).ok()?;
        &own
    };
    let solved = model.solve(&totals).ok()?;
    let spread = realistic_spread(&totals, kelvin.best);
    let (mut low, mut high) = (solved.ph, solved.ph);
    let exact =
        water.is_exact() && kelvin.is_exact() && contents.parts.iter().all(|(_, figure)| figure.value.is_exact());
    if !exact {
        let other = |end: f64| if end == kelvin.best { None } else { Model::at(end).ok() };
        let (warm, cool) = (other(kelvin.high), other(kelvin.low));
        let (warm, cool) = (warm.as_ref().unwrap_or(model), cool.as_ref().unwrap_or(model));
        let waters = [water.low.max(0.05 * water.best), water.high];
        for water in waters.into_iter().take(if water.is_exact() { 1 } else { 2 }) {
            let weak = self::totals(contents, substances, (End::Low, End::High), lost, water);
            if let Ok(solved) = warm.solve(&weak) {
                low = low.min(solved.ph);
            }
            let strong = self::totals(contents, substances, (End::High, End::Low), lost, water);
            if let Ok(solved) = cool.solve(&strong) {
                high = high.max(solved.ph);
            }
        }
    }
    Some(Acidity {
        ph: Interval::new(low - spread, solved.ph, high + spread),
        solved: solved.ph,
        spread,
        cautions: solved.cautions,
        totals,
        water: water.best,
        temperature: kelvin.best,
    })
}

/// Water that dissolves: plain water and what solutions bring, kg.
fn water(contents: &Contents, substances: &Substances) -> Interval {
    let brought: Interval = contents
        .parts
        .iter()
        .filter_map(|(id, figure)| {
            let substance = substances.get(*id).filter(|substance| substance.liquid)?;
            Some(figure.value * (Interval::ONE - substance.purity).clamp_low(0.0))
        })
        .sum();
    contents.water_mass() + brought
}

fn totals(
    contents: &Contents,
    substances: &Substances,
    (bases, acids): (End, End),
    decarbonated: Interval,
    water: f64,
) -> Totals {
    let mut sum = Totals::default();
    for (id, figure) in &contents.parts {
        let Some(substance) = substances.get(*id) else {
            continue;
        };
        let Some(ions) = &substance.ions else { continue };
        let end = if substance.acid.high > 0.0 {
            acids
        } else if substance.base.high > 0.0 {
            bases
        } else {
            End::Best
        };
        let moles = at(figure.value, end) / water;
        sum = sum.plus(ions, moles);
        if substance.bicarbonate.high > 0.0 && decarbonated.high > 0.0 {
            // Half the carbon dioxide of what was turned into carbonate has left.
            let gone = 0.5 * at(decarbonated, bases) * moles * at(substance.bicarbonate, End::Best);
            sum.carbonate = (sum.carbonate - gone).max(0.0);
        }
    }
    // The model stops at 50 mol/kg; anything near is powder in a little water, saturated long before.
    let most = sum.as_array().into_iter().fold(0.0_f64, f64::max);
    if most > 12.0 { sum.scaled(12.0 / most) } else { sum }
}
