//! The condition that each item as a whole stands under: its own, said in its title or where its text opens, and those of the items around it.

use std::sync::LazyLock;

use rustc_hash::FxHashSet;

use super::asked::asked_for;
use super::case_headings;
use super::headings::Headings;
use super::kind_titles::of_kind;
use super::side_by_side::side_by_side;
use crate::conditions::{
    Place, heads, heads_joints, heads_list, heads_rating, in_bracket, is_needed_in, may_be_absent,
    only_in_some, only_says_for_which, only_says_where, tells_which_joints,
};
use crate::layout::{Flow, LIST_SIGNS, UsualUnits};
use crate::model::{Condition, Expr, Relation, Span};
use crate::options::ItemOption;
use crate::outline::{Outline, OutlineItem, Paragraph, is_case};
use crate::rules::Sentence;
use crate::sentences::sentences;

/// For each item the condition that it stands under. An item that may be left for another has none of its own: what its head says confines it.
pub(super) fn standing(
    text: &str,
    outline: &Outline,
    options: &[ItemOption],
    headings: &Headings,
    units: UsualUnits,
) -> Vec<Option<Condition>> {
    let asked = asked_for(text, outline, units);
    let own = side_by_side(&outline.items, |index, item| {
        let choice = options.get(index).is_some_and(ItemOption::is_choice);
        if choice {
            return None;
        }
        let next = outline.items.get(index + 1);
        let parted = next.is_some_and(|next| next.parent == Some(index));
        let own = own(text, item, units, parted)
            .or_else(|| rated(text, &outline.items, index, units))
            .or_else(|| banded(text, &outline.items, index, units))
            .or_else(|| brought(text, item, units))
            .or_else(|| of_kind(text, &outline.items, index))
            .or_else(|| {
                let asked = asked.iter().find(|(path, _)| *path == item.path);
                asked
                    .filter(|_| may_be_absent(&item.title))
                    .map(|(_, own)| own.clone())
            });
        let offered = options.get(index).and_then(|option| option.offered);
        let offered = offered.map(|span| self::offered(text, span));
        let said = |own: &Condition| {
            offered.as_ref().is_some_and(|offered| {
                own.span.start() < offered.span.end() && offered.span.start() < own.span.end()
            })
        };
        joined(offered.clone(), own.filter(|own| !said(own)))
    });
    let mut standing: Vec<Option<Condition>> = Vec::with_capacity(outline.items.len());
    // What each item leads to its list with, and what all of the list stands under besides.
    let mut leads: Vec<(Option<Condition>, Option<Condition>)> = Vec::new();
    for (item, own) in outline.items.iter().zip(own) {
        // Step 4a is no part of Step 3, though it stands below it; and a table or footnote may be cited from elsewhere, too.
        let is_part = |parent: &usize| {
            let around = outline.items.get(*parent);
            around.is_some_and(|around| {
                let left = headings.end(text, around);
                let left = left.is_some_and(|end| end <= item.heading.start());
                item.path.starts_with(&around.path) && !left
            })
        };
        let around = item.parent.filter(is_part);
        let around = around.and_then(|parent| {
            let (lead, besides) = leads.get(parent)?;
            match case_headings::over(text, outline, item, lead.as_ref(), units) {
                Some(heading) => {
                    let around = if heading.ends_lead {
                        besides.clone()
                    } else {
                        standing.get(parent).cloned().flatten()
                    };
                    joined(around, heading.case)
                }
                None => standing.get(parent).cloned().flatten(),
            }
        });
        leads.push(match own.clone() {
            Some(own) if case_headings::leads_to_list(text, &own) => (Some(own), around.clone()),
            own => (None, joined(around.clone(), own)),
        });
        standing.push(joined(around, own));
    }
    standing
}

/// What an item is offered as one of several by, for a person to say whether it is built.
fn offered(text: &str, span: Span) -> Condition {
    let words = span
        .of(text)
        .split_whitespace()
        .collect::<Vec<_>>()
        .join(" ");
    in_words(
        words.trim_end_matches([' ', '-', '–', '—', ':', ',', '.', '*']),
        span,
    )
}

/// Both of two conditions.
fn joined(around: Option<Condition>, own: Option<Condition>) -> Option<Condition> {
    match (around, own) {
        (Some(around), Some(own)) => Some(around.and(own)),
        (around, own) => around.or(own),
    }
}

/// Where what an item stands under ends at the latest: at another case, or at a line like a heading, for the outline may have missed that something else begins there.
pub(super) fn end(text: &str, item: &OutlineItem) -> usize {
    let heading = item.paragraphs.iter().skip(1).find_map(|paragraph| {
        let Paragraph::Text(pieces) = paragraph else {
            return None;
        };
        let first = pieces.first()?;
        let heads = is_like_heading(first.of(text), pieces.len() == 1) || is_case(first.of(text));
        heads.then(|| first.start())
    });
    heading.unwrap_or(text.len())
}

/// Where an item ends in a heading of notes or of work on the whole joint: what comes behind it the outline takes for its parts.
pub(super) fn heading_of_notes(text: &str, item: &OutlineItem) -> Option<Span> {
    let Some(Paragraph::Text(pieces)) = item.paragraphs.last() else {
        return None;
    };
    pieces
        .last()
        .copied()
        .filter(|line| heads_notes(line.of(text)))
}

/// Whether words head notes or work on the whole joint.
pub(super) fn heads_notes(words: &str) -> bool {
    const NOTES: &[&str] = &[
        "notes",
        "note",
        "general notes",
        "general",
        "misc",
        "miscellaneous",
        "remarks",
        "installation",
        "execution",
        "application",
        "preparation",
        "workmanship",
        "inspection",
    ];
    let words = words.trim().trim_end_matches([':', '.']).to_lowercase();
    NOTES.contains(&words.as_str())
}

/// Whether a line of a text may be a heading: short and without a stop, or begun with the name and number of a step.
fn is_like_heading(line: &str, alone: bool) -> bool {
    const SHORT: usize = 7;
    let line = line.trim();
    let mut words = line.split_whitespace();
    let named = words.next().is_some_and(|word| {
        ["step", "item", "part", "note", "section", "article"]
            .contains(&word.to_lowercase().as_str())
    });
    let numbered = words.next().is_some_and(|word| {
        word.len() <= 3 && word.starts_with(|c: char| c.is_ascii_alphanumeric())
    });
    let short = alone
        && line.starts_with(char::is_uppercase)
        && !line.ends_with(['.', ':', ';', ','])
        && !line.contains(|c: char| c.is_ascii_digit())
        && line.split_whitespace().count() <= SHORT;
    named && numbered || short
}

fn own(text: &str, item: &OutlineItem, units: UsualUnits, parted: bool) -> Option<Condition> {
    let title = Flow::of(
        text,
        core::iter::once(item.heading).chain(item.more_heading.iter().copied()),
    )
    .with_usual_units(units);
    let named = !item.title.is_empty() && !names_attribute(&item.title);
    let said = of_title(&title, item);
    if said.is_some() || speaks_of_choice(&item.title) {
        return said;
    }
    item.paragraphs
        .iter()
        .enumerate()
        .filter_map(|(index, paragraph)| match paragraph {
            Paragraph::Text(pieces) => Some((index, pieces)),
            _ => None,
        })
        .find_map(|(index, pieces)| {
            let flow = Flow::of(text, pieces.iter().copied()).with_usual_units(units);
            let listed = leads_bullets(text, pieces, item.paragraphs.get(index + 1));
            of_text(&flow, index == 0, named, parted).filter(|_| !listed)
        })
        .or_else(|| in_some(text, item, &title))
}

/// Whether a paragraph only leads to the bullets below it, and says nothing of what stands behind them: "In joints over 2 in.:".
/// A title may stand on the line before.
fn leads_bullets(text: &str, pieces: &[Span], next: Option<&Paragraph>) -> bool {
    let Some(Paragraph::Text(below)) = next else {
        return false;
    };
    let bullet = below
        .first()
        .is_some_and(|first| first.of(text).trim_start().starts_with(LIST_SIGNS));
    let leads = |flow: &Flow| {
        let words = flow.text().trim_end();
        let lead = || heads_list(&Sentence::new(flow, 0..words.len())).is_some();
        words.ends_with(':') && sentences(words).len() == 1 && lead()
    };
    let last = pieces.last().copied();
    bullet && (leads(&Flow::of(text, pieces.iter().copied())) || leads(&Flow::of(text, last)))
}

/// The condition that an item says of itself in a sentence that says nothing else: "Required only where ...", "May be omitted when ...".
fn brought(text: &str, item: &OutlineItem, units: UsualUnits) -> Option<Condition> {
    if speaks_of_choice(&item.title) || !may_be_absent(&item.title) {
        return None;
    }
    let mut flows = item
        .paragraphs
        .iter()
        .filter_map(|paragraph| match paragraph {
            Paragraph::Text(pieces) => {
                Some(Flow::of(text, pieces.iter().copied()).with_usual_units(units))
            }
            _ => None,
        })
        .peekable();
    let opening = flows.peek()?.text();
    let opening = opening
        .split(|c: char| c.is_ascii_digit() || matches!(c, '.' | ','))
        .next()
        .unwrap_or_default();
    let named = !item.title.is_empty() || may_be_absent(opening) && !opening.trim().is_empty();
    let first = flows.peek().and_then(|flow| {
        let range = sentences(flow.text()).into_iter().next()?;
        is_needed_in(&Sentence::new(flow, range))
    });
    // What a paragraph behind the first says besides other things, it says of its own thing: "Hangers. ..." over "Stiffener. 20 ga. Not needed where ...".
    let says = |(index, flow): (usize, Flow)| {
        let ranges = sentences(flow.text());
        let alone = index == 0 || ranges.len() == 1;
        let mut ranges = ranges.into_iter().filter(|_| alone);
        ranges.find_map(|range| only_says_where(&Sentence::new(&flow, range)))
    };
    named.then(|| first.or_else(|| flows.enumerate().find_map(says)))?
}

/// The rating that an item's title is, where one beside it has another: "1 h wall: one board", "2 h wall: two boards". One alone may be a time.
fn rated(text: &str, items: &[OutlineItem], index: usize, units: UsualUnits) -> Option<Condition> {
    let of = |index: usize| {
        let item = items.get(index)?;
        let title = Flow::of(text, [item.heading]).with_usual_units(units);
        let first = item
            .title
            .split(' ')
            .next()
            .filter(|word| !word.is_empty())?;
        let start = title.text().rfind(first)?;
        let condition = heads_rating(&Sentence::new(&title, start..title.text().len()))?;
        Some((item.parent, condition))
    };
    let (parent, own) = of(index)?;
    let beside = [index.checked_sub(1), Some(index + 1)];
    let mut beside = beside.into_iter().flatten().filter_map(of);
    beside
        .any(|(other, held)| other == parent && held.expr != own.expr)
        .then_some(own)
}

/// The joints that an item is for, where its opening line is nothing else and one beside it is for others: "3.1 Joints up to 25 mm", "3.2 Joints over 25
/// mm". One alone may be what the joint must be.
fn banded(text: &str, items: &[OutlineItem], index: usize, units: UsualUnits) -> Option<Condition> {
    let of = |index: usize| {
        let item = items.get(index)?;
        let first = match item.paragraphs.first()? {
            Paragraph::Text(pieces) if item.title.is_empty() => pieces.as_slice(),
            _ => return None,
        };
        let flow = Flow::of(text, first.iter().copied()).with_usual_units(units);
        let range = sentences(flow.text()).into_iter().next()?;
        // "Gaps of 75 mm and above: steel brackets. Thickness 1.2 mm."
        let range = match flow.text().get(range.clone())?.find(": ") {
            Some(colon) => range.start..range.start + colon + 1,
            None => range,
        };
        let more = range.end < flow.text().trim_end().len() || item.paragraphs.len() > 1;
        // "Joints over 4 in.: not permitted. ..."
        let behind = flow.lower().get(range.end..)?.trim_start();
        if ["not", "no ", "none", "outside"]
            .iter()
            .any(|word| behind.starts_with(word))
        {
            return None;
        }
        let condition = heads_joints(&Sentence::new(&flow, range)).filter(|_| more)?;
        Some((item.parent, condition))
    };
    let (parent, own) = of(index)?;
    let beside = [index.checked_sub(1), Some(index + 1)];
    let mut beside = beside.into_iter().flatten().filter_map(of);
    let set_apart = beside.any(|(other, held)| other == parent && held.expr != own.expr);
    // "5.1 Joints above 4 in. Provide support pins": no joint must be wider than something.
    let beyond = parent.is_some() && is_lower_limit(&own.expr);
    (set_apart || beyond).then_some(own)
}

/// Whether a condition is of the joints wider than a limit, which no listing asks all joints to be.
fn is_lower_limit(expr: &Expr) -> bool {
    matches!(expr, Expr::Test(test) if test.property == "joint.width" && test.relation == Relation::MoreThan)
}

/// Whether the words of a condition are nothing but the joints that it means, so that no number in them is a requirement.
pub(super) fn is_only_joints(text: &str, condition: &Condition, units: UsualUnits) -> bool {
    let flow = Flow::of(text, [condition.span]).with_usual_units(units);
    heads_joints(&Sentence::new(&flow, 0..flow.text().len())).is_some()
}

/// The condition that a title says.
fn of_title(title: &Flow, item: &OutlineItem) -> Option<Condition> {
    heads(&titled(title, item)?, Place::Title)
}

/// The words of an item's title, with what stands behind it on its line.
fn titled<'f>(title: &'f Flow, item: &OutlineItem) -> Option<Sentence<'f>> {
    let first = item
        .title
        .split(' ')
        .next()
        .filter(|word| !word.is_empty())?;
    let start = title.text().find(first)?;
    Some(Sentence::new(title, start..title.text().len()))
}

/// The first sentence of an item, or the bracket behind its title, that only says in which joints its thing is asked for: `Retaining pins. Joints of 80 mm or more only.`
fn in_some(text: &str, item: &OutlineItem, title: &Flow) -> Option<Condition> {
    let name = item.title.split('(').next().unwrap_or_default();
    let named = !name.is_empty() && may_be_absent(name);
    let of_title = || titled(title, item).and_then(|title| in_bracket(&title));
    if let Some(said) = of_title().filter(|_| named) {
        return Some(said);
    }
    let Some(Paragraph::Text(pieces)) = item.paragraphs.first() else {
        return None;
    };
    let flow = Flow::of(text, pieces.iter().copied());
    let first = sentences(flow.text()).into_iter().next()?;
    let words = flow.text().get(first.clone())?.trim_end_matches(['.', ' ']);
    let span = flow.span(first.start, first.start + words.len());
    let sentence = Sentence::new(&flow, first);
    let told = tells_which_joints(words) || only_in_some(&sentence);
    let told = told.then(|| in_words(words, span)).filter(|_| named);
    // A line without a title may begin with one: "Clips (not needed below 75 mm)."
    let opening = words.split('(').next().unwrap_or_default();
    let opens = named || item.title.is_empty() && !opening.is_empty() && may_be_absent(opening);
    told.or_else(|| in_bracket(&sentence).filter(|_| opens))
}

/// A condition that only a person can test.
fn in_words(words: &str, span: Span) -> Condition {
    Condition {
        also: Vec::new(),
        expr: Expr::Words(words.to_owned()),
        words: words.to_owned(),
        span,
    }
}

/// The condition that the opening of an item's text sets, or a sentence of it that says only where the thing is required.
fn of_text(flow: &Flow, opens: bool, named: bool, parted: bool) -> Option<Condition> {
    let all = sentences(flow.text());
    let whole = all.len() == 1;
    all.into_iter().enumerate().find_map(|(index, range)| {
        let first = opens && index == 0;
        // Farther on "Required in joints over 3 in." may speak of another thing that was named since.
        let soon = opens && index <= 1;
        let words = flow.text().get(range.clone()).unwrap_or_default();
        if !(first || soon && says_required(words)) {
            return None;
        }
        let sentence = Sentence::new(flow, range);
        // "Support clips, where the joint exceeds 80 mm" alone on its line is a title that holds a number.
        let untitled =
            !named && first && whole && !words.trim_end().ends_with(['.', ':', ';', ',']);
        let place = match (named, untitled) {
            (true, _) => Place::TextOfThing,
            (false, true) => Place::Title,
            (false, false) => Place::Text,
        };
        heads(&sentence, place)
            .or_else(|| heads_list(&sentence).filter(|_| first && whole && parted))
            .or_else(|| only_says_for_which(&sentence).filter(|_| first))
    })
}

/// Whether a sentence begins by saying that something is required.
pub(super) fn says_required(words: &str) -> bool {
    let words = words.trim_start_matches('(').to_lowercase();
    ["required ", "needed ", "necessary "]
        .iter()
        .any(|opening| words.starts_with(opening))
}

/// Whether words offer something as a choice.
pub(super) fn speaks_of_choice(words: &str) -> bool {
    const WORDS: &[&str] = &[
        "alternate",
        "alternative",
        "alternatively",
        "alt",
        "optional",
        "option",
        "lieu",
        "instead",
        "variant",
        "place",
    ];
    words
        .to_lowercase()
        .split(|c: char| !c.is_alphanumeric())
        .any(|word| WORDS.contains(&word))
}

/// Whether a title names an attribute, or nothing: what stands under it is about the item around. "Bridging plates" names a thing.
pub(super) fn names_attribute(title: &str) -> bool {
    let lower = title.to_lowercase();
    let words = || {
        lower
            .split(|c: char| !c.is_alphabetic())
            .filter(|word| !word.is_empty())
    };
    words().next().is_none()
        || words().any(|word| {
            vocabulary::vocabulary()
                .attribute(word.trim_end_matches('s'))
                .is_some()
        })
        || words().any(|word| is_aspect(word.trim_end_matches('s')))
}

/// Whether a word names what a property is of, within its component: the "splice" of a splice spacing, the "storage" of a storage temperature. A
/// title "Splices" is about the part that it stands under.
fn is_aspect(word: &str) -> bool {
    static ASPECTS: LazyLock<FxHashSet<&'static str>> = LazyLock::new(|| {
        let properties = vocabulary::vocabulary().properties();
        let aspects = properties.filter_map(|property| property.attribute.split_once('_'));
        aspects.map(|(aspect, _)| aspect).collect()
    });
    const SHORTEST: usize = 4;
    word.len() >= SHORTEST && ASPECTS.contains(word)
}
