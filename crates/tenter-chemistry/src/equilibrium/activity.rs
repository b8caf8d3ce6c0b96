//! Activity coefficients and water activity by the Pitzer equations in the form of Harvie, Møller
//! & Weare 1984, Geochim. Cosmochim. Acta 48:723 (b = 1.2, Eθ and Eθ′ included).

use super::electrostatic::Electrostatic;
use super::parameters::Parameters;
use super::species::*;

const B: f64 = 1.2;
/// Molar mass of water, kg/mol.
const WATER_MOLAR_MASS: f64 = 0.01801528;
/// The equations are fitted to at most about this ionic strength (mol/kg); above it the
/// coefficients are held at the value of the same solution diluted to it.
pub const STRENGTH_LIMIT: f64 = 12.0;

/// Which species a solution can hold, as short lists, so that the sums skip the rest.
#[derive(Debug, Clone, Copy, Default)]
pub struct Present {
    cations: [usize; CATIONS],
    cation_count: usize,
    anions: [usize; ANIONS],
    anion_count: usize,
    neutrals: [usize; NEUTRALS],
    neutral_count: usize,
    greatest_charge: f64,
    two_two: bool,
    /// One bit for each species.
    mask: u64,
}

impl Present {
    /// Adds a species.
    pub fn add(&mut self, species: usize) {
        let (list, count): (&mut [usize], &mut usize) = if species < CATIONS {
            (&mut self.cations, &mut self.cation_count)
        } else if species < IONS {
            (&mut self.anions, &mut self.anion_count)
        } else {
            (&mut self.neutrals, &mut self.neutral_count)
        };
        let already = list.iter().take(*count).any(|s| *s == species);
        if !already && let Some(slot) = list.get_mut(*count) {
            *slot = species;
            *count += 1;
        }
        self.mask |= 1 << species;
        self.greatest_charge = self.greatest_charge.max(CHARGE[species].abs());
        if species == CA || species == MG {
            self.two_two = true;
        }
    }

    /// Whether three species are all present.
    #[inline]
    #[must_use]
    pub fn has_all(&self, i: usize, j: usize, k: usize) -> bool {
        let wanted = (1_u64 << i) | (1 << j) | (1 << k);
        self.mask & wanted == wanted
    }

    /// Cations present.
    #[must_use]
    pub fn cations(&self) -> &[usize] {
        &self.cations[..self.cation_count]
    }

    /// Anions present.
    #[must_use]
    pub fn anions(&self) -> &[usize] {
        &self.anions[..self.anion_count]
    }

    /// Neutral molecules present.
    #[must_use]
    pub fn neutrals(&self) -> &[usize] {
        &self.neutrals[..self.neutral_count]
    }
}

/// What one evaluation gives.
#[derive(Debug, Clone, Copy)]
pub struct Activities {
    /// Natural logarithm of each activity coefficient (molal scale); zero where absent.
    pub ln_gamma: [f64; SPECIES],
    /// Natural logarithm of the water activity.
    pub ln_water: f64,
    /// Ionic strength, mol/kg.
    pub ionic_strength: f64,
}

/// `g(x)`, `g′(x)` of the second virial terms and `exp(−x)`.
fn shape(x: f64) -> (f64, f64, f64) {
    let e = libm::exp(-x);
    if x < 0.02 {
        let g = 1.0 + x * (-2.0 / 3.0 + x * (0.25 - x / 15.0));
        let slope = x * (-1.0 / 3.0 + x * (0.25 - x * 0.1));
        return (g, slope, e);
    }
    let square = x * x;
    let g = 2.0 * (1.0 - (1.0 + x) * e) / square;
    let slope = -2.0 * (1.0 - (1.0 + x + 0.5 * square) * e) / square;
    (g, slope, e)
}

/// Ionic strength of a composition, mol/kg.
#[must_use]
pub fn ionic_strength(molality: &[f64; SPECIES], present: &Present) -> f64 {
    let sum = |list: &[usize]| -> f64 { list.iter().map(|&i| molality[i] * CHARGE[i] * CHARGE[i]).sum() };
    0.5 * (sum(present.cations()) + sum(present.anions()))
}

/// Evaluates the activity model. `slope` is Aφ.
#[must_use]
pub fn evaluate(parameters: &Parameters, slope: f64, composition: &[f64; SPECIES], present: &Present) -> Activities {
    let true_strength = ionic_strength(composition, present).max(1e-12);
    let scale = (STRENGTH_LIMIT / true_strength).min(1.0);
    let strength = true_strength * scale;
    let mut m = *composition;
    if scale < 1.0 {
        for x in &mut m {
            *x *= scale;
        }
    }
    let (cations, anions) = (present.cations(), present.anions());
    let root = strength.sqrt();
    let electrostatic = Electrostatic::at(slope, strength, present.greatest_charge);
    let usual = shape(2.0 * root);
    let (low, high) = if present.two_two { (shape(1.4 * root), shape(12.0 * root)) } else { (usual, (0.0, 0.0, 0.0)) };
    let mut charge_sum = 0.0;
    let mut total = 0.0;
    for &i in cations.iter().chain(anions) {
        charge_sum += m[i] * CHARGE[i].abs();
        total += m[i];
    }
    let ln_term = libm::log1p(B * root);
    let debye = root / (1.0 + B * root);
    let mut f = -slope * (debye + 2.0 / B * ln_term);
    let mut osmotic = -slope * strength * debye;
    let mut third = 0.0;
    let mut ln_gamma = [0.0; SPECIES];

    for &c in cations {
        for &a in anions {
            let p = parameters.pair(c, a);
            let (g, dg, e) = if p.alpha1 < 1.7 { low } else { usual };
            let b = p.beta0 + p.beta1 * g + p.beta2 * high.0;
            let b_slope = (p.beta1 * dg + p.beta2 * high.1) / strength;
            let b_phi = p.beta0 + p.beta1 * e + p.beta2 * high.2;
            let product = m[c] * m[a];
            let pair = 2.0 * b + charge_sum * p.c;
            ln_gamma[c] += m[a] * pair;
            ln_gamma[a] += m[c] * pair;
            f += product * b_slope;
            third += product * p.c;
            osmotic += product * (b_phi + charge_sum * p.c);
        }
    }
    let mut like = |list: &[usize]| {
        for (at, &i) in list.iter().enumerate() {
            for &j in list.iter().skip(at + 1) {
                let (e_theta, e_slope) = electrostatic.pair(CHARGE[i].abs(), CHARGE[j].abs());
                let phi = parameters.theta(i, j) + e_theta;
                let product = m[i] * m[j];
                ln_gamma[i] += 2.0 * m[j] * phi;
                ln_gamma[j] += 2.0 * m[i] * phi;
                f += product * e_slope;
                osmotic += product * (phi + strength * e_slope);
            }
        }
    };
    like(cations);
    like(anions);
    for &(i, j, k, psi) in parameters.psi() {
        if present.has_all(i, j, k) {
            ln_gamma[i] += m[j] * m[k] * psi;
            ln_gamma[j] += m[i] * m[k] * psi;
            ln_gamma[k] += m[i] * m[j] * psi;
            osmotic += m[i] * m[j] * m[k] * psi;
        }
    }
    for &i in cations.iter().chain(anions) {
        let z = CHARGE[i];
        ln_gamma[i] += z * z * f + z.abs() * third;
    }
    for &n in present.neutrals() {
        total += m[n];
        for &i in cations.iter().chain(anions) {
            let lambda = parameters.lambda(n, i);
            if lambda != 0.0 {
                ln_gamma[n] += 2.0 * m[i] * lambda;
                ln_gamma[i] += 2.0 * m[n] * lambda;
                osmotic += m[n] * m[i] * lambda;
            }
        }
    }
    // Concentrations far outside any fit must not overflow.
    for x in &mut ln_gamma {
        *x = x.clamp(-40.0, 40.0);
    }
    let ln_water = (-WATER_MOLAR_MASS * (total + 2.0 * osmotic) / scale).clamp(-5.0, 0.5);
    Activities { ln_gamma, ln_water, ionic_strength: true_strength }
}

/// Mean activity coefficient (natural logarithm) of pure potassium chloride at an ionic strength,
/// for the MacInnes convention.
#[must_use]
pub fn potassium_chloride(parameters: &Parameters, slope: f64, strength: f64) -> f64 {
    let i = strength.clamp(1e-12, STRENGTH_LIMIT);
    let root = i.sqrt();
    let (g, dg, _) = shape(2.0 * root);
    let p = parameters.pair(K, CL);
    let f = -slope * (root / (1.0 + B * root) + 2.0 / B * libm::log1p(B * root)) + i * p.beta1 * dg;
    let b = p.beta0 + p.beta1 * g;
    f + i * (2.0 * b + 2.0 * i * p.c) + i * i * p.c
}
