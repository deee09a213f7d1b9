//! Names of products within a sentence that says more: quoted, or beside their maker.

mod capitals;
mod denied;
mod quoted;
mod unquoted;

pub(super) use self::denied::{denies, explains, is_conditional, without_bounds};

use self::quoted::{of_quoted, quoted_groups};
use self::unquoted::{in_brackets, owned, unquoted};
use super::entry::{Listed, Reader};
use crate::naming::components_in;

/// The products that a sentence names besides what else it says, each group with the part that the words before it name.
pub(super) fn within(words: &str, reader: Reader<'_>) -> Vec<Listed> {
    if denies(words) {
        return Vec::new();
    }
    let mut found: Vec<Listed> = Vec::new();
    let mut at = 0;
    for group in quoted_groups(words) {
        if group.start < at {
            continue;
        }
        if let Some((listed, end)) = of_quoted(words, &group, reader) {
            // `"X" and the primer "Y", both of the Maker`
            let of_all = [", both ", ", all "]
                .iter()
                .any(|all| words.get(group.end..).unwrap_or_default().starts_with(all));
            if let Some(maker) = listed.names.first().map(|name| &name.maker)
                && of_all
            {
                let others = found.iter_mut().flat_map(|other| &mut other.names);
                for name in others.filter(|name| name.maker.is_empty()) {
                    name.maker.clone_from(maker);
                }
            }
            at = end;
            found.push(listed);
        }
    }
    if found.is_empty() {
        found.extend(unquoted(words, reader));
    }
    if found.is_empty() {
        found.extend(owned(words, reader));
    }
    if found.is_empty() {
        found.extend(in_brackets(words, reader));
    }
    if names_several_parts(words, &found) {
        found.clear();
    }
    found
}

/// Whether a sentence says more between its names than that one may stand for another, and doesn't name the part of each.
fn names_several_parts(words: &str, found: &[Listed]) -> bool {
    const JOINING: [&str; 7] = ["", "or", "and", "or the", "and the", "or by", "either"];
    let place = |listed: &Listed| {
        let names = || listed.names.iter();
        let start = names().filter_map(|name| words.find(&name.product)).min()?;
        let ends = names().flat_map(|name| [&name.product, &name.maker]);
        let end = ends
            .filter_map(|own| Some(words.get(start..)?.find(own.as_str())? + start + own.len()))
            .max()?;
        Some(start..end)
    };
    let mut labels: Vec<&str> = Vec::new();
    for listed in found {
        labels.extend(
            listed
                .label
                .as_deref()
                .filter(|label| !components_in(label).is_empty()),
        );
    }
    let each_labelled = labels.len() == found.len();
    found.iter().zip(found.iter().skip(1)).any(|(one, next)| {
        let between = place(one)
            .zip(place(next))
            .and_then(|(one, next)| words.get(one.end..next.start));
        let joins = between.is_some_and(|between| {
            let said = between.trim_matches(|c: char| !c.is_alphanumeric());
            // `or Maker "Product"`; without a conjunction the maker isn't known to be whole.
            let maker = next.names.first().map_or("", |name| &name.maker);
            let joined = said.strip_suffix(maker).map_or("", str::trim);
            JOINING.contains(&said.to_lowercase().as_str())
                || ["or", "and", "OR", "AND"].contains(&joined)
        });
        !joins && !each_labelled
    })
}

/// The same with the part that the words before it name.
fn labelled(before: &str, listed: Listed) -> Listed {
    const CARRYING: &[&str] = &[
        "is", "was", "are", "were", "be", "the", "of", "by", "use", "used", "with", "called",
        "either", "and", "or", "a", "an", "as", "to", "in", "from", "shall", "proved", "tested",
        "accepted", "for", "for the", "named", "brand", "product", "products", "only", "apply",
        "applied", "type", "sold", "examined", "using", "listed", "approved", "both", "one",
        "made", "supplied", "on", "over",
    ];
    let clause = before.rsplit([';', '.']).next().unwrap_or_default();
    let last = before
        .trim_end()
        .trim_end_matches([':', ',', '('])
        .rsplit(' ')
        .next()
        .unwrap_or_default();
    let named = components_in(clause);
    let label = match named.last() {
        Some((_, _, at))
            if clause
                .get(at.end..)
                .is_none_or(|rest| !ends_in_noun(rest, CARRYING)) =>
        {
            clause.get(at.clone()).map(str::to_owned)
        }
        _ if ends_in_noun(last, CARRYING) => Some(last.to_owned()),
        _ => None,
    };
    Listed {
        label: listed.label.clone().or(label),
        ..listed
    }
}

/// Whether the last word of a text is a noun that may name a part: a small word that carries no other meaning.
fn ends_in_noun(text: &str, carrying: &[&str]) -> bool {
    let last = text
        .trim_end()
        .trim_end_matches([':', ',', '('])
        .rsplit(' ')
        .next()
        .unwrap_or_default();
    last.len() > 2
        && last.chars().all(char::is_alphabetic)
        && !carrying.contains(&last.to_lowercase().as_str())
}
