//! Columns of white space without any rule, headed first by a case: what ends them, cells left empty, notes, and cells that go on.

use crate::{bounds, check};

/// A packing item that ends in some lines.
fn packing(lines: &str) -> String {
    format!(
        "1. Floor - Concrete.\n2. Packing Material - Mineral wool.\n{lines}3. Sealant - As needed.\n"
    )
}

#[test]
fn text_follows_at_once() {
    check(
        &packing(
            "Rating, Hr   Min Depth, in.\n\
             1            3\n\
             2            4\n\
             Recess min 1/2 in.\n",
        ),
        &[
            "packing.depth: at least 3 in. [Rating, Hr: 1]",
            "packing.depth: at least 4 in. [Rating, Hr: 2]",
            "packing.recess: at least 1/2 in.",
        ],
    );
    check(
        &packing(
            "Max Joint Width   Min Depth\n\
             ---------------   ---------\n\
             2 in.             3 in.\n\
             4 in.             4 in.\n\
             Recess min 1/2 in.\n",
        ),
        &[
            "packing.depth: at least 3 in. [Max Joint Width: 2 in.]",
            "packing.depth: at least 4 in. [Max Joint Width: 4 in.]",
            "packing.recess: at least 1/2 in.",
        ],
    );
}

#[test]
fn cells_left_empty() {
    check(
        &packing(
            "Max Joint Width   Rating   Min Depth   Max Recess\n\
             2 in.             1 Hr     3 in.\n\
             \x20                 2 Hr     4 in.       1/4 in.\n\
             4 in.             1 Hr     4 in.\n\
             \x20                 2 Hr     5 in.\n",
        ),
        &[
            "packing.depth: at least 3 in. [Max Joint Width: 2 in.; Rating: 1 Hr]",
            "packing.depth: at least 4 in. [Max Joint Width: 2 in.; Rating: 2 Hr]",
            "packing.recess: at most 1/4 in. [Max Joint Width: 2 in.; Rating: 2 Hr]",
            "packing.depth: at least 4 in. [Max Joint Width: 4 in.; Rating: 1 Hr]",
            "packing.depth: at least 5 in. [Max Joint Width: 4 in.; Rating: 2 Hr]",
        ],
    );
}

#[test]
fn a_column_of_notes() {
    check(
        &packing(
            "Rating   Min Depth   Notes\n\
             1 Hr     3 in.       Two layers max, with joints\n\
             \x20                    staggered min 12 in.\n\
             2 Hr     4 in.\n\
             Recess min 1/2 in.\n",
        ),
        &[
            "packing.depth: at least 3 in. [Rating: 1 Hr]",
            "2:packing_layers: at most 2 [Rating: 1 Hr]",
            "2:joints_offset: at least 12 in. [Rating: 1 Hr]",
            "packing.depth: at least 4 in. [Rating: 2 Hr]",
            "packing.recess: at least 1/2 in.",
        ],
    );
}

#[test]
fn cells_go_on() {
    check(
        &packing(
            "Joint width   Min Depth   Max Recess\n\
             2 in.         3 in.       1/2 in.\n\
             \x20             (76 mm)     (13 mm)\n\
             4 in.         4 in.\n\
             and over\n",
        ),
        &[
            "packing.depth: at least 3 in. [Joint width: 2 in.]",
            "packing.recess: at most 1/2 in. [Joint width: 2 in.]",
            "packing.depth: at least 4 in. [Joint width: 4 in. and over]",
        ],
    );
}

#[test]
fn what_stands_under_two_headings_is_no_cell() {
    let text = packing(
        "Joint width of the floor  shall be as stated\n\
         The max is 4 in. and the depth  3 in.\n\
         Depth 4 in. and no more than  5 in.\n",
    );
    let found = bounds(&text);
    assert!(found.iter().all(|bound| !bound.contains('[')), "{found:?}");
    // Columns of words are none of values.
    let text = packing("Joint   Type\nFloor   Static\nWall    Dynamic\nMin 4 in. deep.\n");
    let found = bounds(&text);
    assert!(found.iter().all(|bound| !bound.contains('[')), "{found:?}");
}
