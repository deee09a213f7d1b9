//! Numbers in sentences that name another part than theirs: the fill beside what it lies on, an item called by its number, what is only likened or provided
//! for. The wordings are invented; what they mean is common practice.

mod common;

use common::{check, check_item, clauses, unread_in};

#[test]
fn fill_material_is_no_packing() {
    check_item(
        "SEALANT - When forming material is not used, fill material thickness shall be min 1 in.",
        &["2:fill_material_thickness: at least 1 in if \"When forming material is not used\""],
    );
    check_item(
        "PACKING - Fill material shall be min 1/2 in. thick.",
        &["2:fill_material_thickness: at least 1/2 in"],
    );
    check_item(
        "PACKING - Packing shall be min 1/2 in. thick.",
        &["packing.thickness: at least 1/2 in"],
    );
}

#[test]
fn a_measure_is_of_what_is_named_right_behind_it() {
    check_item(
        "PACKING - Recessed to allow min 1/2 in. depth of sealant.",
        &["sealant.depth: at least 1/2 in"],
    );
    check_item(
        "PACKING - Packing recessed to leave min 1/2 in. deep recess for sealant.",
        &["2:packing_depth: at least 1/2 in"],
    );
    // Another that is as thick is no measure of it.
    assert!(
        !clauses("1. SEALANT - Depth equal to the full 1-1/4 in. thickness of the packing.\n")
            .iter()
            .any(|clause| clause.starts_with("packing.")),
    );
}

#[test]
fn what_is_laid_on_a_thing_has_its_own_depth() {
    for over in [
        "Applied over min 1 in. dia backer rod, to a depth of min 1/2 in.",
        "Applied over min 1 in. dia backer rod to a depth of min 1/2 in.",
    ] {
        check_item(
            &format!("SEALANT - {over}"),
            &[
                "backer.diameter: at least 1 in",
                "sealant.depth: at least 1/2 in",
            ],
        );
    }
    check_item(
        "SEALANT - Applied to backer rod to a min depth of 1/2 in.",
        &["sealant.depth: at least 1/2 in"],
    );
}

#[test]
fn what_stands_in_brackets_or_elsewhere_takes_no_number() {
    check_item(
        "PACKING - Min 6 in. deep (full wall thickness).",
        &["packing.depth: at least 6 in"],
    );
    check_item(
        "PACKING - Pieces shall have tight joints and be min 24 in. long.",
        &["packing.length: at least 24 in"],
    );
    check_item(
        "RUNNER - The runner is lined with a 2 in. wide strip.",
        &["2:runner_width: nominal 2 in"],
    );
    check_item(
        "SEALANT - Regardless of joint width, min 1/2 in. deep.",
        &["sealant.depth: at least 1/2 in"],
    );
    check_item(
        "SEALANT - With or without packing, min 1/2 in. deep.",
        &["sealant.depth: at least 1/2 in"],
    );
    check_item(
        "JOINT - Max 4 in. wide provided that packing is min 6 in. deep.",
        &["joint.width: at most 4 in", "packing.depth: at least 6 in"],
    );
    check_item(
        "PACKING - Packing 4 in. x joint width.",
        &["packing.width: nominal 4 in"],
    );
}

#[test]
fn an_item_called_by_its_number_is_what_its_title_names() {
    let listing = |said: &str| {
        clauses(&format!(
            "1. FLOOR - 5 in. thick min.\n\n2. PACKING - Of mineral fiber.\n\n3. SEALANT - Min 1/2 in. deep. {said}\n"
        ))
    };
    for said in [
        "The depth of Item 2 shall be min 6 in.",
        "Item 2 shall be min 6 in. deep.",
        "Item 2: min 6 in. deep.",
    ] {
        let found = listing(said);
        assert_eq!(
            found.last().map(String::as_str),
            Some("packing.depth: at least 6 in"),
            "{said} {found:?}"
        );
    }
    // Nobody knows what an item is that isn't there.
    assert_eq!(
        listing("The depth of Item 9 shall be min 6 in.")
            .last()
            .map(String::as_str),
        Some("3:item_9_depth: at least 6 in"),
    );
    // As thick as another item says nothing of that item.
    assert!(
        !listing("Depth equal to thickness of Item 2, max 6 in.")
            .iter()
            .any(|clause| clause.starts_with("packing.")),
    );
}

#[test]
fn a_note_behind_the_last_item_is_none_of_it() {
    check(
        "1. FLOOR - 5 in. thick min.\n\n2. PACKING - Mineral fiber. See Note 1.\n\n3. SEALANT - Min 1/2 in. deep.\n\nNote 1 - Min 4 in. deep.\n",
        &[
            "floor.thickness: at least 5 in",
            "sealant.depth: at least 1/2 in",
            "packing.depth: at least 4 in",
        ],
    );
    // Of two items that cite it nobody knows which it is about.
    check(
        "1. FLOOR - 5 in. thick min.\n\n2. PACKING - Mineral fiber. See Note 1.\n\n3. SEALANT - Min 1/2 in. deep. See Note 1.\n\nNote 1 - Min 4 in. deep.\n",
        &[
            "floor.thickness: at least 5 in",
            "sealant.depth: at least 1/2 in",
            "[Note 1]:depth: at least 4 in",
        ],
    );
    check(
        "1. FLOOR - 5 in. thick min.\n\n2. SEALANT - Min 1/2 in. deep.\n\nNOTES:\n1. Sealant min 1 in. deep in 3 hr walls.\n2. Min 4 in. deep in 2 hr walls.\n",
        &[
            "floor.thickness: at least 5 in",
            "sealant.depth: at least 1/2 in",
            "sealant.depth: at least 1 in if joint.rating = 3 hr",
            "2:notes_depth: at least 4 in if joint.rating = 2 hr",
        ],
    );
}

#[test]
fn what_lets_something_go_is_not_asked_for() {
    for (item, number) in [
        ("TAPE - Not used with joints max 1 in. wide.", "1 in."),
        (
            "SEALANT - Depth shall not be required to exceed 1/2 in.",
            "1/2 in.",
        ),
        (
            "TAPE - Required only with sealants deeper than 1/2 in.",
            "1/2 in.",
        ),
        (
            "SEALANT - May be omitted with packing at least 4 in. deep.",
            "4 in.",
        ),
    ] {
        check_item(item, &[]);
        assert_eq!(unread_in(item), [number], "{item}");
    }
    check_item(
        "SEALANT - Used with joints max 1 in. wide.",
        &["joint.width: at most 1 in"],
    );
}

#[test]
fn what_laps_upon_a_thing_laps_onto_it() {
    let found = clauses("1. Seal - Lapping 1 in. upon the slab and 1/2 in. upon the board.\n");
    assert_eq!(
        found,
        ["seal.overlap: nominal 1 in", "seal.overlap: nominal 1/2 in"]
    );
}
