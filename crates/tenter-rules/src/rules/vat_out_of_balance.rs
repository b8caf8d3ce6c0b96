//! A vat that cannot reduce its dye, or far out of all proportion.

use tenter_quantity::{Figure, Interval, Place};
use tenter_reference::{DyeFamily, Role};
use tenter_rehearse::LiquorState;
use tenter_resolve::recipe::MaterialId;

use crate::bench::{bath_of, grams, grams_per_litre, number};
use crate::context::Context;
use crate::finding::{Finding, Level};
use crate::rule::{Group, Rule};

pub(crate) const RULE: Rule = Rule {
    name: "vat-out-of-balance",
    summary: "A vat has far too much or too little of its dye, its reducing agent or its alkali.",
    group: Group::Dye,
    level: Level::Warning,
    since: "1",
    page: include_str!("vat_out_of_balance.md"),
    check,
};

fn check(context: &Context<'_>, found: &mut Vec<Finding>) {
    if context.uncertain_bench() {
        return;
    }
    let mut told = Vec::new();
    for dyeing in context.dyeings() {
        let Some(family) = context.class(dyeing.dye).map(|class| class.family) else { continue };
        if !matches!(family, DyeFamily::Vat | DyeFamily::Indigo) {
            continue;
        }
        let place = context.laid_at(dyeing);
        let Some((index, bath)) = bath_of(context, dyeing).filter(|(index, _)| !told.contains(index)) else { continue };
        let bath = before(context, place, index, dyeing.dye).unwrap_or(bath);
        let vat = Vat { context, family, dye: dyeing.dye, bath, place };
        let finding = vat
            .strength()
            .or_else(|| vat.reducer_strength())
            .or_else(|| vat.lye())
            .or_else(|| vat.reducer())
            .or_else(|| vat.alkali());
        if let Some(finding) = finding {
            told.push(index);
            found.push(finding);
        }
    }
}

/// The vat as it stood before the goods went in: what they carry off is known only roughly.
fn before<'a>(context: &Context<'a>, place: Place, index: usize, dye: MaterialId) -> Option<&'a LiquorState> {
    let frames = &context.rehearsal.frames;
    let at = frames.iter().position(|frame| frame.place == place)?.checked_sub(1)?;
    let liquor = frames.get(at)?.liquors.get(index)?;
    (!liquor.gone && liquor.contents.mass(dye).best > 0.0).then_some(&**liquor)
}

struct Vat<'a> {
    context: &'a Context<'a>,
    family: DyeFamily,
    dye: MaterialId,
    bath: &'a LiquorState,
    place: Place,
}

impl Vat<'_> {
    fn finding(&self, message: String, parts: &[&Figure]) -> Finding {
        let mut finding = Finding::new(&RULE, self.place, message);
        for part in parts {
            if let Some(written) = part.places().first() {
                finding = finding.note(*written, "written here");
            }
            finding = finding.figure(part);
        }
        finding
    }

    fn volume(&self) -> Option<Interval> {
        self.bath.volume.as_ref().map(|volume| volume.value).filter(|volume| volume.low > 0.0)
    }

    /// Far more dye than any vat that is dipped into.
    fn strength(&self) -> Option<Finding> {
        let dye = self.bath.contents.part(self.dye)?;
        let strength = dye.value / self.volume()?;
        let name = &self.context.material(self.dye).name;
        if strength.low > STRONGEST {
            return Some(
                self.finding(format!("{} of {name} in the vat, {}; strong vats have 2 to 10 g/L", grams(dye.value), grams_per_litre(strength)), &[dye])
                    .help("Most of it would lie on the cloth and rub off, or go down the drain. Look for a slip: a decimal point, kg for g."),
            );
        }
        // Dips only: what is dyed until the vat is empty is bounded by the weight of the goods.
        (strength.high < WEAKEST).then(|| {
            self.finding(
                format!("{} of {name} in the vat, {}: hardly a tint", grams(dye.value), grams_per_litre(strength)),
                &[dye],
            )
            .help(
                "The weakest vats have a few tenths of a gram in a litre. Look for a slip: a decimal point, mg for g.",
            )
        })
    }

    fn reducers(&self) -> impl Iterator<Item = (&Figure, Agent)> {
        self.bath.contents.parts.iter().filter(|(_, mass)| mass.value.high > 0.0).filter_map(|(id, mass)| {
            let id = self.context.material(*id).reference?.id.as_str();
            AGENTS.iter().find(|agent| agent.id == id).map(|agent| (mass, *agent))
        })
    }

    /// Whether something else in the vat reduces: sugar, iron, a ferment, what the tables do not know.
    fn others_reduce(&self) -> bool {
        self.bath.contents.parts.iter().any(|(id, mass)| {
            let material = self.context.material(*id);
            let counted = material.reference.is_some_and(|entry| AGENTS.iter().any(|agent| agent.id == entry.id));
            let may = material.reference.is_none() || matches!(material.role(), Role::Reducer | Role::Mordant);
            mass.value.high > 0.0 && !material.is_dye && !counted && may
        })
    }

    fn reducer_strength(&self) -> Option<Finding> {
        let volume = self.volume()?;
        self.reducers().find_map(|(mass, agent)| {
            let strength = mass.value / volume;
            (strength.low > MOST_REDUCER).then(|| {
                self.finding(
                    format!("{} of {} in the vat, {}; vats have 1 to 10 g/L", grams(mass.value), agent.name, grams_per_litre(strength)),
                    &[mass],
                )
                .help("So much strips the dye off the cloth again and gases whoever bends over it. Look for a slip: a decimal point, kg for g.")
            })
        })
    }

    /// Lye that eats hands and cloth.
    fn lye(&self) -> Option<Finding> {
        let volume = self.volume()?;
        self.bath.contents.parts.iter().find_map(|(id, mass)| {
            let material = self.context.material(*id);
            let lye = material.reference.is_some_and(|entry| LYES.contains(&entry.id.as_str()));
            let strength = mass.value / volume;
            (lye && strength.low > MOST_LYE).then(|| {
                self.finding(
                    format!("{} of {} in the vat, {}; vats have 1 to 15 g/L", grams(mass.value), material.name, grams_per_litre(strength)),
                    &[mass],
                )
                .help("So strong a lye burns through gloves' cuffs, shrinks cotton and destroys wool and silk. Look for a slip: oz for g, a decimal point.")
            })
        })
    }

    /// Too little to reduce the dye that is there, or to outlast the air.
    fn reducer(&self) -> Option<Finding> {
        if self.others_reduce() {
            return None;
        }
        let dye = self.bath.contents.part(self.dye)?;
        let name = &self.context.material(self.dye).name;
        let first = self.reducers().next()?;
        if self.family == DyeFamily::Vat {
            let all: Interval = self.reducers().map(|(mass, _)| mass.value).sum();
            let strength = all / self.volume()?;
            let dithionite = self.reducers().all(|(_, agent)| agent.id == "sodium-dithionite");
            return (dithionite && strength.high < LEAST_IN_WARM_VAT).then(|| {
                self.finding(
                    format!("the vat of {name} has {} of {}; 3 to 8 g/L is usual", grams_per_litre(strength), first.1.name),
                    &[first.0],
                )
                .help("In a warm open vat the air uses it up within minutes, and the dye falls out as a powder. Put in more just before the goods.")
            });
        }
        let purity = self.context.material(self.dye).purity.as_ref().map_or(1.0, |purity| purity.value.low);
        let needed = dye.value.low * purity / INDIGOTIN * 2.0;
        let there: f64 = self.reducers().map(|(mass, agent)| mass.value.high / agent.molar_mass * 2.0).sum();
        if there >= SHARE * needed {
            return None;
        }
        let wanted = needed / 2.0 * first.1.molar_mass;
        Some(
            self.finding(
                format!(
                    "{} of {} to reduce {} of {name}: by the reaction alone it takes {}",
                    grams(first.0.value),
                    first.1.name,
                    grams(dye.value),
                    crate::bench::weighable(wanted)
                ),
                &[first.0, dye],
            )
            .help("Take that and half as much again for what the air uses up; until the liquor is clear and yellow-green the dye is still a powder."),
        )
    }

    /// The reducing agent turns acid as it is used up.
    fn alkali(&self) -> Option<Finding> {
        if self.others_reduce() {
            return None;
        }
        let (mass, agent) = self.reducers().find(|(_, agent)| agent.turns_acid)?;
        let eaten: f64 = self
            .reducers()
            .filter(|(_, agent)| agent.turns_acid)
            .map(|(mass, agent)| mass.value.low / agent.molar_mass * 2.0)
            .sum();
        let base = self.context.rehearsal.substances.base(&self.bath.contents);
        if base.best <= 0.0 || base.high >= SHARE * eaten {
            return None;
        }
        Some(
            self.finding(
                format!(
                    "{} of {} turns acid as it is used up, and the alkali in the vat takes up {}% of that",
                    grams(mass.value),
                    agent.name,
                    number(base.best / eaten * 100.0)
                ),
                &[mass],
            )
            .help("Once the alkali is gone the dye falls out as a white mud, and sulfur dioxide comes off. Put in about as much lye as reducing agent, or twice as much soda ash; gloves, goggles."),
        )
    }
}

#[derive(Clone, Copy)]
struct Agent {
    id: &'static str,
    name: &'static str,
    /// kg/mol.
    molar_mass: f64,
    /// Two hydroxide ions are used up for each two electrons given.
    turns_acid: bool,
}

/// Agents of which one mole gives two moles of electrons; molar masses IUPAC 2021.
const AGENTS: [Agent; 3] = [
    Agent { id: "sodium-dithionite", name: "sodium dithionite", molar_mass: 0.174_096, turns_acid: true },
    Agent { id: "thiourea-dioxide", name: "thiourea dioxide", molar_mass: 0.108_115, turns_acid: true },
    Agent { id: "zinc-dust", name: "zinc dust", molar_mass: 0.065_38, turns_acid: false },
];
/// kg/mol; two electrons reduce one.
const INDIGOTIN: f64 = 0.262_268;
/// Share of what the reaction takes below which it is told: natural indigo is seldom pure.
const SHARE: f64 = 0.6;
/// kg/m³ of dye.
const STRONGEST: f64 = 25.0;
const WEAKEST: f64 = 0.03;
/// kg/m³ of reducing agent.
const MOST_REDUCER: f64 = 40.0;
const LEAST_IN_WARM_VAT: f64 = 1.5;
/// kg/m³ of lye.
const MOST_LYE: f64 = 20.0;
const LYES: [&str; 2] = ["sodium-hydroxide", "potassium-hydroxide"];
