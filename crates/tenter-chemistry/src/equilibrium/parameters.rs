//! Interaction coefficients evaluated at one temperature, laid out for the activity sums.

use super::coefficients::{BINARY, LAMBDA, PSI, THETA};
use super::species::*;

/// One cation–anion pair at one temperature.
#[derive(Debug, Clone, Copy)]
pub struct Pair {
    /// β⁰.
    pub beta0: f64,
    /// β¹.
    pub beta1: f64,
    /// Exponent of β¹.
    pub alpha1: f64,
    /// β², exponent 12.
    pub beta2: f64,
    /// `Cφ/(2·√|z₊·z₋|)`.
    pub c: f64,
}

const NO_PAIR: Pair = Pair { beta0: 0.0, beta1: 0.0, alpha1: 2.0, beta2: 0.0, c: 0.0 };

/// Every coefficient at one temperature.
#[derive(Debug, Clone)]
pub struct Parameters {
    pairs: [[Pair; ANIONS]; CATIONS],
    theta: [[f64; IONS]; IONS],
    /// ψ in the order of the table, with the three species.
    psi: [(usize, usize, usize, f64); PSI.len()],
    lambda: [[f64; IONS]; NEUTRALS],
}

fn get(row: &[f64], i: usize) -> f64 {
    row.get(i).copied().unwrap_or(0.0)
}

impl Parameters {
    /// Coefficients at a temperature in kelvin.
    #[must_use]
    pub fn at(t: f64) -> Self {
        let reference = 298.15;
        let terms = [1.0, 1.0 / t - 1.0 / reference, libm::log(t / reference), t - reference];
        let value = |a: &[f64; 4]| -> f64 { a[0] * terms[0] + a[1] * terms[1] + a[2] * terms[2] + a[3] * terms[3] };
        let mut out = Self {
            pairs: [[NO_PAIR; ANIONS]; CATIONS],
            theta: [[0.0; IONS]; IONS],
            psi: [(0, 0, 0, 0.0); PSI.len()],
            lambda: [[0.0; IONS]; NEUTRALS],
        };
        for row in BINARY {
            let charges =
                CHARGE.get(row.cation).copied().unwrap_or(1.0) * CHARGE.get(row.anion).copied().unwrap_or(-1.0).abs();
            if let Some(p) = out.pairs.get_mut(row.cation).and_then(|r| r.get_mut(row.anion.wrapping_sub(CATIONS))) {
                *p = Pair {
                    beta0: value(&row.beta0),
                    beta1: value(&row.beta1),
                    alpha1: row.alpha1,
                    beta2: value(&row.beta2),
                    c: value(&row.cphi) / (2.0 * charges.sqrt()),
                };
            }
        }
        for (i, j, a, _) in THETA {
            let v = value(a);
            out.set_theta(*i, *j, v);
            out.set_theta(*j, *i, v);
        }
        for (slot, (i, j, k, a, _)) in out.psi.iter_mut().zip(PSI) {
            *slot = (*i, *j, *k, value(a));
        }
        for (n, i, a, _) in LAMBDA {
            if let Some(l) = out.lambda.get_mut(n.wrapping_sub(IONS)).and_then(|r| r.get_mut(*i)) {
                *l = value(a);
            }
        }
        out
    }

    fn set_theta(&mut self, i: usize, j: usize, v: f64) {
        if let Some(t) = self.theta.get_mut(i).and_then(|r| r.get_mut(j)) {
            *t = v;
        }
    }

    /// The pair of a cation and an anion (positions in the species array).
    #[inline]
    #[must_use]
    pub fn pair(&self, cation: usize, anion: usize) -> &Pair {
        self.pairs.get(cation).and_then(|r| r.get(anion.wrapping_sub(CATIONS))).unwrap_or(&NO_PAIR)
    }

    /// θ of two ions of like sign.
    #[inline]
    #[must_use]
    pub fn theta(&self, i: usize, j: usize) -> f64 {
        self.theta.get(i).map_or(0.0, |r| get(r, j))
    }

    /// ψ of two ions of like sign with one of the other, as rows.
    #[inline]
    #[must_use]
    pub fn psi(&self) -> &[(usize, usize, usize, f64)] {
        &self.psi
    }

    /// λ of a neutral molecule with an ion.
    #[inline]
    #[must_use]
    pub fn lambda(&self, neutral: usize, ion: usize) -> f64 {
        self.lambda.get(neutral.wrapping_sub(IONS)).map_or(0.0, |r| get(r, ion))
    }
}
