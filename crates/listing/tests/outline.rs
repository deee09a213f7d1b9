//! Which lines are items: counts within counts, and numbers that only stand with letters.

mod common;

use common::check;

#[test]
fn a_count_within_letters_within_a_count() {
    check(
        "1. FLOOR - Slab.\n\n2. JOINT - As follows:\n\n   A. PACKING - As follows:\n\n      1. Depth min 4 in.\n\n      2. Density min 4 pcf.\n\n   B. SEALANT - As follows:\n\n      1. Depth min 1/2 in.\n\n3. COATING - Min 1/8 in. wet.\n",
        &[
            "2A1:packing_depth: at least 4 in",
            "2A2:packing_density: at least 4 pcf",
            "sealant.depth: at least 1/2 in",
            "coating.wet_thickness: at least 1/8 in",
        ],
    );
}

#[test]
fn letters_of_a_number_that_does_not_stand_alone() {
    check(
        "1. FLOOR - Concrete min 4 in. thick.\n\n2A. CLIPS - Min 1 in. wide.\n\n2B. CLIPS - Min 2 in. wide.\n\n3A. WALL - Min 4 in. deep lip.\n\n4. SEALANT - Depth min 1/2 in.\n",
        &[
            "concrete.thickness: at least 4 in",
            "clip.width: at least 1 in",
            "clip.width: at least 2 in",
            "3A:wall_deep_lip: at least 4 in",
            "sealant.depth: at least 1/2 in",
        ],
    );
}
