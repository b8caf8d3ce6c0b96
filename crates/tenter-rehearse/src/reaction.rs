//! How far dye has reacted, worked out only when somebody asks.

use std::sync::{Arc, OnceLock};

use tenter_chemistry::reaction::{self as chemistry, FIXATION_YIELD};
use tenter_quantity::Interval;
use tenter_resolve::recipe::MaterialId;

use crate::acidity::{AT_25, acidity};
use crate::contents::Contents;
use crate::state::{LiquorState, ZoneState};
use crate::substances::Substances;
use crate::warmth::Cooling;

/// The liquor a spell went on in.
#[derive(Clone, Debug)]
pub enum Bathed {
    /// That held by a zone.
    Zone(Arc<ZoneState>),
    /// A bath, and the zone with the dye that stays on it.
    Bath(Arc<LiquorState>, Arc<ZoneState>),
}

impl Bathed {
    /// What is in it.
    pub fn contents(&self) -> &Contents {
        match self {
            Self::Zone(zone) => &zone.contents,
            Self::Bath(bath, _) => &bath.contents,
        }
    }

    /// Share of bicarbonate that heat has turned into carbonate.
    pub fn decarbonated(&self) -> Interval {
        match self {
            Self::Zone(zone) => zone.decarbonated,
            Self::Bath(bath, _) => bath.decarbonated,
        }
    }

    /// Whether a dye is there.
    pub fn holds(&self, dye: MaterialId) -> bool {
        match self {
            Self::Zone(zone) => zone.contents.mass(dye).high > 0.0,
            Self::Bath(bath, zone) => bath.contents.mass(dye).high > 0.0 || zone.contents.mass(dye).high > 0.0,
        }
    }
}

/// A stretch of time in which wet dye could react.
#[derive(Clone, Debug)]
pub struct Spell {
    /// The one before it in the history of the zone.
    pub before: Option<u32>,
    /// How long, s.
    pub seconds: Interval,
    /// Temperature at its start, K.
    pub start: Interval,
    /// How it changed; `None`: held.
    pub cooling: Option<Cooling>,
    /// What it was brought to evenly over that time, K; `None`: as `cooling` says.
    pub brought_to: Option<Interval>,
    /// In what.
    pub bathed: Bathed,
    ph: OnceLock<Option<Interval>>,
}

impl Spell {
    pub(crate) fn new(
        before: Option<u32>,
        seconds: Interval,
        start: Interval,
        cooling: Option<Cooling>,
        bathed: Bathed,
    ) -> Self {
        Self { before, seconds, start, cooling, brought_to: None, bathed, ph: OnceLock::new() }
    }

    /// The same in a bath that was brought evenly from another temperature to that of the spell.
    pub(crate) fn brought_from(self, from: Interval) -> Self {
        Self { start: from, cooling: None, brought_to: Some(self.start), ..self }
    }

    /// The same with its time, or its temperatures, at their best values.
    fn knowing(&self, kind: Widener) -> Self {
        let exact = |value: Interval| Interval::exact(value.best);
        let mut spell = self.clone();
        match kind {
            Widener::Time => spell.seconds = exact(spell.seconds),
            Widener::Temperature => {
                spell.start = exact(spell.start);
                spell.brought_to = spell.brought_to.map(exact);
                spell.cooling =
                    spell.cooling.map(|cooling| Cooling { aim: exact(cooling.aim), tau: exact(cooling.tau) });
            }
            Widener::Acidity | Widener::Class => {}
        }
        spell
    }

    /// Whether another spell went on in a liquor of the same make-up: steps that only wait change nothing in it.
    fn same_liquor(&self, other: &Self) -> bool {
        let (ours, theirs) = (self.bathed.contents(), other.bathed.contents());
        ours.water_mass() == theirs.water_mass()
            && self.bathed.decarbonated() == other.bathed.decarbonated()
            && ours.parts.len() == theirs.parts.len()
            && ours.parts.iter().zip(&theirs.parts).all(|(a, b)| a.0 == b.0 && a.1.value == b.1.value)
    }

    /// pH as it would read at 25 °C.
    pub fn ph(&self, substances: &Substances) -> Option<Interval> {
        *self.ph.get_or_init(|| {
            let lost = self.bathed.decarbonated();
            acidity(self.bathed.contents(), substances, Interval::exact(AT_25), lost).map(|acidity| acidity.ph)
        })
    }
}

/// How far a reactive dye has gone.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
pub struct Reaction {
    /// Equivalent time at the reference temperature of its class, s.
    pub equivalent: Interval,
    /// Share of a full batch, 0 to 1. Not a share of dye.
    pub batch_share: Interval,
    /// Share of the dye taken as fixed: share of a full batch times 50 to 80 % (Smith 2003, quoted).
    pub fixed: Interval,
    /// Clock time spent outside the pH window of the class, s.
    pub outside_window: f64,
    /// Warmest it was, K.
    pub warmest: f64,
}

/// Longest history that is followed.
const MOST_SPELLS: usize = 10_000;
/// Slices a cooling is cut into.
const SLICES: usize = 12;

/// What makes a result of reaction wide.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Widener {
    /// How warm the cloth or the bath was.
    Temperature,
    /// How long it took.
    Time,
    /// The pH: alkali and water on the cloth.
    Acidity,
    /// What is known of the class: nothing to measure at the bench.
    Class,
}

/// Adds up the history of a dye; `None` for what is not a reactive dye of a known class.
pub fn reaction(spells: &[Spell], last: Option<u32>, dye: MaterialId, substances: &Substances) -> Option<Reaction> {
    added_up(spells, last, dye, substances, None)
}

/// What to measure to narrow a share of a full batch: what, known exactly, would narrow it most. `None` where its ends lie
/// within half a batch of each other.
pub fn widened_by(spells: &[Spell], last: Option<u32>, dye: MaterialId, substances: &Substances) -> Option<Widener> {
    let width = |known: Option<Widener>| {
        added_up(spells, last, dye, substances, known).map(|reaction| reaction.batch_share.width())
    };
    let now = width(None).filter(|width| *width > 0.5)?;
    let mut most = (Widener::Class, 0.05);
    for known in [Widener::Temperature, Widener::Time, Widener::Acidity] {
        let gain = now - width(Some(known))?;
        if gain > most.1 {
            most = (known, gain);
        }
    }
    Some(most.0)
}

/// The sum, with one kind of input taken as known exactly.
fn added_up(
    spells: &[Spell],
    last: Option<u32>,
    dye: MaterialId,
    substances: &Substances,
    known: Option<Widener>,
) -> Option<Reaction> {
    let class = substances.get(dye)?.reactive?;
    let (mut low, mut best, mut high) = (Vec::new(), Vec::new(), Vec::new());
    let mut warmest = 0.0_f64;
    let mut at = last;
    let mut count = 0;
    let mut last_spell: Option<&Spell> = None;
    while let Some(spell) = at.and_then(|at| spells.get(at as usize)) {
        at = spell.before;
        count += 1;
        if count > MOST_SPELLS {
            break;
        }
        if !spell.bathed.holds(dye) {
            continue;
        }
        if let Some(ph) = last_spell.filter(|last| last.same_liquor(spell)).and_then(|last| last.ph.get()) {
            // Set already if another dye of the zone asked before: then it is the same figure.
            let _ = spell.ph.set(*ph);
        }
        let mut ph = spell.ph(substances);
        last_spell = Some(spell);
        let settled;
        let spell = match known {
            None => spell,
            Some(Widener::Acidity) => {
                ph = ph.map(|ph| Interval::exact(ph.best));
                spell
            }
            Some(kind) => {
                settled = spell.knowing(kind);
                &settled
            }
        };
        let cut = |out: &mut Vec<chemistry::Spell>, pick: fn(Interval) -> f64, ph: Option<f64>| {
            slices(spell, pick, ph, out);
        };
        // No alkali at all leaves nothing for the model to solve: taken as neutral water.
        let known = ph.unwrap_or(Interval::new(6.0, 7.5, 8.5));
        cut(&mut low, |value| value.low, Some(known.low));
        cut(&mut best, |value| value.best, Some(known.best));
        cut(&mut high, |value| value.high, Some(known.high));
        warmest = warmest.max(spell.start.best).max(spell.brought_to.map_or(0.0, |to| to.best));
        if let Some(cooling) = spell.cooling {
            warmest = warmest.max(cooling.aim.best);
        }
    }
    let (slow, usual, fast) = (
        chemistry::equivalent_time(class, &low),
        chemistry::equivalent_time(class, &best),
        chemistry::equivalent_time(class, &high),
    );
    let sum = chemistry::Equivalent {
        low: slow.low,
        best: usual.best,
        high: fast.high,
        outside_window: usual.outside_window,
    };
    let share = chemistry::batch_share(class, &sum);
    let batch_share = Interval::new(share.0, share.1, share.2);
    let middle = 0.5 * (FIXATION_YIELD.0 + FIXATION_YIELD.1);
    Some(Reaction {
        equivalent: Interval::new(sum.low, sum.best, sum.high),
        batch_share,
        fixed: batch_share * Interval::new(FIXATION_YIELD.0, middle, FIXATION_YIELD.1),
        outside_window: sum.outside_window,
        warmest,
    })
}

fn slices(spell: &Spell, pick: fn(Interval) -> f64, ph: Option<f64>, out: &mut Vec<chemistry::Spell>) {
    let (seconds, start) = (pick(spell.seconds), pick(spell.start));
    if let Some(to) = spell.brought_to {
        let (to, step) = (pick(to), seconds / SLICES as f64);
        for slice in 0..SLICES {
            let temperature = start + (to - start) * (slice as f64 + 0.5) / SLICES as f64;
            out.push(chemistry::Spell { seconds: step, temperature, ph });
        }
        return;
    }
    let Some(cooling) = spell.cooling.filter(|cooling| (pick(cooling.aim) - start).abs() > 0.5) else {
        out.push(chemistry::Spell { seconds, temperature: start, ph });
        return;
    };
    let aim = pick(cooling.aim);
    // A slow cooling keeps warmth longer: the low end cools fast, the high end slowly; the other way when warming.
    let warming = aim > start;
    let tau = match (pick(Interval::new(0.0, 1.0, 2.0)) as u8, warming) {
        (0, false) | (2, true) => cooling.tau.low,
        (1, _) => cooling.tau.best,
        _ => cooling.tau.high,
    };
    let end = seconds.min(4.0 * tau);
    let step = end / SLICES as f64;
    for slice in 0..SLICES {
        let middle = (slice as f64 + 0.5) * step;
        let temperature = aim + (start - aim) * libm::exp(-middle / tau.max(1e-9));
        out.push(chemistry::Spell { seconds: step, temperature, ph });
    }
    if seconds > end {
        out.push(chemistry::Spell { seconds: seconds - end, temperature: aim, ph });
    }
}
