//! Quoted names within a sentence, with the maker beside them.

use core::ops::Range;

use super::super::beside::lead_to_maker;
use super::super::entry::{Listed, Reader};
use super::super::makers::ends_as_firm;
use super::capitals::{capital_head, capital_tail};
use super::denied::explains;
use super::labelled;
use crate::naming::components_in;

/// The runs of quoted names that only commas and conjunctions part. A sign of inches opens no quotation.
pub(super) fn quoted_groups(words: &str) -> Vec<Range<usize>> {
    const LONGEST: usize = 48;
    let mut groups: Vec<Range<usize>> = Vec::new();
    let mut at = 0;
    while let Some(open) = words
        .get(at..)
        .and_then(|rest| rest.find(['"', '“', '„', '«']))
        .map(|found| at + found)
    {
        let sign = words.get(open..).and_then(|rest| rest.chars().next());
        let len = sign.map_or(1, char::len_utf8);
        let before = words.get(..open).unwrap_or_default();
        let opens = before.is_empty() || before.ends_with([' ', '(', '/']);
        let behind = words.get(open + len..).unwrap_or_default();
        let close = behind
            .find(['"', '”', '“', '»'])
            .filter(|close| opens && *close <= LONGEST && *close > 0);
        let Some(close) = close else {
            at = open + len;
            continue;
        };
        let closing = behind
            .get(close..)
            .and_then(|rest| rest.chars().next())
            .map_or(1, char::len_utf8);
        let end = open + len + close + closing;
        let joined = groups.last().and_then(|last| words.get(last.end..open));
        let goes_on = joined.is_some_and(|between| {
            [",", "or", "and", ", or", ", and", "OR", "AND"].contains(&between.trim())
        });
        match groups.last_mut().filter(|_| goes_on) {
            Some(last) => last.end = end,
            None => groups.push(open..end),
        }
        at = end;
    }
    groups
}

/// A run of quoted names with the maker beside it, or without one; and where it ends.
pub(super) fn of_quoted(
    words: &str,
    group: &Range<usize>,
    reader: Reader<'_>,
) -> Option<(Listed, usize)> {
    let told = |listed: &Listed, maker: &str| {
        let mut names = listed.names.iter();
        ends_as_firm(maker) || names.all(|name| reader.is_product(&name.product))
    };
    let list = words.get(group.clone())?;
    let before = words.get(..group.start)?;
    let behind = words.get(group.end..)?;
    let first = list.trim_matches(|c: char| !c.is_alphanumeric());
    if !first.starts_with(|c: char| c.is_uppercase() || c.is_ascii_digit()) {
        return None;
    }
    let noun = noun_at_start(behind);
    let led_behind = |from: usize| {
        let (maker, end) = led(behind.get(from..)?, reader)?;
        Some((maker, from + end))
    };
    if let Some((maker, end)) = led_behind(0).or_else(|| led_behind(noun?)) {
        let listed = reader.products(list, maker)?;
        if !told(&listed, maker) {
            return None;
        }
        return Some((labelled(before, listed), group.end + end));
    }
    let tidy = before
        .trim_end()
        .trim_end_matches([',', '(', ':'])
        .trim_end();
    let tidy = tidy.trim_end_matches("'s").trim_end_matches("’s");
    let tail = capital_tail(tidy);
    if !tail.is_empty() && reader.is_named(tail) {
        let listed = reader.products(list, tail)?;
        if !told(&listed, tail) {
            return None;
        }
        let before = tidy.get(..tidy.len() - tail.len())?;
        return Some((labelled(before, listed), group.end));
    }
    if explains(behind) {
        return None;
    }
    let listed = reader.products(list, "")?;
    let all = listed.names.iter().all(|name| {
        reader.is_product(&name.product) && !reader.ordinary.is_unsure(&name.product, true)
    });
    all.then(|| (labelled(before, listed), group.end))
}

/// How long the noun of a part is that stands between a name and what leads to its maker: ` acrylic compound` of `"Orriflex" acrylic compound (Orrindale Chemie)`.
fn noun_at_start(behind: &str) -> Option<usize> {
    const MOST: usize = 3;
    const LEADS: [&str; 5] = [" (", " by ", " made by ", " from ", ", made by "];
    let end = LEADS.iter().filter_map(|lead| behind.find(lead)).min()?;
    let noun = behind.get(..end)?.strip_prefix(' ')?;
    let small = noun
        .chars()
        .all(|c| c.is_lowercase() || c == ' ' || c == '-');
    let short = (1..=MOST).contains(&noun.split(' ').count());
    (small && short && !components_in(noun).is_empty()).then_some(end)
}

/// The maker that a lead names right behind a name, and where it ends: ` of the Pellowfield Rubber Company`, ` (Ombrel Kemi)`.
fn led<'w>(behind: &'w str, reader: Reader<'_>) -> Option<(&'w str, usize)> {
    let in_brackets = behind.starts_with(" (");
    let bare = in_brackets || behind.starts_with(", ");
    let from = lead_to_maker(&behind.to_ascii_lowercase()).or(bare.then_some(2))?;
    let maker = capital_head(behind.get(from..)?);
    let is_maker = if in_brackets {
        reader.is_named(maker)
    } else {
        reader.is_maker(maker)
    };
    is_maker.then_some((maker, from + maker.len()))
}

pub(super) fn is_short_form(word: &str) -> bool {
    [
        "Inc.", "Co.", "Corp.", "Ltd.", "Bros.", "Mfg.", "Inc.,", "INC.", "CO.", "CORP.", "LTD.",
    ]
    .contains(&word)
}
