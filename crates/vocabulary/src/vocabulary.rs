//! The whole vocabulary, with its look-ups.

use std::collections::BTreeMap;

use crate::attribute::Attribute;
use crate::component::{Component, Noun};
use crate::data::Common;
use crate::glossary::{Entry, GlossaryAnswer, Index};
use crate::movement::MovementClass;
use crate::nearest::nearest;
use crate::property::Property;
use crate::rating::{Rating, TemperatureLimit};
use crate::standard::Standard;
use crate::term::Term;

/// The vocabulary: components and their properties, shared attributes, classes, ratings, standards, terms.
pub struct Vocabulary {
    components: Vec<Component>,
    common: Common,
    /// Where each property stands: component, then place in it.
    property_places: BTreeMap<String, (usize, usize)>,
    /// Where each noun's component stands, longest noun first, then alphabetical.
    noun_places: Vec<NounPlace>,
    glossary: Index,
}

struct NounPlace {
    words: String,
    component: usize,
    weak: bool,
}

impl Vocabulary {
    pub(crate) fn new(components: Vec<Component>, common: Common) -> Self {
        Self {
            property_places: property_places(&components),
            noun_places: noun_places(&components),
            glossary: Index::of(&components, &common),
            components,
            common,
        }
    }

    /// Every component, from the joint and what it lies in to what fills it.
    pub fn components(&self) -> &[Component] {
        &self.components
    }

    /// The component of this name.
    ///
    /// ```
    /// let runner = vocabulary::vocabulary().component("runner").unwrap();
    /// assert!(runner.nouns.iter().any(|noun| noun == "deflection track"));
    /// ```
    pub fn component(&self, name: &str) -> Option<&Component> {
        self.components
            .iter()
            .find(|component| component.name == name)
    }

    /// Every property, component by component.
    pub fn properties(&self) -> impl Iterator<Item = &Property> {
        self.components
            .iter()
            .flat_map(|component| &component.properties)
    }

    /// The property of this full name.
    ///
    /// ```
    /// let density = vocabulary::vocabulary().property("packing.density").unwrap();
    /// assert_eq!(density.dimension(), Some(measure::Dimension::Density));
    /// ```
    pub fn property(&self, name: &str) -> Option<&Property> {
        let (component, place) = self.property_places.get(name)?;
        self.components.get(*component)?.properties.get(*place)
    }

    /// The property whose name is nearest to a mistyped one; none when no name is near.
    ///
    /// ```
    /// let meant = vocabulary::vocabulary().nearest_property("packing.densty").unwrap();
    /// assert_eq!(meant.name, "packing.density");
    /// assert!(vocabulary::vocabulary().nearest_property("cost centre").is_none());
    /// ```
    pub fn nearest_property(&self, name: &str) -> Option<&Property> {
        let names = self.property_places.keys().map(String::as_str);
        self.property(nearest(name, names).first()?)
    }

    /// Every noun phrase with its component, longest phrase first: a reader that takes the first match takes
    /// "mineral wool batt" for packing before it takes "batt", and "ceiling runner" before "runner".
    ///
    /// ```
    /// let mut nouns = vocabulary::vocabulary().nouns();
    /// let flutes = nouns.find(|noun| noun.words == "fluted steel floor units").unwrap();
    /// assert_eq!(flutes.component.name, "deck");
    /// ```
    pub fn nouns(&self) -> impl Iterator<Item = Noun<'_>> {
        self.noun_places.iter().filter_map(|place| {
            let component = self.components.get(place.component)?;
            Some(Noun {
                words: &place.words,
                component,
                weak: place.weak,
            })
        })
    }

    /// Every attribute that components share.
    pub fn attributes(&self) -> &[Attribute] {
        &self.common.attributes
    }

    /// The shared attribute of this name.
    ///
    /// ```
    /// let overlap = vocabulary::vocabulary().attribute("overlap").unwrap();
    /// assert!(overlap.cues.before.iter().any(|cue| cue == "lapped"));
    /// ```
    pub fn attribute(&self, name: &str) -> Option<&Attribute> {
        self.common
            .attributes
            .iter()
            .find(|attribute| attribute.name == name)
    }

    /// The movement classes, in order.
    pub fn movement_classes(&self) -> &[MovementClass] {
        &self.common.movement_classes
    }

    /// The movement class of this roman numeral.
    ///
    /// ```
    /// let wind = vocabulary::vocabulary().movement_class("II").unwrap();
    /// assert_eq!((wind.cycles(), wind.phases[0].per_minute), (500, 10));
    /// ```
    pub fn movement_class(&self, roman: &str) -> Option<&MovementClass> {
        self.common
            .movement_classes
            .iter()
            .find(|class| class.roman == roman)
    }

    /// The ratings, by their letters.
    pub fn ratings(&self) -> &[Rating] {
        &self.common.ratings
    }

    /// The rating of this letter or letters.
    ///
    /// ```
    /// let fth = vocabulary::vocabulary().rating("FTH").unwrap();
    /// assert_eq!(fth.standards, ["CAN/ULC-S115"]);
    /// ```
    pub fn rating(&self, letter: &str) -> Option<&Rating> {
        self.common
            .ratings
            .iter()
            .find(|rating| rating.letter == letter)
    }

    /// The limits of temperature rise.
    pub fn temperature_limits(&self) -> &[TemperatureLimit] {
        &self.common.limits
    }

    /// The standards, in the order of the data file.
    pub fn standards(&self) -> &[Standard] {
        &self.common.standards
    }

    /// The standard of this number, whatever its capitals, by any spelling the data knows.
    ///
    /// ```
    /// let joints = vocabulary::vocabulary().standard("ASTM E1966").unwrap();
    /// assert_eq!(joints.kind, vocabulary::StandardKind::JointTest);
    /// ```
    pub fn standard(&self, number: &str) -> Option<&Standard> {
        let same = |other: &String| other.eq_ignore_ascii_case(number.trim());
        self.common
            .standards
            .iter()
            .find(|standard| same(&standard.number) || standard.synonyms.iter().any(same))
    }

    /// The words and abbreviations of the trade.
    pub fn terms(&self) -> &[Term] {
        &self.common.terms
    }

    /// What goes by a word; empty where nothing does.
    pub(crate) fn entries(&self, term: &str) -> impl Iterator<Item = Entry<'_>> {
        let places = self.glossary.places(term).iter();
        places.filter_map(|place| place.entry(self))
    }

    /// What a word of the trade means: every component, property, class, rating, standard or term that goes by it,
    /// whatever its capitals and hyphens; the nearest known words where nothing does.
    ///
    /// ```
    /// use vocabulary::GlossaryAnswer;
    /// let GlossaryAnswer::Found(entries) = vocabulary::vocabulary().glossary("Forming Material") else {
    ///     panic!("a word of the trade")
    /// };
    /// assert_eq!(entries[0].title(), "Packing");
    /// ```
    pub fn glossary(&self, term: &str) -> GlossaryAnswer<'_> {
        let entries: Vec<Entry<'_>> = self
            .glossary
            .places(term)
            .iter()
            .filter_map(|place| place.entry(self))
            .collect();
        if entries.is_empty() {
            return GlossaryAnswer::Unknown {
                suggestions: self.glossary.suggestions(term),
            };
        }
        GlossaryAnswer::Found(entries)
    }
}

fn property_places(components: &[Component]) -> BTreeMap<String, (usize, usize)> {
    let mut places = BTreeMap::new();
    for (at, component) in components.iter().enumerate() {
        for (place, property) in component.properties.iter().enumerate() {
            places.insert(property.name.clone(), (at, place));
        }
    }
    places
}

fn noun_places(components: &[Component]) -> Vec<NounPlace> {
    let mut places = Vec::new();
    for (at, component) in components.iter().enumerate() {
        let strong = component.nouns.iter().map(|words| (words, false));
        let weak = component.weak_nouns.iter().map(|words| (words, true));
        for (words, weak) in strong.chain(weak) {
            places.push(NounPlace {
                words: words.clone(),
                component: at,
                weak,
            });
        }
    }
    places.sort_by(|a, b| {
        b.words
            .len()
            .cmp(&a.words.len())
            .then_with(|| a.words.cmp(&b.words))
            .then(a.weak.cmp(&b.weak))
    });
    places
}
