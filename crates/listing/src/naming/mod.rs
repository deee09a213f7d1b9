//! Step 5, second layer: which property a number bounds.
//!
//! The vocabulary names components by their nouns and attributes by the words beside a number. Where both fit, the
//! number stands on `component.attribute`; where they don't, it stands on a property local to its item, under the
//! listing's own words, and is checkable all the same. A property is only taken when a cue beside the number names it, or
//! when the component has but one property of that dimension: the wrong property is worse than a local one.

mod cues;
mod mentions;

use measure::Dimension;
use vocabulary::{Component, Property, vocabulary};

pub(crate) use mentions::{Mention, components_in, mentions};

use crate::rules::Sentence;
use cues::{Context, after_score, before_score};

/// What the item around a sentence is about.
#[derive(Debug, Clone, Default)]
pub(crate) struct Subject {
    /// Components that the titles of the item and of those around it name, innermost first.
    pub(crate) titles: Vec<&'static Component>,
    /// The item's title in plain words.
    pub(crate) title: String,
    /// The component that the sentence before was about.
    pub(crate) before: Option<&'static Component>,
}

/// What a number bounds.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Name {
    pub(crate) property: Option<&'static Property>,
    pub(crate) component: String,
    pub(crate) attribute: String,
    /// Whether more than one property fitted nearly as well.
    pub(crate) doubtful: bool,
}

/// The least score with which a property is taken.
const ENOUGH: i32 = 11;
/// How far ahead of the next the best must be to be without doubt.
const CLEAR: i32 = 2;

/// Names what an amount of a sentence bounds.
pub(crate) fn name(sentence: &Sentence<'_>, index: usize, subject: &Subject, mentions: &[Mention]) -> Name {
    let Some(amount) = sentence.amounts.get(index) else {
        return local(sentence, index, subject, mentions);
    };
    let context = Context::of(sentence, amount);
    let dimension = amount.unit.dimension();
    let weights = component_weights(sentence, amount.first, amount.last, subject, mentions);
    let mut scored: Vec<(i32, &'static Property)> = Vec::new();
    for (component, weight) in &weights {
        let fitting = || component.properties.iter().filter(|property| fits(property, dimension));
        let only = fitting().count() == 1;
        for property in fitting() {
            let cue = cue_score(property, &context);
            let score = match cue {
                0 if only && bare_dimension(dimension) => weight + 5,
                0 => continue,
                cue => weight + cue,
            };
            scored.push((score, property));
        }
    }
    scored.sort_by(|(a, x), (b, y)| b.cmp(a).then_with(|| x.name.cmp(&y.name)));
    let Some((best, property)) = scored.first().copied().filter(|(score, _)| *score >= ENOUGH) else {
        return local(sentence, index, subject, mentions);
    };
    let rival = scored.iter().find(|(_, other)| other.name != property.name).map_or(0, |(score, _)| *score);
    let component = vocabulary().component(&property.component).map_or_else(String::new, |c| c.title.to_lowercase());
    Name { property: Some(property), component, attribute: plain(&property.attribute), doubtful: best - rival < CLEAR }
}

/// Names what a table's column bounds, from its heading.
pub(crate) fn name_heading(heading: &str, dimension: Dimension, subject: &Subject) -> Name {
    let context = Context::of_heading(heading);
    let mentioned = mentions::components_in(heading);
    let mut scored: Vec<(i32, &'static Property)> = Vec::new();
    let components = mentioned.iter().map(|(component, weak, _)| (*component, if *weak { 6 } else { 9 }));
    for (component, weight) in components.chain(subject.titles.first().map(|component| (*component, 5))) {
        for property in component.properties.iter().filter(|property| fits(property, dimension)) {
            let cue = cue_score(property, &context);
            if cue > 0 {
                scored.push((weight + cue, property));
            }
        }
    }
    scored.sort_by(|(a, x), (b, y)| b.cmp(a).then_with(|| x.name.cmp(&y.name)));
    let best = scored.first().copied().filter(|(score, _)| *score >= ENOUGH);
    let component = |property: &Property| vocabulary().component(&property.component).map_or_else(String::new, |c| c.title.to_lowercase());
    match best {
        Some((score, property)) => {
            let rival = scored.iter().find(|(_, other)| other.name != property.name).map_or(0, |(score, _)| *score);
            Name { property: Some(property), component: component(property), attribute: plain(&property.attribute), doubtful: score - rival < CLEAR }
        }
        None => Name {
            property: None,
            component: mentioned.first().map_or_else(|| subject.title.to_lowercase(), |(component, ..)| component.title.to_lowercase()),
            attribute: heading.to_lowercase(),
            doubtful: false,
        },
    }
}

/// A property's dimension, with multiples of the joint's width standing for lengths.
fn fits(property: &Property, dimension: Dimension) -> bool {
    let own = property.dimension();
    own == Some(dimension) || (dimension == Dimension::JointWidths && own == Some(Dimension::Length))
}

/// Dimensions that name themselves: `4 pcf` is a density whatever the words.
const fn bare_dimension(dimension: Dimension) -> bool {
    matches!(dimension, Dimension::Density | Dimension::Gauge | Dimension::MassPerLength | Dimension::MassPerArea)
}

/// How strongly the words around a number name a property, by its own cues or by those of its concept.
fn cue_score(property: &Property, context: &Context) -> i32 {
    let own = after_score(&property.cues.after, context).max(before_score(&property.cues.before, context));
    let concept = property.concept.as_deref().or(Some(&property.attribute));
    let shared = concept.and_then(|name| vocabulary().attribute(name)).map_or(0, |attribute| {
        after_score(&attribute.cues.after, context).max(before_score(&attribute.cues.before, context))
    });
    let onto = if property.onto.is_empty() { 0 } else { cues::onto_score(&property.onto, context) };
    // An overlap that says onto what needs that word, unless its own cues speak.
    if !property.onto.is_empty() && onto == 0 {
        return own.min(6);
    }
    own.max(shared - 1) + onto
}

/// The components that a number may be about, each with how near it is.
fn component_weights(sentence: &Sentence<'_>, first: usize, last: usize, subject: &Subject, mentions: &[Mention]) -> Vec<(&'static Component, i32)> {
    let mut weights: Vec<(&'static Component, i32)> = Vec::new();
    let mut give = |component: &'static Component, weight: i32| {
        match weights.iter_mut().find(|(own, _)| own.name == component.name) {
            Some((_, held)) => *held = (*held).max(weight),
            None => weights.push((component, weight)),
        }
    };
    let stop_between = |from: usize, to: usize| (from..to).any(|at| sentence.is_sign(at, ';') || sentence.is_sign(at, ':'));
    let amount_between = |from: usize, to: usize| sentence.amounts.iter().any(|amount| amount.first >= from && amount.last <= to);
    let before = mentions.iter().rev().find(|mention| mention.last <= first && !stop_between(mention.last, first));
    if let Some(mention) = before {
        let near = first - mention.last <= 4;
        let weight = if near { 9 } else { 8 };
        give(mention.component, weight - mention.penalty());
    }
    let after = mentions.iter().find(|mention| mention.first >= last);
    if let Some(mention) = after
        && mention.first - last <= 6
        && !(last..mention.first).any(|at| sentence.is_stop(at) || sentence.is_any(at, &["of", "from", "onto", "on", "to", "below", "above", "into", "than", "in", "beyond", "between", "over", "for"]))
        && !amount_between(last, mention.first)
    {
        give(mention.component, 10 - mention.penalty());
    }
    if let Some(mention) = mentions.first().filter(|mention| mention.last <= first) {
        give(mention.component, 8 - mention.penalty());
    }
    for (depth, component) in subject.titles.iter().enumerate() {
        give(component, 7 - 2 * i32::try_from(depth).unwrap_or(3).min(3));
    }
    if mentions.is_empty()
        && let Some(component) = subject.before
    {
        give(component, 7);
    }
    weights
}

/// A name of the item's own, in the listing's words.
fn local(sentence: &Sentence<'_>, index: usize, subject: &Subject, mentions: &[Mention]) -> Name {
    let component = sentence
        .amounts
        .get(index)
        .and_then(|amount| mentions.iter().rev().find(|mention| mention.last <= amount.first))
        .map(|mention| mention.words.clone())
        .or_else(|| subject.titles.first().map(|component| component.title.to_lowercase()))
        .unwrap_or_else(|| subject.title.to_lowercase());
    let attribute = sentence.amounts.get(index).map_or_else(String::new, |amount| {
        let context = Context::of(sentence, amount);
        cues::shared_attribute(amount.unit.dimension(), &context).unwrap_or_else(|| context.own_words())
    });
    Name { property: None, component, attribute, doubtful: false }
}

fn plain(attribute: &str) -> String {
    attribute.replace('_', " ")
}
