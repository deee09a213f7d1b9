//! The movement that is needed against the movement that was tested.
//!
//! Movement is stated in percent of the installed nominal width, for each direction, by classes of cycling (UL 2079,
//! ASTM E1966). No general rule lets a higher class stand for a lower one, so that class is compared with class. One
//! listing may state several movements for one class, for different widths or configurations: only those of the
//! configuration built count, and where nothing says which of them holds, the smallest must reach.
//!
//! What is needed is a matter of design, stated as a percentage, as a length or as both: a length is a percentage of the
//! width as found, and where both are stated both must be within what was tested. A need of zero asks nothing.
//! Compression and extension must both be stated. Shear is asked only of joints whose designer states a need of it:
//! where the other needs are stated and shear isn't, none is taken to be needed, and the result says so.

mod against;
mod need;
mod tested;

use measure::{Dimension, Number};
use site::{Fact, Value};
use vocabulary::Motion;

use super::{Context, Head};
use crate::assessment::Assessment;
use crate::condition::reason_of;
use crate::evidence::{Evidence, evidence};
use crate::movement::direction::{COMPRESSION, EXTENSION, SHEAR};
use crate::movement::{Direction, Length, Statement, stricter};
use crate::verdict::{Reason, Verdict};
use need::Need;
use tested::Tested;

/// One check for each direction.
pub(super) fn check<'a>(context: &Context<'a, '_>) -> [Head<'a>; 3] {
    [COMPRESSION, EXTENSION, SHEAR].map(|direction| one(context, &direction))
}

/// The check for one direction.
pub(super) fn one<'a>(context: &Context<'a, '_>, direction: &Direction) -> Head<'a> {
    let tested = Tested::of_each(context, direction);
    Head {
        id: direction.id,
        property: direction.property,
        span: tested.iter().find_map(Tested::span),
        found: found(context, direction, &tested),
    }
}

fn found<'a>(
    context: &Context<'a, '_>,
    direction: &Direction,
    tested: &[Tested<'a>],
) -> Assessment<'a> {
    let by_length = by_length(context, direction, tested);
    match (evidence(direction.property, context.subject), by_length) {
        (Evidence::None, None) => nowhere_stated(context, direction),
        (Evidence::None, Some(by_length)) => by_length.found,
        (stated, None) => by_percentage(context, direction, tested, stated).found,
        (stated, Some(by_length)) => {
            stricter(by_length, by_percentage(context, direction, tested, stated))
        }
    }
}

/// What comes of the percentage stated.
fn by_percentage<'a>(
    context: &Context<'a, '_>,
    direction: &Direction,
    tested: &[Tested<'a>],
    stated: Evidence<'a>,
) -> Statement<'a> {
    let statement = |found, percent| Statement {
        found,
        percent,
        fact: stated.fact(),
        name: "percentage",
    };
    let words = direction.words;
    let Evidence::Shown(fact) = stated else {
        return statement(not_shown(direction, stated), None);
    };
    match fact.value {
        Value::Quantity(percent)
            if percent.dimension() == Dimension::Fraction && percent.number >= Number::ZERO =>
        {
            let found = if percent.number.is_zero() {
                not_needed(direction, fact)
            } else {
                let need = Need::of_percentage(percent, fact, words);
                in_each(context, tested, &need)
            };
            statement(found, Some(percent.number))
        }
        _ => {
            let open = Assessment::open(Reason::Unreadable).on(fact).saying(
                format!("movement in {words}"),
                format!("`{}` is no percentage of the joint's width.", fact.value),
            );
            statement(open, None)
        }
    }
}

/// What comes of the length stated; nothing where none is.
fn by_length<'a>(
    context: &Context<'a, '_>,
    direction: &Direction,
    tested: &[Tested<'a>],
) -> Option<Statement<'a>> {
    let statement = |found, percent, fact| Statement {
        found,
        percent,
        fact,
        name: "length",
    };
    Some(match Length::of(direction, context.subject) {
        Length::NotStated => return None,
        Length::Zero(fact) => {
            statement(not_needed(direction, fact), Some(Number::ZERO), Some(fact))
        }
        Length::Unusable(found) => {
            let fact = context.subject.facts.get(direction.length);
            statement(*found, None, fact)
        }
        Length::Share(share) => {
            let (percent, fact) = (share.percent, share.fact);
            let need = Need::of_length(&share, direction.words);
            let found = in_each(context, tested, &need);
            statement(share.weigh(found), Some(percent), Some(fact))
        }
    })
}

fn not_needed<'a>(direction: &Direction, fact: &'a Fact) -> Assessment<'a> {
    let words = direction.words;
    Assessment::plain(Verdict::NotApplicable, Reason::NotAsked)
        .on(fact)
        .saying(
            format!("movement in {words}"),
            format!("No movement in {words} is needed."),
        )
}

/// A need against what was tested for the configuration built; where nobody knows which that is, for every one that may
/// be. Those must agree, and the weakest speaks for all.
fn in_each<'a>(
    context: &Context<'a, '_>,
    tested: &[Tested<'a>],
    need: &Need<'_, 'a>,
) -> Assessment<'a> {
    let mut each = tested
        .iter()
        .map(|tested| (tested.most(), against::check(context, tested, need)));
    let Some((mut least, mut weakest)) = each.next() else {
        return against::unclear(need, "No movement could be read.".to_owned());
    };
    for (most, found) in each {
        if found.verdict != weakest.verdict {
            return against::unclear(
                need,
                format!(
                    "{}; the head states the movement by configuration, and nothing that is known of the joint says which is built.",
                    need.words(None, None)
                ),
            );
        }
        if most < least {
            (least, weakest) = (most, found);
        }
    }
    weakest
}

/// What to find where nobody says what is needed.
fn nowhere_stated<'a>(context: &Context<'a, '_>, direction: &Direction) -> Assessment<'a> {
    let requirement = format!("movement in {}", direction.words);
    let shown = |property| matches!(evidence(property, context.subject), Evidence::Shown(_));
    if let Evidence::Shown(fact) = evidence("joint.static_or_dynamic", context.subject)
        && matches!(&fact.value, Value::Text(text) if text == Motion::Static.title())
    {
        return Assessment::plain(Verdict::NotApplicable, Reason::NotAsked)
            .on(fact)
            .saying(requirement, "The joint isn't meant to move.");
    }
    let states_other = [COMPRESSION, EXTENSION]
        .iter()
        .any(|other| shown(other.property) || shown(other.length));
    if direction.property == SHEAR.property && states_other {
        return Assessment::plain(Verdict::NotApplicable, Reason::NotAsked).saying(
            requirement,
            "The movement that is needed is stated, and no shear with it: none is taken to be needed.",
        );
    }
    not_shown(direction, Evidence::None)
}

/// What to find where nothing usable says what is needed.
fn not_shown<'a>(direction: &Direction, found: Evidence<'a>) -> Assessment<'a> {
    Assessment::open(reason_of(found)).on(found.fact()).saying(
        format!("movement in {}", direction.words),
        format!(
            "How far the joint must move in {} isn't known, neither as a percentage of its width nor as a length.",
            direction.words
        ),
    )
}
