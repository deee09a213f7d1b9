//! Words that turn a limit round, lift it, or give it to another number: read the right way or not at all, since a limit that is turned lets a wrong joint
//! pass. The wordings are invented; what they mean is common practice.

mod common;

use common::{check, check_item, unread_in as unread};
use listing::read_text;

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

#[test]
fn the_most_of_one_measure_is_no_limit_of_another() {
    check_item(
        "Packing - Max 1/2 in. recess, 4 in. depth.",
        &[
            "packing.recess: at most 1/2 in",
            "packing.depth: nominal 4 in",
        ],
    );
    check_item(
        "Packing - Min depth of 4 in. and recess of 1/2 in.",
        &[
            "packing.depth: at least 4 in",
            "packing.recess: nominal 1/2 in",
        ],
    );
    check_item(
        "Clips - Max 12 in. spacing and 1 in. width.",
        &["clip.spacing: at most 12 in", "clip.width: nominal 1 in"],
    );
    check_item(
        "Wall - Max 12 ft height, 5 in. thickness.",
        &["wall.height: at most 12 ft", "wall.thickness: nominal 5 in"],
    );
    // One measure, or a least, goes on.
    check_item(
        "Clips - Min 1 in. wide and 2 in. long.",
        &["clip.width: at least 1 in", "2:clip_length: at least 2 in"],
    );
}

#[test]
fn a_condition_without_a_comma_ends_where_it_asks_for_something() {
    check_item(
        "Clips - When joint width exceeds 2 in. space clips max 12 in. OC.",
        &["clip.spacing: at most 12 in if joint.width > 2 in."],
    );
    check_item(
        "Packing - When used in floors packing is recessed max 1/2 in.",
        &["packing.recess: at most 1/2 in if \"When used in floors\""],
    );
    check_item(
        "Fill - Should have a depth of min 1/2 in.",
        &["2:fill_depth: at least 1/2 in"],
    );
    // With a comma the limit in it is the condition's own.
    check_item(
        "Packing - Where it is laid over boards min 1 in. thick, depth 4 in. min.",
        &["packing.depth: at least 4 in if \"Where it is laid over boards min 1 in. thick\""],
    );
    // Where it can't be told the numbers are unread, and the words stand without the condition.
    let swallowed = "Clips - When the joint opens use clips 12 in. wide.";
    let reading = read_text(
        "turned.txt",
        &format!("1. Floor - 5 in. thick min.\n\n2. {swallowed}\n"),
    );
    let itself = reading.clauses.iter().any(|clause| {
        clause.bound().is_none()
            && clause
                .condition
                .as_ref()
                .is_some_and(|condition| condition.span == clause.span)
    });
    assert!(!itself);
}

#[test]
fn what_lifts_a_condition_is_not_under_it() {
    check_item(
        "Packing - In 2 hr walls, min 4 in. deep, and in every wall min 4 pcf.",
        &[
            "packing.depth: at least 4 in if joint.rating = 2 hr",
            "packing.density: at least 4 pcf",
        ],
    );
    check_item(
        "Packing - When two layers are used, min 4 in. deep, and all wool min 4 pcf.",
        &[
            "packing.depth: at least 4 in if board.layers = 2",
            "packing.density: at least 4 pcf",
        ],
    );
    check_item(
        "Packing - When two layers are used, min 4 in. deep and min 4 pcf.",
        &[
            "packing.depth: at least 4 in if board.layers = 2",
            "packing.density: at least 4 pcf if board.layers = 2",
        ],
    );
}

#[test]
fn numbers_behind_a_stroke_or_of_an_unknown_unit_are_kept() {
    check_item(
        "Clips - Spacing 12 in. max./6 in. min.",
        &["clip.spacing: at most 12 in", "clip.spacing: at least 6 in"],
    );
    check_item(
        "Screws - At 8 in. OC (edges)/12 in. OC (field).",
        &[
            "fastener.spacing: nominal 8 in",
            "fastener.spacing: nominal 12 in",
        ],
    );
    for (item, numbers) in [
        ("Lath - Metal lath min 3.4 lb/sq yd.", &["3.4 lb"][..]),
        ("Packing - Density 4 (min) pcf.", &["4"]),
        ("Concrete - Density 100-150 pcf (1602-2403 kg/m3).", &[]),
        ("Packing - Depth 3/4 in. min.", &[]),
    ] {
        assert_eq!(unread(item), numbers, "{item}");
    }
}

#[test]
fn two_limits_named_together_go_each_to_its_number() {
    check_item(
        "Packing - Min and max density is 4 pcf and 8 pcf.",
        &["packing.density: between 4 to 8 pcf"],
    );
    let respective = "Packing - Max joint width and min depth: 2 in. and 4 in., respectively.";
    check_item(respective, &[]);
    assert_eq!(unread(respective), ["2 in.", "4 in."]);
    check_item(
        "Joint - Max 25% compression and extension.",
        &[
            "joint.movement_compression: at most 25 percent",
            "joint.movement_extension: at most 25 percent",
        ],
    );
}

#[test]
fn only_what_is_called_optional_is() {
    check_item(
        "Fill - Optional primer max 5 mils. Sealant min 1/2 in. depth.",
        &[
            "2:primer_optional_primer: at most 5 mil",
            "sealant.depth: at least 1/2 in",
        ],
    );
    check_item(
        "Sealant - (Optional primer) Sealant min 1/2 in. deep.",
        &["sealant.depth: at least 1/2 in"],
    );
    check_item(
        "Cover Plate - Optional. Min 6 in. wide.",
        &["strip.width: at least 6 in in 2"],
    );
}

#[test]
fn what_remains_is_no_compression() {
    for item in [
        "Packing - Compressed to no more than 75% of uncompressed thickness.",
        "Packing - Compressed to between 60 and 75 % of its width.",
    ] {
        let text = format!("1. Floor - 5 in. thick min.\n\n2. {item}\n");
        let found = common::clauses(&text);
        assert!(
            found.len() == 2 && !found.iter().any(|clause| clause.starts_with("packing.")),
            "{found:?}"
        );
    }
    check_item(
        "Packing - Compressed min 25 percent of its thickness to fit.",
        &["packing.compression: at least 25 percent"],
    );
}

#[test]
fn what_is_denied_of_a_list_is_denied_of_its_distance() {
    check_item(
        "Packing - Depth 4 in. It shall not be broken by a column, pipe or duct within 6 in. of the corner.",
        &[
            "packing.depth: nominal 4 in",
            "2:duct_pipe_or_duct_of: at least 6 in",
        ],
    );
    // A clause of its own behind the comma is not denied.
    check_item(
        "Packing - Depth 4 in. The batt shall not be cut, and clips shall stand within 6 in. of the corner.",
        &[
            "packing.depth: nominal 4 in",
            "2:clips_clips_shall_stand_of: at most 6 in",
        ],
    );
}

#[test]
fn a_denial_reaches_over_a_case_between_commas() {
    check_item(
        "Packing - Depth 4 in. The joint shall not close by more than 15 percent, nor, where the sealant of paragraph 6 is used, by more than 10 percent.",
        &[
            "packing.depth: nominal 4 in",
            "2:joint_shall_not_close: at most 15 percent",
            "2:joint: at most 10 percent if \"where the sealant of paragraph 6 is used\"",
        ],
    );
}

#[test]
fn a_sentence_ends_behind_a_degree() {
    check_item(
        "Sealant - Sealant shall not be poured when the temperature of the concrete is less than 45 deg F. Sealant shall be protected for not less than 72 hr.",
        &[
            "2:concrete_temperature: at least 45 degF",
            "2:sealant_duration: at least 72 hr",
        ],
    );
}

#[test]
fn a_limit_before_a_comma_is_shared() {
    check_item(
        "Packing - Minimum thickness of batt, 4 in. for the 2 hr rating and 6 in. for the 3 hr rating.",
        &[
            "packing.thickness: at least 4 in if joint.rating = 2 hr",
            "packing.thickness: at least 6 in if joint.rating = 3 hr",
        ],
    );
    // A comma behind other words parts.
    check_item(
        "Packing - Minimum two layers of batt, 4 in. thick.",
        &[
            "2:packing_layers: at least 2 count",
            "2:batt_thickness: nominal 4 in",
        ],
    );
}

/// What a number follows is said of that number.
#[test]
fn up_before_a_number_of_its_own_limits_none_before() {
    let both = "Sealant - The seal follows the deck down 12.5% and up 10% of the width as built.";
    check_item(both, &[]);
    assert_eq!(unread(both), ["12.5%", "10%"]);
    check_item(
        "Studs - Spaced 16 in. OC; walls 12 ft high and up.",
        &["stud.spacing: nominal 16 in", "wall.height: at least 12 ft"],
    );
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
fn a_denial_reaches_every_limit_that_goes_on_from_the_first() {
    check_item(
        "Clips - Do not space clips less than 6 in. from the end, or more than 24 in. apart, or within 3 in. of a splice.",
        &[
            "clip.end_distance: at least 6 in",
            "clip.spacing: at most 24 in",
            "2:clips_apart_or_of_a: at least 3 in",
        ],
    );
    check_item(
        "Screws - No fastener is to be placed within 2 in. of the edge or more than 12 in. from another.",
        &[
            "2:fastener_to_be_placed_of: at least 2 in",
            "fastener.edge_distance: at most 12 in",
        ],
    );
    check_item(
        "Joint - The joint shall not exceed 4 in., be less than 1 in., or be deeper than 6 in. at the wall.",
        &[
            "2:joint_the_joint: at most 4 in",
            "2:joint: at least 1 in",
            "2:joint_depth: at most 6 in",
        ],
    );
    check_item(
        "Packing - Shall not be < 4 in., or be > 6 in. deep.",
        &["2:packing: at least 4 in", "packing.depth: at most 6 in"],
    );
}

#[test]
fn what_a_denial_may_reach_is_left_unread() {
    for (item, numbers) in [
        (
            "Packing - Depth may not be less than 4 in. and the recess more than 1/2 in.",
            &["1/2 in."][..],
        ),
        (
            "Clips - Clips shall not stand less than 2 in. from an edge; be spaced more than 24 in. apart; or lie within 3 in. of a splice.",
            &["24 in.", "3 in."],
        ),
        (
            "Clips - Must not: stand less than 2 in. from an edge; lie within 3 in. of a splice.",
            &["2 in.", "3 in."],
        ),
        (
            "Sealant - Avoid depths less than 1/2 in. or more than 1 in.",
            &["1/2 in.", "1 in."],
        ),
        (
            "Sealant - Gaps less than 1/2 in. wide, or more than 2 in. wide, are not permitted.",
            &["1/2 in.", "2 in."],
        ),
        (
            "Clips - Do not place 2 in. clips less than 6 in. apart.",
            &["6 in."],
        ),
        (
            "Packing - Not less than 4 in. deep or more than 6 pcf.",
            &["6 pcf"],
        ),
        (
            "Packing - Where the joint is not less than 1 in., or more than 2 in., depth min 4 in.",
            &["2 in."],
        ),
        (
            "Clips - Do not:\n   (a) space clips more than 24 in. apart\n   (b) place clips within 2 in. of an edge",
            &["24 in.", "2 in."],
        ),
        (
            "Clips - Clips shall not be:\n   - less than 1 in. wide\n   - within 2 in. of an edge",
            &["1 in.", "2 in."],
        ),
    ] {
        assert_eq!(unread(item), numbers, "{item}");
    }
}

#[test]
fn a_statement_of_its_own_is_not_denied() {
    check_item(
        "Clips - Fasteners shall not be omitted and shall be within 2 in. of each end.",
        &["fastener.end_distance: at most 2 in"],
    );
    check_item(
        "Clips - Adhesive is not required, clips are more than 1 in. wide.",
        &["clip.width: more than 1 in"],
    );
    check_item(
        "Clips - Space clips no more than 24 in. OC and within 2 in. of each end.",
        &[
            "clip.spacing: at most 24 in",
            "clip.end_distance: at most 2 in",
        ],
    );
    check_item(
        "Packing - Density not less than 4 pcf, melting point above 2000 F.",
        &[
            "packing.density: at least 4 pcf",
            "packing.melting_point: more than 2000 degF",
        ],
    );
}

#[test]
fn a_limit_that_is_denied_or_that_no_rule_reads_is_left_unread() {
    for item in [
        "Packing - Depth not up to 4 in.",
        "Packing - Depth not at or above 4 in.",
        "Packing - Depth not as deep as 4 in.",
        "Packing - Depth never short of 4 in.",
        "Packing - Depth up to but not including 4 in.",
        "Packing - Depth is not to be greater than, or less than, 4 in.",
        "Packing - Depth capped at 4 in.",
        "Packing - Nothing past 4 in.",
        "Packing - Depth 4 in. plus.",
        "Packing - Depth 4 in. and nothing less.",
    ] {
        check_item(item, &[]);
        assert_eq!(unread(item), ["4 in."], "{item}");
    }
}

/// What is closed behind its number and denied asks for the contrary, and a case for nothing: nobody should take it for the limit.
#[test]
fn a_closed_limit_that_is_denied_is_left_unread() {
    for (item, number) in [
        (
            "Packing - Density of 4 pcf or less shall not be used.",
            "4 pcf",
        ),
        (
            "Packing - No density of 3 pcf or less is permitted.",
            "3 pcf",
        ),
        (
            "Packing - Batts of 3 pcf or lighter are prohibited.",
            "3 pcf",
        ),
        (
            "Packing - Depth less than or equal to 3 in. is not permitted.",
            "3 in.",
        ),
        (
            "Joint - Do not use a joint width of 4 in. or more.",
            "4 in.",
        ),
        (
            "Joint - A width of 4 in. or more requires approval.",
            "4 in.",
        ),
        (
            "Pins - Pins shall not be placed 12 in. or more apart.",
            "12 in.",
        ),
        (
            "Beams - Beams 24 in. deep or deeper were not tested.",
            "24 in.",
        ),
    ] {
        check_item(item, &[]);
        assert_eq!(unread(item), [number], "{item}");
    }
    check_item(
        "Packing - Density of 4 pcf or more; lighter wool is not permitted.",
        &["packing.density: at least 4 pcf"],
    );
    check_item(
        "Packing - Packing 4 in. deep or more in not more than two layers.",
        &[
            "packing.depth: at least 4 in",
            "packing.layers: at most 2 count",
        ],
    );
}

#[test]
fn what_may_be_exceeded_limits_nothing() {
    for item in [
        "Packing - Depth may exceed 4 in.",
        "Packing - Depth is allowed to exceed 4 in.",
        "Packing - Depth does not have to be more than 4 in.",
        "Packing - Depth is not required to be at least 4 in.",
    ] {
        check_item(item, &[]);
        assert_eq!(unread(item), ["4 in."], "{item}");
    }
    check_item(
        "Packing - Depth may not exceed 4 in.",
        &["packing.depth: at most 4 in"],
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
fn what_is_changed_from_one_value_to_another_is_no_range() {
    let item = "Packing - Depth shall be increased from 4 in. to 6 in.";
    check_item(item, &[]);
    assert_eq!(unread(item).len(), 1);
}

#[test]
fn a_spacing_and_a_distance_are_no_range() {
    check_item(
        "Fasteners - Fasteners shall not be spaced farther apart than 12 in. nor closer to the edge than 1 in.",
        &[
            "fastener.spacing: at most 12 in",
            "2:fasteners_to_the_edge: at least 1 in",
        ],
    );
}

#[test]
fn how_far_something_goes_by_words_is_left_unread() {
    let item = "Sealant - Sealing from one side is permissible up to a joint width of 20 mm.";
    check_item(item, &[]);
    assert_eq!(unread(item).len(), 1);
}

#[test]
fn a_sentence_in_capitals_goes_on_behind_a_unit() {
    check_item(
        "SEALANT - DO NOT APPLY BELOW 35° F. OR ABOVE 100° F.",
        &[
            "2:sealant_not_apply_below: at least 35 degF",
            "2:sealant_or_above: at most 100 degF",
        ],
    );
}

#[test]
fn what_is_not_needed_is_neither_asked_for_nor_forbidden() {
    let item =
        "Sealant - Depth not less than 10 mm, though a depth of more than 25 mm is not needed.";
    check_item(item, &["sealant.depth: at least 10 mm"]);
    assert_eq!(unread(item), ["25 mm"]);
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
