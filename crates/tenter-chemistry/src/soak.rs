//! How far liquor has gone into cloth after a time in the bath.
//!
//! A simple picture, common practice, no source: scoured cloth in one layer wets through in about a
//! minute, tied or folded cloth in ten to thirty, and what is still unwetted shrinks by the same
//! share in every equal time. The spread is wide, a factor of three either way.

/// How the cloth lies in the bath.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Packing {
    /// Loose and stirred, one or a few layers.
    Loose,
    /// Folded or rolled without pressure.
    Folded,
    /// Tied, bound or clamped.
    Bound,
}

/// How readily the cloth takes up water.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Wettability {
    /// Scoured, or already wet.
    Scoured,
    /// Washed at home, no scour.
    Washed,
    /// Raw, with its size and wax.
    Raw,
}

/// Time in which two thirds of the unwetted part takes up liquor, s: low, best, high.
#[must_use]
pub fn wetting_time(packing: Packing, wettability: Wettability) -> (f64, f64, f64) {
    let best = match packing {
        Packing::Loose => 60.0,
        Packing::Folded => 240.0,
        Packing::Bound => 600.0,
    } * match wettability {
        Wettability::Scoured => 1.0,
        Wettability::Washed => 2.0,
        Wettability::Raw => 10.0,
    };
    (best / 3.0, best, best * 3.0)
}

/// Share of full wetting after a time in the bath, 0–1: low, best, high.
#[must_use]
pub fn wetted_share(packing: Packing, wettability: Wettability, seconds: f64) -> (f64, f64, f64) {
    let (quick, best, slow) = wetting_time(packing, wettability);
    let time = if seconds.is_nan() { 0.0 } else { seconds.max(0.0) };
    let share = |tau: f64| -libm::expm1(-time / tau);
    (share(slow), share(best), share(quick))
}

/// Alkali, salt or dye in the liquor a wet cloth holds after time in a bath: cloth that went in with
/// `water_before` kg of plain water and comes out holding `water_after` kg, in a bath of
/// `bath_water` kg that carried `dissolved` kg. Returns what the cloth holds and what stays in the
/// bath, kg. The water in the cloth mixes with the bath in the share `exchanged` (0–1, see
/// [`wetted_share`]). Every kilogram is in one place or the other.
#[must_use]
pub fn take_up(dissolved: f64, bath_water: f64, water_before: f64, water_after: f64, exchanged: f64) -> (f64, f64) {
    let (dissolved, bath) = (dissolved.max(0.0), bath_water.max(0.0));
    let before = water_before.max(0.0);
    let mixed = exchanged.clamp(0.0, 1.0) * before;
    let pool = bath + mixed;
    if pool <= 0.0 {
        return (0.0, dissolved);
    }
    let strength = dissolved / pool;
    let liquor_in_cloth = (water_after.max(0.0) - (before - mixed)).clamp(0.0, pool);
    let taken = (strength * liquor_in_cloth).min(dissolved);
    (taken, dissolved - taken)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_quarter_of_an_hour_wets_scoured_cloth_and_not_raw_bundles() {
        let loose = wetted_share(Packing::Loose, Wettability::Scoured, 900.0);
        assert!(loose.0 > 0.99);
        let raw = wetted_share(Packing::Bound, Wettability::Raw, 900.0);
        assert!(raw.1 < 0.2 && raw.0 < raw.1 && raw.1 < raw.2);
    }

    #[test]
    fn nothing_is_lost_and_wet_cloth_weakens_the_bath() {
        let (dry, left) = take_up(0.5, 8.0, 0.0, 0.4, 1.0);
        assert!((dry + left - 0.5).abs() < 1e-12);
        assert!((dry - 0.5 / 8.0 * 0.4).abs() < 1e-12);
        let (wet, _) = take_up(0.5, 8.0, 0.4, 0.4, 1.0);
        assert!(wet < dry);
        let (plain, _) = take_up(0.5, 8.0, 0.4, 0.4, 0.0);
        assert_eq!(plain, 0.0);
    }
}
