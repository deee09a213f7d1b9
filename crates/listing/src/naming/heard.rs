//! Which cues the words beside a number utter, looked up at once for the whole vocabulary.

use std::sync::LazyLock;

use measure::Dimension;
use rustc_hash::FxHashMap;
use vocabulary::{Attribute, Cues, Property, vocabulary};

use super::cues::Context;
use super::run::Run;

/// Who a cue speaks for.
#[derive(Debug, Clone, Copy)]
enum Owner {
    /// A property, and whether the cue is its own: words that a shared attribute uses too, as "spaced", tell nothing of which one it is.
    Property(&'static Property, bool),
    Attribute(&'static Attribute),
}

/// Every cue of the vocabulary by its words. Only looked up, never gone through, so that its order doesn't matter.
#[derive(Default)]
struct Index {
    after: FxHashMap<&'static str, Vec<Owner>>,
    before: FxHashMap<&'static str, Vec<Owner>>,
    onto: FxHashMap<&'static str, Vec<&'static Property>>,
    /// For each word that a cue begins with, how many words the longest such cue has.
    longest: FxHashMap<&'static str, usize>,
}

static INDEX: LazyLock<Index> = LazyLock::new(|| {
    let mut index = Index::default();
    for property in vocabulary().properties() {
        index.add(&property.cues, |cue| {
            Owner::Property(property, !is_shared(cue))
        });
        for noun in &property.onto {
            index.onto.entry(noun).or_default().push(property);
        }
    }
    for attribute in vocabulary().attributes() {
        index.add(&attribute.cues, |_| Owner::Attribute(attribute));
    }
    index.note_lengths();
    index
});

/// Whether a cue is one of a shared attribute, or only says that something stands somewhere.
fn is_shared(cue: &str) -> bool {
    const PLACING: &[&str] = &[
        "spaced", "located", "placed", "starting", "set", "from", "below", "above",
    ];
    PLACING.contains(&cue)
        || vocabulary().attributes().iter().any(|attribute| {
            let cues = &attribute.cues;
            cues.after.iter().chain(&cues.before).any(|own| own == cue)
        })
}

/// How many words the longest cue has that begins with a word; none, when no cue does.
pub(super) fn longest_cue(first: &str) -> usize {
    INDEX.longest.get(first).copied().unwrap_or(0)
}

impl Index {
    fn note_lengths(&mut self) {
        let cues = self
            .after
            .keys()
            .chain(self.before.keys())
            .chain(self.onto.keys());
        for cue in cues {
            let length = cue.split(' ').count();
            let first = cue.split(' ').next().unwrap_or_default();
            let longest = self.longest.entry(first).or_default();
            *longest = length.max(*longest);
        }
    }

    fn add(&mut self, cues: &'static Cues, owner: impl Fn(&str) -> Owner) {
        for cue in &cues.after {
            self.after
                .entry(cue.trim_end_matches('.'))
                .or_default()
                .push(owner(cue));
        }
        for cue in &cues.before {
            self.before
                .entry(cue.trim_end_matches('.'))
                .or_default()
                .push(owner(cue));
        }
    }
}

/// How well the words beside a number name each property and each shared attribute.
#[derive(Debug, Default)]
pub(super) struct Heard {
    properties: Vec<(&'static Property, i32)>,
    /// The properties that words of their own name.
    told: Vec<&'static Property>,
    attributes: Vec<(&'static Attribute, i32)>,
    onto: Vec<(&'static Property, i32)>,
}

impl Heard {
    pub(super) fn of(context: &Context) -> Self {
        let mut heard = Self::default();
        // "2 in. on fireproofing and 1 in. on clips": a number that says onto what is onto nothing else.
        let placed = context.is_placed();
        context.runs_before(|run| {
            heard.take(INDEX.before.get(run.words), before_score(run));
            if !placed {
                heard.take_onto(run.words, 2);
            }
        });
        // "laps wall 1 in., deck 2 in.": what stands behind belongs to the next number.
        let told = context.placed_before && !placed && !heard.onto.is_empty();
        context.runs_after(|run| {
            heard.take(INDEX.after.get(run.words), after_score(run));
            if !told {
                heard.take_onto(run.words, onto_score(run.at));
            }
        });
        // "1/2 in. onto steel and 2 in. onto concrete": what stands further off is onto something else.
        if !told && !context.is_placed_elsewhere() {
            context.runs_beyond(|run| heard.take_onto(run.words, onto_score(run.at + 8)));
        }
        heard
    }

    fn take(&mut self, owners: Option<&Vec<Owner>>, score: i32) {
        for owner in owners.into_iter().flatten() {
            match owner {
                Owner::Property(property, own) => {
                    raise(&mut self.properties, property, score);
                    if *own {
                        self.told.push(property);
                    }
                }
                Owner::Attribute(attribute) => raise(&mut self.attributes, attribute, score),
            }
        }
    }

    fn take_onto(&mut self, words: &str, score: i32) {
        for property in INDEX.onto.get(words).into_iter().flatten() {
            raise(&mut self.onto, property, score);
        }
    }

    /// How well its own cues name a property.
    pub(super) fn property(&self, property: &Property) -> i32 {
        held(&self.properties, property)
    }

    /// Whether words beside the number name a property and no other of its attribute.
    pub(super) fn tells(&self, property: &Property) -> bool {
        self.told.iter().any(|own| core::ptr::eq(*own, property))
    }

    /// How well its cues name a shared attribute.
    pub(super) fn attribute(&self, attribute: &Attribute) -> i32 {
        held(&self.attributes, attribute)
    }

    /// How well the words say that a lap reaches onto what a property is about.
    pub(super) fn onto(&self, property: &Property) -> i32 {
        held(&self.onto, property)
    }

    /// The shared attribute of a dimension that is named best, when one is named well.
    pub(super) fn concept(
        &self,
        dimension: Dimension,
        least: i32,
    ) -> Option<(&'static Attribute, i32)> {
        let fitting = self.attributes.iter().copied();
        fitting
            .filter(|(attribute, score)| {
                *score >= least && attribute.dimensions.contains(&dimension)
            })
            .max_by(|(x, a), (y, b)| a.cmp(b).then_with(|| y.name.cmp(&x.name)))
    }
}

/// Raises the score of one entry of the vocabulary. Each stands once in memory, so that its address tells it.
fn raise<T>(scores: &mut Vec<(&'static T, i32)>, entry: &'static T, score: i32) {
    match scores
        .iter_mut()
        .find(|(own, _)| core::ptr::eq(*own, entry))
    {
        Some((_, held)) => *held = (*held).max(score),
        None => scores.push((entry, score)),
    }
}

fn held<T>(scores: &[(&'static T, i32)], entry: &T) -> i32 {
    let found = scores.iter().find(|(own, _)| core::ptr::eq(*own, entry));
    found.map_or(0, |(_, score)| *score)
}

/// A noun that a lap reaches onto stands close after the number.
const fn onto_score(at: usize) -> i32 {
    match at {
        0..=16 => 5,
        17..=40 => 3,
        _ => 1,
    }
}

/// A cue after the number names it best at once after it.
fn after_score(run: &Run<'_>) -> i32 {
    let length = i32::try_from(run.length).unwrap_or(1).min(4);
    match run.between {
        0 => 7 + length,
        1 => 6 + length,
        2 | 3 => 4 + length,
        _ => 2,
    }
}

/// A cue before the number names it best directly before it; "a gap of" says what the number is, where words after it may only
/// say where.
fn before_score(run: &Run<'_>) -> i32 {
    let length = i32::try_from(run.length).unwrap_or(1).min(4);
    match run.between {
        0 if run.words.ends_with(" of") => 9 + length,
        0 => 7 + length,
        1 | 2 => 5 + length,
        3..=5 => 4 + length,
        6 | 7 => 3 + length,
        _ => 2,
    }
}
