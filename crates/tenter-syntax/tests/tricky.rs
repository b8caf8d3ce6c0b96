//! Lines that could be read in more than one way, and the reading each gets.

mod support;

use tenter_syntax::{OddityKind, parse_block};

/// The drawing of a line in a block of steps.
fn steps(line: &str) -> String {
    read("steps", line).0
}

/// The drawing of a line in a mix.
fn mix(line: &str) -> String {
    read("mix bath", line).0
}

fn read(header: &str, line: &str) -> (String, Vec<OddityKind>) {
    let block = parse_block(&format!("{header}\n  {line}\n"));
    assert_eq!(block.lines.len(), 1, "{line:?} is one line");
    let kinds = block.oddities.iter().map(|oddity| oddity.kind).collect();
    (support::draw_line(&block, &block.lines[0]), kinds)
}

macro_rules! readings {
    ($($name:ident: $how:ident($line:expr) => $expected:expr;)*) => {
        $(#[test]
        fn $name() {
            assert_eq!($how($line), $expected);
        })*
    };
}

readings! {
    a_count_behind_a_name: steps("wash at 60 °C with 1 g/L textile detergent, 2 times")
        => "wash | At: 60 ‹°C› | With: 1 ‹g/L textile detergent› , 2 ‹times›";
    a_count_without_comma: steps("wash at 60 °C with 1 g/L textile detergent 2 times")
        => "wash | At: 60 ‹°C› | With: 1 ‹g/L textile detergent› 2 ‹times›";
    a_manner_behind_a_unit: steps("batch for 24 h at 24 °C covered") => "batch | For: 24 ‹h› | At: 24 ‹°C covered›";
    portions: steps("sprinkle 9 g lagoon in 3 parts 5 min apart")
        => "sprinkle | 9 ‹g lagoon› | In: 3 ‹parts› 5 ‹min apart›";
    no_unit_ends_inside_a_word: mix("2 glauber's salt") => "2 ‹glauber's salt›";
    a_word_that_begins_like_a_unit: mix("2 gl") => "2 ‹gl›";
    a_unit_without_blank: mix("2g night") => "2 ‹g night›";
    degrees_without_blank: steps("heat to 40C") => "heat | To: 40 ‹C›";
    times_without_blank: steps("rinse 3x") => "rinse | 3 ‹x›";
    drop_is_a_unit_first: mix("2 drop black") => "2 ‹drop black›";
    a_number_in_a_name: mix("4 g Reactive Blue 4 at 20 °C") => "4 ‹g Reactive Blue› 4 | At: 20 ‹°C›";
    a_number_in_a_name_and_a_count: steps("soak in Reactive Blue 4 2 times")
        => "soak | In: ‹Reactive Blue› 4 2 ‹times›";
    two_word_units: mix("5 fl oz water") => "5 ‹fl oz water›";
    share_of_the_goods: mix("3 % owg lagoon") => "3 ‹% owg lagoon›";
    share_of_the_goods_tight: mix("3% owg lagoon") => "3 ‹% owg lagoon›";
    deg_c: steps("hold at 60 deg C") => "hold | At: 60 ‹deg C›";
    mixed_number: mix("1 1/2 tsp soda ash") => "1 1/2 ‹tsp soda ash›";
    vulgar_fraction: mix("1½ tsp soda ash") => "1½ ‹tsp soda ash›";
    vulgar_fraction_alone: mix("½ tsp soda ash") => "½ ‹tsp soda ash›";
    fraction: mix("1/4 tsp soda ash") => "1/4 ‹tsp soda ash›";
    hyphen_and_fraction: mix("1-1/2 tsp soda ash") => "malformed(1-1/2) ‹tsp soda ash›";
    hyphen_and_vulgar_fraction: mix("1-½ tsp soda ash") => "malformed(1-½) ‹tsp soda ash›";
    range_of_fractions: mix("1/4-1/2 tsp soda ash") => "range(1/4 1/2) ‹tsp soda ash›";
    range_with_to: steps("soak for 10 to 20 min") => "soak | For: range(10 20) ‹min›";
    range_with_hyphen: steps("soak for 10-20 min") => "soak | For: range(10 20) ‹min›";
    range_with_dash: steps("soak for 10–20 min") => "soak | For: range(10 20) ‹min›";
    range_with_blanks: steps("soak for 10 - 20 min") => "soak | For: range(10 20) ‹min›";
    a_unit_before_to_opens_a_clause: steps("soak for 10 min to 20 min") => "soak | For: 10 ‹min› | To: 20 ‹min›";
    from_opens_no_range: steps("heat from 20 to 60 °C") => "heat | From: 20 | To: 60 ‹°C›";
    from_and_a_range_with_hyphen: steps("heat from 20-25 to 60 °C") => "heat | From: range(20 25) | To: 60 ‹°C›";
    negative_range: steps("store at -18--5 °C") => "store | At: range(-18 -5) ‹°C›";
    negative_range_typographic: steps("store at −18 to −5 °C") => "store | At: range(−18 −5) ‹°C›";
    tolerance: steps("hold at 20 °C ± 2 °C") => "hold | At: tolerance(20 °C ± 2) ‹°C›";
    tolerance_without_unit: steps("hold at 20 ± 2 °C") => "hold | At: tolerance(20  ± 2) ‹°C›";
    tolerance_in_ascii: steps("hold at 20 +/- 2 °C") => "hold | At: tolerance(20  ± 2) ‹°C›";
    at_least: steps("hold at least 20 min") => "hold | at-least 20 ‹min›";
    for_at_least: steps("hold for at least 20 min at 60 °C") => "hold | For: at-least 20 ‹min› | At: 60 ‹°C›";
    at_most: steps("hold for at most 1 1/2 h") => "hold | For: at-most 1 1/2 ‹h›";
    at_least_half_typed: steps("hold for at least") => "hold | For: ‹at least›";
    about: mix("about 20 g urea") => "about 20 ‹g urea›";
    about_a_range: mix("about 10 to 20 g urea") => "about range(10 20) ‹g urea›";
    liquor_ratio: steps("soak at 1:20") => "soak | At: pair(1 20)";
    clock: steps("rest until 14:30") => "rest | Until: pair(14 30)";
    date: mix("250 g lagoon bought 2026-02-01 at 12 EUR") => "250 ‹g lagoon› | Bought: date(2026-02-01) | At: 12 ‹EUR›";
    date_in_another_order: mix("250 g lagoon bought 01.02.2026") => "250 ‹g lagoon› | Bought: malformed(01.02.2026)";
    date_with_slashes: mix("250 g lagoon bought 3/5/2026") => "250 ‹g lagoon› | Bought: malformed(3/5/2026)";
    decimal_comma: mix("2,5 g night") => "malformed(2,5) ‹g night›";
    thousands_comma: mix("1,000 g salt") => "malformed(1,000) ‹g salt›";
    list_comma: steps("wear mask, gloves,goggles, 2 aprons") => "wear | ‹mask› , ‹gloves› , ‹goggles› , 2 ‹aprons›";
    three_points: mix("3.4.5 g night") => "malformed(3.4.5) ‹g night›";
    bare_percent: mix("5% night") => "5 ‹% night›";
    per_goods_before_the_name: mix("9 g per tee lagoon") => "9 ‹g per tee lagoon›";
    per_goods_behind_the_name: mix("9 g lagoon per tee") => "9 ‹g lagoon per tee›";
    per_a_number: mix("2 L per 100 g goods") => "2 ‹L per› 100 ‹g goods›";
    slash_a_number: mix("2 L/100 g goods") => "2 ‹L/› 100 ‹g goods›";
    spoons_per_cup: mix("4 tsp per cup soda ash") => "4 ‹tsp per cup soda ash›";
    half_a_unit: mix("60 g/") => "60 ‹g/›";
    half_a_unit_per: mix("60 g per ") => "60 ‹g per›";
    capital_c: steps("soak at 60 C") => "soak | At: 60 ‹C›";
    fahrenheit: steps("soak at 140 F") => "soak | At: 140 ‹F›";
    bare_degree: steps("soak at 60°") => "soak | At: 60 ‹°›";
    doubtful_spoon: mix("2 T soda ash") => "2 ‹T soda ash›";
    in_is_never_inch: steps("fold 2 in wide") => "fold | 2 | In: ‹wide›";
    a_bath_in_one_line: steps("soak tees in 8 L water with 60 g/L soda ash at 40 °C")
        => "soak | ‹tees› | In: 8 ‹L water› | With: 60 ‹g/L soda ash› | At: 40 ‹°C›";
    over_a_place: steps("heap 1 kg ice over tees") => "heap | 1 ‹kg ice› | Over: ‹tees›";
    over_a_time: steps("add 20 g salt over 30 min") => "add | 20 ‹g salt› | Over: 30 ‹min›";
    until_ends_at_a_clause_with_a_number: steps("rinse until clear at 40 °C, 3 times")
        => "rinse | Until: ‹clear› | At: 40 ‹°C› , 3 ‹times›";
    until_ends_at_a_comma: steps("rinse until the water in the tub runs nearly clear, 3 times")
        => "rinse | Until: ‹the water in the tub runs nearly clear› , 3 ‹times›";
    until_keeps_numbers: steps("rinse until pH 7 is reached") => "rinse | Until: ‹pH 7 is reached›";
    until_a_temperature: steps("heat until 60 °C") => "heat | Until: 60 ‹°C›";
    because_runs_to_the_end: steps("accept undyeable-share because the stretch, in 3 places, is wanted # yes")
        => "accept | ‹undyeable-share› | Because: ‹the stretch, in 3 places, is wanted› | comment=# yes";
    a_comment: steps("soak in soda soak # old") => "soak | In: ‹soda soak› | comment=# old";
    an_empty_comment: steps("soak in soda soak #") => "soak | In: ‹soda soak› | comment=#";
    no_comment_inside_a_word: steps("soak in bath#2") => "soak | In: ‹bath#2›";
    a_number_with_hash: steps("soak in bath #2 for 5 min") => "soak | In: ‹bath #2› | For: 5 ‹min›";
    a_comment_without_blank: steps("soak in soda soak #the old one") => "soak | In: ‹soda soak› | unread=#the old one";
    a_word_of_hex_digits: steps("soak in soda soak #decade of use") => "soak | In: ‹soda soak› | unread=#decade of use";
    an_open_quote: steps("soak in \"night at sea for 5 min") => "soak | In: quoted‹\"night at sea for 5 min›";
    a_quoted_name: steps("soak in \"night at sea\" for 5 min") => "soak | In: quoted‹\"night at sea\"› | For: 5 ‹min›";
    a_hash_in_quotes: steps("soak in “bath # two” for 5 min # old")
        => "soak | In: quoted‹“bath # two”› | For: 5 ‹min› | comment=# old";
    two_steps: steps("add 20 g salt and stir") => "add | 20 ‹g salt› | And: ‹stir›";
    an_article: steps("soak the tees") => "soak | ‹the tees›";
    the_longest_verb: steps("wring out tees") => "squeeze | ‹tees›";
    the_shorter_verb: steps("wring tees") => "squeeze | ‹tees›";
    turn_over: steps("turn tees over") => "turn | ‹tees› | Over:";
    a_name_like_a_verb: steps("wash tees in wash") => "wash | ‹tees› | In: ‹wash›";
    a_misplaced_amount: mix("soda ash 250 g") => "soda? | ‹ash› 250 ‹g›";
    an_aside: mix("8 L water (half)") => "8 ‹L water› aside‹(half)›";
    an_open_aside: mix("8 L water (half # x") => "8 ‹L water› aside‹(half› | comment=# x";
    of_is_no_connecting_word: mix("5 g cream of tartar") => "5 ‹g cream of tartar›";
    a_name_with_a_connecting_word: steps("soak in night at sea for 20 min") => "soak | In: ‹night› | At: ‹sea› | For: 20 ‹min›";
    a_half_typed_connecting_word: steps("soak tees in soda soak wi") => "soak | ‹tees› | In: ‹soda soak wi›";
    a_clause_without_anything: steps("soak tees in") => "soak | ‹tees› | In:";
    a_key_of_two_words: mix("make up to 8 L") => "make up | To: 8 ‹L›";
    a_rest: mix("rest for 12 h") => "rest | For: 12 ‹h›";
    a_colon_behind_the_key: mix("keep: 3 days") => "keep | odd‹:› 3 ‹days›";
    an_equals_sign: mix("keep=3 days") => "keep | odd‹=› 3 ‹days›";
    a_decimal_without_zero: mix(".5 g night") => ".5 ‹g night›";
    a_lone_hyphen: mix("- 5 g night") => "odd‹-› 5 ‹g night›";
    connecting_words_in_capitals: steps("Soak tees IN soda soak For 5 min") => "soak | ‹tees› | In: ‹soda soak› | For: 5 ‹min›";
    a_word_after_a_hyphened_connector: mix("5 g in-situ salt") => "5 ‹g in-situ salt›";
}

#[test]
fn a_colour_is_one_after_its_key() {
    assert_eq!(read("dye night", "colour #1d5fa6").0, "colour | colour‹#1d5fa6›");
    assert_eq!(read("dye night", "color #facade # like this").0, "colour | colour‹#facade› | comment=# like this");
    let (drawn, oddities) = read("dye night", "colour #add");
    assert_eq!(drawn, "colour | unread=#add");
    assert_eq!(oddities, []);
}

#[test]
fn keys_that_are_connecting_words_stand_at_the_front() {
    assert_eq!(read("recipe Dusk", "by A. Nyland, in spring").0, "by | rest=A. Nyland, in spring");
    assert_eq!(read("recipe Dusk", "for 3 evenings").0, "for | rest=3 evenings");
    assert_eq!(read("variant short", "in steps colour").0, "in | ‹steps colour›");
    assert_eq!(steps("by hand"), "By: ‹hand›");
}

#[test]
fn synonyms_come_out_canonical() {
    assert_eq!(read("recipe Dusk", "license MIT").0, "licence | rest=MIT");
    assert_eq!(read("goods tees", "Fiber 60% cotton, 40% polyester").0, "fibre | 60 ‹% cotton› , 40 ‹% polyester›");
    assert_eq!(steps("neutralize tees"), "neutralise | ‹tees›");
    assert_eq!(steps("wet tees"), "wet out | ‹tees›");
    assert_eq!(steps("Wet  Out tees"), "wet out | ‹tees›");
    assert_eq!(steps("iron tees"), "press | ‹tees›");
}

#[test]
fn things_worth_a_word_are_noticed() {
    assert_eq!(read("steps", "add 20 g salt and stir").1, [OddityKind::TwoSteps]);
    assert_eq!(read("steps", "add salt and pepper").1, []);
    assert_eq!(read("steps", "soak in \"night").1, [OddityKind::OpenQuote]);
    assert_eq!(read("steps", "soak in bath (half").1, [OddityKind::OpenBracket]);
    assert_eq!(read("steps", "soak in bath #the old one").1, [OddityKind::CommentWithoutBlank]);
    assert_eq!(read("steps", "so\u{ad}ak tees\u{200b} in bath").1, [OddityKind::InvisibleCharacter; 2]);
    assert_eq!(read("steps", "soak \u{1b}[31m tees").1, [OddityKind::ControlCharacter]);
    assert_eq!(read("dye tees in dye bath for 1 h", "index C.I. Vat Blue 1").1, [OddityKind::HeaderReadsAsStep]);
    assert_eq!(read("dye night at sea", "index C.I. Vat Blue 1").1, []);
    assert_eq!(read("mix", "8 L water").1, [OddityKind::MissingName]);
    assert_eq!(read("steps", "soak tees").1, []);
    // In prose a hash, a quote or a bracket is nobody's business.
    assert_eq!(read("recipe Dusk", "about a 5\" ring (half #dark \"night").1, []);
}
