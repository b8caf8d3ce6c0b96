//! The bath for people.

use tenter_chemistry::equilibrium::Caution;
use tenter_quantity::standard::GRAM_PER_MILLILITRE;
use tenter_quantity::{Figure, Place, show_in, show_number};
use tenter_reference::{HazardClaim, Reference};
use tenter_rehearse::Saturation;
use tenter_resolve::recipe::{Material, Substance};

use crate::account::words;
use crate::bath::Reckoned;
use crate::output::{Output, WIDTH};
use crate::text::safe::safe;
use crate::text::table::{Edge, Table};
use crate::text::wrap::{paragraph, width};

/// Prints the bath.
pub fn show(bath: &Reckoned<'_>, output: &mut Output) {
    let title = safe(&bath.amounts).into_owned();
    output.raw(&paragraph(&title, 0, 0, WIDTH));
    output.raw(&format!("{}\n", "─".repeat(width(&title).min(WIDTH))));
    ingredients(bath, output);
    made(bath, output);
    findings(bath, output);
    cautions(bath, output);
}

fn ingredients(bath: &Reckoned<'_>, output: &mut Output) {
    let mut table = Table::new(&[("", Edge::Left), ("", Edge::Right), ("", Edge::Right), ("", Edge::Left)]);
    for ingredient in &bath.mix.ingredients {
        let Substance::Material(id) = ingredient.what else { continue };
        let Some(material) = bath.recipe.materials.get(id.0) else { continue };
        let amount = ingredient.amount.as_ref();
        let volume =
            amount.and_then(|amount| amount.volume.as_ref()).filter(|_| material.liquid || material.is_water());
        let warm = ingredient.temperature.as_ref().map(|figure| format!("at {}", figure.show()));
        table.row(
            vec![
                safe(&material.name).into_owned(),
                amount.and_then(|amount| amount.mass.as_ref()).map_or_else(|| "?".to_owned(), Figure::show),
                volume.map(Figure::show).unwrap_or_default(),
                warm.unwrap_or_default(),
            ],
            Vec::new(),
        );
    }
    if !table.is_empty() {
        output.raw(&table.render(2, WIDTH));
        output.raw("\n");
    }
}

fn line(label: &str, value: &str, output: &mut Output) {
    let lines = crate::text::wrap::wrap(&safe(value), WIDTH - 16);
    for (number, text) in lines.iter().enumerate() {
        let label = if number == 0 { label } else { "" };
        output.raw(&format!("  {label:<14}{text}\n"));
    }
}

fn made(bath: &Reckoned<'_>, output: &mut Output) {
    let written = |place: Place| format!("“{}”", bath.words(place));
    if let Some(volume) = &bath.mix.volume {
        line("volume", &volume.show(), output);
    }
    if let Some(mass) = &bath.mix.mass {
        line("mass", &mass.show(), output);
    }
    let Some(made) = bath.made else { return };
    if let Some(density) = made.density() {
        line("density", &show_in(density, GRAM_PER_MILLILITRE), output);
    }
    line("temperature", &made.temperature.show(), output);
    match made.acidity(&bath.rehearsal.substances) {
        Some(acidity) => {
            line("pH", &format!("{} at {}", words::bare_ph(acidity.ph), made.temperature.show()), output);
            for caution in &acidity.cautions {
                line("", caution_words(*caution), output);
            }
        }
        None => line("pH", "not known: no water, or something in it that the model does not know", output),
    }
    for (number, full) in bath.saturation().iter().enumerate() {
        let name = bath.recipe.materials.get(full.material.0).map_or("", |material| &material.name);
        line(if number == 0 { "dissolves" } else { "" }, &format!("{name}: {}", dissolved(full)), output);
    }
    let figures = bath.mix.volume.iter().chain(&bath.mix.mass).chain(made.contents.parts.iter().map(|(_, mass)| mass));
    let mut told: Vec<String> = Vec::new();
    for figure in figures {
        if let Some(input) = words::measure(figure, &written)
            && !told.contains(&input)
        {
            line(if told.is_empty() { "wide" } else { "" }, &format!("to narrow this, measure {input}"), output);
            told.push(input);
        }
    }
}

/// Says whether all of it dissolves, and where it would.
fn dissolved(full: &Saturation) -> String {
    let holds = format!("{} g in each kg of water at most", show_number(full.dissolves * 1000.0));
    let share = format!("{}% of what the water holds ({holds})", words::rough(full.full * 100.0));
    let warmer = |kelvin: f64| format!("{:.0} °C", (kelvin - 273.15).ceil());
    match (full.full.high <= 1.0, full.full.low > 1.0, full.dissolves_at) {
        (true, _, _) => share,
        (false, true, Some(kelvin)) => format!("does not all dissolve: {share}; it would from {} up", warmer(kelvin)),
        (false, true, None) => format!("does not all dissolve at any temperature: {share}; take more water"),
        (false, false, Some(kelvin)) => format!("may not all dissolve: {share}; it does from {} up", warmer(kelvin)),
        (false, false, None) => format!("may not all dissolve: {share}; take more water"),
    }
}

/// What a reader of the pH must know.
pub fn caution_words(caution: Caution) -> &'static str {
    match caution {
        Caution::BeyondModel => "stronger than the pH model was made for: take it as a rough figure",
        Caution::Estimated => "a part of the pH rests on estimated coefficients",
        Caution::Fizzes => "it fizzes: carbon dioxide leaves and the pH climbs; add little by little, leave it open",
        Caution::LosesCarbonDioxide => "standing open it slowly loses carbon dioxide and the pH climbs",
        Caution::ChalkForms => "chalk may cloud it",
    }
}

fn findings(bath: &Reckoned<'_>, output: &mut Output) {
    if bath.findings.is_empty() {
        return;
    }
    output.raw("\nFindings\n");
    for finding in &bath.findings {
        let words = format!("{}: {} [{}]", finding.level.word(), finding.message, finding.rule);
        output.raw(&paragraph(&safe(&words), 2, 4, WIDTH));
        if !finding.help.is_empty() {
            output.raw(&paragraph(&safe(&finding.help), 4, 4, WIDTH));
        }
    }
}

/// Hazard statements that hold as bought, with limits by strength; those for strengths it does not have are left out.
pub fn hazards(material: &Material) -> Vec<(String, String)> {
    let reference = Reference::bundled();
    let strength = material.purity.as_ref().map(|purity| purity.value * 100.0);
    let applies = |claim: &&HazardClaim| {
        strength.is_none_or(|strength| {
            claim.at_least_percent.is_none_or(|from| strength.high >= from)
                && claim.below_percent.is_none_or(|to| strength.low < to)
        })
    };
    claims(material)
        .iter()
        .filter(applies)
        .map(|claim| {
            let mut words = reference.hazard(&claim.code).map_or_else(String::new, |statement| statement.text.clone());
            match (claim.at_least_percent, claim.below_percent) {
                (Some(from), Some(to)) => words.push_str(&format!(" (from {from}% to below {to}% by weight)")),
                (Some(from), None) => words.push_str(&format!(" (from {from}% by weight)")),
                (None, Some(to)) => words.push_str(&format!(" (below {to}% by weight)")),
                (None, None) => {}
            }
            (claim.code.clone(), words)
        })
        .collect()
}

/// What is to be said of a material at the bench.
pub fn caution_lines(material: &Material) -> Vec<String> {
    let entry = material.reference.map(|entry| &entry.cautions).or_else(|| material.dye.map(|dye| &dye.cautions));
    let mut lines: Vec<String> = entry.cloned().unwrap_or_default();
    if lines.is_empty() && material.dusty() {
        lines.push("Dusty when dry: dust mask, gloves and goggles on before the lid comes off.".to_owned());
    }
    lines
}

/// The hazard statements of a material.
fn claims(material: &Material) -> &'static [HazardClaim] {
    match (material.reference, material.dye) {
        (Some(entry), _) => &entry.hazards,
        (None, Some(dye)) => &dye.hazards,
        (None, None) => &[],
    }
}

fn cautions(bath: &Reckoned<'_>, output: &mut Output) {
    let mut any = false;
    for material in &bath.recipe.materials {
        let hazards = hazards(material);
        let lines = caution_lines(material);
        if hazards.is_empty() && lines.is_empty() {
            continue;
        }
        if !any {
            output.raw("\nCautions\n");
            any = true;
        }
        output.raw(&format!("  {}\n", safe(&material.name)));
        for (code, words) in hazards {
            output.raw(&paragraph(&safe(&format!("{code} {words}")), 4, 6, WIDTH));
        }
        for words in lines {
            output.raw(&paragraph(&safe(&words), 4, 6, WIDTH));
        }
    }
    if any {
        output.raw(&paragraph(DEFER, 2, 2, WIDTH));
    }
}

/// Said wherever cautions are shown.
pub const DEFER: &str =
    "The product's own safety data sheet and local rules come first; nothing here certifies that anything is safe.";
