//! A net under conditional clauses: an item that speaks of a property case by case, and says nothing of this one.
//!
//! "For the 1 h rating, 1 coat; for the 2 h rating, 2 coats" asks nothing where the 3 h rating applies, and width bands may
//! leave a gap between them. Each clause for itself rightly falls away; but that all of them do isn't leave to build
//! what one likes. One conditional clause alone shows no such series: "joints wider than 4 in. shall have clips" asks
//! nothing of a narrower joint, and nothing is missing.

use std::collections::BTreeMap;

use listing::Expr;
use measure::print;

use crate::assessment::{Assessment, Detail};
use crate::checklist::Entry;
use crate::comparison::joint_widths::JOINT_WIDTH;
use crate::condition::{Circumstances, Truth};
use crate::explain::SubjectMatter;
use crate::header::joined;
use crate::rating::JOINT_RATING;
use crate::verdict::{Reason, Verdict};

/// The clauses of one item, and one option, on one property, where all of them are conditional.
pub(crate) struct Cases {
    /// `3A/none`; with the property after it where the item has several such series.
    pub(crate) id: String,
    /// The places of the clauses among the entries, in order; at least two.
    pub(crate) clauses: Vec<usize>,
}

/// Every series of cases that a listing has, in listing order.
pub(crate) fn of(entries: &[Entry<'_>]) -> Vec<Cases> {
    let mut series: BTreeMap<(&str, &str, Option<&str>), Vec<usize>> = BTreeMap::new();
    for (at, entry) in entries.iter().enumerate() {
        let clause = entry.clause;
        let key = (
            clause.item.as_str(),
            clause.property.as_str(),
            clause.option.as_deref(),
        );
        series.entry(key).or_default().push(at);
    }
    let condition = |at: &usize| entries.get(*at)?.clause.condition.as_ref();
    series
        .retain(|_, clauses| clauses.len() > 1 && clauses.iter().all(|at| condition(at).is_some()));
    let mut of_item: BTreeMap<&str, usize> = BTreeMap::new();
    let mut of_property: BTreeMap<(&str, &str), usize> = BTreeMap::new();
    for (item, property, _) in series.keys() {
        *of_item.entry(item).or_default() += 1;
        *of_property.entry((item, property)).or_default() += 1;
    }
    let id = |item: &str, property: &str, option: Option<&str>| {
        let several = |count: Option<&usize>| count.is_some_and(|count| *count > 1);
        match option {
            _ if !several(of_item.get(item)) => format!("{item}/none"),
            Some(option) if several(of_property.get(&(item, property))) => {
                format!("{item}/none/{property}/{option}")
            }
            _ => format!("{item}/none/{property}"),
        }
    };
    let mut cases: Vec<Cases> = series
        .iter()
        .map(|((item, property, option), clauses)| Cases {
            id: id(item, property, *option),
            clauses: clauses.clone(),
        })
        .collect();
    cases.sort_by_key(|one| one.clauses.first().copied());
    cases
}

impl Cases {
    /// That none of the cases is this one, where the joint's rating or width tells at least two of them apart from it.
    pub(crate) fn silence<'a>(
        &self,
        entries: &[Entry<'a>],
        found: &[Assessment<'a>],
        circumstances: &Circumstances<'a, '_>,
    ) -> Option<Assessment<'a>> {
        let mut distinct: Vec<&Expr> = Vec::new();
        let mut words: Vec<&str> = Vec::new();
        let mut here: Vec<String> = Vec::new();
        let mut fact = None;
        for at in &self.clauses {
            let (entry, found) = (entries.get(*at)?, found.get(*at)?);
            let condition = entry.clause.condition.as_ref()?;
            let (Verdict::NotApplicable, Reason::ConditionNotMet, Detail::Condition(cause)) =
                (found.verdict, found.reason, &found.detail)
            else {
                return None;
            };
            let by_others = circumstances.but_for_rating_and_width(&condition.expr);
            if by_others.truth == Truth::False || distinct.contains(&&condition.expr) {
                continue;
            }
            distinct.push(&condition.expr);
            words.push(&condition.words);
            fact = fact.or(cause.fact);
            let is = match (cause.rating, cause.fact) {
                (Some(rating), _) => {
                    format!("the rating that applies here is {}", print::trade(rating))
                }
                (None, Some(fact)) => {
                    let title = SubjectMatter::of_property(fact.asked_as()).in_sentence();
                    format!("{title} is {}", fact.value)
                }
                (None, None) => continue,
            };
            if !here.contains(&is) {
                here.push(is);
            }
        }
        if distinct.len() < 2 {
            return None;
        }
        let first = entries.get(*self.clauses.first()?)?;
        let title = SubjectMatter::of_clause(first.clause, first.property).in_sentence();
        let cases = joined(words.iter().map(|words| format!("\"{words}\"")));
        Some(Assessment::open(Reason::ListingUnclear).on(fact).saying(
            format!("what holds only {cases}"),
            format!(
                "The listing says nothing here for this case: of {title} it speaks only {cases}; {}.",
                joined(here)
            ),
        ))
    }
}

/// Whether a condition's test is of the joint's rating or width.
pub(crate) fn tells_cases_apart(property: &str) -> bool {
    property == JOINT_RATING || property == JOINT_WIDTH
}

/// Whether words that no rule could test may be of the joint's rating or width: "in joints over 2 in.", "for the two-hour rating". Of such cases none may
/// be this one, whatever is met of them.
pub(crate) fn may_tell_cases_apart(words: &str) -> bool {
    const SAY_SO: &[&str] = &[
        "joint", "joints", "gap", "gaps", "opening", "openings", "widths", "wider", "narrower",
        "rating", "ratings", "rated", "hour", "hours", "hr", "class",
    ];
    let words = words.to_lowercase();
    words.contains(|c: char| c.is_numeric())
        || words
            .split(|c: char| !c.is_alphabetic())
            .any(|word| SAY_SO.contains(&word))
}
