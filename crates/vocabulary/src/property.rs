//! A property of a component.

use core::cmp::Ordering;

use measure::{Dimension, Quantity};

use crate::instrument::Instrument;
use crate::nature::Nature;
use crate::stage::Stage;
use crate::trade::Trade;

/// A property of a component, such as `packing.density`.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Property {
    /// `component.attribute`.
    pub name: String,
    /// The component's name.
    pub component: String,
    /// The attribute's name.
    pub attribute: String,
    /// The attribute concept it is a case of: `thickness` for `coating.wet_thickness`. None where the value is
    /// not a quantity.
    pub concept: Option<String>,
    /// A short title, as a column heading has it.
    pub title: String,
    /// One sentence that defines it.
    pub definition: String,
    /// What its values are.
    pub kind: ValueKind,
    /// How it comes by its value.
    pub nature: Nature,
    /// The trade that owns it.
    pub trade: Trade,
    /// When it can be seen, in the order of the work; never empty.
    pub stages: Vec<Stage>,
    /// What it is measured with; empty where nothing is measured.
    pub instruments: Vec<Instrument>,
    /// Words by which listings name it near a number.
    pub cues: Cues,
    /// For what laps or reaches onto something: the nouns of what it reaches onto.
    pub onto: Vec<String>,
    /// The least and the most that its value is in any building, wide of what anybody builds (common practice, from memory): a number outside
    /// is not of this property, whatever the words beside it. None where nothing is too little or too much.
    pub plausible: Option<(Quantity, Quantity)>,
}

/// What the values of a property are.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum ValueKind {
    /// A quantity of this dimension.
    Quantity(Dimension),
    /// One of these words.
    Text(Vec<TextValue>),
    /// Yes or no.
    Flag,
    /// A maker's product.
    Product,
}

/// One of the words that a text property may have.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct TextValue {
    /// The name, as facts and schedules carry it.
    pub name: String,
    /// The plain title.
    pub title: String,
    /// Other ways in which listings and schedules say it, lower case.
    pub synonyms: Vec<String>,
}

/// Words by which listings name an attribute where it stands near a number. Lower case.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Cues {
    /// Words before the number: "depth of", "spaced", "recessed".
    pub before: Vec<String>,
    /// Words after the number and its unit: "deep", "o.c.", "wet thickness".
    pub after: Vec<String>,
}

impl Property {
    /// The smallest difference that the coarsest of its instruments can tell at a reading: what a measurement may be off by
    /// where nobody recorded what it was taken with. None where it is measured with nothing that has a scale.
    pub fn coarsest_resolution(&self, reading: Quantity) -> Option<Quantity> {
        let resolutions = self
            .instruments
            .iter()
            .filter_map(|one| one.resolution_at(reading))
            .filter(|resolution| resolution.dimension() == reading.dimension());
        resolutions.reduce(|coarsest, other| {
            if other.compare(coarsest).is_some_and(Ordering::is_gt) {
                other
            } else {
                coarsest
            }
        })
    }

    /// Whether a value is one that it has in some building. Of a range, ask for the end that is farther from nothing.
    ///
    /// ```
    /// use measure::Quantity;
    /// let width = vocabulary::vocabulary().property("joint.width").unwrap();
    /// assert!(width.is_plausible(Quantity::parse("2 in.").unwrap()));
    /// assert!(!width.is_plausible(Quantity::parse("1/16 in.").unwrap()));
    /// ```
    pub fn is_plausible(&self, value: Quantity) -> bool {
        let Some((least, most)) = self.plausible else {
            return true;
        };
        // A gauge with the larger number is the lesser sheet: the two ends may stand either way round.
        match (least.compare(value), value.compare(most)) {
            (Some(low), Some(high)) => {
                !(low.is_gt() || high.is_gt()) || !(low.is_lt() || high.is_lt())
            }
            _ => true,
        }
    }

    /// The dimension of its quantities, if it has quantities.
    pub fn dimension(&self) -> Option<Dimension> {
        match self.kind {
            ValueKind::Quantity(dimension) => Some(dimension),
            ValueKind::Text(_) | ValueKind::Flag | ValueKind::Product => None,
        }
    }

    /// The words a text property may have; empty for every other.
    pub fn text_values(&self) -> &[TextValue] {
        match &self.kind {
            ValueKind::Text(values) => values,
            ValueKind::Quantity(_) | ValueKind::Flag | ValueKind::Product => &[],
        }
    }

    /// The word a text means, by name, title or synonym, whatever its capitals.
    ///
    /// ```
    /// let direction = vocabulary::vocabulary().property("deck.direction").unwrap();
    /// assert_eq!(direction.text_value("Perpendicular to the flutes").unwrap().name, "across");
    /// assert!(direction.text_value("sideways").is_none());
    /// ```
    pub fn text_value(&self, text: &str) -> Option<&TextValue> {
        let wanted = text.trim().to_lowercase();
        self.text_values()
            .iter()
            .find(|value| value.goes_by(&wanted))
    }

    /// The last stage at which it can be seen; after it the chance is gone.
    pub fn last_stage(&self) -> Option<Stage> {
        self.stages.iter().max().copied()
    }
}

impl TextValue {
    fn goes_by(&self, wanted: &str) -> bool {
        self.name.to_lowercase() == wanted
            || self.title.to_lowercase() == wanted
            || self.synonyms.iter().any(|synonym| synonym == wanted)
    }
}

impl Cues {
    /// Whether there are none.
    pub fn is_empty(&self) -> bool {
        self.before.is_empty() && self.after.is_empty()
    }
}
