//! Whether a clause applies.

mod support;

use conformance::Reason::{ConditionNotMet, ConditionUndecided, Holds};
use conformance::Verdict;
use support::{MET, NOT_MET, check_verdict, not_applicable, open};

const UNDECIDED: (Verdict, conformance::Reason) = open(ConditionUndecided);
const FALLS_AWAY: (Verdict, conformance::Reason) = not_applicable(ConditionNotMet);

#[test]
fn by_the_rating_that_applies() {
    // The case listing is rated 1 and 2 h.
    let two_hour = "packing.depth: at least 1 in. ; if joint.rating = 2 hr";
    let one_hour = "packing.depth: at least 1 in. ; if joint.rating = 1 hr";
    let packed = "packing.depth = 2 in.";
    let check = |clause, rating: &str, expected| check_verdict(clause, &[packed, rating], expected);
    check(two_hour, "barrier.rating = 2 hr <- drawing A", MET);
    check(one_hour, "barrier.rating = 2 hr <- drawing A", FALLS_AWAY);
    check(two_hour, "barrier.rating = 120 min <- drawing A", MET);
    // A 1-1/2 h barrier is served by the 2 h clauses.
    check(two_hour, "barrier.rating = 1-1/2 hr <- drawing A", MET);
    check(
        one_hour,
        "barrier.rating = 1-1/2 hr <- drawing A",
        FALLS_AWAY,
    );
    // What the project asks of a barrier needs no further source.
    check(two_hour, "barrier.rating = 2 hr <- unstated", MET);
    // No rating of the listing reaches: nobody can say which clauses would apply.
    check(two_hour, "barrier.rating = 3 hr <- drawing A", UNDECIDED);
    check_verdict(two_hour, &[packed], UNDECIDED);
    check_verdict(
        two_hour,
        &[packed, "barrier.rating = plenty <- drawing A"],
        UNDECIDED,
    );
}

#[test]
fn by_the_joints_own_rating_where_it_is_longer() {
    let two_hour = "packing.depth: at least 1 in. ; if joint.rating = 2 hr";
    let facts = |joint| {
        [
            "packing.depth = 2 in.",
            "barrier.rating = 1 hr <- drawing A",
            joint,
        ]
    };
    check_verdict(two_hour, &facts("joint.rating = 2 hr <- drawing A"), MET);
    check_verdict(
        two_hour,
        &facts("joint.rating = 1 hr <- drawing A"),
        FALLS_AWAY,
    );
    check_verdict(
        two_hour,
        &facts("joint.rating = 2 hr <- unstated"),
        UNDECIDED,
    );
    check_verdict(
        two_hour,
        &["packing.depth = 2 in.", "joint.rating = 2 hr <- drawing A"],
        MET,
    );
}

#[test]
fn what_cannot_be_decided_leaves_the_clause_open() {
    let clause = "packing.depth: at least 4 in. ; if joint.width > 2 in.";
    // Open even where the value would do, or would fail.
    for depth in ["packing.depth = 5 in.", "packing.depth = 3 in."] {
        check_verdict(clause, &[depth], UNDECIDED);
        check_verdict(
            clause,
            &[depth, "joint.width = 3 in. <- unstated"],
            UNDECIDED,
        );
        check_verdict(
            clause,
            &[depth, "joint.width = 1 in. <- drawing A"],
            UNDECIDED,
        );
        check_verdict(clause, &[depth, "joint.width = narrow"], UNDECIDED);
    }
    check_verdict(
        "packing.depth: at least 4 in. ; if \"the floor is sloped\"",
        &["packing.depth = 5 in."],
        UNDECIDED,
    );
}

#[test]
fn a_threshold_keeps_its_distance_too() {
    let clause = "packing.depth: at least 4 in. ; if joint.width > 2 in.";
    let at = |width: &str, expected| {
        let width = format!("joint.width = {width} <- measured 1/16 in.");
        check_verdict(clause, &["packing.depth = 3 in.", &width], expected);
    };
    at("2 in.", UNDECIDED);
    at("2-1/32 in.", UNDECIDED);
    at("2-1/16 in.", NOT_MET);
    at("1-15/16 in.", FALLS_AWAY);
}

#[test]
fn readings_on_both_sides_of_a_threshold_decide_nothing() {
    let clause = "packing.depth: at least 4 in. ; if joint.width > 2 in.";
    let readings = |readings: &str, expected| {
        let width = format!("joint.width = 2-1/2 in. <- measured 1/16 in.: {readings}");
        check_verdict(clause, &["packing.depth = 3 in.", &width], expected);
    };
    readings("1-3/4 in., 2-1/2 in.", UNDECIDED);
    readings("2-1/4 in., 2-1/2 in.", NOT_MET);
    readings("2-3/4 in., 2-7/8 in.", UNDECIDED);
}

#[test]
fn three_valued_logic() {
    let met_if = |condition: &str, facts: &[&str], expected| {
        let clause = format!("packing.depth: at least 1 in. ; if {condition}");
        let mut all = vec![
            "packing.depth = 2 in.",
            "barrier.rating = 2 hr",
            "barrier.smoke_barrier = yes",
        ];
        all.extend(facts);
        check_verdict(&clause, &all, expected);
    };
    let (yes, no, unknown) = ("joint.rating = 2 hr", "joint.rating = 1 hr", "\"it is so\"");
    met_if(&format!("{yes} and {yes}"), &[], MET);
    met_if(&format!("{yes} and {no}"), &[], FALLS_AWAY);
    met_if(&format!("{unknown} and {no}"), &[], FALLS_AWAY);
    met_if(&format!("{unknown} and {yes}"), &[], UNDECIDED);
    met_if(&format!("{no} or {yes}"), &[], MET);
    met_if(&format!("{unknown} or {yes}"), &[], MET);
    met_if(&format!("{unknown} or {no}"), &[], UNDECIDED);
    met_if(&format!("{no} or {no}"), &[], FALLS_AWAY);
    met_if(&format!("not {no}"), &[], MET);
    met_if(&format!("not {yes}"), &[], FALLS_AWAY);
    met_if(&format!("not {unknown}"), &[], UNDECIDED);
    met_if("barrier.smoke_barrier", &[], MET);
    met_if("not barrier.smoke_barrier", &[], FALLS_AWAY);
    met_if("wall.kind", &["wall.kind = masonry"], UNDECIDED);
}

#[test]
fn a_width_tested_for_exactly_is_nominal() {
    // "For joints 1 in. wide", "for joints 2 in. wide": a joint of 1-7/8 in. is neither by itself.
    let reading = support::reading(&[
        "packing.depth: at least 3 in. ; if joint.width = 1 in.",
        "packing.depth: at least 4 in. ; if joint.width = 2 in.",
    ]);
    let verdicts = |width: &str| {
        let width = format!("joint.width = {width} <- measured 1/16 in.");
        let result = support::check(&reading, &["packing.depth = 5 in.", &width]);
        ["1/1", "1/2"].map(|clause| {
            let found = support::finding(&result, clause);
            (found.verdict, found.explanation.reason)
        })
    };
    assert_eq!(verdicts("2 in."), [FALLS_AWAY, (Verdict::Met, Holds)]);
    assert_eq!(verdicts("1-7/8 in."), [UNDECIDED, UNDECIDED]);
}

#[test]
fn a_count_tested_for_exactly_is_told() {
    let clause = "packing.depth: at least 3 in. ; if board.layers = 2";
    check_verdict(
        clause,
        &["packing.depth = 2 in.", "board.layers = 1"],
        FALLS_AWAY,
    );
    check_verdict(
        clause,
        &["packing.depth = 2 in.", "board.layers = 2"],
        NOT_MET,
    );
}

#[test]
fn a_doubtful_clause_is_neither_met_nor_gone() {
    use conformance::Reason::ReadingInDoubt;
    let doubtful = "packing.depth: at least 1 in. ; if joint.rating = 1 hr ; doubtful";
    let facts = |rating| ["packing.depth = 2 in.", rating];
    check_verdict(
        doubtful,
        &facts("barrier.rating = 2 hr"),
        open(ReadingInDoubt),
    );
    check_verdict(
        doubtful,
        &facts("barrier.rating = 1 hr"),
        open(ReadingInDoubt),
    );
    check_verdict(
        doubtful,
        &["packing.depth = 1/2 in.", "barrier.rating = 1 hr"],
        NOT_MET,
    );
    check_verdict(
        "packing.depth: at least 1 in. ; doubtful ; confirmed",
        &["packing.depth = 2 in."],
        MET,
    );
}
