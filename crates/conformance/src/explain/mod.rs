//! Putting in words what was decided. Nothing here decides anything.

mod fact;
mod margin;
mod missing;
pub(crate) mod requirement;
mod sentence;
mod subject_matter;

use listing::{Clause, Reading, Span};

use crate::assessment::{Assessment, Detail};
use crate::check::{Decided, OptionQuestion, Silence};
use crate::checklist::{Checklist, Entry};
use crate::explanation::{Explanation, JudgmentUsed};
use crate::header::Head;
use crate::options::State;
use crate::result::{Chosen, Considered, Finding, How, JointResult};
use crate::said_elsewhere;
use crate::subject::Subject;
use crate::verdict::{Reason, Verdict};
pub(crate) use fact::{provenance, value_in_words};
pub(crate) use subject_matter::{SubjectMatter, trade_of};

/// The result of one joint, with those of its findings that are wanted.
pub(crate) fn joint(
    checklist: &Checklist<'_>,
    subject: &Subject<'_>,
    decided: &Decided<'_>,
    wanted: &dyn Fn(Verdict) -> bool,
) -> JointResult {
    let reading = checklist.reading;
    let counts = decided.counts();
    let mut notes = decided.notes.clone();
    notes.extend(said_elsewhere::notes(checklist, subject));
    JointResult {
        joint: subject.joint.to_owned(),
        mark: subject.mark.to_owned(),
        listing: listing_name(reading),
        edition: reading.header.edition.clone(),
        source_name: reading.source.name.clone(),
        source_sha256: reading.source.sha256.clone(),
        standing: checklist.standing,
        overall: counts.overall(),
        counts,
        chosen: chosen(checklist, decided),
        assumed: assumed(checklist, decided),
        notes,
        findings: findings(checklist, decided, wanted),
    }
}

/// The findings with the verdicts that are wanted, in order.
pub(crate) fn findings(
    checklist: &Checklist<'_>,
    decided: &Decided<'_>,
    wanted: &dyn Fn(Verdict) -> bool,
) -> Vec<Finding> {
    let reading = checklist.reading;
    let is_wanted = |found: &Assessment<'_>| wanted(found.verdict);
    let heads = decided.heads.iter().filter(|head| is_wanted(&head.found));
    let questions = decided.questions.iter().filter(|one| is_wanted(&one.found));
    let silences = decided.silences.iter().filter(|one| is_wanted(&one.found));
    let clauses = checklist.entries.iter().zip(&decided.clauses);
    let clauses = clauses.filter(|(_, found)| is_wanted(found));
    heads
        .map(|head| head_finding(head, reading))
        .chain(questions.map(|question| question_finding(question, checklist)))
        .chain(silences.filter_map(|silence| silence_finding(silence, checklist)))
        .chain(clauses.map(|(entry, found)| clause_finding(entry, found)))
        .collect()
}

/// What a listing is called: its designation, else its file's name.
pub(crate) fn listing_name(reading: &Reading) -> String {
    match reading.header.designation.trim() {
        "" => reading.source.name.clone(),
        designation => designation.to_owned(),
    }
}

fn chosen(checklist: &Checklist<'_>, decided: &Decided<'_>) -> Vec<Chosen> {
    let groups = checklist
        .options
        .groups
        .iter()
        .zip(&decided.selection.states)
        .enumerate();
    let reached = groups.filter(|(at, _)| decided.selection.is_reached(*at, &checklist.options));
    reached
        .map(|(_, (group, chosen))| Chosen {
            group: group.name().to_owned(),
            choice: chosen
                .state
                .choice()
                .and_then(|at| group.choices.get(at))
                .map(|choice| (*choice).to_owned()),
            how: match chosen.state {
                State::Stated(_) | State::StatedAbsent => How::Stated,
                State::Fits(_) => How::BestFit,
                State::First(_) | State::Undecided => How::Unknown,
            },
            considered: group
                .choices
                .iter()
                .zip(&chosen.tallies)
                .map(|(choice, tally)| Considered {
                    choice: (*choice).to_owned(),
                    counts: tally.counts,
                    has_evidence: tally.has_evidence,
                })
                .collect(),
        })
        .collect()
}

/// What was taken to be so: optional items that nobody spoke of, and shear that nobody asked for.
fn assumed(checklist: &Checklist<'_>, decided: &Decided<'_>) -> Vec<String> {
    let groups = checklist
        .options
        .groups
        .iter()
        .zip(&decided.selection.states)
        .enumerate();
    let left_out = groups.filter(|(at, (_, chosen))| {
        chosen.state == State::Undecided && decided.selection.is_reached(*at, &checklist.options)
    });
    let mut assumed: Vec<String> = left_out
        .map(|(_, (group, _))| format!("{} is not built", crate::check::option_words(group.name())))
        .collect();
    let shear = decided
        .heads
        .iter()
        .find(|head| head.id == "header/movement-shear");
    if shear.is_some_and(|head| head.found.reason == Reason::NotAsked && head.found.fact.is_none())
    {
        assumed.push("no movement in shear is needed".to_owned());
    }
    assumed
}

fn clause_finding(entry: &Entry<'_>, found: &Assessment<'_>) -> Finding {
    let clause = entry.clause;
    let about = SubjectMatter::of_clause(clause, entry.property);
    let requirement = requirement::of_clause(clause);
    let place = Place {
        clause: &clause.id,
        item: &clause.item,
        span: Some(clause.span),
        words: &clause.words,
        condition: clause
            .condition
            .as_ref()
            .map(|condition| condition.words.as_str()),
        option: clause.option.as_deref(),
    };
    finding(&place, &about, requirement, Some(clause), found)
}

fn head_finding(head: &Head<'_>, reading: &Reading) -> Finding {
    let about = SubjectMatter::of_property(head.property);
    let requirement = match (&head.found.detail, head.id, reading.header.width.as_ref()) {
        (Detail::Said(said), _, _) => said.requirement.clone(),
        (_, "header/width", Some(width)) => crate::header::width_requirement(width),
        _ => String::new(),
    };
    let place = Place {
        clause: head.id,
        item: "",
        span: head.span,
        words: "",
        condition: None,
        option: None,
    };
    finding(&place, &about, requirement, None, &head.found)
}

fn question_finding(question: &OptionQuestion<'_>, checklist: &Checklist<'_>) -> Finding {
    let first = checklist.entries.iter().find(|entry| {
        entry
            .memberships
            .iter()
            .any(|any_of| any_of.is_of(question.group))
    });
    let trade =
        first.and_then(|entry| SubjectMatter::of_clause(entry.clause, entry.property).trade);
    let about = SubjectMatter::of_option(&question.property, trade);
    let place = Place {
        clause: &question.id,
        item: first.map_or("", |entry| entry.clause.item.as_str()),
        span: None,
        words: "",
        condition: None,
        option: None,
    };
    finding(&place, &about, String::new(), None, &question.found)
}

fn silence_finding(silence: &Silence<'_>, checklist: &Checklist<'_>) -> Option<Finding> {
    let cases = checklist.cases.get(silence.cases)?;
    let first = checklist.entries.get(silence.first)?;
    let clauses = cases
        .clauses
        .iter()
        .filter_map(|at| checklist.entries.get(*at));
    let place = Place {
        clause: &cases.id,
        item: &first.clause.item,
        span: clauses.map(|entry| entry.clause.span).reduce(Span::join),
        words: "",
        condition: None,
        option: first.clause.option.as_deref(),
    };
    let about = SubjectMatter::of_clause(first.clause, first.property);
    Some(finding(&place, &about, String::new(), None, &silence.found))
}

/// Where a finding stands.
struct Place<'a> {
    clause: &'a str,
    item: &'a str,
    span: Option<Span>,
    words: &'a str,
    condition: Option<&'a str>,
    option: Option<&'a str>,
}

fn finding(
    place: &Place<'_>,
    about: &SubjectMatter,
    requirement: String,
    clause: Option<&Clause>,
    found: &Assessment<'_>,
) -> Finding {
    let mut notes = sentence::notes(found);
    notes.extend(found.notes.iter().cloned());
    let requirement = match &found.detail {
        Detail::Said(said) => {
            notes.extend(said.notes.iter().cloned());
            said.requirement.clone()
        }
        _ => requirement,
    };
    Finding {
        verdict: found.verdict,
        explanation: Explanation {
            clause: place.clause.to_owned(),
            item: place.item.to_owned(),
            span: place.span,
            words: place.words.to_owned(),
            property: about.property.clone(),
            title: about.title.clone(),
            sentence: sentence::of(found, about, &requirement, place.condition, clause),
            requirement,
            condition: place.condition.map(str::to_owned),
            option: place.option.map(str::to_owned),
            reason: found.reason,
            fact: fact::used(found),
            share: fact::share(found),
            margin: margin::of(found),
            missing: (found.verdict == Verdict::Open).then(|| missing::of(found, about)),
            judgment: found.judgment.map(|judgment| JudgmentUsed {
                accepted: judgment.decision == site::Decision::Accepted,
                by: judgment.by.clone(),
                when: judgment.when,
                basis: judgment.basis.clone(),
            }),
            notes,
        },
    }
}
