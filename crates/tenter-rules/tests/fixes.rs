//! What a rule offers to change can be changed: a safe fix settles its finding, and every edit fits the text.

use std::collections::BTreeMap;

use tenter_resolve::recipe::{Ingredient, Substance};
use tenter_resolve::{NoLibrary, Recipe};
use tenter_rules::{Checked, Edit, Fix, Page, RULES, Scale, Told, check_document};
use tenter_syntax::Document;

fn checked(text: &str) -> (Document, Checked) {
    let document = Document::parse(text);
    let checked = check_document(&document, "page.dye", &NoLibrary, Scale::AsWritten);
    (document, checked)
}

/// The text with the edits of a fix made, from the last to the first.
fn fixed(text: &str, document: &Document, checked: &Checked, told: &Told, fix: &Fix) -> String {
    let mut places: Vec<(usize, usize, &Edit)> = fix
        .edits
        .iter()
        .map(|edit| {
            let entry = &checked.sheets[told.sheet].blocks[edit.place.block as usize];
            assert!(entry.file.is_none(), "an edit in another file");
            let start = document.blocks[entry.position].start;
            (start + edit.place.start as usize, start + edit.place.end as usize, edit)
        })
        .collect();
    places.sort_by_key(|(start, _, _)| std::cmp::Reverse(*start));
    let mut changed = text.to_owned();
    let mut before = usize::MAX;
    for (start, end, edit) in places {
        assert!(start <= end && end <= before, "{}: edits overlap", told.finding.rule);
        changed.replace_range(start..end, &edit.new_text);
        before = start;
    }
    changed
}

#[test]
fn a_fix_settles_its_finding_and_brings_no_unreadable_text() {
    let (mut safe, mut offered) = (0, 0);
    for rule in RULES {
        let text = Page::read(rule.page).example("Bad").expect("a bad recipe");
        let (document, before) = checked(text);
        for told in before.findings.iter().filter(|told| told.finding.rule == rule.name) {
            for fix in &told.finding.fixes {
                let text = fixed(text, &document, &before, told, fix);
                let (_, after) = checked(&text);
                let same = after.findings.iter().filter(|later| later.finding.rule == rule.name).count();
                alike(rule.name, told, fix, &before, &after);
                offered += 1;
                let had = before.findings.iter().filter(|told| told.finding.rule == rule.name).count();
                assert!(same < had, "{}: `{}` does not settle it\n{text}", rule.name, fix.title);
                let rest: Vec<&str> = after.findings.iter().map(|later| later.finding.rule).collect();
                if fix.safe {
                    safe += 1;
                    assert!(
                        same < before.findings.iter().filter(|t| t.finding.rule == rule.name).count(),
                        "{}: {rest:?}\n{text}",
                        rule.name
                    );
                    assert!(
                        rest.iter().all(|name| before.findings.iter().any(|t| t.finding.rule == *name)),
                        "{}: {rest:?}",
                        rule.name
                    );
                }
                assert!(
                    !rest.contains(&"unreadable") || rule.name == "unreadable",
                    "{}: {}\n{text}",
                    rule.name,
                    fix.title
                );
            }
        }
    }
    assert!(safe >= 6, "only {safe} safe fixes seen");
    assert!(offered >= 20, "only {offered} fixes seen");
}

/// What a recipe says line by line: the words of the line, and what they are read as.
fn read(checked: &Checked) -> BTreeMap<String, Vec<String>> {
    let mut found: BTreeMap<String, Vec<String>> = BTreeMap::new();
    for (sheet, result) in checked.sheets.iter().zip(&checked.results) {
        let Some(recipe) = result.recipes.first() else { continue };
        let mut tell = |place: tenter_rules::Place, what: String| {
            let mut lines = sheet.blocks[place.block as usize].block.lines.iter().map(|line| line.span);
            let line = lines.rfind(|span| span.start <= place.start && place.start <= span.end);
            let words = line.map_or_else(
                // The header of a block.
                || what.split(' ').next().unwrap_or("").to_owned(),
                |span| text_of(sheet, place.block, span.start, span.end),
            );
            found.entry(words).or_default().push(what);
        };
        for goods in &recipe.goods {
            tell(
                goods.name.place,
                format!("{} {:?} {:?}", goods.name.text, worth(&Some(goods.pieces.clone())), worth(&goods.piece_mass)),
            );
        }
        for vessel in &recipe.vessels {
            tell(vessel.name.place, format!("{} {:?}", vessel.name.text, worth(&vessel.holds)));
        }
        for mix in &recipe.mixes {
            mix.ingredients.iter().for_each(|each| tell(each.place, ingredient(recipe, each)));
        }
        for (_, step) in recipe.steps() {
            let amounts: Vec<String> =
                step.applied.iter().chain(&step.with).map(|each| ingredient(recipe, each)).collect();
            tell(
                step.place,
                format!(
                    "{:?} {amounts:?} {:?} {:?} {:?}",
                    step.verb.map(|verb| verb.name),
                    worth(&step.duration),
                    worth(&step.temperature),
                    worth(&step.pickup)
                ),
            );
        }
    }
    found
}

fn text_of(sheet: &tenter_resolve::Sheet, block: u32, start: u32, end: u32) -> String {
    sheet.text(tenter_rules::Place { block, start, end }).to_owned()
}

fn worth(figure: &Option<tenter_quantity::Figure>) -> Option<(f64, f64, f64)> {
    figure.as_ref().map(|figure| (figure.value.low, figure.value.best, figure.value.high))
}

/// A material or mix by name, and its amount: as written, and in kilograms where it stands for itself.
fn ingredient(recipe: &Recipe, each: &Ingredient) -> String {
    let name = match each.what {
        Substance::Material(id) => &*recipe.material(id).name,
        Substance::Mix(id) => &*recipe.mix(id).name.text,
    };
    let amount = each.amount.as_ref().map(|amount| {
        let itself = amount.dimension() == tenter_quantity::Dimension::Mass;
        (amount.written.value, amount.dimension(), itself.then(|| worth(&amount.mass)))
    });
    format!("{name} {amount:?} {:?}", worth(&each.temperature))
}

/// Every line a fix leaves alone is read after it as it was before.
fn alike(rule: &str, told: &Told, fix: &Fix, before: &Checked, after: &Checked) {
    let sheet = &before.sheets[told.sheet];
    let touched: Vec<String> = fix
        .edits
        .iter()
        .flat_map(|edit| {
            let block = &sheet.blocks[edit.place.block as usize].block;
            let lines = block.lines.iter().map(|line| line.span);
            let met = lines.filter(|span| span.start <= edit.place.end && edit.place.start <= span.end);
            let words: Vec<String> = met.map(|span| text_of(sheet, edit.place.block, span.start, span.end)).collect();
            let header = block.name.end.max(block.keyword.end);
            // The line of a header stands for all it says of the block: its goods, its vessel.
            let name = text_of(sheet, edit.place.block, block.name.start, block.name.end);
            words
                .into_iter()
                .chain(Some(name.split(' ').next().unwrap_or("").to_owned()).filter(|_| edit.place.end >= header))
        })
        .collect();
    let earlier = read(before);
    let later = read(after);
    for (words, meaning) in &earlier {
        if touched.iter().any(|line| line == words) || words.is_empty() {
            continue;
        }
        assert_eq!(Some(meaning), later.get(words), "{rule}: `{}` changes the meaning of `{words}`", fix.title);
    }
}
