//! Shares of another measure, "2/3 of the wall thickness and not less than 4 in.": the limit is of what has the share, and not of what it is a share of. The wordings
//! are invented; what they mean is common practice.

mod common;

use common::{check, clauses};

#[test]
fn a_share_of_the_joint_width_is_a_multiple_of_it() {
    for (said, asked) in [
        ("Min depth 1/2 the joint width", "at least 1/2"),
        ("Depth shall be 1/2 joint width", "nominal 1/2"),
        ("Min depth 2/3 of joint width", "at least 2/3"),
    ] {
        check(
            &format!("1. Packing - {said}, not less than 2 in.\n"),
            &[
                &format!("packing.depth: {asked} times joint width"),
                "packing.depth: at least 2 in",
            ],
        );
    }
    check(
        "1. Sealant - Depth 1/3 to 1/2 the joint width.\n",
        &["sealant.depth: between 1/3 to 1/2 times joint width"],
    );
}

#[test]
fn the_limit_behind_a_share_is_of_what_has_the_share() {
    for said in [
        "2/3 of the wall thickness and not less than 4 in.",
        "2/3 the wall thickness, but not less than 4 in.",
        "two-thirds the wall thickness and at least 4 in.",
    ] {
        let found = clauses(&format!("1. Packing - Min depth {said}\n"));
        assert!(
            found.contains(&"packing.depth: at least 4 in".to_owned()),
            "{said} {found:?}"
        );
        assert!(
            !found.iter().any(|clause| clause.starts_with("wall.")),
            "{said} {found:?}"
        );
    }
}

#[test]
fn half_of_something_with_more_added_is_no_share() {
    let found = clauses("1. Packing - Min depth half the wall thickness plus 1 in.\n");
    assert!(
        !found.iter().any(|clause| clause.contains("percent")),
        "{found:?}"
    );
    // The depth of a joint is not its width.
    let found = clauses("1. Sealant - Min depth 1/2 joint depth.\n");
    assert!(
        !found.iter().any(|clause| clause.contains("joint width")),
        "{found:?}"
    );
}

#[test]
fn so_many_in_every_so_many_is_a_share_and_no_number() {
    for (words, expected) in [
        (
            "One joint in every twenty shall be opened.",
            "nominal 1/20 ratio",
        ),
        ("One in every ten joints is opened.", "nominal 1/10 ratio"),
        ("1 clip in 20 is pulled.", "nominal 1/20 ratio"),
    ] {
        let found = clauses(&format!("1. INSPECTION - {words}\n"));
        assert_eq!(found.len(), 1, "{words} {found:?}");
        assert!(
            found.iter().all(|clause| clause.ends_with(expected)),
            "{words} {found:?}"
        );
    }
    // A length in which something stands is no number of things.
    let found = clauses("1. INSPECTION - One sample in every 50 m.\n");
    assert!(
        found.iter().all(|clause| !clause.contains("ratio")),
        "{found:?}"
    );
}

#[test]
fn a_part_of_the_span_is_a_share() {
    let found = clauses("1. TRACK - Deflection shall not be more than span/360 nor 7 mm.\n");
    assert!(
        found
            .iter()
            .any(|clause| clause.ends_with("at most 1/360 ratio")),
        "{found:?}"
    );
    assert!(
        found.iter().any(|clause| clause.ends_with("at most 7 mm")),
        "{found:?}"
    );
    let found = clauses("1. TRACK - Deflection at most L/240.\n");
    assert!(
        found
            .iter()
            .any(|clause| clause.ends_with("at most 1/240 ratio")),
        "{found:?}"
    );
    let found = clauses("1. TRACK - Form and drawing L/2 is used.\n");
    assert!(
        found.iter().all(|clause| !clause.contains("ratio")),
        "{found:?}"
    );
}
