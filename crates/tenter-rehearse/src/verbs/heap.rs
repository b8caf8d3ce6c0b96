//! `heap 1.2 kg/piece ice over tees`
//!
//! Needs an amount of ice, and goods.
//!
//! Does: the ice lies over or under the goods and melts as time goes by; the melt goes down through them with what is strewn on
//! the ice. Anything else that is heaped is left out of the account.

use std::sync::Arc;

use tenter_quantity::Figure;
use tenter_quantity::standard::GRAM;
use tenter_resolve::recipe::{LiquorKind, Substance};

use crate::bench::{Bench, Pass};
use crate::event::EventKind;
use crate::melting::melting_time;
use crate::state::Ice;

pub(crate) fn perform(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    bench.out_of_baths(pass);
    let under = pass.step.words.iter().any(|word| bench.recipe.goods.iter().any(|goods| goods.name.text == word.text));
    let in_vessel = matches!(pass.step.liquor.as_ref().map(|liquor| &liquor.kind), Some(LiquorKind::Vessel(_)));
    let targets = bench.targets(pass.step, true);
    for ingredient in &pass.step.applied {
        let part = bench.take(pass, ingredient);
        let ice = match ingredient.what {
            Substance::Material(id) if bench.is_ice(id) => part.contents.part(id).cloned(),
            _ => None,
        };
        let Some(ice) = ice else {
            bench.note("only ice melts down through the goods; what else is heaped is left out of the account");
            continue;
        };
        for target in &targets {
            let mass = crate::figures::portion(&ice, &target.share);
            heap_on(bench, target.state, mass, under, in_vessel);
        }
    }
    let time = bench.duration(pass);
    bench.pass_time(time, None);
}

fn heap_on(bench: &mut Bench<'_>, state: usize, mass: Figure, under: bool, in_vessel: bool) {
    let Some(goods) = bench.goods.get(state).map(Arc::clone) else { return };
    let have: Ice = goods.ice.as_deref().cloned().unwrap_or_default();
    let sum = |before: Option<Figure>| match before {
        Some(before) => Figure::sum(vec![before, mass.clone()], GRAM),
        None => mass.clone(),
    };
    let heaped = sum(have.heaped);
    let melts_in = melting_time(heaped.value, goods.pieces, bench.room.value);
    bench.emit(EventKind::Iced { goods: goods.goods, mass: mass.clone(), melts_in, under });
    let ice = Ice { mass: Some(sum(have.mass)), heaped: Some(heaped), powder: have.powder, under };
    if let Some(goods) = bench.goods_mut(state) {
        goods.ice = Some(Arc::new(ice));
        goods.lies_in_vessel |= in_vessel && !under;
    }
}
