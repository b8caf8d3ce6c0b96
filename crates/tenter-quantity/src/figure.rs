//! A value that can say where it came from.

use std::collections::BTreeSet;
use std::sync::Arc;

use crate::dimension::Dimension;
use crate::interval::Interval;
use crate::origin::Origin;
use crate::place::Place;
use crate::show::{show, show_difference, show_in};
use crate::unit::Unit;

/// A value with its kind, the unit to show it in and where it came from. Cloning shares the origin.
#[derive(Clone, Debug)]
pub struct Figure {
    /// In the SI unit of the dimension.
    pub value: Interval,
    /// What it measures.
    pub dimension: Dimension,
    /// The unit it is shown in.
    pub unit: &'static Unit,
    /// Where it came from.
    pub origin: Arc<Origin>,
}

impl Figure {
    fn new(value: Interval, dimension: Dimension, unit: &'static Unit, origin: Origin) -> Self {
        Self { value, dimension, unit, origin: Arc::new(origin) }
    }

    /// What the dyer wrote.
    pub fn written(value: Interval, dimension: Dimension, unit: &'static Unit, place: Place) -> Self {
        Self::new(value, dimension, unit, Origin::Written { place })
    }

    /// What the reference data says.
    pub fn looked(
        value: Interval,
        dimension: Dimension,
        unit: &'static Unit,
        what: impl Into<Arc<str>>,
        source: impl Into<Arc<str>>,
    ) -> Self {
        let (what, source) = (what.into(), source.into());
        Self::new(value, dimension, unit, Origin::Looked { what, source })
    }

    /// What was taken because nobody said.
    pub fn assumed(
        value: Interval,
        dimension: Dimension,
        unit: &'static Unit,
        what: impl Into<Arc<str>>,
        why: impl Into<Arc<str>>,
    ) -> Self {
        let (what, why) = (what.into(), why.into());
        Self::new(value, dimension, unit, Origin::Assumed { what, why })
    }

    /// What was worked out. `formula` holds `{0}`, `{1}` … for the inputs; each input has a label that may be empty.
    pub fn worked(
        formula: &'static str,
        value: Interval,
        dimension: Dimension,
        unit: &'static Unit,
        inputs: Vec<(&'static str, Self)>,
    ) -> Self {
        Self::new(value, dimension, unit, Origin::Worked { formula, inputs })
    }

    /// Times another, shown in `unit`, which also says the kind of the product.
    pub fn times(&self, other: &Self, unit: &'static Unit) -> Self {
        self.combined("{0} × {1}", other, self.value * other.value, unit)
    }

    /// Divided by another, shown in `unit`, which also says the kind of the quotient.
    pub fn over(&self, other: &Self, unit: &'static Unit) -> Self {
        self.combined("{0} ÷ {1}", other, self.value / other.value, unit)
    }

    /// Added to another of the same kind.
    pub fn plus(&self, other: &Self) -> Self {
        let sum = self.value + other.value;
        self.combined("{0} + {1}", other, sum, self.unit)
    }

    /// Less another of the same kind.
    pub fn minus(&self, other: &Self) -> Self {
        let rest = self.value - other.value;
        self.combined("{0} − {1}", other, rest, self.unit)
    }

    fn combined(&self, formula: &'static str, other: &Self, value: Interval, unit: &'static Unit) -> Self {
        let inputs = vec![("", self.clone()), ("", other.clone())];
        Self::worked(formula, value, unit.dimension, unit, inputs)
    }

    /// The sum of any number of one kind, shown in `unit`. One alone is itself; none is an exact zero.
    pub fn sum(terms: Vec<Self>, unit: &'static Unit) -> Self {
        let mut terms = terms;
        if terms.len() == 1
            && let Some(only) = terms.pop()
        {
            return only;
        }
        let value = terms.iter().map(|term| term.value).sum();
        let inputs = terms.into_iter().map(|term| ("", term)).collect();
        Self::worked(SUM, value, unit.dimension, unit, inputs)
    }

    /// The same value told in another unit of its kind; the origin is shared.
    pub fn shown_in(mut self, unit: &'static Unit) -> Self {
        self.unit = unit;
        self
    }

    /// The inputs it was worked out from; none unless it was.
    pub fn inputs(&self) -> &[(&'static str, Self)] {
        match &*self.origin {
            Origin::Worked { inputs, .. } => inputs,
            _ => &[],
        }
    }

    /// Where it was written, if it was written as it stands.
    pub fn place(&self) -> Option<Place> {
        match &*self.origin {
            Origin::Written { place } => Some(*place),
            _ => None,
        }
    }

    /// All written places it rests on, each once, in the order the arithmetic names them.
    pub fn places(&self) -> Vec<Place> {
        let mut places = Vec::new();
        let mut met = BTreeSet::new();
        self.walk(|figure| {
            if let Some(place) = figure.place()
                && met.insert(place)
            {
                places.push(place);
            }
        });
        places
    }

    /// All assumptions it rests on, each once: what was assumed and why.
    pub fn assumptions(&self) -> Vec<(Arc<str>, Arc<str>)> {
        let mut found = Vec::new();
        self.walk(|figure| {
            if let Origin::Assumed { what, why } = &*figure.origin {
                let pair = (Arc::clone(what), Arc::clone(why));
                if !found.contains(&pair) {
                    found.push(pair);
                }
            }
        });
        found
    }

    /// Visits every figure it rests on once, itself first, inputs in order, without recursion: figures are shared, so
    /// the paths through them can be far more than the figures.
    pub fn walk(&self, mut visit: impl FnMut(&Self)) {
        let mut met: BTreeSet<*const Origin> = BTreeSet::new();
        let mut waiting = vec![self];
        while let Some(figure) = waiting.pop() {
            if !met.insert(Arc::as_ptr(&figure.origin)) {
                continue;
            }
            visit(figure);
            waiting.extend(figure.inputs().iter().rev().map(|(_, input)| input));
        }
    }

    /// For people: "480 g", "410 to 560 g". What was written keeps its unit; the rest takes the handiest of the
    /// family.
    pub fn show(&self) -> String {
        let difference =
            self.dimension == Dimension::TemperatureDifference && self.unit.dimension == Dimension::Temperature;
        match &*self.origin {
            _ if difference => show_difference(self.value, self.unit),
            Origin::Written { .. } => show_in(self.value, self.unit),
            _ => show(self.value, self.unit),
        }
    }

    /// The input that contributes most to the spread, followed down to what could be measured or written more
    /// narrowly. `None` where the figure is exact.
    pub fn widest_input(&self) -> Option<Self> {
        if self.value.is_exact() {
            return None;
        }
        let mut widest = self;
        while let Origin::Worked { formula, inputs } = &*widest.origin {
            // In a sum the widest term counts, in a product the one with the greatest share.
            let adds = *formula == SUM || formula.contains('+') || formula.contains('−');
            let alike = inputs.iter().all(|(_, input)| input.dimension == widest.dimension);
            let spread = |figure: &Self| {
                if adds && alike { figure.value.width() } else { figure.value.relative_spread() }
            };
            let next = inputs
                .iter()
                .map(|(_, input)| input)
                .filter(|input| !input.value.is_exact())
                .reduce(|a, b| if spread(b) > spread(a) { b } else { a });
            match next {
                Some(next) => widest = next,
                None => break,
            }
        }
        Some(widest.clone())
    }
}

/// Marks a sum of any number of terms.
pub(crate) const SUM: &str = "{0} + …";
