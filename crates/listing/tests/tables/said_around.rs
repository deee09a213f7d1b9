//! What sentences before, behind and far from a table say of its columns by their names. The wordings are invented.

use super::bounds;

/// The bounds of a table of variants between a sentence before it and one behind it, without the rows that they are for.
fn limits(before: &str, behind: &str, elsewhere: &str) -> Vec<String> {
    let found = bounds(&format!(
        "Report KR-11\n\n1. Wool - Stone wool strips.\n\n{elsewhere}\n\n2. Variants\n   {before}\n\n\
         \x20  Table 1   Depths\n\
         \x20  -------------------------------------------------------------------\n\
         \x20  Variant   Width    Depth of wool   Depth of sealant   Clip spacing\n\
         \x20            mm       mm              mm                 mm\n\
         \x20  -------------------------------------------------------------------\n\
         \x20  V1        10-30    60              15                 300\n\
         \x20  V2        31-60    80              12                 250\n\
         \x20  -------------------------------------------------------------------\n\
         \x20  {behind}\n\n3. Sealant - Acrylic, white.\n"
    ));
    let found = found.into_iter().filter(|one| !one.contains("width"));
    found
        .filter_map(|one| Some(one.split_once(" [")?.0.to_owned()))
        .collect()
}

const DEPTHS: [&str; 6] = [
    "packing.depth: at least 60 mm",
    "sealant.depth: at least 15 mm",
    "clip.spacing: nominal 300 mm",
    "packing.depth: at least 80 mm",
    "sealant.depth: at least 12 mm",
    "clip.spacing: nominal 250 mm",
];

const NONE: [&str; 6] = [
    "packing.depth: nominal 60 mm",
    "sealant.depth: nominal 15 mm",
    "clip.spacing: nominal 300 mm",
    "packing.depth: nominal 80 mm",
    "sealant.depth: nominal 12 mm",
    "clip.spacing: nominal 250 mm",
];

#[test]
fn a_sentence_behind_a_table_limits_columns_by_their_names() {
    for behind in [
        "Depths are minimum.",
        "Depths are minimum values. See Part 3 for the faces.",
        "All depths are minima.",
        "Depth of wool and depth of sealant are minimums.",
    ] {
        assert_eq!(limits("", behind, ""), DEPTHS, "{behind}");
    }
    let of_one = limits("", "Depths of wool are minimum depths.", "");
    assert_eq!(of_one.first().unwrap(), "packing.depth: at least 60 mm");
    assert_eq!(of_one.get(1).unwrap(), "sealant.depth: nominal 15 mm");
}

#[test]
fn what_is_said_of_some_joints_or_of_something_else_limits_nothing() {
    for behind in [
        "In floors, depths are minimum.",
        "Depths are minimum for walls of the first kind.",
        "Depths are not minimum.",
        "Lengths and depths are minimum.",
    ] {
        assert_eq!(limits("", behind, ""), NONE, "{behind}");
    }
}

#[test]
fn a_sentence_elsewhere_limits_columns_of_the_table_that_it_names() {
    for elsewhere in [
        "Depths of wool and sealant shall be not less than those of Table 1.",
        "The depth of wool and of sealant shall not be less than that given in Table 1.",
        "Minimum depths of wool and sealant as Table 1.",
        "Depths must be at least as stated in Table 1 below.",
    ] {
        assert_eq!(limits("", "", elsewhere), DEPTHS, "{elsewhere}");
    }
    let spaced = limits(
        "",
        "",
        "The spacing of clips shall not exceed the values of Table 1.",
    );
    assert_eq!(spaced.get(2).unwrap(), "clip.spacing: at most 300 mm");
    assert_eq!(spaced.first().unwrap(), "packing.depth: nominal 60 mm");
    for elsewhere in [
        "Depths shall be not less than half of those of Table 1.",
        "In shafts depths shall be not less than those of Table 1.",
        "Depths shall be not less than those of Table 2.",
        "Depths shall be not less than those of Table 1 where the wall is hollow.",
        "For hollow walls:\n\n   Depths shall be not less than those of Table 1.",
    ] {
        assert_eq!(limits("", "", elsewhere), NONE, "{elsewhere}");
    }
}
