//! The head of a listing against what the building asks.

mod support;

use conformance::Reason::{
    AsksNothing, Fails, Holds, ListingUnclear, NoFact, NotAsked, NotOffered, NotSeen, TooClose,
    Unreadable,
};
use conformance::{Reason, Verdict};
use listing::{Header, HeaderTopic, Reading};
use measure::Number;
use support::{
    check, configurations, finding, leakage, movement, not_applicable, open, reading, width,
};

const NOT_OFFERED: (Verdict, Reason) = (Verdict::NotMet, NotOffered);
const MET: (Verdict, Reason) = (Verdict::Met, Holds);

#[track_caller]
fn check_head(
    header: impl FnOnce(&mut Header),
    id: &str,
    facts: &[&str],
    expected: (Verdict, Reason),
) {
    let mut listing = reading(&["packing.depth: at least 1 in."]);
    header(&mut listing.header);
    expect(&listing, id, facts, expected);
}

#[track_caller]
fn expect(listing: &Reading, id: &str, facts: &[&str], expected: (Verdict, Reason)) {
    let result = check(listing, facts);
    let found = finding(&result, id);
    assert_eq!(
        (found.verdict, found.explanation.reason),
        expected,
        "{facts:?}: {}",
        found.explanation.sentence
    );
}

#[test]
fn the_rating_reaches_the_barriers() {
    // "Not less than the required rating of the element in or between which the joint is installed" (IBC 715).
    let rating = |facts: &[&str], expected| check_head(|_| {}, "header/rating", facts, expected);
    rating(&["barrier.rating = 1 hr"], MET);
    rating(&["barrier.rating = 2 hr"], MET);
    rating(&["barrier.rating = 90 min"], MET);
    rating(&["barrier.rating = 3 hr"], NOT_OFFERED);
    rating(&[], open(NoFact));
    rating(&["joint.rating = 2 hr <- drawing A"], open(NoFact));
    rating(
        &["barrier.rating = 2 hr", "joint.rating = 1 hr <- drawing A"],
        (Verdict::NotMet, Fails),
    );
    rating(
        &["barrier.rating = 1 hr", "joint.rating = 3 hr <- drawing A"],
        NOT_OFFERED,
    );
    rating(
        &["barrier.rating = 1 hr", "joint.rating = 2 hr <- drawing A"],
        MET,
    );
    rating(&["barrier.rating = 0 hr"], open(Unreadable));
    check_head(
        |header| header.ratings_hr.clear(),
        "header/rating",
        &["barrier.rating = 1 hr"],
        open(ListingUnclear),
    );
}

#[test]
fn the_kind_of_joint() {
    let kind = |facts: &[&str], expected| check_head(|_| {}, "header/kind", facts, expected);
    kind(&["joint.kind = head-of-wall <- drawing A"], MET);
    kind(&["joint.kind = top of wall <- drawing A"], MET);
    kind(
        &["joint.kind = floor-to-floor <- drawing A"],
        (Verdict::NotMet, Fails),
    );
    kind(&["joint.kind = odd <- drawing A"], open(Unreadable));
    kind(&[], open(NoFact));
    // A designation that names none, or none at all: a person must say.
    for designation in ["Sheet 7, rev. C", ""] {
        let without = |header: &mut Header| header.designation = designation.to_owned();
        let found = open(ListingUnclear);
        check_head(without, "header/kind", &[], found);
        check_head(
            without,
            "header/kind",
            &["joint.kind = head-of-wall <- drawing A"],
            found,
        );
    }
}

#[test]
fn the_width_as_found() {
    let at = |facts: &[&str], expected| {
        check_head(
            |header| header.width = Some(width("at most 2 in.")),
            "header/width",
            facts,
            expected,
        );
    };
    at(&["joint.width = 1-1/2 in. <- measured 1/16 in."], MET);
    at(
        &["joint.width = 1-1/2 in. <- measured 1/16 in.: 1-1/4 in., 2-1/8 in."],
        (Verdict::NotMet, Fails),
    );
    at(
        &["joint.width = 2 in. <- measured 1/16 in."],
        open(TooClose),
    );
    at(
        &["joint.width = 2-3/8 in. <- measured 1/16 in."],
        (Verdict::NotMet, Fails),
    );
    at(&["joint.width = 1-1/2 in. <- drawing A"], open(NotSeen));
    at(
        &["joint.width = 2-1/2 in. <- drawing A"],
        (Verdict::NotMet, Fails),
    );
    at(&[], open(NoFact));
}

#[test]
fn a_head_without_a_width() {
    check_head(
        |_| {},
        "header/width",
        &["joint.width = 1 in."],
        open(ListingUnclear),
    );
    let listing = reading(&["joint.width: at most 1 in. ; item 3"]);
    expect(
        &listing,
        "header/width",
        &["joint.width = 1 in."],
        not_applicable(AsksNothing),
    );
}

#[test]
fn the_band_counts_only_where_no_width_is_stated() {
    let band = |designation: &str, stated: bool, value: &str, expected| {
        check_head(
            |header| {
                header.designation = designation.to_owned();
                header.width = stated.then(|| width("at most 3 in."));
            },
            "header/band",
            &[&format!("joint.width = {value}")],
            expected,
        );
    };
    // 0000-0999 up to 2 in.; 1000-1999 over 2 to 6 in.; 4000-4999 over 24 in.
    band("HW-D-0901", false, "2 in.", MET);
    band("HW-D-0901", false, "2-1/16 in.", (Verdict::NotMet, Fails));
    band("HW-D-1999", false, "2 in.", (Verdict::NotMet, Fails));
    band("HW-D-1999", false, "2-1/16 in.", MET);
    band("HW-D-1999", false, "6 in.", MET);
    band("FF-S-4000", false, "25 in.", MET);
    band("HW-D-1999", true, "1 in.", not_applicable(AsksNothing));
}

/// What a joint needs: percent in compression and extension, by class.
fn needs(compression: &str, extension: &str, class: &str) -> Vec<String> {
    [
        ("compression", compression),
        ("extension", extension),
        ("class", class),
    ]
    .into_iter()
    .filter(|(_, value)| !value.is_empty())
    .map(|(what, value)| format!("joint.movement_{what} = {value} <- drawing S"))
    .collect()
}

#[track_caller]
fn check_movement(tested: &[&str], needs: &[String], direction: &str, expected: (Verdict, Reason)) {
    let facts: Vec<&str> = needs.iter().map(String::as_str).collect();
    check_head(
        |header| header.movement = tested.iter().map(|line| movement(line)).collect(),
        &format!("header/movement-{direction}"),
        &facts,
        expected,
    );
}

#[test]
fn movement_by_direction_and_class() {
    let both = ["II, III either 25"];
    let closing = ["II, III compression 25"];
    check_movement(&both, &needs("20 %", "10 %", "II"), "compression", MET);
    check_movement(&both, &needs("25 %", "10 %", "II"), "compression", MET);
    check_movement(
        &both,
        &needs("26 %", "10 %", "II"),
        "compression",
        NOT_OFFERED,
    );
    check_movement(
        &both,
        &needs("20 %", "10 %", "II and III"),
        "extension",
        MET,
    );
    check_movement(
        &closing,
        &needs("20 %", "10 %", "II"),
        "extension",
        NOT_OFFERED,
    );
    check_movement(
        &closing,
        &needs("20 %", "0 %", "II"),
        "extension",
        not_applicable(NotAsked),
    );
    // A higher class isn't known to cover a lower one.
    check_movement(
        &both,
        &needs("20 %", "10 %", "I"),
        "compression",
        NOT_OFFERED,
    );
    check_movement(
        &["IV either 25"],
        &needs("20 %", "10 %", "III"),
        "compression",
        NOT_OFFERED,
    );
    check_movement(
        &["II either 25", "III either 10"],
        &needs("20 %", "", "II, III"),
        "compression",
        NOT_OFFERED,
    );
    check_movement(
        &both,
        &needs("20 %", "10 %", "wind"),
        "compression",
        open(Unreadable),
    );
}

#[test]
fn movement_that_nobody_states() {
    let both = ["II, III either 25"];
    check_movement(&both, &[], "compression", open(NoFact));
    check_movement(&both, &needs("20 %", "", "II"), "extension", open(NoFact));
    check_movement(
        &both,
        &needs("20 %", "10 %", ""),
        "compression",
        open(NoFact),
    );
    // Whatever the class, no class was tested so far.
    check_movement(
        &both,
        &needs("40 %", "10 %", ""),
        "compression",
        NOT_OFFERED,
    );
    check_movement(
        &both,
        &["joint.movement_compression = 1/2 in. <- drawing S".to_owned()],
        "compression",
        open(Unreadable),
    );
    let fixed = ["joint.static_or_dynamic = static <- drawing S".to_owned()];
    check_movement(&both, &fixed, "compression", not_applicable(NotAsked));
    check_movement(&both, &fixed, "shear", not_applicable(NotAsked));
}

#[test]
fn shear_is_asked_where_it_is_stated() {
    let both = ["II either 25"];
    let with_shear = |percent: &str| {
        let mut all = needs("20 %", "10 %", "II");
        all.push(format!("joint.movement_shear = {percent} <- drawing S"));
        all
    };
    check_movement(
        &both,
        &needs("20 %", "10 %", "II"),
        "shear",
        not_applicable(NotAsked),
    );
    check_movement(&both, &[], "shear", open(NoFact));
    check_movement(&both, &with_shear("5 %"), "shear", NOT_OFFERED);
    check_movement(
        &["II either 25", "II shear 10"],
        &with_shear("5 %"),
        "shear",
        MET,
    );
}

#[test]
fn a_listing_that_states_no_movement() {
    let static_listing = |header: &mut Header| header.designation = "HW-S-0901".to_owned();
    check_head(
        static_listing,
        "header/movement-compression",
        &["joint.movement_compression = 5 % <- drawing S"],
        NOT_OFFERED,
    );
    // A dynamic listing whose movement couldn't be read.
    check_movement(
        &[],
        &needs("5 %", "", "II"),
        "compression",
        open(ListingUnclear),
    );
}

#[test]
fn movement_of_the_chosen_configuration() {
    let mut listing = reading(&[
        "packing.depth: at least 1 in. ; option Configuration 1",
        "packing.layers: bare 2 ; option Configuration 2",
    ]);
    listing.options = vec![configurations(&["Configuration 1", "Configuration 2"])];
    listing.header.movement = [
        "II compression 50 for Configuration 1",
        "II compression 10 for Configuration 2",
    ]
    .map(movement)
    .to_vec();
    let needs = [
        "joint.movement_compression = 40 % <- drawing S",
        "joint.movement_class = II <- drawing S",
    ];
    let with = |fact: &'static str| [needs[0], needs[1], fact];
    expect(
        &listing,
        "header/movement-compression",
        &with("packing.depth = 2 in."),
        MET,
    );
    expect(
        &listing,
        "header/movement-compression",
        &with("packing.layers = 2"),
        NOT_OFFERED,
    );
    // A configuration that no option goes by.
    listing.header.movement = vec![movement("II compression 50 for the wide version")];
    expect(
        &listing,
        "header/movement-compression",
        &with("packing.depth = 2 in."),
        open(ListingUnclear),
    );
}

#[test]
fn of_several_movements_for_one_class_the_smallest_must_reach() {
    // One published listing gives 100 % at 2 in. and 0 % at 4 in.: where nothing tells which holds, nobody can say.
    let tested = ["II compression 100", "II compression 10"];
    check_movement(
        &tested,
        &needs("40 %", "", "II"),
        "compression",
        open(ListingUnclear),
    );
    check_movement(&tested, &needs("10 %", "", "II"), "compression", MET);
}

#[test]
fn movement_of_a_configuration_that_nobody_knows() {
    let mut listing = reading(&[
        "packing.depth: at least 1 in. ; option Configuration 1",
        "packing.layers: bare 2 ; option Configuration 2",
    ]);
    listing.options = vec![configurations(&["Configuration 1", "Configuration 2"])];
    let mut at = |tested: &[&str], needed: &str, expected| {
        listing.header.movement = tested.iter().map(|line| movement(line)).collect();
        let needed = format!("joint.movement_compression = {needed} <- drawing S");
        let facts = [needed.as_str(), "joint.movement_class = II <- drawing S"];
        expect(&listing, "header/movement-compression", &facts, expected);
    };
    // The strong one stands first, and nothing says that it is the one built.
    let by_configuration = [
        "II compression 50 for Configuration 1",
        "II compression 10 for Configuration 2",
    ];
    at(&by_configuration, "40 %", open(ListingUnclear));
    at(&by_configuration, "10 %", MET);
    at(&by_configuration, "60 %", NOT_OFFERED);
    // For the other none is stated at all.
    at(&by_configuration[..1], "40 %", open(ListingUnclear));
    // One for either.
    let either = ["II compression 50 for Configuration 1 or Configuration 2"];
    at(&either, "40 %", MET);
    // A weaker one for a configuration that no option goes by.
    at(
        &[
            "II compression 50",
            "II compression 10 for the wide version",
        ],
        "40 %",
        open(ListingUnclear),
    );
    at(
        &[
            "II compression 50",
            "II compression 10 for the wide version",
        ],
        "10 %",
        MET,
    );
}

#[test]
fn a_width_that_the_head_states_by_configuration() {
    let at = |value: &str, expected| {
        check_head(
            |header| {
                header.width = Some(listing::WidthLimit {
                    strictest_hi: Some(Number::whole(2)),
                    ..width("at most 4 in.")
                });
                header.differs = vec![HeaderTopic::Width];
            },
            "header/width",
            &[&format!("joint.width = {value}")],
            expected,
        );
    };
    at("1-1/2 in. <- measured 1/16 in.", MET);
    at("3 in. <- measured 1/16 in.", open(ListingUnclear));
    at("2 in. <- measured 1/16 in.", open(ListingUnclear));
    at("4 in. <- measured 1/16 in.", open(TooClose));
    at("5 in. <- measured 1/16 in.", (Verdict::NotMet, Fails));
    at("1 in. <- drawing A", open(NotSeen));
    // It differs, and how couldn't be read.
    let at = |value: &str, expected| {
        check_head(
            |header| {
                header.width = Some(width("at most 4 in."));
                header.differs = vec![HeaderTopic::Width];
            },
            "header/width",
            &[&format!("joint.width = {value}")],
            expected,
        );
    };
    at("1-1/2 in.", open(ListingUnclear));
    at("5 in.", open(ListingUnclear));
    at("1 in. <- drawing A", open(NotSeen));
    // Low values differ too, and only the least of them is kept.
    let at = |stated: &str, value: &str, expected| {
        check_head(
            |header| {
                header.width = Some(listing::WidthLimit {
                    hi: Some(Number::whole(4)),
                    strictest_hi: Some(Number::whole(2)),
                    ..width(stated)
                });
                header.differs = vec![HeaderTopic::Width];
            },
            "header/width",
            &[&format!("joint.width = {value}")],
            expected,
        );
    };
    at("between 1 in. and 4 in.", "1-1/2 in.", open(ListingUnclear));
    at(
        "between 1 in. and 4 in.",
        "1/2 in.",
        (Verdict::NotMet, Fails),
    );
    at("at least 1 in.", "1-1/2 in.", open(ListingUnclear));
    at("nominal 2 in.", "2 in.", open(ListingUnclear));
}

#[test]
fn a_rating_that_the_head_states_by_configuration() {
    // Rated 1 and 2 h, each for a configuration of its own.
    let rating = |hours: &str, expected| {
        check_head(
            |header| header.differs = vec![HeaderTopic::Rating],
            "header/rating",
            &[&format!("barrier.rating = {hours}")],
            expected,
        );
    };
    rating("1 hr", MET);
    rating("1-1/2 hr", open(ListingUnclear));
    rating("2 hr", open(ListingUnclear));
    rating("3 hr", NOT_OFFERED);
}

#[track_caller]
fn check_leakage(stated: &[&str], at: &str, smoke: &str, expected: (Verdict, Reason)) {
    let smoke = format!("barrier.smoke_barrier = {smoke}");
    let facts: &[&str] = if smoke.ends_with('?') { &[] } else { &[&smoke] };
    check_head(
        |header| header.leakage = stated.iter().map(|line| leakage(line)).collect(),
        &format!("header/leakage-{at}"),
        facts,
        expected,
    );
}

#[test]
fn leakage_in_a_smoke_barrier() {
    // At most 5 cfm/ft at 0.30 in. of water, at ambient and at elevated temperature (IBC 715.6 to 2018; UL 2079).
    let both = ["ambient less than 1 cfm/ft", "elevated 5 cfm/ft"];
    check_leakage(&both, "ambient", "yes", MET);
    check_leakage(&both, "elevated", "yes", MET);
    check_leakage(&both, "elevated", "no", not_applicable(NotAsked));
    check_leakage(&both, "elevated", "?", open(NoFact));
    check_leakage(&["ambient 1 cfm/ft"], "elevated", "yes", NOT_OFFERED);
    check_leakage(
        &["ambient 1 cfm/ft"],
        "elevated",
        "no",
        not_applicable(NotAsked),
    );
    check_leakage(
        &["elevated at most 5.1 cfm/ft"],
        "elevated",
        "yes",
        NOT_OFFERED,
    );
    check_leakage(
        &["elevated less than 6 cfm/ft"],
        "elevated",
        "yes",
        NOT_OFFERED,
    );
    check_leakage(&["elevated less than 5 cfm/ft"], "elevated", "yes", MET);
    // 7.75 L/s·m is a little more than 5 cfm/ft, which is 7.742 (W27).
    check_leakage(&["elevated 7.74 L/s per m"], "elevated", "yes", MET);
    check_leakage(&["elevated 7.75 L/s per m"], "elevated", "yes", NOT_OFFERED);
    // One listing printed its joint's leakage per area: nobody can tell what was meant.
    check_leakage(
        &["elevated 1 cfm/ft2"],
        "elevated",
        "yes",
        open(ListingUnclear),
    );
    check_leakage(
        &["elevated 1 cfm/ft", "elevated 9 cfm/ft"],
        "elevated",
        "yes",
        NOT_OFFERED,
    );
    // Of several, for one configuration each, the leakiest must do, in whichever unit; one that can't be compared
    // leaves it open.
    let several = |last, expected| {
        check_leakage(
            &["ambient 1 cfm/ft", "ambient 2 cfm/ft", last],
            "ambient",
            "yes",
            expected,
        );
        check_leakage(
            &[last, "ambient 2 cfm/ft", "ambient 1 cfm/ft"],
            "ambient",
            "yes",
            expected,
        );
    };
    several("ambient 4 cfm/ft", MET);
    several("ambient 9 L/s per m", NOT_OFFERED);
    several("ambient 1 cfm/ft2", open(ListingUnclear));
    several("ambient 9 cfm/ft2", open(ListingUnclear));
}

#[test]
fn what_items_say_of_movement_is_offered_and_not_asked() {
    let clause = |line: &str, fact: &str, expected| support::check_verdict(line, &[fact], expected);
    let needs = |percent: &str| format!("joint.movement_compression = {percent} <- drawing S");
    for words in ["nominal", "bare", "at most", "at least", "exactly"] {
        let line = format!("joint.movement_compression: {words} 25 percent");
        clause(&line, &needs("20 %"), MET);
        clause(&line, &needs("25 %"), MET);
        clause(&line, &needs("26 %"), support::NOT_MET);
    }
    // Of a range only the least is sure.
    let range = "joint.movement_compression: between 10 percent and 25 percent";
    clause(range, &needs("10 %"), MET);
    clause(range, &needs("20 %"), open(Reason::Deviates));
    clause(range, &needs("30 %"), support::NOT_MET);
    clause("joint.rating: bare 2 hr", "barrier.rating = 1 hr", MET);
    clause(
        "joint.rating: bare 2 hr",
        "barrier.rating = 3 hr",
        support::NOT_MET,
    );
    clause(
        "joint.rating: bare 2 hr",
        "joint.rating = 1 hr <- drawing A",
        MET,
    );
}

#[test]
fn what_items_say_of_leakage_counts_in_a_smoke_barrier() {
    let clause =
        |line: &str, facts: &[&str], expected| support::check_verdict(line, facts, expected);
    let stated = "joint.leakage_ambient: less than 1 cfm/ft";
    clause(
        stated,
        &["barrier.smoke_barrier = no"],
        not_applicable(NotAsked),
    );
    clause(stated, &["barrier.smoke_barrier = yes"], MET);
    clause(stated, &[], open(NoFact));
    clause(
        "joint.leakage_ambient: bare 6 cfm/ft",
        &["barrier.smoke_barrier = yes"],
        NOT_OFFERED,
    );
    clause(
        "joint.leakage_ambient: bare 1 cfm/ft2",
        &["barrier.smoke_barrier = yes"],
        open(ListingUnclear),
    );
}

#[test]
fn leakage_by_another_test() {
    check_head(
        |header| {
            header.standards = vec!["ASTM E1966".to_owned()];
            header.leakage = vec![leakage("ambient 1 cfm/ft")];
        },
        "header/leakage-ambient",
        &["barrier.smoke_barrier = yes"],
        open(ListingUnclear),
    );
}

#[test]
fn a_movement_that_could_not_be_a_number_is_no_panic() {
    check_head(
        |header| header.ratings_hr = vec![Number::whole(-1)],
        "header/rating",
        &["barrier.rating = 1 hr"],
        NOT_OFFERED,
    );
}
