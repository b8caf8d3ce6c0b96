//! The figures that a line writes or that come of it.

use tenter_quantity::{Figure, Place};
use tenter_rehearse::Rehearsal;
use tenter_resolve::recipe::{Ingredient, MaterialId, MixId, Substance};

use crate::account::words;
use crate::explain::{ph, step};
use crate::recipes::pick::Picked;

/// Something to tell.
pub enum Story {
    /// A figure and what it is.
    Figure(String, Figure),
    /// A sentence.
    Words(String),
    /// Several lines that belong together.
    Lines(Vec<String>),
}

/// What there is to tell of the places that `on` accepts, in the order of the recipe.
pub fn stories(picked: &Picked<'_>, rehearsal: &Rehearsal, on: &dyn Fn(Place) -> bool) -> Vec<Story> {
    let mut page = Page { picked, rehearsal, on, stories: Vec::new() };
    page.header();
    page.goods();
    page.materials();
    page.mixes();
    page.places();
    page.steps();
    page.stories
}

/// Gathers.
pub struct Page<'a> {
    /// The recipe.
    pub picked: &'a Picked<'a>,
    /// Carried out on paper.
    pub rehearsal: &'a Rehearsal,
    on: &'a dyn Fn(Place) -> bool,
    /// What was gathered.
    pub stories: Vec<Story>,
}

impl Page<'_> {
    /// Adds a figure, where there is one.
    pub fn figure(&mut self, label: impl Into<String>, figure: Option<&Figure>) {
        if let Some(figure) = figure {
            self.stories.push(Story::Figure(label.into(), figure.clone()));
        }
    }

    /// Adds a figure if the line has a part in it.
    fn touched(&mut self, label: &str, figure: Option<&Figure>) {
        if figure.is_some_and(|figure| figure.places().into_iter().any(self.on)) {
            self.figure(label, figure);
        }
    }

    fn header(&mut self) {
        let header = &self.picked.recipe.header;
        self.touched("room", header.room.as_ref());
        self.touched("hardness of the water", header.hardness.as_ref());
        self.touched("height above the sea", header.altitude.as_ref());
    }

    fn goods(&mut self) {
        for goods in &self.picked.recipe.goods {
            let name = &goods.name.text;
            let figures = [
                ("pieces", Some(&goods.pieces)),
                ("dry weight of one", goods.piece_mass.as_ref()),
                ("dry weight of all", goods.dry_mass.as_ref()),
                ("water held at the start", goods.state.pickup.as_ref()),
                ("price of one", goods.price.as_ref()),
            ];
            let shares = goods.fibres.iter().map(|share| (&*share.name.text, Some(&share.share)));
            for (label, figure) in figures.into_iter().chain(shares) {
                let label = format!("{name}, {label}");
                if (self.on)(goods.name.place) {
                    self.figure(label, figure);
                } else {
                    self.touched(&label, figure);
                }
            }
            if let Some(lots) = goods.lots.as_ref().filter(|lots| (self.on)(lots.place)) {
                let (count, each) = (lots.count, lots.pieces_each);
                let words =
                    format!("{name}, lots: {count} × {each} pieces = {} pieces", u64::from(count) * u64::from(each));
                self.stories.push(Story::Words(words));
            }
        }
    }

    fn materials(&mut self) {
        for (index, material) in self.picked.recipe.materials.iter().enumerate() {
            let name = &material.name;
            let declared = material.declared.is_some_and(self.on);
            let price = material.price.as_ref().map(|price| &price.rate);
            for (label, figure) in [
                ("density", material.density.as_ref()),
                ("active substance", material.purity.as_ref()),
                ("price", price),
            ] {
                let label = format!("{name}, {label}");
                if declared {
                    self.figure(label, figure);
                } else {
                    self.touched(&label, figure);
                }
            }
            if declared {
                self.in_all(MaterialId(index));
            }
        }
    }

    /// What a material comes to over the whole recipe.
    fn in_all(&mut self, id: MaterialId) {
        let totals = &self.picked.recipe.totals;
        let Some(total) = totals.materials.iter().find(|total| total.material == id) else { return };
        let name = self.picked.recipe.material(id).name.clone();
        self.figure(format!("{name} in all"), total.mass.as_ref().or(total.volume.as_ref()));
        self.figure(format!("{name} on the weight of goods"), total.owg.as_ref());
        self.figure(format!("{name} for each piece"), total.per_piece.as_ref());
        self.figure(format!("cost of {name}"), total.cost.as_ref().map(|cost| &cost.total));
    }

    /// An amount written: what it comes to.
    fn ingredient(&mut self, ingredient: &Ingredient) {
        let recipe = &self.picked.recipe;
        let (name, material) = match ingredient.what {
            Substance::Material(id) => (recipe.materials.get(id.0).map(|entry| entry.name.clone()), Some(id)),
            Substance::Mix(id) => (recipe.mixes.get(id.0).map(|mix| mix.name.text.clone()), None),
        };
        let name = name.unwrap_or_default();
        if let Some(amount) = &ingredient.amount {
            self.figure(&*name, amount.mass.as_ref());
            self.figure(format!("{name}, by volume"), amount.volume.as_ref());
        }
        self.figure(format!("temperature of {name}"), ingredient.temperature.as_ref());
        if let Some(id) = material {
            self.in_all(id);
        }
    }

    fn mixes(&mut self) {
        let recipe = &self.picked.recipe;
        for (index, mix) in recipe.mixes.iter().enumerate() {
            for ingredient in mix.ingredients.iter().filter(|ingredient| (self.on)(ingredient.place)) {
                self.ingredient(ingredient);
            }
            let name = &mix.name.text;
            self.touched(&format!("{name} made up to"), mix.made_up_to.as_ref());
            self.touched(&format!("{name} rests"), mix.rest.as_ref());
            self.touched(&format!("{name} keeps"), mix.keep.as_ref());
            if (self.on)(mix.name.place) {
                self.mix(MixId(index));
            }
        }
    }

    fn mix(&mut self, id: MixId) {
        let recipe = &self.picked.recipe;
        let Some(mix) = recipe.mixes.get(id.0) else { return };
        let name = &mix.name.text;
        self.figure(format!("{name}, volume"), mix.volume.as_ref());
        self.figure(format!("{name}, weight"), mix.mass.as_ref());
        self.figure(format!("{name}, temperature"), mix.temperature.as_ref());
        if let Some(total) = recipe.totals.mixes.iter().find(|total| total.mix == id) {
            self.figure(format!("{name} measured out"), total.drawn.as_ref());
            self.figure(format!("{name} carried off in the goods"), total.carried.as_ref());
            self.figure(format!("{name} left over"), total.left.as_ref());
        }
        self.ph_of(id);
    }

    /// How the pH of a mix is come by.
    pub fn ph_of(&mut self, id: MixId) {
        let recipe = &self.picked.recipe;
        let (Some(mix), Some(made)) = (recipe.mixes.get(id.0), self.rehearsal.mix(id)) else { return };
        let table = &self.rehearsal.substances;
        if let Some(acidity) = made.acidity(table) {
            let head = format!("{} as made: {}", mix.name.text, words::ph(acidity));
            self.stories.push(Story::Lines(ph::derivation(head, recipe, &made.contents, acidity)));
        }
    }

    fn places(&mut self) {
        let recipe = &self.picked.recipe;
        for zone in recipe.layouts.iter().flat_map(|layout| &layout.zones) {
            self.touched(&format!("share of {}", zone.name.text), zone.share.as_ref());
        }
        for vessel in &recipe.vessels {
            self.touched(&format!("{} holds", vessel.name.text), vessel.holds.as_ref());
            self.touched(&format!("{} is rated for", vessel.name.text), vessel.rated.as_ref());
        }
        for line in recipe.shelf.iter().filter(|line| (self.on)(line.place)) {
            self.ingredient(&line.item);
            self.figure("paid", line.paid.as_ref().map(|(_, paid)| paid));
        }
    }

    fn steps(&mut self) {
        let recipe = &self.picked.recipe;
        for (_, step) in recipe.steps().filter(|(_, step)| (self.on)(step.place)) {
            for ingredient in step::ingredients(step) {
                self.ingredient(ingredient);
            }
            for (label, figure) in [
                ("how long", step.duration.as_ref()),
                ("every", step.interval.as_ref()),
                ("after", step.delay.as_ref()),
                ("temperature", step.temperature.as_ref()),
                ("from", step.from_temperature.as_ref()),
                ("to", step.to_temperature.as_ref()),
                ("water held", step.pickup.as_ref()),
            ] {
                self.figure(label, figure);
            }
            if let Some((times, _)) = step.repeats {
                self.stories
                    .push(Story::Words(format!("{times} times: fresh liquor each time, so {times} × what it takes")));
            }
            if let Some((portions, _)) = step.portions {
                let text = format!("{portions} parts: the amount divided by {portions}, one after the other");
                self.stories.push(Story::Words(text));
            }
            let uses = recipe.totals.steps.iter().filter(|total| total.place == step.place);
            for used in uses.flat_map(|total| &total.uses) {
                self.figure(format!("{} used here in all", used.name), Some(&used.amount));
                self.figure(format!("{} used here on the weight of goods", used.name), used.owg.as_ref());
            }
            step::after(self, step);
        }
    }
}
