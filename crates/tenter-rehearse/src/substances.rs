//! What the rehearsal needs to know of each material, looked up once.

use tenter_chemistry::equilibrium::Totals;
use tenter_chemistry::reaction::DyeClass;
use tenter_quantity::standard::{GRAM, NUMBER};
use tenter_quantity::{Dimension, Figure, Interval};
use tenter_reference::{DyeFamily, Role};
use tenter_resolve::Recipe;
use tenter_resolve::recipe::{Material, MaterialId};

use crate::contents::Contents;

/// Molar mass of anhydrous soda ash, kg/mol (standard atomic weights, IUPAC 2021).
pub const SODA_ASH_MOLAR_MASS: f64 = 0.105_988;

/// One material as the rehearsal sees it. Strengths are per kg of the material as it is weighed or measured.
#[derive(Clone, Debug)]
pub struct Substance {
    /// What it is for.
    pub role: Role,
    /// Whether it is measured as a liquid.
    pub liquid: bool,
    /// kg/m³, for liquids; 1000 when nobody says.
    pub density: Interval,
    /// Share of active substance by weight.
    pub purity: Interval,
    /// Alkali a reactive dye can use on cold cloth, mol/kg.
    pub usable: Interval,
    /// Acid it takes up down to about pH 4.5, mol/kg.
    pub base: Interval,
    /// Alkali it takes up to about pH 9, mol/kg.
    pub acid: Interval,
    /// Bicarbonate in it, mol/kg, which heat turns into half as much carbonate.
    pub bicarbonate: Interval,
    /// Components for the equilibrium, mol in one kg (best value); `None` if the model has none for it.
    pub ions: Option<Totals>,
    /// Whether it moves the pH in a way the model does not know (bleach).
    pub unmodelled: bool,
    /// Whether it would move the pH of plain water in a way the model does not know (alum, borax, water glass); beside plenty of
    /// known alkali or acid it hardly counts.
    pub doubtful: bool,
    /// Dye family, for a dye.
    pub family: Option<DyeFamily>,
    /// Reactive class by its group, for a reactive dye.
    pub reactive: Option<DyeClass>,
    usable_factor: Option<Figure>,
}

/// All materials of a recipe.
#[derive(Clone, Debug)]
pub struct Substances(Vec<Substance>);

impl Substances {
    pub(crate) fn of(recipe: &Recipe) -> Self {
        Self(recipe.materials.iter().map(substance).collect())
    }

    /// One of them; water-like nothing for an index from another recipe.
    pub fn get(&self, id: MaterialId) -> Option<&Substance> {
        self.0.get(id.0)
    }

    /// Whether it is a dye.
    pub fn is_dye(&self, id: MaterialId) -> bool {
        self.get(id).is_some_and(|substance| substance.role == Role::Dye)
    }

    fn sum(&self, contents: &Contents, pick: impl Fn(&Substance) -> Interval) -> Interval {
        contents
            .parts
            .iter()
            .filter_map(|(id, figure)| {
                let factor = pick(self.get(*id)?);
                (factor.high > 0.0).then(|| figure.value * factor)
            })
            .sum()
    }

    /// Alkali a reactive dye can use on cold cloth, mol.
    pub fn usable_alkali(&self, contents: &Contents) -> Interval {
        self.sum(contents, |substance| substance.usable)
    }

    /// Usable alkali when a share of the bicarbonate has been turned into carbonate by heat, mol.
    pub fn usable_after(&self, contents: &Contents, decarbonated: Interval) -> Interval {
        let usable = self.usable_alkali(contents);
        if decarbonated.high <= 0.0 {
            return usable;
        }
        usable + self.sum(contents, |substance| substance.bicarbonate) * decarbonated * 0.5
    }

    /// Acid the contents can take up down to about pH 4.5, mol.
    pub fn base(&self, contents: &Contents) -> Interval {
        self.sum(contents, |substance| substance.base)
    }

    /// Alkali that the acids in it can take up, mol.
    pub fn acid(&self, contents: &Contents) -> Interval {
        self.sum(contents, |substance| substance.acid)
    }

    /// Dye, kg.
    pub fn dye(&self, contents: &Contents) -> Interval {
        contents.parts.iter().filter(|(id, _)| self.is_dye(*id)).map(|(_, figure)| figure.value).sum()
    }

    /// Usable alkali as kg of anhydrous soda ash, with its story; `None` where there is none.
    pub fn alkali_as_soda_ash(&self, contents: &Contents) -> Option<Figure> {
        let mut terms: Vec<Figure> = Vec::new();
        for (id, figure) in &contents.parts {
            let Some(substance) = self.get(*id).filter(|substance| substance.usable.high > 0.0) else {
                continue;
            };
            terms.push(match &substance.usable_factor {
                None => figure.clone(),
                Some(factor) => crate::figures::mass(
                    "{0} × {1}",
                    figure.value * factor.value,
                    vec![("", figure.clone()), ("soda ash for each gram", factor.clone())],
                ),
            });
        }
        (!terms.is_empty()).then(|| Figure::sum(terms, GRAM))
    }

    /// Dye together, with its story; `None` where there is none.
    pub fn dye_figure(&self, contents: &Contents) -> Option<Figure> {
        let terms: Vec<Figure> =
            contents.parts.iter().filter(|(id, _)| self.is_dye(*id)).map(|(_, figure)| figure.clone()).collect();
        (!terms.is_empty()).then(|| Figure::sum(terms, GRAM))
    }

    /// Water and other liquids, kg.
    pub fn liquor(&self, contents: &Contents) -> Interval {
        let liquids: Interval = contents
            .parts
            .iter()
            .filter(|(id, _)| self.get(*id).is_some_and(|substance| substance.liquid))
            .map(|(_, figure)| figure.value)
            .sum();
        contents.water_mass() + liquids
    }

    /// Whether any part plays a role.
    pub fn holds_role(&self, contents: &Contents, role: Role) -> bool {
        contents
            .parts
            .iter()
            .any(|(id, figure)| figure.value.high > 0.0 && self.get(*id).is_some_and(|entry| entry.role == role))
    }

    /// Mass of what plays a role, kg.
    pub fn mass_of_role(&self, contents: &Contents, role: Role) -> Interval {
        contents
            .parts
            .iter()
            .filter(|(id, _)| self.get(*id).is_some_and(|entry| entry.role == role))
            .map(|(_, figure)| figure.value)
            .sum()
    }
}

/// The reactive class of the reaction tables that a class of the reference data names.
pub fn reactive_class(id: &str) -> Option<DyeClass> {
    Some(match id.strip_prefix("reactive-").unwrap_or(id) {
        "dichlorotriazine" => DyeClass::Dichlorotriazine,
        "monofluorotriazine" => DyeClass::Monofluorotriazine,
        "difluorochloropyrimidine" => DyeClass::Difluorochloropyrimidine,
        "dichloroquinoxaline" => DyeClass::Dichloroquinoxaline,
        "vinyl-sulfone" => DyeClass::VinylSulfone,
        "monochlorotriazine" => DyeClass::Monochlorotriazine,
        "trichloropyrimidine" => DyeClass::Trichloropyrimidine,
        _ => return None,
    })
}

fn substance(material: &Material) -> Substance {
    let entry = material.reference;
    let purity = material.purity.as_ref().map_or(Interval::ONE, |figure| figure.value);
    let molar = entry.and_then(|entry| entry.molar_mass_g_per_mol);
    let moles = molar
        .map(|molar| purity / (Interval::new(molar.low, molar.best, molar.high) * 1e-3))
        .filter(|moles| moles.is_bounded());
    let equivalents = |value: Option<tenter_reference::Sourced>| match (value, moles) {
        (Some(value), Some(moles)) => moles * Interval::new(value.low, value.best, value.high),
        _ => Interval::ZERO,
    };
    let usable = equivalents(entry.and_then(|entry| entry.fixation_alkali_per_mol));
    let usable_factor = (usable.high > 0.0 && entry.is_none_or(|entry| entry.id != "soda-ash"))
        .then(|| {
            Figure::looked(
                usable * SODA_ASH_MOLAR_MASS,
                Dimension::None,
                NUMBER,
                format!("soda ash that gives the alkali of one gram of {}", material.name),
                "molar masses",
            )
        })
        .filter(|factor| (factor.value.best - 1.0).abs() > 1e-9);
    let class = material.class;
    let ions = entry
        .and_then(|entry| entry.ions)
        .zip(moles)
        .filter(|(ions, _)| ions.hypochlorite == 0.0)
        .map(|(ions, moles)| components(&ions).scaled(moles.best));
    let role = material.role();
    Substance {
        role,
        liquid: material.liquid,
        density: material.density.as_ref().map_or(Interval::exact(1000.0), |figure| figure.value),
        purity,
        usable,
        base: equivalents(entry.and_then(|entry| entry.alkali_equivalents_per_mol)),
        acid: equivalents(entry.and_then(|entry| entry.acid_equivalents_per_mol)),
        bicarbonate: if entry.is_some_and(|entry| entry.id == "sodium-bicarbonate") {
            moles.unwrap_or_default()
        } else {
            Interval::ZERO
        },
        doubtful: ions.is_none()
            && matches!(
                role,
                Role::Alkali
                    | Role::Acid
                    | Role::Buffer
                    | Role::Mordant
                    | Role::Reducer
                    | Role::Oxidiser
                    | Role::Sequestrant
            ),
        ions,
        unmodelled: entry.and_then(|entry| entry.ions).is_some_and(|ions| ions.hypochlorite > 0.0),
        family: class.map(|class| class.family),
        reactive: class.and_then(|class| reactive_class(&class.id)),
        usable_factor,
    }
}

fn components(ions: &tenter_reference::Ions) -> Totals {
    Totals {
        sodium: ions.sodium,
        potassium: ions.potassium,
        calcium: ions.calcium,
        magnesium: ions.magnesium,
        carbonate: ions.carbonate,
        acetate: ions.acetate,
        citrate: ions.citrate,
        phosphate: ions.phosphate,
        ammonia: ions.ammonia,
        sulfite: ions.sulfite,
        chloride: ions.chloride,
        sulfate: ions.sulfate,
        silicate: ions.silicate,
    }
}
