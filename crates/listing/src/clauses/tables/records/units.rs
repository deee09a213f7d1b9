//! The words that stand in the columns of limits and of units.

use measure::Unit;
use measure::notation::unit_at;

use crate::layout::Flow;
use crate::model::Relation;

/// What a cell says of a limit: none where it says nothing of one, outer none where it isn't known.
#[allow(
    clippy::option_option,
    reason = "that there is no limit and that it isn't known are two things"
)]
pub(in crate::clauses::tables) fn limit(words: &str) -> Option<Option<Relation>> {
    Some(match words.to_lowercase().trim_end_matches('.') {
        "" | "-" | "–" | "—" | "btw" | "between" | "range" | "from-to" | "from - to" | "tol"
        | "±" => None,
        "min" | "minimum" | "≥" | ">=" | "not less than" | "at least" | "nlt" | "lower"
        | "least" => Some(Relation::AtLeast),
        "max" | "maximum" | "≤" | "<=" | "not more than" | "at most" | "nmt" | "upper"
        | "up to" | "most" => Some(Relation::AtMost),
        "nom" | "nominal" | "target" => Some(Relation::Nominal),
        "eq" | "=" | "exact" | "exactly" | "equal" => Some(Relation::Exactly),
        ">" | "over" | "more than" | "above" => Some(Relation::MoreThan),
        "<" | "under" | "less than" | "below" => Some(Relation::LessThan),
        "approx" | "about" | "~" | "≈" | "ca" => Some(Relation::About),
        _ => return None,
    })
}

/// Whether a value says nothing against its row's limit: `min` beside "<= 100", or "between" beside one value.
pub(super) fn agrees(
    words: &str,
    limit: Option<Relation>,
    value: Option<&Flow>,
    unit: Option<Unit>,
) -> bool {
    let spread = [
        "btw",
        "between",
        "range",
        "from-to",
        "from - to",
        "tol",
        "±",
    ]
    .contains(&words.to_lowercase().as_str());
    let Some(cell) = value.and_then(|value| crate::phrase::cell(value.text(), unit, None)) else {
        return !spread;
    };
    let against = limit
        .zip(cell.relation)
        .is_some_and(|(limit, own)| limit != own);
    !against && (!spread || cell.hi.is_some())
}

/// The unit that a cell names, and a second one in brackets behind it: none where it names none, outer none where it isn't known.
#[allow(
    clippy::option_option,
    reason = "that there is no unit and that it isn't known are two things"
)]
pub(super) fn units(words: &str) -> Option<Option<(Unit, Option<Unit>)>> {
    const COUNTED: &[&str] = &[
        "no", "no.", "nos", "nos.", "pcs", "pcs.", "pc", "ea", "ea.", "each", "count", "number",
        "pieces", "piece", "layers", "layer", "coats", "coat", "passes", "plies", "rows", "strips",
        "screws", "clips", "pins", "cycles",
    ];
    let lower = words.to_lowercase();
    if lower.is_empty() || ["-", "–", "—"].contains(&lower.as_str()) {
        return Some(None);
    }
    if COUNTED.contains(&lower.as_str()) {
        return Some(Some((Unit::Count, None)));
    }
    let words = words.strip_prefix("degrees ").unwrap_or(words);
    let words = match words {
        "C" => "°C",
        "F" => "°F",
        _ => words,
    };
    let (unit, end) = unit_at(words, 0)?;
    let rest = words.get(end..)?.trim_matches([' ', '.']);
    // `% by mass`, `% (m/m)`: of what, its row says.
    if is_place(rest) || unit == Unit::Percent {
        return Some(Some((unit, None)));
    }
    let second = rest
        .strip_prefix(['(', '/', '['])?
        .trim_end_matches([')', ']', '.']);
    let (other, end) = unit_at(second, 0)?;
    let same = end == second.len() && other.dimension() == unit.dimension();
    same.then_some(Some((unit, Some(other))))
}

/// Whether what stands behind a unit only says between what is measured, or of what a share is: `mm o.c.`, `% of width`.
fn is_place(words: &str) -> bool {
    const PLACES: &[&str] = &[
        "",
        "oc",
        "o.c",
        "c/c",
        "centres",
        "centers",
        "on centre",
        "on center",
        "thick",
        "each",
        "each side",
        "per side",
        "of width",
        "of the width",
        "of joint width",
        "of free width",
        "of thickness",
        "of depth",
    ];
    PLACES.contains(&words.to_lowercase().as_str())
}
