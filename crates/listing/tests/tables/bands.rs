//! Tables by bands of width under ratings, with notes in brackets. The wordings are invented.

use super::{bounds, check};

const TABLE: &str = "Table 1 - Packing\n\n\
    \x20                       Number of    Depth of     Compression,\n\
    Joint width, in.        layers       packing,     % of free\n\
    \x20                                    in., min     width, min\n\
    ----------------------------------------------------------------\n\
    1 Hr\n\
    \x20 1/2 to 2              1            3            25\n\
    \x20 over 2 to 4 [a]       1            3-1/2        25\n\
    2 Hr\n\
    \x20 1/2 to 2              1            4            25\n\
    \x20 over 2 to 4 [a][b]    2            4-1/2        33\n\
    ----------------------------------------------------------------\n\
    [a] Clips of item 2 required.\n\
    [b] Ends staggered not less than 6 in.\n\n";

#[test]
fn a_rating_over_rows_is_a_case_of_each() {
    let found = bounds(&format!(
        "System FF-1\n\n1. PACKING - As Table 1.\n\n{TABLE}"
    ));
    let expected = [
        "packing.layers: exactly 1 [1 Hr; Joint width, in.: 1/2 to 2]",
        "packing.depth: at least 3 in. [1 Hr; Joint width, in.: 1/2 to 2]",
        "packing.compression: at least 25 % [1 Hr; Joint width, in.: 1/2 to 2]",
        "packing.layers: exactly 2 [2 Hr; Joint width, in.: over 2 to 4 [a][b]]",
        "packing.depth: at least 4-1/2 in. [2 Hr; Joint width, in.: over 2 to 4 [a][b]]",
        "packing.compression: at least 33 % [2 Hr; Joint width, in.: over 2 to 4 [a][b]]",
    ];
    for bound in expected {
        assert!(
            found.iter().any(|own| own == bound),
            "{bound} in {found:#?}"
        );
    }
}

#[test]
fn the_outline_goes_on_behind_notes_in_brackets() {
    let reading = listing::read_text(
        "sample",
        &format!(
            "System FF-1\n\n1. PACKING - As Table 1.\n\n{TABLE}2. CLIPS - See note [a]. Z-clips 1-1/2 in. wide.\n\n3. SEAL - Depth 1/2 in. min.\n"
        ),
    );
    let paths: Vec<&str> = reading
        .items
        .iter()
        .map(|item| item.path.as_str())
        .collect();
    assert_eq!(paths, ["1", "Table 1", "[a]", "[b]", "2", "3"]);
}

#[test]
fn several_ratings_may_head_one_column() {
    check(
        "System FF-1\n\n1. JOINT - As Table 1.\n\nTable 1 - Movement\n\n\
         Joint width, in.        Shear, % max,     Shear, % max,\n\
         \x20                       1 and 2 Hr        3 and 4 Hr\n\
         ----------------------------------------------------------\n\
         up to 2                 10                7.5\n\
         over 2 to 4             10                5\n\
         ----------------------------------------------------------\n",
        &[
            "joint.movement_shear: at most 10 % [Joint width, in.: up to 2; 1 and 2 Hr]",
            "joint.movement_shear: at most 7.5 % [Joint width, in.: up to 2; 3 and 4 Hr]",
            "joint.movement_shear: at most 10 % [Joint width, in.: over 2 to 4; 1 and 2 Hr]",
            "joint.movement_shear: at most 5 % [Joint width, in.: over 2 to 4; 3 and 4 Hr]",
        ],
    );
}
