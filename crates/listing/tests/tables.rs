//! Tables of every layout: which cells say what others are, which joints they are for, and how they are limited.

#![allow(
    clippy::unwrap_used,
    reason = "what was set up is there; where it isn't, the test fails"
)]

use listing::{Requirement, read_text};

/// The bounds of a text, each `property: words` and the words of its condition.
fn check(text: &str, expected: &[&str]) {
    let reading = read_text("sample", text);
    let bounds = reading.clauses.iter().filter_map(|clause| {
        let Requirement::Bound(bound) = &clause.requirement else {
            return None;
        };
        let condition = clause.condition.as_ref();
        let condition = condition.map_or_else(String::new, |it| format!(" [{}]", it.words));
        Some(format!("{}: {bound}{condition}", clause.property))
    });
    assert_eq!(bounds.collect::<Vec<_>>(), expected, "{text}");
}

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
            "seal.depth: at least 80 mm",
            "seal.depth: at most 110 mm",
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
fn a_parts_noun_is_no_attribute_where_another_word_is() {
    check(
        "1. WALL\n\n\
         ----------------------------------------------\n\
         Rating   Stud depth   Steel ga.    Studs o.c.\n\
         hr       min in.      or heavier   max in.\n\
         ----------------------------------------------\n\
         1        2-1/2        25           24\n\
         3        3-5/8        20           16\n\
         ----------------------------------------------\n\
         2. JOINT\n",
        &[
            "stud.width: at least 2-1/2 in. [Rating hr: 1]",
            "1:wall_steel_ga_or_heavier: at least 25 gauge [Rating hr: 1]",
            "stud.spacing: at most 24 in. [Rating hr: 1]",
            "stud.width: at least 3-5/8 in. [Rating hr: 3]",
            "1:wall_steel_ga_or_heavier: at least 20 gauge [Rating hr: 3]",
            "stud.spacing: at most 16 in. [Rating hr: 3]",
        ],
    );
}

#[test]
fn a_row_written_as_a_list() {
    check(
        "1. SEALANT - Any of those listed.\n\nDepth, min:   1 hr - 1/4 in.;   2 hr - 1/2 in.;   3 hr - 5/8 in.\n\n2. JOINT - As built.\n",
        &[
            "sealant.depth: at least 1/4 in. [1 hr]",
            "sealant.depth: at least 1/2 in. [2 hr]",
            "sealant.depth: at least 5/8 in. [3 hr]",
        ],
    );
    // Not every entry is a rating and a value: a sentence.
    let text = "1. SEALANT - Any.\n\nDepth: 1 hr - 1/4 in.; elsewhere as drawn.\n";
    let reading = read_text("sample", text);
    let cells = reading.clauses.iter();
    assert!(
        cells
            .flat_map(|clause| &clause.read_by)
            .all(|rule| rule != "table cell")
    );
}

/// EN 13501-2:2016, 7.5.9: the parts of the classification of linear joint seals.
#[test]
fn class_codes_run_together_or_set_apart() {
    let expected = [
        "joint.rating: nominal 90 min",
        "joint.classified_movement: nominal 20 %",
        "joint.width: between 15 mm and 60 mm",
    ];
    for code in [
        "EI 90-H-M20-B-W 15 to 60",
        "EI 90 - H - M 20 - B - W 15 to 60",
        "EI90–H–M20–B–W15–60",
    ] {
        check(&format!("1. Class: {code}.\n2. Other.\n"), &expected);
    }
    // The letters of a word begin no code, and no minutes are no class.
    for text in ["FEI 90-H-M20", "E 47 - H - W 10 to 20"] {
        let reading = read_text("sample", &format!("1. Class: {text}.\n2. Other.\n"));
        let rules = reading.clauses.iter().flat_map(|clause| &clause.read_by);
        assert!(
            rules.clone().all(|rule| rule != "class code"),
            "{text}: {rules:?}"
        );
    }
}
