//! Phrases that look like conditions and require something themselves: "poured when the slab is at 5 to 35 °C".

use measure::{Dimension, Unit};

use super::super::{compared, forbidden};
use crate::rules::{NEGATIONS, Sentence};

/// Words in it that show that it is no condition but states a requirement itself.
const STATES: &[&str] = &["shall", "must"];

/// Whether the words after an opener state a requirement themselves: they hold "shall", or say of a number that it is required or
/// will do, or follow the condition that they speak of ("in the 4-hour joint, where the depth is 5/8 in.").
pub(super) fn states(sentence: &Sentence<'_>, first: usize, last: usize) -> bool {
    let holds_number = sentence
        .amounts
        .iter()
        .any(|amount| amount.first >= first && amount.last <= last);
    let suffices = sentence.has_any(
        first,
        last,
        &[
            "required",
            "suffices",
            "suffice",
            "sufficient",
            "acceptable",
            "enough",
            "will",
            "needed",
        ],
    );
    // "may cross the joint if they are spaced at least 4 ft apart" requires the spacing of what it permits.
    let permits = allows_provided(sentence, first, last)
        || sentence.has_any(0, first, &["may", "permitted", "allowed"])
            && sentence.is_word(first, "if")
            && sentence.is_any(first + 1, &["they", "it"])
            && sentence.is_any(first + 2, &["is", "are"])
            && !sentence.has_any(
                0,
                first,
                &[
                    "omitted",
                    "left",
                    "waived",
                    "reduced",
                    "increased",
                    "replaced",
                    "deleted",
                    "dispensed",
                    "skipped",
                ],
            );
    let accepts = first > 0
        && sentence.is_any(
            first - 1,
            &[
                "acceptable",
                "accepted",
                "permitted",
                "allowed",
                "recognized",
                "recognised",
                "admitted",
                "permissible",
                "admissible",
            ],
        )
        && !sentence.has_any(first.saturating_sub(4), first, NEGATIONS);
    let allowed = permits || accepts;
    sentence.has_any(first, last, STATES)
        || (holds_number && is_kept(sentence, first, last))
        || (holds_number && is_work_when(sentence, first, last))
        || (holds_number && (suffices || allowed || follows_condition(sentence, first, last)))
}

/// `Planks may be used if the cores are grouted solid for 6 in.`: what the permission rests on is required. A comparison would say which
/// planks are meant.
fn allows_provided(sentence: &Sentence<'_>, first: usize, last: usize) -> bool {
    let may = sentence.has_any(0, first, &["may", "permitted", "allowed"]);
    let closes = last + 1 >= sentence.tokens.len();
    let built = sentence.has_any(first, last, &["is", "are"]);
    let compared = (0..sentence.amounts.len())
        .filter(|index| {
            sentence
                .amount(*index)
                .is_some_and(|amount| amount.first >= first)
        })
        .any(|index| compared(sentence, index));
    let widths = (first..last).any(|at| {
        sentence.is_any(
            at,
            &["joint", "joints", "width", "gap", "opening", "rating"],
        )
    });
    may && sentence.is_word(first, "if")
        && closes
        && built
        && !compared
        && !widths
        && !sentence.has_any(
            0,
            first,
            &[
                "omitted",
                "reduced",
                "left",
                "waived",
                "increased",
                "deleted",
            ],
        )
}

/// `Poured when the concrete is at 5 °C to 35 °C`: the sentence bounds nothing but the state in which the work is done.
fn is_work_when(sentence: &Sentence<'_>, first: usize, last: usize) -> bool {
    // `The coating shall be applied only when the surface is at 5 °C or more.`
    let only = first > 1
        && sentence.is_word(first - 1, "only")
        && sentence.is_any(first - 2, forbidden::DOING);
    // `The seal is to be placed when the floor has been struck for at least 28 days.`
    let lasting = sentence.has_any(first, last, &["has", "have"])
        && sentence.has_any(first, last, &["least"]);
    let reach = if lasting { 9 } else { 3 };
    let done = first > 0
        && (sentence.is_any(first, &["when", "where"]) || only && sentence.is_word(first, "if"))
        && (only || first <= reach && sentence.is_any(first - 1, forbidden::DOING));
    let mut own = sentence
        .amounts
        .iter()
        .filter(|amount| first <= amount.first && amount.last <= last);
    let weather = |unit: Unit| {
        matches!(
            unit.dimension(),
            Dimension::Temperature | Dimension::Time | Dimension::CalendarTime
        ) || unit == Unit::Percent
    };
    let alone = own.all(|amount| weather(amount.unit))
        && !sentence.amounts.iter().any(|amount| amount.first < first);
    let free = sentence.has_any(0, first, &["may", "need", "not"]);
    done && alone && !free
}

/// `The shelf life is 12 months when stored between 40 and 90 °F`: how a material is to be kept, in whatever words.
fn is_kept(sentence: &Sentence<'_>, first: usize, last: usize) -> bool {
    let kept = (first + 1..first + 5)
        .any(|at| sentence.is_any(at, &["stored", "kept", "held", "stocked", "warehoused"]));
    let mut own = sentence
        .amounts
        .iter()
        .filter(|amount| first <= amount.first && amount.last <= last);
    let air = |unit: Unit| unit.dimension() == Dimension::Temperature || unit == Unit::Percent;
    kept && own.all(|amount| air(amount.unit)) && !sentence.has_any(first, last, NOT_SO_KEPT)
}

/// Words after which a temperature says what happens to a material that isn't kept as it should be.
const NOT_SO_KEPT: &[&str] = &["not", "never", "longer", "frozen", "discard"];

/// `, except with the partition, where it is reduced to ± 4 mm`, `, unless the wall exceeds 15 ft, when they stand 12 in. apart`: after an exception
/// between commas the words say what holds in it. Gives where the exception begins. One that has its number in other words than "unless" is a
/// case that is found by them.
pub(super) fn excepted_case(sentence: &Sentence<'_>, first: usize) -> Option<usize> {
    let comma = first
        .checked_sub(1)
        .filter(|at| sentence.is_sign(*at, ','))?;
    let start = (0..comma).rev().find(|at| sentence.is_stop(*at))? + 1;
    let numbered = sentence
        .amounts
        .iter()
        .any(|amount| amount.first >= start && amount.last <= comma);
    let excepts = sentence.is_word(start, "unless")
        || !numbered && sentence.is_any(start, &["except", "save", "but"]);
    let said_of_it = sentence.is_any(first, &["where", "when"])
        && sentence.is_any(first + 1, &["it", "they", "this", "these"]);
    (excepts && said_of_it).then_some(start)
}

/// "when installed", "when dry", "when measured": the state in which the number holds, which is part of what it is.
pub(super) fn is_state(sentence: &Sentence<'_>, first: usize, last: usize) -> bool {
    const STATES: &[&str] = &[
        "installed",
        "dry",
        "dried",
        "wet",
        "cured",
        "measured",
        "placed",
        "made",
        "applied",
        "compressed",
        "set",
        "built",
        "formed",
        "erected",
    ];
    // `when it is made`
    let itself = last == first + 4
        && sentence.is_any(first + 1, &["it", "they"])
        && sentence.is_any(first + 2, &["is", "are"])
        && sentence.is_any(first + 3, STATES);
    let opened = sentence.is_any(first, &["when", "where"]);
    let in_place = last == first + 3
        && sentence.is_word(first + 1, "in")
        && sentence.is_any(first + 2, &["place", "position"]);
    opened && (in_place || itself || (last == first + 2 && sentence.is_any(first + 1, STATES)))
}

fn follows_condition(sentence: &Sentence<'_>, first: usize, last: usize) -> bool {
    // "For the 3 hr rating, where the joint is over 2 in. wide, min 4 in. deep": one case more.
    let goes_on = sentence.is_sign(last, ',')
        && sentence.amounts.iter().any(|amount| amount.first > last)
        && (0..sentence.amounts.len()).any(|index| {
            let within =
                |amount: &crate::phrase::Amount| first <= amount.first && amount.last <= last;
            sentence.amount(index).is_some_and(within) && compared(sentence, index)
        });
    if goes_on {
        return false;
    }
    let Some(comma) = first.checked_sub(1).filter(|at| sentence.is_sign(*at, ',')) else {
        return false;
    };
    let start = (0..comma)
        .rev()
        .find(|at| sentence.is_stop(*at))
        .map_or(0, |at| at + 1);
    let excepts = sentence.is_any(start, &["save", "except", "in", "and", "for"]);
    excepts
        && sentence
            .amounts
            .iter()
            .any(|amount| amount.first >= start && amount.last <= comma)
}
