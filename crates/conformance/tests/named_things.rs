//! Products, words, presence, references and prose.

mod support;

use conformance::Reason::{
    AsksNothing, ListingUnclear, MakerUnknown, NeedsAPerson, NoFact, NoSource, NotSeen, Unreadable,
};
use conformance::Verdict;
use support::{MET, NOT_MET, check, check_verdict, finding, not_applicable, open, reading};

const SPRAYS: &str =
    "coating.product: named Tarrowfen Coatings | Tarroseal 30, Quillbrook Seals | Quillcoat S";

#[test]
fn a_product_is_the_one_listed_or_another() {
    for (value, expected) in [
        ("Tarrowfen Coatings | Tarroseal 30", MET),
        ("TARROWFEN  COATINGS | \u{201c}Tarroseal™\u{201d} 30", MET),
        ("Quillbrook Seals | quillcoat s", MET),
        ("Tarrowfen Coatings | Tarroseal 300", NOT_MET),
        ("Tarrowfen Coatings | Tarroseal", NOT_MET),
        ("Tarrowfen Coatings | Quillcoat S", NOT_MET),
        ("Another Maker | Tarroseal 30", NOT_MET),
        ("product Tarroseal 30", open(MakerUnknown)),
        ("Tarrowfen Coatings Ltd. | Tarroseal 30", open(MakerUnknown)),
        ("Tarrowfen | Tarroseal 30", open(MakerUnknown)),
        ("Tarrow | Tarroseal 30", NOT_MET),
        ("product Tarroseal 3", NOT_MET),
        ("30 mm", open(Unreadable)),
        ("yes", open(Unreadable)),
    ] {
        check_verdict(
            SPRAYS,
            &[&format!("coating.product = {value} <- submittal S")],
            expected,
        );
    }
    check_verdict(SPRAYS, &[], open(NoFact));
    check_verdict(
        SPRAYS,
        &["coating.product = Tarrowfen Coatings | Tarroseal 30 <- unstated"],
        open(NoSource),
    );
}

#[test]
fn a_name_that_is_only_near_gets_the_nearest_listed() {
    let result = check(
        &reading(&[SPRAYS]),
        &["coating.product = Quillbrook Seals | Quillcoat SX <- submittal S"],
    );
    let found = finding(&result, "1/1");
    assert_eq!(found.verdict, Verdict::NotMet);
    assert!(
        found
            .explanation
            .sentence
            .contains("The nearest listed is Quillcoat S (Quillbrook Seals).")
    );
}

#[test]
fn words_of_the_vocabulary() {
    let clause = "deck.direction: named across";
    check_verdict(clause, &["deck.direction = across <- drawing A"], MET);
    check_verdict(
        clause,
        &["deck.direction = perpendicular to the flutes <- drawing A"],
        MET,
    );
    check_verdict(clause, &["deck.direction = along <- drawing A"], NOT_MET);
    check_verdict(
        clause,
        &["deck.direction = sideways <- drawing A"],
        open(Unreadable),
    );
    check_verdict(
        "deck.direction: named sideways",
        &["deck.direction = along <- drawing A"],
        open(ListingUnclear),
    );
}

#[test]
fn presence() {
    let required = "packing.flush: required";
    let absent = "stud.attached_to_runner: absent";
    check_verdict(required, &["packing.flush = yes"], MET);
    check_verdict(required, &["packing.flush = no"], NOT_MET);
    check_verdict(required, &["packing.flush = mostly"], open(Unreadable));
    check_verdict(required, &["packing.flush = 3 in."], open(Unreadable));
    check_verdict(required, &[], open(NoFact));
    check_verdict(
        required,
        &["packing.flush = yes <- drawing A"],
        open(NotSeen),
    );
    check_verdict(absent, &["stud.attached_to_runner = no"], MET);
    check_verdict(absent, &["stud.attached_to_runner = yes"], NOT_MET);
    check_verdict(absent, &[], open(NoFact));
    check_verdict(
        "primer.product: required",
        &["primer.product = Quillbrook Seals | Quillprime <- submittal S"],
        MET,
    );
    check_verdict(
        "primer.product: absent",
        &["primer.product = Quillbrook Seals | Quillprime <- submittal S"],
        NOT_MET,
    );
    check_verdict("primer.product: optional", &[], not_applicable(AsksNothing));
}

#[test]
fn references() {
    let two = |line: &str, facts: &[&str]| {
        let reading = reading(&[line, "packing.depth: at least 1 in. ; item 2A"]);
        let result = check(&reading, facts);
        let found = finding(&result, "1/1");
        (found.verdict, found.explanation.reason)
    };
    // Only points.
    assert_eq!(
        two("wall.note: as 2A ; words (See Item 2A)", &[]),
        not_applicable(AsksNothing)
    );
    // Asks for the same as another item.
    assert_eq!(
        two("flute.packing: as 2A ; words packed as in Item 2A", &[]),
        open(NeedsAPerson)
    );
    // Pointing words that point to no item.
    assert_eq!(
        two("wall.note: as the manual ; words as described", &[]),
        open(NeedsAPerson)
    );
    // An item that isn't there, a design, a standard.
    assert_eq!(
        two("wall.note: as 9Z ; words (See Item 9Z)", &[]),
        open(NeedsAPerson)
    );
    let design = "wall.design: as Design W-7731 ; words built as in Design W-7731";
    assert_eq!(two(design, &[]), open(NeedsAPerson));
    assert_eq!(two(design, &["wall.design = design  w-7731"]), MET);
    assert_eq!(
        two(design, &["wall.design = Design W-7732"]),
        open(NeedsAPerson)
    );
    assert_eq!(
        two(design, &["wall.design = Design W-7731 <- drawing A"]),
        open(NotSeen)
    );
}

#[test]
fn prose_is_for_a_person() {
    check_verdict("packing.seams: prose", &[], open(NeedsAPerson));
    check_verdict(
        "packing.seams: prose",
        &["packing.seams = yes"],
        open(NeedsAPerson),
    );
}
