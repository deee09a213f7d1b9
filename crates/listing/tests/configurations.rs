//! Configurations side by side, in the sentences of an item, on lines of it, and as headings over items: what is said of one is asked of no other, and what
//! is said of all is asked of each.

/// The options of the clauses that bound the numbers written so, in order: `1 in.` of two clauses are two.
fn options(text: &str) -> Vec<(String, String)> {
    let reading = listing::read_text("configurations.txt", text);
    let bounds = reading.clauses.into_iter().filter_map(|clause| {
        let at = clause.bound()?.at;
        Some((at.of(text).to_owned(), clause.option.unwrap_or_default()))
    });
    bounds.collect()
}

#[track_caller]
fn check(text: &str, expected: &[(&str, &str)]) {
    let read = options(text);
    let read: Vec<(&str, &str)> = read
        .iter()
        .map(|(number, option)| (number.as_str(), option.as_str()))
        .collect();
    assert_eq!(read, expected, "{text}");
}

const A: &str = "Configuration A";
const B: &str = "Configuration B";
const C: &str = "Configuration C";

#[test]
fn what_is_said_of_all_is_of_none() {
    for all in [
        "Both configurations: laid in strips min 24 in. long.",
        "In either configuration strips are min 24 in. long.",
        "All configurations - strips min 24 in. long.",
        "Both: strips min 24 in. long.",
        "In all cases, strips min 24 in. long.",
        // Each was said in a sentence; a third that names none isn't of the first.
        "Strips min 24 in. long.",
    ] {
        let text = format!(
            "1. Packing - Configuration A: wool min 5 in. deep. Configuration B: wool min 7 in. deep. {all}\n"
        );
        check(&text, &[("5 in.", A), ("7 in.", B), ("24 in.", "")]);
    }
    check(
        "1. Packing - Configuration A: wool min 5 in. deep; both configurations: min 6 pcf.\n",
        &[("5 in.", A), ("6 pcf", "")],
    );
}

#[test]
fn a_sentence_is_of_the_configuration_that_the_one_before_named() {
    check(
        "1. Packing - Configuration A: wool min 5 in. deep. Laid in strips min 24 in. long. Configuration B: wool min 7 in. deep. Laid in strips min 36 in. long.\n",
        &[("5 in.", A), ("24 in.", A), ("7 in.", B), ("36 in.", B)],
    );
}

#[test]
fn a_configuration_heads_all_behind_its_name() {
    check(
        "1. Packing - One of the following: Configuration A - wool min 5 in. deep; min 4 pcf; laid in strips min 24 in. long; Configuration B - wool min 7 in. deep; min 6 pcf.\n",
        &[
            ("5 in.", A),
            ("4 pcf", A),
            ("24 in.", A),
            ("7 in.", B),
            ("6 pcf", B),
        ],
    );
}

#[test]
fn capitals_begin_a_sentence_at_each_configuration() {
    check(
        "1. FILL - CONFIGURATION A: 1/4 IN. DEEP MIN. CONFIGURATION B: 1/2 IN. DEEP MIN. CONFIGURATION C: 5/8 IN. DEEP MIN.\n",
        &[("1/4 IN.", A), ("1/2 IN.", B), ("5/8 IN.", C)],
    );
    check(
        "1. FILL - CONFIGURATION A: 1/4 IN. DEEP.\nCONFIGURATION B: 1/2 IN. DEEP.\n",
        &[("1/4 IN.", A), ("1/2 IN.", B)],
    );
    check(
        "1. SEALS - ONE OF THE FOLLOWING:\nCONFIGURATION A - PACKING 5 IN. DEEP, FILL 1/4 IN.\nCONFIGURATION B - PACKING 7 IN. DEEP, FILL 1/2 IN.\n",
        &[("5 IN.", A), ("1/4 IN.", A), ("7 IN.", B), ("1/2 IN.", B)],
    );
    // An item that has one configuration only is of it.
    check(
        "1. FILL - CONFIGURATION A: 1/4 IN. DEEP MIN.\n2. WALL - 6 IN. THICK MIN.\n",
        &[("1/4 IN.", A), ("6 IN.", "")],
    );
}

#[test]
fn headings_of_configurations_are_over_their_items() {
    check(
        "CONFIGURATION A - FLOOR TO FLOOR\n\n1. Packing. Min 5 in. deep.\n2. Fill. Min 1/4 in. deep.\n\nCONFIGURATION B - FLOOR TO WALL\n\n3. Packing. Min 7 in. deep.\n\nBOTH CONFIGURATIONS\n\n4. Movement. Max 20 percent.\n",
        &[
            ("5 in.", A),
            ("1/4 in.", A),
            ("7 in.", B),
            ("20 percent", ""),
        ],
    );
    // Within one item they tell its text apart, and the next is of none.
    check(
        "1. Packing. Of wool.\n\nConfiguration A\n\nMin 5 in. deep.\n\nConfiguration B\n\nMin 7 in. deep.\n\n2. Fill. Min 1/4 in. deep.\n",
        &[("5 in.", A), ("7 in.", B), ("1/4 in.", "")],
    );
}

#[test]
fn parts_that_count_anew_have_items_of_their_own() {
    let text = "1. Wall. Min 6 in. thick.\n\nSystem A\n\n2. Packing. Min 5 in. deep.\n3. Fill. Min 1/4 in. deep.\n\nSystem B\n\n2. Packing. Min 7 in. deep.\n3. Fill. Min 1/2 in. deep.\n3A. Spray. (Alternate to Item 3) Min 1/8 in. wet.\n";
    check(
        text,
        &[
            ("6 in.", ""),
            ("5 in.", "System A"),
            ("1/4 in.", "System A"),
            ("7 in.", "System B"),
            ("1/2 in.", "System B"),
            ("1/8 in.", "System B-3A & System B"),
        ],
    );
    let reading = listing::read_text("configurations.txt", text);
    let paths: Vec<&str> = reading
        .items
        .iter()
        .map(|item| item.path.as_str())
        .collect();
    assert_eq!(
        paths,
        ["1", "2", "3", "System B-2", "System B-3", "System B-3A"]
    );
    let replaced = reading.options.iter().map(|group| group.id.as_str());
    assert!(
        replaced.clone().any(|id| id == "System B-3"),
        "{:?}",
        replaced.collect::<Vec<_>>()
    );
    // An alternate of the whole counts from one behind the items that it may replace; that it is built a person must say.
    let text = "1. Wall. Min 6 in. thick.\n2. Packing. Min 5 in. deep.\n\nSYSTEM ALTERNATE 1\n\n1. Packing. Min 7 in. deep.\n\nSYSTEM ALTERNATE 2\n\n1. Packing. Min 8 in. deep.\n";
    let reading = listing::read_text("configurations.txt", text);
    let last = reading.clauses.last();
    let condition = last.and_then(|clause| clause.condition.as_ref());
    let condition = condition.map(|condition| condition.expr.to_string());
    assert_eq!(condition.as_deref(), Some("\"SYSTEM ALTERNATE 2\""));
    assert!(last.is_some_and(|clause| clause.item == "SYSTEM ALTERNATE 2-1"));
    // A number that names no part begins none.
    let text = "1. Wall. Min 6 in. thick.\n2. Packing. Min 5 in. deep.\n\nSystem B is described in\n\n1. the sheet of the maker.\n";
    let reading = listing::read_text("configurations.txt", text);
    assert_eq!(reading.items.len(), 2);
}

#[test]
fn a_long_heading_names_its_configuration_too() {
    let text = "CONFIGURATION A - CONCRETE OR MASONRY WALLS\n\n1A. JOINT. WIDTH NOT TO EXCEED 4 IN.\n\n2A. PACKING. MINERAL WOOL, MIN 5 IN. DEEP.\n\n\
                CONFIGURATION B - CONCRETE OR MASONRY WALL TO GYPSUM WALL\n\n1B. JOINT. WIDTH 2 IN. MAX.\n\n\
                LM-61          LOXMERE          REISSUED 06-15-2019\n\n2B. PACKING. MINERAL WOOL, MIN 3 IN. DEEP.\n\n\
                LM-61          LOXMERE          REISSUED 06-15-2019\n";
    check(
        text,
        &[("4 IN.", A), ("5 IN.", A), ("2 IN.", B), ("3 IN.", B)],
    );
}

#[test]
fn configurations_listed_in_the_head_head_nothing() {
    let text = "Configuration A - fluted deck above\nConfiguration B - solid concrete slab above\n\n1. Joint. Width max 4 in.\n\n2. Packing. Min 5 in. deep.\n";
    check(text, &[("4 in.", ""), ("5 in.", "")]);
}

#[test]
fn parts_are_given_out_to_configurations_by_name() {
    let text = |told: &str| {
        format!(
            "1. FLOOR - {told}\n\n  1A. Flat Concrete - Min 4-1/2 in. thick.\n\n  1B. Deck - Max 3 in. deep.\n\n2. SEAL - Min 1 in. deep.\n"
        )
    };
    let of_parts = |told: &str| -> Vec<Option<String>> {
        let reading = listing::read_text("sample", &text(told));
        let parts = reading
            .clauses
            .iter()
            .filter(|clause| ["1A", "1B"].contains(&clause.item.as_str()));
        parts.map(|clause| clause.option.clone()).collect()
    };
    let named = |names: [&str; 2]| names.map(|name| Some(name.to_owned())).to_vec();
    assert_eq!(
        of_parts("Use Item 1A for Config A and C or Item 1B for Config B."),
        named(["Configuration A or Configuration C", "Configuration B"])
    );
    assert_eq!(
        of_parts("Use Item 1A with Configuration A, Item 1B with Configuration B."),
        named(["Configuration A", "Configuration B"])
    );
    // Both in one, or more than that: all of it stays asked for.
    for told in [
        "Use Item 1A for Config A and Item 1B for Config A.",
        "Use Item 1A for Config A over walls or Item 1B for Config B.",
        "Use Item 1A for Config A.",
        "Do not use Item 1A for Config A or Item 1B for Config B.",
    ] {
        assert_eq!(of_parts(told), [None, None], "{told}");
    }
}

#[test]
fn a_title_may_name_its_kind_before_the_thing() {
    check(
        "1. JOINT - Max 2 in. wide.\n2. SEAL\n   A. System A packing - Wool min 5 in. deep.\n   B. System A sealant - Min 1/2 in. deep.\n   C. System B filler - Blanket min 8 pcf.\n",
        &[
            ("2 in.", ""),
            ("5 in.", "System A"),
            ("1/2 in.", "System A"),
            ("8 pcf", "System B"),
        ],
    );
    // One alone names nothing that a joint might be instead.
    check(
        "1. JOINT - Max 2 in. wide.\n2. System A packing - Wool min 5 in. deep.\n",
        &[("2 in.", ""), ("5 in.", "")],
    );
    check(
        "1.1 Joint. Max 2 in. wide.\n2.1 ARRANGEMENT A - static joints. Wool min 5 in. deep.\n2.2 ARRANGEMENT B - moving joints. Wool min 7 in. deep.\n2.3 Clips (Arrangement B, joints over 1 in.). Spaced max 24 in. OC.\n",
        &[("2 in.", ""), ("5 in.", A), ("7 in.", B), ("24 in.", B)],
    );
}

#[test]
fn a_part_that_may_stand_in_for_another_is_an_alternate() {
    check(
        "1. JOINT - Max 2 in. wide.\n2. SEAL\n   a. Packing. Wool min 5 in. deep.\n   b. Sealant. Min 1/2 in. deep.\n   c. Spray may stand in for the sealant of 2.b. It shall be min 1/8 in. thick.\n",
        &[
            ("2 in.", ""),
            ("5 in.", ""),
            ("1/2 in.", ""),
            ("1/8 in.", "2c"),
        ],
    );
    check(
        "1. JOINT - Max 2 in. wide.\n2. SEAL\n   A. Packing - Wool min 5 in. deep.\n   B. Sealant - Min 1/2 in. deep.\n      1. Spray in lieu of sealant: Wet film 1/8 in. min.\n",
        &[
            ("2 in.", ""),
            ("5 in.", ""),
            ("1/2 in.", ""),
            ("1/8 in.", "2B1"),
        ],
    );
}
