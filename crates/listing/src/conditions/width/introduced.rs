//! Joints meant behind a word that introduces them: `for joints up to 50 mm`, `in joints narrower than 3/4 in.`

use measure::Dimension;

use super::super::Found;
use super::super::meant::{found, skip_attribute};
use super::VERBS;
use super::compared::{compares, is_comparing, is_joint_noun, is_plural, joint_property};
use super::denied::{
    after_negated_verb, denied_in_brackets, denies, is_for_use_only, is_set_aside,
};
use crate::model::Expr;
use crate::rules::Sentence;

/// Words that introduce the things meant.
const INTRODUCE: &[&str] = &[
    "for", "in", "at", "on", "of", "when", "where", "with", "only", "across", "along", "over",
];

/// `for joints up to 50 mm (2 in.)`, `in joints narrower than 3/4 in.`, `at widths above 30 mm`, `widths ≤ 50 mm only`.
pub(super) fn introduced(sentence: &Sentence<'_>, index: usize) -> Option<Found> {
    let amount = sentence.amount(index)?;
    if amount.unit.dimension() != Dimension::Length {
        return None;
    }
    let floor = sentence.floor(index);
    let noun = (floor..amount.first)
        .rev()
        .take(8)
        .find(|at| is_joint_noun(sentence, *at))?;
    if is_of_another(sentence, noun) {
        return None;
    }
    let opener = (floor..noun).rev().take(4).find(|at| {
        sentence.is_any(*at, INTRODUCE)
            || sentence.is_sign(*at, '(')
            || excepts(sentence, *at)
            || applies_to(sentence, *at)
    });
    // "Lapped to either side of the joint not less than 1-1/2 in." says how far: the joint is no joint among others.
    let the_joint = noun > 0
        && sentence.is_word(noun - 1, "the")
        && sentence.is_any(noun, &["joint", "gap", "opening"])
        && opener.is_some_and(|opener| !sentence.is_any(opener, &["where", "when"]));
    let shared = opener.is_some_and(|opener| takes_share(sentence, opener));
    if the_joint || shared || is_described(sentence, noun, index) {
        return None;
    }
    let only = sentence.is_word(sentence.skip_parentheses(amount.last), "only");
    let others_than = sentence.is_word(noun + 1, "other")
        && sentence.is_word(noun + 2, "than")
        && sentence.is_any(noun + 3, &["those", "ones"])
        && compares(sentence, noun + 4, amount.first);
    let told = noun + 1 + 3 * usize::from(others_than);
    let told = told + relative(sentence, told);
    let between_is_plain = (told..amount.first).all(|at| is_comparing(sentence, at))
        && (told == noun + 1 || compares(sentence, told, amount.first));
    let end = skip_attribute(sentence, sentence.skip_parentheses(amount.last));
    let followed = sentence.is_sign(end, ':')
        || sentence.is_any(end, VERBS)
        || sentence.is_sign(end, ',') && sentence.is_any(end + 1, VERBS);
    // "at the centre of the joint 12 mm" compares no joint with anything.
    let sets_apart = sentence.is_any(
        noun,
        &["width", "widths", "opening", "openings", "gap", "gaps"],
    ) || compares(sentence, noun + 1, amount.first)
        || noun + 1 < amount.first
        || end > sentence.skip_parentheses(amount.last)
        || sentence.is_any(end, &["or", "and"])
        || only
        || opener.is_some_and(|opener| is_band_of(sentence, opener, noun, index));
    if !sets_apart {
        return None;
    }
    let plural =
        is_plural(sentence, noun) && followed && compares(sentence, noun + 1, amount.first);
    let from = opener.or_else(|| (only || plural).then_some(noun))?;
    let opened_plainly = opener.is_none_or(|opener| {
        (opener + 1..noun)
            .all(|at| !sentence.is_stop(at) && !sentence.is_any(at, &["shall", "must"]))
    });
    // "width of the joint shall not exceed" is a bound; "Not for joints wider than 4 in." is one, too.
    let confined = sentence.has_any(
        from.saturating_sub(9).max(floor),
        noun,
        &["confined", "limited", "restricted"],
    ) || is_for_use_only(sentence, from, noun);
    let forbids = confined
        || from > 0
            && !denied_in_brackets(sentence, from)
            && (from.saturating_sub(6).max(floor)..from).any(|at| denies(sentence, at))
            && opener.is_some()
            && !after_negated_verb(sentence, from);
    // "Min 1/2 in. deep (not for joints under 1 in.)": whether nothing is needed there, or it must not be used, a person says.
    if between_is_plain && from > 1 && is_set_aside(sentence, from) {
        return Some(kept_in_words(
            sentence,
            found(sentence, index, from - 1, None),
        ));
    }
    if !between_is_plain || !opened_plainly || forbids || is_statement(sentence, noun, opener) {
        return None;
    }
    // "In ceilings with a joint width above 60 mm the packing is ...": both must be so.
    if let Some(place) = opener.and_then(|opener| place_before(sentence, opener)) {
        let own = found(sentence, index, place, None);
        let upwards = sentence.is_any(own.last, &["upwards", "upward"]);
        let last = own.last + usize::from(upwards);
        return Some(kept_in_words(sentence, Found { last, ..own }));
    }
    // What excepts or includes a case is no part of it.
    let from = if excepts(sentence, from) { noun } else { from };
    let own = found(sentence, index, from, whose(sentence, from, noun));
    Some(if others_than { turned(own) } else { own })
}

/// Whether two limits say for which joints the number right before them is: "1 hr for joints 1 to 2 in."
fn is_band_of(sentence: &Sentence<'_>, opener: usize, noun: usize, index: usize) -> bool {
    let measured = |amount: &crate::phrase::Amount| amount.last == opener;
    let band = sentence.amount(index).is_some_and(|own| own.hi.is_some());
    band && sentence.is_any(opener, &["for", "in"])
        && opener + 1 == noun
        && is_plural(sentence, noun)
        && sentence.amounts.iter().any(measured)
}

/// Whether a noun names what is no joint: "flute openings", or the width of something else.
fn is_of_another(sentence: &Sentence<'_>, noun: usize) -> bool {
    const OTHERS: &[&str] = &[
        "mortar", "bed", "head", "butt", "lap", "control", "flute", "flutes", "deck", "rib",
        "valley", "crest", "cell", "core", "door", "window", "glazing",
    ];
    // "flute openings" are no joints, and the width of studs is theirs.
    let other = noun > 0 && sentence.is_any(noun - 1, OTHERS)
        || noun > 2
            && sentence.is_word(noun - 1, "of")
            && is_joint_noun(sentence, noun - 2)
            && sentence.is_any(noun - 3, OTHERS);
    // "Units of nominal width 190 mm" are told by their own width.
    let qualified = noun > 2 && sentence.is_any(noun - 1, &["nominal", "nom", "total", "overall"]);
    let of = noun.saturating_sub(1 + usize::from(qualified));
    let of_thing = of > 0
        && sentence.is_word(of, "of")
        && sentence.is_any(noun, &["width", "widths"])
        && sentence.has_word(of - 1)
        && !is_joint_noun(sentence, of - 1);
    other || of_thing
}

/// The property of the joints meant; none for "with a width of up to 40 mm", which doesn't say whose.
fn whose(sentence: &Sentence<'_>, from: usize, noun: usize) -> Option<&'static str> {
    let unsaid = sentence.is_word(from, "with")
        && sentence.is_word(noun, "width")
        && sentence.is_word(noun + 1, "of")
        && !noun
            .checked_sub(1)
            .is_some_and(|before| is_joint_noun(sentence, before));
    joint_property(sentence, noun).filter(|_| !unsaid)
}

/// The same condition for a person to say.
fn kept_in_words(sentence: &Sentence<'_>, own: Found) -> Found {
    let expr = Expr::Words(sentence.words(own.first, own.last).to_owned());
    Found { expr, ..own }
}

/// Whether an "of" behind a share says what it is a share of: "25 percent of the joint width of up to 4 in."
fn takes_share(sentence: &Sentence<'_>, of: usize) -> bool {
    let share =
        |amount: &crate::phrase::Amount| amount.last == of && amount.unit == measure::Unit::Percent;
    sentence.is_word(of, "of") && sentence.amounts.iter().any(share)
}

/// Whether a length only tells how wide the one joint is that the sentence speaks of: "wall 6 in. thick with joint 2 in. wide". Of two joints each is a case.
fn is_described(sentence: &Sentence<'_>, noun: usize, index: usize) -> bool {
    let one = |at: usize| sentence.is_any(at, &["joint", "gap", "opening"]);
    let behind_joint = |amount: &crate::phrase::Amount| {
        (1..=2).any(|back| {
            let before = amount.first.checked_sub(back);
            before.is_some_and(|before| is_joint_noun(sentence, before))
        })
    };
    let alone = sentence
        .amounts
        .iter()
        .filter(|amount| behind_joint(amount))
        .count()
        == 1;
    let own = sentence.amount(index);
    let bare = own.is_some_and(|own| {
        let after = skip_attribute(sentence, sentence.skip_parentheses(own.last));
        own.first == noun + 1 && own.hi.is_none() && !sentence.is_any(after, &["or", "and", "only"])
    });
    let led = noun > 1 && sentence.is_any(noun - 1, &["with", "in"]);
    let measured = sentence.amounts.iter().any(|amount| amount.last < noun);
    one(noun) && bare && led && measured && alone
}

/// Where the place begins that a sentence opens with, before the joints that it means there: "*In ceilings* with a joint width above 60 mm".
fn place_before(sentence: &Sentence<'_>, with: usize) -> Option<usize> {
    const LONGEST: usize = 4;
    let plain = |at: usize| {
        sentence.has_word(at)
            && sentence.amount_at(at).is_none()
            && !sentence.is_any(at, &["shall", "is", "are", "must", "be"])
    };
    let reads = sentence.is_word(with, "with")
        && (2..=LONGEST).contains(&with)
        && sentence.is_any(0, &["in", "at", "on", "for"])
        && (1..with).all(plain);
    reads.then_some(0)
}

/// Whether "in" ends one of two numbers of a kind, so that it says for which joints that one is: "33% min (50% min *in an opening of 13 mm or less*)". Behind a number that
/// stands alone, "sealant 1/2 in. deep in a gap of 2 in. or less", the gap may be what is limited.
fn ends_another_value(sentence: &Sentence<'_>, opener: usize) -> bool {
    const MEASURES: &[&str] = &["min", "minimum", "max", "maximum", "deep", "thick", "wide"];
    let value = sentence.amounts.iter().position(|amount| {
        let behind = sentence.skip_parentheses(amount.last);
        behind <= opener && (behind..opener).all(|at| sentence.is_any(at, MEASURES))
    });
    let alike = |value: usize| {
        sentence.amounts.iter().enumerate().any(|(index, other)| {
            let own = sentence.amount(value);
            let same = own.is_some_and(|own| own.unit == other.unit && own.lo != other.lo);
            // A second value in brackets is the same number.
            let again = own.is_some_and(|own| {
                sentence.skip_parentheses(own.last) > other.first && other.first > own.first
            });
            index != value && same && !again && other.last <= opener
        })
    };
    sentence.is_any(opener, &["in", "for", "at"]) && value.is_some_and(alike)
}

/// A condition of all other things than those it names.
fn turned(own: Found) -> Found {
    let expr = Expr::Not(Box::new(own.expr));
    Found { expr, ..own }
}

/// `excluding joints less than 1 in. wide`, `including joints up to 2 in.`; "up to and including a joint width of 2 in." is a limit.
pub(super) fn excepts(sentence: &Sentence<'_>, at: usize) -> bool {
    let limits = at > 0 && sentence.is_any(at - 1, &["and", "to"]);
    sentence.is_any(at, &["excluding", "excepting", "including"]) && !limits
}

/// `does not apply to joints under 1 in.`, of its "to".
fn applies_to(sentence: &Sentence<'_>, at: usize) -> bool {
    at > 0
        && sentence.is_word(at, "to")
        && sentence.is_any(at - 1, &["apply", "applies", "applicable"])
}

/// How many words behind the joints meant only lead to what sets them apart: "any joint *which is* not less than 2 in. wide".
fn relative(sentence: &Sentence<'_>, at: usize) -> usize {
    let reads = sentence.is_any(at, &["which", "that"]) && sentence.is_any(at + 1, &["is", "are"]);
    2 * usize::from(reads)
}

/// Whether the sentence goes on to require something of the joints meant, so that they are not what it bounds.
fn is_statement(sentence: &Sentence<'_>, noun: usize, opener: Option<usize>) -> bool {
    // "the width of the joint" opens with "of": the noun is then what is bounded.
    // "for a width of 4 in." says how wide something is.
    // "With a width of up to 40 mm the seal takes up 10 percent" opens with a case.
    let leads = opener == Some(0) && sentence.is_any(noun + 2, &["up", "over", "above", "more"]);
    let another_value = opener.is_some_and(|opener| ends_another_value(sentence, opener));
    let measures = !leads
        && !another_value
        && sentence.is_any(noun, &["width", "opening", "gap"])
        && sentence.is_word(noun + 1, "of")
        && noun > 0
        && sentence.is_any(
            noun - 1,
            &[
                "a", "an", "max", "maximum", "min", "minimum", "nom", "nominal",
            ],
        );
    // "butted with gaps of 1 mm at most"
    let left = opener.is_some_and(|opener| sentence.is_word(opener, "with"))
        && sentence.is_any(noun, &["gap", "gaps"]);
    // "may be of any width from 1 in. to 8 in." permits these widths.
    let any = noun > 1 && sentence.is_word(noun - 1, "any") && sentence.is_word(noun - 2, "of");
    measures
        || left
        || any
        || opener.is_some_and(|opener| {
            sentence.is_word(opener, "of")
                && opener > 0
                && sentence.is_any(
                    opener - 1,
                    &[
                        "width",
                        "widths",
                        "depth",
                        "thickness",
                        "extension",
                        "reduction",
                        "compression",
                    ],
                )
                && !is_plural(sentence, noun)
        })
}
