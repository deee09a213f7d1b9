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
use crate::instances;
use crate::judgments::{Judgments, Target};
use crate::options::{Checked, Kind, Selection, State};
use crate::questions::{Question, questions};
use crate::result::{Final, Finding, JointResult, Provisional};
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

    /// Puts in words the verdicts that are asked for, and no other.
    pub fn findings(
        &self,
        decided: &Decided<'_>,
        wanted: &dyn Fn(Verdict) -> bool,
    ) -> Vec<Finding> {
        explain::findings(self, decided, wanted)
    }

    /// Puts in words what was decided of the same joint.
    pub fn explain(&self, subject: &Subject<'_>, decided: &Decided<'_>) -> JointResult {
        explain::joint(self, subject, decided, &|_| true)
    }

    /// What to ask whom so that nothing stays open of what was decided of the same joint. Only what is open is put in words for it.
    pub fn questions(&self, subject: &Subject<'_>, decided: &Decided<'_>) -> Vec<Question> {
        let open = explain::joint(self, subject, decided, &|verdict| verdict == Verdict::Open);
        questions([&open])
    }
}

/// What was decided of a joint, before any words.
pub struct Decided<'a> {
    /// What the head asks.
    pub(crate) heads: Vec<Head<'a>>,
    /// What is asked about options.
    pub(crate) questions: Vec<OptionQuestion<'a>>,
    /// Where an item speaks only of other cases.
    pub(crate) silences: Vec<Silence<'a>>,
    /// What is found of each clause, in listing order.
    pub(crate) clauses: Vec<Assessment<'a>>,
    pub(crate) selection: Selection<'a>,
    /// Judgments that weren't applied.
    pub(crate) notes: Vec<String>,
}

/// That an item speaks of a property only in other cases.
pub(crate) struct Silence<'a> {
    /// The place of the series among the checklist's.
    pub(crate) cases: usize,
    /// The place of its first clause.
    pub(crate) first: usize,
    pub(crate) found: Assessment<'a>,
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
        let subject = &subject.before(checklist.reading);
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

        let mut silences = silences(checklist, &clauses, &circumstances);
        let selection = Selection::of(
            &checklist.options,
            &Checked {
                entries: &checklist.entries,
                found: &clauses,
                silent: silences.iter().map(|silence| silence.first).collect(),
            },
            subject,
            &mut judgments,
        );
        silences.retain(|silence| {
            let first = checklist.entries.get(silence.first);
            first.is_some_and(|entry| selection.unchosen(&entry.memberships).is_none())
        });
        for (entry, found) in checklist.entries.iter().zip(&mut clauses) {
            if let Some(unchosen) = left_out(checklist, &selection, entry) {
                *found = unchosen;
            }
        }

        instances::tell_apart(&checklist.parted, &checklist.entries, &mut clauses);

        let mut heads = header::check(checklist, &selection, subject);
        let mut questions = option_questions(checklist, &selection);
        if !judgments.is_empty() {
            judge_others(
                checklist,
                &mut judgments,
                &mut heads,
                &mut questions,
                &mut silences,
            );
        }
        Self {
            heads,
            questions,
            silences,
            clauses,
            selection,
            notes: judgments.notes(),
        }
    }

    /// Every verdict, in the order of the findings.
    pub fn verdicts(&self) -> impl Iterator<Item = Verdict> {
        let heads = self.heads.iter().map(|head| head.found.verdict);
        let questions = self.questions.iter().map(|question| question.found.verdict);
        let silences = self.silences.iter().map(|silence| silence.found.verdict);
        let clauses = self.clauses.iter().map(|found| found.verdict);
        heads.chain(questions).chain(silences).chain(clauses)
    }

    /// How many verdicts of which kind there are.
    pub fn counts(&self) -> Counts {
        Counts::of(self.verdicts())
    }
}

/// Where an item speaks of a property only in other cases than this.
fn silences<'a>(
    checklist: &Checklist<'a>,
    found: &[Assessment<'a>],
    circumstances: &Circumstances<'a, '_>,
) -> Vec<Silence<'a>> {
    let silence = |(at, cases): (usize, &crate::cases::Cases)| {
        Some(Silence {
            cases: at,
            first: cases.clauses.first().copied()?,
            found: cases.silence(&checklist.entries, found, circumstances)?,
        })
    };
    let series = checklist.cases.iter().enumerate();
    series.filter_map(silence).collect()
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
            (None, Kind::OneOf) if chosen.is_stated_in_vain() => format!(
                "{} is said to be built, but no clause of it is for this joint: it may not be built here.",
                chosen
                    .state
                    .choice()
                    .and_then(|choice| group.choices.get(choice))
                    .map_or_else(String::new, |choice| option_words(choice))
            ),
            (None, Kind::OneOf) if group.is_of_equals() && chosen.tells_of_several() => format!(
                "The listing offers {}; what is known of the joint tells of more than one of them.",
                header::joined(group.choices.iter().map(|choice| option_words(choice)))
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
    checklist: &Checklist<'a>,
    judgments: &mut Judgments<'a>,
    heads: &mut [Head<'a>],
    questions: &mut [OptionQuestion<'a>],
    silences: &mut [Silence<'a>],
) {
    let mut ids: Vec<String> = heads.iter().map(|head| head.id.to_owned()).collect();
    ids.extend(questions.iter().map(|question| question.id.clone()));
    ids.extend(silences.iter().map(|silence| {
        let cases = checklist.cases.get(silence.cases);
        cases.map_or_else(String::new, |cases| cases.id.clone())
    }));
    // What the head asks may be named as its item and topic: item `header`, words `kind`.
    let target = |id| match str::split_once(id, '/') {
        Some((header::ITEM, topic)) => Target {
            id,
            item: header::ITEM,
            words: topic,
        },
        _ => Target {
            id,
            item: "",
            words: "",
        },
    };
    let targets: Vec<Target<'_>> = ids.iter().map(|id| target(id)).collect();
    let mut places: Vec<&mut Assessment<'a>> =
        heads.iter_mut().map(|head| &mut head.found).collect();
    places.extend(questions.iter_mut().map(|question| &mut question.found));
    places.extend(silences.iter_mut().map(|silence| &mut silence.found));
    let mut found: Vec<Assessment<'a>> = places.iter().map(|found| (**found).clone()).collect();
    judgments.apply(&targets, &mut found);
    for (place, judged) in places.into_iter().zip(found) {
        *place = judged;
    }
}
