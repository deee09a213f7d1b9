//! Headings that stand between items: nothing behind one is left out with the option before it, and what stands under "DETAIL A" is of that detail.

/// The option and the condition of the clause that holds some words; empty where it has none.
#[track_caller]
fn of(text: &str, words: &str) -> (String, String) {
    let reading = listing::read_text("headings.txt", text);
    let mut clauses = reading.clauses.into_iter();
    let clause = clauses.find(|clause| clause.words.contains(words));
    assert!(clause.is_some(), "no clause holds {words}: {text}");
    clause.map_or_else(Default::default, |clause| {
        let condition = clause.condition.map(|own| own.expr.to_string());
        (
            clause.option.unwrap_or_default(),
            condition.unwrap_or_default(),
        )
    })
}

#[test]
fn what_stands_behind_a_heading_at_the_margin_is_of_no_option_before_it() {
    let behind = |margin: &str, heading: &str| {
        let text = format!(
            "1. Wall - Min 6 in. thick.\n\n2. Sealant - Min 1/2 in. deep.\n\n2A. Spray (Alternate to Item 2) - Min 1/8 in. wet.\n\n{margin}{heading}\n\n   Clips spaced 12 in. max.\n"
        );
        assert_eq!(of(&text, "1/8 in. wet").0, "2A", "{heading}");
        of(&text, "12 in. max").0
    };
    for heading in [
        "SCHEDULE (clips and screws)",
        "SUPPORT CLIPS",
        "4.2 Support of the packing",
        "Support of the packing",
    ] {
        assert_eq!(behind("", heading), "", "{heading}");
        // Farther in it is a part of the item.
        assert_eq!(behind("     ", heading), "2A", "{heading}");
    }
    let text = "Made of two parts, stirred.";
    assert_eq!(behind("", text), "2A");
}

#[test]
fn a_table_titled_at_the_margin_is_of_no_option_before_it() {
    let table = |margin: &str| {
        let text = format!(
            "1. Wall - Min 6 in. thick.\n\n2. Sealant - Min 1/2 in. deep.\n\n2A. Spray (Alternate to Item 2) - Min 1/8 in. wet.\n\n{margin}SCHEDULE (packing depths are minimums)\n\n| Rating | Packing depth, in. |\n|--------|--------------------|\n| 1 Hr   | 3                  |\n| 2 Hr   | 4                  |\n"
        );
        let reading = listing::read_text("table.txt", &text);
        let mut clauses = reading.clauses.into_iter();
        let depth = clauses.rfind(|clause| clause.property == "packing.depth");
        depth.and_then(|clause| clause.option).unwrap_or_default()
    };
    assert_eq!(table(""), "");
    assert_eq!(table("    "), "2A");
}

#[test]
fn what_stands_under_a_heading_of_one_of_several_kinds_is_of_that_kind() {
    let notes = |second: &str| {
        format!(
            "NOTES\n\n 1. BOARD 5/8\" THICK MIN.\n\n\nDETAIL A -- WALL ACROSS FLUTES\n\n 2. CLIPS 12\" O.C. MAX.\n 3. WOOL 4\" DEEP MIN.\n\n\n{second} -- WALL ALONG FLUTES\n\n 4. STRAPS 16\" O.C. MAX.\n\n\nFINISHES\n\n 5. SEALANT 1/2\" DEEP MIN.\n"
        )
    };
    let text = notes("DETAIL B");
    // A joint may have both details, at two places: which it has is for a person to say.
    let condition = |words: &str| of(&text, words).1;
    assert_eq!(condition("5/8\" THICK"), "");
    assert_eq!(condition("12\" O.C."), "\"DETAIL A\"");
    assert_eq!(condition("4\" DEEP"), "\"DETAIL A\"");
    assert_eq!(condition("16\" O.C."), "\"DETAIL B\"");
    assert_eq!(condition("1/2\" DEEP"), "");
    assert_eq!(of(&text, "16\" O.C.").0, "");
    // One alone is what all are.
    assert_eq!(of(&notes("ANCHORAGE"), "12\" O.C."), Default::default());
}

#[test]
fn sections_headed_by_kinds_hand_them_to_their_parts() {
    let sections = |kinds: [&str; 2]| {
        let [one, other] = kinds;
        format!(
            "1. General\n\n1.1 Floor 150 mm thick min.\n\n2. {one} – static joints\n\n2.1 Wool 100 mm deep min.\n\n3. {other} – moving joints\n\n3.1 Wool 120 mm deep min.\n\n4. Work\n\n4.1 Sealant 15 mm deep min.\n"
        )
    };
    for kinds in [
        ["Seal Type 1", "Seal Type 2"],
        ["Execution A", "Execution B"],
        ["Variant 1", "Variant 2"],
        ["System X", "System Y"],
    ] {
        let text = sections(kinds);
        let [one, other] = kinds.map(str::to_owned);
        assert_eq!(of(&text, "100 mm"), (one, String::new()));
        assert_eq!(of(&text, "120 mm"), (other, String::new()));
        assert_eq!(of(&text, "150 mm"), Default::default());
        assert_eq!(of(&text, "15 mm"), Default::default());
    }
    let alone = sections(["Seal Type 1", "Butt seals"]);
    assert_eq!(of(&alone, "100 mm"), Default::default());
}

#[test]
fn all_that_stands_behind_the_label_of_an_option_is_of_it() {
    let text = "1. Clips\n\n   Option A: 18 ga. clips 12 in. OC.\n\n   Option B: 16 ga. clips 24 in. OC.\n";
    for (words, own) in [("12 in.", "Option A"), ("24 in.", "Option B")] {
        assert_eq!(of(text, words).1, format!("\"{own}\""));
    }
}
