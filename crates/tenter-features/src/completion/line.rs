//! Proposals on a line of a body: its first word, then what that word takes.

use tenter_syntax::{BlockKind, ClauseUse, Connector, Expect, Item, NumberForm, fold_name, keys_of, verb_row, verbs};

use crate::analysis::{FileAnalysis, SheetView};
use crate::completion::names::{WATERS, fit, known_words};
use crate::completion::place::Body;
use crate::completion::{Completion, ItemKind, keys, units};
use crate::cursor::taken;

/// What is being typed behind the head of a line.
pub(super) struct Phrase {
    /// The connecting word in front.
    pub connector: Option<Connector>,
    /// Whether a number stands in front of what is typed.
    pub counted: bool,
    /// Whether a unit follows that number, and a blank.
    pub measured: bool,
    /// Whether that unit is one of volume.
    pub by_volume: bool,
    /// Whether a comma stands right in front: one more of a list is to come.
    pub listed: bool,
    /// Where what is typed begins, as [`Body::since`] counts.
    pub start: usize,
}

/// The proposals on a line.
pub(super) fn complete(analysis: &FileAnalysis, body: &Body, offset: usize) -> Vec<Completion> {
    let Some((view, _)) = analysis.home(body.position) else { return Vec::new() };
    let typed = body.typed();
    let head = body.line().and_then(|line| line.head.as_ref()).filter(|head| head.known);
    let begun = head.filter(|head| (head.span.end as usize) < body.start() + typed.len());
    if let Some(head) = begun {
        let word = head.word.to_string();
        let found = if body.kind == BlockKind::Steps && word != "accept" && verb_row(&word).is_some() {
            step(view, body, &word, offset)
        } else {
            keys::value(view, body, &word, offset)
        };
        // `top up` begins like nothing else, `soap off` like nothing yet: both readings are offered.
        return if found.is_empty() && longer_head(body, typed) { heads(view, body, offset) } else { found };
    }
    let numbered = typed.starts_with(|c: char| c.is_ascii_digit())
        || body.line().is_some_and(|line| matches!(line.items.first(), Some(Item::Number(_))));
    if numbered {
        return amount_line(view, body, offset);
    }
    heads(view, body, offset)
}

fn longer_head(body: &Body, typed: &str) -> bool {
    body.kind == BlockKind::Steps && verbs().any(|verb| verb.name.starts_with(typed.trim_end()))
}

/// The first word of a line.
fn heads(view: SheetView<'_>, body: &Body, offset: usize) -> Vec<Completion> {
    let range = body.offset(body.start())..offset;
    let mut found = Vec::new();
    if matches!(body.kind, BlockKind::Steps | BlockKind::Variant) {
        for (rank, verb) in verbs().enumerate() {
            let first = verb.takes.first().map_or("", |take| take.example);
            let item = Completion::plain(&range, verb.name, ItemKind::Verb, verb.summary, rank as u16);
            let insert = if first.is_empty() { verb.name.to_owned() } else { format!("{} $0", pad(verb.name)) };
            found.push(item.snippet(insert));
        }
    }
    let used: Vec<&str> = view
        .sheet
        .blocks
        .iter()
        .filter(|entry| entry.file.is_none() && entry.position == body.position)
        .flat_map(|entry| &entry.block.lines)
        .filter_map(|line| line.head.as_ref().map(|head| &*head.word))
        .collect();
    for (index, key) in keys_of(body.kind).enumerate() {
        // What is missing goes first, and what belongs to this kind of block before what any may have.
        let anywhere = body.kind != BlockKind::Recipe && matches!(key.name, "source" | "note" | "accept");
        let rank = match (used.contains(&key.name), anywhere) {
            (true, _) => 300,
            (false, true) => 200,
            (false, false) => 100,
        } + index as u16;
        let item = Completion::plain(&range, key.name, ItemKind::Key, key.summary, rank);
        found.push(item.snippet(format!("{} $0", pad(key.name))));
    }
    if body.kind == BlockKind::Mix {
        for (rank, (label, insert)) in
            [("8 L water", "${1:8} L      water at ${2:40} °C"), ("60 g/L soda ash", "${1:60} g/L   ${2:soda ash}")]
                .iter()
                .enumerate()
        {
            let item = Completion::plain(&range, *label, ItemKind::Clause, "an amount of something", rank as u16);
            found.push(item.snippet((*insert).to_owned()));
        }
    }
    found
}

/// Heads stand in a column.
fn pad(word: &str) -> String {
    format!("{word:<8}")
}

/// A line of a mix or shelf that begins with an amount.
fn amount_line(view: SheetView<'_>, body: &Body, offset: usize) -> Vec<Completion> {
    let phrase = phrase(body, body.start());
    let range = body.offset(phrase.start)..offset;
    let words = body.since(phrase.start);
    if phrase.connector == Some(Connector::At) {
        return units::fit(&[Expect::Temperature], &range);
    }
    if phrase.connector.is_some() {
        return if body.kind == BlockKind::Shelf {
            Vec::new()
        } else {
            fit(view, &[Expect::Goods, Expect::Liquor], &range)
        };
    }
    if phrase.measured {
        let mut found = fit(view, &[Expect::Material, Expect::Liquor], &range);
        // A vessel is nothing to mix; water comes by volume, and first.
        found.retain(|item| item.kind != ItemKind::Vessel);
        if phrase.by_volume && body.kind == BlockKind::Mix {
            found.push(Completion::plain(&range, "water", ItemKind::Material, "water", 0));
        } else {
            found.retain(|item| !WATERS.contains(&item.label.as_str()));
        }
        if words.ends_with(' ') && known_words(view, words) {
            let here = offset..offset;
            let more: &[&str] =
                if body.kind == BlockKind::Shelf { &["bought 2026-02-01 at 12 EUR"] } else { &["at 40 °C", "fixed"] };
            found.extend(more.iter().map(|text| Completion::plain(&here, *text, ItemKind::Clause, "", 500)));
            // Only a longer name can go on from here.
            let begun = fold_name(words);
            found.retain(|item| item.range == here || fold_name(&item.label).starts_with(&format!("{begun} ")));
        }
        return found;
    }
    if !phrase.counted {
        return Vec::new();
    }
    let mut found = units::fit(&[Expect::Material], &range);
    if body.kind == BlockKind::Shelf {
        // What lies on the shelf lies there whoever dyes.
        found.retain(|item| !item.label.contains(['/', '%']));
    }
    found
}

/// A step behind its verb.
fn step(view: SheetView<'_>, body: &Body, verb: &str, offset: usize) -> Vec<Completion> {
    let head_end = body.line().and_then(|line| line.head.as_ref()).map_or(body.start(), |head| head.span.end as usize);
    let phrase = phrase(body, head_end);
    let range = body.offset(phrase.start)..offset;
    let words = body.since(phrase.start);
    let takes: Vec<&ClauseUse> = taken(verb, phrase.connector).collect();
    let expected: Vec<Expect> = takes.iter().map(|take| take.what).collect();
    let mut found = Vec::new();
    if phrase.counted && !phrase.measured {
        return units::fit(&expected, &range);
    }
    if phrase.measured {
        found.extend(fit(view, &named_amount(&expected), &range));
    } else {
        found.extend(fit(view, &expected, &range));
        for take in takes.iter().filter(|take| bare(take.what)) {
            let text = behind_connector(take);
            let item = Completion::plain(&range, text, ItemKind::Value, "for example", 200);
            found.push(item.snippet(format!("${{1:{text}}}")));
        }
    }
    let blank = words.is_empty() || words.ends_with(' ');
    if blank && !words.is_empty() {
        // Only a longer name can go on from here.
        let begun = fold_name(words);
        found.retain(|item| {
            fold_name(&item.label).strip_prefix(begun.as_str()).is_some_and(|rest| rest.starts_with(' '))
        });
    }
    let said = !words.trim().is_empty() || phrase.measured;
    let complete = blank && (said || phrase.connector.is_none()) && !phrase.listed;
    if complete {
        // Before anything is said, names that belong right here go first; behind half a name, all that may end it.
        let rank = match (phrase.measured, words.is_empty(), known_words(view, words)) {
            (true, ..) | (_, false, true) => 50,
            (false, true, _) => 150,
            (false, false, false) => 450,
        };
        found.extend(clauses(body, verb, offset, rank));
    }
    found
}

/// What may follow an amount of each kind.
fn named_amount(expected: &[Expect]) -> Vec<Expect> {
    let of_material = expected.iter().any(|what| matches!(what, Expect::Material | Expect::Liquor));
    if of_material { vec![Expect::Material, Expect::Liquor] } else { Vec::new() }
}

/// Whether it has no names, so that an example serves.
const fn bare(what: Expect) -> bool {
    matches!(
        what,
        Expect::Duration
            | Expect::Temperature
            | Expect::Pickup
            | Expect::Portions
            | Expect::Text
            | Expect::Cover
            | Expect::Lot
            | Expect::Equipment
    )
}

/// The example without its connecting word.
fn behind_connector(take: &'static ClauseUse) -> &'static str {
    let word = take.connector.map_or("", Connector::word);
    take.example.strip_prefix(word).unwrap_or(take.example).trim_start()
}

/// The clauses the verb can still take.
fn clauses(body: &Body, verb: &str, offset: usize, first: u16) -> Vec<Completion> {
    let here = offset..offset;
    let used: Vec<Connector> =
        body.line().map(|line| line.clauses.iter().map(|clause| clause.connector).collect()).unwrap_or_default();
    let takes = verb_row(verb).map_or(&[] as &[ClauseUse], |verb| verb.takes);
    takes
        .iter()
        .enumerate()
        .filter_map(|(index, take)| {
            let connector = take.connector?;
            if used.contains(&connector) {
                return None;
            }
            let rank = first + index as u16;
            let rest = behind_connector(take);
            let item = Completion::plain(&here, take.example, ItemKind::Clause, "what this verb also takes", rank);
            Some(item.snippet(format!("{} ${{1:{rest}}}", connector.word())))
        })
        .collect()
}

/// Finds the phrase at the caret: behind the last connecting word and the last comma.
pub(super) fn phrase(body: &Body, head_end: usize) -> Phrase {
    let mut connector = None;
    let mut start = head_end;
    let mut items: &[Item] = &[];
    if let Some(line) = body.line() {
        items = &line.items;
        if let Some(clause) = line.clauses.last() {
            let ended = (clause.word.end as usize) < body.start() + body.typed().len();
            if ended {
                connector = Some(clause.connector);
                start = clause.word.end as usize;
                items = &clause.items;
            } else {
                // The connecting word itself is being typed: it may yet become another.
                let before = line.clauses.len().checked_sub(2).and_then(|index| line.clauses.get(index));
                connector = before.map(|clause| clause.connector);
                start = clause.word.start as usize;
                items = &[];
            }
        }
    }
    let mut phrase = Phrase { connector, counted: false, measured: false, by_volume: false, listed: false, start };
    for item in items {
        match item {
            Item::Comma(span) => {
                phrase.start = span.end as usize;
                phrase.counted = false;
                phrase.measured = false;
                phrase.listed = true;
            }
            Item::Number(number) => {
                phrase.listed = false;
                phrase.start = number.span.end as usize;
                phrase.counted = true;
                // `1:20` needs no unit.
                phrase.measured = body.kind == BlockKind::Mix && matches!(number.form, NumberForm::Pair(..));
                phrase.by_volume = phrase.measured;
            }
            _ => phrase.listed = false,
        }
    }
    let rest = body.since(phrase.start);
    phrase.start += rest.len() - rest.trim_start().len();
    if phrase.counted && !rest.starts_with(char::is_whitespace) && !rest.starts_with('%') {
        // Still inside the number.
        phrase.counted = false;
        return phrase;
    }
    if phrase.counted
        && !phrase.measured
        && let Some((after, by_volume)) = units::behind(body.since(phrase.start))
    {
        phrase.measured = true;
        phrase.by_volume = by_volume;
        phrase.start += after;
    }
    phrase
}
