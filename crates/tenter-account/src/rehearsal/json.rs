//! The rehearsal as JSON: the published interface of `spec/rehearse.schema.json`.

use serde::Serialize;
use tenter_quantity::Interval;
use tenter_rehearse::{Frame, GoodsState, Held, LiquorState, Note, Rehearsal, Slot, ZoneState};
use tenter_resolve::recipe::MaterialId;

use crate::names;
use crate::number::{Number, celsius, grams, in_grams, in_per_cent, millilitres, minutes, plain};
use crate::pick::Picked;
use crate::source::Source;

#[derive(Serialize)]
struct Recipe {
    name: Option<String>,
    variant: Option<String>,
    file: String,
    room_c: Number,
    mixes: Vec<Liquor>,
    steps: Vec<Step>,
    clock_min: Number,
    hands_on_min: Number,
    plan_min: Number,
    notes: Vec<Said>,
    cut_short: bool,
    open_problems: usize,
}

#[derive(Serialize)]
struct Liquor {
    name: String,
    volume_ml: Option<Number>,
    mass_g: Number,
    temperature_c: Number,
    ph: Option<Number>,
    alkali_g: Option<Number>,
    made_min: Number,
    useful_until_min: Option<Number>,
    keeps_until_min: Option<Number>,
    materials: Vec<Part>,
}

#[derive(Serialize)]
struct Part {
    material: String,
    mass_g: Number,
}

#[derive(Serialize)]
struct Step {
    line: Option<u32>,
    text: String,
    group: Option<String>,
    pass: u32,
    lot: Option<u32>,
    verb: Option<&'static str>,
    time_min: Number,
    start_min: Number,
    clock_min: Number,
    hands_on_min: Number,
    plan: Plan,
    goods: Vec<Goods>,
    baths: Vec<Liquor>,
}

/// When the step can be done if what waits is left to itself meanwhile.
#[derive(Serialize)]
struct Plan {
    start_min: Number,
    end_min: Number,
    waits_for: Vec<Wait>,
}

#[derive(Serialize)]
struct Wait {
    kind: &'static str,
    name: String,
    /// The line of the step that holds it.
    line: Option<u32>,
    minutes: f64,
}

#[derive(Serialize)]
struct Goods {
    name: String,
    lot: Option<u32>,
    pieces: Number,
    dry_g: Number,
    inside: Option<String>,
    washed_off: bool,
    zones: Vec<Zone>,
}

#[derive(Serialize)]
struct Zone {
    zone: Option<String>,
    face: Option<&'static str>,
    share_percent: Number,
    dry_g: Number,
    water_g: Number,
    alkali_g: Number,
    ph: Option<Number>,
    temperature_c: Number,
    dyes: Vec<Dye>,
}

#[derive(Serialize)]
struct Dye {
    material: String,
    laid_g: Number,
    reacted_share: Option<Number>,
    loose_g: Number,
}

#[derive(Serialize)]
struct Said {
    line: Option<u32>,
    text: &'static str,
}

/// One array, a recipe or variant each.
pub fn json(accounts: &[(&Picked<'_>, Rehearsal)], file: &dyn Source) -> impl Serialize {
    accounts.iter().map(|(picked, rehearsal)| recipe(&Teller { picked, rehearsal, file })).collect::<Vec<_>>()
}

struct Teller<'a> {
    picked: &'a Picked<'a>,
    rehearsal: &'a Rehearsal,
    file: &'a dyn Source,
}

fn recipe(teller: &Teller<'_>) -> Recipe {
    let (recipe, rehearsal) = (&teller.picked.recipe, teller.rehearsal);
    let clock = rehearsal.clock();
    let slots = rehearsal.schedule();
    let end = slots.iter().map(|slot| slot.end).fold(Interval::ZERO, Interval::max);
    Recipe {
        name: recipe.name.as_ref().map(|name| name.text.to_string()),
        variant: recipe.variant.as_ref().map(|name| name.text.to_string()),
        file: teller.file.name().to_owned(),
        room_c: celsius(&rehearsal.room),
        mixes: rehearsal.mixes.iter().map(|mix| teller.liquor(mix)).collect(),
        steps: rehearsal.frames.iter().zip(&slots).map(|(frame, slot)| teller.step(frame, slot)).collect(),
        clock_min: minutes(clock.elapsed),
        hands_on_min: minutes(clock.hands_on),
        plan_min: minutes(end),
        notes: rehearsal.notes.iter().map(|note| teller.note(note)).collect(),
        cut_short: rehearsal.cut_short,
        open_problems: teller.picked.errors(),
    }
}

impl Teller<'_> {
    fn named(&self, id: MaterialId) -> String {
        self.picked.recipe.materials.get(id.0).map_or_else(String::new, |material| material.name.to_string())
    }

    fn step(&self, frame: &Frame, slot: &Slot) -> Step {
        let group = self.picked.recipe.groups.get(frame.group.0).and_then(|group| group.name.as_ref());
        Step {
            line: self.picked.line(frame.place, self.file),
            text: self.picked.words(frame.place),
            group: group.map(|name| name.text.to_string()),
            pass: frame.pass,
            lot: frame.lot,
            verb: frame.verb,
            time_min: minutes(frame.time.value),
            start_min: minutes(frame.start.elapsed),
            clock_min: minutes(frame.end.elapsed),
            hands_on_min: minutes(frame.end.hands_on),
            plan: self.plan(slot),
            goods: frame.goods.iter().map(|goods| self.goods(frame, goods)).collect(),
            baths: frame.liquors.iter().filter(|liquor| !liquor.gone).map(|liquor| self.liquor(liquor)).collect(),
        }
    }

    fn plan(&self, slot: &Slot) -> Plan {
        let waits_for = slot.waits.iter().filter_map(|wait| {
            let by = self.rehearsal.frames.get(wait.by)?;
            let (kind, name) = match wait.held {
                Held::Goods(at) => ("goods", names::goods(&self.picked.recipe, by.goods.get(at)?)),
                Held::Liquor(at) => ("liquor", names::liquor(self.picked, by.liquors.get(at)?)),
            };
            Some(Wait { kind, name, line: self.picked.line(by.place, self.file), minutes: wait.seconds / 60.0 })
        });
        Plan { start_min: minutes(slot.start), end_min: minutes(slot.end), waits_for: waits_for.collect() }
    }

    fn goods(&self, frame: &Frame, goods: &GoodsState) -> Goods {
        let recipe = &self.picked.recipe;
        let inside = goods.inside.and_then(|at| frame.liquors.get(at));
        Goods {
            name: recipe.goods.get(goods.goods.0).map_or_else(String::new, |entry| entry.name.text.to_string()),
            lot: goods.lot,
            pieces: plain(goods.pieces),
            dry_g: grams(&goods.dry),
            inside: inside.map(|liquor| names::liquor(self.picked, liquor)),
            washed_off: goods.washed_off,
            zones: goods.zones.iter().map(|zone| self.zone(&self.rehearsal.as_held(frame, goods, zone))).collect(),
        }
    }

    fn zone(&self, zone: &ZoneState) -> Zone {
        let table = &self.rehearsal.substances;
        let dyes = zone.contents.parts.iter().filter(|(id, mass)| table.is_dye(*id) && mass.value.high > 0.0);
        Zone {
            zone: names::zone(&self.picked.recipe, zone.key),
            face: names::face(zone.key),
            share_percent: in_per_cent(zone.share.value),
            dry_g: grams(&zone.dry),
            water_g: in_grams(zone.contents.water_mass()),
            alkali_g: in_grams(self.rehearsal.alkali(zone).map_or(Interval::ZERO, |alkali| alkali.value)),
            ph: zone.acidity(table).map(|acidity| plain(acidity.ph)),
            temperature_c: celsius(&zone.temperature),
            dyes: dyes
                .map(|(id, mass)| Dye {
                    material: self.named(*id),
                    laid_g: grams(mass),
                    reacted_share: self.rehearsal.reaction(zone, *id).map(|reaction| plain(reaction.batch_share)),
                    loose_g: in_grams(self.rehearsal.loose_dye(zone, *id)),
                })
                .collect(),
        }
    }

    fn liquor(&self, liquor: &LiquorState) -> Liquor {
        let table = &self.rehearsal.substances;
        Liquor {
            name: names::liquor(self.picked, liquor),
            volume_ml: liquor.volume.as_ref().map(millilitres),
            mass_g: in_grams(liquor.contents.total_mass()),
            temperature_c: celsius(&liquor.temperature),
            ph: liquor.acidity(table).map(|acidity| plain(acidity.ph)),
            alkali_g: table.alkali_as_soda_ash(&liquor.contents).as_ref().map(grams),
            made_min: minutes(liquor.made_at),
            useful_until_min: self.rehearsal.useful_until(liquor).map(minutes),
            keeps_until_min: self.rehearsal.keeps_until(liquor).map(minutes),
            materials: liquor
                .contents
                .parts
                .iter()
                .map(|(id, mass)| Part { material: self.named(*id), mass_g: grams(mass) })
                .collect(),
        }
    }

    fn note(&self, note: &Note) -> Said {
        Said { line: self.picked.line(note.place, self.file), text: note.text }
    }
}
