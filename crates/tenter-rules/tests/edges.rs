//! Recipes on either side of the line a rule draws: the examples of its page, changed by a word or two.

use tenter_resolve::NoLibrary;
use tenter_rules::{Level, Page, Scale, check_document, rule};
use tenter_syntax::Document;

/// The level at which a rule speaks of a text, if it does.
fn level(name: &str, text: &str) -> Option<Level> {
    let document = Document::parse(text);
    let findings = check_document(&document, "edge.dye", &NoLibrary, Scale::AsWritten).findings;
    findings.into_iter().find(|told| told.finding.rule == name).map(|told| told.finding.level)
}

/// The example of a page with some of its words replaced; each must be there.
fn changed(name: &str, section: &str, edits: &[(&str, &str)]) -> String {
    let page = rule(name).map_or("", |rule| rule.page);
    let mut text = Page::read(page).example(section).unwrap_or_default().to_owned();
    for (from, to) in edits {
        assert!(text.contains(from), "{name}: no `{from}` under {section}");
        text = text.replace(from, to);
    }
    text
}

fn bad(name: &str, edits: &[(&str, &str)]) -> Option<Level> {
    level(name, &changed(name, "Bad", edits))
}

fn good(name: &str, edits: &[(&str, &str)]) -> Option<Level> {
    level(name, &changed(name, "Good", edits))
}

#[test]
fn a_private_recipe_needs_no_licence() {
    let name = "publishing-line-missing";
    assert_eq!(bad(name, &[("  by       Ona Vessel\n", ""), ("  licence  CC-BY-4.0\n", "")]), None);
    assert_eq!(bad(name, &[("  by       Ona Vessel\n", "")]), Some(Level::Advice));
    assert_eq!(good(name, &[("  licence  CC-BY-4.0\n", "")]), Some(Level::Advice));
}

#[test]
fn a_grey_is_no_black_that_failed() {
    let name = "black-or-turquoise-pale";
    let room = "  room     22 °C\n";
    assert_eq!(bad(name, &[]), Some(Level::Advice));
    assert_eq!(bad(name, &[(room, "  room     22 °C\n  depth    dark\n")]), Some(Level::Warning));
    assert_eq!(bad(name, &[(room, "  room     22 °C\n  depth    medium\n")]), None);
    assert_eq!(bad(name, &[("  15 g", "  5 g")]), None, "plainly a pale one");
    let index = ("  index    C.I. Reactive Blue 140\n", "");
    assert_eq!(bad(name, &[index]), None, "any blue without its index");
    assert_eq!(bad(name, &[index, ("#0093a8", "#121214")]), Some(Level::Advice), "black by its screen colour");
    assert_eq!(bad(name, &[("squirt ", "brush  ")]), None, "nobody knows how much of the cloth is painted");
}

#[test]
fn dark_and_light_may_share_what_comes_after() {
    let name = "dark-washed-with-light";
    assert_eq!(bad(name, &[]), Some(Level::Warning));
    assert_eq!(bad(name, &[("#f2c4cf", "#7a2f4a")]), None, "both are dark");
    assert_eq!(bad(name, &[("#1a2440", "#c9d8f2")]), None, "both are light");
    assert_eq!(bad(name, &[("  28 g     midnight", "  2 g      midnight")]), None, "a dark dye, laid pale");
}

#[test]
fn dye_on_darker_cloth() {
    let name = "overdye-cannot-show";
    assert_eq!(bad(name, &[("#1f2a44", "#050507")]), Some(Level::Warning), "yellow on black is not seen at all");
    assert_eq!(bad(name, &[("#1f2a44", "#efe2b0")]), None);
    assert_eq!(bad(name, &[("  colour   #1f2a44\n", "")]), None, "nobody says what colour they are");
    assert_eq!(good(name, &[("#efe2b0", "#2b3a66")]), None, "about as dark as the dye");
    let bleached = "  bleach   tees in 8 L water with 100 mL sodium hypochlorite solution for 10 min\n  soak ";
    assert_eq!(bad(name, &[("  soak ", bleached)]), None, "nobody knows the colour after bleach");
}

#[test]
fn gas_needs_both_and_a_lid() {
    let name = "gas-in-closed-vessel";
    assert_eq!(bad(name, &[]), Some(Level::Error));
    assert_eq!(bad(name, &[("  closed   yes\n", "")]), None);
    assert_eq!(bad(name, &[("  closed   yes\n", "  closed   no\n")]), None);
    assert_eq!(bad(name, &[("  closed   yes\n", ""), ("squeeze bottle", "sealed jar")]), Some(Level::Error));
    assert_eq!(bad(name, &[("  20 g     citric acid\n", "")]), None);
    assert_eq!(bad(name, &[("  30 g     soda ash", "  0.1 g    soda ash")]), None, "a thimbleful of gas");
}

#[test]
fn a_childs_shirt_is_no_child_at_work() {
    let name = "children-at-work";
    let about = "An afternoon workshop with children of ten and older.";
    let says = |words: &str| bad(name, &[(about, words)]);
    assert_eq!(says(about), Some(Level::Warning));
    for work in
        ["For kids.", "Dyed at the school workshop.", "A children's birthday party.", "With the pupils of year 5."]
    {
        assert_eq!(says(work), Some(Level::Warning), "{work}");
    }
    for clothes in
        ["Children's tees, sizes 4 to 10.", "Tees for kids.", "Navy for a school uniform.", "An old school spiral."]
    {
        assert_eq!(says(clothes), None, "{clothes}");
    }
}

#[test]
fn idle_steps() {
    let name = "step-without-effect";
    assert_eq!(bad(name, &[]), Some(Level::Advice));
    assert_eq!(bad(name, &[("to 100% pickup", "to 70% pickup")]), None);
    let after = |line: &str| good(name, &[("  dry      tees", &format!("  {line}\n  dry      tees"))]);
    assert_eq!(after("untie    tees"), Some(Level::Advice));
    assert_eq!(after("uncover  tees"), None, "the bag of the batch");
    assert_eq!(after("turn     tees"), None);
    assert_eq!(after("turn     tees\n  turn     tees"), Some(Level::Advice));
    assert_eq!(after("spin     tees\n  spin     tees"), Some(Level::Advice));
    assert_eq!(after("squeeze  tees\n  spin     tees"), None);
    let wrung_first = ("  soak     tees", "  squeeze  tees to 80% pickup\n  soak     tees");
    assert_eq!(good(name, &[wrung_first]), Some(Level::Advice), "dry goods give nothing");
    assert_eq!(good(name, &[wrung_first, ("scoured, dry", "scoured, damp")]), None);
    let lots = ("  pieces   4", "  pieces   4 in 2 lots");
    assert_eq!(bad(name, &[lots]), None, "lots are not done in the order written");
}

#[test]
fn a_stock_keeps_as_long_as_it_is_cold() {
    let name = "stock-too-old";
    let stored = "for 20 days";
    assert_eq!(bad(name, &[]), Some(Level::Warning));
    assert_eq!(bad(name, &[(stored, "for 5 days")]), None);
    assert_eq!(good(name, &[(stored, "for 80 days")]), Some(Level::Warning));
    let keep = "  7 g      lagoon\n  keep for 30 days";
    assert_eq!(bad(name, &[("  7 g      lagoon", keep)]), None, "the recipe knows its stock");
    assert_eq!(bad(name, &[("  7 g      lagoon", keep), (stored, "for 40 days")]), Some(Level::Warning));
    assert_eq!(bad(name, &[("reactive dichlorotriazine", "direct")]), None, "water does not eat a direct dye");
}

/// Six pieces fit into the pot, twenty-four do not: at 0.16 kg a piece and 1:12, 11.5 L of bath with 1 L of cloth against
/// 46 L with 4 L, in a pot of 20 L.
#[test]
fn a_scaled_recipe_is_checked_as_scaled() {
    let text = "recipe Scaled\n\ndye moss\n  class reactive-dichlorotriazine\n\ngoods tees\n  fibre 100% cotton\n  weight 160 g each\n  pieces 6\n  state scoured, dry\n\nvessel pot\n  holds 20 L\n  material stainless steel\n  food never\n\nmix colour\n  1:12 water at 40 °C\n  30 g/L sodium chloride\n  1% owg moss\n\nsteps\n  wear dust mask, gloves\n  make colour in pot\n  immerse tees in pot at 40 °C for 20 min\n  add 10 g/L soda ash to pot in 3 portions\n  hold pot at 40 °C for 60 min\n  rinse tees in cold water until nearly clear\n  soap off tees in hot water at 60 °C, 2 times\n";
    let document = Document::parse(text);
    let told = |scale| -> Vec<&'static str> {
        let checked = check_document(&document, "edge.dye", &NoLibrary, scale);
        assert!(scale == Scale::AsWritten || checked.findings.iter().all(|told| told.finding.fixes.is_empty()));
        checked.findings.iter().map(|told| told.finding.rule).filter(|name| *name == "vessel-too-small").collect()
    };
    assert!(told(Scale::AsWritten).is_empty());
    assert!(told(Scale::Pieces(6.0)).is_empty());
    assert_eq!(told(Scale::Pieces(24.0)), ["vessel-too-small"]);
}

#[test]
fn bottles_bear_what_is_hand_hot() {
    let from = "back-comes-through";
    let bottle =
        |water: &str| level("hotter-than-rated", &changed(from, "Good", &[("240 mL   water at 30 °C", water)]));
    assert_eq!(bottle("240 mL   water at 90 °C"), Some(Level::Warning));
    assert_eq!(bottle("240 mL   water at 55 °C"), None);
}

#[test]
fn a_finish_is_told_unless_it_is_denied() {
    let state = "  state    scoured, dry";
    let noted = |words: &str| {
        let edit = format!("{state}\n  note     {words}");
        level("not-scoured", &changed("back-comes-through", "Good", &[(state, &edit)]))
    };
    assert_eq!(noted("Sold with a softener in them."), Some(Level::Warning));
    assert_eq!(noted("Sold without softener."), None);
}

#[test]
fn elastane_inside_the_yarn_is_advice() {
    let fibre = |words: &str| {
        level("undyeable-share", &changed("back-comes-through", "Good", &[("fibre    100% cotton", words)]))
    };
    assert_eq!(fibre("fibre    95% cotton, 5% elastane"), Some(Level::Advice));
    assert_eq!(fibre("fibre    80% cotton, 20% elastane"), Some(Level::Warning));
    assert_eq!(fibre("fibre    90% cotton, 10% polyester"), Some(Level::Warning));
    assert_eq!(fibre("fibre    97% cotton, 3% polyester"), Some(Level::Advice));
}

/// Hypochlorite in the tub, and vinegar made up in the same tub: chlorine, unless it was drained between.
#[test]
fn what_a_vessel_still_holds_counts() {
    let text = |between: &str| {
        format!(
            "recipe Twice\n\ngoods shirts\n  fibre 100% cotton\n  weight 180 g each\n  pieces 3\n  state scoured, dry\n\nvessel tub\n  holds 14 L\n  material plastic\n  food never\n\nmix bleach bath\n  6 L water at 20 °C\n  600 mL sodium hypochlorite solution\n\nmix sour bath\n  6 L water at 20 °C\n  200 mL vinegar\n\nsteps\n  wear gloves, goggles\n  make bleach bath in tub\n  bleach shirts in bleach bath for 8 min\n{between}  rinse shirts in cold water for 5 min\n  neutralise shirts in 8 L water with 5 g/L sodium thiosulfate for 10 min\n  rinse shirts in cold water for 5 min\n  make sour bath in tub\n  soak shirts in sour bath for 5 min\n  dry shirts\n"
        )
    };
    assert_eq!(level("never-mix", &text("")), Some(Level::Error));
    assert_eq!(level("never-mix", &text("  drain bleach bath\n")), None);
}
