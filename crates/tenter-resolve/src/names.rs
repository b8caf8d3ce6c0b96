//! The names a recipe knows: what it declares, what everybody has, and the reference data behind them.
//!
//! A name must match whole: the longest known name at the front of a phrase counts, and the caller checks
//! that only manner words are left over.

use std::collections::BTreeMap;

use tenter_quantity::Place;
use tenter_reference::{Entry, Reference};
use tenter_syntax::BlockKind;
use tenter_syntax::fold_name;

use crate::problem::{NameKind, Problem, ProblemKind};
use crate::recipe::{GoodsId, GroupId, LayoutId, MixId, VesselId, ZoneRef};
use crate::sheet::Body;

/// What a name may stand for.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Referent {
    Goods(GoodsId),
    Mix(MixId),
    Layout(LayoutId),
    Zone(ZoneRef),
    Vessel(VesselId),
    Group(GroupId),
    /// A `dye` or `chemical` block, by its number among them.
    Declared(usize),
    /// Reference data: a material, dye, fibre or class.
    Reference(Entry<'static>),
    /// Tap water by a word for its temperature.
    Water(WaterWord),
}

/// Words for water that stand for a temperature.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum WaterWord {
    Cold,
    Lukewarm,
    Warm,
    Hot,
    Boiling,
}

impl WaterWord {
    const ALL: [(&'static str, Self); 14] = [
        ("cold water", Self::Cold),
        ("cold running water", Self::Cold),
        ("running cold water", Self::Cold),
        ("cold tap water", Self::Cold),
        ("cool water", Self::Cold),
        ("running water", Self::Cold),
        ("clean cold water", Self::Cold),
        ("lukewarm water", Self::Lukewarm),
        ("warm water", Self::Warm),
        ("warm running water", Self::Warm),
        ("hot water", Self::Hot),
        ("hot tap water", Self::Hot),
        ("boiling water", Self::Boiling),
        ("water off the boil", Self::Boiling),
    ];

    /// Assumed temperature in °C: low, best, high. Common practice, no source.
    pub(crate) fn celsius(self) -> (f64, f64, f64) {
        match self {
            Self::Cold => (5.0, 12.0, 20.0),
            Self::Lukewarm => (28.0, 33.0, 38.0),
            Self::Warm => (35.0, 40.0, 45.0),
            Self::Hot => (50.0, 55.0, 65.0),
            Self::Boiling => (95.0, 99.0, 100.0),
        }
    }
}

const ZONES: [(&str, ZoneRef); 14] = [
    ("front", ZoneRef::Front),
    ("front side", ZoneRef::Front),
    ("back", ZoneRef::Back),
    ("back side", ZoneRef::Back),
    ("both sides", ZoneRef::BothSides),
    ("both faces", ZoneRef::BothSides),
    ("front and back", ZoneRef::BothSides),
    ("all over", ZoneRef::AllOver),
    ("everywhere", ZoneRef::AllOver),
    ("whole piece", ZoneRef::AllOver),
    ("top", ZoneRef::Front),
    ("underside", ZoneRef::Back),
    ("ice", ZoneRef::Ice),
    ("top of ice", ZoneRef::Ice),
];

/// The table of names.
pub(crate) struct Names {
    table: BTreeMap<String, Vec<Referent>>,
    spelled: BTreeMap<String, String>,
    longest: usize,
    reference: &'static Reference,
}

/// A name found at the front of some words.
pub(crate) struct Hit {
    /// What it may stand for, the recipe's own meanings first.
    pub referents: Vec<Referent>,
    /// How many words it took.
    pub words: usize,
}

impl Names {
    /// Gathers every declared name; duplicates become problems. Numbers follow the order of declaration.
    pub(crate) fn gather(bodies: &[Body<'_>], problems: &mut Vec<Problem>) -> Self {
        let mut names =
            Self { table: BTreeMap::new(), spelled: BTreeMap::new(), longest: 2, reference: Reference::bundled() };
        let mut first: BTreeMap<(String, u8), (Place, bool)> = BTreeMap::new();
        let mut count = [0usize; 7];
        for body in bodies {
            let (slot, space) = match body.block.kind {
                BlockKind::Goods => (0, 0),
                BlockKind::Mix => (1, 1),
                BlockKind::Layout => (2, 2),
                BlockKind::Vessel => (3, 3),
                BlockKind::Steps => (4, 4),
                // A dye and a chemical share one space of names, and a mix that is called like a dye would hide it.
                BlockKind::Dye | BlockKind::Chemical => (5, 1),
                _ => continue,
            };
            let number = count[slot];
            count[slot] += 1;
            let written = body.name();
            if written.is_empty() {
                continue;
            }
            let referent = match body.block.kind {
                BlockKind::Goods => Referent::Goods(GoodsId(number)),
                BlockKind::Mix => Referent::Mix(MixId(number)),
                BlockKind::Layout => Referent::Layout(LayoutId(number)),
                BlockKind::Vessel => Referent::Vessel(VesselId(number)),
                BlockKind::Steps => Referent::Group(GroupId(number)),
                _ => Referent::Declared(number),
            };
            let place = body.place(body.block.name);
            let key = fold_name(unquoted(written));
            match first.get(&(key.clone(), space)) {
                Some(&(earlier, was_shared)) => {
                    if body.shared == was_shared {
                        problems.push(Problem {
                            place,
                            kind: ProblemKind::SameName { name: written.into(), first: earlier },
                        });
                    } else if !body.shared {
                        // The recipe's own meaning goes before what a shared file brought.
                        names.replace(&key, referent);
                    }
                }
                None => {
                    first.insert((key, space), (place, body.shared));
                    names.add(unquoted(written), referent);
                }
            }
        }
        names.gather_zones(bodies);
        for (word, zone) in ZONES {
            names.add(word, Referent::Zone(zone));
        }
        for (word, water) in WaterWord::ALL {
            names.add(word, Referent::Water(water));
        }
        names
    }

    fn gather_zones(&mut self, bodies: &[Body<'_>]) {
        let layouts = bodies.iter().filter(|body| body.block.kind == BlockKind::Layout);
        for (number, body) in layouts.enumerate() {
            for (index, (name, _)) in crate::layout::zone_names(body).into_iter().enumerate() {
                self.add(name, Referent::Zone(ZoneRef::Of(LayoutId(number), index)));
            }
        }
    }

    fn add(&mut self, written: &str, referent: Referent) {
        let key = fold_name(written);
        self.longest = self.longest.max(key.split(' ').count());
        self.spelled.entry(key.clone()).or_insert_with(|| written.to_owned());
        self.table.entry(key).or_default().push(referent);
    }

    fn replace(&mut self, key: &str, referent: Referent) {
        if let Some(list) = self.table.get_mut(key) {
            list.retain(|old| std::mem::discriminant(old) != std::mem::discriminant(&referent));
            list.insert(0, referent);
        }
    }

    /// The longest known name at the front of `words` (connecting words may be among them).
    pub(crate) fn longest(&self, words: &[&str]) -> Option<Hit> {
        let folded: Vec<String> = words.iter().take(self.longest.min(12)).map(|word| fold_name(word)).collect();
        let mut key = String::new();
        let mut declared = None;
        for length in (1..=folded.len()).rev() {
            key.clear();
            for (index, word) in folded[..length].iter().enumerate() {
                if index > 0 {
                    key.push(' ');
                }
                key.push_str(word);
            }
            if let Some(list) = self.find(&key) {
                declared = Some((list, length));
                break;
            }
        }
        let reference = self.reference.longest_match(words);
        match (declared, reference) {
            (Some((list, length)), Some((_, other))) if other <= length => {
                let mut referents = list.clone();
                if other == length
                    && let Some((entry, _)) = reference
                {
                    referents.push(Referent::Reference(entry));
                }
                Some(Hit { referents, words: length })
            }
            (_, Some((entry, length))) => Some(Hit { referents: vec![Referent::Reference(entry)], words: length }),
            (Some((list, length)), None) => Some(Hit { referents: list.clone(), words: length }),
            (None, None) => None,
        }
    }

    fn find(&self, key: &str) -> Option<&Vec<Referent>> {
        self.table.get(key).or_else(|| {
            // One piece of the goods: `tee` for `tees`.
            let plural = format!("{key}s");
            self.table
                .get(&plural)
                .or_else(|| key.strip_suffix('s').and_then(|singular| self.table.get(singular)))
                .filter(|list| list.iter().any(|referent| matches!(referent, Referent::Goods(_))))
        })
    }

    /// Known names that look like `written`, nearest first, at most three.
    pub(crate) fn nearest(&self, written: &str, expected: NameKind) -> Vec<std::sync::Arc<str>> {
        let key = fold_name(written);
        if key.is_empty() {
            return Vec::new();
        }
        let mut scored: Vec<(f64, &str)> = Vec::new();
        for (name, referents) in &self.table {
            if referents.iter().any(|referent| fits(referent, expected)) {
                let score = likeness(&key, name).max(part_of(&key, name));
                if score >= 0.74 {
                    scored.push((score, self.spelled.get(name).map_or(name.as_str(), String::as_str)));
                }
            }
        }
        let kind = match expected {
            NameKind::Material | NameKind::Any => Some(tenter_reference::Kind::Material),
            NameKind::Fibre => Some(tenter_reference::Kind::Fibre),
            NameKind::DyeClass => Some(tenter_reference::Kind::Class),
            _ => None,
        };
        if let Some(kind) = kind {
            for name in self.reference.nearest(written, Some(kind)) {
                scored.push((likeness(&key, &fold_name(name)).max(0.5), name));
            }
        }
        scored.sort_by(|a, b| b.0.total_cmp(&a.0).then(a.1.cmp(b.1)));
        scored.dedup_by(|a, b| a.1 == b.1);
        scored.into_iter().take(3).map(|(_, name)| name.into()).collect()
    }
}

/// `night rose` may be meant for `night`: a known name that is its first or last words.
fn part_of(written: &str, name: &str) -> f64 {
    let front = written.strip_prefix(name).is_some_and(|rest| rest.starts_with(' '));
    let back = written.strip_suffix(name).is_some_and(|rest| rest.ends_with(' '));
    if front || back { 0.75 } else { 0.0 }
}

fn likeness(a: &str, b: &str) -> f64 {
    strsim::normalized_damerau_levenshtein(a, b)
}

fn fits(referent: &Referent, expected: NameKind) -> bool {
    match expected {
        NameKind::Any => true,
        NameKind::Material => matches!(referent, Referent::Mix(_) | Referent::Declared(_) | Referent::Water(_)),
        NameKind::Mix => matches!(referent, Referent::Mix(_)),
        NameKind::Goods => matches!(referent, Referent::Goods(_)),
        NameKind::Zone => matches!(referent, Referent::Zone(_)),
        NameKind::Layout => matches!(referent, Referent::Layout(_)),
        NameKind::Vessel => matches!(referent, Referent::Vessel(_) | Referent::Mix(_)),
        NameKind::Steps => matches!(referent, Referent::Group(_)),
        NameKind::Fibre | NameKind::DyeClass => false,
    }
}

/// A name without the quotes that may stand around it.
pub(crate) fn unquoted(name: &str) -> &str {
    name.strip_prefix('"').map_or(name, |rest| rest.strip_suffix('"').unwrap_or(rest))
}
