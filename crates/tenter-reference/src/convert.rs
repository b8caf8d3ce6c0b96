//! One entry as written to one entry as used: sources looked up, references between entries checked.

use crate::formula::Formula;
use crate::hazard::{Group, HazardClaim, HazardStatement, NeverMix};
use crate::load::{EntryResult, Sources};
use crate::material::{Anhydrous, Material, Strength};
use crate::source::Stated;
use crate::{Dye, DyeClass, DyeFamily, Dyeability, Fibre, MoistureAllowance, Needs, Reference, ReferenceBatch, raw};

pub(crate) fn statement(raw: raw::Statement, sources: &Sources) -> EntryResult<HazardStatement> {
    Ok(HazardStatement { source: sources.get(&raw.source)?, code: raw.code, text: raw.text })
}

pub(crate) fn group(raw: raw::Group) -> Group {
    Group { id: raw.id, name: raw.name, kind: raw.kind, words: raw.words }
}

pub(crate) fn pair(raw: raw::Pair, reference: &Reference, sources: &Sources) -> EntryResult<NeverMix> {
    known_groups([&raw.a, &raw.b], reference)?;
    Ok(NeverMix {
        source: sources.get(&raw.source)?,
        a: raw.a,
        b: raw.b,
        what_happens: raw.what_happens,
        instead: raw.instead,
        severity: raw.severity,
        places: raw.places,
    })
}

fn known_groups<'a>(ids: impl IntoIterator<Item = &'a String>, reference: &Reference) -> EntryResult<()> {
    match ids.into_iter().find(|id| reference.group(id).is_none()) {
        Some(id) => Err(format!("no [[group]] {id:?} in incompatible.toml")),
        None => Ok(()),
    }
}

fn claims(raw: &[raw::Claim], reference: &Reference, sources: &Sources) -> EntryResult<Vec<HazardClaim>> {
    let mut claims = Vec::with_capacity(raw.len());
    for claim in raw {
        if reference.hazard(&claim.code).is_none() {
            return Err(format!("no [[hazard]] {:?} in hazards.toml", claim.code));
        }
        claims.push(HazardClaim {
            code: claim.code.clone(),
            at_least_percent: claim.at_least_percent,
            below_percent: claim.below_percent,
            note: claim.note.clone(),
            source: sources.get(&claim.source)?,
        });
    }
    Ok(claims)
}

pub(crate) fn class(raw: raw::DyeClass, sources: &Sources) -> EntryResult<DyeClass> {
    let needs = Needs {
        alkali: raw.needs.alkali,
        acid: raw.needs.acid,
        salt: raw.needs.salt,
        reducer: raw.needs.reducer,
        mordant: raw.needs.mordant,
    };
    let batch = |batch: raw::Batch| {
        Ok::<_, String>(ReferenceBatch { hours: sources.figure(&batch.hours)?, at_celsius: batch.at_celsius })
    };
    Ok(DyeClass {
        id: raw.id,
        name: raw.name,
        synonyms: raw.synonyms,
        family: raw.family,
        needs: Stated { value: needs, source: sources.get(&raw.needs.source)? },
        fixation_celsius: sources.maybe(raw.fixation_celsius.as_ref())?,
        reference_batch: raw.reference_batch.map(batch).transpose()?,
        ph: sources.maybe(raw.ph.as_ref())?,
        room_temperature: sources.stated(raw.room_temperature)?,
        fixation_yield: sources.maybe(raw.fixation_yield.as_ref())?,
        note: raw.note,
    })
}

pub(crate) fn dye(raw: raw::Dye, powder: &raw::Powder, reference: &Reference, sources: &Sources) -> EntryResult<Dye> {
    if !reference.classes.iter().any(|class| class.id == raw.class.value) {
        return Err(format!("no [[class]] {:?} in dye_classes.toml", raw.class.value));
    }
    known_groups(&powder.hazard_groups, reference)?;
    if let Some(formula) = &raw.formula {
        Formula::parse(&formula.value).map_err(|error| format!("formula {}: {error}", formula.value))?;
    }
    Ok(Dye {
        id: raw.id,
        name: raw.name,
        synonyms: raw.synonyms,
        class: Stated { source: sources.get(&raw.class.source)?, value: raw.class.value },
        cas: sources.stated(raw.cas)?,
        formula: sources.stated(raw.formula)?,
        molar_mass_g_per_mol: sources.maybe(raw.molar_mass_g_per_mol.as_ref())?,
        reactive_groups: sources.stated(raw.reactive_groups)?,
        density_kg_per_m3: sources.figure(raw.density_kg_per_m3.as_ref().unwrap_or(&powder.density_kg_per_m3))?,
        turquoise: sources.stated(raw.turquoise)?,
        black: sources.stated(raw.black)?,
        hazards: claims(&powder.hazards, reference, sources)?,
        dust: powder.dust,
        hazard_groups: powder.hazard_groups.clone(),
        cautions: powder.cautions.clone(),
        note: raw.note,
    })
}

pub(crate) fn fibre(raw: raw::Fibre, sources: &Sources) -> EntryResult<Fibre> {
    if let Some(missing) = DyeFamily::ALL.into_iter().find(|family| !raw.dyeability.contains_key(family)) {
        return Err(format!("dyeability does not say how {} dyes take", missing.words()));
    }
    let mut dyeability = std::collections::BTreeMap::new();
    for (family, entry) in raw.dyeability {
        let source = sources.get(&entry.source)?;
        dyeability.insert(family, Dyeability { uptake: entry.uptake, note: entry.note, source });
    }
    Ok(Fibre {
        id: raw.id,
        name: raw.name,
        synonyms: raw.synonyms,
        family: raw.family,
        moisture_allowance: MoistureAllowance {
            eu_percent: sources.maybe(raw.moisture_eu_percent.as_ref())?,
            astm_percent: sources.maybe(raw.moisture_astm_percent.as_ref())?,
        },
        specific_heat_j_per_kg_k: sources.maybe(raw.specific_heat_j_per_kg_k.as_ref())?,
        dyeability,
        note: raw.note,
    })
}

pub(crate) fn material(raw: raw::Material, reference: &Reference, sources: &Sources) -> EntryResult<Material> {
    known_groups(&raw.hazard_groups, reference)?;
    if let Some(formula) = &raw.formula {
        Formula::parse(formula).map_err(|error| format!("formula {formula}: {error}"))?;
    }
    let strength = |strength: raw::Strength| {
        Ok::<_, String>(Strength { fraction: sources.figure(&strength.fraction)?, basis: strength.basis })
    };
    Ok(Material {
        id: raw.id,
        name: raw.name,
        synonyms: raw.synonyms,
        role: raw.role,
        form: raw.form,
        cas: sources.stated(raw.cas)?,
        formula: raw.formula,
        molar_mass_g_per_mol: sources.maybe(raw.molar_mass_g_per_mol.as_ref())?,
        anhydrous: raw.anhydrous.map(|id| Anhydrous { id, fraction: 1.0 }),
        solute: raw.solute,
        density_kg_per_m3: sources.maybe(raw.density_kg_per_m3.as_ref())?,
        strength: raw.strength.map(strength).transpose()?,
        solubility: raw.solubility,
        alkali_equivalents_per_mol: sources.maybe(raw.alkali_equivalents_per_mol.as_ref())?,
        fixation_alkali_per_mol: sources.maybe(raw.fixation_alkali_per_mol.as_ref())?,
        acid_equivalents_per_mol: sources.maybe(raw.acid_equivalents_per_mol.as_ref())?,
        ions: raw.ions,
        hazards: claims(&raw.hazards, reference, sources)?,
        dust: raw.dust,
        hazard_groups: raw.hazard_groups,
        cautions: raw.cautions,
        never_for_food: raw.never_for_food,
        note: raw.note,
    })
}

/// Works out the anhydrous share of hydrates and makes sure that ids between materials exist.
pub(crate) fn link_materials(materials: &mut [Material]) -> Result<(), (String, String)> {
    let masses: Vec<(String, Option<f64>)> =
        materials.iter().map(|m| (m.id.clone(), m.molar_mass_g_per_mol.map(|mass| mass.best))).collect();
    let mass_of = |id: &str| masses.iter().find(|(known, _)| known == id).map(|(_, mass)| *mass);
    for material in materials {
        let id = material.id.clone();
        if let Some(solute) = &material.solute
            && mass_of(solute).is_none()
        {
            return Err((id, format!("no material {solute:?} to be dissolved")));
        }
        let own = material.molar_mass_g_per_mol.map(|mass| mass.best);
        if let Some(anhydrous) = &mut material.anhydrous {
            match (mass_of(&anhydrous.id), own) {
                (None, _) => {
                    return Err((id, format!("no material {:?} to count as", anhydrous.id)));
                }
                (Some(Some(without)), Some(with)) if with > 0.0 => anhydrous.fraction = without / with,
                _ => {
                    return Err((id, "both it and its anhydrous substance need a molar mass".to_owned()));
                }
            }
        }
    }
    Ok(())
}
