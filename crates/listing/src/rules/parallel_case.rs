use super::shared_qualifier::is_spaced;
use super::{Finding, Sentence, bounded_alone};
use crate::model::Relation;
use crate::phrase::{Amount, Shape};

/// The most tokens between two amounts of which the second is another case of the first.
const REACH: usize = 14;

/// What opens the case or the place for which a number holds.
const CASES: &[&str] = &["in", "at", "for", "on", "where", "when", "if"];

/// What may stand right before the later number.
const JOINS: &[&str] = &[
    "and",
    "or",
    "except",
    "but",
    "only",
    "to",
    "otherwise",
    "elsewhere",
];

/// What is measured by each of several numbers, said again behind each.
const REPEATED: &[&str] = &[
    "depth",
    "deep",
    "thickness",
    "thick",
    "width",
    "wide",
    "overlap",
    "lap",
    "recess",
];

/// What begins a statement of its own between the two.
const VERBS: &[&str] = &[
    "shall",
    "must",
    "is",
    "are",
    "be",
    "has",
    "have",
    "may",
    "can",
    "with",
    "having",
    "lapped",
    "located",
    "installed",
    "by",
    "x",
];

pub(super) fn read(sentence: &Sentence<'_>, index: usize) -> Option<Finding> {
    if let Some(first) = first_of_cases(sentence, index) {
        let own = sentence.amount(index)?;
        let (finding, rule) = bounded_alone(sentence, first)?;
        let limits = matches!(finding.relation, Relation::AtLeast | Relation::AtMost);
        return (limits && rule != "bare value").then_some(Finding {
            from: own.first,
            ..finding
        });
    }
    let before = sentence.bound_before(index)?;
    let (own, previous) = (sentence.amount(index)?, sentence.amount(before)?);
    let alike = own.unit == previous.unit && own.unit != measure::Unit::Count
        || are_both_before(sentence, previous, own);
    let plain = own.shape == Shape::Single && previous.shape == Shape::Single;
    if !(alike
        && plain
        && is_joined(sentence, previous, own)
        && is_another_case(sentence, previous, own))
        || is_closed(sentence, own.last)
    {
        return None;
    }
    let (finding, rule) = bounded_alone(sentence, before)?;
    let limits = matches!(finding.relation, Relation::AtLeast | Relation::AtMost);
    (limits && rule != "bare value").then_some(Finding {
        from: own.first,
        ..finding
    })
}

/// `4 in. max for 1 hr and 3 in. for 2 hr min`: whether a limit of its own ends the case behind a number.
fn is_closed(sentence: &Sentence<'_>, last: usize) -> bool {
    const LIMITS: &[&str] = &["min", "minimum", "max", "maximum"];
    let case = (last..sentence.tokens.len()).find(|at| sentence.in_condition(*at));
    let end = case.and_then(|case| {
        (case..sentence.tokens.len())
            .find(|at| !sentence.in_condition(*at))
            .or(Some(sentence.tokens.len()))
    });
    end.is_some_and(|end| sentence.is_any(end, LIMITS) || sentence.is_any(end - 1, LIMITS))
}

/// The first of numbers each of which stands between a semicolon and its case: of "depth min 1/4 in. for 1 hr; 1/2 in. for 2 hr; 3/4 in. for 3 hr" the 1/4 in.
fn first_of_cases(sentence: &Sentence<'_>, index: usize) -> Option<usize> {
    let mut first = index;
    while let Some(before) = sentence
        .bound_before(first)
        .filter(|before| repeats(sentence, *before, first))
    {
        first = before;
    }
    (first < index).then_some(first)
}

/// Whether a number stands behind the semicolon that ends the case of the one before, and its own case is all that follows it.
fn repeats(sentence: &Sentence<'_>, before: usize, index: usize) -> bool {
    let (Some(previous), Some(own)) = (sentence.amount(before), sentence.amount(index)) else {
        return false;
    };
    let alike = own.unit == previous.unit && own.unit != measure::Unit::Count;
    let plain = own.shape == Shape::Single && previous.shape == Shape::Single;
    // `min 3 in. depth for joint widths up to 2 in. 4 in. depth for joint widths over 2 in.`
    let measured = sentence.is_any(previous.last, REPEATED)
        && sentence.word(previous.last) == sentence.word(own.last);
    let stated = usize::from(measured);
    let ends = own
        .first
        .checked_sub(1)
        .filter(|at| sentence.is_sign(*at, ';') || measured && sentence.in_condition(*at));
    let semicolon = ends.map(|at| at + usize::from(!sentence.is_sign(at, ';')));
    let cased = |from: usize, to: usize| {
        let brackets = |at: usize| {
            sentence.is_sign(at, '(')
                || sentence.is_sign(at, ')')
                || sentence.is_any(at, &["oc", "o.c"])
        };
        (from..to).any(|at| sentence.in_condition(at))
            && (from..to).all(|at| sentence.in_condition(at) || brackets(at))
    };
    let ends = (own.last..sentence.tokens.len()).find(|at| {
        sentence.is_sign(*at, ';') || sentence.is_sign(*at, '.') && !sentence.in_condition(*at)
    });
    let end = ends.unwrap_or(sentence.tokens.len());
    alike
        && plain
        && semicolon.is_some_and(|semicolon| cased(previous.last + stated, semicolon))
        && cased(own.last + stated, end)
}

/// Whether only where and when the first holds stands between two numbers.
fn is_joined(sentence: &Sentence<'_>, previous: &Amount, own: &Amount) -> bool {
    let between = previous.last..own.first;
    if is_elided(sentence, between.clone(), own.last) {
        return true;
    }
    let joined = own.first.checked_sub(1).is_some_and(|at| {
        at >= previous.last && (sentence.is_sign(at, ',') || sentence.is_any(at, JOINS))
    });
    let begins_anew = |at: usize| {
        sentence.is_sign(at, ';') || sentence.is_sign(at, ':') || sentence.is_any(at, VERBS)
    };
    joined
        && between.len() <= REACH
        && !between
            .clone()
            .any(|at| begins_anew(at) && !sentence.in_condition(at))
}

/// `190 mm thick or more; for the 3 h rating, 240 mm.`: behind a semicolon nothing but another case and its number, which says the rest again.
fn is_elided(sentence: &Sentence<'_>, between: core::ops::Range<usize>, last: usize) -> bool {
    let Some(semicolon) = between.clone().rev().find(|at| sentence.is_sign(*at, ';')) else {
        return false;
    };
    let comma = between.end - 1;
    let cased = semicolon + 1 < comma
        && sentence.is_sign(comma, ',')
        && (semicolon + 1..comma).all(|at| sentence.in_condition(at));
    let next = sentence.skip_parentheses(last);
    let ends = sentence.token(next).is_none()
        || [';', '.'].iter().any(|sign| sentence.is_sign(next, *sign));
    let one = (between.start..semicolon).all(|at| sentence.has_word(at));
    cased && ends && one
}

/// `cure at least 72 hours before foot traffic and 7 days before cover plates are set`: both are times before something.
fn are_both_before(sentence: &Sentence<'_>, previous: &Amount, own: &Amount) -> bool {
    let before = |amount: &Amount| {
        let timed = amount.unit.dimension() == measure::Dimension::Time;
        timed && sentence.is_word(sentence.skip_parentheses(amount.last), "before")
    };
    before(previous) && before(own)
}

/// Whether the case of a number is all that the one before leaves: "otherwise 120 mm", "150 mm above that". The places are those before and behind it.
fn is_of_the_rest(sentence: &Sentence<'_>, first: usize, place: usize) -> bool {
    const REST: &[&str] = &["otherwise", "elsewhere"];
    let ends = |at: usize| {
        sentence.token(at).is_none() || sentence.is_stop(at) || sentence.is_sign(at, '.')
    };
    let before = first > 0 && sentence.is_any(first - 1, REST) && ends(place);
    let behind = sentence.is_any(place, REST) && ends(place + 1);
    let beyond = sentence.is_any(place, &["above", "beyond", "over"])
        && sentence.is_word(place + 1, "that")
        && ends(place + 2);
    before || behind || beyond
}

/// Whether the later number is the same measure in another case: both are spacings or neither, and no measure of its own is named behind it.
fn is_another_case(sentence: &Sentence<'_>, previous: &Amount, own: &Amount) -> bool {
    const SPACED: &[&str] = &["o.c", "oc", "c/c", "crs", "centres", "centers"];
    if is_elided(sentence, previous.last..own.first, own.last) {
        return true;
    }
    let spaced = is_spaced(sentence, own.last);
    let mut place = sentence.skip_parentheses(own.last);
    if spaced && sentence.is_any(place, SPACED) {
        place += 1;
        place += usize::from(sentence.is_sign(place, '.'));
    }
    let case = |at: usize| {
        sentence
            .amount_at(at)
            .is_none_or(|case| !sentence.is_bound(case))
    };
    let opens = sentence.is_any(place, CASES) && case(place + 1)
        || are_both_before(sentence, previous, own)
        || is_of_the_rest(sentence, own.first, place);
    // `1 in. in from the edge`, `4 in. in depth`
    let measured = sentence.is_any(
        place + 1,
        &[
            "from",
            "width",
            "depth",
            "thickness",
            "height",
            "length",
            "diameter",
            "diam",
            "size",
            "least",
            "most",
            "all",
            "any",
        ],
    );
    spaced == is_spaced(sentence, previous.last) && opens && !measured
}
