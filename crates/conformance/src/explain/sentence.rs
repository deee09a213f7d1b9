//! What was found of a clause, in a sentence.

use listing::{Clause, ProductName, Requirement};
use measure::{Agreement, print};
use site::{Decision, Judgment};

use super::SubjectMatter;
use super::fact::{provenance, value_in_words};
use super::margin::amount;
use super::requirement::{in_both, name_in_words};
use crate::assessment::{Assessment, Cause, Detail};
use crate::comparison::Compared;
use crate::named;
use crate::offered::is_offered;
use crate::verdict::{Reason, Verdict};
use crate::words::capitalised;

/// What was found; a judgment that was applied follows it.
pub(crate) fn of(
    found: &Assessment<'_>,
    about: &SubjectMatter,
    requirement: &str,
    condition: Option<&str>,
    clause: Option<&Clause>,
) -> String {
    let (verdict, reason) = found.before.unwrap_or((found.verdict, found.reason));
    let mut sentence = match &found.detail {
        Detail::Said(said) => said.sentence.clone(),
        Detail::Condition(decided_by) => {
            of_condition(decided_by, reason, condition.unwrap_or_default())
        }
        Detail::Choice(choice) => of_choice(choice, reason),
        Detail::Bound(compared, agreement) => {
            of_bound(found, compared, *agreement, reason, about, requirement)
        }
        Detail::Product(listed) => {
            of_value(found, verdict, reason, about, requirement, clause)
                + &of_product(found, *listed, reason, clause)
        }
        Detail::Nothing => of_value(found, verdict, reason, about, requirement, clause),
    };
    if let Some(judgment) = found.judgment {
        sentence.push(' ');
        sentence.push_str(&of_judgment(judgment));
    }
    sentence
}

/// The listed name that a product's is nearest to, or that it shares.
fn of_product(
    found: &Assessment<'_>,
    listed: Option<&ProductName>,
    reason: Reason,
    clause: Option<&Clause>,
) -> String {
    let names = match clause.map(|clause| &clause.requirement) {
        Some(Requirement::Named { names }) => names.as_slice(),
        _ => &[],
    };
    let nearest = || named::nearest(found.fact?, names);
    match reason {
        Reason::Fails => listed.or_else(nearest).map_or_else(String::new, |nearest| {
            format!(" The nearest listed is {}.", name_in_words(nearest))
        }),
        Reason::MakerUnknown => listed.map_or_else(String::new, |listed| {
            format!(" The listing has it as {}.", name_in_words(listed))
        }),
        _ => String::new(),
    }
}

/// A person's decision: "So-and-so accepted it on 2031-05-06: on what ground."
fn of_judgment(judgment: &Judgment) -> String {
    let did = match judgment.decision {
        Decision::Accepted => "accepted",
        Decision::Rejected => "rejected",
    };
    let decided = format!("{} {did} it on {}", judgment.by.trim(), judgment.when);
    match judgment.basis.trim().trim_end_matches('.') {
        "" => format!("{decided}."),
        basis => format!("{decided}: {basis}."),
    }
}

/// What else bears on a verdict.
pub(crate) fn notes(found: &Assessment<'_>) -> Vec<String> {
    let mut notes = Vec::new();
    if let Detail::Bound(compared, agreement) = &found.detail {
        if let Some(tolerance) = compared.tolerance {
            notes.push(format!(
                "{} allows {} more and {} less: {} ({}).",
                tolerance.standard,
                print::trade(tolerance.plus),
                print::trade(tolerance.minus),
                tolerance.about,
                tolerance.source
            ));
        }
        if *agreement == Some(Agreement::InConflict) {
            notes.push(
                "The listing's two statements of this value are in conflict; the stricter governs until a person decides."
                    .to_owned(),
            );
        }
    }
    notes
}

fn of_bound(
    found: &Assessment<'_>,
    compared: &Compared,
    agreement: Option<Agreement>,
    reason: Reason,
    about: &SubjectMatter,
    requirement: &str,
) -> String {
    let value = print::both(compared.value);
    let is = about.with_verb();
    let plain = if is_offered(&about.property) {
        format!(
            "{}: {value} is needed; the listing gives {requirement}.",
            capitalised(&about.title)
        )
    } else if requirement.is_empty() {
        format!("{is} {value}.")
    } else {
        format!("{is} {value}; the listing asks for {requirement}.")
    };
    let limit = compared.limit.map(in_both).unwrap_or_default();
    match reason {
        Reason::NotSeen => match found.fact {
            Some(fact) => format!(
                "{plain} So says {}, but nobody has seen what is built.",
                provenance(fact)
            ),
            None => plain,
        },
        Reason::TooClose => {
            let instrument = match compared.guard {
                Some(half) => format!("it may be {} off", print::trade(half)),
                None => "how finely it was measured isn't recorded".to_owned(),
            };
            format!("{plain} That is closer to {limit} than the instrument can tell: {instrument}.")
        }
        Reason::Deviates => match compared.margin() {
            Some(deviation) => {
                let way = if deviation.number.is_negative() {
                    "less"
                } else {
                    "more"
                };
                format!(
                    "{plain} That is {} {way}, and no tolerance of a cited standard covers it: a person must judge.",
                    amount(deviation)
                )
            }
            None => format!("{plain} A person must judge."),
        },
        Reason::BetweenStatements if agreement == Some(Agreement::InConflict) => {
            format!("{plain} The two statements can't both be met: a person must judge.")
        }
        Reason::BetweenStatements => {
            format!("{plain} One of the listing's two statements is met and the other isn't.")
        }
        Reason::Scattered => format!("{plain} The value lies outside its own readings."),
        Reason::ReadingInDoubt => in_doubt(requirement),
        Reason::Unreadable => {
            format!("{is} given as {value}, which can't be compared with {requirement}.")
        }
        Reason::NeedsAPerson => format!("{plain} Only a person can compare the two."),
        _ => plain,
    }
}

fn of_value(
    found: &Assessment<'_>,
    verdict: Verdict,
    reason: Reason,
    about: &SubjectMatter,
    requirement: &str,
    clause: Option<&Clause>,
) -> String {
    let is = about.with_verb();
    let title = about.in_sentence();
    let value = found
        .fact
        .map(|fact| value_in_words(&fact.value))
        .unwrap_or_default();
    let presence = matches!(
        clause.map(|clause| &clause.requirement),
        Some(Requirement::Presence { .. })
    );
    let compared = if presence {
        let asks = if requirement == "required" {
            "asks for it"
        } else {
            "rules it out"
        };
        format!(
            "{}: {value}; the listing {asks}.",
            capitalised(&about.title)
        )
    } else if requirement.is_empty() {
        format!("{is} {value}.")
    } else {
        format!("{is} {value}; the listing asks for {requirement}.")
    };
    match reason {
        Reason::NoFact => match found.asks {
            Some(other) if other != about.property => {
                let other = SubjectMatter::of_property(other).in_sentence();
                format!("The listing asks for {requirement}; {other} isn't known.")
            }
            _ if presence => format!("Nobody has shown whether this holds: {title}."),
            _ if about.is_local() => {
                format!("Nobody has shown this ({title}); the listing asks for {requirement}.")
            }
            _ => format!("Nobody has shown the {title}; the listing asks for {requirement}."),
        },
        Reason::NoSource => format!("{compared} Nobody says where the value comes from."),
        Reason::NotSeen => match found.fact {
            Some(fact) if found.asks.is_some() => format!(
                "The listing asks for {requirement}; {} is known only from {}, and nobody has measured it as found.",
                SubjectMatter::of_property(fact.asked_as()).in_sentence(),
                provenance(fact)
            ),
            Some(fact) => format!(
                "{compared} So says {}, but nobody has seen what is built.",
                provenance(fact)
            ),
            None => compared,
        },
        Reason::Unreadable => format!(
            "{is} given as {value}, which can't be compared with what the listing asks for: {requirement}."
        ),
        Reason::MakerUnknown => format!("{compared} Whether it is that maker's isn't shown."),
        Reason::NeedsAPerson if found.fact.is_some() => {
            format!("{compared} Whether that is the same, a person must say.")
        }
        Reason::NeedsAPerson => "A person must say whether this is so at the joint.".to_owned(),
        Reason::ListingUnclear => {
            "What the listing asks for here couldn't be read surely; a person must say.".to_owned()
        }
        Reason::ReadingInDoubt => in_doubt(requirement),
        Reason::AsksNothing if presence => "The listing leaves it free.".to_owned(),
        Reason::AsksNothing => {
            "Only points to another item, whose clauses stand for themselves.".to_owned()
        }
        _ if verdict == Verdict::NotApplicable => "Doesn't apply here.".to_owned(),
        _ => compared,
    }
}

fn in_doubt(requirement: &str) -> String {
    format!(
        "Read as {requirement}; but the reading is in doubt or unconfirmed, and until a person confirms it the clause stays open."
    )
}

fn of_condition(cause: &Cause<'_>, reason: Reason, condition: &str) -> String {
    if reason == Reason::ReadingInDoubt {
        return format!(
            "Read as applying only \"{condition}\", which doesn't hold here; but the reading is in doubt or unconfirmed, and until a person confirms it the clause stays open."
        );
    }
    let applies = format!("Applies \"{condition}\"");
    let about = cause.property.map(SubjectMatter::of_property);
    let title = about
        .as_ref()
        .map(SubjectMatter::in_sentence)
        .unwrap_or_default();
    let value = cause
        .fact
        .map(|fact| value_in_words(&fact.value))
        .unwrap_or_default();
    if let Some(words) = cause.words.filter(|words| *words != condition) {
        return format!("{applies}; whether \"{words}\" holds here, a person must say.");
    }
    match (cause.reason, cause.rating) {
        (Reason::NeedsAPerson, _) => {
            format!("{applies}: whether that holds here, a person must say.")
        }
        (Reason::Holds, Some(rating)) => {
            format!(
                "{applies}; the rating that applies here is {}.",
                print::trade(rating)
            )
        }
        (Reason::Holds, None) => format!("{applies}; {title} is {value}."),
        (Reason::NoFact, _) => format!("{applies}; {title} isn't known."),
        (Reason::NoSource, _) => {
            format!(
                "{applies}; {title} is given as {value}, but nobody says where that comes from."
            )
        }
        (Reason::NotSeen, _) => {
            let source = cause.fact.map(provenance).unwrap_or_default();
            format!(
                "{applies}; {title} is known only from {source} ({value}), and nobody has seen or measured what is built."
            )
        }
        (Reason::TooClose, _) => format!(
            "{applies}; {title} is {value}, too close to tell, or different from place to place."
        ),
        (Reason::Scattered, _) => {
            format!("{applies}; {title} is given as {value}, outside its own readings.")
        }
        (Reason::ListingUnclear, _) => {
            format!("{applies}; no rating of the listing's could be found that applies here.")
        }
        _ => format!("{applies}; {title} is given as {value}, which can't be compared with it."),
    }
}

fn of_choice(choice: &str, reason: Reason) -> String {
    let choice = crate::check::option_words(choice);
    match reason {
        Reason::NotChosen => format!("Belongs to another option: checked here is {choice}."),
        _ => format!("Belongs to {choice}, which is not built or is taken not to be."),
    }
}
