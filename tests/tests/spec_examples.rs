//! The examples of the specification say what they say they say.

mod support;

use std::collections::BTreeMap;

use support::{Folder, Read, brief, folder, read};
use tenter_quantity::show;
use tenter_quantity::standard::{GRAM, MILLILITRE};
use tenter_resolve::Recipe;

/// An example: the recipe, what is said of it, and the line of the chapter it stands on.
struct Example {
    recipe: String,
    says: Vec<String>,
    line: usize,
}

fn examples(chapter: &str) -> Vec<Example> {
    let mut found: Vec<Example> = Vec::new();
    let mut open: Option<(String, usize, Vec<String>)> = None;
    for (index, line) in chapter.lines().enumerate() {
        match (&mut open, line.strip_prefix("```")) {
            (None, Some(kind)) => open = Some((kind.trim().to_owned(), index + 1, Vec::new())),
            (Some((kind, start, lines)), Some(_)) => {
                match kind.as_str() {
                    "dye" => found.push(Example { recipe: lines.join("\n") + "\n", says: Vec::new(), line: *start }),
                    "says" => {
                        let last = found.last_mut().expect("a recipe before what is said of it");
                        last.says.append(lines);
                        last.says.push(String::new());
                    }
                    _ => {}
                }
                open = None;
            }
            (Some((_, _, lines)), None) => lines.push(line.to_owned()),
            (None, None) => {}
        }
    }
    found
}

/// What a line of the form `total soda ash = 480 g` claims, as the tool has it.
fn actual(recipe: &Recipe, what: &str, name: &str) -> Option<String> {
    let fold = tenter_syntax::fold_name;
    let totals = &recipe.totals;
    let material = || totals.materials.iter().find(|total| fold(&recipe.material(total.material).name) == fold(name));
    match what {
        "total" if fold(name) == "water" => totals.water.as_ref().map(|water| water.show()),
        "total" => {
            let total = material()?;
            total.mass.as_ref().or(total.volume.as_ref()).map(|amount| amount.show())
        }
        "owg" => material()?.owg.as_ref().map(|share| share.show().trim_end_matches(" owg").to_owned()),
        "mix" => {
            let total = totals.mixes.iter().find(|total| fold(&recipe.mix(total.mix).name.text) == fold(name))?;
            let volume = total.volume.as_ref().map(|volume| show(volume.value, MILLILITRE));
            volume.or_else(|| total.mass.as_ref().map(|mass| show(mass.value, GRAM)))
        }
        "pieces" => {
            let total = totals.goods.iter().find(|total| {
                recipe.goods.get(total.goods.0).is_some_and(|goods| fold(&goods.name.text) == fold(name))
            })?;
            Some(tenter_quantity::show_number(total.pieces.value))
        }
        "cost" => totals.cost.iter().find(|cost| &*cost.currency == name).map(|cost| cost.total.show()),
        _ => None,
    }
}

fn check(example: &Example, read: &Read) -> Vec<String> {
    let mut wrong = Vec::new();
    let mut expected: BTreeMap<(usize, String), usize> = BTreeMap::new();
    let recipes: Vec<&Recipe> = read.checked.results.iter().flat_map(|result| &result.recipes).collect();
    for claim in example.says.iter().map(|line| line.trim()).filter(|line| !line.is_empty()) {
        if let Some(finding) = claim.strip_prefix("finding ") {
            match finding.split_once(' ').and_then(|(line, rule)| Some((line.parse::<usize>().ok()?, rule))) {
                Some((line, rule)) => *expected.entry((line, rule.trim().to_owned())).or_default() += 1,
                None => wrong.push(format!("cannot read `{claim}`")),
            }
            continue;
        }
        let Some((left, value)) = claim.split_once(" = ") else {
            wrong.push(format!("cannot read `{claim}`"));
            continue;
        };
        let (what, name) = left.split_once(' ').unwrap_or((left, ""));
        let shown: Vec<String> = recipes.iter().filter_map(|recipe| actual(recipe, what, name)).collect();
        if !shown.iter().any(|shown| shown == value.trim()) {
            wrong.push(format!("`{claim}`, but it is {shown:?}"));
        }
    }
    for (line, rule, finding) in read.told() {
        match expected.get_mut(&(line, rule.to_owned())) {
            Some(count) if *count > 0 => *count -= 1,
            _ => wrong.push(format!("unexpected {}", brief(line, finding))),
        }
    }
    wrong.extend(
        expected
            .iter()
            .filter(|(_, count)| **count > 0)
            .map(|((line, rule), _)| format!("missing finding {line} {rule}")),
    );
    wrong
}

#[test]
#[allow(clippy::disallowed_methods)]
fn every_example_says_what_stands_beside_it() {
    let spec = folder("../spec");
    let mut chapters: Vec<_> = std::fs::read_dir(&spec)
        .expect("the specification")
        .map(|entry| entry.expect("an entry").path())
        .filter(|path| path.extension().is_some_and(|end| end == "md"))
        // The reference of rules is executed where its pages are.
        .filter(|path| path.file_name().is_some_and(|name| name != "rules.md"))
        .collect();
    chapters.sort();
    let mut wrong = Vec::new();
    let mut count = 0;
    for path in chapters {
        let name = path.file_name().expect("a name").to_string_lossy().into_owned();
        let chapter = std::fs::read_to_string(&path).expect("a chapter");
        for example in examples(&chapter).iter().filter(|example| !example.says.is_empty()) {
            count += 1;
            let read = read(&example.recipe, "example.dye", &Folder(folder("recipes")));
            wrong
                .extend(check(example, &read).into_iter().map(|line| format!("{name}, line {}: {line}", example.line)));
        }
    }
    assert!(count > 20, "only {count} examples");
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}
