//! A best estimate with bounds: `low <= best <= high`, never NaN.
//!
//! The arithmetic (see `interval_ops`) is inclusion-monotone: a narrower input never gives a result that leaves the
//! result of the wider one, because each bound is one rounded operation and rounding to nearest is monotone.

/// A best estimate with bounds. `low <= best <= high` always holds and no part is NaN; bounds may be infinite.
#[derive(Clone, Copy, PartialEq, Debug, serde::Serialize)]
pub struct Interval {
    /// The least it may be.
    pub low: f64,
    /// What it most likely is.
    pub best: f64,
    /// The most it may be.
    pub high: f64,
}

impl Interval {
    /// Nothing at all, exactly.
    pub const ZERO: Self = Self::exact(0.0);
    /// One, exactly.
    pub const ONE: Self = Self::exact(1.0);
    /// Anything at all: what a NaN turns into.
    pub const WHOLE: Self = Self { low: f64::NEG_INFINITY, best: 0.0, high: f64::INFINITY };

    /// A number known exactly. NaN gives [`Interval::WHOLE`].
    pub const fn exact(x: f64) -> Self {
        if x.is_nan() {
            return Self::WHOLE;
        }
        Self { low: x, best: x, high: x }
    }

    /// Bounds and best estimate. Bounds in the wrong order are exchanged, a best estimate outside them is moved to
    /// the nearer one; a NaN bound is taken as unbounded, a NaN best estimate as the middle.
    pub fn new(low: f64, best: f64, high: f64) -> Self {
        let low = if low.is_nan() { f64::NEG_INFINITY } else { low };
        let high = if high.is_nan() { f64::INFINITY } else { high };
        let (low, high) = if low <= high { (low, high) } else { (high, low) };
        let best = if best.is_nan() { middle(low, high) } else { best };
        Self { low, best: best.clamp(low, high), high }
    }

    /// `low` to `high`, in either order; the best estimate is the middle.
    pub fn range(low: f64, high: f64) -> Self {
        Self::new(low, f64::NAN, high)
    }

    /// `best ± half`; the sign of `half` does not matter.
    pub fn plus_minus(best: f64, half: f64) -> Self {
        Self::new(best - half.abs(), best, best + half.abs())
    }

    /// Whether the bounds coincide.
    pub fn is_exact(&self) -> bool {
        self.low == self.high
    }

    /// Whether both bounds are finite.
    pub fn is_bounded(&self) -> bool {
        self.low.is_finite() && self.high.is_finite()
    }

    /// `high − low`; zero where it is exact.
    pub fn width(&self) -> f64 {
        if self.is_exact() { 0.0 } else { self.high - self.low }
    }

    /// Half the width as a share of the best estimate: `(high − low) / 2 / |best|`. Infinite where the best estimate
    /// is zero and the bounds differ.
    pub fn relative_spread(&self) -> f64 {
        if self.is_exact() {
            0.0
        } else if self.best == 0.0 || self.best.is_infinite() {
            f64::INFINITY
        } else {
            self.width() / 2.0 / self.best.abs()
        }
    }

    /// Whether `x` lies within the bounds, ends included.
    pub fn contains(&self, x: f64) -> bool {
        self.low <= x && x <= self.high
    }

    /// Whether every value of `other` lies within these bounds.
    pub fn encloses(&self, other: Self) -> bool {
        self.low <= other.low && other.high <= self.high
    }

    /// The narrowest interval that holds both; the best estimate is that of `self`.
    pub fn hull(self, other: Self) -> Self {
        Self::new(self.low.min(other.low), self.best, self.high.max(other.high))
    }

    /// The lesser of two uncertain numbers.
    pub fn min(self, other: Self) -> Self {
        Self { low: self.low.min(other.low), best: self.best.min(other.best), high: self.high.min(other.high) }
    }

    /// The greater of two uncertain numbers.
    pub fn max(self, other: Self) -> Self {
        Self { low: self.low.max(other.low), best: self.best.max(other.best), high: self.high.max(other.high) }
    }

    /// Nothing below `floor`: what is physically never less, such as a mass at zero.
    pub fn clamp_low(self, floor: f64) -> Self {
        self.max(Self::exact(floor))
    }

    /// Every part times a known factor.
    pub fn scale(self, factor: f64) -> Self {
        self * factor
    }

    /// One divided by it. Where zero lies inside, the bounds are infinite.
    pub fn recip(self) -> Self {
        Self::ONE / self
    }

    /// Through a function that never falls as its argument rises.
    pub fn map_increasing(self, f: impl Fn(f64) -> f64) -> Self {
        Self::new(f(self.low), f(self.best), f(self.high))
    }

    /// Through a function that never rises as its argument rises.
    pub fn map_decreasing(self, f: impl Fn(f64) -> f64) -> Self {
        Self::new(f(self.high), f(self.best), f(self.low))
    }

    /// To a whole power. Tighter than repeated multiplication where zero lies inside and the power is even.
    pub fn powi(self, power: i32) -> Self {
        if power < 0 {
            return Self::ONE / self.powi(power.saturating_neg());
        }
        let raised = |x| whole_power(x, power);
        if power % 2 == 1 {
            return self.map_increasing(raised);
        }
        let (a, b) = (raised(self.low), raised(self.high));
        let least = if self.contains(0.0) && power > 0 { 0.0 } else { a.min(b) };
        Self::new(least, raised(self.best), a.max(b))
    }

    /// Certainly less: even its highest value is below the lowest of the other.
    pub fn lies_below(self, other: Self) -> bool {
        self.high < other.low
    }

    /// Certainly more: even its lowest value is above the highest of the other.
    pub fn lies_above(self, other: Self) -> bool {
        self.low > other.high
    }
}

impl Default for Interval {
    fn default() -> Self {
        Self::ZERO
    }
}

impl From<f64> for Interval {
    fn from(x: f64) -> Self {
        Self::exact(x)
    }
}

fn middle(low: f64, high: f64) -> f64 {
    match (low.is_finite(), high.is_finite()) {
        (true, true) => low / 2.0 + high / 2.0,
        (true, false) => low,
        (false, true) => high,
        (false, false) => 0.0,
    }
}

/// `x` to a power that is not negative, by squaring: the same digits everywhere, unlike the platform's own.
fn whole_power(x: f64, power: i32) -> f64 {
    let (mut result, mut square, mut left) = (1.0, x, power.max(0));
    while left > 0 {
        if left % 2 == 1 {
            result *= square;
        }
        left /= 2;
        if left > 0 {
            square *= square;
        }
    }
    result
}
