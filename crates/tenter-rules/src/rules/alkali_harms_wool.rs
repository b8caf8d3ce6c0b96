//! Wool that comes out as felt, silk without its sheen.

use crate::bench::{grams_per_litre, per_cent};
use tenter_reference::FibreFamily;
use tenter_rehearse::LiquorName;
use tenter_resolve::recipe::LiquorKind;

use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};

pub(crate) const RULE: Rule = Rule {
    name: "alkali-harms-wool",
    summary: "Wool or silk lies in a liquor alkaline or hot enough to harm it.",
    group: Group::Alkali,
    level: Level::Warning,
    since: "1",
    page: include_str!("alkali_harms_wool.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    if context.uncertain_bench() {
        return;
    }
    for frame in &context.rehearsal.frames {
        for goods in &frame.goods {
            let protein = context.share_of(goods.goods, FibreFamily::Protein).unwrap_or(0.0);
            let named = context.step_at(frame.place).and_then(|step| match step.liquor.as_ref()?.kind {
                LiquorKind::Mix(id) if frame.verb == Some("strip") && step.goods.contains(&goods.goods) => {
                    frame.liquors.iter().find(|liquor| liquor.name == LiquorName::Mix(id))
                }
                _ => None,
            });
            let inside = goods.inside.and_then(|at| frame.liquors.get(at)).or(named);
            let Some(liquor) = inside.filter(|_| protein > 0.2) else { continue };
            let Some(alkali) = context.rehearsal.substances.alkali_as_soda_ash(&liquor.contents) else { continue };
            let Some(volume) = liquor.volume.as_ref().filter(|volume| volume.value.low > 0.0) else { continue };
            let strength = alkali.value / volume.value;
            let warm = liquor.temperature.value.best >= WARM;
            let most = if warm { MOST_WARM } else { MOST_COOL };
            if strength.low <= most || found.iter().any(|have| have.rule == RULE.name) {
                continue;
            }
            found.push(
                Finding::new(
                    &RULE,
                    frame.place,
                    format!(
                        "{}, {} wool, silk or hair, lie in {} as soda ash at {}; at that warmth {most} g/L is much",
                        context.goods_name(goods.goods),
                        per_cent(protein),
                        grams_per_litre(strength),
                        liquor.temperature.show()
                    ),
                )
                .noted(&alkali, "the alkali comes from here")
                .figure(&alkali)
                .figure(&liquor.temperature)
                .help("Dye wool and silk with acid, or keep the alkali weak, cool and short, and sour afterwards. Wool turns yellow and harsh and dissolves in the end; silk loses its sheen."),
            );
        }
    }
}

/// 55 °C in K: from here on it is hot for wool in alkali.
const WARM: f64 = 328.15;
/// g/L as soda ash, hot.
const MOST_WARM: f64 = 4.0;
/// g/L as soda ash, cool.
const MOST_COOL: f64 = 25.0;
