//! The names of a sheet: what is declared, and every place a name stands.

use std::collections::BTreeMap;

use tenter_quantity::Place;
use tenter_reference::{Entry, Reference};
use tenter_resolve::recipe::ZoneRef;
use tenter_resolve::usage::read_use;
use tenter_resolve::{Recipe, Sheet};
use tenter_syntax::{Block, BlockKind, Line, Span, fold_name};

use crate::cursor::{Context, Word, wanted, words};

/// What a name stands for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[allow(missing_docs)]
pub enum SymbolKind {
    Goods,
    Mix,
    Dye,
    Chemical,
    Layout,
    Zone,
    Vessel,
    Steps,
    Recipe,
    Variant,
    /// A name of the reference data that the sheet does not declare.
    Reference,
}

impl SymbolKind {
    /// The word a dyer uses.
    pub const fn word(self) -> &'static str {
        match self {
            Self::Goods => "goods",
            Self::Mix => "mix",
            Self::Dye => "dye",
            Self::Chemical => "chemical",
            Self::Layout => "layout",
            Self::Zone => "zone",
            Self::Vessel => "vessel",
            Self::Steps => "steps",
            Self::Recipe => "recipe",
            Self::Variant => "variant",
            Self::Reference => "reference data",
        }
    }

    /// What a block of this kind declares.
    pub(crate) const fn of_block(kind: BlockKind) -> Option<Self> {
        Some(match kind {
            BlockKind::Goods => Self::Goods,
            BlockKind::Mix => Self::Mix,
            BlockKind::Dye => Self::Dye,
            BlockKind::Chemical => Self::Chemical,
            BlockKind::Layout => Self::Layout,
            BlockKind::Vessel => Self::Vessel,
            BlockKind::Steps => Self::Steps,
            BlockKind::Recipe => Self::Recipe,
            BlockKind::Variant => Self::Variant,
            _ => return None,
        })
    }
}

/// One named thing.
#[derive(Clone, Debug)]
pub(crate) struct Symbol {
    pub kind: SymbolKind,
    /// The name, folded.
    pub key: String,
    /// The name as declared.
    pub name: String,
    /// Where the name is declared; none for reference data.
    pub declared: Option<Place>,
    /// The reference entry it is, if known by its name.
    pub entry: Option<Entry<'static>>,
}

/// A name standing somewhere.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Occurrence {
    pub place: Place,
    /// Index of the symbol.
    pub symbol: usize,
    /// Whether this is the declaration.
    pub declares: bool,
}

/// The names of a sheet.
#[derive(Clone, Debug, Default)]
pub(crate) struct Names {
    pub symbols: Vec<Symbol>,
    /// In order of place.
    pub occurrences: Vec<Occurrence>,
    table: BTreeMap<String, Vec<usize>>,
    by_entry: BTreeMap<&'static str, usize>,
    longest: usize,
}

impl Names {
    /// Reads the names of a sheet. `recipe` settles which layout a zone belongs to.
    pub fn of(sheet: &Sheet, recipe: Option<&Recipe>) -> Self {
        let mut names = Self { longest: 1, ..Self::default() };
        // The recipe's own names go before those it shares, as where amounts are resolved.
        for shared in [false, true] {
            for (number, entry) in sheet.blocks.iter().enumerate().filter(|(_, entry)| entry.shared == shared) {
                names.declare(number as u32, &entry.block);
            }
        }
        for (number, entry) in sheet.blocks.iter().enumerate() {
            let number = number as u32;
            names.scan_use(number, &entry.block);
            for line in &entry.block.lines {
                names.scan(number, &entry.block, line, recipe);
            }
        }
        names.occurrences.sort_by_key(|occurrence| (occurrence.place, !occurrence.declares));
        names.occurrences.dedup_by_key(|occurrence| occurrence.place);
        names
    }

    fn declare(&mut self, number: u32, block: &Block) {
        if let Some(kind) = SymbolKind::of_block(block.kind) {
            self.add(number, block, kind, block.name);
        }
        if block.kind == BlockKind::Layout {
            for line in &block.lines {
                if let Some(span) = zone_name(block, line) {
                    self.add(number, block, SymbolKind::Zone, span);
                }
            }
        }
    }

    fn add(&mut self, number: u32, block: &Block, kind: SymbolKind, span: Span) {
        let span = unquoted(block, span);
        let name = block.slice(span);
        if name.is_empty() {
            return;
        }
        let key = fold_name(name);
        let place = Place { block: number, start: span.start, end: span.end };
        let symbol = self.symbols.len();
        self.longest = self.longest.max(key.split(' ').count()).min(12);
        let entry = match kind {
            SymbolKind::Chemical | SymbolKind::Dye => Reference::bundled().find(name),
            _ => None,
        };
        self.symbols.push(Symbol { kind, key: key.clone(), name: name.to_owned(), declared: Some(place), entry });
        self.occurrences.push(Occurrence { place, symbol, declares: true });
        if !matches!(kind, SymbolKind::Recipe | SymbolKind::Variant) {
            self.table.entry(key).or_default().push(symbol);
        }
    }

    fn scan_use(&mut self, number: u32, block: &Block) {
        if block.kind != BlockKind::Use {
            return;
        }
        let Ok(request) = read_use(block.slice(block.name), block.name.start) else { return };
        for (name, span) in request.names {
            if let Some(symbol) = self.table.get(&fold_name(name)).and_then(|list| list.first()) {
                let place = Place { block: number, start: span.start, end: span.end };
                self.occurrences.push(Occurrence { place, symbol: *symbol, declares: false });
            }
        }
    }

    fn scan(&mut self, number: u32, block: &Block, line: &Line, recipe: Option<&Recipe>) {
        let words = words(block, line);
        let mut at = 0;
        while let Some(word) = words.get(at) {
            if let Some((symbol, count)) = self.find(block, line, &words, at, number, recipe) {
                let end = words.get(at + count - 1).map_or(word.span.end, |last| last.span.end);
                let span = unquoted(block, Span::new(word.span.start, end));
                let place = Place { block: number, start: span.start, end: span.end };
                self.occurrences.push(Occurrence { place, symbol, declares: false });
                at += count;
            } else {
                if word.unit {
                    self.scan_unit(number, block, word);
                }
                at += 1;
            }
        }
    }

    /// `9 g/tee`: goods below a stroke.
    fn scan_unit(&mut self, number: u32, block: &Block, word: &Word) {
        let text = block.slice(word.span);
        let start = text.find('/').map_or(0, |at| at + 1);
        let Some(below) = text.get(start..) else { return };
        if let Some(symbol) = self.goods_like(&fold_name(below)) {
            let place = Place { block: number, start: word.span.start + start as u32, end: word.span.end };
            self.occurrences.push(Occurrence { place, symbol, declares: false });
        }
    }

    fn find(
        &mut self,
        block: &Block,
        line: &Line,
        words: &[Word],
        at: usize,
        number: u32,
        recipe: Option<&Recipe>,
    ) -> Option<(usize, usize)> {
        let first = words.get(at).filter(|word| word.names)?;
        let most = words.iter().skip(at).take(self.longest).take_while(|word| word.run == first.run).count();
        let texts: Vec<&str> = words
            .iter()
            .skip(at)
            .take(12)
            .take_while(|word| word.run == first.run)
            .map(|word| word.text(block))
            .collect();
        let declared = (1..=most).rev().find_map(|count| {
            let key = fold_name(&texts.get(..count)?.join(" "));
            let key = key.trim_matches('"').to_owned();
            Some((self.candidates(&key)?, count))
        });
        let known = Reference::bundled().longest_match(&texts).filter(|_| !first.unit);
        match (declared, known) {
            (Some((list, count)), known) if known.is_none_or(|(_, longer)| longer <= count) => {
                let context = Context { kind: block.kind, line, clause: first.clause };
                let place = Place { block: number, start: first.span.start, end: first.span.end };
                Some((self.choose(&list, &context, block, place, recipe), count))
            }
            (_, Some((entry, count))) => Some((self.reference(entry), count)),
            _ => None,
        }
    }

    fn candidates(&self, key: &str) -> Option<Vec<usize>> {
        self.table.get(key).cloned().or_else(|| self.goods_like(key).map(|symbol| vec![symbol]))
    }

    /// One piece of the goods: `tee` for `tees`.
    fn goods_like(&self, key: &str) -> Option<usize> {
        if key.is_empty() {
            return None;
        }
        let plural = format!("{key}s");
        let near = [key, plural.as_str(), key.strip_suffix('s').unwrap_or(key)];
        near.iter().find_map(|key| {
            let list = self.table.get(*key)?;
            list.iter().copied().find(|symbol| self.kind(*symbol) == SymbolKind::Goods)
        })
    }

    fn kind(&self, symbol: usize) -> SymbolKind {
        self.symbols.get(symbol).map_or(SymbolKind::Reference, |symbol| symbol.kind)
    }

    fn choose(
        &self,
        list: &[usize],
        context: &Context<'_>,
        block: &Block,
        place: Place,
        recipe: Option<&Recipe>,
    ) -> usize {
        let first = list.first().copied().unwrap_or(0);
        if list.len() < 2 {
            return first;
        }
        if let Some(symbol) = recipe.and_then(|recipe| self.zone_of(list, place, recipe)) {
            return symbol;
        }
        let fits = wanted(block, context);
        fits.iter().find_map(|kind| list.iter().copied().find(|symbol| self.kind(*symbol) == *kind)).unwrap_or(first)
    }

    /// The zone a step means, as the recipe settled it.
    fn zone_of(&self, list: &[usize], place: Place, recipe: &Recipe) -> Option<usize> {
        let covers = |at: Place| at.block == place.block && at.start <= place.start && place.end <= at.end;
        let mut uses = recipe.steps().flat_map(|(_, step)| &step.zones).filter(|used| covers(used.place));
        let ZoneRef::Of(layout, zone) = uses.next()?.zone else { return None };
        let declared = recipe.layouts.get(layout.0)?.zones.get(zone)?.name.place;
        list.iter().copied().find(|symbol| self.symbols.get(*symbol).is_some_and(|it| it.declared == Some(declared)))
    }

    fn reference(&mut self, entry: Entry<'static>) -> usize {
        if let Some(symbol) = self.by_entry.get(entry.id()) {
            return *symbol;
        }
        let symbol = self.symbols.len();
        let name = entry.name().to_owned();
        let key = fold_name(&name);
        self.symbols.push(Symbol { kind: SymbolKind::Reference, key, name, declared: None, entry: Some(entry) });
        self.by_entry.insert(entry.id(), symbol);
        symbol
    }

    /// The name at an offset of a block of the sheet.
    pub fn at(&self, block: u32, offset: u32) -> Option<(&Occurrence, &Symbol)> {
        let after = self.occurrences.partition_point(|it| (it.place.block, it.place.start) <= (block, offset));
        let near = self.occurrences.get(after.checked_sub(1)?)?;
        let here = near.place.block == block && near.place.start <= offset && offset <= near.place.end;
        here.then(|| self.symbols.get(near.symbol).map(|symbol| (near, symbol))).flatten()
    }

    /// The declared names of a kind, in order.
    pub fn declared(&self, kind: SymbolKind) -> impl Iterator<Item = &Symbol> {
        self.symbols.iter().filter(move |symbol| symbol.kind == kind && symbol.declared.is_some())
    }
}

/// A span without the quotes around it.
pub(crate) fn unquoted(block: &Block, span: Span) -> Span {
    let text = block.slice(span);
    let quoted = text.len() > 2 && text.starts_with('"') && text.ends_with('"');
    if quoted { Span::new(span.start + 1, span.end - 1) } else { span }
}

/// The name a `zone` line declares: the words behind the share.
pub(crate) fn zone_name(block: &Block, line: &Line) -> Option<Span> {
    line.head.as_ref().filter(|head| &*head.word == "zone")?;
    let mut start = line.rest.start;
    if let Some(tenter_syntax::Item::Number(number)) = line.items.first() {
        start = number.span.end;
        let rest = block.slice(Span::new(start, line.rest.end));
        let blanks = rest.len() - rest.trim_start().len();
        let mark = ["%", "percent", "per cent"].iter().find(|mark| rest.trim_start().starts_with(**mark));
        start += mark.map_or(0, |mark| blanks + mark.len()) as u32;
    }
    let rest = block.slice(Span::new(start, line.rest.end));
    let start = start + (rest.len() - rest.trim_start().len()) as u32;
    let name = rest.trim().split(',').next().unwrap_or("").trim_end();
    (!name.is_empty()).then(|| Span::new(start, start + name.len() as u32))
}
