//! Drafts give provisional results, confirmed listings final ones, and doubt is cleared by a person alone.

mod support;

use conformance::{
    Counts, Final, JointResult, Overall, Reason, Standing, Verdict, check_confirmed, check_draft,
};
use listing::confirm::{confirm, confirm_all};
use listing::{Confidence, Status};
use support::{facts, finding, reading, subject};

const KNOWN: &[&str] = &[
    "packing.depth = 5 in.",
    "joint.kind = head-of-wall <- drawing A-1",
    "joint.width = 1 in.",
    "joint.static_or_dynamic = static <- drawing A-1",
    "barrier.rating = 2 hr",
    "barrier.smoke_barrier = no",
];

#[test]
fn a_doubtful_clause_waits_for_its_confirmation() {
    let mut draft = reading(&["packing.depth: at least 4 in. ; doubtful"]);
    draft.header.width = Some(support::width("at most 2 in."));
    let facts = facts(KNOWN);
    let subject = subject(&facts, &[]);

    let provisional = check_draft(&draft, &subject);
    assert_eq!(
        (provisional.standing, provisional.overall),
        (Standing::Provisional, Overall::Open)
    );
    assert_eq!(
        finding(&provisional, "1/1").explanation.reason,
        Reason::ReadingInDoubt
    );

    let overlay = confirm_all(&draft, "the reviewer", jiff::civil::date(2031, 5, 6));
    let confirmed = confirm(draft, &overlay).confirmed().unwrap();
    let result: Final = check_confirmed(&confirmed, &subject);
    assert_eq!(
        (result.standing, result.overall),
        (Standing::Final, Overall::Conforms)
    );
    assert_eq!(result.notes, Vec::<String>::new());
    assert!(JointResult::from(result).conforms());
}

#[test]
fn prose_stays_open_however_well_confirmed() {
    let mut listing = reading(&["packing.seams: prose"]);
    listing.clauses[0].status = Status::Confirmed;
    let facts = facts(KNOWN);
    let result = check_draft(&listing, &subject(&facts, &[]));
    assert_eq!(finding(&result, "1/1").verdict, Verdict::Open);
}

#[test]
fn what_was_left_as_words_is_open_whatever_was_read_from_it() {
    let mut listing = reading(&["packing.depth: at least 4 in."]);
    listing.clauses[0].confidence = Confidence::Prose;
    let facts = facts(KNOWN);
    let result = check_draft(&listing, &subject(&facts, &[]));
    assert_eq!(
        finding(&result, "1/1").explanation.reason,
        Reason::NeedsAPerson
    );
}

#[test]
fn a_listing_of_no_clauses_shows_nothing() {
    let empty = reading(&[]);
    let result = check_draft(&empty, &subject(&[], &[]));
    assert_eq!(result.overall, Overall::Open);
}

#[test]
fn what_verdicts_make_of_a_joint() {
    use Verdict::{Judged, Met, NotApplicable, NotMet, Open};
    for (verdicts, expected) in [
        (vec![Met, Judged, NotApplicable], Overall::Conforms),
        (vec![Met, Open], Overall::Open),
        (vec![Met, Open, NotMet], Overall::DoesNotConform),
        // Where nothing was shown nothing conforms.
        (vec![NotApplicable], Overall::Open),
        (vec![], Overall::Open),
    ] {
        assert_eq!(
            Counts::of(verdicts.clone()).overall(),
            expected,
            "{verdicts:?}"
        );
    }
}
