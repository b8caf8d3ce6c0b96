//! Names that fit what is expected: the recipe's own first, then those everybody has.

use tenter_reference::{Entry, Reference, Role};
use tenter_syntax::{Expect, fold_name};

use crate::analysis::SheetView;
use crate::completion::{Completion, ItemKind};
use crate::cursor::kinds;
use crate::names::SymbolKind;
use crate::text::Range;

/// Parts every piece has.
pub(crate) const ZONES: [&str; 5] = ["front", "back", "both sides", "all over", "ice"];
/// Water by a word for its warmth.
pub(crate) const WATERS: [&str; 5] = ["cold water", "lukewarm water", "warm water", "hot water", "boiling water"];
/// What is worn.
const EQUIPMENT: [&str; 5] = ["dust mask, gloves, goggles", "dust mask", "gloves", "goggles", "apron"];
/// Ways to cover.
const COVERS: [&str; 4] = ["covered", "under plastic", "in sealed bag", "uncovered"];

/// The proposals for what is expected.
pub(super) fn fit(view: SheetView<'_>, expected: &[Expect], range: &Range) -> Vec<Completion> {
    let mut found = Vec::new();
    for what in expected {
        for kind in kinds(*what) {
            declared(view, *kind, range, &mut found);
        }
        let rank = 100 + found.len() as u16;
        let mut words = |list: &[&str], kind: ItemKind, detail: &str| {
            found.extend(list.iter().map(|word| Completion::plain(range, *word, kind, detail, rank)));
        };
        match what {
            Expect::Zone => words(&ZONES, ItemKind::Zone, "every piece has it"),
            Expect::Liquor => words(&WATERS, ItemKind::Material, "tap water"),
            Expect::Equipment => words(&EQUIPMENT, ItemKind::Value, "to wear"),
            Expect::Cover => words(&COVERS, ItemKind::Value, "how it is covered"),
            Expect::Rule => {
                let names: Vec<&str> = tenter_rules::RULES.iter().map(|rule| rule.name).collect();
                words(&names, ItemKind::Rule, "");
            }
            Expect::Material => reference(range, 200, &mut found),
            Expect::Lot => words(&["each lot", "lot 2"], ItemKind::Value, ""),
            _ => {}
        }
    }
    found
}

/// The declared names of a kind.
pub(super) fn declared(view: SheetView<'_>, kind: SymbolKind, range: &Range, found: &mut Vec<Completion>) {
    for symbol in view.names().declared(kind) {
        let rank = 10 + found.len() as u16;
        let label = match kind {
            SymbolKind::Steps => format!("steps {}", symbol.name),
            _ => symbol.name.clone(),
        };
        found.push(Completion::plain(range, label, item_kind(kind), kind.word(), rank));
    }
}

const fn item_kind(kind: SymbolKind) -> ItemKind {
    match kind {
        SymbolKind::Goods => ItemKind::Goods,
        SymbolKind::Mix => ItemKind::Mix,
        SymbolKind::Layout => ItemKind::Layout,
        SymbolKind::Zone => ItemKind::Zone,
        SymbolKind::Vessel => ItemKind::Vessel,
        SymbolKind::Steps => ItemKind::Steps,
        _ => ItemKind::Material,
    }
}

/// The materials of the reference data.
pub(super) fn reference(range: &Range, rank: u16, found: &mut Vec<Completion>) {
    for material in Reference::bundled().materials() {
        let detail = match material.role {
            Role::Alkali => "alkali",
            Role::Acid => "acid",
            Role::Salt => "salt",
            Role::Water | Role::Ice => "water",
            Role::Mordant => "mordant",
            _ => "reference data",
        };
        let first = u16::from(!matches!(material.role, Role::Alkali | Role::Salt | Role::Water));
        found.push(Completion::plain(range, material.name.as_str(), ItemKind::Material, detail, rank + first));
    }
}

/// Whether the words typed are a whole name already.
pub(super) fn known_words(view: SheetView<'_>, words: &str) -> bool {
    let key = fold_name(words);
    if key.is_empty() {
        return true;
    }
    let own = view.names().symbols.iter().any(|symbol| symbol.key == key);
    own || matches!(Reference::bundled().find(&key), Some(Entry::Material(_) | Entry::Dye(_) | Entry::Fibre(_)))
        || ZONES.contains(&key.as_str())
        || WATERS.contains(&key.as_str())
}
