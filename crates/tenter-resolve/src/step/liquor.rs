//! What a step works in, adds to or draws from.

use super::*;

impl StepReader<'_, '_> {
    pub(super) fn liquor(
        &mut self,
        binder: &mut Binder<'_>,
        name: &NameUse,
        folded: &str,
        connector: Option<Connector>,
    ) {
        let place = self.row.place(name.span);
        let kind = if let Some(id) = name.find(mix) {
            Some(LiquorKind::Mix(id))
        } else if let Some(id) = name.find(vessel) {
            Some(LiquorKind::Vessel(id))
        } else if let Some(word) = name.find(water_word) {
            Some(LiquorKind::Water(water::temperature(word)))
        } else if name.find(|referent| matches!(referent, Referent::Reference(_)).then_some(())).is_some()
            && folded.ends_with("water")
        {
            Some(LiquorKind::Words)
        } else {
            None
        };
        match kind {
            Some(kind) => {
                let mix_then_vessel = matches!(
                    (&kind, &self.step.liquor),
                    (LiquorKind::Vessel(_), Some(Liquor { kind: LiquorKind::Mix(_) | LiquorKind::Bath(_), .. }))
                );
                match kind {
                    LiquorKind::Vessel(id) if mix_then_vessel => self.step.vessel = Some((id, place)),
                    kind => self.step.liquor = Some(Liquor { place, kind }),
                }
            }
            None => {
                if let Some(cover) = places::cover(folded) {
                    self.step.cover = Some((cover, place));
                } else if name.find(layout).is_some() {
                    self.step.layout = name.find(layout);
                } else if places::is_current_bath(folded) {
                    self.step.liquor = Some(Liquor { place, kind: LiquorKind::Current });
                } else if folded.ends_with("water") {
                    self.step.liquor = Some(Liquor { place, kind: LiquorKind::Words });
                } else if (places::is_everyday(folded) && !self.slip_of_a_mix(binder, name))
                    || self.takes(connector, &[Expect::Text, Expect::Portions])
                        && !self.takes(connector, &[Expect::Liquor])
                {
                    self.words(name);
                } else if let Some(id) = name.find(goods) {
                    self.goods(id);
                } else {
                    let known = !name.referents.is_empty();
                    if known {
                        let written = self.row.text(name.span);
                        binder.problem(
                            place,
                            ProblemKind::UnknownName {
                                written: written.into(),
                                expected: NameKind::Mix,
                                nearest: binder.names.nearest(written, NameKind::Mix),
                            },
                        );
                    } else {
                        binder.unknown_name(
                            self.row,
                            name,
                            if self.takes(connector, &[Expect::Liquor]) { NameKind::Mix } else { NameKind::Vessel },
                        );
                    }
                }
            }
        }
    }

    /// `soak tees for 20 min soda soak`: a bath that lacks its `in`. It is told, and taken for what was meant.
    pub(super) fn lacks_in(&mut self, binder: &mut Binder<'_>, name: &NameUse, connector: Option<Connector>) -> bool {
        let free = !self.acts_on_bath()
            && self.step.liquor.is_none()
            && self.takes(Some(Connector::In), &[Expect::Liquor])
            && !self.takes(connector, &[Expect::Liquor, Expect::Material, Expect::Steps]);
        let Some(id) = name.find(mix).filter(|_| free) else { return false };
        let written = self.row.text(name.span);
        let place = self.row.place(name.span);
        binder.problem(
            place,
            ProblemKind::MissingValue {
                what: format!("`in` before `{written}`").into(),
                example: format!("in {written}").into(),
            },
        );
        self.step.liquor = Some(Liquor { place, kind: LiquorKind::Mix(id) });
        true
    }

    /// `to dye bath`.
    pub(super) fn target(&mut self, binder: &mut Binder<'_>, name: &NameUse, folded: &str) {
        let place = self.row.place(name.span);
        if name.find(mix).is_some()
            || name.find(vessel).is_some()
            || places::is_current_bath(folded)
            || name.find(goods).is_none()
        {
            if let Some(zone) = name.find(zone) {
                self.up_to(place, zone);
                return;
            }
            return self.liquor(binder, name, folded, Some(Connector::To));
        }
        if let Some(id) = name.find(goods) {
            self.goods(id);
        }
    }

    /// `dip shirts in dye bath to waist`: the zones of the layout from the first down to that one.
    fn up_to(&mut self, place: tenter_quantity::Place, zone: ZoneRef) {
        let zones = match zone {
            ZoneRef::Of(layout, last) if matches!(self.verb_name(), "dip" | "lower" | "immerse") => {
                (0..=last).map(|index| ZoneRef::Of(layout, index)).collect()
            }
            one => vec![one],
        };
        self.step.zones.extend(zones.into_iter().map(|zone| ZoneUse { place, zone }));
    }

    pub(super) fn source(&mut self, binder: &mut Binder<'_>, name: &NameUse, folded: &str) {
        if let Some(id) = name.find(mix) {
            self.step.source = Some(Source::Mix(id));
        } else if let Some(id) = name.find(vessel) {
            self.step.source = Some(Source::Vessel(id));
        } else if let Some(id) = name.find(goods) {
            self.goods(id);
        } else if !name.referents.is_empty() && name.find(zone).is_none() {
            // `6 g from lagoon`: a material drawn from its jar.
            if let Some((measured, span)) = self.nameless.take() {
                let phrase = Phrase {
                    connector: None,
                    clause: 0,
                    span: span.cover(name.span),
                    kind: PhraseKind::Name(name.clone()),
                };
                if let Some(draft) = draft(binder, self.row, Some(&measured), name, &phrase, false) {
                    self.place_draft(binder, None, draft);
                }
            }
        } else if (places::is_everyday(folded) && !self.slip_of_a_mix(binder, name)) || name.find(zone).is_some() {
            self.words(name);
        } else {
            let meant = if self.slip_of_a_mix(binder, name) { NameKind::Mix } else { NameKind::Vessel };
            binder.unknown_name(self.row, name, meant);
        }
    }
}
