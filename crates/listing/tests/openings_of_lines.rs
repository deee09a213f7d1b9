//! A sentence that opens with so many layers or more, or with the size of the joints, speaks of that case.

mod common;

use common::check_item;

#[test]
fn another_thing_is_spoken_of_in_the_case() {
    check_item(
        "Packing - Splices lap 6 in. min. In two or more layers, splices are staggered min 12 in.",
        &[
            "packing.splice_lap: at least 6 in",
            "packing.splice_stagger: at least 12 in if \"In two or more layers\"",
        ],
    );
}

#[test]
fn how_the_layers_are_laid_asks_for_them() {
    check_item(
        "Packing - In two or more layers, each 2 in. thick.",
        &[
            "packing.layers: at least 2 count",
            "2:layers_each_thick: nominal 2 in",
        ],
    );
}

#[test]
fn brackets_behind_a_name_are_said_of_it() {
    check_item(
        "Track - Flange 2 in. D. CLIPS (USE WHEN TRACK IS SET FIRST) - Steel.",
        &["runner.leg_length: nominal 2 in"],
    );
    check_item(
        "Track - Flange 2 in. MIN (WHEN TRACK IS SET FIRST).",
        &["runner.leg_length: at least 2 in if \"WHEN TRACK IS SET FIRST\""],
    );
}

#[test]
fn the_size_of_the_joints_heads_a_line() {
    check_item(
        "Packing - Strips.\n   (a) 1 in. [25 mm] joints: 2 in. deep min.\n   (b) 3 in. [76 mm] joints: 4 in. deep min.",
        &[
            "packing.depth: at least 2 in if \"1 in. [25 mm] joints\"",
            "packing.depth: at least 4 in if \"3 in. [76 mm] joints\"",
        ],
    );
}
