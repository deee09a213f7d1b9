//! Makers and their products, in lines, in sentences and in lists at the end. All names are invented.

use listing::{Clause, Confidence, Expr, Reading, Requirement, read_text};

/// The names that a reading asks for: the clause's property, its option, and maker and product of each.
fn named(text: &str) -> Vec<String> {
    read_text("sample", text)
        .clauses
        .iter()
        .filter_map(|clause| {
            let Requirement::Named { names } = &clause.requirement else {
                return None;
            };
            let names: Vec<String> = names
                .iter()
                .filter(|name| !name.maker.is_empty())
                .map(|name| format!("{}: {}", name.maker, name.product))
                .collect();
            if names.is_empty() {
                return None;
            }
            let of = clause.option.as_ref();
            let of = of.map_or_else(String::new, |option| format!(" in {option}"));
            Some(format!("{}{of} = {}", clause.property, names.join(" | ")))
        })
        .collect()
}

#[track_caller]
fn check(text: &str, expected: &[&str]) {
    assert_eq!(named(text), expected, "{text}");
}

/// A joint with a packing of wool and a sealant, and what stands behind them.
fn joint(behind: &str) -> String {
    format!(
        "1. Floor - Min 5 in. thick concrete.\n\n2. Packing - Mineral wool, min 4 in. deep.\n\n3. Sealant - Min 1/2 in. deep.\n\n3A. Coating - Alternate to Item 3, min 1/8 in. wet.\n\n{behind}\n"
    )
}

fn named_clauses(reading: &Reading) -> impl Iterator<Item = &Clause> {
    let clauses = reading.clauses.iter();
    clauses.filter(|clause| matches!(clause.requirement, Requirement::Named { .. }))
}

fn has_words(reading: &Reading, words: &str) -> bool {
    reading.clauses.iter().any(|clause| {
        matches!(clause.requirement, Requirement::Prose) && clause.words.contains(words)
    })
}

#[test]
fn lines_of_an_item_name_its_products() {
    check(
        "1. Packing - Min 4 in. deep.\n   Torvane Mineral Wool -- Torvabatt 40\n   Ellisbeck Insulants -- EB Safe 4, EB Safe 6\n",
        &[
            "packing.product = Torvane Mineral Wool: Torvabatt 40 | Ellisbeck Insulants: EB Safe 4 | Ellisbeck Insulants: EB Safe 6",
        ],
    );
    check(
        "1. Packing - Min 4 in. deep.\n   Marrowby Insulants       Marrowby JS, Marrowby JS-2\n",
        &["packing.product = Marrowby Insulants: Marrowby JS | Marrowby Insulants: Marrowby JS-2"],
    );
    check(
        "1. Packing - Min 4 in. deep.\n   TORVANE FIBRE CO - Types 40,\n   40-XT\n",
        &["packing.product = TORVANE FIBRE CO: 40 | TORVANE FIBRE CO: 40-XT"],
    );
}

#[test]
fn a_row_at_the_end_is_of_the_item_that_it_names() {
    for list in [
        "Products\n   2    TAMSHAW WOOL LLC    Tamsbatt 6\n   3    BOLVARRY SEALANTS   Bolvaflex BW\n   3A   BOLVARRY SEALANTS   Bolvaspray\n",
        "Makers\n   Item 2 -- TAMSHAW WOOL LLC ..... Tamsbatt 6\n   Item 3 -- BOLVARRY SEALANTS .... Bolvaflex BW\n   Item 3A -- BOLVARRY SEALANTS ... Bolvaspray\n",
        "MATERIALS\n   2: TAMSHAW WOOL LLC - Tamsbatt 6\n   3: BOLVARRY SEALANTS - Bolvaflex BW\n   3A: BOLVARRY SEALANTS - Bolvaspray\n",
    ] {
        check(
            &joint(list),
            &[
                "packing.product = TAMSHAW WOOL LLC: Tamsbatt 6",
                "sealant.product = BOLVARRY SEALANTS: Bolvaflex BW",
                "coating.product in 3A = BOLVARRY SEALANTS: Bolvaspray",
            ],
        );
    }
}

#[test]
fn a_row_without_a_key_goes_on_with_the_one_above() {
    check(
        &joint(
            "* 2   TAMSHAW WOOL LLC    Tamsbatt 6,\n                          Tamsbatt 8\n      GRAYLUND FIBRE CO   GF-4\n",
        ),
        &[
            "packing.product = TAMSHAW WOOL LLC: Tamsbatt 6 | TAMSHAW WOOL LLC: Tamsbatt 8 | GRAYLUND FIBRE CO: GF-4",
        ],
    );
}

#[test]
fn a_row_may_name_the_part_in_place_of_the_item() {
    check(
        &joint(
            "PRODUCTS\n\n   Wool      Tamshaw Wools Ltd      Tamsbatt 6\n   Sealant   Bolvarry Sealants      Bolvaflex BW\n",
        ),
        &[
            "packing.product = Tamshaw Wools Ltd: Tamsbatt 6",
            "sealant.product = Bolvarry Sealants: Bolvaflex BW",
        ],
    );
}

#[test]
fn one_of_several_of_a_kind_is_not_the_kind() {
    // What Sealant A must be, Sealant B need not.
    let text = "1. Floor - Min 5 in. thick.\n\n2. Faces - Sealant A at the top, Sealant B below.\n\nPRODUCTS\n\n   Sealant A    Dreskol Sealing Ltd    Halloseal 2\n   Sealant B    Dreskol Sealing Ltd    Halloseal 7\n";
    let found = named(text);
    assert_eq!(found.len(), 2, "{found:?}");
    assert!(
        found.iter().all(|own| !own.starts_with("sealant.")),
        "{found:?}"
    );
}

#[test]
fn a_row_whose_item_is_not_there_stays_words() {
    let text = joint("Products\n   9    TAMSHAW WOOL LLC    Tamsbatt 6\n");
    let properties = named(&text);
    assert!(
        properties.iter().all(|own| !own.starts_with("packing.")),
        "{properties:?}"
    );
    // The first product of a list is not the first item's, a floor.
    let text = joint("Products\n   1    TAMSHAW WOOL LLC    Tamsbatt 6\n");
    let properties = named(&text);
    assert!(
        properties.iter().all(|own| !own.starts_with("floor.")),
        "{properties:?}"
    );
}

#[test]
fn a_limited_name_is_never_taken_alone() {
    let text = "1. Sealant - Min 1/2 in. deep.\n   KETTERASH COMPOUNDS CO - Ketterseal 300, Ketterseal 300 SL (floors only)\n";
    let reading = read_text("sample", text);
    assert!(has_words(&reading, "floors only"));
    assert!(named_clauses(&reading).all(|own| own.confidence == Confidence::WithDoubt));
    for words in [
        "KETTERASH COMPOUNDS CO - Ketterseal 300 SL (not for floors)",
        "KETTERASH COMPOUNDS CO - all but Ketterseal 300",
        "KETTERASH COMPOUNDS CO - any sealant except Ketterseal 300",
        "KETTERASH COMPOUNDS CO - Ketterseal 300 or equal",
        "KETTERASH COMPOUNDS CO - Ketterseal 300, which is discontinued in all joints",
    ] {
        let text =
            format!("1. Sealant - Min 1/2 in. deep.\n   {words}\n\n2. Wall - Min 4 in. thick.\n");
        assert_eq!(named(&text), [""; 0], "{words}");
        let reading = read_text("sample", &text);
        assert!(has_words(&reading, "Ketterseal 300"), "{words}");
    }
}

#[test]
fn a_number_in_the_brackets_of_a_name_is_still_read() {
    let reading = read_text(
        "sample",
        "1. Sealant - Min 1/2 in. deep.\n   KETTERASH COMPOUNDS CO - Ketterseal 300 (max 200 lin ft in a joint)\n",
    );
    let reads = reading
        .clauses
        .iter()
        .any(|clause| matches!(&clause.requirement, Requirement::Bound(bound) if bound.unit == measure::Unit::Foot));
    assert!(reads);
    assert!(has_words(
        &reading,
        "Ketterseal 300 (max 200 lin ft in a joint)"
    ));
    assert!(named_clauses(&reading).all(|own| own.confidence == Confidence::WithDoubt));
}

#[test]
fn a_name_with_a_number_in_brackets_is_one_of_its_list() {
    for (words, names) in [
        (
            "QUORRAL FIBRE CO -- Quorwool 40, Quorwool 80 (8 pcf)",
            "QUORRAL FIBRE CO: Quorwool 40 | QUORRAL FIBRE CO: Quorwool 80",
        ),
        (
            "Quorral Fibres - Quorwool 40 (joints to 50 mm); Quorwool 60",
            "Quorral Fibres: Quorwool 40 | Quorral Fibres: Quorwool 60",
        ),
    ] {
        let text =
            format!("1. Packing - Min 4 in. deep.\n   {words}\n\n2. Wall - Min 4 in. thick.\n");
        check(&text, &[&format!("packing.product = {names}")]);
        let reading = read_text("sample", &text);
        assert!(named_clauses(&reading).all(|own| own.confidence == Confidence::WithDoubt));
    }
    for words in [
        "QUORRAL FIBRE CO -- Quorwool 40, Quorwool 80 (not over 2 in.)",
        "QUORRAL FIBRE CO -- Quorwool 40 or equal (8 pcf)",
        "Set the slabs - Quorwool 40 (8 pcf)",
    ] {
        let text =
            format!("1. Packing - Min 4 in. deep.\n   {words}\n\n2. Wall - Min 4 in. thick.\n");
        assert_eq!(named(&text), [""; 0], "{text}");
    }
}

#[test]
fn a_list_below_a_table_is_led_by_nothing_of_it() {
    check(
        "1. Beam - Steel.\n2. Coating - Thickness as follows.\n\n   Wall      Flange     Web\n   -------------------------\n   1 hr      1/2        7/16\n   2 hr      9/16       5/8\n   -------------------------\n   PLASMERE COATINGS, Plasmere 15 or Plasmere 22.\n",
        &["coating.product = PLASMERE COATINGS: Plasmere 15 | PLASMERE COATINGS: Plasmere 22"],
    );
}

#[test]
fn headings_addresses_and_feet_name_no_maker() {
    for words in [
        "OPTION A - SPRAY",
        "HEAD OF WALL JOINT - GENERAL NOTES SHEET J-15",
        "ALTERNATE METHOD B - SEALANT",
        "TARNHOLLOW LISTING SERVICE     Listing THL-TW-418",
        "Yarrowgate Coatings, Industrial Park, Page 4",
        "WHERE TWO BEAMS MEET OVER THE WALL, TREAT EA. SEPARATELY.",
        "WALL MAY RUN PERP (DET A) OR PARALLEL (DET B) TO FLUTES.",
    ] {
        let text = format!("1. Sealant - Min 1/2 in. deep.\n\n   {words}\n");
        assert_eq!(named(&text), [""; 0], "{words}");
    }
}

#[test]
fn a_sentence_keeps_what_else_it_says() {
    let text = "1. Packing - Packing is \"Grenlav 80\" of Norrvik Isolering AS, min 100 mm deep.\n";
    check(
        text,
        &["packing.product = Norrvik Isolering AS: Grenlav 80"],
    );
    let reading = read_text("sample", text);
    let depth = |clause: &Clause| {
        clause.property == "packing.depth" && matches!(clause.requirement, Requirement::Bound(_))
    };
    assert!(reading.clauses.iter().any(depth));
}

#[test]
fn names_in_sentences() {
    for (words, names) in [
        (
            "The coating is Castramix 17 or Castramix 17-HS, both by Denholm Spray Works.",
            "Denholm Spray Works: Castramix 17 | Denholm Spray Works: Castramix 17-HS",
        ),
        (
            "The coating, \"Pellowseal 12\" or \"Pellowseal 14\" of the Pellowfield Rubber Company, is sprayed.",
            "Pellowfield Rubber Company: Pellowseal 12 | Pellowfield Rubber Company: Pellowseal 14",
        ),
        (
            "Product: Felsen FX (Rhoswen Fibres).",
            "Rhoswen Fibres: Felsen FX",
        ),
        (
            "Product: Veltemar Chemie - Veltemar 620 or Veltemar 620 NS",
            "Veltemar Chemie: Veltemar 620 | Veltemar Chemie: Veltemar 620 NS",
        ),
        (
            "Maker: Stannery Polymers. Product: Stancoat J.",
            "Stannery Polymers: Stancoat J",
        ),
        (
            "Penhallow Coatings, \"Penflex FW\"",
            "Penhallow Coatings: Penflex FW",
        ),
    ] {
        check(
            &format!("1. Coating - Min 1/8 in. wet.\n   {words}\n"),
            &[&format!("coating.product = {names}")],
        );
    }
}

#[test]
fn a_name_under_a_case_holds_only_there() {
    let text = "1. Coating - Where the wall is outside, \"Pellowseal 14\" of the Pellowfield Rubber Company is used.\n";
    let reading = read_text("sample", text);
    let in_words = |clause: &Clause| {
        let condition = clause.condition.as_ref();
        condition.is_some_and(|condition| matches!(condition.expr, Expr::Words(_)))
    };
    assert!(named_clauses(&reading).all(in_words));
    for words in [
        "Use no sealant other than \"Pellowseal 14\" of the Pellowfield Rubber Company.",
        "\"Pellowseal 14\" of the Pellowfield Rubber Company is not accepted.",
        "A word alone, Pellowseal, is no product.",
        "The joint is 3\" wide, the board 5/8\" thick.",
    ] {
        assert_eq!(
            named(&format!("1. Coating - {words}\n")),
            [""; 0],
            "{words}"
        );
    }
}

#[test]
fn what_stands_beside_the_part_is_not_the_part() {
    let text = "1. Sealant - The sealant is \"Telmofuge A\" of Telmoor Chemie AG, the primer \"Telmofuge P\" of Telmoor Chemie AG.\n";
    let found = named(text);
    let of_sealant: Vec<_> = found
        .iter()
        .filter(|own| own.starts_with("sealant.product"))
        .collect();
    assert_eq!(
        of_sealant,
        ["sealant.product = Telmoor Chemie AG: Telmofuge A"],
        "{found:?}"
    );
}

#[test]
fn a_row_may_say_what_part_its_item_is() {
    let rows = [
        // The first row of the list stands beside its title.
        "PRODUCTS    Item 2    Tamshaw Wools Ltd      Tamsbatt 6\n            Item 3    Bolvarry Sealants      Bolvaflex BW\n",
        "PRODUCTS\n\n   Wool (2.)      Tamshaw Wools Ltd      Tamsbatt 6\n   Sealant (3)    Bolvarry Sealants      Bolvaflex BW\n",
        "PRODUCTS\n\n   8.1   Wool       Tamshaw Wools Ltd      Tamsbatt 6\n   8.2   Sealant    Bolvarry Sealants      Bolvaflex BW\n",
        // A note isn't an item.
        "PRODUCTS\n\n   Wool (Note 3)        Tamshaw Wools Ltd      Tamsbatt 6\n   Sealant (Note 14)    Bolvarry Sealants      Bolvaflex BW\n",
    ];
    for rows in rows {
        check(
            &joint(rows),
            &[
                "packing.product = Tamshaw Wools Ltd: Tamsbatt 6",
                "sealant.product = Bolvarry Sealants: Bolvaflex BW",
            ],
        );
    }
}

#[test]
fn a_row_that_limits_its_name_stays_words() {
    for rows in [
        "PRODUCTS    Item 2    Tamshaw Wools Ltd      Tamsbatt 6 only\n",
        "PRODUCTS\n\n   8.1   Wool       Tamshaw Wools Ltd      Tamsbatt 6 or equal\n",
    ] {
        let text = joint(rows);
        check(&text, &[]);
        assert!(
            has_words(&read_text("sample", &text), "Tamsbatt 6"),
            "{text}"
        );
    }
}
