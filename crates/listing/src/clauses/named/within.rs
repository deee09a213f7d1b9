//! Names of products within a sentence that says more: quoted, or beside their maker.

use core::ops::Range;

use super::beside::lead_to_maker;
use super::entry::{Listed, Reader};
use super::makers::ends_as_firm;
use super::name::is_coded;
use super::{REFUSING, restricts};
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

/// Whether a sentence says of the names in it that they are not to be used, or are no names of products.
pub(super) fn denies(words: &str) -> bool {
    const SAYING: &[&str] = &[
        "other",
        "not",
        "no",
        "never",
        "none",
        "except",
        "discontinued",
        "equal",
        "equivalent",
        "similar",
        "withdrawn",
        "marked",
        "marking",
        "label",
        "labelled",
        "labeled",
        "legend",
        "stamped",
        "reads",
        "drawing",
        "drawings",
        "titled",
        "word",
        "words",
        "without",
        "instead",
        "unlike",
        "than",
        "report",
        "sponsor",
        "client",
        "trademark",
        "formerly",
        "such",
        "example",
        "examples",
        "include",
        "includes",
        "including",
        "consent",
    ];
    words
        .split(|c: char| !c.is_alphanumeric())
        .map(str::to_lowercase)
        .any(|word| SAYING.contains(&word.as_str()) || REFUSING.contains(&word.as_str()))
}

/// A sentence without the words that bound its numbers: "not less than" denies nothing.
pub(super) fn without_bounds(words: &str) -> String {
    const BOUNDING: [&str; 12] = [
        "not less than",
        "not more than",
        "no less than",
        "no more than",
        "not exceeding",
        "not exceed",
        "not under",
        "not over",
        "no fewer than",
        "less than",
        "more than",
        "wider than",
    ];
    BOUNDING
        .iter()
        .fold(words.to_lowercase(), |words, own| words.replace(own, " "))
}

/// The runs of quoted names that only commas and conjunctions part. A sign of inches opens no quotation.
fn quoted_groups(words: &str) -> Vec<Range<usize>> {
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

/// Whether words behind a name explain it, or say of what parts it is a whole: `"Cut" is the thickness`, `"Seal 900", consisting of strips`.
pub(super) fn explains(behind: &str) -> bool {
    const EXPLAINING: [&str; 5] = [
        " is the ",
        " means ",
        " stands for ",
        ", consisting of ",
        " consisting of ",
    ];
    EXPLAINING.iter().any(|own| behind.starts_with(own))
}

/// A run of quoted names with the maker beside it, or without one; and where it ends.
fn of_quoted(words: &str, group: &Range<usize>, reader: Reader<'_>) -> Option<(Listed, usize)> {
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

/// Names without quotation, beside their maker: `Castramix 17 or Castramix 17-HS, both by Denholm Spray Works`, `Odelith 90 (Steinwerk Odel GmbH)`.
fn unquoted(words: &str, reader: Reader<'_>) -> Vec<Listed> {
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
fn owned(words: &str, reader: Reader<'_>) -> Vec<Listed> {
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
fn in_brackets(words: &str, reader: Reader<'_>) -> Vec<Listed> {
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

/// The run of capitalised words that a text begins with.
fn capital_head(text: &str) -> &str {
    const LINKS: [&str; 4] = ["of", "and", "&", "the"];
    let mut end = 0;
    let mut at = 0;
    for word in text.split_inclusive(' ') {
        let bare = word.trim_end();
        let closes =
            bare.ends_with([',', ';', ')', ':']) || bare.ends_with('.') && !is_short_form(bare);
        let name = bare.trim_end_matches([',', ';', ')', ':', '.']);
        let capital = name.starts_with(char::is_uppercase);
        if !(capital || LINKS.contains(&name) && !closes) {
            break;
        }
        at += word.len();
        if capital {
            let kept = if closes { name.len() } else { bare.len() };
            end = at - word.len() + kept;
        }
        if closes {
            break;
        }
    }
    text.get(..end).unwrap_or_default()
}

fn is_short_form(word: &str) -> bool {
    [
        "Inc.", "Co.", "Corp.", "Ltd.", "Bros.", "Mfg.", "Inc.,", "INC.", "CO.", "CORP.", "LTD.",
    ]
    .contains(&word)
}

/// The run of capitalised words that a text ends with.
fn capital_tail(text: &str) -> &str {
    let mut start = text.len();
    let mut at = text.len();
    for word in text.rsplit(' ') {
        at = at.saturating_sub(word.len());
        let capital = word.starts_with(char::is_uppercase) && !word.ends_with([',', ';', ':']);
        let joins = [
            "OR", "AND", "BY", "FROM", "WITH", "USE", "Use", "Either", "EITHER",
        ];
        let stops = word.ends_with('.') && !is_short_form(word) || joins.contains(&word);
        if stops || !(capital || ["&", "of", "and"].contains(&word) && start < text.len()) {
            break;
        }
        if capital {
            start = at;
        }
        at = at.saturating_sub(1);
    }
    text.get(start..).unwrap_or_default()
}

/// The products that a text ends with, those that a conjunction joins included.
fn product_tail<'w>(text: &'w str, reader: Reader<'_>) -> &'w str {
    // In capitals throughout, what is done with a product begins big, too.
    const STOPS: [&str; 14] = [
        "USE", "APPLY", "BE", "IS", "ARE", "SHALL", "WITH", "OF", "THE", "IN", "INSTALL", "USING",
        "FIT", "PROVIDE",
    ];
    let mut start = text.len();
    let mut at = text.len();
    for word in text.rsplit(' ') {
        at = at.saturating_sub(word.len());
        let named = word.starts_with(|c: char| c.is_uppercase() || c.is_ascii_digit())
            && !word.ends_with([';', ':', '.', '"'])
            && !word.contains(['(', ')']);
        let joins = ["or", "and"].contains(&word) && start < text.len();
        let stops = STOPS.contains(&word);
        if stops || !named && !joins {
            break;
        }
        if named {
            start = at;
        }
        at = at.saturating_sub(1);
    }
    let mut tail = text.get(start..).unwrap_or_default();
    // The first word of a sentence has its capital from that: `Use Quennslab 80`, `Sealant Pennard Pourable`.
    if let Some((first, rest)) = tail.split_once(' ')
        && !reader.coins(first)
        && (first.len() > 3 || first.contains(char::is_lowercase))
        && reader.products(rest, "").is_some()
    {
        tail = rest;
    }
    let opens = tail.len() == text.trim_start().len() && !tail.contains(' ') && !is_coded(tail);
    if !opens && reader.products(tail, "").is_some() {
        tail
    } else {
        ""
    }
}

/// The products that a text begins with, those that a conjunction joins included.
fn product_head<'w>(text: &'w str, reader: Reader<'_>) -> &'w str {
    let mut end = 0;
    let mut at = 0;
    for word in text.split_inclusive(' ') {
        let bare = word.trim_end();
        let name = bare.trim_matches([',', ';', ':', '.', ')', '"', '“', '”']);
        let named = name.starts_with(|c: char| c.is_uppercase() || c.is_ascii_digit());
        let joins = ["or", "and"].contains(&bare) && end > 0;
        if !named && !joins {
            break;
        }
        at += word.len();
        if named {
            end = at - word.len() + bare.trim_end_matches([',', ';', ':', '.', ')']).len();
        }
        if bare.ends_with([',', ';', ':', '.', ')']) {
            break;
        }
    }
    let list = text.get(..end).unwrap_or_default();
    // `Orriflex 20 mm`, `Orriflex Spray is`: a number that is measured is none of a name.
    let next = text.get(end..).unwrap_or_default().trim_start();
    let next = next.split(' ').next().unwrap_or_default();
    let ending = list.rsplit(' ').next().unwrap_or_default();
    let measured = super::holds_measure(&format!("{ending} {next}"));
    if !measured && reader.products(list, "").is_some() {
        list
    } else {
        ""
    }
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

/// Whether a sentence says for what its names are, in words that only a person can judge.
pub(super) fn is_conditional(words: &str) -> bool {
    const SAYING: &[&str] = &[
        "where",
        "when",
        "if",
        "option",
        "options",
        "configuration",
        "configurations",
        "alternate",
        "alternative",
        "alternatively",
        "lieu",
        "place",
        "unless",
        "above",
        "below",
        "over",
        "may",
        "substituted",
        "optional",
        "only",
        "case",
    ];
    restricts(words)
        || words
            .split(|c: char| !c.is_alphanumeric())
            .any(|word| SAYING.contains(&word.to_lowercase().as_str()))
}
