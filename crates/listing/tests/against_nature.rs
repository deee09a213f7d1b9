//! Limits on a side that nobody limits, denials of something else, and what a listing excludes: read the right way or not at all. The wordings are invented;
//! what they mean is common practice.

mod common;

use common::{check_item, unread_in as unread};
use listing::read_text;

#[test]
fn what_is_out_of_the_listing_limits_the_other_way() {
    check_item(
        "Joint - A joint that is expected to open more than 1/8 in. is outside this listing.",
        &["2:joint_expected_to_open_is: at most 1/8 in"],
    );
    check_item(
        "Anchors - Anchors more than 10 inches wide fall outside this report.",
        &["2:anchors_width: at most 10 in"],
    );
    check_item(
        "Coating - A dry thickness smaller than 0.06 inch is a deficiency.",
        &["coating.dry_thickness: at least 3/50 in"],
    );
    check_item(
        "Packing - Packing that is less than 4 in. deep is not covered.",
        &["packing.depth: at least 4 in"],
    );
    check_item(
        "Sealant - Throw away foils that are more than 12 months past the batch date.",
        &["2:sealant_away_foils_that_past: at most 12 month"],
    );
}

#[test]
fn a_deviation_has_no_deviation_of_its_own() {
    check_item(
        "Studs - Trim studs short of the track by the joint width plus 1/4 in. (6 mm), -0/+1/8 in. (-0/+3 mm).",
        &["2:joint_width_difference: between 1/4 to 3/8 in"],
    );
    check_item(
        "Strip - Set the strip back 12 mm from the face. Tolerance is 2 mm either way.",
        &[
            "2:strip_recess: nominal 12 mm",
            "2:tolerance_tolerance: between -2 to 2 mm",
        ],
    );
    check_item(
        "Floor - Density within the limits of 140 and 150 pcf.",
        &["2:floor_or_roof_density: between 140 to 150 pcf"],
    );
}

#[test]
fn what_nobody_limits_is_no_limit_on_that_side() {
    for item in [
        "Joint - Width over 4 in.: reported to the engineer.",
        "Joint - Excluded: joints wider than 4 in. in stairs.",
        "Limitations - Causes for rejection are: packing less than 3 in. deep; recess more than 1/2 in.",
        "Packing - Beware of compression less than 25 percent.",
        "Wall - See Item 5 for walls less than 6 in. thick.",
        "Clips - Special inspection: spacing over 24 in.",
        "Coating - A tenth of the readings may lie at readings less than 40 mils.",
    ] {
        let turned = |clause: &listing::Clause| {
            matches!(&clause.requirement, listing::Requirement::Bound(bound)
                if matches!(bound.relation, listing::Relation::MoreThan | listing::Relation::LessThan))
        };
        let reading = read_text("t", &format!("1. Floor - 5 in. thick min.\n\n2. {item}\n"));
        assert!(!reading.clauses.iter().any(turned), "{item}");
        assert!(!unread(item).is_empty(), "{item}");
    }
    // What is demanded is a limit on any side.
    check_item(
        "Joint - Width shall be more than 1 in. at the time of installation.",
        &["joint.width: more than 1 in"],
    );
    check_item(
        "Packing - Density more than 4 pcf.",
        &["packing.density: more than 4 pcf"],
    );
}

#[test]
fn a_denial_of_something_else_turns_nothing() {
    for item in [
        "Cover - Covers shall not be omitted from joints over 1 in.",
        "Splices - No splice in joints over 3 in.",
        "Joint - Width shall not be increased to 3 in.",
        "Joint - Neither 4 in. nor more is allowed.",
        "Joint - Not necessarily less than 2 in. wide.",
        "Grout - Grout is not prohibited in joints under 1/4 in.",
        "Packing - While depth exceeds 4 in., the packing is laid in two layers.",
    ] {
        check_item(
            item,
            if item.ends_with("layers.") {
                &["packing.layers: exactly 2 count"]
            } else {
                &[]
            },
        );
        assert!(!unread(item).is_empty(), "{item}");
    }
    check_item(
        "Joint - No more, no less than 2 in. wide.",
        &["joint.width: exactly 2 in"],
    );
}

#[test]
fn what_a_count_is_taken_on_has_no_least() {
    check_item(
        "Clips - At least one clip per 24 in. of runner.",
        &[
            "2:clip_count: at least 1 count",
            "2:clip_clip_per_of_runner: nominal 24 in",
        ],
    );
    check_item(
        "Clips - Spaced at least every 24 in.",
        &["2:clip_at_least_every: at most 24 in"],
    );
    check_item(
        "Joint - Joint 1 in. max: packing 3 in. deep.",
        &[
            "2:joint_joint_max: at most 1 in",
            "packing.depth: nominal 3 in",
        ],
    );
}

#[test]
fn what_closes_a_limit_under_a_denial_is_left() {
    for item in [
        "Packing - Not allowed: a depth of 3 in. or less.",
        "Packing - Do not use: strips 3 in. deep or less.",
        "Packing - The following is not permitted: seams more than 6 in. apart, a depth of 3 in. or less.",
        "Packing - Do not use:\na) strips 3 in. deep or less\nb) loose wool",
    ] {
        check_item(item, &[]);
        assert!(unread(item).contains(&"3 in.".to_owned()), "{item}");
    }
    // What must be is read, whatever is denied beside it.
    check_item(
        "Packing - Not allowed in smoke barriers: depth 4 in. min.",
        &["packing.depth: at least 4 in"],
    );
    check_item(
        "Packing - Made in strips of not less than: 4 in. or more in depth.",
        &["packing.depth: at least 4 in"],
    );
}

#[test]
fn a_limit_right_before_a_number_is_not_turned_by_one_behind() {
    check_item(
        "Clips - Spaced max 24 in. OC\n   Minimum G60 galvanized",
        &["clip.spacing: at most 24 in"],
    );
    check_item(
        "Board - Max 5/8 in. thick\n   Minimum Type X",
        &["board.thickness: at most 5/8 in"],
    );
    check_item(
        "Joint - Width max 2 in., min per Item 1",
        &["joint.width: at most 2 in"],
    );
    check_item(
        "Studs - @ 24 in. O.C. max, 25 ga min",
        &[
            "stud.spacing: at most 24 in",
            "stud.gauge: at least 25 gauge",
        ],
    );
}
