//! Things that an item asks for only in some joints: how far that reaches in it.

/// The bounds of an item with the words of their conditions.
fn cases(text: &str, item: &str) -> Vec<(String, Option<String>)> {
    let reading = listing::read_text("brought_in.txt", text);
    let bounds = reading
        .clauses
        .into_iter()
        .filter(|clause| clause.item == item && clause.bound().is_some());
    bounds
        .filter_map(|clause| {
            let bound = clause.bound()?;
            let value = bound.low().or(bound.high())?.to_string();
            Some((value, clause.condition.map(|own| own.words)))
        })
        .collect()
}

#[track_caller]
fn check(item: &str, expected: &[(&str, Option<&str>)]) {
    let text = format!(
        "1. Floor - Concrete, min 4-1/2 in. thick.\n2. {item}\n3. Sealant - Min 1/2 in. deep.\n"
    );
    let found = cases(&text, "2");
    let found: Vec<(&str, Option<&str>)> = found
        .iter()
        .map(|(value, case)| (value.as_str(), case.as_deref()))
        .collect();
    assert_eq!(found, expected, "{item}");
}

#[test]
fn what_goes_on_about_a_thing_stands_under_what_brought_it_in() {
    let case = Some("For joints wider than 4 in.");
    check(
        "Supports - For joints wider than 4 in., galvanized steel Z clips, 2 in. wide, carry the packing. The lower leg reaches 3 in. into the packing. Clips are set 12 in. apart. The packing is 5 in. deep.",
        &[
            ("2 in.", case),
            ("3 in.", case),
            ("12 in.", case),
            ("5 in.", None),
        ],
    );
    // A sentence that begins with something else speaks of that.
    check(
        "Supports - For joints wider than 4 in., galvanized steel Z clips, 2 in. wide, carry the packing. Wool is 5 in. deep. Pack 3 in. deep.",
        &[("2 in.", case), ("5 in.", None), ("3 in.", None)],
    );
}

#[test]
fn an_item_may_say_behind_a_comma_where_its_thing_is_needed() {
    let case = Some("used in joints over 4 in.");
    check(
        "Z-clips - 1 in. wide, 20 gauge galvanized steel, used in joints over 4 in. at 24 in. max centers.",
        &[("1 in.", case), ("20 gauge", case), ("24 in.", case)],
    );
    // What every joint has is never left out for it.
    check(
        "Packing - Mineral wool, 4 pcf, used in joints over 4 in. at 5 in. depth.",
        &[("4 pcf", None), ("5 in.", None)],
    );
    check(
        "Hangers - Required over 3 in. only. Two clips per stud space, 20 gauge.",
        &[
            ("2", Some("Required over 3 in. only")),
            ("20 gauge", Some("Required over 3 in. only")),
        ],
    );
}

#[test]
fn what_a_sentence_begins_with_governs_behind_a_semicolon() {
    let case = Some("Where insulation height exceeds 48 in.");
    check(
        "Girts - Where insulation height exceeds 48 in.; use 20 ga girts, 1 in. wide.",
        &[("20 gauge", case), ("1 in.", case)],
    );
}

#[test]
fn a_band_may_be_named_with_both_of_its_limits() {
    let text = "1. Floor\n\nConcrete, min 200 mm thick.\n\n2. Joint\n\nBand A – joint width up to 25 mm\n\nThe compound is 12 mm deep.\n\nBand B – joint width over 25 mm, up to 50 mm\n\nThe compound is 15 mm deep.\n";
    let found = cases(text, "2");
    let case = |value: &str, words: &str| (value.to_owned(), Some(words.to_owned()));
    assert_eq!(
        found,
        [
            case("12 mm", "Band A – joint width up to 25 mm"),
            case("15 mm", "Band B – joint width over 25 mm, up to 50 mm"),
        ]
    );
}

#[test]
fn a_heading_may_name_its_option_in_brackets() {
    let text = "1. COVER: 1/4 IN. THK.\n\nFIRE BLANKET (OPTION A)\n\n2. BLANKET: 8 PCF, DEPTH 6 IN. MIN.\n\nFOIL-FACED MODULE (OPTION B)\n\n3. MODULE: 6 PCF MIN.\n\nMISC.\n\n4. SLEEVES: 12 IN. MIN. FROM JOINT EDGE.\n";
    let of = |item: &str| {
        cases(text, item)
            .into_iter()
            .map(|(_, case)| case)
            .collect::<Vec<_>>()
    };
    assert_eq!(of("1"), [None]);
    assert_eq!(
        of("2"),
        [Some("OPTION A".to_owned()), Some("OPTION A".to_owned())]
    );
    assert_eq!(of("3"), [Some("OPTION B".to_owned())]);
    assert_eq!(of("4"), [None]);
}
