//! Names: what they mean, however they are spelt, and what is offered for a name that means nothing.

use tenter_reference::{Entry, Kind, Reference, fold};

fn id_of(name: &str) -> Option<&'static str> {
    Reference::bundled().find(name).map(Entry::id)
}

#[test]
fn plain_chemical_names_mean_the_anhydrous_substance() {
    for (name, id) in [
        ("sodium carbonate", "soda-ash"),
        ("sodium bicarbonate", "sodium-bicarbonate"),
        ("sodium hydroxide", "sodium-hydroxide"),
        ("trisodium phosphate", "trisodium-phosphate"),
        ("acetic acid", "acetic-acid"),
        ("citric acid", "citric-acid"),
        ("sodium chloride", "sodium-chloride"),
        ("sodium sulfate", "sodium-sulfate"),
        ("urea", "urea"),
        ("copper sulfate", "copper-sulfate"),
        ("potassium aluminium sulfate", "potassium-aluminium-sulfate"),
    ] {
        assert_eq!(id_of(name), Some(id), "{name}");
        let entry = Reference::bundled().material(id).expect(id);
        assert!(entry.anhydrous.is_none(), "{id} is anhydrous itself");
        assert!(!entry.formula.as_deref().unwrap_or_default().contains("H2O"), "{id}");
    }
}

#[test]
fn hydrates_and_household_names_are_kept_apart() {
    for (name, id) in [
        ("washing soda", "washing-soda"),
        ("soda ash", "soda-ash"),
        ("light soda ash", "soda-ash-light"),
        ("soda ash dense", "soda-ash-dense"),
        ("baking soda", "sodium-bicarbonate"),
        ("bicarb", "sodium-bicarbonate"),
        ("lye", "sodium-hydroxide"),
        ("Glauber's salt", "glaubers-salt"),
        ("table salt", "sodium-chloride"),
        ("salt", "sodium-chloride"),
        ("citric acid monohydrate", "citric-acid-monohydrate"),
        ("alum", "alum"),
        ("cream of tartar", "cream-of-tartar"),
        ("vinegar", "vinegar"),
        ("bleach", "sodium-hypochlorite"),
        ("water", "water"),
        ("ice", "ice"),
    ] {
        assert_eq!(id_of(name), Some(id), "{name}");
    }
    let washing_soda = Reference::bundled().material("washing-soda").expect("known");
    let counts_as = washing_soda.anhydrous.as_ref().expect("a hydrate");
    assert_eq!(counts_as.id, "soda-ash");
    // 105.99 / 286.14 from the IUPAC weights.
    assert!((counts_as.fraction - 0.370_4).abs() < 1e-4, "{}", counts_as.fraction);
}

#[test]
fn one_name_in_many_spellings() {
    for (name, id) in [
        ("Sodium Sulphate", "sodium-sulfate"),
        ("sodium  sulfate", "sodium-sulfate"),
        ("SODIUM-SULFATE", "sodium-sulfate"),
        ("Aluminum Acetate", "aluminium-acetate"),
        ("Glauber’s salt", "glaubers-salt"),
        ("glaubers salt", "glaubers-salt"),
        ("the soda ash", "soda-ash"),
        ("some urea", "urea"),
        ("soda ash powder", "soda-ash"),
        ("urea prills", "urea"),
        ("alum (potassium alum)", ""),
        ("Na₂CO₃", "soda-ash"),
        ("copper (II) sulphate pentahydrate", "copper-sulfate-pentahydrate"),
        ("sodium metabisulphite", "sodium-metabisulfite"),
        ("C.I. Reactive Blue 4", "reactive-blue-4"),
        ("CI Reactive Blue 4", "reactive-blue-4"),
        ("reactive blue 4", "reactive-blue-4"),
        ("mercerized cotton", "mercerised-cotton"),
        ("cotton, mercerised", "mercerised-cotton"),
        ("vinyl sulphone", "reactive-vinyl-sulfone"),
        ("water powder", ""),
        ("vinegar powder", ""),
        ("baking powder", ""),
        ("soda", ""),
        ("", ""),
        ("the", ""),
    ] {
        assert_eq!(id_of(name).unwrap_or_default(), id, "{name:?} folds to {:?}", fold(name));
    }
}

#[test]
fn every_name_finds_its_entry_whole_and_word_by_word() {
    let reference = Reference::bundled();
    for entry in reference.entries() {
        let names = std::iter::once(entry.name()).chain(entry.synonyms().iter().map(String::as_str));
        for name in names {
            assert_eq!(reference.find(name).map(Entry::id), Some(entry.id()), "{name}");
            let mut words: Vec<&str> = name.split_whitespace().collect();
            let length = words.len();
            words.extend(["zzz", "at", "40"]);
            let found = reference.longest_match(&words).map(|(entry, count)| (entry.id(), count));
            assert_eq!(found, Some((entry.id(), length)), "{name}");
        }
        assert_eq!(reference.by_id(entry.id()), Some(entry));
    }
}

#[test]
fn the_longest_whole_name_at_the_front() {
    let reference = Reference::bundled();
    let at_front = |text: &str| {
        let words: Vec<&str> = text.split_whitespace().collect();
        reference.longest_match(&words).map(|(entry, count)| (entry.id(), count))
    };
    assert_eq!(at_front("citric acid monohydrate"), Some(("citric-acid-monohydrate", 3)));
    assert_eq!(at_front("citric acid crystals covered"), Some(("citric-acid", 3)));
    assert_eq!(at_front("Reactive Blue 4 2 times"), Some(("reactive-blue-4", 3)));
    assert_eq!(at_front("C. I. Reactive Blue 4"), Some(("reactive-blue-4", 5)));
    assert_eq!(at_front("soda ash soak"), Some(("soda-ash", 2)));
    assert_eq!(at_front("the soda ash powder"), Some(("soda-ash", 4)));
    assert_eq!(at_front("- soda - ash"), Some(("soda-ash", 4)));
    assert_eq!(at_front("table cloth"), None);
    assert_eq!(at_front("sodium m-nitrobenzenesulphonate in"), Some(("resist-salt", 2)));
    assert_eq!(at_front("marigold soda ash"), None);
    assert_eq!(at_front(""), None);
}

#[test]
fn misspellings_are_answered_and_other_words_are_not() {
    let reference = Reference::bundled();
    let first = |name: &str, kind: Kind| reference.nearest(name, Some(kind)).first().copied().unwrap_or_default();
    assert_eq!(first("sodda ash", Kind::Material), "soda ash");
    assert_eq!(first("ash soda", Kind::Material), "soda ash");
    assert_eq!(first("sodium carbanate", Kind::Material), "sodium carbonate");
    assert_eq!(first("glober's salt", Kind::Material), "Glauber's salt");
    assert_eq!(first("ureea", Kind::Material), "urea");
    assert_eq!(first("vineger", Kind::Material), "vinegar");
    assert_eq!(first("cotten", Kind::Fibre), "cotton");
    assert_eq!(first("polyster", Kind::Fibre), "polyester");
    assert_eq!(first("reactive dichlorotriazene", Kind::Class), "reactive dichlorotriazine");
    assert_eq!(first("reactive bleu 4", Kind::Dye), "C.I. Reactive Blue 4");
    assert_eq!(reference.nearest("soda", Some(Kind::Material)), ["soda ash", "washing soda", "baking soda"]);
    assert_eq!(reference.nearest("softener", Some(Kind::Material)), ["fabric softener", "water softener"]);
    // Words that mean two things, one of them harmful, mean nothing by themselves.
    for ambiguous in ["hypo", "lime", "softener", "soda", "chrome", "vitriol"] {
        assert_eq!(id_of(ambiguous), None, "{ambiguous}");
    }
    for stranger in ["night", "lagoon", "hedgehog", "quokka blend", "ab", "", "reactive blue 4711"] {
        assert_eq!(reference.nearest(stranger, None), Vec::<&str>::new(), "{stranger}");
    }
}

#[test]
fn hostile_names_do_no_harm() {
    let reference = Reference::bundled();
    let long = "sulph".repeat(100_000);
    assert!(reference.find(&long).is_none());
    assert!(reference.nearest(&long, None).is_empty());
    assert!(reference.longest_match(&[long.as_str(); 4]).is_none());
    for odd in
        ["\u{0}", "\u{202E}urea", "ﬁbre", "İ", "e\u{301}\u{301}\u{301}", "\u{1F9EA}", "'''", "…", "sulphsulphsulph"]
    {
        let _ = reference.find(odd);
        let _ = reference.nearest(odd, None);
    }
    // 96 bytes is the longest key; one that shrinks or grows at the edge must not go wrong.
    for length in 85..100 {
        let _ = fold(&format!("{}aluminum", "x".repeat(length)));
        let _ = fold(&format!("{} aluminum", "x".repeat(length)));
        let _ = fold(&format!("{} sulphur fiber", "é".repeat(length / 2)));
    }
}
