//! The pH of a liquor, told so that it can be followed with pencil and paper.

use core::f64::consts::LN_10;

use tenter_chemistry::equilibrium::equilibrium_constants::Constants;
use tenter_chemistry::equilibrium::species::*;
use tenter_chemistry::equilibrium::{Speciation, solve};
use tenter_rehearse::{Acidity, Contents};
use tenter_resolve::Recipe;

/// What dissolves, in the order of [`tenter_chemistry::equilibrium::Totals::as_array`].
const TOTALS: [&str; 13] = [
    "sodium",
    "potassium",
    "calcium",
    "magnesium",
    "carbonate",
    "acetate",
    "citrate",
    "phosphate",
    "ammonia",
    "sulfite",
    "chloride",
    "sulfate",
    "silicate",
];

/// Formula of each species, in the order of the model.
const FORMULAS: [&str; SPECIES] = [
    "Na⁺",
    "K⁺",
    "Ca²⁺",
    "Mg²⁺",
    "H⁺",
    "NH₄⁺",
    "MgOH⁺",
    "OH⁻",
    "HCO₃⁻",
    "CO₃²⁻",
    "CH₃COO⁻",
    "H₂Cit⁻",
    "HCit²⁻",
    "Cit³⁻",
    "H₂PO₄⁻",
    "HPO₄²⁻",
    "PO₄³⁻",
    "HSO₃⁻",
    "SO₃²⁻",
    "Cl⁻",
    "SO₄²⁻",
    "HSO₄⁻",
    "H₃SiO₄⁻",
    "H₂SiO₄²⁻",
    "CO₂",
    "CH₃COOH",
    "H₃Cit",
    "H₃PO₄",
    "NH₃",
    "SO₂",
    "H₄SiO₄",
    "CaCO₃",
    "MgCO₃",
];

/// Species with less than this are left out, mol/kg.
const TRACE: f64 = 1e-9;

/// An acid that gives off a proton: pK, acid, base, and whether a molecule of water goes in.
struct Step {
    name: &'static str,
    pk: f64,
    acid: usize,
    base: usize,
    hydrated: bool,
}

fn steps(kelvin: f64) -> Vec<Step> {
    let k = Constants::at(kelvin);
    let pk = |ln_k: f64| -ln_k / LN_10;
    let step = |name, ln_k, acid, base| Step { name, pk: pk(ln_k), acid, base, hydrated: acid == CO2 };
    let ([c1, c2], [a], [i1, i2, i3]) = (k.carbonic, k.acetic, k.citric);
    let ([p1, p2, p3], [n], [s1, s2], [b], [q1, q2]) = (k.phosphoric, k.ammonium, k.sulfurous, k.bisulfate, k.silicic);
    vec![
        step("pK1 of carbonic acid", c1, CO2, HCO3),
        step("pK2 of carbonic acid", c2, HCO3, CO3),
        step("pK of acetic acid", a, ACETIC, ACETATE),
        step("pK1 of citric acid", i1, H3CIT, H2CIT),
        step("pK2 of citric acid", i2, H2CIT, HCIT),
        step("pK3 of citric acid", i3, HCIT, CIT),
        step("pK1 of phosphoric acid", p1, H3PO4, H2PO4),
        step("pK2 of phosphoric acid", p2, H2PO4, HPO4),
        step("pK3 of phosphoric acid", p3, HPO4, PO4),
        step("pK of ammonium", n, NH4, NH3),
        step("pK1 of sulfurous acid", s1, SO2, HSO3),
        step("pK2 of sulfurous acid", s2, HSO3, SO3),
        step("pK of hydrogen sulfate", b, HSO4, SO4),
        step("pK1 of silicic acid", q1, H4SIO4, H3SIO4),
        step("pK2 of silicic acid", q2, H3SIO4, H2SIO4),
    ]
}

/// Total molalities in words: `sodium 1.135, carbonate 0.5673`.
pub fn totals(acidity: &Acidity) -> String {
    let all = TOTALS.iter().zip(acidity.totals.as_array()).filter(|(_, total)| *total > 0.0);
    let told: Vec<String> = all.map(|(name, total)| format!("{name} {}", four(total))).collect();
    if told.is_empty() { "no salt, acid or alkali: 0".to_owned() } else { told.join(", ") }
}

/// The lines of the derivation, `head` first.
pub fn derivation(head: String, recipe: &Recipe, contents: &Contents, acidity: &Acidity) -> Vec<String> {
    let kelvin = acidity.temperature;
    let mut lines = vec![format!("{head} at {} °C, by these steps:", four(kelvin - 273.15))];
    lines.extend(put_in(recipe, contents, acidity.water));
    lines.push(format!("in a kg of water, mol: {}", totals(acidity)));
    let Ok(solved) = solve(&acidity.totals, kelvin) else { return lines };
    let there = |species: &usize| solved.molality(*species) > TRACE;
    let present: Vec<usize> = (0..SPECIES).filter(there).collect();
    let pairs: Vec<Step> = steps(kelvin).into_iter().filter(|step| there(&step.acid) && there(&step.base)).collect();
    let mut constants = vec![format!("pKw = {:.3}", solved.pk_water)];
    constants.extend(pairs.iter().map(|step| format!("{} = {:.3}", step.name, step.pk)));
    lines.push(format!("constants at this temperature: {}", constants.join(", ")));
    let gammas: Vec<String> = present
        .iter()
        .map(|&species| format!("γ({}) = {}", formula(species), four(solved.activity_coefficient(species))))
        .collect();
    lines.push(format!(
        "activity coefficients (Pitzer's equations at ionic strength {} mol/kg, on the scale of pH buffers): {}, \
         activity of water aw = {}",
        four(solved.ionic_strength),
        gammas.join(", "),
        four(solved.water_activity)
    ));
    let molalities: Vec<String> = present
        .iter()
        .map(|&species| format!("m({}) = {}", formula(species), four(solved.molality(species))))
        .collect();
    lines.push(format!("what there is then, mol in a kg of water: {}", molalities.join(", ")));
    lines.push(charges(&solved, &present));
    lines.push(format!(
        "pH = pKw + log10(m(OH⁻) × γ(OH⁻) ÷ aw) = {:.3} + log10({} × {} ÷ {}) = {:.2}",
        solved.pk_water,
        four(solved.molality(OH)),
        four(solved.activity_coefficient(OH)),
        four(solved.water_activity),
        solved.ph
    ));
    lines.extend(pairs.iter().map(|step| pair(&solved, step)));
    lines.push(format!(
        "real solutions lie within ±{} of such a figure; what is uncertain in the amounts, the water and the \
         temperature comes on top: {:.2} to {:.2}",
        acidity.spread, acidity.ph.low, acidity.ph.high
    ));
    lines
}

/// What each material brings.
fn put_in(recipe: &Recipe, contents: &Contents, water: f64) -> Vec<String> {
    let mut lines = Vec::new();
    for (id, mass) in &contents.parts {
        let Some(material) = recipe.materials.get(id.0) else { continue };
        let Some(entry) = material.reference.filter(|entry| entry.ions.is_some()) else { continue };
        let Some(molar) = entry.molar_mass_g_per_mol.as_ref() else { continue };
        let purity = material.purity.as_ref().map_or(1.0, |purity| purity.value.best);
        let strength = if purity == 1.0 { String::new() } else { format!(" × {}", four(purity)) };
        let moles = mass.value.best * 1000.0 * purity / molar.best;
        lines.push(format!(
            "{}: {} g{strength} ÷ {} g/mol = {} mol, in {} kg water {} mol/kg",
            material.name,
            four(mass.value.best * 1000.0),
            molar.best,
            four(moles),
            four(water),
            four(moles / water)
        ));
    }
    lines
}

/// The balance of charge.
fn charges(solved: &Speciation, present: &[usize]) -> String {
    let side = |sign: f64| {
        let mut sum = 0.0;
        let mut terms = Vec::new();
        for &species in present {
            let charge = CHARGE.get(species).copied().unwrap_or(0.0) * sign;
            if charge > 0.0 {
                sum += charge * solved.molality(species);
                let times = if charge > 1.0 { format!("{charge:.0} × ") } else { String::new() };
                terms.push(format!("{times}m({})", formula(species)));
            }
        }
        (terms.join(" + "), sum)
    };
    let ((plus, positive), (minus, negative)) = (side(1.0), side(-1.0));
    format!("charges balance: {plus} = {} and {minus} = {}", four(positive), four(negative))
}

fn pair(solved: &Speciation, step: &Step) -> String {
    let (acid, base) = (formula(step.acid), formula(step.base));
    let (water, aw) =
        if step.hydrated { (" × aw", format!(" × {}", four(solved.water_activity))) } else { ("", String::new()) };
    format!(
        "pH = pK + log10(m({base}) × γ({base}) ÷ (m({acid}) × γ({acid}){water})) = {:.3} + log10({} × {} ÷ ({} × \
         {}{aw})) = {:.2}",
        step.pk,
        four(solved.molality(step.base)),
        four(solved.activity_coefficient(step.base)),
        four(solved.molality(step.acid)),
        four(solved.activity_coefficient(step.acid)),
        solved.ph
    )
}

fn formula(species: usize) -> &'static str {
    FORMULAS.get(species).copied().unwrap_or("?")
}

/// Four digits; powers of ten where there would be many noughts.
fn four(x: f64) -> String {
    let rounded: f64 = format!("{x:.3e}").parse().unwrap_or(x);
    if rounded != 0.0 && !(1e-4..1e6).contains(&rounded.abs()) { format!("{rounded:e}") } else { format!("{rounded}") }
}
