//! The unit table, a file a kind. To add a unit, add a row: spellings, kind, factor, and where the factor is from.
//!
//! Units that share a spelling stand United States first: that is the best estimate where nobody said whose they are.

mod bench;
mod doubtful;
mod mass;
mod temperature;
mod volume;
mod water;

use crate::dimension::Dimension;
use crate::quantity::Basis;
use crate::unit::{System, Unit};

pub use doubtful::{DOUBTFUL, DoubtfulSpelling};

/// Every unit that can be written as it stands, in groups.
pub static UNITS: &[&[Unit]] = &[mass::UNITS, volume::UNITS, temperature::UNITS, bench::UNITS, water::UNITS];

/// Spellings that count only in this case, because the other case is something else or nothing.
pub const CASE_MATTERS: &[&str] = &["M", "mM", "K"];

/// Every unit of the table.
pub fn all() -> impl Iterator<Item = &'static Unit> {
    UNITS.iter().copied().flatten()
}

const SP811: &str = "NIST SP 811 (2008), appendix B";
const HB44: &str = "NIST Handbook 44, appendix C";
const SI: &str = "SI Brochure, 9th edition (2019)";

const fn row(
    symbol: &'static str,
    name: &'static str,
    spellings: &'static [&'static str],
    dimension: Dimension,
    factor: f64,
    source: &'static str,
) -> Unit {
    Unit {
        symbol,
        plural: symbol,
        name,
        spellings,
        dimension,
        factor,
        offset: 0.0,
        spread: 0.0,
        system: System::Any,
        basis: Basis::Absolute,
        source,
    }
}

impl Unit {
    const fn of(self, system: System) -> Self {
        Self { system, ..self }
    }

    const fn plural(self, plural: &'static str) -> Self {
        Self { plural, ..self }
    }

    const fn counted(self, basis: Basis) -> Self {
        Self { basis, ..self }
    }

    const fn spread(self, spread: f64) -> Self {
        Self { spread, ..self }
    }

    const fn offset(self, offset: f64) -> Self {
        Self { offset, ..self }
    }
}
