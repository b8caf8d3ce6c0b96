//! The bundled data loads, and a file that is wrong is refused with its name and entry.

use tenter_reference::{Files, LoadError, Reference};

#[test]
fn bundled_data_loads() {
    if let Err(error) = Reference::load(&Files::bundled()) {
        panic!("{error}");
    }
    assert!(Reference::bundled().materials().count() >= 30);
}

/// Loads the bundled files with more text at the end of the materials.
fn with_material(text: &str) -> LoadError {
    let materials = format!("{}\n{text}", Files::bundled().materials);
    let files = Files { materials: &materials, ..Files::bundled() };
    Reference::load(&files).expect_err(text)
}

#[test]
fn errors_name_the_file_and_the_entry() {
    for (text, entry, says) in [
        ("[[material]]\nid = \"x\"\nname = \"x\"\nrole = \"alkali\"", "x", "form"),
        ("[[material]]\nid = \"x\"\nname = \"x\"\nrole = \"magic\"\nform = \"powder\"", "x", "magic"),
        ("[[material]]\nid = \"x\"\nname = \"x\"\nrole = \"alkali\"\nform = \"powder\"\ncolour = 1", "x", "colour"),
        (
            "[[material]]\nid = \"x\"\nname = \"x\"\nrole = \"alkali\"\nform = \"powder\"\n\
             density_kg_per_m3 = { value = 1.0, source = \"hearsay\" }",
            "x",
            "hearsay",
        ),
        (
            "[[material]]\nid = \"x\"\nname = \"x\"\nrole = \"alkali\"\nform = \"powder\"\n\
             density_kg_per_m3 = { low = 9.0, high = 1.0, source = \"memory\" }",
            "x",
            "out of order",
        ),
        (
            "[[material]]\nid = \"x\"\nname = \"x\"\nrole = \"alkali\"\nform = \"powder\"\nhazard_groups = [\"gremlins\"]",
            "x",
            "gremlins",
        ),
        (
            "[[material]]\nid = \"x\"\nname = \"x\"\nrole = \"alkali\"\nform = \"powder\"\n\
             hazards = [{ code = \"H999\", source = \"memory\" }]",
            "x",
            "H999",
        ),
        (
            "[[material]]\nid = \"x\"\nname = \"x\"\nrole = \"alkali\"\nform = \"powder\"\nformula = \"na\"",
            "x",
            "formula",
        ),
        (
            "[[material]]\nid = \"x\"\nname = \"x\"\nrole = \"alkali\"\nform = \"powder\"\nanhydrous = \"y\"",
            "x",
            "\"y\"",
        ),
        (
            "[[material]]\nid = \"x\"\nname = \"Baking  Soda\"\nrole = \"alkali\"\nform = \"powder\"",
            "",
            "sodium-bicarbonate",
        ),
        ("[[material]]\nid = \"urea\"\nname = \"x\"\nrole = \"alkali\"\nform = \"powder\"", "urea", "the id"),
        ("[[material]]\nid = \"x\"\nname = \"…\"\nrole = \"alkali\"\nform = \"powder\"", "x", "empty"),
        ("[[material]]\nname = \"x\"", "number", "id"),
        ("[[mineral]]\nid = \"x\"", "mineral", "not known"),
        ("[[material]\n", "", "expected"),
    ] {
        let error = with_material(text);
        assert_eq!(error.file, "materials.toml", "{text}");
        let shown = error.to_string();
        assert!(shown.contains(says) && shown.contains(entry), "{text}\ngave {shown}");
    }
}

#[test]
fn a_clash_cites_both_sides() {
    let error =
        with_material("[[material]]\nid = \"x\"\nname = \"Baking  Soda\"\nrole = \"alkali\"\nform = \"powder\"");
    let shown = error.to_string();
    for part in ["Baking  Soda", "\"baking soda\"", "sodium-bicarbonate", "x"] {
        assert!(shown.contains(part), "{shown}");
    }
}

#[test]
fn names_must_not_clash_between_files_either() {
    let fibres = Files::bundled().fibres.replace("name = \"jute\"", "name = \"urea\"");
    let error = Reference::load(&Files { fibres: &fibres, ..Files::bundled() }).expect_err("a clash");
    assert!(error.to_string().contains("urea"), "{error}");
}

#[test]
fn a_fibre_says_how_every_family_takes() {
    let fibres = Files::bundled().fibres.replacen("vat = ", "# vat = ", 1);
    let error = Reference::load(&Files { fibres: &fibres, ..Files::bundled() }).expect_err("a gap");
    assert_eq!(error.file, "fibres.toml");
    assert!(error.to_string().contains("vat"), "{error}");
}

/// What the program reads is what stands in the files, to the last digit.
#[test]
fn the_digested_data_is_that_of_the_files() {
    let read = Reference::load(&Files::bundled()).expect("the files load");
    assert_eq!(format!("{:?}", Reference::bundled()), format!("{read:?}"));
}
