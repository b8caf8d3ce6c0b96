//! One entry with its figures, hazards and cautions, and the sources they come from.

use tenter_quantity::standard::GRAM_PER_MILLILITRE;
use tenter_quantity::{Interval, show_in, show_number};
use tenter_reference::{Dye, DyeClass, Entry, Fibre, HazardClaim, Material, Reference, Source, Sourced, StrengthBasis};

use crate::output::{Output, WIDTH};
use crate::text::wrap::{paragraph, width};

/// Prints an entry.
pub fn show(reference: &Reference, entry: Entry<'_>, output: &mut Output) {
    let mut page = Page::default();
    match entry {
        Entry::Material(material) => self::material(reference, material, &mut page),
        Entry::Dye(dye) => self::dye(reference, dye, &mut page),
        Entry::Fibre(fibre) => self::fibre(fibre, &mut page),
        Entry::Class(class) => self::class(class, &mut page),
    }
    let name = entry.name();
    output.raw(&format!("{name}\n{}\n", "─".repeat(width(name).min(WIDTH))));
    if !entry.synonyms().is_empty() {
        output.raw(&paragraph(&format!("also {}", entry.synonyms().join(", ")), 0, 2, WIDTH));
    }
    output.raw("\n");
    output.raw(&page.text);
    if !page.sources.is_empty() {
        output.raw("\nSources\n");
        for (number, source) in page.sources.iter().enumerate() {
            let text = format!("[{}] {} ({})", number + 1, source.citation, source.kind.words());
            output.raw(&paragraph(&text, 2, 6, WIDTH));
        }
    }
}

/// Lines with marks that point to a list of sources, each listed once.
#[derive(Default)]
struct Page<'a> {
    text: String,
    sources: Vec<&'a Source>,
}

/// Width of the words before the values.
const LABEL: usize = 22;

impl<'a> Page<'a> {
    fn mark(&mut self, source: &'a Source) -> usize {
        match self.sources.iter().position(|known| known.id == source.id) {
            Some(at) => at + 1,
            None => {
                self.sources.push(source);
                self.sources.len()
            }
        }
    }

    fn line(&mut self, label: &str, value: &str) {
        let text = format!("{label}{}{value}", " ".repeat(LABEL.saturating_sub(width(label)).max(1)));
        // Wrapped by hand: the gap behind the label must stay.
        let lines = crate::text::wrap::wrap(value, WIDTH - LABEL);
        for (number, line) in lines.iter().enumerate() {
            match (number, lines.len()) {
                (0, 1) => self.text.push_str(text.trim_end()),
                (0, _) => self
                    .text
                    .push_str(&format!("{label}{}{line}", " ".repeat(LABEL.saturating_sub(width(label)).max(1)))),
                _ => self.text.push_str(&format!("{}{line}", " ".repeat(LABEL))),
            }
            self.text.push('\n');
        }
    }

    fn sourced(&mut self, label: &str, value: &str, source: &'a Source) {
        let mark = self.mark(source);
        self.line(label, &format!("{value} [{mark}]"));
    }

    fn bullets(&mut self, heading: &str, lines: impl Iterator<Item = String>) {
        let mut first = true;
        for line in lines {
            if first {
                self.text.push_str(&format!("\n{heading}\n"));
                first = false;
            }
            self.text.push_str(&paragraph(&line, 2, 4, WIDTH));
        }
    }

    fn hazards(&mut self, reference: &'a Reference, claims: &'a [HazardClaim]) {
        let lines: Vec<String> = claims
            .iter()
            .map(|claim| {
                let words = reference.hazard(&claim.code).map_or("", |statement| &statement.text);
                let mut line = format!("{} {words}", claim.code);
                match (claim.at_least_percent, claim.below_percent) {
                    (Some(from), Some(to)) => line.push_str(&format!(" (from {from}% to below {to}% by weight)")),
                    (Some(from), None) => line.push_str(&format!(" (from {from}% by weight)")),
                    (None, Some(to)) => line.push_str(&format!(" (below {to}% by weight)")),
                    (None, None) => {}
                }
                if let Some(note) = &claim.note {
                    line.push_str(&format!("; {note}"));
                }
                let mark = self.mark(claim.source);
                format!("{line} [{mark}]")
            })
            .collect();
        self.bullets("Hazard statements", lines.into_iter());
    }

    fn cautions(&mut self, cautions: &[String], note: Option<&String>) {
        self.bullets("Cautions", cautions.iter().cloned());
        self.bullets("Note", note.into_iter().cloned());
        if !cautions.is_empty() {
            let defer = "The product's own safety data sheet and local rules come first; nothing here certifies that \
                         anything is safe.";
            self.text.push_str(&paragraph(defer, 2, 2, WIDTH));
        }
    }
}

fn interval(figure: &Sourced) -> Interval {
    Interval::new(figure.low, figure.best, figure.high)
}

fn material<'a>(reference: &'a Reference, entry: &'a Material, page: &mut Page<'a>) {
    if let Some(formula) = &entry.formula {
        page.line("formula", formula);
    }
    if let Some(mass) = &entry.molar_mass_g_per_mol {
        page.sourced("molar mass", &format!("{} g/mol", show_number(interval(mass))), mass.source);
    }
    if let Some(cas) = &entry.cas {
        page.sourced("CAS number", &cas.value, cas.source);
    }
    if let Some(anhydrous) = &entry.anhydrous {
        let name = reference.material(&anhydrous.id).map_or(anhydrous.id.as_str(), |other| &other.name);
        let share = show_number(Interval::exact(anhydrous.fraction));
        page.line("counts as", &format!("{share} kg {name} in each kg"));
    }
    if let Some(density) = &entry.density_kg_per_m3 {
        let label = if entry.form.is_dry() { "bulk density" } else { "density" };
        page.sourced(label, &show_in(interval(density), GRAM_PER_MILLILITRE), density.source);
    }
    if let Some(strength) = &entry.strength {
        let of = match strength.basis {
            StrengthBasis::MassPerMass => "g in 100 g",
            StrengthBasis::MassPerVolume => "g in 100 mL",
        };
        let value = show_number(interval(&strength.fraction.clone()) * 100.0);
        page.sourced("usual strength", &format!("{value} {of}"), strength.fraction.source);
    }
    let equivalents = [
        ("acid taken up", &entry.alkali_equivalents_per_mol, "mol by each mol, down to pH 4.5"),
        ("alkali for fixing", &entry.fixation_alkali_per_mol, "mol in each mol, above pH 10"),
        ("alkali taken up", &entry.acid_equivalents_per_mol, "mol by each mol, up to pH 9"),
    ];
    for (label, figure, unit) in equivalents {
        if let Some(figure) = figure {
            page.sourced(label, &format!("{} {unit}", show_number(interval(figure))), figure.source);
        }
    }
    if entry.never_for_food {
        page.line("tools", "what touched it never goes back to food");
    }
    page.hazards(reference, &entry.hazards);
    page.cautions(&entry.cautions, entry.note.as_ref());
}

fn dye<'a>(reference: &'a Reference, entry: &'a Dye, page: &mut Page<'a>) {
    let class = reference.class(&entry.class.value).map_or(entry.class.value.as_str(), |class| &class.name);
    page.sourced("class", class, entry.class.source);
    if let Some(cas) = &entry.cas {
        page.sourced("CAS number", &cas.value, cas.source);
    }
    if let Some(formula) = &entry.formula {
        page.sourced("formula", &formula.value, formula.source);
    }
    if let Some(mass) = &entry.molar_mass_g_per_mol {
        page.sourced("molar mass", &format!("{} g/mol", show_number(interval(mass))), mass.source);
    }
    if let Some(groups) = &entry.reactive_groups {
        page.sourced("reactive groups", &groups.value.to_string(), groups.source);
    }
    let density = &entry.density_kg_per_m3;
    page.sourced("bulk density", &show_in(interval(density), GRAM_PER_MILLILITRE), density.source);
    page.hazards(reference, &entry.hazards);
    page.cautions(&entry.cautions, entry.note.as_ref());
}

fn fibre<'a>(entry: &'a Fibre, page: &mut Page<'a>) {
    let allowances = [
        ("moisture, EU", &entry.moisture_allowance.eu_percent),
        ("moisture, ASTM", &entry.moisture_allowance.astm_percent),
    ];
    for (label, figure) in allowances {
        if let Some(figure) = figure {
            let value = format!("{}% of the oven-dry weight", show_number(interval(figure)));
            page.sourced(label, &value, figure.source);
        }
    }
    if let Some(heat) = &entry.specific_heat_j_per_kg_k {
        page.sourced("specific heat", &format!("{} J/(kg·K)", show_number(interval(heat))), heat.source);
    }
    for (family, takes) in &entry.dyeability {
        let uptake = match takes.uptake {
            tenter_reference::Uptake::Yes => "dyes",
            tenter_reference::Uptake::Weak => "tints or washes out",
            tenter_reference::Uptake::No => "stays undyed",
        };
        let note = takes.note.as_ref().map(|note| format!("; {note}")).unwrap_or_default();
        page.sourced(family.words(), &format!("{uptake}{note}"), takes.source);
    }
    page.cautions(&[], entry.note.as_ref());
}

fn class<'a>(entry: &'a DyeClass, page: &mut Page<'a>) {
    page.line("family", entry.family.words());
    let needs = entry.needs.value;
    let wants = [
        (needs.alkali, "alkali"),
        (needs.acid, "acid"),
        (needs.salt, "salt from a long bath"),
        (needs.reducer, "a reducing agent"),
        (needs.mordant, "a mordant"),
    ];
    let wants: Vec<&str> = wants.iter().filter(|(needed, _)| *needed).map(|(_, word)| *word).collect();
    if !wants.is_empty() {
        page.sourced("needs", &wants.join(", "), entry.needs.source);
    }
    let range = |figure: &Sourced| show_number(interval(figure));
    if let Some(warm) = &entry.fixation_celsius {
        page.sourced("fixes at", &format!("{} °C", range(warm)), warm.source);
    }
    if let Some(ph) = &entry.ph {
        page.sourced("fixes at pH", &range(ph), ph.source);
    }
    if let Some(batch) = &entry.reference_batch {
        let value = format!("{} h at {} °C", range(&batch.hours), batch.at_celsius);
        page.sourced("full batch", &value, batch.hours.source);
    }
    if let Some(fixed) = &entry.fixation_yield {
        let value = format!("{}% of the dye", show_number(interval(fixed) * 100.0));
        page.sourced("share fixed", &value, fixed.source);
    }
    page.cautions(&[], entry.note.as_ref());
}
