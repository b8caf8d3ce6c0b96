//! The solver: activity coefficients and charge balance in turn until neither moves.

use super::activity::{Activities, Present, evaluate, potassium_chloride};
use super::balance::Balance;
use super::equilibrium_constants::Constants;
use super::parameters::Parameters;
use super::speciation::{Caution, NotSolved, Speciation};
use super::species::*;
use super::totals::Totals;
use super::water_slope::osmotic_slope;
use crate::water::vapour_pressure;
use core::f64::consts::LN_10;

const ROUNDS: u32 = 1500;
/// Greatest change of any logarithm between the last two rounds; the error left is smaller still.
const SETTLED: f64 = 1e-8;
const ATMOSPHERE: f64 = 101_325.0;
/// Greatest total the model is asked about, mol/kg.
const GREATEST_TOTAL: f64 = 50.0;

/// Everything that depends on temperature alone.
#[derive(Debug, Clone)]
pub struct Model {
    temperature: f64,
    slope: f64,
    constants: Constants,
    parameters: Box<Parameters>,
}

/// Solves one solution. See [`Model::solve`]; for many at one temperature build the [`Model`] once.
///
/// # Errors
/// See [`NotSolved`].
pub fn solve(totals: &Totals, temperature_k: f64) -> Result<Speciation, NotSolved> {
    Model::at(temperature_k)?.solve(totals)
}

impl Model {
    /// The model at a temperature in kelvin.
    ///
    /// # Errors
    /// [`NotSolved::Temperature`] outside 273.15–373.15 K.
    pub fn at(temperature_k: f64) -> Result<Self, NotSolved> {
        let slack = 1e-6;
        if !(273.15 - slack..=373.15 + slack).contains(&temperature_k) {
            return Err(NotSolved::Temperature(temperature_k));
        }
        Ok(Self {
            temperature: temperature_k,
            slope: osmotic_slope(temperature_k),
            constants: Constants::at(temperature_k),
            parameters: Box::new(Parameters::at(temperature_k)),
        })
    }

    /// Solves one solution at this temperature.
    ///
    /// # Errors
    /// See [`NotSolved`]; never panics, whatever the totals.
    pub fn solve(&self, totals: &Totals) -> Result<Speciation, NotSolved> {
        for total in totals.as_array() {
            if !total.is_finite() || total < 0.0 {
                return Err(NotSolved::BadTotal);
            }
            if total > GREATEST_TOTAL {
                return Err(NotSolved::TooConcentrated(total));
            }
        }
        let (mut balance, present) = Balance::new(totals, &self.constants);
        let mut m = [0.0; SPECIES];
        let mut ln_gamma = [0.0; SPECIES];
        let mut ln_water = 0.0;
        balance.ln_h = -7.0 * LN_10;
        let mut change = f64::INFINITY;
        let mut rounds = 0;
        let mut last_h = f64::INFINITY;
        while rounds < ROUNDS {
            rounds += 1;
            balance.set_activities(&ln_gamma, ln_water);
            balance.close();
            // Undamped at first; a mixture that swings is damped more and more.
            let weight = match rounds {
                0..=12 => 1.0,
                13..=60 => 0.5,
                61..=150 => 0.2,
                151..=400 => 0.05,
                _ => 0.01,
            };
            balance.compose(&ln_gamma, &mut m, totals, weight);
            let new = evaluate(&self.parameters, self.slope, &m, &present);
            change = step(&mut ln_gamma, &mut ln_water, &new, &present, weight);
            change = change.max((balance.ln_h - last_h).abs());
            last_h = balance.ln_h;
            if change < SETTLED {
                return Ok(self.describe(totals, &balance, &m, &present, rounds));
            }
        }
        // A swing too small to show in a pH is an answer all the same.
        if change < 1e-4 {
            return Ok(self.describe(totals, &balance, &m, &present, rounds));
        }
        Err(NotSolved::NoConvergence(change))
    }

    fn describe(
        &self,
        totals: &Totals,
        balance: &Balance,
        m: &[f64; SPECIES],
        present: &Present,
        rounds: u32,
    ) -> Speciation {
        // Chloride sets the scale even where there is none: a trace of it is added to the sums.
        let mut with_chloride = *present;
        with_chloride.add(CL);
        let a = evaluate(&self.parameters, self.slope, m, &with_chloride);
        let scale = a.ln_gamma[CL] - potassium_chloride(&self.parameters, self.slope, a.ionic_strength);
        let ph_unscaled = -balance.ln_h / LN_10;
        let carbon_dioxide_pressure =
            ATMOSPHERE * m[CO2] * libm::exp(a.ln_gamma[CO2] - self.constants.carbon_dioxide_gas);
        let calcite_saturation_index = (m[CA] > 0.0 && m[CO3] > 0.0).then(|| {
            let ln_product = libm::log(m[CA] * m[CO3]) + a.ln_gamma[CA] + a.ln_gamma[CO3];
            (ln_product - self.constants.calcite) / LN_10
        });
        let mut out = Speciation {
            ph: ph_unscaled - scale / LN_10,
            ph_unscaled,
            oh_molality: m[OH],
            h_molality: m[H],
            bicarbonate: m[HCO3],
            carbonate: m[CO3],
            carbon_dioxide: m[CO2],
            ammonia: m[NH3],
            ionic_strength: a.ionic_strength,
            water_activity: libm::exp(a.ln_water),
            carbon_dioxide_pressure,
            calcite_saturation_index,
            cautions: Vec::new(),
            rounds,
            pk_water: -self.constants.water / LN_10,
            pk_carbonic: self.constants.carbonic.map(|ln_k| -ln_k / LN_10),
            molality: *m,
            ln_gamma: a.ln_gamma,
            scale,
        };
        out.cautions = self.cautions(totals, &out);
        out
    }

    fn cautions(&self, totals: &Totals, s: &Speciation) -> Vec<Caution> {
        let mut list = Vec::new();
        if s.ionic_strength > 6.0 {
            list.push(Caution::BeyondModel);
        }
        if totals.citrate + totals.sulfite + totals.silicate > 1e-4 || s.molality(H3PO4) > 0.01 {
            list.push(Caution::Estimated);
        }
        if s.carbon_dioxide_pressure + vapour_pressure(self.temperature) > ATMOSPHERE
            && s.carbon_dioxide_pressure > 0.02 * ATMOSPHERE
        {
            list.push(Caution::Fizzes);
        } else if s.carbon_dioxide_pressure > 4e-3 * ATMOSPHERE {
            list.push(Caution::LosesCarbonDioxide);
        }
        if s.calcite_saturation_index.is_some_and(|index| index > 0.3) {
            list.push(Caution::ChalkForms);
        }
        list.sort_unstable();
        list
    }
}

/// Moves the activity coefficients toward the new ones; the largest change of any.
fn step(ln_gamma: &mut [f64; SPECIES], ln_water: &mut f64, new: &Activities, present: &Present, weight: f64) -> f64 {
    let mut change = 0.0_f64;
    let all = present.cations().iter().chain(present.anions()).chain(present.neutrals());
    for &i in all {
        let difference = new.ln_gamma[i] - ln_gamma[i];
        change = change.max(difference.abs());
        ln_gamma[i] += weight * difference;
    }
    let difference = new.ln_water - *ln_water;
    *ln_water += weight * difference;
    change.max(difference.abs())
}
