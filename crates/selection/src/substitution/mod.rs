//! Another product: which listings of the schedule still hold, which joints need another, and which have none.

mod rows;

use schemars::JsonSchema;
use serde::Serialize;
use site::{Fact, Project, without_listing};

use crate::answer::{Answered, Search};
use crate::asking::{Asked, of_schedule};
use crate::rank::Rank;
use crate::search::{NotThere, Wanted};
use crate::substitute;

pub use rows::Row;

/// What another product would come to, condition by condition.
#[derive(Debug, Clone, Serialize, JsonSchema)]
pub struct Substitution {
    /// The building's name; empty where none was given.
    pub building: String,
    /// The property whose product is another.
    pub property: String,
    /// The product.
    pub product: String,
    /// What is known of the product besides, each in words.
    pub with: Vec<String>,
    /// What it comes to at each condition of each mark that has such a product, those of a mark one after the other.
    pub conditions: Vec<OfCondition>,
    /// The joints that have none, mark by mark.
    pub untouched: Vec<Untouched>,
    /// What must stand wherever results are shown.
    pub standing_lines: Vec<String>,
}

/// Joints of a mark that have no such product.
#[derive(Debug, Clone, Serialize, JsonSchema)]
pub struct Untouched {
    /// The mark.
    pub mark: String,
    /// The joints.
    pub joints: Vec<String>,
    /// Whether they are all joints of the mark.
    pub is_whole_mark: bool,
}

/// What it comes to at the joints of a mark that are of one condition.
#[derive(Debug, Clone, Serialize, JsonSchema)]
pub struct OfCondition {
    /// What it comes to.
    pub outcome: Outcome,
    /// What the joints have now.
    pub now: String,
    /// Where its own listing stood before.
    pub before: Option<Rank>,
    /// The answer with the other product.
    pub answer: Answered,
}

/// What another product comes to.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
pub enum Outcome {
    /// Its listing still holds: nothing is unmet, though something may be open.
    Holds,
    /// Its listing doesn't hold, but another does.
    AnotherListing,
    /// No listing of the library holds.
    NoListing,
}

/// What another product would come to at every joint that has one of that component.
///
/// # Errors
/// When a listing can't be looked at.
pub fn substituted(
    project: &Project,
    search: &Search<'_>,
    product: &Fact,
    with: &[Fact],
    most: usize,
    standing_lines: &[String],
) -> Result<Substitution, NotThere> {
    let property = product.property.as_str();
    let is_it = |fact: &&Fact| plain(&fact.property) == property;
    let (touched, untouched): (Vec<Asked>, Vec<Asked>) = of_schedule(project, search.index())
        .into_iter()
        .partition(|asked| asked.facts.iter().any(|fact| is_it(&fact)));
    let supposed: Vec<Asked> = touched
        .iter()
        .map(|asked| otherwise(asked, product, with))
        .collect();
    let wanted = Wanted {
        open: most,
        near: 1,
        every_single_change: false,
    };
    let answers = search.answer(&supposed, &wanted)?;
    let conditions = touched.iter().zip(answers).map(|(asked, answer)| {
        let own = asked
            .own
            .as_deref()
            .and_then(|name| search.library().which(name));
        let now: Vec<String> = asked
            .facts
            .iter()
            .filter(is_it)
            .map(|fact| fact.value.to_string())
            .collect();
        OfCondition {
            outcome: outcome(&answer),
            now: distinct(now).join(", "),
            before: own.and_then(|at| search.rank(at, &asked.subject())),
            answer,
        }
    });
    Ok(Substitution {
        building: project.building.name.clone(),
        property: property.to_owned(),
        product: product.value.to_string(),
        with: with.iter().map(in_words).collect(),
        untouched: self::untouched(untouched, &touched),
        conditions: conditions.collect(),
        standing_lines: standing_lines.to_vec(),
    })
}

fn untouched(without: Vec<Asked>, with: &[Asked]) -> Vec<Untouched> {
    let mut all: Vec<Untouched> = Vec::new();
    for asked in without {
        match all.last_mut().filter(|last| last.mark == asked.name) {
            Some(last) => last.joints.extend(asked.joints),
            None => all.push(Untouched {
                is_whole_mark: with.iter().all(|other| other.name != asked.name),
                mark: asked.name,
                joints: asked.joints,
            }),
        }
    }
    all
}

/// The condition with the other product, and what is known of that.
fn otherwise(asked: &Asked, product: &Fact, with: &[Fact]) -> Asked {
    let mut facts = substitute::with_product(
        &asked.facts,
        &product.property,
        &product.value,
        &product.provenance,
    );
    for fact in with {
        facts = substitute::with_value(&facts, &fact.property, &fact.value, &fact.provenance);
    }
    Asked {
        facts,
        supposed: core::iter::once(product)
            .chain(with)
            .map(in_words)
            .collect(),
        ..asked.clone()
    }
}

/// The condition with some facts otherwise. Another product brings its own properties with it, so that those known of the one before
/// aren't known any more.
pub fn supposing(asked: &Asked, otherwise: &[Fact]) -> Asked {
    let mut facts = asked.facts.clone();
    let is_product = |fact: &&Fact| fact.asked_as().ends_with(".product");
    for fact in otherwise.iter().filter(is_product) {
        facts = substitute::with_product(&facts, &fact.property, &fact.value, &fact.provenance);
    }
    for fact in otherwise.iter().filter(|fact| !is_product(fact)) {
        facts = substitute::with_value(&facts, &fact.property, &fact.value, &fact.provenance);
    }
    Asked {
        facts,
        supposed: otherwise.iter().map(in_words).collect(),
        ..asked.clone()
    }
}

fn outcome(answer: &Answered) -> Outcome {
    let holds = matches!(answer.own_rank, Some(Rank::Fits { .. } | Rank::Open { .. }));
    if holds {
        Outcome::Holds
    } else if answer.fits.is_empty() && answer.open.is_empty() {
        Outcome::NoListing
    } else {
        Outcome::AnotherListing
    }
}

fn in_words(fact: &Fact) -> String {
    let title = vocabulary::vocabulary()
        .property(&fact.property)
        .map_or(fact.property.clone(), |known| known.title.clone());
    format!("{title}: {}", fact.value)
}

fn distinct(names: Vec<String>) -> Vec<String> {
    let mut each: Vec<String> = Vec::new();
    for name in names {
        if !each.contains(&name) {
            each.push(name);
        }
    }
    each
}

fn plain(property: &str) -> &str {
    let property = without_listing(property);
    property
        .split_once(':')
        .map_or(property, |(_, plain)| plain)
}
