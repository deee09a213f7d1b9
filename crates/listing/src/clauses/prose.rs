//! What no number accounts for becomes prose, for a person.

use super::context::Context;
use super::draft::{Draft, Yield, local_property};
use super::leftover::{Role, Segment};
use super::reference::reference;
use crate::conditions::{Found, opens};
use crate::model::{Condition, Confidence, Expr, Requirement};
use crate::naming::{Mention, Subject};

/// What no number accounts for becomes prose.
pub(super) fn prose(
    context: &Context<'_, '_>,
    parts: &[(Segment, Role)],
    subject: &Subject,
    mentions: &[Mention],
    found: &mut Yield,
) {
    for run in parts.chunk_by(|(_, one), (_, next)| (*one == Role::Prose) == (*next == Role::Prose))
    {
        if let (Some((first, Role::Prose)), Some((last, _))) = (run.first(), run.last()) {
            let run = Segment {
                first: first.first,
                last: last.last,
            };
            push_prose(context, run, subject, mentions, found);
        }
    }
}

pub(super) fn push_prose(
    context: &Context<'_, '_>,
    segment: Segment,
    subject: &Subject,
    mentions: &[Mention],
    found: &mut Yield,
) {
    let sentence = context.sentence;
    let first = if sentence.is_any(segment.first, &["and", "but"]) {
        segment.first + 1
    } else {
        segment.first
    };
    let words = sentence.words(first, segment.last);
    if words
        .trim_matches(|c: char| !c.is_alphanumeric())
        .is_empty()
    {
        return;
    }
    let mut known = mentions
        .iter()
        .filter(|mention| !mention.component.is_other());
    let mention = known
        .clone()
        .find(|mention| mention.first >= first && mention.first < segment.last)
        .or_else(|| known.next());
    let component = mention
        .map(|mention| mention.component)
        .or_else(|| subject.titles.first().map(|(component, _)| *component));
    let reference = reference(sentence).filter(|_| segment.first == 0);
    let (requirement, rule, confidence) = match reference {
        Some(to) => (
            Requirement::Reference { to },
            "reference",
            Confidence::ByRule,
        ),
        None => (Requirement::Prose, "left as words", Confidence::Prose),
    };
    let governing: Vec<&Found> = context
        .governing
        .iter()
        .take(context.first_configuration)
        .filter(|condition| {
            condition.first >= segment.first
                && condition.last <= segment.last
                && (condition.first == segment.first || condition.last == segment.last)
        })
        .collect();
    // "2 Hr rating only." is what an alternate is confined to, and a condition that is all the words has swallowed what it asks for: as a condition of
    // itself it would ask nothing where it isn't kept.
    let is_all = |condition: &&Found| {
        let opens = condition.first <= first
            || condition.first == first + 1
                && (sentence.is_word(first, "only")
                    || sentence
                        .token(first)
                        .is_some_and(|token| token.word().is_none()));
        opens && condition.last + 1 >= segment.last
    };
    let confines = governing.first().is_some_and(is_all);
    let condition = governing
        .first()
        .filter(|_| !confines)
        .map(|condition| Condition {
            also: Vec::new(),
            words: sentence.words(condition.first, condition.last).to_owned(),
            span: sentence.source_of(condition.first, condition.last),
            expr: condition.expr.clone(),
        });
    let mut options = context.around.options.clone();
    let named = named(context, segment);
    if let Some(name) = named {
        options.retain(|option| Some(option) != context.around.headed.as_ref());
        if !options.contains(name) {
            options.push(name.clone());
        }
    }
    found.clauses.push(Draft {
        span: sentence.source_of(first, segment.last),
        property: local_property(&context.around.item, words),
        component: component.map_or_else(
            || subject.title.to_lowercase(),
            |component| component.title.to_lowercase(),
        ),
        attribute: "words".to_owned(),
        requirement,
        condition,
        options,
        read_by: vec![rule.to_owned()],
        confidence,
    });
}

/// The configuration that words stand under: the one that they name, else the last that leads to them.
fn named<'c>(context: &'c Context<'_, '_>, segment: Segment) -> Option<&'c String> {
    let sentence = context.sentence;
    let configurations = context.governing.iter().skip(context.first_configuration);
    let mut all = configurations.filter_map(|found| match &found.expr {
        Expr::Words(name) => Some((found, name)),
        _ => None,
    });
    let own = |found: &Found| found.first >= segment.first && found.last <= segment.last;
    let mut within = all.clone().filter(|(found, _)| own(found));
    let first = within.next();
    let edges = |found: &Found| {
        found.first <= segment.first + 1
            || found.last + 1 >= segment.last
            || opens(sentence, context.governing, found)
    };
    match first {
        // What words with two of them say of which is for a person.
        Some(_) if within.next().is_some() => None,
        Some((found, name)) => edges(found).then_some(name),
        None => all
            .rfind(|(found, _)| found.last <= segment.first)
            .filter(|(found, _)| opens(sentence, context.governing, found))
            .map(|(_, name)| name),
    }
}
