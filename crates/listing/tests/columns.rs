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

#[test]
fn a_heading_over_several_columns_is_of_each() {
    check(
        "System HW-77\n\n1. Products as in the table.\n\n\
         \x20             |      Packing      |    Coating\n\
         \x20  Rating     | depth   | density | wet    | dry\n\
         \x20  (hr)       | (in.)   | (pcf)   | (mil)  | (mil)\n\
         \x20  -----------+---------+---------+--------+------\n\
         \x20  1          | 4       | 4       | 125    | 60\n\
         \x20  2          | 5       | 6       | 190    | 90\n",
        &[
            "packing.depth: nominal 4 in if joint.rating = 1 hr",
            "packing.density: nominal 4 pcf if joint.rating = 1 hr",
            "coating.wet_thickness: nominal 125 mil if joint.rating = 1 hr",
            "coating.dry_thickness: nominal 60 mil if joint.rating = 1 hr",
            "packing.depth: nominal 5 in if joint.rating = 2 hr",
            "packing.density: nominal 6 pcf if joint.rating = 2 hr",
            "coating.wet_thickness: nominal 190 mil if joint.rating = 2 hr",
            "coating.dry_thickness: nominal 90 mil if joint.rating = 2 hr",
        ],
    );
}

#[test]
fn the_unit_of_a_caption_is_that_of_every_measure() {
    check(
        "System HW-77\n\n1. Packing and coating.\n\nTable 1 - Packing depth and film, mm\n\
         Rating, h     Packing depth     Wet film\n1             102               3.2\n2             127               4.8\n\n2. Wall - Masonry.\n",
        &[
            "packing.depth: nominal 102 mm if joint.rating = 1 hr",
            "coating.wet_thickness: nominal 16/5 mm if joint.rating = 1 hr",
            "packing.depth: nominal 127 mm if joint.rating = 2 hr",
            "coating.wet_thickness: nominal 24/5 mm if joint.rating = 2 hr",
        ],
    );
}
