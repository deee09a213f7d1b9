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
