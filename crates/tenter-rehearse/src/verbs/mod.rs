//! What each verb needs and does: one file a verb, in folders by the kind of work, and the table from verb to function.

mod bathing;
mod heap;
mod laying;
mod making;
mod powdering;
mod record;
mod shaping;
mod soaking;
mod waiting;
mod warming;
mod washing;
mod wringing;

use crate::bench::{Bench, Pass};

/// What a verb does.
pub(crate) type Action = fn(&mut Bench<'_>, &Pass<'_>);

/// The function of a verb; `None` for a verb nobody knows.
pub(crate) fn of(verb: &str) -> Option<Action> {
    Some(match verb {
        "heap" => heap::perform,
        "soak" => soaking::soak::perform,
        "wet out" => soaking::wet_out::perform,
        "neutralise" => soaking::neutralise::perform,
        "soften" => soaking::soften::perform,
        "strip" => soaking::strip::perform,
        "bleach" => soaking::bleach::perform,
        "dip" => soaking::dip::perform,
        "scour" => washing::scour::perform,
        "wash" => washing::wash::perform,
        "rinse" => washing::rinse::perform,
        "soap off" => washing::soap_off::perform,
        "squeeze" => wringing::squeeze::perform,
        "spin" => wringing::spin::perform,
        "drip" => wringing::drip::perform,
        "drain" => wringing::drain::perform,
        "dry" => wringing::dry::perform,
        "immerse" => bathing::immerse::perform,
        "lower" => bathing::lower::perform,
        "lift" => bathing::lift::perform,
        "dye" => bathing::dye::perform,
        "add" => bathing::add::perform,
        "top up" => bathing::top_up::perform,
        "stir" => bathing::stir::perform,
        "store" => bathing::store::perform,
        "dispose" => bathing::dispose::perform,
        "raise" => warming::raise::perform,
        "heat" => warming::heat::perform,
        "cool" => warming::cool::perform,
        "hold" => warming::hold::perform,
        "boil" => warming::boil::perform,
        "simmer" => warming::simmer::perform,
        "steam" => warming::steam::perform,
        "microwave" => warming::microwave::perform,
        "press" => warming::press::perform,
        "make" => making::make::perform,
        "weigh" => making::weigh::perform,
        "dissolve" => making::dissolve::perform,
        "paste" => making::paste::perform,
        "sprinkle" => powdering::sprinkle::perform,
        "sift" => powdering::sift::perform,
        "squirt" => laying::squirt::perform,
        "spray" => laying::spray::perform,
        "pour" => laying::pour::perform,
        "brush" => laying::brush::perform,
        "print" => laying::print::perform,
        "irrigate" => laying::irrigate::perform,
        "fold" => shaping::fold::perform,
        "scrunch" => shaping::scrunch::perform,
        "bind" => shaping::bind::perform,
        "untie" => shaping::untie::perform,
        "cover" => shaping::cover::perform,
        "uncover" => shaping::uncover::perform,
        "turn" => shaping::turn::perform,
        "mark" => shaping::mark::perform,
        "batch" => waiting::batch::perform,
        "rest" => waiting::rest::perform,
        "wait" => waiting::wait::perform,
        "wear" => record::wear::perform,
        "check" => record::check::perform,
        "repeat" => record::repeat::perform,
        "accept" => record::accept::perform,
        "note" => record::note::perform,
        _ => return None,
    })
}

/// Nothing but time goes by.
fn time_only(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    let time = bench.duration(pass);
    bench.pass_time(time, None);
}

#[cfg(test)]
mod tests {
    use std::path::Path;

    /// Every verb of the notation has a function, and a file of its own whose head says what it needs and does.
    #[test]
    #[allow(clippy::disallowed_methods)]
    fn every_verb_of_the_notation_has_its_file() {
        let here = Path::new(env!("CARGO_MANIFEST_DIR")).join("src/verbs");
        let folders: Vec<_> = std::fs::read_dir(&here)
            .unwrap()
            .map(|entry| entry.unwrap().path())
            .filter(|path| path.is_dir())
            .chain([here.clone()])
            .collect();
        for verb in tenter_syntax::verbs() {
            let name = verb.name;
            assert!(super::of(name).is_some(), "`{name}` has no function");
            let file = format!("{}.rs", name.replace(' ', "_"));
            let texts: Vec<String> =
                folders.iter().filter_map(|folder| std::fs::read_to_string(folder.join(&file)).ok()).collect();
            assert_eq!(texts.len(), 1, "`{name}` has no file {file} of its own");
            let head: String = texts[0].lines().take_while(|line| line.starts_with("//!")).collect();
            for word in [name, "Needs ", "Does: "] {
                assert!(head.contains(word), "the head of {file} does not say `{word}`");
            }
        }
        assert!(super::of("knit").is_none());
    }
}
