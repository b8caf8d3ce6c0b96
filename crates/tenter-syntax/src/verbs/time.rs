//! Time and temperature.

use crate::tree::Connector::*;
use crate::verbs::Expect::*;
use crate::verbs::{Verb, direct, verb, with};

/// Verbs of this kind.
pub(super) const ROWS: &[Verb] = &[
    verb(
        "batch",
        &["cure"],
        "leaves the goods with dye and alkali so that the dye reacts",
        &[
            direct(Goods, "tees"),
            with(For, Duration, "for 20 min"),
            with(At, Temperature, "at 40 °C"),
            with(Under, Cover, "under plastic"),
            with(In, Cover, "in sealed bag"),
            with(On, Vessel, "on rack"),
            with(Until, Text, "until nearly clear"),
            with(In, Vessel, "in tray"),
        ],
    ),
    verb(
        "rest",
        &["leave", "stand"],
        "leaves goods or liquor alone for a time",
        &[
            direct(Goods, "tees"),
            with(For, Duration, "for 20 min"),
            with(At, Temperature, "at 40 °C"),
            with(Under, Cover, "under plastic"),
            with(In, Cover, "in sealed bag"),
            with(On, Vessel, "on rack"),
            with(Until, Text, "until nearly clear"),
            with(In, Vessel, "in tray"),
        ],
    ),
    verb(
        "wait",
        &[],
        "lets time pass",
        &[with(For, Duration, "for 20 min"), direct(Duration, "10 min"), with(Until, Text, "until nearly clear")],
    ),
    verb(
        "hold",
        &["keep"],
        "keeps goods or liquor at a temperature for a time",
        &[
            direct(Goods, "tees"),
            with(At, Temperature, "at 40 °C"),
            with(For, Duration, "for 20 min"),
            with(Until, Text, "until nearly clear"),
            with(In, Liquor, "in soda soak"),
            with(Under, Cover, "under plastic"),
            with(Every, Duration, "every 5 min"),
        ],
    ),
    verb(
        "raise",
        &[],
        "brings a liquor to a higher temperature",
        &[
            direct(Liquor, "dye bath"),
            with(To, Temperature, "to 60 °C"),
            with(From, Temperature, "from 40 °C"),
            with(Over, Duration, "over 30 min"),
            with(By, Temperature, "by 2 °C"),
            with(Every, Duration, "every 5 min"),
            with(At, Text, "at 2 °C per min"),
        ],
    ),
    verb(
        "heat",
        &["warm"],
        "heats goods or liquor",
        &[
            direct(Liquor, "dye bath"),
            direct(Goods, "tees"),
            with(To, Temperature, "to 60 °C"),
            with(From, Temperature, "from 20 °C"),
            with(Until, Temperature, "until 60 °C"),
            with(Over, Duration, "over 30 min"),
            with(At, Temperature, "at 40 °C"),
            with(For, Duration, "for 20 min"),
            with(In, Vessel, "in pot"),
            with(Until, Text, "until nearly clear"),
        ],
    ),
    verb(
        "cool",
        &[],
        "lets goods or liquor cool",
        &[
            direct(Liquor, "dye bath"),
            direct(Goods, "tees"),
            with(To, Temperature, "to 30 °C"),
            with(Until, Temperature, "until 30 °C"),
            with(Over, Duration, "over 30 min"),
            with(For, Duration, "for 20 min"),
            with(Until, Text, "until nearly clear"),
            with(With, Liquor, "with cold water"),
            with(In, Liquor, "in dye bath"),
        ],
    ),
    verb(
        "steam",
        &[],
        "steams the goods so that the dye reacts",
        &[
            direct(Goods, "tees"),
            with(For, Duration, "for 20 min"),
            with(At, Temperature, "at 40 °C"),
            with(In, Vessel, "in steamer"),
            with(Over, Vessel, "over pot"),
            with(Under, Cover, "under paper"),
        ],
    ),
    verb(
        "microwave",
        &[],
        "heats the wet goods in a microwave oven kept for dyeing",
        &[
            direct(Goods, "tees"),
            with(For, Duration, "for 20 min"),
            with(In, Cover, "in sealed bag"),
            with(At, Text, "at 600 W"),
            with(In, Portions, "in 3 parts, 1 min apart"),
            with(Every, Duration, "every 5 min"),
            with(Until, Text, "until nearly clear"),
        ],
    ),
];
