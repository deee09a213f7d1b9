//! Makers and their products in sentences: whose a product is, who makes it under which name. All names are invented.

use listing::{Requirement, read_text};

fn named(behind: &str) -> Vec<String> {
    let text = format!(
        "1. Wall - Min 6 in. thick concrete.\n\n2. Sealant - Min 1/2 in. deep.\n   {behind}\n\n3. Plate - Steel, min 1/8 in. thick.\n"
    );
    let mut all = Vec::new();
    for clause in read_text("sample", &text).clauses {
        if let Requirement::Named { names } = clause.requirement {
            all.extend(
                names
                    .iter()
                    .map(|name| format!("{}: {}", name.maker, name.product)),
            );
        }
    }
    all
}

#[track_caller]
fn check(behind: &str, expected: &[&str]) {
    assert_eq!(named(behind), expected, "{behind}");
}

#[test]
fn a_name_stands_behind_the_maker_whose_it_is() {
    check(
        "Both faces receive Orrindale Coatings' Orriflex 20.",
        &["Orrindale Coatings: Orriflex 20"],
    );
    check(
        "The joint is closed with Orrindale Chemical's Orriflex 20 and Orriflex 30, tooled.",
        &[
            "Orrindale Chemical: Orriflex 20",
            "Orrindale Chemical: Orriflex 30",
        ],
    );
    for words in [
        "Both faces receive the Manufacturer's Primer 20.",
        "Both faces receive nothing but not Orrindale Coatings' Orriflex 20.",
        "The Owner's Representative is told of it.",
        "Orrindale Coatings' Data Sheet 20 is followed.",
    ] {
        check(words, &[]);
    }
}

#[test]
fn an_entry_in_brackets_names_what_stands_before_it() {
    check(
        "The sealant (Orrindale Coatings, Orriflex 20) is tooled.",
        &["Orrindale Coatings: Orriflex 20"],
    );
    check(
        "THE SEALANT (ORRIFLEX 20 BY ORRINDALE COATINGS) IS TOOLED.",
        &["ORRINDALE COATINGS: ORRIFLEX 20"],
    );
    for words in [
        "The sealant (not Orrindale Coatings, Orriflex 20) is tooled.",
        "The sealant (Orrindale Coatings, Orriflex 20 or equal) is tooled.",
        "The sealant (Class A, Type II) is tooled.",
    ] {
        check(words, &[]);
    }
}

#[test]
fn a_maker_calls_its_product_by_a_name() {
    for words in [
        "Manufactured by Orrindale Ltd as Orriflex 20.",
        "The sealant is made by Orrindale Ltd and sold as Orriflex 20.",
        "The sealant is made by Orrindale Ltd under the name Orriflex 20.",
        "Supplied by Orrindale Ltd, called Orriflex 20.",
    ] {
        check(words, &["Orrindale Ltd: Orriflex 20"]);
    }
    check("The sealant is made by Orrindale Ltd as agreed.", &[]);
}

#[test]
fn in_capitals_only_what_it_is_made_by_is_a_maker() {
    check(
        "USE ORRIFLEX 20 BY ORRINDALE COATINGS.",
        &["ORRINDALE COATINGS: ORRIFLEX 20"],
    );
    check("KEEP PLASTOVEN BACK 3 FROM INSIDE FACE OF FRAMING.", &[]);
}

#[test]
fn a_plural_ends_a_firm_s_name() {
    check(
        "Use Orrindale Compounds Orriflex 20.",
        &["Orrindale Compounds: Orriflex 20"],
    );
}

#[test]
fn a_maker_in_brackets_may_end_with_a_stop() {
    check(
        "The sealant. Orriflex 20 or Orriflex 20 Spray (Orrindale Sealants Ltd.), on both faces.",
        &[
            "Orrindale Sealants Ltd: Orriflex 20",
            "Orrindale Sealants Ltd: Orriflex 20 Spray",
        ],
    );
}

#[test]
fn a_maker_stands_before_its_products_in_brackets_or_behind_a_colon() {
    check(
        "A latex type by Orrindale Chemical (OC Latex 10, OC Latex 20), gunned in.",
        &[
            "Orrindale Chemical: OC Latex 10",
            "Orrindale Chemical: OC Latex 20",
        ],
    );
    check(
        "Wool by Orrindale Mineral Wool: OMW Batt 60, OMW Batt 60 F.",
        &[
            "Orrindale Mineral Wool: OMW Batt 60",
            "Orrindale Mineral Wool: OMW Batt 60 F",
        ],
    );
    for words in [
        "A latex type by Orrindale Chemical (OC Latex 10 or equal), gunned in.",
        "A latex type by Orrindale Chemical (see Note 4), gunned in.",
    ] {
        check(words, &[]);
    }
}

#[test]
fn a_firm_that_did_something_else_makes_nothing() {
    for words in [
        "Drawn by Orrindale Partners (OP-14).",
        "Inspected by Orrindale Group (Office 2).",
        "Designed by Orrindale Partners: Fellmore 2.",
        "Filed by Orrindale Group under the name FW-12.",
    ] {
        check(words, &[]);
    }
}
