//! Columns of short cells: labels and values line by line, units and limits in columns of their own, marks that repeat, headings that carry on. The
//! wordings are invented.

mod common;

use common::check;

#[test]
fn a_schedule_whose_rows_are_labels_and_values_is_read_line_by_line() {
    check(
        "SHEET HW 12\n\
         \n\
         ITEM   PART             REQUIREMENT                 VALUE\n\
         ----------------------------------------------------------------\n\
         A      Floor            thickness                   4-1/2 in. min\n\
         \x20                       density                     145 pcf min\n\
         \x20                       edge out of line            1/4 in. max\n\
         B      Track            gauge                       25 ga min\n\
         \x20                       leg                         2-1/2 in. min\n\
         \x20                       gap, joints over 2 in.      1 in. min\n\
         C      Packing          compression                 25 %\n\
         \x20                       recess                      -\n\
         \x20                       depth, 2 hr                 4 in. min\n\
         \x20                       depth                       Table A\n\
         \x20                       splices apart               24 in. min\n\
         ----------------------------------------------------------------\n",
        &[
            "floor.thickness: at least 9/2 in",
            "A:floor_density: at least 145 pcf",
            "A:floor_edge_out_of_line: at most 1/4 in",
            "runner.gauge: at least 25 gauge",
            "runner.leg_length: at least 5/2 in",
            "runner.butt_gap: at least 1 in if \"joints over 2 in.\"",
            "packing.compression: nominal 25 percent",
            "packing.depth: at least 4 in if joint.rating = 2 hr",
            "packing.splice_spacing: at least 24 in",
        ],
    );
    check(
        "SHEET HW 13\n\
         \n\
         ITEM   PART             REQUIREMENT                 REMARKS\n\
         ----------------------------------------------------------------\n\
         A      Floor            Concrete slab of at least   Clean and dry\n\
         \x20                       4 in. and of 110 pcf min    when sealed\n\
         B      Packing          Mineral wool 4 in. deep     Pressed in\n\
         \x20                       min, of 4 pcf or more       by hand\n",
        &[
            "A:concrete_slab_concrete_slab: at least 4 in",
            "concrete.density: at least 110 pcf",
            "packing.depth: at least 4 in",
            "packing.density: at least 4 pcf",
            "packing.material: one of Mineral wool",
        ],
    );
}

#[test]
fn a_box_whose_rows_are_labels_and_values_is_read_line_by_line() {
    check(
        "+------+----------------+----------------------+-------------------+\n\
         | Ref  | Part           | Requirement          | Value             |\n\
         +------+----------------+----------------------+-------------------+\n\
         | W1   | Concrete wall  | thickness            | 150 mm min        |\n\
         |      |                | density              | 2000 kg/m3 min    |\n\
         +------+----------------+----------------------+-------------------+\n\
         | J1   | Packing        | density              | 60 kg/m3 min      |\n\
         |      |                | compression          | 20 to 50 %        |\n\
         +------+----------------+----------------------+-------------------+\n",
        &[
            "wall.thickness: at least 150 mm",
            "wall.density: at least 2000 kg/m3",
            "packing.density: at least 60 kg/m3",
            "packing.compression: between 20 to 50 percent",
        ],
    );
}

#[test]
fn a_box_may_have_a_title_behind_each_number() {
    check(
        "1  Seal\n\
         \n\
         \x20   Mineral wool, density 80 kg/m3 or more.\n\
         \n\
         2  Field of application\n\
         \n\
         \x20   +------------------------+---------------------------------------------+\n\
         \x20   | 2.1 Joint width        | 10 mm to 100 mm                             |\n\
         \x20   | 2.2 Floor thickness    | ≥ 150 mm                                    |\n\
         \x20   | 2.3 Backing            | depth ≥ 100 mm, density ≥ 60 kg/m³,         |\n\
         \x20   |                        | compressed by 20 % or more                  |\n\
         \x20   +------------------------+---------------------------------------------+\n",
        &[
            "packing.density: at least 80 kg/m3",
            "packing.material: one of Mineral wool",
            "2.1:joint_width: between 10 to 100 mm",
            "2.2:floor_thickness: at least 150 mm",
            "packing.depth: at least 100 mm",
            "packing.density: at least 60 kg/m3",
            "packing.compression: at least 20 percent",
        ],
    );
}

#[test]
fn the_units_of_the_rows_may_have_a_column_of_their_own() {
    check(
        "1. Packing - Mineral wool, as in the table.\n\
         \n\
         TABLE 1  PACKING\n\
         Property               Unit     Min    Max\n\
         --------------------------------------------\n\
         Density                kg/m3    60     110\n\
         Depth                  mm       100    -\n\
         Recess                 mm       -      12\n\
         Moisture               % mass   n/a    1\n\
         Ash                    Bq       3      7\n",
        &[
            "packing.density: at least 60 kg/m3",
            "packing.density: at most 110 kg/m3",
            "packing.depth: at least 100 mm",
            "packing.recess: at most 12 mm",
            "Table 1:packing_moisture: at most 1 percent",
        ],
    );
    check(
        "Part 1 - Supporting structure\n\
         \n\
         No.    Requirement                                    Min       Max       Unit\n\
         -----  ---------------------------------------------  --------  --------  --------\n\
         1.1    Slab above, thickness                          130       -         mm\n\
         1.2    Stud, spacing                                  -         600       mm\n\
         \n\
         Part 2 - Joint\n\
         \n\
         Requirement                                                    Value     Unit\n\
         -------------------------------------------------------------  --------  -----------\n\
         2.1  Joint width at installation, minimum                      12        mm\n\
         2.2  Packing compression, minimum, joint over 25 mm            40        %\n\
         2.3  Air temperature while sealing, maximum                    38        degrees C\n",
        &[
            "floor.thickness: at least 130 mm",
            "stud.spacing: at most 600 mm",
            "joint.width: at least 12 mm",
            "packing.compression: at least 40 percent if \"joint over 25 mm\"",
            "2:joint_air_temperature_while_sealing: at most 38 degC",
        ],
    );
    check(
        "1. Seal - As in the table.\n\
         \n\
         \x20 Part        Property        Req.           Unit\n\
         \x20 -----------------------------------------------\n\
         \x20 Wool        density         ≥ 45           kg/m³\n\
         \x20             depth           100 ± 5        mm\n\
         \x20             melting point   > 1000         °C\n\
         \x20 Mastic      depth           10             mm\n\
         \x20             wet film        1.0 - 1.5      mm\n",
        &[
            "packing.density: at least 45 kg/m3",
            "packing.depth: between 95 to 105 mm",
            "packing.melting_point: more than 1000 degC",
            "sealant.depth: nominal 10 mm",
            "coating.wet_thickness: between 1 to 3/2 mm",
        ],
    );
}

#[test]
fn two_columns_may_be_one_range() {
    check(
        "1. Packing - As in the table.\n\
         \n\
         TABLE 1  DEPTHS\n\
         \n\
         \x20 Joint width, mm      Depth     Strips\n\
         \x20 from      to         mm, min\n\
         \x20 -------------------------------------\n\
         \x20 10        30         60        1\n\
         \x20 31        60         90        2\n",
        &[
            "Table 1:depths_depth_mm_min: at least 60 mm if joint.width from 10 mm to 30 mm",
            "Table 1:steel_strip_strips: exactly 1 count if joint.width from 10 mm to 30 mm",
            "Table 1:depths_depth_mm_min: at least 90 mm if joint.width from 31 mm to 60 mm",
            "Table 1:steel_strip_strips: exactly 2 count if joint.width from 31 mm to 60 mm",
        ],
    );
    check(
        "1. Packing - As in the table.\n\
         \n\
         REQUIREMENTS\n\
         \n\
         Feature                        Value               Tolerance\n\
         --------------------------------------------------------------\n\
         Recess                         10 mm               ± 2 mm\n\
         Width oversize                 25 %                -\n\
         Depth                          12 mm               +2, -0\n",
        &[
            "REQUIREMENTS:requirements_recess: between 8 to 12 mm",
            "REQUIREMENTS:requirements_width_oversize: nominal 25 percent",
            "REQUIREMENTS:requirements_depth: between 12 to 14 mm",
        ],
    );
}

#[test]
fn a_mark_repeats_the_cell_above_or_in_a_labelled_row_the_one_to_the_left() {
    check(
        "1. Fixings - As in the table.\n\
         \n\
         TABLE 7\n\
         Substrate     Length, mm    Spacing, mm    Edge distance, mm\n\
         ------------------------------------------------------------\n\
         Concrete      40 min        300 max        50 min\n\
         Masonry       50 min        do.            \"\n",
        &[
            "Table 7:length_mm: at least 40 mm if \"Substrate: Concrete\"",
            "Table 7:spacing_mm: at most 300 mm if \"Substrate: Concrete\"",
            "Table 7:edge_distance_mm: at least 50 mm if \"Substrate: Concrete\"",
            "Table 7:length_mm: at least 50 mm if \"Substrate: Masonry\"",
            "Table 7:spacing_mm: at most 300 mm if \"Substrate: Masonry\"",
            "Table 7:edge_distance_mm: at least 50 mm if \"Substrate: Masonry\"",
        ],
    );
    check(
        "1. Packing - One of the boards in Table 2.\n\
         \n\
         TABLE 2  BOARDS\n\
         +------------------+-----------+-----------+-----------+\n\
         | Property         | Board A   | Board B   | Board C   |\n\
         +------------------+-----------+-----------+-----------+\n\
         | Density, pcf     | 4 min     | 6 min     | 8 min     |\n\
         | Thickness, in.   | 2         | 2-1/2     | do.       |\n\
         +------------------+-----------+-----------+-----------+\n",
        &[
            "Table 2:boards_density_pcf: at least 4 pcf if \"Board A\"",
            "Table 2:boards_density_pcf: at least 6 pcf if \"Board B\"",
            "Table 2:boards_density_pcf: at least 8 pcf if \"Board C\"",
            "board.thickness: nominal 2 in if \"Board A\"",
            "board.thickness: nominal 5/2 in if \"Board B\"",
            "board.thickness: nominal 5/2 in if \"Board C\"",
        ],
    );
}

#[test]
fn columns_headed_by_numbers_of_one_thing_are_cases() {
    check(
        "1. Boards - Strips of board as in the table.\n\
         \n\
         TABLE 4  STRIP DEPTH, MM (MINIMUM)\n\
         Joint width      1 layer      2 layers\n\
         ------------------------------------------\n\
         up to 25 mm      100          75\n\
         26 to 50 mm      150          100\n\
         over 50 mm       not allowed  125\n",
        &[
            "Table 4:steel_strip_strip_depth_mm: at least 100 mm if joint.width <= 25 mm and \"1 layer\"",
            "Table 4:steel_strip_strip_depth_mm: at least 75 mm if joint.width <= 25 mm and \"2 layers\"",
            "Table 4:steel_strip_strip_depth_mm: at least 150 mm if joint.width from 26 mm to 50 mm and \"1 layer\"",
            "Table 4:steel_strip_strip_depth_mm: at least 100 mm if joint.width from 26 mm to 50 mm and \"2 layers\"",
            "Table 4:steel_strip_strip_depth_mm: at least 125 mm if joint.width > 50 mm and \"2 layers\"",
        ],
    );
}

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
            "board.layers: exactly 1 count if joint.rating = 1 hr and joint.width from 1/2 in. to 2 in.",
            "packing.depth: at least 3 in if joint.rating = 1 hr and joint.width from 1/2 in. to 2 in.",
            "board.layers: exactly 1 count if joint.rating = 1 hr and joint.width over 2 in. to 4 in.",
            "packing.depth: at least 7/2 in if joint.rating = 1 hr and joint.width over 2 in. to 4 in.",
            "board.layers: exactly 1 count if joint.rating = 2 hr and joint.width from 1/2 in. to 2 in.",
            "packing.depth: at least 4 in if joint.rating = 2 hr and joint.width from 1/2 in. to 2 in.",
            "board.layers: exactly 2 count if joint.rating = 2 hr and joint.width over 2 in. to 4 in.",
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
            "J-4:wall_min: at least 25 mm",
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
            "deck.depth: at least 64 mm",
            "deck.depth: at most 90 mm",
        ],
    );
}
