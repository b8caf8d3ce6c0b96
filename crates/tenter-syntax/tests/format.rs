//! The formatter: what it tidies, what it leaves, and that it never changes what a recipe means.

mod support;

use proptest::prelude::*;
use tenter_syntax::{Document, format, format_edits};

const SAMPLE: &str = include_str!("data/harbour-dusk.dye");

macro_rules! formats {
    ($($name:ident: $before:expr => $after:expr;)*) => {
        $(#[test]
        fn $name() {
            assert_eq!(format($before), $after);
            assert_eq!(format($after), $after, "formatting twice");
        })*
    };
}

formats! {
    heads_share_a_column: "steps wash\n soak tees in bath\n soap off   tees\n dry\n"
        => "steps wash\n  soak     tees in bath\n  soap off tees\n  dry\n";
    a_long_head_moves_the_column: "steps\n  neutralise tees\n  dry tees\n" => "steps\n  neutralise tees\n  dry        tees\n";
    amounts_share_a_column: "mix bath\n 8L water at 40C\n 60   g/l soda ash\n make up to 8 L\n"
        => "mix bath\n  8 L      water at 40 °C\n  60 g/L   soda ash\n  make up  to 8 L\n";
    units_are_spelt_one_way: "mix bath\n  2 grams urea\n  3 % owg lagoon\n  5 millilitres water\n  4 tsp per cup soda ash\n"
        => "mix bath\n  2 g      urea\n  3% owg   lagoon\n  5 mL     water\n  4 tsp per cup soda ash\n";
    zones_stay_close: "layout rings\n  zone   45 % rim\n  zone 35% middle\n" => "layout rings\n  zone 45% rim\n  zone 35% middle\n";
    doubtful_units_stay: "mix bath\n  2 T soda ash\n  1 c water\n  60° water\n" => "mix bath\n  2 T      soda ash\n  1 c      water\n  60°      water\n";
    commas_lean_left: "steps\n  wear mask ,gloves,   goggles\n" => "steps\n  wear     mask, gloves, goggles\n";
    comments_keep_their_words: "steps # all\n  soak tees # the  old   ones\n# left\n    # in\n  dry\n"
        => "steps  # all\n  soak     tees  # the  old   ones\n# left\n  # in\n  dry\n";
    continuations_stand_under_the_column: "steps\n  soap off tees in 15 L water # warm\n       with 1g/L detergent\n"
        => "steps\n  soap off tees in 15 L water  # warm\n           with 1 g/L detergent\n";
    prose_stays: "recipe Dusk\n  about   rings ,  folded;2g of it\n  by A.  Nyland  \n"
        => "recipe Dusk\n  about    rings ,  folded;2g of it\n  by       A.  Nyland\n";
    one_blank_line_between_blocks: "recipe Dusk\n  by A. N.\ngoods tees\n\n\n\n  pieces 6\n\n\n\nmix bath\n"
        => "recipe Dusk\n  by       A. N.\n\ngoods tees\n\n  pieces   6\n\nmix bath\n";
    a_comment_stays_with_the_block_below: "mix a\n  5 g salt\n# the other\nmix b\n" => "mix a\n  5 g      salt\n\n# the other\nmix b\n";
    use_lines_may_stand_together: "use a from \"x.dye\"\nuse b from \"x.dye\"\nmix c\n" => "use a from \"x.dye\"\nuse b from \"x.dye\"\n\nmix c\n";
    ends_are_tidied: "\n\nmix a   \n  5 g salt   \n\n\n" => "mix a\n  5 g      salt\n";
    the_mark_at_the_start_goes: "\u{feff}mix a\n  5 g salt" => "mix a\n  5 g      salt\n";
    windows_line_ends_stay: "mix a\r\n 5 g salt\r\n 6 g urea\n" => "mix a\r\n  5 g      salt\r\n  6 g      urea\r\n";
    tabs_go: "mix a\n\t5\tg\tsalt\n" => "mix a\n  5 g      salt\n";
    stray_lines_stay_where_they_are: "mix a\n    5 g salt\n6g urea\nhello\n" => "mix a\n  5 g      salt\n6 g      urea\nhello\n";
    unknown_blocks_stay: "stpes wash\n   soak   tees\n" => "stpes wash\n   soak   tees\n";
    half_a_line_stays: "mix a\n  60 g/\n  60 g per \n  60\n" => "mix a\n  60 g/\n  60 g per\n  60\n";
    names_are_kept: "mix  Night  at Sea\n  5 g Glauber's  Salt\n" => "mix Night  at Sea\n  5 g      Glauber's Salt\n";
    nothing: "" => "";
}

#[test]
fn the_sample_is_tidy() {
    assert_eq!(format(SAMPLE), SAMPLE);
    assert_eq!(format_edits(SAMPLE), []);
}

#[test]
fn blank_lines_alone_leave_nothing() {
    assert_eq!(format("\n \n\t\n"), "");
}

#[test]
fn edits_touch_only_lines_that_change() {
    let text = SAMPLE.replace("60 g/L   soda ash", "60g/l soda ash");
    let edits = format_edits(&text);
    assert_eq!(edits.len(), 1);
    assert_eq!(edits[0].1, "  60 g/L   soda ash\n");
}

/// What must not change, drawn by other code than the formatter's own guard: units aside, the same words in the same places.
fn meaning(text: &str) -> String {
    let drawn = support::draw(&Document::parse(text));
    let kept: Vec<String> = drawn
        .lines()
        .filter(|line| *line != "Loose ‹›")
        .map(|line| line.split_whitespace().collect::<String>().to_lowercase().replace(['°', '‹', '›'], ""))
        .collect();
    kept.join("\n")
}

fn holds(text: &str) -> Result<(), TestCaseError> {
    let once = format(text);
    prop_assert_eq!(format(&once), once.clone(), "formatting twice");
    prop_assert_eq!(meaning(&once), meaning(text));
    let mut last = 0;
    for (range, _) in format_edits(text) {
        prop_assert!(last <= range.start && range.start <= range.end && text.get(range.clone()).is_some());
        last = range.end;
    }
    Ok(())
}

/// Lines put together from pieces, with untidy blanks between.
fn untidy() -> impl Strategy<Value = String> {
    let gap = prop::sample::select(vec![
        " ",
        "  ",
        "\t",
        "",
        "\u{a0}",
        "\n      ",
        " # c\n       ",
        "\n  ",
        "\n",
        "\r\n   ",
        "\n\n",
        "\n\n\n\n  ",
        "\n# x\n",
    ]);
    let piece = prop::sample::select(vec![
        "recipe",
        "goods",
        "mix",
        "steps",
        "layout",
        "shelf",
        "stpes",
        "soak",
        "soap off",
        "tees",
        "in",
        "at",
        "for",
        "until",
        "because",
        "from",
        "to",
        "and",
        "at least",
        "about",
        "5",
        "1/2",
        "10-20",
        "2,5",
        "1:20",
        "g/L",
        "g",
        "L",
        "°C",
        "%",
        "%owg",
        "soda ash",
        "±",
        "#1d5fa6",
        "#add",
        "# comment",
        "\"",
        "(",
        ")",
        ",",
        ";",
        "/",
        "per",
        "-",
        "note",
        "by",
        "weight",
        "make up",
        "ß",
        "\u{200b}",
        "\u{feff}",
        "é",
    ]);
    prop::collection::vec((piece, gap), 0..40)
        .prop_map(|parts| parts.into_iter().flat_map(|(piece, gap)| [piece, gap]).collect())
}

/// Not within a colour: cut in two, `#16161d` leaves a number of days behind, and `meaning` does not look through the
/// spellings of units.
fn outside_colours(at: usize) -> usize {
    let digits = SAMPLE[..at].trim_end_matches(|c: char| c.is_ascii_hexdigit());
    if digits.ends_with('#') { digits.len() - 1 } else { at }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 250, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn untidy_recipes_mean_the_same(text in untidy()) {
        holds(&text)?;
    }

    #[test]
    fn any_text_means_the_same(text in any::<String>()) {
        holds(&text)?;
    }

    #[test]
    fn a_changed_sample_means_the_same(at in 0..SAMPLE.len(), insert in untidy()) {
        let at = outside_colours(floor(at));
        holds(&format!("{}{insert}{}", &SAMPLE[..at], &SAMPLE[at..]))?;
    }
}

#[test]
fn prefixes_of_the_sample_mean_the_same() {
    for (at, _) in SAMPLE.char_indices().step_by(5) {
        let text = &SAMPLE[..at];
        let once = format(text);
        assert_eq!(format(&once), once);
        assert_eq!(meaning(&once), meaning(text));
    }
}

#[test]
fn hostile_texts_are_formatted_too() {
    for text in [
        "x".repeat(1 << 20),
        "5 ".repeat(1 << 19),
        format!("steps\n  {}", "soak, ".repeat(1 << 17)),
        "\n".repeat(1 << 20),
        "mix a\n\n\n".repeat(1 << 14),
    ] {
        let once = format(&text);
        assert!(format(&once) == once);
    }
}

fn floor(mut at: usize) -> usize {
    while !SAMPLE.is_char_boundary(at) {
        at -= 1;
    }
    at
}
