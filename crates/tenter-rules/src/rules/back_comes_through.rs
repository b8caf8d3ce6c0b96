//! The back on the front.

use crate::bench::{grams, per_cent};
use tenter_chemistry::colour::{Lab, Rgb};
use tenter_resolve::recipe::MaterialId;

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};

pub(crate) const RULE: Rule = Rule {
    name: "back-comes-through",
    summary: "A dark back gets so much liquor that it comes through to a lighter front.",
    group: Group::Colour,
    level: Level::Warning,
    since: "1",
    page: include_str!("back_comes_through.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    if context.uncertain_bench() {
        return;
    }
    let light =
        |dye: MaterialId| context.material(dye).colour.map(|([r, g, b], _)| Lab::from(Rgb::from_bytes(r, g, b)).l);
    for through in context.dyeings().filter(|dyeing| dyeing.came_through) {
        let meets = context.dyeings().find(|other| {
            !other.came_through
                && other.dye != through.dye
                && (other.goods, other.lot, other.zone) == (through.goods, through.lot, through.zone)
        });
        let Some(meets) = meets else { continue };
        let (Some(dark), Some(pale)) = (light(through.dye), light(meets.dye)) else { continue };
        let share = through.mass.value.best / meets.mass.value.best.max(f64::MIN_POSITIVE);
        let place = context.laid_at(through);
        if pale - dark < DARKER
            || share < SEEN
            || found.iter().any(|have| have.rule == RULE.name && have.place == place)
        {
            continue;
        }
        let (dark, pale) = (&context.material(through.dye).name, &context.material(meets.dye).name);
        found.push(
            Finding::new(
                &RULE,
                place,
                format!(
                    "about {} of {dark} comes through to {}, {} of the {pale} that lies there",
                    grams(through.mass.value),
                    context.zone_name(through.goods, through.zone),
                    per_cent(libm::round(share * 20.0) / 20.0)
                ),
            )
            .note(context.laid_at(meets), format!("{pale} is laid here"))
            .figure(&through.mass)
            .help("Squirt less, of a stronger bottle, or spin the goods drier before: folded cloth holds 2 to 3 times its weight, and what is over that goes on to the other side."),
        );
    }
}

/// CIE L*.
const DARKER: f64 = 20.0;
/// Share of the lighter dye.
const SEEN: f64 = 0.25;
