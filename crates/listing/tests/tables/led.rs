//! Tables that the sentence above them, or another of their columns, says more of: what is measured, in which unit, how it is limited. The wordings are
//! invented.

use super::check;

/// Movements of two joint types by the joint's width, under a sentence.
fn movements(lead: &str) -> String {
    format!(
        "1. Floor - Concrete.\n2. Joint - {lead}\n\n\
         \x20                                  Joint width, nominal\n\
         \x20    Joint type           to 1 in.      over 1 to 3 in.    over 3 in.\n\
         \x20    ----------------------------------------------------------------\n\
         \x20    Head of wall           25                33               50\n\
         \x20    Floor to wall          12-1/2            15               25\n\
         \x20    ----------------------------------------------------------------\n\n\
         3. Sealant - As needed.\n"
    )
}

#[test]
fn a_sentence_says_what_its_table_limits_and_in_which_unit() {
    for lead in [
        "Movement shall not be less than the following, in percent of nominal width:",
        "The movement must be at least that given below, in percent:",
    ] {
        check(
            &movements(lead),
            &[
                "2:joint_movement: at least 25 % [Joint type: Head of wall; Joint width, nominal: to 1 in.]",
                "2:joint_movement: at least 33 % [Joint type: Head of wall; Joint width, nominal: over 1 to 3 in.]",
                "2:joint_movement: at least 50 % [Joint type: Head of wall; Joint width, nominal: over 3 in.]",
                "2:joint_movement: at least 12.5 % [Joint type: Floor to wall; Joint width, nominal: to 1 in.]",
                "2:joint_movement: at least 15 % [Joint type: Floor to wall; Joint width, nominal: over 1 to 3 in.]",
                "2:joint_movement: at least 25 % [Joint type: Floor to wall; Joint width, nominal: over 3 in.]",
            ],
        );
    }
}

#[test]
fn a_sentence_with_a_case_or_two_limits_leaves_its_table_unread() {
    for lead in [
        "Where the wall is of board, movement shall not be less than the following, in percent:",
        "Movement shall not be less than the following and not more than twice that, in percent:",
        "Depth or movement shall not be less than the following, in percent:",
    ] {
        check(&movements(lead), &[]);
    }
    // Its columns have names and units of their own, and their numbers may be limited all the same.
    for lead in [
        "Where the wall is of board, depth shall not be less than the following:",
        "Depth and lap shall not be less than the following:",
    ] {
        check(
            &format!(
                "1. Floor - Concrete.\n2. Packing - {lead}\n\n\
                 \x20    Joint width       Depth, in.      Lap, in.\n\
                 \x20    -----------------------------------------\n\
                 \x20    up to 2 in.       3               1\n\
                 \x20    over 2 to 4 in.   5               2\n\
                 \x20    -----------------------------------------\n\n\
                 3. Sealant - As needed.\n"
            ),
            &[],
        );
    }
}

#[test]
fn columns_headed_by_sections_are_for_these_members() {
    let text = |lead: &str| {
        format!(
            "1. Beam - Steel.\n2. Sprayed Fireproofing - {lead}\n\n\
             \x20    Rating of wall     W8x28 to W12x26    W14x30 and heavier\n\
             \x20    --------------------------------------------------------\n\
             \x20    1 hr               1/2 in.            3/8 in.\n\
             \x20    2 hr               15/16 in.          13/16 in.\n\
             \x20    --------------------------------------------------------\n\n\
             3. Sealant - As needed.\n"
        )
    };
    check(
        &text("Thickness on the beam:"),
        &[
            "2:fireproofing_thickness: nominal 1/2 in. [Rating of wall: 1 hr; W8x28 to W12x26]",
            "2:fireproofing_thickness: nominal 3/8 in. [Rating of wall: 1 hr; W14x30 and heavier]",
            "2:fireproofing_thickness: nominal 15/16 in. [Rating of wall: 2 hr; W8x28 to W12x26]",
            "2:fireproofing_thickness: nominal 13/16 in. [Rating of wall: 2 hr; W14x30 and heavier]",
        ],
    );
    check(
        &text("Thickness on the beam shall not be less than the following:"),
        &[
            "2:fireproofing_thickness: at least 1/2 in. [Rating of wall: 1 hr; W8x28 to W12x26]",
            "2:fireproofing_thickness: at least 3/8 in. [Rating of wall: 1 hr; W14x30 and heavier]",
            "2:fireproofing_thickness: at least 15/16 in. [Rating of wall: 2 hr; W8x28 to W12x26]",
            "2:fireproofing_thickness: at least 13/16 in. [Rating of wall: 2 hr; W14x30 and heavier]",
        ],
    );
}

/// Sizes of a barrier, whose spacings stand in this column.
fn sizes(spacings: [&str; 2]) -> String {
    let [first, second] = spacings;
    format!(
        "1. Floor - Concrete.\n2. Barrier - Figures are maximums.\n\n\
         \x20   +-------+-------------+------------------+\n\
         \x20   | Size  | Joint width | Anchors, spacing |\n\
         \x20   |       | mm (in.)    |                  |\n\
         \x20   +-------+-------------+------------------+\n\
         \x20   | R-1   | 100 (4)     | {first:<16} |\n\
         \x20   | R-2   | 200 (8)     | {second:<16} |\n\
         \x20   +-------+-------------+------------------+\n\n\
         3. Sealant - As needed.\n"
    )
}

#[test]
fn paired_numbers_take_the_units_of_another_column_where_they_agree() {
    check(
        &sizes(["400 (16)", "300 (12)"]),
        &[
            "joint.width: at most 100 mm [Size: R-1]",
            "fastener.spacing: at most 400 mm [Size: R-1]",
            "joint.width: at most 200 mm [Size: R-2]",
            "fastener.spacing: at most 300 mm [Size: R-2]",
        ],
    );
    for spacings in [["400 (16)", "300 (9)"], ["4 (16)", "3 (12)"]] {
        check(
            &sizes(spacings),
            &[
                "joint.width: at most 100 mm [Size: R-1]",
                "joint.width: at most 200 mm [Size: R-2]",
            ],
        );
    }
}

#[test]
fn values_in_brackets_behind_a_title_limit_all_columns() {
    check(
        "1. Joint.\n\n\
         T1  SUBSTRATES (min. values)\n\
         ------------------------------------------\n\
         Member             Thickness      Density\n\
         \x20                     in.           pcf\n\
         ------------------------------------------\n\
         Concrete floor       4-1/2          110\n\
         Concrete wall          5            140\n\
         ------------------------------------------\n",
        &[
            "1:joint_thickness_in: at least 4-1/2 in. [Member: Concrete floor]",
            "1:joint_density_pcf: at least 110 pcf [Member: Concrete floor]",
            "1:joint_thickness_in: at least 5 in. [Member: Concrete wall]",
            "1:joint_density_pcf: at least 140 pcf [Member: Concrete wall]",
        ],
    );
}

#[test]
fn names_say_what_rows_are_for_where_a_column_only_numbers_them() {
    let text = |second: &str| {
        format!(
            "1. Supporting constructions\n\n\
             \x20   Clause  Construction            Thickness      Density\n\
             \x20   ------  ----------------------  -------------  -----------------------\n\
             \x20   1.1     Rigid wall              >= 150 mm      >= 650 kg/m3\n\
             \x20   1.2     {second:<22}  >= 175 mm      >= 2200 kg/m3\n\n\
             2. Sealant - As needed.\n"
        )
    };
    check(
        &text("Rigid floor"),
        &[
            "1:supporting_constructions_thickness: at least 150 mm [Construction: Rigid wall]",
            "1:supporting_constructions_density: at least 650 kg/m³ [Construction: Rigid wall]",
            "1:supporting_constructions_thickness: at least 175 mm [Construction: Rigid floor]",
            "1:supporting_constructions_density: at least 2200 kg/m³ [Construction: Rigid floor]",
        ],
    );
    // What tells no row from another is no case: the numbers are.
    check(
        &text("Rigid wall"),
        &[
            "1:supporting_constructions_thickness: at least 150 mm [Clause: 1.1]",
            "1:supporting_constructions_density: at least 650 kg/m³ [Clause: 1.1]",
            "1:supporting_constructions_thickness: at least 175 mm [Clause: 1.2]",
            "1:supporting_constructions_density: at least 2200 kg/m³ [Clause: 1.2]",
        ],
    );
}

#[test]
fn a_column_of_rules_is_no_case() {
    check(
        "1. Field of application\n\n\
         \x20   Table 3\n\
         \x20   ------------------------------------------------------\n\
         \x20   Clause  Parameter               Rule\n\
         \x20   ------------------------------------------------------\n\
         \x20   5.1     Density of packing      >= 40 kg/m3\n\
         \x20   5.2     Height of wall          up to 4 m; greater heights are not covered\n\
         \x20   5.3     Shear movement          7.5 % at most\n\
         \x20   ------------------------------------------------------\n\n\
         2. Sealant - As needed.\n",
        &[
            "packing.density: at least 40 kg/m³",
            "wall.height: at most 4 m",
            "joint.movement_shear: at most 7.5 %",
        ],
    );
}

#[test]
fn numbers_of_rows_are_no_counts() {
    check(
        "1. Application\n\n\
         \x20   +------+-------------------+-------------------+\n\
         \x20   | Item | Step              | Limit             |\n\
         \x20   +------+-------------------+-------------------+\n\
         \x20   | 7    | Full cure         | at least 14 days  |\n\
         \x20   | 7    | Protect from rain | at least 24 hr    |\n\
         \x20   +------+-------------------+-------------------+\n\n\
         2. Sealant - As needed.\n",
        &[
            "1:application_limit: at least 14 days",
            "1:application_limit: at least 24 hr",
        ],
    );
}

#[test]
fn a_line_of_units_and_ratings_heads_columns() {
    check(
        "1. Packing - Mineral wool.\n2. Sealant - Tooled.\n\n\
         \x20  Table 1. Sealant thickness and bond height (least values)\n\n\
         \x20       Joint width          Thickness, mm (in.)            Bond height\n\
         \x20       mm (in.)             2 h             3 h            mm (in.)\n\n\
         \x20       12 to 25 (1/2 to 1)  6 (1/4)         10 (3/8)       7 (9/32)\n\
         \x20       26 to 50 (1 to 2)    11 (7/16)       12 (1/2)       13 (1/2)\n\n\
         3. Clip - As needed.\n",
        &[
            "Table 1:thickness_mm_in: at least 6 mm [Joint width mm (in.): 12 to 25 (1/2 to 1); 2 h]",
            "Table 1:thickness_mm_in: at least 10 mm [Joint width mm (in.): 12 to 25 (1/2 to 1); 3 h]",
            "Table 1:bond_height_mm_in: at least 7 mm [Joint width mm (in.): 12 to 25 (1/2 to 1)]",
            "Table 1:thickness_mm_in: at least 11 mm [Joint width mm (in.): 26 to 50 (1 to 2); 2 h]",
            "Table 1:thickness_mm_in: at least 12 mm [Joint width mm (in.): 26 to 50 (1 to 2); 3 h]",
            "Table 1:bond_height_mm_in: at least 13 mm [Joint width mm (in.): 26 to 50 (1 to 2)]",
        ],
    );
}
