//! What is taken out of each mix, and what is left.

use super::*;

/// Who takes what out of which mix.
pub(super) fn draws(recipe: &mut Recipe, rounds: &[Rounds]) {
    let mut found: Vec<(MixId, Draw)> = Vec::new();
    let mut made: BTreeMap<MixId, (f64, Place)> = BTreeMap::new();
    for mix in &recipe.mixes {
        for ingredient in &mix.ingredients {
            draw_of(recipe, ingredient, f64::from(mix.times_made), ingredient.place, &mut found);
        }
    }
    for (group, rounds) in recipe.groups.iter().zip(rounds) {
        for step in &group.steps {
            let making = step.verb.is_some_and(|verb| matches!(verb.name, "make" | "dissolve" | "paste" | "rest"));
            for (ingredient, factor) in used(step, *rounds) {
                if let (Substance::Mix(id), true, None) = (ingredient.what, making, &ingredient.amount) {
                    if step.verb.is_some_and(|verb| verb.name == "make") {
                        let entry = made.entry(id).or_insert((0.0, step.place));
                        entry.0 += rounds.times;
                    }
                    continue;
                }
                draw_of(recipe, ingredient, factor, step.place, &mut found);
            }
            match &step.liquor {
                Some(Liquor { kind: LiquorKind::Mix(id), .. }) => {
                    found.push((*id, Draw { place: step.place, amount: None, weighed: None, whole: false }))
                }
                _ => {
                    if let (Some(crate::recipe::Source::Mix(id)), true) = (&step.source, step.applied.is_empty()) {
                        found.push((*id, Draw { place: step.place, amount: None, weighed: None, whole: false }));
                    }
                }
            }
        }
    }
    for (id, draw) in found {
        if let Some(mix) = recipe.mixes.get_mut(id.0) {
            mix.draws.push(draw);
        }
    }
    for (id, (times, place)) in made {
        if let Some(mix) = recipe.mixes.get_mut(id.0) {
            mix.times_made = times.clamp(1.0, 10_000.0) as u32;
            mix.made_by_step = Some(place);
        }
    }
}

pub(super) fn draw_of(
    recipe: &Recipe,
    ingredient: &Ingredient,
    factor: f64,
    place: Place,
    found: &mut Vec<(MixId, Draw)>,
) {
    let Substance::Mix(id) = ingredient.what else {
        return;
    };
    let dry = recipe.mixes.get(id.0).is_some_and(crate::recipe::Mix::is_dry);
    let draw = match &ingredient.amount {
        None => Draw { place, amount: None, weighed: None, whole: true },
        Some(amount) => {
            let figure = if dry { amount.mass.as_ref() } else { amount.volume.as_ref().or(amount.mass.as_ref()) };
            let by_weight = matches!(amount.dimension(), Dimension::Mass | Dimension::Part | Dimension::MassFraction);
            let weighed = amount.mass.as_ref().filter(|_| by_weight);
            Draw {
                place,
                amount: figure.map(|figure| multiplied(figure, factor)),
                weighed: weighed.map(|figure| multiplied(figure, factor)),
                whole: false,
            }
        }
    };
    found.push((id, draw));
}

/// Whether goods are worked in a mix as their bath.
fn worked_in(step: &Step, id: MixId) -> bool {
    let in_it = matches!(&step.liquor, Some(Liquor { kind: LiquorKind::Mix(mix), .. }) if *mix == id);
    in_it && step.verb.is_some_and(|verb| WORKED.contains(&verb.name))
}

/// Whether the goods are worked on in the same bath before anything takes them out: they carry it off once.
fn stays(later: &[&Step], step: &Step, id: MixId) -> bool {
    later
        .iter()
        .filter(|later| later.goods.iter().any(|goods| step.goods.contains(goods)))
        .find_map(|later| {
            let leaves = later.verb.is_some_and(|verb| LEAVING.contains(&verb.name));
            if leaves { Some(false) } else { worked_in(later, id).then_some(true) }
        })
        .unwrap_or(false)
}

/// Verbs that put goods into a bath or work them there.
const WORKED: [&str; 15] = [
    "soak",
    "immerse",
    "dip",
    "scour",
    "wash",
    "wet out",
    "dye",
    "soap off",
    "soften",
    "neutralise",
    "lower",
    "strip",
    "bleach",
    "boil",
    "simmer",
];

/// Verbs after which goods are out of their bath.
const LEAVING: [&str; 9] = ["squeeze", "spin", "drip", "drain", "lift", "rinse", "dry", "rest", "batch"];

/// What goods worked in a mix carry off, m³.
pub(super) fn carried(recipe: &Recipe, id: MixId) -> Option<Figure> {
    let steps: Vec<&Step> = recipe.steps().map(|(_, step)| step).collect();
    let mut terms = Vec::new();
    for (at, step) in steps.iter().enumerate() {
        if !worked_in(step, id) || stays(&steps[at + 1..], step, id) {
            continue;
        }
        let later = steps[at + 1..]
            .iter()
            .find(|later| later.goods.iter().any(|goods| step.goods.contains(goods)) && later.pickup.is_some());
        let pickup = step
            .pickup
            .clone()
            .or_else(|| later.and_then(|later| later.pickup.clone()))
            .or_else(|| {
                steps
                    .get(at + 1)
                    .and_then(|next| next.verb)
                    .and_then(|verb| crate::ledger::assumed_pickup(verb.name))
                    .filter(|figure| figure.value.high > 0.0)
            })
            .or_else(|| crate::ledger::assumed_pickup("soak"))?;
        for goods in &step.goods {
            let dry = recipe.goods.get(goods.0)?.dry_mass.clone()?;
            let value = pickup.value * dry.value * 0.001;
            terms.push(Figure::worked(
                "{0} × {1}, 1 kg of liquor taken as 1 L",
                value,
                Dimension::Volume,
                volume_unit(),
                vec![("water held", pickup.clone()), ("dry goods", dry)],
            ));
        }
    }
    sum_of(terms, volume_unit())
}

/// The share of a mix that is weighed out of it, where every draw is a weight and the weight made is known: what room
/// it takes does not matter then.
fn weighed_share(mix: &crate::recipe::Mix) -> Option<Figure> {
    let made = mix.mass.as_ref().filter(|mass| mass.value.low > 0.0)?;
    let draws: Option<Vec<Figure>> =
        mix.draws.iter().filter(|draw| !draw.whole).map(|draw| draw.weighed.clone()).collect();
    let made = multiplied(made, f64::from(mix.times_made));
    let drawn = sum_of(draws?, gram())?;
    Some(drawn.over(&made, Dimension::PerCent.usual_unit(Basis::Absolute)))
}

pub(super) fn mix_total(recipe: &Recipe, id: MixId) -> MixTotal {
    let mix = recipe.mix(id);
    let dry = mix.is_dry();
    let made = if dry { mix.mass.as_ref() } else { mix.volume.as_ref() }
        .map(|made| multiplied(made, f64::from(mix.times_made)));
    let unit = if dry { gram() } else { volume_unit() };
    let measured: Option<Vec<Figure>> =
        mix.draws.iter().filter(|draw| !draw.whole && draw.amount.is_some()).map(|draw| draw.amount.clone()).collect();
    let weighed = if dry { None } else { weighed_share(mix) };
    let drawn = match (&weighed, made.as_ref()) {
        (Some(share), Some(made)) => Some(share.times(made, unit)),
        _ => measured.and_then(|terms| sum_of(terms, unit)),
    };
    let carried = if dry { None } else { carried(recipe, id) };
    let emptied = mix.draws.iter().any(|draw| draw.whole);
    let used = match (&drawn, &carried) {
        (Some(drawn), Some(carried)) => Some(drawn.plus(carried)),
        (Some(one), None) | (None, Some(one)) => Some(one.clone()),
        (None, None) => None,
    };
    let left = if emptied {
        None
    } else if let (Some(share), Some(made), None) = (&weighed, made.as_ref(), &carried) {
        let rest = (Interval::ONE - share.value).clamp_low(0.0);
        let inputs = vec![("made", made.clone()), ("used", share.clone())];
        Some(Figure::worked("{0}, less {1} of it", made.value * rest, unit.dimension, unit, inputs))
    } else {
        made.as_ref().zip(used.as_ref()).map(|(made, used)| {
            let value = (made.value - used.value).clamp_low(0.0);
            Figure::worked(
                "{0} − {1}",
                value,
                unit.dimension,
                unit,
                vec![("made", made.clone()), ("used", used.clone())],
            )
        })
    };
    let by_weight = weighed.filter(|_| carried.is_none());
    let used_share = by_weight.or_else(|| {
        made.as_ref()
            .zip(used.as_ref())
            .map(|(made, used)| used.over(made, Dimension::PerCent.usual_unit(Basis::Absolute)))
    });
    MixTotal {
        mix: id,
        volume: mix.volume.clone(),
        mass: mix.mass.clone(),
        times: mix.times_made,
        drawn,
        carried,
        left,
        used_share,
        ingredients: mix
            .ingredients
            .iter()
            .filter_map(|ingredient| match ingredient.what {
                Substance::Material(material) => {
                    Some((material, ingredient.amount.as_ref().and_then(|amount| amount.mass.clone())))
                }
                Substance::Mix(_) => None,
            })
            .collect(),
    }
}
