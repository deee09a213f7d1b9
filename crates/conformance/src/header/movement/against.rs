//! One direction's need against what was tested, class by class.

use measure::{Number, Quantity, Unit, print};
use site::{Fact, Value};
use vocabulary::{Motion, vocabulary};

use super::super::{Context, joined};
use super::Need;
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
    need: &Need<'a>,
) -> Assessment<'a> {
    let needed = need.percent.number;
    let Some(most) = tested.most() else {
        return nothing_tested(context, tested, need);
    };
    if most < needed && !tested.could_reach(needed) {
        let sentence = format!(
            "{} is needed; the listing was tested to {}.",
            need.words(),
            percent(most)
        );
        return not_offered(need, sentence).with_margin(margin(most, need));
    }
    let found = evidence(CLASS, context.subject);
    let Evidence::Shown(fact) = found else {
        let sentence = format!(
            "{} is needed; the listing gives movement by class, and the class that is needed isn't known.",
            need.words()
        );
        let open = Assessment::open(reason_of(found)).on(found.fact().unwrap_or(need.fact));
        return open.asking(CLASS).saying(need.requirement(), sentence);
    };
    match classes_of(&fact.value) {
        Some(classes) => by_class(tested, need, &classes),
        None => no_class(need, fact),
    }
}

/// Every class that is needed; the first that isn't reached decides.
fn by_class<'a>(tested: &Tested<'a>, need: &Need<'a>, classes: &[String]) -> Assessment<'a> {
    let needed = need.percent.number;
    let mut reached: Option<Number> = None;
    for class in classes {
        let of_class = tested.for_class(class);
        if let Some((least, _)) = of_class
            && least >= needed
            && !tested.could_fall_short(class, needed)
        {
            reached = Some(reached.map_or(least, |known| known.min(least)));
            continue;
        }
        if tested.classless_reaches(needed) {
            let needs = need.words();
            return unclear(
                need,
                format!(
                    "{needs} of Class {class} is needed; for which class the listing was tested to it couldn't be read."
                ),
            );
        }
        let may_reach = of_class.is_some_and(|(_, most)| most >= needed);
        return if may_reach || tested.could_reach(needed) {
            unclear(
                need,
                format!(
                    "{} of Class {class} is needed; the listing states more than one movement, and which of them holds here couldn't be read.",
                    need.words()
                ),
            )
        } else {
            class_not_reached(need, class, of_class.map(|(_, most)| most))
        };
    }
    let reached = reached.unwrap_or(needed);
    let sentence = format!(
        "{} of Class {} is needed; the listing was tested to {}.",
        need.words(),
        joined(classes.iter().cloned()),
        percent(reached)
    );
    Assessment::plain(Verdict::Met, Reason::Holds)
        .on(need.fact)
        .saying(need.requirement(), sentence)
        .with_margin(margin(reached, need))
}

fn class_not_reached<'a>(need: &Need<'a>, class: &str, most: Option<Number>) -> Assessment<'a> {
    let needs = format!("{} of Class {class} is needed", need.words());
    if let Some(most) = most {
        return not_offered(
            need,
            format!("{needs}; the listing was tested to {}.", percent(most)),
        )
        .with_margin(margin(most, need));
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
    need: &Need<'a>,
) -> Assessment<'a> {
    let needs = need.words();
    let states_none = context.checklist.reading.header.movement.is_empty();
    let is_dynamic = context
        .designation
        .is_some_and(|read| read.motion == Motion::Dynamic);
    if tested.could_reach(need.percent.number) {
        return unclear(
            need,
            format!(
                "{needs} is needed; the listing states it for a configuration that none of its options goes by."
            ),
        );
    }
    if states_none && is_dynamic {
        return unclear(
            need,
            format!(
                "{needs} is needed; the listing is for a dynamic joint, but no movement could be read from its head."
            ),
        );
    }
    not_offered(
        need,
        format!(
            "{needs} is needed; the listing gives no movement in {}.",
            need.direction
        ),
    )
}

fn no_class<'a>(need: &Need<'a>, fact: &'a Fact) -> Assessment<'a> {
    let sentence = format!("`{}` names no movement class from I to IV.", fact.value);
    let open = Assessment::open(Reason::Unreadable).on(fact);
    open.asking(CLASS).saying(need.requirement(), sentence)
}

fn not_offered<'a>(need: &Need<'a>, sentence: String) -> Assessment<'a> {
    let not_met = Assessment::plain(Verdict::NotMet, Reason::NotOffered).on(need.fact);
    not_met.saying(need.requirement(), sentence)
}

pub(super) fn unclear<'a>(need: &Need<'a>, sentence: String) -> Assessment<'a> {
    let open = Assessment::open(Reason::ListingUnclear).on(need.fact);
    open.saying(need.requirement(), sentence)
}

fn percent(number: Number) -> String {
    print::trade(Quantity::new(number, Unit::Percent))
}

fn margin(reached: Number, need: &Need<'_>) -> Option<Quantity> {
    Some(Quantity::new(
        reached.minus(need.percent.number)?,
        Unit::Percent,
    ))
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
