//! One joint against one listing.
//!
//! Every clause is assessed first, whatever option it belongs to; then persons' judgments are applied; then options are
//! chosen; then the head of the listing is checked. Nothing is put in words until all of it is decided.

use listing::Reading;
use listing::confirm::ConfirmedListing;

use crate::assessment::{Assessment, Detail};
use crate::checklist::Checklist;
use crate::condition::Circumstances;
use crate::decide;
use crate::explain;
use crate::header::{self, Head};
use crate::judgments::{Judgments, Target};
use crate::options::{Kind, Selection, State};
use crate::result::{Final, JointResult, Provisional};
use crate::subject::Subject;
use crate::verdict::{Counts, Reason, Standing, Verdict};

/// Checks a joint against a draft. The result is provisional: it may change when a person confirms the reading.
pub fn check_draft(reading: &Reading, subject: &Subject<'_>) -> Provisional {
    Provisional(check(reading, subject, Standing::Provisional))
}

/// Checks a joint against a listing that named people have confirmed. Nothing else makes a final result.
pub fn check_confirmed(listing: &ConfirmedListing, subject: &Subject<'_>) -> Final {
    Final(check(listing, subject, Standing::Final))
}

fn check(reading: &Reading, subject: &Subject<'_>, standing: Standing) -> JointResult {
    let checklist = Checklist::new(reading, standing);
    checklist.explain(subject, &checklist.decide(subject))
}

impl<'a> Checklist<'a> {
    /// A draft, ready for any number of joints.
    pub fn of_draft(reading: &'a Reading) -> Self {
        Self::new(reading, Standing::Provisional)
    }

    /// A confirmed listing, ready for any number of joints.
    pub fn of_confirmed(listing: &'a ConfirmedListing) -> Self {
        Self::new(listing, Standing::Final)
    }

    /// Decides every clause at a joint, without putting anything in words.
    pub fn decide(&self, subject: &Subject<'a>) -> Decided<'a> {
        Decided::of(self, subject)
    }

    /// Puts in words what was decided of the same joint.
    pub fn explain(&self, subject: &Subject<'_>, decided: &Decided<'_>) -> JointResult {
        explain::joint(self, subject, decided)
    }
}

/// What was decided of a joint, before any words.
pub struct Decided<'a> {
    /// What the head asks.
    pub(crate) heads: Vec<Head<'a>>,
    /// What is asked about options.
    pub(crate) questions: Vec<OptionQuestion<'a>>,
    /// What is found of each clause, in listing order.
    pub(crate) clauses: Vec<Assessment<'a>>,
    pub(crate) selection: Selection<'a>,
    /// Judgments that weren't applied.
    pub(crate) notes: Vec<String>,
}

/// That nobody says which option is built.
pub(crate) struct OptionQuestion<'a> {
    pub(crate) group: usize,
    pub(crate) id: String,
    pub(crate) property: String,
    pub(crate) found: Assessment<'a>,
}

impl<'a> Decided<'a> {
    pub(crate) fn of(checklist: &Checklist<'a>, subject: &Subject<'a>) -> Self {
        let circumstances = Circumstances::new(checklist.reading, subject, &checklist.exact_tests);
        let mut clauses: Vec<Assessment<'a>> = checklist
            .entries
            .iter()
            .map(|entry| decide::clause(entry, subject, &circumstances))
            .collect();

        let mut judgments = Judgments::on(subject, checklist.reading);
        if !judgments.is_empty() {
            let target = |entry: &crate::checklist::Entry<'a>| Target {
                id: &entry.clause.id,
                item: &entry.clause.item,
                words: &entry.clause.words,
            };
            let targets: Vec<Target<'_>> = checklist.entries.iter().map(target).collect();
            judgments.apply(&targets, &mut clauses);
        }

        let selection = Selection::of(
            &checklist.options,
            &checklist.entries,
            &clauses,
            subject,
            &mut judgments,
        );
        for (entry, found) in checklist.entries.iter().zip(&mut clauses) {
            if let Some(unchosen) = left_out(checklist, &selection, entry) {
                *found = unchosen;
            }
        }

        let mut heads = header::check(checklist, &selection, subject);
        let mut questions = option_questions(checklist, &selection);
        if !judgments.is_empty() {
            judge_others(&mut judgments, &mut heads, &mut questions);
        }
        Self {
            heads,
            questions,
            clauses,
            selection,
            notes: judgments.notes(),
        }
    }

    /// Every verdict, in the order of the findings.
    pub fn verdicts(&self) -> impl Iterator<Item = Verdict> {
        let heads = self.heads.iter().map(|head| head.found.verdict);
        let questions = self.questions.iter().map(|question| question.found.verdict);
        let clauses = self.clauses.iter().map(|found| found.verdict);
        heads.chain(questions).chain(clauses)
    }

    /// How many verdicts of which kind there are.
    pub fn counts(&self) -> Counts {
        Counts::of(self.verdicts())
    }
}

/// What is found of a clause whose option isn't the chosen one.
fn left_out<'a>(
    checklist: &Checklist<'a>,
    selection: &Selection<'a>,
    entry: &crate::checklist::Entry<'a>,
) -> Option<Assessment<'a>> {
    let unchosen = selection.unchosen(&entry.memberships)?;
    let group = checklist.options.groups.get(unchosen.group)?;
    let (reason, choice) = match selection
        .state(unchosen.group)?
        .choice()
        .and_then(|at| group.choices.get(at))
    {
        Some(choice) => (Reason::NotChosen, (*choice).to_owned()),
        None => (Reason::NotBuilt, group.name().to_owned()),
    };
    Some(Assessment::plain(Verdict::NotApplicable, reason).because(Detail::Choice(choice)))
}

/// Where nobody says which option is built, and the joint could conform by that alone, it stays open.
fn option_questions<'a>(
    checklist: &Checklist<'a>,
    selection: &Selection<'a>,
) -> Vec<OptionQuestion<'a>> {
    let mut questions = Vec::new();
    for (at, (group, chosen)) in checklist
        .options
        .groups
        .iter()
        .zip(&selection.states)
        .enumerate()
    {
        if !selection.is_reached(at, &checklist.options) {
            continue;
        }
        let misread = chosen
            .fact
            .filter(|_| !matches!(chosen.state, State::Stated(_) | State::StatedAbsent));
        if misread.is_none() && !chosen.is_unfounded(group) {
            continue;
        }
        let name = group.name();
        let sentence = match (misread, group.kind) {
            (Some(fact), _) => format!(
                "`{}` is none of the listing's options for {name}.",
                fact.value
            ),
            (None, Kind::OrNothing) => format!(
                "The listing leaves it free to build {}; nobody has said whether it is built here, and if it is, its clauses apply.",
                option_words(name)
            ),
            (None, Kind::OneOf) => format!(
                "The listing offers {}; nothing that is known of the joint says which is built.",
                header::joined(group.choices.iter().map(|choice| option_words(choice)))
            ),
        };
        let found = Assessment::open(Reason::OptionUnknown).on(misread).saying(
            format!(
                "to know which of {} is built",
                header::joined(group.choices.iter().map(|one| option_words(one)))
            ),
            sentence,
        );
        questions.push(OptionQuestion {
            group: at,
            id: format!("option/{name}"),
            property: format!("option.{name}"),
            found,
        });
    }
    questions
}

/// An option's name inside a sentence: an item's path as "item 3C", any other as it is written.
pub(crate) fn option_words(name: &str) -> String {
    let is_path =
        name.chars().any(|letter| letter.is_ascii_digit()) && !name.contains(char::is_whitespace);
    if is_path {
        format!("item {name}")
    } else {
        name.to_owned()
    }
}

fn judge_others<'a>(
    judgments: &mut Judgments<'a>,
    heads: &mut [Head<'a>],
    questions: &mut [OptionQuestion<'a>],
) {
    let ids = heads.iter().map(|head| head.id.to_owned());
    let ids: Vec<String> = ids
        .chain(questions.iter().map(|question| question.id.clone()))
        .collect();
    let targets: Vec<Target<'_>> = ids
        .iter()
        .map(|id| Target {
            id,
            item: "",
            words: "",
        })
        .collect();
    let heads_found = heads.iter().map(|head| head.found.clone());
    let mut found: Vec<Assessment<'a>> = heads_found
        .chain(questions.iter().map(|question| question.found.clone()))
        .collect();
    judgments.apply(&targets, &mut found);
    let places = heads.iter_mut().map(|head| &mut head.found);
    let places = places.chain(questions.iter_mut().map(|question| &mut question.found));
    for (place, judged) in places.zip(found) {
        *place = judged;
    }
}
