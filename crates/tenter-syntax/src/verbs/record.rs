//! Everything that changes nothing about the goods.

use crate::tree::Connector::*;
use crate::verbs::Expect::*;
use crate::verbs::{Verb, direct, verb, with};

/// Verbs of this kind.
pub(super) const ROWS: &[Verb] = &[
    verb(
        "wear",
        &["put on"],
        "puts on protective equipment; powder work comes after it",
        &[direct(Equipment, "dust mask, gloves, goggles"), with(Until, Text, "until nearly clear")],
    ),
    verb(
        "repeat",
        &[],
        "does a group of steps again",
        &[
            direct(Steps, "steps colour"),
            with(For, Lot, "for lot 2"),
            direct(Portions, "3 times"),
            with(With, Liquor, "with night bottle"),
            with(On, Zone, "on back"),
            with(After, Duration, "after 1 h"),
            with(Until, Text, "until nearly clear"),
        ],
    ),
    verb(
        "check",
        &["test"],
        "looks or measures, and says what is expected",
        &[
            direct(Text, "pH of soda soak"),
            with(For, Text, "for bleeding"),
            with(With, Text, "with pH paper"),
            with(At, Text, "at pH 11"),
            with(In, Liquor, "in soda soak"),
            with(On, Zone, "on front"),
            with(Every, Duration, "every 5 min"),
            with(Until, Text, "until nearly clear"),
        ],
    ),
    verb("note", &[], "a remark", &[direct(Text, "the tub is slippery")]),
    verb(
        "accept",
        &[],
        "accepts a finding, with the reason",
        &[
            direct(Rule, "undyeable-share"),
            with(Because, Text, "because the stretch is wanted"),
            with(On, Text, "on tees"),
            with(For, Text, "for tees"),
        ],
    ),
];
