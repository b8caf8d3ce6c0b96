//! Folding, binding and handling the goods.

use crate::tree::Connector::*;
use crate::verbs::Expect::*;
use crate::verbs::{Verb, direct, verb, with};

/// Verbs of this kind.
pub(super) const ROWS: &[Verb] = &[
    verb(
        "fold",
        &["pleat"],
        "folds the goods, which gives the zones of a layout",
        &[direct(Goods, "tees"), with(As, Layout, "as rings"), with(Into, Text, "into 8 wedges")],
    ),
    verb(
        "scrunch",
        &["crumple"],
        "pushes the goods together without order",
        &[
            direct(Goods, "tees"),
            with(As, Layout, "as crush"),
            with(Into, Vessel, "into tray"),
            with(In, Vessel, "in tray"),
        ],
    ),
    verb(
        "bind",
        &["tie"],
        "binds the goods so that dye reaches some parts less",
        &[
            direct(Goods, "tees"),
            with(As, Layout, "as rings"),
            with(With, Text, "with cord"),
            with(Every, Text, "every 5 cm"),
            with(At, Text, "at the heart"),
        ],
    ),
    verb(
        "untie",
        &["unbind", "unfold", "open"],
        "opens what was folded or bound",
        &[
            direct(Goods, "tees"),
            with(Under, Text, "under running water"),
            with(In, Liquor, "in cold water"),
            with(After, Duration, "after 10 min"),
        ],
    ),
    verb(
        "mark",
        &[],
        "draws lines on the goods to fold or dye by",
        &[
            direct(Goods, "tees"),
            with(With, Text, "with chalk"),
            with(At, Text, "at 10 cm"),
            with(On, Zone, "on front"),
            with(Every, Text, "every 5 cm"),
        ],
    ),
    verb(
        "turn",
        &["flip"],
        "turns the goods over",
        &[
            direct(Goods, "tees"),
            with(Over, Text, "over"),
            with(Every, Duration, "every 5 min"),
            direct(Portions, "3 times"),
            with(In, Vessel, "in tub"),
        ],
    ),
    verb(
        "cover",
        &["wrap"],
        "covers the goods or vessel",
        &[
            direct(Goods, "tees"),
            with(With, Cover, "with plastic"),
            with(Under, Cover, "under plastic"),
            with(In, Cover, "in sealed bag"),
            with(For, Duration, "for 20 min"),
        ],
    ),
    verb(
        "uncover",
        &["unwrap"],
        "takes the covering off",
        &[direct(Goods, "tees"), with(After, Duration, "after 10 min")],
    ),
    verb(
        "press",
        &["iron"],
        "irons the goods",
        &[
            direct(Goods, "tees"),
            with(At, Temperature, "at 40 °C"),
            with(For, Duration, "for 20 min"),
            with(Under, Cover, "under a cloth"),
            with(On, Zone, "on back"),
        ],
    ),
];
