//! Which lists of an item are in doubt by what stands beside them, once all of it is read.

use super::entry::Reader;
use crate::clauses::Around;
use crate::clauses::draft::{Draft, Yield};
use crate::model::{Confidence, Requirement};
use crate::naming::components_in;

/// Settles what the lists of an item ask for, by all that the item says.
pub(in crate::clauses) fn settle(source: &str, around: &Around, found: &mut Yield) {
    leave_numbers_of_names(source, around, found);
    leave_second_lists(around, found);
    leave_limits_of_products(source, around, found);
    doubt_beside_words(source, around, found);
}

/// Of two lists of one part, of which nothing says when each holds, the second is left as words and the first put in doubt: no joint has to meet both.
fn leave_second_lists(around: &Around, found: &mut Yield) {
    let is_second = |draft: &Draft| {
        names_products(draft)
            && draft.condition.is_none()
            && draft.property.ends_with("other_product")
    };
    let seconds: Vec<usize> = (0..found.clauses.len())
        .filter(|at| found.clauses.get(*at).is_some_and(is_second))
        .collect();
    for at in seconds {
        let Some(second) = found.clauses.get_mut(at) else {
            continue;
        };
        let component = second.component.clone();
        second.leave_as_words(&around.item);
        for first in found.clauses.iter_mut().take(at) {
            if names_products(first) && first.component == component {
                first.confidence = Confidence::WithDoubt;
            }
        }
    }
}

/// A number behind a coined word is part of a name: it neither takes the unit of a number behind a comma nor begins one of several groups of digits.
fn leave_numbers_of_names(source: &str, around: &Around, found: &mut Yield) {
    let is_name = |at: usize| {
        let before = source.get(..at).unwrap_or_default();
        let word = before
            .strip_suffix(' ')
            .and_then(|before| before.rsplit(char::is_whitespace).next());
        word.is_some_and(|word| {
            let capitals = word.len() > 1 && word.chars().all(char::is_uppercase);
            let limits = ["MIN", "MAX", "NOM"].contains(&word);
            let is_word = word.ends_with(char::is_alphanumeric);
            is_word && !measures(word) && (around.ordinary.is_coined(word) || capitals && !limits)
        })
    };
    for draft in &mut found.clauses {
        let Requirement::Bound(bound) = &draft.requirement else {
            continue;
        };
        let number = bound.at.of(source);
        let digits = number.trim_start_matches(|c: char| c.is_ascii_digit());
        let groups = digits.strip_prefix(' ').is_some_and(|group| {
            let rest = group.trim_start_matches(|c: char| c.is_ascii_digit());
            group.len() - rest.len() == 3 && !rest.starts_with('/')
        });
        let bare = !number.contains(|c: char| c.is_alphabetic() || "\"″'′”%°".contains(c));
        let shares = bare
            && source
                .get(bound.at.end()..)
                .is_some_and(|behind| behind.starts_with(','));
        if (groups || shares) && is_name(bound.at.start()) {
            draft.leave_as_words(&around.item);
        }
    }
}

/// Whether a word says what is measured, or of what: "Compression 20, extension 15 and shear 5 percent".
fn measures(word: &str) -> bool {
    const MOVING: [&str; 4] = ["movement", "compression", "extension", "shear"];
    let lower = word.to_lowercase();
    MOVING.contains(&lower.as_str())
        || vocabulary::vocabulary()
            .attribute(lower.trim_end_matches('s'))
            .is_some()
        || !components_in(word).is_empty()
}

/// A limit of the joint beside a product's name limits that product's joints, and no others.
fn leave_limits_of_products(source: &str, around: &Around, found: &mut Yield) {
    let reader = Reader {
        ordinary: &around.ordinary,
    };
    let products = products(found);
    for draft in &mut found.clauses {
        let Requirement::Bound(bound) = &draft.requirement else {
            continue;
        };
        let line = line_at(source, bound.at.start());
        let beside = reader.begins_entry(line) || products.iter().any(|name| line.contains(name));
        if draft.property.starts_with("joint.") && !names_joint(around) && beside {
            draft.leave_as_words(&around.item);
        }
    }
}

/// A list beside which words open it, limit it or name a further maker isn't known to be all that there is to it.
fn doubt_beside_words(source: &str, around: &Around, found: &mut Yield) {
    const SAYING: &[&str] = &[
        "equal",
        "equals",
        "equivalent",
        "equivalents",
        "similar",
        "discontinued",
        "series",
        "withdrawn",
        "example",
        "substitute",
        "substitutes",
    ];
    let reader = Reader {
        ordinary: &around.ordinary,
    };
    let (Some(first), Some(last)) = (
        found.lists.iter().map(|list| list.span.start()).min(),
        found.lists.iter().map(|list| list.span.end()).max(),
    ) else {
        return;
    };
    let end = found.clauses.iter().map(|draft| draft.span.end()).max();
    let from = around.heading.end().min(first);
    let products = products(found);
    let text = source
        .get(from..end.unwrap_or(last).max(last))
        .unwrap_or_default();
    let mut at = from;
    let mut in_doubt = false;
    for line in text.split_inclusive('\n') {
        let start = at;
        at += line.len();
        let middle = start + (line.len() - line.trim_start().len());
        let is_list = |span: crate::model::Span| span.start() <= middle && middle < span.end();
        let listed = found
            .lists
            .iter()
            .any(|list| list.is_taken && is_list(list.span));
        // What stands before a list on its line may deny it or limit it.
        in_doubt |= found
            .lists
            .iter()
            .any(|list| list.is_taken && middle < list.span.start() && list.span.start() < at);
        let mut words = line.split(|c: char| !c.is_alphanumeric());
        in_doubt |= !listed
            && (reader.begins_entry(line)
                || words.any(|word| SAYING.contains(&word.to_lowercase().as_str()))
                || products.iter().any(|name| line.contains(name)));
    }
    if in_doubt {
        for draft in found
            .clauses
            .iter_mut()
            .filter(|draft| names_products(draft))
        {
            draft.confidence = Confidence::WithDoubt;
        }
    }
}

fn names_products(draft: &Draft) -> bool {
    match &draft.requirement {
        Requirement::Named { names } => names.iter().any(|name| !name.maker.is_empty()),
        _ => false,
    }
}

/// The names of the products that an item lists.
fn products(found: &Yield) -> Vec<String> {
    let named = found
        .clauses
        .iter()
        .filter_map(|draft| match &draft.requirement {
            Requirement::Named { names } => Some(names),
            _ => None,
        });
    named
        .flatten()
        .filter(|name| !name.maker.is_empty())
        .map(|name| name.product.clone())
        .collect()
}

fn names_joint(around: &Around) -> bool {
    let titles = &around.subject.titles;
    titles
        .iter()
        .any(|(component, _)| component.name == "joint")
}

/// The line that a place stands on.
fn line_at(source: &str, at: usize) -> &str {
    let start = source
        .get(..at)
        .and_then(|before| before.rfind('\n'))
        .map_or(0, |end| end + 1);
    let rest = source.get(start..).unwrap_or_default();
    rest.lines().next().unwrap_or_default()
}
