//! Columns that carry on or stand beside others, and headings among short cells. The wordings are invented.

mod common;

use common::check;

#[test]
fn ratings_may_stand_between_the_rows_or_below_the_headings() {
    check(
        "1. Packing - As in the table.\n\
         \n\
         Table 2 - Joint width and packing\n\
         \n\
         \x20                       Number of    Depth of\n\
         Joint width, in.        layers       packing, in., min\n\
         -------------------------------------------------------\n\
         1 Hr\n\
         \x20 1/2 to 2              1            3\n\
         \x20 over 2 to 4           1            3-1/2\n\
         2 Hr\n\
         \x20 1/2 to 2              1            4\n\
         \x20 over 2 to 4           2            4-1/2\n",
        &[
            "Table 2:gypsum_board_number_of_layers: exactly 1 count if joint.rating = 1 hr and joint.width from 1/2 in. to 2 in.",
            "packing.depth: at least 3 in if joint.rating = 1 hr and joint.width from 1/2 in. to 2 in.",
            "Table 2:gypsum_board_number_of_layers: exactly 1 count if joint.rating = 1 hr and joint.width over 2 in. to 4 in.",
            "packing.depth: at least 7/2 in if joint.rating = 1 hr and joint.width over 2 in. to 4 in.",
            "Table 2:gypsum_board_number_of_layers: exactly 1 count if joint.rating = 2 hr and joint.width from 1/2 in. to 2 in.",
            "packing.depth: at least 4 in if joint.rating = 2 hr and joint.width from 1/2 in. to 2 in.",
            "Table 2:gypsum_board_number_of_layers: exactly 2 count if joint.rating = 2 hr and joint.width over 2 in. to 4 in.",
            "packing.depth: at least 9/2 in if joint.rating = 2 hr and joint.width over 2 in. to 4 in.",
        ],
    );
    check(
        "1. Packing - As in Table 1.\n\
         \n\
         TABLE 1   all dimensions in mm, minimum values\n\
         \n\
         WIDTH        DEPTH    DEPTH    LAP\n\
         \x20            1 HR     2 HR\n\
         10 - 25      75       100      20\n\
         26 - 50      100      125      20\n",
        &[
            "packing.depth: at least 75 mm if joint.width from 10 mm to 25 mm and joint.rating = 1 hr",
            "packing.depth: at least 100 mm if joint.width from 10 mm to 25 mm and joint.rating = 2 hr",
            "packing.splice_lap: at least 20 mm if joint.width from 10 mm to 25 mm",
            "packing.depth: at least 100 mm if joint.width from 26 mm to 50 mm and joint.rating = 1 hr",
            "packing.depth: at least 125 mm if joint.width from 26 mm to 50 mm and joint.rating = 2 hr",
            "packing.splice_lap: at least 20 mm if joint.width from 26 mm to 50 mm",
        ],
    );
}

#[test]
fn what_is_remarked_beside_a_requirement_may_say_when_it_holds() {
    check(
        "Code     Component             Requirement                              Remark\n\
         -----    ------------------    -------------------------------------    --------------------\n\
         F-1      Concrete floor        115 mm (4-1/2 in.) thick, min            2 h\n\
         \x20                              150 mm (6 in.) thick, min                3 h\n\
         J-1      Packing, density      64 kg/m3 (4 pcf) min                     joint up to 75 mm\n\
         \x20                              96 kg/m3 (6 pcf) min                     joint over 75 mm\n\
         J-2      Packing, depth        100 mm (4 in.) min                       all joints\n\
         J-3      Sealant, wet depth    6 mm (1/4 in.) or more                   spray grade\n\
         J-4      Overlap               15 mm (5/8 in.) on the floor, min        wall: 25 mm (1 in.) min\n",
        &[
            "floor.thickness: at least 115 mm if joint.rating = 2 hr",
            "floor.thickness: at least 150 mm if joint.rating = 3 hr",
            "packing.density: at least 64 kg/m3 if \"joint up to 75 mm\"",
            "packing.density: at least 96 kg/m3 if \"joint over 75 mm\"",
            "packing.depth: at least 100 mm",
            "sealant.depth: at least 6 mm",
            "J-4:overlap_on_the_floor: at least 15 mm",
            "J-4:wall_wall_min: at least 25 mm",
        ],
    );
}

#[test]
fn rows_may_carry_on_with_the_columns_of_the_table_above() {
    check(
        "1.  Wall and joint\n\
         \n\
         \x20                               System A            System B\n\
         \x20                               sealant             spray\n\
         \x20   ------------------------    ----------------    ----------------\n\
         \x20   Rating, hr, max             2                   4\n\
         \x20   Joint width, max            3 in. (76 mm)       6 in. (152 mm)\n\
         \n\
         2.  Packing\n\
         \n\
         \x20   Density, min                4 pcf               6 pcf\n\
         \x20   Depth, min                  3-1/2 in.           -\n\
         \x20   Compression, min            25%                 40%\n\
         \n\
         3.  Clips\n\
         \n\
         \x20   Steel gauge                                     20 MSG min\n\
         \x20   Clip spacing                                    18 in. (457 mm) max\n",
        &[
            "joint.rating: at most 2 hr if \"System A sealant\"",
            "joint.rating: at most 4 hr if \"System B spray\"",
            "joint.width: at most 3 in if \"System A sealant\"",
            "joint.width: at most 6 in if \"System B spray\"",
            "packing.density: at least 4 pcf if \"System A sealant\"",
            "packing.density: at least 6 pcf if \"System B spray\"",
            "packing.depth: at least 7/2 in if \"System A sealant\"",
            "packing.compression: at least 25 percent if \"System A sealant\"",
            "packing.compression: at least 40 percent if \"System B spray\"",
            "clip.gauge: at least 20 gauge if \"System B spray\"",
            "clip.spacing: at most 18 in if \"System B spray\"",
        ],
    );
}

#[test]
fn two_tables_may_stand_beside_each_other() {
    check(
        "1. Packing and seal - Tables 1 and 2.\n\
         \n\
         Table 1  PACKING                                 Table 2  SEAL\n\
         Product          Density   Layer                 Product          Wet film  Dry film\n\
         \x20                min, pcf  max, in.              (spray)          min, in.  min, mil\n\
         ---------------  --------  --------              ---------------  --------  --------\n\
         Wexwool 40       4         2                     Pelloseal HW     1/8       62\n\
         Wexwool 60       6         1-1/2                 Pelloseal HW-F   3/16      94\n",
        &[
            "packing.density: at least 4 pcf if \"Product: Wexwool 40\"",
            "board.thickness: at most 2 in if \"Product: Wexwool 40\"",
            "packing.density: at least 6 pcf if \"Product: Wexwool 60\"",
            "board.thickness: at most 3/2 in if \"Product: Wexwool 60\"",
            "coating.wet_thickness: at least 1/8 in if \"Product (spray): Pelloseal HW\"",
            "coating.dry_thickness: at least 62 mil if \"Product (spray): Pelloseal HW\"",
            "coating.wet_thickness: at least 3/16 in if \"Product (spray): Pelloseal HW-F\"",
            "coating.dry_thickness: at least 94 mil if \"Product (spray): Pelloseal HW-F\"",
        ],
    );
}

#[test]
fn cells_may_be_parted_by_tabs() {
    check(
        "# Joint J-2\n\
         \n\
         ## Packing\n\
         \n\
         Joint width\tDepth\tCompression\n\
         Up to 4 in.\t3 in. min\t25% min\n\
         Over 4 to 8 in.\t4 in. min\t33% min\n\
         \n\
         ## Sealant\n\
         \n\
         * Depth: 1/2 in. min\n",
        &[
            "packing.depth: at least 3 in if joint.width <= 4 in.",
            "packing.compression: at least 25 percent if joint.width <= 4 in.",
            "packing.depth: at least 4 in if joint.width over 4 in. to 8 in.",
            "packing.compression: at least 33 percent if joint.width over 4 in. to 8 in.",
            "sealant.depth: at least 1/2 in",
        ],
    );
}

#[test]
fn a_heading_without_a_number_heads_labels_with_leaders() {
    check(
        "BARRIER 7\n\
         \n\
         PACKING\n\
         \x20 Depth / density ................. min 4 in. / 4 pcf\n\
         \x20 Splices ......................... min 24 in. apart\n\
         \n\
         SEALANT\n\
         \x20 Depth ........................... 1/2 in. min\n\
         \x20 Joint width ..................... 1 - 4 in.\n",
        &[
            "packing.depth: at least 4 in",
            "packing.density: nominal 4 pcf",
            "packing.splice_spacing: at least 24 in",
            "sealant.depth: at least 1/2 in",
            "joint.width: between 1 to 4 in",
        ],
    );
}

#[test]
fn a_place_named_over_or_above_is_no_limit() {
    check(
        "1. Deck - As in the table.\n\
         \n\
         TABLE 1\n\
         Property                      Min     Max     Unit\n\
         --------------------------------------------------\n\
         Slab above, thickness         130     -       mm\n\
         Topping over deck, depth      64      90      mm\n",
        &[
            "floor.thickness: at least 130 mm",
            "deck.depth: between 64 to 90 mm",
        ],
    );
}

#[test]
fn a_heading_may_stand_right_between_the_labels_of_two_parts() {
    check(
        "PRODUCT: Sealant 20\n\
         \n\
         Wall\n\
         \x20 Thickness, min:            120 mm\n\
         \x20 Density:                   650 kg/m³ (min)\n\
         Joint\n\
         \x20 Width (max):               40 mm\n\
         Packing\n\
         \x20 Compression:               15-25 %\n\
         Sealant\n\
         \x20 Depth:                     10 mm\n",
        &[
            "wall.thickness: at least 120 mm",
            "wall.density: at least 650 kg/m3",
            "joint.width: at most 40 mm",
            "packing.compression: between 15 to 25 percent",
            "sealant.depth: nominal 10 mm",
        ],
    );
}

#[test]
fn a_clause_number_is_no_case() {
    check(
        "1    Supporting constructions\n\
         \n\
         \x20    Rigid floors.\n\
         \n\
         2    Joint seal\n\
         \n\
         \x20    Clause  Part           Property                    Value\n\
         \x20    ------  -------------  --------------------------  -----------------------\n\
         \x20    2.1     Backing        Density                     ≥ 70 kg/m³\n\
         \x20    2.2                    Depth                       100 mm or more\n\
         \x20    2.3     Coating        Dry film                    1,2 mm ± 0,2 mm\n\
         \n\
         3    Field of direct application\n\
         \n\
         \x20    Temperature in use: - 20 °C to + 60 °C.\n",
        &[
            "packing.density: at least 70 kg/m3",
            "2:joint_seal_depth: at least 100 mm",
            "coating.dry_thickness: between 1 to 7/5 mm",
            "3:field_of_direct_application_temperature: between -20 to 60 degC",
        ],
    );
}

#[test]
fn a_gauge_may_have_its_thickness_in_parentheses() {
    check(
        "ITEM   PART             REQUIREMENT                 VALUE\n\
         ----------------------------------------------------------------\n\
         A      Studs            depth                       3-1/2 in. min\n\
         \x20                       steel                       min 20 ga (0.033 in.)\n\
         \x20                       spacing                     24 in. max (1)\n\
         B      Track            leg                         2 in. min\n\
         \x20                       steel                       25 ga min\n\
         ----------------------------------------------------------------\n",
        &[
            "stud.width: at least 7/2 in",
            "stud.gauge: at least 20 gauge",
            "stud.steel_thickness: at least 33/1000 in",
            "stud.spacing: at most 24 in",
            "runner.leg_length: at least 2 in",
            "runner.gauge: at least 25 gauge",
        ],
    );
}
