//! Products that an item uses by name alone, as a maker's own sheet does: `Sealant: LJ-40, 1/2 in. deep`, `Use Thornpack 4 safing`.
//!
//! A name without a maker is taken only where what stands beside it says that it is one: the label or the noun of its part, or a word for what is
//! done with it. A sentence that denies, compares or opens what it names is left as words.

use super::entry::{Listed, Reader};
use super::firm::speaks;
use super::limits::holds_measure;
use super::makers::{ends_as_firm, ends_of_makers};
use super::name::is_coded;
use super::within::{denies, explains, without_bounds};
use crate::layout::LIST_SIGNS;
use crate::model::ProductName;
use crate::naming::components_in;

/// A name in a sentence, with where it stands.
struct Run<'w> {
    words: &'w str,
    start: usize,
    end: usize,
}

/// What the words beside a name say of it.
enum Told {
    /// It is for the part that they name.
    For(String),
    /// It is used, for the part that the item is about.
    Used,
}

/// The products that a sentence uses by name, each group with the part that the words beside it name.
pub(super) fn used(words: &str, reader: Reader<'_>, of_part: bool) -> Vec<Listed> {
    // In capitals throughout, nothing tells a name from a word.
    let opens = words
        .split(|c: char| !c.is_alphanumeric())
        .any(|word| ["another", "any"].contains(&word.to_lowercase().as_str()));
    let small = words.chars().filter(|c| c.is_lowercase()).count();
    let capital = words.chars().filter(|c| c.is_uppercase()).count();
    if small <= capital || opens || denies(&without_bounds(words)) {
        return Vec::new();
    }
    let mut found: Vec<(Listed, usize)> = Vec::new();
    for run in runs(words, reader) {
        let is_quoted = words
            .get(..run.start)
            .is_some_and(|before| before.ends_with(['"', '“', '„', '«']));
        if words
            .get(run.end..)
            .is_some_and(names_part_without_products)
        {
            return Vec::new();
        }
        let is_unsure =
            parted(run.words).is_none() && reader.ordinary.is_unsure(run.words, is_quoted);
        // `X or Y`, `X; Y`
        let between = found
            .last()
            .and_then(|(_, end)| words.get(*end..run.start))
            .map(|between| between.trim_matches(['"', '“', '”', '„', '»', '«']));
        let lists = between.is_some_and(|between| ["; ", ", "].contains(&between));
        if lists && !found.last().is_some_and(|(last, _)| is_kin(last, &run)) {
            return Vec::new();
        }
        if lists || between.is_some_and(|between| [" or ", ", or "].contains(&between)) {
            if is_unsure {
                return Vec::new();
            }
            if let Some((last, end)) = found.last_mut() {
                last.names.push(name_of(run.words));
                *end = run.end;
            }
            continue;
        }
        if let Some(told) = told(words, &run, reader, of_part) {
            // What stands beside an unsure name is no surer.
            if is_unsure {
                return Vec::new();
            }
            let label = match told {
                Told::For(part) => Some(part),
                Told::Used => None,
            };
            let listed = Listed {
                label,
                names: vec![name_of(run.words)],
                ..Listed::default()
            };
            found.push((listed, run.end));
        }
    }
    let each_labelled = found.iter().all(|(listed, _)| listed.label.is_some());
    if found.len() > 1 && !each_labelled {
        return Vec::new();
    }
    found.into_iter().map(|(listed, _)| listed).collect()
}

/// Whether a name begins with the same word as those before it: one of another word may be anything.
fn is_kin(listed: &Listed, run: &Run<'_>) -> bool {
    let first = |words: &str| words.split(' ').next().map(str::to_owned);
    listed
        .names
        .iter()
        .all(|name| first(&name.product) == first(run.words))
}

fn name_of(words: &str) -> ProductName {
    let (maker, product) = parted(words).unwrap_or(("", words));
    ProductName {
        maker: maker.to_owned(),
        product: product.to_owned(),
    }
}

/// A maker that ends as a firm does, and what stands behind it.
fn parted(words: &str) -> Option<(&str, &str)> {
    ends_of_makers(words).find_map(|at| {
        let (maker, product) = (words.get(..at)?, words.get(at + 1..)?);
        ends_as_firm(maker).then_some((maker, product))
    })
}

/// The names in a sentence: runs of capitalised words, codes and numbers of which one is coined or a code.
fn runs<'w>(words: &'w str, reader: Reader<'_>) -> Vec<Run<'w>> {
    let mut found = Vec::new();
    let mut open: Option<(usize, usize)> = None;
    let mut at = 0;
    for word in words.split_inclusive(' ') {
        let start = at;
        at += word.len();
        let body = word.trim_end();
        let opens = body.len() - body.trim_start_matches(['(', '"', '“', '„', '«']).len();
        let name = body
            .get(opens..)
            .unwrap_or_default()
            .trim_end_matches([',', ';', ':', '.', ')', '"', '”', '»', '?', '!']);
        let closes = opens + name.len() < body.len();
        let begins = name.starts_with(|c: char| c.is_ascii_digit());
        let numbers = begins && name.chars().all(|c| c.is_ascii_alphanumeric() || c == '-');
        let capital =
            name.starts_with(char::is_uppercase) || numbers && open.is_some() && opens == 0;
        if opens > 0 || !capital || name.is_empty() {
            found.extend(open.take());
        }
        if capital && !name.is_empty() {
            let from = start + opens;
            let first = open.map_or(from, |(first, _)| first);
            open = Some((first, from + name.len()));
            if closes {
                found.extend(open.take());
            }
        }
    }
    found.extend(open.take());
    found
        .into_iter()
        .filter_map(|(start, end)| named(words, start, end, reader))
        .collect()
}

/// The name that a run holds, without the words of the sentence before it and a number that the word behind it measures with.
fn named<'w>(words: &'w str, start: usize, end: usize, reader: Reader<'_>) -> Option<Run<'w>> {
    let mut run = words.get(start..end)?;
    let mut start = start;
    // `Gun SmokeStop 300`: what begins a sentence has its capital from that.
    while let Some((first, rest)) = run.split_once(' ') {
        let begins = start == 0
            || words
                .get(..start)
                .is_some_and(|before| before.ends_with(". "));
        let leads = !is_key(first) && !reader.coins(first)
            || begins
                && reader.ordinary.is_coined(rest.split(' ').next()?)
                && !reader.ordinary.stands_within(first);
        if !leads {
            break;
        }
        start += first.len() + 1;
        run = rest;
    }
    let behind = words.get(end..)?.trim_start().split(' ').next()?;
    let behind = if behind.starts_with(['"', '”', '»', ')']) {
        ""
    } else {
        behind
    };
    let mut stop = end;
    if run.ends_with(|c: char| c.is_ascii_digit())
        && holds_measure(&format!("{} {behind}", run.rsplit(' ').next()?))
    {
        let (kept, number) = run.rsplit_once(' ')?;
        stop -= number.len() + 1;
        run = kept;
    }
    let coined = run.split([' ', '-']).any(|word| {
        word.chars().filter(|c| c.is_alphabetic()).count() >= 4 && reader.ordinary.is_coined(word)
    });
    let numbers = run
        .split(' ')
        .filter(|word| word.chars().all(|c| c.is_ascii_digit()));
    let first = run.split(' ').next()?;
    // `HOSE STREAM Band`: words in capitals head what follows; `Config. 1` is cut short.
    let heads = first.len() > 4 && first.chars().all(char::is_uppercase);
    let is_short_form = ["Config", "Conf", "Alt", "Var"].contains(&first);
    let whole = (reader.ordinary.is_coined(first) || is_key(first)) && !is_standard(first);
    (whole
        && !heads
        && !is_short_form
        && (coined || is_key(first))
        && numbers.count() <= 1
        && !ends_as_firm(run)
        && !speaks(run)
        && reader.is_product(parted(run).map_or(run, |(_, product)| product)))
    .then_some(Run {
        words: run,
        start,
        end: stop,
    })
}

/// Whether a word is a code with a sign in it, as makers number what they make: `LJ-40`, `TG-P`.
fn is_key(word: &str) -> bool {
    word.contains('-')
        && word.starts_with(char::is_uppercase)
        && !word.contains(char::is_lowercase)
        && word
            .split('-')
            .next()
            .is_some_and(|head| head.len() >= 2 && head.chars().all(char::is_uppercase))
}

/// Whether a word begins the number of a standard, a section of steel or a document.
fn is_standard(word: &str) -> bool {
    const OWN: [&str; 14] = [
        "ASTM", "ANSI", "EN", "UL", "ULC", "ISO", "DIN", "BS", "AS", "NFPA", "CAN", "CSA", "ETAG",
        "EAD",
    ];
    OWN.contains(&word.split('-').next().unwrap_or_default())
}

/// What the words beside a name make of it: none where nothing says that it is used.
fn told(words: &str, run: &Run<'_>, reader: Reader<'_>, of_part: bool) -> Option<Told> {
    const DOING: [&str; 24] = [
        "use", "using", "apply", "spray", "gun", "pour", "trowel", "brush", "install", "fit",
        "inject", "stir", "in", "with", "of", "cut", "lay", "roll", "tool", "push", "fill",
        "called", "prime", "on",
    ];
    let before = words
        .get(..run.start)?
        .trim_end_matches(['(', '"', '“', '„', '«'])
        .trim_end();
    let behind = words.get(run.end..)?.trim_start_matches(['"', '”', '»']);
    let clause = before.rsplit([';', '.']).next().unwrap_or_default();
    let coded = is_coded(run.words);
    if names_document(clause) || explains(behind) {
        return None;
    }
    if let Some(label) = clause.strip_suffix(':') {
        let label = label.trim().trim_start_matches(LIST_SIGNS).trim();
        return (coded && reader.is_label(label))
            .then(|| part(label).map_or(Told::Used, Told::For));
    }
    // A code alone may as well mark a joint or a system.
    if is_key(run.words.split(' ').next()?) {
        return None;
    }
    // `the strip Harvane DH Block`, `adhesive (Selwick EP-2)`
    if let Some(noun) = part_at_end(clause).filter(|_| coded && !ends_in_firm(clause, reader)) {
        return Some(Told::For(noun));
    }
    let first = run.words.split(' ').next().unwrap_or_default();
    let opens = clause.trim_matches([' ', '•', '-', '*', '–']).is_empty();
    let told = coded && (!opens || reader.ordinary.stands_within(first));
    // `Thornpack 4 safing`
    if let Some(noun) = part_at_start(behind).filter(|_| told) {
        return Some(Told::For(noun));
    }
    let verb = clause.rsplit(' ').next().unwrap_or_default().to_lowercase();
    let alone = of_part && clause.ends_with(|c: char| c.is_lowercase()) && !run.words.contains(' ');
    if DOING.contains(&verb.as_str()) && (coded || alone) {
        let loose = ["in", "of", "on", "with"].contains(&verb.as_str());
        return (!loose || of_part && (coded || verb != "in")).then_some(Told::Used);
    }
    let goes_on = [",", " is a ", " applied", " installed", "."]
        .iter()
        .any(|own| behind.starts_with(own))
        || behind.is_empty();
    (opens && goes_on && of_part && told).then_some(Told::Used)
}

/// Whether words name a document, and so no use of what it is about: `Installation data sheet 14-D:`.
fn names_document(words: &str) -> bool {
    const SAYING: [&str; 8] = [
        "sheet",
        "bulletin",
        "leaflet",
        "brochure",
        "manual",
        "guide",
        "catalogue",
        "catalog",
    ];
    words
        .split(|c: char| !c.is_alphanumeric())
        .any(|word| SAYING.contains(&word.to_lowercase().as_str()))
}

/// The words of a label, where they name a part.
fn part(label: &str) -> Option<String> {
    (!components_in(label).is_empty()).then(|| label.to_owned())
}

/// The noun of a part that a text ends with.
fn part_at_end(text: &str) -> Option<String> {
    let text = text.trim_end_matches([',', ' ']);
    let named = components_in(text);
    let (component, _, at) = named.last()?;
    (at.end == text.len() && component.property("product").is_some())
        .then(|| text.get(at.clone()).map(str::to_owned))?
}

/// Whether the last word of a text ends a firm's name, as `Coatings` of `Orrindale Coatings,` does, and so names no part.
fn ends_in_firm(text: &str, reader: Reader<'_>) -> bool {
    let text = text.trim_end_matches([',', ' ']);
    text.rsplit_once(' ').is_some_and(|(before, last)| {
        let first = before.rsplit(' ').next().unwrap_or_default();
        last.starts_with(char::is_uppercase)
            && first.starts_with(char::is_uppercase)
            && reader.coins(first)
    })
}

/// Whether a text begins with the noun of a part of which no product is asked, right behind a name: ` pins`, ` screws`.
fn names_part_without_products(text: &str) -> bool {
    let next = text
        .strip_prefix(' ')
        .and_then(|text| text.split(' ').next());
    let noun = next.map_or("", |next| next.trim_end_matches([',', ';', '.', ':']));
    let mut named = components_in(noun).into_iter().peekable();
    noun.starts_with(char::is_lowercase)
        && named.peek().is_some()
        && named.all(|(component, ..)| component.name == "fastener")
}

/// The noun of a part that a text begins with, right behind a name: ` sealant`, ` joint coating`.
fn part_at_start(text: &str) -> Option<String> {
    const MOST: usize = 3;
    let text = text.strip_prefix(' ')?;
    let head: Vec<&str> = text.split(' ').take(MOST).collect();
    let head = head.join(" ");
    let head = head.split([',', ';', '.', '(', ':']).next()?;
    if !head.starts_with(char::is_lowercase) {
        return None;
    }
    let named = components_in(head);
    named.iter().find_map(|(component, _, at)| {
        let before = head.get(..at.start)?;
        let near = before.split_whitespace().count() <= 1
            && ![
                "or", "and", "to", "in", "on", "over", "by", "with", "for", "of", "the",
            ]
            .contains(&before.trim());
        (near && component.property("product").is_some())
            .then(|| head.get(at.clone()).map(str::to_owned))?
    })
}
