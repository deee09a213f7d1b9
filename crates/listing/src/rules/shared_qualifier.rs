use measure::Dimension;

use super::measured::{Apart, measured_apart};
use super::{Finding, Sentence, bounded_alone};
use crate::model::Relation;
use crate::phrase::{Amount, Shape};

/// The most tokens between two amounts of one list.
const REACH: usize = 12;

#[expect(
    clippy::too_many_lines,
    reason = "the wordings are asked for one after the other, each in a few lines"
)]
pub(super) fn read(sentence: &Sentence<'_>, index: usize) -> Option<Finding> {
    if let Some(before) = case_of(sentence, index) {
        let limit = |relation| {
            matches!(
                relation,
                Relation::AtLeast | Relation::AtMost | Relation::Nominal | Relation::About
            )
        };
        return bounded_alone(sentence, before)
            .map(|(finding, _)| finding)
            .filter(|finding| limit(finding.relation));
    }
    if let Some(same) = said_again(sentence, index) {
        let limit = |relation| {
            matches!(
                relation,
                Relation::AtLeast | Relation::AtMost | Relation::Nominal | Relation::Exactly
            )
        };
        return bounded_alone(sentence, same)
            .map(|(finding, _)| finding)
            .filter(|finding| limit(finding.relation));
    }
    let before = sentence.bound_before(index)?;
    let (own, previous) = (sentence.amount(index)?, sentence.amount(before)?);
    // `up to 3/4 in. opening, 3 in. beyond`: what holds past the first.
    if is_past_another(sentence, previous.first, own.last) {
        return None;
    }
    // `a minimum of two screws per stud, one in each flange` says where each of the two is.
    let each = own.unit == measure::Unit::Count
        && sentence.is_any(own.last, &["in", "to", "on", "at"])
        && sentence.is_any(own.last + 1, &["each", "every", "either"]);
    if each && own.first > 0 && sentence.is_sign(own.first - 1, ',') {
        return None;
    }
    let lengths = |unit: measure::Unit| {
        matches!(unit.dimension(), Dimension::Length | Dimension::JointWidths)
    };
    let alike = own.unit.dimension() == previous.unit.dimension()
        || (lengths(own.unit) && lengths(previous.unit));
    // `not less than 4 in. or two-thirds of the slab, whichever is greater` bounds by both.
    let stricter = whichever(sentence, own.last);
    let both = names_both_measures(sentence, previous, own);
    if !(alike || both || stricter.is_some()) || previous.shape != Shape::Single {
        return None;
    }
    let between = previous.last..own.first;
    // `min 1.2 mm thick, 38 mm wide`: after a comma another measure begins anew.
    let measure = |last: usize| {
        let word = sentence.word(sentence.skip_parentheses(last));
        ["thick", "wide", "deep", "long", "high"]
            .contains(&word)
            .then_some(word)
    };
    let another = measure(previous.last)
        .zip(measure(own.last))
        .is_some_and(|(one, other)| one != other);
    let by_comma = own.first > 0 && sentence.is_sign(own.first - 1, ',');
    if another && by_comma && !lists_measures(sentence, index, before) {
        return None;
    }
    // `not thinner than 0.8 mm, 25 mm wide`
    let own_measure = sentence.word(sentence.skip_parentheses(own.last));
    let compared = (previous.first.saturating_sub(2)..previous.first)
        .find_map(|at| measure_compared(sentence.word(at)));
    if by_comma
        && ["thick", "wide", "deep", "long", "high"].contains(&own_measure)
        && compared.is_some_and(|measure| measure != own_measure)
    {
        return None;
    }
    let joint = own.first.checked_sub(1)?;
    let joined = joint >= previous.last
        && (sentence.is_any(joint, &["and", "or"]) || sentence.is_sign(joint, ','))
        || (joint > previous.last
            && sentence.is_any(joint, &["to", "of", "a"])
            && sentence.has_any(previous.last, joint, &["and", "or"]));
    // `limited to 50 percent in compression and shear to 50 percent`
    let again = sentence.is_word(joint, "to")
        && joint > previous.last + 1
        && (sentence.is_any(joint - 2, &["and", "or"])
            || sentence.is_any(joint - 1, &["and", "or"]))
        && bounded_alone(sentence, before).is_some_and(|(_, rule)| rule == "limit verb");
    let times = sentence.is_any(joint, &["by", "x"]) || sentence.is_sign(joint, '×');
    let by = times && (1..=2).contains(&between.len());
    if is_spaced(sentence, own.last) && !is_spaced(sentence, previous.last) {
        return None;
    }
    // `min 20 MSG (0.036 in.) galv steel, 10 in. wide`: a parenthesis repeats the number before it and passes nothing on.
    let repeats = sentence.is_sign(joint, ',')
        && previous.first > 0
        && sentence.is_sign(previous.first - 1, '(');
    if repeats {
        return None;
    }
    if says_its_own(sentence, joint, own.last)
        || is_layer_of(sentence, joint)
        || is_less_than_another(sentence, own.last)
    {
        return None;
    }
    let same_things = counts_the_same(sentence, previous, own)
        || compared.is_none() && names_measures(sentence, previous, own);
    if !(joined || by || again)
        || between.len() > REACH
        || (!again && !same_things && brings_own_phrase(sentence, between.clone()))
    {
        return None;
    }
    let (finding, rule) = bounded_alone(sentence, before)?;
    if !alike && stricter != Some(finding.relation) && !(both && rule == "comparison before") {
        return None;
    }
    // `max 1/2 in. recess, 4 in. depth`: the most of one measure is no limit of another.
    let alien = match measured_apart(sentence, previous, own) {
        Apart::No => false,
        Apart::Another => finding.relation == Relation::AtMost,
        Apart::Worse => true,
    };
    let listed = || {
        lists_measures(sentence, index, before)
            || sentence
                .bound_before(before)
                .is_some_and(|first| lists_measures(sentence, before, first))
    };
    if alien && !by && !listed() {
        return None;
    }
    // `roughly 1-1/2 in. wide by 5/8 in. thick`: past a word for its measure, the next is what it is.
    if finding.relation == Relation::About && by && between.len() > 1 {
        return None;
    }
    let carries = matches!(
        finding.relation,
        Relation::AtLeast | Relation::AtMost | Relation::Nominal | Relation::About
    );
    // A word after the first number closes it and reaches no further.
    let stands_before = finding.from < previous.first;
    (carries && stands_before && rule != "bare value").then_some(finding)
}

/// The number before that one is said to be the same as: `by a minimum of 1 in. and the other by the same 1 in.`
fn said_again(sentence: &Sentence<'_>, index: usize) -> Option<usize> {
    let own = sentence.amount(index)?;
    is_the_same(sentence, own.first).then_some(())?;
    let alike = |before: &usize| {
        sentence.amount(*before).is_some_and(|before| {
            before.lo == own.lo && before.hi == own.hi && before.unit == own.unit
        })
    };
    (0..index)
        .rev()
        .find(|before| sentence.is_bound(*before) && alike(before))
}

/// Whether a number that begins at a token is said to be one stated before: `the same 1 in.`
pub(super) fn is_the_same(sentence: &Sentence<'_>, first: usize) -> bool {
    // `of the same 2 hr rating as the joint` says which rating.
    let timed = sentence
        .amounts
        .iter()
        .any(|amount| amount.first == first && amount.unit.dimension() == Dimension::Time);
    !timed
        && first >= 2
        && sentence.is_word(first - 1, "same")
        && sentence.is_any(first - 2, &["the", "that", "this"])
}

/// `up to 3/4 in., 3 in. beyond.`: whether a number stands for what lies past the one before it.
fn is_past_another(sentence: &Sentence<'_>, before: usize, last: usize) -> bool {
    let at = sentence.skip_parentheses(last);
    let ends = !sentence.has_word(at + 1);
    let up_to =
        before >= 2 && sentence.is_word(before - 2, "up") && sentence.is_word(before - 1, "to");
    ends && up_to && sentence.is_any(at, &["beyond", "above", "over", "thereafter"])
}

/// `a spacing of not more than 48 in., and a clearance of 1/8 in. shall be left`: another measure, with a verb of its own.
fn says_its_own(sentence: &Sentence<'_>, of: usize, last: usize) -> bool {
    let named = of > 3
        && sentence.is_word(of, "of")
        && sentence.is_any(of - 2, &["a", "an"])
        && sentence.is_word(of - 3, "and")
        && sentence.is_sign(of - 4, ',');
    named
        && sentence.is_any(
            sentence.skip_parentheses(last),
            &["shall", "must", "is", "are"],
        )
}

/// `not less than 4 in. thick or 4 pcf in density`: what is denied of two measures is denied of each.
fn names_both_measures(sentence: &Sentence<'_>, previous: &Amount, own: &Amount) -> bool {
    let sized = sentence.is_any(
        sentence.skip_parentheses(previous.last),
        &["thick", "deep", "wide", "long", "high"],
    );
    let joined = own.first > 0
        && sentence.is_word(own.first - 1, "or")
        && own.first <= sentence.skip_parentheses(previous.last) + 2;
    let behind = sentence.skip_parentheses(own.last);
    let dense = sentence.is_word(behind, "in")
        && sentence.is_any(behind + 1, &["density", "weight"])
        || sentence.is_any(behind, &["density", "dense"]);
    sized && joined && dense && own.unit.dimension() == Dimension::Density
}

/// `min 4 in. deep, 1 in. less than floor thickness`: how much smaller than another thing, and no limit of it.
fn is_less_than_another(sentence: &Sentence<'_>, last: usize) -> bool {
    let at = sentence.skip_parentheses(last);
    let compared = sentence.is_any(
        at,
        &[
            "less", "more", "greater", "longer", "shorter", "wider", "narrower", "higher", "lower",
            "thicker", "thinner",
        ],
    );
    compared && sentence.is_word(at + 1, "than")
}

/// `joints staggered min 12 in. and third layer of 1/2 in. board`: a thing of its own, with its size.
fn is_layer_of(sentence: &Sentence<'_>, of: usize) -> bool {
    const THINGS: &[&str] = &[
        "layer", "layers", "ply", "strip", "strips", "course", "row", "piece", "pieces", "bead",
        "coat", "sheet",
    ];
    of > 0 && sentence.is_word(of, "of") && sentence.is_any(of - 1, THINGS)
}

/// `not less than 70 mm in depth and 0.55 mm in thickness`: each number names its measure behind it.
fn names_measures(sentence: &Sentence<'_>, previous: &Amount, own: &Amount) -> bool {
    const MEASURES: &[&str] = &["depth", "width", "thickness", "height", "length"];
    let at = sentence.skip_parentheses(previous.last);
    sentence.is_word(at, "in")
        && sentence.is_any(at + 1, MEASURES)
        && sentence.is_word(at + 2, "and")
        && own.first == at + 3
}

/// `at least two courses above and one course below`: the same things are counted in another place.
fn counts_the_same(sentence: &Sentence<'_>, previous: &Amount, own: &Amount) -> bool {
    const PLACES: &[&str] = &[
        "above", "below", "over", "under", "at", "in", "on", "the", "top", "bottom", "head",
        "base", "joint", "floor", "slab",
    ];
    let singular = |at: usize| sentence.word(at).trim_end_matches('s').to_owned();
    let thing = singular(previous.last);
    let places =
        (previous.last + 1..own.first.saturating_sub(1)).all(|at| sentence.is_any(at, PLACES));
    let counts = [previous, own]
        .iter()
        .all(|amount| amount.unit == measure::Unit::Count);
    counts && places && !thing.is_empty() && thing == singular(own.last)
}

/// The number that one in brackets right behind it is another case of: `max 300 mm centres (200 mm in joints over 100 mm)`.
pub(crate) fn case_of(sentence: &Sentence<'_>, index: usize) -> Option<usize> {
    const MOST_WORDS: usize = 3;
    let own = sentence.amount(index)?;
    let before = sentence.bound_before(index)?;
    let previous = sentence.amount(before)?;
    let opening = own
        .first
        .checked_sub(1)
        .filter(|at| sentence.is_sign(*at, '('))?;
    let close = sentence.closing(opening)?;
    let near = opening >= previous.last
        && opening <= previous.last + MOST_WORDS
        && (previous.last..opening).all(|at| sentence.has_word(at));
    let cased = (own.last..close).any(|at| sentence.in_condition(at))
        || own.unit == previous.unit && lies_over_the_deck(sentence, own.last, close);
    let alike = own.unit.dimension() == previous.unit.dimension()
        && own.hi.is_none()
        && previous.hi.is_none();
    (near && cased && alike).then_some(before)
}

/// `4-1/2 in. thick (2-1/2 in. over the flutes)`: whether words say that a thickness is taken over the deck, and nothing besides.
fn lies_over_the_deck(sentence: &Sentence<'_>, from: usize, to: usize) -> bool {
    const PARTS: &[&str] = &[
        "deck", "decking", "flutes", "ribs", "crests", "crest", "units", "planks",
    ];
    const LONGEST: usize = 5;
    let plain = (from + 1..to).all(|at| sentence.has_word(at) && sentence.amount_at(at).is_none());
    let over = sentence.is_any(from, &["over", "above", "on"]);
    over && plain && (from + 2..=from + LONGEST).contains(&to) && sentence.is_any(to - 1, PARTS)
}

/// Whether an amount stands in the midst of a list of measures that one comparison limits: `no more than 4 in. deep, 10 in. wide and 18 in. long`.
fn lists_measures(sentence: &Sentence<'_>, index: usize, before: usize) -> bool {
    let compared =
        || bounded_alone(sentence, before).is_some_and(|(_, rule)| rule == "comparison before");
    let ends = sentence
        .amount(index)
        .zip(sentence.amount(index + 1))
        .is_some_and(|(own, next)| {
            let measure = |last: usize| sentence.word(sentence.skip_parentheses(last));
            let sized = ["thick", "wide", "deep", "long", "high"].contains(&measure(next.last))
                && measure(next.last) != measure(own.last);
            sized
                && next.first > 0
                && sentence.is_word(next.first - 1, "and")
                && own.unit == next.unit
                && next.first - own.last <= REACH
        });
    ends && compared()
}

/// What a comparison measures: `thinner` a thickness.
fn measure_compared(word: &str) -> Option<&'static str> {
    Some(match word {
        "thinner" | "thicker" => "thick",
        "wider" | "narrower" => "wide",
        "deeper" | "shallower" => "deep",
        "longer" | "shorter" => "long",
        "taller" | "higher" => "high",
        _ => return None,
    })
}

/// Whether an amount is a spacing: `24 in. on center`, `16 in. o.c.`, `12 in. max OC`
pub(crate) fn is_spaced(sentence: &Sentence<'_>, last: usize) -> bool {
    let after = sentence.skip_parentheses(last);
    // `12 in. max OC`
    let limited = sentence.is_any(after, &["max", "maximum", "min", "minimum"])
        && sentence.is_any(after + 1, &["o.c", "oc", "apart", "c/c"]);
    limited
        || sentence.is_any(
            after,
            &[
                "o.c", "oc", "apart", "c/c", "crs", "centres", "centers", "spacing",
            ],
        )
        || sentence.is_any(after, &["on", "between"])
            && sentence.word(after + 1).starts_with("cent")
        || sentence.word(after).starts_with("cent")
}

/// The relation under which two limits hold together when the stricter counts: `whichever is greater` of leasts, `whichever is less` of mosts.
fn whichever(sentence: &Sentence<'_>, last: usize) -> Option<Relation> {
    const GREATER: &[&str] = &[
        "greater", "greatest", "larger", "more", "longer", "deeper", "thicker", "wider",
    ];
    const LESS: &[&str] = &[
        "less", "lesser", "least", "smaller", "smallest", "lower", "shorter",
    ];
    let at = (last..last + 10).find(|at| sentence.is_word(*at, "whichever"))?;
    if sentence.has_any(at, at + 4, GREATER) {
        Some(Relation::AtLeast)
    } else if sentence.has_any(at, at + 4, LESS) {
        Some(Relation::AtMost)
    } else {
        None
    }
}

/// Whether the words between two amounts begin a new statement, which the first one's qualifier doesn't reach.
fn brings_own_phrase(sentence: &Sentence<'_>, mut between: core::ops::Range<usize>) -> bool {
    between.any(|at| {
        // `min 1/2 in. in walls, 1 in. in floors`
        if sentence.in_condition(at) {
            return false;
        }
        // `of 24 in. OC in Config. 1 and 16 in. OC in Config. 2` says one thing twice.
        if sentence.is_word(at, "in") && sentence.word(at + 1).starts_with("config")
            || sentence.is_any(at, &["oc", "o.c"])
                && sentence.has_any(at + 1, at + 12, &["oc", "o.c"])
        {
            return false;
        }
        // `50 percent with 3A, 25 percent with 3B`
        if sentence.is_word(at, "with")
            && sentence
                .word(at + 1)
                .starts_with(|c: char| c.is_ascii_digit())
        {
            return false;
        }
        sentence.is_sign(at, ';')
            || sentence.is_any(
                at,
                &[
                    "shall", "is", "are", "be", "to", "spaced", "located", "with", "having",
                    "less", "more", "cut", "lapped", "from", "below", "above", "apart", "o.c",
                    "oc", "except", "but", "in",
                ],
            )
    })
}
