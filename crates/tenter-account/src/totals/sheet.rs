//! The totals as a sheet to weigh from: headings, tables and lines, in order, whatever draws them.

use serde::Serialize;
use tenter_quantity::Figure;
use tenter_quantity::standard::PER_CENT_OWG;
use tenter_rehearse::{Rehearsal, rehearse};
use tenter_resolve::recipe::{Ingredient, MaterialId, Substance};
use tenter_resolve::totals::{MixTotal, StepUse};

use crate::pick::Picked;
use crate::source::Source;
use crate::text::safe::safe;
use crate::text::table::{Edge, Table};
use crate::totals::number::{aim, bare, bounds};
use crate::totals::states;
use crate::words;

/// Shown where an amount could not be read.
const OPEN: &str = "?";

/// What a recipe or variant comes to.
#[derive(Debug, Serialize)]
pub struct Sheet {
    /// The recipe's name, with the variant's.
    pub title: String,
    /// What the recipe says it is.
    pub about: Option<String>,
    /// What stands below, in order.
    pub parts: Vec<Part>,
}

/// A heading and what belongs under it.
#[derive(Debug, Serialize)]
pub struct Part {
    /// The heading.
    pub heading: &'static str,
    /// What belongs under it.
    pub content: Vec<Content>,
}

/// Something under a heading.
#[derive(Debug, Serialize)]
#[serde(rename_all = "lowercase", tag = "is", content = "of")]
pub enum Content {
    /// A sentence.
    Line(String),
    /// Columns.
    Table(Table),
    /// A mix: what it makes, what goes in, and what it is made up to.
    Mix {
        /// What it makes and where that goes.
        line: String,
        /// What goes in.
        table: Table,
        /// What it is made up to, where that is said.
        made_up: Option<String>,
    },
}

/// The sheet of a recipe or variant. All of its words are safe to show.
pub fn sheet(picked: &Picked<'_>, file: &dyn Source) -> Sheet {
    sheet_of(picked, &rehearse(&picked.recipe), file)
}

/// The sheet of a recipe or variant that was rehearsed already.
pub fn sheet_of(picked: &Picked<'_>, rehearsal: &Rehearsal, file: &dyn Source) -> Sheet {
    let parts = [
        goods(picked),
        materials(picked, file),
        mixes(picked, rehearsal),
        steps(picked, file),
        table("After each step", states::table(picked, rehearsal, file)),
        water(picked),
        cost(picked),
    ];
    Sheet {
        title: safe(&picked.title()).into_owned(),
        about: picked.recipe.header.about.as_ref().map(|about| safe(&about.text).into_owned()),
        parts: parts.into_iter().flatten().collect(),
    }
}

/// A part of one table; none when the table holds nothing.
fn table(heading: &'static str, table: Table) -> Option<Part> {
    (!table.is_empty()).then(|| Part { heading, content: vec![Content::Table(table)] })
}

fn goods(picked: &Picked<'_>) -> Option<Part> {
    let recipe = &picked.recipe;
    let mut table = Table::new(&[
        ("", Edge::Left),
        ("pieces", Edge::Right),
        ("each, dry", Edge::Right),
        ("in all, dry", Edge::Right),
    ]);
    for total in &recipe.totals.goods {
        let Some(goods) = recipe.goods.get(total.goods.0) else { continue };
        let lots = goods.lots.as_ref().map(|lots| format!("in {} lots of {}", lots.count, lots.pieces_each));
        let name = safe(&goods.name.text).into_owned();
        let pieces = bare(&total.pieces, total.pieces.unit);
        table.row(
            vec![name, pieces, told(goods.piece_mass.as_ref()), told(total.dry_mass.as_ref())],
            lots.into_iter().collect(),
        );
    }
    self::table("Goods", table)
}

fn materials(picked: &Picked<'_>, file: &dyn Source) -> Option<Part> {
    let recipe = &picked.recipe;
    let mut table = Table::new(&[
        ("", Edge::Left),
        ("in all", Edge::Right),
        ("between", Edge::Right),
        ("% owg", Edge::Right),
        ("each piece", Edge::Right),
        ("cost", Edge::Right),
    ]);
    for total in &recipe.totals.materials {
        let amount = total.mass.as_ref().or(total.volume.as_ref());
        let mut beneath = Vec::new();
        if let (Some(_), Some(volume)) = (&total.mass, &total.volume) {
            beneath.push(format!("measured as a liquid: {}", volume.show()));
        }
        beneath.extend(spoons(picked, total.material, file));
        let wide = amount.and_then(|amount| words::measure(amount, &|place| picked.written(place, file)));
        beneath.extend(wide.map(|input| safe(&format!("wide; to narrow it, measure {input}")).into_owned()));
        table.row(
            vec![
                safe(&recipe.material(total.material).name).into_owned(),
                amount.map_or_else(|| OPEN.to_owned(), aim),
                amount.map(bounds).unwrap_or_default(),
                total.owg.as_ref().map(per_cent).unwrap_or_default(),
                total.per_piece.as_ref().map(aim).unwrap_or_default(),
                total.cost.as_ref().map(|cost| cost.total.show()).unwrap_or_default(),
            ],
            beneath,
        );
    }
    self::table("Weigh out", table)
}

/// Share of the weight of goods, without the words of the column's heading.
fn per_cent(figure: &Figure) -> String {
    let text = bare(figure, PER_CENT_OWG);
    if text.ends_with('%') { text } else { format!("{text}%") }
}

/// Powders measured by the spoon, as they were written: the spoon is what the dyer has in hand.
fn spoons(picked: &Picked<'_>, material: MaterialId, file: &dyn Source) -> Vec<String> {
    ingredients(picked)
        .filter(|ingredient| ingredient.what == Substance::Material(material))
        .filter_map(|ingredient| {
            let amount = ingredient.amount.as_ref().filter(|amount| amount.by_volume_of_solid)?;
            let mass = amount.mass.as_ref().map_or_else(|| OPEN.to_owned(), Figure::show);
            let written = picked.words(amount.place);
            let place = picked.line(amount.place, file).map(|line| format!(" (line {line})")).unwrap_or_default();
            Some(format!("by the spoon: {} = {mass}{place}", safe(&written)))
        })
        .collect()
}

fn ingredients<'a>(picked: &'a Picked<'_>) -> impl Iterator<Item = &'a Ingredient> {
    let counted = |index: usize| picked.recipe.totals.mixes.iter().any(|total| total.mix.0 == index);
    let mixes = picked.recipe.mixes.iter().enumerate().filter(move |(index, _)| counted(*index));
    let steps = picked.recipe.steps().map(|(_, step)| step);
    mixes.flat_map(|(_, mix)| &mix.ingredients).chain(steps.flat_map(|step| {
        let bath = match &step.liquor {
            Some(tenter_resolve::recipe::Liquor { kind: tenter_resolve::recipe::LiquorKind::Bath(bath), .. }) => {
                bath.as_slice()
            }
            _ => &[],
        };
        step.applied.iter().chain(&step.with).chain(bath)
    }))
}

fn mixes(picked: &Picked<'_>, rehearsal: &Rehearsal) -> Option<Part> {
    let content: Vec<Content> = picked.recipe.totals.mixes.iter().map(|total| mix(picked, total, rehearsal)).collect();
    (!content.is_empty()).then_some(Part { heading: "Mixes", content })
}

fn mix(picked: &Picked<'_>, total: &MixTotal, rehearsal: &Rehearsal) -> Content {
    let recipe = &picked.recipe;
    let mix = recipe.mix(total.mix);
    let made = total.volume.as_ref().or(total.mass.as_ref());
    let mut line = format!("{}: makes {}", safe(&mix.name.text), made.map_or_else(|| OPEN.to_owned(), Figure::show));
    if let Some(acidity) = states::mix_ph(rehearsal, total.mix) {
        line.push_str(&format!(", {}", words::ph(acidity)));
    }
    if total.times > 1 {
        line.push_str(&format!(" each time, {} times", total.times));
    }
    if let Some(drawn) = &total.drawn {
        line.push_str(&format!("; {} measured out", drawn.show()));
    }
    if let Some(carried) = &total.carried {
        line.push_str(&format!("; {} goes off in the goods", carried.show()));
    }
    if let Some(left) = total.left.as_ref().filter(|left| left.value.high > 0.0) {
        line.push_str(&format!("; {} left over", left.show()));
    }
    let mut table = Table::new(&[("", Edge::Left), ("", Edge::Right), ("", Edge::Left), ("", Edge::Left)]);
    for ingredient in &mix.ingredients {
        let name = match ingredient.what {
            Substance::Material(id) => recipe.material(id).name.clone(),
            Substance::Mix(id) => recipe.mix(id).name.text.clone(),
        };
        let amount = ingredient.amount.as_ref();
        let spooned = amount.is_some_and(|amount| amount.by_volume_of_solid);
        let figure = amount.and_then(|amount| {
            let liquid = !spooned && amount.dimension() == tenter_quantity::Dimension::Volume;
            if liquid {
                amount.volume.as_ref().or(amount.mass.as_ref())
            } else {
                amount.mass.as_ref().or(amount.volume.as_ref())
            }
        });
        let written = amount.map(|amount| picked.words(amount.place)).unwrap_or_default();
        let shown = figure.map_or_else(|| OPEN.to_owned(), Figure::show);
        let beside = if written == shown { String::new() } else { format!("({})", safe(&written)) };
        let warm = ingredient.temperature.as_ref().map(|figure| format!("at {}", figure.show())).unwrap_or_default();
        table.row(vec![safe(&name).into_owned(), shown, beside, warm], Vec::new());
    }
    Content::Mix { line, table, made_up: mix.made_up_to.as_ref().map(|figure| format!("make up to {}", figure.show())) }
}

fn steps(picked: &Picked<'_>, file: &dyn Source) -> Option<Part> {
    let steps = picked.recipe.totals.steps.iter().filter(|total| !total.uses.is_empty());
    let mut table = Table::new(&[("", Edge::Left), ("", Edge::Right), ("", Edge::Left), ("line", Edge::Right)]);
    for total in steps {
        let line = picked.line(total.place, file).map(|line| line.to_string()).unwrap_or_default();
        let column = |cell: &dyn Fn(&StepUse) -> String| total.uses.iter().map(cell).collect::<Vec<_>>().join("\n");
        let amounts = column(&|used| used.amount.show());
        let names = column(&|used| safe(&used.name).into_owned());
        table.row(vec![safe(&picked.words(total.place)).into_owned(), amounts, names, line], Vec::new());
    }
    self::table("Used in the steps, in all", table)
}

fn water(picked: &Picked<'_>) -> Option<Part> {
    let water = picked.recipe.totals.water.as_ref()?;
    let line = format!("{}, running water not counted", water.show());
    Some(Part { heading: "Water", content: vec![Content::Line(line)] })
}

fn cost(picked: &Picked<'_>) -> Option<Part> {
    let recipe = &picked.recipe;
    if recipe.totals.cost.is_empty() {
        return None;
    }
    let mut lines: Vec<String> = recipe
        .totals
        .cost
        .iter()
        .map(|cost| {
            let each = cost.per_piece.as_ref().map(|figure| format!(", {} a piece", figure.show())).unwrap_or_default();
            format!("{}{each}", cost.total.show())
        })
        .collect();
    let unpriced: Vec<&str> = recipe.totals.unpriced.iter().map(|id| &*recipe.material(*id).name).collect();
    if !unpriced.is_empty() {
        lines.push(safe(&format!("without a price, not counted: {}", unpriced.join(", "))).into_owned());
    }
    Some(Part { heading: "Cost", content: lines.into_iter().map(Content::Line).collect() })
}

fn told(figure: Option<&Figure>) -> String {
    figure.map_or_else(|| OPEN.to_owned(), Figure::show)
}
