//! A sheet to stand beside the vat: what to weigh, what to mix, each step with its amount and its clock, a box to tick
//! for each, room to write.

use std::fmt::Write as _;

use tenter_account::{Picked, words};
use tenter_quantity::Figure;
use tenter_rehearse::Rehearsal;
use tenter_resolve::Recipe;
use tenter_resolve::recipe::{Mix, Substance};
use tenter_resolve::totals::MixTotal;
use tenter_rules::Level;

use crate::analysis::FileAnalysis;
use crate::sheets::marked::plain;
use crate::sheets::{Chosen, choose};

/// A sheet for the bench.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct BenchSheet {
    /// The recipe, with its variant.
    pub title: String,
    /// The sheet, in Markdown.
    pub markdown: String,
}

/// Shown where an amount could not be read.
const OPEN: &str = "?";

/// The sheet of the recipe at an offset. None where no recipe stands.
pub fn bench_sheet(analysis: &FileAnalysis, offset: usize) -> Option<BenchSheet> {
    let chosen = choose(analysis, offset)?;
    let mut out = format!("# {}\n", plain(&chosen.picked.title()));
    head(&chosen.picked, chosen.rehearsal, &mut out);
    open_findings(analysis, &chosen, &mut out);
    cautions(&chosen.picked.recipe, &mut out);
    weigh(&chosen.picked.recipe, &mut out);
    mixes(&chosen.picked, chosen.rehearsal, &mut out);
    steps(&chosen.picked, chosen.rehearsal, &mut out);
    out.push_str("\n## Written down\n\n- date:\n- changed:\n- found:\n- left over:\n");
    Some(BenchSheet { title: chosen.picked.title(), markdown: out })
}

fn head(picked: &Picked<'_>, rehearsal: &Rehearsal, out: &mut String) {
    let recipe = &picked.recipe;
    if let Some(about) = &recipe.header.about {
        let _ = write!(out, "\n{}\n", plain(&about.text));
    }
    out.push('\n');
    for total in &recipe.totals.goods {
        let Some(goods) = recipe.goods.get(total.goods.0) else { continue };
        let dry = total.dry_mass.as_ref().map_or_else(|| OPEN.to_owned(), Figure::show);
        let lots = goods.lots.as_ref().map(|lots| format!(", in {} lots of {}", lots.count, lots.pieces_each));
        let _ = writeln!(
            out,
            "- goods: {} {}, {dry} dry{}",
            tenter_quantity::show_number(total.pieces.value),
            plain(&goods.name.text),
            lots.unwrap_or_default()
        );
    }
    if !rehearsal.frames.is_empty() {
        let _ = writeln!(out, "- time: {}", tenter_rehearse::clock_line(&rehearsal.clock()));
    }
    if let Some(water) = &recipe.totals.water {
        let _ = writeln!(out, "- water: {}, running water not counted", water.show());
    }
    let _ = writeln!(out, "- room: {}", rehearsal.room.show());
}

/// What is still found wrong must not be overlooked at the bench.
fn open_findings(analysis: &FileAnalysis, chosen: &Chosen<'_>, out: &mut String) {
    let open: Vec<_> = analysis
        .findings
        .iter()
        .filter(|told| told.sheet == chosen.view.index && told.finding.accepted.is_none())
        .filter(|told| told.finding.level != Level::Advice)
        .collect();
    if open.is_empty() {
        return;
    }
    out.push_str("\n## To settle first\n\n");
    for told in open {
        let line = chosen.picked.line(told.finding.place, &*analysis.file);
        let line = line.map(|line| format!("line {line}: ")).unwrap_or_default();
        let _ = writeln!(out, "- **{}** {line}{}", told.finding.level.word(), plain(&told.finding.message));
    }
}

/// The usual cautions of what the recipe uses, each once.
fn cautions(recipe: &Recipe, out: &mut String) {
    let mut said: Vec<String> = Vec::new();
    let mut say = |text: String| {
        if !said.contains(&text) {
            said.push(text);
        }
    };
    let used = |index: usize| recipe.totals.materials.iter().any(|total| total.material.0 == index);
    let materials = || recipe.materials.iter().enumerate().filter(|(index, _)| used(*index)).map(|(_, it)| it);
    let dusty: Vec<String> = materials().filter(|material| material.dusty()).map(|it| plain(&it.name)).collect();
    if !dusty.is_empty() {
        say(format!("Dry handling raises dust: dust mask, gloves and goggles for {}.", dusty.join(", ")));
    }
    for material in materials() {
        let claims = material.reference.map(|entry| (&entry.cautions, entry.never_for_food));
        let dye = material.dye.map(|entry| (&entry.cautions, true));
        for (cautions, vessel) in claims.into_iter().chain(dye) {
            for caution in cautions {
                say(format!("{}: {}", plain(&material.name), plain(caution)));
            }
            if vessel {
                say("What has held dye or chemicals never holds food again.".to_owned());
            }
        }
    }
    out.push_str("\n## Take care\n\n");
    for line in said {
        let _ = writeln!(out, "- {line}");
    }
    out.push_str(
        "- Follow the safety data sheet of what you buy, and the local code. This sheet certifies nothing as safe.\n",
    );
}

fn weigh(recipe: &Recipe, out: &mut String) {
    if recipe.totals.materials.is_empty() {
        return;
    }
    out.push_str("\n## Weigh out\n\n");
    for total in &recipe.totals.materials {
        let Some(material) = recipe.materials.get(total.material.0) else { continue };
        let amount = total.mass.as_ref().or(total.volume.as_ref()).map_or_else(|| OPEN.to_owned(), Figure::show);
        let liquid = total.mass.as_ref().and(total.volume.as_ref()).map(|volume| format!(" ({})", volume.show()));
        let owg = total.owg.as_ref().map(|share| format!(", {}", share.show())).unwrap_or_default();
        let _ = writeln!(out, "- [ ] {}: **{amount}**{}{owg}", plain(&material.name), liquid.unwrap_or_default());
    }
}

fn mixes(picked: &Picked<'_>, rehearsal: &Rehearsal, out: &mut String) {
    if picked.recipe.totals.mixes.is_empty() {
        return;
    }
    out.push_str("\n## Mix\n");
    for total in &picked.recipe.totals.mixes {
        let Some(mix) = picked.recipe.mixes.get(total.mix.0) else { continue };
        one_mix(picked, rehearsal, mix, total, out);
    }
}

fn one_mix(picked: &Picked<'_>, rehearsal: &Rehearsal, mix: &Mix, total: &MixTotal, out: &mut String) {
    let recipe = &picked.recipe;
    let made = total.volume.as_ref().or(total.mass.as_ref()).map_or_else(|| OPEN.to_owned(), Figure::show);
    let made_of = rehearsal.mix(total.mix);
    let ph =
        made_of.and_then(|made| made.acidity(&rehearsal.substances)).map(|acidity| format!(", {}", words::ph(acidity)));
    let times = if total.times > 1 { format!(", {} times", total.times) } else { String::new() };
    let _ = write!(out, "\n### {}: {made}{}{times}\n\n", plain(&mix.name.text), ph.unwrap_or_default());
    for ingredient in &mix.ingredients {
        let name = match ingredient.what {
            Substance::Material(id) => recipe.materials.get(id.0).map(|material| material.name.clone()),
            Substance::Mix(id) => recipe.mixes.get(id.0).map(|mix| mix.name.text.clone()),
        };
        let amount = ingredient.amount.as_ref();
        let figure = amount.and_then(|amount| {
            let poured = !amount.by_volume_of_solid && amount.dimension() == tenter_quantity::Dimension::Volume;
            let (first, second) = if poured { (&amount.volume, &amount.mass) } else { (&amount.mass, &amount.volume) };
            first.as_ref().or(second.as_ref())
        });
        let written = amount.map(|amount| picked.words(amount.place)).unwrap_or_default();
        let shown = figure.map_or_else(|| OPEN.to_owned(), Figure::show);
        let beside = if written == shown { String::new() } else { format!(" ({})", plain(&written)) };
        let warm = ingredient.temperature.as_ref().map(|figure| format!(" at {}", figure.show())).unwrap_or_default();
        let _ = writeln!(out, "- [ ] {}: {shown}{beside}{warm}", plain(&name.unwrap_or_default()));
    }
    if let Some(made_up) = &mix.made_up_to {
        let _ = writeln!(out, "- [ ] make up to {}", made_up.show());
    }
    if let Some(made) = made_of
        && let Some(until) = rehearsal.useful_until(made)
    {
        let since = made.made_at.best;
        let _ = writeln!(out, "- dye and alkali together: use within about {}", words::clock(until.best - since));
    }
}

fn steps(picked: &Picked<'_>, rehearsal: &Rehearsal, out: &mut String) {
    let recipe = &picked.recipe;
    if recipe.groups.iter().all(|group| group.steps.is_empty()) {
        return;
    }
    out.push_str("\n## Steps\n");
    for group in &recipe.groups {
        if let Some(name) = &group.name {
            let _ = write!(out, "\n### {}\n", plain(&name.text));
        }
        out.push('\n');
        for step in &group.steps {
            let uses = recipe.totals.steps.iter().find(|total| total.place == step.place);
            let uses: Vec<String> = uses
                .iter()
                .flat_map(|total| &total.uses)
                .map(|used| format!("{} {}", used.amount.show(), plain(&used.name)))
                .collect();
            let in_all = if uses.is_empty() { String::new() } else { format!("; in all **{}**", uses.join(", ")) };
            let frames: Vec<_> = rehearsal.frames_at(step.place).collect();
            let clock = match frames.as_slice() {
                [] => String::new(),
                [one] => format!("; done at {}", words::clock(one.end.elapsed.best)),
                [first, .., last] => format!(
                    "; {} times, done at {} to {}",
                    frames.len(),
                    words::clock(first.end.elapsed.best),
                    words::clock(last.end.elapsed.best)
                ),
            };
            let _ = writeln!(out, "- [ ] {}{in_all}{clock}", plain(&picked.words(step.place)));
        }
    }
}
