//! Variants and items by name: "In Option S the shear is 12 percent", "(variant D only)", "DETAIL A: width 2 in.", "With Item 3D the movement is limited to 12
//! percent", "max 1 in. with 3A, 2 in. with 3B".
//!
//! What is said of a variant holds where it is built. Which is, no fact of the joint says, so it is left to a person: a number that isn't kept is then open.
//! The name counts where it opens its stretch, in brackets of its own, or where a sentence names two of one sort. "Sealed with Item 5" says with what, "Type X"
//! is a sort of board, and neither is a case.

use super::Found;
use super::exception::end_of_exclusion;
use crate::layout::{Flow, LIST_SIGNS};
use crate::model::{Condition, Expr};
use crate::rules::Sentence;

/// Words that name variants with a label after them.
const VARIANTS: &[&str] = &[
    "option",
    "options",
    "variant",
    "variants",
    "detail",
    "det",
    "seal",
    "version",
    "variation",
    "execution",
    "system",
];

/// Words that also name sorts of materials: two of them in a sentence are variants.
const SORTS: &[&str] = &["type", "types", "element", "elements"];

/// Words that items are cited by.
const ITEMS: &[&str] = &["item", "items"];

/// Words that head what is said of one variant, with a label after them.
const HEADING: &[&str] = &[
    "configuration",
    "option",
    "variant",
    "choice",
    "method",
    "version",
    "alternate",
    "alternative",
    "type",
    "system",
    "detail",
    "variation",
    "execution",
    "assembly",
];

/// Words that may stand before those: "Wall Type 1 - ...", "ALTERNATE METHOD A - ...".
pub(crate) const OF_WHAT: &[&str] = &[
    "wall",
    "joint",
    "floor",
    "seal",
    "assembly",
    "alternate",
    "alternative",
    "system",
];

/// What a type is of, where it tells whole walls apart: "for Type 2 walls", "for Wall Type 2 only".
const BUILT: &[&str] = &["wall", "walls"];

/// The variant that a paragraph is headed with, and so is about, where another paragraph is headed with one of its kind: "Variant S, stud wall (60 min
/// only):", "Option S1, sewn. Overlap the ends 6 in." `others` are the beginnings of the paragraphs beside it.
///
/// It would misread two methods that are both to be used, one after the other.
pub(crate) fn headed_variant<'f>(
    flow: &Flow,
    others: impl Iterator<Item = &'f str>,
) -> Option<Condition> {
    const LEAD: usize = 40;
    let text = flow.text();
    let end = text
        .char_indices()
        .nth(LEAD)
        .map_or(text.len(), |(at, _)| at);
    if !may_head(text.get(..end)?) {
        return None;
    }
    let sentence = Sentence::new(flow, 0..end);
    let first = usize::from(is_bullet(&sentence, 0));
    let of_what = OF_WHAT
        .iter()
        .find(|word| sentence.is_word(first, word) && sentence.is_any(first + 1, HEADING));
    let start = first;
    let first = first + usize::from(of_what.is_some());
    let word = HEADING.iter().find(|word| sentence.is_word(first, word))?;
    let label = sentence.token(first + 1)?.span.of(sentence.text);
    let parted = [',', ':', '-', '–', '—', '.', '(']
        .iter()
        .any(|sign| sentence.is_sign(first + 2, *sign))
        || label.ends_with('.')
        || sentence.token(first + 2).is_none() && end == text.len();
    // "Type X board" is a sort of board.
    if !is_label(&sentence, first + 1) || !parted {
        return None;
    }
    let label = label.trim_end_matches('.');
    let another = others.into_iter().any(|beginning| {
        let mut words = beginning
            .split(|c: char| !(c.is_alphanumeric() || c == '/'))
            .filter(|word| !word.is_empty());
        let same = of_what.into_iter().chain([word]).all(|word| {
            let own = words.next();
            own.is_some_and(|own| own.eq_ignore_ascii_case(word))
        });
        let other = words.next().unwrap_or_default();
        same && other.len() <= label.len() + 1 && other.len() <= 3 && other != label
    });
    let span = sentence.tokens_span(start, first + 2);
    another.then(|| {
        let words = span.of(sentence.text).trim_end_matches('.').to_owned();
        Condition {
            also: Vec::new(),
            expr: Expr::Words(words.clone()),
            words,
            span: sentence.source(span),
        }
    })
}

/// Whether an opening has a word among its first that heads a variant.
fn may_head(opening: &str) -> bool {
    const FIRST: usize = 3;
    let words = opening.split(|c: char| !c.is_alphanumeric());
    let mut words = words.filter(|word| !word.is_empty()).take(FIRST);
    words.any(|word| {
        HEADING
            .iter()
            .any(|heading| word.eq_ignore_ascii_case(heading))
    })
}

fn is_bullet(sentence: &Sentence<'_>, at: usize) -> bool {
    LIST_SIGNS
        .iter()
        .any(|bullet| sentence.is_sign(at, *bullet))
}

/// A mention of a variant or item by name.
struct Named {
    first: usize,
    last: usize,
    introduced: bool,
}

pub(super) fn variants(sentence: &Sentence<'_>) -> Vec<Found> {
    let named = named(sentence);
    let several = named.len() > 1;
    let runs_on = runs_on(sentence);
    named
        .iter()
        .filter(|own| !(runs_on && sentence.words(own.first, own.first + 1) == "@"))
        .filter(|own| {
            let bracketed = own.first > 0
                && sentence.is_sign(own.first - 1, '(')
                && (sentence.is_sign(own.last, ')')
                    || sentence.is_word(own.last, "only")
                    || sentence.is_sign(own.last, ',')
                    || sentence.is_sign(own.last, ':') && sentence.names_variant(own.last - 1));
            let item = is_item(sentence, own);
            let sort = is_sort(sentence, own);
            // A whole sentence "With Item 2A the lap is 1 in." may as well head a part that is asked for whatever is built.
            let opens = opens(sentence, own) && (!item || own.introduced && own.first > 0);
            let ends = several && own.introduced && !denied(sentence, own);
            let of_wall = sort && own.introduced && is_of_walls(sentence, own);
            let told = opens || bracketed && !item;
            let labelled = opens || own.first > 0 && sentence.is_sign(own.first - 1, '(');
            let of_sort = sort && (confined(sentence, own) || labels(sentence, own) && labelled);
            let of_amount = own.introduced
                && (!sort || numbered(sentence, own))
                && closes_amount(sentence, own, item);
            let set_against = sort && is_set_against(sentence, own, &named);
            ends || !denied(sentence, own)
                && (of_wall || of_amount || of_sort || set_against || !sort && told)
        })
        .map(|own| {
            // "Option A excluded" is all but it, for a person to say.
            let last = end_of_exclusion(sentence, own.last).unwrap_or(own.last);
            Found {
                first: own.first,
                last,
                expr: Expr::Words(sentence.words(own.first, last).to_owned()),
                triggers: Vec::new(),
                parts: Vec::new(),
            }
        })
        .collect()
}

/// Whether a sort fills brackets of its own that confine what stands before them: "4 in. deep (Type B only)", or stand beside others: "6 in. (Type HW), 4
/// in. (Type FF)".
fn confined(sentence: &Sentence<'_>, own: &Named) -> bool {
    let fills = |own: &Named, last: usize| {
        own.first > 0 && sentence.is_sign(own.first - 1, '(') && sentence.is_sign(last, ')')
    };
    let label = |own: &Named| sentence.word(own.last - 1).to_owned();
    let short = label(own).len() <= 2;
    let only = short && sentence.is_word(own.last, "only") && fills(own, own.last + 1);
    let beside = || {
        let others = named(sentence);
        let mut others = others.iter().filter(|other| other.first != own.first);
        others.any(|other| {
            let last = other.last + usize::from(sentence.is_word(other.last, "only"));
            is_sort(sentence, other) && fills(other, last) && label(other) != label(own)
        })
    };
    only || fills(own, own.last) && beside()
}

/// Whether a sort stands right before its own limit, and another before another: "overlap: type U at least 150 mm, type V at least 100 mm".
fn is_set_against(sentence: &Sentence<'_>, own: &Named, named: &[Named]) -> bool {
    const LIMITS: &[&str] = &["at", "min", "minimum", "max", "maximum", "not", "no"];
    let limited = |own: &Named| {
        let parted = own.first.checked_sub(1).is_none_or(|before| {
            [',', ';', ':']
                .iter()
                .any(|sign| sentence.is_sign(before, *sign))
        });
        let amount = (own.last..own.last + 4)
            .take_while(|at| sentence.amount_at(*at).is_some() || !sentence.is_stop(*at))
            .any(|at| sentence.amount_at(at).is_some());
        let led = sentence.amount_at(own.last).is_some()
            || sentence.is_any(own.last, LIMITS)
            || ['≥', '≤', '<', '>']
                .iter()
                .any(|sign| sentence.is_sign(own.last, *sign));
        !own.introduced && is_sort(sentence, own) && parted && amount && led
    };
    let label = |own: &Named| sentence.word(own.last - 1).to_owned();
    limited(own)
        && label(own).len() <= 2
        && named
            .iter()
            .any(|other| other.first != own.first && limited(other) && label(other) != label(own))
}

/// Whether a sort labels what follows it: "Types A and C: min 4 in. deep". "Type X:" is a sort of board.
fn labels(sentence: &Sentence<'_>, own: &Named) -> bool {
    sentence.is_sign(own.last, ':') && !sentence.is_word(own.last - 1, "x")
}

/// Whether a limit's abbreviation ends in a stop in the middle, `@ DET B 16" O.C. MAX. 2 PINS`: what follows may be a sentence of its own.
fn runs_on(sentence: &Sentence<'_>) -> bool {
    let words = sentence.text.to_lowercase();
    let words = words.trim_end();
    ["max. ", "min. ", "typ. ", "nom. "]
        .iter()
        .any(|stop| words.contains(stop))
}

/// Whether words of a condition name a variant, or how a wall lies to the flutes, so that a title may be nothing else.
pub(super) fn names_case(words: &str) -> bool {
    let lower = words.to_lowercase();
    let variant = lower
        .split_whitespace()
        .take(2)
        .any(|word| VARIANTS.contains(&word));
    let lies = ["parallel", "perpendicular", "crossing"]
        .iter()
        .any(|word| lower.contains(word));
    variant || lies && lower.contains("flute")
}

/// Where a sentence that goes on behind the stop of a shortened word comes to another variant than the one it began with: `DETAIL A, 2" MAX, 1/2" MIN. *DETAIL B*,
/// 1" NOM. FIELD VERIFY EVERY 4'-0".` What stands behind is said of that, or of all.
pub(super) fn comes_to_another(sentence: &Sentence<'_>, condition: &Found) -> Option<usize> {
    let named = named(sentence);
    let began = named.iter().any(|own| own.first == condition.first);
    let mut others = named
        .iter()
        .map(|other| other.first)
        .filter(|first| *first > condition.last && sentence.ends_in_stop(first - 1));
    others.next().filter(|_| began)
}

fn named(sentence: &Sentence<'_>) -> Vec<Named> {
    let mut found: Vec<Named> = Vec::new();
    for at in 0..sentence.tokens.len() {
        if sentence.names_variant(at) {
            let taken = found.last().is_some_and(|last| at < last.last);
            found.extend(labelled(sentence, at).filter(|_| !taken));
            continue;
        }
        let noun = [VARIANTS, SORTS, ITEMS]
            .iter()
            .any(|words| sentence.is_any(at, words));
        if !noun || !is_label(sentence, at + 1) {
            continue;
        }
        let mut last = at + 2;
        while sentence.is_any(last, &["and", "or"]) && is_label(sentence, last + 1) {
            last += 2;
        }
        let sort = sentence.is_any(at, SORTS);
        let named_wall = usize::from(sort && at > 0 && sentence.is_any(at - 1, BUILT));
        let start = at - named_wall;
        let led = ["in", "for", "with", "under", "at"];
        let on_wall = sort && (named_wall > 0 || sentence.is_any(last, BUILT));
        let on = start > 0 && sentence.is_word(start - 1, "on");
        let beside = sort && on && on_another(sentence, at);
        let introduced =
            start > 0 && (sentence.is_any(start - 1, &led) || (on_wall || beside) && on);
        let start = if introduced { start - 1 } else { at };
        found.push(Named {
            first: start,
            last,
            introduced,
        });
    }
    found
}

/// Variants by the labels alone that a table of the document gives them: "in C2", "for V4 and V5", "C1 to C3".
fn labelled(sentence: &Sentence<'_>, first: usize) -> Option<Named> {
    let mut last = first + 1;
    let joins = |at: usize| {
        sentence.is_any(at, &["and", "or", "to", "through"])
            || [',', '&', '-', '–']
                .iter()
                .any(|sign| sentence.is_sign(at, *sign))
    };
    while joins(last) && sentence.names_variant(last + 1) {
        last += 2;
    }
    let before = first.checked_sub(1);
    let introduced =
        before.filter(|at| sentence.is_any(*at, &["in", "for", "with", "under", "at"]));
    // "Option V1" has its noun before it.
    let noun = before.is_some_and(|at| {
        [VARIANTS, SORTS, ITEMS]
            .iter()
            .any(|words| sentence.is_any(at, words))
    });
    (!noun).then(|| Named {
        first: introduced.unwrap_or(first),
        last,
        introduced: introduced.is_some(),
    })
}

/// Whether a sentence sets what is on one sort beside what is on another: "3 in. on Type S, 4 in. on Type P".
fn on_another(sentence: &Sentence<'_>, own: usize) -> bool {
    (1..sentence.tokens.len()).any(|at| {
        at != own
            && sentence.is_any(at, SORTS)
            && sentence.is_word(at - 1, "on")
            && is_label(sentence, at + 1)
            && sentence.word(at + 1) != sentence.word(own + 1)
    })
}

/// `A`, `3D`, `III-D`, `2a`: no word, and no amount.
fn is_label(sentence: &Sentence<'_>, at: usize) -> bool {
    const LONGEST: usize = 6;
    let Some(token) = sentence.token(at) else {
        return false;
    };
    let text = token.span.of(sentence.text).trim_end_matches('.');
    // In capitals "SYSTEM IS" names nothing.
    let capital = text.len() <= LONGEST
        && !is_small_word(text)
        && text.starts_with(|c: char| c.is_ascii_uppercase() || c.is_ascii_digit())
        && text
            .chars()
            .all(|c| c.is_ascii_uppercase() || c.is_ascii_digit() || c == '-');
    // In capitals all words look so: "SEAL GAP".
    let short = text.len() <= 2 || text.contains(|c: char| c.is_ascii_digit() || c == '-');
    capital
        && short
        && sentence.amount_at(at).is_none_or(|index| {
            sentence
                .amount(index)
                .is_some_and(|amount| amount.unit == measure::Unit::Count)
        })
}

/// Whether two letters are a word.
pub(crate) fn is_small_word(text: &str) -> bool {
    const SMALL: [&str; 14] = [
        "is", "as", "in", "of", "or", "to", "no", "at", "by", "on", "if", "it", "be", "up",
    ];
    SMALL.iter().any(|small| small.eq_ignore_ascii_case(text))
}

fn is_item(sentence: &Sentence<'_>, own: &Named) -> bool {
    (own.first..own.last).any(|at| sentence.is_any(at, ITEMS))
}

/// Whether a name is a number: "Type X" is a sort of board.
fn numbered(sentence: &Sentence<'_>, own: &Named) -> bool {
    (own.first..own.last)
        .next_back()
        .and_then(|at| sentence.token(at))
        .is_some_and(|label| {
            let label = label.span.of(sentence.text);
            label.starts_with(|c: char| c.is_ascii_digit())
        })
}

fn is_sort(sentence: &Sentence<'_>, own: &Named) -> bool {
    (own.first..own.last).any(|at| sentence.is_any(at, SORTS))
}

/// Whether a name is one of walls, as the first words of a sentence or in brackets of its own: "On Type 2 walls install", "(for Wall Type 2 only)".
fn is_of_walls(sentence: &Sentence<'_>, own: &Named) -> bool {
    let of_walls = sentence.is_any(own.last, BUILT) || sentence.is_any(own.first + 1, BUILT);
    let bracketed = own.first > 0 && sentence.is_sign(own.first - 1, '(');
    of_walls && (bracketed || opens(sentence, own))
}

/// Whether a name is said of the amount right before it, and of nothing more: "2 in. min at Type 4", "24 in. (16 in. in Type 3)", "25 %, or 10 % with Wall
/// Type 3". "1/2 in. deep with Item 3B" may be filled with it, so an item counts only where it has another amount than the rest.
fn closes_amount(sentence: &Sentence<'_>, own: &Named, item: bool) -> bool {
    const QUALIFIERS: &[&str] = &[
        "min", "min.", "minimum", "max", "max.", "maximum", "wide", "deep", "thick", "high",
        "long", "oc", "o.c.", "or", "more", "less", "heavier", "wider", "thicker",
    ];
    let ends = sentence.token(own.last).is_none()
        || [',', ';', '.', ')']
            .iter()
            .any(|sign| sentence.is_sign(own.last, *sign))
        || sentence.is_word(own.last, "only");
    let is_qualifier = |at: &usize| {
        sentence.amount_at(*at).is_none()
            && (sentence.is_any(*at, QUALIFIERS) || sentence.is_sign(*at, '.'))
    };
    let before = (0..own.first).rev().find(|at| !is_qualifier(at));
    let amount = before
        .and_then(|at| sentence.amount_at(at))
        .and_then(|index| Some((index, sentence.amount(index)?)));
    let Some((index, amount)) = amount.filter(|_| ends) else {
        return false;
    };
    let limits = |at: &usize| sentence.is_any(*at, &["min", "min.", "max", "max."]);
    let parted = || {
        let or = (0..amount.first).rev().find(|at| !limits(at));
        let rest = index.checked_sub(1).and_then(|rest| sentence.amount(rest));
        or.is_some_and(|or| sentence.is_any(or, &["or"]))
            && rest.is_some_and(|rest| rest.unit.dimension() == amount.unit.dimension())
    };
    !item || parted()
}

/// Whether a name opens its stretch: at the beginning, behind a bullet, a stop or "that".
fn opens(sentence: &Sentence<'_>, own: &Named) -> bool {
    let Some(before) = own.first.checked_sub(1) else {
        return true;
    };
    let bullet = before == 0
        && LIST_SIGNS
            .iter()
            .any(|bullet| sentence.is_sign(before, *bullet));
    let parted = sentence.is_sign(before, ';')
        || own.introduced
            && (sentence.is_sign(before, ',') || sentence.is_any(before, &["that", "and", "but"]));
    bullet || parted
}

/// Whether a name stands where something is not for it: "not with Item 3", "except in Option S".
fn denied(sentence: &Sentence<'_>, own: &Named) -> bool {
    const REACH: usize = 3;
    sentence.has_any(
        own.first.saturating_sub(REACH),
        own.first,
        &["not", "nor", "never", "except", "save", "than", "only"],
    ) && !sentence.is_word(own.first.saturating_sub(1), "that")
}
