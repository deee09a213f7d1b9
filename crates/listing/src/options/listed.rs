//! An item whose parts are a list of which one is built: "Wall: one of the following", "Either of these", "Use any one of the walls below".

use super::cited::cited;
use super::head::Head;
use super::paths::Paths;
use crate::layout::Flow;
use crate::model::Span;
use crate::outline::{OutlineItem, Paragraph};

/// Words that leave the choice among what follows.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Lead {
    /// One of what follows, and how many there must be if the words tell.
    One(Option<usize>),
    /// What the thing may be, of which it is one where that says what it is made of.
    MayBe,
    /// A choice, but not plainly of one.
    Unclear,
}

/// The words in the own text of an item that leave the choice among its parts, with their place.
pub(super) fn lead(source: &str, item: &OutlineItem) -> Option<(Lead, Span)> {
    let mut headings = vec![item.heading];
    headings.extend(item.more_heading.iter().copied());
    let texts = item
        .paragraphs
        .iter()
        .filter_map(|paragraph| match paragraph {
            Paragraph::Text(pieces) => Some(pieces.clone()),
            _ => None,
        });
    let texts = core::iter::once(headings).chain(texts);
    let found = texts.filter_map(|pieces| {
        let flow = Flow::of(source, pieces);
        lead_of(flow.lower()).map(|(lead, at, end)| (lead, flow.span(at, end)))
    });
    found.into_iter().next()
}

/// The parts of an item of which its own text says by name that one is built: "One of Items 2A, 2B or 2C shall be used", "Use one of Items 3A and 3B".
///
/// It would misread a sentence that only cites such a choice which is made elsewhere; so it must say "use" and name the item's own parts.
pub(super) fn named_choices(source: &str, item: &OutlineItem, parts: &Paths) -> Vec<String> {
    let texts = item
        .paragraphs
        .iter()
        .filter_map(|paragraph| match paragraph {
            Paragraph::Text(pieces) => Some(Flow::of(source, pieces.iter().copied())),
            _ => None,
        });
    let heading = core::iter::once(item.heading).chain(item.more_heading.iter().copied());
    let heading = Flow::of(source, heading);
    let mut texts = texts.peekable();
    let first = texts
        .peek()
        .and_then(|first| bracketed_by_name(item, first, parts));
    if let Some(choices) = bracketed_by_name(item, &heading, parts).or(first) {
        return choices;
    }
    texts
        .find_map(|flow| {
            chosen_by_name(item, &flow, parts).or_else(|| told_by_name(item, &flow, parts))
        })
        .unwrap_or_default()
}

/// `FACE SEAL (one of 3A, 3B)`: in a bracket that says nothing else.
fn bracketed_by_name(item: &OutlineItem, flow: &Flow, parts: &Paths) -> Option<Vec<String>> {
    const LEADS: [&str; 5] = [
        "(one of ",
        "(either ",
        "(use one of ",
        "(use ",
        "(use either ",
    ];
    let lower = flow.lower();
    let mut leads = LEADS.iter();
    let from = leads.find_map(|lead| Some(lower.find(lead)? + lead.len()))?;
    let one = lower.get(..from)?.ends_with("one of ");
    let citation = cited(&item.path, flow.text(), from, parts);
    let named = lower.get(from..citation.end)?;
    let whole = lower.get(citation.end..)?.starts_with(')');
    let or = named.contains(" or ") && !named.contains(" and ") || one && !named.contains("and/or");
    (citation.items.len() > 1 && whole && or).then_some(citation.items)
}

/// `Use 2A or 2B.`, `Either 2A or 2B:`, as a whole sentence.
fn told_by_name(item: &OutlineItem, flow: &Flow, parts: &Paths) -> Option<Vec<String>> {
    let lower = flow.lower();
    crate::sentences::sentences(flow.text())
        .into_iter()
        .find_map(|range| {
            let sentence = lower.get(range.clone())?;
            let told = ["use either ", "use ", "either "];
            let lead = told.iter().find(|lead| sentence.starts_with(*lead))?;
            let citation = cited(&item.path, flow.text(), range.start + lead.len(), parts);
            let named = lower.get(range.start + lead.len()..citation.end)?;
            let rest = lower.get(citation.end..range.end)?;
            let whole = rest.trim().trim_end_matches(['.', ':']).is_empty();
            let or = named.contains(" or ") && !named.contains(" and ");
            (citation.items.len() > 1 && whole && or).then_some(citation.items)
        })
}

fn chosen_by_name(item: &OutlineItem, flow: &Flow, parts: &Paths) -> Option<Vec<String>> {
    const CUES: [&str; 5] = [
        "one of items ",
        "one of the items ",
        "only one of items ",
        "either of items ",
        "either item ",
    ];
    let lower = flow.lower();
    let range = crate::sentences::sentences(flow.text())
        .into_iter()
        .find(|range| {
            let sentence = lower.get(range.clone()).unwrap_or_default();
            CUES.iter().any(|cue| sentence.contains(cue))
        })?;
    let sentence = lower.get(range.clone())?;
    let (at, cue) = CUES
        .iter()
        .filter_map(|cue| Some((sentence.find(cue)?, cue)))
        .min()?;
    let citation = cited(&item.path, flow.text(), range.start + at + cue.len(), parts);
    let before = sentence.get(..at)?.trim();
    let after = lower.get(citation.end..range.end).unwrap_or_default();
    let opens = before.is_empty() || before.ends_with("any");
    let used = [
        "shall be used",
        "is used",
        "is to be used",
        "must be used",
        "shall be built",
        "is built",
    ]
    .iter()
    .any(|words| after.trim_start().starts_with(words));
    let told = ["use", "use only", "build", "provide", "install"].contains(&before);
    let spoiled = after.contains("both") || after.contains("more") || before.contains("or more");
    (citation.items.len() > 1 && !spoiled && (told || opens && used)).then_some(citation.items)
}

/// The "or" between the last two parts of a list, each of which goes on into the next: `(i) galvanized steel ...; or (ii) wood ...`.
///
/// Of parts that end in "and" somewhere all are built.
pub(super) fn joined_by_or(source: &str, items: &[OutlineItem], parts: &[usize]) -> Option<Span> {
    let (_, before) = parts.split_last()?;
    let ends = before.iter().map(|part| {
        let Paragraph::Text(pieces) = items.get(*part)?.paragraphs.last()? else {
            return None;
        };
        let last = *pieces.last()?;
        let words = last.of(source).trim_end();
        let open = words.ends_with([';', ',']) || words.ends_with(" or");
        open.then(|| (words.ends_with("; or") || words.ends_with(", or"), last))
    });
    let ends: Option<Vec<(bool, Span)>> = ends.collect();
    let (or, last) = *ends?.last()?;
    or.then_some(last)
}

/// The words of the second of two constructions that an item's parts go on to describe: `Concrete, min 5 in. thick, or gypsum board on steel studs as
/// follows:`. The first is told in full, with a number of its own, so that `of steel, plain or painted, as follows:` leads to no choice.
pub(super) fn leads_second(source: &str, item: &OutlineItem) -> Option<Span> {
    const LONGEST: usize = 14;
    let Some(Paragraph::Text(pieces)) = item.paragraphs.last() else {
        return None;
    };
    let flow = Flow::of(source, pieces.iter().copied());
    let words = flow.lower().trim_end();
    let body = words.strip_suffix("as follows:")?;
    let range = crate::sentences::sentences(flow.text()).pop()?;
    let at = body.get(range.start..)?.rfind(", or ")? + range.start;
    let (first, second) = (body.get(range.start..at)?, body.get(at + 2..)?);
    let plain = !second.contains(|c: char| c.is_ascii_digit() || matches!(c, ',' | ';' | ':'));
    let told = first.contains(|c: char| c.is_ascii_digit());
    (told && plain && second.split_whitespace().count() <= LONGEST)
        .then(|| flow.span(at + 2, body.trim_end().len()))
}

fn lead_of(words: &str) -> Option<(Lead, usize, usize)> {
    const CHOOSES: [(&str, Option<usize>); 7] = [
        ("or more of", None),
        ("combination of", None),
        ("any one of", None),
        ("one of", None),
        ("either of", Some(2)),
        ("either one of", Some(2)),
        ("any of", None),
    ];
    if let Some((at, end)) = told_to_pick(words) {
        return Some((Lead::One(None), at, end));
    }
    if let Some((at, end)) = may_be(words) {
        return Some((Lead::MayBe, at, end));
    }
    let found = CHOOSES.iter().filter_map(|(cue, count)| {
        let at = words.match_indices(cue).map(|(at, _)| at).find(|at| {
            !words
                .get(..*at)
                .is_some_and(|before| before.ends_with(char::is_alphanumeric))
        })?;
        Some((at, *count, at + cue.len()))
    });
    let (at, count, end) = found.min()?;
    let after = words.get(end..)?;
    let rest = after.trim_start();
    let before = words.get(..at).unwrap_or_default().trim_end();
    let follows = ["the following", "these", "those below", "the below"]
        .iter()
        .find_map(|what| rest.strip_prefix(what));
    let colon = rest.starts_with(':');
    let (tail, points_on) = match follows {
        Some(tail) => (tail, true),
        None => (rest, colon || points_below(rest) || leads_on(rest)),
    };
    // The words must be all that is chosen from: a list of products or of papers is no list of parts.
    let noun = tail
        .trim_start()
        .split([',', '.', ':', ';'])
        .next()
        .unwrap_or_default();
    let others = ["product", "maker", "manufacturer", "brand", "item"];
    let said = how_many(tail);
    let counts_anew = ["two", "three"].iter().any(|word| noun.contains(word)) && said.is_none();
    let unclear = before.ends_with("or more")
        || before.ends_with("at least")
        || before.ends_with("than")
        || before.ends_with("only")
        || before.ends_with("none")
        || before.ends_with("not")
        || words.contains("or more of")
        || words.contains("combination")
        || (counts_anew && count.is_none())
        || count.is_some_and(|count| said.is_some_and(|said| said != count))
        || others.iter().any(|word| noun.contains(word));
    if !points_on {
        return None;
    }
    let lead = if unclear {
        Lead::Unclear
    } else {
        Lead::One(count.or(said))
    };
    let length = rest.len() - tail.len();
    Some((lead, at, words.len() - rest.len() + length))
}

/// `Joint spray / sealant, pick one`: words that close what they stand in.
fn told_to_pick(words: &str) -> Option<(usize, usize)> {
    let own = words.trim_end_matches(['.', ':', ' ', ')']);
    ["pick one", "choose one", "select one", "pick either"]
        .iter()
        .find_map(|told| {
            let before = own.strip_suffix(told)?;
            let opens = before.is_empty() || before.ends_with([' ', ',', '(', '-']);
            opens.then_some((before.len(), own.len()))
        })
}

/// `Walls on either side of the joint may be`, `Floors are either:`: what leads to the constructions that a thing may be of, at the end of the words. What else it may
/// be, "The sealant may be:" over "painted" and "covered", isn't what it is made of, and may all be done.
fn may_be(words: &str) -> Option<(usize, usize)> {
    const BUILT: &[&str] = &[
        "wall",
        "walls",
        "floor",
        "floors",
        "slab",
        "slabs",
        "partition",
        "partitions",
        "construction",
        "constructions",
        "deck",
        "roof",
    ];
    const LEADS: [&str; 8] = [
        "may be",
        "can be",
        "may be of",
        "may be either",
        "is either",
        "are either",
        "shall be either",
        "may consist of",
    ];
    const MOST_WORDS: usize = 12;
    let own = words.trim_end_matches([':', ' ', '-', '–']);
    let (at, subject) = LEADS.iter().find_map(|lead| {
        let before = own.strip_suffix(lead)?;
        let last = before.rsplit(['.', ';', ':']).next()?;
        before.ends_with(' ').then_some((before.len(), last))
    })?;
    let mut named = subject.split_whitespace();
    let built = named.clone().count() <= MOST_WORDS
        && named.any(|word| BUILT.contains(&word.trim_matches(',')));
    let plain = !subject.contains(|c: char| c.is_ascii_digit() || c == ',');
    (built && plain).then_some((at, own.len()))
}

/// "one of the walls below", "either of the following floors".
fn points_below(rest: &str) -> bool {
    let phrase = rest.split(['.', ':', ';', ',']).next().unwrap_or_default();
    let mut words = phrase.split(' ');
    words.next().is_some_and(|word| word == "the")
        && phrase.split(' ').count() <= 5
        && ["below", "following"]
            .iter()
            .any(|word| phrase.split(' ').any(|own| own == *word))
}

/// How many are chosen from, where the words begin with that: "the three types".
fn how_many(words: &str) -> Option<usize> {
    const NUMBERS: [(&str, usize); 5] = [
        ("two", 2),
        ("three", 3),
        ("four", 4),
        ("five", 5),
        ("six", 6),
    ];
    let words = words.trim_start();
    let words = words.strip_prefix("the ").unwrap_or(words);
    let first = words.split([' ', ':', '.', ',']).next()?;
    let (_, count) = NUMBERS.iter().find(|(number, _)| *number == first)?;
    Some(*count)
}

/// `either of the two coatings on site:`, at the end of the words.
fn leads_on(rest: &str) -> bool {
    const LONGEST: usize = 6;
    let phrase = rest.trim_end().strip_suffix(':').unwrap_or_default();
    let plain =
        !phrase.contains(|c: char| matches!(c, '.' | ':' | ';' | ',') || c.is_ascii_digit());
    how_many(phrase).is_some() && plain && phrase.split(' ').count() <= LONGEST
}

/// Whether a part of such a list says that it holds beside the others.
pub(super) fn is_beside_the_others(head: &str) -> bool {
    [
        "in addition",
        "in all cases",
        "in every case",
        "in each case",
        "in any case",
        "for all of",
        "for any of",
        "with any of",
        "with each of",
        "for each of",
        "all of the above",
        "any of the above",
        "each of the above",
        "in either case",
        "for both",
        "with both",
        "as well as item",
        "together with item",
        "used with item",
        "common to",
        "for all walls",
        "for all floors",
        "whichever",
    ]
    .iter()
    .any(|words| {
        let denied = |at: usize| {
            let before = head.get(..at).unwrap_or_default();
            [" not be ", " not "]
                .iter()
                .any(|not| before.ends_with(not))
        };
        head.match_indices(words).any(|(at, _)| !denied(at))
    })
}

/// Whether a part begins by requiring something, and names nothing to choose: "The sealant shall lap 1 in.", "Strip - Required with Item 3A".
pub(super) fn requires(head: &Head) -> bool {
    let sentence = first_sentence(head);
    let begins = [
        "the ", "each ", "every ", "all ", "both ", "where ", "when ", "if ", "no ", "do not ",
    ];
    begins.iter().any(|word| sentence.starts_with(word))
        || [" shall ", " must ", "required", ", where "]
            .iter()
            .any(|word| sentence.contains(word))
}

/// Whether a part speaks of another of them, and not as of its like: "with Item 3A".
pub(super) fn cites(head: &Head, path: &str) -> bool {
    let sentence = first_sentence(head);
    let path = path.to_lowercase();
    ["item ", "items ", "with "].iter().any(|lead| {
        let cited = format!("{lead}{path}");
        sentence.match_indices(&cited).any(|(at, _)| {
            let after = sentence.get(at + cited.len()..).unwrap_or_default();
            let before = sentence.get(..at).unwrap_or_default();
            !after.starts_with(char::is_alphanumeric) && !before.ends_with("same as ")
        })
    })
}

/// The title of a part and the first sentence behind it.
fn first_sentence(head: &Head) -> &str {
    let words = head.words();
    let behind = words.get(head.title_end..).unwrap_or_default();
    let text = behind.trim_start_matches([' ', '-', '–', '—', ':', '.', '*']);
    let text = words.len() - text.len();
    let stop = words.match_indices(['.', ';']).map(|(at, _)| at);
    let end = stop.into_iter().find(|at| {
        *at >= text
            && (head.sentence_ends(*at, at + 2)
                || words.get(*at..).is_some_and(|rest| rest.starts_with(';')))
    });
    let start = if head.title_start < head.title_end {
        head.title_start
    } else {
        text
    };
    head.part(start, end.unwrap_or(words.len()))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(words: &str, expected: Option<Lead>) {
        assert_eq!(
            lead_of(&words.to_lowercase()).map(|(lead, ..)| lead),
            expected,
            "{words}"
        );
    }

    #[test]
    fn words_that_leave_the_choice() {
        check("Wall - Use one of the following:", Some(Lead::One(None)));
        check(
            "PACKING*. One of the following, filling the joint to the depth stated:",
            Some(Lead::One(None)),
        );
        check(
            "The joint is formed beneath either of the following floors.",
            Some(Lead::One(Some(2))),
        );
        check(
            "Either of these is accepted. The wall passes the floor.",
            Some(Lead::One(Some(2))),
        );
        check(
            "Spandrel panels: any of the following, none taller than 48 in.",
            Some(Lead::One(None)),
        );
        check(
            "Needed where the joint is wider than 4 in.; one of:",
            Some(Lead::One(None)),
        );
        check("Any one of the walls below.", Some(Lead::One(None)));
        check("Joint spray / sealant, pick one", Some(Lead::One(None)));
        check("Where two are shown, pick one that fits.", None);
        check(
            "Use either of the two coatings on site:",
            Some(Lead::One(Some(2))),
        );
        check("Either of the two coatings may be used. Notes:", None);
        check("One of the three types:", Some(Lead::One(Some(3))));
        check("One of the following two walls:", Some(Lead::One(Some(2))));
        check("One of the three products:", Some(Lead::Unclear));
        check("Either of the three types:", Some(Lead::Unclear));
        check("One or more of the following:", Some(Lead::Unclear));
        check(
            "Any combination of these, or one of the following:",
            Some(Lead::Unclear),
        );
        check("One of the following products:", Some(Lead::Unclear));
        check(
            "The floor shall be one of those described in the Register.",
            None,
        );
        check("Both walls, or one of them, may be of concrete.", None);
        check("None of the readings may be smaller.", None);
        check("The two courses, one of them below.", None);
    }
}
