//! From an amount as written to kilograms and cubic metres in all.

use tenter_quantity::{Basis, Dimension, Figure, Interval, Unit};

use crate::binder::Binder;
use crate::phrase::{Measured, NameUse};
use crate::problem::ProblemKind;
use crate::recipe::{Amount, Substance};
use crate::sheet::Row;

/// What relative amounts refer to.
#[derive(Clone, Debug, Default)]
pub(crate) struct Ground {
    /// Pieces concerned.
    pub pieces: Option<Figure>,
    /// Dry weight of the goods concerned, kg.
    pub goods_mass: Option<Figure>,
    /// Lots the goods are in.
    pub lots: Option<Figure>,
    /// Liquid that g/L and mL/L refer to, m³.
    pub liquid: Option<Figure>,
    /// Mass that parts and % w/w refer to, kg.
    pub whole_mass: Option<Figure>,
    /// Sum of all parts.
    pub parts: Option<f64>,
    /// Does not scale.
    pub fixed: bool,
}

/// Gram, kilogram's usual face.
pub(crate) fn gram() -> &'static Unit {
    Dimension::Mass.usual_unit(Basis::Absolute)
}

/// The usual unit of volume.
pub(crate) fn volume_unit() -> &'static Unit {
    Dimension::Volume.usual_unit(Basis::Absolute)
}

/// Whether an amount can only be settled once the liquid is known.
pub(crate) fn refers_to_liquid(measured: &Measured) -> bool {
    measured.quantity.basis == Basis::Absolute
        && matches!(
            measured.quantity.dimension,
            Dimension::MassConcentration
                | Dimension::VolumeFraction
                | Dimension::AmountConcentration
                | Dimension::MassFraction
                | Dimension::VolumePerMass
        )
}

struct Nature {
    liquid: bool,
    density: Option<Figure>,
    molar_mass: Option<Figure>,
}

fn nature(binder: &Binder<'_>, what: Substance) -> Nature {
    match what {
        Substance::Material(id) => {
            let material = &binder.materials[id.0];
            let molar_mass = material.reference.and_then(|entry| entry.molar_mass_g_per_mol.as_ref()).map(|mass| {
                let value = Interval::new(mass.low, mass.best, mass.high) * 0.001;
                Figure::looked(
                    value,
                    Dimension::Mass,
                    gram(),
                    format!("molar mass of {}", material.name),
                    mass.source.citation.as_str(),
                )
            });
            Nature { liquid: material.liquid, density: material.density.clone(), molar_mass }
        }
        Substance::Mix(_) => {
            let unit = Dimension::MassConcentration.usual_unit(Basis::Absolute);
            let density = Figure::assumed(
                Interval::new(980.0, 1010.0, 1150.0),
                Dimension::MassConcentration,
                unit,
                "density of a prepared liquor",
                "a little more than water",
            );
            Nature { liquid: true, density: Some(density), molar_mass: None }
        }
    }
}

/// Settles an amount. Troubles are told; what can be worked out is.
pub(crate) fn settle(
    binder: &mut Binder<'_>,
    row: &Row<'_>,
    what: Substance,
    name: Option<&NameUse>,
    measured: &Measured,
    ground: &Ground,
) -> Amount {
    let written = binder.figure(row, measured);
    let place = row.place(measured.span);
    let nature = nature(binder, what);
    let mut amount = Amount {
        place,
        written: measured.quantity,
        unit: measured.unit,
        by_volume_of_solid: false,
        mass: None,
        volume: None,
    };
    match measured.quantity.dimension {
        Dimension::Mass => {
            let mass = absolute(binder, &written, measured, ground, gram());
            amount.mass = mass;
            if nature.liquid {
                if measured.unit.symbol == "oz" && measured.quantity.basis == Basis::Absolute {
                    ounce_of_liquid(binder, row, measured, &nature, &mut amount);
                } else if let (Some(mass), Some(density)) = (&amount.mass, &nature.density) {
                    amount.volume = Some(mass.over(density, volume_unit()));
                }
            }
        }
        Dimension::Volume => {
            amount.volume = absolute(binder, &written, measured, ground, volume_unit());
            weigh_volume(&nature, &mut amount);
        }
        Dimension::MassConcentration => amount.mass = of_liquid(binder, row, &written, ground, gram()),
        Dimension::VolumeFraction => {
            amount.volume = of_liquid(binder, row, &written, ground, volume_unit());
            weigh_volume(&nature, &mut amount);
        }
        Dimension::AmountConcentration => match nature.molar_mass {
            Some(molar) => {
                let unit = Dimension::Amount.usual_unit(Basis::Absolute);
                amount.mass = of_liquid(binder, row, &written, ground, unit).map(|moles| moles.times(&molar, gram()));
            }
            None => binder.wrong_dimension(
                row,
                measured,
                &[Dimension::Mass, Dimension::MassConcentration],
                "an amount of something whose molar mass is not known",
            ),
        },
        Dimension::Amount => {
            if let Some(molar) = nature.molar_mass {
                amount.mass = Some(written.times(&molar, gram()));
            }
        }
        Dimension::MassFraction if measured.quantity.basis == Basis::PerGoods => {
            amount.mass = of_goods(binder, row, &written, ground, gram());
            if nature.liquid
                && let (Some(mass), Some(density)) = (&amount.mass, &nature.density)
            {
                amount.volume = Some(mass.over(density, volume_unit()));
            }
        }
        Dimension::MassFraction => {
            let whole = ground.whole_mass.clone().or_else(|| ground.liquid.as_ref().map(water_mass));
            match whole {
                Some(whole) => amount.mass = Some(written.times(&whole, gram())),
                None => binder.problem(
                    place,
                    ProblemKind::PercentOfWhat {
                        written: row.text(measured.span).into(),
                        of: name.map_or("", |name| row.text(name.span)).into(),
                    },
                ),
            }
        }
        Dimension::VolumePerMass => {
            amount.volume = of_goods(binder, row, &written, ground, volume_unit());
            weigh_volume(&nature, &mut amount);
        }
        Dimension::LiquorRatio => {
            // Litres for each kilogram: what a dyer measures out, whatever the water weighs.
            amount.volume = ground.goods_mass.as_ref().map(|goods| {
                Figure::worked(
                    "{0} × {1}, a litre for each kilogram",
                    written.value * goods.value * 0.001,
                    Dimension::Volume,
                    volume_unit(),
                    vec![("", written.clone()), ("dry goods", goods.clone())],
                )
            });
            if ground.goods_mass.is_none() {
                of_goods(binder, row, &written, ground, gram());
            }
            weigh_volume(&nature, &mut amount);
        }
        Dimension::Part => {
            if let (Some(whole), Some(parts)) = (&ground.whole_mass, ground.parts) {
                let share = Figure::worked(
                    "{0} of all parts",
                    written.value * (1.0 / parts.max(f64::MIN_POSITIVE)),
                    Dimension::MassFraction,
                    Dimension::MassFraction.usual_unit(Basis::Absolute),
                    vec![("", written)],
                );
                amount.mass = Some(share.times(whole, gram()));
                if nature.liquid
                    && let (Some(mass), Some(density)) = (&amount.mass, &nature.density)
                {
                    amount.volume = Some(mass.over(density, volume_unit()));
                }
            }
        }
        Dimension::PerCent => {
            let of = name.map_or("", |name| row.text(name.span));
            binder
                .problem(place, ProblemKind::PercentOfWhat { written: row.text(measured.span).into(), of: of.into() });
        }
        _ => binder.wrong_dimension(
            row,
            measured,
            &[Dimension::Mass, Dimension::Volume, Dimension::MassConcentration],
            "an amount",
        ),
    }
    amount
}

/// An absolute, per-piece or per-lot amount.
fn absolute(
    binder: &Binder<'_>,
    written: &Figure,
    measured: &Measured,
    ground: &Ground,
    unit: &'static Unit,
) -> Option<Figure> {
    match measured.quantity.basis {
        Basis::PerPiece => ground.pieces.as_ref().map(|pieces| written.times(pieces, unit)),
        Basis::PerLot => Some(match &ground.lots {
            Some(lots) => written.times(lots, unit),
            None => written.clone(),
        }),
        Basis::PerGoods => ground.goods_mass.as_ref().map(|mass| written.times(mass, unit)),
        Basis::Absolute => Some(scaled(binder, written, ground.fixed)),
    }
}

/// An absolute amount in a recipe scaled to another number of pieces.
pub(crate) fn scaled(binder: &Binder<'_>, written: &Figure, fixed: bool) -> Figure {
    if binder.scale == 1.0 || fixed {
        return written.clone();
    }
    let factor = Figure::assumed(
        Interval::exact(binder.scale),
        Dimension::None,
        Dimension::None.usual_unit(Basis::Absolute),
        "scale",
        "pieces asked for over pieces written",
    );
    Figure::worked(
        "{0} × {1}",
        written.value * binder.scale,
        written.dimension,
        written.unit,
        vec![("", written.clone()), ("scale", factor)],
    )
}

fn of_liquid(
    binder: &mut Binder<'_>,
    row: &Row<'_>,
    written: &Figure,
    ground: &Ground,
    unit: &'static Unit,
) -> Option<Figure> {
    match &ground.liquid {
        Some(liquid) => Some(written.times(liquid, unit)),
        None if binder.hushed => None,
        None => {
            binder.problem(
                written.place().unwrap_or_else(|| row.place(row.line.span)),
                ProblemKind::MissingValue {
                    what: "the water that this amount is for".into(),
                    example: "8 L water at 40 °C".into(),
                },
            );
            None
        }
    }
}

fn of_goods(
    binder: &mut Binder<'_>,
    row: &Row<'_>,
    written: &Figure,
    ground: &Ground,
    unit: &'static Unit,
) -> Option<Figure> {
    match &ground.goods_mass {
        Some(mass) => Some(written.times(mass, unit)),
        None => {
            // Missing goods are told once, by themselves.
            if binder.goods.iter().any(|goods| goods.dry_mass.is_none()) {
                binder.problem(
                    written.place().unwrap_or_else(|| row.place(row.line.span)),
                    ProblemKind::MissingValue {
                        what: "the weight of the goods, which this amount is a share of".into(),
                        example: "weight 165 g each".into(),
                    },
                );
            }
            None
        }
    }
}

fn water_mass(liquid: &Figure) -> Figure {
    let unit = Dimension::MassConcentration.usual_unit(Basis::Absolute);
    let density = Figure::assumed(
        Interval::new(980.0, 998.0, 1000.0),
        Dimension::MassConcentration,
        unit,
        "density of water",
        "cold to hot",
    );
    liquid.times(&density, gram())
}

fn weigh_volume(nature: &Nature, amount: &mut Amount) {
    amount.by_volume_of_solid = !nature.liquid;
    if let (Some(volume), Some(density)) = (&amount.volume, &nature.density) {
        amount.mass = Some(volume.times(density, gram()));
    }
}

/// `2 oz vinegar`: by weight, or fluid ounces? The totals span both until it is said.
fn ounce_of_liquid(binder: &mut Binder<'_>, row: &Row<'_>, measured: &Measured, nature: &Nature, amount: &mut Amount) {
    let Some(density) = &nature.density else {
        return;
    };
    let Some(mass) = amount.mass.clone() else {
        return;
    };
    let by_weight = mass.over(density, volume_unit());
    let count = measured.unit.from_si(measured.quantity.value);
    let fluid = tenter_quantity::lookup_unit(&["fl", "oz"], binder.measures).and_then(|(found, _)| match found {
        tenter_quantity::Lookup::Unit(unit) => Some(unit.factor),
        tenter_quantity::Lookup::Ambiguous { candidates, .. } => candidates.first().map(|unit| unit.factor),
        tenter_quantity::Lookup::Doubtful { .. } => None,
    });
    let Some(fluid) = fluid else { return };
    let by_volume = count * fluid;
    binder.problem(
        row.place(measured.span),
        ProblemKind::AmbiguousMeasure {
            spelling: "oz".into(),
            readings: vec![("by weight".into(), by_weight.value.best), ("fluid ounces".into(), by_volume.best)],
            settle: "`fl oz` if it is measured in a jug, grams if it is weighed".into(),
        },
    );
    let hull = by_weight.value.hull(by_volume);
    let volume = Figure::worked(
        "{0}, by weight or by fluid ounces",
        hull,
        Dimension::Volume,
        volume_unit(),
        vec![("", by_weight)],
    );
    amount.mass = Some(volume.times(density, gram()));
    amount.volume = Some(volume);
}
