//! A figure told as one line of arithmetic.

use std::collections::{BTreeSet, VecDeque};
use std::sync::Arc;

use crate::figure::{Figure, SUM};
use crate::origin::Origin;
use crate::place::Place;

/// Lines of arithmetic told after "where", and how deep.
const MOST_PARTS: usize = 6;
const DEEPEST: usize = 3;
/// Terms of a sum told one by one.
const MOST_TERMS: usize = 8;

impl Figure {
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
}

fn named(label: &str, value: String) -> String {
    if label.is_empty() { value } else { format!("{value} {label}") }
}

fn filled(formula: &str, inputs: &[(&'static str, Figure)], written: &dyn Fn(Place) -> String) -> String {
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
