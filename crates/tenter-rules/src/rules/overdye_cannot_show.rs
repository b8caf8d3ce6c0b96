//! Yellow over navy stays navy.

use crate::bench::number;
use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_chemistry::colour::{Lab, Layer, Rgb, delta_e_2000, mix};

pub(crate) const RULE: Rule = Rule {
    name: "overdye-cannot-show",
    summary: "A lighter dye over darker goods: its colour cannot come out.",
    group: Group::Colour,
    level: Level::Warning,
    since: "1",
    page: include_str!("overdye_cannot_show.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    if context.uncertain_bench() {
        return;
    }
    let white = Rgb::from_bytes(250, 248, 240);
    let mut told = Vec::new();
    for dyeing in context.dyeings().filter(|dyeing| !dyeing.came_through) {
        let main = dyeing.mass.value.best >= MAIN * dyeing.all_dye.best;
        let pair = (dyeing.goods, dyeing.dye);
        if !main || told.contains(&pair) {
            continue;
        }
        let material = context.material(dyeing.dye);
        let Some((ground, ground_place)) = context.goods(dyeing.goods).and_then(|goods| goods.colour) else {
            if let Some(finding) = over_black(context, dyeing) {
                told.push(pair);
                found.push(finding);
            }
            continue;
        };
        let Some((aim, aim_place)) = material.colour else { continue };
        let laid = context.laid_at(dyeing);
        if colour_taken_out(context, laid) {
            continue;
        }
        let (ground, aim) = (rgb(ground), rgb(aim));
        let layer = |colour| Layer { colour, depth: 1.0 };
        let comes = mix(white, &[layer(ground), layer(aim)]);
        let (ground_lab, aim_lab, comes_lab) = (Lab::from(ground), Lab::from(aim), Lab::from(comes));
        let missed = delta_e_2000(comes_lab, aim_lab);
        if aim_lab.l - ground_lab.l < LIGHTER || missed < MISSED {
            continue;
        }
        told.push(pair);
        let [r, g, b] = comes.to_bytes();
        let goods = context.goods_name(dyeing.goods);
        let unseen = delta_e_2000(comes_lab, ground_lab) < UNSEEN;
        let outcome = if unseen {
            format!("{goods} stay about as they are")
        } else {
            format!("what comes is about #{r:02x}{g:02x}{b:02x}")
        };
        let finding = Finding::new(
            &RULE,
            laid,
            format!(
                "{} has lightness {} and goes over {goods} of lightness {}: dye only takes light away, so {outcome}",
                material.name,
                number(aim_lab.l),
                number(ground_lab.l)
            ),
        )
        .note(ground_place, "the colour they have")
        .note(aim_place, format!("the colour of {} on white", material.name))
        .help("Bleach or strip them first and stop the bleach, or choose a dye darker than the cloth. If the colour the two make together is what you want, accept it.");
        found.push(if unseen { finding } else { finding.level(Level::Advice) });
    }
}

/// Goods said in words to be black: nothing shows on them, whatever its colour.
fn over_black(context: &Context<'_>, dyeing: &tenter_rehearse::Dyeing) -> Option<Finding> {
    let said = context.goods(dyeing.goods)?.state.place?;
    let text = context.text(said).to_lowercase();
    let black = text.split(|letter: char| !letter.is_alphanumeric()).any(|word| word == "black");
    let laid = context.laid_at(dyeing);
    let name = &context.material(dyeing.dye).name;
    if !black || text.contains("not black") || name.to_lowercase().contains("black") || colour_taken_out(context, laid)
    {
        return None;
    }
    Some(
        Finding::new(
            &RULE,
            laid,
            format!(
                "{name} goes over black {}: dye only takes light away, so they stay as they are",
                context.goods_name(dyeing.goods)
            ),
        )
        .note(said, "black, by this")
        .help("Bleach or strip them first and stop the bleach, or take lighter goods."),
    )
}

fn rgb([r, g, b]: [u8; 3]) -> Rgb {
    Rgb::from_bytes(r, g, b)
}

/// Whether an earlier step took colour out: then nobody knows what the cloth looks like.
fn colour_taken_out(context: &Context<'_>, laid: tenter_quantity::Place) -> bool {
    context
        .steps()
        .take_while(|step| step.place != laid)
        .any(|step| step.verb.is_some_and(|verb| matches!(verb.name, "bleach" | "strip")))
}

/// CIELAB lightness by which the dye must be lighter than the cloth.
const LIGHTER: f64 = 15.0;
/// CIEDE2000 between what comes and what the dye gives on white.
const MISSED: f64 = 20.0;
/// CIEDE2000 between cloth before and after, below which the work was hardly worth it.
const UNSEEN: f64 = 10.0;
/// Share of the dye of a part that makes it the dye of that part.
const MAIN: f64 = 0.8;
