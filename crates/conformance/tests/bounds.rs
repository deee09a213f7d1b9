//! A bound against a value, case by case.

mod support;

use conformance::Reason::{
    BetweenStatements, Deviates, NoFact, NoSource, NotSeen, Scattered, TooClose, Unreadable,
};
use support::{MET, NOT_MET, check_verdict, open};

#[test]
fn limits_on_what_is_not_measured_are_exact() {
    for (clause, fact, expected) in [
        ("packing.depth: at least 4 in.", "4 in.", MET),
        ("packing.depth: at least 4 in.", "3-15/16 in.", NOT_MET),
        ("packing.depth: at least 4 in.", "101.6 mm", MET),
        ("packing.depth: at least 4 in.", "101.5 mm", NOT_MET),
        ("packing.depth: at most 4 in.", "4 in.", MET),
        ("packing.depth: at most 4 in.", "4-1/64 in.", NOT_MET),
        ("packing.depth: less than 4 in.", "4 in.", NOT_MET),
        ("packing.depth: more than 4 in.", "4 in.", NOT_MET),
        ("packing.depth: more than 4 in.", "4-1/64 in.", MET),
        ("packing.depth: between 1/2 in. and 1 in.", "1/2 in.", MET),
        ("packing.depth: between 1/2 in. and 1 in.", "1 in.", MET),
        (
            "packing.depth: between 1/2 in. and 1 in.",
            "1-1/16 in.",
            NOT_MET,
        ),
        ("packing.depth: over 1 in. and 2 in.", "1 in.", NOT_MET),
        ("packing.depth: over 1 in. and 2 in.", "2 in.", MET),
        (
            "coating.application_temperature: at least 40 °F",
            "4 °C",
            NOT_MET,
        ),
        (
            "coating.application_temperature: at least 40 °F",
            "5 °C",
            MET,
        ),
    ] {
        let (property, _) = clause.split_once(':').unwrap();
        check_verdict(clause, &[&format!("{property} = {fact}")], expected);
    }
}

#[test]
fn a_gauge_is_met_by_a_heavier_one() {
    let clause = "stud.gauge: at least 25 MSG";
    check_verdict(clause, &["stud.gauge = 20 gauge <- submittal S"], MET);
    check_verdict(clause, &["stud.gauge = 25 gauge <- submittal S"], MET);
    check_verdict(clause, &["stud.gauge = 28 gauge <- submittal S"], NOT_MET);
    // A gauge number is told, not measured: nothing can be too close to it.
    check_verdict(clause, &["stud.gauge = 25 gauge <- measured 1 gauge"], MET);
    check_verdict(
        "stud.gauge: nominal 20 MSG",
        &["stud.gauge = 18 gauge <- submittal S"],
        NOT_MET,
    );
}

#[test]
fn nominal_is_not_minimum() {
    // A wool denser than the nominal one is another wool.
    for clause in [
        "packing.density: nominal 3 pcf (48 kg/m3)",
        "packing.density: bare 3 pcf (48 kg/m3)",
    ] {
        let check = |value: &str, expected| {
            check_verdict(
                clause,
                &[&format!("packing.density = {value} <- submittal S")],
                expected,
            );
        };
        check("3 pcf", MET);
        check("48 kg/m3", MET);
        check("6 pcf", NOT_MET);
        check("2.5 pcf", NOT_MET);
        check("50 kg/m3", NOT_MET);
    }
}

#[test]
fn a_nominal_value_in_the_other_system_only_goes_to_a_person() {
    let clause = "packing.density: nominal 3 pcf";
    check_verdict(
        clause,
        &["packing.density = 48 kg/m3 <- submittal S"],
        open(Deviates),
    );
    check_verdict(
        clause,
        &["packing.density = 60 kg/m3 <- submittal S"],
        NOT_MET,
    );
}

#[test]
fn a_weighed_product_does_not_tell_its_nominal_value() {
    let clause = "packing.density: nominal 3 pcf";
    check_verdict(
        clause,
        &["packing.density = 3.2 pcf <- measured 0.1 pcf"],
        open(Deviates),
    );
    check_verdict(
        clause,
        &["packing.density = 3 pcf <- measured 0.1 pcf"],
        MET,
    );
}

#[test]
fn a_bare_dimension_that_deviates_goes_to_a_person() {
    let clause = "stud.spacing: bare 16 in.";
    check_verdict(clause, &["stud.spacing = 16 in. <- measured 1/8 in."], MET);
    check_verdict(
        clause,
        &["stud.spacing = 15-1/2 in. <- measured 1/8 in."],
        open(Deviates),
    );
    check_verdict(
        clause,
        &["stud.spacing = 24 in. <- measured 1/8 in."],
        open(Deviates),
    );
}

#[test]
fn a_bare_count_is_exact() {
    let clause = "board.layers: bare 2";
    check_verdict(clause, &["board.layers = 2"], MET);
    check_verdict(clause, &["board.layers = 3"], NOT_MET);
    check_verdict(clause, &["board.layers = 1"], NOT_MET);
}

#[test]
fn exactly_is_that_value_and_no_other() {
    let clause = "runner.leg_length: exactly 3 in.";
    check_verdict(clause, &["runner.leg_length = 3 in. <- submittal S"], MET);
    check_verdict(
        clause,
        &["runner.leg_length = 3-1/4 in. <- submittal S"],
        NOT_MET,
    );
    check_verdict(
        clause,
        &["runner.leg_length = 3 in. <- measured 1/16 in."],
        MET,
    );
    check_verdict(
        clause,
        &["runner.leg_length = 3-1/64 in. <- measured 1/16 in."],
        open(TooClose),
    );
    check_verdict(
        clause,
        &["runner.leg_length = 3-1/16 in. <- measured 1/16 in."],
        NOT_MET,
    );
}

#[test]
fn about_is_for_a_person_unless_it_is_that() {
    let clause = "seal.splice_spacing: about 40 in.";
    check_verdict(clause, &["seal.splice_spacing = 40 in."], MET);
    check_verdict(clause, &["seal.splice_spacing = 41 in."], open(Deviates));
}

#[test]
fn only_a_cited_tolerance_widens_a_nominal_value() {
    // ASTM C1396: ± 1/64 in. for board of 1/4 to 5/8 in. (from memory).
    let clause = "board.thickness: nominal 5/8 in.";
    let type_x = "board.kind = type-x <- submittal S";
    let check = |facts: &[&str], expected| check_verdict(clause, facts, expected);
    check(
        &[type_x, "board.thickness = 0.63 in. <- measured 0.001 in."],
        MET,
    );
    check(
        &[type_x, "board.thickness = 0.612 in. <- measured 0.001 in."],
        MET,
    );
    check(
        &[type_x, "board.thickness = 0.6 in. <- measured 0.001 in."],
        NOT_MET,
    );
    check(
        &[type_x, "board.thickness = 41/64 in. <- measured 1/64 in."],
        open(TooClose),
    );
    check(
        &["board.thickness = 0.63 in. <- measured 0.001 in."],
        open(Deviates),
    );
    check(
        &[
            "board.kind = cement <- submittal S",
            "board.thickness = 0.63 in. <- measured 0.001 in.",
        ],
        open(Deviates),
    );
    // What a submittal states is no measurement.
    check(
        &[type_x, "board.thickness = 0.63 in. <- submittal S"],
        NOT_MET,
    );
}

#[test]
fn a_measurement_at_the_limit_is_too_close_to_tell() {
    // Half the resolution: JCGM 100:2008 F.2.2.1, kept as a guard band as in JCGM 106:2012 8.3.
    let at_least = "packing.depth: at least 4 in.";
    for (value, expected) in [
        ("4 in.", open(TooClose)),
        ("4-1/64 in.", open(TooClose)),
        ("3-63/64 in.", open(TooClose)),
        ("4-1/32 in.", MET),
        ("3-31/32 in.", NOT_MET),
        ("4-1/16 in.", MET),
        ("3-15/16 in.", NOT_MET),
    ] {
        check_verdict(
            at_least,
            &[&format!("packing.depth = {value} <- measured 1/16 in.")],
            expected,
        );
    }
    // Half a division above a strict limit the true value may be the limit itself.
    check_verdict(
        "packing.depth: more than 4 in.",
        &["packing.depth = 4-1/32 in. <- measured 1/16 in."],
        open(TooClose),
    );
    check_verdict(
        "packing.depth: more than 4 in.",
        &["packing.depth = 4-1/16 in. <- measured 1/16 in."],
        MET,
    );
    // A finer instrument settles it.
    check_verdict(
        at_least,
        &["packing.depth = 4-1/64 in. <- measured 0.001 in."],
        MET,
    );
}

#[test]
fn without_a_resolution_the_usual_instrument_stands_in() {
    // The vocabulary has a tape or gauge of 1/16 in. at best for the depth of packing.
    check_verdict(
        "packing.depth: at least 4 in.",
        &["packing.depth = 4-1/64 in. <- measured"],
        open(TooClose),
    );
    check_verdict(
        "packing.depth: at least 4 in.",
        &["packing.depth = 5 in. <- measured"],
        MET,
    );
    // A resolution of another kind is none.
    check_verdict(
        "packing.compression: at least 33 percent",
        &["packing.compression = 34 percent <- measured 1/16 in."],
        open(TooClose),
    );
    check_verdict(
        "packing.compression: at least 33 percent",
        &["packing.compression = 36 percent <- measured 1/16 in."],
        MET,
    );
    // A property that nobody knows an instrument for.
    check_verdict(
        "hanger.drop: at least 4 in.",
        &["hanger.drop = 4 in. <- measured"],
        open(TooClose),
    );
    check_verdict(
        "hanger.drop: at least 4 in.",
        &["hanger.drop = 5 in. <- measured"],
        MET,
    );
}

#[test]
fn a_resolution_in_degrees_is_a_difference() {
    let clause = "coating.application_temperature: at least 40 °F";
    check_verdict(
        clause,
        &["coating.application_temperature = 40.5 °F <- measured 2 °F"],
        open(TooClose),
    );
    check_verdict(
        clause,
        &["coating.application_temperature = 42 °F <- measured 2 °F"],
        MET,
    );
    check_verdict(
        clause,
        &["coating.application_temperature = 5 °C <- measured 1 °C"],
        MET,
    );
}

#[test]
fn the_worst_reading_decides() {
    let at_most = "board.gap: at most 1 in.";
    let at_least = "packing.depth: at least 4 in.";
    check_verdict(
        at_most,
        &["board.gap = 7/8 in. <- measured 1/16 in.: 7/8 in., 1-1/16 in., 3/4 in."],
        NOT_MET,
    );
    check_verdict(
        at_most,
        &["board.gap = 7/8 in. <- measured 1/16 in.: 7/8 in., 1 in., 3/4 in."],
        open(TooClose),
    );
    check_verdict(
        at_most,
        &["board.gap = 7/8 in. <- measured 1/16 in.: 7/8 in., 3/4 in."],
        MET,
    );
    check_verdict(
        at_least,
        &["packing.depth = 4-1/2 in. <- measured 1/16 in.: 5 in., 3-3/4 in., 5 in."],
        NOT_MET,
    );
}

#[test]
fn a_value_outside_its_own_readings_shows_nothing() {
    let clause = "board.gap: at most 1 in.";
    check_verdict(
        clause,
        &["board.gap = 1/2 in. <- measured 1/16 in.: 3/4 in., 7/8 in."],
        open(Scattered),
    );
    check_verdict(
        clause,
        &["board.gap = 1/2 in. <- measured 1/16 in.: 3/4 in., 1-1/8 in."],
        NOT_MET,
    );
}

#[test]
fn a_consistent_pair_is_one_requirement_stated_twice() {
    let clause = "packing.depth: at least 2-1/2 in. (64 mm)";
    check_verdict(clause, &["packing.depth = 2-1/2 in."], MET);
    check_verdict(clause, &["packing.depth = 64 mm"], MET);
    check_verdict(clause, &["packing.depth = 63 mm"], NOT_MET);
    check_verdict(clause, &["packing.depth = 2-7/16 in."], NOT_MET);
}

#[test]
fn between_two_loose_statements_nobody_can_tell() {
    let clause = "packing.depth: at least 6 in. (150 mm)";
    check_verdict(clause, &["packing.depth = 151 mm"], open(BetweenStatements));
    check_verdict(
        clause,
        &["packing.depth = 5-15/16 in."],
        open(BetweenStatements),
    );
    check_verdict(clause, &["packing.depth = 6 in."], MET);
    check_verdict(clause, &["packing.depth = 149 mm"], NOT_MET);
    // One nominal value all the same.
    check_verdict(
        "stud.spacing: bare 24 in. (600 mm)",
        &["stud.spacing = 600 mm"],
        MET,
    );
    check_verdict(
        "stud.spacing: bare 24 in. (600 mm)",
        &["stud.spacing = 24 in."],
        MET,
    );
    check_verdict(
        "stud.spacing: bare 24 in. (600 mm)",
        &["stud.spacing = 605 mm"],
        open(Deviates),
    );
}

#[test]
fn of_two_statements_in_conflict_the_stricter_governs() {
    let at_least = "packing.depth: at least 1 in. (19 mm)";
    check_verdict(at_least, &["packing.depth = 22 mm"], NOT_MET);
    check_verdict(at_least, &["packing.depth = 26 mm"], MET);
    let at_most = "board.gap: at most 5/8 in. (32 mm)";
    check_verdict(at_most, &["board.gap = 30 mm"], NOT_MET);
    check_verdict(at_most, &["board.gap = 1/2 in."], MET);
    check_verdict(
        at_most,
        &["board.gap = 5/8 in. <- measured 1/16 in."],
        open(TooClose),
    );
    // Two nominal values can't both be met.
    let nominal = "packing.density: nominal 3 pcf (96 kg/m3)";
    check_verdict(
        nominal,
        &["packing.density = 3 pcf <- submittal S"],
        open(BetweenStatements),
    );
    check_verdict(
        nominal,
        &["packing.density = 5 pcf <- submittal S"],
        NOT_MET,
    );
}

#[test]
fn a_multiple_of_the_joint_width_follows_the_width() {
    let clause = "sealant.bond: at least 1/2 times joint width";
    let bound = |line: &str, facts: &[&str], expected| {
        // The notation has no such unit, so that the bound is put together here.
        let mut reading = support::reading(&["sealant.bond: at least 1 in."]);
        if let listing::Requirement::Bound(bound) = &mut reading.clauses[0].requirement {
            bound.unit = measure::Unit::TimesJointWidth;
            bound.lo = measure::Number::new(1, 2);
        }
        let result = support::check(&reading, facts);
        let found = support::finding(&result, "1/1");
        assert_eq!(
            (found.verdict, found.explanation.reason),
            expected,
            "{line} | {facts:?}"
        );
    };
    bound(clause, &["sealant.bond = 1/2 in."], open(NoFact));
    bound(
        clause,
        &["sealant.bond = 1/2 in.", "joint.width = 1 in."],
        MET,
    );
    bound(
        clause,
        &["sealant.bond = 3/8 in.", "joint.width = 1 in."],
        NOT_MET,
    );
    bound(
        clause,
        &["sealant.bond = 1/2 in.", "joint.width = 1 in. <- drawing A"],
        open(NotSeen),
    );
    // The widest place asks for most, and the width's own reading may be half a division off.
    let uneven = "joint.width = 7/8 in. <- measured 1/16 in.: 3/4 in., 1-1/4 in.";
    bound(clause, &["sealant.bond = 1/2 in.", uneven], NOT_MET);
    bound(
        clause,
        &[
            "sealant.bond = 1/2 in.",
            "joint.width = 1 in. <- measured 1/16 in.",
        ],
        open(TooClose),
    );
    bound(
        clause,
        &[
            "sealant.bond = 9/16 in.",
            "joint.width = 1 in. <- measured 1/16 in.",
        ],
        MET,
    );
}

#[test]
fn what_cannot_be_compared_is_open() {
    check_verdict(
        "packing.depth: at least 4 in.",
        &["packing.depth = 4 pcf"],
        open(Unreadable),
    );
    check_verdict(
        "packing.depth: at least 4 in.",
        &["packing.depth = plenty"],
        open(Unreadable),
    );
    check_verdict(
        "packing.depth: at least 4 in.",
        &["packing.depth = yes"],
        open(Unreadable),
    );
    // Nothing built is less than nothing; a temperature may be.
    check_verdict(
        "board.gap: at most 1 in.",
        &["board.gap = -1 in."],
        open(Unreadable),
    );
    check_verdict(
        "coating.application_temperature: at least -10 °C",
        &["coating.application_temperature = -5 °C"],
        MET,
    );
    // A rise of 325 °F is 181 K; a temperature of 325 °F is 163 °C (ASTM E814, UL 1479). They are never compared.
    check_verdict(
        "seal.rise: at most 325 deg F rise",
        &["seal.rise = 163 °C"],
        open(Unreadable),
    );
}

#[test]
fn where_a_value_comes_from() {
    let placed = "packing.depth: at least 4 in.";
    check_verdict(placed, &[], open(NoFact));
    check_verdict(
        placed,
        &["packing.depth = 5 in. <- unstated"],
        open(NoSource),
    );
    check_verdict(
        placed,
        &["packing.depth = 3 in. <- unstated"],
        open(NoSource),
    );
    // What can only be seen in place is shown by no drawing; what the drawing asks for amiss is amiss.
    check_verdict(
        "packing.compression: at least 33 percent",
        &["packing.compression = 40 percent <- drawing A"],
        open(NotSeen),
    );
    check_verdict(
        "packing.compression: at least 33 percent",
        &["packing.compression = 20 percent <- submittal S"],
        NOT_MET,
    );
    check_verdict(
        "packing.compression: at least 33 percent",
        &["packing.compression = 40 percent <- stated the foreman"],
        MET,
    );
    // A submittal shows what can be seen on delivery; a drawing doesn't.
    check_verdict(
        "clip.leg_length: at least 2 in.",
        &["clip.leg_length = 3 in. <- submittal S"],
        MET,
    );
    check_verdict(
        "clip.leg_length: at least 2 in.",
        &["clip.leg_length = 3 in. <- drawing A"],
        open(NotSeen),
    );
    check_verdict(
        "stud.spacing: at most 24 in.",
        &["stud.spacing = 16 in. <- drawing A"],
        MET,
    );
    // The width as found.
    check_verdict(
        "joint.width: at most 2 in.",
        &["joint.width = 1 in. <- drawing A"],
        open(NotSeen),
    );
    check_verdict(
        "joint.width: at most 2 in.",
        &["joint.width = 1 in. <- measured 1/16 in."],
        MET,
    );
    // A property that the vocabulary doesn't know must be seen.
    check_verdict(
        "hanger.drop: at least 4 in.",
        &["hanger.drop = 5 in. <- drawing A"],
        open(NotSeen),
    );
    check_verdict(
        "hanger.drop: at least 4 in.",
        &["hanger.drop = 5 in. <- witnessed"],
        MET,
    );
}
