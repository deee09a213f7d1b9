//! Parts and things of other items of which a joint has one, each with a value of its own. The wordings are invented; what they mean is common practice.

mod common;

use common::{check_item, clauses};

#[test]
fn parts_that_are_cited_for_different_values_are_cases() {
    for (words, parts) in [
        (
            "Width max 2-1/2 in. for 3.2 and 3.3; max 1-1/2 in. for 3.1.",
            ["for 3.2 and 3.3", "for 3.1"],
        ),
        (
            "Width 2-1/2 in. max for Items 2B and 2C, 1-1/2 in. max for Item 2A.",
            ["for Items 2B and 2C", "for Item 2A"],
        ),
        (
            "Width not over 2-1/2 in. for walls 3.2, 3.3 and not over 1-1/2 in. for wall 3.1.",
            ["for walls 3.2, 3.3", "for wall 3.1"],
        ),
    ] {
        check_item(
            &format!("JOINT - {words} Sealant min 1/2 in. deep."),
            &[
                &format!("joint.width: at most 5/2 in if \"{}\"", parts[0]),
                &format!("joint.width: at most 3/2 in if \"{}\"", parts[1]),
                "sealant.depth: at least 1/2 in",
            ],
        );
    }
    // In metric, and beside what is of every joint.
    check_item(
        "PACKING - Depth min 50 mm for Item 3A and min 75 mm for Item 3B; density min 60 kg/m3.",
        &[
            "packing.depth: at least 50 mm if \"for Item 3A\"",
            "packing.depth: at least 75 mm if \"for Item 3B\"",
            "packing.density: at least 60 kg/m3",
        ],
    );
}

#[test]
fn a_part_cited_alone_or_twice_tells_no_case() {
    for words in [
        "Depth min 4 in. for Item 3A.",
        "Depth min 4 in. for Items 3A and 3B.",
    ] {
        let found = clauses(&format!(
            "1. Floor - 5 in. thick min.\n\n2. PACKING - {words}\n"
        ));
        assert!(
            found.contains(&"packing.depth: at least 4 in".to_owned()),
            "{words} {found:?}"
        );
    }
    // Numbers with units are none.
    let found = clauses("1. PACKING - Depth min 4 in. for 3.2 mm and min 3 in. for 4.2 mm wire.\n");
    assert!(
        found.iter().all(|clause| !clause.contains(" if ")),
        "{found:?}"
    );
}

#[test]
fn a_thing_of_another_item_is_a_case() {
    for (words, when) in [
        (
            "With the caulking of Item 6 the width is limited to 1 in.",
            "With the caulking of Item 6",
        ),
        (
            "With the spray coating in Item 6B, joint width shall not exceed 1 in.",
            "With the spray coating in Item 6B",
        ),
        (
            "For the gasket (Item 6) the width is max 1 in.",
            "For the gasket (Item 6)",
        ),
    ] {
        check_item(
            &format!("JOINT - Width min 1/2 in. {words}"),
            &[
                "joint.width: at least 1/2 in",
                &format!("joint.width: at most 1 in if \"{when}\""),
            ],
        );
    }
    check_item(
        "PACKING - Min 2 in. thick. A min 3 in. thickness is required with the granite panel of Item 2.3c.",
        &[
            "packing.thickness: at least 2 in",
            "packing.thickness: at least 3 in if \"with the granite panel of Item 2.3c\"",
        ],
    );
    // By what something is fixed is no case, nor what isn't needed, nor a statement with its own verb behind another.
    for words in [
        "Clips fastened with the screws of Item 4, max 12 in. OC.",
        "With the screws of Item 4 fasten clips max 12 in. OC.",
        "Clips max 12 in. OC, which is not required with the screws of Item 4.",
    ] {
        let found = clauses(&format!(
            "1. Floor - 5 in. thick min.\n\n2. CLIPS - {words}\n"
        ));
        assert!(
            found.iter().all(|clause| !clause.contains(" if ")),
            "{words} {found:?}"
        );
    }
}
