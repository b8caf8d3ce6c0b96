//! All entries, a table a kind.

use tenter_reference::{Reference, Role};

use crate::output::{Output, WIDTH};
use crate::text::table::{Edge, Table};

/// Roles in the order a recipe meets them, with the heading each is listed under.
const ROLES: [(Role, &str); 16] = [
    (Role::Water, "Water"),
    (Role::Ice, "Ice"),
    (Role::Alkali, "Alkalis"),
    (Role::Acid, "Acids"),
    (Role::Buffer, "Buffers"),
    (Role::Salt, "Salts"),
    (Role::Humectant, "Humectants"),
    (Role::Thickener, "Thickeners"),
    (Role::Sequestrant, "Water softeners"),
    (Role::WettingAgent, "Wetting agents"),
    (Role::Detergent, "Detergents"),
    (Role::Softener, "Softeners"),
    (Role::Reducer, "Reducing agents"),
    (Role::Oxidiser, "Oxidising agents"),
    (Role::Mordant, "Mordants"),
    (Role::Other, "Others"),
];

/// Prints them.
pub fn show(reference: &Reference, output: &mut Output) {
    let mut first = true;
    for (role, heading) in ROLES {
        let mut table = Table::new(&[("", Edge::Left), ("", Edge::Left), ("", Edge::Right)]);
        for material in reference.materials().filter(|material| material.role == role) {
            let mass = material.molar_mass_g_per_mol.map(|mass| format!("{} g/mol", mass.best)).unwrap_or_default();
            let names = material.synonyms.iter().take(3).cloned().collect::<Vec<_>>().join(", ");
            let beneath = if names.is_empty() { Vec::new() } else { vec![format!("also {names}")] };
            table.row(vec![material.name.clone(), material.formula.clone().unwrap_or_default(), mass], beneath);
        }
        section(heading, &table, &mut first, output);
    }
    let mut dyes = Table::new(&[("", Edge::Left), ("", Edge::Left)]);
    for dye in reference.dyes() {
        let class = reference.class(&dye.class.value).map_or(dye.class.value.as_str(), |class| &class.name);
        dyes.row(vec![dye.name.clone(), class.to_owned()], Vec::new());
    }
    section("Dyes", &dyes, &mut first, output);
    let mut classes = Table::new(&[("", Edge::Left), ("", Edge::Left)]);
    for class in reference.classes() {
        classes.row(vec![class.name.clone(), class.family.words().to_owned()], Vec::new());
    }
    section("Dye classes", &classes, &mut first, output);
    let mut fibres = Table::new(&[("", Edge::Left)]);
    for fibre in reference.fibres() {
        fibres.row(vec![fibre.name.clone()], Vec::new());
    }
    section("Fibres", &fibres, &mut first, output);
    output.raw("\ntenter materials NAME shows an entry with its figures and their sources.\n");
}

fn section(heading: &str, table: &Table, first: &mut bool, output: &mut Output) {
    if table.is_empty() {
        return;
    }
    if !*first {
        output.raw("\n");
    }
    *first = false;
    output.raw(&format!("{heading}\n"));
    output.raw(&table.render(2, WIDTH));
}
