//! Reactive dye in baths for dipping. A dip carries off only what the goods take up: there the strength of the bath
//! counts, not the dye for each kilogram of goods.

use tenter_quantity::{Figure, Interval, Place};
use tenter_rehearse::{Dyeing, LiquorState};

use crate::bench::{bath_of, grams, grams_per_litre};
use crate::context::Context;
use crate::finding::Finding;
use crate::rule::Rule;

/// One reactive dye that goods took up from a bath by dipping.
pub(crate) struct Dip<'a> {
    pub(crate) dyeing: &'a Dyeing,
    /// The line of the first dip.
    pub(crate) place: Place,
    /// The bath as it was after it.
    pub(crate) bath: &'a LiquorState,
    volume: &'a Figure,
    /// All dye in it, kg.
    mass: Interval,
    /// The same, kg/m³.
    pub(crate) strength: Interval,
}

/// All dips of reactive dye, in the order of the dyeings.
pub(crate) fn dips<'a>(context: &Context<'a>) -> Vec<Dip<'a>> {
    let dip = |dyeing: &'a Dyeing| {
        let place = context.laid_at(dyeing);
        let (_, bath) = bath_of(context, dyeing)?;
        let volume = bath.volume.as_ref().filter(|volume| volume.value.low > 0.0)?;
        let mass = context.rehearsal.substances.dye(&bath.contents);
        (context.verb_at(place) == Some("dip") && context.is_reactive(dyeing.dye)).then(|| Dip {
            dyeing,
            place,
            bath,
            volume,
            mass,
            strength: mass / volume.value,
        })
    };
    context.dyeings().filter_map(dip).collect()
}

impl Dip<'_> {
    /// A finding on how strong the bath is.
    pub(crate) fn strength_told(&self, rule: &'static Rule, judgement: &str) -> Finding {
        let (mass, strength) = (grams(self.mass), grams_per_litre(self.strength));
        let message = format!("{mass} of dye in {} to dip into, {strength}{judgement}", self.volume.show());
        let finding = Finding::new(rule, self.place, message).figure(self.volume).figure(&self.dyeing.mass);
        match self.dyeing.mass.places().first() {
            Some(written) => finding.note(*written, "the dye is written here"),
            None => finding,
        }
    }
}
