//! Another product: which listings of the schedule still hold, which marks need another, and which have none.

use schemars::JsonSchema;
use serde::Serialize;
use site::{Fact, Project};

use crate::answer::{Answered, Search};
use crate::asking::{Asked, of_marks};
use crate::rank::Rank;
use crate::search::{NotThere, Wanted};
use crate::substitute;

/// What another product would come to, mark by mark.
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
    /// The marks that have such a product, in the order of the schedule.
    pub marks: Vec<OfMark>,
    /// The marks that have none.
    pub untouched: Vec<String>,
    /// What must stand wherever results are shown.
    pub standing_lines: Vec<String>,
}

/// What it comes to at a mark.
#[derive(Debug, Clone, Serialize, JsonSchema)]
pub struct OfMark {
    /// What it comes to.
    pub outcome: Outcome,
    /// What the mark has now.
    pub now: String,
    /// Where its own listing stood before.
    pub before: Option<Rank>,
    /// The answer with the other product.
    pub answer: Answered,
}

/// What another product comes to at a mark.
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

/// What another product would come to at every mark that has one of that component.
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
    let (touched, untouched): (Vec<Asked>, Vec<Asked>) = of_marks(project)
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
    let marks = touched.iter().zip(answers).map(|(asked, answer)| {
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
        OfMark {
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
        marks: marks.collect(),
        untouched: untouched.into_iter().map(|asked| asked.name).collect(),
        standing_lines: standing_lines.to_vec(),
    })
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
    let is_product = |fact: &&Fact| fact.property.ends_with(".product");
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
    property
        .split_once(':')
        .map_or(property, |(_, plain)| plain)
}
