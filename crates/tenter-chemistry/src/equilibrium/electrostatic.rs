//! Electrostatic mixing of unlike charges of the same sign, Eθ and its derivative.
//!
//! Pitzer 1975, J. Solution Chem. 4:249, with his closed form
//! `J(x) = x / (4 + 4.581·x^−0.7237·exp(−0.0120·x^0.528))`.
//! J is read from a table in √x by cubic Hermite interpolation, because the three powers of the
//! closed form would otherwise take most of the time of a solution.

use std::sync::OnceLock;

const STEP: f64 = 0.01;
const POINTS: usize = 1401;

struct Table {
    value: Vec<f64>,
    slope: Vec<f64>,
}

/// The closed form and its derivative with respect to x.
fn closed_form(x: f64) -> (f64, f64) {
    if x <= 0.0 {
        return (0.0, 0.0);
    }
    let exponent = -0.0120 * libm::pow(x, 0.528);
    let tail = 4.581 * libm::pow(x, -0.7237) * libm::exp(exponent);
    let denominator = 4.0 + tail;
    let tail_slope = tail * (-0.7237 + 0.528 * exponent) / x;
    let value = x / denominator;
    (value, (1.0 - value * tail_slope) / denominator)
}

fn table() -> &'static Table {
    static TABLE: OnceLock<Table> = OnceLock::new();
    TABLE.get_or_init(|| {
        let mut value = Vec::with_capacity(POINTS);
        let mut slope = Vec::with_capacity(POINTS);
        for i in 0..POINTS {
            let root = STEP * i as f64;
            let (j, dj) = closed_form(root * root);
            value.push(j);
            slope.push(2.0 * root * dj);
        }
        Table { value, slope }
    })
}

/// `J(x)` and `x·J′(x)`.
fn j_and_slope(x: f64) -> (f64, f64) {
    let root = x.max(0.0).sqrt();
    let position = root / STEP;
    let i = position as usize;
    let t = table();
    let (Some(&y0), Some(&y1), Some(&d0), Some(&d1)) =
        (t.value.get(i), t.value.get(i + 1), t.slope.get(i), t.slope.get(i + 1))
    else {
        let (j, dj) = closed_form(x);
        return (j, x * dj);
    };
    let u = position - i as f64;
    let (m0, m1) = (d0 * STEP, d1 * STEP);
    let rise = y1 - y0;
    let (a, b) = (m0 + m1 - 2.0 * rise, 3.0 * rise - 2.0 * m0 - m1);
    let value = y0 + u * (m0 + u * (b + u * a));
    let slope = (m0 + u * (2.0 * b + 3.0 * u * a)) / STEP;
    (value, 0.5 * root * slope)
}

/// Eθ and Eθ′ for the charge pairs 1–2, 1–3 and 2–3, at one ionic strength.
#[derive(Debug, Clone, Copy, Default)]
pub struct Electrostatic {
    theta: [f64; 3],
    slope: [f64; 3],
}

impl Electrostatic {
    /// `slope_a` is Aφ, `ionic_strength` in mol/kg, `greatest_charge` the largest |z| present.
    #[must_use]
    pub fn at(slope_a: f64, ionic_strength: f64, greatest_charge: f64) -> Self {
        let mut out = Self::default();
        if greatest_charge < 1.5 || ionic_strength <= 0.0 {
            return out;
        }
        let unit = 6.0 * slope_a * ionic_strength.sqrt();
        let single = j_and_slope(unit);
        let double = j_and_slope(4.0 * unit);
        out.set(0, 2.0, j_and_slope(2.0 * unit), single, double, ionic_strength);
        if greatest_charge > 2.5 {
            let triple = j_and_slope(9.0 * unit);
            out.set(1, 3.0, j_and_slope(3.0 * unit), single, triple, ionic_strength);
            out.set(2, 6.0, j_and_slope(6.0 * unit), double, triple, ionic_strength);
        }
        out
    }

    fn set(&mut self, at: usize, product: f64, mixed: (f64, f64), one: (f64, f64), two: (f64, f64), i: f64) {
        let theta = product / (4.0 * i) * (mixed.0 - 0.5 * one.0 - 0.5 * two.0);
        let slope = -theta / i + product / (8.0 * i * i) * (mixed.1 - 0.5 * one.1 - 0.5 * two.1);
        if let (Some(t), Some(s)) = (self.theta.get_mut(at), self.slope.get_mut(at)) {
            *t = theta;
            *s = slope;
        }
    }

    /// Eθ and Eθ′ for two ions of like sign with the given charges.
    #[must_use]
    pub fn pair(&self, z1: f64, z2: f64) -> (f64, f64) {
        let product = z1 * z2;
        if z1 == z2 {
            (0.0, 0.0)
        } else if product < 2.5 {
            (self.theta[0], self.slope[0])
        } else if product < 3.5 {
            (self.theta[1], self.slope[1])
        } else {
            (self.theta[2], self.slope[2])
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_table_follows_the_closed_form() {
        for i in 1..4000 {
            let x = f64::from(i) * 0.03;
            let (j, xdj) = j_and_slope(x);
            let (j0, dj0) = closed_form(x);
            assert!((j - j0).abs() < 1e-9 * (1.0 + j0), "J({x})");
            assert!((xdj - x * dj0).abs() < 1e-6 * (1.0 + x), "J′({x})");
        }
    }
}
