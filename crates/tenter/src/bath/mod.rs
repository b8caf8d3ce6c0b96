//! `tenter bath`: one bath or bottle reckoned at the bench, in the words of a mix.
//!
//! The amounts become a document with one mix in it, which goes through the same stages as a recipe.

mod clauses;
mod json;
mod text;

use tenter_rehearse::{LiquorState, Rehearsal, Saturation, saturation};
use tenter_resolve::recipe::Mix;
use tenter_resolve::{NoLibrary, Recipe, Sheet, sheets};
use tenter_rules::{Finding, Level, Scale, check_sheet};
use tenter_syntax::Document;

use crate::arguments::{Bath, Form};
use crate::exit::Outcome;
use crate::output::Output;

/// A bath as reckoned.
pub struct Reckoned<'a> {
    /// The amounts as they were given, tidied.
    pub amounts: String,
    /// The document's only sheet.
    pub sheet: &'a Sheet,
    /// The recipe with nothing in it but the mix.
    pub recipe: &'a Recipe,
    /// Carried out on paper.
    pub rehearsal: &'a Rehearsal,
    /// The mix.
    pub mix: &'a Mix,
    /// As it stands when made.
    pub made: Option<&'a LiquorState>,
    /// What is wrong with it.
    pub findings: Vec<&'a Finding>,
}

impl Reckoned<'_> {
    /// What was typed at a place.
    pub fn words(&self, place: tenter_quantity::Place) -> String {
        self.sheet.text(place).split_whitespace().collect::<Vec<_>>().join(" ")
    }

    /// How full it is of each material that has a table.
    pub fn saturation(&self) -> Vec<Saturation> {
        let made = self.made.filter(|made| made.volume.is_some());
        made.map_or_else(Vec::new, |made| saturation(self.recipe, &made.contents, made.temperature.value))
    }
}

/// What concerns recipes and not a bath by itself.
const BESIDE_THE_POINT: [&str; 2] = ["mix-never-used", "dust-before-protection"];

/// Runs the command.
pub fn run(wanted: &Bath, output: &mut Output) -> Outcome {
    let clauses = clauses::split(&wanted.amounts.join(" "));
    if clauses.is_empty() {
        output.tell("nothing goes in; write amounts as in a mix: tenter bath \"8 L water at 40 °C, 60 g/L soda ash\"");
        return Outcome::Failed;
    }
    let document = Document::parse(&clauses::document(&clauses));
    let sheets = sheets(&document, "bath.dye", &NoLibrary);
    let reckoned = sheets.first().map(|sheet| (sheet, check_sheet(sheet, Scale::AsWritten)));
    let Some((sheet, result)) = &reckoned else { return Outcome::Failed };
    let (Some(recipe), Some(rehearsal)) = (result.recipes.first(), result.rehearsals.first()) else {
        return Outcome::Failed;
    };
    let Some(mix) = recipe.mixes.first() else { return Outcome::Failed };
    let findings: Vec<&Finding> = result
        .findings
        .iter()
        .map(|(_, finding)| finding)
        .filter(|finding| finding.place.block == mix.name.place.block && !BESIDE_THE_POINT.contains(&finding.rule))
        .collect();
    let reckoned = Reckoned {
        amounts: clauses.join(", "),
        sheet,
        recipe,
        rehearsal,
        mix,
        made: rehearsal.mixes.first().map(|made| &**made),
        findings,
    };
    match wanted.format {
        Form::Text => text::show(&reckoned, output),
        Form::Json => json::show(&reckoned, output),
    }
    let errors = reckoned.findings.iter().any(|finding| finding.level == Level::Error);
    if errors { Outcome::Findings } else { Outcome::Clean }
}
