//! Captions that say how the columns below them are limited. The wordings are invented.

use listing::{Relation, Requirement, read_text};

use super::{bounds, check};

fn table(caption: &str) -> String {
    format!(
        "Sheet PF-3\n\n1. Packing - Mineral wool, see Table A.\n\n{caption}\n\
         ------------------------------------------------------\n\
         Joint width   Packing    Packing           Clip spacing\n\
         in.           depth      compression, %    o.c.\n\
         ------------------------------------------------------\n\
         up to 4       3          20                30\n\
         over 4 to 8   4-1/2      33                16\n\
         ------------------------------------------------------\n"
    )
}

/// The bounds, without the rows that they are for.
fn limits(caption: &str) -> Vec<String> {
    let found = bounds(&table(caption)).into_iter();
    found
        .filter_map(|one| Some(one.split_once(" [")?.0.to_owned()))
        .collect()
}

#[test]
fn a_caption_limits_columns_by_their_names() {
    for caption in [
        "TABLE A  (dimensions in inches; depth and compression are minimums, clip spacing is maximum)",
        "TABLE A  (dimensions in inches: packing depth & compression are minimum, and clip spacing is the most)",
        "TABLE A  Depth is minimum, compression is minimum and clip spacing is maximum; dimensions in inches.",
    ] {
        let expected = [
            "packing.depth: at least 3 in.",
            "packing.compression: at least 20 %",
            "clip.spacing: at most 30 in.",
            "packing.depth: at least 4-1/2 in.",
            "packing.compression: at least 33 %",
            "clip.spacing: at most 16 in.",
        ];
        assert_eq!(limits(caption), expected, "{caption}");
    }
}

#[test]
fn a_column_that_the_caption_doesn_t_name_has_no_limit_of_it() {
    let caption = "TABLE A  (dimensions in inches; depth is minimum)";
    let expected = [
        "packing.depth: at least 3 in.",
        "packing.compression: nominal 20 %",
        "clip.spacing: nominal 30 in.",
    ];
    assert_eq!(limits(caption).get(..3).unwrap(), expected);
    // What isn't limited isn't.
    let caption = "TABLE A  (dimensions in inches; depth is minimum, compression is not minimum)";
    assert_eq!(limits(caption).get(..3).unwrap(), expected);
}

/// A bare number would be met by less than is meant.
#[test]
fn a_limit_that_nobody_can_place_leaves_words() {
    for caption in [
        "TABLE A  (dimensions in inches; bead height is minimum)",
        "TABLE A  (dimensions in inches; bead height is minimum, clip length is maximum)",
        "TABLE A  - Minima and maxima of the tested joints, dimensions in inches",
    ] {
        let text = table(caption);
        let reading = read_text("sample", &text);
        let bare = reading.clauses.iter().filter(|clause| {
            matches!(&clause.requirement, Requirement::Bound(bound) if bound.relation == Relation::Nominal)
        });
        assert_eq!(bare.count(), 0, "{caption}");
        let words = reading.clauses.iter().filter(|clause| {
            let is_cell = ["3", "20", "30", "4-1/2", "33", "16"].contains(&clause.words.as_str());
            is_cell && matches!(&clause.requirement, Requirement::Prose)
        });
        assert_eq!(words.count(), 6, "{caption}");
    }
    // A limit that takes its number is the joint's.
    let caption = "TABLE A  - Joints max 8 in. wide, dimensions in inches";
    assert_eq!(limits(caption).len(), 6);
}

#[test]
fn names_may_each_have_their_limit_before_them() {
    let read = |caption: &str| {
        bounds(&format!(
            "Sheet PF-3\n\n1. Packing - Mineral wool, see Table A.\n\n{caption}\n\n\
             Joint width, in.   Packing depth, in.   Clip spacing, in.\n\
             up to 4            3                    30\n\
             over 4 to 8        4-1/2                16\n"
        ))
    };
    let without_rows = |found: Vec<String>| -> Vec<String> {
        let found = found.into_iter();
        found
            .filter_map(|one| Some(one.split_once(" [")?.0.to_owned()))
            .collect()
    };
    for caption in [
        "TABLE A - Minimum packing depth and maximum clip spacing",
        "TABLE A - Minimum depth/maximum clip spacing",
        "TABLE A - Maximum clip spacing, minimum depth",
        "TABLE A - Packing depth is a minimum, clip spacing is a maximum",
        "TABLE A - Packing depth is the least, clip spacing is the most.",
    ] {
        let expected = [
            "packing.depth: at least 3 in.",
            "clip.spacing: at most 30 in.",
            "packing.depth: at least 4-1/2 in.",
            "clip.spacing: at most 16 in.",
        ];
        assert_eq!(without_rows(read(caption)), expected, "{caption}");
    }
    // Two limits before one name are anybody's.
    let mixed = "TABLE A - Minimum and maximum packing depth";
    assert!(
        read(mixed).iter().all(|one| !one.contains("depth: at")),
        "{mixed}"
    );
}

#[test]
fn a_sentence_of_a_paragraph_limits_what_it_names_and_minutes_are_a_rating() {
    let found = bounds(
        "Sheet PF-3\n\n1. Sealant\n\n\
         The depth is of sealant, in mm, and is a minimum. Width is the key of the rows.\n\n\
         Width, mm     60 min, mm      120 min, mm       Faces\n\
         ------------  --------------  ----------------  ------\n\
         6 to 15       10              12                one\n\
         16 to 30      15              15                two\n\
         31 to 60      20              25                two\n",
    );
    let of = |words: &str| found.iter().filter(|one| one.contains(words)).count();
    assert_eq!(of("at least 1"), 4, "{found:#?}");
    assert_eq!(of("60 min"), 3, "{found:#?}");
    assert_eq!(of("120 min"), 3, "{found:#?}");
    // Nobody said how many faces at least.
    assert!(
        found.iter().all(|one| !one.contains("faces: at least")),
        "{found:#?}"
    );
}

#[test]
fn a_caption_limits_all_of_its_table() {
    let of = |caption: &str, heads: &str| {
        bounds(&format!(
            "Sheet PF-3\n\n1. Packing - Mineral wool, see Table A.\n\n{caption}\n\n\
             {heads}\n-----------------------------------------------------\n\
             up to 4            3                   20\n\
             over 4 to 8        4-1/2               33\n"
        ))
    };
    let plain = "Joint width, in.   Packing depth, in.   Compression, %";
    for caption in [
        "TABLE A - Packing by joint width, all min.",
        "TABLE A - Packing (minimum values)",
        "TABLE A - Packing, all minimum",
        "TABLE A - Packing; all values are minimums",
        "TABLE A - Packing, all dimensions in inches, minimum",
    ] {
        let found = of(caption, plain);
        assert_eq!(found.len(), 4, "{caption} {found:#?}");
        assert!(
            found.iter().all(|one| one.contains(": at least")),
            "{caption} {found:#?}"
        );
    }
    // Of one measure alone, or of two limits, it isn't said of all.
    for caption in [
        "TABLE A - Packing, depth minimum",
        "TABLE A - Packing, all min. or all max.",
    ] {
        let found = of(caption, plain);
        let limited = found.iter().filter(|one| one.contains("compression: at"));
        assert_eq!(limited.count(), 0, "{caption} {found:#?}");
    }
    // A least spacing makes no sense: nobody knows which is meant.
    let spaced = "Joint width, in.   Packing depth, in.   Clip spacing, in.";
    let found = of("TABLE A - Packing and clips, all min.", spaced);
    assert!(
        found
            .iter()
            .all(|one| one.contains("packing.depth: at least")),
        "{found:#?}"
    );
    assert_eq!(found.len(), 2, "{found:#?}");
}

#[test]
fn a_caption_gives_each_column_its_unit_by_its_name() {
    let found = |caption: &str| {
        bounds(&format!(
            "Sheet PF-3\n\n1. Floor - See Table A.\n\nTABLE A - {caption}\n\n\
             Element                Thickness     Density\n\
             ---------------------------------------------\n\
             Floor, cast concrete   4-1/2         110\n\
             Floor, plank           6             145\n"
        ))
    };
    let named = found("(thickness in in., density in pcf, all min.)");
    assert!(
        named.iter().any(|one| one.contains("at least 4-1/2 in.")),
        "{named:#?}"
    );
    assert!(
        named
            .iter()
            .any(|one| one.contains("at least 110 lb/ft3") || one.contains("at least 110 pcf")),
        "{named:#?}"
    );
    let other = found("(thickness in in., weight in pcf, all min.)");
    assert!(!other.iter().any(|one| one.contains("pcf")), "{other:#?}");
}

#[test]
fn a_caption_says_what_is_measured_at_the_places_of_its_columns() {
    let found = |caption: &str| {
        bounds(&format!(
            "Sheet PF-3\n\n1. Fireproofing - See the table.\n\n\
             TABLE A-2                        {caption}\n\
             Wall rating     Flange tips     Elsewhere\n\
             -------------------------------------------\n\
             1 hr            1/2             7/16\n\
             2 hr            9/16            1-1/8\n\
             -------------------------------------------\n"
        ))
    };
    let read = found("thicknesses in inches");
    assert_eq!(read.len(), 4, "{read:#?}");
    // It is not the flange's own thickness.
    assert!(
        !read
            .iter()
            .any(|one| one.starts_with("beam.flange_thickness")),
        "{read:#?}"
    );
    let unsaid = found("as tested in inches");
    assert!(unsaid.is_empty(), "{unsaid:#?}");
}

/// A table of two sizes under a caption, each number as it is read.
fn of_sizes(caption: &str) -> Vec<String> {
    bounds(&format!(
        "Sheet PF-4\n\n1. Barrier - See Table 1.\n\nTable 1 - {caption}\n\n\
         Size        Anchor spacing, in.     Drape, in.\n\
         ------------------------------------------------\n\
         S-1         16                      2\n\
         S-2         12                      3\n\
         ------------------------------------------------\n"
    ))
}

#[test]
fn a_column_that_a_caption_excepts_is_not_limited_as_the_others() {
    let read = of_sizes("sizes. Figures are maximums, except the drape, which is a minimum.");
    let most = read.iter().filter(|one| one.contains("at most"));
    assert_eq!(most.count(), 2, "{read:#?}");
    let least = read.iter().filter(|one| one.contains("at least"));
    assert_eq!(least.count(), 2, "{read:#?}");
    // Of what the caption excepts and says no more, nobody knows.
    let read = of_sizes("sizes. Figures are maximums, except the drape.");
    assert!(!read.iter().any(|one| one.contains("drape")), "{read:#?}");
}

#[test]
fn limits_behind_the_names_of_columns() {
    let read = of_sizes("sizes (anchor spacing not more than, drape not less than)");
    assert!(
        read.iter().any(|one| one.contains("at most 16 in")),
        "{read:#?}"
    );
    assert!(
        read.iter().any(|one| one.contains("at least 2 in")),
        "{read:#?}"
    );
}

#[test]
fn least_values_are_limits() {
    let read = bounds(
        "Sheet PF-5\n\n1. Sealant - See Table 1.\n\nTable 1. Sealant depth (least values)\n\n\
         Joint width, mm     Depth, mm\n\
         ------------------------------\n\
         12 to 25            6\n\
         over 25 to 50       10\n\
         ------------------------------\n",
    );
    assert_eq!(read.len(), 2, "{read:#?}");
    assert!(
        read.iter()
            .all(|one| one.contains("sealant.depth: at least")),
        "{read:#?}"
    );
}

#[test]
fn words_over_two_columns_of_a_drawn_head_are_of_both() {
    let read = bounds(
        "1. COATING - As in Table A.\n\n   Table A -- Minimum Wet Thickness of Fill Material\n\
         +---------------------+----------------------+\n\
         |                     | Wet thickness, in.   |\n\
         | Joint width, in.    |  1 Hr    |   2 Hr    |\n\
         +---------------------+----------+-----------+\n\
         | Up to 1             |  1/16    |   1/8     |\n\
         | Over 1 to 2         |  1/8     |   3/16    |\n\
         +---------------------+----------+-----------+\n",
    );
    assert_eq!(read.len(), 4, "{read:#?}");
    assert!(read.iter().all(|one| one.contains("at least")), "{read:#?}");
}

#[test]
fn an_overlap_by_joints_is_no_width_of_theirs() {
    let read = bounds(
        "Sheet PF-6\n\n1. Coating - Over the slab and the insulation.\n\nTable 1.  Overlap of the coating, in inches, not less than\n\
         -----------------------------------------------\n\
         Surface          Joint to 4 in.   Joint over 4 in.\n\
         -----------------------------------------------\n\
         Top of slab          1/2               1\n\
         Mullion cover         1              1 1/2\n\
         -----------------------------------------------\n",
    );
    assert_eq!(read.len(), 4, "{read:#?}");
    for one in &read {
        assert!(one.contains("at least"), "{read:#?}");
        assert!(!one.starts_with("joint.width"), "{read:#?}");
    }
}

#[test]
fn a_caption_with_its_limit_and_unit_in_brackets_says_what_ratings_head() {
    let table = |heads: [&str; 2]| {
        format!(
            "1. Sealant - Applied both sides. Depths (minimum, mm):\n\n     +---------------+----------+-----------+\n     | Joint width   | {:<8} | {:<9} |\n     +---------------+----------+-----------+\n     | 10 to 20      | 10       | 15        |\n     | over 20 to 30 | 15       | 20        |\n     +---------------+----------+-----------+\n",
            heads[0], heads[1]
        )
    };
    check(
        &table(["EI 60", "EI 120"]),
        &[
            "sealant.depth: at least 10 mm [Joint width: 10 to 20; EI 60]",
            "sealant.depth: at least 15 mm [Joint width: 10 to 20; EI 120]",
            "sealant.depth: at least 15 mm [Joint width: over 20 to 30; EI 60]",
            "sealant.depth: at least 20 mm [Joint width: over 20 to 30; EI 120]",
        ],
    );
    // Fire resistance levels (AS 1530.4).
    check(
        &table(["-/60/60", "-/120/120"]),
        &[
            "sealant.depth: at least 10 mm [Joint width: 10 to 20; -/60/60]",
            "sealant.depth: at least 15 mm [Joint width: 10 to 20; -/120/120]",
            "sealant.depth: at least 15 mm [Joint width: over 20 to 30; -/60/60]",
            "sealant.depth: at least 20 mm [Joint width: over 20 to 30; -/120/120]",
        ],
    );
}

#[test]
fn the_last_sentence_of_a_paragraph_captions_the_places_below() {
    check(
        "1. Fireproofing - Sprayed material, density min. 240 kg/m3. Minimum thickness:\n\n             Rating         Beam          Flange\n             1 Hr.          14 mm         10 mm\n             2 Hr.          27 mm         13 mm\n",
        &[
            "fireproofing.density: at least 240 kg/m³",
            "1:fireproofing_thickness_at_beam: at least 14 mm [Rating: 1 Hr.]",
            "1:fireproofing_thickness_at_flange: at least 10 mm [Rating: 1 Hr.]",
            "1:fireproofing_thickness_at_beam: at least 27 mm [Rating: 2 Hr.]",
            "1:fireproofing_thickness_at_flange: at least 13 mm [Rating: 2 Hr.]",
        ],
    );
}

#[test]
fn bare_numbers_under_a_measure_without_a_unit_count_nothing() {
    let table = |caption: &str| {
        format!(
            "1. Floor - Min 6 in. thick.\n2. PACKING{caption}\n\n    Rating     Wool depth     Layers\n    hr         min\n    ----------------------------------\n    1          4              1\n    2          5              2\n    ----------------------------------\n"
        )
    };
    let found = bounds(&table(""));
    assert!(
        found
            .iter()
            .all(|clause| !clause.contains("depth") || !clause.contains("at least")),
        "{found:?}"
    );
    let found = bounds(&table(" (all dims in in. unless stated)"));
    assert!(
        found
            .iter()
            .any(|clause| clause.starts_with("packing.depth: at least 4 in.")),
        "{found:?}"
    );
}

/// A table whose columns are ratings alone, whose cells have their own units.
fn by_rating(caption: &str) -> String {
    format!(
        "Sheet PF-4\n\n1. PACKING - Mineral wool.\n\n{caption}\n\n\
         Joint width, in.   1 hr     2 hr\n\
         1 to 2             2 in.    3 in.\n\
         over 2 to 4        3 in.    4 in.\n"
    )
}

#[test]
fn a_caption_that_is_a_size_and_its_limit_alone() {
    for (caption, expected) in [
        ("DEPTH, MIN.", "packing.depth: at least 2 in."),
        ("Depth, max:", "packing.depth: at most 2 in."),
        (
            "Depth of packing (not more than):",
            "packing.depth: at most 2 in.",
        ),
        (
            "Depth of packing (not less than):",
            "packing.depth: at least 2 in.",
        ),
        ("Recess, max.", "packing.recess: at most 2 in."),
    ] {
        let found = bounds(&by_rating(caption));
        assert!(
            found.first().unwrap().starts_with(expected),
            "{caption}: {found:?}"
        );
        assert_eq!(found.len(), 4, "{caption}: {found:?}");
    }
    // A limit of the joints is none of the depth, and two sizes leave it open.
    for caption in ["Depth, joints 4 in. max", "Depth and lap, min."] {
        let found = bounds(&by_rating(caption));
        let of_rows = found.iter().filter(|one| one.contains("Joint width"));
        let limited = |one: &&String| one.contains("at least") || one.contains("at most");
        assert_eq!(of_rows.filter(limited).count(), 0, "{caption}: {found:?}");
    }
}
