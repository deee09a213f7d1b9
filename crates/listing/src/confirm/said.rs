//! What a person says is right of a clause, in their own words: read, checked, and made a [`Correction`].

use core::fmt;

use measure::Quantity;
use vocabulary::vocabulary;

use super::overlay::{Applies, Correction};
use crate::model::{Clause, Presence, ProductName, Reading, Relation};

/// What a person says is right. What isn't said stays as read.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Said {
    /// What it is about, as `packing.density`.
    pub property: Option<String>,
    /// How the number is bounded.
    pub relation: Option<Relation>,
    /// The value, as `4 in.` or `1/2 to 3/4 in.`
    pub value: Option<String>,
    /// Whether something must, must not or may be there.
    pub presence: Option<Presence>,
    /// Products, any one of which will do, each as `Maker | Product`.
    pub names: Vec<String>,
    /// It is no bound: its words are for a person to answer.
    pub prose: bool,
    /// It always applies, whatever condition was read.
    pub unconditional: bool,
    /// When it applies.
    pub applies: Option<SaidOf>,
    /// The option it belongs to; empty for none.
    pub option: Option<String>,
}

/// A property compared with a value, in a person's words.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SaidOf {
    /// The property.
    pub property: String,
    /// How it is compared.
    pub relation: Relation,
    /// The value.
    pub value: String,
}

/// What isn't right of what a person says.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("{problem}; {help}")]
pub struct Wrong {
    /// What is wrong.
    pub problem: String,
    /// What would be right.
    pub help: String,
}

impl Wrong {
    fn new(problem: impl fmt::Display, help: impl fmt::Display) -> Self {
        Self {
            problem: problem.to_string(),
            help: help.to_string(),
        }
    }
}

impl Said {
    /// The correction of a clause that it comes to.
    ///
    /// # Errors
    /// When nothing is said to be right, or what is said doesn't fit together.
    pub fn correction(&self, clause: &Clause, reading: &Reading) -> Result<Correction, Wrong> {
        if *self == Self::default() {
            return Err(Wrong::new(
                format_args!("nothing says what is right of clause {}", clause.id),
                "say what it is about, how it is bounded, its value, or when it applies",
            ));
        }
        let known = |name: &String| property(name, reading);
        let mut correction = Correction {
            property: self.property.as_ref().map(known).transpose()?,
            prose: self.prose,
            unconditional: self.unconditional,
            presence: self.presence,
            ..Correction::default()
        };
        if self.relation.is_some() || self.value.is_some() {
            self.bound(clause, &mut correction)?;
        }
        for name in &self.names {
            correction.names.push(product(name)?);
        }
        if let Some(option) = &self.option {
            correction.option = Some(self::option(option, reading)?);
        }
        if let Some(said) = &self.applies {
            correction.applies = Some(applies(said, reading)?);
        }
        Ok(correction)
    }

    fn bound(&self, clause: &Clause, correction: &mut Correction) -> Result<(), Wrong> {
        let read = clause.bound();
        let relation = self.relation.or_else(|| read.map(|bound| bound.relation));
        let relation = relation.ok_or_else(|| {
            Wrong::new(
                format_args!("clause {} was read as no bound", clause.id),
                "say how its number is bounded, such as at least",
            )
        })?;
        correction.relation = Some(relation);
        let about = correction.property.as_deref().unwrap_or(&clause.property);
        match (&self.value, read) {
            (Some(text), _) => {
                (correction.lo, correction.hi) = values(text, relation)?;
                fits(correction.lo.or(correction.hi), about)
            }
            (None, None) => Err(Wrong::new(
                format_args!("clause {} was read without a number", clause.id),
                "give its value, such as `4 in.`",
            )),
            (None, Some(bound))
                if relation == Relation::Between && (bound.lo.is_none() || bound.hi.is_none()) =>
            {
                Err(Wrong::new(
                    "one number can't be a range",
                    "give both ends: `1/2 to 3/4 in.`",
                ))
            }
            (None, Some(bound)) => fits(bound.low().or_else(|| bound.high()), about),
        }
    }
}

/// A property of the vocabulary, or one local to the listing.
fn property(name: &str, reading: &Reading) -> Result<String, Wrong> {
    let name = name.trim();
    let mut clauses = reading.clauses.iter();
    if vocabulary().property(name).is_some() || clauses.any(|clause| clause.property == name) {
        return Ok(name.to_owned());
    }
    let problem = format!("there is no property `{name}`");
    Err(match vocabulary().nearest_property(name) {
        Some(near) => Wrong::new(problem, format_args!("is `{}` meant?", near.name)),
        None => Wrong::new(
            problem,
            "write `component.attribute`, such as `packing.density`; the glossary of a component shows what it has",
        ),
    })
}

/// The low and the high value, placed as the relation asks for.
fn values(text: &str, relation: Relation) -> Result<(Option<Quantity>, Option<Quantity>), Wrong> {
    let wrong = |text: &str, why: &dyn fmt::Display| {
        Wrong::new(
            format_args!("`{text}` is no value: {why}"),
            "write a number with its unit: `4 in.`, `1/2 to 3/4 in.`, `33 %`",
        )
    };
    let one = |text: &str| Quantity::parse(text.trim()).map_err(|error| wrong(text, &error));
    match (text.split_once(" to "), relation) {
        (Some((low, high)), Relation::Between) => {
            let high = one(high)?;
            // "1/2 to 3/4 in.": the unit of both stands with the second.
            let low = Quantity::parse(low.trim())
                .or_else(|_| one(&format!("{} {}", low.trim(), high.unit)))?;
            if low.compare(high) == Some(core::cmp::Ordering::Less) {
                Ok((Some(low), Some(high)))
            } else {
                Err(wrong(
                    text,
                    &"a range goes from the lower to the higher value",
                ))
            }
        }
        (Some(_), _) => Err(wrong(
            text,
            &format_args!("a range doesn't go with \"{}\"", relation.words()),
        )),
        (None, Relation::Between) => Err(wrong(text, &"\"between\" needs both ends")),
        (None, Relation::AtMost | Relation::LessThan) => Ok((None, Some(one(text)?))),
        (None, _) => Ok((Some(one(text)?), None)),
    }
}

/// Whether a value is of the kind that its property has.
fn fits(value: Option<Quantity>, property: &str) -> Result<(), Wrong> {
    let known = vocabulary()
        .property(property)
        .and_then(vocabulary::Property::dimension);
    match (value, known) {
        (Some(value), Some(dimension)) if value.dimension() != dimension => Err(Wrong::new(
            format_args!(
                "`{value}` doesn't fit: {property} is a {}",
                dimension.name().replace('_', " ")
            ),
            "give a value of that kind, or name another property",
        )),
        _ => Ok(()),
    }
}

/// A product with its maker: `Maker | Product`; a product alone where no maker is named.
fn product(text: &str) -> Result<ProductName, Wrong> {
    let (maker, product) = text.split_once('|').unwrap_or(("", text));
    let product = product.trim();
    if product.is_empty() {
        return Err(Wrong::new(
            format_args!("`{text}` names no product"),
            "write the maker and the product: `Maker | Product`",
        ));
    }
    Ok(ProductName {
        maker: maker.trim().to_owned(),
        product: product.to_owned(),
    })
}

/// A choice that the listing offers; empty for none.
fn option(name: &str, reading: &Reading) -> Result<String, Wrong> {
    let name = name.trim();
    let groups = || reading.options.iter();
    let is_choice = |choice: &str| {
        let mut clauses = reading.clauses.iter();
        groups().any(|group| group.choices.iter().any(|one| one == choice))
            || clauses.any(|clause| clause.option.as_deref() == Some(choice))
    };
    if name.is_empty() || is_choice(name) {
        return Ok(name.to_owned());
    }
    let choices: Vec<&str> = groups()
        .flat_map(|group| &group.choices)
        .map(String::as_str)
        .collect();
    let help = if choices.is_empty() {
        "the listing offers no choices".to_owned()
    } else {
        format!("its choices are {}", choices.join(", "))
    };
    Err(Wrong::new(
        format_args!("the listing has no option `{name}`"),
        help,
    ))
}

fn applies(said: &SaidOf, reading: &Reading) -> Result<Applies, Wrong> {
    if matches!(said.relation, Relation::Nominal | Relation::About) {
        return Err(Wrong::new(
            format_args!(
                "whether a clause applies can't rest on \"{}\"",
                said.relation.words()
            ),
            "say at least, at most, more than, less than, exactly or between",
        ));
    }
    let property = property(&said.property, reading)?;
    let (lo, hi) = values(&said.value, said.relation)?;
    fits(lo.or(hi), &property)?;
    Ok(Applies {
        property,
        relation: said.relation,
        lo,
        hi,
    })
}
