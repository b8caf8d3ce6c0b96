//! What waits for what, and until when liquors are of use, in words.

use tenter_rehearse::{Frame, Held, Rehearsal, Slot};

use crate::pick::Picked;
use crate::source::Source;
use crate::text::safe::safe;
use crate::{names, words};

/// Shorter waits and gains are not told, s.
const WORTH_TELLING: f64 = 120.0;

/// What a step is kept from by another than the one before it, and how early it can be done while others wait.
pub(super) fn waits(
    picked: &Picked<'_>,
    rehearsal: &Rehearsal,
    slots: &[Slot],
    at: usize,
    file: &dyn Source,
) -> Vec<String> {
    let (Some(slot), Some(frame)) = (slots.get(at), rehearsal.frames.get(at)) else { return Vec::new() };
    let mut said = Vec::new();
    if let Some(running) = still_running(rehearsal, slots, at) {
        let gain = frame.start.elapsed.best - slot.start.best;
        if gain > WORTH_TELLING {
            let goods = running.holds_goods.first().map(|goods| Held::Goods(*goods));
            let held = what(picked, running, goods.or(running.holds_liquors.first().map(|at| Held::Liquor(*at))));
            said.push(format!(
                "can be done from {} on, while {} ({held}) goes on by itself",
                words::clock(slot.start.best),
                picked.written(running.place, file)
            ));
        }
    }
    let wait = slot.waits.first().filter(|wait| wait.by + 1 != at && wait.seconds > WORTH_TELLING);
    if let Some(wait) = wait
        && let Some(by) = rehearsal.frames.get(wait.by)
    {
        let held = what(picked, by, Some(wait.held));
        said.push(format!(
            "waits {} for {held}, held by {}",
            words::clock(wait.seconds),
            picked.written(by.place, file)
        ));
    }
    said.into_iter().map(|text| safe(&text).into_owned()).collect()
}

/// The longest of the steps before that is still going on when a step starts.
fn still_running<'a>(rehearsal: &'a Rehearsal, slots: &[Slot], at: usize) -> Option<&'a Frame> {
    let start = slots.get(at)?.start.best;
    let (index, _) = slots
        .iter()
        .enumerate()
        .take(at)
        .filter(|(_, slot)| slot.end.best > start + WORTH_TELLING)
        .max_by(|a, b| a.1.end.best.total_cmp(&b.1.end.best))?;
    rehearsal.frames.get(index)
}

fn what(picked: &Picked<'_>, frame: &Frame, held: Option<Held>) -> String {
    match held {
        Some(Held::Goods(index)) => {
            frame.goods.get(index).map_or_else(|| "goods".to_owned(), |goods| names::goods(&picked.recipe, goods))
        }
        Some(Held::Liquor(index)) => {
            frame.liquors.get(index).map_or_else(|| "a liquor".to_owned(), |liquor| names::liquor(picked, liquor))
        }
        None => "what stands".to_owned(),
    }
}

/// The whole time when what waits is left to itself meanwhile; `None` where that gains nothing.
pub(super) fn overlapped(rehearsal: &Rehearsal, slots: &[Slot]) -> Option<String> {
    let end = slots.iter().map(|slot| slot.end.best).fold(0.0, f64::max);
    (rehearsal.clock().elapsed.best - end > WORTH_TELLING).then(|| {
        format!(
            "{} if the hands go on with what is free while soaks and batches are left to themselves.",
            words::clock(end)
        )
    })
}

/// Until when each bottle, bath and stock is of use, and when it was last used.
pub(super) fn lives(picked: &Picked<'_>, rehearsal: &Rehearsal) -> Vec<String> {
    let Some(last) = rehearsal.frames.last() else { return Vec::new() };
    let mut said = Vec::new();
    for index in 0..last.liquors.len() {
        let using = rehearsal.frames.iter().rfind(|frame| frame.holds_liquors.contains(&index));
        let used = using.map_or(0.0, |frame| frame.end.elapsed.best);
        // As it was when dye and alkali were first together in it, else as it was made.
        let states = || rehearsal.frames.iter().filter_map(|frame| frame.liquors.get(index));
        let together = states().find(|liquor| rehearsal.useful_until(liquor).is_some());
        let Some(liquor) = together.or_else(|| states().next()) else { continue };
        let name = names::liquor(picked, liquor);
        let text = if let (false, Some(until), Some(since)) =
            (liquor.inside.is_empty(), rehearsal.useful_until(liquor), liquor.alkali_with_dye)
        {
            format!(
                "{name}: dye and alkali together since {}, with goods in it; for other goods it ages from about {} on, and \
                 is spent by {}",
                words::clock(since.best),
                words::clock(until.best),
                words::clock(until.high)
            )
        } else if let (Some(until), Some(since)) = (rehearsal.useful_until(liquor), liquor.alkali_with_dye) {
            format!(
                "{name}: dye and alkali together since {}, last used at {}; of use until about {}, gone by {}",
                words::clock(since.best),
                words::clock(used),
                words::clock(until.best),
                words::clock(until.high)
            )
        } else if let Some(until) = rehearsal.keeps_until(liquor) {
            format!(
                "{name}: made at {}, last used at {}; dye without alkali, keeps {:.0} to {:.0} days",
                words::clock(liquor.made_at.best),
                words::clock(used),
                (until.low - liquor.made_at.low) / 86_400.0,
                (until.high - liquor.made_at.high) / 86_400.0
            )
        } else {
            continue;
        };
        said.push(safe(&text).into_owned());
    }
    said
}
