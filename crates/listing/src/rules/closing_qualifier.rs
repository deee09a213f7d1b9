use measure::Unit;

use super::shared_qualifier::is_spaced;
use super::word_before::qualifier;
use super::{Finding, Sentence, bare_value, word_after, word_before};
use crate::model::Relation;

/// How far before "all min" its list may begin, in tokens.
const REACH: usize = 30;

/// Words that gather the amounts before them: `all min`.
const GATHERING: &[&str] = &["all", "both", "each", "ea"];

pub(super) fn read(sentence: &Sentence<'_>, index: usize) -> Option<Finding> {
    let amount = sentence.amount(index)?;
    if let Some(relation) = wet_and_dry(sentence, index)
        .or_else(|| both_laps(sentence, index))
        .or_else(|| as_a_limit(sentence, index))
        .or_else(|| closed_cases(sentence, index))
    {
        return Some(Finding::sure(relation, amount.first));
    }
    let closing = (amount.last..sentence.tokens.len())
        .take(REACH)
        .find(|at| gathers(sentence, *at))?;
    let relation = plural(sentence.word(closing))
        .or_else(|| extreme(sentence, closing))
        .or_else(|| qualifier(sentence.word(said(sentence, closing))))?;
    let parted =
        (amount.last..closing).any(|at| sentence.is_sign(at, ';') || sentence.is_sign(at, ':'));
    let measured = !matches!(amount.unit, Unit::Count | Unit::Gauge | Unit::ScrewNumber);
    let bare = bare_value::read(sentence, index).is_some();
    // A later number with words of its own begins the list anew.
    let listed = (index + 1..sentence.amounts.len())
        .take_while(|next| {
            sentence
                .amount(*next)
                .is_some_and(|amount| amount.first < closing)
        })
        .all(|next| {
            word_before::read(sentence, next).is_none()
                && word_after::read(sentence, next).is_none()
        });
    // "both" gathers two; spacings and lengths are bounded in different senses.
    let gathered: Vec<usize> = (0..sentence.amounts.len())
        .filter(|other| {
            sentence.is_bound(*other)
                && sentence
                    .amount(*other)
                    .is_some_and(|other| other.last <= closing)
        })
        .collect();
    let later = gathered.iter().filter(|other| **other > index).count();
    let among = !sentence.is_word(closing, "both") || later <= 1;
    let spaced = gathered.iter().any(|other| {
        sentence.amount(*other).is_some_and(|other| {
            let after = sentence.skip_parentheses(other.last);
            sentence.is_any(after, &["o.c", "oc", "apart"])
                || sentence.is_word(after, "on") && sentence.word(after + 1).starts_with("cent")
        })
    });
    (!parted && measured && bare && listed && among && !spaced).then(|| Finding {
        // "these laps being minimums" may mean fewer than all.
        doubtful: plural(sentence.word(closing)).is_some() || extreme(sentence, closing).is_some(),
        ..Finding::sure(relation, amount.first)
    })
}

/// The qualifier of several values: `these laps being minimums`.
fn plural(word: &str) -> Option<Relation> {
    match word {
        "minimums" | "minima" => Some(Relation::AtLeast),
        "maximums" | "maxima" => Some(Relation::AtMost),
        _ => None,
    }
}

/// `both of these being the least`, `each being the minimum accepted`: the extreme that several values are said to be.
fn extreme(sentence: &Sentence<'_>, at: usize) -> Option<Relation> {
    if !sentence.is_any(at, GATHERING) {
        return None;
    }
    let being = (at + 1..at + 4).find(|at| sentence.is_word(*at, "being"))?;
    let word = being + 1 + usize::from(sentence.is_any(being + 1, &["the", "a"]));
    match sentence.word(word) {
        "least" | "minimum" | "smallest" => Some(Relation::AtLeast),
        "most" | "maximum" | "greatest" | "largest" => Some(Relation::AtMost),
        _ => None,
    }
}

/// Whether the words at a token gather the amounts before: "all" or "both" with a qualifier that ends the stretch.
fn gathers(sentence: &Sentence<'_>, at: usize) -> bool {
    let stop = |at: usize| {
        sentence.is_stop(at) || sentence.is_sign(at, '.') || sentence.token(at).is_none()
    };
    if plural(sentence.word(at)).is_some() {
        return stop(at + 1);
    }
    if extreme(sentence, at).is_some() {
        return true;
    }
    // `25% in height, 15% in width (both min)`
    let bracketed =
        at > 0 && sentence.is_sign(at - 1, '(') && sentence.is_sign(said(sentence, at) + 1, ')');
    sentence.is_any(at, GATHERING)
        && at > 0
        && (stop(at - 1) || bracketed)
        && qualifier(sentence.word(said(sentence, at))).is_some()
        && (bracketed || stop(said(sentence, at) + 1) || sentence.ends_in_stop(said(sentence, at)))
}

/// Where the qualifier stands that is said of what is gathered: `each min`, `each a minimum`.
fn said(sentence: &Sentence<'_>, gathering: usize) -> usize {
    gathering + 1 + usize::from(sentence.is_any(gathering + 1, &["a", "the"]))
}

/// `1/2 in. onto board and 1-1/2 in. onto deck, min.`: two measures of one kind that "and" joins, each onto something, closed behind a comma.
fn both_laps(sentence: &Sentence<'_>, index: usize) -> Option<Relation> {
    const ONTO: &[&str] = &["on", "onto", "over", "at", "to"];
    const MOST_WORDS: usize = 4;
    let (own, next) = (sentence.amount(index)?, sentence.amount(index + 1)?);
    let onto = |last: usize| sentence.is_any(sentence.skip_parentheses(last), ONTO);
    let words = |from: usize, to: usize| {
        to <= from + MOST_WORDS && (from..to).all(|at| sentence.has_word(at))
    };
    let and = next
        .first
        .checked_sub(1)
        .filter(|at| sentence.is_word(*at, "and"))?;
    let spaced = is_spaced(sentence, own.last) && is_spaced(sentence, next.last);
    let alike = own.unit == next.unit
        && (spaced || onto(own.last) && onto(next.last))
        && words(sentence.skip_parentheses(own.last), and);
    let after = sentence.skip_parentheses(next.last);
    let comma = (after..=after + MOST_WORDS).find(|at| sentence.is_sign(*at, ','))?;
    let later = (comma + 2..sentence.tokens.len())
        .take_while(|at| !sentence.is_sign(*at, ';'))
        .any(|at| sentence.amount_at(at).is_some());
    let placed = sentence.is_any(comma + 2, &["at", "on", "in", "for"]);
    let closes =
        !sentence.has_word(comma + 2) || sentence.ends_in_stop(comma + 1) && (!later || placed);
    (alike && words(after, comma) && closes && bare_value::read(sentence, index).is_some())
        .then(|| qualifier(sentence.word(comma + 1)))?
}

/// `30 mm on concrete and 20 mm on steel as a minimum`: two measures of one kind that "and" joins, each on something, closed by one limit; of either.
fn as_a_limit(sentence: &Sentence<'_>, index: usize) -> Option<Relation> {
    const ONTO: &[&str] = &["on", "onto", "over", "at"];
    const MOST_WORDS: usize = 5;
    let words = |from: usize, to: usize| {
        to <= from + MOST_WORDS && (from..to).all(|at| sentence.has_word(at))
    };
    let pair = |first: usize| {
        let (own, next) = (sentence.amount(first)?, sentence.amount(first + 1)?);
        let onto = |last: usize| sentence.is_any(sentence.skip_parentheses(last), ONTO);
        let and = next
            .first
            .checked_sub(1)
            .filter(|at| sentence.is_word(*at, "and"))?;
        let joined = own.unit == next.unit
            && onto(own.last)
            && onto(next.last)
            && words(sentence.skip_parentheses(own.last), and);
        let behind = sentence.skip_parentheses(next.last);
        let said = (behind + 2..=behind + MOST_WORDS)
            .find(|at| sentence.is_word(*at, "as") && sentence.is_any(at + 1, &["a", "the"]))?;
        let closes = sentence
            .token(said + 3)
            .is_none_or(|token| token.is_sign('.') || token.is_sign(';'));
        (joined && closes && words(behind, said)).then(|| qualifier(sentence.word(said + 2)))?
    };
    let plain = |first: usize| {
        bare_value::read(sentence, first).is_some() && word_before::read(sentence, first).is_none()
    };
    let first = index
        .checked_sub(1)
        .filter(|before| pair(*before).is_some())
        .unwrap_or(index);
    pair(first).filter(|_| plain(first) && plain(first + 1))
}

/// `3 in. (1 hr) / 4 in. (2 hr) min`, `1/4 in. for 1 hr and 1/2 in. for 2 hr, minimum`: the cases of one measure, each its number and then its case, closed
/// together by a limit behind the last.
fn closed_cases(sentence: &Sentence<'_>, index: usize) -> Option<Relation> {
    const LIMITS: &[&str] = &["min", "minimum", "max", "maximum"];
    const MEASURES: &[&str] = &[
        "depth",
        "thickness",
        "width",
        "height",
        "length",
        "overlap",
        "lap",
        "density",
        "spacing",
    ];
    let mut last = index;
    while let Some(next) = next_case(sentence, last) {
        last = next;
    }
    let listed = last > index
        || sentence
            .bound_before(index)
            .is_some_and(|before| next_case(sentence, before) == Some(index));
    let end = case_end(sentence, sentence.amount(last)?.last)?;
    let limit = end + usize::from(sentence.is_sign(end, ','));
    let closes = sentence
        .token(limit + 1)
        .is_none_or(|token| token.word().is_none() && !token.is_numeric())
        || sentence.is_any(limit + 1, MEASURES);
    (listed && closes && sentence.is_any(limit, LIMITS)).then(|| qualifier(sentence.word(limit)))?
}

/// Where the case right behind a number ends: nothing but a condition, in brackets or not.
fn case_end(sentence: &Sentence<'_>, last: usize) -> Option<usize> {
    let bracket = |at: usize| sentence.is_sign(at, '(') || sentence.is_sign(at, ')');
    let end = (last..sentence.tokens.len())
        .find(|at| !sentence.in_condition(*at) && !bracket(*at))
        .unwrap_or(sentence.tokens.len());
    (last..end)
        .any(|at| sentence.in_condition(at))
        .then_some(end)
}

/// The number that stands as the next case of the same measure, right behind the case of this one and what joins the two.
fn next_case(sentence: &Sentence<'_>, index: usize) -> Option<usize> {
    let own = sentence.amount(index)?;
    let end = case_end(sentence, own.last)?;
    let joint =
        end + usize::from(sentence.is_sign(end, ',') && sentence.is_any(end + 1, &["and", "or"]));
    let joined = sentence.is_any(joint, &["and", "or"])
        || [',', '/', ';']
            .iter()
            .any(|sign| sentence.is_sign(joint, *sign));
    let next = (index + 1..sentence.amounts.len()).find(|next| sentence.is_bound(*next))?;
    let amount = sentence.amount(next)?;
    let alike = amount.unit == own.unit && amount.shape == own.shape && amount.unit != Unit::Count;
    (joined && alike && amount.first == joint + 1).then_some(next)
}

/// `80 mils wet, 40 mils dry, min`: one film, wet and dry, under one qualifier.
fn wet_and_dry(sentence: &Sentence<'_>, index: usize) -> Option<Relation> {
    let amount = sentence.amount(index)?;
    let next = sentence.amount(index + 1)?;
    let (state, after) = (
        sentence.skip_parentheses(amount.last),
        sentence.skip_parentheses(next.last),
    );
    let films = match (sentence.word(state), sentence.word(after)) {
        ("wet", "dry") | ("dry", "wet") => {
            sentence.is_sign(state + 1, ',') && next.first == state + 2
        }
        _ => false,
    };
    let alike = amount.unit.dimension() == next.unit.dimension()
        && bare_value::read(sentence, index).is_some();
    let closes = sentence.is_sign(after + 1, ',')
        && (sentence.is_stop(after + 3) || !sentence.has_word(after + 3));
    (films && alike && closes).then(|| qualifier(sentence.word(after + 2)))?
}
