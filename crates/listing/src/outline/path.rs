//! The path by which people cite an item.

use super::marker::{Close, Marker, Part};

/// The path as people cite it: as printed where the label repeats its parent's, or both count from `round` on, else joined to the parent's
/// path.
pub(super) fn path(parent: Option<(&[Part], &str)>, marker: &Marker, round: u32) -> String {
    let printed = match marker.close {
        Close::Parens => format!("({})", marker.label),
        _ => marker.label.clone(),
    };
    let whole = [".00", ".0"]
        .iter()
        .find_map(|tail| marker.label.strip_suffix(tail));
    let label = whole.unwrap_or(&marker.label);
    let is_round = |parts: &[Part]| matches!(parts, [Part::Number(n)] if *n >= round);
    if is_round(&marker.parts) && parent.is_some_and(|(parts, _)| is_round(parts)) {
        return label.to_owned();
    }
    let Some((parts, above)) = parent else {
        return if marker.signed {
            format!("§{label}")
        } else {
            label.to_owned()
        };
    };
    let repeats = marker
        .label
        .strip_prefix(above)
        .is_some_and(|rest| rest.starts_with(['.', '-']));
    if repeats && !marker.parts.starts_with(parts) {
        return label.to_owned();
    }
    if marker.parts.len() > parts.len() && marker.parts.starts_with(parts) {
        let own: usize = own_tail(marker, parts.len());
        let tail = marker.label.get(own..).unwrap_or_default();
        return format!("{above}{tail}");
    }
    let digits_meet = above.ends_with(|c: char| c.is_ascii_digit())
        && printed.starts_with(|c: char| c.is_ascii_digit());
    let joint = if digits_meet { "." } else { "" };
    format!("{above}{joint}{printed}")
}

/// Where in the label the parts beyond the parent's begin, with the dot or hyphen before them.
fn own_tail(marker: &Marker, skipped: usize) -> usize {
    let mut seen = 0;
    let mut previous = None;
    for (at, c) in marker.label.char_indices() {
        let kind = if c.is_ascii_digit() {
            1
        } else if c.is_ascii_alphabetic() {
            2
        } else {
            0
        };
        if previous != Some(kind) {
            if kind == 0 {
                if seen == skipped {
                    return at;
                }
            } else {
                if seen == skipped {
                    return at;
                }
                seen += 1;
            }
        }
        previous = Some(kind);
    }
    marker.label.len()
}
