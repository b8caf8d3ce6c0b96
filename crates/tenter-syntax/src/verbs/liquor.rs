//! Making and changing liquors.

use crate::tree::Connector::*;
use crate::verbs::Expect::*;
use crate::verbs::{Verb, direct, verb, with};

/// Verbs of this kind.
pub(super) const ROWS: &[Verb] = &[
    verb(
        "paste",
        &[],
        "stirs a powder with a little liquid into a smooth paste",
        &[
            direct(Material, "9 g/piece lagoon"),
            with(With, Liquor, "with 20 mL water"),
            with(In, Vessel, "in cup"),
            with(At, Temperature, "at 40 °C"),
        ],
    ),
    verb(
        "dissolve",
        &[],
        "dissolves a material in a liquid",
        &[
            direct(Material, "9 g/piece lagoon"),
            with(In, Liquor, "in 200 mL water"),
            with(Into, Liquor, "into dye bath"),
            with(At, Temperature, "at 40 °C"),
            with(With, Material, "with 50 g/L urea"),
            with(Until, Text, "until nearly clear"),
            with(For, Duration, "for 20 min"),
        ],
    ),
    verb(
        "make",
        &["mix", "make up", "prepare"],
        "makes a mix; its age counts from here",
        &[
            direct(Liquor, "night bottle"),
            with(In, Vessel, "in bottle"),
            with(At, Temperature, "at 40 °C"),
            with(With, Material, "with 5 g urea"),
            with(For, Steps, "for steps colour"),
            with(From, Liquor, "from stock"),
        ],
    ),
    verb(
        "weigh",
        &["measure"],
        "weighs a material out",
        &[
            direct(Material, "9 g/piece lagoon"),
            with(Into, Vessel, "into cup"),
            with(In, Vessel, "in cup"),
            with(For, Liquor, "for night bottle"),
        ],
    ),
    verb(
        "add",
        &[],
        "adds a material or a mix to a liquor; without an amount, all of it",
        &[
            direct(Material, "60 g/L soda ash"),
            with(To, Liquor, "to dye bath"),
            with(Into, Liquor, "into dye bath"),
            with(In, Portions, "in 3 parts, 5 min apart"),
            with(Over, Duration, "over 30 min"),
            with(Every, Duration, "every 5 min"),
            with(At, Temperature, "at 40 °C"),
            with(After, Duration, "after 10 min"),
            with(Until, Text, "until nearly clear"),
            with(In, Liquor, "in 200 mL water"),
            with(From, Liquor, "from stock"),
            with(With, Material, "with 5 g salt"),
            with(Through, Text, "through a sieve"),
            with(Without, Text, "without lifting the goods"),
        ],
    ),
    verb(
        "top up",
        &[],
        "fills a liquor up to a volume",
        &[
            direct(Liquor, "dye bath"),
            with(To, Liquor, "to 8 L"),
            with(With, Liquor, "with water"),
            with(At, Temperature, "at 40 °C"),
        ],
    ),
    verb(
        "stir",
        &["agitate", "move"],
        "moves the liquor or the goods in it",
        &[
            direct(Goods, "tees"),
            with(In, Liquor, "in soda soak"),
            with(For, Duration, "for 20 min"),
            with(Every, Duration, "every 5 min"),
            with(Until, Text, "until nearly clear"),
            with(With, Material, "with 1 g/L textile detergent"),
            with(Into, Liquor, "into dye bath"),
        ],
    ),
    verb(
        "store",
        &[],
        "keeps goods or a mix for later",
        &[
            direct(Goods, "tees"),
            direct(Liquor, "night bottle"),
            with(For, Duration, "for 20 min"),
            with(At, Temperature, "at 40 °C"),
            with(In, Vessel, "in bottle"),
            with(Until, Text, "until nearly clear"),
            with(Under, Cover, "under plastic"),
        ],
    ),
    verb(
        "dispose",
        &["discard", "dispose of"],
        "gets rid of a liquor or material as the local code demands",
        &[
            direct(Liquor, "dye bath"),
            with(In, Text, "in the drain"),
            with(Into, Text, "into the drain"),
            with(To, Text, "to the collection point"),
            with(As, Text, "as hazardous waste"),
            with(After, Duration, "after 10 min"),
        ],
    ),
];
