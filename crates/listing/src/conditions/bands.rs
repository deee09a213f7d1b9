//! Bands of widths: two limits of the joints meant, and lines that open with the joints they are for.

use super::Found;
use super::width::{
    compares, found, is_comparing, is_joint_noun, is_statement_end, joint_property, skip_attribute,
};
use crate::layout::LIST_SIGNS;
use crate::model::{Expr, Relation, Test};
use crate::rules::Sentence;

/// `Joints exceeding 1 in. but not exceeding 2 in.`, `joints over 30 and up to 75 mm`: both limits of the joints meant.
pub(super) fn two_sided(sentence: &Sentence<'_>, index: usize, own: Found) -> Found {
    let Expr::Test(test) = &own.expr else {
        return own;
    };
    let Some(last) = second_limit(sentence, index) else {
        return own;
    };
    let Some(Expr::Test(other)) = super::test(sentence, index + 1, &test.property) else {
        return own;
    };
    let lower = |relation| matches!(relation, Relation::MoreThan | Relation::AtLeast);
    let upper = |relation| matches!(relation, Relation::LessThan | Relation::AtMost);
    if !(lower(test.relation) && upper(other.relation)
        || upper(test.relation) && lower(other.relation))
    {
        return own;
    }
    let bound = |test: &Test| test.lo.or(test.hi);
    let (from, to) = if lower(test.relation) {
        (bound(test), bound(&other))
    } else {
        (bound(&other), bound(test))
    };
    // "for joints up to 2 in. and over 2 in. wide" speaks of all of them: no joint is both.
    let apart = from
        .zip(to)
        .is_some_and(|(from, to)| from.compare(to) == Some(core::cmp::Ordering::Less));
    let expr = if apart {
        own.expr.clone().and(Expr::Test(other))
    } else {
        Expr::Words(sentence.words(own.first, last).to_owned())
    };
    Found {
        last,
        expr,
        triggers: vec![index, index + 1],
        ..own
    }
}

/// The token after a second limit of the joints meant: "but not exceeding 2 in."
pub(super) fn second_limit(sentence: &Sentence<'_>, index: usize) -> Option<usize> {
    let (amount, next) = sentence.amount(index).zip(sentence.amount(index + 1))?;
    let from = skip_attribute(sentence, sentence.skip_parentheses(amount.last));
    let joined = sentence.is_any(from, &["but", "and"])
        && from + 1 < next.first
        && (from + 1..next.first).all(|at| is_comparing(sentence, at))
        && amount.unit.dimension() == next.unit.dimension();
    // "in joints not more than 2 in. wide and no less than 5 in. deep elsewhere": another measure limits no width.
    let measure = |last: usize| sentence.word(sentence.skip_parentheses(last));
    let another = ["deep", "long", "thick", "high"].contains(&measure(next.last))
        && measure(next.last) != measure(amount.last);
    (joined && !another).then(|| skip_attribute(sentence, sentence.skip_parentheses(next.last)))
}

/// `- width 40 mm to 80 mm: 30 % or more`, `JOINT 3/4" TO 1-1/4" ..... 2" STRIP`: a line that opens with the joints it is for, before a colon or a
/// row of dots with a number after it.
pub(super) fn labels(sentence: &Sentence<'_>, index: usize) -> Option<Found> {
    let amount = sentence.amount(index)?;
    let bullet = LIST_SIGNS.iter().any(|bullet| sentence.is_sign(0, *bullet));
    // `COMPRESS 30% MIN. JOINT OVER 40 MM: 45% MIN.`
    let stretch = (1..amount.first)
        .rev()
        .find(|at| begins_stretch(sentence, *at))
        .filter(|at| {
            let before = index
                .checked_sub(1)
                .and_then(|before| sentence.amount(before));
            before.is_some_and(|before| before.last <= *at)
        });
    let noun = stretch.unwrap_or(usize::from(bullet));
    let plain = (index == 0 || stretch.is_some())
        && is_joint_noun(sentence, noun)
        && (noun + 1..amount.first).all(|at| is_comparing(sentence, at));
    let end = skip_attribute(sentence, sentence.skip_parentheses(amount.last));
    // `Joints of 32 mm (1-1/4 in.) or wider:`
    // `Gaps of 75 mm and above:`
    let or_more = sentence.is_any(end, &["or", "and"])
        && sentence.is_any(
            end + 1,
            &[
                "less", "more", "greater", "wider", "narrower", "above", "over", "below", "under",
            ],
        );
    let told = amount.hi.is_some() || or_more || compares(sentence, noun + 1, amount.first);
    let end = end + if or_more { 2 } else { 0 };
    // `joints 1 in. wide or less, a minimum of 25 percent`
    let qualified = sentence.is_sign(end, ',')
        && (sentence.is_any(
            end + 1,
            &["min", "minimum", "max", "maximum", "not", "no", "at"],
        ) || sentence.is_word(end + 1, "a")
            && sentence.is_any(end + 2, &["minimum", "maximum"]));
    let labels =
        sentence.is_stop(end) && !sentence.is_sign(end, ';') && !sentence.is_sign(end, ',')
            || qualified;
    let labels = labels && (stretch.is_none() || sentence.is_sign(end, ':'));
    let follows = sentence.amounts.iter().any(|amount| amount.first > end);
    (plain && told && labels && follows).then(|| {
        found(
            sentence,
            index,
            noun,
            joint_property(sentence, noun).filter(|_| names_joint(sentence, noun)),
        )
    })
}

/// `Up to 1 in. wide joint .... 1/4 in.`: the same with the joints behind their width.
pub(super) fn leads_to_value(sentence: &Sentence<'_>, index: usize) -> Option<Found> {
    let amount = sentence.amount(index)?;
    let compared = |at: &usize| is_comparing(sentence, *at);
    let start = (0..amount.first).rev().take_while(compared).last()?;
    let noun = skip_attribute(sentence, sentence.skip_parentheses(amount.last));
    let end = noun + 1;
    let leads = sentence.is_sign(end, '.') && sentence.is_stop(end) || sentence.is_sign(end, ':');
    let follows = || sentence.amounts.iter().any(|own| own.first == end + 1);
    let told = begins_stretch(sentence, start) && compares(sentence, start, amount.first);
    let named = sentence.is_any(noun, &["joint", "joints"]);
    (told && named && leads && follows()).then(|| Found {
        last: end,
        ..found(sentence, index, start, Some("joint.width"))
    })
}

/// `Joints between 15 and 50 mm wide: 1 strip; 50 to 100 mm wide: 2 strips`: behind a label of joints, a width alone labels others of them.
pub(super) fn labelled_again(
    sentence: &Sentence<'_>,
    index: usize,
    before: &[Found],
) -> Option<Found> {
    let amount = sentence.amount(index)?;
    let start = (1..=amount.first)
        .rev()
        .find(|at| begins_stretch(sentence, *at))?;
    let compared = (start..amount.first).all(|at| is_comparing(sentence, at));
    let told = amount.hi.is_some() || compares(sentence, start, amount.first);
    let end = skip_attribute(sentence, sentence.skip_parentheses(amount.last));
    let first = before.first()?;
    let labelled = sentence.is_sign(first.last, ':') && sentence.is_sign(end, ':');
    let of_joints = matches!(&first.expr, Expr::Test(test) if test.property == "joint.width");
    let follows = sentence.amounts.iter().any(|amount| amount.first > end);
    (compared && told && labelled && of_joints && follows)
        .then(|| found(sentence, index, start, Some("joint.width")))
}

/// `Between 2 and 3 in. wide, two layers; up to 2 in., one layer`: bands that head what holds in them, each in its stretch. Of what they are the width, a
/// person must say.
pub(super) fn banded(sentence: &Sentence<'_>, index: usize) -> Option<Found> {
    let own = band(sentence, index)?;
    let mut others = (0..sentence.amounts.len()).filter(|other| *other != index);
    let parallel = others.find_map(|other| band(sentence, other))?;
    (parallel.first != own.first).then_some(own)
}

fn band(sentence: &Sentence<'_>, index: usize) -> Option<Found> {
    let amount = sentence.amount(index)?;
    let first = (0..=amount.first)
        .rev()
        .take_while(|at| !sentence.is_stop(*at))
        .last()?;
    let begins = first == 0 || sentence.is_sign(first - 1, ';');
    let compared = first < amount.first
        && (first..amount.first).all(|at| is_comparing(sentence, at))
        && compares(sentence, first, amount.first);
    // "over 2 in. up to 4 in., two layers"
    let second = sentence.amount(index + 1).filter(|next| {
        let from = sentence.skip_parentheses(amount.last);
        from < next.first
            && (from..next.first)
                .all(|at| is_comparing(sentence, at) || sentence.is_any(at, &["and", "but"]))
            && compares(sentence, from, next.first)
    });
    let last = second.map_or(amount.last, |next| next.last);
    let end = sentence.skip_parentheses(last);
    let end = end + usize::from(sentence.is_word(end, "wide"));
    let led = [',', ':'].iter().any(|sign| sentence.is_sign(end, *sign));
    let stretch = (end + 1..sentence.tokens.len())
        .take_while(|at| !sentence.is_sign(*at, ';'))
        .any(|at| sentence.amount_at(at).is_some());
    let is_length = amount.unit.dimension() == measure::Dimension::Length;
    (begins && compared && led && stretch && is_length).then(|| Found {
        first,
        last: end,
        expr: Expr::Words(sentence.words(first, end).to_owned()),
        triggers: (index..=index + usize::from(second.is_some())).collect(),
        parts: Vec::new(),
    })
}

/// `Joints over 25 mm and up to 50 mm`: words that are nothing but joints and the limits that set them apart, as the title of one of several parts.
pub(super) fn only_joints(sentence: &Sentence<'_>) -> Option<Found> {
    let amount = sentence.amount(0)?;
    let plural = sentence.is_any(0, &["joints", "gaps", "openings"]);
    let compared = 1 < amount.first && (1..amount.first).all(|at| is_comparing(sentence, at))
        || amount.first == 1 && amount.hi.is_some();
    let told = amount.hi.is_some()
        || compares(sentence, 1, amount.first)
        || sentence.is_word(1, "to") && amount.first == 2;
    let own = found(sentence, 0, 0, joint_property(sentence, 0));
    let own = two_sided(sentence, 0, own);
    let whole = (own.last..sentence.tokens.len()).all(|at| {
        ['.', ':', '*', '-', '–', '—']
            .iter()
            .any(|sign| sentence.is_sign(at, *sign))
    });
    let all = own.triggers.len() == sentence.amounts.len();
    (plural && compared && told && whole && all).then_some(own)
}

/// Whether a stretch begins at a token: behind a semicolon, or behind the stop of a shortened word.
fn begins_stretch(sentence: &Sentence<'_>, at: usize) -> bool {
    let Some(before) = at.checked_sub(1) else {
        return true;
    };
    let stopped = sentence
        .token(before)
        .is_some_and(|token| token.word().is_some() && token.span.of(sentence.text).ends_with('.'));
    sentence.is_sign(before, ';') || sentence.is_sign(before, '.') || stopped
}

/// `From a joint width of 80 mm, brackets ...`, `From a width of 100 mm upwards:`: the least width of the joints meant, at the opening of a sentence.
pub(super) fn from_width(sentence: &Sentence<'_>, index: usize) -> Option<Found> {
    const ARTICLES: &[&str] = &["the", "a", "an", "each", "all"];
    let amount = sentence.amount(index)?;
    let from = (0..amount.first)
        .rev()
        .find(|at| sentence.is_word(*at, "from"))?;
    let noun = (from + 1..amount.first).find(|at| sentence.is_any(*at, &["width", "widths"]))?;
    let of_joint =
        (from + 1..noun).all(|at| sentence.is_any(at, &["a", "joint", "gap", "opening", "the"]));
    let plain = (noun + 1..amount.first).all(|at| sentence.is_any(at, &["of"]));
    let end = sentence.skip_parentheses(amount.last);
    let upwards = sentence.is_any(end, &["upwards", "upward", "on", "onwards"]);
    let end = end + usize::from(upwards);
    let led = sentence.is_stop(end) || upwards || sentence.is_any(end, ARTICLES);
    // The title of an item may run into its first sentence: "Brackets From a joint width of 80 mm the brackets".
    let capital = sentence
        .token(from)
        .and_then(crate::phrase::Token::word)
        .is_some_and(|word| word.starts_with('F'));
    let opens = index == 0 && amount.hi.is_none() && (from == 0 || capital);
    let is_length = amount.unit.dimension() == measure::Dimension::Length;
    (opens && of_joint && plain && led && is_length).then(|| Found {
        first: from,
        last: end,
        expr: Expr::Test(crate::model::Test {
            property: "joint.width".to_owned(),
            relation: Relation::AtLeast,
            lo: Some(measure::Quantity::new(amount.lo, amount.unit)),
            hi: None,
            lo_excluded: false,
        }),
        triggers: vec![index],
        parts: Vec::new(),
    })
}

/// `Mesh, W > 3 in.:`, `(W ≤ 50 mm)`: a width by its letter. Whose it is, a person must say.
pub(super) fn lettered(sentence: &Sentence<'_>, index: usize) -> Option<Found> {
    const SIGNS: [char; 4] = ['>', '<', '≥', '≤'];
    let amount = sentence.amount(index)?;
    let is_sign = |at: &usize| {
        let equal = sentence.is_sign(*at, '=');
        equal || SIGNS.iter().any(|sign| sentence.is_sign(*at, *sign))
    };
    let sign = (0..amount.first).rev().take_while(is_sign).last()?;
    let letter = sign.checked_sub(1)?;
    let end = sentence.skip_parentheses(amount.last);
    let compares = SIGNS.iter().any(|own| sentence.is_sign(sign, *own));
    let bracketed = letter > 0 && sentence.is_sign(letter - 1, '(') && sentence.is_sign(end, ')');
    let reads = compares && sentence.is_word(letter, "w");
    (reads && (bracketed || sentence.is_sign(end, ':'))).then(|| Found {
        first: letter,
        last: end,
        expr: Expr::Words(sentence.words(letter, end).to_owned()),
        triggers: vec![index],
        parts: Vec::new(),
    })
}

/// `2-1/2 in. up to a 1 in. joint`, `over a 2 in. joint`: a limit that the joint itself follows.
pub(super) fn before_joint(sentence: &Sentence<'_>, index: usize) -> Option<Found> {
    let amount = sentence.amount(index)?;
    if let Some(own) =
        of_one_width(sentence, index).or_else(|| headed_by_one_width(sentence, index))
    {
        return Some(own);
    }
    let before = amount.first.checked_sub(1)?;
    let article = sentence.is_any(before, &["a", "an"]);
    let word = before.checked_sub(usize::from(article))?;
    let relation = if sentence.is_any(word, &["over", "above", "beyond"]) {
        Relation::MoreThan
    } else if sentence.is_any(word, &["under", "below"]) {
        Relation::LessThan
    } else if word > 0 && sentence.is_word(word, "to") && sentence.is_word(word - 1, "up") {
        Relation::AtMost
    } else {
        return None;
    };
    let first = word - usize::from(relation == Relation::AtMost);
    let end = sentence.skip_parentheses(amount.last);
    let negated = first > 0 && sentence.is_any(first - 1, &["not", "no", "never"]);
    let quantity = || Some(measure::Quantity::new(amount.lo, amount.unit));
    let upper = relation != Relation::MoreThan;
    // "1/4 in. deep up to 1 in. joint width": with no article the joint's width is named, right behind a number of its own.
    // What "above" and "below" leave is often said by such a word alone, so that the number before them is for a person.
    let width =
        !article && sentence.is_any(word, &["to", "over"]) && sentence.is_word(end + 1, "width");
    let behind = sentence
        .amounts
        .iter()
        .any(|own| skip_attribute(sentence, sentence.skip_parentheses(own.last)) == first);
    let last = end + 1 + usize::from(width);
    let is_length = amount.unit.dimension() == measure::Dimension::Length;
    let reads = is_length
        && amount.hi.is_none()
        && !negated
        && (article || width && behind)
        && sentence.is_any(end, &["joint", "gap"])
        && is_statement_end(sentence, last);
    reads.then(|| Found {
        first,
        last,
        expr: Expr::Test(crate::model::Test {
            property: "joint.width".to_owned(),
            relation,
            lo: quantity().filter(|_| !upper),
            hi: quantity().filter(|_| upper),
            lo_excluded: false,
        }),
        triggers: vec![index],
        parts: Vec::new(),
    })
}

/// `For 2 in. joints, packing is 4 in. deep.`, `backer rod 1-1/4 in. diameter for 1 in. joints`, `strips 4-1/2 in. wide for 4 in. joint, 4 in. deep`: which joints are as wide as that, only a person can say.
fn of_one_width(sentence: &Sentence<'_>, index: usize) -> Option<Found> {
    let amount = sentence.amount(index)?;
    let first = amount.first.checked_sub(1)?;
    let end = sentence.skip_parentheses(amount.last);
    let end = end + usize::from(sentence.is_word(end, "wide"));
    let is_length = amount.unit.dimension() == measure::Dimension::Length;
    let sized = sentence.is_word(first, "for");
    let alone = sentence.is_sign(end + 1, ',') && (first == 0 || sized)
        || sentence.is_sign(end + 1, '.') && sentence.token(end + 2).is_none()
        || sentence.token(end + 1).is_none();
    let measured = first == 0 || sentence.amounts.iter().any(|own| own.last <= first);
    let reads = is_length
        && alone
        && measured
        && sentence.is_any(first, &["for", "in"])
        && (sentence.is_any(end, &["joints", "gaps"])
            || sized && sentence.is_any(end, &["joint", "gap"]));
    reads.then(|| Found {
        first,
        last: end + 1,
        expr: crate::model::Expr::Words(sentence.words(first, end + 1).to_owned()),
        triggers: vec![index],
        parts: Vec::new(),
    })
}

/// `(A) 1 in. joints: one strip`, `- 2 in. to 4 in. joints: two strips`: a line that opens with the size of the joints it is for, and a colon.
fn headed_by_one_width(sentence: &Sentence<'_>, index: usize) -> Option<Found> {
    let amount = sentence.amount(index)?;
    let bullet = LIST_SIGNS.iter().any(|bullet| sentence.is_sign(0, *bullet));
    let end = sentence.skip_parentheses(amount.last);
    let end = end + usize::from(sentence.is_any(end, &["wide", "nominal", "nom"]));
    let opens = amount.first == usize::from(bullet);
    let goes_on = sentence.amounts.iter().any(|other| other.first > end + 1);
    let reads = amount.unit.dimension() == measure::Dimension::Length
        && opens
        && goes_on
        && sentence.is_any(end, &["joint", "joints", "gaps"])
        && sentence.is_sign(end + 1, ':');
    reads.then(|| Found {
        first: amount.first,
        last: end + 1,
        expr: Expr::Words(sentence.words(amount.first, end + 1).to_owned()),
        triggers: vec![index],
        parts: Vec::new(),
    })
}

/// Whether a word can only be the joint: a "width" may be a board's.
fn names_joint(sentence: &Sentence<'_>, noun: usize) -> bool {
    sentence.is_any(noun, &["joint", "joints"])
}
