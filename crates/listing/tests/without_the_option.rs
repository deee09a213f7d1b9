//! What an item that may be left out asks for where it is left out, or whether it is or not: that must not fall away with the item. The wordings are invented; what
//! they mean is common practice.

mod common;

use common::clauses;

#[track_caller]
fn reads(text: &str, expected: &str) {
    let found = clauses(text);
    assert!(found.contains(&expected.to_owned()), "{text} {found:?}");
}

#[test]
fn what_holds_where_the_item_is_left_out_is_no_part_of_it() {
    for said in [
        "If clips are not used",
        "Where the clips are omitted",
        "When clips are left out",
        "In joints without clips",
        "If not used",
        "Unless clips are installed",
    ] {
        let text = format!(
            "1. Clips (optional) - Max 24 in. OC. {said}, the sealant shall be min 1 in. thick.\n"
        );
        let words = said.strip_prefix("In joints ").map_or(said, |_| "");
        let found = clauses(&text);
        let of_sealant: Vec<&String> = found
            .iter()
            .filter(|clause| clause.starts_with("sealant.depth: at least 1 in"))
            .collect();
        assert!(
            matches!(of_sealant.as_slice(), [clause] if !clause.ends_with(" in 1") && clause.contains(words)),
            "{said} {found:?}"
        );
        assert!(
            found.contains(&"clip.spacing: at most 24 in in 1".to_owned()),
            "{found:?}"
        );
    }
}

#[test]
fn what_holds_whether_the_item_is_built_or_not_is_no_part_of_it() {
    for said in [
        "The sealant shall be min 1/2 in. thick whether or not packing is used.",
        "Sealant min 1/2 in. thick shall be used in all cases.",
    ] {
        reads(
            &format!("1. Packing (optional) - Min 4 in. deep. {said}\n"),
            "sealant.depth: at least 1/2 in",
        );
    }
}

#[test]
fn what_the_item_asks_for_itself_stays_a_part_of_it() {
    for said in [
        // Of itself, in all cases.
        "The packing shall be min 4 in. deep in all cases.",
        // Not without it, but where something else of it isn't done.
        "Where the packing is not compressed, min 4 in. deep.",
        "If packing is used, min 4 in. deep.",
    ] {
        let found = clauses(&format!("1. Packing (optional) - Min 4 pcf. {said}\n"));
        let of_depth = found
            .iter()
            .find(|clause| clause.starts_with("packing.depth: at least 4 in"));
        assert!(
            of_depth.is_some_and(|clause| clause.ends_with(" in 1")),
            "{said} {found:?}"
        );
    }
}
