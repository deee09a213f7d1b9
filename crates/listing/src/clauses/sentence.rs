//! A sentence to its clauses: a bound for every number, prose for the rest.

use core::ops::Range;

use measure::Agreement;

use super::Around;
use super::against_nature::is_against_nature;
use super::bounds::{Headings, Reading, bounds};
use super::classes::{ClassNumber, class_numbers, is_all_code};
use super::context::Context;
use super::draft::{Draft, Yield};
use super::elliptic::Before;
use super::governing::{Governing, governing};
use super::introduced::Introduced;
use super::lead_in::is_lead_in;
use super::leftover::{Role, Segment, roles, segments};
use super::limit_heads::LimitHeads;
use super::prose::{prose, push_prose};
use crate::conditions::{Found, attach};
use crate::layout::Flow;
use crate::model::{Condition, WarningKind};
use crate::naming::{Mention, Name, Subject, is_place, mentions};
use crate::rules::Sentence;

/// What a sentence stands in.
pub(super) struct Set<'a> {
    pub(super) around: &'a Around,
    /// The headings of limits in its text.
    pub(super) heads: &'a LimitHeads,
}

pub(super) fn read(
    flow: &Flow,
    range: Range<usize>,
    set: &Set<'_>,
    subject: &mut Subject,
    introduced: &mut Introduced,
    found: &mut Yield,
) {
    let read = found.clauses.len();
    let governed = read_own(flow, range, set, subject, introduced, found);
    if let Some(condition) = governed {
        for draft in found.clauses.iter_mut().skip(read) {
            draft.under(&condition, None);
        }
    }
}

/// Reads the clauses of a sentence under its own conditions, and gives the one that it stands under because of what was said before it.
fn read_own(
    flow: &Flow,
    range: Range<usize>,
    &Set { around, heads }: &Set<'_>,
    subject: &mut Subject,
    introduced: &mut Introduced,
    found: &mut Yield,
) -> Option<Condition> {
    let words = flow.text().get(range.clone()).unwrap_or_default();
    let span = flow.span(range.start, range.end);
    if is_lead_in(words) {
        found.lead_ins.push(span);
        return None;
    }
    found.covered.push(span);
    let mut sentence = Sentence::new(flow, range);
    let Governing {
        found: governing,
        first_configuration,
        permitted,
        named: configurations,
    } = governing(
        &mut sentence,
        !around.options.is_empty(),
        &around.configuration_letters,
    );
    let governed = introduced.governs(&sentence, &governing);
    let own = governing.get(..first_configuration).unwrap_or_default();
    introduced.take(&sentence, own, governed.as_ref(), around);
    let attached = attach(&sentence, &governing, |index| sentence.is_bound(index));
    let mentions: Vec<Mention> = mentions(&sentence)
        .into_iter()
        .filter(|mention| !sentence.in_condition(mention.first))
        .map(|mention| mention.meant(&around.subject))
        .collect();
    let mut classes = class_numbers(&sentence);
    // What only says for which class something else holds is no class that is stated.
    classes.retain(|class| !sentence.in_condition(class.first));
    let (mut readings, mut unread) = bounds(&sentence, &Headings::of(around, heads), &attached);
    // `EI 90-H` are no hours.
    readings.retain(|reading| !is_of_a_class(&sentence, reading, &classes));
    let context = Context {
        sentence: &sentence,
        around,
        governing: &governing,
        first_configuration,
        permitted: &permitted,
        attached: &attached,
    };
    let before = &mut introduced.before;
    let (against, named): (Vec<_>, Vec<_>) = names(&context, readings, before, subject, &mentions)
        .into_iter()
        .partition(|(reading, name)| is_against_nature(&sentence, reading, name));
    unread.extend(
        against
            .iter()
            .flat_map(|(reading, _)| reading.amounts.iter()),
    );
    let (readings, given): (Vec<Reading>, Vec<Name>) = named.into_iter().unzip();
    let parts = parts(&sentence, &readings, &governing);
    for (reading, name) in readings.iter().zip(&given) {
        let draft = context.clause(reading, &parts, name);
        warn_of_pair(&sentence, reading, found);
        if let Some(other) = name.also {
            let attribute = other.attribute.replace('_', " ");
            found.clauses.push(draft.clone());
            found.clauses.push(Draft {
                property: other.name.clone(),
                attribute,
                ..draft
            });
            continue;
        }
        found.clauses.push(draft);
    }
    context.kinds(&readings, &parts, &mentions, found);
    warn_of_unread(&sentence, &unread, found);
    found.configurations.extend(configurations);
    leave_conditioned(&mut classes, &governing, first_configuration);
    context.classes(&classes, span, found);
    if readings.is_empty() && !classes.is_empty() && is_all_code(&sentence, &classes) {
        return governed;
    }
    if readings.is_empty() {
        let whole = Segment {
            first: 0,
            last: sentence.tokens.len(),
        };
        push_prose(&context, whole, subject, &mentions, found);
    } else {
        prose(&context, &parts, subject, &mentions, found);
    }
    // What only says where is nothing that is spoken of: after "at beams" nobody speaks of beams.
    let mut spoken = mentions
        .iter()
        .filter(|mention| !mention.component.is_other())
        .peekable();
    if spoken.peek().is_some() {
        let told = spoken.find(|mention| !is_place(&sentence, mention));
        subject.before = told.map(|mention| mention.component);
    }
    governed
}

/// Each number of a sentence with what it is of; the one before it may tell, and so may the sentence before.
fn names(
    context: &Context<'_, '_>,
    readings: Vec<Reading>,
    asked: &mut Before,
    subject: &Subject,
    mentions: &[Mention],
) -> Vec<(Reading, Name)> {
    let mut named: Vec<(Reading, Name)> = Vec::new();
    for reading in readings {
        let before = named.last().map(|(reading, name)| (reading, name));
        let name = context.name(&reading, before, subject, mentions);
        named.push((reading, name));
    }
    asked.complete(context.sentence, &mut named);
    asked.take(&named);
    named
}

/// A class that holds only where something else does is not the joint's rating, and of several which holds where is left to a person.
fn leave_conditioned(
    classes: &mut Vec<ClassNumber>,
    governing: &[Found],
    first_configuration: usize,
) {
    let first = classes.first().map_or(0, |class| class.first);
    let leads = matches!(governing, [only] if only.last <= first && first_configuration == 1);
    if governing.is_empty() || leads {
        return;
    }
    match classes.as_mut_slice() {
        [one] => one.property = None,
        _ => classes.clear(),
    }
}

/// Whether all amounts of a reading stand within the numbers of a class code.
fn is_of_a_class(sentence: &Sentence<'_>, reading: &Reading, classes: &[ClassNumber]) -> bool {
    let within = |index: &usize| {
        sentence.amount(*index).is_some_and(|amount| {
            classes
                .iter()
                .any(|class| class.first <= amount.first && amount.first < class.last)
        })
    };
    !reading.amounts.is_empty() && reading.amounts.iter().all(within)
}

/// The segments of a sentence, each with its role.
fn parts(
    sentence: &Sentence<'_>,
    readings: &[Reading],
    governing: &[Found],
) -> Vec<(Segment, Role)> {
    let holds_bound = |segment: &Segment| {
        readings
            .iter()
            .flat_map(|reading| &reading.amounts)
            .filter_map(|index| sentence.amount(*index))
            .any(|amount| segment.first <= amount.first && amount.first < segment.last)
    };
    let in_condition = |at: usize| {
        governing
            .iter()
            .any(|condition| condition.first <= at && at < condition.last)
    };
    let segments = segments(sentence);
    let roles = roles(sentence, &segments, holds_bound, in_condition);
    segments.into_iter().zip(roles).collect()
}

fn warn_of_unread(sentence: &Sentence<'_>, unread: &[usize], found: &mut Yield) {
    for amount in unread.iter().filter_map(|index| sentence.amount(*index)) {
        let words = amount.at.of(sentence.text);
        found.warnings.push((
            WarningKind::UnreadNumber,
            sentence.source(amount.at),
            format!("what `{words}` bounds could not be told"),
        ));
    }
}

fn warn_of_pair(sentence: &Sentence<'_>, reading: &Reading, found: &mut Yield) {
    for amount in reading
        .amounts
        .iter()
        .filter_map(|index| sentence.amount(*index))
    {
        if amount
            .second
            .as_ref()
            .is_some_and(|second| second.agreement == Agreement::InConflict)
        {
            let span = sentence.source(amount.whole);
            let words = amount.whole.of(sentence.text);
            found.warnings.push((WarningKind::DualUnitsDisagree, span, format!("`{words}` states two different values; the stricter governs until a person decides")));
        }
    }
}
