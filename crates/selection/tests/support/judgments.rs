//! What people have decided, so that a listing with words only a person can answer may fit.

use conformance::{Checklist, Subject, Verdict};
use site::{Decision, Judgment, Scope};

/// Judgments that accept everything which is open of a listing at a joint, for all joints of its mark.
pub fn accepting(checklist: &Checklist<'_>, subject: &Subject<'_>) -> Vec<Judgment> {
    let decided = checklist.decide(subject);
    let open = checklist.findings(&decided, &|verdict| verdict == Verdict::Open);
    let accepted = |item: String| Judgment {
        scope: Scope::Mark(subject.mark.to_owned()),
        listing: Some(checklist.reading().source.name.clone()),
        item,
        words: String::new(),
        decision: Decision::Accepted,
        by: "Special inspector".to_owned(),
        when: jiff::civil::date(2031, 5, 6),
        basis: "seen".to_owned(),
    };
    open.into_iter()
        .map(|finding| accepted(finding.explanation.clause))
        .collect()
}
