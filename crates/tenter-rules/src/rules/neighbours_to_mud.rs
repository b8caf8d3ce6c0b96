//! Mud between neighbours.

use crate::bench::number;
use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_chemistry::colour::{Lab, Lch, Rgb, chroma_lost};
use tenter_rehearse::Dyeing;

pub(crate) const RULE: Rule = Rule {
    name: "neighbours-to-mud",
    summary: "Colours side by side that run to a dull one where they meet.",
    group: Group::Colour,
    level: Level::Advice,
    since: "1",
    page: include_str!("neighbours_to_mud.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    if context.uncertain_bench() {
        return;
    }
    let white = Rgb::from_bytes(250, 248, 240);
    let colour = |dyeing: &Dyeing| {
        context.material(dyeing.dye).colour.map(|([r, g, b], place)| (Rgb::from_bytes(r, g, b), place))
    };
    let mut told = Vec::new();
    for (at, one) in context.dyeings().enumerate() {
        for two in context.dyeings().skip(at + 1) {
            if one.goods != two.goods || one.lot != two.lot || one.dye == two.dye || one.zone.face != two.zone.face {
                continue;
            }
            let (Some((layout, first)), Some((same, second))) = (one.zone.layout, two.zone.layout) else { continue };
            let Some(plan) = context.recipe.layouts.get(layout.0).filter(|_| layout == same) else { continue };
            let beside = plan.beside.iter().any(|(a, b)| (*a, *b) == (first, second) || (*b, *a) == (first, second));
            let pair = (one.dye.min(two.dye), one.dye.max(two.dye));
            if !beside || told.contains(&pair) {
                continue;
            }
            let (Some((colour_one, _)), Some((colour_two, _))) = (colour(one), colour(two)) else { continue };
            if !is_a_hue(colour_one) || !is_a_hue(colour_two) {
                continue;
            }
            let lost = chroma_lost(white, colour_one, colour_two);
            if lost < DULL {
                continue;
            }
            told.push(pair);
            let (name_one, name_two) = (&context.material(one.dye).name, &context.material(two.dye).name);
            found.push(
                Finding::new(
                    &RULE,
                    context.laid_at(two),
                    format!(
                        "{name_two} lies beside {name_one}: where they run into each other about {} units of chroma go, which looks brown or grey",
                        number(lost)
                    ),
                )
                .note(context.laid_at(one), format!("{name_one} is laid here"))
                .help("Leave a white seam, put a colour between them that goes with both, or use less liquor. If mud is the plan, accept it."),
            );
        }
    }
}

/// CIELAB units of chroma.
const DULL: f64 = 25.0;

/// Blacks, greys and very dark colours are meant to darken what they meet.
fn is_a_hue(colour: Rgb) -> bool {
    let lab = Lab::from(colour);
    lab.l >= 25.0 && Lch::from(lab).c >= 25.0
}
