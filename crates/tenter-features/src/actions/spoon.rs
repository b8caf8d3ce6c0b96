//! A spoon to grams, and grams to a spoon.

use tenter_quantity::{Basis, Dimension, Interval, show_in, unit_by_symbol};
use tenter_resolve::recipe::Substance;

use crate::actions::{Action, here, rewrite, sheets_at};
use crate::analysis::FileAnalysis;
use crate::hover::ingredients;
use crate::text::{Edit, Range};

/// A metric teaspoon, m³.
const TEASPOON: f64 = 5e-6;

/// Offers to weigh what is spooned, or to spoon what is weighed.
pub(super) fn offer(analysis: &FileAnalysis, range: &Range, found: &mut Vec<Action>) {
    let Some(view) = sheets_at(analysis, range) else { return };
    let Some(recipe) = view.recipe() else { return };
    for ingredient in ingredients(recipe) {
        let Some(amount) = &ingredient.amount else { continue };
        let Some(at) = here(analysis, view, amount.place, range) else { continue };
        let Some(mass) = &amount.mass else { continue };
        if amount.written.basis != Basis::Absolute {
            continue;
        }
        if amount.by_volume_of_solid {
            let Some(gram) = unit_by_symbol("g") else { continue };
            let text = show_in(Interval::exact(round(mass.value.best, 2)), gram);
            let title = format!("weigh it: write `{text}` (by the spoon {})", mass.show());
            found.push(rewrite(title, vec![Edit::new(&analysis.file.path, at, text)]));
        } else if let Substance::Material(id) = ingredient.what
            && let Some(material) =
                recipe.materials.get(id.0).filter(|material| !material.liquid && !material.is_water())
            && let Some(density) = &material.density
            && amount.written.dimension == Dimension::Mass
            && density.value.best > 0.0
        {
            let spoons = mass.value.best / density.value.best / TEASPOON;
            let Some(text) = quarters(spoons) else { continue };
            let title = format!("without a scale: write `{text}` (less certain)");
            found.push(rewrite(title, vec![Edit::new(&analysis.file.path, at, text)]));
        }
    }
}

/// Teaspoons to the nearest quarter; none for less than one or more than two dozen.
fn quarters(spoons: f64) -> Option<String> {
    let count = libm::round(spoons * 4.0);
    if !(1.0..=96.0).contains(&count) {
        return None;
    }
    let count = count as u32;
    let part = match count % 4 {
        1 => "1/4",
        2 => "1/2",
        3 => "3/4",
        _ => "",
    };
    Some(match (count / 4, part) {
        (0, part) => format!("{part} tsp"),
        (whole, "") => format!("{whole} tsp"),
        (whole, part) => format!("{whole} {part} tsp"),
    })
}

/// To so many digits.
fn round(value: f64, digits: usize) -> f64 {
    format!("{value:.*e}", digits.saturating_sub(1)).parse().unwrap_or(value)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn spoons_come_in_quarters() {
        assert_eq!(quarters(2.3).as_deref(), Some("2 1/4 tsp"));
        assert_eq!(quarters(0.4).as_deref(), Some("1/2 tsp"));
        assert_eq!(quarters(3.0).as_deref(), Some("3 tsp"));
        assert_eq!(quarters(0.05), None);
        assert_eq!(quarters(f64::NAN), None);
    }

    #[test]
    fn two_digits_are_kept() {
        assert_eq!(round(0.009_87, 2), 0.0099);
    }
}
