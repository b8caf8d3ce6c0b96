//! `top up dye bath to 8 L`: water for what is missing of that volume.

use super::*;
use crate::amounts::{gram, scaled, volume_unit};
use crate::recipe::{Amount, Ingredient};

impl StepReader<'_, '_> {
    /// The water that fills the liquor up; `None` when the amount is no volume or the bath is not known.
    pub(super) fn fill(
        &mut self,
        binder: &mut Binder<'_>,
        measured: &Measured,
        span: Span,
        there: &Figure,
    ) -> Option<Ingredient> {
        if measured.quantity.dimension != Dimension::Volume {
            return None;
        }
        let place = self.row.place(span);
        let target = scaled(binder, &binder.figure(self.row, measured), false);
        let water = binder.reference_material("water", place)?;
        let volume = Figure::worked(
            "{0} − {1}",
            (target.value - there.value).clamp_low(0.0),
            Dimension::Volume,
            volume_unit(),
            vec![("filled up to", target), ("there", there.clone())],
        );
        let density = binder.materials.get(water.0).and_then(|material| material.density.clone());
        let mass = density.map(|density| volume.times(&density, gram()));
        Some(Ingredient {
            place,
            what: Substance::Material(water),
            name_place: place,
            amount: Some(Amount {
                place: self.row.place(measured.span),
                written: measured.quantity,
                unit: measured.unit,
                by_volume_of_solid: false,
                mass,
                volume: Some(volume),
            }),
            temperature: self.step.temperature.clone(),
            fixed: false,
        })
    }
}
