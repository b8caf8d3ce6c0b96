//! The end of a step: what its relative amounts refer to.

use super::*;

impl StepReader<'_, '_> {
    /// Nothing is soaked in nothing.
    fn missing_liquor(&self, binder: &mut Binder<'_>, ledger: &Ledger) {
        let needs = matches!(self.verb_name(), "soak" | "dip");
        let has = self.step.liquor.is_some()
            || !self.bath.is_empty()
            || !self.applied.is_empty()
            || self.step.source.is_some()
            || self.ratio.is_some();
        if needs && !has && !ledger.has_bath() && binder.problems.len() == self.told {
            let verb = self.verb_name();
            binder.problem(
                self.step.verb_place,
                ProblemKind::MissingValue {
                    what: format!("what to {verb} in").into(),
                    example: format!("{verb} tees in soda soak for 20 min").into(),
                },
            );
        }
    }

    pub(super) fn finish(mut self, binder: &mut Binder<'_>, ledger: &mut Ledger) -> Step {
        let mut filled = None;
        if let Some((measured, span)) = self.nameless.take() {
            let there = ledger.volume(&self.step).filter(|_| self.verb_name() == "top up");
            filled = there.and_then(|there| self.fill(binder, &measured, span, &there));
            match self.step.source {
                _ if filled.is_some() => {}
                Some(Source::Mix(id)) => {
                    let name = NameUse { span, referents: vec![Referent::Mix(id)] };
                    let goods = measured.per_goods.iter().flatten().filter_map(goods).collect();
                    let draft = Draft {
                        measured: Some(measured),
                        what: Substance::Mix(id),
                        name,
                        place: self.row.place(span),
                        temperature: None,
                        fixed: false,
                        goods,
                    };
                    self.place_draft(binder, None, draft);
                }
                _ => {
                    let written = self.row.text(measured.span);
                    binder.problem(
                        self.row.place(measured.span),
                        ProblemKind::MissingValue {
                            what: format!("what this is {written} of").into(),
                            example: format!("{written} water").into(),
                        },
                    );
                }
            }
        } else if let (Some(Source::Mix(id)), true, true) =
            (&self.step.source, self.applied.is_empty(), self.applies_liquor() || self.verb_name() == "sprinkle")
        {
            // No amount: all of it.
            let span = self.row.line.span;
            let name = NameUse { span, referents: vec![Referent::Mix(*id)] };
            let draft = Draft {
                measured: None,
                what: Substance::Mix(*id),
                name,
                place: self.row.place(span),
                temperature: None,
                fixed: false,
                goods: Vec::new(),
            };
            self.place_draft(binder, None, draft);
        }
        self.default_goods(binder);
        self.missing_liquor(binder, ledger);
        self.ratio_bath(binder);
        let goods = self.step.goods.clone();
        for list in [&mut self.applied, &mut self.bath, &mut self.with] {
            for (_, draft) in list.iter_mut() {
                if draft.goods.is_empty() {
                    draft.goods.clone_from(&goods);
                }
            }
        }
        let mut liquor_volume = None;
        if !self.bath.is_empty() {
            let (ingredients, liquid) = settle_all(binder, &self.bath, None, None);
            liquor_volume = liquid;
            let place = self.bath.iter().map(|(_, draft)| draft.place).reduce(|a, b| tenter_quantity::Place {
                block: a.block,
                start: a.start.min(b.start),
                end: a.end.max(b.end),
            });
            if let Some(place) = place {
                self.step.liquor = Some(Liquor { place, kind: LiquorKind::Bath(ingredients) });
            }
        }
        let liquor_volume = liquor_volume.or_else(|| ledger.volume(&self.step));
        let (applied, applied_liquid) = settle_all(binder, &self.applied, None, liquor_volume.as_ref());
        self.step.applied = applied;
        self.step.applied.extend(filled);
        let (with, _) = settle_all(binder, &self.with, None, liquor_volume.or(applied_liquid).as_ref());
        self.step.with = with;
        self.step
    }

    /// `in water at 1:20`: a bath measured by the goods.
    pub(super) fn ratio_bath(&mut self, binder: &mut Binder<'_>) {
        let Some((ratio, span)) = self.ratio.take() else {
            return;
        };
        self.liquor_ratio_used = true;
        let already = self.bath.iter().any(|(_, draft)| crate::mix::is_liquid(binder, draft.what));
        if already {
            return;
        }
        let Some(quantity) = tenter_quantity::liquor_ratio(1.0, ratio) else {
            return;
        };
        let place = self.row.place(span);
        let Some(water) = binder.reference_material("water", place) else {
            return;
        };
        let measured = Measured {
            quantity,
            unit: quantity.dimension.usual_unit(quantity.basis),
            span,
            pickup: false,
            per_goods: None,
        };
        let name = NameUse { span, referents: Vec::new() };
        let temperature = self.step.temperature.take();
        let draft = Draft {
            measured: Some(measured),
            what: Substance::Material(water),
            name,
            place,
            temperature,
            fixed: false,
            goods: Vec::new(),
        };
        self.bath.insert(0, (*self.row, draft));
    }

    /// Goods not named: those folded the way the zones say, else all.
    pub(super) fn default_goods(&mut self, binder: &Binder<'_>) {
        if self.step.goods.is_empty() {
            self.step.goods = (0..binder.goods.len()).map(GoodsId).collect();
        }
    }
}
