//! A component of a joint's construction.

use crate::property::Property;
use crate::trade::Trade;

/// A component, such as the packing or the runner.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Component {
    /// The name, as properties carry it: `packing`.
    pub name: String,
    /// The plain title.
    pub title: String,
    /// One sentence that defines it.
    pub definition: String,
    /// The trade that owns most of its properties.
    pub trade: Trade,
    /// Noun phrases that name this component and no other. Lower case.
    pub nouns: Vec<String>,
    /// Noun phrases that may name this component or another. Lower case.
    pub weak_nouns: Vec<String>,
    /// Its properties, in the order of the data file.
    pub properties: Vec<Property>,
}

/// A noun phrase and a component it names.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Noun<'v> {
    /// The phrase, lower case.
    pub words: &'v str,
    /// The component.
    pub component: &'v Component,
    /// Whether the phrase may name another component too.
    pub weak: bool,
}

impl Component {
    /// Whether this stands for the parts of the work that the vocabulary keeps no properties for.
    pub fn is_other(&self) -> bool {
        self.properties.is_empty()
    }

    /// Its property of this attribute.
    ///
    /// ```
    /// let packing = vocabulary::vocabulary().component("packing").unwrap();
    /// assert_eq!(packing.property("recess").unwrap().title, "Packing recess");
    /// ```
    pub fn property(&self, attribute: &str) -> Option<&Property> {
        self.properties
            .iter()
            .find(|property| property.attribute == attribute)
    }
}
