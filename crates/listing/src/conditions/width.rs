//! Lengths that say which joints are meant: "joints wider than 4 in.", "for widths up to 50 mm", "Spalls deeper than 10 mm".

use measure::Dimension;

use super::bands::{
    banded, before_joint, from_width, labelled_again, labels, leads_to_value, lettered,
    second_limit, two_sided,
};
use super::{Found, things};
use crate::model::Expr;
use crate::rules::{Sentence, is_refused, is_ruled_out};

pub(super) use super::meant::{found, skip_attribute};

/// Verbs after the number that show that the words before it were the subject.
const VERBS: &[&str] = &[
    "shall", "must", "is", "are", "may", "require", "requires", "need", "needs", "use", "provide",
    "to", "will", "can", "should", "have", "has", "the", "a", "two", "one", "install", "take",
    "takes", "call", "calls", "receive", "receives", "get", "gets", "want", "wants",
];

/// Verbs of joints that say what they get or bear.
const TAKES: &[&str] = &[
    "accept",
    "accommodate",
    "receive",
    "get",
    "take",
    "follow",
    "open",
    "close",
    "move",
];

/// Verbs of several joints that say what they must have.
pub(super) const REQUIRES: &[&str] = &[
    "shall", "must", "are", "require", "need", "receive", "have", "get",
];

/// Comparatives that set some things apart from others.
const APART: &[&str] = &[
    "wider",
    "narrower",
    "deeper",
    "longer",
    "shorter",
    "thicker",
    "thinner",
    "larger",
    "smaller",
    "greater",
    "less",
    "more",
    "over",
    "above",
    "under",
    "below",
    "exceeding",
    "up",
    "through",
    "thru",
    "higher",
    "taller",
    "heavier",
    "beyond",
    "between",
    "older",
];

/// Words that introduce the things meant.
const INTRODUCE: &[&str] = &[
    "for", "in", "at", "on", "of", "when", "where", "with", "only", "across", "along", "over",
];

pub(super) fn widths(sentence: &Sentence<'_>, taken: &[usize]) -> Vec<Found> {
    let mut found: Vec<Found> = Vec::new();
    for index in (0..sentence.amounts.len()).filter(|index| !taken.contains(index)) {
        if is_ruled_out(sentence, index) {
            continue;
        }
        let own = introduced(sentence, index)
            .or_else(|| subject(sentence, index))
            .or_else(|| listed(sentence, index, &found))
            .or_else(|| labels(sentence, index))
            .or_else(|| leads_to_value(sentence, index))
            .or_else(|| labelled_again(sentence, index, &found))
            .or_else(|| from_width(sentence, index))
            .or_else(|| lettered(sentence, index))
            .or_else(|| before_joint(sentence, index))
            .or_else(|| banded(sentence, index))
            .or_else(|| things::things(sentence, index));
        found.extend(own.map(|own| two_sided(sentence, index, own)));
    }
    let mut taken = 0;
    // What a condition of two limits holds is no condition of its own.
    found.retain(|own| {
        let apart = own.first >= taken;
        taken = taken.max(own.last);
        apart
    });
    found
}

/// `Joints wider than 50 mm are filled in two layers, joints up to 50 mm in one`: after such a subject another needs no verb.
fn listed(sentence: &Sentence<'_>, index: usize, before: &[Found]) -> Option<Found> {
    let amount = sentence.amount(index)?;
    let start = (0..amount.first)
        .rev()
        .find(|at| sentence.is_stop(*at))
        .map(|at| at + 1 + usize::from(sentence.is_any(at + 1, &["and", "but"])))?;
    let spoken_of = before
        .iter()
        .any(|other| is_joint_noun(sentence, other.first));
    let compared = start + 1 < amount.first
        && (start + 1..amount.first).all(|at| is_comparing(sentence, at))
        && compares(sentence, start + 1, amount.first);
    let after = skip_attribute(sentence, sentence.skip_parentheses(amount.last));
    let goes_on = sentence.is_any(
        after,
        &["in", "with", "at", "by", "no", "not", "one", "two", "only"],
    ) || sentence.amount_at(after).is_some();
    (spoken_of && is_joint_noun(sentence, start) && compared && goes_on)
        .then(|| found(sentence, index, start, joint_property(sentence, start)))
}

/// `for joints up to 50 mm (2 in.)`, `in joints narrower than 3/4 in.`, `at widths above 30 mm`, `widths ≤ 50 mm only`.
fn introduced(sentence: &Sentence<'_>, index: usize) -> Option<Found> {
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
        && sentence
            .token(of - 1)
            .is_some_and(|token| token.word().is_some())
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

/// Whether a token denies: "not", and not the "not" of "not less than half".
fn denies(sentence: &Sentence<'_>, at: usize) -> bool {
    let compares = sentence.is_any(at, &["not", "no"])
        && sentence.is_any(
            at + 1,
            &["less", "fewer", "smaller", "thinner", "shallower"],
        );
    sentence.is_any(at, &["not", "never", "no"]) && !compares
}

/// Whether brackets behind a number open with "not for", and close behind the joints.
fn is_set_aside(sentence: &Sentence<'_>, from: usize) -> bool {
    let opens = from > 1 && sentence.is_word(from - 1, "not") && sentence.is_sign(from - 2, '(');
    let measured = sentence.amounts.iter().any(|amount| amount.last < from);
    opens && sentence.is_word(from, "for") && measured
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
        sentence
            .token(at)
            .is_some_and(|token| token.word().is_some())
            && sentence.amount_at(at).is_none()
            && !sentence.is_any(at, &["shall", "is", "are", "must", "be"])
    };
    let reads = sentence.is_word(with, "with")
        && (2..=LONGEST).contains(&with)
        && sentence.is_any(0, &["in", "at", "on", "for"])
        && (1..with).all(plain);
    reads.then_some(0)
}

/// A condition of all other things than those it names.
fn turned(own: Found) -> Found {
    let expr = Expr::Not(Box::new(own.expr));
    Found { expr, ..own }
}

/// `excluding joints less than 1 in. wide`, `including joints up to 2 in.`; "up to and including a joint width of 2 in." is a limit.
fn excepts(sentence: &Sentence<'_>, at: usize) -> bool {
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

/// `for use only with joints up to 2 in. wide`: what may be used in no other joint is no case of its numbers.
fn is_for_use_only(sentence: &Sentence<'_>, from: usize, noun: usize) -> bool {
    (from.saturating_sub(3)..noun).any(|at| {
        sentence.is_word(at, "for")
            && sentence.is_word(at + 1, "use")
            && sentence.is_word(at + 2, "only")
    })
}

/// Whether the sentence goes on to require something of the joints meant, so that they are not what it bounds.
fn is_statement(sentence: &Sentence<'_>, noun: usize, opener: Option<usize>) -> bool {
    // "the width of the joint" opens with "of": the noun is then what is bounded.
    // "for a width of 4 in." says how wide something is.
    // "With a width of up to 40 mm the seal takes up 10 percent" opens with a case.
    let leads = opener == Some(0) && sentence.is_any(noun + 2, &["up", "over", "above", "more"]);
    let measures = !leads
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

/// Whether the denial before a case stands in brackets behind a number, so that it bounds no width: "(not in", "(but never in", "(no clips for". "(not for" may
/// say for which joints a thing is not.
fn denied_in_brackets(sentence: &Sentence<'_>, from: usize) -> bool {
    let Some(open) = (0..from).rev().find(|at| sentence.is_sign(*at, '(')) else {
        return false;
    };
    let denial = open + 1 + usize::from(sentence.is_word(open + 1, "but"));
    let measured = sentence.amounts.iter().any(|amount| amount.last <= open);
    let bare = denial + 1 == from
        && sentence.is_any(denial, &["not", "never"])
        && !sentence.is_word(from, "for");
    let of_thing = sentence.is_word(denial, "no");
    measured && sentence.closing(open).is_some_and(|close| close > from) && (bare || of_thing)
}

/// A negation that already belongs to a verb before: "shall not be spliced in joints over 4 in." is a condition all the same
/// only for words, so it stays a bound's business.
fn after_negated_verb(sentence: &Sentence<'_>, from: usize) -> bool {
    sentence.has_any(
        from.saturating_sub(4),
        from,
        &[
            "spliced",
            "required",
            "needed",
            "necessary",
            "apply",
            "applicable",
            "mandatory",
            "obligatory",
            "compulsory",
        ],
    )
}

/// Whether a token may stand between the things meant and the number that sets them apart: "joints *not wider than* 4 in."
pub(super) fn is_comparing(sentence: &Sentence<'_>, at: usize) -> bool {
    // `up to and including 100 mm`
    let included = sentence.is_word(at, "including")
        || sentence.is_word(at, "and") && sentence.is_word(at + 1, "including");
    included
        || sentence.is_any(at, APART)
        || sentence.is_any(
            at,
            &[
                "of", "in", "from", "than", "to", "or", "equal", "not", "no", "width", "widths",
                "wide", "the", "a",
            ],
        )
        || ['>', '<', '≥', '≤', '=', '(']
            .iter()
            .any(|sign| sentence.is_sign(at, *sign))
}

pub(super) fn is_joint_noun(sentence: &Sentence<'_>, at: usize) -> bool {
    sentence.is_any(
        at,
        &[
            "joint", "joints", "width", "widths", "opening", "openings", "gap", "gaps",
        ],
    )
}

fn is_plural(sentence: &Sentence<'_>, at: usize) -> bool {
    // "The concrete, which weighs between 110 and 150 pcf, is reinforced."
    const VERBS_OF_ONE: &[&str] = &[
        "weighs", "measures", "stands", "lies", "reaches", "extends", "spans", "bears", "runs",
        "exceeds", "falls", "rises", "comes", "goes", "keeps", "holds", "this", "thus", "always",
    ];
    let word = sentence.word(at);
    word.ends_with('s') && !word.ends_with("ss") && !VERBS_OF_ONE.contains(&word)
}

pub(super) fn compares(sentence: &Sentence<'_>, first: usize, last: usize) -> bool {
    (first..last).any(|at| {
        sentence.is_any(at, APART)
            || ['>', '<', '≥', '≤']
                .iter()
                .any(|sign| sentence.is_sign(at, *sign))
    })
}

pub(super) fn joint_property(sentence: &Sentence<'_>, noun: usize) -> Option<&'static str> {
    sentence
        .is_any(noun, &["joint", "joints", "width", "widths"])
        .then_some("joint.width")
}

/// `Joints wider than 100 mm (4 in.) shall be ...`, `Spalls deeper than 10 mm shall be repaired`: a plural noun at the opening,
/// a comparison, and a verb after it.
fn subject(sentence: &Sentence<'_>, index: usize) -> Option<Found> {
    let amount = sentence.amount(index)?;
    let floor = sentence.floor(index);
    let start = (floor..amount.first)
        .rev()
        .find(|at| sentence.is_stop(*at))
        .map_or(floor, |at| at + 1);
    // `save that a joint less than 2 in. wide calls for ...`
    let excepts = sentence.is_any(start, &["save", "except", "excepting", "but"]);
    let that = usize::from(excepts && sentence.is_word(start + 1, "that"));
    let start = start + usize::from(excepts) + that;
    // `Joints 4 in. or wider need clips.`
    let at_once = amount.first == start + 1;
    if amount.first <= start || amount.first > start + 7 {
        return None;
    }
    // "A joint wider than 3 in. shall have" speaks of such joints as "joints" does.
    let any_joint = |at: &usize| {
        *at == start + 1
            && sentence.is_any(start, &["a", "any"])
            && sentence.is_any(*at, &["joint", "gap", "opening"])
    };
    let noun = (start..amount.first)
        .find(|at| is_plural(sentence, *at) && sentence.word(*at).len() > 3 || any_joint(at))?;
    let compares = (noun + 1..amount.first).any(|at| {
        sentence.is_any(at, APART) || sentence.is_sign(at, '>') || sentence.is_sign(at, '<')
    });
    let negated = (noun + 1..amount.first).any(|at| sentence.is_any(at, &["no", "not"]));
    let speaks = negated
        || (start..amount.first).any(|at| {
            sentence.is_any(
                at,
                &["shall", "is", "are", "be", "may", "must", "not", "spaced"],
            )
        });
    let after = second_limit(sentence, index)
        .unwrap_or_else(|| skip_attribute(sentence, sentence.skip_parentheses(amount.last)));
    // `Gaps greater than 1/8 in. between boards are filled`
    let placed = sentence.is_any(
        after,
        &[
            "between", "in", "at", "from", "around", "along", "below", "above",
        ],
    ) && (after + 1..after + 6)
        .take_while(|at| !sentence.is_stop(*at) && sentence.amount_at(*at).is_none())
        .any(|at| sentence.is_any(at, &["is", "are", "shall", "must"]));
    let verb = placed
        || sentence.is_any(after, VERBS)
        || sentence.is_sign(after, ':')
        || sentence.is_sign(after, ',') && sentence.is_any(after + 1, VERBS);
    if is_refused(sentence, index) {
        return None;
    }
    let joint = is_joint_noun(sentence, noun);
    // `Joints of 2 in. or less will accept`, `Joints of more than 40 mm receive two strips`
    let told = !at_once || sentence.is_any(after + 1, &["wider", "more", "greater", "over"]);
    let or_less = joint
        && told
        && (noun + 1..amount.first).all(|at| sentence.is_word(at, "of"))
        && sentence.is_word(after, "or")
        && sentence.is_any(
            after + 1,
            &[
                "less", "more", "greater", "wider", "narrower", "over", "under",
            ],
        )
        && (sentence.is_any(after + 2, VERBS) || sentence.is_any(after + 2, TAKES));
    // `Gaps of 75 mm and above: brackets of steel.`, `Gaps of 40 mm and over shall be reinforced`
    let and_above = joint
        && sentence.is_any(after, &["or", "and"])
        && sentence.is_any(
            after + 1,
            &["above", "over", "below", "under", "more", "less"],
        )
        && (sentence.is_sign(after + 2, ':') || sentence.is_any(after + 2, REQUIRES))
        && (noun + 1..amount.first).all(|at| sentence.is_word(at, "of"));
    let or_less = or_less || and_above;
    let compares = compares || or_less;
    let verb = verb || or_less || joint && sentence.is_any(after, TAKES);
    // `Openings to 100 mm may be filled`
    let to = joint && sentence.is_word(noun + 1, "to") && noun + 2 == amount.first;
    let compares = compares || to && sentence.is_any(after, &["may", "can"]);
    (compares && !speaks && (verb || (joint && sentence.is_sign(after, ':'))))
        .then(|| found(sentence, index, start, joint_property(sentence, noun)))
}

/// Whether nothing of a statement goes on at a token.
pub(super) fn is_statement_end(sentence: &Sentence<'_>, at: usize) -> bool {
    sentence.token(at).is_none()
        || sentence.is_stop(at)
        || sentence.is_sign(at, '.')
        || sentence.is_any(at, &["and", "or", "but"])
}
