//! Whose a limit between two numbers is: that of the number before it, or of what comes next.

use measure::Unit;

use super::super::Sentence;
use super::super::word_before::qualifier;

/// `max 24 in. OC` and on the next line `Minimum G60 galvanized`: a number whose own limit stands right before it is closed by none behind it.
pub(super) fn is_limited_right_before(sentence: &Sentence<'_>, index: usize) -> bool {
    let Some(limit) = sentence
        .amount(index)
        .and_then(|amount| amount.first.checked_sub(1))
    else {
        return false;
    };
    // Behind another number in the same stretch it may have closed that: `24" O.C. MAX 25 GA MIN`.
    let floor = sentence.floor(index);
    let own = index == 0 || (floor..limit).any(|at| sentence.is_stop(at));
    own && sentence.is_any(limit, &["min", "minimum", "max", "maximum"])
}

/// `2 in. wide` and on the next line `Max G90 coated`: a limit in a capital that goes on opens another statement.
pub(super) fn opens_a_statement(sentence: &Sentence<'_>, at: usize) -> bool {
    let printed = |at: usize| {
        sentence
            .token(at)
            .map_or("", |token| token.span.of(sentence.text))
    };
    let titled =
        printed(at).starts_with(char::is_uppercase) && printed(at).contains(char::is_lowercase);
    let small = at > 0 && printed(at - 1).ends_with(char::is_lowercase);
    let goes_on = sentence
        .token(at + 1)
        .is_some_and(|token| token.word().is_some() || token.is_numeric());
    titled && small && goes_on
}

/// Whether the qualifier at a token opens the next amount, or a noun with its own amount, rather than closing the one before.
pub(super) fn opens_next(sentence: &Sentence<'_>, at: usize) -> bool {
    /// Words that lead to another amount without being qualified themselves.
    const LEADS: &[&str] = &[
        "nlt", "nmt", "not", "no", "to", "and", "in", "above", "below", "from", "at", "where",
        "when", "if", "for", "on", "over", "under", "between", "per", "every", "each", "within",
        "into", "with", "by", "x",
    ];
    // `density 4 pcf. maximum: recess 1/2 in.`, `with 8 pcf wool the min depth`
    let heads = qualifier(sentence.word(at)).is_some()
        && sentence.is_sign(at + 1, ':')
        && sentence.has_word(at + 2);
    let articled = at > 1
        && sentence.is_word(at - 1, "the")
        && !sentence.is_any(at - 2, &["at", "as", "is", "are", "be", "being"])
        && sentence.has_word(at + 1);
    if heads || articled {
        return true;
    }
    if closes_adjacent(sentence, at) {
        return false;
    }
    // `4 IN. DEEP, MAX. COMPRESSION OF IT WHEN PLACED IN THE JOINT 50%`
    let noun = sentence.has_word(at + 1)
        && !sentence.is_any(at + 1, LEADS)
        && qualifier(sentence.word(at + 1)).is_none()
        && !sentence.is_any(
            at + 1,
            &[
                "or", "of", "a", "the", "wide", "deep", "thick", "long", "high", "o.c", "oc",
            ],
        );
    let later = (at + 2..sentence.tokens.len())
        .take_while(|next| !sentence.is_stop(*next))
        .any(|next| sentence.amount_at(next).is_some());
    if at > 0 && sentence.is_sign(at - 1, ',') && noun && later {
        return true;
    }
    if let Some(next) = sentence.amount_at(at + 1) {
        if labels_a_case(sentence, next) {
            return false;
        }
        // `o.c. max. 2 h: 406 mm`: hours that only say when.
        return sentence.is_bound(next) && !closes_itself(sentence, next);
    }
    let amount_at = |at: usize| sentence.amount_at(at).is_some();
    if sentence.is_word(at + 1, "of") {
        return amount_at(at + 2) || amount_at(at + 3);
    }
    // `a minimum penetration of 3/4 in.`
    let of_amount = [at + 3, at + 4]
        .into_iter()
        .find_map(|at| sentence.amount_at(at))
        .and_then(|index| sentence.amount(index));
    let before = sentence
        .amounts
        .iter()
        .rev()
        .find(|amount| amount.last <= at);
    if sentence.is_word(at + 2, "of")
        && of_amount
            .zip(before)
            .is_some_and(|(next, own)| next.unit.dimension() == own.unit.dimension())
    {
        return true;
    }
    let parted = sentence.is_stop(at + 1)
        || ['(', '[', '.', ')', '/', '×']
            .iter()
            .any(|sign| sentence.is_sign(at + 1, *sign));
    let next_closed = sentence
        .amount_at(at + 2)
        .is_some_and(|next| closes_itself(sentence, next));
    amount_at(at + 2) && !parted && !sentence.is_any(at + 1, LEADS) && !next_closed
}

/// `1/2 in. min` and on the next line `3 hr: three layers`: hours before a colon that parts them from another amount only say for which rating that is.
pub(in crate::rules) fn labels_a_case(sentence: &Sentence<'_>, index: usize) -> bool {
    sentence.amount(index).is_some_and(|amount| {
        amount.unit == Unit::Hour
            && sentence.is_sign(amount.last, ':')
            && sentence.amount_at(amount.last + 1).is_some()
    })
}

/// Whether a word goes on with the measure before it: `3 in. min spaced 12 in. OC`, `1 in. max wide`.
pub(super) fn goes_on_measuring(sentence: &Sentence<'_>, at: usize) -> bool {
    sentence.is_any(
        at,
        &[
            "spaced", "wide", "deep", "thick", "thk", "long", "high", "apart", "dense", "centres",
            "centers",
        ],
    )
}

/// Whether a qualifier with a stop stands right behind a number: `0.76 mm (22 ga.) min. 38 mm deep`. The stop ends what it closes, and so does
/// a word that goes on with the measure.
pub(in crate::rules) fn closes_adjacent(sentence: &Sentence<'_>, at: usize) -> bool {
    if is_of_the_sheet_behind(sentence, at) {
        return false;
    }
    let stopped = sentence.ends_in_stop(at) || goes_on_measuring(sentence, at + 1);
    // `62 MIL DRY MIN.`: what is measured may stand between.
    let measured = at > 0
        && sentence.is_any(
            at - 1,
            &[
                "dry",
                "wet",
                "deep",
                "thick",
                "thk",
                "wide",
                "long",
                "high",
                "dp",
                "o.c",
                "oc",
                "locations",
                "places",
                "points",
            ],
        );
    let end = at - usize::from(measured);
    stopped
        && sentence.amounts.iter().any(|amount| {
            amount.last == end
                || (amount.last < end && sentence.skip_parentheses(amount.last) == end)
        })
}

/// `12 in. long min. 20 ga. steel angles`: behind a number that has named its measure, a "min." right before a gauge is said of the sheet that the gauge names.
/// The number before is then as it is written, which is the stricter of the two readings.
fn is_of_the_sheet_behind(sentence: &Sentence<'_>, at: usize) -> bool {
    let Some(gauge) = sentence.amount_at(at + 1) else {
        return false;
    };
    let of_sheet = sentence.amount(gauge).is_some_and(|amount| {
        let behind = sentence.skip_parentheses(amount.last);
        amount.unit == Unit::Gauge
            && sentence.has_word(behind)
            && qualifier(sentence.word(behind)).is_none()
    });
    let measured = at > 0 && goes_on_measuring(sentence, at - 1);
    of_sheet && measured && sentence.is_any(at, &["min", "minimum"])
}

/// Whether an amount has a qualifier of its own just after it: `1-1/2 in. max. 8 pcf min`.
pub(super) fn closes_itself(sentence: &Sentence<'_>, index: usize) -> bool {
    sentence.amount(index).is_some_and(|amount| {
        let after = sentence.skip_parentheses(amount.last);
        sentence.is_any(after, &["min", "minimum", "max", "maximum", "min.", "max."])
    })
}
