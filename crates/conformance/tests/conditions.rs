//! Whether a clause applies.

mod support;

use conformance::Reason::{ConditionNotMet, ConditionUndecided, Holds};
use conformance::{Ask, Verdict};
use support::{MET, NOT_MET, check, check_verdict, finding, not_applicable, open, reading};

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
        &["packing.depth = 3 in."],
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
    let (yes, no) = ("joint.rating = 2 hr", "joint.rating = 1 hr");
    let unknown = "packing.recess > 1 in.";
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

/// What is found where an item speaks only of other cases, with the sentence.
fn silence(lines: &[&str], facts: &[&str]) -> Option<(Verdict, String)> {
    let mut listing = support::reading(lines);
    listing.header.ratings_hr = [1, 2, 3].map(measure::Number::whole).to_vec();
    let result = support::check(&listing, facts);
    assert!(!result.conforms());
    let found = result.finding("1/none")?;
    Some((found.verdict, found.explanation.sentence.clone()))
}

#[test]
fn cases_that_leave_this_one_out_ask_a_person() {
    let by_rating = [
        "packing.depth: at least 1 in. ; if joint.rating = 1 hr",
        "packing.depth: at least 2 in. ; if joint.rating = 2 hr",
    ];
    let at = |rating: &str| silence(&by_rating, &["packing.depth = 1 in.", rating]);
    let (verdict, sentence) = at("barrier.rating = 3 hr").unwrap();
    assert_eq!(verdict, Verdict::Open);
    assert_eq!(
        sentence,
        "The listing says nothing here for this case: of packing depth it speaks only \"if joint.rating = 1 hr\" and \
         \"if joint.rating = 2 hr\"; the rating that applies here is 3 hr."
    );
    assert_eq!(at("barrier.rating = 2 hr"), None);
    assert_eq!(at("barrier.rating = 1 hr"), None);
    let bands = [
        "packing.depth: at least 1 in. ; if joint.width < 2 in.",
        "packing.depth: at least 2 in. ; if joint.width > 3 in.",
    ];
    let at = |width: &str| {
        let width = format!("joint.width = {width} <- measured 1/16 in.");
        silence(&bands, &["packing.depth = 3 in.", &width]).is_some()
    };
    assert!(at("2-1/2 in."));
    assert!(!at("1 in."));
    assert!(!at("4 in."));
    // What can't be told is open by itself.
    assert!(!at("2 in."));
}

#[test]
fn one_case_or_another_sort_of_condition_leaves_nothing_out() {
    let narrow = ["barrier.rating = 1 hr", "joint.width = 1 in."];
    for lines in [
        &["packing.depth: at least 2 in. ; if joint.rating = 2 hr"][..],
        &["packing.depth: at least 2 in. ; if joint.width > 4 in."],
        // Of one case, twice.
        &[
            "packing.depth: at least 2 in. ; if joint.rating = 2 hr",
            "packing.depth: at most 4 in. ; if joint.rating = 2 hr",
        ],
        // Something is asked whatever the case.
        &[
            "packing.depth: at least 1 in.",
            "packing.depth: at least 2 in. ; if joint.rating = 2 hr",
            "packing.depth: at least 3 in. ; if joint.rating = 3 hr",
        ],
        // Of two properties.
        &[
            "packing.depth: at least 2 in. ; if joint.rating = 2 hr",
            "packing.layers: bare 2 ; if joint.rating = 3 hr",
        ],
        // Whatever the rating, this is no smoke barrier.
        &[
            "packing.depth: at least 2 in. ; if joint.rating = 2 hr and barrier.smoke_barrier",
            "packing.depth: at least 3 in. ; if joint.rating = 3 hr and barrier.smoke_barrier",
        ],
    ] {
        let facts = [narrow[0], narrow[1], "barrier.smoke_barrier = no"];
        assert_eq!(silence(lines, &facts), None, "{lines:?}");
    }
    // In a smoke barrier it is the rating that leaves this joint out.
    let smoky = [
        "packing.depth: at least 2 in. ; if joint.rating = 2 hr and barrier.smoke_barrier",
        "packing.depth: at least 3 in. ; if joint.rating = 3 hr and barrier.smoke_barrier",
    ];
    let facts = [narrow[0], narrow[1], "barrier.smoke_barrier = yes"];
    assert!(silence(&smoky, &facts).is_some());
}

#[test]
fn a_silence_is_judged_by_its_id_and_belongs_to_its_option() {
    let mut listing = support::reading(&[
        "packing.depth: at least 1 in. ; if joint.rating = 1 hr ; option Configuration A",
        "packing.depth: at least 2 in. ; if joint.rating = 2 hr ; option Configuration A",
        "packing.layers: bare 2 ; if joint.rating = 1 hr ; option Configuration A",
        "packing.layers: bare 3 ; if joint.rating = 2 hr ; option Configuration A",
        "packing.recess: at most 1 in. ; option Configuration B",
    ]);
    listing.header.ratings_hr = [1, 2, 3].map(measure::Number::whole).to_vec();
    listing.options = vec![support::configurations(&[
        "Configuration A",
        "Configuration B",
    ])];
    let id = "1/none/packing.depth";
    let in_a = [
        "barrier.rating = 3 hr",
        "option.configuration = Configuration A",
    ];
    let decided = [support::judgment(
        id,
        "",
        site::Decision::Accepted,
        "letter of the laboratory",
    )];
    let result = support::check_with(&listing, &in_a, &decided);
    assert_eq!(support::finding(&result, id).verdict, Verdict::Judged);
    let other = support::finding(&result, "1/none/packing.layers");
    assert_eq!(other.verdict, Verdict::Open);
    // A configuration that says nothing of this case fits worse than one that asks something.
    let result = support::check(
        &listing,
        &["barrier.rating = 3 hr", "packing.recess = 1/2 in."],
    );
    assert!(result.finding(id).is_none());
    assert_eq!(result.chosen[0].considered[0].counts.open, 2);
}

#[test]
fn what_is_there_is_met_whatever_a_person_would_say_of_the_condition() {
    let clause =
        "packing.depth: at least 4 in. ; if \"not needed where the valley lies along the wall\"";
    check_verdict(clause, &["packing.depth = 5 in."], MET);
    for short in ["packing.depth = 3 in.", "packing.depth = 5 in. <- unstated"] {
        check_verdict(clause, &[short], UNDECIDED);
    }
    // A thing that isn't to be there, and isn't.
    let absent = "primer.presence: absent ; if \"the deck is galvanised\"";
    check_verdict(absent, &["primer.presence = no"], MET);
    check_verdict(absent, &["primer.presence = yes"], UNDECIDED);
    // What a fact could decide besides is still asked for: of cases told apart by it none may be this one.
    let case =
        "packing.depth: at least 4 in. ; if joint.width <= 2 in. and \"the slab is precast\"";
    check_verdict(case, &["packing.depth = 5 in."], UNDECIDED);
    check_verdict(case, &["packing.depth = 5 in.", "joint.width = 1 in."], MET);
    check_verdict(
        case,
        &["packing.depth = 5 in.", "joint.width = 3 in."],
        FALLS_AWAY,
    );
    // Nor do words of width or rating say of themselves that one of their cases is this one.
    for words in [
        "in joints over 2 in.",
        "for the two-hour rating",
        "in wider gaps",
        "class EI 60",
    ] {
        let case = format!("packing.depth: at least 4 in. ; if \"{words}\"");
        check_verdict(&case, &["packing.depth = 5 in."], UNDECIDED);
    }
    // What may have been misread stays open.
    let doubtful = format!("{clause} ; doubtful");
    let in_doubt = open(conformance::Reason::ReadingInDoubt);
    check_verdict(&doubtful, &["packing.depth = 5 in."], in_doubt);
}

#[test]
fn a_value_is_asked_for_that_makes_a_judgment_needless() {
    let asked = |clause: &str, facts: &[&str]| {
        let result = check(&reading(&[clause]), facts);
        let missing = finding(&result, "1/1").explanation.missing.clone().unwrap();
        (missing.ask, missing.property)
    };
    let depth = "packing.depth: at least 4 in. ; if \"the slab is precast\"";
    let by_value = (Ask::Value, "packing.depth".to_owned());
    assert_eq!(asked(depth, &[]), by_value);
    // Known, and not enough: whether it is asked for at all, a person must say.
    assert_eq!(asked(depth, &["packing.depth = 3 in."]).0, Ask::Judgment);
    let words = "packing.seams: prose ; if \"the slab is precast\"";
    assert_eq!(asked(words, &[]).0, Ask::Judgment);
}
