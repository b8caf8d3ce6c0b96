//! What the entries say: how many there are, fibres and their allowances, classes, hazards and pairs.

use tenter_reference::{DyeFamily, FibreFamily, Form, GroupKind, Reference, Role, Severity, SourceKind, Uptake};

#[test]
fn there_is_enough_of_everything() {
    let reference = Reference::bundled();
    assert!(reference.fibres().count() >= 14);
    assert!(reference.materials().count() >= 30);
    assert!(reference.dyes().filter(|dye| dye.id.starts_with("reactive-")).count() >= 20);
    assert!(reference.classes().count() >= 16);
    for role in [
        Role::Water,
        Role::Ice,
        Role::Alkali,
        Role::Acid,
        Role::Salt,
        Role::Humectant,
        Role::Thickener,
        Role::Sequestrant,
        Role::WettingAgent,
        Role::Detergent,
        Role::Softener,
        Role::Reducer,
        Role::Oxidiser,
        Role::Mordant,
        Role::Buffer,
    ] {
        assert!(reference.materials().any(|material| material.role == role), "{role:?}");
    }
}

/// tests/data/eu_agreed_allowances.csv, taken over by Regulation (EU) No 1007/2011, Annex IX.
#[test]
fn moisture_allowances_are_the_agreed_ones() {
    let reference = Reference::bundled();
    let table = include_str!("data/eu_agreed_allowances.csv");
    for line in table.lines().skip(1) {
        let [_, _, percent, id] = line.split(',').collect::<Vec<_>>()[..] else { panic!("{line}") };
        let ours = reference.fibre(id).expect(line).moisture_allowance.eu_percent.expect(line);
        assert_eq!(ours.best, percent.parse::<f64>().expect(line), "{id}");
        assert_eq!(ours.source.kind, SourceKind::Published, "{id}: {}", ours.source.id);
    }
    for fibre in reference.fibres() {
        let row = table.lines().any(|line| line.ends_with(&format!(",{}", fibre.id)));
        assert!(row || fibre.moisture_allowance.eu_percent.is_none(), "{} is not checked", fibre.id);
    }
}

/// Figures read in the worked example of Annex VIII of the Regulation itself: cotton 8.5, carded wool 17.0, polyamide 6.25.
#[test]
fn allowances_of_the_worked_example() {
    for (id, percent) in [("cotton", 8.5), ("wool", 17.0), ("nylon", 6.25)] {
        let fibre = Reference::bundled().fibre(id).expect(id);
        let allowance = fibre.moisture_allowance.eu_percent.expect(id);
        assert_eq!((allowance.best, allowance.source.id.as_str()), (percent, "eu-1007-2011"));
    }
}

#[test]
fn reactive_dyes_dye_cellulose_and_leave_synthetics_pale() {
    for fibre in Reference::bundled().fibres() {
        let takes = |family| fibre.takes(family).expect("every family is there").uptake;
        match fibre.family {
            FibreFamily::Cellulose => {
                assert_eq!(takes(DyeFamily::Reactive), Uptake::Yes, "{}", fibre.id);
                assert_eq!(takes(DyeFamily::Acid), Uptake::No, "{}", fibre.id);
            }
            FibreFamily::Protein => assert_eq!(takes(DyeFamily::Acid), Uptake::Yes, "{}", fibre.id),
            FibreFamily::Synthetic | FibreFamily::CelluloseEster => {
                assert_ne!(takes(DyeFamily::Reactive), Uptake::Yes, "{}", fibre.id);
            }
        }
        for (family, dyeability) in &fibre.dyeability {
            assert!(
                dyeability.uptake != Uptake::Weak || dyeability.note.is_some(),
                "{}: weak for {} wants its condition",
                fibre.id,
                family.words()
            );
        }
    }
}

#[test]
fn classes_are_sensible() {
    let reference = Reference::bundled();
    for class in reference.classes() {
        assert_eq!(
            class.needs.value.alkali,
            matches!(class.family, DyeFamily::Reactive | DyeFamily::Vat | DyeFamily::Indigo),
            "{}",
            class.id
        );
        let window = class.fixation_celsius.expect(&class.id);
        if let Some(batch) = class.reference_batch {
            assert!(batch.at_celsius <= window.high, "{}", class.id);
            let room = class.room_temperature.as_ref().is_some_and(|stated| stated.value);
            let cold_batch = room && (15.0..=25.0).contains(&batch.at_celsius);
            assert!(batch.at_celsius >= window.low || cold_batch, "{}", class.id);
        }
        if let Some(share) = class.fixation_yield {
            assert!(share.low > 0.0 && share.high <= 1.0, "{}", class.id);
        }
        assert!(
            reference.fibres().any(|fibre| fibre.takes(class.family).is_some_and(|d| d.uptake == Uptake::Yes)),
            "{}",
            class.id
        );
    }
    for family in DyeFamily::ALL {
        assert!(reference.classes_of(family).next().is_some(), "{}", family.words());
    }
}

/// No kinetic constant has been published for dichlorotriazine dyes, so the batch time must say that it is usage only.
#[test]
fn batch_times_claim_no_more_than_usage() {
    for class in Reference::bundled().classes() {
        if let Some(batch) = class.reference_batch {
            assert_eq!(batch.hours.source.kind, SourceKind::CommonPractice, "{}", class.id);
            assert!(batch.hours.high >= 1.4 * batch.hours.low, "{}: too sure of itself", class.id);
        }
    }
}

#[test]
fn dye_powders_are_a_wide_guess_by_the_spoon() {
    for dye in Reference::bundled().dyes() {
        assert_eq!((dye.density_kg_per_m3.low, dye.density_kg_per_m3.high), (300.0, 900.0), "{}", dye.id);
        assert_eq!(dye.density_kg_per_m3.source.kind, SourceKind::FromMemory);
        assert!(dye.hazards.iter().any(|claim| claim.code == "H334"), "{}", dye.id);
        assert!(!dye.cautions.is_empty());
    }
}

#[test]
fn hazards_are_worded_and_dangerous_things_carry_cautions() {
    let reference = Reference::bundled();
    for material in reference.materials() {
        for claim in &material.hazards {
            assert!(reference.hazard(&claim.code).is_some_and(|statement| !statement.text.is_empty()));
            if let (Some(from), Some(below)) = (claim.at_least_percent, claim.below_percent) {
                assert!(from < below, "{}: {}", material.id, claim.code);
            }
        }
        let heavy = ["H314", "H318", "H330", "H334", "H350", "H251", "H252"];
        if material.hazards.iter().any(|claim| heavy.contains(&claim.code.as_str())) {
            let named = material.id == "vinegar" || !material.cautions.is_empty();
            assert!(named, "{} wants a caution", material.id);
        }
        assert!(!material.dust || material.form.is_dry(), "{}: dust from a liquid", material.id);
        for sentence in &material.cautions {
            assert!(sentence.ends_with('.'), "{}: {sentence:?}", material.id);
            assert!(!sentence.to_lowercase().contains("safe"), "{}: promise nothing: {sentence:?}", material.id);
        }
    }
    for statement in reference.hazards() {
        let used = reference.materials().any(|m| m.hazards.iter().any(|claim| claim.code == statement.code))
            || reference.dyes().any(|d| d.hazards.iter().any(|claim| claim.code == statement.code));
        assert!(used, "{} is used by nothing", statement.code);
    }
}

#[test]
fn pairs_that_must_never_meet_are_found_both_ways() {
    let reference = Reference::bundled();
    let worst = |a: &str, b: &str| {
        let groups = |id: &str| reference.material(id).map(|m| m.hazard_groups.as_slice()).unwrap_or_default();
        let there = reference.never_mix_between(groups(a), groups(b)).map(|pair| pair.severity).max();
        let back = reference.never_mix_between(groups(b), groups(a)).map(|pair| pair.severity).max();
        assert_eq!(there, back, "{a} and {b}");
        there
    };
    let danger = Some(Severity::Danger);
    assert_eq!(worst("sodium-hypochlorite", "vinegar"), danger);
    assert_eq!(worst("sodium-hypochlorite", "citric-acid"), danger);
    assert_eq!(worst("sodium-hypochlorite", "alum"), danger);
    assert_eq!(worst("sodium-hypochlorite", "iron-sulfate-heptahydrate"), danger);
    assert_eq!(worst("sodium-hypochlorite", "ammonia"), danger);
    assert_eq!(worst("sodium-hypochlorite", "urea"), danger);
    assert_eq!(worst("sodium-dithionite", "acetic-acid"), danger);
    assert_eq!(worst("sodium-hypochlorite", "sodium-thiosulfate-pentahydrate"), Some(Severity::Warning));
    assert_eq!(worst("soda-ash", "vinegar"), Some(Severity::Note));
    // What every evening does must raise nothing.
    for (a, b) in [
        ("soda-ash", "urea"),
        ("soda-ash", "sodium-chloride"),
        ("soda-ash", "textile-detergent"),
        ("sodium-bicarbonate", "sodium-alginate"),
        ("sodium-dithionite", "sodium-hydroxide"),
        ("sodium-dithionite", "soda-ash"),
        ("alum", "cream-of-tartar"),
        ("water", "soda-ash"),
        ("water", "sodium-hydroxide"),
        ("water", "sodium-dithionite"),
        ("sodium-hypochlorite", "water"),
        ("fabric-softener", "water"),
    ] {
        assert_eq!(worst(a, b), None, "{a} and {b}");
    }
}

#[test]
fn vessels_belong_to_groups_by_their_stuff() {
    let reference = Reference::bundled();
    let groups = |stuff: &str| reference.vessel_groups(stuff).map(|group| group.id.as_str()).collect::<Vec<_>>();
    assert_eq!(groups("Aluminum"), ["aluminium-vessel"]);
    assert_eq!(groups("cast-iron"), ["metal-vessel"]);
    assert_eq!(groups("stainless steel"), Vec::<&str>::new());
    assert_eq!(groups("plastic"), Vec::<&str>::new());
    assert_eq!(groups(""), Vec::<&str>::new());
    for group in reference.groups() {
        assert_eq!(group.kind == GroupKind::Vessel, !group.words.is_empty(), "{}", group.id);
    }
}

#[test]
fn groups_are_used() {
    let reference = Reference::bundled();
    for group in reference.groups() {
        let paired = reference.never_mix().any(|pair| pair.a == group.id || pair.b == group.id);
        assert!(paired, "{} is in no pair", group.id);
        if group.kind == GroupKind::Material && group.id != "reactive-dye-powder" {
            let held = reference.materials().any(|m| m.hazard_groups.contains(&group.id));
            assert!(held, "{} has no member", group.id);
        }
    }
    for pair in reference.never_mix() {
        assert!(!pair.places.is_empty() && !pair.instead.is_empty(), "{} and {}", pair.a, pair.b);
    }
    for material in reference.materials().filter(|m| m.role == Role::Acid) {
        let grouped = material.hazard_groups.iter().any(|group| group == "acid");
        assert!(grouped, "{} must not reach bleach unseen", material.id);
    }
    let dusty = reference.materials().filter(|m| m.dust && m.form != Form::Flakes).count();
    assert!(dusty >= 15, "only {dusty}");
}
