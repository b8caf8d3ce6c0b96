//! Cooler, shorter, or not wrapped up.

use tenter_reference::{DyeFamily, FibreFamily};
use tenter_syntax::BlockKind;

use crate::good::Good;
use crate::harm::{always, unset};
use crate::mutant::{Mutant, Operator};

const TIME: &[&str] = &["batch-too-short", "acid-dye-too-cold", "bath-too-short-for-level"];

pub(super) const OPERATORS: &[Operator] = &[
    Operator {
        name: "setting-water-cool",
        what: "the water that sets the dye at 45 °C; harm where under a quarter of a full batch is reached",
        answers: TIME,
        make: |good| {
            good.verb_lines("irrigate").into_iter().filter_map(|line| good.reword(line, "82 °C", "45 °C")).collect()
        },
        harms: unset,
    },
    Operator {
        name: "setting-water-cold",
        what: "the water that sets the dye cold from the tap; harm where under a quarter of a full batch is reached",
        answers: TIME,
        make: |good| {
            good.verb_lines("irrigate").into_iter().filter_map(|line| good.reword(line, "82 °C", "15 °C")).collect()
        },
        harms: unset,
    },
    Operator {
        name: "fahrenheit-for-celsius-setting",
        what: "°F for °C in the water that sets the dye; harm where under a quarter of a full batch is reached",
        answers: TIME,
        make: |good| fahrenheit(good, "irrigate"),
        harms: unset,
    },
    Operator {
        name: "fahrenheit-for-celsius-soaping",
        what: "°F for °C in the water of the soaping: 60 °F is 16 °C, and loose reactive dye stays in",
        answers: &["too-few-soapings", "far-out-number"],
        make: |good| if good.reactive_on_cellulose() { fahrenheit(good, "soap off") } else { Vec::new() },
        harms: always,
    },
    Operator {
        name: "batch-of-an-hour",
        what: "an hour for a day; harm where under a quarter of a full batch is reached",
        answers: TIME,
        make: |good| batch(good, "1 h"),
        harms: unset,
    },
    Operator {
        name: "batch-of-minutes",
        what: "minutes for hours; harm where under a quarter of a full batch is reached",
        answers: TIME,
        make: |good| good.verb_lines("batch").into_iter().filter_map(|line| good.reword(line, " h", " min")).collect(),
        harms: unset,
    },
    Operator {
        name: "batch-left-out",
        what: "no time to react; harm where under a quarter of a full batch is reached",
        answers: TIME,
        make: |good| good.verb_lines("batch").into_iter().map(|line| good.without(line)).collect(),
        harms: unset,
    },
    Operator {
        name: "fixing-time-left-out",
        what: "the time in the bath after the soda left out; harm where under a quarter of a full batch is reached",
        answers: TIME,
        make: |good| {
            let lines = good.verb_lines("hold").into_iter().chain(good.verb_lines("stir"));
            lines.last().map(|line| good.without(line)).into_iter().collect()
        },
        harms: unset,
    },
    Operator {
        name: "cold-room",
        what: "a room at 5 °C, where ice does not melt either; harm where under a quarter of a full batch is reached",
        answers: &["batch-too-short", "bath-too-short-for-level", "powder-never-wetted"],
        make: |good| {
            let mut found = Vec::new();
            for line in good.key_lines(BlockKind::Recipe, "room") {
                let cold = good.instead(line, "  room     5 °C".to_owned());
                let mut both = cold;
                for batch in good.verb_lines("batch") {
                    let text = good.text_of(batch);
                    let Some((before, after)) = text.split_once(" at ") else { continue };
                    let rest = after.split_once("°C").map_or("", |(_, rest)| rest);
                    both.text = both.text.replacen(text, &format!("{before} at 5 °C{rest}"), 1);
                    both.lines.push(batch);
                }
                found.push(both);
            }
            found
        },
        harms: unset,
    },
    Operator {
        name: "batch-uncovered",
        what: "a batch of four hours or more lies open and dries out",
        answers: &["batch-dries-out"],
        make: |good| {
            good.steps()
                .into_iter()
                .filter(|(_, verb, step)| {
                    *verb == "batch" && step.duration.as_ref().is_some_and(|time| time.value.best >= 4.0 * 3600.0)
                })
                .filter_map(|(line, _, _)| open(good, line))
                .collect()
        },
        harms: always,
    },
    Operator {
        name: "steam-uncovered",
        what: "steam meets the goods uncovered: drops fall on the print, or the steam escapes",
        answers: &["steam-uncovered"],
        make: |good| good.verb_lines("steam").into_iter().filter_map(|line| open(good, line)).collect(),
        harms: always,
    },
    Operator {
        name: "steam-left-out",
        what: "a print or padding that is not steamed although it relies on it",
        answers: &[
            "bicarbonate-without-heat",
            "batch-too-short",
            "no-alkali",
            "too-little-alkali",
            "acid-dye-too-cold",
        ],
        make: |good| good.verb_lines("steam").into_iter().map(|line| good.without(line)).collect(),
        harms: always,
    },
    Operator {
        name: "acid-dye-stays-cold",
        what: "the bath of an acid dye, or of a reactive one on wool, is not heated",
        answers: &["acid-dye-too-cold", "too-cold-for-class"],
        make: |good| {
            let bath = good.dyes_with(DyeFamily::Acid)
                || (good.goods_are(FibreFamily::Protein) && good.dyes_with(DyeFamily::Reactive));
            let heating = |verb: &str| matches!(verb, "raise" | "boil" | "simmer" | "cool" | "hold");
            let lines: Vec<usize> =
                good.steps().iter().filter(|(_, verb, _)| heating(verb)).map(|(line, _, _)| *line).collect();
            if bath && !lines.is_empty() { vec![good.without_all(&lines)] } else { Vec::new() }
        },
        harms: always,
    },
    Operator {
        name: "wool-heated-in-five-minutes",
        what: "wool brought to the boil in five minutes felts",
        answers: &["wool-shocked"],
        make: |good| {
            if !woollen(good) {
                return Vec::new();
            }
            good.verb_lines("raise")
                .into_iter()
                .filter_map(|line| {
                    let (before, _) = good.text_of(line).split_once(" over ")?;
                    Some(good.instead(line, format!("{before} over 5 min")))
                })
                .collect()
        },
        harms: always,
    },
    Operator {
        name: "wool-rinsed-cold-from-the-boil",
        what: "wool goes from the boil straight into cold water and felts",
        answers: &["wool-shocked"],
        make: |good| {
            let cooled = good.verb_lines("cool");
            let rinse = good.verb_lines("rinse");
            match (woollen(good), cooled.first(), rinse.first()) {
                (true, Some(cool), Some(rinse)) => {
                    let mut mutant = good.without(*cool);
                    let words = good.text_of(*rinse);
                    let cold =
                        words.replace("warm water", "cold water").replace("45 °C", "15 °C").replace("40 °C", "15 °C");
                    mutant.text = mutant.text.replacen(words, &cold, 1);
                    mutant.lines.push(rinse - 1);
                    vec![mutant]
                }
                _ => Vec::new(),
            }
        },
        harms: always,
    },
    Operator {
        name: "disperse-not-boiled",
        what: "a disperse dye on polyester at 60 °C",
        answers: &["disperse-dye-too-cold"],
        make: |good| {
            if !good.dyes_with(DyeFamily::Disperse) {
                return Vec::new();
            }
            let mut found = Vec::new();
            for line in good.verb_lines("raise") {
                let Some(mut mutant) = good.reword(line, "100 °C", "60 °C") else { continue };
                for hold in good.verb_lines("hold") {
                    let text = good.text_of(hold);
                    mutant.text = mutant.text.replacen(text, &text.replace("100 °C", "60 °C"), 1);
                    mutant.lines.push(hold);
                }
                found.push(mutant);
            }
            found
        },
        harms: always,
    },
    Operator {
        name: "time-left-out",
        what: "how long the batch takes is not said",
        answers: &["time-not-said", "batch-too-short"],
        make: |good| {
            good.verb_lines("batch")
                .into_iter()
                .filter_map(|line| {
                    let text = good.text_of(line);
                    let (before, after) = text.split_once(" for ")?;
                    let rest = after.split_once(" h").map_or("", |(_, rest)| rest);
                    Some(good.instead(line, format!("{before}{rest}")))
                })
                .collect()
        },
        harms: always,
    },
];

fn fahrenheit(good: &Good, verb: &str) -> Vec<Mutant> {
    good.verb_lines(verb).into_iter().filter_map(|line| good.reword(line, "°C", "°F")).collect()
}

fn batch(good: &Good, time: &str) -> Vec<Mutant> {
    good.verb_lines("batch")
        .into_iter()
        .filter_map(|line| {
            let text = good.text_of(line);
            let (before, after) = text.split_once(" for ")?;
            let (_, rest) = after.split_once(" h")?;
            let new = format!("{before} for {time}{rest}");
            (new != text).then(|| good.instead(line, new))
        })
        .collect()
}

fn open(good: &Good, line: usize) -> Option<Mutant> {
    [" in sealed bag", " under plastic", " covered"]
        .into_iter()
        .find_map(|cover| good.reword(line, cover, " uncovered"))
}

/// Wool, which felts; silk does not.
fn woollen(good: &Good) -> bool {
    good.recipe().is_some_and(|recipe| {
        let fibres = recipe.goods.iter().flat_map(|goods| &goods.fibres);
        fibres.filter_map(|part| part.fibre).any(|fibre| fibre.id == "wool")
    })
}
