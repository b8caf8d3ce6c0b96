//! Names of a step: goods, zones, tools, by connecting word.

use super::*;

impl StepReader<'_, '_> {
    pub(super) fn named(
        &mut self,
        binder: &mut Binder<'_>,
        phrase: &Phrase,
        connector: Option<Connector>,
        name: &NameUse,
        after_each: bool,
    ) {
        let text = self.row.text(name.span);
        let folded = fold_name(text);
        if folded == "lot" || folded == "lots" || folded == "each lot" {
            if after_each || folded == "each lot" {
                self.step.lots = Some(LotsUse::Each);
            } else {
                self.after_lot = true;
            }
            return;
        }
        if self.temperature_words(binder, connector, &folded, name.span) {
            return;
        }
        match connector {
            None | Some(Connector::And) => self.direct(binder, phrase, name, &folded),
            Some(Connector::In | Connector::Into) => self.liquor(binder, name, &folded, connector),
            Some(Connector::To) => self.target(binder, name, &folded),
            Some(Connector::From) => self.source(binder, name, &folded),
            Some(Connector::With) => self.with_name(binder, phrase, name, &folded),
            Some(Connector::On | Connector::Onto | Connector::Over | Connector::Under) => {
                self.spot(binder, phrase, name, &folded, connector)
            }
            Some(Connector::As) => match name.find(layout) {
                Some(id) => self.step.layout = Some(id),
                None => binder.unknown_name(self.row, name, NameKind::Layout),
            },
            Some(Connector::For) => match name.find(goods) {
                Some(id) => self.goods(id),
                None if self.lacks_in(binder, name, connector) => {}
                None if name.find(mix).is_some()
                    || name.find(group).is_some()
                    || self.takes(connector, &[Expect::Text]) => {}
                None => self.words(name),
            },
            Some(_) => self.words(name),
        }
    }

    pub(super) fn goods(&mut self, id: GoodsId) {
        if !self.step.goods.contains(&id) {
            self.step.goods.push(id);
        }
        self.step.goods_named = true;
    }

    /// Whether everyday words are the name of a mix with a slip in it: `nigth bottle` beside a mix `night bottle`.
    pub(super) fn slip_of_a_mix(&self, binder: &Binder<'_>, name: &NameUse) -> bool {
        let written = fold_name(self.row.text(name.span));
        let Some((_, last)) = written.rsplit_once(' ') else { return false };
        binder.names.nearest(&written, NameKind::Mix).iter().any(|near| {
            let near = fold_name(near);
            near.split(' ').count() == written.split(' ').count() && near.rsplit(' ').next() == Some(last)
        })
    }

    /// What stands right behind the verb.
    pub(super) fn direct(&mut self, binder: &mut Binder<'_>, phrase: &Phrase, name: &NameUse, folded: &str) {
        if let Some(id) = name.find(goods) {
            return self.goods(id);
        }
        if name.referents.is_empty() && places::means_the_goods(folded) {
            return;
        }
        if self.verb_name() == "repeat" || self.lacks_in(binder, name, None) {
            return;
        }
        if let Some(zone) = name.find(zone).filter(|zone| !matches!(zone, ZoneRef::Ice)) {
            self.step.zones.push(ZoneUse { place: self.row.place(name.span), zone });
            return;
        }
        if let Some(id) = name.find(vessel) {
            self.step.liquor = Some(Liquor { place: self.row.place(name.span), kind: LiquorKind::Vessel(id) });
            return;
        }
        if name.find(group).is_some() && name.find(mix).is_none() {
            return self.words(name);
        }
        if let Some(id) = name.find(mix).filter(|_| self.acts_on_bath()) {
            self.step.liquor = Some(Liquor { place: self.row.place(name.span), kind: LiquorKind::Mix(id) });
            return;
        }
        if matches!(
            self.verb_name(),
            "raise" | "hold" | "heat" | "cool" | "boil" | "simmer" | "stir" | "drain" | "dispose" | "top up"
        ) && places::is_current_bath(folded)
        {
            self.step.liquor = Some(Liquor { place: self.row.place(name.span), kind: LiquorKind::Current });
            return;
        }
        if name.referents.is_empty() {
            let is_verb = tenter_syntax::verb_row(folded).is_some();
            if is_verb
                || places::is_everyday(folded)
                || self.takes(None, &[Expect::Text, Expect::Equipment, Expect::Cover])
            {
                return self.words(name);
            }
            let expected =
                if self.takes(None, &[Expect::Material, Expect::Liquor]) { NameKind::Any } else { NameKind::Goods };
            return binder.unknown_name(self.row, name, expected);
        }
        if let Some(draft) = draft(binder, self.row, None, name, phrase, false) {
            self.place_draft(binder, None, draft);
        }
    }

    pub(super) fn with_name(&mut self, binder: &mut Binder<'_>, phrase: &Phrase, name: &NameUse, _folded: &str) {
        if let Some(id) = name.find(mix) {
            // Squirted or brushed with a mix is drawn from it.
            if self.applies_liquor() {
                self.step.source = Some(Source::Mix(id));
                return;
            }
        }
        if name.referents.is_empty() {
            // A brush, a spoon, a friend.
            return self.words(name);
        }
        if let Some(draft) = draft(binder, self.row, None, name, phrase, false) {
            self.place_draft(binder, Some(Connector::With), draft);
        }
    }

    /// Verbs whose object may be a liquor: `stir dye bath`.
    pub(super) fn acts_on_bath(&self) -> bool {
        matches!(
            self.verb_name(),
            "raise"
                | "hold"
                | "heat"
                | "cool"
                | "boil"
                | "simmer"
                | "stir"
                | "drain"
                | "dispose"
                | "rest"
                | "store"
                | "cover"
                | "top up"
        )
    }

    pub(super) fn applies_liquor(&self) -> bool {
        matches!(self.verb_name(), "squirt" | "spray" | "pour" | "brush" | "print" | "irrigate" | "dip")
    }

    pub(super) fn spot(
        &mut self,
        binder: &mut Binder<'_>,
        phrase: &Phrase,
        name: &NameUse,
        folded: &str,
        connector: Option<Connector>,
    ) {
        let place = self.row.place(name.span);
        if let Some(zone) = name.find(zone) {
            self.step.zones.push(ZoneUse { place, zone });
            return;
        }
        if name.referents.is_empty() && self.spot_of(binder, name, folded) {
            return;
        }
        if let Some(id) = name.find(goods) {
            if connector == Some(Connector::Under) {
                self.words(name);
            }
            return self.goods(id);
        }
        if let Some(cover) = places::cover(folded).filter(|_| matches!(connector, Some(Connector::Under))) {
            self.step.cover = Some((cover, place));
            return;
        }
        if name.find(water_word).is_some() || folded.ends_with("water") {
            self.step.liquor = Some(Liquor { place, kind: LiquorKind::Words });
            return;
        }
        let covers = self.takes(connector, &[Expect::Cover]) && !self.takes(connector, &[Expect::Zone, Expect::Goods]);
        if covers && name.referents.is_empty() {
            self.step.cover = Some((Cover::Covered, place));
            return self.words(name);
        }
        let free = (places::is_everyday(folded) && !self.slip_of_a_mix(binder, name))
            || (self.takes(connector, &[Expect::Text, Expect::Vessel])
                && !self.takes(connector, &[Expect::Zone, Expect::Goods]));
        if free || name.find(vessel).is_some() {
            return self.words(name);
        }
        let _ = phrase;
        binder.unknown_name(self.row, name, NameKind::Zone);
    }

    /// `on both sides of tees`: a zone and the goods it belongs to.
    fn spot_of(&mut self, binder: &Binder<'_>, name: &NameUse, folded: &str) -> bool {
        let Some((part, whole)) = folded.split_once(" of ") else { return false };
        let known = |text: &str| {
            let words: Vec<&str> = text.split_whitespace().collect();
            binder.names.longest(&words).filter(|hit| hit.words == words.len()).map(|hit| hit.referents)
        };
        let zone = known(part).and_then(|found| found.iter().find_map(zone));
        let goods = known(whole).and_then(|found| found.iter().find_map(goods));
        let everyday = places::means_the_goods(whole);
        let Some(zone) = zone.filter(|_| goods.is_some() || everyday) else { return false };
        self.step.zones.push(ZoneUse { place: self.row.place(name.span), zone });
        if let Some(id) = goods {
            self.goods(id);
        }
        true
    }
}
