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
    /// A second property that the same number bounds: "max 25 percent compression or extension".
    pub(crate) also: Option<&'static Property>,
    pub(crate) component: String,
    pub(crate) attribute: String,
    /// Whether more than one property fitted nearly as well.
    pub(crate) doubtful: bool,
}

/// The least score with which a property is taken.
const ENOUGH: i32 = 11;
/// How far ahead of the next the best must be to be without doubt.
const CLEAR: i32 = 2;
/// What a property of a compound name loses when only the concept's own words stand beside the number.
const COMPOUND: i32 = 3;

/// Names what an amount of a sentence bounds.
pub(crate) fn name(
    sentence: &Sentence<'_>,
    index: usize,
    subject: &Subject,
    mentions: &[Mention],
) -> Name {
    let Some(amount) = sentence.amounts.get(index) else {
        return local(sentence, index, subject, mentions);
    };
    let context = Context::of(sentence, amount);
    let dimension = amount.unit.dimension();
    let weights = component_weights(sentence, amount.first, amount.last, subject, mentions);
    let spoken = cues::shared_concept(dimension, &context);
    let mut scored: Vec<(i32, &'static Property)> = Vec::new();
    for (component, weight) in &weights {
        let fitting = || {
            component
                .properties
                .iter()
                .filter(|property| fits(property, dimension))
        };
        let only = fitting().count() == 1;
        for property in fitting() {
            let cue = cue_score(property, &context);
            // The word beside the number says what it is: "24 in. o.c." is a spacing, whatever else is near.
            let other_concept = spoken.is_some_and(|(concept, spoken)| {
                !is_case_of(property, concept)
                    && cue <= spoken
                    && fitting().any(|other| is_case_of(other, concept))
            });
            if other_concept && !(bare_dimension(dimension) && only) {
                continue;
            }
            let titled = if spoken.is_none() && title_names(property, &subject.title) {
                6
            } else {
                0
            };
            let score = match cue {
                0 if only && bare_dimension(dimension) => weight + 5,
                0 if spoken.is_some_and(|(concept, _)| is_case_of(property, concept)) => weight + 4,
                0 if titled <= 0 => continue,
                0 => weight + titled,
                cue => weight + cue,
            };
            scored.push((score + named_beside(property, &context), property));
        }
    }
    scored.sort_by(|(a, x), (b, y)| b.cmp(a).then_with(|| x.name.cmp(&y.name)));
    let Some((best, property)) = scored
        .first()
        .copied()
        .filter(|(score, _)| *score >= ENOUGH)
    else {
        return local(sentence, index, subject, mentions);
    };
    let rival = scored
        .iter()
        .find(|(_, other)| other.name != property.name)
        .map_or(0, |(score, _)| *score);
    let also = scored
        .iter()
        .filter(|(score, other)| *score == best && other.name != property.name)
        .map(|(_, other)| *other)
        .find(|other| both_named(property, other, &context));
    if let Some(other) = also {
        let component = vocabulary()
            .component(&property.component)
            .map_or_else(String::new, |c| c.title.to_lowercase());
        return Name {
            property: Some(property),
            also: Some(other),
            component,
            attribute: plain(&property.attribute),
            doubtful: false,
        };
    }
    // Of two that fit as well neither is taken: the wrong property is worse than a local one.
    if best == rival {
        return Name {
            doubtful: true,
            ..local(sentence, index, subject, mentions)
        };
    }
    let component = vocabulary()
        .component(&property.component)
        .map_or_else(String::new, |c| c.title.to_lowercase());
    Name {
        property: Some(property),
        also: None,
        component,
        attribute: plain(&property.attribute),
        doubtful: best - rival < CLEAR,
    }
}

/// Whether the words after the number name both of two properties of one component: "compression or extension".
fn both_named(first: &Property, second: &Property, context: &Context) -> bool {
    let own = |property: &Property| {
        property
            .attribute
            .rsplit('_')
            .next()
            .map(str::to_owned)
            .unwrap_or_default()
    };
    first.component == second.component && context.joins(&own(first), &own(second))
}

/// Whether an item's title names the property: "Width of the seal before placing", "Depth of packing".
fn title_names(property: &Property, title: &str) -> bool {
    let lower = title.to_lowercase();
    let concept = property.concept.as_deref().unwrap_or(&property.attribute);
    lower
        .split(|c: char| !c.is_alphabetic())
        .any(|word| word == concept || word == property.attribute)
        && (property.attribute == concept
            || property
                .attribute
                .split('_')
                .all(|word| lower.contains(word)))
}

/// Whether a property is a case of a shared attribute: `end_distance` of `distance`.
fn is_case_of(property: &Property, concept: &str) -> bool {
    let own = property.concept.as_deref().unwrap_or(&property.attribute);
    own == concept
        || property.attribute == concept
        || property.attribute.ends_with(&format!("_{concept}"))
        || own.ends_with(&format!("_{concept}"))
}

/// What a property gains when the words beside the number name what sets it apart: `legs` for `leg_length`, `uppermost screws` for
/// `top_screw_distance`, `drying` for `dry_thickness`.
fn named_beside(property: &Property, context: &Context) -> i32 {
    let concept = property.concept.as_deref().unwrap_or_default();
    let own_words = property
        .attribute
        .split('_')
        .filter(|word| *word != concept && word.len() >= 3);
    let found = own_words.filter(|word| context.has_word_like(word)).count();
    2 * i32::try_from(found).unwrap_or(0).min(2)
}

/// Names what a table's column bounds, from its heading.
pub(crate) fn name_heading(heading: &str, dimension: Dimension, subject: &Subject) -> Name {
    let context = Context::of_heading(heading);
    let mentioned = mentions::components_in(heading);
    let mut scored: Vec<(i32, &'static Property)> = Vec::new();
    let components = mentioned
        .iter()
        .map(|(component, weak, _)| (*component, if *weak { 6 } else { 9 }));
    for (component, weight) in
        components.chain(subject.titles.first().map(|component| (*component, 5)))
    {
        for property in component
            .properties
            .iter()
            .filter(|property| fits(property, dimension))
        {
            let cue = cue_score(property, &context);
            if cue > 0 {
                scored.push((weight + cue, property));
            }
        }
    }
    scored.sort_by(|(a, x), (b, y)| b.cmp(a).then_with(|| x.name.cmp(&y.name)));
    let best = scored
        .first()
        .copied()
        .filter(|(score, _)| *score >= ENOUGH);
    let component = |property: &Property| {
        vocabulary()
            .component(&property.component)
            .map_or_else(String::new, |c| c.title.to_lowercase())
    };
    match best {
        Some((score, property)) => {
            let rival = scored
                .iter()
                .find(|(_, other)| other.name != property.name)
                .map_or(0, |(score, _)| *score);
            Name {
                property: Some(property),
                also: None,
                component: component(property),
                attribute: plain(&property.attribute),
                doubtful: score - rival < CLEAR,
            }
        }
        None => Name {
            property: None,
            also: None,
            component: mentioned.first().map_or_else(
                || subject.title.to_lowercase(),
                |(component, ..)| component.title.to_lowercase(),
            ),
            attribute: heading.to_lowercase(),
            doubtful: false,
        },
    }
}

/// A property's dimension, with multiples of the joint's width standing for lengths.
fn fits(property: &Property, dimension: Dimension) -> bool {
    let own = property.dimension();
    own == Some(dimension)
        || (dimension == Dimension::JointWidths && own == Some(Dimension::Length))
}

/// Dimensions that name themselves: `4 pcf` is a density whatever the words.
const fn bare_dimension(dimension: Dimension) -> bool {
    matches!(
        dimension,
        Dimension::Density
            | Dimension::Gauge
            | Dimension::MassPerLength
            | Dimension::MassPerArea
            | Dimension::Temperature
    )
}

/// How strongly the words around a number name a property, by its own cues or by those of its concept.
fn cue_score(property: &Property, context: &Context) -> i32 {
    let own = after_score(&property.cues.after, context)
        .max(before_score(&property.cues.before, context));
    let concept = property.concept.as_deref().or(Some(&property.attribute));
    let shared = concept
        .and_then(|name| vocabulary().attribute(name))
        .map_or(0, |attribute| {
            after_score(&attribute.cues.after, context)
                .max(before_score(&attribute.cues.before, context))
        });
    let onto = if property.onto.is_empty() {
        0
    } else {
        cues::onto_score(&property.onto, context)
    };
    // An overlap that says onto what needs that word, unless its own cues speak.
    if !property.onto.is_empty() && onto == 0 {
        return own.min(6);
    }
    let plain_name = concept == Some(&property.attribute);
    own.max(shared - if plain_name { 1 } else { COMPOUND })
        .max(0)
        + onto
}

/// The components that a number may be about, each with how near it is.
fn component_weights(
    sentence: &Sentence<'_>,
    first: usize,
    last: usize,
    subject: &Subject,
    mentions: &[Mention],
) -> Vec<(&'static Component, i32)> {
    let mut weights: Vec<(&'static Component, i32)> = Vec::new();
    let mut give = |component: &'static Component, weight: i32| match weights
        .iter_mut()
        .find(|(own, _)| own.name == component.name)
    {
        Some((_, held)) => *held = (*held).max(weight),
        None => weights.push((component, weight)),
    };
    let stop_between = |from: usize, to: usize| {
        (from..to).any(|at| sentence.is_sign(at, ';') || sentence.is_sign(at, ':'))
    };
    let amount_between = |from: usize, to: usize| {
        sentence
            .amounts
            .iter()
            .any(|amount| amount.first >= from && amount.last <= to)
    };
    let before = mentions
        .iter()
        .rev()
        .find(|mention| mention.last <= first && !stop_between(mention.last, first));
    if let Some(mention) = before {
        // "concrete floor" speaks of concrete, too; "wall of concrete" speaks of the wall first.
        for (component, ..) in mention
            .words
            .split(' ')
            .filter(|_| mention.words.contains(' '))
            .flat_map(mentions::components_in)
        {
            give(component, 6);
        }
        let head = mentions
            .iter()
            .rev()
            .find(|head| head.last + 1 == mention.first && sentence.is_word(head.last, "of"));
        if let Some(head) = head {
            give(head.component, 10 - head.penalty());
        }
        let near = first - mention.last <= 4;
        let weight = if near { 9 } else { 8 };
        give(mention.component, weight - mention.penalty());
    }
    let after = mentions.iter().find(|mention| mention.first >= last);
    if let Some(mention) = after
        && mention.first - last <= 6
        && !(last..mention.first).any(|at| {
            sentence.is_stop(at)
                || sentence.is_any(
                    at,
                    &[
                        "of", "from", "onto", "on", "to", "below", "above", "into", "than", "in",
                        "beyond", "between", "over", "for",
                    ],
                )
        })
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
        .and_then(|amount| {
            mentions
                .iter()
                .rev()
                .find(|mention| mention.last <= amount.first)
        })
        .map(|mention| mention.words.clone())
        .or_else(|| {
            subject
                .titles
                .first()
                .map(|component| component.title.to_lowercase())
        })
        .unwrap_or_else(|| subject.title.to_lowercase());
    let attribute = sentence
        .amounts
        .get(index)
        .map_or_else(String::new, |amount| {
            let context = Context::of(sentence, amount);
            cues::shared_attribute(amount.unit.dimension(), &context)
                .unwrap_or_else(|| context.own_words())
        });
    Name {
        property: None,
        also: None,
        component,
        attribute,
        doubtful: false,
    }
}

fn plain(attribute: &str) -> String {
    attribute.replace('_', " ")
}
