//! What a word of the trade means.

use std::collections::BTreeMap;

use crate::attribute::Attribute;
use crate::component::Component;
use crate::data::Common;
use crate::movement::MovementClass;
use crate::nearest::nearest;
use crate::property::Property;
use crate::rating::{Rating, TemperatureLimit};
use crate::standard::Standard;
use crate::term::Term;
use crate::vocabulary::Vocabulary;

/// The answer to a word.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum GlossaryAnswer<'v> {
    /// What goes by the word; never empty. "I" is a movement class and a rating.
    Found(Vec<Entry<'v>>),
    /// Nothing goes by it.
    Unknown {
        /// The nearest known words, nearest first; empty where none is near.
        suggestions: Vec<&'v str>,
    },
}

/// One meaning of a word.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Entry<'v> {
    /// A word of the trade.
    Term(&'v Term),
    /// A component.
    Component(&'v Component),
    /// A property.
    Property(&'v Property),
    /// An attribute that components share.
    Attribute(&'v Attribute),
    /// A movement class.
    MovementClass(&'v MovementClass),
    /// A rating.
    Rating(&'v Rating),
    /// A limit of temperature rise.
    TemperatureLimit(&'v TemperatureLimit),
    /// A standard.
    Standard(&'v Standard),
}

impl Entry<'_> {
    /// The plain title.
    pub fn title(&self) -> &str {
        match self {
            Self::Term(term) => &term.title,
            Self::Component(component) => &component.title,
            Self::Property(property) => &property.title,
            Self::Attribute(attribute) => &attribute.title,
            Self::MovementClass(class) => &class.roman,
            Self::Rating(rating) => &rating.title,
            Self::TemperatureLimit(limit) => &limit.title,
            Self::Standard(standard) => &standard.number,
        }
    }

    /// The sentence that defines it.
    pub fn definition(&self) -> &str {
        match self {
            Self::Term(term) => &term.definition,
            Self::Component(component) => &component.definition,
            Self::Property(property) => &property.definition,
            Self::Attribute(attribute) => &attribute.definition,
            Self::MovementClass(class) => &class.definition,
            Self::Rating(rating) => &rating.meaning,
            Self::TemperatureLimit(limit) => &limit.definition,
            Self::Standard(standard) => &standard.subject,
        }
    }

    /// What kind of thing it is.
    pub fn kind(&self) -> &'static str {
        match self {
            Self::Term(_) => "term",
            Self::Component(_) => "component",
            Self::Property(_) => "property",
            Self::Attribute(_) => "attribute",
            Self::MovementClass(_) => "movement class",
            Self::Rating(_) => "rating",
            Self::TemperatureLimit(_) => "temperature limit",
            Self::Standard(_) => "standard",
        }
    }
}

/// Where an entry stands in the vocabulary.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Place {
    Term(usize),
    Component(usize),
    Property(usize, usize),
    Attribute(usize),
    MovementClass(usize),
    Rating(usize),
    TemperatureLimit(usize),
    Standard(usize),
}

impl Place {
    pub(crate) fn entry(self, v: &Vocabulary) -> Option<Entry<'_>> {
        Some(match self {
            Self::Term(at) => Entry::Term(v.terms().get(at)?),
            Self::Component(at) => Entry::Component(v.components().get(at)?),
            Self::Property(at, place) => {
                Entry::Property(v.components().get(at)?.properties.get(place)?)
            }
            Self::Attribute(at) => Entry::Attribute(v.attributes().get(at)?),
            Self::MovementClass(at) => Entry::MovementClass(v.movement_classes().get(at)?),
            Self::Rating(at) => Entry::Rating(v.ratings().get(at)?),
            Self::TemperatureLimit(at) => Entry::TemperatureLimit(v.temperature_limits().get(at)?),
            Self::Standard(at) => Entry::Standard(v.standards().get(at)?),
        })
    }
}

/// Every word that something goes by.
pub(crate) struct Index {
    /// From the word with its hyphens and capitals levelled to what goes by it.
    places: BTreeMap<String, Vec<Place>>,
}

/// How many words are suggested at most.
const SUGGESTIONS: usize = 5;

impl Index {
    pub(crate) fn of(components: &[Component], common: &Common) -> Self {
        let mut index = Self {
            places: BTreeMap::new(),
        };
        for (at, component) in components.iter().enumerate() {
            index.add_component(at, component);
        }
        index.add_common(common);
        index
    }

    fn add_component(&mut self, at: usize, component: &Component) {
        let place = Place::Component(at);
        self.add(&component.name, place);
        self.add(&component.title, place);
        for noun in component.nouns.iter().chain(&component.weak_nouns) {
            self.add(noun, place);
        }
        for (of_component, property) in component.properties.iter().enumerate() {
            let place = Place::Property(at, of_component);
            self.add(&property.name, place);
            self.add(&property.title, place);
        }
    }

    fn add_common(&mut self, common: &Common) {
        for (at, term) in common.terms.iter().enumerate() {
            self.add_all(
                [&term.name, &term.title].into_iter().chain(&term.synonyms),
                Place::Term(at),
            );
        }
        for (at, attribute) in common.attributes.iter().enumerate() {
            self.add_all([&attribute.name, &attribute.title], Place::Attribute(at));
        }
        for (at, class) in common.movement_classes.iter().enumerate() {
            let place = Place::MovementClass(at);
            self.add(&class.roman, place);
            self.add(&format!("class {}", class.roman), place);
            self.add(&format!("movement class {}", class.roman), place);
        }
        for (at, rating) in common.ratings.iter().enumerate() {
            self.add_all([&rating.letter, &rating.title], Place::Rating(at));
        }
        for (at, limit) in common.limits.iter().enumerate() {
            self.add_all([&limit.name, &limit.title], Place::TemperatureLimit(at));
        }
        for (at, standard) in common.standards.iter().enumerate() {
            let place = Place::Standard(at);
            self.add_all(
                [&standard.number].into_iter().chain(&standard.synonyms),
                place,
            );
            if let Some(bare) = standard.number.strip_prefix("ASTM ") {
                self.add(bare, place);
            }
        }
    }

    fn add_all<'w>(&mut self, words: impl IntoIterator<Item = &'w String>, place: Place) {
        for word in words {
            self.add(word, place);
        }
    }

    fn add(&mut self, word: &str, place: Place) {
        let places = self.places.entry(levelled(word)).or_default();
        if !places.contains(&place) {
            places.push(place);
            places.sort_unstable();
        }
    }

    pub(crate) fn places(&self, term: &str) -> &[Place] {
        self.places.get(&levelled(term)).map_or(&[], Vec::as_slice)
    }

    pub(crate) fn suggestions(&self, term: &str) -> Vec<&str> {
        let mut near = nearest(&levelled(term), self.places.keys().map(String::as_str));
        near.truncate(SUGGESTIONS);
        near
    }
}

/// The word in lower case, with hyphens and underscores as single spaces.
fn levelled(word: &str) -> String {
    let spaced = word
        .to_lowercase()
        .replace(['-', '_', '\u{2010}', '\u{2011}'], " ");
    spaced.split_whitespace().collect::<Vec<_>>().join(" ")
}
