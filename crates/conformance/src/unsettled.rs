//! What stands in the way, before any words: each verdict that isn't met or is open, with what it is about.

use site::GoesBy;
use vocabulary::{Trade, vocabulary};

use crate::check::Decided;
use crate::checklist::Checklist;
use crate::explain::SubjectMatter;
use crate::judgments;
use crate::subject::Subject;
use crate::verdict::{Reason, Verdict};

/// A verdict that stands in the way of a joint's conforming.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Unsettled<'d> {
    /// Not met, or open.
    pub verdict: Verdict,
    /// Why.
    pub reason: Reason,
    /// The property it is about.
    pub property: &'d str,
    /// Who owns that property.
    pub trade: Option<Trade>,
}

impl Checklist<'_> {
    /// Every verdict of a joint that is not met or open, in the order of the findings.
    pub fn unsettled<'d>(&'d self, decided: &'d Decided<'_>) -> Vec<Unsettled<'d>> {
        let in_the_way = |verdict| matches!(verdict, Verdict::NotMet | Verdict::Open);
        let mut found = Vec::new();
        let mut note = |assessed: &crate::assessment::Assessment<'_>,
                        property: &'d str,
                        trade: &dyn Fn() -> Option<Trade>| {
            if in_the_way(assessed.verdict) {
                found.push(Unsettled {
                    verdict: assessed.verdict,
                    reason: assessed.reason,
                    property,
                    trade: trade(),
                });
            }
        };
        for head in &decided.heads {
            note(&head.found, head.property, &|| owner(head.property));
        }
        for question in &decided.questions {
            note(&question.found, &question.property, &|| {
                let ours = |entry: &&crate::checklist::Entry<'_>| {
                    let mut memberships = entry.memberships.iter();
                    memberships.any(|any_of| any_of.is_of(question.group))
                };
                let first = self.entries.iter().find(ours);
                let trade = first.and_then(|entry| entry.trade);
                SubjectMatter::of_option(&question.property, trade).trade
            });
        }
        for silence in &decided.silences {
            if let Some(first) = self.entries.get(silence.first) {
                note(&silence.found, &first.clause.property, &|| first.trade);
            }
        }
        for (entry, assessed) in self.entries.iter().zip(&decided.clauses) {
            note(assessed, &entry.clause.property, &|| entry.trade);
        }
        found
    }
}

fn owner(property: &str) -> Option<Trade> {
    Some(vocabulary().property(property)?.trade)
}

/// Whether what people have decided of a joint may bear on a listing that goes by these names.
pub fn is_judged(subject: &Subject<'_>, listing: &GoesBy<'_>) -> bool {
    let mut judgments = subject.judgments.iter();
    judgments.any(|judgment| judgments::may_bear_on(judgment, listing))
}
