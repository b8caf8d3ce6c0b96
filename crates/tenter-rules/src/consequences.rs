//! One slip, one finding: what only follows from another finding is not told beside it.
//!
//! Rules look at the recipe one by one and cannot know of each other; which of them speak of the same slip is said here.

use tenter_quantity::Place;

use crate::finding::Finding;

/// A rule, and those whose findings about the same dye or the same bath follow from its own.
const FOLLOW: &[(&str, &[&str])] = &[
    (
        "class-cannot-dye-fibre",
        &["acid-dye-without-acid", "no-alkali", "immersion-without-salt", "too-cold-for-class", "too-few-soapings"],
    ),
    ("bicarbonate-without-heat", &["too-cold-for-class", "dried-before-wash-off"]),
    ("far-out-number", &["odd-temperature-scale"]),
    ("acid-dye-too-cold", &["step-without-effect"]),
    ("mix-overdrawn", &["too-little-alkali", "too-little-dye", "far-too-much-dye"]),
    ("far-too-much-dye", &["too-little-alkali"]),
    ("more-than-dissolves", &["too-little-alkali"]),
    ("acid-in-alkali-step", &["too-little-alkali", "batch-too-short"]),
    ("too-cold-for-class", &["batch-too-short", "too-short-at-heat"]),
    ("bath-cannot-cover", &["damp-goods-dilute-soak", "soak-bath-spent"]),
    ("soak-too-short", &["too-little-alkali"]),
    ("damp-goods-dilute-soak", &["too-little-alkali"]),
    ("soak-bath-spent", &["too-little-alkali"]),
    ("powder-soaked-off", &["too-little-alkali", "batch-too-short", "immersion-without-salt"]),
    ("batch-before-dye", &["batch-too-short"]),
    ("vat-without-reducer", &["vat-without-alkali"]),
    ("temperatures-disagree", &["odd-temperature-scale", "temperature-jumps", "too-short-at-heat"]),
    ("acid-and-soda-in-a-bottle", &["gas-in-closed-vessel"]),
];

/// Takes out what follows from another finding.
pub(crate) fn leave_out(findings: &mut Vec<Finding>) {
    let told: Vec<(&'static str, Vec<Place>)> =
        findings.iter().map(|finding| (finding.rule, about(finding).collect())).collect();
    findings.retain(|finding| {
        !FOLLOW.iter().any(|(cause, follow)| {
            follow.contains(&finding.rule)
                && told.iter().any(|(rule, places)| {
                    rule == cause && about(finding).any(|place| places.iter().any(|other| same_part(*other, place)))
                })
        })
    });
}

/// Where a finding stands, and what it names.
fn about(finding: &Finding) -> impl Iterator<Item = Place> + '_ {
    std::iter::once(finding.place)
        .chain(finding.notes.iter().map(|note| note.place))
        .chain(finding.figures.iter().flat_map(|figure| figure.places()))
}

/// The same line, or another of the same group of steps: there is no telling dyes apart by less.
const fn same_part(one: Place, other: Place) -> bool {
    one.block == other.block
}
