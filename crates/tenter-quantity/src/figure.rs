//! A value that can say where it came from.

use std::collections::{BTreeSet, VecDeque};
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
        Self {
            value,
            dimension,
            unit,
            origin: Arc::new(origin),
        }
    }

    /// What the dyer wrote.
    pub fn written(
        value: Interval,
        dimension: Dimension,
        unit: &'static Unit,
        place: Place,
    ) -> Self {
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

    fn combined(
        &self,
        formula: &'static str,
        other: &Self,
        value: Interval,
        unit: &'static Unit,
    ) -> Self {
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
        let difference = self.dimension == Dimension::TemperatureDifference
            && self.unit.dimension == Dimension::Temperature;
        match &*self.origin {
            _ if difference => show_difference(self.value, self.unit),
            Origin::Written { .. } => show_in(self.value, self.unit),
            _ => show(self.value, self.unit),
        }
    }

    /// One line of arithmetic a dyer can follow: "480 g = 60 g/L (line 31) × 8 L (line 30)". What the inputs were
    /// worked out from follows after "; where". `written` says where a place is: "line 31".
    pub fn derivation(&self, written: &dyn Fn(Place) -> String) -> String {
        let Origin::Worked { .. } = &*self.origin else {
            return self.told("", written);
        };
        let mut parts = Vec::new();
        let mut met: BTreeSet<*const Origin> = BTreeSet::from([Arc::as_ptr(&self.origin)]);
        let mut waiting = VecDeque::from([(self, "", 0)]);
        while let Some((figure, label, depth)) = waiting.pop_front() {
            let Origin::Worked { formula, inputs } = &*figure.origin else {
                continue;
            };
            if parts.len() == MOST_PARTS {
                break;
            }
            let name = named(label, figure.show());
            parts.push(format!("{name} = {}", filled(formula, inputs, written)));
            for (label, input) in inputs {
                let fresh = !input.inputs().is_empty() && depth < DEEPEST;
                if fresh && met.insert(Arc::as_ptr(&input.origin)) {
                    waiting.push_back((input, *label, depth + 1));
                }
            }
        }
        parts.join("; where ")
    }

    /// As an input in a line of arithmetic: value, label and where it came from.
    fn told(&self, label: &str, written: &dyn Fn(Place) -> String) -> String {
        let value = self.show();
        let from = match &*self.origin {
            Origin::Written { place } => written(*place),
            Origin::Looked { what, source } => format!("{what}, {source}"),
            Origin::Assumed { what, why } => format!("{what} assumed: {why}"),
            Origin::Worked { .. } => String::new(),
        };
        // A range inside a product reads as one only in brackets.
        let range = value.contains(" to ");
        match (range, from.is_empty()) {
            (false, true) => named(label, value),
            (false, false) => format!("{} ({from})", named(label, value)),
            (true, true) => format!("({})", named(label, value)),
            (true, false) => format!("({}; {from})", named(label, value)),
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
            let alike = inputs
                .iter()
                .all(|(_, input)| input.dimension == widest.dimension);
            let spread = |figure: &Self| {
                if adds && alike {
                    figure.value.width()
                } else {
                    figure.value.relative_spread()
                }
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
const SUM: &str = "{0} + …";
/// Lines of arithmetic told after "where", and how deep.
const MOST_PARTS: usize = 6;
const DEEPEST: usize = 3;
/// Terms of a sum told one by one.
const MOST_TERMS: usize = 8;

fn named(label: &str, value: String) -> String {
    if label.is_empty() {
        value
    } else {
        format!("{value} {label}")
    }
}

fn filled(
    formula: &str,
    inputs: &[(&'static str, Figure)],
    written: &dyn Fn(Place) -> String,
) -> String {
    let tell = |(label, input): &(&str, Figure)| input.told(label, written);
    if formula == SUM {
        if inputs.is_empty() {
            return "nothing".to_owned();
        }
        let mut told: Vec<String> = inputs.iter().take(MOST_TERMS).map(tell).collect();
        if inputs.len() > MOST_TERMS {
            told.push(format!("{} more", inputs.len() - MOST_TERMS));
        }
        return told.join(" + ");
    }
    let mut line = String::new();
    let mut rest = formula;
    while let Some((before, after)) = rest.split_once('{') {
        line.push_str(before);
        let slot = after.split_once('}').and_then(|(number, after)| {
            let input = inputs.get(number.parse::<usize>().ok()?)?;
            Some((tell(input), after))
        });
        match slot {
            Some((told, after)) => {
                line.push_str(&told);
                rest = after;
            }
            None => {
                line.push('{');
                rest = after;
            }
        }
    }
    line.push_str(rest);
    line
}
