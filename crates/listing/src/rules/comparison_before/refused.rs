//! What compares so is to be refused, or work stops at it: the rest is asked for.

use measure::Dimension;

use super::super::Sentence;
use super::negation::REACH;
use super::words::NEGATIONS;

/// `Spraying stops below 45 F`, `work is suspended below 40 F and above 100 F`: what is worked in is the rest.
pub(super) fn work_stops(sentence: &Sentence<'_>, index: usize, from: usize) -> bool {
    const STOPS: &[&str] = &[
        "stop",
        "stops",
        "stopped",
        "cease",
        "ceases",
        "ceased",
        "halt",
        "halts",
        "halted",
        "suspended",
        "discontinued",
    ];
    let of_weather = sentence.amount(index).is_some_and(|amount| {
        matches!(
            amount.unit.dimension(),
            Dimension::Temperature | Dimension::Fraction
        )
    });
    let before = (from.saturating_sub(REACH)..from).rev();
    of_weather
        && before
            .take_while(|at| !sentence.is_stop(*at))
            .any(|at| sentence.is_any(at, STOPS))
}

/// `pails older than nine months shall be refused`, `depth less than 1/2 in. is refused`: what compares so must not be there. What is "removed"
/// is refused only for its age: fireproofing over 1 in. thick may be removed for other reasons.
#[expect(
    clippy::too_many_lines,
    reason = "the wordings are asked for one after the other, each in a few lines"
)]
pub(crate) fn is_refused(sentence: &Sentence<'_>, index: usize) -> bool {
    const USES: &[&str] = &["used", "installed", "accepted", "employed"];
    const REACH: usize = 11;
    const ADMITTED: &[&str] = &[
        "admissible",
        "permitted",
        "allowed",
        "acceptable",
        "permissible",
        "accepted",
    ];
    const PLACED: &[&str] = &["at", "next", "beside", "near", "save", "except", "anywhere"];
    /// What is not done to a thing too young: `Concrete younger than 28 days shall not be coated.`
    const WORKED: &[&str] = &[
        "coated", "sealed", "painted", "covered", "primed", "sprayed", "loaded", "drilled",
        "walked",
    ];
    const REFUSED: &[&str] = &[
        "refused",
        "rejected",
        "discarded",
        "thrown",
        "cause",
        "unacceptable",
        "inadmissible",
        "impermissible",
        "disallowed",
        "excluded",
        "prohibited",
        "forbidden",
    ];
    let Some(amount) = sentence.amount(index) else {
        return false;
    };
    // `keep wheel loads of more than 200 lb/ft off the joint`
    let kept_off = sentence.has_any(
        amount.first.saturating_sub(REACH),
        amount.first,
        &["keep", "kept"],
    ) && sentence.is_any(
        sentence.skip_parentheses(amount.last),
        &["off", "away", "out"],
    );
    if kept_off {
        return true;
    }
    if is_told_to_refuse(sentence, amount.first) {
        return true;
    }
    // `openings larger than 12 in. by 12 in. are excluded`
    let crossed = sentence
        .amount(index + 1)
        .filter(|next| next.first == amount.last + 1 && sentence.is_any(amount.last, &["by", "x"]));
    // `more than one butt per 1.5 m is not admissible`
    let on = sentence.amount(index + 1).filter(|next| {
        next.first > amount.last
            && next.first <= amount.last + 3
            && sentence.is_any(next.first - 1, &["per", "every"])
    });
    let last = crossed.or(on).map_or(amount.last, |next| next.last);
    let stretch = || {
        (last..last + REACH)
            .take_while(|at| !sentence.is_stop(*at) && sentence.amount_at(*at).is_none())
    };
    let aged = matches!(
        amount.unit.dimension(),
        Dimension::Time | Dimension::CalendarTime
    );
    // `Offcuts shorter than 300 mm shall not be used.`
    let unused = stretch().any(|at| {
        let modal = sentence.is_any(at, &["shall", "must", "may", "can"])
            && sentence.is_word(at + 1, "not")
            && sentence.is_word(at + 2, "be");
        // `Lengths shorter than 18 in. are not to be used.`
        let to_be = sentence.is_any(at, &["is", "are"])
            && sentence.is_word(at + 1, "not")
            && sentence.is_word(at + 2, "to")
            && sentence.is_word(at + 3, "be");
        let verb = if to_be { at + 4 } else { at + 3 };
        let worked = aged && sentence.is_any(verb, WORKED);
        let placed = sentence.is_word(verb, "placed") && sentence.is_any(verb + 1, PLACED);
        let ends = !sentence.has_word(verb + 1)
            || sentence.is_any(verb + 1, &["save", "except", "anywhere"]);
        // `Strips shorter than 600 mm are not used save at the top.`
        let habit = sentence.is_any(at, &["is", "are"])
            && sentence.is_word(at + 1, "not")
            && sentence.is_any(at + 2, &["used", "installed", "employed"]);
        let habit_ends = habit
            && (!sentence.has_word(at + 3)
                || sentence.is_any(at + 3, &["save", "except", "anywhere"]));
        // `Pipes larger than 2 in. shall not pass through the joint.`
        // `Pieces shorter than 8 in. don't count.`
        let useless = sentence.is_any(at, &["don't", "don’t", "doesn't", "doesn’t"])
            && sentence.is_any(at + 1, &["count", "pass", "qualify", "work"])
            || sentence.is_any(at, &["is", "are"])
                && sentence.is_any(at + 1, &["waste", "scrap", "useless"]);
        let passes = useless
            || sentence.is_any(at, &["shall", "must", "may"])
                && sentence.is_word(at + 1, "not")
                && sentence.is_any(at + 2, &["pass", "cross", "penetrate", "run"]);
        passes
            || habit_ends
            || (modal || to_be) && ((worked || sentence.is_any(verb, USES)) && ends || placed)
    });
    // `Coating older than 24 months, or kept outside 5 to 35 °C, shall not be used.`
    if unused || (aged && refused_with_others(sentence, last)) {
        return true;
    }
    let free = stretch()
        .any(|at| sentence.is_any(at, NEGATIONS) || sentence.is_any(at, &["may", "need", "can"]));
    // `more than one butt is not admissible`
    let not_admitted = stretch().any(|at| {
        sentence.is_any(at, &["is", "are"])
            && sentence.is_word(at + 1, "not")
            && sentence.is_any(at + 2, ADMITTED)
    });
    if not_admitted {
        return true;
    }
    let mut verbs = stretch().filter(|at| sentence.is_any(*at, &["be", "is", "are"]));
    !free
        && verbs.any(|be| {
            sentence.is_any(be + 1, REFUSED) || (aged && sentence.is_word(be + 1, "removed"))
        })
}

/// Whether what is too old is named beside another fault, between commas, before it is refused: `older than 24 months, or frozen, shall not be used`.
fn refused_with_others(sentence: &Sentence<'_>, last: usize) -> bool {
    const REACH: usize = 14;
    let listed = sentence.is_sign(last, ',') && sentence.is_word(last + 1, "or");
    let close = (last + 2..last + REACH).find(|at| sentence.is_sign(*at, ','));
    listed
        && close.is_some_and(|at| {
            let denied = sentence.is_any(at + 1, &["shall", "must", "may"])
                && sentence.is_word(at + 2, "not")
                && sentence.is_word(at + 3, "be");
            denied
                && sentence.is_any(
                    at + 4,
                    &["used", "installed", "applied", "placed", "employed"],
                )
        })
}

/// `Reject any reading more than 10 percent under the nominal`: what compares so is to be refused.
fn is_told_to_refuse(sentence: &Sentence<'_>, first: usize) -> bool {
    const REFUSE: &[&str] = &["reject", "refuse", "discard"];
    const WHAT: &[&str] = &[
        "any", "all", "every", "each", "a", "an", "the", "those", "material", "pieces", "lengths",
        "bags", "pails",
    ];
    const REACH: usize = 8;
    (first.saturating_sub(REACH)..first)
        .rev()
        .take_while(|at| !sentence.is_stop(*at) && sentence.amount_at(*at).is_none())
        .any(|at| {
            let thrown = sentence.is_any(at, &["throw", "thrown"])
                && sentence.is_any(at + 1, &["away", "out"]);
            let refused = thrown || sentence.is_any(at, REFUSE) && sentence.is_any(at + 1, WHAT);
            refused && !(at > 0 && sentence.is_any(at - 1, NEGATIONS))
        })
}
