//! The tables of verbs, keys and kinds: complete, unambiguous, and every example reads as its row says.

use std::collections::BTreeMap;

use tenter_syntax::{BlockKind, KEYS, KINDS, fold_name, keys_of, parse_block, verb_row, verbs};

#[test]
fn every_spelling_of_a_verb_means_one_verb() {
    let mut seen = BTreeMap::new();
    for verb in verbs() {
        for spelling in std::iter::once(&verb.name).chain(verb.synonyms) {
            assert_eq!(*spelling, fold_name(spelling));
            assert_eq!(seen.insert(*spelling, verb.name), None, "{spelling} stands twice");
        }
    }
}

#[test]
fn every_spelling_of_a_verb_opens_a_line() {
    for verb in verbs() {
        for spelling in std::iter::once(&verb.name).chain(verb.synonyms) {
            for text in [format!("steps\n  {spelling}\n"), format!("steps\n  {spelling} gloves, goggles until clear\n")]
            {
                let block = parse_block(&text);
                let head = block.lines[0].head.as_ref().expect("a head");
                assert_eq!((&*head.word, head.known), (verb.name, true), "{text}");
                assert_eq!(block.slice(head.span), *spelling);
            }
        }
    }
}

#[test]
fn every_spelling_of_a_key_means_one_key_in_its_block() {
    for kind in KINDS {
        let mut seen = BTreeMap::new();
        for key in keys_of(kind.kind) {
            for spelling in std::iter::once(&key.name).chain(key.synonyms) {
                assert_eq!(*spelling, fold_name(spelling));
                assert_eq!(seen.insert(*spelling, key.name), None, "{spelling} stands twice in {}", kind.name);
            }
        }
    }
}

#[test]
fn every_verb_says_what_it_does_and_takes() {
    for verb in verbs() {
        assert!(verb.summary.len() > 5, "{}", verb.name);
        assert!(!verb.takes.is_empty(), "{}", verb.name);
    }
}

#[test]
fn every_clause_example_reads_as_its_clause() {
    for verb in verbs() {
        for taken in verb.takes {
            let block = parse_block(&format!("steps\n  {} {}\n", verb.name, taken.example));
            let line = &block.lines[0];
            assert_eq!(line.head.as_ref().map(|head| &*head.word), Some(verb.name));
            assert_eq!(line.unread, None, "{} {}", verb.name, taken.example);
            if verb.name == "note" {
                continue;
            }
            match taken.connector {
                Some(connector) => {
                    assert_eq!(
                        line.clauses.first().map(|clause| clause.connector),
                        Some(connector),
                        "{} {}",
                        verb.name,
                        taken.example
                    );
                    assert!(line.items.is_empty());
                }
                None => assert!(!line.items.is_empty(), "{} {}", verb.name, taken.example),
            }
        }
    }
}

#[test]
fn every_key_example_reads_as_its_key() {
    for key in KEYS {
        for kind in key.kinds {
            let header = KINDS.iter().find(|row| row.kind == *kind).expect("a kind with a row").name;
            let block = parse_block(&format!("{header} x\n  {}\n", key.example));
            let head = block.lines[0].head.as_ref().expect("a head");
            assert_eq!((&*head.word, head.known), (key.name, true), "{header}: {}", key.example);
            assert_eq!(block.lines[0].unread, None, "{header}: {}", key.example);
        }
    }
}

#[test]
fn a_variant_knows_the_lines_of_every_block() {
    for key in KEYS {
        let block = parse_block(&format!("variant x\n  {}\n", key.example));
        assert!(block.lines[0].head.as_ref().is_some_and(|head| head.known), "{}", key.example);
    }
    assert_eq!(block_head("variant x\n  soak tees\n"), "soak");
}

fn block_head(text: &str) -> String {
    let block = parse_block(text);
    block.lines[0].head.as_ref().map_or_else(String::new, |head| head.word.to_string())
}

#[test]
fn verbs_are_found_by_name() {
    assert!(verb_row("soap off").is_some());
    assert!(verb_row("iron").is_none());
    assert_eq!(keys_of(BlockKind::Unknown).count(), 0);
}
