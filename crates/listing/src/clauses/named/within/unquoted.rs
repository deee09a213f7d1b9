//! Names without quotation beside their maker: `Castramix 17, by Denholm Spray Works`, `sold as`, in brackets.

use super::super::beside::lead_to_maker;
use super::super::entry::{Listed, Reader};
use super::super::limits::restricts;
use super::super::makers::ends_as_firm;
use super::super::name::is_coded;
use super::capitals::{capital_head, capital_tail, product_head, product_tail};
use super::labelled;

/// Names without quotation, beside their maker: `Castramix 17 or Castramix 17-HS, both by Denholm Spray Works`, `Odelith 90 (Steinwerk Odel GmbH)`.
pub(super) fn unquoted(words: &str, reader: Reader<'_>) -> Vec<Listed> {
    let mut found: Vec<Listed> = Vec::new();
    let mut from = 0;
    loop {
        let rest = words.get(from..).unwrap_or_default();
        let next = rest.match_indices([' ', ',']).find_map(|(at, _)| {
            let text = rest.get(at..)?;
            let len = if text.starts_with(" (") {
                2
            } else {
                lead_to_maker(text).filter(|_| !text.starts_with(" of "))?
            };
            Some((at, len))
        });
        let Some((at, len)) = next else {
            break;
        };
        let (before, behind) = (
            rest.get(..at).unwrap_or_default(),
            rest.get(at + len..).unwrap_or_default(),
        );
        let maker = capital_head(behind);
        if !is_done(before, rest.get(at..).unwrap_or_default())
            && let Some((listed, end)) = called(behind, maker, reader)
        {
            found.push(labelled(before, listed));
            from += at + len + end;
            continue;
        }
        let closed = rest.get(at..at + len) != Some(" (")
            || behind
                .get(maker.len()..)
                .is_some_and(|rest| rest.trim_start_matches('.').starts_with(')'));
        let list = product_tail(before, reader);
        let is_firm = words.contains(char::is_lowercase) || ends_as_firm(maker);
        // `Other 60; Product 75 (Maker)`: the name before it may be as good.
        let goes_on = before
            .get(..before.len() - list.len())
            .and_then(|lead| lead.trim_end().strip_suffix(';'))
            .and_then(|lead| lead.rsplit(' ').next())
            .is_some_and(|last| reader.coins(last));
        if closed
            && !goes_on
            && is_firm
            && !list.is_empty()
            && reader.is_maker(maker)
            && let Some(listed) = reader.products(list, maker)
        {
            let before = before.get(..before.len() - list.len()).unwrap_or_default();
            found.push(labelled(before, listed));
            from += at + len + maker.len();
        } else {
            from += at + len;
        }
    }
    found
}

/// Whether what leads to a firm says that it did something else than make: "drawn by", "inspected by".
fn is_done(before: &str, lead: &str) -> bool {
    const MAKING: [&str; 4] = ["manufactured", "produced", "supplied", "marketed"];
    let last = before.rsplit(' ').next().unwrap_or_default().to_lowercase();
    lead.starts_with(" by ")
        && !MAKING.contains(&last.as_str())
        && ["ed", "wn", "en"].iter().any(|end| last.ends_with(end))
}

/// Names behind the maker that calls them so, and where they end: `made by Orrindale Coatings and sold as Orriflex 20`.
fn called(behind: &str, maker: &str, reader: Reader<'_>) -> Option<(Listed, usize)> {
    const CALLING: [&str; 9] = [
        "as ",
        "and sold as ",
        "and marketed as ",
        "sold as ",
        "called ",
        "named ",
        "under the name ",
        "under the names ",
        "under the trade name ",
    ];
    let rest = behind.get(maker.len()..)?;
    // `from Orrindale Coatings (Orriflex 20)`, `by Orrindale Coatings: Orriflex 20, Orriflex 30`
    let inside = rest.trim_start_matches('.').strip_prefix(" (");
    let inside = inside.and_then(|inside| Some(inside.split_once(')')?.0));
    let listing = rest
        .strip_prefix(": ")
        .map(|list| list.trim_end_matches(['.', ' ']));
    if let Some(list) = inside.or(listing) {
        let listed = reader.products(list, maker)?;
        let mut names = listed.names.iter();
        let told = reader.is_maker(maker)
            && !restricts(list)
            && names.all(|name| is_coded(&name.product) && reader.opens(&name.product));
        let end = behind.find(list)? + list.len();
        return told.then_some((listed, end));
    }
    let rest = rest.strip_prefix(',').unwrap_or(rest).strip_prefix(' ')?;
    let list = CALLING.iter().find_map(|own| rest.strip_prefix(own))?;
    let list = product_head(list, reader);
    let listed = reader.products(list, maker)?;
    let opens = listed.names.iter().all(|name| reader.opens(&name.product));
    let end = behind.find(list)? + list.len();
    (reader.is_maker(maker) && opens).then_some((listed, end))
}

/// Names behind the maker whose they are: `Orrindale Coatings' Orriflex 20 and Orriflex 30`.
pub(super) fn owned(words: &str, reader: Reader<'_>) -> Vec<Listed> {
    let mut found = Vec::new();
    for own in ["'s ", "’s ", "s' ", "s’ "] {
        for (at, _) in words.match_indices(own) {
            // The letter before the sign is the maker's.
            let kept = usize::from(own.starts_with('s'));
            let (before, behind) = (words.get(..at + kept), words.get(at + own.len()..));
            let (Some(before), Some(behind)) = (before, behind) else {
                continue;
            };
            let maker = capital_tail(before);
            let list = product_head(behind, reader);
            if reader.is_named(maker)
                && !list.is_empty()
                && let Some(listed) = reader.products(list, maker)
                && listed.names.iter().all(|name| reader.opens(&name.product))
            {
                let before = before.get(..before.len() - maker.len());
                found.push((at, labelled(before.unwrap_or_default(), listed)));
            }
        }
    }
    found.sort_by_key(|(at, _)| *at);
    found.into_iter().map(|(_, listed)| listed).collect()
}

/// Entries in brackets: `sealant (Orrindale Coatings, Orriflex 20)`.
pub(super) fn in_brackets(words: &str, reader: Reader<'_>) -> Vec<Listed> {
    let mut found = Vec::new();
    for (at, _) in words.match_indices(" (") {
        let (before, behind) = (words.get(..at), words.get(at + 2..));
        let (Some(before), Some(behind)) = (before, behind) else {
            continue;
        };
        let inside = behind.split_once(')').map_or("", |(inside, _)| inside);
        let apart = inside.contains([',', ';', ':', '"']) || inside.to_lowercase().contains(" by ");
        if inside.contains('(') || restricts(inside) || !apart {
            continue;
        }
        let listed = reader.all(inside).unwrap_or_default();
        let made = |own: &Listed| own.names.iter().all(|name| !name.maker.is_empty());
        let told = listed.iter().all(made) && listed.iter().all(|own| own.label.is_none());
        found.extend(
            listed
                .into_iter()
                .filter(|_| told)
                .map(|own| labelled(before, own)),
        );
    }
    found
}
