//! Sentences of an item that speak of another part of every joint than the item: "Clips. Used in joints over 4 in. wide only. Clips are 2 in. wide. *Sealant is 1/2
//! in. deep.*" What the item says of itself confines the clips; the sealant is in every joint.
//!
//! Only where the part opens the sentence and a verb, a limit or a colon follows, and where nothing of the sentence names the item's own thing: "Sealant over the clips
//! is 1/4 in. deep" stays with the clips. "It is tooled" goes on about what the sentence before it spoke of. A sentence with a case of its own that doesn't name the thing,
//! "For flat decks, sealant min 1 in. deep", may be about the joints without it.
//!
//! What it would misread: a part of the item itself that is called like one of every joint. It is then asked for in joints that don't need it.

use crate::conditions::may_be_absent;
use crate::layout::Flow;
use crate::model::Span;
use crate::naming::components_in;
use crate::sentences::sentences;

/// Parts that every joint has, whatever else is in it.
const OF_EVERY_JOINT: [&str; 10] = [
    "packing", "sealant", "coating", "seal", "fill", "floor", "wall", "deck", "blanket", "joint",
];

/// Words by which a sentence says something of the part that it opens with.
const SAYS: [&str; 17] = [
    "is", "are", "shall", "must", "to", "has", "have", "may", "extends", "fills", "min", "max",
    "minimum", "maximum", "nom", "-", "–",
];

/// Words with which a sentence tells a case of its own.
const CASES: [&str; 7] = ["in", "for", "at", "on", "where", "when", "if"];

const PRONOUNS: [&str; 4] = ["it", "its", "they", "their"];

/// The stretches of a text that are about something else than the thing, which every joint has.
pub(crate) fn other_subjects(flow: &Flow, thing: &str) -> Vec<Span> {
    if thing.trim().is_empty() {
        return Vec::new();
    }
    // A "Fill" may be the sealant of which it speaks.
    let absent = may_be_absent(thing);
    let thing = Thing::of(thing);
    let mut of_other = false;
    let mut spans = Vec::new();
    for range in sentences(flow.text()) {
        let words = flow.lower().get(range.clone()).unwrap_or_default();
        let first = words.split_whitespace().next().unwrap_or_default();
        let goes_on = of_other && PRONOUNS.contains(&first);
        let of_case = CASES.contains(&first) && words.contains([',', ':']);
        let of_part = absent && opens_with_other(words);
        of_other = !thing.is_named_in(words) && (of_part || of_case || goes_on);
        if of_other {
            spans.push(flow.span(range.start, range.end));
        }
    }
    spans
}

/// What is confined, by its words.
struct Thing {
    words: Vec<String>,
    components: Vec<&'static str>,
}

impl Thing {
    fn of(name: &str) -> Self {
        const SHORTEST: usize = 4;
        let title = name.to_lowercase();
        let words = title
            .split(|c: char| !c.is_alphanumeric())
            .map(singular)
            .filter(|word| word.len() >= SHORTEST);
        Self {
            words: words.map(str::to_owned).collect(),
            components: components_in(&title)
                .iter()
                .map(|(component, ..)| component.name.as_str())
                .collect(),
        }
    }

    fn is_named_in(&self, sentence: &str) -> bool {
        let mut words = sentence.split(|c: char| !c.is_alphanumeric()).map(singular);
        let mut components = components_in(sentence).into_iter();
        words.any(|word| self.words.iter().any(|own| own == word))
            || components.any(|(component, ..)| self.components.contains(&component.name.as_str()))
    }
}

fn singular(word: &str) -> &str {
    word.strip_suffix('s').unwrap_or(word)
}

/// Whether a sentence, in small letters, is a statement about a part of every joint.
fn opens_with_other(sentence: &str) -> bool {
    const NAME: usize = 3;
    let sentence = sentence.trim_start();
    let leads = ["the ", "max ", "min ", "maximum ", "minimum "];
    let led = leads.iter().find_map(|lead| sentence.strip_prefix(lead));
    let sentence = led.unwrap_or(sentence);
    let mut said = 0;
    let mut ends = None;
    for word in sentence.split_inclusive(' ').take(NAME + 1) {
        let bare = word.trim();
        if SAYS.contains(&bare) {
            ends = Some(said);
            break;
        }
        if bare.starts_with(|c: char| c.is_ascii_digit()) && said > 0 {
            ends = Some(said);
            break;
        }
        said += word.len();
        if bare.ends_with(':') {
            ends = Some(said);
            break;
        }
    }
    let name = ends.and_then(|end| sentence.get(..end)).unwrap_or_default();
    let named = components_in(name);
    !named.is_empty()
        && named
            .iter()
            .all(|(component, ..)| OF_EVERY_JOINT.contains(&component.name.as_str()))
}
