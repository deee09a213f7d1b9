//! The movement that is needed against the movement that was tested.
//!
//! Movement is stated in percent of the installed nominal width, for each direction, by classes of cycling (UL 2079,
//! ASTM E1966). No general rule lets a higher class stand for a lower one, so that class is compared with class. One
//! listing may state several movements for one class, for different widths or configurations: only those of the
//! configuration built count, and where nothing says which of them holds, the smallest must reach.
//!
//! What is needed is a matter of design. A need of zero asks nothing. Compression and extension must both be stated.
//! Shear is asked only of joints whose designer states a need of it: where the other needs are stated and shear isn't,
//! none is taken to be needed, and the result says so.

mod against;
mod tested;

use listing::MovementDirection;
use measure::{Dimension, Number, Quantity, print};
use site::{Fact, Value};
use vocabulary::Motion;

use super::{Context, Head};
use crate::assessment::Assessment;
use crate::condition::reason_of;
use crate::evidence::{Evidence, evidence};
use crate::verdict::{Reason, Verdict};
use tested::Tested;

/// A direction of movement, with the property that says what is needed of it.
struct Direction {
    id: &'static str,
    property: &'static str,
    words: &'static str,
    covers: fn(MovementDirection) -> bool,
}

const COMPRESSION: Direction = Direction {
    id: "header/movement-compression",
    property: "joint.movement_compression",
    words: "compression",
    covers: |tested| {
        matches!(
            tested,
            MovementDirection::Compression | MovementDirection::CompressionOrExtension
        )
    },
};

const EXTENSION: Direction = Direction {
    id: "header/movement-extension",
    property: "joint.movement_extension",
    words: "extension",
    covers: |tested| {
        matches!(
            tested,
            MovementDirection::Extension | MovementDirection::CompressionOrExtension
        )
    },
};

const SHEAR: Direction = Direction {
    id: "header/movement-shear",
    property: "joint.movement_shear",
    words: "shear",
    covers: |tested| matches!(tested, MovementDirection::Shear),
};

/// Movement that the joint needs in a direction; above zero.
struct Need<'a> {
    percent: Quantity,
    fact: &'a Fact,
    /// The direction in words.
    direction: &'static str,
}

impl Need<'_> {
    /// The need inside a sentence: "20 % compression".
    fn words(&self) -> String {
        format!("{} {}", print::trade(self.percent), self.direction)
    }

    /// What the listing must give.
    fn requirement(&self) -> String {
        let percent = print::trade(self.percent);
        format!(
            "movement in {} of at least {percent} of the installed nominal width",
            self.direction
        )
    }
}

/// One check for each direction.
pub(super) fn check<'a>(context: &Context<'a, '_>) -> [Head<'a>; 3] {
    [COMPRESSION, EXTENSION, SHEAR].map(|direction| {
        let tested = Tested::of_each(context, &direction);
        Head {
            id: direction.id,
            property: direction.property,
            span: tested.iter().find_map(Tested::span),
            found: found(context, &direction, &tested),
        }
    })
}

fn found<'a>(
    context: &Context<'a, '_>,
    direction: &Direction,
    tested: &[Tested<'a>],
) -> Assessment<'a> {
    let words = direction.words;
    let fact = match evidence(direction.property, context.subject) {
        Evidence::Shown(fact) => fact,
        other => return not_stated(context, direction, other),
    };
    match fact.value {
        Value::Quantity(percent)
            if percent.dimension() == Dimension::Fraction && percent.number > Number::ZERO =>
        {
            let need = Need {
                percent,
                fact,
                direction: words,
            };
            in_each(context, tested, &need)
        }
        Value::Quantity(percent)
            if percent.dimension() == Dimension::Fraction && percent.number.is_zero() =>
        {
            Assessment::plain(Verdict::NotApplicable, Reason::NotAsked)
                .on(fact)
                .saying(
                    format!("movement in {words}"),
                    format!("No movement in {words} is needed."),
                )
        }
        _ => Assessment::open(Reason::Unreadable).on(fact).saying(
            format!("movement in {words}"),
            format!("`{}` is no percentage of the joint's width.", fact.value),
        ),
    }
}

/// A need against what was tested for the configuration built; where nobody knows which that is, for every one that may
/// be. Those must agree, and the weakest speaks for all.
fn in_each<'a>(
    context: &Context<'a, '_>,
    tested: &[Tested<'a>],
    need: &Need<'a>,
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
                    "{} is needed; the head states the movement by configuration, and nothing that is known of the joint says which is built.",
                    need.words()
                ),
            );
        }
        if most < least {
            (least, weakest) = (most, found);
        }
    }
    weakest
}

/// What to find where nothing usable says what is needed.
fn not_stated<'a>(
    context: &Context<'a, '_>,
    direction: &Direction,
    found: Evidence<'a>,
) -> Assessment<'a> {
    let requirement = format!("movement in {}", direction.words);
    if matches!(found, Evidence::None) {
        if let Evidence::Shown(fact) = evidence("joint.static_or_dynamic", context.subject)
            && matches!(&fact.value, Value::Text(text) if text == Motion::Static.title())
        {
            return Assessment::plain(Verdict::NotApplicable, Reason::NotAsked)
                .on(fact)
                .saying(requirement, "The joint isn't meant to move.");
        }
        let states_other = [COMPRESSION, EXTENSION].iter().any(|other| {
            matches!(
                evidence(other.property, context.subject),
                Evidence::Shown(_)
            )
        });
        if direction.property == SHEAR.property && states_other {
            return Assessment::plain(Verdict::NotApplicable, Reason::NotAsked).saying(
                requirement,
                "The movement that is needed is stated, and no shear with it: none is taken to be needed.",
            );
        }
    }
    Assessment::open(reason_of(found)).on(found.fact()).saying(
        requirement,
        format!(
            "How far the joint must move in {} isn't known.",
            direction.words
        ),
    )
}
