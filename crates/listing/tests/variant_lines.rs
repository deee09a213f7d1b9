//! Lines that begin with the name of a variant, one below the other, and what stands below the last of them. The wordings are invented; what they mean is common
//! practice.

mod common;

use common::{check, clauses};

const WIDEST: &str =
    "The joint shall be built as described in the items below and as shown in the drawing.\n\n";

#[test]
fn lines_without_stops_are_each_of_their_own_variant() {
    let text = format!(
        "{WIDEST}1. Packing - System A: min 4 in. deep\n   System B: min 6 in. deep\n   Min 4 pcf\n"
    );
    check(
        &text,
        &[
            "packing.depth: at least 4 in in System A",
            "packing.depth: at least 6 in in System B",
            "packing.density: at least 4 pcf",
        ],
    );
    let text = format!(
        "{WIDEST}1. Floor - Min 6 in. thick.\n   System A packing - min 4 in. deep\n   System B packing - min 6 in. deep\n"
    );
    check(
        &text,
        &[
            "floor.thickness: at least 6 in",
            "packing.depth: at least 4 in in System A",
            "packing.depth: at least 6 in in System B",
        ],
    );
}

#[test]
fn a_line_below_the_last_variant_is_of_none_of_them() {
    for closing in [
        "The packing is recessed min 1/2 in.",
        "Packing recessed min 1/2 in.",
    ] {
        for lead in ["   ", ""] {
            let text = format!(
                "1. Fill - Any of the methods below.\n{lead}Method 1 - Sealant min 1/2 in. thick.\n{lead}Method 2 - Spray min 1/8 in. wet.\n{lead}{closing}\n"
            );
            check(
                &text,
                &[
                    "sealant.depth: at least 1/2 in in Method 1",
                    "coating.wet_thickness: at least 1/8 in in Method 2",
                    "packing.recess: at least 1/2 in",
                ],
            );
        }
    }
}

#[test]
fn as_many_lines_as_under_the_variant_before_are_of_the_last() {
    let text = format!(
        "{WIDEST}1. Fill - Any of the methods below.\n   Method 1 - Sealant min 1/2 in. thick.\n   The sealant laps the wall min 2 in.\n   Method 2 - Spray min 1/8 in. wet.\n   The spray laps the wall min 1 in.\n   The packing is recessed min 1/2 in.\n"
    );
    let found = clauses(&text);
    for clause in [
        "sealant.overlap: at least 2 in in Method 1",
        "coating.overlap_wall: at least 1 in in Method 2",
        "packing.recess: at least 1/2 in",
    ] {
        assert!(found.contains(&clause.to_owned()), "{clause} {found:?}");
    }
}

#[test]
fn a_line_without_a_stop_below_variants_of_a_line_each_is_of_none_of_them() {
    check(
        "1. Sealant\n   Method 1 - Min 1/2 in. deep\n   Method 2 - Min 1 in. deep\n   Max joint width 2 in.\n",
        &[
            "sealant.depth: at least 1/2 in in Method 1",
            "sealant.depth: at least 1 in in Method 2",
            "joint.width: at most 2 in",
        ],
    );
}
