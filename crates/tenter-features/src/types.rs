//! The entry of the reference data behind a name, as a page to read.

use std::fmt::Write as _;

use tenter_reference::{Dye, DyeClass, Entry, Fibre, HazardClaim, Material, Reference, Source, Sourced};

/// A page on an entry, in Markdown: what it is, its figures with their sources, its hazards.
pub fn page(entry: Entry<'_>) -> String {
    let mut page = Page::new(entry.name());
    if !entry.synonyms().is_empty() {
        page.line(&format!("Also: {}.", entry.synonyms().join(", ")));
    }
    match entry {
        Entry::Material(material) => page.material(material),
        Entry::Dye(dye) => page.dye(dye),
        Entry::Fibre(fibre) => page.fibre(fibre),
        Entry::Class(class) => page.class(class),
    }
    page.finish()
}

struct Page {
    text: String,
    sources: Vec<String>,
}

impl Page {
    fn new(title: &str) -> Self {
        Self { text: format!("**{title}**\n"), sources: Vec::new() }
    }

    fn line(&mut self, text: &str) {
        self.text.push('\n');
        self.text.push_str(text);
        self.text.push('\n');
    }

    fn item(&mut self, text: &str) {
        if !self.text.ends_with("\n- ") && !self.last_is_item() {
            self.text.push('\n');
        }
        let _ = writeln!(self.text, "- {text}");
    }

    fn last_is_item(&self) -> bool {
        self.text.lines().next_back().is_some_and(|line| line.starts_with("- "))
    }

    /// A footnote number for a source.
    fn source(&mut self, source: &Source) -> String {
        let told = format!("{} ({})", source.citation, source.kind.words());
        let at = match self.sources.iter().position(|have| *have == told) {
            Some(at) => at,
            None => {
                self.sources.push(told);
                self.sources.len() - 1
            }
        };
        format!("[{}]", at + 1)
    }

    fn figure(&mut self, what: &str, figure: &Sourced, unit: &str) {
        let mark = self.source(figure.source);
        let value = if figure.low == figure.high {
            format!("{}", figure.best)
        } else {
            format!("{} ({} to {})", figure.best, figure.low, figure.high)
        };
        self.item(&format!("{what}: {value}{unit} {mark}"));
    }

    fn hazards(&mut self, claims: &[HazardClaim], cautions: &[String], dust: bool) {
        if claims.is_empty() && cautions.is_empty() && !dust {
            return;
        }
        self.line("Hazards:");
        for claim in claims {
            let text = Reference::bundled().hazard(&claim.code).map_or("", |statement| statement.text.as_str());
            let mark = self.source(claim.source);
            let from = claim.at_least_percent.map(|share| format!(" from {share}%")).unwrap_or_default();
            let below = claim.below_percent.map(|share| format!(" below {share}%")).unwrap_or_default();
            self.item(&format!("{}{from}{below}: {text} {mark}", claim.code));
        }
        if dust {
            self.item("Dry handling raises dust: wear a dust mask, gloves and goggles.");
        }
        for caution in cautions {
            self.item(caution);
        }
        self.line("Follow the safety data sheet of what you buy, and the local code.");
    }

    fn material(&mut self, material: &Material) {
        if let Some(formula) = &material.formula {
            self.item(&format!("formula: {formula}"));
        }
        if let Some(cas) = &material.cas {
            let mark = self.source(cas.source);
            self.item(&format!("CAS number: {} {mark}", cas.value));
        }
        let density = if material.form.is_dry() { "density, of a powder as it lies in the spoon" } else { "density" };
        for (what, figure, unit) in [
            ("molar mass", &material.molar_mass_g_per_mol, " g/mol"),
            (density, &material.density_kg_per_m3, " kg/m³"),
            ("usable alkali", &material.fixation_alkali_per_mol, " mol/mol"),
        ] {
            if let Some(figure) = figure {
                self.figure(what, figure, unit);
            }
        }
        if let Some(strength) = &material.strength {
            self.figure("strength, as a share", &strength.fraction, "");
        }
        if let Some(note) = &material.note {
            self.line(note);
        }
        self.hazards(&material.hazards, &material.cautions, material.dust);
        if material.never_for_food {
            self.line("What has held it must never hold food again.");
        }
    }

    fn dye(&mut self, dye: &Dye) {
        let mark = self.source(dye.class.source);
        let class = Reference::bundled().class(&dye.class.value).map_or(dye.class.value.as_str(), |class| &class.name);
        self.item(&format!("class: {class} {mark}"));
        if let Some(figure) = &dye.molar_mass_g_per_mol {
            self.figure("molar mass", figure, " g/mol");
        }
        self.figure("density of the powder", &dye.density_kg_per_m3, " kg/m³");
        if let Some(note) = &dye.note {
            self.line(note);
        }
        self.hazards(&dye.hazards, &dye.cautions, dye.dust);
    }

    fn fibre(&mut self, fibre: &Fibre) {
        for (family, dyeability) in &fibre.dyeability {
            let mark = self.source(dyeability.source);
            let uptake = match dyeability.uptake {
                tenter_reference::Uptake::Yes => "dyes it properly",
                tenter_reference::Uptake::Weak => "tints it or washes out",
                tenter_reference::Uptake::No => "leaves it undyed",
            };
            let note = dyeability.note.as_ref().map(|note| format!("; {note}")).unwrap_or_default();
            self.item(&format!("{}: {uptake}{note} {mark}", family.words()));
        }
        if let Some(note) = &fibre.note {
            self.line(note);
        }
    }

    fn class(&mut self, class: &DyeClass) {
        self.item(&format!("family: {}", class.family.words()));
        let mark = self.source(class.needs.source);
        let needs = &class.needs.value;
        let named = [
            (needs.alkali, "alkali"),
            (needs.acid, "acid"),
            (needs.salt, "salt"),
            (needs.reducer, "a reducer"),
            (needs.mordant, "a mordant"),
        ];
        let words: Vec<&str> = named.iter().filter(|(needed, _)| *needed).map(|(_, word)| *word).collect();
        if !words.is_empty() {
            self.item(&format!("needs: {} {mark}", words.join(", ")));
        }
        for (what, figure, unit) in [
            ("fixation temperature", &class.fixation_celsius, " °C"),
            ("pH of fixation", &class.ph, ""),
            ("share fixed", &class.fixation_yield, ""),
        ] {
            if let Some(figure) = figure {
                self.figure(what, figure, unit);
            }
        }
        if let Some(batch) = &class.reference_batch {
            self.figure("batch", &batch.hours, &format!(" h at {} °C", batch.at_celsius));
        }
        if let Some(note) = &class.note {
            self.line(note);
        }
    }

    fn finish(mut self) -> String {
        if !self.sources.is_empty() {
            self.text.push('\n');
            for (index, source) in self.sources.iter().enumerate() {
                let _ = writeln!(self.text, "[{}] {source}  ", index + 1);
            }
        }
        self.text.trim_end().to_owned()
    }
}
