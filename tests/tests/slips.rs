//! Every slip written by hand is told by its rule, on or about what was changed.

use tenter_tests::{good, slips};

#[test]
fn every_slip_is_told_near_where_it_was_made() {
    let goods = good::all();
    let mut wrong = Vec::new();
    let mut count = 0;
    for (name, slips) in slips::all() {
        let file = format!("{name}.dye");
        let Some(good) = goods.iter().find(|good| good.folder == "good" && good.name == file) else {
            wrong.push(format!("{name}: no such good recipe"));
            continue;
        };
        for slip in slips {
            count += 1;
            let Some((slipped, lines)) = slip.made(good) else {
                wrong.push(format!("{name}: `{}` is not in it", slip.before));
                continue;
            };
            let (told, near) = slip.told(good, &lines, &slipped);
            let rules: Vec<String> = tenter_tests::judge::told(&slipped)
                .iter()
                .map(|told| format!("{}:{}", told.line, told.finding.rule))
                .collect();
            if !told {
                wrong.push(format!("{name}: `{}`: {} is silent, told is {rules:?}", slip.after, slip.rule));
            } else if !near {
                wrong.push(format!("{name}: `{}` on {lines:?}: told elsewhere, {rules:?}", slip.after));
            }
        }
    }
    assert!(count >= 60, "{count} slips");
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}
