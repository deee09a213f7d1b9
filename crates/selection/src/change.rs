//! A change that would let a listing fit, in words.

use conformance::{Explanation, Finding, Unsettled};
use schemars::JsonSchema;
use serde::Serialize;
use vocabulary::{Nature, Property, Trade, vocabulary};

use crate::cost::Cost;

/// A property that would have to be otherwise, and the clauses that ask it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, JsonSchema)]
pub struct Change {
    /// The property.
    pub property: String,
    /// Its title.
    pub title: String,
    /// Whose it is to change; none where the vocabulary doesn't know.
    pub trade: Option<Trade>,
    /// What it costs, for the order alone.
    pub cost: Cost,
    /// The change in words: "a deeper packing".
    pub words: String,
    /// Its numbers: what is asked for, and what it is.
    pub numbers: String,
    /// The clauses that aren't met.
    pub findings: Vec<Finding>,
}

impl Change {
    /// The changes that some findings ask for, the cheapest first: one for each property.
    pub(crate) fn of_each<'u>(
        unmet: impl Iterator<Item = (&'u Unsettled<'u>, Finding)>,
    ) -> Vec<Self> {
        let mut changes: Vec<Self> = Vec::new();
        for (unsettled, finding) in unmet {
            let known = changes
                .iter_mut()
                .find(|change| change.property == unsettled.property);
            match known {
                Some(change) => change.findings.push(finding),
                None => changes.push(Self {
                    property: unsettled.property.to_owned(),
                    title: finding.explanation.title.clone(),
                    trade: unsettled.trade,
                    cost: Cost::of(unsettled.property, unsettled.trade),
                    words: String::new(),
                    numbers: String::new(),
                    findings: vec![finding],
                }),
            }
        }
        for change in &mut changes {
            if let Some(hardest) = hardest(&change.findings) {
                change.words = words(&hardest.explanation);
                change.numbers = numbers(&hardest.explanation);
            }
        }
        changes.sort_by(|a, b| (a.cost, &a.property).cmp(&(b.cost, &b.property)));
        changes
    }
}

/// The finding that is farthest from being met; of those that can't be compared, the first.
fn hardest(findings: &[Finding]) -> Option<&Finding> {
    let margin = |finding: &Finding| finding.explanation.margin.clone().map(|one| one.quantity);
    findings.iter().reduce(|hardest, other| {
        let is_farther = margin(hardest)
            .zip(margin(other))
            .and_then(|(known, other)| other.compare(known))
            .is_some_and(core::cmp::Ordering::is_lt);
        if is_farther { other } else { hardest }
    })
}

/// What is asked for, and what it is.
fn numbers(explanation: &Explanation) -> String {
    match &explanation.fact {
        // What the head asks is said best in its own sentence.
        _ if explanation.item.is_empty() => explanation.sentence.clone(),
        Some(fact) => format!("{}; it is {}", explanation.requirement, fact.value),
        None => explanation.requirement.clone(),
    }
}

/// Which way a value must go.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Way {
    More,
    Less,
}

fn way(requirement: &str) -> Option<Way> {
    let begins = |words: &[&str]| words.iter().any(|word| requirement.starts_with(word));
    if begins(&["at least", "more than"]) || requirement.ends_with("or heavier") {
        Some(Way::More)
    } else if begins(&["at most", "less than"]) {
        Some(Way::Less)
    } else {
        None
    }
}

/// The change in words.
fn words(explanation: &Explanation) -> String {
    let title = in_sentence(&explanation.title);
    let Some(property) = vocabulary().property(&explanation.property) else {
        return format!("another {title}");
    };
    let component = vocabulary().component(&property.component);
    let component = component.map_or_else(String::new, |one| in_sentence(&one.title));
    match way(&explanation.requirement) {
        Some(way) if !explanation.item.is_empty() || property.name == "joint.width" => {
            comparative(property, &component, &title, way)
        }
        _ if property.name.starts_with("joint.movement") => {
            format!("less {title} needed, or a listing tested to more")
        }
        _ => other(property, &component, &title, &explanation.requirement),
    }
}

fn comparative(property: &Property, component: &str, title: &str, way: Way) -> String {
    let more = way == Way::More;
    let either = |up: &'static str, down: &'static str| if more { up } else { down };
    let attribute = property.attribute.as_str();
    if attribute == "overlap" || attribute.starts_with("overlap_") {
        let lap = either("longer", "shorter");
        let onto = attribute
            .strip_prefix("overlap_")
            .map_or("parts beside the joint".to_owned(), |part| {
                part.replace('_', " ")
            });
        return format!("a {lap} lap of the {component} onto the {onto}");
    }
    match attribute {
        "depth" => format!("a {} {component}", either("deeper", "shallower")),
        "thickness" => format!("a {} {component}", either("thicker", "thinner")),
        "wet_thickness" | "dry_thickness" | "total_thickness" => {
            let film = title.strip_prefix(component).unwrap_or(title).trim();
            format!("a {} {component} ({film})", either("thicker", "thinner"))
        }
        "width" => format!("a {} {component}", either("wider", "narrower")),
        "gauge" | "steel_thickness" | "weight" => {
            format!("a {} {component}", either("heavier", "lighter"))
        }
        "density" => format!("a {} {component}", either("denser", "lighter")),
        "compression" => format!("a {component} compressed {}", either("more", "less")),
        "layers" | "coats" | "count" | "sides" | "faces" => {
            format!("{} {title}", either("more", "fewer"))
        }
        name if name.ends_with("spacing") => format!("a {} {title}", either("wider", "closer")),
        name if name.ends_with("length") => format!("a {} {title}", either("longer", "shorter")),
        name if name.ends_with("time") => format!("a {} {title}", either("longer", "shorter")),
        "recess" | "projection" | "embedment" | "engagement" => {
            format!("a {} {title}", either("greater", "smaller"))
        }
        name if ["distance", "stagger", "offset"]
            .iter()
            .any(|end| name.ends_with(end)) =>
        {
            format!("a {} {title}", either("greater", "smaller"))
        }
        name if name.ends_with("gap") => format!("a {} {title}", either("wider", "narrower")),
        _ => format!("{} {title}", either("more", "less")),
    }
}

fn other(property: &Property, component: &str, title: &str, requirement: &str) -> String {
    match (property.attribute.as_str(), property.nature) {
        ("product", _) => format!("a {component} that the listing names"),
        (attribute, Nature::Product) if requirement.starts_with("nominal") => format!(
            "a {component} of the nominal {} that the listing names",
            attribute.replace('_', " ")
        ),
        ("kind", _) => format!("another kind of {component}"),
        (_, Nature::Count) => format!("another number of {title}"),
        _ => format!("another {title}"),
    }
}

/// A title within a sentence: its first letter small, unless it is an abbreviation.
fn in_sentence(title: &str) -> String {
    let mut letters = title.chars();
    match (letters.next(), letters.clone().next()) {
        (Some(first), Some(second)) if !second.is_uppercase() => {
            first.to_lowercase().chain(letters).collect()
        }
        _ => title.to_owned(),
    }
}
