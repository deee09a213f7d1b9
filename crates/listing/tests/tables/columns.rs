//! Columns: what their headings say of the cells, and in which case they hold.

use crate::check;

#[test]
fn a_column_of_properties_behind_one_of_parts() {
    check(
        "1  Make-up\n\n\
         Table 1 - Components\n\n\
         Component      Property              Value\n\
         ------------   -------------------   -------------\n\
         Seal strip     depth in the joint    >= 80 mm\n\
         Stone wool     density               >= 50 kg/m3\n\
         \x20              depth                 at least 60 mm\n\
         Cover strip    overlap, each side    min. 25 mm\n\
         (optional)     screw spacing         <= 250 mm\n\
         ------------   -------------------   -------------\n",
        &[
            "seal.depth: at least 80 mm",
            "packing.density: at least 50 kg/m³",
            "packing.depth: at least 60 mm",
            "Table 1:cover_strip_optional_overlap_each: at least 25 mm [Cover strip (optional)]",
            "fastener.spacing: at most 250 mm [Cover strip (optional)]",
        ],
    );
}

#[test]
fn columns_of_limits() {
    check(
        "5  Field of application\n\n\
         Table 3 - Limits\n\n\
         Characteristic             Lower limit    Upper limit\n\
         ------------------------   ------------   ------------\n\
         Depth of seal strip        80 mm          110 mm\n\
         Thickness of wall          150 mm         none\n\
         ------------------------   ------------   ------------\n",
        &[
            "seal.depth: between 80 mm and 110 mm",
            "wall.thickness: at least 150 mm",
        ],
    );
}

#[test]
fn columns_headed_by_the_ratings_they_are_for() {
    check(
        "A   SLAB\n\
         \x20   -------------------------------------------\n\
         \x20   Rating, hr            1        2        3\n\
         \x20   -------------------------------------------\n\
         \x20   Thickness, min in.    3-1/2    4-1/2    6\n\
         \x20   Density, pcf          100-150  100-150  140-150\n\
         \x20   -------------------------------------------\n\
         B   PACKING\n",
        &[
            "floor.thickness: at least 3-1/2 in. [Rating, hr: 1]",
            "floor.thickness: at least 4-1/2 in. [Rating, hr: 2]",
            "floor.thickness: at least 6 in. [Rating, hr: 3]",
            "A:slab_density_pcf: between 100 pcf and 150 pcf [Rating, hr: 1]",
            "A:slab_density_pcf: between 100 pcf and 150 pcf [Rating, hr: 2]",
            "A:slab_density_pcf: between 140 pcf and 150 pcf [Rating, hr: 3]",
        ],
    );
}

#[test]
fn rows_under_a_line_of_their_own_and_columns_under_one_heading() {
    check(
        "2. WALLS\n\n\
         \x20   TABLE 1 - WALL JOINTS\n\
         \x20   ------------------------------------------------------------\n\
         \x20                                     Joint width (mm)\n\
         \x20                             ------------------------------\n\
         \x20                             10 to 25        26 to 50\n\
         \x20   ------------------------------------------------------------\n\
         \x20   FRL -/60/60\n\
         \x20     Packing depth, min (mm)     50              60\n\
         \x20     Compression, min (%)        15              20 (a)\n\
         \x20   FRL -/120/120\n\
         \x20     Packing depth, min (mm)     75              90\n\
         \x20   ------------------------------------------------------------\n\
         3. SLABS\n",
        &[
            "packing.depth: at least 50 mm [FRL -/60/60; Joint width (mm): 10 to 25]",
            "packing.depth: at least 60 mm [FRL -/60/60; Joint width (mm): 26 to 50]",
            "Table 1:wall_joints_compression_min: at least 15 % [FRL -/60/60; Joint width (mm): 10 to 25]",
            "Table 1:wall_joints_compression_min: at least 20 % [FRL -/60/60; Joint width (mm): 26 to 50]",
            "packing.depth: at least 75 mm [FRL -/120/120; Joint width (mm): 10 to 25]",
            "packing.depth: at least 90 mm [FRL -/120/120; Joint width (mm): 26 to 50]",
        ],
    );
}

#[test]
fn rules_drawn_within_a_heading_and_rows_repeated_in_another_unit() {
    check(
        "A. PACKING AND COATING\n\n\
         ------------------------------------------------------------------------\n\
         \x20                    Packing                            Movement\n\
         \x20 Joint width,       ----------------------------       of joint,\n\
         \x20 in. (mm)           Pieces    Depth,                   max, %\n\
         \x20                              min, in. (mm)\n\
         ------------------------------------------------------------------------\n\
         \x20 1/2 to 1           one       3-1/2 (89)               25\n\
         \x20 (13 to 25)\n\
         \x20 over 1 to 2        one       4 (102)                  20\n\
         \x20 (25 to 51)\n\
         ------------------------------------------------------------------------\n\
         B. TOP\n",
        &[
            "packing.layers: exactly 1 [Joint width, in. (mm): 1/2 to 1 (13 to 25)]",
            "packing.depth: at least 3-1/2 in. [Joint width, in. (mm): 1/2 to 1 (13 to 25)]",
            "A:joint_movement_of_joint_max: at most 25 % [Joint width, in. (mm): 1/2 to 1 (13 to 25)]",
            "packing.layers: exactly 1 [Joint width, in. (mm): over 1 to 2 (25 to 51)]",
            "packing.depth: at least 4 in. [Joint width, in. (mm): over 1 to 2 (25 to 51)]",
            "A:joint_movement_of_joint_max: at most 20 % [Joint width, in. (mm): over 1 to 2 (25 to 51)]",
        ],
    );
}

#[test]
fn a_schedule_with_columns_by_rating() {
    let text = "ref     part             what is required                      1 hr            2 hr\n-------------------------------------------------------------------------------------\n\nA1      Floor slab       Concrete, flat, troweled. Density     min 2-1/2 in.   min 4-1/2 in.\n                         100 to 150 pcf. Thickness as at\n                         right.\n\nA2      Studs            Steel, 25 ga, seated in the runner    24 in. o.c.     16 in. o.c.\n                         and screwed to it on one side.\n\nA3      Joint width      Measured board edge to floor. Not     1/4 to 1 in.    1/4 to 3/4 in.\n                         to vary more than 1/8 in. in any\n                         one stud bay.\n";
    check(
        text,
        &[
            "concrete.density: between 100 pcf and 150 pcf",
            "A1:floor_or_roof_floor_slab: at least 2-1/2 in. [1 hr]",
            "A1:floor_or_roof_floor_slab: at least 4-1/2 in. [2 hr]",
            "stud.gauge: nominal 25 gauge",
            "stud.spacing: nominal 24 in. [1 hr]",
            "stud.spacing: nominal 16 in. [2 hr]",
            "A3:joint_not_to_vary_in: at most 1/8 in.",
            "joint.width: between 1/4 in. and 1 in. [1 hr]",
            "joint.width: between 1/4 in. and 3/4 in. [2 hr]",
        ],
    );
}

#[test]
fn two_columns_of_a_case_and_its_value() {
    let expected = [
        "packing.depth: at least 3 in. [Joint width, in.: up to 1]",
        "packing.depth: at least 4 in. [Joint width, in.: over 1 to 2]",
    ];
    for (gap, text) in [
        (
            "spaces",
            "Joint width, in.    Min depth, in.\nup to 1             3\nover 1 to 2         4\n",
        ),
        (
            "ragged",
            "Joint width, in.    Min depth, in.\nup to 1    3\nover 1 to 2    4\n",
        ),
        (
            "uprights",
            "Joint width, in. | Min depth, in.\nup to 1 | 3\nover 1 to 2 | 4\n",
        ),
        (
            "boxed",
            "| Joint width, in. | Min depth, in. |\n| up to 1 | 3 |\n| over 1 to 2 | 4 |\n",
        ),
    ] {
        let text = format!("1. Packing - Wool.\n\n{text}");
        assert_eq!(crate::bounds(&text), expected, "{gap}");
    }
    // Two columns of words, or of anything else than cases, are no such table.
    let text = "1. Packing - Wool.\n\nMaker        Batts\nScarfell     4 in.\nGraylund     3 in.\n";
    let found = crate::bounds(text);
    assert!(found.iter().all(|one| !one.contains('[')), "{found:#?}");
}

#[test]
fn ratings_head_columns_between_uprights() {
    let text = "1. Packing - Wool.\n\nTable 1 - Minimum depth of packing, in.\n\n\
                Joint width, in. | 1 hr | 2 hr\nup to 1 | 2 | 3\nover 1 to 2 | 3 | 4\n";
    let found = crate::bounds(text);
    assert_eq!(
        found.iter().filter(|one| one.contains("at least")).count(),
        4,
        "{found:#?}"
    );
    assert!(
        found.iter().all(|one| !one.contains("joint.width: ")),
        "{found:#?}"
    );
    // What the numbers are of, nobody has said.
    let found =
        crate::bounds(&text.replace("Table 1 - Minimum depth of packing, in.", "As drawn."));
    assert!(
        found.iter().all(|one| !one.contains("exactly")),
        "{found:#?}"
    );
}

#[test]
fn an_upright_at_the_end_of_rows_that_begin_without_one_leads_to_an_empty_cell() {
    for last in ["", " see A"] {
        let text = format!(
            "1. Slab - Min 6 in. thick.\n2. Packing\nRating | Min depth | Max width | Notes\n1 hr | 1/4 in. | 1 in. |\n2 hr | 1/2 in. | 2 in. |{last}\n3. Sealant - As needed.\n"
        );
        check(
            &text,
            &[
                "floor.thickness: at least 6 in.",
                "packing.depth: at least 1/4 in. [Rating: 1 hr]",
                "joint.width: at most 1 in. [Rating: 1 hr]",
                "packing.depth: at least 1/2 in. [Rating: 2 hr]",
                "joint.width: at most 2 in. [Rating: 2 hr]",
            ],
        );
    }
}
