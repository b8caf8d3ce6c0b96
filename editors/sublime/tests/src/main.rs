//! Reads a recipe with the syntax of the folder above, as Sublime Text's format says: `colours SYNTAX RECIPE`.
//!
//! Each expectation names the front of a line, a word in it and the innermost scope that word must have.

use std::process::ExitCode;

use syntect::parsing::syntax_definition::SyntaxDefinition;
use syntect::parsing::{ParseState, ScopeStack, SyntaxSetBuilder};

const EXPECTED: &[(&str, &str, &str)] = &[
    ("recipe", "recipe", "keyword.control.block.dye"),
    ("recipe", "Jollify", "entity.name.section.dye"),
    ("  about", "about", "keyword.other.key.dye"),
    ("  about", "verb", "string.unquoted.prose.dye"),
    ("  room", "room", "keyword.other.key.dye"),
    ("  room", "22", "constant.numeric.dye"),
    ("  room", "°C", "keyword.other.unit.dye"),
    ("  squirt", "squirt", "entity.name.function.verb.dye"),
    ("  squirt", "70", "constant.numeric.dye"),
    ("  squirt", "mL/piece", "keyword.other.unit.dye"),
    ("  squirt", "from", "keyword.operator.clause.dye"),
    ("  soap off", "soap off", "entity.name.function.verb.dye"),
    ("  soap off", "times", "keyword.other.unit.dye"),
    ("  rinse", "until", "keyword.operator.clause.dye"),
    ("  rinse", "nearly", "string.unquoted.condition.dye"),
    ("  colour", "#1d5fa6", "constant.numeric.colour.dye"),
    ("  presss", "presss", "meta.block.steps.dye"),
    ("  presss", "finding", "comment.line.number-sign.dye"),
    ("  zone", "60", "constant.numeric.dye"),
    ("  zone", "%", "keyword.other.unit.dye"),
    ("  pieces", "pieces", "keyword.other.key.dye"),
    ("steps wash", "wash", "entity.name.section.dye"),
];

fn run() -> Result<usize, Box<dyn std::error::Error>> {
    let mut arguments = std::env::args().skip(1);
    let (Some(syntax), Some(recipe)) = (arguments.next(), arguments.next()) else {
        return Err("colours SYNTAX RECIPE".into());
    };
    let mut builder = SyntaxSetBuilder::new();
    builder.add(SyntaxDefinition::load_from_str(&std::fs::read_to_string(syntax)?, true, None)?);
    let set = builder.build();
    let syntax = set.find_syntax_by_extension("dye").ok_or("no syntax for .dye")?;
    let text = std::fs::read_to_string(recipe)?;
    let mut state = ParseState::new(syntax);
    let mut stack = ScopeStack::new();
    let mut lines = Vec::new();
    for line in text.split_inclusive('\n') {
        let mut inner = vec![String::new(); line.len()];
        let mut at = 0;
        let ops = state.parse_line(line, &set)?;
        for (place, op) in ops.iter().map(|(place, op)| (*place, Some(op))).chain([(line.len(), None)]) {
            let scope = stack.as_slice().last().map(ToString::to_string).unwrap_or_default();
            inner[at..place].fill(scope);
            at = place;
            if let Some(op) = op {
                stack.apply(op)?;
            }
        }
        lines.push((line, inner));
    }
    let mut failed = 0;
    for (start, word, wanted) in EXPECTED {
        let (line, inner) = lines.iter().find(|(line, _)| line.starts_with(start)).ok_or("a line is not there")?;
        let seen = &inner[line.find(word).ok_or("a word is not there")?];
        let holds = seen == wanted;
        failed += usize::from(!holds);
        let mark = if holds { "ok     " } else { "FAILED " };
        let but = if holds { String::new() } else { format!(", not {seen}") };
        println!("  {mark} {word:?} in {:?} is {wanted}{but}", start.trim());
    }
    Ok(failed)
}

fn main() -> ExitCode {
    match run() {
        Ok(0) => ExitCode::SUCCESS,
        Ok(_) => ExitCode::FAILURE,
        Err(error) => {
            eprintln!("{error}");
            ExitCode::from(2)
        }
    }
}
