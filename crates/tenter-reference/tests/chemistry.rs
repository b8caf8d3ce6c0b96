//! Formulas, molar masses, hydrates and ions hang together, and agree with outside data.

use std::collections::BTreeMap;
use tenter_reference::{Form, Formula, FormulaError, Material, Reference};

fn formula(text: &str) -> Formula {
    Formula::parse(text).unwrap_or_else(|error| panic!("{text}: {error}"))
}

fn mass(text: &str) -> f64 {
    formula(text).molar_mass().unwrap_or_else(|error| panic!("{text}: {error}"))
}

/// Agreement to the last figure written.
fn agree(a: f64, b: f64) -> bool {
    (a - b).abs() < 0.0061
}

/// Agreement to the uncertainty of the weights, which differ from table to table: sulfur alone is 32.06 ± 0.02.
fn agree_between_tables(a: f64, b: f64) -> bool {
    (a - b).abs() <= 1e-4 * a
}

/// Conventional molar masses from the IUPAC Green Book's method and the 2021 weights, worked by hand:
/// water 2 × 1.008 + 15.999; sodium carbonate 2 × 22.990 + 12.011 + 3 × 15.999.
#[test]
fn formulas_are_weighed_right() {
    assert!(agree(mass("H2O"), 18.015));
    assert!(agree(mass("Na2CO3"), 105.988));
    assert!(agree(mass("Na2CO3·10H2O"), 286.138));
    assert!(agree(mass("CuSO4·5H2O"), mass("CuSO4") + 5.0 * 18.015));
    assert!(agree(mass("KAl(SO4)2·12H2O"), mass("KAlS2O8") + 12.0 * 18.015));
    assert!(agree(mass("2Na2CO3·3H2O2"), 2.0 * mass("Na2CO3") + 3.0 * mass("H2O2")));
    assert_eq!(formula("Ca(OH)2").count("H"), 2);
    assert_eq!(formula("K3[Fe(CN)6]").count("N"), 6);
}

#[test]
fn nonsense_is_no_formula() {
    assert_eq!(Formula::parse("Na2CO3)"), Err(FormulaError::Bracket));
    assert_eq!(Formula::parse("(Na2CO3"), Err(FormulaError::Bracket));
    assert_eq!(Formula::parse("water"), Err(FormulaError::Unexpected('w')));
    assert_eq!(Formula::parse("H0"), Err(FormulaError::Count));
    assert_eq!(Formula::parse("H99999999999"), Err(FormulaError::Count));
    assert_eq!(Formula::parse("(H4000000000)4000000000"), Err(FormulaError::Count));
    assert_eq!(formula("Xx").molar_mass(), Err(FormulaError::Element("Xx".to_owned())));
    assert!(Formula::parse(&"(".repeat(100_000)).is_err());
}

#[test]
fn molar_masses_follow_from_the_formulas() {
    let reference = Reference::bundled();
    let materials = reference.materials().map(|m| (&m.id, m.formula.as_deref(), m.molar_mass_g_per_mol));
    let dyes = reference.dyes().map(|d| (&d.id, d.formula.as_ref().map(|f| f.value.as_str()), d.molar_mass_g_per_mol));
    let mut checked = 0;
    for (id, formula, stated) in materials.chain(dyes) {
        match (formula, stated) {
            (Some(text), Some(stated)) => {
                let computed = mass(text);
                assert!(agree(computed, stated.best), "{id}: {text} weighs {computed}, not {}", stated.best);
                checked += 1;
            }
            (None, None) => {}
            _ => panic!("{id}: a formula and a molar mass go together"),
        }
    }
    assert!(checked >= 80, "only {checked}");
}

/// tests/data/molar_masses.csv, from the `chemicals` library by CAS number.
#[test]
fn molar_masses_and_formulas_agree_with_a_library() {
    let reference = Reference::bundled();
    let mut checked = 0;
    for line in include_str!("data/molar_masses.csv").lines().skip(1) {
        let [id, cas, theirs, weight] = line.split(',').collect::<Vec<_>>()[..] else { panic!("{line}") };
        let weight: f64 = weight.parse().expect(line);
        let (our_cas, our_formula, our_mass) = match (reference.material(id), reference.dye(id)) {
            (Some(m), _) => (m.cas.as_ref(), m.formula.as_deref(), m.molar_mass_g_per_mol),
            (_, Some(d)) => (d.cas.as_ref(), d.formula.as_ref().map(|f| f.value.as_str()), d.molar_mass_g_per_mol),
            (None, None) => panic!("{id} is no longer in the data: run tests/data/regenerate.py"),
        };
        assert_eq!(our_cas.map(|stated| stated.value.as_str()), Some(cas), "{id}");
        assert_eq!(formula(our_formula.unwrap_or_default()), formula(theirs), "{id}");
        let our_mass = our_mass.map_or(0.0, |figure| figure.best);
        assert!(agree_between_tables(our_mass, weight), "{id}: {our_mass} here, {weight} in the library");
        checked += 1;
    }
    assert!(checked >= 70, "only {checked}");
}

#[test]
fn a_hydrate_is_its_anhydrous_substance_and_water() {
    let reference = Reference::bundled();
    let mut hydrates = 0;
    for material in reference.materials() {
        let Some(counts_as) = &material.anhydrous else {
            continue;
        };
        let plain = reference.material(&counts_as.id).expect("checked when loading");
        assert!(plain.anhydrous.is_none(), "{}: {} counts as something else again", material.id, plain.id);
        let with = formula(material.formula.as_deref().unwrap_or_default());
        let without = formula(plain.formula.as_deref().unwrap_or_default());
        let hydrogen = with.count("H") - without.count("H");
        let oxygen = with.count("O") - without.count("O");
        assert_eq!(hydrogen, 2 * oxygen, "{}: more than water is missing", material.id);
        for (element, count) in with.elements().filter(|(element, _)| !["H", "O"].contains(element)) {
            assert_eq!(count, without.count(element), "{}: {element}", material.id);
        }
        let grade = hydrogen == 0;
        assert!(if grade { counts_as.fraction == 1.0 } else { counts_as.fraction < 1.0 }, "{}", material.id);
        assert_eq!(material.ions, plain.ions, "{}: hydrate and anhydrous bring the same ions", material.id);
        assert_eq!(material.alkali_equivalents_per_mol, plain.alkali_equivalents_per_mol, "{}", material.id);
        assert_eq!(material.acid_equivalents_per_mol, plain.acid_equivalents_per_mol, "{}", material.id);
        hydrates += usize::from(!grade);
    }
    assert!(hydrates >= 12, "only {hydrates}");
}

/// Elements of one mole of each component, anions without hydrogen that an alkali can take.
fn component(name: &str) -> &'static str {
    match name {
        "sodium" => "Na",
        "potassium" => "K",
        "calcium" => "Ca",
        "magnesium" => "Mg",
        "carbonate" => "CO3",
        "acetate" => "C2H3O2",
        "citrate" => "C6H5O7",
        "phosphate" => "PO4",
        "ammonia" => "NH3",
        "sulfite" => "SO3",
        "chloride" => "Cl",
        "sulfate" => "SO4",
        "silicate" => "SiO3",
        "hypochlorite" => "ClO",
        other => panic!("no component {other}"),
    }
}

/// What is left of the formula after the components have to be water and as many H⁺ or OH⁻ as the charges ask for.
#[test]
fn ions_add_up_to_the_formula() {
    let mut checked = 0;
    for material in Reference::bundled().materials() {
        let Some(ions) = material.ions else { continue };
        let text = material.formula.as_deref().unwrap_or_else(|| panic!("{}: ions need a formula", material.id));
        let mut left: BTreeMap<String, f64> =
            formula(text).elements().map(|(element, count)| (element.to_owned(), f64::from(count))).collect();
        for (name, moles) in tenter_reference::ION_NAMES.iter().zip(ions.amounts()) {
            for (element, count) in formula(component(name)).elements() {
                *left.entry(element.to_owned()).or_default() -= moles * f64::from(count);
            }
        }
        let hydrogen = left.remove("H").unwrap_or_default();
        let oxygen = left.remove("O").unwrap_or_default();
        // Protons beyond water; negative for hydroxide.
        let protons = hydrogen - 2.0 * oxygen;
        assert_eq!(protons, -ions.charge(), "{}: {text} and its ions differ in hydrogen", material.id);
        for (element, count) in left {
            assert_eq!(count, 0.0, "{}: {text} and its ions differ in {element}", material.id);
        }
        checked += 1;
    }
    assert!(checked >= 30, "only {checked}");
}

/// Equivalents are the protons that the listed components can still take or give, so they must not contradict the charge.
#[test]
fn equivalents_agree_with_the_ions() {
    // Protons each component takes on the way from pH above 10 or so to pH 4.5 (pK values: Goldberg et al., J. Phys. Chem. Ref.
    // Data 2002, 31, 231): carbonate 2, phosphate 2, silicate 2, sulfite 1, ammonia 1; acetate and citrate fall between.
    let takes = |material: &Material| {
        let ions = material.ions?;
        (ions.acetate + ions.citrate + ions.hypochlorite == 0.0).then(|| {
            let anions = 2.0 * (ions.carbonate + ions.phosphate + ions.silicate) + ions.sulfite + ions.ammonia;
            // Protons the material brings along are taken up already; hydroxide it brings takes more.
            anions + ions.charge()
        })
    };
    let mut checked = 0;
    for material in Reference::bundled().materials() {
        let (Some(stated), Some(expected)) = (material.alkali_equivalents_per_mol, takes(material)) else {
            continue;
        };
        assert_eq!(stated.best, expected, "{}", material.id);
        let fixing = material.fixation_alkali_per_mol.unwrap_or_else(|| panic!("{}", material.id));
        assert!(fixing.best <= stated.best, "{}: more alkali above pH 10 than above pH 4.5", material.id);
        checked += 1;
    }
    assert!(checked >= 15, "only {checked}");
}

#[test]
fn solutions_have_a_strength_and_liquids_a_density() {
    let reference = Reference::bundled();
    for material in reference.materials() {
        let id = &material.id;
        assert_eq!(material.form == Form::Solution, material.strength.is_some(), "{id}");
        if !material.form.is_dry() {
            assert!(material.density_kg_per_m3.is_some(), "{id}: a liquid needs a density");
        }
        if let Some(density) = material.density_kg_per_m3 {
            assert!(density.low > 100.0 && density.high < 4000.0, "{id}: {density:?}");
        }
        if let Some(strength) = material.strength {
            assert!(strength.fraction.low > 0.0 && strength.fraction.high < 1.0, "{id}");
        }
        if let Some(solute) = &material.solute {
            let solute = reference.material(solute).expect("checked when loading");
            assert_eq!((&material.formula, &material.ions), (&solute.formula, &solute.ions), "{id}");
        }
    }
}

/// CAS numbers end in a check digit: the sum of the digits, each times its place from the right, modulo ten
/// (CAS Registry, "Check digit verification").
#[test]
fn cas_numbers_check() {
    let reference = Reference::bundled();
    let materials = reference.materials().filter_map(|m| Some((&m.id, m.cas.as_ref()?)));
    let dyes = reference.dyes().filter_map(|d| Some((&d.id, d.cas.as_ref()?)));
    for (id, cas) in materials.chain(dyes) {
        let digits: Vec<u32> = cas.value.chars().filter_map(|c| c.to_digit(10)).collect();
        let (check, rest) = digits.split_last().expect(id);
        let sum: u32 = rest.iter().rev().zip(1..).map(|(digit, place)| digit * place).sum();
        assert_eq!(sum % 10, *check, "{id}: {} is no CAS number", cas.value);
        assert_eq!(cas.value.matches('-').count(), 2, "{id}");
    }
}
