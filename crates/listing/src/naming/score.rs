//! How well each property of the components at hand fits a number.

use core::cell::OnceCell;
use std::sync::LazyLock;

use measure::Dimension;
use rustc_hash::FxHashMap;
use vocabulary::{Attribute, Component, Property, vocabulary};

use super::cues::Context;
use super::heard::Heard;
use super::title::Title;

/// The least score with which a shared attribute overrules others.
const NAMED: i32 = 7;
/// The least score with which a shared attribute names what no property does.
const AUDIBLE: i32 = 5;
/// What a property of a compound name loses when only the concept's own words stand beside the number.
const COMPOUND: i32 = 3;
/// What a lap is worth whose word stands only further off in the sentence.
const LAPPED: i32 = 3;
/// What an item's title is worth where the words beside the number say nothing.
const TITLED: i32 = 6;

/// The weight of a component that the sentence itself mentions, and not as a place, or that the item is about.
const MENTIONED: i32 = 7;

/// A property with its score.
#[derive(Debug, Clone, Copy)]
pub(super) struct Scored {
    pub(super) property: &'static Property,
    pub(super) score: i32,
    /// How near its component stands.
    pub(super) weight: i32,
    /// Whether the words tell it from others of its attribute.
    pub(super) told: bool,
}

/// What is needed to score properties for one number.
pub(super) struct Scorer<'t> {
    /// The components that the titles around name.
    titles: &'t [(&'static Component, usize)],
    context: Context,
    heard: Heard,
    dimension: Dimension,
    /// The item's title and the opening of the sentence.
    named_by: [&'t str; 2],
    /// The same in small letters, once it is asked for.
    title: OnceCell<Title>,
    /// The shared attribute that the words beside the number name.
    spoken: Option<(&'static Attribute, i32)>,
}

impl<'t> Scorer<'t> {
    pub(super) fn new(
        context: Context,
        dimension: Dimension,
        named_by: [&'t str; 2],
        titles: &'t [(&'static Component, usize)],
    ) -> Self {
        let heard = Heard::of(&context);
        let spoken = heard.concept(dimension, NAMED);
        Self {
            titles,
            context,
            heard,
            dimension,
            named_by,
            title: OnceCell::new(),
            spoken,
        }
    }

    fn title(&self) -> &Title {
        self.title.get_or_init(|| Title::of(&self.named_by))
    }

    /// Every property that fits, best first.
    pub(super) fn scores(&self, weights: Vec<(&'static Component, i32)>) -> Vec<Scored> {
        let mut scored = Vec::new();
        for (component, weight) in weights {
            let fitting: Vec<&'static Property> = component
                .properties
                .iter()
                .filter(|property| self.fits(property))
                .collect();
            let overruled = self.spoken.filter(|(concept, _)| {
                fitting
                    .iter()
                    .any(|property| kin(property).is_case(concept))
            });
            let names_itself = fitting.len() == 1 && bare_dimension(self.dimension);
            for property in fitting {
                let cue = self.cue(property, weight);
                // The word beside the number says what it is: "24 in. o.c." is a spacing, whatever else is near.
                let other = overruled.is_some_and(|(concept, spoken)| {
                    cue <= spoken && !kin(property).is_case(concept)
                });
                if other && !names_itself {
                    continue;
                }
                let fit = match cue {
                    0 if names_itself => 5,
                    cue => cue.max(self.uncued(property)),
                };
                if fit > 0 {
                    scored.push(Scored {
                        property,
                        score: weight + fit + self.named_beside(property),
                        weight,
                        told: self.is_told(property, weight),
                    });
                }
            }
        }
        best_first(scored)
    }

    /// Every property that a cue names, best first.
    pub(super) fn cued_scores(&self, weights: Vec<(&'static Component, i32)>) -> Vec<Scored> {
        let properties = weights.into_iter().flat_map(|(component, weight)| {
            component
                .properties
                .iter()
                .map(move |property| (property, weight))
        });
        let fitting = properties
            .filter(|(property, _)| self.fits(property))
            .map(|(property, weight)| (property, weight, self.cue(property, weight)));
        best_first(
            fitting
                .filter(|(.., cue)| *cue > 0)
                .map(|(property, weight, cue)| Scored {
                    property,
                    score: weight + cue,
                    weight,
                    told: true,
                })
                .collect(),
        )
    }

    /// A property's dimension, with multiples of the joint's width standing for lengths.
    fn fits(&self, property: &Property) -> bool {
        let own = property.dimension();
        own == Some(self.dimension)
            || (self.dimension == Dimension::JointWidths && own == Some(Dimension::Length))
    }

    /// How strongly the words around the number name a property, by its own cues or by those of its concept.
    fn cue(&self, property: &Property, weight: i32) -> i32 {
        let own = self.heard.property(property);
        let kin = kin(property);
        let shared = kin
            .concept
            .map_or(0, |concept| self.heard.attribute(concept));
        let onto = self.heard.onto(property);
        let loss = if kin.plain { 1 } else { COMPOUND };
        let named = own.max(shared - loss).max(0);
        // An overlap is onto something: only the word for it tells onto what.
        match (property.onto.is_empty(), onto) {
            (true, _) => named,
            (false, 0) => 0,
            // "lap 1 in. on board, 2 in. on concrete" names the lap once.
            (false, onto) if named == 0 && self.context.laps && weight >= MENTIONED => {
                LAPPED + onto
            }
            (false, _) if named == 0 => 0,
            (false, onto) => named + onto,
        }
    }

    /// Whether words beside the number, or the item's title, tell a property from others of its attribute: "24 in. o.c." is a spacing, but
    /// of screws only where they are named.
    fn is_told(&self, property: &Property, weight: i32) -> bool {
        let sheet = property.attribute == "steel_thickness" && weight >= MENTIONED;
        kin(property).plain
            || sheet
            || self.heard.tells(property)
            || self.named_beside(property) > 0
            || self.heard.onto(property) > 0
            || self.title().names(property)
            || self.title().tells(property)
    }

    /// What a property without a cue is worth: something when the shared attribute is its own, or when the item's title names it.
    fn uncued(&self, property: &Property) -> i32 {
        match self.spoken {
            Some((concept, _)) if kin(property).is_case(concept) => 4,
            None if self
                .titles
                .iter()
                .any(|(component, _)| component.name == property.component)
                && self.title().names(property) =>
            {
                TITLED + 2 * i32::try_from(property.attribute.matches('_').count()).unwrap_or(0)
            }
            _ => 0,
        }
    }

    /// What a property gains when the words beside the number name what sets it apart: `legs` for `leg_length`, `uppermost screws` for
    /// `top_screw_distance`, `drying` for `dry_thickness`.
    fn named_beside(&self, property: &Property) -> i32 {
        let own = property.concept.as_deref().unwrap_or_default();
        let words = property
            .attribute
            .split('_')
            .filter(|word| *word != own && word.len() >= 3 && *word != "lap");
        let found = words
            .filter(|word| self.context.has_word_like(word))
            .count();
        2 * i32::try_from(found).unwrap_or(0).min(2)
    }

    /// Whether the words after the number name both of two properties of one component: "compression or extension".
    pub(super) fn names_both(&self, first: &Property, second: &Property) -> bool {
        let last = |property: &Property| {
            property
                .attribute
                .rsplit('_')
                .next()
                .unwrap_or_default()
                .to_owned()
        };
        first.component == second.component && self.context.joins(&last(first), &last(second))
    }

    /// The attribute in plain words, for what no property names.
    pub(super) fn attribute(&self) -> String {
        self.spoken().unwrap_or_else(|| self.context.own_words())
    }

    /// The shared attribute that the words beside the number speak of.
    pub(super) fn spoken(&self) -> Option<String> {
        let audible = self.heard.concept(self.dimension, AUDIBLE)?;
        Some(audible.0.title.to_lowercase())
    }
}

/// By score, then by name; of one property only its best score.
fn best_first(mut scored: Vec<Scored>) -> Vec<Scored> {
    scored.sort_by(|a, b| {
        b.score
            .cmp(&a.score)
            .then(b.weight.cmp(&a.weight))
            .then_with(|| a.property.name.cmp(&b.property.name))
    });
    scored.dedup_by(|later, earlier| later.property.name == earlier.property.name);
    scored
}

/// What a property shares with others: the attribute that is its concept, and those it is a case of.
#[derive(Default)]
struct Kin {
    concept: Option<&'static Attribute>,
    cases: Vec<&'static Attribute>,
    /// Whether the property is named as its concept is, and not after a compound.
    plain: bool,
}

/// The kin of every property, by where it stands in memory.
static KIN: LazyLock<FxHashMap<usize, Kin>> = LazyLock::new(|| {
    vocabulary()
        .properties()
        .map(|property| {
            let own = concept(property);
            let cases = vocabulary()
                .attributes()
                .iter()
                .filter(|attribute| is_case_of(property, &attribute.name));
            let kin = Kin {
                concept: vocabulary().attribute(own),
                cases: cases.collect(),
                plain: property.attribute == own,
            };
            (address(property), kin)
        })
        .collect()
});

fn address(property: &Property) -> usize {
    core::ptr::from_ref(property).addr()
}

fn kin(property: &Property) -> &'static Kin {
    static NONE: Kin = Kin {
        concept: None,
        cases: Vec::new(),
        plain: false,
    };
    KIN.get(&address(property)).unwrap_or(&NONE)
}

impl Kin {
    fn is_case(&self, of: &Attribute) -> bool {
        self.cases
            .iter()
            .any(|attribute| core::ptr::eq(*attribute, of))
    }
}

pub(super) fn concept(property: &Property) -> &str {
    property.concept.as_deref().unwrap_or(&property.attribute)
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

/// Whether a property is a case of a shared attribute: `end_distance` of `distance`.
fn is_case_of(property: &Property, shared: &str) -> bool {
    let ends = |name: &str| {
        let rest = name.strip_suffix(shared);
        rest.is_some_and(|rest| rest.is_empty() || rest.ends_with('_'))
    };
    ends(concept(property)) || ends(&property.attribute)
}
