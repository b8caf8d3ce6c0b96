//! Specific heats of dry fibres: Morton & Hearle, *Physical Properties of Textile Fibres*, Table 6.1.

/// A fibre with a tabulated specific heat.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Fibre {
    /// Cotton; also used for linen and hemp.
    Cotton,
    /// Viscose, modal, lyocell.
    Viscose,
    /// Wool.
    Wool,
    /// Silk.
    Silk,
    /// Nylon 6 and 6.6.
    Nylon,
    /// Polyester.
    Polyester,
}

/// Specific heat of the dry fibre, J/(kg·K): low, best, high.
#[must_use]
pub fn heat_capacity_range(fibre: Fibre) -> (f64, f64, f64) {
    match fibre {
        Fibre::Cotton => (1220.0, 1290.0, 1350.0),
        Fibre::Viscose => (1350.0, 1470.0, 1590.0),
        Fibre::Wool => (1330.0, 1360.0, 1390.0),
        Fibre::Silk => (1350.0, 1380.0, 1410.0),
        Fibre::Nylon => (1430.0, 1445.0, 1460.0),
        Fibre::Polyester => (1000.0, 1030.0, 1060.0),
    }
}
