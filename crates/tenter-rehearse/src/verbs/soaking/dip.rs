//! `dip shirts in dip bath to hem for 5 min`
//!
//! Needs a liquor; zones named go in, with those listed before them in the layout; without zones, all of it.
//!
//! Does: what the part holds changes places with the bath by and by, and it comes out with its pickup; the bath is poorer by
//! that and takes up what the part brought.

use tenter_resolve::recipe::ZoneRef;

use crate::bench::{Bench, Pass};

pub(crate) fn perform(bench: &mut Bench<'_>, pass: &Pass<'_>) {
    let deep = pass
        .step
        .zones
        .iter()
        .filter_map(|zone| match zone.zone {
            ZoneRef::Of(layout, at) => Some((layout, at)),
            _ => None,
        })
        .max_by_key(|(_, at)| *at);
    let Some(liquor) = bench.liquor(pass) else {
        bench.no_effect("no liquor to dip into is named");
        return crate::verbs::time_only(bench, pass);
    };
    bench.with(pass, liquor);
    bench.used_as_bath(liquor);
    let Some((layout, depth)) = deep else {
        bench.bathe(pass, liquor, None);
        return;
    };
    for state in bench.working.clone() {
        bench.divide(state, Some(layout));
    }
    bench.dip_zones(pass, liquor, layout, depth);
}
