//! Interpolation in a table sorted by its first column.

/// One row of a table: the argument and the value.
type Point = (f64, f64);

/// The pair of neighbours around `x`, and how far `x` lies between them (0–1). Outside the table the
/// nearest end. `None` for an empty table.
fn bracket(table: &[(f64, f64)], x: f64) -> Option<(Point, Point, f64)> {
    let after = table.partition_point(|row| row.0 < x);
    let high = *table.get(after).or_else(|| table.last())?;
    let low = *table.get(after.saturating_sub(1))?;
    let width = high.0 - low.0;
    let share = if width > 0.0 { ((x - low.0) / width).clamp(0.0, 1.0) } else { 0.0 };
    Some((low, high, share))
}

/// Straight lines between the points; the end values outside.
pub(crate) fn linear(table: &[(f64, f64)], x: f64) -> f64 {
    bracket(table, x).map_or(f64::NAN, |(low, high, share)| low.1 + share * (high.1 - low.1))
}

/// Straight lines in the logarithm of the (positive) value; the end values outside.
pub(crate) fn logarithmic(table: &[(f64, f64)], x: f64) -> f64 {
    bracket(table, x).map_or(f64::NAN, |(low, high, share)| low.1 * libm::exp(share * libm::log(high.1 / low.1)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn points_ends_and_middles() {
        let table = [(0.0, 1.0), (10.0, 4.0), (20.0, 2.0)];
        for (x, y) in [(-5.0, 1.0), (0.0, 1.0), (5.0, 2.5), (10.0, 4.0), (15.0, 3.0), (99.0, 2.0)] {
            assert!((linear(&table, x) - y).abs() < 1e-12, "{x}");
        }
        assert!((logarithmic(&table, 5.0) - 2.0).abs() < 1e-12);
        assert!((logarithmic(&table, 10.0) - 4.0).abs() < 1e-12);
    }
}
