//! One direction's need against what was tested, class by class.

use engineering::Between;
use measure::{Number, Quantity, Unit, print};
use site::{Fact, Value};
use vocabulary::{Motion, vocabulary};

use super::super::{Context, joined};
use super::need::Need;
use super::tested::Tested;
use crate::assessment::Assessment;
use crate::condition::reason_of;
use crate::evidence::{Evidence, evidence};
use crate::verdict::{Reason, Verdict};

const CLASS: &str = "joint.movement_class";

/// Whether what was tested reaches what is needed.
pub(super) fn check<'a>(
    context: &Context<'a, '_>,
    tested: &Tested<'a>,
    need: &Need<'_, 'a>,
) -> Assessment<'a> {
    let least = need.between.low;
    let Some(most) = tested.most() else {
        return nothing_tested(context, tested, need);
    };
    if most < least && !tested.could_reach(least) {
        let sentence = format!(
            "{}; the listing was tested to {}.",
            need.words(None, Some(most)),
            percent(most)
        );
        return not_offered(need, sentence).with_margin(margin(most, need));
    }
    let found = evidence(CLASS, context.subject);
    let Evidence::Shown(fact) = found else {
        let sentence = format!(
            "{}; the listing gives movement by class, and the class that is needed isn't known.",
            need.words(None, None)
        );
        let open = Assessment::open(reason_of(found)).on(found.fact().unwrap_or(need.fact));
        return open.asking(CLASS).saying(need.requirement(), sentence);
    };
    match classes_of(&fact.value) {
        Some(classes) => by_class(tested, need, &classes),
        None => no_class(need, fact),
    }
}

/// Every class that is needed: one that surely isn't reached decides, then the first of which that can't be told.
fn by_class<'a>(tested: &Tested<'a>, need: &Need<'_, 'a>, classes: &[String]) -> Assessment<'a> {
    let mut reached: Option<Number> = None;
    let mut open = None;
    for class in classes {
        match of_class(tested, need, class) {
            Ok(least) => reached = Some(reached.map_or(least, |known| known.min(least))),
            Err(found) if found.verdict == Verdict::NotMet => return *found,
            Err(found) => open = open.or(Some(*found)),
        }
    }
    if let Some(open) = open {
        return open;
    }
    let reached = reached.unwrap_or(need.percent);
    let sentence = format!(
        "{}; the listing was tested to {}.",
        need.words(Some(&joined(classes.iter().cloned())), Some(reached)),
        percent(reached)
    );
    Assessment::plain(Verdict::Met, Reason::Holds)
        .on(need.fact)
        .saying(need.requirement(), sentence)
        .with_margin(margin(reached, need))
}

/// What was tested of one class, where that reaches what is needed; else what is found.
fn of_class<'a>(
    tested: &Tested<'a>,
    need: &Need<'_, 'a>,
    class: &str,
) -> Result<Number, Box<Assessment<'a>>> {
    let Between { low, high } = need.between;
    let of_class = tested.for_class(class);
    if let Some((least, _)) = of_class
        && least >= high
        && !tested.could_fall_short(class, high)
    {
        return Ok(least);
    }
    let needs = |against| need.words(Some(class), against);
    Err(Box::new(if tested.classless_reaches(low) {
        unclear(
            need,
            format!(
                "{}; for which class the listing was tested to it couldn't be read.",
                needs(None)
            ),
        )
    } else if let Some((least, _)) = of_class
        && least >= low
        && !tested.could_fall_short(class, low)
    {
        too_close(need, &needs(Some(least)), least)
    } else if of_class.is_some_and(|(_, most)| most >= low) || tested.could_reach(low) {
        unclear(
            need,
            format!(
                "{}; the listing states more than one movement, and which of them holds here couldn't be read.",
                needs(None)
            ),
        )
    } else {
        class_not_reached(need, class, of_class.map(|(_, most)| most))
    }))
}

/// The least that the need can be was tested, the greatest wasn't.
fn too_close<'a>(need: &Need<'_, 'a>, needs: &str, tested: Number) -> Assessment<'a> {
    let range = need
        .share
        .map(|share| share.range_words(Some(tested)))
        .unwrap_or_default();
    let sentence = format!(
        "{needs}{range}; the listing was tested to {}.",
        percent(tested)
    );
    Assessment::open(Reason::TooClose)
        .on(need.fact)
        .saying(need.requirement(), sentence)
        .with_margin(margin(tested, need))
}

fn class_not_reached<'a>(need: &Need<'_, 'a>, class: &str, most: Option<Number>) -> Assessment<'a> {
    let needs = need.words(Some(class), most);
    if let Some(most) = most {
        let sentence = format!("{needs}; the listing was tested to {}.", percent(most));
        return not_offered(need, sentence).with_margin(margin(most, need));
    }
    not_offered(
        need,
        format!(
            "{needs}; the listing gives no Class {class} movement in {}.",
            need.direction
        ),
    )
}

fn nothing_tested<'a>(
    context: &Context<'a, '_>,
    tested: &Tested<'a>,
    need: &Need<'_, 'a>,
) -> Assessment<'a> {
    let needs = need.words(None, None);
    let states_none = context.checklist.reading.header.movement.is_empty();
    let is_dynamic = context
        .designation
        .is_some_and(|read| read.motion == Motion::Dynamic);
    if tested.could_reach(need.between.low) {
        return unclear(
            need,
            format!(
                "{needs}; the listing states it for a configuration that none of its options goes by."
            ),
        );
    }
    if states_none && is_dynamic {
        return unclear(
            need,
            format!(
                "{needs}; the listing is for a dynamic joint, but no movement could be read from its head."
            ),
        );
    }
    not_offered(
        need,
        format!(
            "{needs}; the listing gives no movement in {}.",
            need.direction
        ),
    )
}

fn no_class<'a>(need: &Need<'_, 'a>, fact: &'a Fact) -> Assessment<'a> {
    let sentence = format!("`{}` names no movement class from I to IV.", fact.value);
    let open = Assessment::open(Reason::Unreadable).on(fact);
    open.asking(CLASS).saying(need.requirement(), sentence)
}

fn not_offered<'a>(need: &Need<'_, 'a>, sentence: String) -> Assessment<'a> {
    let not_met = Assessment::plain(Verdict::NotMet, Reason::NotOffered).on(need.fact);
    not_met.saying(need.requirement(), sentence)
}

pub(super) fn unclear<'a>(need: &Need<'_, 'a>, sentence: String) -> Assessment<'a> {
    let open = Assessment::open(Reason::ListingUnclear).on(need.fact);
    open.saying(need.requirement(), sentence)
}

fn percent(number: Number) -> String {
    print::trade(Quantity::new(number, Unit::Percent))
}

fn margin(reached: Number, need: &Need<'_, '_>) -> Option<Quantity> {
    Some(Quantity::new(reached.minus(need.percent)?, Unit::Percent))
}

/// The classes that a value names, all of which are needed; none when it names anything else.
fn classes_of(value: &Value) -> Option<Vec<String>> {
    let Value::Text(text) = value else {
        return None;
    };
    let words = text.split(|letter: char| !letter.is_alphanumeric());
    let mut classes = Vec::new();
    for word in words.filter(|word| !word.is_empty()) {
        if matches!(word.to_lowercase().as_str(), "class" | "classes" | "and") {
            continue;
        }
        let class = vocabulary().movement_class(&word.to_uppercase())?;
        if !classes.contains(&class.roman) {
            classes.push(class.roman.clone());
        }
    }
    (!classes.is_empty()).then_some(classes)
}
