//! Entries behind the key of what they are for, where nothing else tells it. All names are invented.

use listing::{Confidence, Reading, Requirement, read_text};

/// The names that a reading asks for: the clause's property, its maker and product.
fn named(reading: &Reading) -> Vec<String> {
    let mut all = Vec::new();
    for clause in &reading.clauses {
        if let Requirement::Named { names } = &clause.requirement {
            for name in names {
                all.push(format!(
                    "{} = {}: {}",
                    clause.property, name.maker, name.product
                ));
            }
        }
    }
    all
}

fn joint(behind: &str) -> String {
    format!(
        "1. Wall - Min 6 in. thick concrete.\n\n2. Sealant - Min 1/2 in. deep. {behind}\n\n3. Plate - Steel, min 1/8 in. thick.\n"
    )
}

#[track_caller]
fn check(behind: &str, expected: &[&str]) {
    let reading = read_text("sample", &joint(behind));
    assert_eq!(named(&reading), expected, "{behind}");
}

#[test]
fn a_key_in_front_of_an_entry_is_none_of_its_names() {
    for (row, key) in [
        ("Makers: D1 Orrindale Coatings, Orriflex 20.", "d1"),
        ("Products: 3.A - Orrindale Coatings, Orriflex 20.", "3_a"),
        ("Makers:\n   7A   Orrindale Coatings   Orriflex 20", "7a"),
        ("Products: 7 Orrindale & Fell - Orriflex 20.", "7"),
    ] {
        let reading = read_text("sample", &joint(row));
        let maker = if row.contains('&') {
            "Orrindale & Fell"
        } else {
            "Orrindale Coatings"
        };
        assert_eq!(
            named(&reading),
            [format!("2:{key}_product = {maker}: Orriflex 20")],
            "{row}"
        );
        // What the key is the number of isn't known.
        let mut of_names = reading
            .clauses
            .iter()
            .filter(|own| matches!(own.requirement, Requirement::Named { .. }));
        assert!(
            of_names.all(|own| own.confidence == Confidence::WithDoubt),
            "{row}"
        );
    }
}

#[test]
fn a_code_that_begins_a_name_is_no_key() {
    check(
        "Products: OR-2 Caulk 20 (Orrindale Coatings).",
        &["sealant.product = Orrindale Coatings: OR-2 Caulk 20"],
    );
    check(
        "Products: 40-XT Caulk (Orrindale Coatings).",
        &["sealant.product = Orrindale Coatings: 40-XT Caulk"],
    );
}

#[test]
fn a_row_that_is_denied_or_limited_stays_words() {
    for row in [
        "Excluded products: D1 Orrindale Coatings, Orriflex 20.",
        "Makers: D1 Orrindale Coatings, Orriflex 20 only.",
        "Makers: D1 Orrindale Coatings, Orriflex 20 or equal.",
    ] {
        check(row, &[]);
    }
}

#[test]
fn a_name_that_runs_over_the_line_is_not_cut() {
    for text in [
        "\n   Orrindale Coatings - Orrikote\n   F2, Orrikote F3",
        "\n   Orrindale Coatings - Orrikote\n   F2; Orrikote F3",
    ] {
        let reading = read_text("sample", &joint(text));
        let all = named(&reading);
        assert!(
            !all.iter().any(|own| own.ends_with(": Orrikote")),
            "{all:?}"
        );
    }
}

#[test]
fn a_word_over_the_names_of_all_parts_labels_them() {
    for text in [
        "\n   Makers     Orrindale Coatings: Orriflex 20",
        "\n   Products   Orrindale Coatings, Orriflex 20",
    ] {
        check(text, &["sealant.product = Orrindale Coatings: Orriflex 20"]);
    }
}

#[test]
fn a_name_that_begins_as_the_one_before_has_its_maker() {
    check(
        "\n   Orrindale Coatings: ORRINDALE SEAL D Spray; ORRINDALE SEAL D Brush",
        &[
            "sealant.product = Orrindale Coatings: ORRINDALE SEAL D Spray",
            "sealant.product = Orrindale Coatings: ORRINDALE SEAL D Brush",
        ],
    );
}

#[test]
fn entries_with_their_keys_stand_in_cells_of_a_line() {
    for text in [
        "\n   Sources   [A] Orrindale Coatings - Orriflex 20   [B] Fellmore Chemical - Fellmast 7",
        "\n   <4>   Orrindale Coatings   \"Orriflex 20\"\n   <5>   Fellmore Chemical   \"Fellmast 7\"",
    ] {
        let all = named(&read_text("sample", &joint(text)));
        let names: Vec<_> = all
            .iter()
            .filter_map(|own| own.split_once(" = "))
            .map(|(_, name)| name)
            .collect();
        assert_eq!(
            names,
            [
                "Orrindale Coatings: Orriflex 20",
                "Fellmore Chemical: Fellmast 7"
            ],
            "{text}"
        );
    }
}

#[test]
fn in_capitals_a_key_parts_a_list_from_an_address() {
    for (row, count) in [
        ("NOTE 4: ORRINDALE WOOL, ORRIBATT 4", 1),
        ("ORRINDALE WOOL, ORRIBATT 4", 0),
        ("200 ORRINDALE ROAD, EASTMERE", 0),
        ("12 Orrin Works, Unit 4", 0),
        ("12 Orrin Works, Eastmere EM4 7", 0),
    ] {
        let all = named(&read_text("sample", &joint(&format!("\n   {row}"))));
        assert_eq!(all.len(), count, "{row}: {all:?}");
    }
}

#[test]
fn of_two_cells_the_maker_is_the_one_that_can_only_be_one() {
    for (row, expected) in [
        (
            "Orriflex 20      Chemiewerk Orrindal",
            "Chemiewerk Orrindal: Orriflex 20",
        ),
        (
            "Chemiewerk Orrindal      Orriflex 20",
            "Chemiewerk Orrindal: Orriflex 20",
        ),
    ] {
        check(
            &format!("\n   {row}"),
            &[&format!("sealant.product = {expected}")],
        );
    }
    check("\n   Orriflex Spritz      Chemiewerk Orrindal", &[]);
}

#[test]
fn a_firm_s_form_in_capitals_is_no_code() {
    check(
        "\n   Orriwool 80         Orrindal Stenull AB\n   Orriwool 80 ALU     Orrindal Stenull AB",
        &[
            "sealant.product = Orrindal Stenull AB: Orriwool 80",
            "sealant.product = Orrindal Stenull AB: Orriwool 80 ALU",
        ],
    );
    // Behind its maker, a product may have such letters, too.
    check(
        "\n   ORRINDALE SEALANTS -- Orriguard AS",
        &["sealant.product = ORRINDALE SEALANTS: Orriguard AS"],
    );
}

#[test]
fn a_number_in_a_circle_is_a_key() {
    check(
        "\n\n   ①  Orrindale Fibre: Orriwool 4, Orriwool 6.\n   ②  Tarrel Chemical: Tarrelast S.",
        &[
            "2:①_product = Orrindale Fibre: Orriwool 4",
            "2:①_product = Orrindale Fibre: Orriwool 6",
            "2:②_product = Tarrel Chemical: Tarrelast S",
        ],
    );
}

#[test]
fn a_row_whose_label_is_an_option_s_is_in_doubt() {
    let text = "1. Wall - Min 6 in. thick concrete.\n\n2. Sealant - Min 1/2 in. deep.\n\n3. Backer - Closed cell.\n\n   Sealant               Orrindale Coatings     Orriflex 20\n   Backer (Option F)     Tarrel Insulations     Tarrelrod 4\n";
    let reading = read_text("sample", text);
    let of = |property: &str| {
        let mut clauses = reading.clauses.iter();
        clauses
            .find(|own| own.property == property)
            .map(|own| own.confidence)
    };
    assert_eq!(of("sealant.product"), Some(Confidence::ByRule));
    assert_eq!(of("backer.product"), Some(Confidence::WithDoubt));
}

#[test]
fn signs_part_entries_and_names() {
    check(
        "\n   ORRINDALE COATINGS: Orriflex 20, Orriflex 30  •  TARREL & OAKE: Tarrelast 5",
        &[
            "sealant.product = ORRINDALE COATINGS: Orriflex 20",
            "sealant.product = ORRINDALE COATINGS: Orriflex 30",
            "sealant.product = TARREL & OAKE: Tarrelast 5",
        ],
    );
    check(
        "\n   Orrindale Coatings: Orriflex 20 / Orriflex 20 Grey · Orriflex 30",
        &[
            "sealant.product = Orrindale Coatings: Orriflex 20",
            "sealant.product = Orrindale Coatings: Orriflex 20 Grey",
            "sealant.product = Orrindale Coatings: Orriflex 30",
        ],
    );
}

#[test]
fn a_short_form_labels_an_entry() {
    check(
        "\n\n   MATERIALS: MW - ORRINDALE INSULATION LLC, ORRIPAD 4.",
        &["2:mw_product = ORRINDALE INSULATION LLC: ORRIPAD 4"],
    );
    check(
        "\n\n   MATERIALS: NOT - ORRINDALE INSULATION LLC, ORRIPAD 4.",
        &[],
    );
}

#[test]
fn makers_before_families_of_names_that_are_listed_whole_are_no_products() {
    check(
        "Orriwool 40 or Orriwool 60 is used.\n\n   Makers: Orriwool - ORRINDALE WOOLS.",
        &[],
    );
}

#[test]
fn rows_of_a_headed_table_go_to_the_items_that_they_number() {
    let text = "1. Wall - Min 6 in. thick concrete.\n\n2. Sealant - Min 1/2 in. deep.\n\n3. Packing - Min 4 in. deep.\n\n*  Bears the mark.\n\n   Item    Maker                    Product\n   2       Orrindale Coatings       Orriflex 20\n   3       Tarrel Insulations       Tarrelbatt 4\n";
    assert_eq!(
        named(&read_text("sample", text)),
        [
            "sealant.product = Orrindale Coatings: Orriflex 20",
            "packing.product = Tarrel Insulations: Tarrelbatt 4",
        ]
    );
}

#[test]
fn a_list_that_a_sheet_labels_stands_under_its_label() {
    let lines = "\n   Depth      1/2 in. min\n   Lap        1/2 in. min onto the wall";
    check(
        &format!("{lines}\n   Makers     Orrindale Coatings: Orriflex 20"),
        &["sealant.product = Orrindale Coatings: Orriflex 20"],
    );
    for above in ["Not accepted", "Withdrawn", "Not to be used:"] {
        check(
            &format!("{lines}\n   {above}\n   Makers     Orrindale Coatings: Orriflex 20"),
            &[],
        );
    }
}

#[test]
fn a_maker_and_its_product_stand_in_two_fields() {
    for fields in [
        "Trade name: Orriflex 20\n   Manufacturer: Orrindale Coatings Ltd",
        "Manufacturer:  Orrindale Coatings Ltd\n   Product:       Orriflex 20",
        "Product name     Orriflex 20\n   Manufacturer     Orrindale Coatings Ltd",
    ] {
        check(
            &format!("\n   {fields}"),
            &["sealant.product = Orrindale Coatings Ltd: Orriflex 20"],
        );
    }
    for fields in [
        "Sponsor: Orrindale Coatings Ltd\n   Test report: Orriflex 20",
        "Product: Orriflex 20 or equal\n   Manufacturer: Orrindale Coatings Ltd",
    ] {
        let all = named(&read_text("sample", &joint(&format!("\n   {fields}"))));
        assert!(
            all.iter().all(|own| own.ends_with(" = : Orriflex 20")),
            "{all:?}"
        );
    }
}
