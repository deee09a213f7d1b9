//! The movement that is needed against the movement that was tested.
//!
//! Movement is stated in percent of the installed nominal width, for each direction, by classes of cycling (UL 2079,
//! ASTM E1966). No general rule lets a higher class stand for a lower one, so that class is compared with class. One
//! listing may state several movements for one class, for different widths or configurations: where nothing says which
//! of them holds, the smallest must reach.
//!
//! What is needed is a matter of design. A need of zero asks nothing. Compression and extension must both be stated.
//! Shear is asked only of joints whose designer states a need of it: where the other needs are stated and shear isn't,
//! none is taken to be needed, and the result says so.

use listing::{Movement, MovementDirection};
use measure::{Dimension, Number, Quantity, Unit, print};
use site::Value;
use vocabulary::{Motion, vocabulary};

use super::rating::joined;
use super::{Context, Head};
use crate::assessment::Assessment;
use crate::condition::reason_of;
use crate::evidence::{Evidence, evidence};
use crate::verdict::{Reason, Verdict};
use crate::words::{item_path, same};

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
        matches!(tested, MovementDirection::Compression | MovementDirection::CompressionOrExtension)
    },
};

const EXTENSION: Direction = Direction {
    id: "header/movement-extension",
    property: "joint.movement_extension",
    words: "extension",
    covers: |tested| {
        matches!(tested, MovementDirection::Extension | MovementDirection::CompressionOrExtension)
    },
};

const SHEAR: Direction = Direction {
    id: "header/movement-shear",
    property: "joint.movement_shear",
    words: "shear",
    covers: |tested| matches!(tested, MovementDirection::Shear),
};

const CLASS: &str = "joint.movement_class";

/// One check for each direction.
pub(super) fn check<'a>(context: &Context<'a, '_>) -> [Head<'a>; 3] {
    [COMPRESSION, EXTENSION, SHEAR].map(|direction| {
        let tested = tested(context, &direction);
        let span = tested.sure.first().or(tested.unsure.first()).map(|movement| movement.span);
        let found = found(context, &direction, &tested);
        Head { id: direction.id, property: direction.property, span, found }
    })
}

/// What the listing was tested to in a direction.
struct Tested<'a> {
    /// For what is chosen of the options, or for all of them.
    sure: Vec<&'a Movement>,
    /// For a configuration that no option of the listing goes by.
    unsure: Vec<&'a Movement>,
}

fn tested<'a>(context: &Context<'a, '_>, direction: &Direction) -> Tested<'a> {
    let groups = &context.checklist.options.groups;
    let mut tested = Tested { sure: Vec::new(), unsure: Vec::new() };
    for movement in &context.checklist.reading.header.movement {
        if !(direction.covers)(movement.direction) {
            continue;
        }
        let Some(option) = movement.option.as_deref() else {
            tested.sure.push(movement);
            continue;
        };
        let mut known = false;
        let mut chosen = false;
        for (at, group) in groups.iter().enumerate() {
            for (choice, name) in group.choices.iter().enumerate() {
                if same(name, option) || item_path(name) == item_path(option) {
                    known = true;
                    chosen |= context.selection.state(at).and_then(super::super::options::State::choice)
                        == Some(choice);
                }
            }
        }
        match (known, chosen) {
            (true, true) => tested.sure.push(movement),
            (true, false) => {}
            (false, _) => tested.unsure.push(movement),
        }
    }
    tested
}

fn found<'a>(context: &Context<'a, '_>, direction: &Direction, tested: &Tested<'a>) -> Assessment<'a> {
    let words = direction.words;
    let needed = match evidence(direction.property, context.subject) {
        Evidence::Shown(fact) => fact,
        other => return not_stated(context, direction, other),
    };
    let percent = match needed.value {
        Value::Quantity(quantity)
            if quantity.dimension() == Dimension::Fraction && quantity.number >= Number::ZERO =>
        {
            quantity
        }
        _ => {
            return Assessment::open(Reason::Unreadable).on(needed).saying(
                format!("movement in {words}"),
                format!("`{}` is no percentage of the joint's width.", needed.value),
            );
        }
    };
    if percent.number.is_zero() {
        return Assessment::plain(Verdict::NotApplicable, Reason::NotAsked).on(needed).saying(
            format!("movement in {words}"),
            format!("No movement in {words} is needed."),
        );
    }
    let requirement =
        format!("movement in {words} of at least {} of the installed nominal width", print::trade(percent));
    let assessed = against(context, direction, tested, percent);
    let on = |assessed: Assessment<'a>| {
        let fact = assessed.fact.unwrap_or(needed);
        assessed.on(fact)
    };
    match assessed {
        Ok((sentence, margin)) => {
            let met = Assessment::plain(Verdict::Met, Reason::Holds).on(needed);
            met.saying(requirement, sentence).with_margin(margin)
        }
        Err(Shortfall { found, sentence, margin }) => {
            on(found).saying(requirement, sentence).with_margin(margin)
        }
    }
}

/// Why the tested movement isn't enough, or can't be told to be.
struct Shortfall<'a> {
    found: Assessment<'a>,
    sentence: String,
    margin: Option<Quantity>,
}

fn against<'a>(
    context: &Context<'a, '_>,
    direction: &Direction,
    tested: &Tested<'a>,
    needed: Quantity,
) -> Result<(String, Option<Quantity>), Shortfall<'a>> {
    let words = direction.words;
    let short = |found, sentence, margin| Err(Shortfall { found, sentence, margin });
    let needs = print::trade(needed);
    let unclear = || Assessment::open(Reason::ListingUnclear);
    let not_offered = || Assessment::plain(Verdict::NotMet, Reason::NotOffered);
    let reach = |movements: &[&Movement]| movements.iter().map(|movement| movement.percent).max();
    let could_be = reach(&tested.unsure).is_some_and(|most| most >= needed.number);
    if tested.sure.is_empty() {
        let none = context.checklist.reading.header.movement.is_empty();
        let dynamic = context.designation.is_some_and(|read| read.motion == Motion::Dynamic);
        return if could_be {
            let sentence = format!(
                "{needs} {words} is needed; the listing states it for a configuration that none of its options goes by."
            );
            short(unclear(), sentence, None)
        } else if none && dynamic {
            let sentence = format!(
                "{needs} {words} is needed; the listing is for a dynamic joint, but no movement could be read from its head."
            );
            short(unclear(), sentence, None)
        } else {
            let sentence = format!("{needs} {words} is needed; the listing gives no movement in {words}.");
            short(not_offered(), sentence, None)
        };
    }
    let most = reach(&tested.sure).unwrap_or(Number::ZERO);
    let margin = |reached: Number| {
        Some(Quantity::new(reached.minus(needed.number)?, Unit::Percent))
    };
    if most < needed.number && !could_be {
        let sentence = format!(
            "{needs} {words} is needed; the listing was tested to {}.",
            print::trade(Quantity::new(most, Unit::Percent))
        );
        return short(not_offered(), sentence, margin(most));
    }
    let classes = match evidence(CLASS, context.subject) {
        Evidence::Shown(fact) => match classes_of(&fact.value) {
            Some(classes) => classes,
            None => {
                let sentence = format!("`{}` names no movement class from I to IV.", fact.value);
                return short(Assessment::open(Reason::Unreadable).on(fact).asking(CLASS), sentence, None);
            }
        },
        other => {
            let sentence = format!(
                "{needs} {words} is needed; the listing gives movement by class, and the class that is needed isn't known."
            );
            let found = Assessment::open(reason_of(other)).on(other.fact()).asking(CLASS);
            return short(found, sentence, None);
        }
    };
    let mut least = None;
    for class in &classes {
        let of_class = |movement: &&&Movement| movement.classes.iter().any(|one| one == class);
        let percents = || tested.sure.iter().filter(of_class).map(|movement| movement.percent);
        let (lowest, highest) = (percents().min(), percents().max());
        if let Some(lowest) = lowest.filter(|lowest| *lowest >= needed.number) {
            least = Some(least.map_or(lowest, |least: Number| least.min(lowest)));
            continue;
        }
        let of_needed = format!("{needs} {words} of Class {class} is needed");
        let classless = tested.sure.iter().any(|movement| {
            movement.classes.is_empty() && movement.percent >= needed.number
        });
        if could_be || classless || highest.is_some_and(|highest| highest >= needed.number) {
            let sentence = format!(
                "{of_needed}; the listing states more than one movement, and which of them holds here couldn't be read."
            );
            return short(unclear(), sentence, None);
        }
        return match highest {
            Some(highest) => {
                let tested = print::trade(Quantity::new(highest, Unit::Percent));
                let sentence = format!("{of_needed}; the listing was tested to {tested}.");
                short(not_offered(), sentence, margin(highest))
            }
            None => {
                let sentence = format!("{of_needed}; the listing gives no Class {class} movement in {words}.");
                short(not_offered(), sentence, None)
            }
        };
    }
    let reached = least.unwrap_or(most);
    let sentence = format!(
        "{needs} {words} of Class {} is needed; the listing was tested to {}.",
        joined(classes),
        print::trade(Quantity::new(reached, Unit::Percent))
    );
    Ok((sentence, margin(reached)))
}

/// The classes that a value names, all of which are needed; none when it names anything else.
fn classes_of(value: &Value) -> Option<Vec<String>> {
    let Value::Text(text) = value else { return None };
    let words = text.split(|letter: char| !letter.is_alphanumeric()).filter(|word| !word.is_empty());
    let mut classes = Vec::new();
    for word in words {
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

/// What to find where nothing usable says what is needed.
fn not_stated<'a>(
    context: &Context<'a, '_>,
    direction: &Direction,
    found: Evidence<'a>,
) -> Assessment<'a> {
    let words = direction.words;
    let requirement = format!("movement in {words}");
    if matches!(found, Evidence::None) {
        if let Evidence::Shown(fact) = evidence("joint.static_or_dynamic", context.subject)
            && matches!(&fact.value, Value::Text(text) if text == Motion::Static.title())
        {
            return Assessment::plain(Verdict::NotApplicable, Reason::NotAsked)
                .on(fact)
                .saying(requirement, "The joint isn't meant to move.");
        }
        let states_other = [COMPRESSION, EXTENSION]
            .iter()
            .any(|other| matches!(evidence(other.property, context.subject), Evidence::Shown(_)));
        if direction.property == SHEAR.property && states_other {
            return Assessment::plain(Verdict::NotApplicable, Reason::NotAsked).saying(
                requirement,
                "The movement that is needed is stated, and no shear with it: none is taken to be needed.",
            );
        }
    }
    Assessment::open(reason_of(found)).on(found.fact()).saying(
        requirement,
        format!("How far the joint must move in {words} isn't known."),
    )
}
