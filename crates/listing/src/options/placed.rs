//! What each item's head says of it as an option, placed among the other items.

use std::collections::BTreeMap;

use super::ItemOption;
use super::cited::cited;
use super::document::Document;
use super::head::Head;
use super::inherits::beside_the_other;
use super::joined::joined;
use super::legend;
use super::named::named;
use super::offer::{Cue, cue, optional, optional_in_some, speaks_of_alternative};
use super::offered::offered;
use super::paths::Paths;
use super::reach::{Reach, Said, configurations};
use crate::outline::OutlineItem;

/// Said where nothing falls away by words that offer an alternative.
const UNPLACED: &str = "the words speak of an alternative, but not plainly of which; all of it stays required until a person decides";

/// Said where an item may be left out in some joints.
const IN_SOME: &str =
    "the words leave it out in some joints only; all of it stays required until a person decides";

/// What each item says of itself, the lists of choices apart.
pub(super) fn placed(source: &str, items: &[OutlineItem]) -> Vec<ItemOption> {
    let paths = Paths::of(items.iter().map(|item| item.path.clone()));
    let document = Document::of(source);
    let optional_signs = legend::optional_signs(source);
    let mut found: Vec<ItemOption> = Vec::new();
    let mut beside: BTreeMap<Option<usize>, Vec<usize>> = BTreeMap::new();
    for (index, item) in items.iter().enumerate() {
        let head = Head::of(source, item);
        let before = beside.entry(item.parent).or_default();
        let bases = || {
            let bases = before
                .iter()
                .filter(|other| found.get(**other).is_some_and(|option| !option.is_choice()));
            bases.filter_map(|other| items.get(*other))
        };
        let around = item.parent.and_then(|parent| items.get(parent));
        let mut option = read(&head, item, bases, around, &paths);
        if !option.is_choice()
            && let Some(bases) = joined(source, &head, items, &found, index, before)
        {
            option.replaces = bases;
            option.doubt = None;
            option.offered = None;
        }
        if !option.is_choice() && legend::bears(source, item, &optional_signs) {
            option.optional = true;
        }
        offer(&document, &head, item.parent.is_some(), &mut option);
        found.push(option);
        before.push(index);
    }
    found
}

/// `bases` are the items beside it that stand before it and are no options; `around` is the item that it is a part of.
fn read<'i, B: Iterator<Item = &'i OutlineItem>>(
    head: &Head,
    item: &OutlineItem,
    bases: impl Fn() -> B,
    around: Option<&OutlineItem>,
    paths: &Paths,
) -> ItemOption {
    let own = &item.path;
    let title = item.title.to_lowercase();
    let configured = configurations(&title)
        .map(|(names, _)| names)
        .or_else(|| {
            title
                .is_empty()
                .then(|| bracketed_configurations(head.words()))?
        })
        .unwrap_or_default();
    let mut option = ItemOption {
        configurations: configured,
        ..ItemOption::default()
    };
    if let Some(cue) = cue(head) {
        let citation = cited(own, head.written(), cue.end, paths);
        let place = if citation.items.is_empty() {
            named(head, cue.end, bases()).map(|(path, end)| (vec![path], end))
        } else {
            Some((citation.items, citation.end))
        };
        match place {
            // "Alternate to Item 3, mandatory for 3 hr joints"
            Some((_, end)) if is_asked_for(head, cue, end) => {
                let end = head.end_of_phrase(end, cue.bracketed);
                doubt(head, &mut option, (cue.start, end));
            }
            Some((items, end)) => {
                let said = if cue.bracketed {
                    Said::Bracketed
                } else {
                    Said::Sentence
                };
                replace(head, &mut option, items, (cue.start, end), said);
            }
            None if is_of_an_item(head, cue, own, paths)
                || named(head, cue.end, around.into_iter()).is_some() =>
            {
                let end = head.end_of_phrase(cue.end, cue.bracketed);
                in_part(head, &mut option, (cue.start, end));
            }
            None => {
                let end = head.end_of_phrase(cue.end, cue.bracketed);
                option.offered = Some(head.span(cue.start, end));
                doubt(head, &mut option, (cue.start, end));
            }
        }
    } else if let Some(cue) = bracketed_alternate(head) {
        let end = head.end_of_phrase(cue.end, true);
        in_part(head, &mut option, (cue.start, end));
    } else if let Some(alternate) = bare_alternate(head) {
        let mut bases = bases();
        if let (Some(base), None) = (bases.next(), bases.next()) {
            let base = vec![base.path.clone()];
            replace(head, &mut option, base, alternate, Said::Title);
        } else {
            option.offered = Some(head.span(alternate.0, alternate.1));
            doubt(head, &mut option, alternate);
        }
    } else if let Some(opening) = opening_alternative(head) {
        let mut bases = bases();
        if let (Some(base), None) = (bases.next(), bases.next()) {
            let base = vec![base.path.clone()];
            replace(head, &mut option, base, opening, Said::Sentence);
        } else {
            doubt(head, &mut option, opening);
        }
    } else if let Some(cue) = optional(head) {
        option.optional = true;
        // "(Option G)" is a name; "(option, 2 h only)" says what it is confined to.
        let limits = head.part(cue.end, cue.end + 1);
        option.labelled =
            head.part(cue.start, cue.end) == "option" && ![",", ";"].contains(&limits);
        if cue.bracketed && !option.labelled {
            let to = head.end_of_phrase(cue.end, true);
            let reach = Reach::of(head, cue.end, to, Said::Bracketed);
            confine(head, &mut option, &reach);
        }
    } else if let Some((start, end)) = optional_in_some(head) {
        option.doubt = Some((head.span(start, end), IN_SOME.to_owned()));
    } else if let Some(words) = speaks_of_alternative(head) {
        doubt(head, &mut option, words);
    }
    option
}

/// Whether the words behind what an alternative replaces ask for it in some joints.
fn is_asked_for(head: &Head, cue: Cue, end: usize) -> bool {
    let said = head.part(end, head.end_of_phrase(end, cue.bracketed));
    let asked = ["mandatory", "required", "compulsory"];
    let denied = said.contains("not ");
    !denied && asked.iter().any(|word| said.contains(word))
}

/// The configurations that open the bracket behind a name, where the text has no title: `Board-lined wall (Configuration A only; joints up to 75 mm). Studs ...`
fn bracketed_configurations(words: &str) -> Option<Vec<String>> {
    const LONGEST: usize = 8;
    let (name, bracket) = words.split_once(" (")?;
    let name = name.trim_start_matches(|c: char| !c.is_alphabetic());
    let plain =
        !name.contains(['.', ':', ';', ',']) && !name.contains(|c: char| c.is_ascii_digit());
    let first = bracket.split([',', ';', ')']).next()?;
    let (names, says_more) = configurations(first)?;
    (plain && !says_more && name.split_whitespace().count() <= LONGEST).then_some(names)
}

/// Marks an item that is offered as one of several, and whose place among them isn't known.
fn offer(document: &Document<'_>, head: &Head, is_part: bool, option: &mut ItemOption) {
    if option.is_choice() || option.offered.is_some() || !option.configurations.is_empty() {
        return;
    }
    // What may be left out in some joints only is asked for in the rest.
    if optional_in_some(head).is_some() {
        return;
    }
    if let Some((start, end)) = offered(head, document, is_part) {
        option.offered = Some(head.span(start, end));
    }
}

fn replace(
    head: &Head,
    option: &mut ItemOption,
    items: Vec<String>,
    words: (usize, usize),
    said: Said,
) {
    let (start, end) = words;
    let to = head.end_of_phrase(end, said == Said::Bracketed);
    let reach = Reach::of(head, end, to, said);
    confine(head, option, &reach);
    if said == Said::Sentence
        && let Some((start, end)) = permitted_for(head, end)
    {
        option.limits.push(head.span(start, end));
    }
    if reach.in_part {
        let replaced = items.join(", ");
        option.optional = true;
        option.doubt = Some((
            head.span(start, to),
            format!(
                "the words replace only a part of {replaced}; the whole of it stays required until a person decides"
            ),
        ));
    } else {
        option.replaces = items;
        beside_the_other(head, option);
    }
}

/// What an alternate may be used for, said behind what it is: `As an alternate to Item 3A, foam may be used for walls of max 2 hr rating.`
fn permitted_for(head: &Head, from: usize) -> Option<(usize, usize)> {
    const PERMITTED: [&str; 8] = [
        "may be used ",
        "may be installed ",
        "may be provided ",
        "may be substituted ",
        "can be used ",
        "is permitted ",
        "are permitted ",
        "is allowed ",
    ];
    const LEADS: [&str; 8] = [
        "for ", "in ", "where ", "when ", "if ", "only ", "with ", "at ",
    ];
    let words = head.words();
    let end = (from..words.len())
        .find(|at| {
            words.get(*at..).is_some_and(|rest| rest.starts_with('.'))
                && head.sentence_ends(*at, at + 3)
        })
        .unwrap_or_else(|| words.trim_end_matches(['.', ' ']).len());
    let said = words.get(from..end)?;
    let start = PERMITTED
        .iter()
        .find_map(|words| Some(said.find(words)? + words.len()))?;
    let rest = said.get(start..)?;
    let place = ["in place of", "in lieu of", "in the place of"];
    let leads = LEADS.iter().any(|lead| rest.starts_with(lead))
        && !place.iter().any(|words| rest.starts_with(words));
    leads.then_some((from + start, end))
}

fn confine(head: &Head, option: &mut ItemOption, reach: &Reach) {
    option.limits = reach
        .limits
        .iter()
        .map(|(start, end)| head.span(*start, *end))
        .collect();
    for name in &reach.configurations {
        if !option.configurations.contains(name) {
            option.configurations.push(name.clone());
        }
    }
}

/// What stands in the place of a part may be left out, and all of the rest stays.
fn in_part(head: &Head, option: &mut ItemOption, words: (usize, usize)) {
    let span = head.span(words.0, words.1);
    option.optional = true;
    option.limits = vec![span];
    let why = "the words replace a part; the whole of it stays required until a person decides";
    option.doubt = Some((span, why.to_owned()));
}

fn doubt(head: &Head, option: &mut ItemOption, words: (usize, usize)) {
    option.doubt = Some((head.span(words.0, words.1), UNPLACED.to_owned()));
}

/// Whether the words speak of a part of an item: "the top track of Item 2A".
fn is_of_an_item(head: &Head, cue: Cue, own: &str, paths: &Paths) -> bool {
    let end = head.end_of_phrase(cue.end, cue.bracketed);
    let part = head
        .part(cue.end, end)
        .split([',', ';'])
        .next()
        .unwrap_or_default();
    let of = part.find(" of ").map(|at| cue.end + at + " of".len());
    of.is_some_and(|of| {
        !cited(
            own,
            head.written().get(..end).unwrap_or_default(),
            of,
            paths,
        )
        .items
        .is_empty()
    })
}

/// `(Alternate in flutes only)`: said in brackets at the head, with nothing that it is an alternate to.
fn bracketed_alternate(head: &Head) -> Option<Cue> {
    let words = head.words();
    let start = words
        .find("(alternate")
        .or_else(|| words.find("(alternative"))?
        + 1;
    let end = start + words.get(start..)?.find([' ', ',', ';', ')'])?;
    let whole = matches!(head.part(start, end), "alternate" | "alternative");
    // "Support (Alternate A). ... Support (Alternate B). ..." tells its own parts apart.
    let another = words
        .get(end..)
        .is_some_and(|rest| rest.contains("(alternate") || rest.contains("(alternative"));
    let own = start < head.title_end || !head.sentence_ends(head.title_end, start);
    (whole && own && !another).then_some(Cue {
        start,
        end,
        bracketed: true,
    })
}

/// `As an alternative, concrete blocks`: the first words of an item without a title.
fn opening_alternative(head: &Head) -> Option<(usize, usize)> {
    const OPENINGS: [&str; 4] = [
        "as an alternative,",
        "as an alternate,",
        "alternatively,",
        "alternately,",
    ];
    let untitled = head.title_end <= head.title_start + 1;
    let all = head.words().get(head.title_start..)?;
    let words = all.trim_start_matches([' ', '-', '–', '—', '.']);
    let start = head.title_start + all.len() - words.len();
    let opening = OPENINGS
        .iter()
        .find(|opening| words.starts_with(**opening))?;
    untitled.then(|| (start, start + opening.len() - 1))
}

/// `Alternate: hollow-core units`, `Alternate A, stud wall`: the words by which an item begins that names nothing it is an alternate to.
fn bare_alternate(head: &Head) -> Option<(usize, usize)> {
    let start = head.title_start;
    let words = head.part(start, head.words().len());
    let lead = words.len() - words.trim_start().len();
    let words = words.trim_start();
    let rest = words
        .strip_prefix("alternate")
        .or_else(|| words.strip_prefix("alternative"))?;
    let mut end = words.len() - rest.len();
    let label = rest.strip_prefix(' ').filter(|rest| {
        let mut chars = rest.chars();
        chars.next().is_some_and(char::is_alphanumeric)
            && chars.next().is_some_and(|c| !c.is_alphanumeric())
    });
    end += if label.is_some() { 2 } else { 0 };
    let after = words.get(end..)?;
    let ends = after.starts_with([',', ':'])
        || [" - ", " -- ", " — ", " – ", "."]
            .iter()
            .any(|dash| after.starts_with(dash));
    ends.then(|| (start + lead, start + lead + end))
}
