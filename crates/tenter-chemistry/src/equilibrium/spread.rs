//! How far a real solution may lie from the figure.

use super::totals::Totals;

/// Half width in pH to show a dyer, for totals in mol/kg and a temperature in kelvin.
///
/// ±0.05 for soda ash, bicarbonate and their mixtures to 1 mol/kg and 50 °C, with the weak salts of
/// the water; ±0.1 hotter, stronger, with salt, with phosphate or partly neutralised by acetic acid;
/// ±0.2 with citric acid, sulfite or silicate; ±0.03 for lye and for acetic acid alone. These come
/// from how far published data bases lie apart and from the few measured figures, not from the
/// solver, which is far closer to its own reference.
#[must_use]
pub fn realistic_spread(totals: &Totals, temperature_k: f64) -> f64 {
    let trace = 0.003;
    let hot = temperature_k > 323.15;
    let salt = totals.chloride + totals.sulfate;
    let base = totals.sodium + totals.potassium;
    let weak = totals.carbonate + totals.phosphate + totals.silicate + totals.sulfite;
    let mut spread: f64 = 0.05;
    if weak < 1e-4 && totals.citrate < 1e-4 && totals.ammonia < 1e-4 {
        spread = 0.03;
        // An unbuffered solution takes its pH from whatever the water and the air bring.
        if totals.acetate < 1e-4 && (base - salt).abs() < 1e-3 {
            spread = 1.0;
        }
    }
    if hot || base > 2.0 || salt > 0.1 {
        spread = spread.max(0.1);
    }
    if totals.phosphate > trace || totals.ammonia > trace {
        spread = spread.max(0.1);
    }
    if totals.carbonate > trace && totals.acetate > trace {
        spread = spread.max(0.1);
    }
    if totals.citrate > trace && (base > trace || totals.carbonate > trace) {
        spread = spread.max(0.2);
    }
    if totals.sulfite > trace || totals.silicate > trace {
        spread = spread.max(0.2);
    }
    if base > 6.0 {
        spread = spread.max(0.3);
    }
    spread
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_spread_grows_with_what_is_less_known() {
        let soda = Totals { sodium: 0.4, carbonate: 0.2, ..Totals::default() };
        assert_eq!(realistic_spread(&soda, 298.15), 0.05);
        assert_eq!(realistic_spread(&soda, 333.15), 0.1);
        let salted = Totals { sodium: 1.4, chloride: 1.0, ..soda };
        assert_eq!(realistic_spread(&salted, 298.15), 0.1);
        let acetic = Totals { acetate: 0.1, ..soda };
        assert_eq!(realistic_spread(&acetic, 298.15), 0.1);
        let citric = Totals { citrate: 0.05, ..soda };
        assert_eq!(realistic_spread(&citric, 298.15), 0.2);
        let vinegar = Totals { acetate: 0.8, ..Totals::default() };
        assert_eq!(realistic_spread(&vinegar, 298.15), 0.03);
        let lye = Totals { sodium: 0.1, ..Totals::default() };
        assert_eq!(realistic_spread(&lye, 298.15), 0.03);
        assert_eq!(realistic_spread(&Totals::default(), 298.15), 1.0);
    }
}
