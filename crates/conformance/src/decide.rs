//! One clause at one joint.
//!
//! In order: whether the clause applies; what is known of its property and what that is worth; the comparison; and
//! whether the clause was read surely enough to be met.

use listing::{Bound, Expr, Requirement};
use measure::Dimension;
use site::{Barrier, Fact};
use vocabulary::Property;

use crate::assessment::{Assessment, Detail};
use crate::checklist::{Doubt, Entry};
use crate::comparison::{Compared, Guard, Outcome, joint_widths, readings};
use crate::condition::{Circumstances, Tested, Truth, reason_of};
use crate::evidence::{Evidence, evidence, evidence_of};
use crate::movement::{Direction, item};
use crate::rating::JOINT_RATING;
use crate::subject::Case;
use crate::verdict::{Reason, Verdict};
use crate::{named, offered, presence, reference};

/// What is found of a clause, options and judgments aside.
pub(crate) fn clause<'a>(
    entry: &Entry<'a>,
    subject: &Case<'a>,
    circumstances: &Circumstances<'a, '_>,
) -> Assessment<'a> {
    let condition = entry.clause.condition.as_ref();
    let condition = condition.map(|condition| &condition.expr);
    clause_if(condition, entry, subject, circumstances)
}

/// The same, its condition given apart from it.
pub(crate) fn clause_if<'a>(
    condition: Option<&'a Expr>,
    entry: &Entry<'a>,
    subject: &Case<'a>,
    circumstances: &Circumstances<'a, '_>,
) -> Assessment<'a> {
    let found = match condition.map(|expr| circumstances.test(expr)) {
        Some(tested) if tested.truth == Truth::Unknown => {
            undecided(&tested, condition, entry, subject, circumstances)
        }
        Some(tested) if tested.truth == Truth::False => {
            Assessment::plain(Verdict::NotApplicable, Reason::ConditionNotMet)
                .on(tested.cause.fact)
                .because(Detail::Condition(tested.cause))
        }
        _ => requirement(entry, subject),
    };
    guarded_by_doubt(found, entry.doubt)
}

/// A clause of which nobody can tell whether it applies. Where only words leave that open, which a person would have to judge, and what is asked for is
/// there, it is met either way. What a fact could decide stays open, and so do words of width or rating: of such cases none may be this one.
fn undecided<'a>(
    tested: &Tested<'a>,
    condition: Option<&'a Expr>,
    entry: &Entry<'a>,
    subject: &Case<'a>,
    circumstances: &Circumstances<'a, '_>,
) -> Assessment<'a> {
    let open = Assessment::open(Reason::ConditionUndecided)
        .on(tested.cause.fact)
        .because(Detail::Condition(tested.cause));
    if !condition.is_some_and(|expr| circumstances.only_words_are_undecided(expr)) {
        return Assessment {
            asks: tested.cause.property,
            ..open
        };
    }
    let mut either_way = requirement(entry, subject);
    match either_way.verdict {
        Verdict::Met => {
            let note = "Whether it applies here, nobody has judged: it is met either way.";
            either_way.notes.push(note.to_owned());
            either_way
        }
        // A value may make that judgment needless.
        Verdict::Open if either_way.reason == Reason::NoFact && either_way.asks.is_none() => {
            open.asking(&entry.clause.property)
        }
        _ => open,
    }
}

/// A clause that may have been misread can't be met, nor fall away.
fn guarded_by_doubt(found: Assessment<'_>, doubt: Doubt) -> Assessment<'_> {
    match (doubt, found.verdict) {
        (Doubt::Doubtful | Doubt::Unconfirmed, Verdict::Met | Verdict::NotApplicable) => {
            found.reopened(Reason::ReadingInDoubt)
        }
        _ => found,
    }
}

fn requirement<'a>(entry: &Entry<'a>, subject: &Case<'a>) -> Assessment<'a> {
    let clause = entry.clause;
    if entry.doubt == Doubt::OnlyWords {
        return Assessment::open(Reason::NeedsAPerson);
    }
    let name = known_as(entry, subject);
    match &clause.requirement {
        Requirement::Bound(bound) => self::bound(bound, name, entry.property, subject),
        Requirement::Named { names } => {
            weighed(evidence_of(name, || entry.property, subject), |fact| {
                named::against(fact, names, entry.property)
            })
        }
        Requirement::Presence {
            presence: listing::Presence::Optional,
        } => presence::asks_nothing(),
        Requirement::Presence { presence } => {
            weighed(evidence_of(name, || entry.property, subject), |fact| {
                presence::against(fact, *presence)
            })
        }
        Requirement::Reference { .. } if entry.is_pointer => reference::pointer(),
        Requirement::Reference { to } => match evidence(&clause.property, subject) {
            Evidence::None => Assessment::open(Reason::NeedsAPerson),
            found => weighed(found, |fact| reference::against(fact, to)),
        },
        Requirement::Prose => Assessment::open(Reason::NeedsAPerson),
    }
}

/// The name of the fact on a clause's property: of its very part, where there is one, else of the property.
fn known_as<'e>(entry: &'e Entry<'_>, subject: &Case<'_>) -> &'e str {
    if !subject.facts.has_own() {
        return &entry.clause.property;
    }
    let of_part = entry.part.names.iter();
    of_part
        .map(String::as_str)
        .find(|name| subject.facts.get(name).is_some())
        .unwrap_or(&entry.clause.property)
}

/// A comparison weighed by what its evidence is worth: what nobody stands for shows nothing; what nobody has seen
/// can't show that a clause is met.
fn weighed<'a>(
    found: Evidence<'a>,
    compare: impl FnOnce(&'a Fact) -> Assessment<'a>,
) -> Assessment<'a> {
    match found {
        Evidence::Shown(fact) => compare(fact),
        Evidence::NotSeen(fact) => {
            let compared = compare(fact);
            if compared.verdict == Verdict::Met {
                compared.reopened(Reason::NotSeen)
            } else {
                compared
            }
        }
        Evidence::None | Evidence::NoSource(_) | Evidence::Unreadable(_) => {
            Assessment::open(reason_of(found)).on(found.fact())
        }
    }
}

/// A bound on a property.
pub(crate) fn bound<'a>(
    bound: &Bound,
    name: &str,
    property: Option<&'static Property>,
    subject: &Case<'a>,
) -> Assessment<'a> {
    if offered::is_leakage(name) {
        return offered::leakage(bound, subject);
    }
    let found = match evidence_of(name, || property, subject) {
        // The rating that is needed is the barrier's, where none is given for the joint itself.
        Evidence::None if name == JOINT_RATING => evidence(Barrier::RATING, subject),
        found => found,
    };
    if let Some(direction) = Direction::of_percentage(name) {
        let by_percentage = weighed(found, |fact| need(fact, bound, property, subject));
        return item::against(bound, &direction, by_percentage, subject);
    }
    if matches!(found, Evidence::None) {
        return Assessment::open(Reason::NoFact);
    }
    if offered::is_offered(name) {
        return weighed(found, |fact| need(fact, bound, property, subject));
    }
    if joint_widths::is_so_stated(bound) {
        return in_joint_widths(found, bound, property, subject);
    }
    weighed(found, |fact| {
        let worst = readings::against(fact, bound, property, Guard::Exact, subject);
        compared(fact, bound, worst)
    })
}

/// A need against what the listing offers.
fn need<'a>(
    fact: &'a Fact,
    bound: &Bound,
    property: Option<&Property>,
    subject: &Case<'a>,
) -> Assessment<'a> {
    let limit = offered::as_limit(bound);
    let worst = readings::against(fact, &limit, property, Guard::Exact, subject);
    let found = compared(fact, &limit, worst);
    match worst {
        Some(worst)
            if found.verdict == Verdict::NotMet && offered::may_be_offered(bound, worst.value) =>
        {
            found.reopened(Reason::Deviates)
        }
        _ => found,
    }
}

/// A bound stated in widths of the joint, for every reading of the width.
fn in_joint_widths<'a>(
    found: Evidence<'a>,
    bound: &Bound,
    property: Option<&Property>,
    subject: &Case<'a>,
) -> Assessment<'a> {
    match joint_widths::as_lengths(bound, subject) {
        Ok(lengths) => weighed(found, |fact| {
            let each = lengths
                .iter()
                .map(|(length, guard)| readings::against(fact, length, property, *guard, subject));
            let worst = each.reduce(|worst, other| Some(worst?.worse(other?)));
            compared(fact, bound, worst.flatten())
        }),
        Err(width) => Assessment::open(reason_of(width))
            .on(width.fact())
            .asking(joint_widths::JOINT_WIDTH),
    }
}

fn compared<'a>(fact: &'a Fact, bound: &Bound, compared: Option<Compared>) -> Assessment<'a> {
    let Some(compared) = compared else {
        return Assessment::open(Reason::Unreadable).on(fact);
    };
    let assessed = match compared.outcome {
        Outcome::Holds => Assessment::plain(Verdict::Met, Reason::Holds),
        Outcome::Fails => Assessment::plain(Verdict::NotMet, Reason::Fails),
        Outcome::Deviates => Assessment::open(Reason::Deviates),
        Outcome::BetweenStatements => Assessment::open(Reason::BetweenStatements),
        Outcome::TooClose => Assessment::open(Reason::TooClose),
        // "Twice the depth": of what, only a person can say.
        Outcome::Unreadable if bound.unit.dimension() == Dimension::Multiple => {
            Assessment::open(Reason::NeedsAPerson)
        }
        Outcome::Unreadable if bound.lo.is_none() && bound.hi.is_none() => {
            Assessment::open(Reason::ListingUnclear)
        }
        Outcome::Unreadable => Assessment::open(Reason::Unreadable),
    };
    let assessed = assessed.on(fact).because(Detail::Bound(
        compared,
        bound.second.as_ref().map(|second| second.agreement),
    ));
    if assessed.verdict != Verdict::NotMet && readings::is_scattered(fact) {
        return assessed.reopened(Reason::Scattered);
    }
    assessed
}
