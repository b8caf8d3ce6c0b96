//! What stands under the pointer: where a quantity comes from, what a name is, what a verb takes.

mod figures;
mod named;

use tenter_rules::{Page, rule};
use tenter_syntax::{Block, BlockKind, Line, Span, key_row, kind_row, verb_row};

use crate::analysis::{FileAnalysis, SheetView};
use crate::navigation::name_at;
use crate::text::Range;
use crate::workspace::Snapshot;

pub use figures::conversions;
pub(crate) use figures::{ingredients, of as of_step, written_figures};

/// What to show, in Markdown, and what it is about.
#[derive(Clone, Debug, PartialEq)]
pub struct Hover {
    /// What it is about.
    pub range: Range,
    /// The words.
    pub markdown: String,
}

/// What to show at an offset.
pub fn hover(snapshot: &Snapshot, path: &str, offset: usize) -> Option<Hover> {
    let analysis = snapshot.analyse(path)?;
    let (view, number, at) = analysis.home_at(offset)?;
    let block = &view.sheet.blocks.get(number as usize)?.block;
    let position = view.sheet.blocks.get(number as usize)?.position;
    let here = |span: Span, markdown: String| {
        (!markdown.is_empty()).then(|| Hover { range: analysis.file.range(position, span), markdown })
    };
    if block.keyword.touches(at) && !block.keyword.is_empty() {
        return here(block.keyword, kind_words(block.kind)?);
    }
    let line = block.lines.iter().find(|line| !line.span.is_empty() && line.span.touches(at));
    if let Some(line) = line {
        if let Some((span, words)) = accepted_rule(&analysis, view, block, line, number, at) {
            return here(span, words);
        }
        if let Some(head) = line.head.as_ref().filter(|head| head.known && head.span.touches(at) && at < head.span.end)
        {
            let mut words = head_words(block.kind, &head.word)?;
            if let Some(more) = figures::used_by(&analysis, view, number, line) {
                words.push_str("\n\n");
                words.push_str(&more);
            }
            return here(head.span, words);
        }
        if let Some((span, words)) = figures::at(&analysis, view, number, at) {
            return here(span, words);
        }
    }
    if let Some(found) = name_at(&analysis, offset) {
        let place = found.occurrence.place;
        return here(Span::new(place.start, place.end), named::words(&analysis, &found));
    }
    let line = line?;
    let clause = line.clauses.iter().find(|clause| clause.word.touches(at))?;
    let head = line.head.as_ref()?;
    let examples: Vec<String> = crate::cursor::taken(&head.word, Some(clause.connector))
        .map(|take| format!("`{} {}`", head.word, take.example))
        .collect();
    here(clause.word, examples.join("  \n"))
}

fn kind_words(kind: BlockKind) -> Option<String> {
    let row = kind_row(kind)?;
    Some(format!("**{}**: {}", row.name, row.summary))
}

/// What a verb does and takes, or what a key says.
pub(crate) fn head_words(kind: BlockKind, word: &str) -> Option<String> {
    if kind == BlockKind::Steps
        && let Some(verb) = verb_row(word)
    {
        let mut words = format!("**{}**: {}", verb.name, verb.summary);
        if !verb.synonyms.is_empty() {
            words.push_str(&format!("  \nalso: {}", verb.synonyms.join(", ")));
        }
        words.push('\n');
        for take in verb.takes {
            words.push_str(&format!("\n- `{} {}`", verb.name, take.example));
        }
        return Some(words);
    }
    let key = key_row(kind, word)?;
    Some(format!("**{}**: {}\n\n`{}`", key.name, key.summary, key.example))
}

/// On an `accept` line: the rule, and whether the line still does anything.
fn accepted_rule(
    analysis: &FileAnalysis,
    view: SheetView<'_>,
    block: &Block,
    line: &Line,
    number: u32,
    at: u32,
) -> Option<(Span, String)> {
    line.head.as_ref().filter(|head| &*head.word == "accept")?;
    let recipe = view.recipe()?;
    let here = |place: tenter_quantity::Place| place.block == number && place.start <= at && at <= place.end;
    let acceptance = recipe.acceptances.iter().find(|acceptance| here(acceptance.place))?;
    let span = Span::new(acceptance.rule.place.start, acceptance.rule.place.end);
    let Some(rule) = rule(&acceptance.rule.text) else {
        return Some((span, format!("No rule is called `{}`.", block.slice(span))));
    };
    let count = analysis
        .findings
        .iter()
        .filter(|told| told.sheet == view.index && told.finding.accepted == Some(acceptance.place))
        .count();
    let still = match count {
        0 => "Nothing is accepted by this line now.".to_owned(),
        1 => "One finding is accepted by this line.".to_owned(),
        more => format!("{more} findings are accepted by this line."),
    };
    Some((span, format!("{still}\n\n{}", rule_words(rule.name)?)))
}

/// The page of a rule: what it looks for, why, and what decides.
pub fn rule_words(name: &str) -> Option<String> {
    let rule = rule(name)?;
    let page = Page::read(rule.page);
    let mut words = format!("**{}** ({}): {}", rule.name, rule.level.word(), rule.summary);
    for heading in ["What it looks for", "Why it matters at the bench", "What decides"] {
        if let Some(text) = page.section(heading) {
            words.push_str(&format!("\n\n*{heading}*\n\n{}", text.trim()));
        }
    }
    Some(words)
}
