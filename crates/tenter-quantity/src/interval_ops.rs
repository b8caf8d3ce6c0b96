//! Arithmetic of intervals: each bound is the extreme of the corners, the best estimate follows the best estimates.
//!
//! `0 × ∞` counts as 0 and `∞ − ∞` as unbounded, so that no NaN can arise. Dividing by an interval that holds zero
//! gives an infinite bound on each side the quotient can reach.

use std::iter::Sum;
use std::ops::{Add, AddAssign, Div, Mul, MulAssign, Neg, Sub, SubAssign};

use crate::interval::Interval;

fn product(a: f64, b: f64) -> f64 {
    if a == 0.0 || b == 0.0 { 0.0 } else { a * b }
}

/// A quotient of two bounds; `∞ / ∞` counts as 0, its least magnitude (the other corners give the greatest).
fn quotient(a: f64, b: f64) -> f64 {
    if a == 0.0 || b.is_infinite() { 0.0 } else { a / b }
}

fn extremes(corners: [f64; 4]) -> (f64, f64) {
    corners.into_iter().fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), x| (low.min(x), high.max(x)))
}

impl Neg for Interval {
    type Output = Self;
    fn neg(self) -> Self {
        Self { low: -self.high, best: -self.best, high: -self.low }
    }
}

impl Add for Interval {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self::new(self.low + other.low, self.best + other.best, self.high + other.high)
    }
}

impl Sub for Interval {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self::new(self.low - other.high, self.best - other.best, self.high - other.low)
    }
}

impl Mul for Interval {
    type Output = Self;
    fn mul(self, other: Self) -> Self {
        let (low, high) = extremes([
            product(self.low, other.low),
            product(self.low, other.high),
            product(self.high, other.low),
            product(self.high, other.high),
        ]);
        Self::new(low, product(self.best, other.best), high)
    }
}

impl Div for Interval {
    type Output = Self;
    fn div(self, by: Self) -> Self {
        let best = if by.best == 0.0 { f64::NAN } else { quotient(self.best, by.best) };
        if by.low > 0.0 || by.high < 0.0 {
            let (low, high) = extremes([
                quotient(self.low, by.low),
                quotient(self.low, by.high),
                quotient(self.high, by.low),
                quotient(self.high, by.high),
            ]);
            return Self::new(low, best, high);
        }
        if by.low == 0.0 && by.high == 0.0 {
            return Self::new(f64::NEG_INFINITY, best, f64::INFINITY);
        }
        // Zero lies in the divisor: the quotient is unbounded on each side that the signs allow.
        let positive = (self.high > 0.0 && by.high > 0.0) || (self.low < 0.0 && by.low < 0.0);
        let negative = (self.low < 0.0 && by.high > 0.0) || (self.high > 0.0 && by.low < 0.0);
        // On a side it cannot reach, it comes nearest to zero where the dividend is least and the divisor greatest.
        let least = if self.contains(0.0) {
            0.0
        } else if self.low > 0.0 {
            self.low
        } else {
            self.high
        };
        let low =
            if negative { f64::NEG_INFINITY } else { quotient(least, if least > 0.0 { by.high } else { by.low }) };
        let high = if positive { f64::INFINITY } else { quotient(least, if least > 0.0 { by.low } else { by.high }) };
        Self::new(low, best, high)
    }
}

macro_rules! with_plain_numbers {
    ($($operation:ident, $method:ident;)*) => {$(
        impl $operation<f64> for Interval {
            type Output = Interval;
            fn $method(self, other: f64) -> Interval {
                $operation::$method(self, Interval::exact(other))
            }
        }
        impl $operation<Interval> for f64 {
            type Output = Interval;
            fn $method(self, other: Interval) -> Interval {
                $operation::$method(Interval::exact(self), other)
            }
        }
    )*};
}

with_plain_numbers! {
    Add, add;
    Sub, sub;
    Mul, mul;
    Div, div;
}

impl AddAssign for Interval {
    fn add_assign(&mut self, other: Self) {
        *self = *self + other;
    }
}

impl SubAssign for Interval {
    fn sub_assign(&mut self, other: Self) {
        *self = *self - other;
    }
}

impl MulAssign<f64> for Interval {
    fn mul_assign(&mut self, factor: f64) {
        *self = *self * factor;
    }
}

impl Sum for Interval {
    fn sum<I: Iterator<Item = Self>>(terms: I) -> Self {
        terms.fold(Self::ZERO, Add::add)
    }
}

impl<'a> Sum<&'a Interval> for Interval {
    fn sum<I: Iterator<Item = &'a Self>>(terms: I) -> Self {
        terms.copied().sum()
    }
}
