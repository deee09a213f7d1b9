//! The head of a listing, its choices, and how firm its reading is.

use listing::confirm::Entry;
use listing::{
    Header, Leakage, LeakageRelation, LeakageTemperature, Movement, MovementDirection,
    OptionGroupKind, Reading, Status,
};
use measure::{Quantity, print};

use crate::text::{listed, on_one_line, printable};

/// What the head states, each with its label; of standards, ratings and width also that none was read.
pub fn stated(header: &Header) -> Vec<(&'static str, String)> {
    let ratings: Vec<String> = header
        .ratings_hr
        .iter()
        .map(|hours| print::trade(Quantity::new(*hours, measure::Unit::Hour)))
        .collect();
    let ratings: Vec<&str> = ratings
        .iter()
        .map(|rating| rating.trim_end_matches(" hr"))
        .collect();
    let width = header.width.as_ref().map(|width| {
        let quantity = |number| Quantity::new(number, width.unit);
        match (width.lo.map(quantity), width.hi.map(quantity)) {
            (Some(lo), Some(hi)) => format!("{} to {}", print::both(lo), print::both(hi)),
            (Some(one), None) | (None, Some(one)) => {
                format!("{} {}", width.relation.words(), print::both(one))
            }
            (None, None) => String::new(),
        }
    });
    let movement: Vec<String> = header.movement.iter().map(movement).collect();
    let leakage: Vec<String> = header.leakage.iter().map(leakage).collect();
    let or_none = |words: String| {
        if words.is_empty() {
            "none read".to_owned()
        } else {
            words
        }
    };
    vec![
        ("standards", or_none(header.standards.join(", "))),
        (
            "ratings",
            if ratings.is_empty() {
                or_none(String::new())
            } else {
                format!("{} hr", listed(&ratings))
            },
        ),
        ("width", or_none(width.unwrap_or_default())),
        ("movement", movement.join("; ")),
        ("leakage", leakage.join("; ")),
    ]
}

/// A movement capability: `Classes II and III, 33 % compression or extension`.
pub fn movement(movement: &Movement) -> String {
    let classes = match movement.classes.as_slice() {
        [] => String::new(),
        [one] => format!("Class {one}, "),
        several => format!("Classes {}, ", listed(several)),
    };
    let direction = match movement.direction {
        MovementDirection::Compression => "compression",
        MovementDirection::Extension => "extension",
        MovementDirection::CompressionOrExtension => "compression or extension",
        MovementDirection::Shear => "shear",
    };
    let percent = print::trade(Quantity::new(movement.percent, measure::Unit::Percent));
    let option = movement
        .option
        .as_ref()
        .map(|option| format!(" ({})", on_one_line(option)));
    format!(
        "{classes}{percent} {direction}{}",
        option.unwrap_or_default()
    )
}

/// An air leakage rating: `less than 1 cfm/ft at ambient`.
pub fn leakage(leakage: &Leakage) -> String {
    let at = match leakage.at {
        LeakageTemperature::Ambient => "ambient",
        LeakageTemperature::Elevated => "400 °F (204 °C)",
    };
    let relation = match leakage.relation {
        LeakageRelation::LessThan => "less than ",
        LeakageRelation::Equal => "",
        LeakageRelation::AtMost => "at most ",
    };
    format!(
        "{relation}{} at {at}",
        print::both(Quantity::new(leakage.value, leakage.unit))
    )
}

/// That pages are pictures, of which nothing was read; nothing where none is.
///
/// ```
/// let words = wording::head::pictures(&[2]);
/// assert_eq!(
///     words.as_deref(),
///     Some("Page 2 is a picture: nothing of it was read.")
/// );
/// ```
pub fn pictures(pages: &[usize]) -> Option<String> {
    let names: Vec<String> = pages.iter().map(ToString::to_string).collect();
    match pages {
        [] => None,
        [one] => Some(format!("Page {one} is a picture: nothing of it was read.")),
        _ => Some(format!(
            "Pages {} are pictures: nothing of them was read.",
            listed(&names)
        )),
    }
}

/// The choices that a listing leaves.
pub fn options(reading: &Reading) -> String {
    let groups = reading.options.iter().map(|group| {
        let choices = group
            .choices
            .iter()
            .map(|choice| printable(choice))
            .collect::<Vec<_>>();
        match group.kind {
            OptionGroupKind::Optional => format!("{} may be left out", listed(&choices)),
            OptionGroupKind::Alternates
            | OptionGroupKind::OneOf
            | OptionGroupKind::Configurations => choices.join(" or "),
        }
    });
    groups.collect::<Vec<_>>().join("; ")
}

/// How firm a reading is: confirmed and by whom, or a draft.
pub fn standing(reading: &Reading, is_confirmed: bool, decisions: &[Entry]) -> String {
    if is_confirmed {
        return format!("confirmed: every clause, by {}", by_whom(decisions));
    }
    let clauses = &reading.clauses;
    let confirmed = clauses
        .iter()
        .filter(|clause| clause.status != Status::Draft)
        .count();
    if confirmed == 0 {
        "a draft: nobody has confirmed it; verdicts on it are provisional".to_owned()
    } else {
        format!(
            "a draft: {confirmed} of {} clauses are confirmed; verdicts on it are provisional",
            clauses.len()
        )
    }
}

/// Who has confirmed, when last, and how much they have corrected.
fn by_whom(decisions: &[Entry]) -> String {
    let mut names: Vec<&str> = decisions.iter().map(|entry| entry.by.as_str()).collect();
    names.sort_unstable();
    names.dedup();
    let names: Vec<String> = names.into_iter().map(printable).collect();
    let corrected = decisions
        .iter()
        .filter(|entry| entry.correction.is_some())
        .count();
    let last = decisions
        .iter()
        .map(|entry| entry.when)
        .max()
        .map(|day| format!(", {day}"))
        .unwrap_or_default();
    let corrected = if corrected == 0 {
        String::new()
    } else {
        format!("; {corrected} corrected")
    };
    format!("{}{last}{corrected}", listed(&names))
}
