//! What stands in columns: labels beside their values, tables, schedules. The wordings are invented.

mod common;

use common::check;

#[test]
fn a_label_without_a_colon_is_of_its_own_value() {
    check(
        "System HW-77\n\n1 Packing\n   Density           4 pcf nominal\n   Depth             min 4 in. (102 mm)\n\n\
         2 Coating\n   Wet film          1/8 in. min\n   Lap on board      1/2 in. min\n",
        &[
            "packing.density: nominal 4 pcf",
            "packing.depth: at least 4 in",
            "coating.wet_thickness: at least 1/8 in",
            "coating.overlap_board: at least 1/2 in",
        ],
    );
    // A sentence set wide is no list.
    check(
        "1. Packing - Mineral wool is  placed\n   with  a depth of min 4 in.\n",
        &[
            "packing.depth: at least 4 in",
            "packing.material: one of Mineral wool",
        ],
    );
}
