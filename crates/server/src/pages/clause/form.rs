//! The form in which a person says what is right of a clause.

use listing::confirm::{Said, SaidOf};
use listing::{Bound, Clause, Expr, Presence, Reading, Relation, Requirement};
use maud::{Markup, html};
use measure::print;
use serde::Deserialize;
use vocabulary::vocabulary;

/// The relations, each as the form names it.
const RELATIONS: [(&str, Relation); 8] = [
    ("at_least", Relation::AtLeast),
    ("at_most", Relation::AtMost),
    ("more_than", Relation::MoreThan),
    ("less_than", Relation::LessThan),
    ("between", Relation::Between),
    ("exactly", Relation::Exactly),
    ("nominal", Relation::Nominal),
    ("about", Relation::About),
];

/// What else a clause may ask for, as the form names it, and in words.
const OTHERS: [(&str, &str); 5] = [
    ("required", "it must be there"),
    ("absent", "it must not be there"),
    ("named", "one of these by name"),
    ("nothing", "nothing: these words require nothing"),
    ("prose", "what the words say: a person answers"),
];

/// What a person filled in.
#[derive(Debug, Clone, Default, PartialEq, Eq, Deserialize)]
pub(super) struct Filled {
    pub(super) property: String,
    pub(super) asks: String,
    #[serde(default)]
    pub(super) value: String,
    #[serde(default)]
    pub(super) names: String,
    pub(super) applies: String,
    #[serde(default)]
    pub(super) applies_property: String,
    #[serde(default)]
    pub(super) applies_relation: String,
    #[serde(default)]
    pub(super) applies_value: String,
    #[serde(default)]
    pub(super) option: String,
}

impl Filled {
    /// The form as a clause fills it in.
    pub(super) fn of(clause: &Clause) -> Self {
        let (asks, value, names) = match &clause.requirement {
            Requirement::Bound(bound) => (named(bound.relation), value(bound), String::new()),
            Requirement::Presence { presence } => {
                let asks = match presence {
                    Presence::Required => "required",
                    Presence::Absent => "absent",
                    Presence::Optional => "nothing",
                };
                (asks, String::new(), String::new())
            }
            Requirement::Named { names } => {
                let line = |name: &listing::ProductName| {
                    if name.maker.is_empty() {
                        name.product.clone()
                    } else {
                        format!("{} | {}", name.maker, name.product)
                    }
                };
                let lines: Vec<String> = names.iter().map(line).collect();
                ("named", String::new(), lines.join("\n"))
            }
            Requirement::Reference { .. } => ("reference", String::new(), String::new()),
            Requirement::Prose => ("prose", String::new(), String::new()),
        };
        let mut filled = Self {
            property: clause.property.clone(),
            asks: asks.to_owned(),
            value,
            names,
            applies: "as_read".to_owned(),
            option: clause.option.clone().unwrap_or_default(),
            ..Self::default()
        };
        match clause.condition.as_ref().map(|condition| &condition.expr) {
            None => "always".clone_into(&mut filled.applies),
            Some(Expr::Test(test)) => {
                filled.applies_property.clone_from(&test.property);
                named(test.relation).clone_into(&mut filled.applies_relation);
                filled.applies_value = range(test.lo, test.hi);
            }
            Some(_) => {}
        }
        filled
    }

    /// An empty form for something that a clause's words ask for besides.
    pub(super) fn further() -> Self {
        Self {
            asks: "at_least".to_owned(),
            applies: "always".to_owned(),
            ..Self::default()
        }
    }

    /// What is said to be right: where the form says otherwise than the reader did. `is_further` where all of it is said.
    pub(super) fn said(&self, read: &Clause, is_further: bool) -> Said {
        let before = if is_further {
            Self::default()
        } else {
            Self::of(read)
        };
        let differs = |now: &str, before: &str| now.trim() != before.trim();
        let mut said = Said {
            property: differs(&self.property, &before.property)
                .then(|| self.property.trim().to_owned()),
            option: differs(&self.option, &before.option).then(|| self.option.trim().to_owned()),
            ..Said::default()
        };
        let asks_otherwise = self.asks != before.asks;
        match self.asks.as_str() {
            "required" if asks_otherwise => said.presence = Some(Presence::Required),
            "absent" if asks_otherwise => said.presence = Some(Presence::Absent),
            "nothing" if asks_otherwise => said.presence = Some(Presence::Optional),
            "prose" if asks_otherwise => said.prose = true,
            "named" if asks_otherwise || differs(&self.names, &before.names) => {
                let lines = self.names.lines().map(str::trim);
                said.names = lines
                    .filter(|line| !line.is_empty())
                    .map(str::to_owned)
                    .collect();
            }
            asks => {
                let relation = relation(asks);
                let is_otherwise = asks_otherwise || differs(&self.value, &before.value);
                if relation.is_some() && is_otherwise {
                    said.relation = relation;
                    said.value = Some(self.value.trim().to_owned());
                }
            }
        }
        match self.applies.as_str() {
            "always" if before.applies != "always" => said.unconditional = true,
            "where" => {
                said.applies = Some(SaidOf {
                    property: self.applies_property.trim().to_owned(),
                    relation: relation(&self.applies_relation).unwrap_or(Relation::Exactly),
                    value: self.applies_value.trim().to_owned(),
                });
            }
            _ => {}
        }
        said
    }

    /// The fields; `read` is the clause as the reader left it.
    pub(super) fn fields(&self, read: &Clause, reading: &Reading, is_further: bool) -> Markup {
        let is_reference = matches!(read.requirement, Requirement::Reference { .. }) && !is_further;
        html! {
            label for="property" { "What it is about" }
            input id="property" name="property" list="properties" required autocomplete="off" value=(self.property);
            label for="asks" { "What it asks for" }
            select id="asks" name="asks" {
                @if is_reference { (option("reference", "what is said elsewhere, as read", &self.asks)) }
                @for (name, relation) in RELATIONS { (option(name, relation.words(), &self.asks)) }
                @for (name, words) in OTHERS { (option(name, words, &self.asks)) }
            }
            label for="value" { "Value, with its unit" }
            input id="value" name="value" autocomplete="off" placeholder="4 in., or 1/2 to 3/4 in." value=(self.value);
            label for="names" { "Names or products, one a line" }
            textarea id="names" name="names" rows="2" placeholder="Maker | Product" { (self.names) }
            label for="applies" { "When it applies" }
            select id="applies" name="applies" {
                @if let Some(condition) = read.condition.as_ref().filter(|_| !is_further) {
                    (option("as_read", &format!("as read: when {}", wording::condition::condition(&condition.expr)), &self.applies))
                }
                (option("always", "always", &self.applies))
                (option("where", "where this is so:", &self.applies))
            }
            label for="applies-property" { "Where this" }
            input id="applies-property" name="applies_property" list="properties" autocomplete="off" placeholder="joint.width" value=(self.applies_property);
            label for="applies-relation" { "is" }
            select id="applies-relation" name="applies_relation" {
                @for (name, relation) in RELATIONS.iter().take(6) { (option(name, relation.words(), &self.applies_relation)) }
            }
            label for="applies-value" { "this" }
            input id="applies-value" name="applies_value" autocomplete="off" placeholder="4 in." value=(self.applies_value);
            @if !reading.options.is_empty() || !self.option.is_empty() {
                label for="option" { "Option it belongs to" }
                select id="option" name="option" {
                    (option("", "none", &self.option))
                    @for choice in choices(reading, &self.option) { (option(choice, choice, &self.option)) }
                }
            }
            datalist id="properties" {
                @for component in vocabulary().components() {
                    @for property in &component.properties { option value=(property.name) { (property.title) } }
                }
            }
        }
    }

    /// The same, kept for the next step.
    pub(super) fn hidden(&self) -> Markup {
        html! {
            @for (name, value) in [
                ("property", &self.property), ("asks", &self.asks), ("value", &self.value), ("names", &self.names),
                ("applies", &self.applies), ("applies_property", &self.applies_property),
                ("applies_relation", &self.applies_relation), ("applies_value", &self.applies_value), ("option", &self.option),
            ] { input type="hidden" name=(name) value=(value); }
        }
    }
}

/// The choices that the listing offers, and the one that the clause has now.
fn choices<'r>(reading: &'r Reading, now: &'r str) -> Vec<&'r str> {
    let offered = reading.options.iter().flat_map(|group| &group.choices);
    let mut choices: Vec<&str> = offered.map(String::as_str).collect();
    if !now.is_empty() && !choices.contains(&now) {
        choices.push(now);
    }
    choices.dedup();
    choices
}

fn option(name: &str, words: &str, chosen: &str) -> Markup {
    html! { option value=(name) selected[name == chosen] { (words) } }
}

fn named(relation: Relation) -> &'static str {
    let found = RELATIONS.iter().find(|(_, one)| *one == relation);
    found.map_or("exactly", |(name, _)| name)
}

fn relation(name: &str) -> Option<Relation> {
    let found = RELATIONS.iter().find(|(one, _)| *one == name);
    found.map(|(_, relation)| *relation)
}

fn value(bound: &Bound) -> String {
    range(bound.low(), bound.high())
}

fn range(lo: Option<measure::Quantity>, hi: Option<measure::Quantity>) -> String {
    match (lo, hi) {
        (Some(lo), Some(hi)) => format!("{} to {}", print::trade(lo), print::trade(hi)),
        (Some(one), None) | (None, Some(one)) => print::trade(one),
        (None, None) => String::new(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const TEXT: &str = "1. Packing - Min 4 in. (102 mm) deep, 1/2 to 3/4 in. wide for joints more than 4 in. wide, nominal density 4 pcf. \
                        Fibers run parallel to the wall. Packing from Ulmeregg Mineral Fibre, type Ulmerpad 4.\n";

    #[test]
    fn what_isn_t_changed_corrects_nothing() {
        let reading = listing::read_text("a.txt", TEXT);
        assert!(reading.clauses.len() > 3);
        for clause in &reading.clauses {
            let said = Filled::of(clause).said(clause, false);
            assert_eq!(said, Said::default(), "{clause:?}");
        }
    }

    #[test]
    fn what_is_filled_in_is_read_back_as_the_same() {
        let reading = listing::read_text("a.txt", TEXT);
        for clause in reading
            .clauses
            .iter()
            .filter(|clause| clause.bound().is_some())
        {
            let filled = Filled {
                asks: "nothing".to_owned(),
                ..Filled::of(clause)
            };
            let nothing = filled.said(clause, false);
            assert_eq!(nothing.presence, Some(Presence::Optional));
            let bound = clause.bound().unwrap();
            let said = Said {
                relation: Some(bound.relation),
                value: Some(value(bound)),
                ..Said::default()
            };
            let correction = said.correction(clause, &reading).unwrap();
            assert_eq!(correction.lo, bound.low(), "{clause:?}");
            assert_eq!(correction.hi, bound.high(), "{clause:?}");
        }
    }
}
