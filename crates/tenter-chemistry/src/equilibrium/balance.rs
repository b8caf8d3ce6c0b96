//! Balance of mass and charge at given activity coefficients: finds the hydrogen activity.

use super::activity::Present;
use super::equilibrium_constants::Constants;
use super::species::*;
use super::totals::Totals;

/// Most acid systems a solution can hold.
const CHAINS: usize = 9;

/// One acid with its steps, from the most to the least protonated form.
#[derive(Debug, Clone, Copy)]
struct Chain {
    forms: [usize; 4],
    steps: usize,
    ln_k: [f64; 3],
    /// Whether the first step takes up a molecule of water (carbon dioxide).
    hydrated: bool,
    total: f64,
    /// Step constants at the present activity coefficients, `m(base)·a(H)/m(acid)`.
    k: [f64; 3],
}

/// The charge balance of one solution.
#[derive(Debug, Clone)]
pub struct Balance {
    chains: [Chain; CHAINS],
    count: usize,
    carbonate_total: f64,
    calcium: f64,
    magnesium: f64,
    /// Charge of the ions that take no part in acid–base balance: positive and negative.
    fixed_positive: f64,
    fixed_negative: f64,
    ln_water: f64,
    /// Water and hydrogen at the present activity coefficients.
    water_product: f64,
    hydrogen_gamma: f64,
    /// Solution of the last balance, ln a(H⁺).
    pub ln_h: f64,
    /// Association of calcium and magnesium with carbonate.
    ln_pairs: [f64; 2],
    /// Calcium and magnesium carbonate pairs of the last round, mol/kg.
    pairs: [f64; 2],
}

const EMPTY: Chain = Chain { forms: [0; 4], steps: 0, ln_k: [0.0; 3], hydrated: false, total: 0.0, k: [0.0; 3] };

impl Balance {
    /// Sets up the balance and lists the species present.
    #[must_use]
    pub fn new(totals: &Totals, constants: &Constants) -> (Self, Present) {
        let mut present = Present::default();
        present.add(H);
        present.add(OH);
        let mut out = Self {
            chains: [EMPTY; CHAINS],
            count: 0,
            carbonate_total: totals.carbonate,
            calcium: totals.calcium,
            magnesium: totals.magnesium,
            fixed_positive: totals.sodium + totals.potassium + 2.0 * totals.calcium,
            fixed_negative: totals.chloride,
            ln_water: constants.water,
            water_product: 0.0,
            hydrogen_gamma: 1.0,
            ln_h: 0.0,
            ln_pairs: [constants.calcium_carbonate_pair, constants.magnesium_carbonate_pair],
            pairs: [0.0; 2],
        };
        let fixed = [(NA, totals.sodium), (K, totals.potassium), (CA, totals.calcium), (CL, totals.chloride)];
        for (ion, total) in fixed {
            if total > 0.0 {
                present.add(ion);
            }
        }
        if totals.carbonate > 0.0 && totals.calcium > 0.0 {
            present.add(CACO3);
        }
        if totals.carbonate > 0.0 && totals.magnesium > 0.0 {
            present.add(MGCO3);
        }
        // Magnesium gives off a proton from its water, like a weak acid.
        let magnesium = [constants.magnesium_hydrolysis];
        let acids: [(f64, &[usize], &[f64], bool); CHAINS] = [
            (totals.carbonate, &[CO2, HCO3, CO3], &constants.carbonic, true),
            (totals.acetate, &[ACETIC, ACETATE], &constants.acetic, false),
            (totals.citrate, &[H3CIT, H2CIT, HCIT, CIT], &constants.citric, false),
            (totals.phosphate, &[H3PO4, H2PO4, HPO4, PO4], &constants.phosphoric, false),
            (totals.ammonia, &[NH4, NH3], &constants.ammonium, false),
            (totals.sulfite, &[SO2, HSO3, SO3], &constants.sulfurous, false),
            (totals.sulfate, &[HSO4, SO4], &constants.bisulfate, false),
            (totals.silicate, &[H4SIO4, H3SIO4, H2SIO4], &constants.silicic, false),
            (totals.magnesium, &[MG, MGOH], &magnesium, true),
        ];
        for (total, forms, steps, hydrated) in acids {
            if total <= 0.0 {
                continue;
            }
            let mut chain = EMPTY;
            chain.steps = steps.len();
            chain.total = total;
            chain.hydrated = hydrated;
            for (slot, form) in chain.forms.iter_mut().zip(forms) {
                *slot = *form;
                present.add(*form);
            }
            for (slot, k) in chain.ln_k.iter_mut().zip(steps) {
                *slot = *k;
            }
            if let Some(slot) = out.chains.get_mut(out.count) {
                *slot = chain;
                out.count += 1;
            }
        }
        (out, present)
    }

    /// Takes new activity coefficients.
    pub fn set_activities(&mut self, ln_gamma: &[f64; SPECIES], ln_water_activity: f64) {
        self.hydrogen_gamma = libm::exp(ln_gamma[H]);
        self.water_product = libm::exp(self.ln_water + ln_water_activity - ln_gamma[OH]);
        for chain in self.chains.iter_mut().take(self.count) {
            for i in 0..chain.steps {
                let mut ln_k = chain.ln_k[i] + ln_gamma[chain.forms[i]] - ln_gamma[chain.forms[i + 1]];
                if i == 0 && chain.hydrated {
                    ln_k += ln_water_activity;
                }
                chain.k[i] = libm::exp(ln_k);
            }
        }
    }

    /// Positive and negative charge at ln a(H) and their slopes by ln a(H).
    fn charge(&self, h: f64) -> (f64, f64, f64, f64) {
        let proton = h / self.hydrogen_gamma;
        let hydroxide = self.water_product / h;
        let (mut plus, mut plus_slope) = (self.fixed_positive + proton, proton);
        let (mut minus, mut minus_slope) = (self.fixed_negative + hydroxide, -hydroxide);
        for chain in self.chains.iter().take(self.count) {
            let mut term = 1.0;
            let (mut sum, mut steps) = (1.0, 0.0);
            let top = CHARGE[chain.forms[0]];
            let (mut positive, mut positive_steps) = (top.max(0.0), 0.0);
            let (mut negative, mut negative_steps) = ((-top).max(0.0), 0.0);
            for i in 0..chain.steps {
                term *= chain.k[i] / h;
                let lost = (i + 1) as f64;
                let z = CHARGE[chain.forms[i + 1]];
                sum += term;
                steps += lost * term;
                if z > 0.0 {
                    positive += z * term;
                    positive_steps += lost * z * term;
                } else {
                    negative -= z * term;
                    negative_steps -= lost * z * term;
                }
            }
            let mean = steps / sum;
            let share = chain.total / sum;
            plus += share * positive;
            plus_slope -= share * (positive_steps - mean * positive);
            minus += share * negative;
            minus_slope -= share * (negative_steps - mean * negative);
        }
        (plus, plus_slope, minus, minus_slope)
    }

    /// Finds ln a(H) that balances the charge, by Newton's method on the ratio of positive to
    /// negative charge inside a bracket that always shrinks.
    pub fn close(&mut self) {
        let (mut low, mut high) = (-80.0_f64, 20.0_f64);
        let mut u = self.ln_h.clamp(low, high);
        for _ in 0..200 {
            let (plus, plus_slope, minus, minus_slope) = self.charge(libm::exp(u));
            let imbalance = plus - minus;
            if imbalance > 0.0 {
                high = u;
            } else if imbalance < 0.0 {
                low = u;
            } else {
                break;
            }
            let near = imbalance.abs() < 0.05 * plus;
            let step = if near {
                -imbalance / (plus_slope - minus_slope)
            } else {
                -libm::log(plus / minus) / (plus_slope / plus - minus_slope / minus)
            };
            let mut next = u + step;
            if !next.is_finite() || next <= low || next >= high {
                next = 0.5 * (low + high);
            }
            let change = (next - u).abs();
            u = next;
            // Newton doubles the figures: after a step this small nothing is left to find.
            if change < 1e-7 || high - low < 1e-13 {
                break;
            }
        }
        self.ln_h = u;
    }

    /// Composition at the present hydrogen activity; also brings the ion pairs of calcium and
    /// magnesium up to date, which the next balance uses, by the
    /// share `weight` of the way.
    pub fn compose(&mut self, ln_gamma: &[f64; SPECIES], m: &mut [f64; SPECIES], totals: &Totals, weight: f64) {
        let h = libm::exp(self.ln_h);
        m[NA] = totals.sodium;
        m[K] = totals.potassium;
        m[CL] = totals.chloride;
        m[H] = h / self.hydrogen_gamma;
        m[OH] = self.water_product / h;
        for chain in self.chains.iter().take(self.count) {
            let mut terms = [1.0; 4];
            let mut sum = 1.0;
            for i in 0..chain.steps {
                terms[i + 1] = terms[i] * chain.k[i] / h;
                sum += terms[i + 1];
            }
            for i in 0..=chain.steps {
                m[chain.forms[i]] = chain.total * terms[i] / sum;
            }
        }
        if self.calcium > 0.0 || self.magnesium > 0.0 {
            self.pair(ln_gamma, m, weight);
        }
    }

    /// Calcium and magnesium pairs. At a fixed hydrogen activity the free carbonate `c` solves
    /// `c·A + ΣM·K·c/(d + K·c) = total`, whose left side rises and bends down, so Newton from zero
    /// climbs to the root without overshooting.
    fn pair(&mut self, ln_gamma: &[f64; SPECIES], m: &mut [f64; SPECIES], weight: f64) {
        let hydrolysis = if m[MG] > 0.0 { m[MGOH] / m[MG] } else { 0.0 };
        let free_carbonate = m[CO3];
        let (mut calcium_pair, mut magnesium_pair) = (0.0, 0.0);
        let mut free = 0.0;
        let all = m[CO2] + m[HCO3] + m[CO3];
        if self.carbonate_total > 0.0 && free_carbonate > 0.0 && all > 0.0 {
            let a = all / free_carbonate;
            let kc = libm::exp(self.ln_pairs[0] + ln_gamma[CA] + ln_gamma[CO3] - ln_gamma[CACO3]);
            let km = libm::exp(self.ln_pairs[1] + ln_gamma[MG] + ln_gamma[CO3] - ln_gamma[MGCO3]);
            let d = 1.0 + hydrolysis;
            for _ in 0..100 {
                let (dc, dm) = (1.0 + kc * free, d + km * free);
                let f =
                    free * a + self.calcium * kc * free / dc + self.magnesium * km * free / dm - self.carbonate_total;
                let slope = a + self.calcium * kc / (dc * dc) + self.magnesium * km * d / (dm * dm);
                let step = -f / slope;
                free = (free + step).max(0.0);
                if step.abs() <= 1e-14 * free {
                    break;
                }
            }
            calcium_pair = self.calcium * kc * free / (1.0 + kc * free);
            magnesium_pair = self.magnesium * km * free / (d + km * free);
        }
        // The balance of charge lags a round behind the pairs, so they are moved only part of the way
        // in a mixture that swings.
        let [calcium_before, magnesium_before] = self.pairs;
        let calcium_pair = calcium_before + weight * (calcium_pair - calcium_before);
        let magnesium_pair = magnesium_before + weight * (magnesium_pair - magnesium_before);
        self.pairs = [calcium_pair, magnesium_pair];
        let magnesium_free = (self.magnesium - magnesium_pair).max(0.0) / (1.0 + hydrolysis);
        m[CA] = (self.calcium - calcium_pair).max(0.0);
        m[MG] = magnesium_free;
        m[MGOH] = magnesium_free * hydrolysis;
        m[CACO3] = calcium_pair;
        m[MGCO3] = magnesium_pair;
        let left = (self.carbonate_total - calcium_pair - magnesium_pair).max(0.0);
        self.fixed_positive = m[NA] + m[K] + 2.0 * m[CA];
        for chain in self.chains.iter_mut().take(self.count) {
            if chain.forms[0] == CO2 {
                let ratio = if all > 0.0 { left / all } else { 0.0 };
                chain.total = left;
                m[CO2] *= ratio;
                m[HCO3] *= ratio;
                m[CO3] *= ratio;
            } else if chain.forms[0] == MG {
                chain.total = (self.magnesium - magnesium_pair).max(0.0);
            }
        }
    }
}
