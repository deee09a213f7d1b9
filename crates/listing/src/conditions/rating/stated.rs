//! Hours that are said of a thing and tell no case: "achieved an F rating of 2 hours", "limited to 2 hr".

use measure::Unit;

use super::INTRODUCE;
use crate::rules::Sentence;

/// Whether hours are what a limited rating "is", though words between say with what: "max rating *with precast units is* 2 hr".
fn ends_a_limited_rating(
    sentence: &Sentence<'_>,
    from: usize,
    rating: usize,
    hours: usize,
) -> bool {
    const OF_THE_RATING: &[&str] = &[
        "the",
        "a",
        "fire",
        "f",
        "t",
        "assembly",
        "hourly",
        "resistance",
        "endurance",
    ];
    let limit = (from..rating)
        .rev()
        .find(|at| !sentence.is_any(*at, OF_THE_RATING));
    let limited =
        limit.is_some_and(|at| sentence.is_any(at, &["max", "maximum", "min", "minimum"]));
    let said = hours > 0
        && (sentence.is_any(hours - 1, &["is", "are"])
            || sentence.is_word(hours - 1, "be")
                && hours > 1
                && sentence.is_any(hours - 2, &["shall", "must"]));
    let plain =
        (rating + 1..hours).all(|at| sentence.has_word(at) && sentence.amount_at(at).is_none());
    limited && said && plain
}

/// Whether words before a rating bound it: "the F Rating is limited to 2 hr", "is exactly 1 h".
pub(super) fn is_limited(sentence: &Sentence<'_>, start: usize) -> bool {
    let limited = |at: usize| {
        sentence.is_word(at, "to") && at > 0 && sentence.is_any(at - 1, &["limited", "restricted"])
    };
    let before = start.checked_sub(1);
    before.is_some_and(|at| sentence.is_any(at, &["exactly"]) || limited(at))
}

/// Whether a rating begins with what bounds it of the thing that it names: "Min 2 hr rated concrete floor".
pub(super) fn is_bounded(sentence: &Sentence<'_>, start: usize) -> bool {
    sentence.is_any(start, &["min", "minimum", "max", "maximum"])
        && (start == 0 || !sentence.is_any(start - 1, INTRODUCE))
}

/// Whether a token says what something comes to: "gives".
pub(super) fn gives(sentence: &Sentence<'_>, at: usize) -> bool {
    sentence.is_any(
        at,
        &[
            "give", "gives", "giving", "yield", "yields", "achieve", "achieves",
        ],
    )
}

/// Whether hours end a stretch in which a count of things gives them: `One layer gives 1 h.`, `Two layers give 2 h, three layers 3 h.`
pub(super) fn is_given_by_a_count(sentence: &Sentence<'_>, start: usize, end: usize) -> bool {
    const THINGS: &[&str] = &[
        "layer", "layers", "coat", "coats", "ply", "plies", "sheet", "sheets", "board", "boards",
    ];
    let ends = sentence.token(end).is_none()
        || sentence.is_stop(end)
        || sentence.is_sign(end, '.') && sentence.token(end + 1).is_none();
    let Some(before) = start.checked_sub(1) else {
        return false;
    };
    let elided = !gives(sentence, before);
    let thing = if elided {
        before
    } else {
        let Some(thing) = before.checked_sub(1) else {
            return false;
        };
        thing
    };
    let counted = thing > 0
        && sentence.is_any(thing, THINGS)
        && sentence.amounts.iter().any(|amount| {
            amount.unit == Unit::Count && (amount.last == thing || amount.last == thing + 1)
        });
    let said = !elided || (0..thing).any(|at| gives(sentence, at));
    ends && counted && said
}

/// Whether hours are said of a thing and tell no case: "achieved an F rating of 2 hours", "the T rating drops to 1/2 h", "shall have a rating of not less
/// than 2 hours", "is a 2 h assembly". "In walls with a rating of 2 hours" is a case.
pub(super) fn is_stated(sentence: &Sentence<'_>, start: usize, first: usize, last: usize) -> bool {
    const CASES: &[&str] = &[
        "for", "in", "at", "with", "where", "when", "if", "whose", "having", "that", "which",
    ];
    const REACH: usize = 9;
    let stop = (0..start)
        .rev()
        .find(|at| sentence.is_stop(*at) && !sentence.is_sign(*at, ':'))
        .map_or(0, |at| at + 1);
    let rating = (first.saturating_sub(REACH).max(stop)..first)
        .rev()
        .find(|at| sentence.is_any(*at, &["rating", "ratings"]));
    // `is a 2 h assembly`
    let is_one = start > 0
        && sentence.is_any(start - 1, &["is", "are"])
        && sentence.is_any(last, &["assembly", "assemblies", "construction"]);
    // `keeps its integrity and insulation for 120 minutes`
    let keeps = start > 0
        && sentence.is_word(start - 1, "for")
        && sentence.has_any(stop, start, &["integrity", "insulation"])
        && sentence.has_any(
            stop,
            start,
            &[
                "keep",
                "keeps",
                "kept",
                "maintain",
                "maintains",
                "maintained",
                "retained",
                "retains",
            ],
        );
    let Some(rating) = rating else {
        return is_one || keeps;
    };
    if ends_a_limited_rating(sentence, stop, rating, first) {
        return true;
    }
    // "the joint is limited to 1 in. and the rating to 2 hr"
    let limited = start == rating + 2
        && sentence.is_word(rating + 1, "to")
        && sentence.has_any(stop, rating, &["limited", "restricted"]);
    if limited {
        return true;
    }
    let said = |words: &[&str]| sentence.has_any(stop, rating, words);
    let of_case = said(CASES) && !said(&["acceptance", "conditions"]);
    let linked = (rating + 1..first).all(|at| {
        sentence.is_any(
            at,
            &[
                "of", "is", "drops", "falls", "rises", "to", "not", "no", "less", "more", "than",
                "at", "least", "most", "a", "then",
            ],
        ) || [':', '-', '–', '—', '=']
            .iter()
            .any(|sign| sentence.is_sign(at, *sign))
    });
    let has = said(&[
        "has", "have", "achieved", "achieves", "obtained", "obtains", "met", "reached", "reaches",
        "gives", "earned", "attained",
    ]);
    let verb = sentence.has_any(rating + 1, first, &["is", "drops", "falls", "rises"]);
    // `T Rating: 1 hr` and `T Rating - 0 hr` say what it is, wherever they stand; `F Rating - 2 hr: 4 in.` is a case.
    let signed = [':', '-', '–', '—', '=']
        .iter()
        .any(|sign| sentence.is_sign(rating + 1, *sign));
    let lettered = rating > stop
        && sentence.is_any(rating - 1, &["f", "t", "fh", "fth"])
        && signed
        && !sentence.is_sign(last, ':')
        && !sentence.is_sign(last, '=');
    let labelled = (stop == rating.saturating_sub(1).max(stop)
        && sentence.is_sign(rating + 1, ':'))
        || lettered;
    linked && !of_case && (has || verb || labelled)
}
