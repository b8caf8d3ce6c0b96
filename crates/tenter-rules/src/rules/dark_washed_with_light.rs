//! Black beside pale pink in one tub.

use crate::bench::{number, per_cent};
use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};
use tenter_chemistry::colour::{Lab, Rgb};
use tenter_rehearse::{EventKind, GoodsState};
use tenter_resolve::recipe::{GoodsId, MaterialId};

pub(crate) const RULE: Rule = Rule {
    name: "dark-washed-with-light",
    summary: "Dark and light goods share a wash before the loose dye is out of the dark ones.",
    group: Group::Finish,
    level: Level::Warning,
    since: "1",
    page: include_str!("dark_washed_with_light.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    if context.uncertain_bench() {
        return;
    }
    let mut told: Vec<(GoodsId, GoodsId)> = Vec::new();
    for frame in &context.rehearsal.frames {
        let Some(step) = context.step_at(frame.place).filter(|step| step.goods.len() > 1 && step.lots.is_none()) else {
            continue;
        };
        let washed: Vec<_> = context
            .rehearsal
            .events_of(frame)
            .iter()
            .filter_map(|event| match &event.kind {
                EventKind::Rinse { goods, loose_before, before, soap, .. } => {
                    Some((*goods, loose_before.best, before, *soap))
                }
                _ => None,
            })
            .collect();
        for (dark, loose, before, soap) in &washed {
            let Some((dye, darkness)) = darkest(context, before) else { continue };
            if *loose < OUT || darkness > DARK {
                continue;
            }
            for (light, _, other, _) in washed.iter().filter(|one| one.0 != *dark) {
                let Some(lightness) = lightest(context, other) else { continue };
                if lightness - darkness < APART || told.contains(&(*dark, *light)) {
                    continue;
                }
                told.push((*dark, *light));
                let (dark_name, light_name) = (context.goods_name(*dark), context.goods_name(*light));
                let finding = Finding::new(
                    &RULE,
                    step.place,
                    format!(
                        "{dark_name} and {light_name} are {} together while about {} of what is loose is still in {dark_name}; lightness {} beside {}",
                        if *soap { "soaped" } else { "rinsed" },
                        per_cent(*loose),
                        number(darkness),
                        number(lightness)
                    ),
                )
                .note(context.material(dye).place, format!("the dark one is {}", context.material(dye).name))
                .help(format!("Rinse and soap {dark_name} by themselves until the water stays clear; after that they may share a bath with {light_name}."));
                found.push(finding);
            }
        }
    }
}

/// Share of the loose dye below which it no longer stains what lies beside it.
const OUT: f64 = 0.03;
/// CIELAB lightness below which a dye counts as dark.
const DARK: f64 = 45.0;
/// Difference of CIELAB lightness from which a stain shows.
const APART: f64 = 35.0;
/// Dye on a part, share of its dry weight, that makes it as dark as the screen colour says.
const DEEP: f64 = 0.01;
/// Dye on a part, share of its dry weight, from which it is coloured at all.
const TINTED: f64 = 0.001;

fn lightness([r, g, b]: [u8; 3]) -> f64 {
    Lab::from(Rgb::from_bytes(r, g, b)).l
}

/// The darkest dye that lies on goods in quantity.
fn darkest(context: &Context<'_>, state: &GoodsState) -> Option<(MaterialId, f64)> {
    let mut darkest: Option<(MaterialId, f64)> = None;
    for zone in &state.zones {
        for (id, mass) in &zone.contents.parts {
            let material = context.material(*id);
            let Some((colour, _)) = material.colour.filter(|_| material.is_dye) else { continue };
            let l = lightness(colour);
            if mass.value.best >= DEEP * zone.dry.value.best && darkest.is_none_or(|(_, least)| l < least) {
                darkest = Some((*id, l));
            }
        }
    }
    darkest
}

/// How light the lightest part of goods is; `None` where a dye's colour is not known.
fn lightest(context: &Context<'_>, state: &GoodsState) -> Option<f64> {
    let cloth = context.goods(state.goods)?.colour.map_or(WHITE, |(colour, _)| lightness(colour));
    let mut lightest: f64 = 0.0;
    for zone in &state.zones {
        let mut here = cloth;
        for (id, mass) in &zone.contents.parts {
            let material = context.material(*id);
            if material.is_dye && mass.value.best >= TINTED * zone.dry.value.best {
                here = here.min(lightness(material.colour?.0));
            }
        }
        lightest = lightest.max(here);
    }
    Some(lightest)
}

/// CIELAB lightness of undyed cloth, roughly.
const WHITE: f64 = 95.0;
