//! What is turned down or ruled out, which limits the other way, and what a sentence only tells of, which limits nothing.

use crate::common::{self, check, check_item, unread_in as unread};

#[test]
fn what_is_turned_down_limits_the_other_way() {
    check_item(
        "Packing - Thickness under 4 in. not permitted.",
        &["packing.thickness: at least 4 in"],
    );
    check_item(
        "Packing - Depth less than 4 in. - not acceptable.",
        &["packing.depth: at least 4 in"],
    );
    check_item(
        "Fasteners - Fasteners more than 12 in. apart shall be supplemented.",
        &["fastener.spacing: at most 12 in"],
    );
    // Said of something else, a comparison stays as it is.
    check_item(
        "Packing - Depth not less than 4 in., butt joints not permitted.",
        &["packing.depth: at least 4 in"],
    );
    // A permission to leave out where it is so turns nothing.
    check_item(
        "Packing - Depth 3 in., may be omitted when joint is 2 in. or less.",
        &["packing.depth: nominal 3 in"],
    );
}

#[test]
fn a_value_that_is_turned_down_is_shown_as_unread() {
    for (item, number) in [
        ("Clips - 24 in. OC is not allowed.", "24 in."),
        ("Packing - 3 pcf wool is not to be used.", "3 pcf"),
        ("Fill - A depth of 1/4 in. is too shallow.", "1/4 in."),
        (
            "Screws - No fasteners are allowed in the top 2 in.",
            "2 in.",
        ),
        ("Packing - Depth need not exceed 4 in.", "4 in."),
    ] {
        check_item(item, &[]);
        assert_eq!(unread(item), [number], "{item}");
    }
    check_item(
        "Packing - Use 8 pcf, not 4 pcf.",
        &["packing.density: nominal 8 pcf"],
    );
    check_item(
        "Packing - At least 4 in. deep, no less.",
        &["packing.depth: at least 4 in"],
    );
}

#[test]
fn what_is_left_out_within_a_distance_stands_that_far_off() {
    check_item(
        "Runner - Screws shall be omitted within 3 in. of ceiling runner.",
        &["runner.screw_spacing: at least 3 in"],
    );
    let free = "Runner - Screws may be omitted within 3 in. of ceiling runner.";
    check_item(free, &[]);
    assert_eq!(unread(free), ["3 in."]);
}

/// What a sentence speaks of isn't asked for, whatever is said of it.
#[test]
fn a_case_that_a_sentence_speaks_of_is_no_limit() {
    for (item, number) in [
        (
            "Joint - Openings narrower than 1/2 inch cannot be packed by this method.",
            "1/2 inch",
        ),
        (
            "Joint - Joints narrower than 1/2 in. do not qualify for Option B.",
            "1/2 in.",
        ),
        (
            "Joint - Openings larger than 3 in. fall outside this listing unless clipped.",
            "3 in.",
        ),
        (
            "Spray - Humidities over 85 percent stop the clock.",
            "85 percent",
        ),
        (
            "Walls - Walls less than 5 in. thick were not tested with sealant alone.",
            "5 in.",
        ),
    ] {
        check_item(item, &[]);
        assert_eq!(unread(item), [number], "{item}");
    }
    // What is asked for, or turned down in words that say so, limits.
    check_item(
        "Joint - Joints shall be narrower than 2 in. and are packed.",
        &["joint.width: less than 2 in"],
    );
    check_item(
        "Packing - Wool thinner than 2 in. may not be used.",
        &["packing.thickness: at least 2 in"],
    );
}

#[test]
fn what_is_only_ruled_out_limits_the_other_way() {
    for out in [
        "cannot be packed",
        "do not qualify",
        "fall outside this listing",
        "were not tested",
        "have not been tested",
        "are not covered",
        "are beyond the scope of this listing",
        "are excluded",
    ] {
        check(
            &format!("1. JOINT - Joints narrower than 1/2 in. (13 mm) {out}.\n"),
            &["joint.width: at least 1/2 in"],
        );
        check(
            &format!("1. JOINT - Joints over 4 in. wide {out}.\n"),
            &["joint.width: at most 4 in"],
        );
    }
    check(
        "1. JOINT - Joints narrower than 1/2 in. or wider than 4 in. are not covered.\n",
        &["joint.width: between 1/2 to 4 in"],
    );
    check(
        "1. BEAM - Beams deeper than 24 in. were not tested; beams shallower than 8 in. do not qualify.\n",
        &[
            "beam.depth: at most 24 in",
            "1:beams_beams_shallower_do_not: at least 8 in",
        ],
    );
    // So does the weather in which the work stops.
    for (item, limit) in [
        ("Spray - Spraying stops below 45 F.", "at least 45 degF"),
        (
            "Spray - Spraying is suspended above 100 F.",
            "at most 100 degF",
        ),
        (
            "Spray - Work stops below 45 F and above 100 F.",
            "between 45 to 100 degF",
        ),
    ] {
        let found = common::clauses(&format!("1. {item}\n"));
        assert!(
            found.iter().any(|clause| clause.ends_with(limit)),
            "{limit} {found:?}"
        );
    }
    // So does a list of them.
    let listed = common::clauses(
        "1. LIMITS - Joints narrower than 1 in. or wider than 2 in., offsets larger than 1-3/4 in. (44 mm), and beams deeper than 24 in., lie outside this judgment.\n",
    );
    for limit in ["between 1 to 2 in", "at most 7/4 in", "at most 24 in"] {
        assert!(
            listed.iter().any(|clause| clause.ends_with(limit)),
            "{limit} {listed:?}"
        );
    }
}

#[test]
fn what_is_ruled_out_in_part_limits_nothing() {
    for part in [
        "cannot be packed without clips",
        "cannot be packed unless clips are fitted",
        "do not qualify for Option B",
        "are excluded from Option A",
        "were not tested with sealant alone",
        "are not covered by the coating alone",
        "need not be tested",
    ] {
        check(
            &format!("1. JOINT - Joints wider than 4 in. {part}.\n"),
            &[],
        );
    }
    for order in [
        "Re-spray any spot under 1/8 in.",
        "If it is wider than 3 in., stop.",
    ] {
        check(&format!("1. COATING - {order}\n"), &[]);
    }
}

#[test]
fn what_a_sentence_only_tells_of_limits_nothing() {
    for words in [
        "Packing - A compression under 20 percent lets smoke through.",
        "Packing - Compression of the packing over 50 percent damages it.",
        "Sealant - Sealant depth over 1 in. cracks.",
        "Clips - A spacing of more than 12 in. allows the packing to sag.",
        "Coating - Temperatures below 40 F delay curing.",
        "Packing - Higher densities than 8 pcf may be used.",
    ] {
        check_item(words, &[]);
        assert_eq!(unread(words).len(), 1, "{words}");
    }
    check_item(
        "Packing - Compression more than 25 percent.",
        &["packing.compression: more than 25 percent"],
    );
    check_item(
        "Packing - Density greater than 4 pcf throughout.",
        &["packing.density: more than 4 pcf"],
    );
}

#[test]
fn what_is_inadmissible_limits_the_other_way() {
    check_item(
        "Packing - Packing depth less than 100 mm is inadmissible.",
        &["packing.depth: at least 100 mm"],
    );
}

#[test]
fn what_stands_under_a_title_that_rules_it_out_is_turned() {
    for title in ["Not covered", "Exclusions", "Not permitted"] {
        let text = format!(
            "1  Floor\n\nConcrete, 5 in. thick min.\n\n2  Seal\n\nWool 4 in. deep min.\n\n3  {title}\n\nJoints whose width changes by more than 20 %; \
             joints with a fall steeper than one in twenty.\n"
        );
        let found = common::clauses(&text);
        assert!(
            found.iter().all(|clause| !clause.contains("more than")),
            "{title} {found:?}"
        );
        assert!(
            found
                .iter()
                .any(|clause| clause.contains("at most 20 percent")),
            "{title} {found:?}"
        );
    }
}
