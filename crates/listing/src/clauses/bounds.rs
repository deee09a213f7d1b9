//! The numbers of a sentence to bounds: each with its relation, two that are one range joined, a list of counts taken together.

use measure::Unit;

use super::Around;
use super::carried::Carried;
use super::column_limits::ColumnLimits;
use super::counter_case::is_of_one_side;
use super::denied_list::denies_below;
use super::limit_heads::{LimitHeads, is_listed};
use super::unclaimed::Unclaimed;
use crate::conditions::Attached;
use crate::model::{Bound, Relation, SecondValue};
use crate::outline::heads_what_is_ruled_out;
use crate::phrase::Amount;
use crate::rules::{Finding, Sentence, bounded, compares_down, compares_up, is_spaced};

/// A number of a sentence with all that was found about it.
pub(super) struct Reading {
    /// The amounts it is made of: one, or two that a range joins.
    pub(super) amounts: Vec<usize>,
    pub(super) bound: Bound,
    pub(super) rule: &'static str,
    pub(super) from: usize,
    pub(super) doubtful: bool,
}

/// What the headings over a sentence say of the bare values in it.
pub(super) struct Headings<'a> {
    /// The opening of the list that it stands in.
    carried: Option<Carried>,
    /// The headings of limits in its text.
    heads: &'a LimitHeads,
    /// The values that stand in columns of limits.
    columns: &'a ColumnLimits,
    /// Whether it is a list of what must not be.
    denied: bool,
    /// The title of its item.
    title: &'a str,
}

impl<'a> Headings<'a> {
    /// What is over the sentences of a text.
    pub(super) fn of(around: &'a Around, heads: &'a LimitHeads) -> Self {
        Self {
            carried: around.carried,
            heads,
            columns: &around.column_limits,
            denied: around.denied,
            title: &around.subject.title,
        }
    }

    fn over(&self, sentence: &Sentence<'_>, amount: &Amount) -> Option<Carried> {
        let place = sentence.source(amount.at);
        if let Some(relation) = self.columns.over(place) {
            return Some(Carried::of_any(relation));
        }
        let listed = || is_listed(sentence, amount);
        let carried = self.carried.filter(|own| !own.is_of_a_list() || listed());
        self.heads.over(sentence, amount).or(carried)
    }
}

/// Every number that bounds something, and those that no rule dared to read.
pub(super) fn bounds(
    sentence: &Sentence<'_>,
    headings: &Headings<'_>,
    attached: &[Attached],
) -> (Vec<Reading>, Vec<usize>) {
    let forbids = heads_what_is_ruled_out(headings.title);
    let mut readings: Vec<Reading> = Vec::new();
    let mut unread = Vec::new();
    let findings: Vec<Option<(Finding, &'static str)>> = (0..sentence.amounts.len())
        .map(|index| bounded(sentence, index).filter(|_| sentence.is_bound(index)))
        .collect();
    let unclaimed = Unclaimed::of(sentence, &findings);
    for index in (0..sentence.amounts.len()).filter(|index| sentence.is_bound(*index)) {
        let Some(amount) = sentence.amount(index) else {
            continue;
        };
        let Some((finding, rule)) = findings.get(index).copied().flatten() else {
            unread.push(index);
            continue;
        };
        let denied = forbids || headings.denied || is_denied_above(sentence, amount);
        let counts_nothing = amount.unit == Unit::Count && is_numbered_limit(sentence, amount);
        if counts_nothing
            || headings.columns.is_left_by(sentence.source(amount.at))
            || is_of_one_side(sentence, index)
            || is_part_of_that(sentence, amount)
            || is_beside_a_bare_number(sentence, amount)
            || denied
                && (would_be_denied(finding.relation, rule, forbids) || is_or_so(sentence, amount))
        {
            unread.push(index);
            continue;
        }
        // Under "Not permitted" what compares is to be kept from: "pieces < 12 in. long".
        let finding = match finding.relation {
            Relation::LessThan | Relation::MoreThan if forbids => Finding {
                relation: finding.relation.negated().unwrap_or(finding.relation),
                ..finding
            },
            _ => finding,
        };
        let over = headings.over(sentence, amount);
        // "Clips (min)" over "Spacing: 12 in. OC" can't mean the spacing, and nobody knows what it is then.
        let least = over
            .is_some_and(|carried| carried.relation == Relation::AtLeast && carried.is_of_any());
        if least && rule == "bare value" && is_spaced(sentence, amount.last) {
            unread.push(index);
            continue;
        }
        let (finding, rule) = match over {
            // "Minimum depth:" over a list speaks for its bare values.
            Some(carried)
                if rule == "bare value"
                    && amount.unit != Unit::Count
                    && carried.reaches(sentence, amount) =>
            {
                (
                    Finding::sure(carried.relation, finding.from),
                    "qualifier of the heading",
                )
            }
            _ => (finding, rule),
        };
        if rule == "bare value"
            && (unclaimed.is_beside(sentence, index) || is_elsewhere(sentence, index))
        {
            unread.push(index);
            continue;
        }
        let paired = attached.get(index).is_some_and(|own| own.part.is_some());
        let joined = readings.last().and_then(|last| {
            join_range(sentence, last, amount, (&finding, rule))
                .or_else(|| join_counts(sentence, last, index).filter(|_| !paired))
        });
        if let Some(joined) = joined {
            if let Some(last) = readings.last_mut() {
                last.bound = joined;
                last.amounts.push(index);
                last.rule = "range or tolerance";
            }
            continue;
        }
        readings.push(Reading {
            amounts: vec![index],
            bound: bound(sentence, amount, &finding, rule),
            rule,
            from: finding.from,
            doubtful: finding.doubtful
                || rule == "bare value" && shares_a_limit(sentence, index, &findings),
        });
    }
    (readings, unread)
}

/// Whether a limit that another measure of the same thing took may be meant of a bare number, too: "strips 1/2 in. deep *and 2 in. wide minimum*", "*min 3 in.
/// deep*, 4 in. wide strips".
fn shares_a_limit(
    sentence: &Sentence<'_>,
    index: usize,
    findings: &[Option<(Finding, &'static str)>],
) -> bool {
    const MEASURES: &[&str] = &["deep", "wide", "thick", "long", "high", "tall"];
    let rule = |index: usize| findings.get(index).copied().flatten().map(|(_, rule)| rule);
    let measure = |amount: &Amount| sentence.skip_parentheses(amount.last);
    if is_size_before_the_limited(sentence, index, rule) {
        return true;
    }
    let Some(own) = sentence
        .amount(index)
        .filter(|own| sentence.is_any(measure(own), MEASURES))
    else {
        return false;
    };
    let alike = |other: &Amount| {
        other.unit == own.unit
            && sentence.is_any(measure(other), MEASURES)
            && sentence.word(measure(other)) != sentence.word(measure(own))
    };
    let joined = |from: &Amount, to: &Amount| {
        let joint = measure(from) + 1;
        to.first == joint + 1
            && (sentence.is_any(joint, &["and", "by", "x"]) || sentence.is_sign(joint, ','))
    };
    let behind = sentence.amount(index + 1).is_some_and(|next| {
        rule(index + 1) == Some("word after") && alike(next) && joined(own, next)
    });
    let before = index
        .checked_sub(1)
        .and_then(|before| sentence.amount(before))
        .is_some_and(|before| {
            rule(index - 1) == Some("word before") && alike(before) && joined(before, own)
        });
    behind || before
}

/// Whether a number is multiplied by others of which the last has a limit: "angles *1-1/2 x 2* x 1/8 in. min."
fn is_size_before_the_limited(
    sentence: &Sentence<'_>,
    index: usize,
    rule: impl Fn(usize) -> Option<&'static str>,
) -> bool {
    let times = |one: usize| {
        let pair = sentence.amount(one).zip(sentence.amount(one + 1));
        pair.is_some_and(|(own, next)| {
            let joint = own.last;
            let multiplies = sentence.is_any(joint, &["x", "by"]) || sentence.is_sign(joint, '×');
            multiplies && next.first == joint + 1 && next.unit == own.unit
        })
    };
    let last = (index..sentence.amounts.len()).find(|one| !times(*one));
    last.is_some_and(|last| last > index && rule(last) == Some("word after"))
}

/// `1 Minimum.`: a number and a limit with nothing that they count, as a note begins.
fn is_numbered_limit(sentence: &Sentence<'_>, amount: &Amount) -> bool {
    let rest = amount.last..sentence.tokens.len();
    amount.first == 0
        && sentence.is_any(amount.last, &["min", "minimum", "max", "maximum"])
        && rest.skip(1).all(|at| sentence.is_sign(at, '.'))
}

/// `25 percent in compression, half that in extension`: a part of another number.
fn is_part_of_that(sentence: &Sentence<'_>, amount: &Amount) -> bool {
    amount.last > 0
        && sentence.is_any(amount.last - 1, &["half", "quarter", "third", "twice"])
        && sentence.is_any(amount.last, &["that", "this"])
}

/// `1 hr - 3`: hours with a number of something else behind a dash.
fn is_beside_a_bare_number(sentence: &Sentence<'_>, amount: &Amount) -> bool {
    let dash = ['-', '–', '—']
        .iter()
        .any(|dash| sentence.is_sign(amount.last, *dash));
    let next = amount.last + 1;
    let bare = sentence
        .token(next)
        .is_some_and(crate::phrase::Token::is_numeric)
        && sentence.amount_at(next).is_none();
    amount.unit == Unit::Hour && dash && bare
}

/// `max width of 50 mm for walls (100 mm floors)`: another place's number, in brackets behind a limit that may reach it.
fn is_elsewhere(sentence: &Sentence<'_>, index: usize) -> bool {
    const PLACES: &[&str] = &[
        "floor", "floors", "wall", "walls", "ceiling", "ceilings", "roof", "roofs",
    ];
    let pair = index
        .checked_sub(1)
        .and_then(|before| sentence.amount(before).zip(sentence.amount(index)));
    pair.is_some_and(|(before, own)| {
        let for_place = sentence.is_any(own.last, &["for", "in", "at"]);
        let place = own.last + usize::from(for_place);
        before.unit == own.unit
            && own.first > 0
            && sentence.is_sign(own.first - 1, '(')
            && sentence.is_any(place, PLACES)
            && sentence.is_sign(place + 1, ')')
            && bounded(sentence, index - 1).is_some_and(|(_, rule)| rule != "bare value")
    })
}

/// Whether what a rule found would be turned by a denial over it. Under a title that forbids, a comparison is turned.
fn would_be_denied(relation: Relation, rule: &str, turned: bool) -> bool {
    let compares = matches!(relation, Relation::LessThan | Relation::MoreThan);
    compares && !turned || relation == Relation::AtMost && rule == "within a distance"
}

/// Whether a number stands in a list that its sentence opens with a denial: "Not allowed: a depth of 3 in. or less".
fn is_denied_above(sentence: &Sentence<'_>, amount: &Amount) -> bool {
    let colon = (0..amount.first)
        .rev()
        .find(|at| sentence.is_sign(*at, ':'));
    colon.is_some_and(|colon| denies_below(sentence.words(0, colon + 1)))
}

/// Whether a limit is closed behind its number: "3 in. or less", "3 in. deep or more".
fn is_or_so(sentence: &Sentence<'_>, amount: &Amount) -> bool {
    const FARTHEST: usize = 2;
    let after = sentence.skip_parentheses(amount.last);
    (after..after + FARTHEST).any(|at| {
        let limit = sentence.word(at + 1);
        sentence.is_word(at, "or") && (compares_up(limit) || compares_down(limit))
    })
}

fn bound(sentence: &Sentence<'_>, amount: &Amount, finding: &Finding, rule: &str) -> Bound {
    let (lo, hi) = match (finding.relation, amount.hi) {
        (_, Some(hi)) => (Some(amount.lo), Some(hi)),
        (Relation::AtMost | Relation::LessThan, None) => (None, Some(amount.lo)),
        _ => (Some(amount.lo), None),
    };
    let second = amount.second.as_ref().map(|second| SecondValue {
        lo: Some(second.lo),
        hi: second.hi,
        unit: second.unit,
        agreement: second.agreement,
    });
    Bound {
        relation: finding.relation,
        lo,
        hi,
        unit: amount.unit,
        lo_excluded: false,
        bare: rule == "bare value",
        at: sentence.source(amount.at),
        second,
    }
}

/// "no less than 2-1/2 in. nor more than 6 in." is one range, and so is "max 8 in. and min 1 in. wide".
fn join_range(
    sentence: &Sentence<'_>,
    last: &Reading,
    amount: &Amount,
    (finding, rule): (&Finding, &str),
) -> Option<Bound> {
    let first = sentence.amount(*last.amounts.last()?)?;
    let rising = match (last.bound.relation, finding.relation) {
        (Relation::AtLeast, Relation::AtMost) => true,
        (Relation::AtMost, Relation::AtLeast) if reads_a_word(last.rule) && reads_a_word(rule) => {
            false
        }
        // "no more than 3 in., nor less than 3/4 in."
        (Relation::AtMost, Relation::AtLeast)
            if last.rule == "comparison before" && sentence.is_word(finding.from, "nor") =>
        {
            false
        }
        _ => return None,
    };
    if first.unit != amount.unit || last.amounts.len() > 1 || amount.hi.is_some() {
        return None;
    }
    // "50 mm deep or more at no more than 600 mm centres" bounds a depth and a spacing.
    if is_spaced(sentence, first.last) != is_spaced(sentence, amount.last) {
        return None;
    }
    if places_differently(sentence, (last.from, first), (finding.from, amount)) {
        return None;
    }
    // "nor shall it be narrower than 4 in." says it in a clause of its own.
    let own_clause = sentence.is_word(finding.from, "nor")
        && sentence.has_any(finding.from, amount.first, &["shall", "must", "may"]);
    if own_clause {
        return None;
    }
    let between = sentence.skip_parentheses(first.last)..finding.from.max(first.last);
    // `1-1/2 in. min, 3 in. max` and `min 1/2 in., max 1 in.`: a comma joins only limits that stand alike with nothing else between.
    let after = last.rule == "word after" && finding.from == amount.first;
    let before =
        last.rule == "word before" && finding.from + 1 == amount.first && between.len() <= 1;
    // `no less than 1/4 in., no more than 1 in.`
    let compared = last.rule == "comparison before"
        && rule == "comparison before"
        && rising
        && between.len() <= 1
        && sentence.is_any(finding.from, &["no", "not"])
        && sentence.is_any(last.from + 1, &["less", "below", "under"])
        && sentence
            .token(sentence.skip_parentheses(amount.last))
            .is_none_or(|token| token.word().is_none());
    // A comma and a preposition begin another phrase: "0.84 mm min, at 600 mm o.c. max".
    let another = between.clone().any(|at| sentence.is_sign(at, ','))
        && between
            .clone()
            .any(|at| sentence.is_any(at, &["at", "to", "of", "is", "shall", "may"]));
    // `min 35 long at max 300`, `3-5/8 in. min at 24 in. max`
    let another = another
        || between.clone().any(|at| {
            sentence.is_word(at, "at")
                && (sentence.is_any(at + 1, &["min", "minimum", "max", "maximum"])
                    || at + 1 == amount.first)
        });
    // `max. joint width 2 in. min. overlap 1/2 in.`: what stands between a limit and its number is another's name.
    let named = reads_a_word(rule)
        && finding.from < amount.first
        && (finding.from + 1..amount.first).any(|at| {
            sentence
                .token(at)
                .is_some_and(|token| token.word().is_some())
                && !sentence.is_any(at, JOINING)
        });
    let another = another || named || parts_closed_from_opened(sentence, last, rule, &between);
    // `3 in. wide or up to 4 in. when ...`
    let another = another
        || between
            .clone()
            .any(|at| sentence.is_word(at, "or") && sentence.is_word(at + 1, "up"));
    // `20 mm ≤ cavity ≤ 60 mm`
    let chain = last.rule == "sign after" && rule == "sign before";
    let joins = !another
        && (chain
            || between.clone().all(|at| {
                ((after
                    || before
                    || compared
                    || !rising
                    || sentence.is_any(at + 1, &["and", "but"]))
                    && sentence.is_sign(at, ','))
                    || sentence.is_any(at, JOINING)
            }));
    let (low, high) = if rising {
        (&first.lo, &amount.lo)
    } else {
        (&amount.lo, &first.lo)
    };
    // "depth max 1 in., min 1/4 in. lap" bounds two things.
    if names_anew(sentence, last, &between, amount) || measures_another(sentence, first, amount) {
        return None;
    }
    // "max 8 in. or min 1 in." would be two alternatives.
    let falling_or = !rising && between.clone().any(|at| sentence.is_word(at, "or"));
    (joins && !falling_or && between.len() <= 5 && low < high).then(|| Bound {
        relation: Relation::Between,
        lo: Some(*low),
        hi: Some(*high),
        at: last.bound.at.join(sentence.source(amount.at)),
        second: joined_seconds(last, amount, rising),
        ..last.bound.clone()
    })
}

/// Whether one of two limits says how far apart things stand or from what, and the other doesn't.
fn places_differently(
    sentence: &Sentence<'_>,
    (last_from, first): (usize, &Amount),
    (from, amount): (usize, &Amount),
) -> bool {
    const APART: &[&str] = &["apart", "closer", "nearer", "farther", "further"];
    const FROM: &[&str] = &["to", "from"];
    let says = |from: usize, amount: &Amount, words: &[&str]| {
        sentence.has_any(from.min(amount.first), amount.first, words)
    };
    // "no smaller than 5 in. and no farther apart than 60 in." bounds a size and a spacing.
    let apart = says(from, amount, APART);
    if apart != says(last_from, first, APART) {
        return true;
    }
    // "farther apart than 12 in. nor closer to the edge than 1 in." bounds a spacing and a distance.
    apart && says(from, amount, FROM) != says(last_from, first, FROM)
}

/// `12 in. max, min 1 in. wide`: a comma parts a number that its limit closes from one that its limit opens.
fn parts_closed_from_opened(
    sentence: &Sentence<'_>,
    last: &Reading,
    rule: &str,
    between: &core::ops::Range<usize>,
) -> bool {
    let commas = between.clone().any(|at| sentence.is_sign(at, ','));
    last.rule == "word after" && rule == "word before" && commas
}

/// Words that may stand between two limits of one range.
const JOINING: &[&str] = &[
    "and",
    "nor",
    "but",
    "to",
    "or",
    "shall",
    "may",
    "is",
    "a",
    "at",
    "min",
    "minimum",
    "max",
    "maximum",
    "of",
    "more",
    "least",
    "most",
    "greater",
    "the",
    "by",
    "when",
    "installed",
    "wide",
    "deep",
    "thick",
    "long",
    "high",
];

/// "one or two layers" allows from one to two; of a list that leaves a number out, "two or four", a person must choose.
fn join_counts(sentence: &Sentence<'_>, last: &Reading, index: usize) -> Option<Bound> {
    let amount = sentence.amount(index)?;
    let first = sentence.amount(*last.amounts.last()?)?;
    let bare = last.rule == "bare value" || last.bound.relation == Relation::Between;
    let next_in_list = bare
        && last.bound.unit == Unit::Count
        && amount.unit == Unit::Count
        && list_end(sentence, *last.amounts.last()?) >= index
        && list_joint(sentence, index) == Some("or");
    let follows = first.lo.plus(measure::Number::ONE)? == amount.lo;
    (next_in_list && follows).then(|| Bound {
        relation: Relation::Between,
        hi: Some(amount.lo),
        at: last.bound.at.join(sentence.source(amount.at)),
        bare: true,
        ..last.bound.clone()
    })
}

/// The last amount of the list that an amount stands in: `one, two or three layers`.
pub(super) fn list_end(sentence: &Sentence<'_>, index: usize) -> usize {
    let joined = |one: usize| {
        let (Some(own), Some(next)) = (sentence.amount(one), sentence.amount(one + 1)) else {
            return false;
        };
        own.unit == Unit::Count
            && next.unit == Unit::Count
            && own.last < next.first
            && (own.last..next.first)
                .all(|at| sentence.is_sign(at, ',') || sentence.is_any(at, &["or", "and"]))
    };
    (index..sentence.amounts.len())
        .find(|one| !joined(*one))
        .unwrap_or(index)
}

/// The word that joins the list an amount stands in: before its last amount.
fn list_joint(sentence: &Sentence<'_>, index: usize) -> Option<&'static str> {
    let last = sentence.amount(list_end(sentence, index))?;
    let before = last.first.checked_sub(1)?;
    ["or", "and"]
        .into_iter()
        .find(|word| sentence.is_word(before, word))
}

/// Whether a rule reads a qualifying word beside its number: "min 4 in."
fn reads_a_word(rule: &str) -> bool {
    rule == "word before" || rule == "word after"
}

/// Whether the words after a second limit name something that the first isn't about: "max 1 in., min 1/4 in. *lap*".
fn names_another(sentence: &Sentence<'_>, first: &Amount, amount: &Amount) -> bool {
    const SAME: &[&str] = &[
        "wide", "deep", "thick", "thk", "long", "high", "in", "with", "when", "where", "for",
        "and", "or", "min", "minimum", "max", "maximum", "overall", "clear", "to", "least", "most",
    ];
    const LIMITS: &[&str] = &["min", "minimum", "max", "maximum"];
    const MEASURES: &[&str] = &[
        "edge",
        "end",
        "lap",
        "overlap",
        "depth",
        "thickness",
        "embedment",
        "recess",
        "distance",
        "bearing",
        "width",
        "spacing",
        "length",
        "penetration",
        "leg",
    ];
    let after = |amount: &Amount| sentence.word(sentence.skip_parentheses(amount.last));
    let word = after(amount);
    // `16 in. max, 2 in. min edge distance`
    let behind = sentence.skip_parentheses(amount.last) + 1;
    if LIMITS.contains(&word) && sentence.is_any(behind, MEASURES) {
        return true;
    }
    !word.is_empty() && !SAME.contains(&word) && word != after(first)
}

/// Whether a second limit names another thing than the one before. `1-1/2 in. min to 3 in. max depth` is one depth.
fn names_anew(
    sentence: &Sentence<'_>,
    last: &Reading,
    between: &core::ops::Range<usize>,
    amount: &Amount,
) -> bool {
    let goes_to = last.rule == "word after"
        && between.len() == 2
        && sentence.is_word(between.start + 1, "to");
    let first = last.amounts.last().and_then(|own| sentence.amount(*own));
    reads_a_word(last.rule)
        && !goes_to
        && first.is_some_and(|first| names_another(sentence, first, amount))
}

/// Whether two limits say that they measure different things: "not less than 1 in. *wide* nor more than 2 in. *deep*".
fn measures_another(sentence: &Sentence<'_>, first: &Amount, amount: &Amount) -> bool {
    const MEASURES: &[&str] = &["wide", "deep", "thick", "long", "high"];
    let measure = |amount: &Amount| {
        let word = sentence.word(sentence.skip_parentheses(amount.last));
        MEASURES.contains(&word).then_some(word)
    };
    matches!((measure(first), measure(amount)), (Some(one), Some(other)) if one != other)
}

/// The second values of two limits as one range, where both have one.
fn joined_seconds(last: &Reading, amount: &Amount, rising: bool) -> Option<SecondValue> {
    let (one, other) = last.bound.second.as_ref().zip(amount.second.as_ref())?;
    let (low, high) = if rising {
        (one.lo, Some(other.lo))
    } else {
        (Some(other.lo), one.lo)
    };
    Some(SecondValue {
        lo: low,
        hi: high,
        unit: one.unit,
        agreement: one.agreement.max(other.agreement),
    })
}
