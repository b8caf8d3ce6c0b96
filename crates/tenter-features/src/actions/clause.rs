//! A clause the verb of a step takes and the line does not have yet.

use tenter_rules::{Scale, SheetFindings, check_sheet};
use tenter_syntax::{BlockKind, Connector, Document, Expect, Line, Span, verb_row};

use crate::actions::{Action, rewrite};
use crate::analysis::{FileAnalysis, SheetView};
use crate::cursor::kinds;
use crate::names::SymbolKind;
use crate::text::{Edit, Range};

/// No more are offered on one line.
const MOST: usize = 4;

/// Offers the clauses that are missing, those that read well at the end of the line: names of this recipe are put in,
/// numbers are those of the verb's examples and the title shows them.
pub(super) fn offer(analysis: &FileAnalysis, range: &Range, found: &mut Vec<Action>) {
    let Some((view, number, at)) = analysis.home_at(range.start) else { return };
    let Some(entry) = view.sheet.blocks.get(number as usize).filter(|entry| entry.file.is_none()) else { return };
    let block = &entry.block;
    let line = block.lines.iter().find(|line| !line.span.is_empty() && line.span.touches(at));
    let Some(line) = line.filter(|_| block.kind == BlockKind::Steps) else { return };
    let whole = analysis.file.range(entry.position, line.span);
    // A line that cannot be read yet has other troubles.
    let troubled = view.recipe().is_some_and(|recipe| {
        recipe.problems.iter().any(|it| it.place.block == number && line.span.touches(it.place.start))
    });
    if troubled || line.unread.is_some() || range.end > whole.end {
        return;
    }
    let mut offered = 0;
    for text in missing(view, line) {
        let edit = Edit::new(&analysis.file.path, whole.end..whole.end, format!(" {text}"));
        if offered < MOST && reads_well(view, number, line.span, &edit.new_text) {
            offered += 1;
            found.push(rewrite(format!("add `{text}`"), vec![edit]));
        }
    }
}

/// The clauses the verb takes that say something the line does not say yet, one for each connecting word.
fn missing(view: SheetView<'_>, line: &Line) -> Vec<String> {
    let Some(verb) = line.head.as_ref().filter(|head| head.known).and_then(|head| verb_row(&head.word)) else {
        return Vec::new();
    };
    let mut connectors: Vec<Option<Connector>> = line.clauses.iter().map(|clause| Some(clause.connector)).collect();
    if !line.items.is_empty() {
        connectors.push(None);
    }
    let said = verb.takes.iter().filter(|take| connectors.contains(&take.connector));
    let mut said: Vec<Expect> = said.map(|take| about(take.what)).collect();
    let mut found = Vec::new();
    for take in verb.takes {
        let Some(connector) = take.connector.filter(|connector| !connectors.contains(&Some(*connector))) else {
            continue;
        };
        if said.contains(&about(take.what)) {
            continue;
        }
        let example = take.example.strip_prefix(connector.word()).unwrap_or(take.example).trim();
        let text = match waiting(view, take.what) {
            Some(name) => name,
            // A name of somebody else's recipe helps nobody; cold water everybody has.
            None if !kinds(take.what).is_empty() && take.what != Expect::Liquor => continue,
            // `turn tees over` says no more than `turn tees`.
            None if example.is_empty() => continue,
            None => example,
        };
        connectors.push(Some(connector));
        said.push(about(take.what));
        found.push(format!("{} {text}", connector.word()));
    }
    found
}

/// The first name that fits. A mix or a zone is missing here only if no step has it yet.
fn waiting<'a>(view: SheetView<'a>, what: Expect) -> Option<&'a str> {
    let names = view.names();
    let used = |index: usize| {
        let steps =
            |block: u32| view.sheet.blocks.get(block as usize).is_some_and(|it| it.block.kind == BlockKind::Steps);
        names.occurrences.iter().any(|it| it.symbol == index && !it.declares && steps(it.place.block))
    };
    kinds(what).iter().find_map(|kind| {
        let own = names.symbols.iter().enumerate().filter(|(_, it)| it.kind == *kind && it.declared.is_some());
        let once = matches!(kind, SymbolKind::Mix | SymbolKind::Zone);
        let mut free = own.filter(|(index, _)| !once || !used(*index));
        free.next().map(|(_, symbol)| symbol.name.as_str())
    })
}

/// What a clause is about: `on rim` and `over tees` both say where, `from bottle` and `4 g lagoon` both say what.
const fn about(what: Expect) -> Expect {
    match what {
        Expect::Goods => Expect::Zone,
        Expect::Liquor => Expect::Material,
        other => other,
    }
}

/// Whether the recipe has no more troubles, and no more findings, with some words put in than without. Only the block is
/// read again.
fn reads_well(view: SheetView<'_>, number: u32, line: Span, words: &str) -> bool {
    let mut sheet = view.sheet.clone();
    let Some(entry) = sheet.blocks.get_mut(number as usize) else { return false };
    let mut text = entry.block.text.to_string();
    let at = line.end as usize;
    if !text.is_char_boundary(at) {
        return false;
    }
    text.insert_str(at, words);
    let mut read = Document::parse(&text).blocks.into_iter().map(|placed| placed.block);
    let Some(block) = read.find(|block| block.kind == entry.block.kind) else { return false };
    entry.block = block;
    let after = check_sheet(&sheet, Scale::AsWritten);
    let troubles = |found: &SheetFindings| found.recipes.iter().map(|recipe| recipe.problems.len()).sum::<usize>();
    let told = |found: &SheetFindings| found.findings.iter().filter(|(_, it)| it.accepted.is_none()).count();
    let before = view.findings();
    // A line that draws a finding may be what keeps others from being seen.
    let ailing = before.findings.iter().any(|(_, it)| it.place.block == number && line.touches(it.place.start));
    troubles(&after) <= troubles(before) && (ailing || told(&after) <= told(before))
}
