//! Names for a column of a table, from its heading.

use measure::Dimension;
use vocabulary::Property;

use super::cues::Context;
use super::local::local;
use super::mentions::components_in;
use super::score::Scorer;
use super::subject::Subject;
use super::{CLEAR, ENOUGH, Name, cues, named, rival};

/// Names what a table's column bounds, from its heading.
pub(crate) fn name_heading(heading: &str, dimension: Dimension, subject: &Subject) -> Name {
    let mentioned = components_in(heading);
    // What stands after "in the" says where: "depth in the joint" is no depth of the joint.
    let place = [
        " in ",
        " at ",
        " to the ",
        " of each ",
        " to each ",
        " from ",
        " on ",
        " onto ",
        " into ",
        " over ",
        " above ",
        " below ",
        " behind ",
        " under ",
        " beyond ",
        " along ",
        " between ",
    ]
    .iter()
    .filter_map(|words| heading.to_ascii_lowercase().find(words))
    .min()
    .filter(|_| !subject.titles.is_empty())
    .unwrap_or(heading.len());
    // Under "Packing", layers are the packing's, and no board's.
    let counted = dimension == Dimension::Count && !subject.titles.is_empty();
    let (weak_weight, title) = if counted { (5, 6) } else { (6, 5) };
    let weighed = mentioned
        .iter()
        .filter(|(.., at)| at.start < place)
        .map(|(component, weak, _)| (*component, if *weak { weak_weight } else { 9 }));
    let weights: Vec<_> = weighed
        .chain(
            subject
                .titles
                .first()
                .map(|(component, _)| (*component, title)),
        )
        .collect();
    let nouns: Vec<_> = mentioned.iter().map(|(.., at)| at.clone()).collect();
    let scored = |nouns: &[_]| {
        let context = Context::of_heading(heading, nouns);
        Scorer::new(context, dimension, [""; 2], &[]).cued_scores(weights.clone())
    };
    // The part's own noun may name an attribute ("Board, in."), but none of a spacing ("Studs o.c.").
    let scored = if cues::is_spacing(heading) {
        scored(&nouns)
    } else {
        scored(&[])
    };
    match scored
        .first()
        .filter(|best| best.score >= ENOUGH && speaks_of(best.property, heading))
    {
        Some(best) => named(best.property, best.score - rival(&scored) < CLEAR),
        None => Name {
            component: mentioned.first().map_or_else(
                || subject.title.to_lowercase(),
                |(component, ..)| component.title.to_lowercase(),
            ),
            ..local(heading.to_lowercase(), subject, None)
        },
    }
}

/// Whether a heading speaks of a property of the joint itself: "Edge screws from joint" is no width of it, and "Compression" alone is as soon
/// the packing's as a movement.
fn speaks_of(property: &Property, heading: &str) -> bool {
    const WIDTH: &[&str] = &["width", "wide", "opening", "gap", "jt", "linear"];
    let lower = heading.to_lowercase();
    let says = |words: &[&str]| words.iter().any(|word| lower.contains(word));
    match property.attribute.as_str() {
        _ if property.component != "joint" => true,
        "width" => lower.trim_start().starts_with("joint") || says(WIDTH),
        // A movement that names no direction is one of both, or nobody knows of which.
        "movement_compression" => says(&["movement", "clos"]) && says(&["compr", "clos"]),
        "movement_extension" => says(&["movement", "open"]) && says(&["exten", "open"]),
        _ => true,
    }
}
