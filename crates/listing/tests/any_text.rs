//! Whatever the text, reading gives a whole value: no panic, every byte in its place, every number's words its own.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test may stop where it fails"
)]

use proptest::prelude::*;

/// Pieces that listings are made of, to be thrown together in any order.
fn pieces() -> impl Strategy<Value = String> {
    let piece = prop_oneof![
        Just("1. "),
        Just("A. "),
        Just("2A1. "),
        Just("§ 3. "),
        Just("(a) "),
        Just("[1] "),
        Just("Item 4-b) "),
        Just("min "),
        Just("max. "),
        Just("nom "),
        Just("not less than "),
        Just("no closer than "),
        Just("up to "),
        Just("within "),
        Just("2-1/2 in. "),
        Just("(64 mm) "),
        Just("2½\""),
        Just("1/2 to 3/4 in. "),
        Just("4 pcf "),
        Just("33% "),
        Just("± 5 "),
        Just("No. 25 MSG "),
        Just("8 ft 3-1/2 in. "),
        Just("two layers "),
        Just("one or more "),
        Just("half the joint width "),
        Just("1:12 "),
        Just("for the 2 Hr rating"),
        Just("where the joint exceeds 2 in., "),
        Just("Configuration A"),
        Just("joints wider than "),
        Just("respectively"),
        Just("mineral wool "),
        Just("runner "),
        Just("shall be "),
        Just("deep "),
        Just("o.c. "),
        Just("or heavier "),
        Just("MAKER CO -- Product, Product\n"),
        Just("\n"),
        Just("\n\n"),
        Just("\x0c"),
        Just("+----+----+\n"),
        Just("| a | 2 |\n"),
        Just("-------------\n"),
        Just("Width   Depth\n"),
        Just(", "),
        Just(": "),
        Just("* "),
        Just("• "),
        Just("/ "),
        Just("- "),
        Just("% "),
        Just("(max) "),
        Just("(min): "),
        Just("* Minimum.\n"),
        Just("[a] "),
        Just("and "),
        Just("or "),
        Just("of "),
        Just("the "),
        Just("no "),
        Just("from top "),
        Just("except that "),
        Just("depth and lap are minimums, spacing is maximum "),
        Just("as follows:\n"),
        Just("Table 1 "),
        Just("Option B. "),
        Just("thick"),
        Just("joint "),
        Just("over "),
        Just("1-1/2 x 2 "),
        Just("; "),
        Just(". "),
        Just("( "),
        Just(") "),
        Just("EI 120 - V - M 25 - F - W 10 to 50"),
        Just(",.12.2012 "),
        Just("-/120/120 "),
        Just("twenty five millimetres "),
    ];
    prop::collection::vec(piece, 0..60).prop_map(|pieces| pieces.concat())
}

fn check(text: &str) {
    let reading = listing::read_text("any", text);
    let mut at = 0;
    for place in &reading.places {
        assert_eq!(place.span.start(), at);
        assert!(!place.span.is_empty());
        at = place.span.end();
    }
    assert_eq!(at, text.len());
    for clause in &reading.clauses {
        assert_eq!(clause.span.of(text), clause.words);
    }
    // What is visible and no furniture stands in a clause, a heading or the head.
    for place in reading
        .places
        .iter()
        .filter(|place| place.kind == listing::PlaceKind::Space)
    {
        assert!(
            place.span.of(text).chars().all(char::is_whitespace),
            "{:?}",
            place.span.of(text)
        );
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    #[test]
    fn arbitrary_text(text in any::<String>()) {
        check(&text);
    }

    #[test]
    fn listing_like_text(text in pieces()) {
        check(&text);
    }

    #[test]
    fn arbitrary_bytes(bytes in prop::collection::vec(any::<u8>(), 0..300)) {
        let _ = listing::read("any", &bytes);
    }
}

/// What is read by going into itself goes as deep as the text is long: a long one must not exhaust the stack.
#[test]
fn one_thing_over_and_over() {
    for piece in [
        "1 to 2 to 3 to ",
        "1 to ",
        "((((1 in. ",
        "not less than not more than ",
        "Items 1, 2, 3 and 4 and ",
        "except where except as ",
        "for 2 hr rating, ",
        "min 1 in. and ",
        "half of half of ",
        "2A. (As an alternate to Item 2A) min 1 in.\n",
        "1.1.1.1.",
        "-----\n",
        "| 1 in. | 2 hr | min |\n",
        "Density ........... 4 pcf\n",
    ] {
        check(&piece.repeat(60_000 / piece.len()));
    }
}

/// Texts that once stopped the reader.
#[test]
fn a_colon_that_nothing_stands_before() {
    check("1. Clips - Min 2 in. wide.\n\n2. Seal\n\n: 4 in.\n");
    check("1. Clips : 4 in.\n2. A: : 4 in. : 3 in.\n");
}
