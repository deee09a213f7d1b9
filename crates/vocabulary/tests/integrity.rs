//! The data hold together: names are unique, what they point to exists, words are in the form readers expect.

use std::collections::{BTreeMap, BTreeSet};

use measure::{Dimension, Quantity, Unit};
use vocabulary::{Nature, Property, Stage, ValueKind, vocabulary};

fn assert_none(what: &str, faults: impl IntoIterator<Item = String>) {
    let faults: Vec<_> = faults.into_iter().collect();
    assert!(faults.is_empty(), "{what}:\n{}", faults.join("\n"));
}

fn repeated<'w>(words: impl Iterator<Item = &'w str>) -> Vec<String> {
    let mut seen = BTreeSet::new();
    words
        .filter(|word| !seen.insert(*word))
        .map(str::to_owned)
        .collect()
}

fn faults(at_fault: impl Fn(&Property) -> bool) -> Vec<String> {
    vocabulary()
        .properties()
        .filter(|p| at_fault(p))
        .map(|p| p.name.clone())
        .collect()
}

fn is_sentence(text: &str) -> bool {
    text.chars()
        .next()
        .is_some_and(|c| c.is_uppercase() || c == '(')
        && text.ends_with('.')
}

#[test]
fn there_is_a_vocabulary_worth_the_name() {
    assert!(vocabulary().components().len() >= 19);
    assert!(vocabulary().properties().count() >= 85);
}

#[test]
fn names_are_unique() {
    let v = vocabulary();
    assert_none(
        "components",
        repeated(v.components().iter().map(|c| c.name.as_str())),
    );
    assert_none(
        "properties",
        repeated(v.properties().map(|p| p.name.as_str())),
    );
    assert_none(
        "property titles",
        repeated(v.properties().map(|p| p.title.as_str())),
    );
    assert_none(
        "attributes",
        repeated(v.attributes().iter().map(|a| a.name.as_str())),
    );
    assert_none(
        "ratings",
        repeated(v.ratings().iter().map(|r| r.letter.as_str())),
    );
    assert_none(
        "limits",
        repeated(v.temperature_limits().iter().map(|l| l.name.as_str())),
    );
    assert_none("terms", repeated(v.terms().iter().map(|t| t.name.as_str())));
    let numbers = v
        .standards()
        .iter()
        .flat_map(|s| [&s.number].into_iter().chain(&s.synonyms));
    assert_none("standards", repeated(numbers.map(String::as_str)));
}

#[test]
fn names_are_snake_case() {
    let snake = |name: &str| name.bytes().all(|b| b.is_ascii_lowercase() || b == b'_');
    assert_none(
        "properties",
        faults(|p| !snake(&p.attribute) || !snake(&p.component)),
    );
}

#[test]
fn every_component_and_property_is_defined_in_one_sentence() {
    assert_none(
        "properties",
        faults(|p| p.title.is_empty() || !is_sentence(&p.definition)),
    );
    for component in vocabulary().components() {
        assert!(is_sentence(&component.definition), "{}", component.name);
    }
}

#[test]
fn every_property_has_stages_in_the_order_of_the_work() {
    let ordered = |stages: &[Stage]| stages.windows(2).all(|pair| pair[0] < pair[1]);
    assert_none(
        "stages",
        faults(|p| p.stages.is_empty() || !ordered(&p.stages)),
    );
}

#[test]
fn every_quantity_has_a_cue() {
    let quantity = |p: &Property| p.dimension().is_some();
    assert_none("cues", faults(|p| quantity(p) && p.cues.is_empty()));
}

#[test]
fn every_instrument_measures_its_property() {
    let mut wrong = Vec::new();
    for property in vocabulary().properties() {
        let measured = match property.dimension() {
            Some(Dimension::Temperature) => Some(Dimension::TemperatureDifference),
            dimension => dimension,
        };
        for instrument in &property.instruments {
            let steps = instrument.steps.iter().map(|step| step.step);
            for resolution in instrument.resolution.into_iter().chain(steps) {
                let positive = !resolution.number.is_zero() && !resolution.number.is_negative();
                if Some(resolution.dimension()) != measured || !positive {
                    wrong.push(format!("{}: {}", property.name, instrument.name));
                }
            }
        }
    }
    assert_none("instruments", wrong);
}

#[test]
fn an_instrument_with_steps_falls_back_on_its_coarsest() {
    for property in vocabulary().properties() {
        for instrument in &property.instruments {
            for pair in instrument.steps.windows(2) {
                assert!(
                    pair[0].up_to.compare(pair[1].up_to).unwrap().is_lt(),
                    "{}",
                    property.name
                );
            }
            for step in &instrument.steps {
                let coarsest = instrument
                    .resolution
                    .expect("a resolution beyond the steps");
                assert!(
                    step.step.compare(coarsest).unwrap().is_lt(),
                    "{}",
                    property.name
                );
            }
        }
    }
}

#[test]
fn what_is_measured_in_place_has_an_instrument_or_is_not_a_length() {
    let bare = |p: &Property| {
        p.nature == Nature::Dimension
            && p.dimension() == Some(Dimension::Length)
            && p.instruments.is_empty()
    };
    assert_none("instruments", faults(bare));
}

#[test]
fn nature_agrees_with_kind() {
    let wrong = |p: &Property| match p.kind {
        ValueKind::Quantity(Dimension::Count) => p.nature != Nature::Count,
        ValueKind::Quantity(_) => !matches!(p.nature, Nature::Product | Nature::Dimension),
        ValueKind::Text(_) | ValueKind::Flag => p.nature != Nature::Text,
        ValueKind::Product => p.nature != Nature::Named,
    };
    assert_none("nature", faults(wrong));
}

#[test]
fn gauges_and_screw_sizes_are_bought() {
    let sized =
        |p: &Property| matches!(p.dimension(), Some(Dimension::Gauge | Dimension::ScrewSize));
    assert_none(
        "nature",
        faults(|p| sized(p) && p.nature != Nature::Product),
    );
}

#[test]
fn every_quantity_is_a_case_of_a_shared_attribute_of_its_dimension() {
    let wrong = |p: &Property| {
        let Some(dimension) = p.dimension() else {
            return p.concept.is_some();
        };
        let attribute = p
            .concept
            .as_deref()
            .and_then(|name| vocabulary().attribute(name));
        !attribute.is_some_and(|attribute| attribute.dimensions.contains(&dimension))
    };
    assert_none("concepts", faults(wrong));
}

#[test]
fn text_properties_have_words_each_meaning_one_thing() {
    let wrong = |p: &Property| {
        let ValueKind::Text(values) = &p.kind else {
            return false;
        };
        let words = values.iter().flat_map(|v| {
            // A name may be repeated among its own synonyms, in other spelling only.
            let own = v
                .synonyms
                .iter()
                .filter(|s| **s != v.name)
                .map(String::as_str);
            own.chain([v.name.as_str()])
        });
        values.is_empty() || !repeated(words).is_empty()
    };
    assert_none("values", faults(wrong));
}

#[test]
fn words_are_lower_case_and_trimmed() {
    let plain =
        |word: &String| *word == word.to_lowercase() && *word == word.trim() && !word.is_empty();
    let wrong = |p: &Property| {
        let synonyms = p.text_values().iter().flat_map(|value| &value.synonyms);
        let cues = p.cues.before.iter().chain(&p.cues.after);
        !synonyms.chain(cues).chain(&p.onto).all(plain)
    };
    assert_none("words", faults(wrong));
    for component in vocabulary().components() {
        let nouns = component.nouns.iter().chain(&component.weak_nouns);
        assert!(nouns.clone().all(plain), "nouns of {}", component.name);
    }
    for attribute in vocabulary().attributes() {
        let cues = attribute.cues.before.iter().chain(&attribute.cues.after);
        assert!(cues.clone().all(plain), "cues of {}", attribute.name);
    }
}

#[test]
fn no_cue_swallows_a_qualifier() {
    // "min", "at least" and the like say how a number bounds, never what it is of: a cue that took one in
    // would hide the bound.
    const QUALIFIERS: &[&str] = &[
        "min",
        "max",
        "nom",
        "minimum",
        "maximum",
        "nominal",
        "at least",
        "at most",
        "not less than",
        "not more than",
        "up to",
        "about",
        "exactly",
        "between",
        "a",
        "an",
        "the",
        "in",
        "on",
        "at",
        "by",
        "of",
        "and",
        "or",
        "to",
        "with",
    ];
    const WITHIN: &[&str] = &["min", "max", "nom", "minimum", "maximum", "nominal"];
    let qualifier = |cue: &String| {
        QUALIFIERS.contains(&cue.as_str()) || cue.split(' ').any(|word| WITHIN.contains(&word))
    };
    assert_none(
        "cues",
        faults(|p| p.cues.before.iter().chain(&p.cues.after).any(qualifier)),
    );
}

#[test]
fn a_strong_noun_names_one_component() {
    let mut owners: BTreeMap<&str, BTreeSet<&str>> = BTreeMap::new();
    for noun in vocabulary().nouns().filter(|noun| !noun.weak) {
        owners
            .entry(noun.words)
            .or_default()
            .insert(&noun.component.name);
    }
    let shared = owners.iter().filter(|(_, components)| components.len() > 1);
    assert_none(
        "nouns",
        shared.map(|(noun, components)| format!("{noun}: {components:?}")),
    );

    let weak = vocabulary()
        .nouns()
        .filter(|noun| noun.weak && owners.contains_key(noun.words));
    assert_none("weak and strong", weak.map(|noun| noun.words.to_owned()));
}

#[test]
fn nouns_are_listed_once_and_longest_first() {
    for component in vocabulary().components() {
        let nouns = component.nouns.iter().chain(&component.weak_nouns);
        assert_none(&component.name, repeated(nouns.map(String::as_str)));
    }
    let lengths: Vec<_> = vocabulary().nouns().map(|noun| noun.words.len()).collect();
    assert!(lengths.windows(2).all(|pair| pair[0] >= pair[1]));
}

#[test]
fn what_laps_laps_onto_something_known() {
    let nouns: BTreeSet<_> = vocabulary().nouns().map(|noun| noun.words).collect();
    // Words for whatever stands beside the joint, which are no component's.
    let surroundings = [
        "adjacent surfaces",
        "adjacent substrates",
        "adjacent construction",
        "both sides of the joint",
        "each side of the joint",
        "surfaces",
    ];
    let known = |target: &String| {
        nouns.contains(target.as_str()) || surroundings.contains(&target.as_str())
    };
    assert_none("onto", faults(|p| !p.onto.iter().all(known)));
    let laps = |p: &Property| {
        p.concept.as_deref() == Some("overlap") && !p.attribute.starts_with("splice")
    };
    assert_none("overlaps", faults(|p| laps(p) == p.onto.is_empty()));
}

#[test]
fn the_coating_knows_each_part_it_laps_by_one_property() {
    let coating = vocabulary().component("coating").unwrap();
    let targets = coating
        .properties
        .iter()
        .flat_map(|property| &property.onto);
    assert_none("onto", repeated(targets.map(String::as_str)));
}

#[test]
fn standards_cited_are_known() {
    for rating in vocabulary().ratings() {
        for number in &rating.standards {
            assert!(
                vocabulary().standard(number).is_some(),
                "{}: {number}",
                rating.letter
            );
        }
    }
}

#[test]
fn every_claim_has_a_source() {
    let v = vocabulary();
    assert!(
        v.movement_classes()
            .iter()
            .all(|class| !class.source.is_empty())
    );
    assert!(v.ratings().iter().all(|rating| !rating.source.is_empty()));
    assert!(
        v.temperature_limits()
            .iter()
            .all(|limit| !limit.source.is_empty())
    );
    assert!(
        v.standards()
            .iter()
            .all(|standard| !standard.source.is_empty())
    );
}

#[test]
fn limits_of_temperature_are_rises() {
    // ASTM E814: 325 °F of rise is 181 K, as rounded; never the 163 °C of a temperature of 325 °F.
    let single = vocabulary()
        .temperature_limits()
        .iter()
        .find(|l| l.name == "single-point-rise");
    let single = single.unwrap();
    assert_eq!(single.rise.unit, Unit::FahrenheitRise);
    let kelvin = single.rise.to(Unit::KelvinRise).unwrap();
    assert_eq!(kelvin.number.to_decimal(0), "181");
    for limit in vocabulary().temperature_limits() {
        assert_eq!(
            limit.rise.dimension(),
            Dimension::TemperatureDifference,
            "{}",
            limit.name
        );
        if let Some(metric) = limit.rise_metric {
            let rise = limit.rise.to(metric.unit).unwrap();
            assert_eq!(
                rise.number.to_decimal(0),
                metric.number.to_decimal(0),
                "{}",
                limit.name
            );
        }
    }
}

/// Where nobody says what a thing was measured with, no instrument it is measured with may be coarser than is assumed.
#[test]
fn no_instrument_is_coarser_than_the_coarsest() {
    let coarser = |p: &Property| {
        let reading = Quantity::parse("1 in.").unwrap();
        let coarsest = p.coarsest_resolution(reading);
        p.dimension() == Some(Dimension::Length)
            && p.instruments.iter().any(|one| {
                one.resolution_at(reading).is_some_and(|resolution| {
                    coarsest.is_none_or(|most| resolution.compare(most).unwrap().is_gt())
                })
            })
    };
    assert_none("resolutions", faults(coarser));
    let width = vocabulary().property("joint.width").unwrap();
    let assumed = width.coarsest_resolution(Quantity::parse("1 in.").unwrap());
    assert_eq!(assumed, Some(Quantity::parse("1/16 in.").unwrap()));
}

#[test]
fn what_is_plausible_has_two_ends_of_the_property_s_dimension() {
    assert_none(
        "plausible",
        faults(|property| {
            property.plausible.is_some_and(|(least, most)| {
                Some(least.dimension()) != property.dimension()
                    || Some(most.dimension()) != property.dimension()
                    || least.compare(most).is_none_or(core::cmp::Ordering::is_eq)
                    || !property.is_plausible(least)
                    || !property.is_plausible(most)
            })
        }),
    );
}
