//! One white powder for another, one step too many, one vessel too small.

use tenter_reference::{FibreFamily, Role};
use tenter_syntax::BlockKind;

use crate::good::Good;
use crate::harm::{always, overdrawn, starved};
use crate::mutant::{Mutant, Operator};
use crate::numbers::scaled;

const ALKALI: &[&str] = &["no-alkali", "too-little-alkali", "acid-in-alkali-step", "never-mix", "batch-too-short"];

pub(super) const OPERATORS: &[Operator] = &[
    Operator {
        name: "urea-for-soda",
        what: "urea taken for soda ash; harm where the dye is left short of alkali",
        answers: ALKALI,
        make: |good| rename(good, "urea"),
        harms: starved,
    },
    Operator {
        name: "citric-acid-for-soda",
        what: "citric acid taken for soda ash; harm where the dye is left short of alkali",
        answers: ALKALI,
        make: |good| rename(good, "citric acid"),
        harms: starved,
    },
    Operator {
        name: "vinegar-before-the-batch",
        what: "goods soured before the dye has reacted; harm where the dye is left short of alkali",
        answers: &["acid-in-alkali-step", "too-little-alkali", "no-alkali", "batch-too-short"],
        make: |good| {
            // Goods under ice are not soured.
            if !good.reactive_on_cellulose() || !good.verb_lines("heap").is_empty() {
                return Vec::new();
            }
            let batch = good.verb_lines("batch").first().copied();
            batch
                .map(|line| good.insert(line - 1, "  neutralise in 10 L water with 300 mL vinegar for 5 min"))
                .into_iter()
                .collect()
        },
        harms: always,
    },
    Operator {
        name: "hydrate-of-the-salt",
        what: "the crystals with ten waters for dry sodium sulfate; harm where under 10 g/L are left",
        answers: &["immersion-without-salt"],
        make: |good| {
            if !good.reactive_on_cellulose() {
                return Vec::new();
            }
            let salt =
                good.of_role(Role::Salt).into_iter().filter(|each| good.words(each.name_place) == "sodium sulfate");
            salt.filter_map(|each| good.put(each.name_place, "Glauber's salt")).collect()
        },
        harms: |_, after| super::water::salt_strength(after) < 10.0,
    },
    Operator {
        name: "vessel-half",
        what: "a vessel of half the size; harm where the bath alone is more than it holds",
        answers: &["vessel-too-small"],
        make: |good| {
            let lines = good.key_lines(BlockKind::Vessel, "holds").into_iter();
            lines.filter_map(|line| Some(good.instead(line, scaled(good.text_of(line), 0.5)?))).collect()
        },
        harms: |_, after| overflowing(after),
    },
    Operator {
        name: "third-of-elastane",
        what: "a third of the cloth is elastane, which stays white",
        answers: &["undyeable-share", "class-cannot-dye-fibre"],
        make: |good| {
            if !good.reactive_on_cellulose() {
                return Vec::new();
            }
            let lines = good.key_lines(BlockKind::Goods, "fibre").into_iter();
            lines.map(|line| good.instead(line, "  fibre    67% cotton, 33% elastane".to_owned())).collect()
        },
        harms: always,
    },
    Operator {
        name: "five-times-the-pieces",
        what: "five times as many pieces, nothing else changed; harm where a bottle runs dry",
        answers: &["mix-overdrawn", "more-than-cloth-holds", "soak-bath-spent"],
        make: |good| {
            let lines = good.key_lines(BlockKind::Goods, "pieces").into_iter();
            lines
                .filter(|line| !good.text_of(*line).contains("lots"))
                .filter_map(|line| Some(good.instead(line, scaled(good.text_of(line), 5.0)?)))
                .collect()
        },
        harms: overdrawn,
    },
    Operator {
        name: "soda-after-the-bath",
        what: "the soda goes in when the time in the bath is over",
        answers: &["batch-too-short", "no-alkali", "too-little-alkali", "bath-never-made"],
        make: |good| {
            if !good.reactive_on_cellulose() {
                return Vec::new();
            }
            let soda = good.steps().into_iter().find(|(_, verb, step)| {
                *verb == "add"
                    && step
                        .applied
                        .iter()
                        .any(|each| good.material(each).is_some_and(|found| found.role() == Role::Alkali))
            });
            let out = good.verb_lines("lift").into_iter().chain(good.verb_lines("drain")).min();
            match (soda, out) {
                (Some((soda, _, _)), Some(out)) if soda < out && good.verb_lines("batch").is_empty() => {
                    vec![good.moved_before(soda, out)]
                }
                _ => Vec::new(),
            }
        },
        harms: always,
    },
    Operator {
        name: "wool-in-the-recipe-of-cotton",
        what: "wool goods in hot strong soda",
        answers: &["alkali-harms-wool", "far-too-much-alkali", "class-cannot-dye-fibre", "wool-shocked"],
        make: |good| {
            if !good.goods_are(FibreFamily::Cellulose) {
                return Vec::new();
            }
            let lines = good.key_lines(BlockKind::Goods, "fibre").into_iter();
            lines.map(|line| good.instead(line, "  fibre    100% wool".to_owned())).collect()
        },
        harms: |_, after| soaked_in_soda(after),
    },
];

fn rename(good: &Good, to: &str) -> Vec<Mutant> {
    if !good.reactive_on_cellulose() {
        return Vec::new();
    }
    let soda = good.of_role(Role::Alkali).into_iter().filter(|each| good.words(each.name_place) == "soda ash");
    soda.filter_map(|each| good.put(each.name_place, to)).collect()
}

/// A liquor is more than its vessel holds, goods not counted.
fn overflowing(good: &Good) -> bool {
    let (Some(recipe), Some(rehearsal)) = (good.recipe(), good.rehearsal()) else { return false };
    rehearsal.frames.iter().flat_map(|frame| frame.liquors.iter()).any(|liquor| {
        let holds = liquor.vessel.and_then(|id| recipe.vessels.get(id.0)?.holds.as_ref());
        match (holds, &liquor.volume) {
            (Some(holds), Some(volume)) => volume.value.low > 1.02 * holds.value.high,
            _ => false,
        }
    })
}

/// Goods are soaked in more than 25 g/L of soda ash.
fn soaked_in_soda(good: &Good) -> bool {
    good.rehearsal().is_some_and(|rehearsal| {
        rehearsal.events.iter().any(|event| match &event.kind {
            tenter_rehearse::EventKind::SoakUptake { strength_nominal: Some(nominal), .. } => nominal.value.low > 25.0,
            _ => false,
        })
    })
}
