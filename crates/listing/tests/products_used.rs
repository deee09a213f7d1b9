//! Products that an item uses by name alone, and makers beside their products in further ways. All names are invented.

use listing::{Requirement, read_text};

/// The names that a reading asks for, materials left out.
fn named(text: &str) -> Vec<String> {
    let reading = read_text("sample", text);
    let clauses = reading.clauses.iter();
    let clauses = clauses.filter(|clause| clause.attribute == "product");
    let names = clauses.filter_map(|clause| match &clause.requirement {
        Requirement::Named { names } => Some(names),
        _ => None,
    });
    names
        .flatten()
        .map(|name| format!("{} = {}", name.maker, name.product))
        .collect()
}

#[track_caller]
fn check(words: &str, expected: &[&str]) {
    let text = format!(
        "1. Wall - Min 6 in. concrete.\n\n2. Sealant - Depth min 1/2 in. (13 mm) on both sides of the wall.\n\n         {words}\n"
    );
    assert_eq!(named(&text), expected, "{words}");
}

#[test]
fn a_name_is_used_where_its_part_or_what_is_done_with_it_stands_beside_it() {
    check(
        "Gun in Orvaseal TG, flush with the face.",
        &[" = Orvaseal TG"],
    );
    check(
        "The adhesive (Orvane EP-2) is mixed first.",
        &[" = Orvane EP-2"],
    );
    check(
        "Seal it with Orvaflex 40 or Orvaflex 60, tooled flush.",
        &[" = Orvaflex 40", " = Orvaflex 60"],
    );
    check("Sealant: Orvaflex 40, two-part.", &[" = Orvaflex 40"]);
    check(
        "The sealant Orvaflex 40 is laid not less than 10 mm deep.",
        &[" = Orvaflex 40"],
    );
}

#[test]
fn a_name_that_is_denied_opened_or_only_stands_there_is_not_asked_for() {
    check("Do not use Orvaflex 40 sealant.", &[]);
    check("Use Orvaflex 40 or another sealant.", &[]);
    check("Use Orvaflex 40 or equal.", &[]);
    check("Fresh sealant is kept from rain.", &[]);
    check("Preformed plugs, 6 in. long.", &[]);
    check("TOOL WITHIN 10 MIN.", &[]);
    check("In Config. 1 a bead is laid.", &[]);
    check("Mask 25 mm on both sides.", &[]);
    check("The specimen was burned in Tarnholt.", &[]);
}

#[test]
fn a_name_of_fasteners_is_none_of_the_part_that_they_fix() {
    check("Use Harrapin HX 27 pins, 1-1/4 in. long.", &[]);
}

#[test]
fn a_firm_stands_right_beside_its_products() {
    check("ORVANE PRODUCTS TW-100", &["ORVANE PRODUCTS = TW-100"]);
    check(
        "Orvaflex 40 or Orvaflex 60, ORVANE MINERAL CO.",
        &[
            "ORVANE MINERAL CO = Orvaflex 40",
            "ORVANE MINERAL CO = Orvaflex 60",
        ],
    );
    check(
        "Orvaflex 40 - Orvane Sealants Pty Ltd",
        &["Orvane Sealants Pty Ltd = Orvaflex 40"],
    );
    check(
        "ORVANE FIBRES A/S: Orvaslab 60, Orvaslab 80",
        &[
            "ORVANE FIBRES A/S = Orvaslab 60",
            "ORVANE FIBRES A/S = Orvaslab 80",
        ],
    );
    check(
        "Orvane Metals: Orvaslot FS; Orvaslot FS-LV",
        &[
            "Orvane Metals = Orvaslot FS",
            "Orvane Metals = Orvaslot FS-LV",
        ],
    );
    check(
        "ORVANE FIBRE INC. - BLANKET NO. 35",
        &["ORVANE FIBRE INC. = BLANKET NO. 35"],
    );
    check("ORVANE STEEL - Series SR", &["ORVANE STEEL = Series SR"]);
}

#[test]
fn what_only_looks_like_a_firm_beside_its_products_is_left() {
    check("ORVANE STEEL - all of the series SR", &[]);
    check("Orvane Perimeter Products Guide 204 June 2025", &[]);
    check("TRIM FIREPROOFING BACK 3\" FROM JT, U.N.O.", &[]);
    check(
        "Orvafill and Orvaboard are made by Orvane Passive Systems.",
        &[],
    );
}

/// The names of an item's sentence, with what the document says above it.
#[track_caller]
fn check_with(words: &str, above: &str, expected: &[&str]) {
    let text = format!(
        "{above}\n\n1. Wall - Min 6 in. concrete.\n\n2. Sealant - Depth min 1/2 in. (13 mm) on both sides of the wall.\n\n         {words}\n"
    );
    assert_eq!(named(&text), expected, "{above} {words}");
}

#[test]
fn a_name_that_may_have_its_maker_in_front_is_left() {
    let sentence = "Gun in Orvane Beadline 7, flush with the face.";
    let whole = [" = Orvane Beadline 7"];
    check_with(sentence, "Prepared in June.", &whole);
    // A firm of that word.
    check_with(
        "Gun in Orvane TB 7, flush with the face.",
        "Prepared for: Orvane Joint Products",
        &[],
    );
    check_with(sentence, "Prepared for: Orvane Joint Products", &[]);
    // The name without it.
    check_with(sentence, "The depth of Beadline 7 is measured wet.", &[]);
    check_with(
        "Seal it with \"Orvane Beadline 7\", flush.",
        "The depth of Beadline 7 is measured wet.",
        &[],
    );
    // Several things that are called by it.
    check_with(sentence, "Keep Orvane Topwrap 2 dry.", &[]);
    check_with(sentence, "Keep Orvane Beadline 9 dry.", &whole);
    // What stands beside it is no surer.
    check_with(
        "Gun in Selvaflex 4 or Orvane Beadline 7, flush with the face.",
        "Prepared for: Orvane Joint Products",
        &[],
    );
    check_with(
        "Gun in Orvane Groutings OS 27, flush with the face.",
        "Prepared in June.",
        &[],
    );
}

#[test]
fn a_name_that_is_listed_whole_is_taken_though_a_firm_begins_as_it_does() {
    check_with(
        "Gun in Orvane TB 7, flush with the face.",
        "Prepared for: Orvane Joint Products\n\nNames: Orvane TB 7 is kept dry.",
        &[" = Orvane TB 7"],
    );
}

#[test]
fn a_name_that_is_written_longer_elsewhere_is_left() {
    let sentence = "Seal it with Orvaseal, flush with the face.";
    check_with(sentence, "Prepared in June.", &[" = Orvaseal"]);
    check_with(sentence, "Keep Orvaseal 60 and Orvaseal 100 dry.", &[]);
}

#[test]
fn a_word_that_is_explained_and_a_document_that_is_named_are_no_use() {
    check("Seal it with \"Orvaflex 40\", flush.", &[" = Orvaflex 40"]);
    check("\"Orvaflex 40\" is the depth of the bead.", &[]);
    check(
        "Joint seal \"Orvaflex 40\", consisting of strip and coating.",
        &[],
    );
    check("Data sheet 14-D : Orvaflex 40 sealant for joints", &[]);
}

#[test]
fn a_word_alone_is_a_name_only_where_the_item_is_about_a_part() {
    let item = |title: &str| {
        named(&format!(
            "1. {title} - Density min 60 kg/m3.\n\n         Cut Orvawool strips 50 mm deep.\n"
        ))
    };
    assert_eq!(item("Packing"), [" = Orvawool"]);
    assert!(item("Wall").is_empty());
}

#[test]
fn a_firm_in_brackets_makes_all_names_before_it_that_begin_alike() {
    check(
        "Products: Orvastrip 60; Orvastrip 75 (Orvane Foams)",
        &["Orvane Foams = Orvastrip 60", "Orvane Foams = Orvastrip 75"],
    );
    // The first may be of another, and the second is no list by itself.
    check("Products: Selvastrip 60; Orvastrip 75 (Orvane Foams)", &[]);
    check(
        "Products: Orvastrip 60; Orvastrip 75 (top side)",
        &[" = Orvastrip 60", " = Orvastrip 75"],
    );
    check("Products: Selvastrip 60; Orvastrip 75 (top side)", &[]);
}

#[test]
fn a_maker_of_all_names_is_that_of_each() {
    check(
        "Orvaslab 4, Orvaslab 8 or Orvafelt 2, all of Orvane Mineral Company.",
        &[
            "Orvane Mineral Company = Orvaslab 4",
            "Orvane Mineral Company = Orvaslab 8",
            "Orvane Mineral Company = Orvafelt 2",
        ],
    );
    check("Orvaslab 4, all of Orvane Mineral Company or equal.", &[]);
    check("Orvaslab 4 and all slabs of Orvane Mineral Company.", &[]);
}
