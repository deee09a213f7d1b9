//! Lines of an item that begin with the name of a variant, one below the other: `Method 1 - Sealant ...` over `Method 2 - Spray ...`, `System A packing - min 4 in.
//! deep`. Each begins anew, whether or not the line above it has a stop; the first may stand behind the item's title. A line below the last of them, no farther in, is
//! of none of them, unless as many lines went on with the one before.
//!
//! What it would misread: a further line of the last variant alone, which is read as said of every joint and asks for too much.

use std::collections::BTreeSet;

use super::closing::Setting;
use super::labels::{heads_variant, variant_named};
use crate::layout::Line;
use crate::outline::marker::marker;

/// How many lines there are at most from one variant to the next.
const FARTHEST: usize = 14;

/// The lines that begin anew because of the variants that lines begin with.
#[derive(Debug, Default)]
pub(super) struct VariantLines(BTreeSet<usize>);

impl VariantLines {
    pub(super) fn of(lines: &[Line<'_>], setting: Setting) -> Self {
        let mut found = Self::default();
        let named: Vec<usize> = (0..lines.len())
            .filter(|at| name_of(lines, *at).is_some())
            .collect();
        for (place, at) in named.iter().enumerate() {
            let above = place.checked_sub(1).and_then(|above| named.get(above));
            let below = named.get(place + 1);
            let goes_on = above.is_some_and(|above| are_beside(lines, *above, *at));
            let is_last = below.is_none_or(|below| !are_beside(lines, *at, *below));
            let begun = begun_behind_title(lines, *at);
            if !goes_on && is_last && begun.is_none() {
                continue;
            }
            found.0.insert(*at);
            let before = above.copied().filter(|_| goes_on).or(begun);
            if is_last && let Some(before) = before {
                let of_before = begun_below(lines, setting, before, *at).count();
                let closing = begun_below(lines, setting, *at, lines.len()).nth(of_before);
                found.0.extend(closing);
            }
        }
        found
    }

    /// Whether a line begins anew.
    pub(super) fn contains(&self, at: usize) -> bool {
        self.0.contains(&at)
    }
}

/// The sort and label of the variant that a line begins with: `Method` and `1`.
fn name_of<'l>(lines: &[Line<'l>], at: usize) -> Option<(&'l str, &'l str)> {
    let words = lines.get(at)?.text.trim();
    let rest = variant_named(words)?;
    words.get(..words.len() - rest.len())?.rsplit_once(' ')
}

/// Whether two lines begin with variants of one sort, as far in, with nothing between them that is of another item.
fn are_beside(lines: &[Line<'_>], one: usize, other: usize) -> bool {
    let indent = |at: usize| lines.get(at).map(|line| line.indent);
    let alike = name_of(lines, one)
        .zip(name_of(lines, other))
        .is_some_and(|((sort, label), (other, own))| sort == other && label != own);
    alike && indent(one) == indent(other) && other - one <= FARTHEST && is_of_one(lines, one, other)
}

/// The line above that begins an item with a variant of the same sort behind its title: `1. Packing - System A: min 4 in. deep`.
fn begun_behind_title(lines: &[Line<'_>], at: usize) -> Option<usize> {
    let (sort, label) = name_of(lines, at)?;
    let above = (at.saturating_sub(FARTHEST)..at).rev();
    let item = above.into_iter().find(|above| {
        lines
            .get(*above)
            .is_some_and(|line| marker(line.text.trim()).is_some())
    })?;
    let words = lines.get(item)?.text;
    let named = [" - ", " – ", " — ", ". ", ": "].iter().any(|sign| {
        let mut parts = words.match_indices(sign);
        parts.any(|(place, _)| {
            let name = words.get(place + sign.len()..).unwrap_or_default();
            let other = variant_named(name)
                .and_then(|rest| name.get(..name.len() - rest.len())?.rsplit_once(' '));
            heads_variant(name) && other.is_some_and(|(own, other)| own == sort && other != label)
        })
    });
    (named && is_of_one(lines, item, at)).then_some(item)
}

/// Whether the lines between two are of the item that the first is of, without a blank one.
fn is_of_one(lines: &[Line<'_>], from: usize, to: usize) -> bool {
    let between = lines.get(from + 1..to).unwrap_or_default();
    between
        .iter()
        .all(|line| !line.is_blank() && marker(line.text.trim()).is_none())
}

/// The lines below a variant that begin anew, no farther in than the variants are.
fn begun_below(
    lines: &[Line<'_>],
    setting: Setting,
    variant: usize,
    to: usize,
) -> impl Iterator<Item = usize> {
    let column = lines.get(variant).map_or(0, |line| line.indent);
    let column = lines.get(to).map_or(column, |next| next.indent.max(column));
    let below = (variant + 1..to.min(variant + FARTHEST)).take_while(move |at| {
        lines
            .get(*at)
            .is_some_and(|line| !line.is_blank() && marker(line.text.trim()).is_none())
    });
    // Where each of those before fills one line, so does the last.
    let alone = variant.checked_sub(1).is_some_and(|above| {
        are_beside(lines, above, variant) || begun_behind_title(lines, variant) == Some(above)
    });
    below.filter(move |at| {
        let (Some(line), Some(above)) = (lines.get(*at), lines.get(at - 1)) else {
            return false;
        };
        let words = line.text.trim();
        words.starts_with(|c: char| c.is_uppercase() || c.is_ascii_digit())
            && line.indent <= column
            && (setting.breaks_off(above, words)
                || setting.ends_early(above, words)
                || at - 1 == variant && (above.text.trim_end().ends_with('.') || alone))
    })
}
