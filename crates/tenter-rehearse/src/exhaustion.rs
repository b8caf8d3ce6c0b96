//! How much of the dye in a bath goes on to the fibre.
//!
//! Dye divides between goods and liquor as K·m / (K·m + W), with m kg of dry goods, W kg of liquor and K litres a kilogram, and
//! gets there with a time constant. K differs by family of dye. For acid, direct, disperse, basic and vat dyes it is worked back
//! from published shares of dye on the fibre at the end of dyeing (US EPA 1995, Snowden-Swan 1995: acid 80 to 93 %, direct 70
//! to 95 %, disperse 80 to 92 %, basic 97 to 98 %, vat 80 to 95 %), taken as those at 20 L of liquor to a kilogram; for reactive
//! dyes before fixation, and for what salt, acid and heat do to it, common practice, no source, with a wide spread.

use tenter_quantity::{Figure, Interval};
use tenter_reference::{DyeFamily, Role};

use crate::bench::Bench;
use crate::figures::worked_share;
use crate::state::LiquorState;
use crate::substances::Substance;

/// Liquor to a kilogram of goods at which the published shares are taken.
const USUAL_RATIO: f64 = 20.0;

/// Share of the dye of each family in a bath that has gone on to the fibre.
#[derive(Default)]
pub(crate) struct Exhausted(Vec<(Option<DyeFamily>, Figure)>);

impl Exhausted {
    /// The share of a dye; `None` for what is not a dye, or where nothing has gone on.
    pub(crate) fn of(&self, substance: Option<&Substance>) -> Option<&Figure> {
        let substance = substance.filter(|substance| substance.role == Role::Dye)?;
        self.0.iter().find(|(family, _)| *family == substance.family).map(|(_, share)| share)
    }
}

/// Share of a dye other than reactive that the fibre holds when it is washed: the published shares at the end of dyeing, with a
/// lower end for what was done too cool or too short (common practice, no source).
pub(crate) const fn held_by_fibre(family: DyeFamily) -> Interval {
    let (low, best, high) = match family {
        DyeFamily::Direct => (0.5, 0.85, 0.95),
        DyeFamily::Acid => (0.5, 0.87, 0.93),
        DyeFamily::Disperse => (0.5, 0.87, 0.92),
        DyeFamily::Basic => (0.6, 0.975, 0.98),
        DyeFamily::Vat | DyeFamily::Indigo => (0.5, 0.85, 0.95),
        DyeFamily::Natural => (0.3, 0.7, 0.95),
        DyeFamily::Pigment => (0.5, 0.9, 1.0),
        DyeFamily::Reactive => (0.0, 0.0, 0.0),
    };
    Interval { low, best, high }
}

/// What a bath is like for dye.
struct Bath {
    /// Salt, 1 = 60 g/L or more for reactive, 20 g/L or more for direct dyes.
    salt: Interval,
    /// Whether acid is in it.
    acid: bool,
    /// Warmest it was with the goods in it, K.
    kelvin: Interval,
}

impl Bench<'_> {
    /// Share of each family of dye in a bath that goes on to the goods in a time of contact, s.
    pub(crate) fn exhaustion(&self, bath: &LiquorState, dry: &Figure, contact: Interval) -> Exhausted {
        let water = bath.contents.water_mass();
        if self.substances.dye(&bath.contents).high <= 0.0 || water.high <= 0.0 || contact.high < 60.0 {
            return Exhausted::default();
        }
        let like = Bath {
            salt: self.substances.mass_of_role(&bath.contents, Role::Salt) / water.clamp_low(1e-6),
            acid: self.substances.acid(&bath.contents).best > 0.0
                && self.substances.acid(&bath.contents).best > self.substances.base(&bath.contents).best,
            kelvin: bath.warmest.map_or(bath.temperature.value, |warmest| warmest.max(bath.temperature.value)),
        };
        let mut shares: Vec<(Option<DyeFamily>, Figure)> = Vec::new();
        for (id, _) in &bath.contents.parts {
            let Some(substance) = self.substances.get(*id).filter(|substance| substance.role == Role::Dye) else {
                continue;
            };
            if shares.iter().any(|(family, _)| *family == substance.family) {
                continue;
            }
            let fibre = like.distribution(substance.family) * dry.value;
            let at = |k: f64, w: f64| if k + w > 0.0 { k / (k + w) } else { 0.0 };
            let balance =
                Interval::new(at(fibre.low, water.high), at(fibre.best, water.best), at(fibre.high, water.low));
            let tau = like.time_constant(substance.family);
            let reached = |t: f64, tau: f64| -libm::expm1(-t / tau);
            let progress = Interval::new(
                reached(contact.low, tau.high),
                reached(contact.best, tau.best),
                reached(contact.high, tau.low),
            );
            let share = worked_share(told(substance.family), balance * progress, vec![("dry goods", dry.clone())]);
            shares.push((substance.family, share));
        }
        Exhausted(shares)
    }
}

/// The line of arithmetic of a family.
const fn told(family: Option<DyeFamily>) -> &'static str {
    match family {
        Some(DyeFamily::Reactive) | None => {
            "dye gone on to {0} from the bath by liquor ratio, salt and time (common practice, no source)"
        }
        Some(DyeFamily::Direct) => {
            "dye gone on to {0} from the bath by liquor ratio, salt, heat and time (70 to 95 % at the end: US EPA 1995)"
        }
        Some(DyeFamily::Acid) => {
            "dye gone on to {0} from the bath by liquor ratio, acid, heat and time (80 to 93 % at the end: US EPA 1995)"
        }
        _ => "dye gone on to {0} from the bath by liquor ratio, heat and time (shares at the end: US EPA 1995)",
    }
}

/// K that puts a share on the fibre at the usual liquor ratio, L/kg.
fn from_shares(low: f64, best: f64, high: f64) -> Interval {
    let k = |share: f64| USUAL_RATIO * share / (1.0 - share);
    Interval::new(k(low), k(best), k(high))
}

impl Bath {
    /// Distribution between fibre and liquor, L/kg.
    fn distribution(&self, family: Option<DyeFamily>) -> Interval {
        let full = |grams_a_litre: f64| (self.salt * (1000.0 / grams_a_litre)).min(Interval::ONE);
        match family {
            Some(DyeFamily::Direct) => {
                let (salted, part) = (from_shares(0.7, 0.85, 0.95), full(20.0));
                let toward = |plain: f64, salted: f64, part: f64| plain + part * (salted - plain);
                Interval::new(
                    toward(10.0, salted.low, part.low),
                    toward(30.0, salted.best, part.best),
                    toward(100.0, salted.high, part.high),
                )
            }
            // Without acid the fibre has no charge to hold them by.
            Some(DyeFamily::Acid) if !self.acid => Interval::new(3.0, 20.0, 80.0),
            Some(DyeFamily::Acid) => from_shares(0.8, 0.87, 0.93),
            Some(DyeFamily::Disperse) => from_shares(0.8, 0.87, 0.92),
            Some(DyeFamily::Basic) => from_shares(0.9, 0.975, 0.98),
            Some(DyeFamily::Vat | DyeFamily::Indigo) => from_shares(0.5, 0.85, 0.95),
            Some(DyeFamily::Natural) => Interval::new(5.0, 40.0, 200.0),
            // Held by a binder, not drawn on by the fibre.
            Some(DyeFamily::Pigment) => Interval::new(0.5, 2.0, 5.0),
            Some(DyeFamily::Reactive) => Interval::new(5.0, 10.0, 20.0) + full(60.0) * Interval::new(15.0, 40.0, 100.0),
            None => Interval::new(5.0, 30.0, 200.0),
        }
    }

    /// Time in which two thirds of the way is gone, s. Families that need heat go on slowly below it: twice as long for each
    /// 15 °C (10 to 20); common practice, no source.
    fn time_constant(&self, family: Option<DyeFamily>) -> Interval {
        let hot = match family {
            Some(DyeFamily::Disperse | DyeFamily::Basic) => Some(363.15),
            Some(DyeFamily::Acid | DyeFamily::Direct | DyeFamily::Natural) => Some(343.15),
            _ => None,
        };
        let cold =
            |kelvin: f64, doubling: f64| hot.map_or(1.0, |hot| libm::exp2(((hot - kelvin) / doubling).clamp(0.0, 8.0)));
        let k = self.kelvin;
        Interval::new(600.0 * cold(k.high, 20.0), 1200.0 * cold(k.best, 15.0), 2400.0 * cold(k.low, 10.0))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn bath(salt: f64, acid: bool, celsius: f64) -> Bath {
        Bath { salt: Interval::exact(salt), acid, kelvin: Interval::exact(celsius + 273.15) }
    }

    /// At 20 L/kg, hot and long, the published shares at the end (US EPA 1995, Snowden-Swan 1995) come back.
    #[test]
    fn published_shares_come_back() {
        let share = |k: f64| k / (k + USUAL_RATIO);
        for (family, (low, high)) in [
            (DyeFamily::Acid, (0.8, 0.93)),
            (DyeFamily::Direct, (0.7, 0.95)),
            (DyeFamily::Disperse, (0.8, 0.92)),
            (DyeFamily::Basic, (0.9, 0.98)),
        ] {
            let k = bath(0.03, true, 95.0).distribution(Some(family));
            assert!((share(k.low) - low).abs() < 1e-9 && (share(k.high) - high).abs() < 1e-9, "{family:?} {k:?}");
        }
    }

    #[test]
    fn acid_and_direct_dyes_go_on_further_than_reactive_ones() {
        let k = |family, bath: &Bath| bath.distribution(Some(family)).best;
        let salted = bath(0.02, true, 90.0);
        assert!(k(DyeFamily::Direct, &salted) > 2.0 * k(DyeFamily::Reactive, &salted));
        assert!(k(DyeFamily::Acid, &salted) > 2.0 * k(DyeFamily::Reactive, &salted));
        // Without acid, or cold, far less.
        assert!(k(DyeFamily::Acid, &bath(0.0, false, 90.0)) < 0.2 * k(DyeFamily::Acid, &salted));
        let tau = |celsius| bath(0.0, true, celsius).time_constant(Some(DyeFamily::Acid)).best;
        assert!(tau(20.0) > 5.0 * tau(85.0));
        assert!((tau(85.0) - 1200.0).abs() < 1e-9);
    }
}
