//! Work that changes nothing.

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_quantity::Figure;
use tenter_rehearse::EventKind;
use tenter_resolve::recipe::{GoodsId, Step, Wetness, ZoneRef};

pub(crate) const RULE: Rule = Rule {
    name: "step-without-effect",
    summary: "A step that changes nothing.",
    group: Group::Writing,
    level: Level::Advice,
    since: "1",
    page: include_str!("step_without_effect.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    let steps: Vec<&Step> = context.steps().collect();
    // Where work is repeated or done lot by lot, the order on paper is not the order of the day.
    let in_order = steps.iter().all(|step| {
        step.lots.is_none() && step.repeats_group.is_none() && step.verb.is_some_and(|verb| verb.name != "repeat")
    });
    if !in_order || context.uncertain_bench() || context.recipe.goods.iter().any(|goods| goods.lots.is_some()) {
        return;
    }
    temperatures(context, found);
    turned_back(context, &steps, found);
    for index in 0..context.recipe.goods.len() {
        let here: Vec<&Step> = steps.iter().copied().filter(|step| step.goods.contains(&GoodsId(index))).collect();
        water(context, GoodsId(index), &here, found);
        shape(context, GoodsId(index), &here, found);
    }
}

fn verb(step: &Step) -> &'static str {
    step.verb.map_or("", |verb| verb.name)
}

/// Steps that leave the water in the goods as it is.
const INERT: [&str; 17] = [
    "fold", "scrunch", "bind", "untie", "mark", "turn", "cover", "uncover", "rest", "wait", "wear", "make", "weigh",
    "paste", "dissolve", "store", "check",
];

/// Pressed out or dried when no more than that is in the goods.
fn water(context: &Context<'_>, id: GoodsId, steps: &[&Step], found: &mut Vec<Finding>) {
    let Some(goods) = context.goods(id) else { return };
    let name = &goods.name.text;
    if let (Some(Wetness::Dry), Some(place)) = (goods.state.wetness, goods.state.place) {
        let first = steps.iter().find(|step| !INERT.contains(&verb(step)));
        if let Some(step) = first.filter(|step| matches!(verb(step), "squeeze" | "spin" | "drip")) {
            found.push(
                Finding::new(
                    &RULE,
                    step.place,
                    format!("there is no liquor in {name} to take out: they are dry and nothing has wetted them"),
                )
                .note(place, "dry by this")
                .help("Leave the step out, or wet them before it."),
            );
        }
    }
    let mut last: Option<&Step> = None;
    for step in steps {
        let now = verb(step);
        if INERT.contains(&now) {
            continue;
        }
        let wrings = matches!(now, "squeeze" | "spin" | "drip");
        if let Some(before) = last.filter(|_| wrings)
            && let Some(why) = no_drier(name, before, step)
        {
            found.push(
                Finding::new(&RULE, step.place, why)
                    .note(before.place, if verb(before) == "dry" { "dried here" } else { "taken out here" })
                    .help("Leave one of the two out, or say the lower pickup here."),
            );
            continue;
        }
        last = (wrings || now == "dry").then_some(step);
    }
}

fn no_drier(name: &str, before: &Step, now: &Step) -> Option<String> {
    if verb(before) == "dry" {
        return Some(format!("there is no liquor in {name} to take out: they have just been dried"));
    }
    let of = |pickup: &Figure| pickup.show();
    match (&before.pickup, &now.pickup) {
        (Some(had), Some(wanted)) if wanted.value.low >= had.value.high - 1e-9 => {
            Some(format!("{name} hold {} already, and {} is asked for here: nothing comes out", of(had), of(wanted)))
        }
        (None, None) if verb(before) == verb(now) && verb(now) == "spin" && !timed(before) && !timed(now) => {
            Some(format!("{name} are spun twice in a row: the second time nothing comes out"))
        }
        _ => None,
    }
}

fn timed(step: &Step) -> bool {
    step.duration.is_some() || step.until.is_some() || !step.words.is_empty()
}

/// Opened though nothing holds them.
fn shape(context: &Context<'_>, id: GoodsId, steps: &[&Step], found: &mut Vec<Finding>) {
    let Some(goods) = context.goods(id) else { return };
    let arrive_bound = goods.state.place.is_some_and(|place| {
        let text = context.text(place).to_lowercase();
        ["fold", "bound", "tied", "pleat", "scrunch", "wound", "stitch", "clamp"].iter().any(|word| text.contains(word))
    });
    let mut shaped = arrive_bound;
    let mut covered = false;
    for step in steps {
        match verb(step) {
            // Bags and jars are opened too.
            "untie" if !shaped && !context.text(step.verb_place).eq_ignore_ascii_case("open") => {
                found.push(
                    Finding::new(
                        &RULE,
                        step.place,
                        format!("{} are opened here, and nothing has folded or bound them", goods.name.text),
                    )
                    .help("Leave the step out, or write the `fold` or `bind` that belongs before it."),
                );
            }
            "uncover" if !covered => {
                found.push(
                    Finding::new(
                        &RULE,
                        step.place,
                        format!("{} are uncovered here, and nothing has covered them", goods.name.text),
                    )
                    .help("Leave the step out, or write the `cover` that belongs before it."),
                );
            }
            "uncover" => covered = false,
            "untie" => shaped = false,
            "fold" | "scrunch" | "bind" => shaped = true,
            "cover" | "batch" | "steam" | "microwave" | "store" => covered = true,
            _ => {}
        }
        shaped |= step.layout.is_some() || step.zones.iter().any(|zone| matches!(zone.zone, ZoneRef::Of(..)));
        covered |= step.cover.is_some() || step.liquor.is_some();
    }
}

/// Turned, and turned back with nothing done in between.
fn turned_back(context: &Context<'_>, steps: &[&Step], found: &mut Vec<Finding>) {
    for pair in steps.windows(2) {
        let [one, two] = pair else { continue };
        let plain = |step: &Step| {
            verb(step) == "turn"
                && step.interval.is_none()
                && step.repeats.is_none()
                && step.duration.is_none()
                && step.liquor.is_none()
                && step.words.is_empty()
        };
        if plain(one) && plain(two) && one.goods == two.goods {
            let name = one.goods.first().map_or("the goods", |id| context.goods_name(*id));
            found.push(
                Finding::new(&RULE, two.place, format!("{name} are turned twice in a row and lie as before"))
                    .note(one.place, "turned here")
                    .help("Leave both out, or say what is done between them."),
            );
        }
    }
}

/// Heated to what it is, cooled to what it is.
fn temperatures(context: &Context<'_>, found: &mut Vec<Finding>) {
    for event in context.events() {
        let EventKind::BathTemperature { from, to, .. } = &event.kind else { continue };
        let Some(step) = context.step_at(event.place).filter(|step| step.to_temperature.is_some()) else { continue };
        let (idle, word) = match verb(step) {
            "raise" | "heat" => (to.value.high <= from.value.low + 1e-9, "warm"),
            "cool" => (to.value.low >= from.value.high - 1e-9, "cool"),
            _ => continue,
        };
        if !idle {
            continue;
        }
        found.push(
            Finding::new(
                &RULE,
                step.place,
                format!(
                    "the bath is at {} here already, so bringing it to {} does not {word} it",
                    from.show(),
                    to.show()
                ),
            )
            .level(if contrary(from, to) { Level::Warning } else { Level::Advice })
            .noted(from, "its temperature comes from here")
            .figure(from)
            .figure(to)
            .help("Leave the step out, or put right one of the two temperatures: °F for °C, perhaps."),
        );
    }
}

/// The one temperature is so far on the wrong side of the other that it is a slip, not an idle step.
fn contrary(from: &Figure, to: &Figure) -> bool {
    libm::fabs(from.value.best - to.value.best) > SLIP
}

/// Kelvins.
const SLIP: f64 = 4.0;
